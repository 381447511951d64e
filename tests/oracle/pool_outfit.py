"""What a sound circuit of the pool has for the rules that only the program knows: bypasses, indicators,
clean oil, an oil volume, a brake, measuring points, a command and what it locks. Nothing is drawn for it."""

import xml.etree.ElementTree as ElementTree

import builder
import damage
from builder import add, levels, line_of, lines, port, position
from pool_drives import MOVING

PRIME_MOVERS = ("engine", "electric-motor")
MACHINES = ("pump", "motor")
CHARGES = "18 cm3/rev"  # a pump that delivers straight into the charge line


def complete(root):
    """Gives a sound circuit its outfit."""
    _outfit(root)
    _brake(root)
    _measure(root)
    _command(root)


def _outfit(root):
    ElementTree.SubElement(root, "fluid", grade="VG 46", cleanliness="18/16/13")
    for part in root.iter("filter"):
        part.set("fineness", part.get("fineness", "10 um"))
        part.set("beta", "75")
    for part in root.iter():
        if part.tag == "cooler":
            part.set("bypass", "1.5 bar")
        elif part.tag == "filter" and part.get("clogging-indicator", "none") == "none":
            part.set("clogging-indicator", "visual")
        elif part.tag == "electric-motor" and not part.get("speed"):
            part.set("speed", "1450 rpm")
        elif part.tag == "reservoir":
            part.set("volume", "200 L")
            for declared in part:
                declared.set("level", "below")
        elif _two_way(part) and part.get("variable") == "yes":
            part.set("pressure-limiter", "300 bar")
        elif part.tag == "pump" and (_two_way(part) or part.get("closed-loop") == "yes"):
            part.set("working-pressure", "300 bar")


def _two_way(part):
    return part.tag == "pump" and part.get("flow-directions") == "2"


def _brake(root):
    """A parking brake on the first load's shaft; in motion a valve lets charge oil release it."""
    pump = next((e for e in root.findall("pump") if e.get("displacement") == CHARGES), None)
    shaft = next((e for e in root.findall("shaft") if "D1" in e.get("joins").split()), None)
    line = None if pump is None else line_of(root, f"{pump.get('id')}.P")
    tank = root.find("reservoir")
    # The inlet of a loop's one-way pump is taken for a suction port, and the valve for a way to it.
    in_a_loop = any(e.get("closed-loop") == "yes" for e in root.iter("pump"))
    if line is None or shaft is None or in_a_loop:
        return
    add(root, "brake", "B800", applied="spring", use="parking", full_release_pressure="14 bar",
        max_pressure="480 bar")
    add(root, "directional-valve", "V800", [port(name) for name in "PTA"] + [
        position("rest", "A-T", rest=True), position("off", "P-A", states=MOVING)])
    tank.append(port("b800", level="below"))
    shaft.set("joins", f"{shaft.get('joins')} B800")
    line.set("joins", f"{line.get('joins')} V800.P")
    add(root, "line", "Y800", joins="V800.A B800.Z", rating="460 bar")
    add(root, "line", "Y801", joins=f"V800.T {tank.get('id')}.b800", rating="460 bar")


def _measure(root):
    """A measuring point on every line that joins a port of a pump or motor."""
    for level in list(levels(root)):
        names = {part.get("id") for part in builder.parts(level) if part.tag in MACHINES}
        joined = {port for line in lines(level) for port in line.get("joins").split()}
        joined |= {declared.get("of") for declared in level.findall("port")}
        for one in sorted(joined):
            if one.split(".")[0] in names:
                _measure_at(root, level, one)


def _measure_at(root, level, joined):
    """On the line of a port, perhaps that outside the assemblies which it is led out of."""
    line = line_of(level, joined)
    while line is None:
        declared = next(e for e in level.findall("port") if e.get("of") == joined)
        outside = next(other for other in levels(root) if level in list(other))
        level, joined = outside, f"{level.get('id')}.{declared.get('id')}"
        line = line_of(level, joined)
    joins = line.get("joins").split()
    if len(joins) > 1 and not any(other.startswith("N") for other in joins):
        ident = damage._fresh(root, "N")
        add(level, "measuring-point", ident)
        line.set("joins", " ".join([*joins, f"{ident}.P"]))


def _command(root):
    """One for all that can be varied, pumps first; nothing starts while it is off neutral."""
    pumps = [path for path, part in with_paths(root)
             if _two_way(part) and part.get("variable") == "yes"]
    motors = [path for path, part in with_paths(root)
              if part.tag == "motor" and part.get("variable") == "yes"]
    if not pumps:
        return
    command = add(root, "command", "K800")
    for path in pumps:
        ElementTree.SubElement(command, "stage", {"of": path, "from": "0 %", "to": "60 %"})
    for path in motors:
        ElementTree.SubElement(command, "stage", {"of": path, "from": "60 %", "to": "100 %"})
    for mover in [e for e in root if e.tag in PRIME_MOVERS]:
        ElementTree.SubElement(root, "interlock", {"when": "K800 off-neutral",
                                                   "prevents": f"start {mover.get('id')}"})


def with_paths(level, before=""):
    """(path, component) of a level and all within it."""
    for part in builder.parts(level):
        yield before + part.get("id", ""), part
        if part.tag == "assembly":
            yield from with_paths(part, f"{before}{part.get('id')}/")
