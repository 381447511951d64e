"""Mistakes put into a circuit's tree, each at a place drawn by lot. What comes out can still be
read: nothing is joined twice and nothing named that is not there."""

import builder
from builder import add, levels, line_of, lines, parts, rename_ports

TURNED = {"check-valve": ("A", "B"), "relief-valve": ("P", "T"), "filter": ("A", "B")}


def _places(root, *kinds):
    """(level, component) for every component of these kinds."""
    return [(level, e) for level in levels(root) for e in parts(level) if e.tag in kinds]


def _fresh(root, letter):
    taken = {e.get("id") for e in root.iter()}
    return next(f"{letter}{n}" for n in range(900, 10**6) if f"{letter}{n}" not in taken)


def _drop_port(root, level, port):
    """Takes a port off its line, and out of the declared ports that lead to it."""
    line = line_of(level, port)
    if line is not None:
        left = [p for p in line.get("joins").split() if p != port]
        if left:
            line.set("joins", " ".join(left))
        else:
            level.remove(line)
    for declared in level.findall("port"):
        if level is not root and declared.get("of") == port:
            level.remove(declared)
            outside = next(x for x in levels(root) if level in list(x))
            _drop_port(root, outside, f"{level.get('id')}.{declared.get('id')}")


def _ports_in_use(level, ident):
    """The ports of a part that lines or declared ports of its level mention."""
    ports = [p for line in lines(level) for p in line.get("joins").split()]
    ports += [p.get("of") for p in level.findall("port") if p.get("of")]
    return sorted({p for p in ports if p.split(".")[0] == ident})


def _off_shafts(root, ident):
    """Takes a machine off its shaft, whatever assembly it is in."""
    found = False
    for level in levels(root):
        for shaft in level.findall("shaft"):
            joins = shaft.get("joins").split()
            left = [p for p in joins if p.split("/")[-1] != ident]
            if len(left) < len(joins):
                found = True
                if left:
                    shaft.set("joins", " ".join(left))
                else:
                    level.remove(shaft)
    return found


def _remove(root, lot, *kinds):
    places = _places(root, *kinds)
    if not places:
        return False
    level, part = lot.choice(places)
    for port in _ports_in_use(level, part.get("id")):
        _drop_port(root, level, port)
    level.remove(part)
    return True


def _cut_in(root, level, line, port, lot, kind, names="AB", **attributes):
    """Puts a part of two ports between a port and the rest of its line, either way round."""
    ident = _fresh(root, "X")
    add(level, kind, ident, **attributes)
    left = [p for p in line.get("joins").split() if p != port]
    near, far = lot.sample(names, 2)
    line.set("joins", " ".join(left + [f"{ident}.{near}"]))
    add(level, "line", _fresh(root, "Y"), joins=f"{ident}.{far} {port}",
        function=line.get("function"))


def _joined(root, fits=lambda level, port: True, least=2):
    """(level, line, port) for every port on a line of at least so many ports that `fits`."""
    return [(level, line, port) for level in levels(root) for line in lines(level)
            if len(line.get("joins").split()) >= least
            for port in line.get("joins").split() if fits(level, port)]


def _of_kind(*kinds, names=None):
    """A test for `_joined`: the port belongs to such a component (and has one of these names)."""
    def fits(level, port):
        ident, name = port.split(".")
        part = next(e for e in parts(level) if e.get("id") == ident)
        return part.tag in kinds and (names is None or name[0] in names)
    return fits


def _insert(root, lot, places, kind, names="AB", **attributes):
    if not places:
        return False
    level, line, port = lot.choice(places)
    _cut_in(root, level, line, port, lot, kind, names, **attributes)
    return True


def turn(root, lot, *kinds):
    """A check, relief or filter turned round."""
    places = _places(root, *kinds)
    if not places:
        return False
    level, part = lot.choice(places)
    one, other = TURNED[part.tag]
    rename_ports(level, part.get("id"), {one: other, other: one})
    return True


def cut_port(root, lot):
    """A port taken off its line."""
    places = _joined(root, _of_kind("pump", "motor", "check-valve", "relief-valve", "filter"))
    if not places:
        return False
    level, line, port = lot.choice(places)
    line.set("joins", " ".join(p for p in line.get("joins").split() if p != port))
    return True


def _merge(level, one, other):
    one.set("joins", f"{one.get('joins')} {other.get('joins')}")
    one.attrib.pop("function", None)
    level.remove(other)


def join_lines(root, lot):
    """Two lines made one."""
    places = [level for level in levels(root) if len(lines(level)) > 1]
    if not places:
        return False
    level = lot.choice(places)
    _merge(level, *lot.sample(lines(level), 2))
    return True


