"""Corners of what turns: shafts through gearboxes and clutches, units, cylinders, hand pumps."""


def circuits(changed, drained):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `drained` is
    the attributes of a housing drained outside."""
    def behind(link, first="E1 X1.in", then="X1.out P1 P2"):
        return {"X1": link, "W1": first, "W3": then}

    unit = f'<pump-motor id="{{}}" {drained}/>'
    parted = '<clutch id="X1" engaged="no"/>'
    variable = '<electric-motor id="E1" variable-speed="yes"/>'
    reversing = '<electric-motor id="E1" variable-speed="yes" reversing="yes"/>'
    own_motor = {"W1": "E1 P1", "X1": '<electric-motor id="X1"/>', "W3": "X1 P2"}
    return {
        "variable-speed": changed("charge pump stands in neutral", E1=variable),
        "variable-speed-charge-apart": changed("charge pump turns on", E1=variable, **own_motor),
        "variable-speed-of-the-charge-pump": changed(
            "charge pump's own motor", **{**own_motor, "X1": variable.replace("E1", "X1")}),
        "variable-and-fixed-speed": changed("two motors on the shaft", E1=variable,
                                            X1='<electric-motor id="X1"/>', W1="E1 X1 P1 P2"),
        "reversing": changed("charge pump turned backwards", E1=reversing),
        "reversing-charge-apart": changed("charge pump turns on", E1=reversing, **own_motor),
        **{f"hoist-{sense}": changed(f"load pulls {sense}", W2="M1 D1", D1=(
            f'<load id="D1" overrunning="yes" overrunning-sense="{sense}"/>'))
           for sense in ("forward", "reverse", "either")},
        "hoist-one-side-made-up": changed("side A has no check", W2="M1 D1", D1=(
            '<load id="D1" overrunning="yes" overrunning-sense="reverse"/>'),
            HA="P1.A M1.A R2.P R3.T", G2="F1.B C2.A", G4="C1.A C1.B"),
        "drain-over-the-towing-way": changed("housing's way out while towed alone",
                                             X1='<bypass-valve id="X1"/>', L1="P1.L X1.A",
                                             L2="X1.B T1.D", L3="M1.L T1.X"),
        "drain-shut-off-but-for-towing": changed("drain beside the towing way",
                                                 X1='<bypass-valve id="X1"/>', L1="P1.L X1.A C3.A",
                                                 C3='<check-valve id="C3" opening-pressure="9 bar"/>',
                                                 L2="X1.B C3.B T1.D", L3="M1.L T1.X"),
        "towing-way": changed("bypass valve between the sides", X1='<bypass-valve id="X1"/>',
                              HA="P1.A M1.A C1.B R2.P R3.T X1.A", HB="P1.B M1.B C2.B R3.P R2.T X1.B"),
        "electric-motor": changed("electric motor", E1='<electric-motor id="E1"/>'),
        "gearbox": changed("pumps behind a gearbox", **behind('<gearbox id="X1"/>')),
        "gearbox-turned-round": changed("pumps at the end in", **behind(
            '<gearbox id="X1" ratio="0.5"/>', "E1 X1.out", "X1.in P1 P2")),
        "clutch": changed("pumps behind an engaged clutch", **behind('<clutch id="X1"/>')),
        "clutch-parted": changed("pumps behind a parted clutch", **behind(parted)),
        "clutch-parts-charge-pump": changed("charge pump behind a parted clutch", **behind(
            parted, "E1 P1 X1.in", "X1.out P2")),
        "two-links": changed("clutch and gearbox", X2='<gearbox id="X2"/>', W4="X2.out P1 P2",
                             **behind('<clutch id="X1"/>', then="X1.out X2.in")),
        "unit-as-pump": changed("unit that the engine turns", P1=unit.format("P1")),
        "unit-as-motor": changed("unit that nothing turns", M1=unit.format("M1")),
        "units": changed("two units", P1=unit.format("P1"), M1=unit.format("M1")),
        "units-both-turned": changed("two units on the engine's shaft", P1=unit.format("P1"),
                                     M1=unit.format("M1"), W1="E1 P1 P2 M1"),
        "unit-behind-a-parted-clutch": changed(
            "no pump in the loop", P1=unit.format("P1"),
            **behind(parted, "E1 P2 X1.in", "X1.out P1")),
        "unit-one-way": changed("unit with one flow direction", P1=(
            f'<pump-motor id="P1" flow-directions="1" closed-loop="yes" {drained}/>')),
        "unit-drain-shut": changed("unit's drain over a hand valve", M1=unit.format("M1"),
                                   L1="P1.L T1.D", L2="M1.L X1.A", L3="X1.B T1.X",
                                   X1='<shut-off-valve id="X1"/>'),
        "cylinder": changed("cylinder in the loop", M1='<cylinder id="M1" rods="2"/>',
                            L1="P1.L T1.D"),
        "semi-rotary": changed("semi-rotary actuator", M1='<semi-rotary-actuator id="M1"/>',
                               L1="P1.L T1.D"),
        "single-acting": changed("single-acting cylinder on side A",
                                 X1='<cylinder id="X1" action="single"/>',
                                 HA="P1.A M1.A C1.B R2.P R3.T X1.A"),
        "cylinder-beside": changed("cylinder in an open part", X1='<cylinder id="X1"/>',
                                   G2="F1.B C1.A C2.A X1.A", G4="X1.B T1.X"),
        "hand-pump-on-a-side": changed("hand pump into side A", X1='<hand-pump id="X1"/>',
                                       S2="T1.X X1.S", HA="P1.A M1.A C1.B R2.P R3.T X1.P"),
        "hand-pump-in-place-of-the-charge-pump": changed(
            "hand pump feeds", P2='<hand-pump id="P2"/>', W1="E1 P1"),
        "hand-pump-across": changed("hand pump from side to side", X1='<hand-pump id="X1"/>',
                                    HA="P1.A M1.A C1.B R2.P R3.T X1.P",
                                    HB="P1.B M1.B C2.B R3.P R2.T X1.S"),
        "hand-pump-cut-off": changed(
            "hand valve between side A and a hand pump", X1='<hand-pump id="X1"/>',
            X2='<shut-off-valve id="X2"/>', S2="T1.X X1.S", S3="X2.B X1.P",
            HA="P1.A M1.A C1.B R2.P R3.T X2.A"),
        "control-and-brake": changed(
            "pilots of control and brake on the charge line", B1='<brake id="B1"/>', W2="M1 B1",
            P1=('<pump id="P1" flow-directions="2" variable="yes" control="hydraulic" '
                f'pilot-ports="2" {drained}/>'),
            G2="F1.B C1.A C2.A P1.X1 B1.Z", G4="P1.X2 T1.X"),
    }
