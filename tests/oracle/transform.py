"""Four changes that must change no verdict: other ids, another order in the file, hoses for lines,
and A and B of the symmetrical machines changed over. And the comparison of what the program says before and
after."""

import collections
import pathlib
import random
import xml.etree.ElementTree as ElementTree

import builder

MIRRORED_STATES = {"drive-forward": "drive-reverse", "drive-reverse": "drive-forward",
                   "overrun-forward": "overrun-reverse", "overrun-reverse": "overrun-forward"}
OTHER_SIDE_HIGH = {"drive-forward": "overrun-forward", "overrun-forward": "drive-forward",
                   "drive-reverse": "overrun-reverse", "overrun-reverse": "drive-reverse"}


class Names:
    """What became of the names: parts and ports by their path from the outermost circuit
    ("U1/P1", "U1/P1.A"), positions by valve. A name that is not listed stayed."""

    def __init__(self):
        self.parts = {}
        self.ports = {}
        self.positions = {}
        self.states = {}

    def part(self, path):
        return self.parts.get(path, path)

    def port(self, path):
        if path in self.ports:
            return self.ports[path]
        part, _, name = path.partition(".")
        return f"{self.part(part)}.{name}"

    def datum(self, text):
        """What is missing: "P1.case-pressure", or of a port "T1.D.level"."""
        port, _, name = text.rpartition(".")
        return f"{self.port(port)}.{name}" if port in self.ports else self.port(text)

    def words(self, text):
        """Of an interlock: "H1 closed", "PS1 below 12 bar", "start E1", "V3.a"."""
        def word(one):
            valve, dot, place = one.partition(".")
            return self.part(valve) + dot + self.position(valve, place)
        return " ".join(word(one) for one in text.split())

    def subject(self, text):
        """Of a waiver: P1, loop:P1, side:P1.A, circuit."""
        what, colon, path = text.rpartition(":")
        return what + colon + (self.port(path) if "." in path else self.part(path))

    def position(self, valve, name):
        return self.positions.get((valve, name), name)

    def state(self, name):
        return self.states.get(name, name)


def inlined(path):
    """The text of a circuit's file with every `use` replaced by the assembly that it brings in."""
    path = pathlib.Path(path)
    root = ElementTree.parse(path).getroot()
    for level in list(builder.levels(root)):
        for use in level.findall("use"):
            assembly = ElementTree.parse(path.parent / use.get("file")).getroot()
            assembly.tag = "assembly"
            assembly.attrib.pop("format", None)
            assembly.set("id", use.get("id"))
            for change in use.findall("set"):
                inside = assembly
                for ident in change.get("of").split("/"):
                    inside = inside.find(f"*[@id='{ident}']")
                inside.set(change.get("attribute"), change.get("value"))
            level[list(level).index(use)] = assembly
    return builder.text(root)


def _with_paths(root):
    """(path before a part's id, level) for the circuit and every assembly."""
    found = [("", root)]
    for path, level in found:  # grows while it is walked
        found += [(f"{path}{e.get('id')}/", e) for e in level.findall("assembly")]
    return found


def _backwards(idents, letter):
    """New ids for old ones, in the opposite order of the alphabet."""
    idents = sorted(idents)
    return {ident: f"{letter}{len(idents) - i:04}" for i, ident in enumerate(idents)}


def _new_names(root):
    """A new name for every part, declared port and position."""
    names = Names()
    for before, level in _with_paths(root):  # from outside in
        above = names.part(before[:-1]) + "/" if before else ""
        elements = [e for e in level if e.tag != "port" and e.get("id")]
        for ident, new in _backwards([e.get("id") for e in elements], "n").items():
            names.parts[before + ident] = above + new
        for element in elements:
            path = before + element.get("id")
            ports = [p.get("id") for p in element.findall("port")]
            for ident, new in _backwards(ports, "q").items():
                names.ports[f"{path}.{ident}"] = f"{names.part(path)}.{new}"
            positions = [p.get("id") for p in element.findall("position")]
            for ident, new in _backwards(positions, "p").items():
                names.positions[path, ident] = new
    return names


