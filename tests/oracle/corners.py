"""Small circuits made by hand, each for one corner of the rules. Most are the same small sound
drive with one thing changed."""

import corners_ceilings
import corners_control
import corners_feeding
import corners_fittings
import corners_flow
import corners_found
import corners_joins
import corners_pumps
import corners_relief
import corners_sides
import corners_stores
import corners_turning
import corners_valves
import corners_volumes

TANK = ('<reservoir id="T1" breather="yes">' +
        "".join(f'<port id="{p}" level="below"/>' for p in ("S", "R", "D", "X", "Y")) +
        "</reservoir>")
DRAINED = 'drain="external" case-pressure="3 bar"'
TWO_WAY = f'<pump id="P1" flow-directions="2" {DRAINED}/>'
ONE_WAY = f'<pump id="P1" closed-loop="yes" {DRAINED}/>'

# A sound drive: id -> the element, or for lines and shafts what they join
SOUND = {
    "E1": '<engine id="E1" speed="1500 rpm"/>', "T1": TANK, "P1": TWO_WAY,
    "P2": '<pump id="P2"/>', "M1": f'<motor id="M1" {DRAINED}/>', "F1": '<filter id="F1"/>',
    "R1": '<relief-valve id="R1" setting="24 bar"/>',
    "R2": '<relief-valve id="R2" setting="350 bar"/>',
    "R3": '<relief-valve id="R3" setting="350 bar"/>',
    "C1": '<check-valve id="C1"/>', "C2": '<check-valve id="C2"/>',
    "W1": "E1 P1 P2",
    "HA": "P1.A M1.A C1.B R2.P R3.T", "HB": "P1.B M1.B C2.B R3.P R2.T",
    "S1": "T1.S P2.S", "G1": "P2.P R1.P F1.A", "G2": "F1.B C1.A C2.A", "G3": "R1.T T1.R",
    "L1": "P1.L M1.L T1.D",
}


def _part(ident, what):
    if what.startswith("<"):
        return what
    return f'<{"shaft" if ident.startswith("W") else "line"} id="{ident}" joins="{what}"/>'


def _circuit(title, elements):
    return "\n".join(['<?xml version="1.0" encoding="UTF-8"?>',
                      f'<circuit format="1" title="{title}">',
                      *(f"  {_part(i, what)}" for i, what in elements.items() if what),
                      "</circuit>", ""])


def _changed(title, **changes):
    """The sound drive with elements replaced or added; None takes one out."""
    return _circuit(title, {**SOUND, **changes})


def _valve(ident, ports, *positions, attributes=""):
    """A directional valve. A position: "name: P-A T~B", `*` after the name = at rest, states in
    brackets: "name* [neutral]: ..."."""
    made = []
    for text in positions:
        head, paths = text.split(":")
        states = head.partition("[")[2].strip("] ")
        head = head.partition("[")[0].strip()
        rest = ' rest="yes"' if head.endswith("*") else ""
        named = f' in="{states}"' if states else ""
        inside = "".join(
            '<path from="{}" to="{}"{}/>'.format(
                *path.replace("~", "-").split("-"), ' throttled="yes"' if "~" in path else "")
            for path in paths.split())
        made.append(f'<position id="{head.strip("*")}"{rest}{named}>{inside}</position>')
    return (f'<directional-valve id="{ident}"{attributes}>' +
            "".join(f'<port id="{p}"/>' for p in ports) + "".join(made) + "</directional-valve>")


REVERSING = _valve("V1", "PTAB", "centre*:", "ahead: P-A T-B", "back: P-B T-A")
REVERSING_NAMED = _valve("V1", "PTAB", "centre*: P-T",
                         "ahead [drive-forward overrun-forward]: P-A T-B",
                         "back [drive-reverse overrun-reverse]: P-B T-A")
AT_MOTOR = {"HA": "V1.A M1.A C1.B R2.P R3.T", "HB": "V1.B M1.B C2.B R3.P R2.T"}
ISOLATING = _valve("V1", ("A1", "A2", "B1", "B2"), "on: A1-A2 B1-B2", "off*:")


