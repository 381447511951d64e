"""Putting a circuit together: parts, nets that become lines, parts gathered in assemblies."""

import xml.etree.ElementTree as ElementTree

LINES = ("line", "hose")
# What is said of the hoses of a circuit. 1600 bar are just four times 400 bar.
HOSES = (dict(), dict(rating="400 bar", burst_pressure="1600 bar"),
         dict(rating="420 bar", burst_pressure="1600 bar"), dict(burst_pressure="1600 bar"),
         dict(rating="400 bar"))
TIED = LINES + ("shaft",)
FUNCTIONS = {"a": "working", "b": "working", "g": "charge", "s": "suction", "d": "drain",
             "r": "return"}


def levels(root):
    """The circuit and every assembly in it, at any depth."""
    yield root
    for assembly in root.iter("assembly"):
        if assembly is not root:
            yield assembly


def parts(level):
    """Components and assemblies that stand directly on a level."""
    return [e for e in level if e.tag not in TIED and e.tag != "port"]


def lines(level):
    return [e for e in level if e.tag in LINES]


def line_of(level, joined):
    """The line of this level that joins a port, or None."""
    return next((e for e in lines(level) if joined in e.get("joins").split()), None)


def add(level, kind, ident, children=(), **attributes):
    """A new element; `_` in an attribute's name stands for `-`, None leaves it out."""
    element = ElementTree.SubElement(level, kind, {"id": ident})
    for name, value in attributes.items():
        if value is not None:
            element.set(name.replace("_", "-"), value)
    for child in children:
        element.append(child)
    return element


def port(ident, **attributes):
    """A declared port of a reservoir, junction, directional valve or assembly."""
    return ElementTree.Element("port", {"id": ident, **attributes})


def position(ident, *paths, rest=False, states=None):
    """A position of a directional valve; a path is "P-A" or, throttled, "P~A"."""
    element = ElementTree.Element("position", {"id": ident})
    if rest:
        element.set("rest", "yes")
    if states:
        element.set("in", states)
    for path in paths:
        throttled = "~" in path
        start, end = path.replace("~", "-").split("-")
        child = ElementTree.SubElement(element, "path", {"from": start, "to": end})
        if throttled:
            child.set("throttled", "yes")
    return element


def text(root):
    """The tree as a file's text."""
    return '<?xml version="1.0" encoding="UTF-8"?>\n' + ElementTree.tostring(root,
                                                                             encoding="unicode")


def rename_ports(level, ident, names):
    """Every mention of a part's ports on its own level (in `joins` and in declared ports) takes
    the new name: {"A": "B", "B": "A"} turns the part round."""
    ports = {f"{ident}.{old}": f"{ident}.{new}" for old, new in names.items()}
    for line in lines(level):
        line.set("joins", " ".join(ports.get(p, p) for p in line.get("joins").split()))
    for declared in level.findall("port"):
        if declared.get("of") in ports:
            declared.set("of", ports[declared.get("of")])


class Builder:
    """Parts and the nets between them. A net is a name and the ports on it; its first letter says
    what the lines are for (see FUNCTIONS). `finish` turns each net into one or several lines."""

    def __init__(self, lot, title):
        self.lot = lot
        self.root = ElementTree.Element("circuit", {"format": "1", "title": title})
        self.nets = {}
        self.counts = {}
        # By the lot's state, not by a draw: the rest of the circuit stays what it was.
        self.hose = HOSES[lot.getstate()[1][0] % len(HOSES)]
        self.drained = []  # machines whose housings are still to be joined to a drain

    def fresh(self, letter):
        """The next free id or net name with this letter."""
        self.counts[letter] = self.counts.get(letter, 0) + 1
        return f"{letter}{self.counts[letter]}"

    def part(self, kind, letter, children=(), **attributes):
        """A component with a fresh id, which is returned."""
        ident = self.fresh(letter)
        add(self.root, kind, ident, children, **attributes)
        return ident

    def join(self, net, *ports):
        self.nets.setdefault(net, []).extend(ports)

    def two_way(self, net, kind, letter, end=None, names="AB", **attributes):
        """A part of two ports from `net` on to the net `end` (or a fresh one), which is returned.
        The part's first port is on `net`."""
        ident = self.part(kind, letter, **attributes)
        end = end or self.fresh(net.rstrip("0123456789") or "n")
        self.join(net, f"{ident}.{names[0]}")
        self.join(end, f"{ident}.{names[1]}")
        return end

    def check(self, start, end, **attributes):
        return self.two_way(start, "check-valve", "C", end, **attributes)

    def relief(self, start, end, setting, **attributes):
        return self.two_way(start, "relief-valve", "R", end, "PT", setting=setting, **attributes)

    def reservoir(self):
        return self.part("reservoir", "T", volume="60 L", breather="yes", level_indicator="yes")

    def tank_port(self, tank, level="below"):
        """A further port of a reservoir, `T1.p3`."""
        element = self.root.find(f"*[@id='{tank}']")
        name = f"p{len(element) + 1}"
        element.append(port(name, level=level))
        return f"{tank}.{name}"

    def shaft(self, *idents):
        add(self.root, "shaft", self.fresh("W"), joins=" ".join(idents))

    def finish(self):
        """Draws the lines. A net of many ports is sometimes split at a junction."""
        for net, ports in self.nets.items():
            if len(ports) < 2:
                continue  # nothing to join it with: the port stays free
            ports = self.lot.sample(ports, len(ports))
            function = FUNCTIONS.get(net[0]) if self.lot.random() < 0.5 else None
            if len(ports) > 2 and self.lot.random() < 0.25:
                cut = self.lot.randrange(1, len(ports))
                ident = self.part("junction", "J", [port("a"), port("b")])
                groups = [ports[:cut] + [f"{ident}.a"], [f"{ident}.b"] + ports[cut:]]
            else:
                groups = [ports]
            for group in groups:
                ident = self.fresh("Q")
                # Every third is a hose, whatever the lot says of the rest.
                number = int(ident[1:])
                if number % 3:
                    add(self.root, "line", ident, joins=" ".join(group), function=function)
                else:
                    add(self.root, "hose", ident, joins=" ".join(group), function=function,
                        **self.hose)
        return self.root


def enclose(root, idents, name):
    """Gathers some of the circuit's own parts (assemblies too: these nest) in a new assembly.
    Lines between them go inside; what goes on outside passes a declared port."""
    assembly = ElementTree.Element("assembly", {"id": name})
    place = list(root).index(next(e for e in root if e.get("id") in idents))
    for part in [e for e in parts(root) if e.get("id") in idents]:
        root.remove(part)
        assembly.append(part)
    for line in lines(root):
        joins = line.get("joins").split()
        inner = [p for p in joins if p.split(".")[0] in idents]
        outer = [p for p in joins if p not in inner]
        if not outer:
            root.remove(line)
            assembly.append(line)
        elif inner:
            if len(inner) > 1:
                inside = ElementTree.SubElement(assembly, line.tag, dict(line.attrib))
                inside.set("id", f"{line.get('id')}i")
                inside.set("joins", " ".join(inner))
            declared = f"x{len(assembly.findall('port')) + 1}"
            assembly.append(port(declared, of=inner[0]))
            line.set("joins", " ".join([f"{name}.{declared}"] + outer))
    for shaft in root.findall("shaft"):
        shaft.set("joins", " ".join(f"{name}/{p}" if p.split("/")[0] in idents else p
                                    for p in shaft.get("joins").split()))
    root.insert(place, assembly)
    return assembly
