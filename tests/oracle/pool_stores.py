"""What may charge a loop beside a pump, in the random circuits: reservoirs under pressure, accumulators.
And couplings apart. Some belong where they are put and some do not. A lot of its own decides, so that the rest of the
circuit stays what it was; only what stands on the circuit's own level is touched."""

import random

import damage
from builder import add, port
from pool_valves import CHARGE, WORKING, Fitter

PRESSURES = ("0.5 bar", "3 bar", "5 bar")


def fit(root, number):
    """Seals reservoirs and puts stores on lines, now and then."""
    f = Fitter(root, random.Random(f"stores-{number}"))
    if f.lot.random() < 0.12:
        _seal(f)
    if f.lot.random() < 0.12:
        _reservoir(f)
    if f.lot.random() < 0.12:
        _accumulator(f)
    if f.lot.random() < 0.08:
        _stop_charging(f)
    if f.lot.random() < 0.1:
        _parted(f)


def _seal(f):
    """A reservoir that breathed; now and then it still does."""
    tank = f.lot.choice([e for e in f.root if e.tag == "reservoir"])
    tank.set("pressure", f.lot.choice(PRESSURES))
    if f.lot.random() < 0.9:
        tank.attrib.pop("breather", None)


def _to(f, where, ident, letter):
    """A port joined to a line of that sort, over something or straight."""
    over = f.lot.choice((None, "check-valve", "check-valve", "check-valve", "shut-off-valve", "orifice",
                         "filter"))
    if over is None:
        f.tee(where, f"{ident}.{letter}")
        return
    part = f.part(over)
    near, far = ("A", "B") if f.lot.random() < 0.8 else ("B", "A")
    f.line(f"{ident}.{letter}", f"{part}.{near}")
    f.tee(where, f"{part}.{far}")


def _reservoir(f):
    """One of its own, under pressure or not."""
    ident = damage._fresh(f.root, "T")
    attributes = {"pressure": f.lot.choice(PRESSURES)} if f.lot.random() < 0.8 else {"breather": "yes"}
    count = f.lot.choice((1, 1, 2))
    add(f.root, "reservoir", ident, [port(f"s{n}", level="below") for n in range(count)], **attributes)
    for n in range(count):
        _to(f, f.lot.choice((WORKING, WORKING, CHARGE)), ident, f"s{n}")


def _accumulator(f):
    _to(f, f.lot.choice((WORKING, CHARGE, CHARGE)), f.part("accumulator"), "A")


def _parted(f):
    """A coupling that is apart, its halves on any two lines."""
    ident = f.part("quick-coupling", joined="no", max_pressure=f.lot.choice((None, "30 bar", "420 bar", "460 bar")))
    for line, letter in zip(f.lot.sample([e for e in f.root if e.tag == "line"], 2), "AB"):
        line.set("joins", f"{line.get('joins')} {ident}.{letter}")


def _stop_charging(f):
    """Pumps with one flow direction that nothing turns any more."""
    pumps = {e.get("id") for e in f.root if e.tag == "pump" and not e.get("flow-directions")
             and not e.get("closed-loop")}
    for shaft in f.root.iter("shaft"):
        left = [part for part in shaft.get("joins").split() if part not in pumps]
        if len(left) > 1:
            shaft.set("joins", " ".join(left))
