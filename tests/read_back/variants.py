"""Small circuits that show every kind and option of the format, for drawings that are read back.

Invented machines of towns and harbours (sweepers, mixers, quay winches). `circuits()` gives name
-> XML."""


DESIGNATED = ("pump", "motor", "check-valve", "relief-valve", "filter", "cooler", "flushing-valve",
              "directional-valve")


def element(kind, ident, children="", **attributes):
    """One XML element; an attribute that is None is left out, `_` in names stands for `-`."""
    text = "".join(f' {name.replace("_", "-")}="{value}"' for name, value in attributes.items()
                   if value is not None)
    start = f'<{kind} id="{ident}"{text}'
    return f"  {start}>{children}</{kind}>\n" if children else f"  {start}/>\n"


def line(ident, *ports, function=None, bore=None):
    return element("line", ident, joins=" ".join(ports), function=function, bore=bore)


def ports(*idents, level=None):
    mark = f' level="{level}"' if level else ""
    return "".join(f'<port id="{ident}"{mark}/>' for ident in idents)


def circuit(title, *parts):
    return ('<?xml version="1.0" encoding="UTF-8"?>\n'
            f'<circuit format="1" title="{title}">\n{"".join(parts)}</circuit>\n')


PUMP = dict(flow_directions=2, variable="yes", control="hydraulic", drain="external",
            displacement="45 cm3/rev")
MOTOR = dict(drain="external", displacement="63 cm3/rev")


def loop(n=1, pump=None, motor=None, check=None, relief=None, filter_=None, cooler=None,
         flushing=None,
         charge=None, joined=None, suction=False):
    """One whole closed loop, its idents beginning as in P11 with the loop's number. The first
    arguments change options of the components, `joined` adds ports to lines (line -> ports),
    `suction` moves the filter into the suction line."""
    pump, motor = {**PUMP, **(pump or {})}, {**MOTOR, **(motor or {})}
    p, c, m, f, k, v, t = (f"{letter}{n}" for letter in ("P1", "P2", "M1", "F1", "K1", "V1", "T1"))
    c1, c2, r1, r2, r3 = (f"{letter}{n}" for letter in ("C1", "C2", "R1", "R2", "R3"))

    def joins(ident, *ports, function):
        return line(f"{ident}{n}", *ports, *(joined or {}).get(ident, ()), function=function)

    housings = [f"{machine}.{'L' if int(what.get('case_ports', 1)) == 1 else 'L1'}"
                for machine, what in ((m, motor), (p, pump)) if what["drain"] == "external"]
    return "".join((
        element("engine", f"E{n}", title="engine", power="40 kW"),
        element("pump", p, title="loop pump", **pump),
        element("pump", c, title="charge pump", displacement="11 cm3/rev", **(charge or {})),
        element("motor", m, title="wheel motor", **motor),
        element("load", f"D{n}", title="axle"),
        element("shaft", f"W1{n}", joins=f"E{n} {p} {c}"), element("shaft", f"W2{n}",
                                                                   joins=f"{m} D{n}"),
        element("reservoir", t, ports("S", "R", "D", level="below"), volume="50 L"),
        element("filter", f, title="charge filter", fineness="10 um", **(filter_ or {})),
        element("cooler", k, title="cooler", **(cooler or {})),
        element("flushing-valve", v, **(flushing or {})),
        element("check-valve", c1, **(check or {})), element("check-valve", c2, **(check or {})),
        element("relief-valve", r1, setting="25 bar", **(relief or {})),
        element("relief-valve", r2, setting="350 bar", **(relief or {})),
        element("relief-valve", r3, setting="350 bar", **(relief or {})),
        joins("HA", f"{p}.A", f"{m}.A", f"{c1}.B", f"{r2}.P", f"{r3}.T", f"{v}.A",
              function="working"),
        joins("HB", f"{p}.B", f"{m}.B", f"{c2}.B", f"{r3}.P", f"{r2}.T", f"{v}.B",
              function="working"),
        *((joins("S1", f"{t}.S", f"{f}.A", function="suction"),
           joins("S2", f"{f}.B", f"{c}.S", function="suction"),
           joins("G1", f"{c}.P", f"{r1}.P", f"{c1}.A", f"{c2}.A",
                 function="charge")) if suction else
          (joins("S", f"{t}.S", f"{c}.S", function="suction"),
           joins("G1", f"{c}.P", f"{f}.A", f"{r1}.P", function="charge"),
           joins("G2", f"{f}.B", f"{c1}.A", f"{c2}.A", function="charge"))),
        joins("N", f"{r1}.T", f"{t}.R", function="return"),
        joins("L1", f"{v}.F", f"{k}.A", *housings, function="drain"),
        joins("L2", f"{k}.B", f"{t}.D", function="drain")))


