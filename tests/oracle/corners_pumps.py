"""Corners of blocked-pump, double-source and filter-reversal; what is expected stands in the title,
behind the semicolon, as in `corners_feeding`.
"""

FREE = '<shut-off-valve id="X1"/>'
ALWAYS = "pass neutral drive-forward drive-reverse overrun-forward overrun-reverse hold lost-signal"


def circuits(changed, valve):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `valve` a
    directional valve."""
    found = {}
    for prefix, group in (("blocked", _blocked(changed, valve)), ("double", _double(changed, valve)),
                          ("reversal", _reversal(changed, valve))):
        found.update({f"{prefix}-{name}": text for name, text in group.items()})
    return found


def _blocked(changed, valve):
    def opened(what, expected, pump='<pump id="P3"/>', **more):
        """A pump of an open part that delivers to V1, and from there to a motor at work."""
        return changed(f"{what}; blocked-pump P3 {expected}", **{
            "P3": pump, "M2": '<motor id="M2"/>', "W1": "E1 P1 P2 P3", "S2": "T1.X P3.S",
            "V1": valve("V1", "PTA", "off*: P-T", "on: P-A"), "N1": "P3.P V1.P", "N2": "V1.A M2.A",
            "N3": "M2.B V1.T T1.Y", **more})

    def controlled(control):
        return f'<pump id="P3" variable="yes" control="{control}"/>'

    def straight(what, expected, part="", **more):
        """The same without a valve."""
        return opened(what, expected, **{"V1": None, "X1": part, "N1": "P3.P M2.A", "N2": None,
                                         "N3": "M2.B T1.Y", **more})

    fails, relief = "fail error", '<relief-valve id="X1" setting="150 bar"/>'
    shut = valve("V1", "PTAB", "centre*:", "ahead: P-A T-B", "back: P-B T-A")
    round_ = valve("V1", "PTAB", "centre*: P-T", "ahead: P-A T-B", "back: P-B T-A")
    one_way = {"P1": '<pump id="P1" closed-loop="yes" drain="external" case-pressure="3 bar"/>',
               "HA": "V1.A M1.A C1.B R2.P R3.T", "HB": "V1.B M1.B C2.B R3.P R2.T", "N1": "P1.P V1.P",
               "N2": "P1.S V1.T"}
    return {
        "charge": changed(f"charge pump with relief; blocked-pump P2 {ALWAYS}"),
        "charge-no-relief": changed("charge pump without; blocked-pump P2 fail error", R1=None,
                                    G3=None,
                                    G1="P2.P F1.A"),
        "charge-free-valve": changed("relief behind a hand valve; blocked-pump P2 fail error",
                                     X1=FREE,
                                     G1="P2.P F1.A X1.A", G4="X1.B R1.P"),
        "charge-clogging": changed("relief behind the filter; blocked-pump P2 pass", G1="P2.P F1.A",
                                   G2="F1.B C1.A C2.A R1.P"),
        "charge-check": changed("relief behind a check; blocked-pump P2 pass",
                                X1='<check-valve id="X1"/>',
                                G1="P2.P X1.A", G4="X1.B R1.P F1.A"),
        # Past the checks both sides are reached, so that their reliefs lead nowhere else.
        "charge-over-sides": changed("only crossport reliefs; blocked-pump P2 fail error", R1=None,
                                     G3=None,
                                     G1="P2.P F1.A"),
        "charge-over-side-relief": changed("only a side's relief to the reservoir; blocked-pump P2 pass",
                                           R1=None, G1="P2.P F1.A", HA="P1.A M1.A C1.B R2.P",
                                           HB="P1.B M1.B C2.B R3.P", G3="T1.R R2.T"),
        "loop-pump": changed("loop pump is in its loop; blocked-pump P1 nothing"),
        "motor": straight("pump straight into a motor", fails),
        "motor-relief": straight("relief round the motor", "pass", relief, N1="P3.P M2.A X1.P",
                                 N3="M2.B X1.T T1.Y"),
        "relief-both-ends": straight("relief from the line into itself", fails, relief,
                                     N1="P3.P M2.A X1.P X1.T"),
        "relief-to-suction": straight("relief into the suction", "pass", relief, N1="P3.P M2.A X1.P",
                                      S2="T1.X P3.S X1.T"),
        "relief-turned": straight("relief turned round", fails, relief, N1="P3.P M2.A X1.T",
                                  N3="M2.B T1.Y X1.P"),
        "bypass": straight("filter turned, its bypass alone opens", fails, N1="P3.P X1.A",
                           N4="X1.B M2.A",
                           part='<filter id="X1" bypass="3 bar"/>'),
        "orifice": straight("orifice to the reservoir", "pass", '<orifice id="X1"/>',
                            N1="P3.P M2.A X1.A",
                            N3="M2.B X1.B T1.Y"),
        "open-valve": straight("hand valve to the reservoir", fails, FREE, N1="P3.P M2.A X1.A",
                               N3="M2.B X1.B T1.Y"),
        "dead-end": straight("nothing joined", fails, N1="P3.P"),
        "into-reservoir": straight("straight into the reservoir", "nothing", N1="P3.P T1.R", G3="R1.T"),
        "at-work": opened("motor at work", "fail error"),
        "at-work-relief": opened("relief at the pump", "pass", X1=relief, N1="P3.P V1.P X1.P",
                                 N3="M2.B V1.T T1.Y X1.T"),
        "compensated": opened("pressure-compensated", "pass", controlled("pressure-compensated")),
        "load-sensing": opened("load-sensing", "pass", controlled("load-sensing")),
        "electric": opened("electric control", fails, controlled("electric")),
        "cylinder": opened("cylinder at its stop", fails, M2='<cylinder id="M2"/>'),
        "not-turned": opened("pump at rest", "nothing", W1="E1 P1 P2"),
        "two-way": straight("two-way pump, one port on the reservoir",
                                 "fail error drive-forward overrun-forward",
                                 pump='<pump id="P3" flow-directions="2"/>', S2="T1.X P3.B",
                                 N1="P3.A M2.A"),
        "unit": straight("unit as a pump", fails, pump='<pump-motor id="P3" flow-directions="1"/>',
                         S2="T1.X P3.A", N1="P3.B M2.A"),
        "reversing": straight("engine that runs backwards",
                              "fail error neutral drive-forward overrun-forward hold lost-signal",
                              E1='<electric-motor id="E1" reversing="yes"/>'),
        "loop-pump-shut-in": changed("reversing valve closed at rest; blocked-pump P1 fail error",
                                     V1=shut,
                                     **one_way),
        "loop-pump-relief": changed("the same with a relief at the pump; blocked-pump P1 pass",
                                    V1=shut, X1=relief,
                                    **{**one_way, "N1": "P1.P V1.P X1.P", "N2": "P1.S V1.T X1.T"}),
        # What it delivers goes back to its own inlet: no outlet is closed.
        "loop-pump-round": changed("reversing valve open at rest; blocked-pump P1 pass", V1=round_,
                                   **one_way),
        "no-loop": changed("a circuit without loops; blocked-pump P2 fail error", P1=None, M1=None,
                           W1="E1 P2",
                           C1=None, C2=None, R1=None, R2=None, R3=None, HA=None, HB=None,
                           G1="P2.P F1.A",
                           G2="F1.B", G3=None, L1=None),
    }


def _double(changed, valve):
    def two(what, expected, part="", joint="P2.P R1.P F1.A X1.A", line="P3.P X1.B", **more):
        """A second pump on a motor of its own, joined to the charge pump's line over X1."""
        return changed(f"{what}; double-source {expected}", **{
            "X9": '<electric-motor id="X9"/>', "W3": "X9 P3", "P3": '<pump id="P3"/>',
            "S2": "T1.X P3.S",
            "X1": part, "G1": joint, "G4": line, **more})

    fails, passes = "G4 fail warning", "circuit pass"
    tee = {"joint": "P2.P R1.P F1.A P3.P", "G4": None, "line": ""}
    inside = ('<assembly id="U1"><port id="p" of="P3.P"/><port id="s" of="P3.S"/><pump id="P3"/>'
              '<line id="Q1" joins="P3.P X5.P"/><gauge id="X5"/></assembly>')
    boxed = {"P3": inside, "W3": "X9 U1/P3", "S2": "T1.X U1.s", "G1": "P2.P R1.P F1.A U1.p",
             "G4": None}
    return {
        "one": changed("one pump alone; double-source circuit not-applicable"),
        "one-drive": changed("two pumps on one shaft; double-source circuit pass",
                             P3='<pump id="P3"/>',
                             W1="E1 P1 P2 P3", S2="T1.X P3.S", G1="P2.P R1.P F1.A P3.P"),
        "geared": changed("two pumps on one drive; double-source circuit pass", P3='<pump id="P3"/>',
                          X1='<gearbox id="X1"/>', W1="E1 P1 P2 X1.in", W3="X1.out P3",
                          S2="T1.X P3.S",
                          G1="P2.P R1.P F1.A P3.P"),
        "tee": two("one line", "G1 fail warning", **tee),
        "not-turned": two("the other at rest", "circuit not-applicable", W3=None, **tee),
        "check": two("check between", passes, '<check-valve id="X1"/>', "P2.P R1.P F1.A X1.B",
                     "P3.P X1.A"),
        "check-back": two("check the other way", passes, '<check-valve id="X1"/>'),
        "checks": two("two checks", passes, '<check-valve id="X1"/>', "X1.B X2.B R1.P F1.A",
                      "P3.P X1.A",
                      X2='<check-valve id="X2"/>', G5="P2.P X2.A"),
        "hand-valve": two("open hand valve", fails, FREE),
        "hand-valve-shut": two("closed hand valve", passes,
                               '<shut-off-valve id="X1" position="closed"/>'),
        "orifice": two("orifice", fails, '<orifice id="X1"/>'),
        "flow-control": two("flow control, one way", passes, '<flow-control id="X1"/>'),
        "throttle-check": two("throttle with check", fails, '<throttle-check id="X1"/>'),
        "filter": two("filter", fails, '<filter id="X1"/>'),
        "filter-one-way": two("one-way filter", passes, '<filter id="X1" one-way="yes"/>'),
        "relief": two("relief", passes, '<relief-valve id="X1" setting="9 bar"/>',
                      "P2.P R1.P F1.A X1.P",
                      "P3.P X1.T"),
        "reducing": two("reducing valve", passes, '<reducing-valve id="X1"/>', "P2.P R1.P F1.A X1.P",
                        "P3.P X1.A"),
        "divider": two("legs of a divider", fails,
                       '<flow-divider id="X1" design="spool"><port id="A"/>'
                       '<port id="B"/></flow-divider>'),
        "at-times": two("valve that is open at rest", fails + " neutral", valve(
            "X1", "AB", "on*: A-B",
            "off [drive-forward drive-reverse overrun-forward overrun-reverse]:")),
        "position": two("valve open in one position", fails + " neutral drive-forward", valve(
            "X1", "AB", "off* [neutral drive-reverse overrun-forward overrun-reverse]:",
            "on [drive-forward]: A-B")),
        "reservoir": two("both into the reservoir", passes, G1="R1.P F1.A", G4="P2.P P3.P T1.Y"),
        "side": two("both into a side", passes, G1="R1.P F1.A", G4=None,
                    HA="P1.A M1.A C1.B R2.P R3.T P2.P P3.P"),
        "over-a-side": two("hand valves on a side between", passes, FREE, "P2.P R1.P F1.A X2.A",
                           "P3.P X1.B",
                           X2='<shut-off-valve id="X2"/>', HA="P1.A M1.A C1.B R2.P R3.T X1.A X2.B"),
        "three": two("a third on the shaft of the second", "G5 fail warning", FREE,
                     P4='<pump id="P4"/>',
                     W3="X9 P3 P4", S3="T1.Y P4.S", G1="P2.P R1.P F1.A X1.A X2.A", G5="P4.P X2.B",
                     X2='<orifice id="X2"/>'),
        "two-way": two("two-way pump", "G1 fail warning drive-forward overrun-forward", **{
            **tee, "P3": '<pump id="P3" flow-directions="2"/>', "S2": "T1.X P3.B",
            "joint": "P2.P R1.P F1.A P3.A"}),
        "boxed": two("a pump in an assembly that comes last", "G1 fail warning", **{
            **tee, **boxed, "joint": boxed["G1"]}),
        "boxed-first": two("a pump in an assembly ahead of the lines", "U1/Q1 fail warning", **{
            **tee, **boxed, "joint": boxed["G1"], "P2": '<pump id="P2"/>' + inside, "P3": None}),
        "first-line": two("outlet on two lines", "G4 fail warning", joint="P2.P R1.P F1.A X1.b",
                          part='<junction id="X1"><port id="a"/><port id="b"/></junction>',
                          line="P3.P X1.a"),
        "loop-pumps": changed("two loop pumps on two drives; double-source circuit not-applicable",
                              P3='<pump id="P3" flow-directions="2"/>',
                              X9='<electric-motor id="X9"/>',
                              W3="X9 P3", HA="P1.A M1.A C1.B R2.P R3.T P3.A",
                              HB="P1.B M1.B C2.B R3.P R2.T P3.B"),
    }


