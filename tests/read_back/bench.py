"""Small circuits in which parts of every kind and option stand: a pump feeds them and their oil goes
back to a tank. They need not make sense as drives."""

from variants import element, line, ports

# Kind with options -> ports in the order supply, return, others; ports that the file declares are
# its children, marked twice (`<<`, `>>`). A port with `<` is fed, one with `>` leads back, X is a
# pilot, Y and L are drains, O: one above the oil.
PRESSURE_VALVES = (
    ("relief", ("relief-valve", dict(setting="200 bar", drain="external"), "<P >T Y"),
     ("relief-valve", dict(setting="200 bar", operation="pilot", make_up_check="yes",
                           drain="external"), "<P >T Y"),
     ("relief-valve", dict(make_up_check="yes", adjustable="no"), "<P >T"),
     ("relief-valve", dict(make_up_check="yes", check_opening_pressure="0.5 bar"), "<P >T")),
    ("reducing", ("reducing-valve", dict(setting="30 bar"), "<P >A Y"),
     ("reducing-valve", dict(adjustable="no"), "<P >A Y"),
     ("reducing-valve", dict(setting="30 bar", relieving="yes"), "<P >A >T"),
     ("reducing-valve", dict(adjustable="no", relieving="yes"), "<P >A >T")),
    ("sequence", ("sequence-valve", dict(setting="80 bar"), "<P >A Y"),
     ("sequence-valve", dict(pilot="external", check="yes"), "<P >A X Y"),
     ("sequence-valve", dict(drain="internal", check="yes", check_opening_pressure="1 bar",
                             adjustable="no"), "<P >A")),
    ("counterbalance", ("counterbalance-valve", dict(setting="250 bar"), "<A >B X"),
     ("counterbalance-valve", dict(drain="external", check_opening_pressure="1 bar"), "<A >B X Y"),
     ("counterbalance-valve", dict(pilot="internal", drain="external", adjustable="no"),
      "<A >B Y"),
     ("counterbalance-valve", dict(pilot="internal"), "<A >B")),
    ("unloading", ("unloading-valve", dict(setting="120 bar"), "<P >T X"),
     ("unloading-valve", dict(drain="external", adjustable="no"), "<P >T X Y")),
    ("priority", ("priority-valve", {}, "<P >CF >EF"),
     ("priority-valve", dict(load_sensing="yes"), "<P >CF >EF X:LS")),
    ("pilot-control", ("pilot-control-valve", dict(outlets=2), "<P >T >A >B"),
     ("pilot-control-valve", dict(actuation="pedal", detent="yes"), "<P >T >A"),
     ("pilot-control-valve", dict(actuation="pedal"), "<P >T >A")))
FLOW_VALVES = (
    ("throttle", ("throttle", {}, "<A >B"), ("throttle", dict(adjustable="no"), "<A >B"),
     ("throttle-check", dict(check_opening_pressure="0.5 bar"), "<A >B"),
     ("throttle-check", dict(adjustable="no"), "<A >B")),
    ("flow-control", ("flow-control", dict(flow="20 L/min"), "<A >B"),
     ("flow-control", dict(check="yes", adjustable="no"), "<A >B"),
     ("flow-control", dict(check="yes", check_opening_pressure="1 bar"), "<A >B")),
    ("divider-spool", ("flow-divider", {}, "<P >>A >>B"), ("flow-divider", {}, "<P >>A >>B >>C"),
     ("flow-divider", {}, "<P >>A >>B >>C >>D")),
    ("divider-rotary", ("flow-divider", dict(design="rotary"), "<P >>A >>B"),
     ("flow-divider", dict(design="rotary"), "<P >>A >>B >>C")),
    ("pilot-check", ("check-valve", dict(pilot="opens"), "<A >B X"),
     ("check-valve", dict(pilot="opens", opening_pressure="1 bar"), "<A >B X"),
     ("check-valve", dict(pilot="shuts"), "<A >B X"),
     ("check-valve", dict(pilot="shuts", opening_pressure="1 bar"), "<A >B X")),
    ("shuttle", ("shuttle-valve", {}, "<A X:B >C"), ("shuttle-valve", {}, "X:A <B >C")))

