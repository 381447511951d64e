"""The sound drives of the pool of test circuits, made by lot."""

import random

import builder
import pool_ceilings
import pool_feeding
from builder import Builder, port, position

MACHINES = ("quay winch", "street sweeper", "mixer", "ice resurfacer")
MOVING = "drive-forward drive-reverse overrun-forward overrun-reverse"


class _Options:
    """Draws by lot with readable names."""

    def __init__(self, lot):
        self.lot = lot

    def maybe(self, chance):
        return self.lot.random() < chance

    def one_of(self, *values):
        return self.lot.choice(values)

    def machine(self):
        """How a pump or motor is drained."""
        if not self.maybe(0.85):
            return {}
        return {"drain": "external", "case_ports": self.one_of("1", "2", "2", "3"),
                "case_pressure": self.one_of("2 bar", "3 bar")}

    def relief(self):
        return {"operation": self.one_of("direct", "pilot"), "adjustable": self.one_of("yes", "no")}


def _machine(b, kind, letter, drain, **attributes):
    """A pump or motor; its housing is remembered for `_drains`."""
    ident = b.part(kind, letter, **drain, **attributes)
    if drain:
        b.drained.append((ident, int(drain["case_ports"])))
    return ident


def _filters(b, options, net):
    """One filter, or two side by side, from `net` on."""
    end = None
    for _ in range(options.one_of(1, 1, 1, 2)):
        bypass, one_way = options.one_of(None, "3 bar"), options.one_of(None, "yes")
        indicator = options.one_of("none", "visual", "electrical")
        if not bypass and indicator == "none":
            indicator = "visual"  # else it could clog unseen
        end = b.two_way(net, "filter", "F", end, fineness="10 um", bypass=bypass, one_way=one_way,
                        clogging_indicator=indicator)
    return end


def _charge_pump(b, options, tank, housing):
    """A charge pump with filter and relief. Gives its id and the gallery."""
    pump = b.part("pump", "P", displacement="18 cm3/rev")
    suction = b.fresh("s")
    b.join(suction, b.tank_port(tank))
    if options.maybe(0.3):
        locked = options.one_of("yes", "no")
        suction = b.two_way(suction, "shut-off-valve", "H", locked=locked,
                            switched="yes" if locked == "no" else None)
    at_suction = options.maybe(0.35)
    if at_suction:
        suction = _filters(b, options, suction)
    b.join(suction, f"{pump}.S")
    gallery = b.fresh("g")
    b.join(gallery, f"{pump}.P")
    b.extras.outlets.append(gallery)
    relief_at = gallery
    if not at_suction:
        gallery = _filters(b, options, gallery)
    if options.maybe(0.2):
        gallery = b.two_way(gallery, "shut-off-valve", "H", locked="yes")
    back = housing if options.maybe(0.4) else b.fresh("r")
    relief_at = options.one_of(relief_at, gallery)
    if any(filter_.get("one-way") == "yes" for filter_ in b.root.iter("filter")):
        relief_at = gallery  # ahead of a filter that is passed one way only nothing limits what is behind
    if relief_at == gallery:
        b.extras.bypasses()
    b.relief(relief_at, back, "24 bar", **options.relief())
    if back != housing:
        b.join(back, b.tank_port(tank))
    return pump, gallery


def _charge_return(b, options, tank):
    """Charge oil from the return of another, open circuit. Gives its pump's id and the gallery."""
    pump = b.part("pump", "P", displacement="28 cm3/rev")
    motor = _machine(b, "motor", "M", options.machine(), displacement="25 cm3/rev")
    suction, ahead, behind = b.fresh("s"), b.fresh("n"), b.fresh("r")
    b.join(suction, b.tank_port(tank), f"{pump}.S")
    delivery = ahead
    gallery = behind
    if options.maybe(0.5):
        valve = b.part("directional-valve", "V",
                       [port(p) for p in "PTAB"] + [position("idle", "P-T", rest=True),
                                                    position("work", "P-A", "B-T")])
        delivery, gallery = b.fresh("n"), b.fresh("r")
        b.join(delivery, f"{valve}.P")
        b.join(gallery, f"{valve}.T")
        b.join(ahead, f"{valve}.A")
        b.join(behind, f"{valve}.B")
    b.join(delivery, f"{pump}.P")
    b.extras.outlets.append(delivery)
    b.join(ahead, f"{motor}.A")
    b.join(behind, f"{motor}.B")
    b.relief(ahead, behind, "160 bar")
    b.shaft(motor, b.part("load", "D"))
    gallery = _filters(b, options, gallery)
    b.extras.bypasses()
    back = b.fresh("r")
    b.relief(gallery, back, "22 bar")
    b.join(back, b.tank_port(tank))
    return pump, gallery


