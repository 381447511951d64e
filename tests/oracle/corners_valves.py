"""Corners of valves that pressure shifts, that reduce a pressure, and that part the flow."""


def side_by_side(changed, valve):
    """Valves that do the same, of which one that is open does: in side B, and from side to side."""
    ways = {"o": ("open*: P-A", "shut:"), "s": ("shut*:", "open: P-A"),
            "c": ("open: P-A", "shut*:"), "r": ("open*: A-P", "shut:")}

    def of(name, order, **lines):
        return changed(name, **{
            f"V{i}": valve(f"V{i}", "PA", *ways[way]) for i, way in enumerate(order, 1)}, **lines)

    made = {f"side-by-side-{name}": of(
        "valves side by side in side B", order, HB="P1.B V1.P V2.P V3.P",
        HC="V1.A V2.A V3.A M1.B C2.B R3.P R2.T")
        for name, order in {"open": "ooo", "shut": "sss", "mixed": "soc", "turned": "oro"}.items()}
    made["side-by-side-past-the-motor"] = of(
        "float positions side by side", "sss", HA="P1.A M1.A C1.B R2.P R3.T V1.P V2.P V3.P",
        HB="P1.B M1.B C2.B R3.P R2.T V1.A V2.A V3.A")
    return made


def circuits(changed, valve):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `valve` a
    directional valve."""
    def in_side_a(part, letters="AB", **more):
        """The motor's port A behind a part, its X on side B."""
        first, second = letters
        return {"X1": part, "HA": f"P1.A X1.{first} C1.B R2.P R3.T", "HC": f"X1.{second} M1.A",
                "HB": "P1.B M1.B C2.B R3.P R2.T X1.X", **more}

    balance = '<counterbalance-valve id="X1" setting="300 bar"/>'
    by_load = '<counterbalance-valve id="X1" setting="300 bar" pilot="internal"/>'
    plain_b = {"HB": "P1.B M1.B C2.B R3.P R2.T"}
    divider = '<flow-divider id="X1" design="{}"><port id="A"/><port id="B"/></flow-divider>'
    two = {"M2": '<motor id="M2"/>', "HA": "P1.A X1.P C1.B R2.P R3.T", "HC": "X1.A M1.A",
           "HD": "X1.B M2.A", "HB": "P1.B M1.B M2.B C2.B R3.P R2.T"}
    both_sides = {"HA": "P1.A M1.A C1.B R2.P R3.T X1.A", "HB": "P1.B M1.B C2.B R3.P R2.T X1.B"}
    return {
        "counterbalance": changed("counterbalance in side A", **in_side_a(balance)),
        "counterbalance-turned": changed("counterbalance turned round", **in_side_a(balance, "BA")),
        "counterbalance-by-load": changed("opened by the load alone", **{
            **in_side_a(by_load), **plain_b}),
        "counterbalance-own-pilot": changed("pilot from its own side", **{
            **in_side_a(balance), **plain_b, "HA": "P1.A X1.A X1.X C1.B R2.P R3.T"}),
        "pilot-check": changed("pilot-to-open check in side A", **in_side_a(
            '<check-valve id="X1" pilot="opens"/>')),
        "pilot-check-turned": changed("the same turned round", **in_side_a(
            '<check-valve id="X1" pilot="opens"/>', "BA")),
        "pilot-shuts-make-up": changed(
            "make-up check shut by its own side's pressure", C1='<check-valve id="C1" pilot="shuts"/>',
            HA="P1.A M1.A C1.B C1.X R2.P R3.T"),
        "pilot-shuts-make-up-wrongly": changed(
            "make-up check shut by the other side", C1='<check-valve id="C1" pilot="shuts"/>',
            HB="P1.B M1.B C2.B R3.P R2.T C1.X"),
        "pilot-opens-make-up": changed(
            "make-up check opened by the other side", C1='<check-valve id="C1" pilot="opens"/>',
            HB="P1.B M1.B C2.B R3.P R2.T C1.X"),
        "divider-spool": changed("spool divider", X1=divider.format("spool"), **two),
        "divider-rotary": changed("rotary divider", X1=divider.format("rotary"), **two),
        "divider-without-relief": changed("reliefs behind a leg", X1=divider.format("spool"), **{
            **two, "HA": "P1.A X1.P C1.B", "HC": "X1.A M1.A R2.P R3.T"}),
        "reducing-in-charge": changed("reducing valve in the charge line", G1="P2.P R1.P X1.P",
                                      G4="X1.A F1.A", X1='<reducing-valve id="X1" setting="20 bar"/>'),
        "reducing-turned": changed("reducing valve turned round", G1="P2.P R1.P X1.A", G4="X1.P F1.A",
                                   X1='<reducing-valve id="X1"/>'),
        "reducing-to-drain": changed("drain over a reducing valve", X1='<reducing-valve id="X1"/>',
                                     L1="P1.L T1.D", L2="M1.L X1.P", L3="X1.A T1.X"),
        "priority-in-charge": changed("charge from the priority outlet", G1="P2.P R1.P X1.P",
                                      G4="X1.CF F1.A", G5="X1.EF T1.X",
                                      X1='<priority-valve id="X1" setting="15 bar"/>'),
        "priority-other-outlet": changed("charge from the other outlet", G1="P2.P R1.P X1.P",
                                         G4="X1.EF F1.A", G5="X1.CF T1.X",
                                         X1='<priority-valve id="X1" setting="15 bar"/>'),
        "unloading-by-side": changed("charge line unloaded while A is high", G1="P2.P R1.P F1.A X1.P",
                                     G4="X1.T T1.X", HA="P1.A M1.A C1.B R2.P R3.T X1.X",
                                     X1='<unloading-valve id="X1" setting="200 bar"/>'),
        "unloading-by-charge": changed("unloaded by its own line", G1="P2.P R1.P F1.A X1.P X1.X",
                                       G4="X1.T T1.X", X1='<unloading-valve id="X1" setting="20 bar"/>'),
        "sequence-for-relief": changed("sequence valve in place of a relief", R2="",
                                       X1='<sequence-valve id="X1" setting="300 bar"/>',
                                       HA="P1.A M1.A C1.B X1.P R3.T", HB="P1.B M1.B C2.B R3.P X1.A"),
        "sequence-piloted": changed("piloted sequence valve in a drain", L1="P1.L T1.D", L2="M1.L X1.P",
                                    L3="X1.A T1.X", HA="P1.A M1.A C1.B R2.P R3.T X1.X",
                                    X1='<sequence-valve id="X1" pilot="external"/>'),
        "shuttle-to-relief": changed("higher side over a relief", X1='<shuttle-valve id="X1"/>',
                                     X2='<relief-valve id="X2" setting="400 bar"/>',
                                     HX="X1.C X2.P", G3="R1.T X2.T T1.R", **both_sides),
        "shuttle-to-tank": changed("higher side to the reservoir", X1='<shuttle-valve id="X1"/>',
                                   HX="X1.C T1.X", **both_sides),
        "shuttle-as-make-up": changed("charge oil into a shuttle", X1='<shuttle-valve id="X1"/>',
                                      C1="", C2="", G2="F1.B X1.C",
                                      HA="P1.A M1.A R2.P R3.T X1.A", HB="P1.B M1.B R3.P R2.T X1.B"),
        **pilot_lines(changed),
        **side_by_side(changed, valve),
        "relief-with-check": changed("reliefs with make-up checks into the charge line", C1="", C2="",
                                     R2='<relief-valve id="R2" setting="350 bar" make-up-check="yes"/>',
                                     R3='<relief-valve id="R3" setting="350 bar" make-up-check="yes"/>',
                                     G2="F1.B R2.T R3.T", HA="P1.A M1.A R2.P", HB="P1.B M1.B R3.P"),
        "bypass-shut": changed("bypass valve drawn shut", X1='<bypass-valve id="X1"/>', **both_sides),
        "bypass-open": changed("bypass valve drawn open", X1='<bypass-valve id="X1" position="open"/>',
                               **both_sides),
        "throttle-check-make-up": changed("make-up through a throttle with check", C1="",
                                          X1='<throttle-check id="X1"/>', G2="F1.B X1.B C2.A",
                                          HA="P1.A M1.A X1.A R2.P R3.T"),
        "flow-control-feed": changed("flow control before the checks", G2="F1.B X1.A",
                                     G4="X1.B C1.A C2.A", X1='<flow-control id="X1"/>'),
        "flow-control-turned": changed("flow control turned round", G2="F1.B X1.B",
                                       G4="X1.A C1.A C2.A", X1='<flow-control id="X1"/>'),
        "control-valve": changed("pilot control valve on the charge line", G2="F1.B C1.A C2.A X1.P",
                                 G4="X1.T T1.X", X1='<pilot-control-valve id="X1" outlets="2"/>',
                                 G5="X1.A", G6="X1.B"),
        "control-valve-feeds": changed("make-up behind a pilot control valve", G2="F1.B X1.P",
                                       G4="X1.T T1.X", G5="X1.A C1.A C2.A",
                                       X1='<pilot-control-valve id="X1"/>'),
    }


