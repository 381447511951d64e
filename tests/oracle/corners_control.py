"""Corners of control oil, brakes, towing, loads at rest and accumulators; titles as in corners_flow."""

from corners_flow import ORIFICE, SPRING, named

BRAKE = {"B1": '<brake id="B1"/>', "W2": "M1 B1"}
CHARGED = "F1.B C1.A C2.A"
SIDES = {"HA": "P1.A M1.A C1.B R2.P R3.T X1.A", "HB": "P1.B M1.B C2.B R3.P R2.T X1.B"}
TOWING_WAY = {"X1": '<bypass-valve id="X1"/>', **SIDES}
GAUGE = {"X7": '<gauge id="X7"/>'}


def _valve(ports, rest="", other="", ident="V2"):
    """A valve with the paths of its rest position, and of another."""
    def position(name, text, more=""):
        paths = "".join('<path from="{}" to="{}"/>'.format(*path.split("-")) for path in text.split())
        return f'<position id="{name}"{more}>{paths}</position>'
    return (f'<directional-valve id="{ident}">' + "".join(f'<port id="{port}"/>' for port in ports)
            + position("idle", rest, ' rest="yes"') + position("work", other) + "</directional-valve>")


def circuits(changed, drained):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `drained` is
    the attributes of a housing drained outside."""
    groups = {"control-supply": _control_supply(drained), "neutral-on-loss": _neutral_on_loss(drained),
              "load-holding": _load_holding(), "parking-brake": _parking_brake(),
              "towing-bypass": _towing_bypass(), "accumulator-safety": _accumulator_safety()}
    return {name: text for rule, cases in groups.items()
            for name, text in named(changed, rule, cases).items()}


def _pump(drained, more):
    return f'<pump id="P1" flow-directions="2" {drained} variable="yes" {more}/>'


def _control_supply(drained):
    def one(joins, **more):
        """The pump's only pilot on a line."""
        return {"P1": _pump(drained, 'control="hydraulic" pilot-ports="1"'), **(
            {"NX": f"P1.X {joins}"} if joins else {}), **more}

    def over(part, ports="AB", **more):
        """The pilot behind a part on the charge line."""
        return one(f"X1.{ports[1]}", X1=part, G2=f"{CHARGED} X1.{ports[0]}", **more)

    two = {"P1": _pump(drained, 'control="hydraulic" pilot-ports="2"'),
           "V2": _valve("PTAB", "A-T B-T", "P-A B-T"), "G2": f"{CHARGED} V2.P", "N2": "V2.T T1.X",
           "N3": "V2.A P1.X1", "N4": "V2.B P1.X2"}
    variable = {"E1": '<electric-motor id="E1" variable-speed="yes"/>'}
    reversing = {"E1": '<electric-motor id="E1" variable-speed="yes" reversing="yes"/>'}
    return [
        ("pass", "on the charge line", one("", G2=f"{CHARGED} P1.X")),
        ("fail error", "joined to nothing", one("")),
        ("fail error", "on the reservoir", one("T1.X")),
        ("fail error", "a check from the reservoir", one("C3.B", C3=SPRING, N2="C3.A T1.X")),
        ("fail error", "one of two fed", two),
        ("pass", "both fed in one position or another", {**two, "V2": (
            '<directional-valve id="V2"><port id="P"/><port id="T"/><port id="A"/><port id="B"/>'
            '<position id="idle" rest="yes"/><position id="a"><path from="P" to="A"/></position>'
            '<position id="b"><path from="P" to="B"/></position></directional-valve>')}),
        ("pass", "over an open valve by hand", over('<shut-off-valve id="X1"/>')),
        ("fail error", "over a valve drawn shut", over('<shut-off-valve id="X1" position="closed"/>')),
        ("pass", "over an orifice", over('<orifice id="X1"/>')),
        ("pass", "over a reducing valve", over('<reducing-valve id="X1" setting="15 bar"/>', "PA")),
        ("fail error", "over a relief", over('<relief-valve id="X1" setting="15 bar"/>', "PT")),
        ("fail error", "over a check turned round", over('<check-valve id="X1"/>', "BA")),
        ("pass", "over a pilot control valve", over(
            '<pilot-control-valve id="X1"/>', "PA", N2="X1.T T1.X")),
        ("fail error", "over a piloted sequence valve that stays shut", over(
            '<sequence-valve id="X1" pilot="external"/>', "PA", N2="X1.Y T1.X", N3="X1.X T1.Y")),
        ("pass", "from an accumulator alone", one("X2.A", X2='<accumulator id="X2"/>')),
        ("pass", "from a side over an orifice", one(
            "O1.B", O1=ORIFICE, HA="P1.A M1.A C1.B R2.P R3.T O1.A")),
        ("fail error", "the charge pump stands", one("", G2=f"{CHARGED} P1.X", W1="E1 P1")),
        ("none", "nothing turns", one("", G2=f"{CHARGED} P1.X", W1=None)),
        ("pass", "variable speed stands in neutral", one("", G2=f"{CHARGED} P1.X", **variable)),
        ("fail error", "variable speed and no oil", one("", **variable)),
        ("fail error", "the charge pump turned backwards", one("", G2=f"{CHARGED} P1.X", **reversing)),
        ("none", "an electric control", {"P1": _pump(drained, 'control="electric" pilot-ports="1"')}),
        ("none", "no pilots outside", {"P1": _pump(drained, 'control="hydraulic"')}),
        ("none", "a fixed pump", {"P1": (f'<pump id="P1" flow-directions="2" {drained} '
                                         'control="hydraulic" pilot-ports="1"/>')}),
        ("fail error", "a motor with its pilot on the drain", {
            "M1": f'<motor id="M1" {drained} variable="yes" control="hydraulic" pilot-ports="1"/>',
            "L1": "P1.L M1.L M1.X T1.D"}),
        ("pass", "a motor with its pilot on a side", {
            "M1": f'<motor id="M1" {drained} variable="yes" control="hydraulic" pilot-ports="1"/>',
            "HA": "P1.A M1.A C1.B R2.P R3.T M1.X"}),
        # In neutral, hold and lost-signal a two-way pump outside the loops stands at no stroke.
        ("fail error", "from a two way pump", one(
            "P3.A", P3='<pump id="P3" flow-directions="2"/>', N2="P3.B T1.X", W1="E1 P1 P2 P3")),
        # A pump that turns is enough to ask in neutral, when the loop's pump stands.
        ("fail error", "a pump for nothing turns on in neutral", one(
            "O1.B", O1=ORIFICE, G2=f"{CHARGED} O1.A", **variable, X2='<engine id="X2"/>',
            P3='<pump id="P3"/>', W3="X2 P3", N2="P3.S T1.X", N3="P3.P R4.P",
            R4='<relief-valve id="R4" setting="50 bar"/>', G1="P2.P R1.P F1.A R4.T")),
    ]