def loops():
    """Closed loops with every option of the kinds that stand in one."""
    yield "plain-checks", loop(filter_={"bypass": "2 bar"})
    yield "fixed-machines", loop(pump={"variable": "no", "control": "none", "drain": "internal"},
                                 motor={"drain": "internal"}, relief={"adjustable": "no"})
    yield "manual-control", loop(pump={"control": "manual", "case_ports": 2},
                                 motor={"variable": "yes", "control": "hydraulic", "case_ports": 2},
                                 check={"opening_pressure": "0.5 bar"}, cooler={"bypass": "2 bar"})
    yield "electric-control", loop(pump={"control": "electric", "case_ports": 3},
                                   motor={"variable": "yes", "control": "electric",
                                          "case_ports": 3},
                                   filter_={"clogging_indicator": "visual"},
                                   flushing={"centre": "open"}, relief={"operation": "pilot"})
    yield "no-control", loop(pump={"control": "none"},
                             motor={"variable": "yes", "control": "manual"},
                             filter_={"clogging_indicator": "electrical", "bypass": "3 bar"},
                             relief={"operation": "pilot", "adjustable": "no"})
    yield "one-way-filter", loop(filter_={"one_way": "yes"},
                                 motor={"variable": "yes", "control": "none"})
    yield "one-way-filter-bypass", loop(filter_={"one_way": "yes", "bypass": "2 bar",
                                                 "clogging_indicator": "visual"},
                                        charge={"variable": "yes", "control": "manual",
                                                "drain": "external"})
    yield "suction-filter", loop(filter_={"clogging_indicator": "visual"}, suction=True)
    yield "three-loops", loop(1) + loop(2) + loop(3, motor={"case_ports": 2})
    yield "two-loops", loop(1) + loop(2, pump={"control": "electric"})


def position(ident, *paths, rest=False):
    """A valve position; a path is "A-B", with `~` for `-` where it is throttled."""
    text = f'<position id="{ident}"' + (' rest="yes"' if rest else "") + ">"
    for path in paths:
        throttled = "~" in path
        start, end = path.replace("~", "-").split("-")
        text += f'<path from="{start}" to="{end}"' + (' throttled="yes"/>' if throttled else "/>")
    return text + "</position>"


def open_drive(valve_ports, positions, motor_ports="AB", motor=None, pump=None, **valve):
    """A pump, a directional valve and a motor that it serves; valve ports beyond A and B go to P
    and T."""
    out = element("engine", "E1", power="20 kW")
    out += element("pump", "P1", title="pump", displacement="20 cm3/rev", **(pump or {}))
    out += element("shaft", "W1", joins="E1 P1") + element("shaft", "W2", joins="M1 D1")
    out += element("load", "D1", title="broom")
    out += element("motor", "M1", title="broom motor", **(motor or {}))
    out += element("reservoir", "T1", ports("S", "R", level="below") + ports("X", level="above"))
    out += element("relief-valve", "R1", setting="180 bar")
    out += element("directional-valve", "V1", ports(*valve_ports) + "".join(positions), **valve)
    supply = ["P1.P", "R1.P"] + (["V1.P"] if "P" in valve_ports else [])
    back = ["R1.T", "T1.R"] + (["V1.T"] if "T" in valve_ports else [])
    to_a = ["M1.A"] + (["V1.A"] if "A" in valve_ports else ["P1.P"])
    to_b = ["M1.B"] + (["V1.B"] if "B" in valve_ports else ["T1.X"])
    if "A" not in valve_ports:
        supply, to_a = supply + ["M1.A"], []
    out += line("S1", "T1.S", "P1.S", function="suction") + line("G1", *supply, function="working")
    out += line("N1", *back, function="return")
    out += line("HA", *to_a) if to_a else ""
    out += line("HB", *to_b)
    return out