def _open_and_lost():
    """Circuits that have no sound loop."""
    open_part = {"E1": SOUND["E1"], "T1": TANK, "P2": '<pump id="P2"/>', "M1": '<motor id="M1"/>',
                 "V1": _valve("V1", "PTA", "off*: P-T", "on: P-A"), "W1": "E1 P2",
                 "S1": "T1.S P2.S", "N1": "P2.P V1.P", "N2": "V1.A M1.A", "N3": "M1.B V1.T T1.R"}
    return {
        "open-part-only": _circuit("open part only", open_part),
        "reservoir-only": _circuit("a reservoir and nothing else", {"T1": TANK}),
        "engine-only": _circuit("an engine and nothing else", {"E1": SOUND["E1"]}),
        "motor-only": _circuit("a motor joined to nothing", {"M1": SOUND["M1"]}),
        "open-part-beside-a-loop": _changed(
            "open part beside a loop", P3='<pump id="P3"/>', M2='<motor id="M2"/>',
            W1="E1 P1 P2 P3", N1="P3.P M2.A", N2="M2.B T1.X", N3="P3.S T1.Y"),
        "short-circuited": _changed("sides joined", HA=f"{SOUND['HA']} {SOUND['HB']}", HB=None),
        "short-circuited-by-hand-valve": _changed(
            "towing way drawn open", H1='<shut-off-valve id="H1"/>', HA=SOUND["HA"] + " H1.A",
            HB=SOUND["HB"] + " H1.B"),
        "short-circuited-in-one-position": _changed(
            "float position", V1=_valve("V1", "AB", "shut*:", "float: A-B"),
            HA=SOUND["HA"] + " V1.A", HB=SOUND["HB"] + " V1.B"),
        "motor-on-one-node": _changed("motor with both ports on one side",
                                      HA=SOUND["HA"] + " M1.B", HB="P1.B C2.B R3.P R2.T"),
        "pump-on-one-node": _changed("pump with both ports on one side",
                                     HA=SOUND["HA"] + " P1.B", HB="M1.B C2.B R3.P R2.T"),
        "second-motor-on-one-node": _changed("a shorted motor beside a sound one",
                                             M2='<motor id="M2" closed-loop="yes"/>',
                                             HA=SOUND["HA"] + " M2.A M2.B"),
        "side-open": _changed("a side open to the reservoir", HA=SOUND["HA"] + " T1.X"),
        "both-sides-through-springs": _changed(
            "sides to the reservoir through spring checks only",
            C3='<check-valve id="C3" opening-pressure="5 bar"/>', HA=SOUND["HA"] + " C3.A",
            N1="C3.B T1.X"),
        "checks-bridge-the-sides": _changed("make-up check turned",
                                            HA="P1.A M1.A C1.A R2.P R3.T",
                                            G2="F1.B C1.B C2.A"),
        "charge-pump-draws-from-a-side": _changed("charge pump whose inlet is on a side", S1=None,
                                                  HB=SOUND["HB"] + " P2.S"),
        "charge-pump-draws-from-a-side-and-comes-first": _circuit(
            "charge pump whose inlet is on a side, first in the file",
            {"P2": SOUND["P2"], **SOUND, "S1": None, "HB": SOUND["HB"] + " P2.S"}),
        "both-checks-turned": _changed("both make-up checks turned",
                                       HA="P1.A M1.A C1.A R2.P R3.T",
                                       HB="P1.B M1.B C2.A R3.P R2.T", G2="F1.B C1.B C2.B"),
    }