def _neutral_on_loss(drained):
    def valve(rest, **more):
        return {"P1": _pump(drained, 'control="hydraulic" pilot-ports="2"'),
                "V2": _valve("PTAB", rest, "P-A B-T"), "G2": f"{CHARGED} V2.P", "N2": "V2.T T1.X",
                "N3": "V2.A P1.X1", "N4": "V2.B P1.X2", **more}

    def control(words):
        return {"P1": _pump(drained, words)}

    vented = valve("A-T B-T")
    return [
        ("pass", "both pilots drain", vented),
        ("fail error", "shut at rest", valve("")),
        ("fail error", "one pilot drains", valve("A-T")),
        ("fail error", "the other position drains",
         {**vented, "V2": _valve("PTAB", "P-A B-T", "A-T B-T")}),
        ("fail error", "over an orifice",
         {**vented, "O1": ORIFICE, "N2": "V2.T O1.A", "N5": "O1.B T1.X"}),
        ("fail error", "over a sprung check",
         {**vented, "C3": SPRING, "N2": "V2.T C3.A", "N5": "C3.B T1.X"}),
        ("pass", "over a check without a spring", {
            **vented, "C3": '<check-valve id="C3"/>', "N2": "V2.T C3.A", "N5": "C3.B T1.X"}),
        ("fail error", "over a valve drawn shut", {
            **vented, "H1": '<shut-off-valve id="H1" position="closed"/>', "N2": "V2.T H1.A",
            "N5": "H1.B T1.X"}),
        ("pass", "a pilot control valve", {
            "P1": _pump(drained, 'control="hydraulic" pilot-ports="2"'), "G2": f"{CHARGED} V2.P",
            "V2": '<pilot-control-valve id="V2" outlets="2"/>', "N2": "V2.T T1.X",
            "N3": "V2.A P1.X1", "N4": "V2.B P1.X2"}),
        ("fail error", "a pilot joined to nothing", control('control="hydraulic" pilot-ports="1"')),
        ("not-applicable", "by hand", control('control="manual"')),
        ("not-applicable", "no control stated", control("")),
        ("none", "a fixed pump", {}),
        ("pass", "electric to zero", control('control="electric" rest-displacement="zero"')),
        ("fail error", "electric to the largest", control(
            'control="electric" rest-displacement="largest"')),
        ("fail error", "load sensing to the least",
         control('control="load-sensing" rest-displacement="least"')),
        ("inconclusive", "electric and not said", control('control="electric"')),
        ("inconclusive", "hydraulic inside and not said", control('control="hydraulic"')),
        ("fail error", "pilots count before what is said", valve("", P1=_pump(
            drained, 'control="hydraulic" pilot-ports="2" rest-displacement="zero"'))),
        ("pass", "electric with a pilot", control(
            'control="electric" pilot-ports="1" rest-displacement="zero"')),
        ("none", "a two way pump in no loop", {
            "P3": '<pump id="P3" flow-directions="2" variable="yes" control="electric"/>',
            "N1": "P3.A T1.X", "N2": "P3.B T1.Y", "W1": "E1 P1 P2 P3"}),
    ]


