"""What several of the newer rules share: feeds, charge pumps that might be meant, and what the reader
of circuits leaves out (lines as elements, shafts, interlocks).

The terms read here: "Feed", "Charge source", "Charge line" and the words settled beside the rules.
"""

import os
import xml.etree.ElementTree as ElementTree
from copy import copy

import kinds
from rules_charge import FEED
from rules_pressure import SURE
from ways import arcs, reach

MOVING = ("drive-forward", "drive-reverse", "overrun-forward", "overrun-reverse")


class Drawn:
    """Lines, shafts and interlocks as the file has them, every name as a path from the outermost circuit."""

    def __init__(self, path):
        root = ElementTree.parse(path).getroot()
        #: (path of the line or hose, the ports that it joins), in the order of the file.
        self.lines = []
        #: For each shaft the parts that it names.
        self.shafts = []
        self._outer = {}
        self._read(root, "", os.path.dirname(path))
        self.lines = [(line, [self._port(port) for port in joins]) for line, joins in self.lines]
        #: What some interlock's condition names: a part, whether or not with one of its positions.
        self.watched = {interlock.get("when").split()[0].partition(".")[0]
                        for interlock in root.findall("interlock")}

    def _read(self, element, prefix, folder):
        """Takes down what stands on one level, going into assemblies where they stand."""
        for child in element:
            if child.tag in ("line", "hose"):
                self.lines.append((prefix + child.get("id"),
                                   [prefix + port for port in child.get("joins").split()]))
            elif child.tag == "shaft":
                self.shafts.append({prefix + end.partition(".")[0]
                                    for end in child.get("joins").split()})
            elif child.tag == "assembly":
                self._inside(child, prefix + child.get("id"), folder)
            elif child.tag == "use":
                file = os.path.join(folder, child.get("file"))
                self._inside(ElementTree.parse(file).getroot(), prefix + child.get("id"),
                             os.path.dirname(file))

    def _inside(self, element, path, folder):
        """An assembly's inside, and what its declared ports stand for."""
        self._read(element, path + "/", folder)
        for port in element.findall("port"):
            self._outer[f"{path}.{port.get('id')}"] = f"{path}/{port.get('of')}"

    def _port(self, name):
        """The port behind a declared one, through as many assemblies as there are."""
        while name in self._outer:
            name = self._outer[name]
        return name


def drawn(circuit):
    """The lines, shafts and interlocks of a circuit that says from which file it is (`circuit.path`)."""
    if not hasattr(circuit, "drawn"):
        circuit.drawn = Drawn(circuit.path)
    return circuit.drawn


def running(judged):
    """The situations of every loop in the states that it has, and of what hangs together without one."""
    return [situation for situation in judged.situations
            if situation.known is None or situation.known.has(situation)]


def in_order(judged, verdicts):
    """Verdicts on components in the order of the file."""
    return sorted(verdicts, key=lambda verdict: judged.circuit.components[verdict.subject].order)


def is_sure(way):
    """Can nobody isolate it: no hand valve but a locked one?"""
    return way.kind in SURE or (way.kind == kinds.HAND and way.passage.locked)


def ends(situation, pump):
    """A pump's (inlet, outlet) as the state's flow has it; None for a two-way pump without any."""
    inlet, outlet = situation.region.circuit.displacement_nodes(pump)
    if not situation.region.circuit.components[pump].two_way:
        return inlet, outlet
    # Forward is from B to A.
    return {"forward": (outlet, inlet), "reverse": (inlet, outlet)}.get(situation.flow)


def delivers(situation, pump):
    """Is a pump turned, and the right way round, in this state?"""
    circuit = situation.region.circuit
    if pump not in circuit.turned or ends(situation, pump) is None:
        return False
    drive = circuit.drive[pump]
    movers = circuit.movers[drive]
    if situation.state == "neutral" and all(mover.get("variable-speed") == "yes" for mover in movers):
        # It stands if a loop's pump stands on it.
        if any(drive == circuit.drive[other] for known in situation.survey.known.values()
               for other in known.pumps):
            return False
    return (circuit.components[pump].two_way or situation.flow != "reverse"
            or not all(mover.get("reversing") == "yes" for mover in movers))


def outside_loops(situation, plays):
    """The pumps (or actuators) of a region that no loop ever holds, in the order of the file."""
    taken = {machine for known in situation.survey.known.values()
             for machine in known.pumps + known.actuators}
    return [path for path in situation.region.of_kind(plays) if path not in taken]


def round_actuators(situation):
    """(from, to) of the reliefs round an actuator outside all loops: a feed passes them."""
    circuit = situation.region.circuit
    motors = [set(circuit.displacement_nodes(motor)) for motor in outside_loops(situation, "actuator")]
    return [(way.tail, way.head) for way in situation.open_ways
            if way.kind in (kinds.PRESSURE_OPENED, kinds.BYPASS) and {way.tail, way.head} in motors]


def feed_ways(situation):
    """What is open and may be part of a feed."""
    return [way for way in situation.open_ways if way.kind in FEED and way.tail != way.head]


def flows(situation, ways, starts):
    """Nodes that oil gets to over some ways and past actuators with a relief round them; never into a
    reservoir, and from a main side on inside that side only."""
    table = arcs(ways)
    for tail, head in round_actuators(situation):
        table.setdefault(tail, []).append((None, head))
    seen = set(starts)
    waiting = list(seen)
    while waiting:
        node = waiting.pop()
        loop, side = situation.side_of.get(node, (None, None))
        inside = {way.number for way in loop.passages} if loop else ()
        for way, head in table.get(node, ()):
            leaves = loop and (way is None or way.number not in inside or head not in side.nodes)
            if head not in seen and head not in situation.region.reservoirs and not leaves:
                seen.add(head)
                waiting.append(head)
    return seen


def to_be_fed(situation):
    """Nodes of the loop's main sides and their branches, and of its sections."""
    sides = (situation.loop.main_sides if situation.loop else []) + situation.sections
    return frozenset().union(*(side.nodes for side in sides))


def candidates(situation):
    """(pump, outlet) of what may be the loop's charge pump, whether or not it is turned, finds oil or
    keeps it."""
    found = []
    for pump in outside_loops(situation, "pump"):
        both = ends(situation, pump)
        if both and both[1] not in situation.region.reservoirs and not to_be_fed(situation).isdisjoint(
                flows(situation, feed_ways(situation), [both[1]])):
            found.append((pump, both[1]))
    return found


def line_of(situation, outlet):
    """The charge line at a pump's outlet, vented nodes and all; empty where that is on a side."""
    if outlet in situation.on_a_side:
        return set()
    plain = [way for way in situation.open_ways if way.kind in (kinds.ELEMENT, kinds.HAND)]
    return reach(plain, [outlet], but=situation.region.reservoirs | situation.on_a_side)


def feeding(judged, situation):
    """Outlets of the charge sources whose own feed gets to the loop."""
    charge, found = judged.charge(situation), []
    for outlet in charge.outlets:
        alone = copy(charge)
        alone.outlets = [outlet]
        if not to_be_fed(situation).isdisjoint(alone.fed()):
            found.append(outlet)
    return found
