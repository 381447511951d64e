"""Corners of the rules trapped-volume, pressure-intensification and flushing-setting. The titles say
what is expected."""

HAND = '<shut-off-valve id="{}" {}/>'
LOCKED, CLOSED = 'locked="yes"', 'position="closed"'
GAUGE, BRAKE, PUMP = '<gauge id="X2"/>', '<brake id="X2"/>', '<pump id="P3"/>'
CHECK = '<check-valve id="{}"/>'


def _trapped(changed, sound):
    """A short line HX between two parts; HY to something else where there is one."""
    def between(title, first, start, second, end, far="", **more):
        """`first` stands on the charge line, `start` of it on HX with `end` of `second`, which is on
        the reservoir by `far`."""
        other = {"A": "B", "B": "A", "P": "T", "T": "P", "C": "A"}[start.rpartition(".")[2]]
        made = {"X1": first, "G2": f'{sound["G2"]} X1.{other}', "X2": second, "HX": f"{start} {end}"}
        return changed(title, **{**made, **({"HY": f"{far} T1.X"} if far else {}), **more})

    def dead(title, first, start, **more):
        """A brake behind a part on the charge line: what gets out goes back over the part."""
        return between(title, first, start, BRAKE, "X2.Z", **more)

    free, locked, shut = (HAND.format("X1", how) for how in ("", LOCKED, CLOSED + " " + LOCKED))
    valve = ('<directional-valve id="X1"><port id="A"/><port id="B"/><position id="shut" rest="yes"/>'
             '<position id="open"><path from="B" to="A"{}/></position></directional-valve>')
    device = ('<device id="X1"><port id="A"/><port id="B"/>'
              '<passage from="A" to="B" class="{}" both-ways="{}"/></device>')
    flow, orifice = '<flow-control id="X1"{}/>', '<orifice id="X1"/>'
    return {
        "trapped-two-hand-valves": between("HX fails", free, "X1.B", HAND.format("X2", ""), "X2.A", "X2.B"),
        "trapped-one-locked-open": between("passes", locked, "X1.B", HAND.format("X2", ""), "X2.A", "X2.B"),
        "trapped-locked-shut": between("HX fails", shut, "X1.B", HAND.format("X2", ""), "X2.A", "X2.B"),
        "trapped-two-couplings": between("HX fails: they can be parted", '<quick-coupling id="X1"/>', "X1.B",
                                         '<quick-coupling id="X2"/>', "X2.A", "X2.B"),
        "trapped-plain-coupling": dead("passes: one oil", '<quick-coupling id="X1" valves="none"/>', "X1.B"),
        "trapped-behind-a-check": dead("HX fails", CHECK.format("X1"), "X1.B"),
        "trapped-before-a-check": dead("passes", CHECK.format("X1"), "X1.A"),
        "trapped-behind-a-piloted-check": dead(
            "HX fails: its seat is tight", '<check-valve id="X1" pilot="opens"/>', "X1.B",
            HA=sound["HA"] + " X1.X"),
        "trapped-before-a-check-that-a-pilot-shuts": dead(
            "passes", '<check-valve id="X1" pilot="shuts"/>', "X1.A", HA=sound["HA"] + " X1.X"),
        "trapped-behind-a-sprung-check-to-the-reservoir": between(
            "passes", free, "X1.B", '<check-valve id="X2" opening-pressure="5 bar"/>', "X2.A", "X2.B"),
        "trapped-before-a-relief": between("passes, whatever its setting", free, "X1.B",
                                           '<relief-valve id="X2"/>', "X2.P", "X2.T"),
        "trapped-behind-a-relief": dead("HX fails", '<relief-valve id="X1" setting="5 bar"/>', "X1.T"),
        "trapped-behind-a-relief-with-check": dead(
            "passes", '<relief-valve id="X1" setting="5 bar" make-up-check="yes"/>', "X1.T"),
        "trapped-behind-a-spool": dead("passes: it leaks", valve.format(""), "X1.B"),
        "trapped-behind-a-throttled-spool": dead("passes", valve.format(' throttled="yes"'), "X1.B"),
        "trapped-behind-a-reducing-valve": between(
            "passes: its spool leaks", '<reducing-valve id="X1"/>', "X1.A", BRAKE, "X2.Z",
            G2=f'{sound["G2"]} X1.P'),
        "trapped-behind-an-orifice": dead("passes", orifice, "X1.B"),
        "trapped-behind-a-flow-control": dead("HX fails", flow.format(""), "X1.B"),
        "trapped-behind-a-flow-control-with-check": dead("passes", flow.format(' check="yes"'), "X1.B"),
        "trapped-behind-a-one-way-filter": dead("HX fails", '<filter id="X1" one-way="yes"/>', "X1.B"),
        "trapped-behind-a-filter": dead("passes", '<filter id="X1"/>', "X1.B"),
        "trapped-behind-a-shuttle": between("passes: it leaks to either side", '<shuttle-valve id="X1"/>',
                                            "X1.C", GAUGE, "X2.P", G2=sound["G2"],
                                            HA=sound["HA"] + " X1.A", HB=sound["HB"] + " X1.B"),
        "trapped-unloading-valve": dead("passes: its spool leaks", '<unloading-valve id="X1"/>', "X1.P",
                                        G2=sound["G2"] + " X1.T X1.X"),
        "trapped-counterbalance": dead("passes: its spring opens to A", '<counterbalance-valve id="X1"/>',
                                       "X1.B", G2=sound["G2"] + " X1.A X1.X"),
        "trapped-device-one-way": dead("HX fails", device.format("one-way", "no"), "X1.B"),
        "trapped-device-both-ways": dead("passes", device.format("metering", "yes"), "X1.B"),
        "trapped-accumulator": between("passes: the gas gives way", free, "X1.B",
                                       '<accumulator id="X2"/>', "X2.A"),
        "trapped-behind-a-hand-pump": between("passes: any machine leaks", free, "X1.B",
                                              '<hand-pump id="X2"/>', "X2.P", "X2.S"),
        "trapped-gauges-alone": changed("HX fails: nothing leads out of it", X1='<plug id="X1"/>', X2=GAUGE,
                                        HX="X1.P X2.P"),
        "trapped-one-port": changed("HX joins one port and is not asked: passes", X2=GAUGE, HX="X2.P"),
        "trapped-housing-shut": changed("L1, HA and HB fail: a housing leaks back, but nothing leads out of the loop",
                                        X1=HAND.format("X1", ""), L1="P1.L M1.L X1.A", L2="X1.B T1.D"),
        "trapped-housing-shut-of-a-flushed-loop": changed(
            "passes: a housing leaks back to the sides", X1=HAND.format("X1", ""), L1="P1.L M1.L X1.A",
            L2="X1.B T1.D", V1='<flushing-valve id="V1"/>', HA=sound["HA"] + " V1.A",
            HB=sound["HB"] + " V1.B", N1="V1.F R4.P", R4='<relief-valve id="R4"/>', N2="R4.T T1.X"),
        "trapped-pump-drained-inside": changed(
            "the pump leaks to both sides: passes", P1='<pump id="P1" flow-directions="2"/>', L1="M1.L T1.D"),
        "trapped-loop": changed("HA and HB fail: nothing but make-up leads in, and nothing out",
                                P1='<pump id="P1" flow-directions="2"/>', M1='<motor id="M1"/>', L1=""),
        "trapped-loop-flushed": changed(
            "passes over the flushing valve, centred or not", P1='<pump id="P1" flow-directions="2"/>',
            M1='<motor id="M1"/>', L1="", V1='<flushing-valve id="V1"/>', HA=sound["HA"] + " V1.A",
            HB=sound["HB"] + " V1.B", N1="V1.F R4.P", R4='<relief-valve id="R4"/>', N2="R4.T T1.X"),
        "trapped-two-lines-on-a-junction": changed(
            "HX fails; HY, on the same node, is not named", X1=CHECK.format("X1"), X2=GAUGE,
            X3='<plug id="X3"/>',
            X4='<junction id="X4"><port id="a"/><port id="b"/></junction>', G2=sound["G2"] + " X1.A",
            HX="X1.B X4.a X2.P", HY="X4.b X3.P"),
        "trapped-thermostat": dead("passes", '<thermostatic-bypass id="X1"/>', "X1.B"),
        "trapped-behind-two-checks": dead("HX and HY fail, each for itself", CHECK.format("X1"), "X1.B",
                                          X3=CHECK.format("X3"), X4='<gauge id="X4"/>', HX="X1.B X3.A X2.Z",
                                          HY="X3.B X4.P"),
    }