def _crossport(b, options, a, c, gallery, into_charge, shut_off):
    """Reliefs between the sides `a` and `c` in one of the usual ways; where both can be `shut_off`,
    not over checks, behind which no side with a known pressure stands."""
    style = options.one_of("sides", "sides", "four", *(("charge", "two") if into_charge else ()))
    setting = options.one_of("350 bar", "420 bar", "5000 psi")
    if style in ("sides", "charge"):
        b.relief(a, c if style == "sides" else gallery, setting, **options.relief())
        b.relief(c, a if style == "sides" else gallery, setting, **options.relief())
        return
    if style == "four" and shut_off:
        drawn = options.relief()
        b.relief(a, c, setting, **drawn)
        b.relief(c, a, setting, **drawn)
        return
    high = b.fresh("n")
    low = b.fresh("n") if style == "four" else gallery
    for side in (a, c):
        b.check(side, high)
        if style == "four":
            b.check(low, side)
    b.relief(high, low, setting, **options.relief())


def _make_up(b, options, gallery, *sides):
    for side in sides:
        b.check(gallery, side, opening_pressure=options.one_of(None, None, "0.5 bar"))


def _protected(b, options, a, c, gallery, into_charge, shut_off):
    """Reliefs and make-up checks on the two lines of an actuator."""
    _crossport(b, options, a, c, gallery, into_charge, shut_off)
    _make_up(b, options, gallery, a, c)


def _motor(b, options, a, c, declared=True):
    """A motor between two nets; `declared`: it may say that it is meant for a closed loop."""
    motor = _machine(b, "motor", "M", options.machine(), displacement="80 cm3/rev",
                     design=options.one_of("bent-axis", "swashplate", "radial-piston"),
                     variable=options.one_of("yes", "no"),
                     closed_loop=options.one_of(None, "yes") if declared else None)
    ends = [f"{motor}.A", f"{motor}.B"]
    if options.maybe(0.3):
        ends.reverse()
    b.join(a, ends[0])
    b.join(c, ends[1])
    b.shaft(motor, b.part("load", "D", overrunning=options.one_of("yes", "no")))


def _reversing(b, options, a, c):
    """A valve between a one-way pump and its motor. Gives the nets of the motor's side of it."""
    rest = options.one_of((), ("P-T",), ("P-T", "A-B"))
    named = options.maybe(0.5)
    valve = b.part("directional-valve", "V", [port(p) for p in "PTAB"] + [
        position("centre", *rest, rest=True),
        position("ahead", "P-A", "T-B", states="drive-forward overrun-forward" if named else None),
        position("back", "P-B", "T-A", states="drive-reverse overrun-reverse" if named else None)],
        actuation=options.one_of("solenoid", "pilot", "lever", "pedal"))
    b.join(a, f"{valve}.P")
    b.join(c, f"{valve}.T")
    if not rest:
        b.extras.relief(a, c, "380 bar")  # at rest the pump would be shut in
    end_a, end_c = b.fresh("a"), b.fresh("b")
    b.join(end_a, f"{valve}.A")
    b.join(end_c, f"{valve}.B")
    return end_a, end_c


