"""Open circuits drawn by lot: one pump, what its oil does, and the way back."""

import math

import laws
from families import prime_mover, same
from laws import BAR, LPM
from lot import Draw
from network import Branch, Cylinder, Divider, Machine, Piloted, flow_control, times


def cylinder(draw, a, b, force):
    """Its rod comes out against a force, or the load stands."""
    name, rod, load = draw.name("Z"), draw.name("RW"), draw.name("D")
    bore = draw.lot.choice([40.0, 63.0, 100.0])
    thick = draw.lot.choice([0.4, 0.55, 0.7]) * bore
    efficiency = round(draw.lot.uniform(0.85, 1.0), 3)
    leak = draw.lot.choice([0.0, 0.1])
    cap = math.pi / 4.0 * (bore / 1e3) ** 2
    ring = cap - math.pi / 4.0 * (thick / 1e3) ** 2
    draw.case.machine(Cylinder(
        name, f'<cylinder id="{name}" bore="{bore} mm" rod="{thick!r} mm" rated-pressure="200 bar" '
        f'force-efficiency="{efficiency!r}" cross-leakage="{leak} L/min"/>', (a, b), rod,
        (cap, ring), leak * LPM / (200.0 * BAR), efficiency), ("A", "B"))
    held = force * cap
    draw.case.load(load, f'<load id="{load}" force="{held!r} N"/>', rod,
                   lambda way, speed: times(way(speed, 1e-4), held))


def metered(draw, node):
    """What stands in the way of an actuator's oil: nothing, a restriction, a flow control."""
    way = draw.lot.choice(["free", "pipe", "restricted", "kept"])
    if way == "pipe":
        return draw.line(node, draw.node(), draw.lot.choice([8, 10, 13]))
    if way == "restricted":
        return draw.orifice(node, draw.node(), 1.5, 6.0)
    if way == "kept":
        return draw.flow_control(node, draw.node(), draw.lot.uniform(5.0, 30.0))
    return node


def consumer(draw, node, back, sense=1.0):
    """A motor or a cylinder with its load, perhaps metered on its way in or out."""
    inlet = metered(draw, node)
    outlet = draw.node()
    pressure = draw.lot.choice([0.0, draw.lot.uniform(5.0, 80.0), draw.lot.uniform(20.0, 200.0)])
    if draw.chance(0.6):
        size = draw.lot.choice([20, 40, 80, 160])
        shaft = draw.name("W")
        draw.motor(shaft, inlet, outlet, size)
        outer, ratio = draw.geared(shaft)
        kinds = ("resists",) if ratio < 0.0 else ("resists", "vehicle")
        draw.load(outer, pressure * BAR * size * laws.CM3 * abs(ratio), sense, kinds)
    else:
        cylinder(draw, inlet, outlet, pressure * BAR)
    if draw.chance(0.3):
        draw.check(outlet, back)
    elif draw.chance(0.4):
        draw.orifice(outlet, back, 3.0, 8.0)
    else:
        draw.line(outlet, back, draw.lot.choice([13, 16, 20]))


def reducing(draw, node):
    """Hands a lower pressure on; its spring chamber stands at the reservoir."""
    name, setting, behind = draw.name("V"), draw.lot.uniform(20.0, 90.0), draw.node()
    draw.case.branch(Piloted(
        name, f'<reducing-valve id="{name}" setting="{setting!r} bar"/>', (node, behind),
        ("P", "A"),
        lambda state: state.pressure[behind] - state.pressure["T"] - setting * BAR))
    draw.idle(f"{name}.Y", "T")
    return behind


def relieving(draw, node):
    """A reducing valve with three ports: what stands too high behind it goes to the reservoir.

    Its edges overlap by 1 bar, which the program takes and says (common practice, no source).
    """
    name, setting, behind = draw.name("V"), draw.lot.uniform(20.0, 90.0), draw.node()
    text = f'<reducing-valve id="{name}" setting="{setting!r} bar" relieving="yes"/>'
    draw.case.branch(Piloted(f"{name}.A", text, (node, behind), ("P", "A"),
                             lambda state: state.pressure[behind] - setting * BAR))
    draw.case.branch(Piloted(
        f"{name}.T", "", (behind, "T"), ("A", "T"),
        lambda state: (setting + 1.0) * BAR + state.pressure["T"] - state.pressure[behind]))
    return behind


