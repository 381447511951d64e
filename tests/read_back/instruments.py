"""Measuring points."""

import outlines
from outlines import frames, line, take, there
from shapes import NEAR
from symbols import Symbol, box_of, ports_of


def instruments(pool):
    for seed in [c for c in pool.circles if not c.filled and abs(c.radius - 0.5) < NEAR]:
        for frame in frames(seed.centre):
            # But for its line it looks the same whichever way it is turned.
            if there(pool, frame, outlines.MEASURING_POINT + [line((0, 0.5), (0, 2.5))]):
                take(pool, frame, outlines.MEASURING_POINT)
                yield Symbol("measuring-point", box_of(frame, -0.5, -0.5, 0.5, 0.5), {},
                             ports_of(frame, outlines.MEASURING_PORTS))
                break
