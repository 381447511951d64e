"""Circuits and duties drawn by lot, with figures in the range of common practice (no source)."""

import math

import laws
from case import Case
from laws import BAR, LPM, MM2
from network import (Branch, Machine, Piloted, check, element, flow_control, orifice, pipe, point,
                     relief, throttle_check, times)


class Oil:
    """Of 40 degC, where its viscosity is as the text gives it."""

    def __init__(self, lot):
        nu = lot.choice([15.0, 32.0, 46.0, 68.0, 150.0])
        at_15 = lot.uniform(850.0, 900.0)
        self.nu = nu * MM2
        self.rho = laws.density(at_15, 40.0)
        self.mu = self.nu * self.rho
        self.text = (f'<fluid viscosity-40="{nu} mm2/s" viscosity-100="{2.0 + nu / 10.0} mm2/s" '
                     f'density="{at_15!r} kg/m3"/>')


class Draw:
    """A case in the making. Methods add a part with figures drawn, and give the node behind it."""

    def __init__(self, lot):
        self.lot = lot
        self.case = Case(Oil(lot))
        self.case.tank("T", lot.choice([0.0, 0.0, 0.3 * BAR]))
        self.count = {}
        self.settings = []  # of the duty point
        self.drives = False

    def name(self, letter):
        """P1, P2, ..."""
        self.count[letter] = self.count.get(letter, 0) + 1
        return f"{letter}{self.count[letter]}"

    def node(self):
        """A new one."""
        return self.name("J")

    def chance(self, share):
        """True so often."""
        return self.lot.random() < share

    # ---- branches ----

    def line(self, one, other, bore=None):
        """A pipe or hose between two nodes."""
        bore = bore or self.lot.choice([10, 13, 16, 20, 25])
        length = round(self.lot.uniform(0.3, 6.0), 2)
        branch = Branch(self.name("L"), None, (one, other),
                        pipe(bore / 1e3, length, self.case.oil), ("1", "2"))
        branch.size = f'bore="{bore} mm" length="{length} m"'
        self.case.branch(branch)
        return other

    def behind(self, node, bore=None):
        """A pipe from a node to a new one; sometimes none, and the node itself."""
        return self.line(node, self.node(), bore) if self.chance(0.6) else node

    def check(self, one, other):
        """Opens towards the second."""
        spring = self.lot.choice([0.0, 0.0, 0.2, 0.5])
        name = self.name("C")
        self.case.branch(Branch(name, f'<check-valve id="{name}" opening-pressure="{spring} bar"/>',
                                (one, other), check(spring * BAR)))

    def relief(self, one, other, setting, back=True):
        """With and without what a flow adds; `back`: perhaps with a check beside it."""
        name = self.name("R")
        full, at = "", 0.0
        if self.chance(0.5):
            flow = self.lot.uniform(20.0, 150.0)
            more = setting * self.lot.uniform(0.02, 0.2)
            full = f' full-flow-pressure="{setting + more!r} bar" full-flow="{flow!r} L/min"'
            at = more * BAR / (flow * LPM)
        text = f'<relief-valve id="{name}" setting="{setting!r} bar"{full}'
        if self.chance(0.2):  # with a check back, or its spring chamber drained elsewhere
            drained = not back or self.chance(0.5)
            chamber = "T" if drained else other
            text += ' drain="external"/>' if drained else ' make-up-check="yes"/>'
            self.case.branch(Piloted(
                name, text, (one, other), ("P", "T"), lambda state: (
                    setting * BAR + at * state.flow[name] + state.pressure[chamber]
                    - state.pressure[one]), None if drained else 0.0))
            if drained:
                self.idle(f"{name}.Y", "T")
            return
        self.case.branch(Branch(name, text + "/>", (one, other), relief(setting * BAR, at),
                                ("P", "T")))

    def idle(self, port, node):
        """A port that feels a pressure and takes no oil."""
        self.case.join(port, node)
        self.case.idle.append(port)

    def element(self, kind, one, other, flow):
        """Filter, strainer or cooler."""
        name = self.name("F")
        drop = self.lot.uniform(0.02, 0.05) if kind == "strainer" else self.lot.uniform(0.3, 1.5)
        bypass = None if self.chance(0.5) else self.lot.uniform(0.5, 3.0)
        if kind == "strainer":
            bypass = None
        beside = f' bypass="{bypass!r} bar"' if bypass else ""
        self.case.branch(Branch(
            name, f'<{kind} id="{name}" flow="{flow!r} L/min" pressure-drop="{drop!r} bar" '
            f'viscosity="30 mm2/s"{beside}/>', (one, other),
            element(flow * LPM, drop * BAR, 30 * MM2, self.case.oil, bypass and bypass * BAR)))
        return other

    def orifice(self, one, other, least=1.0, most=4.0):
        """Or a throttle with a length, or a throttle with a check back."""
        bore = round(self.lot.uniform(least, most), 2)
        name, kind = self.name("O"), self.lot.choice(["orifice", "throttle", "throttle-check"])
        if kind == "throttle":
            length = round(self.lot.uniform(2.0, 40.0), 1)
            text = f'<throttle id="{name}" bore="{bore} mm" length="{length} mm"/>'
            law = pipe(bore / 1e3, length / 1e3, self.case.oil, minor=1.5)
        elif kind == "orifice":
            text = f'<orifice id="{name}" bore="{bore} mm"/>'
            law = orifice(bore / 1e3, self.case.oil)
        else:
            rho, area = self.case.oil.rho, laws.SLIT * math.pi / 4.0 * (bore / 1e3) ** 2
            drop = rho / 2.0 * (20.0 * LPM / area) ** 2
            text = (f'<throttle-check id="{name}" flow="20 L/min" pressure-drop="{drop!r} Pa" '
                    'check-opening-pressure="0.5 bar"/>')
            law = throttle_check(bore / 1e3, 0.5 * BAR, self.case.oil)
        self.case.branch(Branch(name, text, (one, other), law))
        return other

    def flow_control(self, one, other, flow):
        """Keeps a flow in L/min."""
        name, least = self.name("Q"), self.lot.uniform(4.0, 10.0)
        self.case.branch(Branch(
            name, f'<flow-control id="{name}" flow="{flow!r} L/min" '
            f'pressure-drop="{least!r} bar"/>', (one, other),
            flow_control(flow * LPM, least * BAR)))
        return other

    # ---- machines, shafts, loads ----

    def losses(self):
        """Coefficients of Wilson's as text and figures; now and then none at all."""
        if self.chance(0.1):
            return "", 0.0, 0.0, 0.0
        slip = self.lot.uniform(0.3e-8, 5e-8)
        drag = self.lot.uniform(0.5e5, 3e5)
        friction = self.lot.uniform(0.01, 0.08)
        return (f'slip-coefficient="{slip!r}" drag-coefficient="{drag!r}" '
                f'friction-coefficient="{friction!r}"', slip, drag, friction)

    def figures(self, size):
        """Its text and its `laws.Machine`."""
        text, *coefficients = self.losses()
        one = laws.Machine(size, *coefficients)
        one.case_share = 1.0
        return text, one

    def pump(self, shaft, inlet, outlet, size):
        """One-way, drained inside."""
        name = self.name("P")
        text, one = self.figures(size)
        self.case.machine(Machine(name, f'<pump id="{name}" displacement="{size} cm3/rev" {text}/>',
                                  (outlet, inlet, inlet), shaft, one, 1.0), ("P", "S"))

    def drained(self, housing):
        """Text and ports of a housing, drained outside or not."""
        return (' drain="external"', ("A", "B", "L")) if housing else ("", ("A", "B"))

    def motor(self, shaft, a, b, size, stroke=1.0, more=""):
        """Into A, out of B; its housing drains over a line, or straight to the reservoir."""
        name = self.name("M")
        text, one = self.figures(size)
        housing = "T" if self.chance(0.5) else self.node() if self.chance(0.8) else None
        drain, ports = self.drained(housing)
        one.case_share = 0.0 if housing is None else 1.0
        if housing not in ("T", None):
            self.line(housing, "T", self.lot.choice([8, 10, 13]))
        self.case.machine(Machine(
            name, f'<motor id="{name}" displacement="{size} cm3/rev" {text}{drain}{more}/>',
            (a, b, housing or b), shaft, one, -stroke), ports)
        return name

    def geared(self, shaft, senses=(1.0, 1.0, 1.0, 1.0, -1.0)):
        """The shaft behind a gearbox, or the same; the gear's ratio."""
        if not self.chance(0.4):
            return shaft, 1.0
        outer = self.name("W")
        ratio = round(self.lot.uniform(2.0, 30.0), 2) * self.lot.choice(senses)
        self.case.gear(self.name("X"), shaft, outer, ratio, round(self.lot.uniform(0.85, 1.0), 3))
        return outer, ratio

    def load(self, shaft, torque, sense, kinds=("resists",)):
        """About that torque: one that resists, one that drives, a vehicle."""
        name = self.name("D")
        kind = self.lot.choice(kinds) if torque > 0.0 else "resists"
        self.drives = self.drives or kind == "drives"
        if kind == "resists":
            self.case.load(name, f'<load id="{name}" torque="{torque!r} N.m"/>', shaft,
                           lambda way, speed: times(way(speed, 0.1), torque))
        elif kind == "drives":
            self.case.load(name, f'<load id="{name}" torque="{-torque!r} N.m"/>', shaft,
                           lambda way, speed: point(-torque * sense))
        else:
            radius, rolling = 0.4, 0.02
            grade = self.lot.uniform(0.0, 0.3)
            length = math.hypot(1.0, grade)
            mass = torque / radius / laws.GRAVITY * length / (grade + rolling)
            weight = mass * laws.GRAVITY * radius / length
            self.settings.append(f'<set of="{name}" grade="{100.0 * grade!r} %"/>')
            self.case.load(
                name, f'<load id="{name}" vehicle="yes" mass="{mass!r} kg" '
                f'wheel-radius="{radius} m" rolling-resistance="{rolling}"/>', shaft,
                lambda way, speed: tuple(weight * grade * sense + one
                                         for one in times(way(speed, 0.1), weight * rolling)))