def _second_motor(b, options, a, c, gallery, into_charge):
    """A second motor beside the first, behind an isolating valve or straight on the lines."""
    if options.maybe(0.5):
        _motor(b, options, a, c)
        return
    end_a, end_c = b.fresh("a"), b.fresh("b")
    operated = options.maybe(0.7)
    if operated:
        states = MOVING if options.maybe(0.4) else None
        rest = options.maybe(0.5)
        valve = b.part("directional-valve", "V", [port(p) for p in ("A1", "A2", "B1", "B2")] + [
            position("on", "A1-A2", "B1-B2", rest=rest, states=states),
            position("off", rest=not rest)])
        for net, name in ((a, "A1"), (end_a, "A2"), (c, "B1"), (end_c, "B2")):
            b.join(net, f"{valve}.{name}")
    else:
        drawn = options.one_of("open", "closed")
        b.two_way(a, "shut-off-valve", "H", end_a, position=drawn)
        b.two_way(c, "shut-off-valve", "H", end_c, position=drawn)
    _motor(b, options, end_a, end_c, declared=operated)
    _protected(b, options, end_a, end_c, gallery, into_charge, shut_off=True)


def _behind(b, options, a, gallery):
    """The first motor's line behind something that makes a branch of it, with its own check."""
    end = b.fresh("a")
    if options.maybe(0.5):
        b.two_way(a, "orifice", "O", end, bore="6 mm")
    else:
        b.check(a, end, opening_pressure=options.one_of(None, "5 bar"))
        b.check(end, a)
    _make_up(b, options, gallery, end)
    return end


def _loop(b, options, gallery, into_charge, housing):
    """A closed loop. Gives its pump's id."""
    drain = options.machine()
    one_way = options.maybe(0.3)
    pump = _machine(b, "pump", "P", drain, displacement="71 cm3/rev", variable="yes",
                    flow_directions="1" if one_way else "2", closed_loop="yes" if one_way else None,
                    control=options.one_of("none", "manual", "hydraulic", "electric"))
    a, c = b.fresh("a"), b.fresh("b")
    b.join(a, f"{pump}.P" if one_way else f"{pump}.A")
    b.join(c, f"{pump}.S" if one_way else f"{pump}.B")
    if not one_way and options.maybe(0.12):  # a second pump beside it
        other = _machine(b, "pump", "P", options.machine(), displacement="45 cm3/rev",
                         flow_directions="2")
        b.join(a, f"{other}.A")
        b.join(c, f"{other}.B")
        b.shaft(other, b.part("engine", "E"))
        b.extras.apart = True
    if options.maybe(0.15):
        kind, letter = options.one_of(("shut-off-valve", "H"), ("filter", "F"), ("cooler", "K"))
        # Between pump and reliefs a valve that can be shut would be a fault.
        locked = {"locked": "yes"} if kind == "shut-off-valve" else {}
        a = b.two_way(a, kind, letter, **locked)
    layouts = ["one", "one", "one", "parallel", "parallel", "series", "branch"]
    reversing = one_way and options.maybe(0.6)
    if reversing:
        a, c = _reversing(b, options, a, c)
        layouts = layouts[:-2]  # shut off, every piece would need its own relief and check
    _protected(b, options, a, c, gallery, into_charge, shut_off=reversing)
    layout = options.one_of(*layouts)
    if layout == "series":
        middle = b.fresh("n")
        b.extras.middle(gallery, middle, a)
        _motor(b, options, a, middle)
        _motor(b, options, middle, c)
    else:
        _motor(b, options, _behind(b, options, a, gallery) if layout == "branch" else a, c)
    if layout == "parallel":
        _second_motor(b, options, a, c, gallery, into_charge)
    flushed_at = options.maybe(0.6)
    if layout == "one" and "series" in layouts:
        b.extras.one_more(gallery, a)
    if layout != "branch":
        b.extras.cylinder(a, c, flushed_at)
    if flushed_at:
        valve = b.part("flushing-valve", "V", centre=options.one_of("closed", "open"))
        b.join(a, f"{valve}.A")
        b.join(c, f"{valve}.B")
        flushed = b.fresh("n")
        b.join(flushed, f"{valve}.F")
        if options.maybe(0.3):
            flushed = b.two_way(flushed, "orifice", "O", bore="3 mm")
        b.relief(flushed, housing, "18 bar")
    if options.maybe(0.2):  # towing way, shut
        b.two_way(a, "shut-off-valve", "H", c, position="closed")
    return pump


