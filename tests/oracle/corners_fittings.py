"""Corners of what conditions, stores, measures and joins."""


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
        "instruments": changed("gauge, accumulator and plug on the charge line",
                               X1='<gauge id="X1"/>', X2='<accumulator id="X2"/>', X3='<plug id="X3"/>',
                               G2="F1.B C1.A C2.A X1.P X2.A X3.P"),
    }