def _loops():
    """Loops of other shapes."""
    second = {"P3": '<pump id="P3" flow-directions="2"/>', "W1": "E1 P1 P2 P3"}
    return {
        "sound": _changed("sound"),
        "pumps-in-series": _changed("two pumps in series", **second, N1="P1.A P3.B",
                                    HA="P3.A M1.A C1.B R2.P R3.T"),
        "pumps-side-by-side": _changed("two pumps side by side", **second,
                                       HA=SOUND["HA"] + " P3.A", HB=SOUND["HB"] + " P3.B"),
        "pumps-opposed": _changed("two pumps side by side, one the other way about", **second,
                                  HA=SOUND["HA"] + " P3.B", HB=SOUND["HB"] + " P3.A"),
        "motors-in-series": _changed("two motors in series", M2='<motor id="M2"/>',
                                     HB="P1.B M2.B C2.B R3.P R2.T", N1="M1.B M2.A"),
        "one-way-motor": _changed("motor that turns one way",
                                  M1='<motor id="M1" flow-directions="1"/>', L1="P1.L T1.D"),
        "one-way-pump": _changed("one-way pump", P1=ONE_WAY, HA="P1.P M1.A C1.B R2.P R3.T",
                                 HB="P1.S M1.B C2.B R3.P R2.T"),
        "one-way-pump-reversed-by-a-valve": _changed("one-way pump and reversing valve",
                                                     P1=ONE_WAY, V1=REVERSING, **AT_MOTOR,
                                                     N1="P1.P V1.P", N2="P1.S V1.T"),
        "reversing-valve-named-positions": _changed("reversing valve, positions by state",
                                                    P1=ONE_WAY, V1=REVERSING_NAMED, **AT_MOTOR,
                                                    N1="P1.P V1.P", N2="P1.S V1.T"),
        "check-at-the-inlet": _changed(
            "check between reversing valve and pump", P1=ONE_WAY, V1=REVERSING, **AT_MOTOR,
            C3='<check-valve id="C3"/>', N1="P1.P V1.P", N2="C3.A V1.T", N3="C3.B P1.S"),
        "reliefs-at-the-pump": _changed(
            "reversing valve between reliefs and motor", P1=ONE_WAY, V1=REVERSING,
            HA="P1.P V1.P C1.B R2.P R3.T", HB="P1.S V1.T C2.B R3.P R2.T", N1="V1.A M1.A",
            N2="V1.B M1.B"),
        "loop-over-throttle-only": _changed("loop that closes over an orifice only",
                                            O1='<orifice id="O1"/>', N1="O1.A P1.A",
                                            HA="O1.B M1.A C1.B R2.P R3.T"),
        "throttled-position": _changed(
            "valve that throttles", V1=_valve("V1", "PA", "creep*: P~A", "full: P-A"),
            N1="P1.A V1.P", HA="V1.A M1.A C1.B R2.P R3.T"),
        "branch-by-metering-only": _changed("a motor fed through an orifice and nothing else",
                                            O1='<orifice id="O1"/>', N1="O1.B M1.A",
                                            HA="P1.A O1.A C1.B R2.P R3.T"),
        "filter-against-the-flow": _changed("one-way filter in a side",
                                            F2='<filter id="F2" one-way="yes"/>',
                                            N1="P1.A F2.A",
                                            HA="F2.B M1.A C1.B R2.P R3.T"),
        "section-without-feed": _changed("isolated motor with neither check nor relief",
                                         V1=ISOLATING, N1="V1.A2 M1.A", N2="V1.B2 M1.B",
                                         HA="P1.A V1.A1 C1.B R2.P R3.T",
                                         HB="P1.B V1.B1 C2.B R3.P R2.T"),
        "section-with-all": _changed("isolated motor with checks and reliefs of its own",
                                     V1=ISOLATING, N1="P1.A V1.A1", N2="P1.B V1.B1",
                                     HA="V1.A2 M1.A C1.B R2.P R3.T",
                                     HB="V1.B2 M1.B C2.B R3.P R2.T"),
        "section-open-to-the-reservoir": _changed(
            "isolated motor that freewheels into the reservoir",
            V1=_valve("V1", "PATB", "on: P-A", "off*: A-T"), N1="P1.A V1.P", N2="V1.T T1.X",
            HA="V1.A M1.A C1.B R2.P R3.T"),
    }