def valves():
    """Directional valves of two to four ports and one to three positions, each way of actuation."""
    closed = position("closed", rest=True)
    four = "PTAB"
    forward, reverse = position("forward", "P-A", "B-T"), position("reverse", "P-B", "A-T")
    for name, centre, valve in (
            ("closed-solenoid", closed, dict(actuation="solenoid")),
            ("float-pilot", position("float", "A-T", "B-T", rest=True), dict(actuation="pilot")),
            ("tandem-lever-detent", position("tandem", "P-T", rest=True),
             dict(actuation="lever", detent="yes")),
            ("open-pedal", position("open", "P-T", "A-T", "B-T", rest=True),
             dict(actuation="pedal")),
            ("throttled-lever", position("slow", "P~A", "B~T", rest=True),
             dict(actuation="lever"))):
        yield f"valve-4-3-{name}", open_drive(four, (forward, centre, reverse), **valve)
    rest = position("off", "P-T", rest=True)
    for actuation in ("solenoid", "pilot", "lever", "pedal"):
        yield (f"valve-4-2-{actuation}", open_drive(
            four, (position("on", "P-A", "B-T"), rest), actuation=actuation))
        yield (f"valve-2-2-{actuation}", open_drive(
            "PA", (position("on", "P-A"), closed), actuation=actuation))
    yield "valve-4-2-rest-first", open_drive(four, (rest, position("on", "P-A", "B-T")),
                                             detent="yes")
    yield "valve-3-2", open_drive("PTA", (position("on", "P-A"), position("off", "A-T", rest=True)))
    through = position("through", "P-A", rest=True)
    yield "valve-2-2-open", open_drive("PA", (position("shut"), through))
    yield "one-way-motor", open_drive("PA", (position("on", "P-A"), closed),
                                      motor={"flow_directions": 1})
    yield ("one-way-motor-variable", open_drive(
        "PA", (position("on", "P-A"), closed), pump={"variable": "yes", "control": "electric"},
        motor={"flow_directions": 1, "variable": "yes", "control": "hydraulic",
               "drain": "external"}))


def more_valves():
    """Directional valves of five and six ports, of one position and of four, in a loop and apart
    from one."""
    base = (element("reservoir", "T1", ports("R", level="below"))
            + element("reservoir", "T2", ports("S", level="below")) + element("pump", "P1")
            + element("engine", "E1") + element("shaft", "W1", joins="E1 P1"))
    for name, valve_ports, positions in (
            ("5-ports", "PTABC", (position("on", "P-A", "B-T"), position("off", rest=True))),
            ("6-ports", "PTABCD", (position("on", "P-A", "B-T", "C-D"),
                                   position("off", "C-D", rest=True))),
            ("one-position", "PA", (position("on", "P-A", rest=True),)),
            ("four-positions", "PTAB", (position("a", "P-A", "B-T"), position("b", rest=True),
                                        position("c", "P-B", "A-T"), position("d", "A-T", "B-T"))),
            ("named-ports", ("IN", "OUT1", "OUT2"), (position("one", "IN-OUT1"),
                                                     position("two", "IN-OUT2", rest=True)))):
        out = base + element("directional-valve", "V1", ports(*valve_ports) + "".join(positions))
        out += line("S", "T2.S", "P1.S") + line("G", "P1.P", f"V1.{valve_ports[0]}")
        out += line("N", f"V1.{valve_ports[1]}", "T1.R")
        yield f"valve-{name}", out
    # A valve that parts the motor from the loop, and one that vents the charge line.
    out = loop(1, motor={"drain": "internal"}, joined={"G1": ["V2.P"]})
    out = out.replace("P11.A M11.A", "P11.A V3.A")
    out += element("directional-valve", "V3", ports("A", "B") + position("drive", "A-B") +
                   position("part", rest=True), actuation="pilot") + line("H3", "V3.B", "M11.A")
    out += element("directional-valve", "V2", ports("P", "T") + position("vent", "P-T") +
                   position("hold", rest=True), actuation="pedal", detent="yes")
    out += element("reservoir", "T3", ports("V", level="above")) + line("N3", "V2.T", "T3.V")
    yield "valve-in-the-loop", out


def hand_valves():
    """Shut-off valves as they can stand, orifices, junctions, a load held by checks."""
    for name, valve in (("open", {}), ("closed", {"position": "closed"}),
                        ("bypass", {}), ("locked-open", {"locked": "yes"}),
                        ("locked-closed", {"position": "closed", "locked": "yes"})):
        out = element("pump", "P1", title="pump") + element("engine", "E1") + element("shaft", "W1",
                                                                                      joins="E1 P1")
        out += element("reservoir", "T1", ports("S", "R", level="below"))
        hand = "bypass-valve" if name == "bypass" else "shut-off-valve"
        out += element(hand, "B1", title="stop", **valve)
        out += element("orifice", "O1", bore="1.2 mm") + element("check-valve", "C1",
                                                                 opening_pressure="1 bar")
        out += element("junction", "J1", ports("A", "B", "C"))
        out += element("motor", "M1", title="mixer motor") + element("load", "D1", title="mixer")
        out += element("shaft", "W2", joins="M1 D1")
        out += line("S1", "T1.S", "P1.S", function="suction") + line("G1", "P1.P", "J1.A")
        out += line("G2", "J1.B", "B1.A") + line("G3", "B1.B", "O1.A") + line("G4", "O1.B", "M1.A")
        out += line("G5", "J1.C", "C1.A") + line("G6", "C1.B", "M1.B", "T1.R")
        yield f"hand-valve-{name}", out


