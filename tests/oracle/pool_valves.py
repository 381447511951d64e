"""The kinds of valve (and of what else oil passes) that the drives of the pool have not: each is put into
a line of a kind of port where it belongs, either way round, its further ports led where they may lead.

All is drawn from a lot of its own. Only what stands on the circuit's own level is touched."""

import random

import builder
import damage
from builder import add, line_of, port

#: Where in a circuit a part is put: kinds of component and first letters of their ports.
WORKING = (("pump", "motor", "cylinder"), "AB")
CHARGE = (("check-valve", "filter"), "AB")
OUTLET = (("pump",), "P")
SUCTION = (("pump",), "S")
DRAIN = (("pump", "motor"), "L")
RELIEF = (("relief-valve",), "PT")


class Fitter:
    """Puts parts into one circuit."""

    def __init__(self, root, lot):
        self.root = root
        self.lot = lot

    def _places(self, where):
        kinds, letters = where
        return [(line, joined) for level, line, joined in
                damage._joined(self.root, damage._of_kind(*kinds, names=letters)) if level is self.root]

    def part(self, kind, children=(), **attributes):
        """A part that nothing is joined to yet; gives its id."""
        ident = damage._fresh(self.root, "V")
        add(self.root, kind, ident, children, **attributes)
        return ident

    def line(self, *ports):
        """A line of its own."""
        add(self.root, "line", damage._fresh(self.root, "Y"), joins=" ".join(ports))

    def tee(self, where, ident):
        """Joins a port to a line of that sort, if there is one."""
        places = self._places(where)
        if places:
            line = self.lot.choice(places)[0]
            line.set("joins", f"{line.get('joins')} {ident}")

    def drain(self, *ports):
        """Leads ports to a reservoir; now and then one of them to nothing."""
        tank = next(e for e in self.root if e.tag == "reservoir")
        for joined in ports:
            if self.lot.random() < 0.9:
                name = f"v{len(tank)}"
                tank.append(port(name, level="below"))
                self.line(joined, f"{tank.get('id')}.{name}")

    def into(self, where, ident, ends):
        """Puts a part's two ports into a line before another part's port, one time in four turned."""
        places = self._places(where)
        if not places:
            return
        line, joined = self.lot.choice(places)
        near, far = ends if self.lot.random() < 0.75 else ends[::-1]
        line.set("joins", " ".join([p for p in line.get("joins").split() if p != joined]
                                   + [f"{ident}.{near}"]))
        self.line(f"{ident}.{far}", joined)


def _counterbalance(f):
    piloted = f.lot.random() < 0.7
    ident = f.part("counterbalance-valve", setting="280 bar", pilot=None if piloted else "internal")
    f.into(WORKING, ident, "AB")
    if piloted:
        f.tee(WORKING, f"{ident}.X")


def _piloted_check(f):
    ident = f.part("check-valve", pilot=f.lot.choice(("opens", "opens", "shuts")))
    f.into(f.lot.choice((WORKING, CHARGE)), ident, "AB")
    f.tee(f.lot.choice((WORKING, WORKING, CHARGE)), f"{ident}.X")


def _sequence(f):
    piloted = f.lot.random() < 0.3
    ident = f.part("sequence-valve", setting=f.lot.choice(("20 bar", "120 bar", None)),
                   pilot="external" if piloted else None, check=f.lot.choice((None, "yes")))
    f.into(f.lot.choice((WORKING, CHARGE, OUTLET)), ident, "PA")
    f.drain(f"{ident}.Y")
    if piloted:
        f.tee(WORKING, f"{ident}.X")


def _unloading(f):
    ident = f.part("unloading-valve", setting="200 bar")
    f.tee(f.lot.choice((OUTLET, CHARGE)), f"{ident}.P")
    f.tee(WORKING, f"{ident}.X")
    f.drain(f"{ident}.T")


def _reducing(f):
    relieving = f.lot.random() < 0.5
    ident = f.part("reducing-valve", setting=f.lot.choice(("20 bar", "20 bar", None)),
                   relieving="yes" if relieving else None)
    f.into(CHARGE, ident, "PA")
    f.drain(f"{ident}.{'T' if relieving else 'Y'}")


def _priority(f):
    ident = f.part("priority-valve", setting="15 bar")
    ends = f.lot.choice((("P", "CF"), ("P", "CF"), ("P", "EF")))
    f.into(f.lot.choice((OUTLET, CHARGE)), ident, ends)
    f.drain(f"{ident}.{'EF' if ends[1] == 'CF' else 'CF'}")


def _shuttle(f):
    ident = f.part("shuttle-valve")
    f.tee(WORKING, f"{ident}.A")
    f.tee(WORKING, f"{ident}.B")
    what = f.lot.choice(("relief-valve", "gauge", "check-valve", "unloading-valve"))
    other = f.part(what, setting="360 bar" if what.endswith(("relief-valve", "loading-valve")) else None,
                   pilot="opens" if what == "check-valve" else None)
    if what in ("gauge", "relief-valve"):
        f.line(f"{ident}.C", f"{other}.P")
        f.drain(*([f"{other}.T"] if what == "relief-valve" else []))
        return
    f.line(f"{ident}.C", f"{other}.X")
    f.tee(CHARGE, f"{other}.{'P' if what == 'unloading-valve' else 'A'}")
    if what == "check-valve":
        f.tee(WORKING, f"{other}.B")
    else:
        f.drain(f"{other}.T")