def _load_holding():
    load = {"D1": '<load id="D1" overrunning="yes"/>', "W2": "M1 D1"}
    braked = {**load, "W2": "M1 D1 B1"}
    behind = {**load, "HA": "P1.A X1.A C1.B R2.P R3.T", "HC": "X1.B M1.A"}
    balance = '<counterbalance-valve id="X1" setting="300 bar" pilot="internal"/>'
    two = {**behind, "X1": balance, "M2": '<motor id="M2"/>', "W2": "M1 M2 D1",
           "HB": "P1.B M1.B C2.B R3.P R2.T M2.B"}
    return [
        ("none", "a load that does not drive", {"D1": '<load id="D1"/>', "W2": "M1 D1"}),
        ("fail error", "nothing holds it", load),
        ("pass", "a brake by spring",
         {**braked, "B1": '<brake id="B1" applied="spring" use="parking"/>'}),
        ("pass", "a brake of no stated use", {**braked, "B1": '<brake id="B1"/>'}),
        ("fail error", "a service brake", {**braked, "B1": '<brake id="B1" use="service"/>'}),
        ("fail error", "a brake by pressure", {**braked, "B1": '<brake id="B1" applied="pressure"/>'}),
        ("pass", "a brake behind a gearbox", {
            **load, "B1": '<brake id="B1"/>', "X1": '<gearbox id="X1"/>', "W2": "M1 B1 X1.in",
            "W3": "X1.out D1"}),
        ("fail error", "a brake behind a parted clutch", {
            **load, "B1": '<brake id="B1"/>', "X1": '<clutch id="X1" engaged="no"/>', "W2": "M1 D1 X1.in",
            "W3": "X1.out B1"}),
        ("fail error", "a brake on another shaft", {**load, "B1": '<brake id="B1"/>', "W3": "B1 X2",
                                                    "X2": '<load id="X2"/>'}),
        ("pass", "a counterbalance valve at the motor", {**behind, "X1": balance}),
        ("fail error", "a counterbalance valve turned round", {
            **behind, "X1": balance, "HA": "P1.A X1.B C1.B R2.P R3.T", "HC": "X1.A M1.A"}),
        ("fail error", "a counterbalance valve and an orifice", {
            **behind, "X1": balance, "O1": ORIFICE, "HC": "X1.B O1.A", "HD": "O1.B M1.A"}),
        ("pass", "a check opened by a pilot", {
            **behind, "X1": '<check-valve id="X1" pilot="opens"/>', "HB": "P1.B M1.B C2.B R3.P R2.T X1.X"}),
        ("fail error", "a throttle with check", {
            **behind, "X1": '<throttle-check id="X1"/>', "HA": "P1.A X1.B C1.B R2.P R3.T",
            "HC": "X1.A M1.A"}),
        ("fail error", "one motor of two", {**two, "HA": "P1.A X1.A C1.B R2.P R3.T M2.A"}),
        ("pass", "both motors of two", {**two, "HC": "X1.B M1.A M2.A"}),
        # It has a free way in and one back under pressure, and holds nothing: settled here.
        ("fail error", "a relief with make up check", {
            **load, "R2": '<relief-valve id="R2" setting="350 bar" make-up-check="yes"/>'}),
        ("fail error", "a sequence valve with check", {
            **behind, "X1": '<sequence-valve id="X1" setting="200 bar" check="yes"/>',
            "HA": "P1.A X1.A C1.B R2.P R3.T", "HC": "X1.P M1.A", "N1": "X1.Y T1.X"}),
        # No actuator is there that could hold it: settled here.
        ("fail error", "on no shaft", {"D1": '<load id="D1" overrunning="yes"/>'}),
        ("pass", "a single acting cylinder", {
            "X2": '<cylinder id="X2" action="single"/>', "D1": '<load id="D1" overrunning="yes"/>',
            "W2": "X2 D1", "X1": '<check-valve id="X1" pilot="opens"/>', "N1": "X1.B X2.A",
            "G2": f"{CHARGED} X1.A", "N2": "X1.X T1.X"}),
    ]


