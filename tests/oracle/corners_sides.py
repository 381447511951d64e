"""Corners of intermediate-side and unequal-cylinder; what is expected stands in the title, behind the
semicolon, as in `corners_feeding`.
"""

FREE = '<shut-off-valve id="X2"/>'


def circuits(changed, valve):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `valve` a
    directional valve."""
    return {**{f"middle-{name}": text for name, text in _middles(changed, valve).items()},
            **{f"unequal-{name}": text for name, text in _cylinders(changed, valve).items()}}


def _middles(changed, valve):
    def series(what, expected, middle="M1.B M2.A C3.B R4.P", size="", other="", side="M1.B",
               **more):
        """Two motors in series, the line between them with check and relief unless told otherwise."""
        return changed(f"{what}; intermediate-side side:{side} {expected}", **{
            "M1": f'<motor id="M1"{size} drain="external" case-pressure="3 bar"/>',
            "M2": f'<motor id="M2"{other}/>', "HB": "P1.B M2.B C2.B R3.P R2.T", "N1": middle,
            "C3": '<check-valve id="C3"/>', "R4": '<relief-valve id="R4" setting="300 bar"/>',
            "G2": "F1.B C1.A C2.A C3.A", "G3": "R1.T T1.R R4.T", **more})

    def bare(what, expected, size, other, **more):
        """Neither check nor relief."""
        given = [f' displacement="{text}"' if text else "" for text in (size, other)]
        return series(what, expected, "M1.B M2.A", *given, C3=None, R4=None, G2="F1.B C1.A C2.A",
                      G3="R1.T T1.R", **more)

    fails, warns = "fail error", "fail warning"
    over = {"X2": FREE, "middle": "M1.B M2.A C3.B X2.A", "N2": "X2.B R4.P"}
    to_side = {"HA": "P1.A M1.A C1.B R2.P R3.T R4.T", "G3": "R1.T T1.R"}
    to_relief = {"middle": "M1.B M2.A C3.B X2.A", "N2": "X2.B R4.P"}
    return {
        "both": series("fed and limited",
                       "pass drive-forward drive-reverse overrun-forward overrun-reverse"),
        "to-side": series("relief into a side", "pass", **to_side),
        "no-check": series("not fed", fails, "M1.B M2.A R4.P", C3=None, G2="F1.B C1.A C2.A"),
        # A check between this line and a side, or the charge line, joins it with the sides.
        "check-turned": series("check turned round", "nothing", "M1.B M2.A C3.A R4.P",
                               G2="F1.B C1.A C2.A C3.B"),
        "no-relief": series("not limited", fails, "M1.B M2.A C3.B", R4=None, G3="R1.T T1.R"),
        "relief-turned": series("relief turned round", fails, "M1.B M2.A C3.B R4.T",
                                G3="R1.T T1.R R4.P"),
        "relief-into-itself": series("relief into the same line", fails, "M1.B M2.A C3.B R4.P R4.T",
                                     G3="R1.T T1.R"),
        "relief-free-valve": series("relief behind a hand valve", fails, **over),
        "relief-locked-valve": series("relief behind a locked valve", "pass", **{
            **over, "X2": FREE.replace("/", ' locked="yes"/')}),
        "relief-filter": series("relief behind a filter", "pass", **to_relief,
                                X2='<filter id="X2"/>'),
        "relief-check": series("relief behind a check", fails, **to_relief,
                               X2='<check-valve id="X2"/>'),
        "relief-orifice": series("relief behind an orifice", fails, **to_relief,
                                 X2='<orifice id="X2"/>'),
        "relief-at-times": series("relief behind a valve that shuts", fails, **to_relief,
                                  X2=valve("X2", "AB", "on*: A-B", "off:")),
        "relief-of-a-side": series("the sides' reliefs behind checks", "nothing",
                                   "M1.B M2.A C3.B X2.A", R4=None,
                                   G3="R1.T T1.R", X2='<check-valve id="X2"/>',
                                   HA="P1.A M1.A C1.B R2.P R3.T X2.B"),
        "fed-by-orifice": series("fed over an orifice", "pass", "M1.B M2.A C3.A R4.P",
                                 C3='<orifice id="C3"/>', G2="F1.B C1.A C2.A C3.B"),
        "fed-over-free-valve": series("fed over an open hand valve", "pass", X2=FREE, N2="X2.B C3.A",
                                      G2="F1.B C1.A C2.A X2.A"),
        "fed-from-a-side": series("fed from a side", "nothing", "M1.B M2.A C3.B R4.P",
                                  G2="F1.B C1.A C2.A",
                                  HA="P1.A M1.A C1.B R2.P R3.T C3.A"),
        "fed-in-one-position": series("fed over a valve that shuts", fails, N2="X2.B C3.A",
                                      X2=valve("X2", "AB", "on*: A-B", "off:"),
                                      G2="F1.B C1.A C2.A X2.A"),
        "charge-at-rest": series("no source", fails, W1="E1 P1"),
        "bare": bare("neither, nothing known of the motors", fails, "", ""),
        "bare-equal": bare("neither, equal motors apart", warns, "80 cm3/rev", "80 cm3/rev"),
        "bare-equal-words": bare("neither, equal in another unit", warns, "80 cm3/rev", "80 mL/rev"),
        "bare-equal-litres": bare("neither, equal in litres", warns, "80 cm3/rev", "0.08 L/rev"),
        "bare-equal-one-shaft": bare("neither, equal motors on one shaft", fails, "80 cm3/rev",
                                     "80 cm3/rev", W2="M1 M2"),
        "bare-unequal": bare("neither, unequal motors", fails, "80 cm3/rev", "56 cm3/rev"),
        "bare-one-known": bare("neither, one motor known", fails, "80 cm3/rev", ""),
        "bare-load": bare("neither, equal motors with a load each", warns, "80 cm3/rev", "80 cm3/rev",
                          D1='<load id="D1"/>', D2='<load id="D2"/>', W2="M1 D1", W4="M2 D2"),
        "equal-relief-only": series("limited, not fed, equal motors", warns, "M1.B M2.A R4.P",
                                    ' displacement="80 cm3/rev"', ' displacement="80 cm3/rev"',
                                    C3=None,
                                    G2="F1.B C1.A C2.A"),
        "three": series("three motors, the second line bare", "pass", M3='<motor id="M3"/>',
                        N3="M2.B M3.A", HB="P1.B M3.B C2.B R3.P R2.T"),
        "three-second": series("three motors, the second line bare", "fail error",
                               M3='<motor id="M3"/>',
                               N3="M2.B M3.A", HB="P1.B M3.B C2.B R3.P R2.T", side="M2.B"),
        "pumps": changed("pumps in series; intermediate-side side:P1.A fail error",
                         P3='<pump id="P3" flow-directions="2"/>', W1="E1 P1 P2 P3", N1="P1.A P3.B",
                         HA="P3.A M1.A C1.B R2.P R3.T"),
        "none": changed("one motor; intermediate-side circuit not-applicable"),
        "short-circuited": bare("sides joined besides", "nothing", "", "", X2=FREE,
                                HA="P1.A M1.A C1.B R2.P R3.T X2.A",
                                HB="P1.B M2.B C2.B R3.P R2.T X2.B"),
    }


def _cylinders(changed, valve):
    def cylinder(what, expected, attributes="", high_a="", high_b="", **more):
        return changed(f"{what}; unequal-cylinder M1 {expected}", **{
            "M1": f'<cylinder id="M1"{attributes}/>', "L1": "P1.L T1.D",
            "HA": f"P1.A M1.A C1.B R2.P R3.T{high_a}", "HB": f"P1.B M1.B C2.B R3.P R2.T{high_b}",
            **more})

    def flushed(what, expected, attributes="", centre="closed", **more):
        return cylinder(what, expected, attributes, " X1.A", " X1.B", **{
            "X1": f'<flushing-valve id="X1" centre="{centre}"/>', "N1": "X1.F R4.P",
            "R4": '<relief-valve id="R4" setting="18 bar"/>', "N2": "R4.T T1.X", **more})

    def twice(what, expected, part, ports="AB", line="G2", **more):
        """The same from each side to the charge line or to the reservoir."""
        near, far = ports
        base = {"G2": "F1.B C1.A C2.A", "G3": "R1.T T1.R"}
        return cylinder(what, expected, "", f" X1.{near}", f" X2.{near}", **{
            "X1": part.format("X1"), "X2": part.format("X2"), line: f"{base[line]} X1.{far} X2.{far}",
            **more})

    fails, moving = "fail error", "drive-forward drive-reverse overrun-forward overrun-reverse"
    opened = '<check-valve id="{0}" pilot="opens"/>'
    piloted = {"C1": opened.format("C1"), "C2": opened.format("C2"),
               "HA": "P1.A M1.A C1.B R2.P R3.T C2.X",
               "HB": "P1.B M1.B C2.B R3.P R2.T C1.X"}
    orifice, relief = '<orifice id="{0}"/>', '<relief-valve id="{0}" setting="30 bar"/>'
    reliefs = {"G2": "F1.B C1.A C2.A", "N1": "X1.B R4.P", "N2": "X2.B R5.P", "N3": "R4.T R5.T T1.X",
               "R4": relief.format("R4"), "R5": relief.format("R5")}
    return {
        "no-exit": cylinder("fed alone", f"{fails} {moving}"),
        "rods": cylinder("rod through both ends", f"not-applicable {moving}", ' rods="2"'),
        "one-rod": cylinder("one rod", fails, ' rods="1"'),
        "ratio-one": cylinder("equal areas", "not-applicable", ' area-ratio="1"'),
        "ratio-hundred": cylinder("equal areas", "not-applicable", ' area-ratio="100 %"'),
        "ratio-decimal": cylinder("equal areas", "not-applicable", ' area-ratio="1.00"'),
        "ratio": cylinder("unequal areas", fails, ' area-ratio="1.6"'),
        "bore-and-rod": cylinder("unequal areas", fails, ' bore="80 mm" rod="45 mm"'),
        "flushed": flushed("flushing valve", f"pass {moving}"),
        "flushed-centre": flushed("flushing valve, open centre", "pass", centre="open"),
        "flushed-into-charge": flushed("flushed into the charge line", "pass", N2=None,
                                       G2="F1.B C1.A C2.A R4.T"),
        "flushed-into-nothing": flushed("flushing that ends", fails, N2=None),
        "flushed-relief-turned": flushed("flushing relief turned", fails, N1="X1.F R4.T",
                                         N2="R4.P T1.X"),
        "flushed-hand-valve": flushed("flushing over an open hand valve", "pass", N2="R4.T X2.A",
                                      X2='<shut-off-valve id="X2"/>', N3="X2.B T1.X"),
        "flushed-not-fed": flushed("flushed, not fed", fails, C1=None, C2=None, G2="F1.B",
                                   HA="P1.A M1.A R2.P R3.T X1.A", HB="P1.B M1.B R3.P R2.T X1.B"),
        "flushed-one-fed": flushed("flushed, one side fed",
                                   "fail error drive-forward overrun-reverse",
                                   C2=None, G2="F1.B C1.A", HB="P1.B M1.B R3.P R2.T X1.B"),
        # Two checks that pilots open join the sides over the charge line: no loop is left to judge.
        "piloted": cylinder("checks that the other side opens, never both at once", "pass", **piloted),
        "piloted-one": cylinder("one check opened", "fail error drive-forward overrun-reverse", **{
            **piloted, "C2": '<check-valve id="C2"/>', "HA": "P1.A M1.A C1.B R2.P R3.T"}),
        "reliefs": cylinder("reliefs into the charge line", fails, HA="P1.A M1.A C1.B R2.P",
                            HB="P1.B M1.B C2.B R3.P", G2="F1.B C1.A C2.A R2.T R3.T"),
        "orifices": twice("orifices into the charge line", "pass", orifice),
        "orifices-to-reservoir": twice("orifices into the reservoir", "pass", orifice, line="G3"),
        "flow-controls": twice("flow controls out", "pass", '<flow-control id="{0}"/>'),
        "flow-controls-in": twice("flow controls in", fails, '<flow-control id="{0}"/>', "BA"),
        "low-reliefs": twice("low reliefs out", fails, relief, "PT"),
        "checks": twice("checks out to a relief", fails, '<check-valve id="{0}"/>',
                        G2="F1.B C1.A C2.A",
                        N1="X1.B X2.B R4.P", R4='<relief-valve id="R4" setting="30 bar"/>',
                        G3="R1.T T1.R R4.T"),
        "reducing": twice("reducing valves out", "pass", '<reducing-valve id="{0}"/>', "PA"),
        "filter": twice("filters out to reliefs", "pass", '<filter id="{0}"/>', **reliefs),
        "hand-valve": twice("hand valves out to reliefs", "pass", '<shut-off-valve id="{0}"/>',
                            **reliefs),
        "hand-valve-shut": twice("closed hand valves", fails,
                                 '<shut-off-valve id="{0}" position="closed"/>'),
        "other-side": cylinder("orifice from side to side", fails, "", " X1.A", " X1.B",
                               X1=orifice.format("X1")),
        # Back on its own side: no exit, though the relief there leads to the charge line.
        "own-side": cylinder("orifice beside a filter in side A",
                             "fail error drive-reverse overrun-forward",
                             X2=orifice.format("X2"), HA="P1.A F2.A X1.A C1.B",
                             F2='<filter id="F2"/>', X1=orifice.format("X1"),
                             HX="F2.B X1.B M1.A R2.P",
                             HB="P1.B M1.B C2.B R3.P X2.A", G2="F1.B C1.A C2.A R2.T R3.T X2.B"),
        "exit-past-relief": cylinder("an orifice to a relief's inlet", "pass", "", " X1.A", " X2.A",
                                     X1=orifice.format("X1"), X2=orifice.format("X2"),
                                     N1="X1.B X2.B R4.P", R4=relief.format("R4"), N2="R4.T T1.X"),
        "exit-at-times": twice("valves that shut", fails, valve("{0}", "AB", "on*: A-B", "off:")),
        "beside-a-motor": flushed("cylinder beside a motor", "pass", M2='<motor id="M2"/>',
                                  HA="P1.A M1.A M2.A C1.B R2.P R3.T X1.A",
                                  HB="P1.B M1.B M2.B C2.B R3.P R2.T X1.B"),
        "one-way-pump": cylinder("one-way pump, no exit", fails,
                                 P1=('<pump id="P1" closed-loop="yes" drain="external" '
                                     'case-pressure="3 bar"/>'),
                                 HA="P1.P M1.A C1.B R2.P R3.T", HB="P1.S M1.B C2.B R3.P R2.T"),
        "semi-rotary": changed("no cylinder; unequal-cylinder circuit not-applicable",
                               M1='<semi-rotary-actuator id="M1"/>', L1="P1.L T1.D"),
        "open-part": changed("cylinder in an open part; unequal-cylinder X1 nothing",
                             X1='<cylinder id="X1"/>',
                             G2="F1.B C1.A C2.A X1.A", G4="X1.B T1.X"),
    }