def _charge_and_reliefs():
    """Charge oil, its filter and the crossport reliefs."""
    hand = '<shut-off-valve id="H1"{}/>'
    return {
        "vented-charge-line": _changed("charge line open to the reservoir",
                                       G2=SOUND["G2"] + " T1.X"),
        **{f"charge-line-to-the-reservoir-over-{name}": _changed(
            f"gallery to reservoir over {name}", G2=SOUND["G2"] + " X1.A", X1=part, G4="X1.B T1.X")
           for name, part in (("a-shut-valve", '<shut-off-valve id="X1" position="closed"/>'),
                              ("an-open-valve", '<shut-off-valve id="X1"/>'),
                              ("a-check", '<check-valve id="X1"/>'),
                              ("a-sprung-check", '<check-valve id="X1" opening-pressure="2 bar"/>'),
                              ("an-orifice", '<orifice id="X1"/>'))},
        "charge-straight-into-a-side": _changed("charge pump delivers into a side",
                                                HA=SOUND["HA"] + " F1.B", G2="C1.A C2.A"),
        "charge-pump-stands-still": _changed("charge pump on no shaft", W1="E1 P1"),
        "charge-pump-two-way": _changed("charge pump over centre",
                                        P2='<pump id="P2" flow-directions="2"/>',
                                        S1="T1.S P2.B", G1="P2.A R1.P F1.A"),
        "charge-pump-dry": _changed("charge pump that draws from nothing", S1=None),
        "charge-from-a-return": _changed(
            "charge oil from another motor's return", M2='<motor id="M2"/>',
            R4='<relief-valve id="R4" setting="120 bar"/>', G1="P2.P M2.A R4.P",
            N1="M2.B R4.T F1.A R1.P"),
        "charge-behind-a-motor-without-relief": _changed(
            "another motor in the charge line, no relief round it", M2='<motor id="M2"/>',
            G1="P2.P M2.A", N1="M2.B F1.A R1.P"),
        "unfiltered-second-way": _changed("a second check past the filter",
                                          C3='<check-valve id="C3"/>', N1="T1.X C3.A",
                                          HB=SOUND["HB"] + " C3.B"),
        "filter-passed-by-relief": _changed("relief round the filter",
                                            R4='<relief-valve id="R4" setting="3 bar"/>',
                                            G1=SOUND["G1"] + " R4.P", G2=SOUND["G2"] + " R4.T"),
        "relief-behind-locked-valve": _changed("crossport relief behind a locked hand valve",
                                               H1=hand.format(' locked="yes"'), N1="H1.B R2.P",
                                               HA="P1.A M1.A C1.B H1.A R3.T"),
        "relief-behind-free-valve": _changed("crossport relief behind a hand valve",
                                             H1=hand.format(""), N1="H1.B R2.P",
                                             HA="P1.A M1.A C1.B H1.A R3.T"),
        "reliefs-to-the-reservoir": _changed("crossport reliefs into the reservoir",
                                             HA="P1.A M1.A C1.B R2.P", HB="P1.B M1.B C2.B R3.P",
                                             N1="R2.T R3.T T1.X"),
        "reliefs-into-the-charge-line": _changed("crossport reliefs into the charge line",
                                                 HA="P1.A M1.A C1.B R2.P",
                                                 HB="P1.B M1.B C2.B R3.P",
                                                 G2=SOUND["G2"] + " R2.T R3.T"),
        "one-relief-four-checks": _changed(
            "one relief that both sides reach through checks", R3=None,
            C3='<check-valve id="C3"/>', C4='<check-valve id="C4"/>',
            HA="P1.A M1.A C1.B C3.A", HB="P1.B M1.B C2.B C4.A", N1="C3.B C4.B R2.P",
            G2=SOUND["G2"] + " R2.T"),
        "relief-without-setting": _changed("crossport relief of unknown setting",
                                           R2='<relief-valve id="R2"/>'),
        "flushing-open-centre": _changed(
            "flushing into the housing", V1='<flushing-valve id="V1" centre="open"/>',
            R4='<relief-valve id="R4" setting="18 bar"/>', HA=SOUND["HA"] + " V1.A",
            HB=SOUND["HB"] + " V1.B", N1="V1.F R4.P", L1=SOUND["L1"] + " R4.T"),
    }


