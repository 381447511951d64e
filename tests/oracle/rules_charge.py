"""The rules lost-loop, charge-supply and make-up-check, and the oil of the charge pump behind them.

The terms read here: "Charge source", "Feed", "Charge line", and each rule's own definition.
"""

from dataclasses import replace

import kinds
from sure import CARRIES
from turning import delivers
from verdict import Finding, Ledger, Verdict
from ways import arcs, reach


class Charge:
    """Where the oil of the charge sources gets to in one situation.

    A source is a pump, or a store: a reservoir under pressure, or an accumulator, whose oil gets to a
    loop. A store has a charge line only where it does so over a check.
    """

    def __init__(self, situation):
        self.situation = situation
        self.region = situation.region
        self._feed_ways = [way for way in situation.open_ways
                           if way.kind in CARRIES and way.tail != way.head]
        self._table = arcs(self._feed_ways)
        self._plain_table = arcs([way for way in self._feed_ways if way.kind != kinds.METERING])
        for tail, head in self._round_actuators():
            for table in (self._table, self._plain_table):
                table.setdefault(tail, []).append((None, head))
        #: Outlets of the pumps; nodes of the stores; where there is a charge line.
        self.pumped = self._pumped()
        self.stores = [node for node in sorted(self._may_store()) if self._aimed(self._past(node))]
        self.outlets = self.pumped + self.stores
        self.at_lines = [node for node in self.pumped if node not in situation.on_a_side]
        self.at_lines += [node for node in self.stores if node not in situation.on_a_side
                          and self._aimed(self.made_up([node], up_to_sides=True))]

    def _may_store(self):
        """Nodes of reservoirs under pressure and of accumulators, if not open to a vented reservoir."""
        here = {node for way in self.region.ways for node in (way.tail, way.head)}
        circuit = self.region.circuit
        return (here & (circuit.pressurised | circuit.accumulators)) - self.situation.pressureless

    def _aimed(self, nodes):
        """Is a main side among some nodes, or a port of a machine that is in a loop in some state?"""
        machines = [machine for known in self.situation.survey.known.values()
                    for machine in known.pumps + known.actuators]
        ports = [self.region.circuit.displacement_nodes(machine) for machine in machines]
        return any(node in self.situation.side_of for node in nodes) or any(
            not nodes.isdisjoint(both) for both in ports)

    def _past(self, start):
        """What a feed from one node reaches, up to the sides."""
        return self._spread([start], self._table, up_to_sides=True)

    def _round_actuators(self):
        """Round an actuator outside all loops a relief lets oil through in its direction."""
        known = self.situation.survey.known.values()
        motors = [motor for motor in self.region.of_kind("actuator")
                  if not any(motor in loop.actuators for loop in known)]
        ends = [set(self.region.circuit.displacement_nodes(motor)) for motor in motors]
        return [(way.tail, way.head) for way in self.situation.open_ways
                if way.kind in (kinds.PRESSURE_OPENED, kinds.BYPASS)
                and {way.tail, way.head} in ends]

    def _pumped(self):
        """Outlet nodes of all pumps that are charge sources: turned, outside every loop, fed from a reservoir."""
        circuit = self.region.circuit
        drawn = reach(self._feed_ways, self.region.reservoirs)
        found = []
        situation = self.situation
        for pump in self.region.of_kind("pump"):
            if not delivers(situation, pump) or any(
                    pump in known.pumps for known in situation.survey.known.values()):
                continue
            inlet, outlet = circuit.displacement_nodes(pump)
            if circuit.components[pump].two_way:
                if self.situation.state in ("neutral", "hold", "lost-signal"):
                    continue
                if self.situation.flow == "forward":  # from B to A
                    inlet, outlet = outlet, inlet
            lost = situation.pressureless | self.region.reservoirs
            if inlet in drawn and outlet != inlet and outlet not in lost:
                found.append(outlet)
        return found

    def fed(self, metering=True, lasting=False):
        """Nodes that a feed leads to (without metering passages, or by what does not come to an end as
        an accumulator's oil does, if so asked)."""
        finite = self.region.circuit.accumulators - self.region.reservoirs if lasting else set()
        starts = self.pumped + [node for node in self.stores if node not in finite]
        return self._spread(starts, self._table if metering else self._plain_table)

    def _spread(self, starts, table, up_to_sides=False):
        seen = set(starts)
        waiting = list(seen)
        while waiting:
            node = waiting.pop()
            for _, head in self._onward(table, node, up_to_sides):
                if head not in seen:
                    seen.add(head)
                    waiting.append(head)
        return seen

    def _onward(self, table, node, up_to_sides=False):
        """Steps of a feed: no node that keeps no pressure and no reservoir is entered; from a side it
        goes on inside that only, if at all."""
        loop, side = self.situation.side_of.get(node, (None, None))
        inside = {way.number for way in loop.passages} if loop else None
        for way, head in table.get(node, ()):
            if head in self.situation.pressureless or head in self.region.reservoirs:
                continue
            if loop and (up_to_sides or way is None or way.number not in inside
                         or head not in side.nodes):
                continue
            yield way, head

    def line(self, outlets=None):
        """The charge line: from the outlets (all, or those given) by joined, element and hand-valve
        passages."""
        situation = self.situation
        plain = [way for way in situation.open_ways if way.kind in (kinds.ELEMENT, kinds.HAND)]
        starts = [node for node in (self.at_lines if outlets is None else outlets)
                  if node not in situation.on_a_side]
        return reach(plain, starts,
                     but=situation.pressureless | self.region.reservoirs | situation.on_a_side)

    def made_up(self, starts, up_to_sides=False):
        """Nodes behind a check: after it only passages open both ways that are not metering."""
        seen = {(node, False) for node in starts}
        waiting = list(seen)
        while waiting:
            node, behind = waiting.pop()
            for way, head in self._onward(self._table, node, up_to_sides):
                if way is not None and way.kind == kinds.ONE_WAY:
                    step = (head, True)
                else:
                    step = (head, behind and way is not None and way.both
                            and way.kind not in (kinds.METERING, kinds.LEG))
                if step not in seen:
                    seen.add(step)
                    waiting.append(step)
        return {node for node, behind in seen if behind}


