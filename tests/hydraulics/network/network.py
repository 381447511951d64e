"""Networks of parts, each written down once: as text for the program, and as laws of our own.

A part gives intervals that must hold nothing: what is left of its law, scaled to about 1. An
interval has a width where a law has no single figure: dry friction at standstill, the passage from
laminar to turbulent, a flow control below its range. So a printed state is judged by physics, not
by how the program rounds its corners. scipy gets the intervals' middles.
"""

import math

import laws

PRESSURE, FLOW, TORQUE, SPEED = 1e6, 1e-3, 100.0, 100.0


def span(one, other):
    """The interval between two numbers."""
    return (one, other) if one <= other else (other, one)


def plus(one, other):
    """Sum of intervals."""
    return one[0] + other[0], one[1] + other[1]


def times(one, number):
    """Interval times a number."""
    return span(one[0] * number, one[1] * number)


def point(value):
    """The interval of one number."""
    return value, value


class Sense:
    """Which way friction acts: at standstill all that it may be, or a line through it."""

    def __init__(self, exact):
        self.exact = exact

    def __call__(self, speed, band):
        if abs(speed) >= band:
            return point(math.copysign(1.0, speed))
        return (-1.0, 1.0) if self.exact else point(speed / band)


class State:
    """Pressures by node, flows by branch, speeds by shaft, strokes by machine; SI."""

    def __init__(self, case, exact):
        self.pressure = dict(case.fixed)
        self.flow, self.speed, self.stroke = {}, dict(case.driven), {}
        self.sense = Sense(exact)
        self.exact = exact


# ---- what oil flows through: a branch from one node to another ----


class Branch:
    """`law(q, dp)` gives what is left, intervals; `ports`: names of its ends. No text: a line."""

    def __init__(self, name, text, ends, law, ports=("A", "B")):
        self.name, self.text, self.ends, self.law, self.ports = name, text, ends, law, ports
        self.owner = name.partition(".")[0]  # the part that it is of

    def left(self, state):
        """What is left of its law."""
        before, behind = (state.pressure[end] for end in self.ends)
        return self.law(state.flow[self.name], before - behind)


def complementary(one, other):
    """Neither below nothing, one of them nothing."""
    return [point(min(one, other))]


def check(spring):
    """Flow only forward, and only against its spring."""
    return lambda q, dp: complementary(q / FLOW, (spring - dp) / PRESSURE)


def relief(setting, override):
    """Opens at its setting over its outlet; each unit of flow adds to it."""
    return lambda q, dp: complementary(q / FLOW, (setting + override * q - dp) / PRESSURE)


def pipe_drop(q, bore, length, oil, roughness, minor=0.0):
    """Between laminar and turbulent where it is neither."""
    re = laws.reynolds(q, bore, oil.nu)
    if not 2300.0 < re < 4000.0:
        return point(laws.pipe(q, bore, length, oil.rho, oil.nu, roughness, minor))
    velocity = q / (math.pi / 4.0 * bore * bore)
    head = oil.rho / 2.0 * velocity * abs(velocity)
    turbulent = laws.Colebrook(re, roughness / bore)
    return span(head * (64.0 / re * length / bore + minor),
                head * (turbulent * length / bore + minor))


def pipe(bore, length, oil, roughness=laws.DRAWN_TUBE, minor=0.0):
    """A line, or a throttle with a length."""
    return lambda q, dp: [times(plus(point(dp), times(
        pipe_drop(q, bore, length, oil, roughness, minor), -1.0)), 1.0 / PRESSURE)]


def orifice(bore, oil):
    """Sharp-edged hole."""
    return lambda q, dp: [point((dp - laws.orifice(q, bore, oil.rho, oil.nu)) / PRESSURE)]


def element(rated_flow, rated_drop, rated_nu, oil, bypass=None):
    """Filter, strainer or cooler: one branch with its bypass."""
    def law(q, dp):
        by_element = dp / rated_drop * rated_flow * rated_nu / oil.nu
        if bypass is None:
            return [point((q - by_element) / FLOW)]
        return complementary((q - by_element) / FLOW, (bypass - dp) / PRESSURE)
    return law


def throttle_check(bore, spring, oil):
    """An orifice with a check beside it that lets oil back."""
    k = oil.rho / (2.0 * (laws.SLIT * math.pi / 4.0 * bore * bore) ** 2)
    limit = 9.3 * math.pi / 4.0 * bore * oil.nu
    def law(q, dp):
        square = dp / k
        half = limit * limit / 2.0
        by_orifice = square / math.sqrt(half + math.hypot(half, square))
        return complementary((by_orifice - q) / FLOW, (spring + dp) / PRESSURE)
    return law


def flow_control(kept, least):
    """Its flow from the least drop on; an orifice's root below, rounded at both ends."""
    def law(q, dp):
        share = min(1.0, max(0.0, dp / least))
        ideal = kept * math.sqrt(share)
        width = 0.0 if share in (0.0, 1.0) else 0.1 * kept
        return [((q - ideal - width) / FLOW, (q - ideal + width) / FLOW)]
    return law


