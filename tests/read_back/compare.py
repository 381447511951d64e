"""Holds what was read against what the circuit says; gives the differences as sentences."""

import kinds
from expected import MACHINES, ROLES, expected_letters, expected_options, positions_meant
from nets import Union
from shapes import in_mm

def _drawn_position(position, letter):
    """Groups of a drawn box by port letter, comparable with `_meant_position`."""
    groups = set()
    for places, heads, throttles, _ in position.groups:
        names = frozenset(letter.get(p, "?") for p in places)
        arrow = frozenset(letter.get(p, "?") for p in heads) if len(places) == 2 else None
        groups.add((names, arrow, throttles))
    return frozenset(groups), frozenset(letter.get(p, "?") for p in position.blocked), position.odd


def _meant_position(paths, ports):
    union = Union()
    for port in ports:
        union.find(port)
    for start, end, _ in paths:
        union.join(start, end)
    groups, blocked = set(), set()
    for group in union.sets():
        if len(group) == 1:
            blocked |= group
            continue
        inner = [(a, b, t) for a, b, t in paths if a in group]
        arrow = frozenset({inner[0][1]}) if len(group) == 2 else None
        groups.add((frozenset(group), arrow, sum(t for _, _, t in inner)))
    return frozenset(groups), frozenset(blocked), 0


def _letters_of_places(symbol):
    """Place in the rest box -> letter."""
    return {tuple(map(int, p.role.strip("()").split(","))): p.letter for p in symbol.ports}


def valve_differences(symbol, component):
    letter = _letters_of_places(symbol)
    drawn = [_drawn_position(p, letter) for p in symbol.options["positions"]]
    ports, positions, actuation = positions_meant(component)
    meant = [_meant_position(paths, ports) for _, _, paths in positions]
    rest = [at_rest for _, at_rest, _ in positions].index(True)
    if symbol.options["between"] != (component.kind == "pilot-control-valve"):
        yield f"{component.label}: drawn with positions between: {symbol.options['between']}"
    if len(meant) == 3:  # DV3: of three positions the middle one is at rest
        meant.insert(1, meant.pop(rest))
        rest = 1
    if not ((drawn == meant and symbol.options["rest"] == rest) or
            (drawn == meant[::-1] and symbol.options["rest"] == len(meant) - 1 - rest)):
        yield f"{component.label}: positions drawn {drawn}, meant {meant}"
    actuators = [a["is"] for end in symbol.options["ends"] for a in end]
    if actuation not in actuators or set(actuators) - {actuation, "spring", "detent"}:
        yield f"{component.label}: actuators drawn {actuators}, meant {actuation}"
    detent = component.attributes.get("detent") == "yes"
    if detent == ("spring" in actuators) or detent != ("detent" in actuators):
        yield f"{component.label}: ends drawn {actuators}, detent meant {detent}"
    # A spring or an actuator pushes the boxes beyond the rest box onto the ports (DV3, DV4).
    rest, last = symbol.options["rest"], len(meant) - 1
    for end, pushed, held in ((0, rest > 0, rest < last), (1, rest < last, rest > 0)):
        there = {a["is"] for a in symbol.options["ends"][end]}
        if pushed and actuation in ("solenoid", "pilot") and actuation not in there:
            yield f"{component.label}: no {actuation} at end {end}"
        if held and not detent and "spring" not in there:
            yield f"{component.label}: no spring at end {end}"
    for end in symbol.options["ends"]:
        for a in end:
            if a["is"] == "detent" and a["notches"] != len(meant):
                yield f"{component.label}: {a['notches']} notches for {len(meant)} positions"


def flushing_differences(symbol, component):
    letter = _letters_of_places(symbol)
    boxes, ends = symbol.options["positions"], symbol.options["ends"]
    at = {p.letter: p for p in symbol.ports}
    if len(boxes) != 3 or symbol.options["rest"] != 1:
        yield f"{component.label}: {len(boxes)} boxes"
        return
    is_open = component.attributes.get("centre") == "open"
    centre = [("A", "F", True), ("B", "F", True)] if is_open else []
    if _drawn_position(boxes[1], letter) != _meant_position(centre, "ABF"):
        yield f"{component.label}: centre drawn {_drawn_position(boxes[1], letter)}"
    for box, end in ((boxes[0], ends[0]), (boxes[2], ends[1])):
        pilots = [a["from"] for a in end if a["is"] == "pilot"]
        if len(pilots) != 1 or "spring" not in [a["is"] for a in end]:
            yield f"{component.label}: an end without pilot and spring"
            continue
        high = [name for name in "AB" if name in at and _between(pilots[0], at[name].contact,
                                                                 at[name].place)]
        low = {"A": "B", "B": "A"}.get(high[0] if high else "", "?")
        # The higher side's pilot shifts the valve so that the lower side is flushed.
        if _drawn_position(box, letter) != _meant_position([(low, "F", False)], "ABF"):
            yield f"{component.label}: pilot from {high}, box drawn {_drawn_position(box, letter)}"