ACTUATORS = (
    ("pump-motors", ("pump-motor", dict(flow_directions=1), "<A >B"),
     ("pump-motor", dict(variable="yes", control="manual"), "<A >B"),
     ("pump-motor", dict(drain="external", case_ports=2), "<A >B Y:L1 Y:L2"),
     ("pump-motor", dict(flow_directions=1, variable="yes", drain="external"), "<A >B Y:L")),
    ("controls", ("pump-motor", dict(variable="yes", control="hydraulic", pilot_ports=2),
                  "<A >B X1 X2"),
     ("motor", dict(variable="yes", control="hydraulic", pilot_ports=1), "<A >B X"),
     ("motor", dict(variable="yes", control="pressure-compensated"), "<A >B"),
     ("pump", dict(variable="yes", control="load-sensing", pilot_ports=1), ">S <P X"),
     ("pump", dict(variable="yes", control="pressure-compensated", drain="external"),
      ">S <P Y:L")),
    ("hand-pumps", ("hand-pump", {}, ">S <P"), ("semi-rotary-actuator", {}, "<A >B"),
     ("semi-rotary-actuator", dict(cushion="yes"), "<A >B")),
    ("cylinders", ("cylinder", {}, "<A >B"), ("cylinder", dict(rods=2), "<A >B"),
     ("cylinder", dict(action="single"), "<A"),
     ("cylinder", dict(action="single", spring_return="yes"), "<A")),
    ("cushions", ("cylinder", dict(cushion="both"), "<A >B"),
     ("cylinder", dict(cushion="cap"), "<A >B"), ("cylinder", dict(cushion="rod"), "<A >B"),
     ("cylinder", dict(cushion="both", rods=2), "<A >B")))
FITTINGS = (
    ("accumulators", ("accumulator", {}, "<A"), ("accumulator", dict(charge="spring"), "<A"),
     *(("accumulator", dict(separator=word), "<A")
       for word in ("bladder", "diaphragm", "piston"))),
    ("heaters", ("heater", {}, "<A >B"), ("strainer", {}, "<A >B"),
     ("strainer", dict(bypass="0.2 bar"), "<A >B"), ("thermostatic-bypass", {}, "<A >B >C"),
     ("breather", {}, "O:P"), ("breather", dict(opening_pressure="0.35 bar"), "O:P")),
    ("instruments", ("gauge", {}, "<P"), ("thermometer", {}, "<P"), ("level-indicator", {}, "O:P"),
     ("level-indicator", dict(switched="yes"), "O:P"), ("flow-meter", {}, "<A >B"),
     ("pressure-switch", dict(setting="5 bar"), "<P"), ("plug", {}, "<P"),
     ("tachometer", {}, "")),
    ("sensors", ("sensor", {}, "<P"),
     *(("sensor", dict(measures=word), "<P")
       for word in ("temperature", "flow", "level", "contamination"))),
    ("couplings", *(("quick-coupling", dict(valves=valves, joined=joined), "<A >B")
                    for valves in ("none", "one", "both") for joined in ("yes", "no"))),
    ("devices", ("device", {}, "<<A >>B"), ("device", {}, "<<A >>B >>C >>D"),
     ("device", dict(inside="unknown"), "<<A >>B >>C"), ("rotary-joint", {}, "<<A >>B"),
     ("rotary-joint", {}, "<<A >>B <<C >>D <<E >>F")))
DRIVEN = ("cylinder", "semi-rotary-actuator", "pump-motor", "motor")


def bench(parts):
    """The parts of one circuit: see above."""
    out = element("engine", "E1", power="30 kW") + element("pump", "P1", displacement="20 cm3/rev")
    fed, back, others, turned = ["P1.P"], [], [], ["E1", "P1"]
    for number, (kind, attributes, letters) in enumerate(parts, 1):
        ident = f"V{number}"
        words = [w.rpartition(":") for w in letters.split()]
        own = [w.lstrip("<>") for _, _, w in words if w.startswith((">>", "<<"))]
        ways = "".join(f'<passage from="{own[0]}" to="{o}" class="joined"/>' for o in own[1:]
                       if kind == "device" and "inside" not in attributes)
        out += element(kind, ident, ports(*own) + ways, **attributes)
        if kind in DRIVEN:
            out += element("load", f"D{number}") + element("shaft", f"X{number}",
                                                           joins=f"{ident} D{number}")
        elif kind in ("pump", "tachometer"):
            turned.append(ident)
        for role, _, word in words:
            port = f"{ident}.{word.lstrip('<>')}"
            if word.startswith("<"):
                fed.append(port)
            elif word.startswith(">"):
                back.append(port)
            else:
                others.append((port, {"X": "pilot", "O": None}.get((role or word)[0], "drain")))
    out += element("shaft", "W1", joins=" ".join(turned))
    out += element("reservoir", "T1", ports("S", level="below")
                   + ports("R", *(f"D{i}" for i in range(len(others))), level="above"))
    out += line("S1", "T1.S", "P1.S", function="suction") + line("G1", *fed)
    out += line("N1", *back, "T1.R") if back else ""
    for i, (port, function) in enumerate(others):
        out += line(f"L{i + 1}", port, f"T1.D{i}", function=function)
    return out


def circuits():
    for name, *parts in PRESSURE_VALVES + FLOW_VALVES + ACTUATORS + FITTINGS:
        yield f"bench-{name}", bench(parts)