def _parking_brake():
    def valve(rest, other="P-A", brake='<brake id="B1"/>', **more):
        return {**BRAKE, "B1": brake, "V2": _valve("PTA", rest, other), "G2": f"{CHARGED} V2.P",
                "N2": "V2.T T1.X", "N3": "V2.A B1.Z", **more}

    store = '<accumulator id="X2"/>'
    on_charge = {**BRAKE, "G2": f"{CHARGED} B1.Z"}
    return [
        ("pass", "a valve drains it at rest", valve("A-T")),
        ("fail error", "on the charge line", on_charge),
        ("fail error", "by pressure", valve(
            "A-T", brake='<brake id="B1" applied="pressure" use="parking"/>')),
        ("fail error", "by pressure and joined to nothing", {
            **BRAKE, "B1": '<brake id="B1" applied="pressure" use="both"/>'}),
        ("pass", "joined to nothing", BRAKE),
        ("fail error", "on a side", {**BRAKE, "HA": "P1.A M1.A C1.B R2.P R3.T B1.Z"}),
        ("pass", "shut in at rest", valve("")),
        ("fail error", "shut in with an accumulator", valve("", X2=store, N3="V2.A B1.Z X2.A")),
        ("fail error", "supplied at rest", valve("P-A", "A-T")),
        ("pass", "drained and supplied at rest", valve("P-A P-T")),
        ("none", "a service brake", {**on_charge, "B1": '<brake id="B1" use="service"/>'}),
        ("none", "by pressure and no use stated",
         {**on_charge, "B1": '<brake id="B1" applied="pressure"/>'}),
        ("fail error", "of both uses", {**on_charge, "B1": '<brake id="B1" use="both"/>'}),
        ("pass", "drained over a sprung check", valve(
            "A-T", C3=SPRING, N2="V2.T C3.A", N4="C3.B T1.X")),
        ("fail error", "supplied over a valve drawn open", {
            **BRAKE, "H1": '<shut-off-valve id="H1"/>', "G2": f"{CHARGED} H1.A", "N3": "H1.B B1.Z"}),
        ("pass", "supplied over a valve drawn shut", {
            **BRAKE, "H1": '<shut-off-valve id="H1" position="closed"/>', "G2": f"{CHARGED} H1.A",
            "N3": "H1.B B1.Z"}),
        ("pass", "supplied over a relief", {
            **BRAKE, "R4": '<relief-valve id="R4" setting="10 bar"/>', "G2": f"{CHARGED} R4.P",
            "N3": "R4.T B1.Z"}),
        ("pass", "on the line of a pump that stands", {**on_charge, "W1": "E1 P1"}),
        ("fail error", "on the line of a pump that stands with an accumulator", {
            **on_charge, "W1": "E1 P1", "X2": store, "G2": f"{CHARGED} B1.Z X2.A"}),
        ("pass", "on the reservoir", {**BRAKE, "N3": "B1.Z T1.X"}),
        ("pass", "a line to a gauge alone", {**BRAKE, **GAUGE, "N3": "B1.Z X7.P"}),
        ("fail error", "a line to an accumulator alone", {**BRAKE, "X2": store, "N3": "B1.Z X2.A"}),
        ("fail error", "an accumulator behind the valve at rest", valve(
            "P-A", "A-T", X2=store, G2=CHARGED, N4="V2.P X2.A")),
        ("pass", "an accumulator on the other side of the valve", valve(
            "A-T", X2=store, G2=f"{CHARGED} V2.P X2.A")),
        ("pass", "from a two way pump", {
            **BRAKE, "P3": '<pump id="P3" flow-directions="2"/>', "N2": "P3.B T1.X", "N3": "P3.A B1.Z",
            "W1": "E1 P1 P2 P3"}),
        ("fail error", "a pump beyond the reservoir", {
            **on_charge, "G2": CHARGED, "P3": '<pump id="P3"/>', "N2": "T1.X P3.S", "N3": "P3.P B1.Z",
            "W1": "E1 P1 P2 P3"}),
    ]