def _between(p, a, b):
    return abs((p[0] - a[0]) * (b[1] - a[1]) - (p[1] - a[1]) * (b[0] - a[0])) < 0.1 and \
        (p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1]) > 0


def symbol_differences(symbol, component):
    label = component.label
    for name, value in expected_options(component).items():
        if symbol.options.get(name) != value:
            yield f"{label}: {name} drawn {symbol.options.get(name)}, meant {value}"
    if component.kind == "reservoir":
        return
    drawn = sorted(p.letter for p in symbol.ports)
    if drawn != sorted(expected_letters(component)):
        yield f"{label}: ports drawn {drawn}, meant {sorted(expected_letters(component))}"
    roles = dict(ROLES.get(component.kind, {}))
    if component.kind in MACHINES:
        roles.update({f"pilot {letter}": letter for letter in ("X1", "X2")})
        one_way = symbol.options["flow-directions"] == "1"
        roles["top"] = "P" if "P" in drawn else "A" if one_way else None
    for port in symbol.ports:
        if roles.get(port.role) and port.letter != roles[port.role]:
            yield f"{label}: {port.letter} stands where {roles[port.role]} belongs ({port.role})"
        if component.kind in MACHINES and any(
                port.role.startswith(role) != port.letter.startswith(first)
                for role, first in (("case", "L"), ("pilot", "X"))):
            yield f"{label}: {port.letter} is drawn as {port.role}"
    if symbol.kind == "directional-valve":
        yield from valve_differences(symbol, component)
    if component.kind == "flushing-valve":
        yield from flushing_differences(symbol, component)
    if component.kind == "rotary-joint":
        yield from _way_differences(symbol, component)


def _way_differences(symbol, component):
    """The ports of a rotary joint in pairs: the first leads to the second, and so on."""
    drawn = {}
    for port in symbol.ports:
        drawn.setdefault(port.role, set()).add(port.letter)
    names = list(component.levels)
    meant = [set(names[i:i + 2]) for i in range(0, len(names), 2)]
    for way in drawn.values():
        if way not in meant:
            yield f"{component.label}: {sorted(way)} drawn as one way, meant {meant}"


def component_differences(reading, circuit):
    meant = {}
    for component in circuit.components.values():
        meant.setdefault(component.label, []).append(component)
    for label in {s.label for s in reading.symbols} - set(meant):
        yield f"{label or 'a symbol without designation'} is drawn and not meant"
    for label, components in meant.items():
        drawn = [s for s in reading.symbols if s.label == label]
        component = components[0]
        if not drawn or (len(drawn) > 1 and component.kind != "reservoir"):
            yield f"{label} is drawn {len(drawn)} times"
        for symbol in drawn:
            if symbol.kind != kinds.shape(component.kind):
                yield f"{label}: drawn as {symbol.kind}, meant {component.kind}"
            else:
                yield from symbol_differences(symbol, component)
        row = reading.parts.get(label, [])
        if component.kind not in map(kinds.named, row):
            yield f"{label}: the parts list has {row}, meant {component.kind}"


def merged(nets):
    """Nets that share an end (a reservoir drawn in several places) as one; only those of two ends
    or more."""
    union = Union()
    for net in nets:
        for end in net:
            union.join(next(iter(net)), end)
    return {frozenset(group) for group in union.sets() if len(group) > 1}