def _intensified(changed, sound):
    """A rotary divider on the return of the charge relief; a cylinder beside it."""
    rotary = '<flow-divider id="X1"{}><port id="A"/><port id="B"/></flow-divider>'
    kept = {"E1": sound["E1"], "W1": "E1 P1 P2 P3", "P3": PUMP, "S2": "T1.X P3.S",
            "T2": '<reservoir id="T2"><port id="a" level="below"/></reservoir>'}
    relief = '<relief-valve id="{}" setting="100 bar"/>'

    def divided(title, a, b, more=(), design=' design="rotary"'):
        """What stands on the legs A and B; a motor on each."""
        return changed(title, **{
            **kept, "X1": rotary.format(design), "R4": relief.format("R4"), "R5": relief.format("R5"),
            "M2": '<motor id="M2"/>', "M3": '<motor id="M3"/>', "N1": "P3.P X1.P",
            "N2": "X1.A M2.A" + a, "N3": "X1.B M3.A" + b, "N4": "M2.B M3.B R4.T R5.T T1.Y", **dict(more)})

    def pushed(title, b, more=(), attributes=""):
        """A cylinder between two ways of a valve; what stands at its rod end."""
        return changed(title, **{
            **kept, "X1": f'<cylinder id="X1"{attributes}/>', "R4": relief.format("R4"),
            "N1": "P3.P X1.A", "N2": "X1.B" + b, "N4": "R4.T T1.Y", **dict(more)})

    valve = ('<directional-valve id="V1"><port id="A"/><port id="B"/><position id="shut" rest="yes"/>'
             '<position id="open"><path from="{}" to="{}"{}/></position></directional-valve>')

    def behind(part, letters="AB"):
        """The relief behind a part of two ports on leg A."""
        return " V1." + letters[0], " R5.P", {"V1": part, "N5": f"V1.{letters[1]} R4.P"}

    return {
        "raised-legs-limited": divided("passes", " R4.P", " R5.P"),
        "raised-one-leg-unlimited": divided("X1 fails", " R4.P", ""),
        "raised-neither-leg-limited": divided("X1 fails", "", ""),
        "raised-relief-at-the-inlet": divided("X1 fails: the legs count", "", "", {
            "N1": "P3.P X1.P R4.P R5.P"}),
        "raised-spool": divided("is not asked", "", "", design=' design="spool"'),
        "raised-design-not-given": divided("a spool: is not asked", "", "", design=""),
        "raised-relief-turned": divided("X1 fails: the outlet of a relief", " R4.T", " R5.P", {
            "N4": "M2.B M3.B R4.P R5.T T1.Y"}),
        "raised-one-relief-over-checks": divided("passes", " C3.A", " C4.A", {
            "C3": CHECK.format("C3"), "C4": CHECK.format("C4"), "N5": "C3.B C4.B R4.P"}),
        "raised-one-relief-over-checks-turned": divided("X1 fails", " C3.A", " C4.B", {
            "C3": CHECK.format("C3"), "C4": CHECK.format("C4"), "N5": "C3.B C4.A R4.P"}),
        "raised-behind-a-locked-valve": divided("passes", *behind(HAND.format("V1", LOCKED))),
        "raised-behind-a-free-valve": divided("X1 fails", *behind(HAND.format("V1", ""))),
        "raised-behind-a-valve-locked-shut": divided("X1 fails", *behind(
            HAND.format("V1", LOCKED + " " + CLOSED))),
        "raised-behind-an-orifice": divided("X1 fails", *behind('<orifice id="V1"/>')),
        "raised-behind-a-filter": divided("passes", *behind('<filter id="V1"/>')),
        "raised-behind-a-one-way-filter-turned": divided("X1 fails", *behind(
            '<filter id="V1" one-way="yes"/>', "BA")),
        "raised-behind-a-position": divided("passes: some position leads there", *behind(
            valve.format("A", "B", ""))),
        "raised-behind-a-throttled-position": divided("X1 fails", *behind(
            valve.format("A", "B", ' throttled="yes"'))),
        "raised-behind-a-shuttle": divided("X1 fails: pressure shifts it", *behind(
            '<shuttle-valve id="V1"/>', "AC")),
        "raised-legs-on-the-reservoir": divided("X1 fails: a reservoir is no relief", " T2.a", " R5.P"),
        "raised-leg-open": divided("X1 fails: leg A is joined to nothing", " R4.P", " R5.P", {
            "N2": "M2.A R4.P"}),
        "raised-sequence-for-relief": divided("passes: it opens under pressure too", " R4.P", " V1.P", {
            "V1": '<sequence-valve id="V1" setting="90 bar"/>', "N5": "V1.A V1.Y T2.a", "R5": "",
            "N4": "M2.B M3.B R4.T T1.Y"}),
        "raised-bypass-for-relief": divided("X1 fails: the bypass is none", " R4.P", " V1.A", {
            "V1": '<filter id="V1" bypass="3 bar"/>', "N5": "V1.B T2.a"}),
        "raised-rod-limited": pushed("passes", " R4.P"),
        "raised-rod-unlimited": pushed("X1 fails", " C3.A", {"C3": CHECK.format("C3"), "N5": "C3.B T2.a"}),
        "raised-rod-open-to-the-reservoir": pushed("X1 fails: a reservoir is no relief", " T2.a"),
        "raised-relief-at-the-cap-end": pushed("X1 fails", "", {"N1": "P3.P X1.A R4.P"}),
        "raised-rod-behind-a-check": pushed("passes", " C3.A", {
            "C3": CHECK.format("C3"), "N5": "C3.B R4.P"}),
        "raised-two-rods": pushed("is not asked", "", attributes=' rods="2"'),
        "raised-equal-areas": pushed("is not asked", "", attributes=' area-ratio="1"'),
        "raised-ratio-of-two": pushed("X1 fails", "", attributes=' area-ratio="2"'),
        "raised-single-acting": changed("is not asked", **{
            **kept, "X1": '<cylinder id="X1" action="single"/>', "N1": "P3.P X1.A"}),
        "raised-cylinder-in-the-loop": changed("unequal-cylinder's business: is not asked",
                                               M1='<cylinder id="M1"/>', L1="P1.L T1.D"),
    }