def _rename_inside(element, path, names):
    """The declared ports and the positions of one part."""
    def port(ident):
        return names.port(f"{path}.{ident}").rpartition(".")[2]

    for declared in element.findall("port"):
        declared.set("id", port(declared.get("id")))
    for way in element.findall("passage"):
        way.set("from", port(way.get("from")))
        way.set("to", port(way.get("to")))
    for position in element.findall("position"):
        position.set("id", names.position(path, position.get("id")))
        for way in position:
            way.set("from", port(way.get("from")))
            way.set("to", port(way.get("to")))


def renamed(xml):
    """The circuit with other ids for all parts, declared ports and positions, their alphabet the
    other way round. Gives the text and the names."""
    root = ElementTree.fromstring(xml)
    names = _new_names(root)
    for before, level in _with_paths(root):
        for line in builder.lines(level):
            ports = [names.port(before + p) for p in line.get("joins").split()]
            line.set("joins", " ".join(p.rpartition("/")[2] for p in ports))
        for declared in level.findall("port"):
            declared.set("of", names.port(before + declared.get("of")).rpartition("/")[2])
        for shaft in level.findall("shaft"):
            paths = []
            for joined in shaft.get("joins").split():
                ident, dot, end = joined.partition(".")  # "G1.in": a named shaft end
                paths.append((names.part(before + ident) + dot + end).split("/"))
            shaft.set("joins", " ".join("/".join(p[before.count("/"):]) for p in paths))
        for stage in level.iterfind("command/stage"):
            stage.set("of", names.part(stage.get("of")))
        for change in level.iterfind(".//point/set"):
            valve = change.get("of")
            if change.get("position"):
                change.set("position", names.position(valve, change.get("position")))
            change.set("of", names.part(valve))
        for interlock in level.findall("interlock"):
            for name in ("when", "prevents"):
                interlock.set(name, names.words(interlock.get(name)))
        for waiver in level.findall("waiver"):
            waiver.set("subject", names.subject(waiver.get("subject")))
        for element in [e for e in level if e.tag != "port" and e.get("id")]:
            path = before + element.get("id")
            _rename_inside(element, path, names)
            element.set("id", names.part(path).rpartition("/")[2])
    return builder.text(root), names


def shuffled(xml, seed, keep=()):
    """The circuit with all elements, and the ports of every line and shaft, in another order. The
    components of the kinds in `keep` stay in their order among themselves."""
    lot = random.Random(seed)
    root = ElementTree.fromstring(xml)
    for element in root.iter():
        kept = [e for e in element if any(x.tag in keep for x in e.iter())]
        children = list(element)
        if element.tag != "rotary-joint":  # its ports come in pairs
            children = lot.sample(children, len(element))
        in_order = iter(kept)
        element[:] = [next(in_order) if e in kept else e for e in children]
        if element.tag in builder.TIED:
            joins = element.get("joins").split()
            element.set("joins", " ".join(lot.sample(joins, len(joins))))
    return builder.text(root), Names()


def bent(xml):
    """The circuit with a hose for every line and a line for every hose: oil does not know."""
    root = ElementTree.fromstring(xml)
    for level in builder.levels(root):
        for line in builder.lines(level):
            line.tag = "line" if line.tag == "hose" else "hose"
            line.attrib.pop("burst-pressure", None)
            line.attrib.pop("min-bend-radius", None)
    return builder.text(root), Names()


def shares_sections(result):
    """Whether several motors of a loop can stand on one section. It is called after the first of
    them, and in the positions where they are apart each has one of its own: which verdicts are
    gathered under one name then follows the order of the motors in the file."""
    return any(len(loop["actuators"]) > 1 and any(s["role"] == "section" for s in loop["sides"])
               for loop in result["loops"])


