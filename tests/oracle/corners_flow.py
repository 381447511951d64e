"""Corners of flushing, cooling, drains, suction lines and reservoirs.

Each title begins with the rule and what it must say ("none": nothing): `corners_test.py` holds
the second opinion to it. What the words of a rule leave open is marked "settled here".
"""

FLUSHING = {"V1": '<flushing-valve id="V1"/>', "R4": '<relief-valve id="R4" setting="18 bar"/>',
            "HA": "P1.A M1.A C1.B R2.P R3.T V1.A", "HB": "P1.B M1.B C2.B R3.P R2.T V1.B",
            "N1": "V1.F R4.P", "N2": "R4.T T1.X"}
INSIDE = {"P1": '<pump id="P1" flow-directions="2"/>', "M1": '<motor id="M1"/>', "L1": None}
ORIFICE = '<orifice id="O1"/>'
SPRING = '<check-valve id="C3" opening-pressure="5 bar"/>'
#: A second loop, without charge oil.
SECOND = {"P3": '<pump id="P3" flow-directions="2"/>', "M2": '<motor id="M2"/>',
          "W1": "E1 P1 P2 P3", "HC": "P3.A M2.A", "HD": "P3.B M2.B"}

#: The same on a line of the first: their common low line.
COMMON = {**{name: what for name, what in SECOND.items() if name != "HD"},
          "HB": FLUSHING["HB"] + " P3.B M2.B"}


def named(changed, rule, cases):
    """Name -> text of cases (what the rule says, words, changes of the sound drive)."""
    return {f"{rule}-{words.replace(' ', '-')}": changed(f"{rule} {said}: {words}", **changes)
            for said, words, changes in cases}


