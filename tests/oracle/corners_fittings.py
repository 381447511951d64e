"""Corners of what conditions, stores, measures and joins."""

DEVICE = ('<device id="X1"><port id="a"/><port id="b"/><port id="c"/>'
          '<passage from="a" to="b" class="one-way" opening="0.5 bar"/>'
          '<passage from="b" to="c" class="pressure-opened" opening="30 bar"/></device>')
RELIEF = ('<device id="X1"><port id="a"/><port id="b"/>'
          '<passage from="a" to="b" class="pressure-opened" opening="300 bar"/>'
          '<passage from="b" to="a" class="pressure-opened"/></device>')
UNKNOWN = '<device id="X1" inside="unknown"><port id="a"/><port id="b"/></device>'


def circuits(changed):
    """Name -> text; `changed` makes the sound drive with elements replaced or added."""
    def in_charge(part, **more):
        return {"X1": part, "G2": "F1.B X1.A", "G4": "X1.B C1.A C2.A", **more}

    return {
        "strainer-for-filter": changed("a strainer is no filter", F1='<strainer id="F1"/>'),
        "heater": changed("heater in the drain", X1='<heater id="X1"/>', L1="P1.L M1.L X1.A",
                          L2="X1.B T1.D"),
        "thermostat": changed("drain over a thermostat and a cooler", X2='<cooler id="X2"/>',
                              X1='<thermostatic-bypass id="X1"/>', L1="P1.L M1.L X1.A",
                              L2="X1.B X2.A", L3="X1.C X2.B T1.D"),
        "meter": changed("flow meter in the charge line", **in_charge('<flow-meter id="X1"/>')),
        "coupling-in-charge": changed("coupling before the checks", **in_charge(
            '<quick-coupling id="X1"/>')),
        "coupling-parted": changed("the same, parted", **in_charge(
            '<quick-coupling id="X1" joined="no"/>')),
        "coupling-plain": changed("coupling without valves", **in_charge(
            '<quick-coupling id="X1" valves="none"/>')),
        "coupling-in-drain": changed("coupling in a drain", X1='<quick-coupling id="X1"/>',
                                     L1="P1.L T1.D", L2="M1.L X1.A", L3="X1.B T1.X"),
        "coupling-before-relief": changed("coupling before a relief", X1='<quick-coupling id="X1"/>',
                                          HA="P1.A M1.A C1.B X1.A R3.T", HX="X1.B R2.P"),
        "rotary-joint": changed("both working lines over a joint", HX="X1.b M1.A", HY="X1.d M1.B",
                                X1=('<rotary-joint id="X1"><port id="a"/><port id="b"/>'
                                    '<port id="c"/><port id="d"/></rotary-joint>'),
                                HA="P1.A X1.a C1.B R2.P R3.T", HB="P1.B X1.c C2.B R3.P R2.T"),
        "device": changed("a device of checks and restrictions", G2="F1.B X1.a", G4="X1.b C1.A C2.A",
                          L2="X1.c T1.X", X1=DEVICE),
        "device-feeds": changed("make-up inside a device", C1="", G2="F1.B X1.a C2.A",
                                HA="P1.A M1.A X1.b R2.P R3.T", X1=DEVICE, L2="X1.c"),
        "device-relief": changed("a relief inside a device", R2="", HA="P1.A M1.A C1.B X1.a R3.T",
                                 HB="P1.B M1.B C2.B R3.P X1.b", X1=RELIEF),
        "unknown-aside": changed("an unknown device that matters to nothing", X1=UNKNOWN, L1="P1.L T1.D",
                                 L2="M1.L T1.X", L3="X1.a", L4="X1.b"),
        "unknown-in-charge": changed("unknown before the checks", **in_charge(
            UNKNOWN.replace('"a"', '"A"').replace('"b"', '"B"'))),
        "unknown-make-up": changed("unknown in place of a make-up check", C1="", G2="F1.B X1.a C2.A",
                                   HA="P1.A M1.A X1.b R2.P R3.T", X1=UNKNOWN),
        "unknown-in-drain": changed("unknown in a drain", X1=UNKNOWN, L1="P1.L T1.D", L2="M1.L X1.a",
                                    L3="X1.b T1.X"),
        "unknown-in-loop": changed("unknown in a working line", X1=UNKNOWN, HX="X1.b M1.A",
                                   HA="P1.A X1.a C1.B R2.P R3.T"),
        "unknown-across": changed("unknown between the sides", X1=UNKNOWN,
                                  HA="P1.A M1.A C1.B R2.P R3.T X1.a", HB="P1.B M1.B C2.B R3.P R2.T X1.b"),
        "stages": changed("commands of what can follow and what cannot", D9=(
            '<command id="D9"><stage of="P1" from="0" to="0.5"/><stage of="E1" from="0.5" to="1"/></command>')),
        "waivers": changed("waivers that meet something and nothing", C2="",
                           HB="P1.B M1.B R3.P R2.T", G2="F1.B C1.A", D8=(
            '<waiver rule="make-up-check" subject="side:P1.B" reason="r" by="owner"/>'), D9=(
            '<waiver rule="make-up-check" subject="side:P1.A" reason="r" by="owner"/>')),
        "breather-and-tachometer": changed("breather on the reservoir, tachometer on the shaft",
                                           X1='<breather id="X1" opening-pressure="0.3 bar"/>',
                                           X2='<tachometer id="X2"/>', L4="T1.X X1.P",
                                           W1="E1 X2 P1 P2"),
        "instruments": changed("gauge, accumulator and plug on the charge line",
                               X1='<gauge id="X1"/>', X2='<accumulator id="X2"/>', X3='<plug id="X3"/>',
                               G2="F1.B C1.A C2.A X1.P X2.A X3.P"),
    }
