"""The rule reversed-rotation: is a pump with one flow direction turned the way it is built for?

A sense of rotation is seen looking at each one's own shaft end.  A pump's faces its prime mover's, so the two
words differ where nothing stands between them.
"""

from piping import bare_shafts
from verdict import Verdict

RULE = "reversed-rotation"
OTHER = {"clockwise": "counter-clockwise", "counter-clockwise": "clockwise"}


def reversed_rotation(judged):
    """A verdict for each pump that says how it is to be turned, or that a shaft turns both ways."""
    circuit = judged.circuit
    verdicts = []
    for pump in circuit.components.values():
        if pump.plays != "pump" or pump.two_way:
            continue
        said = [_turned(circuit, pump, mover) for mover in circuit.components.values()
                if mover.kind in ("engine", "electric-motor")
                and circuit.drive[mover.path] == circuit.drive[pump.path]]
        if "fail" in said:
            verdicts.append(Verdict(RULE, "component", pump.path, "fail", "error"))
        elif any(isinstance(one, set) for one in said):
            missing = set().union(*(one for one in said if isinstance(one, set)))
            verdicts.append(Verdict(RULE, "component", pump.path, "inconclusive",
                                    missing=tuple(sorted(f"{box}.sense" for box in missing))))
        elif "pass" in said:
            verdicts.append(Verdict(RULE, "component", pump.path, "pass"))
    return verdicts


def _turned(circuit, pump, mover):
    """"pass", "fail", the gearboxes whose sense is not known, or None: nothing is said."""
    if mover.attributes.get("reversing", "no") == "yes":
        return "fail"
    word, turn = pump.attributes.get("rotation"), mover.attributes.get("rotation")
    if not word or not turn:
        return None
    boxes = _between(circuit, mover.path, pump.path)
    unknown = {box for box in boxes if "sense" not in circuit.components[box].attributes}
    if unknown:
        return unknown
    wanted = OTHER[turn]
    for box in boxes:
        if circuit.components[box].attributes["sense"] == "opposite":
            wanted = OTHER[wanted]
    return "pass" if word == wanted else "fail"


def _between(circuit, start, end):
    """The gearboxes on the way from one part's shaft to another's, past clutches that are engaged."""
    shafts = bare_shafts(circuit)
    links = {}
    for part in circuit.components.values():
        if part.kind in ("gearbox", "clutch") and (
                part.kind == "gearbox" or part.attributes.get("engaged", "yes") == "yes"):
            ends = [shafts.get(f"{part.path}.{name}", f"{part.path}.{name}")
                    for name in ("in", "out")]
            box = [part.path] if part.kind == "gearbox" else []
            links.setdefault(ends[0], []).append((ends[1], box))
            links.setdefault(ends[1], []).append((ends[0], box))
    way = {shafts[start]: []}
    waiting = [shafts[start]]
    for shaft in waiting:  # grows while it is walked
        for other, box in links.get(shaft, ()):
            if other not in way:
                way[other] = way[shaft] + box
                waiting.append(other)
    return way[shafts[end]]
