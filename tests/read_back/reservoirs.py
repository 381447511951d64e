"""Marks of reservoirs where lines end."""

import outlines
from outlines import Frame, take, there
from symbols import Port, Symbol, box_of


def marks(pool):
    """Each local mark; `level` says whether the line in it runs down to the bottom."""
    for seed in sorted({p for s in pool.segments for p in (s.p, s.q)}):
        frame = Frame((seed[0] + 1, seed[1]))
        vented = there(pool, frame, outlines.RESERVOIR)
        outline = outlines.RESERVOIR if vented else outlines.SEALED
        if not there(pool, frame, outline):
            continue
        for level, end in (("below", outlines.BELOW), ("above", outlines.ABOVE)):
            contact = frame.out(end)
            touching = [s for s in pool.segments if s.vertical() and s.ends_at(contact)
                        and min(s.p[1], s.q[1]) < seed[1]]
            if touching:
                take(pool, frame, outline)
                yield Symbol("reservoir", box_of(frame, -1, 0, 1, 1),
                             {"level": level, "sealed": "no" if vented else "yes"},
                             [Port("line", frame.out((0, -2)), contact)])
                break
