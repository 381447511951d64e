"""Valves of one box that pressure moves against a spring: relief, sequence, unloading,
counterbalance, reducing and priority valves."""

import outlines
from outlines import frames, path, take, take_if, there
from symbols import Port, Symbol, any_check_at, box_of, ports_of, slanted_arrow, spring
from valve_boxes import boxes


def valves(pool):
    for centre in boxes(pool, 2):
        for frame in frames(centre):
            symbol = _pressure_valve(pool, frame) or _relieving(pool, frame) or \
                _priority(pool, frame)
            if symbol:
                yield symbol
                break


def _yes(value):
    return "yes" if value else "no"


def _pressure_valve(pool, frame):
    """A box with one arrow in it and a pilot, with what may stand beside it."""
    body = outlines.POSITIONS[2]
    for is_open, arrow in outlines.PRESSURE_ARROWS.items():
        pilots = [end for end, outline in outlines.PRESSURE_PILOTS.items()
                  if there(pool, frame, outline)]
        _, x, at_box = outlines.PRESSURE_X
        external = pool.has_line(frame.out(x), frame.out(at_box), "dashed")
        if (pilots or external) and there(pool, frame, body + arrow):
            take(pool, frame, body + arrow)
            for end in pilots:
                take(pool, frame, outlines.PRESSURE_PILOTS[end])
            return _with_options(pool, frame, is_open, pilots, external)
    return None


def _with_options(pool, frame, is_open, pilots, external):
    check, beside = branch(pool, frame, outlines.PRESSURE_CHECKS, outlines.PRESSURE_BRANCH)
    reach = 6 if check else 4
    staged = take_if(pool, frame, outlines.PILOT_STAGE)
    symbol = Symbol("pressure-valve", box_of(frame, min(-3, beside - 1), -3, max(5 if staged else 4.5, beside + 1), 3), {
        "open-at-rest": is_open, "pilots": pilots + ["X"] * external,
        "operation": "pilot" if staged else "direct", "check": check or "no",
        # The adjusting arrow crosses the spring.
        "adjustable": _yes(slanted_arrow(pool, frame.out((4 if staged else 3.25, 0)), 1.0)),
        "spring": _yes(spring(pool, frame, *(((3, 0), (5, 0)) if staged
                                             else outlines.VALVE_SPRING))),
    }, ports_of(frame, [("in", (0, -reach), (0, -2)), ("out", (0, reach), (0, 2))]))
    if external:
        symbol.ports += ports_of(frame, [outlines.PRESSURE_X])
    symbol.options["drain"] = _drain(pool, frame, symbol, "drain",
                                     outlines.PRESSURE_DRAIN_PORTS[bool(check)])
    if is_open == "yes":
        symbol.kind, symbol.options["relieving"] = "reducing-valve", "no"
    return symbol


def _drain(pool, frame, symbol, role, y=4):
    """The dashed line out of the spring chamber, down to the level y."""
    _, _, bend, _ = outlines.PRESSURE_DRAIN
    if pool.has_line(frame.out(bend), frame.out((bend[0], y)), "dashed") and \
            take_if(pool, frame, [outlines.PRESSURE_DRAIN]):
        symbol.ports.append(Port(role, frame.out((bend[0], y)), frame.out(bend)))
        return "external"
    return "internal"


def branch(pool, frame, places, level):
    """Takes a check that stands at (x, 0) for one x of `places`, free upwards, and its branch from
    the line at (0, level) to that at (0, -level). ("yes", "spring" where it has one, or None; x)."""
    for x in places:
        beside = frame.moved((x, 0))
        end = [outlines.dot(0, level), outlines.dot(0, -level)] + path((0, level), (x, level),
                                                                       (x, 0.71))
        if not there(pool, frame, end) or not there(pool, beside, outlines.CHECK):
            continue
        sprung, outlet = any_check_at(pool, beside)
        back = path((x, outlet[1]), (x, -level), (0, -level))
        if take_if(pool, frame, back):
            take(pool, frame, end)
            return "spring" if sprung == "yes" else "yes", x
    return None, 0


def _relieving(pool, frame):
    if not take_if(pool, frame, outlines.RELIEVING):
        return None
    return Symbol("reducing-valve", box_of(frame, -3, -3, 4.5, 2), {
        "relieving": "yes", "pilots": ["in"],
        "adjustable": _yes(slanted_arrow(pool, frame.out((3.25, 0)), 1.0)),
        "spring": _yes(spring(pool, frame, *outlines.VALVE_SPRING)),
    }, ports_of(frame, outlines.RELIEVING_PORTS))


def _priority(pool, frame):
    if not take_if(pool, frame, outlines.PRIORITY):
        return None
    symbol = Symbol("priority-valve", box_of(frame, -3, -3, 4.5, 2),
                    {"spring": _yes(spring(pool, frame, *outlines.VALVE_SPRING))},
                    ports_of(frame, outlines.PRIORITY_PORTS))
    symbol.options["load-sensing"] = _yes(_drain(pool, frame, symbol, "sensed") == "external")
    return symbol
