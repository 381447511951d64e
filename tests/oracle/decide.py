"""All rules over one circuit; as a command, `python3 decide.py FILE` prints the verdicts."""

import argparse
from dataclasses import dataclass, field, replace
from functools import cached_property

import circuit as circuit_file
import kinds
import meant
from ceilings import Ceilings
from piping import Pipes
from rules_accumulators import accumulator_safety
from rules_brakes import load_holding, parking_brake, towing_bypass
from rules_charge import Charge, charge_supply, lost_loop, make_up_check
from rules_charge_line import charge_backflow, charge_vented
from rules_control import control_supply, neutral_on_loss
from rules_definitions import unused_definition, waivers
from rules_drains import case_drain_return, filter_in_drain
from rules_drawing import dangling_line, shorted_ports
from rules_feeding import charge_pump_drive, charge_pump_inlet, charge_relief, make_up_path
from rules_filtration import filtration
from rules_flushing import cooling, flushing_side, loop_flushing
from rules_hoses import hose_safety
from rules_joins import isolated_part, line_function, unconnected_port
from rules_pressure import case_drain_path, crossport_relief
from rules_pumps import blocked_pump, double_source, filter_reversal
from rules_rating import pressure_rating
from rules_relief import relief_setting
from rules_rotation import reversed_rotation
from rules_settings import flushing_setting
from rules_sides import intermediate_side, unequal_cylinder
from rules_suction import reservoir_balance, suction_shut_off
from rules_volumes import pressure_intensification, trapped_volume
from states import MOVING, RUNNING, Survey
from verdict import Verdict
from ways import regions

RULES = {
    "lost-loop": lost_loop,
    "charge-supply": charge_supply,
    "charge-vented": charge_vented,
    "charge-pump-inlet": charge_pump_inlet,
    "charge-pump-drive": charge_pump_drive,
    "charge-relief": charge_relief,
    "charge-backflow": charge_backflow,
    "make-up-check": make_up_check,
    "make-up-path": make_up_path,
    "intermediate-side": intermediate_side,
    "unequal-cylinder": unequal_cylinder,
    "crossport-relief": crossport_relief,
    "relief-setting": relief_setting,
    "pressure-rating": pressure_rating,
    "pressure-intensification": pressure_intensification,
    "hose-safety": hose_safety,
    "trapped-volume": trapped_volume,
    "blocked-pump": blocked_pump,
    "filtration": filtration,
    "filter-reversal": filter_reversal,
    "filter-in-drain": filter_in_drain,
    "case-drain-path": case_drain_path,
    "case-drain-return": case_drain_return,
    "loop-flushing": loop_flushing,
    "flushing-side": flushing_side,
    "flushing-setting": flushing_setting,
    "cooling": cooling,
    "suction-shut-off": suction_shut_off,
    "reservoir-balance": reservoir_balance,
    "control-supply": control_supply,
    "neutral-on-loss": neutral_on_loss,
    "load-holding": load_holding,
    "parking-brake": parking_brake,
    "towing-bypass": towing_bypass,
    "accumulator-safety": accumulator_safety,
    "unconnected-port": unconnected_port,
    "dangling-line": dangling_line,
    "shorted-ports": shorted_ports,
    "isolated-part": isolated_part,
    "line-function": line_function,
    "double-source": double_source,
    "unused-definition": unused_definition,
    "reversed-rotation": reversed_rotation,
}


@dataclass
class LoopFound:
    """A loop over all states, as the list of loops gives it."""

    id: str
    pumps: list
    actuators: list
    #: (role, id) -> the states it exists in.
    sides: dict = field(default_factory=dict)


