"""What a whole circuit is written as here: equations, and scipy's `root` on them.

A circuit is a text and a function `equations(x)`. `x` has the unknowns as attributes; what their
names begin with says their size: p pressure, q flow, w speed, v velocity, t torque, s stroke, k temperature. The
function gives a `Balance`: residuals by their dimension, and every figure that the program should
print.
"""

from dataclasses import dataclass, field
from types import SimpleNamespace

from scipy.optimize import root

SCALE = {"p": 1e6, "q": 1e-3, "w": 100.0, "v": 0.1, "t": 100.0, "s": 1.0, "k": 100.0}


@dataclass
class Balance:
    """Residuals in SI; `holds`: pairs of what may not exceed what (what was taken for granted)."""

    flows: list
    pressures: list
    torques: list = field(default_factory=list)
    speeds: list = field(default_factory=list)
    forces: list = field(default_factory=list)
    strokes: list = field(default_factory=list)
    heats: list = field(default_factory=list)
    printed: dict = field(default_factory=dict)
    holds: list = field(default_factory=list)

    def scaled(self):
        """All about 1."""
        return ([one / 1e-3 for one in self.flows] + [one / 1e6 for one in self.pressures]
                + [one / 100.0 for one in self.torques] + [one / 100.0 for one in self.speeds]
                + [one / 1e4 for one in self.forces] + list(self.strokes)
                + [one / 1e3 for one in self.heats])


@dataclass
class Circuit:
    """`start`: unknowns to begin with, SI."""

    text: str
    start: dict
    equations: object

    def solution(self):
        """Balance at the root that scipy finds."""
        names = list(self.start)

        def unknowns(vector):
            return SimpleNamespace(**{name: one * SCALE[name[0]]
                                      for name, one in zip(names, vector)})

        found = root(lambda vector: self.equations(unknowns(vector)).scaled(),
                     [self.start[name] / SCALE[name[0]] for name in names], tol=1e-10)
        balance = self.equations(unknowns(found.x))
        worst = max(map(abs, balance.scaled()))
        if worst > 1e-9:
            raise AssertionError(f"scipy does not solve it: {found.message} (residual {worst:.1e})")
        for one, other in balance.holds:
            if not one <= other:
                raise AssertionError(f"taken for granted, but {one} is above {other}")
        return balance