def _reversal(changed, valve):
    def charge(what, expected, part='<filter id="F1" one-way="yes"/>', turned=False, **more):
        lines = {"G1": "P2.P R1.P F1.B", "G2": "F1.A C1.A C2.A"} if turned else {}
        return changed(f"{what}; filter-reversal F1 {expected}", **{"F1": part, **lines, **more})

    def more_filter(what, expected, **more):
        return changed(f"{what}; filter-reversal F2 {expected}",
                       **{"F2": '<filter id="F2" one-way="yes"/>', **more})

    fails = "fail error"
    moving = "drive-forward drive-reverse overrun-forward overrun-reverse"
    opened = {"P3": '<pump id="P3"/>', "M2": '<motor id="M2"/>', "W1": "E1 P1 P2 P3",
              "S2": "T1.X P3.S",
              "N1": "P3.P M2.A"}
    returned = {**opened, "N2": "M2.B F2.A", "N3": "F2.B T1.Y"}
    back = {**opened, "N2": "M2.B F2.B", "N3": "F2.A T1.Y"}
    one_way = '<motor id="M2" flow-directions="1"/>'
    bridge = {f"C{n}": f'<check-valve id="C{n}"/>' for n in (3, 4, 5, 6)}
    return {
        # The charge oil gets on to a pump's inlet only where the loop's pump moves oil.
        "charge": charge("filter in the charge line", f"pass {moving}"),
        "charge-turned": charge("the same turned round", f"fail error {moving}", turned=True),
        "charge-bypass": charge("turned, with a bypass", f"fail error {moving}", turned=True,
                                part='<filter id="F1" one-way="yes" bypass="3 bar"/>'),
        "both-ways": charge("filter for both ways, turned", "nothing", '<filter id="F1"/>', True),
        "side": more_filter("filter in a side", fails, N1="P1.A F2.A", HA="F2.B M1.A C1.B R2.P R3.T"),
        "side-bridge": more_filter(
            "filter in a bridge of checks", "pass", N1="P1.A C3.A C5.B",
            HA="M1.A C1.B R2.P R3.T C4.A C6.B",
            N2="C3.B C4.B F2.A", N3="F2.B C5.A C6.A", **bridge),
        "suction": more_filter("filter in the suction", ALWAYS, S1="T1.S F2.A", S2="F2.B P2.S"),
        "suction-turned": more_filter("the same turned round", fails, S1="T1.S F2.B", S2="F2.A P2.S"),
        "suction-at-rest": more_filter("suction of a pump at rest", "nothing", S1="T1.S F2.B",
                                       S2="F2.A P2.S",
                                       W1="E1 P1"),
        "return": more_filter("filter in a return", ALWAYS, **returned),
        "return-turned": more_filter("the same turned round", fails, **back),
        "return-of-one-way": more_filter("return of a one-way motor", "pass", **{**returned,
                                                                                 "M2": one_way}),
        "return-of-turned": more_filter("return of a one-way motor turned round", "nothing", **{
            **returned, "M2": one_way, "N1": "P3.P M2.B", "N2": "M2.A F2.A"}),
        "return-at-rest": more_filter("return behind a valve", fails, **{
            **back, "V1": valve("V1", "PA", "off*:", "on: P-A"), "N1": "P3.P V1.P",
            "N4": "V1.A M2.A"}),
        "dead-end": more_filter("filter to a gauge", "nothing", X1='<gauge id="X1"/>', N1="F2.B X1.P",
                                G1="P2.P R1.P F1.A F2.A"),
        "behind-relief": more_filter("filter behind a relief, turned", "nothing", G3="R1.T F2.B",
                                     G4="F2.A T1.R"),
        "drain": more_filter("filter in a drain, turned", "nothing", L1="P1.L M1.L F2.B",
                             L2="F2.A T1.D"),
        "between-reservoirs": more_filter("filter from reservoir to reservoir", "pass",
                                          S2="T1.X F2.A",
                                          S3="F2.B T1.Y"),
        # With itself taken out, oil still gets to its A and from its B over the filter beside it.
        "beside": more_filter("turned beside one that is not", f"pass {moving}",
                              G1="P2.P R1.P F1.A F2.B",
                              G2="F1.B C1.A C2.A F2.A"),
        "two-way-pump": more_filter("line of a two-way pump",
                                    "fail error drive-reverse overrun-reverse", **{
            **returned, "P3": '<pump id="P3" flow-directions="2"/>', "S2": "T1.X P3.B",
            "N1": "P3.A M2.A"}),
        "reversing": more_filter("pump that runs backwards",
                                 "pass neutral drive-forward overrun-forward hold lost-signal", **{
                                     **returned, "E1": '<electric-motor id="E1" reversing="yes"/>'}),
        "reservoir-below": more_filter("two reservoirs past a pump", "pass",
                                       T2='<reservoir id="T2"><port id="S" level="below"/></reservoir>',
                                       S1="T2.S F2.A", S2="F2.B P2.S"),
    }