def second_pump(draw, shaft, high):
    """Helps over a check until an unloading valve sends its oil back."""
    low, name = draw.node(), draw.name("V")
    setting = draw.lot.uniform(20.0, 100.0)
    draw.pump(shaft, "T", low, draw.lot.choice([8, 16]))
    draw.check(low, high)
    draw.relief(low, "T", 250.0)
    draw.case.branch(Piloted(
        name, f'<unloading-valve id="{name}" setting="{setting!r} bar"/>', (low, "T"), ("P", "T"),
        lambda state: setting * BAR + state.pressure["T"] - state.pressure[high]))
    draw.idle(f"{name}.X", high)


def sequence(draw, node):
    """Opens at a pressure before it, over its drain."""
    name, setting, behind = draw.name("V"), draw.lot.uniform(20.0, 120.0), draw.node()
    draw.case.branch(Piloted(
        name, f'<sequence-valve id="{name}" setting="{setting!r} bar"/>', (node, behind),
        ("P", "A"),
        lambda state: setting * BAR + state.pressure["T"] - state.pressure[node]))
    draw.idle(f"{name}.Y", "T")
    return behind


def priority(draw, node):
    """The priority way as a flow control; the other opens at its spring over it."""
    name, first, other = draw.name("V"), draw.node(), draw.node()
    kept, spring = draw.lot.uniform(4.0, 20.0), draw.lot.uniform(4.0, 10.0)
    text = f'<priority-valve id="{name}" priority-flow="{kept!r} L/min" setting="{spring!r} bar"/>'
    draw.case.branch(Branch(f"{name}.CF", text, (node, first),
                            flow_control(kept * LPM, spring * BAR), ("P", "CF")))
    draw.case.branch(Piloted(
        f"{name}.EF", "", (node, other), ("P", "EF"),
        lambda state: spring * BAR + state.pressure[first] - state.pressure[node]))
    return first, other


def divided(draw, node):
    """Two or three legs."""
    name, count = draw.name("V"), draw.lot.choice([2, 3])
    rotary = draw.chance(0.5)
    legs = [draw.node() for _ in range(count)]
    ports = "".join(f'<port id="{leg}"/>' for leg in "ABC"[:count])
    draw.case.divider(Divider(
        name, f'<flow-divider id="{name}" design="{"rotary" if rotary else "spool"}">{ports}'
        '</flow-divider>', (node, *legs), rotary))
    return legs


def open_circuit(lot):
    """One pump, its relief, one to three consumers, the way back over a filter."""
    draw = Draw(lot)
    case = draw.case
    shaft, inlet, high, back = draw.name("W"), draw.node(), draw.node(), draw.node()
    prime_mover(draw, shaft)
    if draw.chance(0.5):
        draw.element("strainer", "T", inlet, 80.0)
    else:
        draw.line("T", inlet, 38)
    size = lot.choice([8, 16, 25, 40])
    if draw.chance(0.3):
        compensated(draw, shaft, inlet, high, size)
    else:
        draw.pump(shaft, inlet, high, size)
    draw.relief(high, back if draw.chance(0.5) else "T", lot.uniform(80.0, 220.0))
    if draw.chance(0.2):
        second_pump(draw, shaft, high)
    high = draw.behind(high)
    way = lot.choice(["one", "one", "beside", "reduced", "relieved", "sequence", "priority",
                      "divided"])
    if way == "one":
        consumer(draw, high, back)
    elif way == "priority":
        for node in priority(draw, high):
            consumer(draw, node, back)
    elif way == "divided":
        for node in divided(draw, high):
            consumer(draw, node, back)
    else:
        consumer(draw, high, back)
        node = {"beside": lambda _draw, one: one, "reduced": reducing, "relieved": relieving,
                "sequence": sequence}[way](draw, high)
        consumer(draw, node, back)
    if draw.chance(0.5):
        back = draw.element("filter", back, draw.node(), lot.uniform(30.0, 100.0))
    if draw.chance(0.4):
        back = draw.element("cooler", back, draw.node(), lot.uniform(30.0, 100.0))
    draw.line(back, "T", lot.choice([20, 25]))
    return finished(draw, shaft)


def finished(draw, shaft, more=""):
    """With its duty point."""
    draw.case.duty = (f'<duty> <point id="a" speed="{draw.case.driven[shaft]!r} rad/s"{more} '
                      'oil="40 degC">' + "".join(draw.settings) + "</point> </duty>")
    return draw.case


def compensated(draw, shaft, inlet, outlet, size):
    """A one-way pump that keeps a pressure."""
    name, kept = draw.name("P"), draw.lot.uniform(60.0, 180.0)
    text, one = draw.figures(size)
    draw.case.machine(Machine(
        name, f'<pump id="{name}" displacement="{size} cm3/rev" variable="yes" '
        f'control="pressure-compensated" compensator-setting="{kept!r} bar" {text}/>',
        (outlet, inlet, inlet), shaft, one, 1.0, kept * BAR), ("P", "S"))