def net_differences(reading, circuit):
    drawn = merged([net for net, _, _ in reading.nets])
    meant = merged(circuit.nets())
    for net in drawn - meant:
        yield f"net drawn and not meant: {sorted(net)}"
    for net in meant - drawn:
        yield f"net meant and not drawn: {sorted(net)}"
    # Lines may meet in a reservoir only if their own lines do; before it they stay apart.
    for net, _, _ in reading.nets:
        parts = {end for end in net if end[1]}
        if not any(parts <= line for line in circuit.nets()) and len(parts) > 1:
            yield f"joined before the reservoir: {sorted(parts)}"
    for ends, dash in circuit.dashes().items():
        for net, dashes, _ in reading.nets:  # part of the line, where a reservoir has several marks
            if any(port for _, port in net) and net <= ends and dashes - {dash}:
                yield f"lines of {sorted(net)} are {sorted(dashes)}, meant {dash}"
    yield from hose_differences(reading, circuit)


def hose_differences(reading, circuit):
    """Hoses by what they join; lines that meet in a reservoir are one there."""
    drawn, meant = {}, {}
    for net, _, hoses in reading.nets:
        for whole in merged([n for n, _, _ in reading.nets]):
            if net <= whole:
                drawn[whole] = drawn.get(whole, 0) + hoses
    for whole in merged(circuit.nets()):
        meant[whole] = circuit.hoses_of(whole)
    for net, (least, most) in meant.items():
        if not least <= drawn.get(net, 0) <= most:
            yield f"{sorted(net)}: {drawn.get(net, 0)} hoses drawn, meant {least} to {most}"
    for path in circuit.hoses:
        if "hose" not in reading.parts.get(path, []):
            yield f"hose {path} is not in the parts list"


def level_differences(reading, circuit):
    """Each line into a reservoir ends above or below the oil as its port says."""
    for group in circuit.union.sets():
        ends = {circuit.end(port) for port in group} - {None}
        tanks = [(circuit.components[p.rpartition(".")[0]], p.rpartition(".")[2]) for p in group
                 if p.rpartition(".")[0] in circuit.components]
        levels = {(c.label, c.levels[name]) for c, name in tanks if c.kind == "reservoir"}
        others = {e for e in ends if e[1]}
        for symbol in reading.symbols:
            if symbol.kind != "reservoir":
                continue
            port = symbol.ports[0]
            if others & reading.beside(symbol) and levels and \
                    (symbol.label, symbol.options["level"]) not in levels:
                yield (f"{symbol.label} at {in_mm(port.place)}: line ends "
                       f"{symbol.options['level']} the oil, meant {sorted(levels)}")


def frame_differences(reading, circuit):
    """A frame holds parts of its assembly only, and each part of an assembly stands in a frame of
    it."""
    path = {c.label: p for p, c in circuit.components.items()}
    for symbol in reading.symbols:
        if symbol.kind == "reservoir" or symbol.label not in path:
            continue
        x, y = symbol.centre()
        around = {name for name, (x0, y0, x1, y1), _ in reading.frames if x0 <= x <= x1
                  and y0 <= y <= y1}
        own = {a for a in circuit.assemblies if path[symbol.label].startswith(a + "/")}
        if around != own:
            yield f"{symbol.label} stands in the frames {sorted(around)}, meant {sorted(own)}"


def frame_letter_differences(reading, circuit):
    """Where lines pass through the frames of an assembly stand the letters of all its ports that
    lead out of it, and nothing else but ids of lines."""
    for assembly in circuit.assemblies:
        drawn = set().union(*(words for name, _, words in reading.frames if name == assembly))
        meant = circuit.letters_out(assembly)
        if meant - drawn:
            yield f"frame {assembly} lacks the port letters {sorted(meant - drawn)}"
        others = {letter for name, letters in circuit.assemblies.items() for letter in letters
                  if name != assembly}  # a frame inside or beside may have its letters there
        stray = {w for w in drawn - set(circuit.assemblies[assembly]) - others
                 if w.split()[0] not in circuit.named_lines}
        if stray:
            yield f"frame {assembly} has words where lines pass: {sorted(stray)}"


def differences(reading, circuit, turning):
    found = list(reading.problems)
    found += component_differences(reading, circuit)
    found += net_differences(reading, circuit)
    found += level_differences(reading, circuit)
    found += frame_differences(reading, circuit)
    found += frame_letter_differences(reading, circuit)
    drawn = set(reading.shafts)
    found += [f"turn together, drawn: {sorted(s)}" for s in drawn - turning]
    found += [f"turn together, meant: {sorted(s)}" for s in turning - drawn]
    return found