def mirrored(xml, pumps=True):
    """The circuit with A and B of every two-way motor and every flushing valve changed over, and
    (`pumps`) of every two-way pump; forward and reverse are changed over with the pumps, and with
    them the sense of what a load drives. What goes one way only is not symmetrical and stays."""
    root = ElementTree.fromstring(xml)
    names = Names()
    for before, level in _with_paths(root):
        for part in builder.parts(level):
            two_way = part.get("flow-directions", "1" if part.tag == "pump" else "2") == "2"
            # A unit may be a pump.
            if part.tag == "flushing-valve" or (two_way and (
                    part.tag == "motor" or (part.tag in ("pump", "pump-motor") and pumps))):
                ident = part.get("id")
                builder.rename_ports(level, ident, {"A": "B", "B": "A"})
                names.ports[f"{before}{ident}.A"] = f"{before}{ident}.B"
                names.ports[f"{before}{ident}.B"] = f"{before}{ident}.A"
    if pumps:
        names.states = MIRRORED_STATES
        for position in root.iter("position"):
            if position.get("in"):
                position.set("in", " ".join(map(names.state, position.get("in").split())))
        for load in root.iter("load"):
            sense = load.get("overrunning-sense", "either")
            load.set("overrunning-sense", {"forward": "reverse", "reverse": "forward"}.get(sense, sense))
    return builder.text(root), names


def pumps_can_be_mirrored(xml, result):
    """Whether forward and reverse may be changed over in all of the circuit. Not where a loop
    knows no reverse (its pumps go one way and no valve reverses them), nor where it has pumps of
    both sorts, one of which would be turned and one not. Nor where a prime mover turns backwards in
    reverse: what a pump with one flow direction then does is not symmetrical."""
    two_way = set()
    if any(mover.get("reversing") == "yes" for mover in
           ElementTree.fromstring(xml).iter("electric-motor")):
        return False
    for before, level in _with_paths(ElementTree.fromstring(xml)):
        two_way |= {before + e.get("id") for e in level.findall("pump")
                    if e.get("flow-directions") == "2"}
        two_way |= {before + e.get("id") for e in level.findall("pump-motor")
                    if e.get("flow-directions", "2") == "2"}
    for loop in result["loops"]:
        turned = {pump in two_way for pump in loop["pumps"]}
        reverse = any("drive-reverse" in side["states"] for side in loop["sides"])
        if turned != {True} and (turned != {False} or not reverse):
            return False
    return True


def _twins(before, after, names):
    """Ids of the sides afterwards -> what they are called before, in the new names. A side is
    named after its first port, and what is first follows the order of the file; so a side that is
    called otherwise is known by the port that named it, which must be on it still."""
    def entries(result):
        return [side for loop in result["loops"] for side in loop["sides"]]

    wanted = {"side:" + names.port(side["id"].partition(":")[2]): side for side in entries(before)}
    known = {side["id"]: side["id"] for side in entries(after) if side["id"] in wanted}
    for side in entries(after):
        if side["id"] in known:
            continue
        for name, twin in wanted.items():
            if (name not in known.values() and twin["role"] == side["role"] and
                    name.partition(":")[2] in side["ports"] and
                    side["id"].partition(":")[2] in map(names.port, twin["ports"])):
                known[side["id"]] = name
                break
    return known


def _loop_of(result, subject):
    """The loop that a verdict's subject is part of, or None."""
    for loop in result["loops"]:
        if subject == loop["id"] or subject in [side["id"] for side in loop["sides"]]:
            return loop["id"]
    return None