def _ways_of_the_charge_oil():
    """What the charge oil passes on its way, and what does not count as one."""
    vent = _valve("V1", "GT", "shut: ", "open*: G-T")
    return {
        "make-up-over-an-orifice": _changed("orifice ahead of a make-up check",
                                            O1='<orifice id="O1"/>', G2="F1.B O1.A C2.A",
                                            N1="O1.B C1.A"),
        "make-up-ahead-of-an-orifice": _changed("orifice behind a make-up check",
                                                O1='<orifice id="O1"/>', N1="C1.B O1.A",
                                                HA="P1.A M1.A O1.B R2.P R3.T"),
        "make-up-behind-a-shut-valve": _changed("make-up check behind a hand valve drawn closed",
                                                H1='<shut-off-valve id="H1" position="closed"/>',
                                                N1="H1.B C1.A", G2="F1.B H1.A C2.A"),
        "side-fed-through-the-other": _changed("one side's check draws from the other side",
                                               G2="F1.B C2.A", HB=SOUND["HB"] + " C1.A"),
        "charge-line-vented-at-rest": _changed("valve that opens the charge line at rest", V1=vent,
                                               G2=SOUND["G2"] + " V1.G", N1="V1.T T1.X"),
        "charge-line-vented-when-driving": _changed(
            "valve that opens the charge line in one state", N1="V1.T T1.X",
            V1=_valve("V1", "GT", "shut*: ", "open [drive-reverse overrun-forward]: G-T"),
            G2=SOUND["G2"] + " V1.G"),
        "charge-shared-by-hand": _changed("charge line over an open hand valve",
                                          H1='<shut-off-valve id="H1"/>', N1="F1.B H1.A",
                                          G2="H1.B C1.A C2.A"),
        "return-teed-into-the-suction": _changed(
            "open part whose return joins the charge pump's filtered suction line",
            F2='<filter id="F2"/>', P3='<pump id="P3"/>', M2='<motor id="M2"/>',
            W1="E1 P1 P2 P3", S1="T1.S F2.A", S2="F2.B P2.S P3.S M2.B", N1="P3.P M2.A"),
        "two-reservoirs-one-unfiltered": _changed(
            "charge oil from two reservoirs, one way unfiltered", P3='<pump id="P3"/>',
            T2='<reservoir id="T2"><port id="S" level="below"/></reservoir>', W1="E1 P1 P2 P3",
            S2="T2.S P3.S", G2=SOUND["G2"] + " P3.P"),
        "charge-pump-on-the-motor-shaft": _changed("charge pump turned by the motor only",
                                                   W1="E1 P1", W2="M1 P2"),
        "crossport-over-an-orifice": _changed("orifice ahead of a crossport relief",
                                              O1='<orifice id="O1"/>', N1="O1.B R2.P",
                                              HA="P1.A M1.A C1.B O1.A R3.T"),
        "flushing-valve-on-one-side": _changed(
            "flushing valve with both inlets on one side", V1='<flushing-valve id="V1"/>',
            R4='<relief-valve id="R4" setting="18 bar"/>', HA=SOUND["HA"] + " V1.A V1.B",
            N1="V1.F R4.P", N2="R4.T T1.X"),
        "flushing-without-relief": _changed(
            "flushing valve straight to the reservoir", V1='<flushing-valve id="V1"/>',
            HA=SOUND["HA"] + " V1.A", HB=SOUND["HB"] + " V1.B", N1="V1.F T1.X"),
        "too-many-valves": _changed(
            "more positions than are tried", **{
                f"V{n}": _valve(f"V{n}", "AB", "shut*: ", "open: A-B") for n in range(1, 18)},
            G2=SOUND["G2"] + "".join(f" V{n}.A V{n}.B" for n in range(1, 18))),
        "declared-closed-loop-in-an-open-part": _changed(
            "open motor that says it is meant for a closed loop", P3='<pump id="P3"/>',
            M2='<motor id="M2" closed-loop="yes"/>', W1="E1 P1 P2 P3", N1="P3.P M2.A",
            N2="M2.B T1.X", N3="P3.S T1.Y"),
    }


def _two_loops():
    """Two loops on one charge line, each with a reversing valve."""
    second = {
        "P3": '<pump id="P3" closed-loop="yes"/>', "M2": '<motor id="M2"/>', "W1": "E1 P1 P2 P3",
        "C3": '<check-valve id="C3"/>', "C4": '<check-valve id="C4"/>',
        "R4": '<relief-valve id="R4" setting="350 bar"/>',
        "R5": '<relief-valve id="R5" setting="350 bar"/>', "N3": "P3.P V2.P", "N4": "P3.S V2.T",
        "HC": "V2.A M2.A C3.B R4.P R5.T", "HD": "V2.B M2.B C4.B R5.P R4.T",
        "G2": SOUND["G2"] + " C3.A C4.A"}
    return {
        "two-loops": _changed("two loops, one valve moves freely", **second, P1=ONE_WAY,
                              V1=REVERSING_NAMED, V2=REVERSING.replace('"V1"', '"V2"'), **AT_MOTOR,
                              N1="P1.P V1.P", N2="P1.S V1.T"),
        "two-loops-of-two-sorts": _changed("a loop of a two-way pump and one of a one-way pump",
                                           **second, V2=REVERSING_NAMED.replace('"V1"', '"V2"')),
        "two-loops-one-relief-across": _changed(
            "crossport relief into the other loop", **{**second, "HC": second["HC"] + " R2.T"},
            V2=REVERSING.replace('"V1"', '"V2"'), HB="P1.B M1.B C2.B R3.P"),
    }