def _drains(b, options, tank, net):
    """Leads the housings, through each other or side by side, to the reservoir."""
    for ident, ports in b.lot.sample(b.drained, len(b.drained)):
        if ports == 1:
            b.join(net, f"{ident}.L")
            continue
        b.join(net, f"{ident}.L1")
        net = b.fresh("d")
        b.join(net, f"{ident}.L2")
    b.drained = []
    if options.maybe(0.5):
        net = b.two_way(net, "cooler", "K", bypass=options.one_of(None, "1.5 bar"))
    if options.maybe(0.3):
        net = b.check(net, b.fresh("d"), opening_pressure="0.5 bar")
    if options.maybe(0.15):
        net = b.two_way(net, "shut-off-valve", "H", locked="yes")
    if options.maybe(0.15):
        net = b.two_way(net, "orifice", "O", bore="12 mm")
    b.join(net, b.tank_port(tank))


def _open_part(b, options, tank):
    """A pump that feeds a motor from the reservoir and back. Gives its pump's id."""
    pump = b.part("pump", "P", displacement="16 cm3/rev")
    motor = b.part("motor", "M", displacement="20 cm3/rev", design="gear",
                   flow_directions=options.one_of("1", "2"))
    valve = b.part("directional-valve", "V", [port(p) for p in "PTA"] + [
        position("off", "P-T", rest=True), position("on", options.one_of("P-A", "P~A"))])
    back = b.fresh("r")
    b.join(b.fresh("s"), b.tank_port(tank), f"{pump}.S")
    outlet = b.fresh("n")
    b.join(outlet, f"{pump}.P", f"{valve}.P")
    b.extras.relief(outlet, back, "180 bar")
    b.join(b.fresh("n"), f"{valve}.A", f"{motor}.A")
    b.join(back, f"{valve}.T", f"{motor}.B", b.tank_port(tank, options.one_of("above", "below")))
    return pump


def _assemblies(b, options, root):
    """Some parts gathered in assemblies; now and then an assembly in an assembly."""
    for _ in range(options.one_of(0, 0, 1, 1, 2, 3)):
        idents = [p.get("id") for p in builder.parts(root)
                  if p.tag not in ("reservoir", "engine", "load", "interlock")
                  and not p.get("id").startswith("Z")]
        if len(idents) > 5:
            builder.enclose(root, set(b.lot.sample(idents, b.lot.randint(2, 5))), b.fresh("U"))


def sound(seed):
    """The tree of a drive in which nothing is wrong."""
    lot = random.Random(seed)
    options = _Options(lot)
    b = Builder(lot, f"{lot.choice(MACHINES)} {seed}")
    b.extras = pool_feeding.Extras(b, seed)
    tank = b.reservoir()
    loops, shared = options.one_of(1, 1, 1, 2), options.maybe(0.6)
    gallery = None
    for _ in range(loops):
        engine = b.part("engine", "E", power="55 kW", speed="2400 rpm")
        housing = b.fresh("d")
        turned = []
        if gallery is None or not shared:
            from_return = options.maybe(0.2)
            charge, gallery = (_charge_return(b, options, tank) if from_return
                               else _charge_pump(b, options, tank, housing))
            turned.append(charge)
            b.extras.second_source(tank, gallery)
        else:
            b.extras.apart = True
        turned.append(_loop(b, options, gallery, not from_return, housing))
        _drains(b, options, tank, housing)
        if options.maybe(0.2):
            turned.append(_open_part(b, options, tank))
        b.shaft(engine, *lot.sample(turned, len(turned)))
    b.extras.watch()
    root = b.finish()
    b.extras.finish(root)
    _assemblies(b, options, root)
    pool_ceilings.enrich(root, seed)
    return root