def pilot_lines(changed):
    """An unloading valve on the charge line, what leads to its pilot differing."""
    def unloading(name, line, high_a="", high_b="", **more):
        return changed(name, G1="P2.P R1.P F1.A X1.P", G4="X1.T T1.X", HX=line + "X1.X",
                       HA="P1.A M1.A C1.B R2.P R3.T" + high_a, HB="P1.B M1.B C2.B R3.P R2.T" + high_b,
                       X1='<unloading-valve id="X1" setting="200 bar"/>', **more)

    orifice, bleed = '<orifice id="X2"/>', '<orifice id="X3"/>'
    shuttle = '<shuttle-valve id="X2"/>'
    return {
        "pilot-orifice": unloading("orifice in a pilot line", "X2.B ", " X2.A", X2=orifice),
        "pilot-orifice-bleeds": unloading("pilot line that bleeds", "X2.B X3.A ", " X2.A",
                                          X2=orifice, X3=bleed, G5="X3.B T1.Y"),
        "pilot-orifice-to-charge": unloading("pilot line with two ends", "X2.B X3.A ", " X2.A",
                                             X2=orifice, X3=bleed, G2="F1.B C1.A C2.A X3.B"),
        "pilot-two-orifices": unloading("two orifices in a row", "X3.B ", " X2.A",
                                        X2=orifice, X3=bleed, G5="X2.B X3.A"),
        "pilot-two-sources": unloading("an orifice from each side", "X2.B X3.B ", " X2.A", " X3.A",
                                       X2=orifice, X3=bleed),
        "pilot-throttle-check": unloading("throttle-check in a pilot line", "X2.B ", " X2.A",
                                          X2='<throttle-check id="X2"/>'),
        "pilot-throttle-check-turned": unloading("the same turned round", "X2.A ", " X2.B",
                                                 X2='<throttle-check id="X2"/>'),
        "pilot-shuttle": unloading("pilot from the higher side", "X2.C ", " X2.A", " X2.B", X2=shuttle),
        "pilot-shuttle-orifice": unloading("an orifice before the shuttle", "X2.C ", " X3.A", " X2.B",
                                           X2=shuttle, X3=bleed, G5="X3.B X2.A"),
        "pilot-shuttle-bleeds": unloading("a shuttle's outlet that bleeds", "X2.C X3.A ", " X2.A", " X2.B",
                                          X2=shuttle, X3=bleed, G5="X3.B T1.Y"),
        "pilot-at-inlet": unloading("pilot at a shuttle's inlet", "X2.A X3.B ", " X3.A", " X2.B",
                                    X2=shuttle, X3=bleed, G5="X2.C"),
        "pilot-hand-valve": unloading("hand valve in a pilot line", "X2.B ", " X2.A",
                                      X2='<shut-off-valve id="X2"/>'),
    }