def _drains():
    """Housings and their way to the reservoir."""
    def through(part, start="C3.A", end="C3.B", **more):
        return {"C3": part, "L1": f"P1.L M1.L {start}", "L2": f"{end} T1.D", **more}

    spring = '<check-valve id="C3" opening-pressure="{}"/>'
    return {
        "drain-spring-at-the-limit": _changed("3 bar spring, 3 bar housing",
                                              **through(spring.format("3 bar"))),
        "drain-spring-above": _changed("5 bar spring, 3 bar housing",
                                       **through(spring.format("5 bar"))),
        "drain-spring-unknown-housing": _changed(
            "spring, housing's limit not given", M1='<motor id="M1" drain="external"/>',
            **through(spring.format("0.5 bar"))),
        "drain-over-unset-relief": _changed("drain over a relief of unknown setting", **through(
            '<relief-valve id="C3"/>', "C3.P", "C3.T")),
        "drain-two-ways": _changed(
            "drain over a relief or a stronger spring", **through(
                spring.format("6 bar"), "C3.A R4.P", "C3.B R4.T",
                R4='<relief-valve id="R4" setting="2 bar"/>')),
        "drain-behind-free-valve": _changed("drain through a hand valve",
                                            **through('<shut-off-valve id="C3"/>')),
        "drain-of-one-missing": _changed("motor's drain joined to nothing", L1="P1.L T1.D"),
    }


PUMP_IN_A_LOOP_AT_TIMES = """\
<circuit format="1" title="sweeper">
  <engine id="E1"/> <reservoir id="T1"><port id="S"/><port id="D"/></reservoir>
  <pump id="P3"/> <motor id="M3"/>
  <pump id="P1" flow-directions="2"/> <motor id="M1"/>
  <shaft id="W1" joins="E1 P3 P1"/>
  <check-valve id="C3"/>
  <directional-valve id="V1"><port id="P"/><port id="A"/><port id="T"/>
    <position id="drawn" rest="yes"><path from="P" to="T"/></position>
    <position id="round"><path from="P" to="A"/></position>
  </directional-valve>
  <directional-valve id="V2"><port id="P"/><port id="T"/><port id="A"/><port id="B"/>
    <position id="ahead" rest="yes"><path from="P" to="A"/><path from="B" to="T"/></position>
    <position id="astern"><path from="P" to="B"/><path from="A" to="T"/></position>
  </directional-valve>
  <line id="H1" joins="P3.P V2.P"/> <line id="H3" joins="V2.A M3.A"/> <line id="H4" joins="V2.B M3.B"/>
  <line id="H2" joins="P3.S V2.T C3.B"/>
  <line id="A1" joins="P1.A M1.A C3.A"/>
  <line id="B1" joins="P1.B V1.P"/>
  <line id="B2" joins="V1.A M1.B"/>
  <line id="S1" joins="V1.T T1.S"/>
</circuit>
"""


def _at_times():
    """What is part of a loop in some positions only: where V1 draws P1's port B to the reservoir,
    its sense decides whether unfiltered oil gets into the loop of P3."""
    return {"pump-in-a-loop-at-times": PUMP_IN_A_LOOP_AT_TIMES}


def circuits():
    """Name -> text of the file."""
    groups = (_open_and_lost(), _loops(), _charge_and_reliefs(), _ways_of_the_charge_oil(),
              _two_loops(), _drains(), _at_times(), corners_turning.circuits(_changed, DRAINED),
              corners_valves.circuits(_changed, _valve), corners_fittings.circuits(_changed),
              corners_flow.circuits(_changed, DRAINED), corners_control.circuits(_changed, DRAINED),
              corners_joins.circuits(_changed, DRAINED, _circuit),
              corners_feeding.circuits(_changed, _valve), corners_pumps.circuits(_changed, _valve),
              corners_sides.circuits(_changed, _valve), corners_ceilings.circuits(_changed, SOUND),
              corners_volumes.circuits(_changed, SOUND),
              corners_stores.circuits(_changed, _valve, TANK),
              corners_relief.circuits(_changed, SOUND), corners_found.circuits(_changed, SOUND))
    return {f"corner-{name}": text for group in groups for name, text in group.items()}
