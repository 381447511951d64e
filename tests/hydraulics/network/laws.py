"""Laws of parts, written from their sources and never taken from the program. SI throughout.

Pressures are over the atmosphere. `viscosity` is kinematic, `mu` dynamic.
"""

import math

from fluids.friction import Colebrook, friction_laminar

BAR = 1e5
LPM = 1e-3 / 60.0
RPM = math.pi / 30.0
CM3 = 1e-6 / (2.0 * math.pi)  # m3/rad of 1 cm3/rev
MM2 = 1e-6
GRAVITY = 9.80665  # ISO 80000-3

DRAWN_TUBE = 1.5e-6  # m, drawn tubing (handbooks of civil engineering)
SMOOTH_HOSE = 0.0  # common practice, no source
SLIT = 0.61  # contraction of a sharp-edged slit by potential flow, pi/(pi + 2)


def density(at_15, celsius):
    """Lubricating oil at a temperature: ASTM D1250, its factor 0.34878 1/degF (from memory)."""
    alpha = 0.34878 * 1.8 / at_15
    rise = celsius - 15.0
    return at_15 * math.exp(-alpha * rise * (1.0 + 0.8 * alpha * rise))


def viscosity(at_40, at_100, kelvin):
    """Kinematic, ASTM D341: lg lg (nu + 0.7) in mm2/s falls with lg T."""
    def height(nu):
        return math.log10(math.log10(nu / MM2 + 0.7))
    share = math.log10(kelvin / 313.15) / math.log10(373.15 / 313.15)
    across = height(at_40) + share * (height(at_100) - height(at_40))
    return (10.0 ** 10.0 ** across - 0.7) * MM2


def specific_heat(at_15, celsius):
    """Petroleum oil, C. S. Cragoe, NBS Miscellaneous Publication 97 (1929); Btu/lb.degF is
    4186.8 J/kg.K, water 999.016 kg/m3 at 60 degF."""
    fahrenheit = 1.8 * celsius + 32.0
    return 4186.8 * (0.388 + 0.00045 * fahrenheit) / math.sqrt(at_15 / 999.016)


# ---- machines: W. E. Wilson, as L-01 to L-03 and L-19 of the published values ----


class Machine:
    """Sizes and loss coefficients; `size` is the largest displacement in cm3/rev."""

    def __init__(self, size, slip=0.0, drag=0.0, friction=0.0, constant_leak=0.0):
        self.d = size * CM3
        self.slip, self.drag, self.friction = slip, drag, friction
        self.constant_leak = constant_leak

    def leak(self, over, mu):
        """Flow from a port to the housing or another port that much lower."""
        return (self.slip * self.d / mu + self.constant_leak) * over

    def torque_lost(self, difference, speed, mu):
        """Friction and drag, at the largest displacement whatever is set."""
        return self.d * (self.friction * abs(difference) + self.drag * mu * abs(speed))


def pump(one, high, low, speed, mu, stroke=1.0, case=0.0):
    """Flow out at the high port, flow in at the low one, into the housing, torque taken."""
    through = stroke * one.d * speed
    out = through - one.leak(high - case, mu)
    into = through + one.leak(low - case, mu)
    return out, into, into - out, (stroke * one.d * (high - low)
                                   + one.torque_lost(high - low, speed, mu))


def motor(one, high, low, speed, mu, stroke=1.0, case=0.0):
    """Flow in at the high port, flow out at the low one, into the housing, torque given."""
    through = stroke * one.d * speed
    into = through + one.leak(high - case, mu)
    out = through - one.leak(low - case, mu)
    return into, out, into - out, (stroke * one.d * (high - low)
                                   - one.torque_lost(high - low, speed, mu))


def inside_drained_pump(one, high, low, speed, mu):
    """A one-way pump that leaks back to its inlet: flow, torque."""
    return (one.d * speed - one.leak(high - low, mu),
            one.d * (high - low) + one.torque_lost(high - low, speed, mu))


# ---- what oil flows through ----


def reynolds(flow, bore, viscosity):
    """On the bore."""
    return 4.0 * abs(flow) / (math.pi * bore * viscosity)


def pipe(flow, bore, length, rho, viscosity, roughness=DRAWN_TUBE, minor=0.0):
    """Pressure lost, Darcy and Weisbach; the caller keeps out of the transition, 2300 to 4000."""
    if flow == 0.0:
        return 0.0
    re = reynolds(flow, bore, viscosity)
    factor = friction_laminar(re) if re <= 3000.0 else Colebrook(re, roughness / bore)
    velocity = flow / (math.pi / 4.0 * bore * bore)
    return rho / 2.0 * velocity * abs(velocity) * (factor * length / bore + minor)


def orifice(flow, bore, rho, viscosity, coefficient=SLIT):
    """Turbulent orifice with Merritt's laminar end (from memory): k q sqrt(q^2 + ql^2)."""
    k = rho / (2.0 * (coefficient * math.pi / 4.0 * bore * bore) ** 2)
    laminar = 9.3 * math.pi / 4.0 * bore * viscosity
    return k * flow * math.hypot(flow, laminar)


def element(flow, viscosity, rated_flow, rated_drop, rated_viscosity):
    """Filter element, cooler: in proportion to flow and viscosity (Darcy)."""
    return rated_drop * flow / rated_flow * viscosity / rated_viscosity