def others():
    """Several reservoirs, several lines on one port, a junction, nested assemblies,
    designations."""
    out = loop(1, joined={"HA": ["J1.A"]}) + element("reservoir", "T2", ports("R", level="above"),
                                                     title="auxiliary tank")
    out += element("junction", "J1", ports("A", "B", "C"))
    out += element("check-valve", "C9", opening_pressure="2 bar") + element("orifice", "O1",
                                                                            bore="1 mm")
    out += line("X2", "J1.B", "C9.A") + line("X3", "J1.C", "O1.A")
    out += line("X4", "C9.B", "O1.B", "T2.R", function="return")
    yield "two-reservoirs", out
    inner = (element("check-valve", "C1") + element("check-valve", "C2") + line("G", "C1.A",
                                                                                "C2.A") +
             '<port id="G" of="C1.A"/><port id="A" of="C1.B"/><port id="B" of="C2.B"/>')
    unit = (element("pump", "P1", **PUMP) + element("assembly", "U2", inner) +
            line("A", "P1.A", "U2.A") + line("B", "P1.B", "U2.B") +
            '<port id="A" of="P1.A"/><port id="B" of="P1.B"/><port id="G" of="U2.G"/>'
            '<port id="L" of="P1.L"/>')
    out = element("engine", "E1") + element("assembly", "U1", unit, title="pump unit")
    out += element("pump", "P2", designation="1.2", title="charge pump")
    out += element("motor", "M1", designation="2.1", title="winch motor", drain="internal")
    out += element("load", "D1", title="drum") + element("reservoir", "T1",
                                                         ports("S", "R", level="below"))
    out += element("shaft", "W1", joins="E1 U1/P1 P2") + element("shaft", "W2", joins="M1 D1")
    out += element("relief-valve", "R1", setting="25 bar", designation="0.7")
    out += line("HA", "U1.A", "M1.A") + line("HB", "U1.B", "M1.B") + line("S1", "T1.S", "P2.S")
    out += line("G1", "P2.P", "U1.G", "R1.P") + line("N1", "R1.T", "T1.R", "U1.L")
    yield "nested-assembly", out
    out = loop(1, joined={"HA": ["M2.A"], "HB": ["M2.B"], "L1": ["M2.L"]})
    out += element("motor", "M2", title="second motor", **MOTOR)
    out += element("load", "D2", title="second axle") + element("shaft", "W9", joins="M2 D2")
    yield "two-motors", out
    out = loop(1, joined={"HA": ["I1.P"], "HB": ["I2.P"], "G2": ["I3.P"], "L1": ["I4.P"]})
    out += "".join(element("measuring-point", f"I{n}") for n in range(1, 5))
    yield "measured", out


# Files that a `use` names: an assembly for itself.
PARTS = {"valve-block": '<assembly format="1" title="block">\n' + (
    element("relief-valve", "R1", setting="300 bar") + element("relief-valve", "R2",
                                                               setting="300 bar") +
    line("A", "R1.P", "R2.T") + line("B", "R2.P", "R1.T") +
    '<port id="A" of="R1.P"/><port id="B" of="R2.P"/>\n</assembly>\n')}


def uses():
    """One file used twice, its parts overridden; ports left open; two pumps and two motors on
    their shafts."""
    out = loop(1, joined={"HA": ["U1.A"], "HB": ["U1.B"]}) + loop(2,
                                                                  joined={"HA": ["U2.A"],
                                                                          "HB": ["U2.B"]})
    change = '<set of="R1" attribute="operation" value="pilot"/>'
    out += element("use", "U1", file="valve-block.xml")
    out += element("use", "U2", change, file="valve-block.xml")
    yield "used-twice", out
    out = element("engine", "E1") + element("pump", "P1", **PUMP) + element("pump", "P2", **PUMP)
    out += element("motor", "M1", **MOTOR) + element("motor", "M2", **MOTOR)
    out += element("load", "D1", title="quay winch")
    out += element("shaft", "W1", joins="E1 P1 P2") + element("shaft", "W2", joins="M1 M2 D1")
    out += line("A1", "P1.A", "M1.A") + line("B1", "P1.B", "M1.B") + line("A2", "P2.A", "M2.A")
    out += line("B2", "P2.B", "M2.B")
    yield "open-ports", out


