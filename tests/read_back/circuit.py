"""What a drawing should say, from the circuit's XML alone: components with their options, nets,
shafts.

A label is the designation where one is given, else the path of idents. Junctions only join; the
ports of a reservoir are the reservoir."""

import dataclasses
import pathlib
import xml.etree.ElementTree as ElementTree

import kinds
from nets import Union

@dataclasses.dataclass
class Component:
    kind: str  # as the file has it
    label: str
    path: str
    attributes: dict
    # Positions as (ident, at rest, [(from, to, throttled)]).
    positions: list = dataclasses.field(default_factory=list)
    levels: dict = dataclasses.field(default_factory=dict)  # declared ports -> level


@dataclasses.dataclass
class Circuit:
    components: dict = dataclasses.field(default_factory=dict)  # path -> Component
    lines: list = dataclasses.field(default_factory=list)  # (ports as path.port, function)
    hoses: dict = dataclasses.field(default_factory=dict)  # path -> ports
    named_lines: dict = dataclasses.field(default_factory=dict)  # path -> function
    shafts: list = dataclasses.field(default_factory=list)
    assemblies: dict = dataclasses.field(default_factory=dict)  # path -> declared ports
    union: Union = dataclasses.field(default_factory=Union)
    junctions: set = dataclasses.field(default_factory=set)

    def end(self, port):
        """(label, port) of a component's port; None for a port of a junction or an assembly."""
        path, _, name = port.rpartition(".")
        component = self.components.get(path)
        if component is None:
            return None
        return (component.label, "" if component.kind == "reservoir" else name)

    def nets(self):
        """Sets of two or more ends that are one node."""
        found = (frozenset(filter(None, map(self.end, group))) for group in self.union.sets())
        return {net for net in found if len(net) > 1}

    def hoses_of(self, net):
        """Least and greatest number of hoses that a net, made of whole nodes, can show: one that
        ends at a junction may have no stretch of its own on the sheet."""
        nodes = [group for group in self.union.sets()
                 if any(self.end(port) in net for port in group)]
        own = [ports for ports in self.hoses.values() if any(ports[0] in n for n in nodes)]
        return sum(all(map(self.end, ports)) for ports in own), len(own)

    def letters_out(self, assembly):
        """Declared ports of an assembly that a net joins to something outside it."""
        out = set()
        for group in self.union.sets():
            outside = any(self.end(p) and not p.startswith(assembly + "/") for p in group)
            out |= {letter for letter in self.assemblies[assembly]
                    if outside and f"{assembly}.{letter}" in group}
        return out

    def dashes(self):
        """Ends of one line's net -> the only dash its lines may have, where all of them have a
        function."""
        result = {}
        for group in self.union.sets():
            functions = [function for ports, function in self.lines if ports and ports[0] in group]
            classes = {"dashed" if f in ("drain", "pilot") else "solid" for f in functions}
            if None not in functions and len(classes) == 1:
                result[frozenset(filter(None, map(self.end, group)))] = classes.pop()
        return result


def load(path):
    path = pathlib.Path(path)
    circuit = Circuit()
    _fill(circuit, ElementTree.parse(path).getroot(), "", path.parent, {})
    return circuit


def _fill(circuit, parent, prefix, folder, overrides):
    """Adds the parts of a circuit or an assembly; overrides: ident of a part -> attributes set by
    a `use`."""
    for element in parent:
        ident = prefix + element.get("id", "")
        attributes = {**element.attrib, **overrides.get(element.get("id"), {})}
        if element.tag in kinds.KINDS:
            _component(circuit, element, ident, attributes)
        elif element.tag == "junction":
            circuit.junctions.add(ident)
            ports = [f"{ident}.{p.get('id')}" for p in element.findall("port")]
            for port in ports:
                circuit.union.join(ports[0], port)
        elif element.tag in ("line", "hose"):
            ports = [prefix + p for p in attributes["joins"].split()]
            circuit.named_lines[ident] = attributes.get("function")
            circuit.lines.append((ports, attributes.get("function")))
            if element.tag == "hose":
                circuit.hoses[ident] = ports
            for port in ports:
                circuit.union.join(ports[0], port)
        elif element.tag == "shaft":
            circuit.shafts.append([prefix + p for p in attributes["joins"].split()])
        elif element.tag in ("assembly", "use"):
            inner, base = element, folder
            if element.tag == "use":
                file = folder / attributes["file"]
                inner, base = ElementTree.parse(file).getroot(), file.parent
            circuit.assemblies[ident] = [port.get("id") for port in inner.findall("port")]
            given = {}
            for change in element.findall("set"):
                given.setdefault(change.get("of"),
                                 {})[change.get("attribute")] = change.get("value")
            _fill(circuit, inner, ident + "/", base, given)
            for port in inner.findall("port"):
                circuit.union.join(f"{ident}.{port.get('id')}", f"{ident}/{port.get('of')}")


def _component(circuit, element, path, attributes):
    component = Component(element.tag, attributes.get("designation", path), path, attributes)
    for position in element.findall("position"):
        component.positions.append((position.get("id"), position.get("rest") == "yes", [
            (p.get("from"), p.get("to"), p.get("throttled") == "yes")
            for p in position.findall("path")]))
    for port in element.findall("port"):
        component.levels[port.get("id")] = port.get("level")
    circuit.components[path] = component


def turning(circuit):
    """Sets of labels that turn together, of gearboxes with the name of the end."""
    union = Union()
    for joins in circuit.shafts:
        for path in joins:
            union.join(joins[0], path)
    def called(name):
        path, dot, end = name.partition(".")
        component = circuit.components[path]
        return component.label + (dot + end if component.kind == "gearbox" else "")

    return {frozenset(called(p) for p in group)
            for group in union.sets() if len(group) > 1}