def open_to_reservoir(root, lot, *kinds, names=None):
    """A line with such a component's port on it opened to a reservoir."""
    places = _joined(root, _of_kind(*kinds, names=names))
    if not places:
        return False
    level, line, _ = lot.choice(places)
    ident = _fresh(root, "T")
    add(level, "reservoir", ident, [builder.port("p", level="below")], breather="yes")
    line.set("joins", f"{line.get('joins')} {ident}.p")
    return True


def check_to_orifice(root, lot):
    """A check replaced by an orifice."""
    places = _places(root, "check-valve")
    if not places:
        return False
    _, check = lot.choice(places)
    check.tag = "orifice"
    check.attrib.pop("opening-pressure", None)
    return True


def shut_off(root, lot, places):
    """A hand valve that nobody locked, drawn open or closed."""
    return _insert(root, lot, places, "shut-off-valve", position=lot.choice(("open", "closed")))


def toggle_hand_valve(root, lot):
    """A hand valve in its other position, or its lock gone."""
    places = _places(root, "shut-off-valve")
    if not places:
        return False
    _, valve = lot.choice(places)
    if valve.get("locked") == "yes" and lot.random() < 0.5:
        valve.set("locked", "no")
    else:
        valve.set("position", "open" if valve.get("position") == "closed" else "closed")
    return True


def _filters_with_lines(root):
    found = []
    for level, part in _places(root, "filter"):
        ends = [line_of(level, f"{part.get('id')}.{name}") for name in "AB"]
        if None not in ends and ends[0] is not ends[1]:
            found.append((level, part, *ends))
    return found


def filter_bypassed(root, lot):
    """A branch line round a filter: bare, or through a hand valve, orifice or check."""
    places = _filters_with_lines(root)
    if not places:
        return False
    level, _, ahead, behind = lot.choice(places)
    kind = lot.choice((None, "shut-off-valve", "orifice", "check-valve"))
    if kind is None:
        _merge(level, ahead, behind)
        return True
    ident = _fresh(root, "X")
    add(level, kind, ident)
    ahead.set("joins", f"{ahead.get('joins')} {ident}.A")
    behind.set("joins", f"{behind.get('joins')} {ident}.B")
    return True


def filter_on_branch(root, lot):
    """A filter no longer in the way of the oil but on a branch to a reservoir, behind a relief."""
    places = _filters_with_lines(root)
    if not places:
        return False
    level, part, ahead, behind = lot.choice(places)
    port = f"{part.get('id')}.B"
    _merge(level, ahead, behind)
    ahead.set("joins", " ".join(p for p in ahead.get("joins").split() if p != port))
    relief, tank = _fresh(root, "R"), _fresh(root, "T")
    add(level, "relief-valve", relief, setting="20 bar")
    add(level, "reservoir", tank, [builder.port("p", level="below")])
    add(level, "line", _fresh(root, "Y"), joins=f"{port} {relief}.P")
    add(level, "line", _fresh(root, "Y"), joins=f"{relief}.T {tank}.p")
    return True


def datum_gone(root, lot, kind, name):
    """A figure that the file no longer gives."""
    places = [e for e in root.iter(kind) if e.get(name)]
    if not places:
        return False
    del lot.choice(places).attrib[name]
    return True


def off_shaft(root, lot, *kinds):
    """A pump or engine taken off its shaft."""
    places = _places(root, *kinds)
    return bool(places) and _off_shafts(root, lot.choice(places)[1].get("id"))


def flushing_turned(root, lot):
    """A flushing valve with its outlet where a side belongs."""
    places = _places(root, "flushing-valve")
    if not places:
        return False
    level, valve = lot.choice(places)
    side = lot.choice("AB")
    rename_ports(level, valve.get("id"), {side: "F", "F": side})
    return True


def valve_turned(root, lot):
    """Two ports of a directional valve changed over."""
    places = _places(root, "directional-valve")
    if not places:
        return False
    level, valve = lot.choice(places)
    one, other = lot.sample([p.get("id") for p in valve.findall("port")], 2)
    rename_ports(level, valve.get("id"), {one: other, other: one})
    return True


def positions_changed(root, lot):
    """A directional valve that rests elsewhere, lacks or throttles a path, or has another `in`."""
    places = _places(root, "directional-valve")
    if not places:
        return False
    valve = lot.choice(places)[1]
    positions, paths = valve.findall("position"), list(valve.iter("path"))
    what = lot.choice(("rest", "path", "throttled", "in"))
    if what == "rest":
        for each in positions:
            each.attrib.pop("rest", None)
        lot.choice(positions).set("rest", "yes")
    elif what == "in":
        chosen = lot.choice(positions)
        if chosen.get("in"):
            del chosen.attrib["in"]
        else:
            chosen.set("in", lot.choice(("drive-forward", "drive-reverse overrun-reverse")))
    elif not paths:
        return False
    elif what == "path":
        chosen = lot.choice(paths)
        next(p for p in positions if chosen in list(p)).remove(chosen)
    else:
        lot.choice(paths).set("throttled", "yes")
    return True