def _flushed(changed, sound):
    """A flushing valve with its relief; the charge relief is at 24 bar."""
    def flushing(title, setting="18", first="V1.F R4.P", **more):
        given = f' setting="{setting} bar"' if setting else ""
        return changed(title, **{
            "V1": '<flushing-valve id="V1"/>', "HA": sound["HA"] + " V1.A", "HB": sound["HB"] + " V1.B",
            "R4": f'<relief-valve id="R4"{given}/>', "N1": first, "L1": sound["L1"] + " R4.T", **more})

    def relief(ident, bar="", more=""):
        given = f' setting="{bar} bar"' if bar else ""
        return f'<relief-valve id="{ident}"{given}{more}/>'

    def after(title, part, **more):
        return flushing(title, first="V1.F X1.A", X1=part, N2="X1.B R4.P", **more)

    second = {"P3": PUMP, "W1": "E1 P1 P2 P3", "S2": "T1.X P3.S"}
    return {
        "flushing-sound": flushing("passes: 18 under 24"),
        "flushing-just-enough": flushing("passes: 22 under 24", "22"),
        "flushing-too-near": flushing("R4 fails, a warning", "22.01"),
        "flushing-equal": flushing("R4 fails, an error", "24"),
        "flushing-above": flushing("R4 fails, an error", "30"),
        "flushing-unknown": flushing("R4 inconclusive: R4.setting", ""),
        "flushing-charge-unknown": flushing("R4 inconclusive: R1.setting", R1=relief("R1")),
        "flushing-both-unknown": flushing("R4 inconclusive: both", "", R1=relief("R1")),
        "flushing-full-flow-is-no-matter": flushing(
            "passes: settings count", R1=relief("R1", 24, ' full-flow-pressure="30 bar"'),
            R4=relief("R4", 18, ' full-flow-pressure="25 bar"')),
        "flushing-one-charge-relief-unknown": flushing(
            "R4 fails, an error, whatever R5 is set to", "24", R5=relief("R5"), G1=sound["G1"] + " R5.P",
            G4="R5.T T1.X"),
        "flushing-lowest-charge-relief-counts": flushing(
            "R4 fails, a warning: R5 at 19", R5=relief("R5", 19), G2=sound["G2"] + " R5.P", G4="R5.T T1.X"),
        "flushing-over-a-filter": after("passes", '<filter id="X1"/>'),
        "flushing-over-a-locked-valve": after("passes", HAND.format("X1", LOCKED)),
        "flushing-over-a-free-valve": after("R4 is not asked", HAND.format("X1", "")),
        "flushing-over-an-orifice": after("R4 is not asked", '<orifice id="X1"/>'),
        "flushing-over-a-check": after("R4 is not asked", CHECK.format("X1")),
        "flushing-no-relief": flushing("nobody is asked", first="V1.F T1.X", R4="", L1=sound["L1"]),
        "flushing-two-reliefs": flushing("R4 passes, R5 fails, an error", first="V1.F R4.P R5.P",
                                         R5=relief("R5", 24), L1=sound["L1"] + " R4.T R5.T"),
        "flushing-relief-behind-the-first": flushing(
            "R4 passes; R5, behind its inlet, is not asked", first="V1.F R4.P X1.A", X1='<filter id="X1"/>',
            N2="X1.B R5.P", R5=relief("R5", 30), L1=sound["L1"] + " R4.T R5.T"),
        "flushing-charge-relief-cut-off": flushing(
            "R4 not applicable: no charge relief to compare with", X1=HAND.format("X1", ""),
            G1="P2.P X1.A F1.A", G4="X1.B R1.P"),
        "flushing-no-charge": flushing("R4 not applicable", W1="E1 P1"),
        "flushing-charge-relief-after-the-filter": flushing(
            "passes", G1="P2.P F1.A", G2=sound["G2"] + " R1.P"),
        "flushing-charge-into-a-side": flushing(
            "R4 not applicable: the charge pump's outlet is on side A", G1="F1.A R1.P",
            HA=sound["HA"] + " V1.A P2.P"),
        "flushing-two-charge-pumps": flushing("R4 fails, an error: P3's relief is at 10", **second, G5=(
            "P3.P R5.P C3.A"), R5=relief("R5", 10), G6="R5.T T1.Y", C3=CHECK.format("C3"), G2=(
                sound["G2"] + " C3.B")),
        "flushing-outlet-on-a-side": flushing(
            "R3, which the outlet meets on side B, fails, an error", HA=sound["HA"] + " V1.A",
            HB=sound["HB"] + " V1.F", N1="V1.B R4.P"),
        "flushing-two-valves-one-relief": flushing(
            "passes, once", first="V1.F X1.F R4.P", X1='<flushing-valve id="X1"/>',
            HA=sound["HA"] + " V1.A X1.A", HB=sound["HB"] + " V1.B X1.B"),
        "flushing-charge-only-ahead": flushing(
            "R4 passes in the forward states; backwards the charge pump delivers nothing", E1=(
                '<electric-motor id="E1" reversing="yes"/>')),
        "flushing-relief-in-neutral-only": flushing(
            "R4 is not asked: in motion nothing leads to it", "30", first="V1.F V2.A", N2="V2.B R4.P", V2=(
                '<directional-valve id="V2"><port id="A"/><port id="B"/><position id="still" rest="yes">'
                '<path from="A" to="B"/></position><position id="moves" in="drive-forward drive-reverse '
                'overrun-forward overrun-reverse"/></directional-valve>')),
        "flushing-relief-in-one-state": flushing(
            "R4 fails, an error, in drive-forward", "30", first="V1.F V2.A", N2="V2.B R4.P", V2=(
                '<directional-valve id="V2"><port id="A"/><port id="B"/><position id="shut" rest="yes" '
                'in="drive-reverse overrun-forward overrun-reverse"/><position id="open" '
                'in="drive-forward"><path from="A" to="B"/></position></directional-valve>')),
        "flushing-device-relief": flushing(
            "X1 inconclusive: X1.opening", first="V1.F X1.a", R4="", L1=sound["L1"] + " X1.b", X1=(
                '<device id="X1"><port id="a"/><port id="b"/>'
                '<passage from="a" to="b" class="pressure-opened"/></device>')),
    }


def circuits(changed, sound):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `sound` has them."""
    return {**_trapped(changed, sound), **_intensified(changed, sound), **_flushed(changed, sound)}
