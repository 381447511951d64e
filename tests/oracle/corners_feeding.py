"""Corners of charge-pump-inlet, charge-pump-drive, charge-relief and make-up-path.

Each is the sound drive with something changed. Its title says, behind the semicolon, what is
expected: rule, subject, outcome, level and sometimes the states, or "nothing" where the rule says
nothing of the subject.
"""

FREE, LOCKED = '<shut-off-valve id="X1"/>', '<shut-off-valve id="X1" locked="yes"/>'
CLOSED = '<shut-off-valve id="X1" position="closed"{}/>'
DEVICE = '<device id="X1"><port id="A"/><port id="B"/><passage from="A" to="B" class="{}"{}/></device>'
OPENS = ' opening="2 bar"'
OWN_MOTOR = {"W1": "E1 P1", "X9": '<electric-motor id="X9"/>', "W3": "X9 P2"}


def circuits(changed, valve):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `valve` a
    directional valve."""
    found = {}
    for prefix, group in (("inlet", _inlets(changed, valve)), ("charge-drive", _drives(changed)),
                          ("limit", _limits(changed, valve)), ("path", _paths(changed, valve))):
        found.update({f"{prefix}-{name}": text for name, text in group.items()})
    return found


def _inlets(changed, valve):
    def over(part, what, expected, ports="AB", **more):
        near, far = ports
        return changed(f"suction over {what}; charge-pump-inlet P2 {expected}", X1=part,
                       S1=f"T1.S X1.{near}", S2=f"X1.{far} P2.S", **more)

    def strainer(attributes, kind="strainer"):
        return f'<{kind} id="X1" {attributes}/>'

    warns, fails = "fail warning", "fail error"
    beside = {"S1": "T1.S X1.A X2.A", "S2": "X1.B X2.B P2.S"}
    shut = valve("X1", "AB", "on*: A-B", "off:")
    return {
        "free-valve": over(FREE, "a hand valve", warns),
        "locked-valve": over(LOCKED, "a locked valve", "pass"),
        "switched-valve": over('<shut-off-valve id="X1" switched="yes"/>', "a watched valve", "pass"),
        "closed-valve": over(CLOSED.format(""), "a closed valve", fails),
        "closed-and-locked": over(CLOSED.format(' locked="yes"'), "a valve locked closed", fails),
        "bypass-valve": over('<bypass-valve id="X1" position="open"/>', "a towing valve", warns),
        "coupling": over('<quick-coupling id="X1"/>', "a coupling", warns),
        "coupling-plain": over('<quick-coupling id="X1" valves="none"/>', "a coupling without valves",
                               "pass"),
        "strainer": over(strainer(""), "a strainer", warns),
        "strainer-bypass": over(strainer('bypass="0.2 bar"'), "a strainer with bypass", "pass"),
        # The element lets oil through both ways, and it has a bypass, whichever way that opens.
        "strainer-bypass-turned": over(strainer('bypass="0.2 bar"'), "the same turned round", "pass",
                                       "BA"),
        "filter": over(strainer("", "filter"), "a filter", warns),
        "filter-no-indicator": over(strainer('clogging-indicator="none"', "filter"), "a filter",
                                    warns),
        "filter-indicator": over(strainer('clogging-indicator="visual"', "filter"),
                                 "a filter with indicator", "pass"),
        "filter-one-way": over(strainer('one-way="yes" bypass="1 bar"', "filter"), "a one-way filter",
                               "pass"),
        "filter-one-way-turned": over(strainer('one-way="yes" bypass="1 bar"', "filter"),
                                      "a one-way filter turned round", fails, "BA"),
        "cooler": over(strainer("", "cooler"), "a cooler, which is no mesh", "pass"),
        "device-element": over(DEVICE.format("element", ""), "an element of a device", "pass"),
        "device-relief": over(DEVICE.format("pressure-opened", OPENS), "what opens by pressure",
                              fails),
        "check": over('<check-valve id="X1" opening-pressure="0.1 bar"/>', "a check", "pass"),
        "check-turned": over('<check-valve id="X1"/>', "a check turned round", fails, "BA"),
        "orifice": over('<orifice id="X1"/>', "an orifice", "pass"),
        "reducing": over('<reducing-valve id="X1"/>', "a reducing valve", "pass", "PA"),
        "relief": over('<relief-valve id="X1" setting="1 bar"/>', "a relief", fails, "PT"),
        "directional": over(shut, "a valve that shuts in one position", fails),
        "two-ways": changed("strainer beside a locked valve; charge-pump-inlet P2 pass", **beside,
                            X1=strainer(""), X2='<shut-off-valve id="X2" locked="yes"/>'),
        "two-bad-ways": changed("strainer beside a free valve; charge-pump-inlet P2 fail warning",
                                **beside,
                                X1=strainer(""), X2='<shut-off-valve id="X2"/>'),
        "bypass-behind-valve": changed(
            "strainer beside a relief in a housing; charge-pump-inlet P2 fail warning", **{
                "S1": "T1.S X1.A X2.P", "S2": "X1.B X2.T P2.S"}, X1=strainer(""),
            X2='<relief-valve id="X2" setting="0.2 bar"/>'),
        "two-pumps": changed("one of two draws over a valve; charge-pump-inlet P3 fail warning",
                             X1=FREE,
                             P3='<pump id="P3"/>', W1="E1 P1 P2 P3", S1="T1.S P2.S X1.A",
                             S2="X1.B P3.S",
                             G1="P2.P P3.P R1.P F1.A"),
        "no-loop-to-feed": changed("pump of an open part over a valve; charge-pump-inlet P3 nothing",
                                   X1=FREE,
                                   P3='<pump id="P3"/>', W1="E1 P1 P2 P3", S2="T1.X X1.A",
                                   S3="X1.B P3.S",
                                   S4="P3.P T1.Y"),
        "not-turned": changed("a pump at rest, over a valve; charge-pump-inlet P2 fail warning",
                              X1=FREE,
                              W1="E1 P1", S1="T1.S X1.A", S2="X1.B P2.S"),
    }


def _drives(changed):
    def sensed(what, expected, switch="G1", part='<pressure-switch id="X1"/>', when="X1 below 12 bar",
               **more):
        base = {"G1": "P2.P R1.P F1.A", "G2": "F1.B C1.A C2.A", "HA": "P1.A M1.A C1.B R2.P R3.T"}
        lines = {switch: f"{more.get(switch, base.get(switch, ''))} X1.P".strip()}
        return changed(f"{what}; charge-pump-drive loop:P1 {expected}", X1=part, **{
            **OWN_MOTOR, "X8": f'<interlock when="{when}" prevents="start E1"/>' if when else None,
            **more, **lines})

    fails = "fail error"
    sensor = '<sensor id="X1"{}/>'
    ahead = {"G2": "F1.B X2.A C2.A", "G4": "X2.B C1.A"}
    return {
        "shared": changed("both on the engine; charge-pump-drive loop:P1 pass"),
        "apart": changed("a motor of its own; charge-pump-drive loop:P1 fail error", **OWN_MOTOR),
        "geared": changed("behind a gearbox; charge-pump-drive loop:P1 pass", X1='<gearbox id="X1"/>',
                          W1="E1 P1 X1.in", W3="X1.out P2"),
        "sensed": sensed("switch at the pump", "pass"),
        "sensed-above": sensed("switch read above", "pass", when="X1 above 12 bar"),
        "not-read": sensed("switch that nothing reads", fails, when=""),
        "sensor": sensed("sensor", "pass", part=sensor.format("")),
        "sensor-pressure": sensed("sensor of pressure", "pass",
                                  part=sensor.format(' measures="pressure"')),
        "sensed-behind-filter": sensed("switch behind the filter", "pass", "G2"),
        "sensed-on-side": sensed("switch on a side", fails, "HA"),
        "sensed-behind-hand-valve": sensed("switch behind an open hand valve", "pass", "G4", **ahead,
                                           X2='<shut-off-valve id="X2"/>'),
        "sensed-behind-shut-valve": sensed("switch behind a closed hand valve", fails, "G4", **ahead,
                                           X2='<shut-off-valve id="X2" position="closed"/>'),
        "sensed-behind-orifice": sensed("switch behind an orifice", fails, "G4", **ahead,
                                        X2='<orifice id="X2"/>'),
        "other-read": sensed("another switch is read", fails, when="X3 below 12 bar", G5="X3.P",
                             X3='<pressure-switch id="X3"/>'),
        "position-read": sensed("a position is read", fails, when="X3 closed",
                                X3='<shut-off-valve id="X3" switched="yes"/>'),
        "second-pump-shared": changed("one of two on the engine; charge-pump-drive loop:P1 pass", **{
            **OWN_MOTOR, "P3": '<pump id="P3"/>', "W1": "E1 P1 P3", "S1": "T1.S P2.S P3.S",
            "G1": "P2.P P3.P R1.P F1.A"}),
        "two-loop-pumps": changed(
            "a second loop pump on a motor of its own; charge-pump-drive loop:P1 fail error",
            P3='<pump id="P3" flow-directions="2"/>', X1='<electric-motor id="X1"/>', W3="X1 P3",
            HA="P1.A M1.A C1.B R2.P R3.T P3.A", HB="P1.B M1.B C2.B R3.P R2.T P3.B"),
        "at-rest": changed("charge pump on the motor's shaft; charge-pump-drive loop:P1 fail error",
                           W1="E1 P1", W2="M1 P2"),
        "no-candidate": changed("no pump feeds; charge-pump-drive loop:P1 not-applicable", C1=None,
                                C2=None,
                                HA="P1.A M1.A R2.P R3.T", HB="P1.B M1.B R3.P R2.T", G2="F1.B",
                                **OWN_MOTOR),
        "into-a-side": sensed("delivers into a side, a switch there", "pass", "HA", G1="R1.P F1.A",
                              HA="P1.A M1.A C1.B R2.P R3.T P2.P"),
        # Where the prime mover's speed is the command, charge pump and loop pump stand in neutral.
        "variable-speed": changed("engine stands in neutral; charge-pump-drive loop:P1 fail error",
                                  E1='<electric-motor id="E1" variable-speed="yes"/>'),
    }


def _limits(changed, valve):
    def before(part, what, expected, ports="AB", **more):
        """Something between the pump's line and the relief."""
        return changed(f"relief behind {what}; charge-relief loop:P1 {expected}", X1=part, **{
            "G1": f"P2.P F1.A X1.{ports[0]}", "G4": f"X1.{ports[1]} R1.P", **more})

    def after(part, what, expected, ports="AB", **more):
        """Something between the relief and the reservoir."""
        return changed(f"relief over {what}; charge-relief loop:P1 {expected}", X1=part, **{
            "G3": f"R1.T X1.{ports[0]}", "G4": f"X1.{ports[1]} T1.R", **more})

    def filtered(part, expected):
        return changed(f"relief behind the filter; charge-relief loop:P1 {expected}", F1=part,
                       G1="P2.P F1.A", G2="F1.B C1.A C2.A R1.P")

    fails = "fail error"
    orifice, check = '<orifice id="X1"/>', '<check-valve id="X1"/>'
    return {
        "first": changed("relief at the pump; charge-relief loop:P1 pass"),
        "none": changed("no relief; charge-relief loop:P1 fail error", R1=None, G1="P2.P F1.A",
                        G3=None),
        "turned": changed("relief turned; charge-relief loop:P1 fail error", G1="P2.P R1.T F1.A",
                          G3="R1.P T1.R"),
        "behind-filter": filtered('<filter id="F1"/>', fails),
        "behind-filter-indicator": filtered('<filter id="F1" clogging-indicator="electrical"/>',
                                            fails),
        "behind-filter-bypass": filtered('<filter id="F1" bypass="3 bar"/>', "pass"),
        "behind-strainer": filtered('<strainer id="F1"/>', fails),
        "behind-cooler": filtered('<cooler id="F1"/>', "pass"),
        "behind-free-valve": before(FREE, "a hand valve", fails),
        "behind-locked-valve": before(LOCKED, "a locked valve", "pass"),
        "behind-orifice": before(orifice, "an orifice", fails),
        # A check holds nothing back, but the spec counts sure ways alone.
        "behind-check": before(check, "a check", fails),
        "behind-valve-at-times": before(valve("X1", "AB", "on*: A-B", "off:"), "a valve that shuts",
                                        fails),
        "behind-flushing-valve": changed(
            "relief behind the flushing valve; charge-relief loop:P1 fail error",
            X1='<flushing-valve id="X1"/>', G1="P2.P F1.A", HF="X1.F R1.P",
            HA="P1.A M1.A C1.B R2.P R3.T X1.A", HB="P1.B M1.B C2.B R3.P R2.T X1.B"),
        "over-free-valve": after(FREE, "a hand valve", fails),
        "over-locked-valve": after(LOCKED, "a locked valve", "pass"),
        "over-orifice": after(orifice, "an orifice", "pass"),
        "over-check": after(check, "a check", "pass"),
        "over-check-turned": after(check, "a check turned round", fails, "BA"),
        "over-relief": after('<relief-valve id="X1" setting="2 bar"/>', "a second relief", "pass",
                             "PT"),
        "over-filter": after('<filter id="X1"/>', "a filter", "pass"),
        "over-clogged-filter": after('<filter id="X1" one-way="yes" bypass="1 bar"/>',
                                     "a filter turned round",
                                     fails, "BA"),
        "over-reducing": after('<reducing-valve id="X1"/>', "a reducing valve", fails, "PA"),
        "into-housing": changed("relief into a housing; charge-relief loop:P1 pass", G3=None,
                                L1="P1.L M1.L T1.D R1.T"),
        "into-shut-housing": changed("relief into a shut housing; charge-relief loop:P1 fail error",
                                     X1=FREE,
                                     G3=None, L1="P1.L M1.L R1.T X1.A", L2="X1.B T1.D"),
        "into-side": changed("relief into a side; charge-relief loop:P1 fail error", G3=None,
                             HA="P1.A M1.A C1.B R2.P R3.T R1.T"),
        "round-filter": changed("one relief round the filter, one behind; charge-relief loop:P1 pass",
                                G1="P2.P F1.A X1.P", G2="F1.B C1.A C2.A X1.T R1.P",
                                X1='<relief-valve id="X1" setting="4 bar"/>'),
        "sequence": changed("sequence valve for a relief; charge-relief loop:P1 pass",
                            G1="P2.P F1.A X1.P",
                            R1=None, G3="X1.A T1.R", X1='<sequence-valve id="X1" setting="24 bar"/>'),
        "device": changed("device for a relief; charge-relief loop:P1 pass", G1="P2.P F1.A X1.A",
                          R1=None,
                          G3="X1.B T1.R", X1=DEVICE.format("pressure-opened", OPENS)),
        "bypass-is-none": changed("a filter's bypass is no relief; charge-relief loop:P1 fail error",
                                  G1="P2.P F1.A X2.A", G3="X2.B X1.A", G4="X1.B T1.R", R1=None,
                                  X2='<filter id="X2" one-way="yes" bypass="24 bar"/>',
                                  X1=CLOSED.format("")),
        "two-sources": changed("a second source without relief; charge-relief loop:P1 fail error",
                               X1=check, P3='<pump id="P3"/>', W1="E1 P1 P2 P3", S1="T1.S P2.S P3.S",
                               G4="P3.P X1.A", G2="F1.B C1.A C2.A X1.B"),
        "other-at-rest": changed("the second source is not turned; charge-relief loop:P1 pass",
                                 X1=check,
                                 P3='<pump id="P3"/>', S1="T1.S P2.S P3.S", G4="P3.P X1.A",
                                 G2="F1.B C1.A C2.A X1.B"),
        "no-source": changed("charge pump at rest; charge-relief loop:P1 not-applicable", W1="E1 P1",
                             R1=None,
                             G1="P2.P F1.A", G3=None),
        "source-on-side": changed("charge pump into a side; charge-relief loop:P1 fail error",
                                  G1="R1.P F1.A",
                                  HA="P1.A M1.A C1.B R2.P R3.T P2.P"),
    }