def winch(lot):
    """A load on a drum, raised or lowered over a directional and a counterbalance valve."""
    draw = Draw(lot)
    case = draw.case
    shaft, turned = draw.name("W"), draw.name("W")
    high, motor_a, motor_b, a, back = (draw.node() for _ in range(5))
    prime_mover(draw, shaft, "electric-motor")
    inlet = draw.behind("T", 32)
    draw.pump(shaft, inlet, high, lot.choice([16, 25, 40]))
    draw.relief(high, "T", lot.uniform(150.0, 260.0))
    lowered = draw.chance(0.6)
    sense = -1.0 if lowered else 1.0
    name = draw.name("V")
    case.parts.append(
        f'<directional-valve id="{name}"><port id="P"/><port id="T"/><port id="A"/><port id="B"/>'
        '<position id="0" rest="yes"/>'
        '<position id="up" in="drive-forward overrun-forward"><path from="P" to="A"/>'
        '<path from="B" to="T"/></position>'
        '<position id="down" in="drive-reverse overrun-reverse"><path from="P" to="B"/>'
        '<path from="A" to="T"/></position></directional-valve>')
    ways = (("P", "B", high, motor_b), ("A", "T", a, back)) if lowered else (
        ("P", "A", high, a), ("B", "T", motor_b, back))
    for one, other, first, second in ways:
        case.branch(Branch(f"{name}.{one}{other}", "", (first, second), same, (one, other)))
    draw.line(back, "T", 16)
    size, pressure = lot.choice([40, 63, 100]), lot.uniform(10.0, 140.0)
    ratio = lot.choice([1.0, 3.0, 5.0])
    setting = pressure * lot.uniform(1.2, 1.6)
    valve = draw.name("V")
    case.branch(Piloted(
        valve, f'<counterbalance-valve id="{valve}" setting="{setting!r} bar" '
        f'pilot="external" pilot-ratio="{ratio}"/>', (motor_a, a), ("B", "A"),
        lambda state: (setting * BAR + (1.0 + ratio) * state.pressure[a] - state.pressure[motor_a]
                       - ratio * state.pressure[motor_b]), 0.0))
    draw.idle(f"{valve}.X", motor_b)
    draw.motor(turned, motor_a, motor_b, size)
    outer, gear = draw.geared(turned, senses=(1.0,))
    drum, load = 0.2, draw.name("D")
    mass = pressure * BAR * size * laws.CM3 * abs(gear) / drum / laws.GRAVITY
    pull = mass * laws.GRAVITY * drum
    case.load(load, f'<load id="{load}" mass="{mass!r} kg" wheel-radius="{drum} m" '
              'overrunning="yes" overrunning-sense="reverse"/>', outer,
              lambda _way, _speed: (pull, pull))
    state = "overrun-reverse" if sense < 0.0 else "drive-forward"
    return finished(draw, shaft, f' state="{state}"')


def runaway(lot):
    """A load pulls a motor without losses, of which both ports stand at the reservoir."""
    draw = Draw(lot)
    shaft, size = draw.name("W"), lot.choice([40, 63])
    one = laws.Machine(size)
    one.case_share = 0.0
    draw.case.machine(Machine("M1", f'<motor id="M1" displacement="{size} cm3/rev"/>',
                              ("T", "T", "T"), shaft, one, -1.0), ("A", "B"))
    pull = lot.uniform(50.0, 500.0)
    draw.case.load("D1", f'<load id="D1" torque="{pull!r} N.m" overrunning="yes" '
                   'overrunning-sense="reverse"/>', shaft, lambda _way, _speed: (pull, pull))
    draw.case.duty = '<duty> <point id="a" oil="40 degC"/> </duty>'
    return draw.case


def shut_in(lot):
    """A pump without leakage that pumps against a check, behind it nothing but a shut end."""
    draw = Draw(lot)
    shaft, high, end = draw.name("W"), draw.node(), draw.node()
    prime_mover(draw, shaft)
    one = laws.Machine(16)
    one.case_share = 1.0
    draw.case.machine(Machine("P1", '<pump id="P1" displacement="16 cm3/rev"/>', (high, "T", "T"),
                              shaft, one, 1.0), ("P", "S"))
    draw.check(high, end)
    draw.check("T", end)
    return finished(draw, shaft)