class Judged:
    """A circuit with everything that the rules share."""

    def __init__(self, circuit, otherwise=()):
        """`otherwise`: the same with other insides of the devices that nobody knows."""
        self.circuit = circuit
        self.otherwise = otherwise
        self.surveys = [Survey(region) for region in regions(circuit)]
        self._charges = {}
        self._candidates = {}
        self._ceilings = {}

    @cached_property
    def situations(self):
        """Every situation of every region, in all seven running states."""
        return [situation for survey in self.surveys for situation in survey.all_situations]

    @cached_property
    def towing_situations(self):
        """Those of every region while the machine is towed."""
        return [situation for survey in self.surveys
                for situation in survey.idle_situations("towing")]

    @cached_property
    def stopped_situations(self):
        """Those of every region with the prime mover off."""
        return [situation for survey in self.surveys
                for situation in survey.idle_situations("stopped")]

    @cached_property
    def pipes(self):
        """The pipes of the circuit."""
        return Pipes(self.circuit)

    @cached_property
    def loop_situations(self):
        """Those of a loop, in the states that the loop has."""
        return [situation for situation in self.situations
                if situation.known and situation.known.has(situation)]

    @cached_property
    def moving_loop_situations(self):
        """Those of a loop in motion that is there and not short-circuited."""
        return [situation for situation in self.loop_situations if situation.state in MOVING
                and situation.loop and not situation.loop.short]

    @cached_property
    def loop_machines(self):
        """Every machine that is part of a loop in any combination."""
        return {machine for survey in self.surveys for known in survey.known.values()
                for machine in known.pumps + known.actuators}

    def charge(self, situation):
        """The charge oil of a situation, found once."""
        if id(situation) not in self._charges:
            self._charges[id(situation)] = Charge(situation)
        return self._charges[id(situation)]

    def ceilings(self, situation, unknown):
        """Ceilings of a situation, what is not given taken for `unknown`, found once."""
        key = id(situation), unknown
        if key not in self._ceilings:
            self._ceilings[key] = Ceilings(situation, self.charge(situation), unknown)
        return self._ceilings[key]

    def candidates(self, situation):
        """(pump, outlet) of what may be a charge pump of the situation's loop, found once."""
        if id(situation) not in self._candidates:
            self._candidates[id(situation)] = meant.candidates(situation)
        return self._candidates[id(situation)]

    @cached_property
    def loops(self):
        """The loops there are, each with every side of every state."""
        found = {}
        for situation in self.loop_situations:
            known = situation.known
            loop = found.setdefault(known.name, LoopFound(known.name, known.pumps, known.actuators))
            sides = list(situation.loop.sides) if situation.loop else []
            sides += [branch for side in sides for branch in side.branches] + situation.sections
            for side in sides:
                states = loop.sides.setdefault((side.role, side.name), [])
                if situation.state not in states:
                    states.append(situation.state)
        for loop in found.values():
            for states in loop.sides.values():
                states.sort(key=RUNNING.index)
        order = self.circuit.components
        return sorted(found.values(), key=lambda loop: order[loop.pumps[0]].order)

    @cached_property
    def open_parts(self):
        """(pumps, actuators) of every open part: machines in no loop that hang together.

        They do over everything but leakage and what opens under pressure, cut at the reservoirs and
        at what any loop consists of in any state.
        """
        taken = set(self.circuit.reservoirs)
        for situation in self.loop_situations:
            if situation.loop:
                taken.update(node for way in situation.loop.ways for node in (way.tail, way.head))
        found = {}
        for survey in self.surveys:
            region = survey.region
            together = circuit_file.Groups()
            for way in region.ways:
                if (way.kind not in (kinds.LEAKAGE, kinds.PRESSURE_OPENED, kinds.BYPASS)
                        and way.owner not in self.loop_machines
                        and not taken.intersection((way.tail, way.head))):
                    together.join([way.tail, way.head])
            for machine in region.machines:
                if machine.path in self.loop_machines:
                    continue
                free = [node for node in self.circuit.displacement_nodes(machine.path)
                        if node not in taken]
                group = together.find(free[0]) if free else machine.path
                pumps, actuators = found.setdefault(group, ([], []))
                (actuators if machine.plays == "actuator" else pumps).append(machine.path)
        return sorted(found.values())

    def verdicts(self, rules=None):
        """All verdicts; a rule without any subject is not applicable to the circuit."""
        result = []
        for rule, decide in RULES.items():
            if rules is None or rule in rules:
                result += decide(self) or [Verdict(rule, "circuit", "circuit", "not-applicable")]
        result = self._sure(result, rules) if self.otherwise else result
        return waivers(self.circuit, result)

    def _sure(self, verdicts, rules):
        """Inconclusive, whatever hangs on an inside that nobody knows."""
        def key(verdict):
            return verdict.rule, verdict.subject_type, verdict.subject

        missing = tuple(f"{path}.inside" for path in self.circuit.unknown)
        found = {key(verdict): verdict for verdict in verdicts}
        for other in self.otherwise:
            others = {key(verdict): verdict for verdict in other.verdicts(rules)}
            for subject, verdict in list(found.items()):
                now = others.get(subject)
                if now is None or (now.outcome, now.level) != (verdict.outcome, verdict.level):
                    found[subject] = replace(verdict, outcome="inconclusive", level="", missing=missing)
            for subject, verdict in others.items():
                if subject not in found:
                    found[subject] = replace(verdict, outcome="inconclusive", level="", states=(),
                                             missing=missing)
        return sorted(found.values(), key=lambda verdict: list(RULES).index(verdict.rule))


def decide(path):
    """Reads and judges the circuit file at `path`."""
    circuit = circuit_file.read(path)
    insides = ["joined", *kinds.DEVICE_CLASSES] if circuit.unknown else []
    return Judged(circuit, [Judged(circuit_file.read(path, inside)) for inside in insides])


def _print(judged, rules):
    for loop in judged.loops:
        print(f"{loop.id}: pumps {' '.join(loop.pumps)}; actuators {' '.join(loop.actuators)}")
        for (role, name), states in sorted(loop.sides.items()):
            print(f"  {role} {name}: {' '.join(states)}")
    for pumps, actuators in judged.open_parts:
        print(f"open part: pumps {' '.join(pumps)}; actuators {' '.join(actuators)}")
    for verdict in judged.verdicts(rules):
        states = [name + "".join(f" {valve}={position}" for valve, position in positions)
                  for name, positions in verdict.states]
        print(f"{verdict.rule} {verdict.subject}: {verdict.outcome}"
              f"{' ' + verdict.level if verdict.level else ''} ({', '.join(states)})"
              f"{' missing ' + ' '.join(verdict.missing) if verdict.missing else ''}")


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description="The second opinion's verdicts on a circuit.")
    parser.add_argument("file")
    parser.add_argument("--rule", action="append", choices=list(RULES))
    arguments = parser.parse_args()
    _print(decide(arguments.file), arguments.rule)
