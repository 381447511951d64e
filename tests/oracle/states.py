"""The states of a region and every combination of valve positions that each of them allows.

The terms read here: "States", the table of states, "Directional valves", "Flushing valve follows
the sides", "High and low" and "Other loops in the same region".
"""

from dataclasses import dataclass
from functools import cached_property
from itertools import product

import kinds
from felt import Felt
from loops import find_loops, find_sections
from ways import Standing, vented

RUNNING = ["neutral", "drive-forward", "drive-reverse", "overrun-forward", "overrun-reverse",
           "hold", "lost-signal"]
MOVING = ("drive-forward", "drive-reverse", "overrun-forward", "overrun-reverse")
#: Those in which no valve is operated.
AT_REST = ("hold", "lost-signal", "stopped", "towing")
MOST_COMBINATIONS = 1 << 16

#: state -> the (flow, high side) pairs it stands for; lost-signal: each in turn.
TWO_WAY = {
    "neutral": [("none", None)],
    "drive-forward": [("forward", "A")],
    "drive-reverse": [("reverse", "B")],
    "overrun-forward": [("forward", "B")],
    "overrun-reverse": [("reverse", "A")],
    "hold": [("none", "A"), ("none", "B")],
    "lost-signal": [(flow, high) for flow in ("forward", "reverse") for high in "AB"],
    "towing": [(flow, high) for flow in ("forward", "reverse") for high in "AB"],
    # What load and accumulators leave: nothing, or the pressure of either side.
    "stopped": [("none", None), ("none", "A"), ("none", "B")],
}
#: Where all pumps of a loop deliver one way, whichever way the valves send it: drive has the outlet
#: high, overrun the inlet. Lost-signal follows on each of the four, of several loops on the same one.
ONE_WAY = {**TWO_WAY, "drive-reverse": [("reverse", "A")], "overrun-reverse": [("reverse", "B")],
           "lost-signal": [("forward", "A"), ("forward", "B"), ("reverse", "B"), ("reverse", "A")]}


class Situation:
    """One loop in one state and combination; the other loops of the region stand with it."""

    def __init__(self, survey, state, turn, positions, known=None, others_neutral=False):
        """`turn` counts the (flow, high side) pairs of the state."""
        self.survey = survey
        self.region = survey.region
        self.state = state
        self.flow, self.high = (known.directions if known else TWO_WAY)[state][turn]
        self.positions = positions
        self.known = known
        #: Pumps of loops that stand by in neutral and are not this loop's.
        self.standing_by = {pump for other in survey.known.values() for pump in other.pumps
                            if others_neutral and pump not in known.pumps
                            and survey.region.circuit.components[pump].two_way}
        self.loop = None
        #: (loop, high) of every loop there is: this one, then the others.
        self.loops = []
        towing = state == "towing"
        for loop in survey.loops(self.flow, positions, towing):
            if known and loop.name == known.name:
                self.loop = loop
                self.loops.append((loop, self.high))
        taken = set(self.loop.machines) if self.loop else set()
        for loop in survey.loops("none" if others_neutral else self.flow, positions, towing):
            other = survey.known.get(loop.name)
            if other and other is not known and not taken.intersection(loop.machines):
                high = None if others_neutral else other.directions[state][turn][1]
                self.loops.append((loop, high))
        self.standing = Standing(positions, towing=towing)
        self.standing = Standing(positions, self._low_sides(), towing=towing)
        self.standing = Standing(positions, self.standing.low, self._shifted(), towing)

    def _low_sides(self):
        """Flushing valve -> its port on the low side; one that is missing here is centred."""
        low = {}
        if not any(high for _, high in self.loops):
            return low
        felt = Felt(self.region, self.loops, self.standing)
        for valve in self.region.shuttles:
            at = {port: felt.at_port(self.region.circuit.node[f"{valve.path}.{port}"])
                  for port in "AB"}
            for loop, high in self.loops:
                on = {port: {side.letter: side for other, side, _ in at[port] if other is loop}
                      for port in "AB"}
                if high is None or any(len(sides) != 1 for sides in on.values()):
                    continue
                lows = [port for port in "AB" if high not in on[port]]
                if set(on["A"]) != set(on["B"]) and len(lows) == 1:
                    low[valve.path] = lows[0]
        return low

    def _high(self, node):
        """Does a main side that is high stand at a pilot?"""
        return any(high is not None and side.letter == high
                   for _, side, high in Felt(self.region, self.loops, self.standing).at_pilot(node))

    def _shifted(self):
        """Number -> open, of the ways of piloted and shuttle valves that the sides shift."""
        node, found = self.region.circuit.node, {}
        for way in self.region.ways:
            if way.kind == kinds.HIGHER:
                others = [other.tail for other in self.region.ways
                          if other.owner == way.owner and other is not way]
                if any(map(self._high, others)) and not self._high(way.tail):
                    found[way.number] = False
            elif way.passage.pilot and self._high(node[f"{way.owner}.{way.passage.pilot}"]):
                found[way.number] = way.kind != kinds.ONE_WAY
        return found

    @cached_property
    def vented(self):
        """Nodes with a way to a reservoir that holds no pressure."""
        return vented(self.region, self.standing)

    @cached_property
    def pressureless(self):
        """The same with vented reservoirs alone: a sealed one keeps its pressure."""
        return vented(self.region, self.standing, self.region.circuit.pressurised)

    @cached_property
    def open_ways(self):
        """The passages that are open as everything stands."""
        return [way for way in self.region.ways if self.standing.open(way)]

    @cached_property
    def sections(self):
        """The sections of this loop's actuators, whatever the state."""
        return self.survey.sections(self.positions)[self.known.name] if self.known else []

    @cached_property
    def side_of(self):
        """node -> (loop, main side) it is on."""
        return {node: (loop, side) for loop, _ in self.loops for side in loop.main_sides
                for node in side.nodes}

    @cached_property
    def on_a_side(self):
        """Nodes of any loop's side, main or intermediate (a section is cut off from its loop)."""
        return {node for loop, _ in self.loops for side in loop.sides for node in side.nodes}

    @cached_property
    def loop_machines(self):
        """Machines that are part of a loop in this situation."""
        return {machine for loop, _ in self.loops for machine in loop.machines}

    def is_low_or_neutral(self, side):
        """Is a main side of this loop not the high one?"""
        return self.high is None or side.letter != self.high


