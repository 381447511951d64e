"""Whole circuits drawn by lot: closed loops and open circuits with their duties."""

import math

import laws
from laws import BAR, RPM
from lot import Draw
from network import Branch, Divider, Machine, point


# Of loads, by whether they drive.
KINDS = {False: ("resists", "resists", "vehicle"), True: ("drives",)}


def same(_q, dp):
    """An open way without a loss that is known."""
    return [point(dp / 1e6)]


def prime_mover(draw, shaft, kind="engine"):
    """Turns at a speed drawn."""
    name = draw.name("E")
    speed = draw.lot.uniform(900.0, 2600.0)
    draw.case.parts.append(f'<{kind} id="{name}" power="90 kW" speed="{speed!r} rpm"/>')
    draw.case.shafts.setdefault(shaft, []).append(name)
    draw.case.driven[shaft] = speed * RPM
    return speed


def loop_pump(draw, shaft, a, b, size, stroke):
    """Variable, either way; perhaps with a limiter."""
    name = draw.name("P")
    text, one = draw.figures(size)
    housing = "T" if draw.chance(0.5) else draw.node()
    if housing != "T":
        draw.line(housing, "T", draw.lot.choice([10, 13]))
    limit = draw.lot.uniform(120.0, 300.0) if draw.chance(0.25) and stroke else None
    limiter = f' pressure-limiter="{limit!r} bar"' if limit else ""
    draw.case.machine(Machine(
        name, f'<pump id="{name}" displacement="{size} cm3/rev" variable="yes" flow-directions="2" '
        f'control="manual" drain="external" {text}{limiter}/>', (a, b, housing), shaft, one, stroke,
        limit and limit * BAR), ("A", "B", "L"))
    return name


def motors(draw, a, b, pump_size, sense, overrun):
    """One; several side by side, on one axle or each for itself; two behind one another."""
    way = draw.lot.choice(["one", "one", "axle", "apart", "series", "divided"])
    pressure = draw.lot.choice([0.0, draw.lot.uniform(5.0, 150.0), draw.lot.uniform(50.0, 260.0)])
    if overrun:
        pressure = min(pressure, 120.0)
    count = 1 if way == "one" else 2 if way == "series" else draw.lot.choice([2, 3])
    ends = [(a, b)] * count
    if way == "series":
        between = draw.node()
        ends = [(a, between), (between, b)]
    if way == "divided":
        legs = [draw.node() for _ in range(count)]
        name = draw.name("V")
        rotary = draw.chance(0.5)
        ports = "".join(f'<port id="{leg}"/>' for leg in "ABC"[:count])
        draw.case.divider(Divider(
            name, f'<flow-divider id="{name}" design="{"rotary" if rotary else "spool"}">{ports}'
            '</flow-divider>', (a, *legs), rotary))
        ends = [(leg, b) for leg in legs]
    axle = draw.name("W") if way == "axle" else None
    torque = 0.0
    for first, last in ends:
        size = round(pump_size * draw.lot.uniform(0.5, 2.0), 1)
        shaft = draw.name("W")
        draw.motor(shaft, draw.behind(first), draw.behind(last), size)
        ideal = pressure * BAR * size * laws.CM3
        if way == "axle":
            ratio = round(draw.lot.uniform(4.0, 30.0), 2)
            draw.case.gear(draw.name("X"), shaft, axle, ratio,
                           round(draw.lot.uniform(0.85, 1.0), 3))
            torque += ideal * ratio
            continue
        outer, ratio = draw.geared(shaft)
        share = 0.45 if way == "series" else draw.lot.uniform(0.7, 1.0)
        # A load that pulls counts its own shaft's sense.
        kinds = ("resists",) if ratio < 0.0 else KINDS[overrun]
        draw.load(outer, ideal * abs(ratio) * share, sense, kinds)
    if way == "axle":
        draw.load(axle, torque, sense, KINDS[overrun])
    return shaft


