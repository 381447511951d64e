"""Instruments, stores and what stands on a line's end: measuring points, gauges, thermometers, level
indicators, flow meters, tachometers, pressure switches, sensors, accumulators, breathers, plugs."""

import outlines
import outlines_fittings as fittings
from outlines import Frame, frames, line, take, take_if, there
from shapes import NEAR, distance
from symbols import Symbol, box_of, ports_of, slanted_arrow, spring, stubs
from valve_boxes import boxes


def instruments(pool, texts):
    yield from _measuring_points(pool)
    yield from _dials(pool, texts)
    for centre in boxes(pool, 2):
        frame = Frame(centre)
        symbol = _switch(pool, frame) or _sensor(pool, frame, texts)
        if symbol:
            yield symbol
    yield from _accumulators(pool)
    yield from _breathers(pool)
    yield from _plugs(pool)


def _yes(value):
    return "yes" if value else "no"


def _measuring_points(pool):
    for seed in [c for c in pool.circles if not c.filled and abs(c.radius - 0.5) < NEAR]:
        for frame in frames(seed.centre):
            # But for its line it looks the same whichever way it is turned.
            if there(pool, frame, outlines.MEASURING_POINT + [line((0, 0.5), (0, 2.5))]):
                take(pool, frame, outlines.MEASURING_POINT)
                yield Symbol("measuring-point", box_of(frame, -0.5, -0.5, 0.5, 0.5), {},
                             ports_of(frame, outlines.MEASURING_PORTS))
                break


def take_word(texts, place, *words):
    """Takes one of the words whose middle is at the place; None where none is."""
    for text in texts:
        if text.words in words and distance(text.centre(), place) < 0.6:
            texts.remove(text)
            return text.words
    return None


def _dials(pool, texts):
    """Circles of the size of an instrument; but for a flow meter they stay upright (G6)."""
    for seed in [c for c in pool.circles if not c.filled and abs(c.radius - 2) < NEAR]:
        upright = Frame(seed.centre)
        body = box_of(upright, -2, -2, 2, 2)
        for frame in frames(seed.centre):
            if stubs(pool, frame, fittings.FLOW_METER_PORTS) and \
                    take_if(pool, frame, fittings.FLOW_METER):
                yield Symbol("flow-meter", body, {}, ports_of(frame, fittings.FLOW_METER_PORTS))
                break
        else:
            if take_word(texts, seed.centre, fittings.TACHOMETER_LETTER):
                take(pool, upright, fittings.TACHOMETER)
                yield Symbol("tachometer", body)
                continue
            found = [kind for kind, outline in fittings.DIALS.items()
                     if there(pool, upright, fittings.DIAL + outline)]
            if len(found) == 1 and stubs(pool, upright, fittings.INSTRUMENT_PORTS):
                take(pool, upright, fittings.DIAL + fittings.DIALS[found[0]])
                options = {"switched": _yes(take_if(pool, upright, fittings.LEVEL_CONTACT))} \
                    if found[0] == "level-indicator" else {}
                yield Symbol(found[0], body, options, ports_of(upright, fittings.INSTRUMENT_PORTS))


def _switch(pool, frame):
    if not (stubs(pool, frame, fittings.INSTRUMENT_PORTS)
            and take_if(pool, frame, fittings.PRESSURE_SWITCH)):
        return None
    return Symbol("pressure-switch", box_of(frame, -2, -2, 4.5, 2), {
        "adjustable": _yes(slanted_arrow(pool, frame.out(fittings.SWITCH_ARROW), 1.0)),
        "spring": _yes(spring(pool, frame, *fittings.SWITCH_SPRING))},
        ports_of(frame, fittings.INSTRUMENT_PORTS))


def _sensor(pool, frame, texts):
    if not (stubs(pool, frame, fittings.INSTRUMENT_PORTS)
            and take_if(pool, frame, fittings.SENSOR)):
        return None
    letter = take_word(texts, frame.out(fittings.SENSOR_MEASURED), *fittings.SENSOR_LETTERS)
    place, letters = fittings.SENSOR_SIGNAL
    signal = take_word(texts, frame.out(place), *letters)
    return Symbol("sensor", box_of(frame, -2, -2, 2, 2), {
        "measures": fittings.SENSOR_LETTERS.get(letter, "unknown"), "signal": _yes(signal)},
        ports_of(frame, fittings.INSTRUMENT_PORTS))


def _accumulators(pool):
    for seed in list(pool.arcs):
        # The upper half circle of a capsule that stands upright.
        frame = Frame((seed.middle[0], seed.middle[1] + 4))
        if not (stubs(pool, frame, fittings.ACCUMULATOR_PORTS)
                and take_if(pool, frame, fittings.CAPSULE)):
            continue
        gas = take_if(pool, frame, fittings.GAS)
        between = [word for word, outline in fittings.SEPARATORS.items()
                   if take_if(pool, frame, outline)]
        sprung = spring(pool, frame, *fittings.LOADING_SPRING)
        loaded = take_if(pool, frame, fittings.SPRING_PLATE) if sprung else False
        yield Symbol("accumulator", box_of(frame, -2, -4, 2, 4), {
            "charge": {(True, False): "gas", (False, True): "spring"}.get((gas, loaded), "unknown"),
            "separator": " and ".join(between) or "none"},
            ports_of(frame, fittings.ACCUMULATOR_PORTS))


def _breathers(pool):
    for seed in sorted({p for s in pool.segments if s.dash == "dashed" for p in (s.p, s.q)}):
        frame = Frame((seed[0] + fittings.HALF, seed[1]))
        if stubs(pool, frame, fittings.BREATHER_PORTS) and take_if(pool, frame, fittings.BREATHER):
            yield Symbol("breather", box_of(frame, -1.414, -2.8, 1.414, 1.414),
                         {"spring": _yes(spring(pool, frame, *fittings.BREATHER_SPRING))},
                         ports_of(frame, fittings.BREATHER_PORTS))


def _plugs(pool):
    strokes = [s for s in pool.segments if abs(s.length() - 2 ** 0.5) < NEAR
               and not s.horizontal() and not s.vertical()]
    for centre in {s.at(s.length() / 2) for s in strokes}:
        for frame in frames(centre):
            if stubs(pool, frame, fittings.PLUG_PORTS) and take_if(pool, frame, fittings.PLUG):
                yield Symbol("plug", box_of(frame, -0.5, -0.5, 0.5, 0.5), {},
                             ports_of(frame, fittings.PLUG_PORTS))
                break