@dataclass
class Known:
    """A loop over all combinations: which machines it ever holds, which valves command it."""

    name: str
    pumps: list
    actuators: list
    commanded_by: set
    one_way: bool
    switched: bool  # is a directional valve's passage part of the loop in some position?
    #: The side that is high where any is, for loads that always pull one way ("" if they do not).
    pull: str = ""

    @property
    def directions(self):
        """state -> its (flow, high side) pairs."""
        return ONE_WAY if self.one_way else TWO_WAY

    @property
    def states(self):
        """A loop that only goes one way, whatever the valves, has no reverse."""
        never = {"A": ("drive-reverse", "overrun-forward"),
                 "B": ("drive-forward", "overrun-reverse")}.get(self.pull, ())
        return [state for state in RUNNING if state not in never and not (
            self.one_way and not self.switched and state.endswith("-reverse"))]

    def has(self, situation):
        """Does the loop have the situation's state, with that side high?"""
        return situation.state in self.states and not (
            self.pull and situation.high and situation.high != self.pull)


class Survey:
    """All loops of a region in all combinations, and the situations that the rules ask about."""

    def __init__(self, region):
        self.region = region
        self._loops = {}
        self._sections = {}
        self.combinations = 1
        for valve in region.valves:
            self.combinations *= len(valve.positions)
        self.too_many = self.combinations > MOST_COMBINATIONS
        self.two_way_pumps = any(region.circuit.components[pump].two_way
                                 for pump in region.of_kind("pump"))
        self.known = {}
        self._survey()

    def loops(self, flow, positions, towing=False):
        """The loops for a flow direction (forward, reverse, none) and valve positions."""
        key = (flow if self.two_way_pumps else "none", tuple(sorted(positions.items())), towing)
        if key not in self._loops:
            self._loops[key] = find_loops(self.region, key[0], Standing(positions, towing=towing))
        return self._loops[key]

    def sections(self, positions):
        """loop name -> sections in these positions."""
        key = tuple(sorted(positions.items()))
        if key not in self._sections:
            machines = {name: (loop.pumps, loop.actuators)
                        for name, loop in self.known.items()}
            self._sections[key] = find_sections(self.region, self.loops("none", positions),
                                                positions, machines)
        return self._sections[key]

    def _positions(self, choices):
        """Every combination of one position for each valve."""
        names = [valve.path for valve in self.region.valves]
        return [dict(zip(names, chosen))
                for chosen in product(*(choices[name] for name in names))]

    @cached_property
    def _all(self):
        """valve -> its positions; where they are too many, those at rest (which show the loops)."""
        if self.too_many:
            return {valve.path: valve.rest[:1] for valve in self.region.valves}
        return {valve.path: [position.name for position in valve.positions]
                for valve in self.region.valves}

    def _survey(self):
        """First all combinations say what commands a loop, then those that some state allows say
        which loops there are."""
        everywhere = self._positions(self._all)
        self._know((flow, positions) for positions in everywhere
                   for flow in ("none", "forward", "reverse"))
        for positions in everywhere:
            for name, sections in self.sections(positions).items():
                nodes = set().union(*(section.nodes for section in sections))
                self.known[name].commanded_by.update(
                    way.owner for way in self.region.ways
                    if way.passage.position is not None and {way.tail, way.head} & nodes)
        self._commanding = set().union(*(known.commanded_by for known in self.known.values()))
        if self.region.valves:
            preliminary = dict(self.known)
            # The other loops are once in neutral, so "none" comes with every combination.
            self._know({(flow, tuple(situation.positions.items())): None
                        for known in preliminary.values() for situation in self.situations(known)
                        if known.has(situation) for flow in (situation.flow, "none")})
            for name, known in self.known.items():
                known.commanded_by = preliminary[name].commanded_by
                known.switched = preliminary[name].switched
            self._sections.clear()

    def _know(self, combinations):
        """Sets down the loops of some (flow, positions)."""
        seen = {}
        for flow, positions in combinations:
            for loop in self.loops(flow, dict(positions)):
                pumps, actuators, valves = seen.setdefault(loop.name, (set(), set(), set()))
                pumps.update(loop.pumps)
                actuators.update(loop.actuators)
                valves.update(way.owner for way in loop.ways if way.passage.position is not None)
        components, order = self.region.circuit.components, self.region.in_order
        self.known = {}
        for name, (pumps, actuators, valves) in sorted(
                seen.items(), key=lambda item: components[item[0].partition(":")[2]].order):
            one_way = not any(components[pump].two_way for pump in pumps)
            pull = "" if one_way else self.region.circuit.pull(actuators)
            self.known[name] = Known(name, order(pumps), order(actuators), valves, one_way,
                                     bool(valves), pull)

    def _choices(self, state, commanded_by, others_at_rest=()):
        """valve -> its positions in a state."""
        choices = {}
        for valve in self.region.valves:
            every = self._all[valve.path]
            named = [position.name for position in valve.positions if state in position.states]
            if self.too_many or state in AT_REST or valve.path in others_at_rest:
                choices[valve.path] = valve.rest[:1] if self.too_many else valve.rest
            elif state == "neutral":
                choices[valve.path] = valve.rest if valve.path in commanded_by else every
            else:
                choices[valve.path] = named or every
        return choices

    def situations(self, known):
        """Every situation of one loop: state, direction, positions, the others neutral or alike.

        Those of states that the loop has not got are there too: a machine's drain is asked in all.
        """
        others = [other for other in self.known.values() if other.name != known.name]
        resting = set().union(*(other.commanded_by for other in others)) - known.commanded_by
        for state in RUNNING:
            # In neutral the other loops are neutral either way, so what commands them is at rest.
            apart = self._choices(state, known.commanded_by, resting)
            same = self._choices(state, known.commanded_by) if state != "neutral" else apart
            for turn in range(len(known.directions[state])):
                for positions in self._positions(same):
                    yield Situation(self, state, turn, positions, known)
                if others and state != "neutral":
                    for positions in self._positions(apart):
                        yield Situation(self, state, turn, positions, known, others_neutral=True)

    def idle_situations(self, state):
        """Towing or stopped: the prime mover off; the ways open that are meant for towing, or not."""
        for known in list(self.known.values()) or [None]:
            positions = self._choices(state, known.commanded_by if known else ())
            for turn in range(len(TWO_WAY[state])):
                for chosen in self._positions(positions):
                    yield Situation(self, state, turn, chosen, known)

    def bare_situations(self):
        """The seven states of a region without any loop."""
        for state in RUNNING:
            for turn in range(len(TWO_WAY[state])):
                for positions in self._positions(self._choices(state, self._commanding)):
                    yield Situation(self, state, turn, positions)

    @cached_property
    def all_situations(self):
        """Of every loop in turn, or of the region without loops."""
        if not self.known:
            return list(self.bare_situations())
        return [situation for known in self.known.values() for situation in self.situations(known)]