def _paths(changed, valve):
    def before(part, what, expected, ports="AB", **more):
        """Something ahead of the check C1 alone."""
        return changed(f"{what} ahead of a check; make-up-path C1 {expected}", X1=part, **{
            "G2": f"F1.B X1.{ports[0]} C2.A", "G4": f"X1.{ports[1]} C1.A", **more})

    fails = "fail error"
    divider = '<flow-divider id="X1" design="spool"><port id="A"/><port id="B"/></flow-divider>'
    series = {"M2": '<motor id="M2"/>', "HB": "P1.B M2.B C2.B R3.P R2.T",
              "X1": '<check-valve id="X1"/>',
              "N1": "M1.B M2.A X1.B", "G2": "F1.B C1.A C2.A X1.A"}
    at_return = {"M2": '<motor id="M2"/>', "R4": '<relief-valve id="R4" setting="120 bar"/>'}
    return {
        "plain": changed("nothing but the filter; make-up-path C1 pass"),
        "free-valve": before(FREE, "hand valve", fails),
        "free-valve-other": changed("hand valve ahead of the other check; make-up-path C2 pass",
                                    X1=FREE,
                                    G2="F1.B X1.A C2.A", G4="X1.B C1.A"),
        "locked-valve": before(LOCKED, "locked valve", "pass"),
        "closed-valve": before(CLOSED.format(' locked="yes"'), "closed valve", fails),
        "coupling": before('<quick-coupling id="X1"/>', "coupling", fails),
        "coupling-parted": before('<quick-coupling id="X1" joined="no"/>', "parted coupling",
                                  "nothing"),
        "orifice": before('<orifice id="X1"/>', "orifice", "pass"),
        "reducing": before('<reducing-valve id="X1"/>', "reducing valve", "pass", "PA"),
        "divider": before(divider, "divider", "pass", "PA"),
        "check": before('<check-valve id="X1"/>', "check", "pass"),
        "check-of-the-way": changed("check ahead of a check; make-up-path X1 nothing",
                                    X1='<check-valve id="X1"/>', G2="F1.B X1.A C2.A", G4="X1.B C1.A"),
        "relief": before('<relief-valve id="X1" setting="5 bar"/>', "relief", "nothing", "PT"),
        "valve-at-times": before(valve("X1", "AB", "on*: A-B", "off:"), "valve that shuts", fails),
        "valve-never": before(valve("X1", "AB", "on*: A-B", "other: A-B"), "valve that never shuts",
                              "pass"),
        "valve-for-hold": before(valve("X1", "AB", "on*: A-B", "off [hold]:"),
                                 "valve with a place for hold",
                                  fails),
        "other-way-free": changed("hand valve beside an orifice; make-up-path C1 pass", X1=FREE,
                                  X2='<orifice id="X2"/>', G2="F1.B X1.A X2.A C2.A",
                                  G4="X1.B X2.B C1.A"),
        "in-relief": changed("make-up checks in the reliefs; make-up-path R2 pass", C1=None, C2=None,
                             R2='<relief-valve id="R2" setting="350 bar" make-up-check="yes"/>',
                             R3='<relief-valve id="R3" setting="350 bar" make-up-check="yes"/>',
                             G2="F1.B R2.T R3.T", HA="P1.A M1.A R2.P", HB="P1.B M1.B R3.P"),
        "throttle-check": changed("throttle with check; make-up-path X1 pass", C1=None,
                                  X1='<throttle-check id="X1"/>', G2="F1.B X1.B C2.A",
                                  HA="P1.A M1.A X1.A R2.P R3.T"),
        "piloted-shut": changed("check that its own side shuts; make-up-path C1 fail error",
                                C1='<check-valve id="C1" pilot="shuts"/>',
                                HA="P1.A M1.A C1.B C1.X R2.P R3.T"),
        "from-reservoir": changed("check from the reservoir; make-up-path X1 nothing",
                                  X1='<check-valve id="X1"/>', S2="T1.X X1.A",
                                  HA="P1.A M1.A C1.B R2.P R3.T X1.B"),
        "from-side": changed("check from side to side; make-up-path X1 nothing",
                             X1='<check-valve id="X1" opening-pressure="200 bar"/>',
                             HA="P1.A M1.A C1.B R2.P R3.T X1.A", HB="P1.B M1.B C2.B R3.P R2.T X1.B"),
        "turned": changed("check turned round; make-up-path C1 nothing", G2="F1.B C1.B C2.A",
                          HA="P1.A M1.A C1.A R2.P R3.T"),
        "middle": changed("check between motors; make-up-path X1 nothing", **series),
        "no-source": changed("charge pump at rest; make-up-path C1 nothing", W1="E1 P1", X1=FREE,
                             G2="F1.B X1.A C2.A", G4="X1.B C1.A"),
        "vented": changed("charge line vented; make-up-path C1 nothing", G2="F1.B C1.A C2.A T1.X"),
        # Charge oil past a motor that has a relief round it is a feed.
        "return": changed("charge oil from a return; make-up-path C1 pass", **at_return,
                          G1="P2.P M2.A R4.P",
                          N1="M2.B R4.T F1.A R1.P"),
        "return-idle": changed("return, its motor idle at rest; make-up-path C1 pass", **at_return,
                               V1=valve("V1", "PTAB", "idle*: P-T", "work: P-A B-T"), G1="P2.P V1.P",
                               N1="V1.A M2.A R4.P", N2="V1.B M2.B R4.T", N3="V1.T F1.A R1.P"),
        "section": changed("hand valve ahead of a section's check; make-up-path C1 fail error",
                           X1=FREE,
                           V1=valve("V1", ("A1", "A2", "B1", "B2"), "on: A1-A2 B1-B2", "off*:"),
                           N1="P1.A V1.A1", N2="P1.B V1.B1", HA="V1.A2 M1.A C1.B R2.P R3.T",
                           HB="V1.B2 M1.B C2.B R3.P R2.T", G2="F1.B X1.A C2.A", G4="X1.B C1.A"),
        "device": changed("device with checks both ways; make-up-path X1 pass", C1=None,
                          X1=DEVICE.format("one-way", ""), G2="F1.B X1.A C2.A",
                          HA="P1.A M1.A X1.B R2.P R3.T"),
    }
