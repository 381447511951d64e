"""The highest pressure that each node can see in one situation.

The terms read here: "Ceiling", "Sure way", "Relief passage". Where an opening or a setting is not
given, the ceilings are found twice: with `unknown` infinite nothing is limited by it, with 0 all is.
"""

import heapq
import math

import kinds
import meant

INFINITE = math.inf

#: By what oil gets away at the pressure behind; a hand valve only where it is locked open.
SURE = {kinds.ELEMENT, kinds.SWITCHED, kinds.SHUTTLE, kinds.HIGHER, kinds.PILOTED, kinds.UNLOADED}
#: By what a pressure gets from node to node; the displacement of some actuators comes to it.
HANDS_ON = SURE | {kinds.HAND, kinds.ONE_WAY, kinds.METERING, kinds.LEG, kinds.PRESSURE_OPENED,
                   kinds.BYPASS, kinds.LEAKAGE, kinds.REDUCED}


def sure(way):
    """Does a way that stands open let oil past whatever somebody does?"""
    return way.kind in SURE or (way.kind == kinds.HAND and way.passage.locked)


def opening(circuit, way):
    """What a pressure-opened passage holds at its full flow, else at its setting; None: not given."""
    full = circuit.components[way.owner].attributes.get("full-flow-pressure")
    if way.kind == kinds.PRESSURE_OPENED and full is not None:
        return kinds.pressure(full)
    return way.passage.opening


def _setting_name(part):
    """The attribute that holds what a part's pressure-opened or reduced passage is set to."""
    return {"device": "opening", "pilot-control-valve": "max-pressure"}.get(part.kind, "setting")


def reduced_setting(circuit, way):
    """What a reduced passage hands on at most; None: not given."""
    part = circuit.components[way.owner]
    if part.kind == "device":
        return way.passage.opening
    return kinds.pressure(part.attributes.get(_setting_name(part)))


def unknown_data(region):
    """Names of the openings and reducing settings of a region that the file does not give."""
    found = set()
    for way in region.ways:
        asked = {kinds.PRESSURE_OPENED: opening, kinds.BYPASS: opening, kinds.REDUCED: reduced_setting}
        if way.kind in asked and asked[way.kind](region.circuit, way) is None:
            found.add(f"{way.owner}.{_setting_name(region.circuit.components[way.owner])}")
    return sorted(found)


def sealed(part):
    """Does gas keep a pressure in a reservoir? Not where it breathes, whatever the file says of one."""
    return "pressure" in part.attributes and part.attributes.get("breather", "no") != "yes"


def reservoir_pressures(circuit):
    """Reservoir's node -> what gas keeps in it; 0 in a vented one."""
    found = {}
    for part in circuit.components.values():
        if part.kind == "reservoir":
            held = kinds.pressure(part.attributes["pressure"] if sealed(part) else "0 bar")
            for port in part.ports:
                node = circuit.node[f"{part.path}.{port}"]
                found[node] = min(held, found.get(node, held))
    return found


def delivering(situation):
    """The outlet of every pump that turns, ahead where it matters, and has a flow."""
    circuit = situation.region.circuit
    # A prime mover of variable speed that drives a loop's pump stands in neutral.
    still = {circuit.drive[pump] for known in situation.survey.known.values()
             for pump in known.pumps if pump in circuit.turned} if situation.high is None else ()
    found = []
    for pump in situation.region.of_kind("pump"):
        if pump not in circuit.turned:
            continue
        drive = circuit.drive[pump]
        movers = circuit.movers[drive]
        if drive in still and all(mover.get("variable-speed") == "yes" for mover in movers):
            continue
        if not circuit.components[pump].two_way and situation.flow == "reverse" and all(
                mover.get("reversing") == "yes" for mover in movers):
            continue
        ends = meant.ends(situation, pump)
        if ends:
            found.append(ends[1])
    return found