def closed_loop(lot):
    """A loop with its charge, reliefs, perhaps flushed; forward, in reverse, in neutral."""
    draw = Draw(lot)
    case = draw.case
    stroke = lot.choice([0.0, 1.0, *(round(lot.uniform(0.05, 1.0), 3) for _ in range(2))])
    sense = lot.choice([1.0, 1.0, -1.0]) if stroke else 1.0
    overrun = bool(draw.chance(0.2) and stroke > 0.0)
    shaft = draw.name("W")
    prime_mover(draw, shaft)
    size = lot.choice([18, 28, 45, 71, 100])
    a, b = draw.node(), draw.node()
    pump = loop_pump(draw, shaft, a, b, size, stroke * sense)
    # Charge: suction strainer, relief, filter.
    inlet = draw.behind("T", 32)
    if draw.chance(0.4):
        inlet = draw.element("strainer", inlet, draw.node(), 60.0)
    charge = draw.node()
    draw.pump(shaft, inlet, charge, round(size * lot.uniform(0.12, 0.3), 1))
    setting = lot.uniform(14.0, 30.0)
    draw.relief(charge, "T", setting)
    fed = charge
    if draw.chance(0.6):
        fed = draw.element("filter", charge, draw.node(), lot.uniform(20.0, 60.0))
    fed = draw.behind(fed, 16)
    for side in (a, b):
        draw.check(fed, side)
    if draw.chance(0.9):
        high = lot.uniform(180.0, 400.0)
        draw.relief(a, b, high, back=False)
        draw.relief(b, a, high, back=False)
    last = motors(draw, a, b, size, sense, overrun)
    if draw.chance(0.5):
        flushing(draw, a, b, setting, sense if stroke else 0.0)
    if draw.chance(0.3):
        brake(draw, last, fed)
    command = draw.name("Z")
    case.parts.append(f'<command id="{command}" given-by="lever"> <stage of="{pump}" from="0 %" '
                      'to="100 %"/> </command>')
    case.duty = (f'<duty> <point id="a" travel="{stroke * sense!r}" oil="40 degC">'
                 + "".join(draw.settings) + "</point> </duty>")
    case.duty = case.duty.replace('<point id="a"', f'<point id="a" {speed_of(case, shaft)}')
    return case


def speed_of(case, shaft):
    """The prime mover's, as its rated one."""
    return f'speed="{case.driven[shaft]!r} rad/s"'


def flushing(draw, a, b, setting, sense):
    """A shuttle that leads the lower side over a relief, perhaps a restriction, to the tank."""
    name = draw.name("V")
    out = draw.node()
    draw.case.parts.append(f'<flushing-valve id="{name}"/>')
    low = (b if (sense > 0.0) != draw.drives else a) if sense else None
    if low is None:
        for port, node in (("A", a), ("B", b), ("F", out)):
            draw.case.join(f"{name}.{port}", node)
            draw.case.idle.append(f"{name}.{port}")
    else:
        letter, other = ("B", "A") if low == b else ("A", "B")
        draw.case.branch(Branch(f"{name}.{letter}F", "", (low, out), same, (letter, "F")))
        draw.case.join(f"{name}.{other}", a if other == "A" else b)
        draw.case.idle.append(f"{name}.{other}")
    over = draw.node()
    draw.relief(out, over, setting * draw.lot.uniform(0.6, 0.9))
    if draw.chance(0.6):
        over = draw.element("cooler", over, draw.node(), draw.lot.uniform(20.0, 60.0))
    if draw.chance(0.4):
        draw.orifice(over, "T")
    else:
        draw.line(over, "T")


def brake(draw, shaft, node):
    """A spring applies it; the charge line releases it."""
    name = draw.name("B")
    torque, begins = draw.lot.uniform(50.0, 400.0), draw.lot.uniform(4.0, 10.0)
    ends = begins + draw.lot.uniform(1.0, 8.0)

    def held(pressure):
        share = min(1.0, max(0.0, (pressure / BAR - begins) / (ends - begins)))
        return torque * (1.0 - share)

    draw.case.brake(name, f'<brake id="{name}" torque="{torque!r} N.m" '
                    f'release-pressure="{begins!r} bar" full-release-pressure="{ends!r} bar"/>',
                    shaft, node, held)