def pump_changed(root, lot):
    """A two-way pump made one-way, or the other way about."""
    places = _places(root, "pump")
    if not places:
        return False
    level, pump = lot.choice(places)
    if pump.get("flow-directions", "1") == "2":
        pump.set("flow-directions", "1")
        rename_ports(level, pump.get("id"), {"A": "P", "B": "S"})
    else:
        pump.set("flow-directions", "2")
        rename_ports(level, pump.get("id"), {"P": "A", "S": "B"})
    return True


def motor_shorted(root, lot):
    """Both working ports of a motor on one line."""
    found = []
    for level, motor in _places(root, "motor"):
        ends = [line_of(level, f"{motor.get('id')}.{name}") for name in "AB"]
        if None not in ends and ends[0] is not ends[1]:
            found.append((level, motor, *ends))
    if not found:
        return False
    level, motor, one, other = lot.choice(found)
    port = f"{motor.get('id')}.B"
    _drop_port(root, level, port)
    one.set("joins", f"{one.get('joins')} {port}")
    return True


def _at_drains(root):
    return _joined(root, _of_kind("pump", "motor", names="L"))


def _at_charge(root):
    return _joined(root, _of_kind("check-valve", "filter"))


def _at_reliefs(root):
    return _joined(root, _of_kind("relief-valve"))


DAMAGES = {  # name: (weight, what does it to a tree with a lot and says whether it could)
    "check turned": (3, lambda root, lot: turn(root, lot, "check-valve")),
    "relief turned": (2, lambda root, lot: turn(root, lot, "relief-valve")),
    "filter turned": (1, lambda root, lot: turn(root, lot, "filter")),
    "check removed": (3, lambda root, lot: _remove(root, lot, "check-valve")),
    "relief removed": (3, lambda root, lot: _remove(root, lot, "relief-valve")),
    "filter removed": (2, lambda root, lot: _remove(root, lot, "filter")),
    "port off its line": (3, cut_port),
    "lines joined": (2, join_lines),
    "charge line open": (2, lambda root, lot: open_to_reservoir(root, lot, "check-valve",
                                                                "filter")),
    "side open": (1, lambda root, lot: open_to_reservoir(root, lot, "pump", "motor", names="AB")),
    "check made an orifice": (2, check_to_orifice),
    "hand valve anywhere": (1, lambda root, lot: shut_off(root, lot, _joined(root))),
    "hand valve in the charge line": (2, lambda root, lot: shut_off(root, lot, _at_charge(root))),
    "hand valve at a relief": (2, lambda root, lot: shut_off(root, lot, _at_reliefs(root))),
    "hand valve in a drain": (2, lambda root, lot: shut_off(root, lot, _at_drains(root))),
    "hand valve moved": (1, toggle_hand_valve),
    "filter bypassed": (3, filter_bypassed),
    "filter on a branch": (3, filter_on_branch),
    "spring check in a drain": (3, lambda root, lot: _insert(
        root, lot, _at_drains(root), "check-valve",
        opening_pressure=lot.choice(("1 bar", "5 bar", "5 bar")))),
    "relief in a drain": (2, lambda root, lot: _insert(
        root, lot, _at_drains(root), "relief-valve", "PT",
        setting=lot.choice(("1 bar", "8 bar", None)))),
    "check anywhere": (1, lambda root, lot: _insert(root, lot, _joined(root), "check-valve")),
    "orifice anywhere": (1, lambda root, lot: _insert(root, lot, _joined(root), "orifice")),
    "case pressure gone": (2, lambda root, lot: datum_gone(root, lot, "pump", "case-pressure") or
                           datum_gone(root, lot, "motor", "case-pressure")),
    "setting gone": (2, lambda root, lot: datum_gone(root, lot, "relief-valve", "setting")),
    "pump off its shaft": (2, lambda root, lot: off_shaft(root, lot, "pump")),
    "engine gone": (1, lambda root, lot: off_shaft(root, lot, "engine")),
    "flushing valve turned": (2, flushing_turned),
    "directional valve turned": (2, valve_turned),
    "positions changed": (3, positions_changed),
    "pump changed": (3, pump_changed),
    "motor shorted": (2, motor_shorted),
}


def spoil(root, lot, times):
    """Damages the tree so many times; gives the names of what was done."""
    names = list(DAMAGES)
    weights = [DAMAGES[name][0] for name in names]
    done = []
    while len(done) < times:
        name = lot.choices(names, weights)[0]
        if DAMAGES[name][1](root, lot):
            done.append(name)
    return done