class Ceilings:
    """Of one situation; `outlets` are those of its charge sources."""

    def __init__(self, situation, outlets, unknown):
        self.situation = situation
        self.circuit = situation.region.circuit
        self.unknown = unknown
        self.reservoirs = reservoir_pressures(self.circuit)
        self._backwards = self._limiting()
        #: Nodes of main sides that are not high (both in neutral), and of those that are.
        self.low, self.high = set(), set()
        for loop, high in situation.loops:
            for side in loop.main_sides:
                (self.high if high and side.letter == high else self.low).update(side.nodes)
        limits = self._limits({})
        charged = [limits.get(node, INFINITE) for node in outlets if node not in situation.on_a_side]
        #: The highest pressure that a charge source can have; infinite without any.
        self.charge = max(charged, default=INFINITE)
        #: Node -> least pressure at which oil gets away from it for good; missing: infinite.
        self.limits = limits if self.charge == INFINITE else self._limits(
            dict.fromkeys(self.low, self.charge))
        self._ceilings = self._spread(self._drives())

    def at(self, node):
        """The ceiling of a node; 0 where nobody drives it."""
        return self._ceilings.get(node, 0)

    def _given(self, value):
        return self.unknown if value is None else value

    def _limiting(self):
        """node -> [(node before, opening, is it counted over a drain of its own?)]."""
        table = {}
        for way in self.situation.open_ways:
            apart = False
            if sure(way):
                held = 0
            elif way.kind == kinds.ONE_WAY:
                held = way.passage.opening
            elif way.kind in (kinds.PRESSURE_OPENED, kinds.BYPASS):
                held = self._given(opening(self.circuit, way))
                # A line leads the oil of its spring chamber away.
                apart = way.kind == kinds.PRESSURE_OPENED and f"{way.owner}.Y" in self.circuit.joined
            else:
                continue
            table.setdefault(way.head, []).append((way.tail, held, apart))
            if way.both:
                table.setdefault(way.tail, []).append((way.head, held, apart))
        return table

    def _limits(self, seeds):
        """Oil ends in a reservoir, and goes through none."""
        found = {}
        waiting = [(pressure, node) for node, pressure in {**seeds, **self.reservoirs}.items()]
        heapq.heapify(waiting)
        while waiting:
            pressure, node = heapq.heappop(waiting)
            if node in found or pressure == INFINITE:
                continue
            found[node] = pressure
            for before, held, apart in self._backwards.get(node, ()):
                if before not in found and before not in self.reservoirs:
                    more = max(held, pressure) if apart else held + pressure
                    heapq.heappush(waiting, (more, before))
        return found

    def _drives(self):
        """Node -> the pressure that something makes there."""
        situation = self.situation
        drives = dict.fromkeys(self.low, self.charge)
        accumulators = [self.circuit.node[f"{part.path}.A"] for part in
                        self.circuit.components.values() if part.kind == "accumulator"]
        sections = [node for found in situation.survey.sections(situation.positions).values()
                    for section in found for node in section.nodes]
        for node in [*delivering(situation), *self.high, *sections, *accumulators]:
            drives[node] = INFINITE
        return {**drives, **self.reservoirs}

    def _hands_on(self):
        """node -> [(node behind, the most that gets there)]."""
        outside = meant.outside_loops(self.situation, "actuator")
        table = {}
        for way in self.situation.open_ways:
            if way.kind not in HANDS_ON and not (way.kind == kinds.DISPLACEMENT
                                                 and way.owner in outside):
                continue
            most = INFINITE
            if way.kind == kinds.REDUCED:
                most = self._given(reduced_setting(self.circuit, way))
            table.setdefault(way.tail, []).append((way.head, most))
            if way.both:
                table.setdefault(way.head, []).append((way.tail, most))
        return table

    def _spread(self, drives):
        """The highest first: what it hands on can be no higher."""
        table, found = self._hands_on(), {}

        def limited(node, pressure):
            return min(pressure, self.limits.get(node, INFINITE))

        waiting = [(-limited(node, pressure), node) for node, pressure in drives.items()]
        heapq.heapify(waiting)
        while waiting:
            pressure, node = heapq.heappop(waiting)
            if node in found:
                continue
            found[node] = -pressure
            for behind, most in table.get(node, ()):
                if behind not in found and behind not in self.reservoirs:
                    heapq.heappush(waiting, (-limited(behind, min(-pressure, most)), behind))
        return found
