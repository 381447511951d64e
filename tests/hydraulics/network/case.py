"""A circuit of `network` parts: its text, a judge of printed states, and scipy's try at it."""

import math

from network import FLOW, PRESSURE, SPEED, TORQUE, State, plus, point, times
from scipy.optimize import root

LAW = 1e-7  # of scaled residuals: 0.1 Pa, 0.1 mm3/s, 10 mN.mm
CLOSED = 1e-9  # of the largest flow or power; issue 8


class Case:
    """Grows part by part; nodes are names, `fixed` those of reservoirs."""

    def __init__(self, oil):
        self.oil = oil
        self.fixed, self.driven = {}, {}
        self.parts, self.joints = [], {}  # node -> ports on it
        self.branches, self.machines, self.dividers = [], [], []
        self.shafts, self.gears, self.loads, self.brakes = {}, [], [], []
        self.idle = []  # ports that no oil flows through
        self.duty = ""

    # ---- putting together ----

    def tank(self, node, pressure=0.0):
        """A reservoir."""
        self.fixed[node] = pressure

    def say(self, text, *idle):
        """A part with no law of its own; `idle`: its ports and their nodes."""
        self.parts.append(text)
        for port, node in idle:
            self.idle.append(port)
            self.join(port, node)

    def join(self, port, node):
        """A port of a part on a node."""
        self.joints.setdefault(node, []).append(port)

    def branch(self, branch):
        """One with a text joins its ports; one without (None) is a line."""
        self.branches.append(branch)
        if branch.text:
            self.parts.append(branch.text)
        for port, node in zip(branch.ports, branch.ends):
            name = f"line {branch.name}" if branch.text is None else f"{branch.owner}.{port}"
            if branch.text is None or name not in self.joints.get(node, []):
                self.join(name, node)

    def machine(self, machine, ports):
        """`ports`: names of A, B and the housing's drain, if it has one."""
        self.machines.append(machine)
        self.parts.append(machine.text)
        self.shafts.setdefault(machine.shaft, []).append(machine.name)
        machine.ports = [f"{machine.name}.{port}" for port in ports]
        for port, node in zip(machine.ports, machine.nodes):
            self.join(port, node)

    def divider(self, divider):
        """Its legs are branches from P."""
        self.dividers.append(divider)
        self.parts.append(divider.text)
        self.join(f"{divider.name}.P", divider.nodes[0])
        for branch, node in zip(divider.branches, divider.nodes[1:]):
            self.join(branch, node)

    def gear(self, name, inside, outside, ratio, efficiency):
        """Ratio below nothing: the shafts turn against each other."""
        self.gears.append((name, inside, outside, ratio, efficiency))
        sense = ' sense="opposite"' if ratio < 0.0 else ""
        self.parts.append(f'<gearbox id="{name}" ratio="{abs(ratio)!r}" '
                          f'efficiency="{efficiency!r}"{sense}/>')
        self.shafts.setdefault(inside, []).append(name + ".in")
        self.shafts.setdefault(outside, []).append(name + ".out")

    def load(self, name, text, shaft, law):
        """`law(sense, speed)`: torque that it takes, an interval."""
        self.parts.append(text)
        self.shafts.setdefault(shaft, []).append(name)
        self.loads.append((shaft, law))

    def brake(self, name, text, shaft, node, law):
        """`law(pressure)`: torque that it holds."""
        self.say(text, (f"{name}.Z", node))
        self.shafts.setdefault(shaft, []).append(name)
        self.brakes.append((shaft, node, law))

    def text(self):
        """As the program reads it. Each port has a line of its own to its node's junction."""
        lines, ends, count = [], {}, 0
        parts = list(self.parts)
        for node, ports in self.joints.items():
            declared = "".join(f'<port id="p{i}"/>' for i in range(len(ports)))
            if node in self.fixed:
                gas = f' pressure="{self.fixed[node]!r} Pa"' if self.fixed[node] else ""
                parts.append(f'<reservoir id="{node}"{gas}>{declared}</reservoir>')
            else:
                parts.append(f'<junction id="{node}">{declared}</junction>')
            for i, port in enumerate(ports):
                if port.startswith("line "):
                    ends.setdefault(port[5:], []).append((f"{node}.p{i}", node))
                else:
                    lines.append(f'<line id="N{count}" joins="{port} {node}.p{i}"/>')
                    count += 1
        for branch in self.branches:
            if branch.text is None:
                (one, first), (other, _) = ends[branch.name]
                if first != branch.ends[0]:
                    one, other = other, one
                lines.append(f'<line id="{branch.name}" joins="{one} {other}" {branch.size}/>')
        shafts = [f'<shaft id="{name}" joins="{" ".join(joins)}"/>'
                  for name, joins in self.shafts.items()]
        return "\n  ".join(['<circuit format="1" title="drawn by lot">', self.oil.text, *parts,
                            *lines, *shafts, self.duty]) + "\n</circuit>\n"

    # ---- what is left of the laws ----

    def node_sums(self, state):
        """Flow into each node, as the laws of machines and the branches' flows have it."""
        into = {node: 0.0 for node in self.joints}
        for branch in self.branches:
            into[branch.ends[0]] -= state.flow[branch.name]
            into[branch.ends[1]] += state.flow[branch.name]
        for divider in self.dividers:
            for leg, node in zip(divider.branches, divider.nodes[1:]):
                into[divider.nodes[0]] -= state.flow[leg]
                into[node] += state.flow[leg]
        for machine in self.machines:
            for node, flow in zip(machine.nodes, machine.laws(state, self.oil)[:3]):
                into[node] += flow
        return into

    def shaft_sums(self, state):
        """Torque left on each free shaft that is no gear's inner one, and its scale."""
        taken = {shaft: point(0.0) for shaft in self.shafts}
        for machine in self.machines:
            taken[machine.shaft] = plus(taken[machine.shaft], machine.laws(state, self.oil)[3])
        for shaft, law in self.loads:
            taken[shaft] = plus(taken[shaft], law(state.sense, state.speed[shaft]))
        for shaft, node, law in self.brakes:
            held = law(state.pressure[node])
            taken[shaft] = plus(taken[shaft],
                                times(state.sense(state.speed[shaft], 0.1), held))
        for _, inside, outside, ratio, efficiency in self.gears:
            put_in = times(taken.pop(inside), -1.0)
            given = []
            for torque in put_in:
                for way in state.sense(state.speed[inside], 0.5):
                    for effort in state.sense(torque, 0.1):
                        given.append(ratio * torque * efficiency ** (way * effort))
            taken[outside] = plus(taken[outside], (-max(given), -min(given)))
        return {shaft: one for shaft, one in taken.items() if shaft not in self.driven}

    def left(self, state):
        """What is left of every law, by what it is of."""
        found = [(node, point(flow / FLOW)) for node, flow in self.node_sums(state).items()
                 if node not in self.fixed]
        for part in self.branches + self.dividers + self.machines:
            found += [(part.name, one) for one in part.left(state)]
        found += [(shaft, times(one, 1.0 / self.scale(shaft)))
                  for shaft, one in self.shaft_sums(state).items()]
        return found

    def scale(self, shaft):
        """Of torques on it; of a rod, of forces."""
        return 1e4 if shaft.startswith("R") else TORQUE

    # ---- the judge ----

    def state_of(self, printed):
        """The state that the program prints, and the flows out of the parts' ports."""
        state = State(self, exact=True)
        ports, count = {}, 0
        for node, joined in self.joints.items():
            for port in joined:
                if port.startswith("line "):
                    continue
                state.pressure[node] = printed[f"N{count}.pressure"]
                ports[port] = printed.get(f"N{count}.flow")
                count += 1
        for branch in self.branches:
            if branch.text is None:  # a node may have lines on it alone
                before = printed[f"{branch.name}.pressure"]
                for end, one in zip(branch.ends, (before, before - printed[f"{branch.name}.drop"])):
                    state.pressure.setdefault(end, one)
            state.flow[branch.name] = (printed[f"{branch.name}.flow"] if branch.text is None
                                       else self.own_flow(branch, ports))
        for divider in self.dividers:
            state.flow.update((leg, ports[leg]) for leg in divider.branches)
        for shaft in self.shafts:
            state.speed[shaft] = printed[f"{shaft}.speed"]
        for machine in self.machines:
            if machine.limit is not None:
                state.stroke[machine.name] = math.copysign(printed[f"{machine.name}.stroke"],
                                                           machine.stroke)
        return state, ports

    def own_flow(self, branch, ports):
        """Of a branch, at that of its ports which no other of the part has."""
        others = {port for other in self.branches if other.owner == branch.owner
                  and other is not branch for port in other.ports}
        one, other = branch.ports
        return ports[f"{branch.owner}.{other}"] if other not in others else (
            -ports[f"{branch.owner}.{one}"])

    def faults(self, point_printed, printed):
        """What is wrong with a printed state, in words."""
        state, ports = self.state_of(printed)
        found = [f"no flow for {port}" for port, flow in ports.items() if flow is None]
        if found:
            return found
        for name, (low, high) in self.left(state):
            if not low <= LAW or not high >= -LAW:
                found.append(f"{name}: its law is off by {low:.3e} to {high:.3e}")
        largest = max([abs(flow) for flow in ports.values()] + [1e-9])
        through = {}  # by part: its ports
        for part in self.branches:
            if part.text is not None:
                through.setdefault(part.owner, set()).update(part.ports)
        for machine in self.machines:
            if machine.keeps_volume:
                through[machine.name] = {port.partition(".")[2] for port in machine.ports}
        for name, own in through.items():
            if abs(sum(ports[f"{name}.{port}"] for port in own)) > CLOSED * largest:
                found.append(f"{name}: oil is lost in it")
        for node, flow in self.node_sums(state).items():
            if node not in self.fixed and abs(flow) > CLOSED * largest:
                found.append(f"{node}: {flow:.3e} m3/s of {largest:.3e} are not accounted for")
        for port in self.idle:
            if abs(ports[port]) > CLOSED * largest:
                found.append(f"{port}: {ports[port]:.3e} m3/s flow where none may")
        for _, inside, outside, ratio, _ in self.gears:
            if abs(state.speed[inside] - ratio * state.speed[outside]) > LAW * SPEED:
                found.append(f"the speeds of {inside} and {outside} do not fit")
        for what in ("mass", "energy"):
            if not point_printed["residual"][what] <= CLOSED:
                found.append(f"{what} is off by {point_printed['residual'][what]:.2e}")
        return found + self.power_faults(state, printed)

    def power_faults(self, state, printed):
        """What machines put into the oil against what it loses; what the prime movers give.

        With the torques on the free shafts in balance this closes the energy of the whole.
        """
        powers = []
        for branch in self.branches:
            drop = state.pressure[branch.ends[0]] - state.pressure[branch.ends[1]]
            powers.append(-state.flow[branch.name] * drop)
        for divider in self.dividers:
            for leg, node in zip(divider.branches, divider.nodes[1:]):
                drop = state.pressure[divider.nodes[0]] - state.pressure[node]
                powers.append(-state.flow[leg] * drop)
        taken = {shaft: point(0.0) for shaft in self.driven}
        for machine in self.machines:
            *flows, torque = machine.laws(state, self.oil)
            powers += [flow * state.pressure[node] for flow, node in zip(flows, machine.nodes)]
            if machine.shaft in taken:
                taken[machine.shaft] = plus(taken[machine.shaft],
                                            times(torque, state.speed[machine.shaft]))
        sums = self.node_sums(state)
        powers += [-sums[node] * pressure for node, pressure in self.fixed.items() if node in sums]
        largest = max(map(abs, powers + [1.0]))
        found = []
        if abs(sum(powers)) > CLOSED * largest:
            found.append(f"{sum(powers):.3e} W of {largest:.3e} W are not accounted for")
        for shaft, (low, high) in taken.items():
            power, off = printed[f"{shaft}.power"], CLOSED * max(largest, abs(high))
            if not low - off <= power <= high + off:
                found.append(f"{shaft}: {power} W are printed, not {low} to {high} W")
        return found

    # ---- scipy's try ----

    def unknowns(self):
        """Of scipy: kind, name, scale."""
        inner = {inside for _, inside, _, _, _ in self.gears}
        found = [("pressure", node, PRESSURE) for node in self.joints if node not in self.fixed]
        found += [("flow", branch.name, FLOW) for branch in self.branches]
        found += [("flow", leg, FLOW) for divider in self.dividers for leg in divider.branches]
        found += [("speed", shaft, 0.1 if shaft.startswith("R") else SPEED)
                  for shaft in self.shafts if shaft not in self.driven and shaft not in inner]
        return found + [("stroke", machine.name, 1.0) for machine in self.machines
                        if machine.limit is not None]

    def scipy_solves(self, starts, lot):
        """Whether `root` finds a state from any of so many random starts."""
        unknowns = self.unknowns()

        def residuals(vector):
            state = State(self, exact=False)
            for (kind, name, scale), one in zip(unknowns, vector):
                getattr(state, kind)[name] = one * scale
            for _, inside, outside, ratio, _ in self.gears:
                state.speed[inside] = ratio * state.speed[outside]
            return [(low + high) / 2.0 for _, (low, high) in self.left(state)]

        for _ in range(starts):
            start = [lot.uniform(0.0, 20.0) if kind == "pressure" else lot.uniform(-1.0, 1.0)
                     for kind, _, _ in unknowns]
            try:
                found = root(residuals, start, tol=1e-10)
            except (OverflowError, ValueError):
                continue
            if max(map(abs, residuals(found.x))) < 1e-8:
                return True
        return False