def circuits(changed, drained):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `drained` is
    the attributes of a housing drained outside."""
    groups = {"loop-flushing": _loop_flushing(), "flushing-side": _flushing_side(),
              "cooling": _cooling(), "filter-in-drain": _filter_in_drain(drained),
              "case-drain-return": _case_drain_return(), "suction-shut-off": _suction_shut_off(),
              "reservoir-balance": _reservoir_balance(drained)}
    return {name: text for rule, cases in groups.items()
            for name, text in named(changed, rule, cases).items()}


def _side_a(port, **more):
    """Something on side A."""
    return {"HA": f"P1.A M1.A C1.B R2.P R3.T {port}", **more}


def _loop_flushing():
    two_positions = ('<directional-valve id="V5"><port id="A"/><port id="T"/>'
                     '<position id="open" rest="yes"><path from="A" to="T"/></position>'
                     '<position id="shut"/></directional-valve>')
    return [
        ("pass", "over a relief to the reservoir", FLUSHING),
        ("pass", "into a housing", {**FLUSHING, "N2": None, "L1": "P1.L M1.L R4.T T1.D"}),
        ("fail note", "nothing but leakage", {}),
        ("fail note", "outlet that leads nowhere", {**FLUSHING, "N1": None, "N2": None}),
        ("fail note", "outlet joined to the other side", {
            **FLUSHING, "N1": None, "N2": None, "HB": f"{FLUSHING['HB']} V1.F"}),
        ("pass", "an orifice to the reservoir", _side_a("O1.A", O1=ORIFICE, N1="O1.B T1.X")),
        ("fail note", "a sprung check to the reservoir", _side_a("C3.A", C3=SPRING, N1="C3.B T1.X")),
        ("fail note", "a relief to the reservoir", _side_a(
            "R4.P", R4='<relief-valve id="R4" setting="300 bar"/>', N1="R4.T T1.X")),
        ("pass", "an orifice and a sprung check", _side_a(
            "O1.A", O1=ORIFICE, C3=SPRING, N1="O1.B C3.A", N2="C3.B T1.X")),
        ("fail note", "an orifice between the sides", _side_a(
            "O1.A", O1=ORIFICE, HB="P1.B M1.B C2.B R3.P R2.T O1.B")),
        ("fail note", "an orifice and a check into the other side", _side_a(
            "O1.A", O1=ORIFICE, C3=SPRING, N1="O1.B C3.A", HB="P1.B M1.B C2.B R3.P R2.T C3.B")),
        ("pass", "an orifice into the charge line", _side_a(
            "O1.A", O1=ORIFICE, G2="F1.B C1.A C2.A O1.B")),
        ("fail note", "an orifice and a motor", _side_a(
            "O1.A", O1=ORIFICE, M2='<motor id="M2"/>', N1="O1.B M2.A", N2="M2.B T1.X")),
        ("fail note", "shut in one of two positions", _side_a(
            "O1.A", O1=ORIFICE, V5=two_positions, N1="O1.B V5.A", N2="V5.T T1.X")),
        ("none", "a loop short circuited", {"HA": "P1.A M1.A C1.B R2.P R3.T P1.B M1.B C2.B R3.P R2.T",
                                            "HB": None}),
        ("fail note", "one loop of two", {**FLUSHING, **SECOND}),
        ("pass", "an open valve by hand to an orifice", _side_a(
            "H1.A", H1='<shut-off-valve id="H1"/>', O1=ORIFICE, N1="H1.B O1.A", N2="O1.B T1.X")),
        ("fail note", "a valve drawn shut", _side_a(
            "H1.A", H1='<shut-off-valve id="H1" position="closed"/>', N1="H1.B T1.X")),
        ("pass", "between motors in series is no exit", {
            **FLUSHING, "M2": '<motor id="M2"/>', "N3": "M1.B M2.A",
            "HB": "P1.B M2.B C2.B R3.P R2.T V1.B"}),
        ("fail note", "from between motors in series", {
            "M2": '<motor id="M2"/>', "N3": "M1.B M2.A O1.A", "O1": ORIFICE, "N4": "O1.B T1.X",
            "HB": "P1.B M2.B C2.B R3.P R2.T"}),
    ]


def _flushing_side():
    one_way = {"P1": '<pump id="P1" closed-loop="yes"/>', "L1": "M1.L T1.D",
               "HA": "P1.P M1.A C1.B R2.P R3.T V1.A", "HB": "P1.S M1.B C2.B R3.P R2.T V1.B"}
    return [
        ("pass", "an inlet on each side", FLUSHING),
        ("pass", "open centre", {**FLUSHING, "V1": '<flushing-valve id="V1" centre="open"/>'}),
        ("pass", "a pump with one flow direction", {**FLUSHING, **one_way}),
        ("pass", "a load that pulls one way", {**FLUSHING, "W2": "M1 D1", "D1": (
            '<load id="D1" overrunning="yes" overrunning-sense="reverse"/>')}),
        ("fail error", "both inlets on one side", {
            **FLUSHING, "HA": f"{FLUSHING['HA']} V1.B", "HB": "P1.B M1.B C2.B R3.P R2.T"}),
        ("fail error", "inlet and outlet changed over", {
            **FLUSHING, "HB": "P1.B M1.B C2.B R3.P R2.T V1.F", "N1": "V1.B R4.P"}),
        ("none", "no inlet on a side", {
            **FLUSHING, "HA": "P1.A M1.A C1.B R2.P R3.T", "HB": "P1.B M1.B C2.B R3.P R2.T",
            "G2": "F1.B C1.A C2.A V1.A", "L1": "P1.L M1.L T1.D V1.B"}),
        ("fail error", "an inlet behind an orifice", {
            **FLUSHING, "HA": "P1.A M1.A C1.B R2.P R3.T O1.A", "O1": ORIFICE, "N3": "O1.B V1.A"}),
        ("fail error", "an inlet behind an open hand valve", {
            **FLUSHING, "HA": "P1.A M1.A C1.B R2.P R3.T H1.A", "N3": "H1.B V1.A",
            "H1": '<shut-off-valve id="H1"/>'}),
        ("pass", "between the sides of one of two loops that share a line", {**FLUSHING, **COMMON}),
        ("pass", "two valves where two loops share a line", {
            **FLUSHING, **COMMON, "V2": '<flushing-valve id="V2"/>', "HC": "P3.A M2.A V2.A",
            "HB": f"{COMMON['HB']} V2.B", "N1": "V1.F R4.P V2.F"}),
        ("fail error", "between the lines that two loops do not share", {
            **FLUSHING, **COMMON, "HB": "P1.B M1.B C2.B R3.P R2.T P3.B M2.B", "HC": "P3.A M2.A V1.B"}),
        ("fail error", "one inlet on the line that two loops share", {
            **FLUSHING, **COMMON, "HA": "P1.A M1.A C1.B R2.P R3.T"}),
        ("fail error", "an inlet on each of two loops", {
            **FLUSHING, **SECOND, "HB": "P1.B M1.B C2.B R3.P R2.T", "HC": "P3.A M2.A V1.B"}),
        ("fail error", "one inlet joined to nothing", {
            **FLUSHING, "HB": "P1.B M1.B C2.B R3.P R2.T"}),
    ]


def _cooling():
    cooler = '<cooler id="K1"/>'
    in_drain = {"K1": cooler, "L1": "P1.L M1.L K1.A", "L2": "K1.B T1.D"}
    return [
        ("fail note", "no cooler", {}),
        ("pass", "in the drain", in_drain),
        ("pass", "in the drain turned round", {**in_drain, "L1": "P1.L M1.L K1.B", "L2": "K1.A T1.D"}),
        ("pass", "in a side", {"K1": cooler, "HA": "P1.A K1.A C1.B R2.P R3.T", "N1": "K1.B M1.A"}),
        ("pass", "in the charge line", {"K1": cooler, "G2": "F1.B K1.A", "G4": "K1.B C1.A C2.A"}),
        ("fail note", "in the return of the charge relief", {
            "K1": cooler, "G3": "R1.T K1.A", "G4": "K1.B T1.R"}),
        ("pass", "behind the flushing valve alone", {
            **FLUSHING, **INSIDE, "K1": cooler, "N2": "R4.T K1.A", "N3": "K1.B T1.X"}),
        ("fail note", "in a circuit of its own at the reservoir", {
            "K1": cooler, "P3": '<pump id="P3"/>', "W1": "E1 P1 P2 P3", "S2": "T1.X P3.S",
            "N1": "P3.P K1.A", "N2": "K1.B T1.Y"}),
        # The reservoir is reached, and the cooler's inlet stands on it: settled here.
        ("pass", "in the suction line", {"K1": cooler, "S1": "T1.S K1.A", "S2": "K1.B P2.S"}),
        ("pass", "behind another motor", _side_a(
            "O1.A", O1=ORIFICE, M2='<motor id="M2"/>', K1=cooler, N1="O1.B M2.A", N2="M2.B K1.A",
            N3="K1.B T1.X")),
        ("fail note", "behind a valve drawn shut", {
            "K1": cooler, "H1": '<shut-off-valve id="H1" position="closed"/>',
            "L1": "P1.L M1.L H1.A T1.D", "L2": "H1.B K1.A", "L3": "K1.B T1.X"}),
        ("fail note", "one loop of two", {**in_drain, **SECOND}),
        ("pass", "a relief before it", {
            "K1": cooler, "R4": '<relief-valve id="R4" setting="2 bar"/>', "L1": "P1.L M1.L R4.P",
            "L2": "R4.T K1.A", "L3": "K1.B T1.D"}),
    ]


def _filter_in_drain(drained):
    def through(attributes="", ends="AB", **more):
        return {"F2": f'<filter id="F2"{attributes}/>', "L1": f"P1.L M1.L F2.{ends[0]}",
                "L2": f"F2.{ends[1]} T1.D", **more}

    unknown = '<motor id="M1" drain="external"/>'
    return [
        ("none", "in the charge line", {}),
        ("fail warning", "without bypass", through()),
        ("pass", "bypass below the limit", through(' bypass="1 bar"')),
        ("pass", "bypass at the limit", through(' bypass="3 bar"')),
        ("fail warning", "bypass above the limit", through(' bypass="3.1 bar"')),
        ("fail warning", "above the lower of two limits", through(' bypass="2.5 bar"', M1=(
            '<motor id="M1" drain="external" case-pressure="2 bar"/>'))),
        ("inconclusive", "a limit not given", through(' bypass="1 bar"', M1=unknown)),
        ("fail warning", "above the limit of one and another not given",
         through(' bypass="5 bar"', M1=unknown)),
        ("fail warning", "no bypass and no limit", through(M1=unknown)),
        ("fail warning", "turned round", through(ends="BA")),
        ("none", "turned round and one way", through(' one-way="yes"', ends="BA")),
        ("fail warning", "behind a valve drawn shut", {
            "F2": '<filter id="F2"/>', "H1": '<shut-off-valve id="H1" position="closed"/>',
            "L1": "P1.L M1.L H1.A", "L3": "H1.B F2.A", "L2": "F2.B T1.D"}),
        ("none", "beside a plain line", {
            "F2": '<filter id="F2"/>', "L1": "P1.L M1.L T1.D F2.A", "L2": "F2.B T1.X"}),
        ("none", "at the reservoir",
         {"F2": '<filter id="F2"/>', "S1": "T1.S F2.A", "S2": "F2.B P2.S"}),
        ("fail warning", "behind a relief", {
            "F2": '<filter id="F2"/>', "R4": '<relief-valve id="R4" setting="1 bar"/>',
            "L1": "P1.L M1.L R4.P", "L2": "R4.T F2.A", "L3": "F2.B T1.D"}),
        ("none", "behind a reducing valve", {
            "F2": '<filter id="F2"/>', "X1": '<reducing-valve id="X1" setting="1 bar"/>',
            "L1": "P1.L M1.L X1.P", "L2": "X1.A F2.A", "L3": "F2.B T1.D"}),
        ("fail warning", "over the check in a charge relief", {
            "R1": '<relief-valve id="R1" setting="24 bar" make-up-check="yes"/>', "G3": None,
            "L1": "P1.L M1.L R1.T C3.A", "C3": SPRING, "L2": "C3.B T1.D"}),
        ("pass", "other units", through(' bypass="40 psi"', P1=(
            f'<pump id="P1" flow-directions="2" {drained}/>'))),
        ("none", "a strainer",
         {"F2": '<strainer id="F2"/>', "L1": "P1.L M1.L F2.A", "L2": "F2.B T1.D"}),
    ]


def _tank(**levels):
    """The reservoir with the levels of its ports; "none" leaves one out."""
    ports = {**dict.fromkeys(("S", "R", "D", "X", "Y"), "below"), **levels}
    return '<reservoir id="T1">' + "".join(
        f'<port id="{port}"' + (f' level="{level}"' if level else "") + "/>"
        for port, level in ports.items()) + "</reservoir>"


def _case_drain_return():
    into_suction = {"S1": "T1.S P2.S P1.L M1.L", "L1": None}
    cooled = {"K1": '<cooler id="K1"/>', "L1": "P1.L M1.L K1.A"}
    return [
        ("pass", "below the level", {}),
        ("fail warning", "above the level", {"T1": _tank(D="above")}),
        ("inconclusive", "no level given", {"T1": _tank(D=None)}),
        ("pass", "another port above", {"T1": _tank(X="above"), "L2": "R1.T T1.X", "G3": None}),
        ("fail warning", "into a suction line", into_suction),
        # The missing level could change nothing: settled here.
        ("fail warning", "into a suction line and no level", {**into_suction, "T1": _tank(S=None)}),
        ("fail warning", "over a cooler into a suction line", {**cooled, "S1": "T1.S P2.S K1.B"}),
        ("pass", "a strainer before the pump", {
            "X1": '<strainer id="X1"/>', "S1": "T1.S X1.A P1.L M1.L", "S2": "X1.B P2.S", "L1": None}),
        ("pass", "one of two ends above", {
            "T1": _tank(X="above"), "O1": ORIFICE, "L1": "P1.L M1.L1 T1.D", "L2": "M1.L2 O1.A",
            "L3": "O1.B T1.X", "M1": '<motor id="M1" drain="external" case-ports="2"/>'}),
        ("pass", "a reservoir port that no drain gets to is above", {
            "T1": _tank(X="above"), "C3": SPRING, "L2": "C3.A T1.X", "L1": "P1.L M1.L T1.D C3.B"}),
        ("fail warning", "over a relief", {
            "T1": _tank(D="above"), "R4": '<relief-valve id="R4" setting="1 bar"/>',
            "L1": "P1.L M1.L R4.P", "L2": "R4.T T1.D"}),
        # A pipe that is open to a reservoir is passed, the reservoir is not: settled here.
        ("pass", "past a pipe that is open to a reservoir", {
            "T1": _tank(X="above"), "H1": '<shut-off-valve id="H1"/>', "L1": "P1.L M1.L T1.D H1.A",
            "L2": "H1.B T1.X"}),
        ("none", "drained inside", INSIDE),
        ("none", "a drain joined to nothing", {"L1": "P1.L M1.L"}),
        ("none", "behind a reducing valve", {
            "X1": '<reducing-valve id="X1" setting="1 bar"/>', "L1": "P1.L M1.L X1.P",
            "L2": "X1.A T1.D"}),
        ("pass", "a hand pump draws there", {
            "X1": '<hand-pump id="X1"/>', "L1": "P1.L M1.L T1.D X1.S"}),
        ("fail warning", "behind a valve drawn shut", {
            "T1": _tank(X="above"), "H1": '<shut-off-valve id="H1" position="closed"/>',
            "L1": "P1.L M1.L H1.A", "L2": "H1.B T1.X"}),
    ]


def _suction_shut_off():
    def valve(attributes="", kind="shut-off-valve", **more):
        return {"H1": f'<{kind} id="H1"{attributes}/>', "S1": "T1.S H1.A", "S2": "H1.B P2.S", **more}

    switched = valve(' switched="yes"')
    return [
        ("none", "no valve", {}),
        ("fail error", "open", valve()),
        ("fail error", "turned round", {**valve(), "S1": "T1.S H1.B", "S2": "H1.A P2.S"}),
        ("pass", "locked open", valve(' locked="yes"')),
        ("fail error", "locked shut", valve(' locked="yes" position="closed"')),
        ("fail error", "a switch and no interlock", switched),
        ("pass", "a switch that prevents the start", {
            **switched, "I1": '<interlock when="H1 closed" prevents="start E1"/>'}),
        ("fail error", "a switch that prevents it where open", {
            **switched, "I1": '<interlock when="H1 open" prevents="start E1"/>'}),
        ("fail error", "a switch that prevents a position", {
            **switched, "I1": '<interlock when="H1 closed" prevents="V5.b"/>', "V5": (
                '<directional-valve id="V5"><port id="A"/><port id="B"/><position id="a" rest="yes"/>'
                '<position id="b"><path from="A" to="B"/></position></directional-valve>')}),
        ("none", "in the charge line", {
            "H1": '<shut-off-valve id="H1"/>', "G2": "F1.B H1.A", "G4": "H1.B C1.A C2.A"}),
        # The way back over the valve itself does not count: settled here.
        ("none", "on a branch that ends dead", {
            "H1": '<shut-off-valve id="H1"/>', "S1": "T1.S X1.A", "S2": "X1.B P2.S H1.A",
            "X1": '<strainer id="X1"/>', "S3": "H1.B"}),
        ("fail error", "a coupling", valve(kind="quick-coupling")),
        ("none", "a coupling parted", valve(' joined="no"', kind="quick-coupling")),
        ("none", "a coupling without valves", valve(' valves="none"', kind="quick-coupling")),
        ("none", "a valve for towing", valve(' position="open"', kind="bypass-valve")),
        ("fail error", "behind strainer check and orifice", {
            "H1": '<shut-off-valve id="H1"/>', "X1": '<strainer id="X1"/>', "O1": ORIFICE,
            "C3": '<check-valve id="C3"/>', "S1": "T1.S X1.A", "S2": "X1.B C3.A", "S3": "C3.B H1.A",
            "S4": "H1.B O1.A", "S5": "O1.B P2.S"}),
        ("none", "behind a check turned round", {
            "H1": '<shut-off-valve id="H1"/>', "C3": '<check-valve id="C3"/>',
            "S1": "T1.S C3.B", "S2": "C3.A H1.A", "S4": "H1.B P2.S"}),
        ("none", "in a drain", {
            "H1": '<shut-off-valve id="H1"/>', "L1": "P1.L M1.L H1.A", "L2": "H1.B T1.D"}),
        ("fail error", "two valves one locked", {
            **valve(' locked="yes"'), "S2": "H1.B H2.A", "S3": "H2.B P2.S",
            "H2": '<shut-off-valve id="H2"/>'}),
        ("none", "before a hand pump", {
            "H1": '<shut-off-valve id="H1"/>', "X1": '<hand-pump id="X1"/>', "S2": "T1.X H1.A",
            "S3": "H1.B X1.S"}),
    ]


def _reservoir_balance(drained):
    second = '<reservoir id="T2"><port id="A" level="below"/><port id="B" level="below"/></reservoir>'
    apart = {"T2": second, "L1": "P1.L M1.L T2.A"}
    back = {**apart, "P3": '<pump id="P3"/>', "S2": "T2.B P3.S", "N1": "P3.P T1.D"}
    return [
        ("pass", "one reservoir", {}),
        ("fail error", "drains into another", apart),
        ("pass", "joined by a line", {**apart, "N1": "T2.B T1.X"}),
        ("pass", "joined over a valve drawn shut", {
            **apart, "N1": "T2.B H1.A", "N2": "H1.B T1.X",
            "H1": '<shut-off-valve id="H1" position="closed"/>'}),
        ("fail error", "a check between them the wrong way", {
            **apart, "N1": "T2.B C3.B", "N2": "C3.A T1.X", "C3": '<check-valve id="C3"/>'}),
        ("pass", "a check between them", {
            **apart, "N1": "T2.B C3.A", "N2": "C3.B T1.X", "C3": '<check-valve id="C3"/>'}),
        ("pass", "pumped back", {**back, "W1": "E1 P1 P2 P3"}),
        ("fail error", "a pump that stands", back),
        ("fail error", "a hand pump", {**back, "P3": '<hand-pump id="P3"/>'}),
        ("pass", "another without a line", {"T2": second}),
        ("pass", "a motor with one flow direction between them", {
            **apart, "M2": '<motor id="M2" flow-directions="1"/>', "N1": "T1.X M2.A",
            "N2": "M2.B T2.B"}),
        ("pass", "a pump that stands and is drained into another", {
            "T2": second, "P3": f'<pump id="P3" {drained}/>', "S2": "T1.X P3.S", "L2": "P3.L T2.A"}),
        ("fail error", "a pump that turns and is drained into another", {
            "T2": second, "P3": f'<pump id="P3" {drained}/>', "S2": "T1.X P3.S", "L2": "P3.L T2.A",
            "N1": "P3.P T1.Y", "W1": "E1 P1 P2 P3"}),
        ("pass", "a two way pump that stands", {
            **apart, "P3": '<pump id="P3" flow-directions="2"/>', "N1": "T1.X P3.A",
            "N2": "P3.B T2.B"}),
        ("pass", "a relief each way", {
            **apart, "R4": '<relief-valve id="R4" setting="2 bar"/>', "N1": "T2.B R4.P",
            "N2": "R4.T T1.X"}),
    ]
