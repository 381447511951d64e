"""Corners of the rule relief-setting. The sound drive's reliefs of 350 bar open 20 bar above its limiter,
just far enough, and its lines bear just the 374 bar that they hold over the charge line's 24. The titles
say what is expected."""

DRAINED = 'drain="external" case-pressure="3 bar"'
RATINGS = {"HA": 374, "HB": 374, "G1": 24, "G2": 24}


def circuits(changed, sound):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `sound` has them."""
    def pump(ident="P1", limiter=330, working=None, more=""):
        given = f' pressure-limiter="{limiter} bar"' if limiter else ""
        given += f' working-pressure="{working} bar"' if working else ""
        return f'<pump id="{ident}" flow-directions="2" variable="yes" {DRAINED}{given}{more}/>'

    def relief(ident, bar=None, more=""):
        setting = f' setting="{bar} bar"' if bar else ""
        return f'<relief-valve id="{ident}"{setting}{more}/>'

    def drive(title, more=(), joins=(), ratings=(), **pump_words):
        """`more`: elements; `joins`: what lines join; `ratings`: of lines in bar, None for none."""
        joined = {ident: sound[ident] for ident in RATINGS} | dict(joins)
        bar = {**RATINGS, **dict(ratings)}
        rated = {ident: f' rating="{bar[ident]} bar"' if bar.get(ident) else "" for ident in joined}
        return changed(title, **{"P1": pump(**pump_words), **{
            ident: f'<line id="{ident}" joins="{what}"{rated[ident]}/>' for ident, what in joined.items()},
            **dict(more)})

    def behind(title, part, first="A", second="B", **more):
        """R2 behind a part in side A."""
        return drive(title, {"X1": part}, {
            "HA": f"P1.A M1.A C1.B R3.T X1.{first}", "HX": f"X1.{second} R2.P"}, **more)

    def pair(words, *joined):
        """Both crossport reliefs with the same words, and the line to a drain of their own."""
        return {"R2": relief("R2", 350, words), "R3": relief("R3", 350, words),
                **({"G5": " ".join(joined)} if joined else {})}

    bare = {"HA": None, "HB": None}
    to_reservoir = {"HA": "P1.A M1.A C1.B R2.P", "HB": "P1.B M1.B C2.B R3.P"}
    isolating = ('<directional-valve id="V1"><port id="A1"/><port id="A2"/><port id="B1"/><port id="B2"/>'
                 '<position id="on" rest="yes"><path from="A1" to="A2"/><path from="B1" to="B2"/></position>'
                 '<position id="off"/></directional-valve>')
    section = {"V1": isolating, "R4": relief("R4", 350), "R5": relief("R5", 350)}
    at_section = {"HA": "P1.A V1.A1 C1.B R2.P R3.T", "HB": "P1.B V1.B1 C2.B R3.P R2.T",
                  "N1": "V1.A2 M1.A R4.P R5.T", "N2": "V1.B2 M1.B R5.P R4.T"}
    flushing = {"V1": '<flushing-valve id="V1"/>', "R4": relief("R4", 18), "N1": "V1.F R4.P",
                "L1": sound["L1"] + " R4.T"}
    flushed = {"HA": sound["HA"] + " V1.A", "HB": sound["HB"] + " V1.B"}
    open_part = {"P3": '<pump id="P3" max-pressure="100 bar"/>', "W1": "E1 P1 P2 P3", "S2": "T1.X P3.S",
                 "M2": '<motor id="M2"/>', "R4": relief("R4", 180), "N1": "P3.P M2.A R4.P",
                 "N2": "M2.B R4.T T1.Y"}
    hoist = {"D1": '<load id="D1" overrunning="yes" overrunning-sense="reverse"/>', "W2": "M1 D1"}
    hand = '<shut-off-valve id="X1"{}/>'
    sprung = {"C3": '<check-valve id="C3" opening-pressure="0.5 bar"/>', "G3": "R1.T C3.A",
              "G5": "C3.B T1.R"}
    return {f"setting-{name}": text for name, text in {
        "just-enough": drive("all pass: margin of 20 bar, ratings of 374"),
        "margin-too-small": drive("R2 and R3 warn: 19.9 bar", limiter=330.1),
        "no-working-pressure": drive("R2 and R3: P1.working-pressure", limiter=None),
        "rating-below": drive("R2 fails at 373.9, R3 stands on the other side", ratings={"HA": 373.9}),
        "component-below": drive("M1 bears 373.9 at either side: R2 and R3 fail", {
            "M1": f'<motor id="M1" {DRAINED} max-pressure="373.9 bar"/>'}),
        "hose-below": drive("R3 fails by a hose", {
            "HB": f'<hose id="HB" joins="{sound["HB"]}" rating="370 bar"/>'}),
        "rating-below-and-margin": drive("the error counts", ratings={"HA": 373}, limiter=340),
        "rating-below-and-no-working-pressure": drive("R2 fails, R3: P1.working-pressure",
                                                      ratings={"HA": 373}, limiter=None),
        "one-rating-missing": drive("what M1 bears decides: all pass", {
            "M1": f'<motor id="M1" {DRAINED} max-pressure="374 bar"/>'}, ratings={"HA": None}),
        "no-rating": drive("R2, R3: HA.rating, HB.rating, max-pressure of M1 and P1", ratings=bare),
        "no-rating-and-margin": drive("the warning counts", ratings=bare, limiter=340),
        "no-rating-no-working-pressure": drive(
            "ratings and working pressure are named", ratings=bare, limiter=None),
        "missing": drive("R2.setting", {"R2": relief("R2")}),
        "missing-no-rating": drive("R2: its setting too; R3: the ratings", {"R2": relief("R2")},
                                   ratings=bare),
        "full-flow": drive("R2 fails at 404", {"R2": relief("R2", 350, ' full-flow-pressure="380 bar"')}),
        "full-flow-no-margin": drive(
            "the margin is that of the setting: R2 warns", {
                "R2": relief("R2", 340, ' full-flow-pressure="350 bar"')}),
        "full-flow-alone": drive("the ratings suffice, the margin lacks R2.setting", {
            "R2": relief("R2", None, ' full-flow-pressure="350 bar"')}),
        "full-flow-alone-above": drive("R2 fails at 404", {
            "R2": relief("R2", None, ' full-flow-pressure="380 bar"')}),
        "drained-apart": drive("350 is enough: all pass", pair(
            ' drain="external"', "R2.Y R3.Y T1.X"), ratings={"HA": 350, "HB": 350}),
        "drain-open": drive("no line leads the drains away: R2 and R3 fail", pair(' drain="external"'),
                            ratings={"HA": 350, "HB": 350}),
        "to-the-reservoir": drive("350 is enough: all pass", {"G5": "R2.T R3.T T1.X"}, to_reservoir,
                                  {"HA": 350, "HB": 350}),
        "into-the-charge-line": drive("374 all the same: all pass", (), {
            **to_reservoir, "G2": sound["G2"] + " R2.T R3.T"}),
        "into-the-charge-line-below": drive("R2 fails", (), {
            **to_reservoir, "G2": sound["G2"] + " R2.T R3.T"}, {"HA": 373}),
        "no-charge": drive("nothing on the low side: 350, all pass but R1, that nothing feeds", {
            "W1": "E1 P1"}, ratings={"HA": 350, "HB": 350}),
        "charge-below": drive("G1 bears 23: R1 fails", ratings={"G1": 23}),
        "charge-filter-below": drive("R1 fails by the filter", {
            "F1": '<filter id="F1" max-pressure="20 bar"/>'}),
        "charge-no-rating": drive("R1: ratings of G1, G2; max-pressure of F1, P2", ratings={
            "G1": None, "G2": None}),
        "charge-missing": drive("R1.setting for all three", {"R1": relief("R1")}),
        "charge-missing-below": drive("R2 and R3 fail at 350 even so", {"R1": relief("R1")}, ratings={
            "HA": 349, "HB": 349}),
        "charge-over-a-spring": drive("R1 opens into 0.5 bar: 24 is too little for R1, R2 and R3", sprung),
        "charge-over-a-spring-rated": drive("all pass", sprung, ratings={
            "HA": 374.5, "HB": 374.5, "G1": 24.5, "G2": 24.5}),
        "charge-valve-between": drive(
            "what an open valve joins is the charge line too: R1 fails by B1", {
                "B1": '<brake id="B1" max-pressure="20 bar"/>', "W2": "M1 B1", "X1": hand.format(""),
                "G4": "X1.B B1.Z"}, {"G2": sound["G2"] + " X1.A"}),
        "charge-reduced": drive(
            "behind a reducing valve is another line: all pass", {
                "B1": '<brake id="B1" max-pressure="20 bar"/>', "W2": "M1 B1",
                "X1": '<reducing-valve id="X1" setting="20 bar"/>', "G4": "X1.A B1.Z", "G5": "X1.Y T1.X"},
            {"G2": sound["G2"] + " X1.P"}),
        "behind-a-locked-valve": behind("R2 is on the side: all pass", hand.format(' locked="yes"')),
        "behind-a-free-valve": behind("R2 is on the side as drawn: all pass", hand.format("")),
        "behind-a-shut-valve": behind("R2 is on no side", hand.format(' position="closed"')),
        "behind-a-check": behind("R2 is on no side", '<check-valve id="X1"/>'),
        "behind-an-orifice": behind("R2 is on no side", '<orifice id="X1"/>'),
        "behind-a-filter": behind("R2 is on the side, F2 too: R2 fails",
                                  '<filter id="X1" max-pressure="373 bar"/>'),
        "one-for-both": drive(
            "R2 behind two checks is on no side", {
                "R3": None, "C3": '<check-valve id="C3"/>', "C4": '<check-valve id="C4"/>',
                "N1": "C3.B C4.B R2.P"}, {
                "HA": "P1.A M1.A C1.B C3.A", "HB": "P1.B M1.B C2.B C4.A", "G2": sound["G2"] + " R2.T"}),
        "outlet-joined-to-nothing": drive("R2 gets rid of nothing and bears down on all: fails", (), {
            "HB": "P1.B M1.B C2.B R3.P"}),
        "flushing-relief": drive(
            "R4 is on no side, and the low side has the charge line's 24 all the same: all pass",
            flushing, flushed),
        "section": drive("all pass", section, at_section, {"N1": 374, "N2": 374}),
        "section-below": drive("off, R4 stands on N1 alone; on, R2 holds N1 too: both fail",
                               section, at_section, {"N1": 373, "N2": 374}),
        "open-part": drive("R4 is no loop's, nor is its line a charge line", open_part),
        "hoist": drive("side B is never high: its relief is held against the ratings as in neutral",
                       hoist, ratings={"HB": 373}),
        "working-pressure": drive("what is stated counts before the limiter: all pass", limiter=340,
                                  working=330),
        "working-pressure-too-near": drive("R2 and R3 warn", limiter=300, working=331),
        "both-missing": drive("R1.setting and R2.setting for R2, R1.setting for R1 and R3", {
            "R1": relief("R1"), "R2": relief("R2")}),
        "shorted": drive("R4 relieves nothing and is not asked: all others pass", {"R4": relief("R4", 30)}, {
            "HA": sound["HA"] + " R4.P R4.T"}),
        "back-to-its-own-side": drive("nor where its outlet comes back over a valve", {
            "R4": relief("R4", 30), "X1": hand.format(' locked="yes"'), "N1": "R4.T X1.B"}, {
                "HA": sound["HA"] + " R4.P X1.A"}),
        "sequence-valve": drive("is no relief valve: R4 is not asked", {
            "R4": '<sequence-valve id="R4" setting="200 bar"/>', "G5": "R4.Y T1.X"}, {
                "HA": sound["HA"] + " R4.P", "HB": sound["HB"] + " R4.A"}),
        "counterbalance-valve": drive("is no relief valve: X1 is not asked", {
            "X1": '<counterbalance-valve id="X1" setting="200 bar" pilot="internal"/>'}, {
                "HA": "P1.A X1.A C1.B R2.P R3.T", "HC": "X1.B M1.A"}, {"HC": 574}),
        "two-charge-lines": drive("R4 stands on the line of P3 alone: R4 fails by G4", {
            "P3": '<pump id="P3" max-pressure="22 bar"/>', "W1": "E1 P1 P2 P3", "S2": "T1.X P3.S",
            "R4": relief("R4", 22), "C3": '<check-valve id="C3"/>', "G5": "R4.T T1.Y"}, {
                "G2": sound["G2"] + " C3.B", "G4": "P3.P R4.P C3.A"}, {"G4": 21}),
        "a-valve-in-one-position": drive("a brake on the line in motion: R1 fails by B1", {
            "B1": '<brake id="B1" max-pressure="20 bar"/>', "W2": "M1 B1", "V1": (
                '<directional-valve id="V1"><port id="P"/><port id="T"/><port id="A"/>'
                '<position id="rest" rest="yes"><path from="A" to="T"/></position>'
                '<position id="off" in="drive-forward"><path from="P" to="A"/></position>'
                '</directional-valve>'), "G4": "V1.A B1.Z", "G5": "V1.T T1.X"}, {
                    "G2": sound["G2"] + " V1.P"}),
        "ratings-of-all-positions": drive(
            "what is missing in each position of V1 is named", section, at_section, {
                "HA": None, "HB": None}, limiter=None),
        "second-pump": drive("the higher limiter counts: R2 and R3 warn", {
            "P3": pump("P3", 340), "W1": "E1 P1 P2 P3", "L1": sound["L1"] + " P3.L"}, {
                "HA": sound["HA"] + " P3.A", "HB": sound["HB"] + " P3.B"}),
        "second-pump-says-nothing": drive("one limiter will do: all pass", {
            "P3": pump("P3", None), "W1": "E1 P1 P2 P3", "L1": sound["L1"] + " P3.L"}, {
                "HA": sound["HA"] + " P3.A", "HB": sound["HB"] + " P3.B"}),
    }.items()}