def _statements(result, names, called, with_ports, high_changed=()):
    """What the program says, freed of order and of names that follow it: a Counter. `called` gives
    the name of a side."""
    def state(loop, name):
        name = OTHER_SIDE_HIGH.get(name, name) if loop in high_changed else name
        return names.state(name)

    said, loops = collections.Counter(), {}
    for loop in result["loops"]:
        loops[loop["id"]] = (frozenset(map(names.part, loop["pumps"])),
                             frozenset(map(names.part, loop["actuators"])))
        said["loop", *loops[loop["id"]], frozenset(
            (called(side["id"]), side["role"],
             frozenset(state(loop["id"], s) for s in side["states"]),
             frozenset(map(names.port, side["ports"])) if with_ports else None)
            for side in loop["sides"])] += 1
    said.update(("open part", frozenset(map(names.part, part["pumps"])),
                 frozenset(map(names.part, part["actuators"]))) for part in result["open_parts"])
    for verdict in result["verdicts"]:
        kind, ident = verdict["subject"]["type"], verdict["subject"]["id"]
        loop = _loop_of(result, ident)
        if kind in ("side", "loop"):
            # A loop that hangs on a device's unknown inside is in no list.
            subject = called(ident) if kind == "side" else loops.get(
                ident, names.part(ident.partition(":")[2]))
        elif kind == "waiver":
            rule, of, about = ident.partition(" of ")
            subject = rule + of + names.subject(about)
        elif kind == "port":
            subject = names.port(ident)
        else:
            subject = names.part(ident)
        states = frozenset(
            (state(loop, s["name"]),
             frozenset((names.part(v), names.position(v, p))
                       for v, p in s.get("positions", {}).items()))
            for s in verdict.get("states", []))
        missing = frozenset(map(names.datum, verdict.get("missing", [])))
        numbers = tuple(_rounded(verdict.get(q, {}).get("value")) for q in ("measured", "required"))
        said[verdict["rule"], verdict["outcome"], verdict.get("level"), subject, states, missing,
             numbers] += 1
    return said


def _rounded(value):
    """A figure but for its last digits, which follow the order in which it was summed up."""
    return value if value is None else float(f"{value:.12g}")


def _high_sides(loop, called):
    """Names of the main sides that are high when "A is high": the one with the first pump's A (or
    P), the others by the letter of the port that named them."""
    first, high = loop["pumps"][0], set()
    for side in (s for s in loop["sides"] if s["role"] == "main"):
        letters = {p[-1] for p in side["ports"] if p in (f"{first}.{c}" for c in "ABPS")}
        if (letters or {side["id"][-1]}) & {"A", "P"}:
            high.add(called(side["id"]))
    return high


def _high_side_changed(before, after, called):
    """Loops (as named before) whose first pump is another one afterwards and stands the other way
    round on the two lines: what was the A side is the B side."""
    high = {frozenset(loop["pumps"]): _high_sides(loop, called) for loop in after["loops"]}
    return {loop["id"] for loop in before["loops"]
            if _high_sides(loop, str) != high.get(frozenset(loop["pumps"]),
                                                  _high_sides(loop, str))}


def same_verdicts(before, after, names, with_ports=True):
    """Differences between the program's entries for a circuit and for the changed one, as
    (rule, words); `names` says what became of the names. The ports of a side that a valve makes
    longer or shorter are listed as they are in one of its positions, which follows the order of
    the file; `with_ports` says whether they are compared."""
    twins = _twins(before, after, names)

    def called(side):
        return twins.get(side, side)

    reordered = not names.parts and not names.ports
    turned = _high_side_changed(before, after, called) if reordered else set()
    said = _statements(before, names, lambda side: "side:" + names.port(side.partition(":")[2]),
                       with_ports, turned)
    now = _statements(after, Names(), called, with_ports)
    return ([(s[0], f"only before: {_words(s[1:])}") for s in sorted(said - now, key=_words)] +
            [(s[0], f"only after: {_words(s[1:])}") for s in sorted(now - said, key=_words)])


def _words(value):
    """A statement on one line, sets in order."""
    if isinstance(value, frozenset):
        return "{" + ", ".join(sorted(map(_words, value))) + "}"
    if isinstance(value, tuple):
        return "(" + ", ".join(map(_words, value)) + ")"
    return str(value)
