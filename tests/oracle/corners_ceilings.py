"""Corners of the rule pressure-rating. In the sound drive the charge line's ceiling is 24 bar and that
of the high side 374 bar (the relief's 350 over the low side's 24); all ratings there are just enough,
what stands open to the reservoir needs none. The titles say what is expected."""

RATINGS = {"HA": 374, "HB": 374, "G1": 24, "G2": 24}
DRAINED = 'drain="external" case-pressure="3 bar"'


def circuits(changed, sound):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `sound` has them."""
    def line(ident, joins, bar=None):
        rating = f' rating="{bar} bar"' if bar else ""
        return f'<line id="{ident}" joins="{joins}"{rating}/>'

    def rated(title, more=(), joins=(), ratings=(), bears=374):
        """`more`: elements; `joins`: what lines join; `ratings`: of lines in bar, None for none;
        `bears`: max-pressure of the loop's machines."""
        joined = {ident: sound[ident] for ident in ("HA", "HB", "G1", "G2")} | dict(joins)
        bar = {**RATINGS, **dict(ratings)}
        machines = {
            "P1": f'<pump id="P1" flow-directions="2" {DRAINED} max-pressure="{bears} bar"/>',
            "M1": f'<motor id="M1" {DRAINED} max-pressure="{bears} bar"/>',
            "P2": '<pump id="P2" max-pressure="24 bar"/>', "F1": '<filter id="F1" max-pressure="24 bar"/>'}
        return changed(title, **{**machines, **{
            ident: line(ident, what, bar.get(ident)) for ident, what in joined.items()}, **dict(more)})

    def relief(ident, bar=None, more=""):
        setting = f' setting="{bar} bar"' if bar else ""
        return f'<relief-valve id="{ident}"{setting}{more}/>'

    def behind(part, first="A", second="B", ratings=()):
        """R2 behind a part in side A."""
        return {"more": {"X1": part}, "ratings": {"HX": 374, **dict(ratings)}, "joins": {
            "HA": f"P1.A M1.A C1.B R3.T X1.{first}", "HX": f"X1.{second} R2.P"}}

    apart = relief("R2", 350, ' drain="external"'), relief("R3", 350, ' drain="external"')
    reducing = '<reducing-valve id="X1" {}/>'
    brake = {"B1": '<brake id="B1" max-pressure="20 bar"/>', "W2": "M1 B1"}

    def to_brake(title, part, **ratings):
        """A brake on the charge line behind a reducing valve."""
        return rated(title, {"X1": part, **brake, "G5": "X1.Y T1.X"}, {
            "G2": "F1.B C1.A C2.A X1.P", "N1": "X1.A B1.Z"}, ratings or {"N1": 20})

    breathing = sound["T1"].replace('id="T1"', 'id="T1" pressure="1 bar"')
    sealed = breathing.replace(' breather="yes"', "")
    open_part = {"P3": '<pump id="P3" max-pressure="100 bar"/>', "W1": "E1 P1 P2 P3", "S2": "T1.X P3.S",
                 "M2": '<motor id="M2" max-pressure="100 bar"/>', "C3": '<check-valve id="C3"/>',
                 "G5": "C3.B T1.Y"}

    def ring(part):
        """A pump that can send its oil round over a part; a check lets in what it lacks."""
        return {"more": {**open_part, "M2": "", "W1": "E1 P1 P2 P3", "C3": '<check-valve id="C3"/>',
                         "S2": "T1.X C3.A", "G5": "", "X1": part},
                "joins": {"N1": "P3.P X1.A", "N2": "X1.B C3.B P3.S"}, "ratings": {"N1": 400, "N2": 400}}

    def series(bar):
        """Two motors drained inside in series, a relief from between them to side A."""
        return {"more": {"M1": '<motor id="M1"/>', "M2": '<motor id="M2"/>', "L1": "P1.L T1.D",
                         "R4": relief("R4", 250)},
                "joins": {"HA": sound["HA"] + " R4.T", "HB": "P1.B M2.B C2.B R3.P R2.T",
                          "N1": "M1.B M2.A R4.P"}, "ratings": {"N1": bar}}

    def section(more, first, second):
        """A motor that V1 shuts off, and what stands on its lines."""
        return {"more": {"V1": (
            '<directional-valve id="V1"><port id="A1"/><port id="A2"/><port id="B1"/><port id="B2"/>'
            '<position id="on" rest="yes"><path from="A1" to="A2"/><path from="B1" to="B2"/></position>'
            '<position id="off"/></directional-valve>'), **more},
                "joins": {"HA": "P1.A V1.A1 C1.B R2.P R3.T", "HB": "P1.B V1.B1 C2.B R3.P R2.T",
                          "N1": "V1.A2 M1.A " + first, "N2": "V1.B2 M1.B " + second},
                "ratings": {"N1": 374, "N2": 374}}

    drive_on = {"N1": "P3.P M2.A R4.P", "N2": "M2.B C3.A R4.T"}
    return {
        "rating-just-enough": rated("all pass"),
        "rating-hose-too-low": rated("HA fails, alone", {
            "HA": f'<hose id="HA" joins="{sound["HA"]}" rating="373.9 bar"/>'}),
        "rating-machines-too-low": rated("P1 and M1 fail", bears=373.9),
        "rating-missing": rated("HA and G2 inconclusive: their ratings", ratings={"HA": None, "G2": None}),
        "rating-nothing-limits": rated("HA, P1, M1 fail: no relief takes side A's oil", {"R2": ""}, {
            "HA": "P1.A M1.A C1.B R3.T", "HB": "P1.B M1.B C2.B R3.P"}),
        "rating-nothing-limits-nor-rated": rated("HA fails though no rating is given", {"R2": ""}, {
            "HA": "P1.A M1.A C1.B R3.T", "HB": "P1.B M1.B C2.B R3.P"}, {"HA": None}),
        "rating-setting-unknown": rated("HA, P1, M1 inconclusive: R2.setting", {"R2": relief("R2")}),
        "rating-setting-unknown-aside": rated(
            "R4 limits nothing that is driven: all pass", {"R4": relief("R4"), "G5": "R4.T T1.X"}, {
                "HA": sound["HA"] + " R4.P"}),
        "rating-charge-setting-unknown": rated(
            "HA fails at 350 even so; the rest R1.setting", {"R1": relief("R1")}, ratings={"HA": 300}),
        "rating-two-settings-unknown": rated("inconclusive with both names", {
            "R1": relief("R1"), "R2": relief("R2")}),
        "rating-full-flow": rated("HA fails at 404, HB passes", {
            "R2": relief("R2", 350, ' full-flow-pressure="380 bar"')}),
        "rating-full-flow-alone": rated("no setting needed: all pass", {
            "R2": relief("R2", None, ' full-flow-pressure="350 bar"')}),
        "rating-drained-apart": rated("350 is enough: all pass", {
            "R2": apart[0], "R3": apart[1], "G5": "R2.Y R3.Y T1.X"}, ratings={"HA": 350, "HB": 350}),
        "rating-drain-open": rated("no line leads the drain away: HA and HB fail at 374", {
            "R2": apart[0], "R3": apart[1]}, ratings={"HA": 350, "HB": 350}),
        "rating-drained-apart-low": rated("charge relief of 24, outlet held at 30: 30 counts", {
            "R1": relief("R1", 24, ' drain="external"'), "G3": "R1.T R4.P", "R4": relief("R4", 30),
            "G5": "R4.T R1.Y T1.R"}),
        "rating-behind-locked-valve": rated("all pass", **behind(
            '<shut-off-valve id="X1" locked="yes"/>')),
        "rating-behind-free-valve": rated("HA fails; HX passes, the relief stands on it",
                                          **behind('<shut-off-valve id="X1"/>')),
        "rating-behind-orifice": rated("what an orifice loses is a matter of flow: all pass", **behind(
            '<orifice id="X1"/>')),
        "rating-behind-sprung-check": rated("HA needs 5 bar more, HX none", **behind(
            '<check-valve id="X1" opening-pressure="5 bar"/>', ratings={"HA": 379}), bears=379),
        "rating-behind-check-turned": rated("HA fails, HX has no drive", **behind(
            '<check-valve id="X1"/>', "B", "A", {"HX": None})),
        "rating-behind-coupling": rated("HA fails; the coupling too", **behind(
            '<quick-coupling id="X1" max-pressure="400 bar"/>')),
        "rating-behind-clogging-filter": rated("an element is no limit to take account of: all pass",
                                               **behind('<filter id="X1" max-pressure="374 bar"/>')),
        "rating-behind-filter-turned": rated("one-way element: HA fails", **behind(
            '<filter id="X1" one-way="yes" max-pressure="374 bar"/>', "B", "A")),
        "rating-no-charge": rated("no source: the sides have no limit at all", {"W1": "E1 P1"}),
        "rating-charge-from-a-vented-line": rated("no source", joins={"G2": sound["G2"] + " T1.X"}),
        "rating-flushing-limits": rated(
            "charge line at 18 in motion, at 24 in neutral: G1 fails", {
                "V1": '<flushing-valve id="V1"/>', "R4": relief("R4", 18), "N1": "V1.F R4.P",
                "L1": sound["L1"] + " R4.T"},
            {"HA": sound["HA"] + " V1.A", "HB": sound["HB"] + " V1.B"}, {"G1": 23, "N1": 18}),
        "rating-differential": rated("reliefs into the charge line: the same 374", joins={
            "HA": "P1.A M1.A C1.B R2.P", "HB": "P1.B M1.B C2.B R3.P", "G2": sound["G2"] + " R2.T R3.T"}),
        "rating-reliefs-to-the-reservoir": rated(
            "350 is enough", {"G5": "R2.T R3.T T1.X"}, {"HA": "P1.A M1.A C1.B R2.P",
                                                        "HB": "P1.B M1.B C2.B R3.P"},
            {"HA": 350, "HB": 350}, bears=350),
        "rating-reduced": to_brake("brake at 20: passes", reducing.format('setting="20 bar"')),
        "rating-reduced-too-little": to_brake("brake at 21: B1 and N1 fail", reducing.format(
            'setting="21 bar"')),
        "rating-reduced-unknown": to_brake("B1, N1 inconclusive: X1.setting", reducing.format("")),
        "rating-reduced-unknown-no-matter": to_brake(
            "N1 bears the charge line's 24; B1 inconclusive", reducing.format(""), N1=24),
        "rating-reduced-relieving": rated("limited both ways: passes", {
            "X1": reducing.format('setting="20 bar" relieving="yes"'), **brake, "G5": "X1.T T1.X"}, {
                "G2": "F1.B C1.A C2.A X1.P", "N1": "X1.A B1.Z"}, {"N1": 20}),
        "rating-control-valve": rated(
            "its max-pressure is no rating; N1 fails at 15 in its position a", {
                "X1": '<pilot-control-valve id="X1" max-pressure="15 bar"/>', "G5": "X1.T T1.X",
                "X2": '<gauge id="X2"/>'}, {
                "G2": "F1.B C1.A C2.A X1.P", "N1": "X1.A X2.P"}, {"N1": 14}),
        "rating-control-valve-unknown": rated(
            "N1 inconclusive: X1.max-pressure", {
                "X1": '<pilot-control-valve id="X1"/>', "G5": "X1.T T1.X", "X2": '<gauge id="X2"/>'}, {
                "G2": "F1.B C1.A C2.A X1.P", "N1": "X1.A X2.P"}, {"N1": 14}),
        "rating-priority-valve": rated("CF hands on 15, EF holds 15 over the outlet: all pass", {
            "X1": '<priority-valve id="X1" setting="15 bar"/>', "G5": "X1.EF T1.X"}, {
                "G1": "P2.P X1.P", "G4": "X1.CF F1.A", "G2": sound["G2"] + " R1.P"}, {
                "G1": 15, "G4": 15}),
        "rating-priority-valve-relief-ahead": rated(
            "no oil gets away from the charge line behind CF, so the low sides have no limit: HA, HB, P1, "
            "M1 fail", {"X1": '<priority-valve id="X1" setting="15 bar"/>', "G5": "X1.EF T1.X"}, {
                "G1": "P2.P R1.P X1.P", "G4": "X1.CF F1.A"}, {"G1": 15, "G4": 15}),
        "rating-one-way-charge-filter": rated(
            "the same behind a filter that is passed one way only: HA, HB, P1, M1 fail", {
                "F1": '<filter id="F1" one-way="yes" bypass="3 bar" max-pressure="24 bar"/>'}),
        "rating-one-way-charge-filter-relief-behind": rated(
            "all pass", {"F1": '<filter id="F1" one-way="yes" bypass="3 bar" max-pressure="24 bar"/>'}, {
                "G1": "P2.P F1.A", "G2": sound["G2"] + " R1.P"}),
        "rating-low-side-has-the-charge-lines": rated(
            "R5 holds side A at 10 where it is high; where it is low it has the 15 at which the charge "
            "line opens: HA fails", {
                "R5": relief("R5", 10), "G5": "R5.T T1.X",
                "C1": '<check-valve id="C1" opening-pressure="5 bar"/>'}, {"HA": sound["HA"] + " R5.P"}, {
                "HA": 14, "HB": 365}),
        "rating-sealed-reservoir": rated(
            "1 bar everywhere on it: T1.max-pressure, and ratings of S1, G3, L1; charge at 25", {
                "T1": sealed}, ratings={"G1": 25, "G2": 24}),
        "rating-sealed-reservoir-bears": rated("T1 passes", {"T1": sealed.replace(
            'pressure="1 bar"', 'pressure="1 bar" max-pressure="1 bar"')}),
        "rating-reservoir-that-breathes": rated("holds no pressure, whatever it says: all pass", {
            "T1": breathing}),
        "rating-vented-reservoir": rated("is no subject", {"T1": sound["T1"].replace(
            'id="T1"', 'id="T1" max-pressure="1 bar"')}),
        "rating-accumulator-alone": rated("nothing limits it: X1 and N1 fail", {
            "X1": '<accumulator id="X1" max-pressure="50 bar"/>', "C3": '<check-valve id="C3"/>'}, {
                "G2": sound["G2"] + " C3.A", "N1": "C3.B X1.A"}, {"N1": 400}),
        "rating-accumulator-limited": rated("at 24: passes", {
            "X1": '<accumulator id="X1" max-pressure="24 bar"/>'}, {"G2": sound["G2"] + " X1.A"}),
        "rating-housing-shut": rated("L1 fails by leakage; the machines pass, whose housings it is", {
            "X1": '<shut-off-valve id="X1"/>', "L2": "X1.B T1.D"}, {"L1": "P1.L M1.L X1.A"}, {"L1": 3}),
        "rating-drain-over-spring": rated("cooler at 0.5 bar fails", {
            "X1": '<cooler id="X1" max-pressure="0.4 bar"/>', "L2": "X1.B C3.A", "L3": "C3.B T1.D",
            "C3": '<check-valve id="C3" opening-pressure="0.5 bar"/>'}, {"L1": "P1.L M1.L X1.A"}, {
                "L1": 3}),
        "rating-drain-over-orifice": rated("charge relief into a housing behind an orifice: all pass", {
            "X1": '<orifice id="X1"/>', "L2": "X1.B T1.D", "G3": ""}, {"L1": "P1.L M1.L R1.T X1.A"}),
        "rating-open-part": rated(
            "N1 100, N2 by the motor, nothing held behind it: passes", {**open_part, "R4": relief("R4", 100)},
            drive_on, {"N1": 100}),
        "rating-open-part-one-way": rated("N2 sees what the motor hands on up to the spring", {
            **open_part, "R4": relief("R4", 95), "M2": '<motor id="M2" flow-directions="1"/>',
            "C3": '<check-valve id="C3" opening-pressure="5 bar"/>'}, drive_on, {"N1": 100, "N2": 4}),
        "rating-open-part-unlimited": rated("N1, P3, M2 fail: a motor may stall", {**open_part},
                                            {"N1": "P3.P M2.A", "N2": "M2.B C3.A"}, {"N1": 400}),
        "rating-open-part-stalled-behind": rated("N2 sees 100 past the motor: N2.rating", {
            **open_part, "R4": relief("R4", 100), "C3": '<shut-off-valve id="C3"/>',
            "G5": "C3.B T1.Y R4.T"}, {"N1": "P3.P M2.A R4.P", "N2": "M2.B C3.A"}, {"N1": 100}),
        "rating-pump-stands-still": rated("P3 turns with nothing: passes", {
            **open_part, "W1": "E1 P1 P2"}, {"N1": "P3.P M2.A", "N2": "M2.B C3.A"}),
        "rating-suction-can-be-shut": rated("the pump P2 draws in what leaks back past it: passes", {
            "X1": '<shut-off-valve id="X1"/>', "S1": "T1.S X1.A"}, {"S2": "X1.B P2.S"}, {"S2": 23}),
        "rating-series-drained-inside": rated("N1 sees either side past the motors' pistons: fails", {
            "M1": '<motor id="M1"/>', "M2": '<motor id="M2"/>', "L1": "P1.L T1.D"}, {
                "HB": "P1.B M2.B C2.B R3.P R2.T", "N1": "M1.B M2.A"}, {"N1": 373}),
        "rating-series-drained-outside": rated("nothing but motors leads to N1: passes", {
            "M2": '<motor id="M2" drain="external"/>', "L1": "P1.L M1.L M2.L T1.D"}, {
                "HB": "P1.B M2.B C2.B R3.P R2.T", "N1": "M1.B M2.A"}),
        "rating-section": rated(
            "shut off, the motor's lines have no limit: N1, N2, M1 fail with V1=off; the pump's have the "
            "reliefs from one to the other", {
                "V1": ('<directional-valve id="V1"><port id="A1"/><port id="A2"/><port id="B1"/>'
                       '<port id="B2"/><position id="on" rest="yes"><path from="A1" to="A2"/>'
                       '<path from="B1" to="B2"/></position><position id="off"/></directional-valve>')}, {
                "HA": "P1.A V1.A1 C1.B R2.P R3.T", "HB": "P1.B V1.B1 C2.B R3.P R2.T",
                "N1": "V1.A2 M1.A", "N2": "V1.B2 M1.B"}, {"N1": 374, "N2": 374}),
        "rating-device-unknown-opening": rated("HA inconclusive: X1.opening", {
            "R2": "", "X1": ('<device id="X1"><port id="a"/><port id="b"/>'
                             '<passage from="a" to="b" class="pressure-opened"/></device>')}, {
                "HA": "P1.A M1.A C1.B R3.T X1.a", "HB": "P1.B M1.B C2.B R3.P X1.b"}),
        "rating-device-reduces": rated("N1 at 10: fails at 9", {
            "X1": ('<device id="X1"><port id="a"/><port id="b"/>'
                   '<passage from="a" to="b" class="reduced" opening="10 bar"/></device>'),
            "X2": '<gauge id="X2"/>'}, {"G2": sound["G2"] + " X1.a", "N1": "X1.b X2.P"}, {"N1": 9}),
        "rating-in-no-region": rated("N1 is not asked", {"X1": '<gauge id="X1"/>',
                                                         "X2": '<plug id="X2"/>', "N1": "X1.P X2.P"}),
        "rating-counterbalance": rated("HC held by its spring at 300 over side A: HC, M1 fail", {
            "X1": '<counterbalance-valve id="X1" setting="300 bar"/>'}, {
                "HA": "P1.A X1.A C1.B R2.P R3.T", "HC": "X1.B M1.A", "HB": sound["HB"] + " X1.X"}, {
                "HC": 373}),
        "rating-charge-from-a-return": rated(
            "ahead of a motor that stalls at 124, G1 and P2 fail; the low sides have what the line "
            "behind it has: 24", {
                "M2": '<motor id="M2" max-pressure="124 bar"/>', "R4": relief("R4", 100)}, {
                "G1": "P2.P M2.A R4.P", "N1": "M2.B R4.T F1.A R1.P"}, {"N1": 24}),
        "rating-branch-behind-an-orifice": rated(
            "its oil gets to the relief through the orifice: all pass", {"X1": '<orifice id="X1"/>'},
            {"HA": "P1.A X1.A C1.B R2.P R3.T", "HC": "X1.B M1.A"}, {"HC": 374}),
        "rating-idle-ring": rated(
            "in neutral the pump goes round in itself and drives nothing, and the reliefs lie between "
            "the motor's lines: all pass", {
                "P1": f'<pump id="P1" closed-loop="yes" {DRAINED} max-pressure="400 bar"/>', "V1": (
                    '<directional-valve id="V1"><port id="P"/><port id="T"/><port id="A"/><port id="B"/>'
                    '<position id="centre" rest="yes"><path from="P" to="T"/></position>'
                    '<position id="ahead" in="drive-forward overrun-forward"><path from="P" to="A"/>'
                    '<path from="T" to="B"/></position><position id="back" '
                    'in="drive-reverse overrun-reverse"><path from="P" to="B"/><path from="T" to="A"/>'
                    '</position></directional-valve>')}, {
                "HA": "V1.A M1.A C1.B R2.P R3.T", "HB": "V1.B M1.B C2.B R3.P R2.T",
                "N1": "P1.P V1.P", "N2": "P1.S V1.T"}, {"N1": 400, "N2": 400}),
        "rating-pump-round-an-orifice": rated("P3 drives nothing: passes", **ring('<orifice id="X1"/>')),
        "rating-pump-round-a-locked-valve": rated("P3 drives nothing: passes", **ring(
            '<shut-off-valve id="X1" locked="yes"/>')),
        "rating-pump-round-a-free-valve": rated("N1, N2, P3 fail", **ring('<shut-off-valve id="X1"/>')),
        "rating-pump-round-a-check": rated("N1, N2, P3 fail", **ring('<check-valve id="X1"/>')),
        "rating-series-limited": rated("N1 at 274 by R4, whatever side A has: passes", **series(274)),
        "rating-series-limited-too-high": rated("N1 fails at 274", **series(273)),
        "rating-section-limited": rated("N1, N2 at 374 with V1=off: pass", **section(
            {"R4": relief("R4", 350), "R5": relief("R5", 350)}, "R4.P R5.T", "R5.P R4.T")),
        "rating-section-limited-over-checks": rated(
            "neither end of R4 is on a line of known pressure: N1, N2, N3, N4, M1 fail with V1=off", **section(
                {"R4": relief("R4", 350), "N3": "C3.B C4.B R4.P", "N4": "R4.T C5.A C6.A",
                 **{f"C{n}": f'<check-valve id="C{n}"/>' for n in (3, 4, 5, 6)}},
                "C3.A C5.B", "C4.A C6.B")),
        "rating-suction-of-a-standing-pump": rated(
            "what leaks through a pump that nothing turns: S3 has the charge line's 24, and no rating", {
                "X1": '<shut-off-valve id="X1"/>', "X2": '<pump id="X2" max-pressure="24 bar"/>'},
            {"S2": "T1.X X1.A", "S3": "X1.B X2.S", "G1": sound["G1"] + " X2.P"}),
        "rating-joined-to-nothing": rated("X1 sees nothing: passes", {"X1": '<filter id="X1"/>'}),
        "rating-unit-off-shaft": rated("a pump that nothing turns stands at the charge line's 24: X1 fails", {
            "X1": '<pump id="X1" max-pressure="10 bar"/>', "S2": "T1.X X1.S"}, {
                "G2": sound["G2"] + " X1.P"}),
    }