class Piloted(Branch):
    """A spring valve on more pressures than its own: `holding(state)` is what holds it shut.

    `back`: opening pressure of a check beside it that lets oil back; none: it has no such one.
    """

    def __init__(self, name, text, ends, ports, holding, back=None):
        super().__init__(name, text, ends, None, ports)
        self.holding, self.back = holding, back

    def left(self, state):
        """Shut and held shut, or open one way or the other: the median of three."""
        drop = state.pressure[self.ends[0]] - state.pressure[self.ends[1]]
        held = max(self.holding(state), -drop) / PRESSURE
        back = -math.inf if self.back is None else -(self.back + drop) / PRESSURE
        return [point(sorted((back, state.flow[self.name] / FLOW, held))[1])]


# ---- machines ----


class Machine:
    """Out at A with positive stroke and speed; `nodes`: of A, B and the housing."""

    keeps_volume = True

    def __init__(self, name, text, nodes, shaft, figures, stroke, limit=None):
        self.name, self.text, self.nodes, self.shaft = name, text, nodes, shaft
        self.figures, self.stroke, self.limit = figures, stroke, limit

    def laws(self, state, oil):
        """Flows out at A, B and the housing; torque taken from the shaft, an interval."""
        a, b, housing = (state.pressure[node] for node in self.nodes)
        one, speed = self.figures, state.speed[self.shaft]
        stroke = state.stroke.get(self.name, self.stroke)
        per_pressure = one.leak(1.0, oil.mu)
        to_case = one.case_share * per_pressure
        through = stroke * speed * one.d
        across = (per_pressure - to_case) * (a - b)
        friction = one.friction * one.d * abs(a - b)
        # Below 1 bar the program rounds off how friction goes with the pressure.
        size = (0.0, friction) if state.exact and abs(a - b) < 1e5 else point(friction)
        sense = state.sense(speed, 0.5)
        ends = [s * f for s in sense for f in size]
        dry = (min(ends), max(ends))
        torque = plus(point(stroke * one.d * (a - b) + one.drag * one.d * oil.mu * speed), dry)
        return (through - across - to_case * (a - housing),
                -through + across - to_case * (b - housing),
                to_case * (a + b - 2.0 * housing), torque)

    def left(self, state):
        """Of a limiter: the full stroke below its pressure, none above, any at it."""
        if self.limit is None:
            return []
        a, b, _ = (state.pressure[node] for node in self.nodes)
        stroke = state.stroke[self.name] * math.copysign(1.0, self.stroke)
        return [point(sorted((stroke - abs(self.stroke), (max(a, b) - self.limit) / PRESSURE,
                              stroke))[1])]


class Cylinder:
    """Its rod is a shaft with forces for torques."""

    keeps_volume = False
    limit = None

    def __init__(self, name, text, nodes, shaft, areas, leak, efficiency):
        self.name, self.text, self.nodes, self.shaft = name, text, nodes, shaft
        self.areas, self.leak, self.efficiency = areas, leak, efficiency

    def laws(self, state, _oil):
        """Flows out at A and B, none from a housing; force taken from the rod."""
        a, b = (state.pressure[node] for node in self.nodes)
        velocity = state.speed[self.shaft]
        past = self.leak * (a - b)
        ideal = self.areas[0] * a - self.areas[1] * b
        moves = state.sense(velocity, 1e-4)
        pushes = state.sense(ideal, 10.0)
        got = [ideal * self.efficiency ** (m * p) for m in moves for p in pushes]
        return (-self.areas[0] * velocity - past, self.areas[1] * velocity + past, 0.0,
                (-max(got), -min(got)))

    def left(self, _state):
        """Nothing of its own."""
        return []


class Divider:
    """A spool's legs: equal flows, throttled to the hardest; a rotary one's: powers in balance."""

    def __init__(self, name, text, nodes, rotary):
        self.name, self.text, self.nodes, self.rotary = name, text, nodes, rotary
        self.branches = [f"{name}.{leg}" for leg in "ABC"[:len(nodes) - 1]]

    def left(self, state):
        """Of its legs' flows and pressures; flows from P."""
        flows = [state.flow[one] for one in self.branches]
        pressures = [state.pressure[node] for node in self.nodes[1:]]
        common = state.pressure[self.nodes[0]]
        if self.rotary:
            law = (common - sum(pressures) / len(pressures)) / PRESSURE
        else:
            # At the highest going out, at the lowest coming back, between where it stands.
            law = sorted(((common - max(pressures)) / PRESSURE, -flows[0] / FLOW,
                          (common - min(pressures)) / PRESSURE))[1]
        return [point(law)] + [point((one - flows[0]) / FLOW) for one in flows[1:]]