def fed_subjects(situation):
    """Main sides where low or neutral, their branches with them, and sections where they exist."""
    if situation.loop:
        for side in situation.loop.main_sides:
            if situation.is_low_or_neutral(side):
                yield side
                yield from side.branches
    yield from situation.sections


def lost_loop(judged):
    """Is a two-way pump, or a machine declared closed-loop, outside every loop in all states?"""
    machines = [part for part in judged.circuit.machines()
                if (part.plays == "pump" and part.two_way)
                or part.attributes.get("closed-loop", "no") == "yes"]
    if not machines:
        if any(survey.known for survey in judged.surveys):
            return [Verdict("lost-loop", "circuit", "circuit", "not-applicable")]
        return [Verdict("lost-loop", "circuit", "circuit", "fail", "note")]
    ledger = Ledger("lost-loop")
    for situation in judged.situations:
        sound = {machine for loop, _ in situation.loops if not loop.short
                 for machine in loop.machines}
        known = situation.known
        for part in machines:
            # A state is the state of a loop: for a machine that of a loop it is ever part of.
            if part in situation.region.machines and (
                    part.path not in judged.loop_machines
                    or part.path in known.pumps + known.actuators):
                ledger.note("component", part.path, situation,
                            Finding("pass" if part.path in sound else "not-applicable"))
    # Only what is lost in all states fails: "outside" is noted as the mildest of all outcomes, so
    # that a single state inside a loop decides, and the states listed are those inside.
    order = {part.path: part.order for part in machines}
    verdicts = sorted(ledger.verdicts(), key=lambda verdict: order[verdict.subject])
    return [replace(verdict, outcome="fail", level="error")
            if verdict.outcome == "not-applicable" else verdict for verdict in verdicts]


def charge_supply(judged):
    """In every running state, does a charge source feed what can be the low side?"""
    ledger = Ledger("charge-supply")
    for situation in judged.loop_situations:
        charge = judged.charge(situation)
        fed, lasting = charge.fed(), charge.fed(lasting=True)
        for side in fed_subjects(situation):
            if not side.nodes.isdisjoint(lasting):
                finding = Finding("pass")
            else:  # an accumulator's oil comes to an end
                finding = Finding("fail", "error" if side.nodes.isdisjoint(fed) else "note")
            ledger.note("side", side.name, situation, finding)
    return list(ledger.verdicts())


def make_up_check(judged):
    """Has every side a make-up check from the charge line, free flow into the loop?"""
    ledger = Ledger("make-up-check")
    for situation in judged.loop_situations:
        charge = judged.charge(situation)
        made_up = charge.made_up(charge.line())
        for side in fed_subjects(situation):
            if not side.nodes.isdisjoint(made_up):
                finding = Finding("pass")
            elif (side.role == "branch" and not side.nodes.isdisjoint(charge.fed())
                  and side.nodes.isdisjoint(charge.fed(metering=False))):
                finding = Finding("fail", "warning")
            else:
                finding = Finding("fail", "error")
            ledger.note("side", side.name, situation, finding)
    return list(ledger.verdicts())
