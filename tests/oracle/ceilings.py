"""The highest pressure that each node can see in one situation.

The terms read here: "Ceiling", "Sure way", "Relief passage". Where an opening or a setting is not
given, the ceilings are found twice: with `unknown` infinite nothing is limited by it, with 0 all is.
"""

import heapq
import math

import kinds
import meant
from circuit import Groups, reservoir_pressures
from sure import CARRIES, is_sure, senses

INFINITE = math.inf

#: By what a pressure gets from node to node; the displacement of some actuators comes to it.
HANDS_ON = CARRIES | {kinds.PRESSURE_OPENED, kinds.BYPASS, kinds.LEAKAGE}


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
    if part.kind == "priority-valve":
        return INFINITE  # its setting is what it keeps there at the least
    return kinds.pressure(part.attributes.get(_setting_name(part)))


def _datum(circuit, way):
    """The name of what a part's pressure-opened or reduced passage is set to."""
    return f"{way.owner}.{_setting_name(circuit.components[way.owner])}"


def unknown_data(region):
    """Names of the openings and reducing settings of a region that the file does not give."""
    found = set()
    for way in region.ways:
        asked = {kinds.PRESSURE_OPENED: opening, kinds.BYPASS: opening, kinds.REDUCED: reduced_setting}
        if way.kind in asked and asked[way.kind](region.circuit, way) is None:
            found.add(_datum(region.circuit, way))
    return sorted(found)