def _towing_bypass():
    vehicle = {"D1": '<load id="D1" vehicle="yes"/>', "W2": "M1 D1"}
    braked = {**vehicle, **TOWING_WAY, "W2": "M1 D1 B1", "B1": '<brake id="B1"/>',
              "V2": _valve("PTA", "A-T", "P-A"), "G2": f"{CHARGED} V2.P", "N2": "V2.T T1.X",
              "N3": "V2.A B1.Z"}
    clutch = {"X2": '<clutch id="X2"/>', "D1": '<load id="D1" vehicle="yes"/>', "W2": "M1 X2.in",
              "W3": "X2.out D1"}
    one_way = {"P1": '<pump id="P1" closed-loop="yes"/>', "L1": "M1.L T1.D", "N1": "P1.P V1.P",
               "N2": "P1.S V1.T", "HA": "V1.A M1.A C1.B R2.P R3.T", "HB": "V1.B M1.B C2.B R3.P R2.T"}
    pumped = {**braked, "X3": '<hand-pump id="X3"/>', "N4": "T1.Y X3.S"}
    return [
        ("none", "no vehicle", TOWING_WAY),
        ("fail warning", "no way", vehicle),
        ("pass", "a bypass valve", {**vehicle, **TOWING_WAY}),
        ("fail warning", "a brake without release", braked),
        ("pass", "a brake released by hand",
         {**braked, "B1": '<brake id="B1" released-by-hand="yes"/>'}),
        ("fail warning", "a service brake without release",
         {**braked, "B1": '<brake id="B1" use="service"/>'}),
        ("pass", "a brake by pressure", {**braked, "B1": '<brake id="B1" applied="pressure"/>'}),
        ("pass", "a hand pump over a shuttle", {
            **pumped, "X4": '<shuttle-valve id="X4"/>', "N3": "V2.A X4.A", "N5": "X3.P X4.B",
            "N6": "X4.C B1.Z"}),
        ("fail warning", "a hand pump behind a valve drawn shut", {
            **pumped, "H1": '<shut-off-valve id="H1" position="closed"/>', "N5": "X3.P H1.A",
            "N3": "V2.A B1.Z H1.B"}),
        # The hand pump's pipework and the loop hang together nowhere: settled here.
        ("pass", "a hand pump apart from the loop", {
            **pumped, "V2": _valve("PA", "P-A"), "N2": None, "G2": CHARGED, "N3": "V2.A B1.Z",
            "N5": "X3.P V2.P"}),
        ("pass", "a hand pump on the brake alone", {
            **pumped, "V2": None, "N2": None, "G2": CHARGED, "N3": "X3.P B1.Z"}),
        ("fail warning", "a hand pump without the brake", pumped),
        ("pass", "a clutch on the shaft of the motor", clutch),
        ("none", "a parted clutch", {**clutch, "X2": '<clutch id="X2" engaged="no"/>'}),
        ("fail warning", "a clutch behind a gearbox", {
            **clutch, "X3": '<gearbox id="X3"/>', "W2": "M1 X3.in", "W4": "X3.out X2.in"}),
        ("fail warning", "a clutch for one motor of two", {
            **clutch, "M2": '<motor id="M2"/>', "W3": "X2.out D1", "W4": "M2 D2",
            "D2": '<load id="D2"/>', "N1": "M1.B M2.A", "HB": "P1.B M2.B C2.B R3.P R2.T"}),
        ("fail warning", "a valve drawn shut", {
            **vehicle, **SIDES, "X1": '<shut-off-valve id="X1" position="closed"/>'}),
        ("pass", "an orifice between the sides", {**vehicle, **SIDES, "X1": '<orifice id="X1"/>'}),
        ("fail warning", "a check from side to side", {
            **vehicle, **SIDES, "X1": '<check-valve id="X1" opening-pressure="1 bar"/>'}),
        ("fail warning", "leakage inside the machines", {
            **vehicle, "P1": '<pump id="P1" flow-directions="2"/>', "M1": '<motor id="M1"/>', "L1": None}),
        # The loop is not there at rest; its motor's lines hang together: settled here.
        ("none", "a reversing valve that lets it float", {
            **vehicle, **one_way, "V1": _valve("PTAB", "P-T A-B", "P-A T-B", "V1")}),
        ("none", "a reversing valve that shuts it in", {
            **vehicle, **one_way, "V1": _valve("PTAB", "P-T", "P-A T-B", "V1")}),
        ("fail warning", "over the reservoir", {
            **vehicle, **SIDES, "X1": '<bypass-valve id="X1"/>', "HB": "P1.B M1.B C2.B R3.P R2.T",
            "N1": "X1.B C3.A", "C3": SPRING, "N2": "C3.B T1.X"}),
    ]


