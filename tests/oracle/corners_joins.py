"""Corners of what is joined and how, and of what turns which way; titles as in corners_flow."""

from corners_flow import named

TANK = ('<reservoir id="T1"><port id="S" level="below"/><port id="R" level="below"/>'
        '<port id="D" level="below"/></reservoir>')
SPARE = ('<reservoir id="T1"><port id="S" level="below"/><port id="R" level="below"/>'
         '<port id="D" level="below"/><port id="X" level="below"/></reservoir>')
CHARGED = "F1.B C1.A C2.A"


def circuits(changed, drained, circuit):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `drained` is
    the attributes of a housing drained outside, `circuit` makes one of given elements."""
    groups = {"unconnected-port": _unconnected(drained), "isolated-part": _isolated(),
              "line-function": _line_function(), "reversed-rotation": _rotation()}
    made = {name: text for rule, cases in groups.items()
            for name, text in named(changed, rule, cases).items()}
    return {**made, "unconnected-port-nothing-to-join": circuit(
        "unconnected-port none: an engine alone", {"E1": '<engine id="E1"/>'})}


def _unconnected(drained):
    def plain(**more):
        return {"T1": TANK, **more}

    def in_charge(part, port="A", **more):
        return plain(X1=part, G2=f"{CHARGED} X1.{port}", **more)

    three = f'<motor id="M1" {drained} case-ports="3"/>'
    inside = ('<assembly id="U1"><check-valve id="C3"/><port id="a" of="C3.A"/>'
              '<port id="b" of="C3.B"/></assembly>')
    return [
        ("pass", "all joined", plain()),
        ("fail warning", "a port of the reservoir", {"T1": SPARE}),
        ("fail error", "a port of a motor", plain(HB="P1.B C2.B R3.P R2.T")),
        ("fail error", "the inlet of a pump", plain(S1=None, X1='<gauge id="X1"/>', N1="T1.S X1.P")),
        ("fail error", "the outlet of a relief", plain(
            G3=None, X1='<gauge id="X1"/>', N1="T1.R X1.P")),
        ("fail error", "a housing", plain(L1="P1.L T1.D")),
        ("fail error", "a housing of three ports", plain(M1=three, L1="P1.L T1.D")),
        ("fail warning", "further ports of a housing", plain(M1=three, L1="P1.L M1.L2 T1.D")),
        ("fail warning", "a pilot", plain(P1=(
            f'<pump id="P1" flow-directions="2" variable="yes" pilot-ports="1" {drained}/>'))),
        ("fail warning", "a brake", plain(B1='<brake id="B1"/>', W2="M1 B1")),
        ("fail error", "a spring chamber", plain(
            R1='<relief-valve id="R1" setting="24 bar" drain="external"/>')),
        ("fail error", "an accumulator", plain(X1='<accumulator id="X1"/>')),
        ("pass", "a measuring point", plain(X1='<measuring-point id="X1"/>')),
        ("fail warning", "a gauge", plain(X1='<gauge id="X1"/>')),
        ("fail warning", "a plug", plain(X1='<plug id="X1"/>')),
        ("fail warning", "a breather", plain(X1='<breather id="X1"/>')),
        ("pass", "a plug closes it", {"T1": SPARE, "X1": '<plug id="X1"/>', "N1": "T1.X X1.P"}),
        ("pass", "the free end of a coupling", in_charge('<quick-coupling id="X1"/>')),
        ("pass", "a coupling parted", in_charge(
            '<quick-coupling id="X1" joined="no" valves="none"/>')),
        ("fail error", "a coupling without valves", in_charge(
            '<quick-coupling id="X1" valves="none"/>')),
        ("fail warning", "the end of a flow meter", in_charge('<flow-meter id="X1"/>')),
        ("fail error", "a hand valve", in_charge('<shut-off-valve id="X1"/>')),
        ("fail error", "a port of a directional valve", in_charge(
            '<directional-valve id="X1"><port id="A"/><port id="X"/><position id="a" rest="yes"/>'
            '</directional-valve>')),
        ("fail error", "a rotary joint", in_charge(
            '<rotary-joint id="X1"><port id="A"/><port id="B"/></rotary-joint>')),
        ("fail warning", "a junction", in_charge(
            '<junction id="X1"><port id="A"/><port id="B"/></junction>')),
        ("pass", "a line with one end", in_charge('<shut-off-valve id="X1"/>', N1="X1.B")),
        ("pass", "joined outside an assembly", plain(U1=inside, G2=f"{CHARGED} U1.a", N1="U1.b")),
        ("fail error", "joined on one side of an assembly", plain(U1=inside, G2=f"{CHARGED} U1.a")),
    ]


def _isolated():
    return [
        ("pass", "all joined", {}),
        ("fail warning", "a motor", {"M2": '<motor id="M2"/>'}),
        ("fail warning", "an engine", {"X1": '<engine id="X1"/>'}),
        ("fail warning", "an engine on a shaft of its own", {"X1": '<engine id="X1"/>', "W3": "X1"}),
        ("pass", "a load on a shaft", {"D1": '<load id="D1"/>', "W2": "M1 D1"}),
        ("pass", "a brake on a shaft", {"B1": '<brake id="B1"/>', "W2": "M1 B1"}),
        ("pass", "a brake on a line", {"B1": '<brake id="B1"/>', "G2": f"{CHARGED} B1.Z"}),
        ("fail warning", "a junction",
         {"X1": '<junction id="X1"><port id="a"/><port id="b"/></junction>'}),
        ("fail warning", "a reservoir",
         {"T2": '<reservoir id="T2"><port id="a" level="below"/></reservoir>'}),
        ("fail warning", "a gearbox", {"X1": '<gearbox id="X1"/>'}),
        ("pass", "a gearbox by one end", {"X1": '<gearbox id="X1"/>', "W1": "E1 P1 P2 X1.in"}),
        ("fail warning", "a gearbox on shafts of its own", {
            "X1": '<gearbox id="X1"/>', "W3": "X1.in", "W4": "X1.out"}),
        ("pass", "a breather", {"X1": '<breather id="X1"/>'}),
        ("pass", "a plug", {"X1": '<plug id="X1"/>'}),
        ("pass", "a level indicator", {"X1": '<level-indicator id="X1"/>'}),
        # Instruments are not asked: settled here.
        ("pass", "a gauge", {"X1": '<gauge id="X1"/>'}),
        ("pass", "a tachometer", {"X1": '<tachometer id="X1"/>'}),
        ("pass", "a line with one end", {"X1": '<shut-off-valve id="X1"/>', "N1": "X1.B"}),
        ("fail warning", "a coupling", {"X1": '<quick-coupling id="X1"/>'}),
        ("fail warning", "an accumulator", {"X1": '<accumulator id="X1"/>'}),
    ]


def _line_function():
    sides = {"HA": "P1.A M1.A C1.B R2.P R3.T", "HB": "P1.B M1.B C2.B R3.P R2.T"}
    lines = {**sides, "S1": "T1.S P2.S", "G1": "P2.P R1.P F1.A", "G2": CHARGED, "G3": "R1.T T1.R",
             "L1": "P1.L M1.L T1.D"}

    def saying(function, line, **more):
        """One line of the sound drive that says what it is for."""
        return {line: f'<line id="{line}" function="{function}" joins="{lines[line]}"/>', **more}

    fine = [("suction", "S1"), ("suction", "G2"), ("suction", "G3"), ("drain", "L1"), ("drain", "G3"),
            ("drain", "S1"), ("return", "G3"), ("return", "L1"), ("charge", "G1"), ("charge", "G2"),
            ("working", "HA"), ("working", "G1"), ("working", "G2"), ("pilot", "G2"), ("pilot", "HB"),
            ("pilot", "L1")]
    contradicted = [("suction", "G1"), ("suction", "HA"), ("suction", "L1"), ("drain", "G1"),
                    ("drain", "HB"), ("return", "G1"), ("return", "HA"), ("charge", "HA"),
                    ("charge", "G3"), ("charge", "S1"), ("charge", "L1"), ("working", "S1"),
                    ("working", "G3"), ("working", "L1"), ("pilot", "S1")]
    junction = '<junction id="J1"><port id="a"/><port id="b"/></junction>'
    return [
        ("none", "nothing said", {}),
        *(("pass", f"{function} of {line}", saying(function, line)) for function, line in fine),
        *(("fail warning", f"{function} of {line}", saying(function, line))
          for function, line in contradicted),
        ("fail warning", "beyond a junction", {
            "J1": junction, "G1": "P2.P R1.P J1.a",
            "G4": '<line id="G4" function="drain" joins="J1.b F1.A"/>'}),
        ("pass", "another port of the reservoir", {
            "P3": '<pump id="P3"/>', "N1": "P3.P T1.X", "N2": "P3.S T1.Y", **saying("drain", "L1")}),
        ("fail warning", "of a hose",
         {"G1": '<hose id="G1" function="return" joins="P2.P R1.P F1.A"/>'}),
        ("fail warning", "return of a hand pump", {
            "X1": '<hand-pump id="X1"/>', "N1": '<line id="N1" function="return" joins="X1.P T1.X"/>'}),
        ("fail warning", "on a side in one position", {
            "V1": ('<directional-valve id="V1"><port id="A"/><port id="B"/><position id="a" rest="yes"/>'
                   '<position id="b"><path from="A" to="B"/></position></directional-valve>'),
            "HA": "P1.A V1.A", "N1": ('<line id="N1" function="return" '
                                      'joins="V1.B M1.A C1.B R2.P R3.T"/>')}),
        ("fail warning", "inside an assembly", {
            "U1": ('<assembly id="U1"><pump id="P2"/><line id="Q" function="return" joins="P2.P"/>'
                   '<port id="S" of="P2.S"/><port id="P" of="P2.P"/></assembly>'),
            "P2": None, "W1": "E1 P1 U1/P2", "S1": "T1.S U1.S", "G1": "U1.P R1.P F1.A"}),
    ]


def _rotation():
    def engine(word="clockwise", **more):
        return {"E1": f'<engine id="E1" rotation="{word}"/>', **more}

    def pump(word="clockwise", **more):
        return {"P2": f'<pump id="P2" rotation="{word}"/>', **more}

    def boxes(*senses):
        """Gearboxes one behind the other between the engine and the pumps."""
        made = {f"X{n}": f'<gearbox id="X{n}"' + (f' sense="{sense}"' if sense else "") + "/>"
                for n, sense in enumerate(senses, 1)}
        shafts = {"W1": "E1 X1.in", **{f"W{n + 1}": f"X{n}.out X{n + 1}.in" for n in range(1,
        len(senses))}}
        return {**made, **shafts, "W9": f"X{len(senses)}.out P1 P2"}

    right = {**engine("counter-clockwise"), **pump()}
    same = {**engine(), **pump()}
    reversing = '<electric-motor id="E1" reversing="yes"/>'
    unit = '<pump-motor id="P2" flow-directions="1" rotation="clockwise"/>'
    return [
        ("none", "nothing said", {}),
        ("pass", "the other word", right),
        ("pass", "the other word changed over", {**engine(), **pump("counter-clockwise")}),
        ("fail error", "the same word", same),
        ("none", "said of the pump alone", pump()),
        ("none", "said of the engine alone", engine()),
        ("pass", "the same word and a gearbox opposite", {**same, **boxes("opposite")}),
        ("fail error", "the other word and a gearbox opposite", {**right, **boxes("opposite")}),
        ("pass", "the other word and a gearbox the same", {**right, **boxes("same")}),
        ("inconclusive", "a gearbox of no stated sense", {**right, **boxes(None)}),
        ("pass", "two gearboxes opposite", {**right, **boxes("opposite", "opposite")}),
        ("pass", "three gearboxes one the same", {**right, **boxes("opposite", "same", "opposite")}),
        ("inconclusive", "one gearbox of two not stated", {**right, **boxes("opposite", None)}),
        ("pass", "a gearbox aside", {**right, "X1": '<gearbox id="X1"/>', "W1": "E1 P1 P2 X1.in"}),
        ("pass", "a clutch between", {
            **right, "X1": '<clutch id="X1"/>', "W1": "E1 X1.in", "W9": "X1.out P1 P2"}),
        ("none", "a parted clutch between", {
            **same, "X1": '<clutch id="X1" engaged="no"/>', "W1": "E1 P1 X1.in", "W9": "X1.out P2"}),
        ("none", "a two way pump",
            engine(P1='<pump id="P1" flow-directions="2" rotation="clockwise"/>',
                                          L1="M1.L T1.D")),
        # A pump with one flow direction has its sense whatever words are given: settled here.
        ("fail error", "a motor that reverses and no words", {"E1": reversing}),
        ("fail error", "a motor that reverses and the other word", {**pump(), "E1": reversing.replace(
            "/>", ' rotation="counter-clockwise"/>')}),
        ("fail error", "one prime mover of two", {
            **right, "X1": '<electric-motor id="X1" rotation="clockwise"/>', "W1": "E1 X1 P1 P2"}),
        ("fail error", "one wrong and one not known", {
            **same, "X2": '<electric-motor id="X2" rotation="clockwise"/>', "X1": '<gearbox id="X1"/>',
            "W1": "E1 P1 P2 X1.in", "W9": "X1.out X2"}),
        ("fail error", "a unit", {**engine(), "P2": unit, "S1": "T1.S P2.A", "G1": "P2.B R1.P F1.A"}),
        ("none", "a unit that nothing turns", {
            **engine(), "P2": unit, "S1": "T1.S P2.A", "G1": "P2.B R1.P F1.A", "W1": "E1 P1"}),
        ("pass", "the gearbox turned round", {
            **same, "X1": '<gearbox id="X1" sense="opposite"/>', "W1": "E1 X1.out",
            "W9": "X1.in P1 P2"}),
    ]