def hoses():
    """The working lines of a loop and lines to a sealed reservoir as hoses; one to the parts of a
    junction."""
    out = loop(1).replace('<line id="H', '<hose id="H').replace('<line id="L', '<hose id="L')
    out = out.replace('<reservoir id="T11"', '<reservoir id="T11" pressure="0.5 bar"')
    yield "hoses", out.replace('<line id="S', '<hose id="S')
    out = element("engine", "E1") + element("pump", "P1") + element("shaft", "W1", joins="E1 P1")
    out += element("junction", "J1", ports("a", "b", "c"))
    out += element("motor", "M1") + element("motor", "M2") + element("load", "D1")
    out += element("shaft", "W2", joins="M1 M2 D1")
    out += element("reservoir", "T1", ports("S", level="below") + ports("R", level="above"))
    for ident, *ends in (("S1", "T1.S", "P1.S"), ("G1", "P1.P", "J1.a"), ("G2", "J1.b", "M1.A"),
                         ("G3", "J1.c", "M2.A"), ("N1", "M1.B", "M2.B", "T1.R")):
        out += element("hose", ident, joins=" ".join(ends))
    yield "hoses-and-junction", out


def on_shafts():
    """Brakes, clutches and gearboxes between engine and pump and between motor and load."""
    for name, applied, clutch in (
            ("spring-brake", None, {}), ("pressure-brake", "pressure", dict(engaged="no")),
            ("hydraulic-clutch", None, dict(actuation="hydraulic", engaged="no")),
            ("electric-clutch", "pressure", dict(actuation="electric"))):
        out = element("electric-motor", "E1", power="20 kW") + element("clutch", "K1", **clutch)
        out += element("gearbox", "G1", ratio="0.8") + element("pump", "P1", **PUMP)
        out += element("pump", "P2", title="charge pump") + element("motor", "M1", **MOTOR)
        out += element("motor", "M2", **MOTOR) + element("load", "D1", title="sweeper's axle")
        out += element("load", "D2", title="broom")
        out += element("brake", "B1", torque="300 N.m", applied=applied)
        out += element("gearbox", "G2", ratio="24.75", title="axle drive") + element("gearbox", "G3")
        out += element("shaft", "W1", joins="E1 K1.in") + element("shaft", "W2",
                                                                  joins="K1.out G1.in")
        out += element("shaft", "W3", joins="G1.out P1 P2")
        out += element("shaft", "W4", joins="M1 B1 G2.in") + element("shaft", "W5",
                                                                     joins="G2.out D1")
        out += element("shaft", "W6", joins="M2 G3.out") + element("shaft", "W7", joins="G3.in D2")
        out += element("reservoir", "T1", ports("S", "R", "D", level="below"))
        out += element("directional-valve", "V1", ports("P", "T", "A")
                       + position("0", "A-T", rest=True) + position("a", "P-A"))
        out += element("check-valve", "C1") + element("check-valve", "C2")
        out += element("relief-valve", "R1", setting="25 bar")
        out += line("HA", "P1.A", "M1.A", "M2.A", "C1.B", function="working")
        out += line("HB", "P1.B", "M1.B", "M2.B", "C2.B", function="working")
        out += line("S", "T1.S", "P2.S", function="suction")
        out += line("G", "P2.P", "R1.P", "C1.A", "C2.A", "V1.P", function="charge")
        out += line("Z", "V1.A", "B1.Z", *["K1.Z"] * (clutch.get("actuation") == "hydraulic"),
                    function="pilot")
        out += line("N", "R1.T", "V1.T", "T1.R", function="return")
        out += line("L", "P1.L", "M1.L", "M2.L", "T1.D", function="drain")
        yield name, out


def circuits():
    """Name -> text of every variant, in a fixed order."""
    import bench  # which builds on this module
    result = {}
    for group in (bench.circuits, loops, valves, more_valves, hand_valves, others, uses, hoses, on_shafts):
        for name, body in group():
            assert name not in result, name
            result[name] = circuit(name.replace("-", " "), body)
    return result


def main(folder):
    import pathlib
    for name, text in {**circuits(), **PARTS}.items():
        (pathlib.Path(folder) / f"{name}.xml").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    import sys
    main(sys.argv[1])