def _accumulator_safety():
    def on_charge(joins="", **more):
        return {"X2": '<accumulator id="X2"/>', "G2": f"{CHARGED} X2.A {joins}", **more}

    def discharge(valve, **more):
        return on_charge("H1.A X7.P", H1=valve, N1="H1.B T1.X", **{**GAUGE, **more})

    hand = '<shut-off-valve id="H1" position="closed"/>'
    safe = discharge(hand)
    apart = {**safe, "G2": f"{CHARGED} C3.A", "C3": '<check-valve id="C3"/>'}
    return [
        ("fail error", "on the charge line", on_charge("X7.P", **GAUGE)),
        ("pass", "discharged by hand", safe),
        ("pass", "discharged by hand over a filter", {
            **safe, "F2": '<filter id="F2"/>', "N1": "H1.B F2.A", "N2": "F2.B T1.X"}),
        ("fail warning", "no gauge", discharge(hand, G2=f"{CHARGED} X2.A H1.A", N3="X7.P")),
        ("fail warning", "no relief", {**apart, "N3": "C3.B X2.A H1.A X7.P"}),
        ("fail warning", "the bypass of a filter is no relief", {
            **apart, "F2": '<filter id="F2" bypass="3 bar"/>', "N3": "C3.B X2.A H1.A X7.P F2.A"}),
        ("pass", "a relief of its own", {
            **apart, "N3": "C3.B X2.A H1.A X7.P R4.P",
            "R4": '<relief-valve id="R4" setting="30 bar"/>',
            "N4": "R4.T T1.Y"}),
        ("fail error", "a discharge that meters", {
            **safe, "N1": "H1.B O1.A", "O1": ORIFICE, "N2": "O1.B T1.X"}),
        ("fail error", "a discharge over a check", {
            **safe, "N1": "H1.B C3.A", "C3": SPRING, "N2": "C3.B T1.X"}),
        ("pass", "discharged by a valve at rest", on_charge(
            "V2.A X7.P", V2=_valve("AT", "A-T"), N1="V2.T T1.X", **GAUGE)),
        ("fail error", "a valve shut at rest", on_charge(
            "V2.A X7.P", V2=_valve("AT", "", "A-T"), N1="V2.T T1.X", **GAUGE)),
        ("fail warning", "shut off by hand", {
            "X2": '<accumulator id="X2"/>', **GAUGE, "H1": hand, "N1": "X2.A H1.A X7.P",
            "G2": f"{CHARGED} H1.B"}),
        ("pass", "shut off by hand and a relief of its own", {
            "X2": '<accumulator id="X2"/>', **GAUGE, "H1": hand, "N1": "X2.A H1.A X7.P R4.P",
            "G2": f"{CHARGED} H1.B", "R4": '<relief-valve id="R4" setting="30 bar"/>', "N4": "R4.T T1.Y"}),
        ("pass", "shut off by a locked valve", {
            "X2": '<accumulator id="X2"/>', **GAUGE, "H1": '<shut-off-valve id="H1" locked="yes"/>',
            "N1": "X2.A H1.A", "G2": f"{CHARGED} H1.B X7.P"}),
        ("fail warning", "the gauge behind a valve by hand", {
            "X2": '<accumulator id="X2"/>', **GAUGE, "H1": '<shut-off-valve id="H1"/>',
            "N1": "X2.A H1.A", "G2": f"{CHARGED} H1.B X7.P"}),
        # No way out at all is no isolation: settled here.
        ("fail error", "joined to nothing", {"X2": '<accumulator id="X2"/>'}),
        ("fail error", "joined to a gauge alone",
         {"X2": '<accumulator id="X2"/>', **GAUGE, "N1": "X2.A X7.P"}),
        ("none", "on the reservoir", {"X2": '<accumulator id="X2"/>', "N1": "X2.A T1.X"}),
        ("fail warning", "a pressure switch for a gauge",
         {**safe, "X7": '<pressure-switch id="X7"/>'}),
        ("fail warning", "a sensor of temperature",
         {**safe, "X7": '<sensor id="X7" measures="temperature"/>'}),
        ("pass", "a sensor of pressure", {**safe, "X7": '<sensor id="X7"/>'}),
        ("pass", "a measuring point beyond the filter", {
            **safe, "X7": '<measuring-point id="X7"/>', "G2": f"{CHARGED} X2.A H1.A",
            "G1": "P2.P R1.P F1.A X7.P"}),
        ("fail error", "discharged in the other position of a valve", on_charge(
            "V2.A X7.P H1.A", V2=_valve("AT", "", "A-T"), N1="V2.T T1.X", H1=hand, N2="H1.B X6.P",
            X6='<gauge id="X6"/>', **GAUGE)),
    ]