class Ceilings:
    """Of one situation and its charge oil; `but`: what single data that are not given are taken for."""

    def __init__(self, situation, charge, unknown, but=None):
        self.situation = situation
        self.circuit = situation.region.circuit
        self.unknown = unknown
        self.but = but or {}
        self.reservoirs = reservoir_pressures(self.circuit)
        self._backwards = self._limiting()
        #: Nodes of main sides that are not high (both in neutral), and of those that are.
        self.low, self.high = set(), set()
        for loop, high in situation.loops:
            for side in loop.main_sides:
                (self.high if high and side.letter == high else self.low).update(side.nodes)
        self.sections = situation.sections
        self.pieces = self._pieces()
        #: Node -> least pressure at which oil gets away from it for good; missing: infinite.
        self.limits = self._limits({}, {}, but=self.pieces)
        #: The highest pressure that the charge line can have; 0 where none feeds a piece.
        given = self._spread({outlet: INFINITE for outlet in charge.at_lines
                              if outlet not in self.pieces}, but=self.pieces)
        self.charge = max((given.get(node, 0) for node in self._feeding(charge.fed())), default=0)
        if self.charge == INFINITE:
            self.limits = self._limits({}, {})
        else:
            # The low sides have what the charge oil gives them, whatever else leads to or from them.
            self.limits = self._limits(dict.fromkeys(self.low, self.charge), self._opposite())
        self._ceilings = self._spread(self._drives())

    def at(self, node):
        """The ceiling of a node; 0 where nobody drives it."""
        return self._ceilings.get(node, 0)

    def relieved(self, way):
        """What a relief holds at its inlet at full flow, over what it discharges against."""
        return self._over(way, way.tail, way.head)

    def _over(self, way, tail, head):
        """The same for one sense of a pressure-opened passage: against another piece, that piece is low."""
        held, apart = self._held(way)
        piece = self.pieces.get(head)
        across = piece is not None and self.pieces.get(tail) is not piece
        against = self.charge if across else self.limits.get(head, INFINITE)
        return max(held, against) if apart else held + against

    def _given(self, way, value):
        return self.but.get(_datum(self.circuit, way), self.unknown) if value is None else value

    def _pieces(self):
        """node -> the first piece that holds it: a main side, a section, a port of a machine that is
        in a loop in some state."""
        situation = self.situation
        machines = [machine for known in situation.survey.known.values()
                    for machine in known.pumps + known.actuators]
        nodes = [node for machine in machines for node in self.circuit.displacement_nodes(machine)]
        found = {}
        for piece in [*(side.nodes for loop, _ in situation.loops for side in loop.main_sides),
                      *(section.nodes for section in self.sections), *({node} for node in nodes)]:
            for node in piece:
                found.setdefault(node, piece)
        return found

    def _feeding(self, fed):
        """Nodes of no piece that charge oil gets to, and from which a way leads to a piece."""
        return {tail for way in self.situation.open_ways if way.kind in CARRIES
                for tail, head in senses(way)
                if tail in fed and tail not in self.pieces and head in self.pieces}

    def _held(self, way):
        """(what a relief or bypass holds, does a line lead the oil of its spring chamber away?)."""
        apart = way.kind == kinds.PRESSURE_OPENED and f"{way.owner}.Y" in self.circuit.joined
        return self._given(way, opening(self.circuit, way)), apart

    def _limiting(self):
        """node -> [(node before, opening, is it counted over a drain of its own?)]."""
        table = {}
        for way in self.situation.open_ways:
            if is_sure(way) or way.kind in (kinds.METERING, kinds.LEG):
                held, apart = 0, False  # what a restriction loses is a matter of flow
            elif way.kind == kinds.ONE_WAY:
                held, apart = way.passage.opening, False
            elif way.kind in (kinds.PRESSURE_OPENED, kinds.BYPASS):
                held, apart = self._held(way)
            else:
                continue
            for tail, head in senses(way):
                table.setdefault(head, []).append((tail, held, apart))
        return table

    def _opposite(self):
        """Node -> limit by a relief into another piece: the sides of a loop are not high at once."""
        found = {}
        for way in self.situation.open_ways:
            for tail, head in senses(way) if way.kind == kinds.PRESSURE_OPENED else ():
                piece = self.pieces.get(head)
                if piece is not None and self.pieces.get(tail) is not piece and tail not in self.low:
                    found[tail] = min(self._over(way, tail, head), found.get(tail, INFINITE))
        return found

    def _limits(self, given, at_most, but=()):
        """`given` stands as it is; oil ends in a reservoir, and goes through none, nor to what is in
        `but`."""
        found = {}
        fixed = {**given, **self.reservoirs}
        waiting = [(pressure, node) for node, pressure in fixed.items()]
        waiting += [(pressure, node) for node, pressure in at_most.items() if node not in fixed]
        heapq.heapify(waiting)
        while waiting:
            pressure, node = heapq.heappop(waiting)
            if node in found or pressure == INFINITE:
                continue
            found[node] = pressure
            for before, held, apart in self._backwards.get(node, ()):
                if before not in found and before not in fixed and before not in but:
                    more = max(held, pressure) if apart else held + pressure
                    heapq.heappush(waiting, (more, before))
        return found

    def _drives(self):
        """Node -> the pressure that something makes there."""
        drives = dict.fromkeys(self.low, self.charge)
        sections = [node for section in self.sections for node in section.nodes]
        for node in [*self._delivering(), *self.high, *sections, *self.circuit.accumulators]:
            drives[node] = INFINITE
        return {**drives, **self.reservoirs}

    def _drawing(self):
        """Pump that has a flow -> its inlet."""
        flows = {pump: meant.flowing(self.situation, pump)
                 for pump in self.situation.region.of_kind("pump")
                 if pump not in self.situation.standing_by}
        return {pump: ends[0] for pump, ends in flows.items() if ends}

    def _delivering(self):
        """Outlets of the pumps that have a flow, but for those that send it round to their inlets."""
        together = Groups()
        for way in self.situation.open_ways:
            if way.both and (is_sure(way) or way.kind in (kinds.METERING, kinds.LEG)):
                together.join([way.tail, way.head])
        flows = [meant.flowing(self.situation, pump) for pump in self.situation.region.of_kind("pump")
                 if pump not in self.situation.standing_by]
        return [ends[1] for ends in flows if ends and together.find(ends[0]) != together.find(ends[1])]

    def _hands_on(self):
        """node -> [(node behind, the most that gets there)]."""
        moved = self.situation.region.of_kind("actuator")
        drawn = self._drawing()
        table = {}
        for way in self.situation.open_ways:
            if way.kind not in HANDS_ON and way.owner not in moved:
                continue
            most = INFINITE
            if way.kind == kinds.REDUCED:
                most = self._given(way, reduced_setting(self.circuit, way))
            for tail, head in senses(way):
                # A pump draws in itself what leaks into its inlet.
                if way.kind == kinds.LEAKAGE and drawn.get(way.owner) == head:
                    continue
                # What a main side has is made there, not by a motor between the sides.
                if way.kind != kinds.DISPLACEMENT or head not in self.low | self.high:
                    table.setdefault(tail, []).append((head, most))
        return table

    def _spread(self, drives, but=()):
        """The highest first: what it hands on can be no higher. Nothing gets to what is in `but`."""
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
                if behind not in found and behind not in self.reservoirs and behind not in but:
                    heapq.heappush(waiting, (-limited(behind, min(-pressure, most)), behind))
        return found