def _control(f):
    outlets = f.lot.choice(("1", "2"))
    ident = f.part("pilot-control-valve", outlets=outlets, max_pressure="18 bar")
    f.tee(CHARGE, f"{ident}.P")
    f.drain(f"{ident}.T")
    for letter in "AB"[:int(outlets)]:
        check = f.part("check-valve", pilot=f.lot.choice(("opens", "shuts")))
        f.line(f"{ident}.{letter}", f"{check}.X")
        f.into(CHARGE, check, "AB")


def _thermostat(f):
    ident, cooler = f.part("thermostatic-bypass"), f.part("cooler", max_pressure="10 bar")
    f.into(f.lot.choice((DRAIN, DRAIN, CHARGE)), ident, "AC")
    line = line_of(f.root, f"{ident}.C")
    f.line(f"{ident}.B", f"{cooler}.A")
    if line is not None:
        line.set("joins", f"{line.get('joins')} {cooler}.B")


def _divider(f):
    ident = f.part("flow-divider", [port(p) for p in "AB"], design=f.lot.choice(("spool", "rotary")))
    f.into(WORKING, ident, "PA")
    f.tee(WORKING, f"{ident}.B")


def _rotary_joint(f):
    ident = f.part("rotary-joint", [port(p) for p in "abcd"])
    f.into(f.lot.choice((WORKING, DRAIN)), ident, "ab")
    f.into(f.lot.choice((WORKING, DRAIN, CHARGE)), ident, "cd")


def _coupling(f):
    ident = f.part("quick-coupling", valves=f.lot.choice((None, "none", "one")),
                   joined=f.lot.choice((None, None, "no")), max_pressure="450 bar")
    f.into(f.lot.choice((WORKING, CHARGE, DRAIN, RELIEF)), ident, "AB")


def _bypass(f):
    ident = f.part("bypass-valve", position=f.lot.choice((None, None, "open")))
    f.tee(WORKING, f"{ident}.A")
    f.tee(WORKING, f"{ident}.B")


def _hand_pump(f):
    ident = f.part("hand-pump", max_pressure="60 bar")
    f.drain(f"{ident}.S")
    brakes = [e for e in f.root if e.tag == "brake"]
    line = line_of(f.root, f"{f.lot.choice(brakes).get('id')}.Z") if brakes else None
    if line is not None:
        line.set("joins", f"{line.get('joins')} {ident}.P")
    else:
        f.tee(CHARGE, f"{ident}.P")


def _unit(f):
    """A motor, or a two-way pump, that may do either."""
    found = [e for e in f.root if e.tag == "motor" or e.get("flow-directions") == "2"]
    for part in found[:1]:
        part.tag = "pump-motor"
        for word in ("rest-displacement", "inlet-pressure"):
            part.attrib.pop(word, None)


def _device(f):
    inside = f.lot.choice(("one-way", "metering", "element", "reduced", "pressure-opened"))
    opening = "15 bar" if inside in ("reduced", "pressure-opened") else None
    ident = f.part("device", [port("a"), port("b"), _passage("a", "b", inside, opening)])
    f.into(f.lot.choice((WORKING, CHARGE, DRAIN)), ident, "ab")


def _passage(tail, head, name, opening):
    made = port("")
    made.tag = "passage"
    made.attrib.clear()
    made.attrib.update({"from": tail, "to": head, "class": name}, **({"opening": opening} if opening else {}))
    return made


def _plain(kind, *places, **attributes):
    """A part of the ports A and B alone; an attribute may have several words to choose from."""
    def fit(f):
        drawn = {name: f.lot.choice(words) for name, words in attributes.items()}
        f.into(f.lot.choice(places), f.part(kind, **drawn), "AB")
    return fit


#: What is put in, and how much likelier than a part that is only passed.
FITTINGS = {
    _counterbalance: 3, _piloted_check: 3, _sequence: 3, _unloading: 3, _reducing: 3, _priority: 3,
    _shuttle: 3, _control: 2, _thermostat: 2, _divider: 2, _rotary_joint: 2, _coupling: 3, _bypass: 1,
    _hand_pump: 1, _unit: 2, _device: 2,
    _plain("throttle", WORKING, CHARGE): 1,
    _plain("throttle-check", WORKING, CHARGE): 2,
    _plain("flow-control", WORKING, CHARGE, check=(None, "yes")): 2,
    _plain("flow-meter", WORKING, CHARGE, DRAIN): 1,
    _plain("heater", CHARGE, DRAIN): 1,
    _plain("strainer", SUCTION, bypass=(None, "0.2 bar"), fineness=("125 um",)): 1,
}


def fit(root, number):
    """Puts some of them into a circuit."""
    fitter = Fitter(root, random.Random(f"valves-{number}"))
    for what in fitter.lot.choices(list(FITTINGS), list(FITTINGS.values()),
                                   k=fitter.lot.choice((1, 2, 3, 4))):
        what(fitter)
