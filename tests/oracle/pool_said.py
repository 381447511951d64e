"""What the file says of the random circuits beside what is joined: how far the pumps are worked, what
follows a command, which findings are accepted. And mistakes in the charge line that the others seldom
make. A lot of its own decides, so that the rest of the circuit stays what it was."""

import random
import xml.etree.ElementTree as ElementTree

import builder
import damage
from builder import add
from pool_outfit import with_paths

#: Just low enough for a relief of 350 bar, a little too high for it, low enough for any.
LIMITERS = ("330 bar", "340 bar", "300 bar", "300 bar", "300 bar", "4300 psi")


def spoil(root, number):
    """Says some of it, and makes the mistakes now and then."""
    lot = random.Random(f"said-{number}")
    for _, pump in with_paths(root):
        loop_pump = pump.get("flow-directions") == "2" or pump.get("closed-loop") == "yes"
        if pump.tag in ("pump", "pump-motor") and loop_pump and lot.random() < 0.8:
            pump.set("pressure-limiter", lot.choice(LIMITERS))
    if lot.random() < 0.35:
        _command(root, lot)
    if lot.random() < 0.2:
        _waive(root, lot)
    if lot.random() < 0.1:
        _vent(root, lot)
    if lot.random() < 0.1:
        _check_for_a_valve(root, lot)


def _command(root, lot):
    """Stages for some of the machines; most can follow."""
    machines = [(path, part) for path, part in with_paths(root) if part.tag in ("pump", "motor")]
    fit = [path for path, part in machines if part.get("variable") == "yes"]
    unfit = [path for path, part in machines if part.get("variable") != "yes"]
    chosen = lot.sample(fit, min(len(fit), 2))
    if unfit and lot.random() < 0.5:
        chosen.append(lot.choice(unfit))
    if chosen:
        command = add(root, "command", "K900")
        for path in chosen:
            ElementTree.SubElement(command, "stage", {"of": path, "from": "0 %", "to": "100 %"})


def _waive(root, lot):
    """A finding accepted that there may be, or may not."""
    pump, _ = lot.choice([(path, part) for path, part in with_paths(root) if part.tag == "pump"])
    rule, subject = lot.choice((("cooling", "circuit"), ("dangling-line", "circuit"),
                                ("lost-loop", pump), ("blocked-pump", pump), ("pressure-rating", pump),
                                ("loop-flushing", f"loop:{pump}")))
    ElementTree.SubElement(root, "waiver", {"rule": rule, "subject": subject,
                                            "reason": "agreed", "by": "owner"})


def _vent(root, lot):
    """The charge line led to a reservoir over something that holds no pressure."""
    places = damage._joined(root, damage._of_kind("filter", names="B"))
    places = places or damage._joined(root, damage._of_kind("check-valve", names="A"))
    if places:
        level, line, _ = lot.choice(places)
        valve, tank = damage._fresh(level, "H"), damage._fresh(root, "T")
        add(level, lot.choice(("shut-off-valve", "check-valve")), valve)
        add(level, "reservoir", tank, [builder.port("p", level="below")], breather="yes")
        line.set("joins", f"{line.get('joins')} {valve}.A")
        add(level, "line", damage._fresh(root, "Y"), joins=f"{valve}.B {tank}.p")


def _check_for_a_valve(root, lot):
    """A check made an open shut-off valve, locked or not."""
    places = [(level, part) for level, part in damage._places(root, "check-valve") if not part.get("pilot")]
    if places:
        _, part = lot.choice(places)
        part.tag = "shut-off-valve"
        part.attrib.pop("opening-pressure", None)
        part.set("locked", lot.choice(("yes", "no")))
