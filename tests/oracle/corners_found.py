"""Corners that the random circuits showed: in each, program and second opinion once differed."""

SUPPLY = ('<engine id="E1"/><reservoir id="T1" breather="yes"><port id="S" level="below"/>'
          '<port id="R" level="below"/></reservoir><pump id="P1"/><pump id="P2"/>'
          '<shaft id="W1" joins="E1 P1 P2"/><line id="S1" joins="T1.S P1.S P2.S"/>')


def _file(title, *parts):
    return "\n".join(['<?xml version="1.0" encoding="UTF-8"?>', f'<circuit format="1" title="{title}">',
                      *parts, "</circuit>", ""])


def _limited_and_not(title, part, first, second, setting=' setting="50 bar"'):
    """A part of 100 bar between the lines of two pumps, one with a relief and one without."""
    return _file(title, SUPPLY, f'<relief-valve id="R1"{setting}/>',
                 '<shut-off-valve id="H1" position="closed"/>', part,
                 f'<line id="N1" joins="P1.P R1.P H1.A X1.{first}"/>',
                 f'<line id="N2" joins="P2.P H1.B X1.{second}"/>', '<line id="N3" joins="R1.T T1.R"/>')


def _halves(title, part, first, second, limit=None):
    """A part of 100 bar between the lines of two pumps that nothing else joins: one of 50 bar, one with
    a limit or without."""
    relief = f'<relief-valve id="R2" setting="{limit} bar"/>' if limit else ""
    return _file(title, SUPPLY, '<relief-valve id="R1" setting="50 bar"/>', relief, part,
                 f'<line id="N1" joins="P1.P R1.P X1.{first}"/>',
                 f'<line id="N2" joins="P2.P X1.{second}{" R2.P" if limit else ""}"/>',
                 f'<line id="N3" joins="R1.T T1.R{" R2.T" if limit else ""}"/>')


def _rating():
    """The highest pressure of a part with ports on several lines."""
    parted = '<quick-coupling id="X1" joined="no" max-pressure="100 bar"/>'
    pump = '<pump id="X1" max-pressure="100 bar"/>'
    return {
        **{f"parted-coupling-{first}{second}": _limited_and_not(
            "both halves count, whichever comes first; pressure-rating X1 fail error",
            parted, first, second) for first, second in ("AB", "BA")},
        **{f"one-port-unknown-{first}{second}": _limited_and_not(
            "that nothing limits one port decides, whatever limits the other; pressure-rating X1 fail error",
            pump, first, second, setting="") for first, second in ("SP", "PS")},
        **{f"halves-in-two-regions-{first}{second}": _halves(
            "nothing limits one half, whichever comes first; pressure-rating X1 fail error", parted,
            first, second) for first, second in ("AB", "BA")},
        **{f"halves-in-two-regions-limited-{bar}": _halves(
            f"the higher of two ceilings; pressure-rating X1 {said}", parted, "B", "A", bar)
           for bar, said in (("100", "pass"), ("101", "fail error"))},
        "coupling-in-two-regions": _file(
            "each region has combinations of its own; pressure-rating X1 fail error neutral drive-forward "
            "drive-reverse overrun-forward overrun-reverse hold lost-signal", SUPPLY,
            '<directional-valve id="V1"><port id="P"/><port id="A"/><position id="shut" rest="yes"/>'
            '<position id="open"><path from="P" to="A"/></position></directional-valve>', parted,
            '<relief-valve id="R1" setting="50 bar"/>', '<line id="N1" joins="P1.P V1.P X1.A"/>',
            '<line id="N2" joins="X1.B R1.P"/>'),
        "short-circuited-at-rest": _file(
            "at rest the pump of a short-circuited loop has no stroke; pressure-rating HA fail error "
            "drive-forward drive-reverse overrun-forward overrun-reverse", '<engine id="E1"/>',
            '<pump id="P1" flow-directions="2"/><motor id="M1"/><shaft id="W1" joins="E1 P1"/>',
            '<shut-off-valve id="H1"/><line id="HA" joins="P1.A M1.A H1.A"/>',
            '<line id="HB" joins="P1.B M1.B H1.B"/>'),
        "short-circuited-in-reverse": _file(
            "its pump delivers at B in reverse, where nothing limits it; pressure-rating HB fail error "
            "drive-reverse overrun-reverse", '<engine id="E1"/><reservoir id="T1"><port id="R"/></reservoir>',
            '<pump id="P1" flow-directions="2"/><motor id="M1"/><shaft id="W1" joins="E1 P1"/>',
            '<shut-off-valve id="H1"/><relief-valve id="R1" setting="50 bar"/>',
            '<line id="HA" joins="P1.A M1.A H1.A R1.P" rating="50 bar"/>',
            '<line id="HB" joins="P1.B M1.B H1.B" rating="50 bar"/><line id="N1" joins="R1.T T1.R"/>'),
    }


def _several_loops():
    """Two loops of which one sets a valve in the charge line of the other."""
    return {"lost-signal-of-two-loops": _file(
        "lost-signal follows on the four states of motion, of both loops on the same one: overrun in "
        "reverse has A of P3 high, which opens the charge line, and A of P5 low; charge-supply side:P5.P "
        "fail error lost-signal",
        '<reservoir id="T1"><port id="S"/><port id="R"/></reservoir>',
        '<pump id="P3" flow-directions="2"/><motor id="M3"/><engine id="E1"/><pump id="P4"/>',
        '<shaft id="W1" joins="E1 P4"/><pump id="P5"/><motor id="M5"/>',
        '<check-valve id="C1"/><unloading-valve id="V1"/>',
        '<line id="HA" joins="P3.A M3.A V1.X"/><line id="HB" joins="P3.B M3.B"/>',
        '<line id="S1" joins="T1.S P4.S"/><line id="G1" joins="P4.P V1.P C1.A"/>',
        '<line id="G2" joins="V1.T T1.R"/><line id="HC" joins="P5.P M5.A C1.B"/>',
        '<line id="HD" joins="P5.S M5.B"/>')}


def circuits(changed, sound):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `sound` has them."""
    round_itself = {"E2": '<engine id="E2"/>', "P3": '<pump id="P3"/>', "W2": "E2 P3",
                    "G2": sound["G2"] + " P3.S P3.P"}
    drives_off = {
        **dict.fromkeys(("E1", "T1", "W1", "P2", "F1", "R1", "R2", "R3", "C1", "C2", "S1", "G1", "G2", "G3",
                         "L1"), ""), "P1": '<pump id="P1"/>', "M1": '<motor id="M1"/>',
        "M2": '<motor id="M2"/>', "D1": '<load id="D1" vehicle="yes"/>', "W2": "M2 D1",
        "X1": '<bypass-valve id="X1"/>', "HA": "P1.P M1.A X1.A", "HB": "P1.S M1.B M2.B", "HC": "X1.B M2.A"}
    return {f"found-{name}": text for name, text in {
        **_rating(), **_several_loops(),
        "pump-round-itself-inlet": changed(
            "a pump whose ports are one line is no charge pump; charge-pump-inlet P3 nothing", **round_itself),
        "pump-round-itself-source": changed("double-source pass: it delivers into none", **round_itself),
        "towing-to-another-motor": changed(
            "towing-bypass fail warning: the bypass valve leads to a vehicle's motor", **drives_off),
        "check-opened-by-the-other-side": changed(
            "charge-backflow pass: what the high side opens leads the low side's oil alone", **{
                "C1": '<check-valve id="C1" pilot="opens"/>', "HB": sound["HB"] + " C1.X"}),
        "check-opened-by-its-own-side": changed(
            "charge-backflow fail error: side A opens its own check", **{
                "C1": '<check-valve id="C1" pilot="opens"/>', "HA": sound["HA"] + " C1.X"}),
        "check-shut-by-its-own-side": changed(
            "with A high, the check C3 parts the motor from the relief; crossport-relief side:P1.A fail error "
            "overrun-reverse hold", **{
                "C3": '<check-valve id="C3" pilot="shuts"/>', "HA": "P1.A C1.B R2.P R3.T C3.B",
                "HC": "C3.A C3.X M1.A"}),
        "check-shut-by-its-own-side-relieved": changed(
            "a relief at the motor, too; crossport-relief side:P1.A pass", **{
                "C3": '<check-valve id="C3" pilot="shuts"/>', "R4": '<relief-valve id="R4" setting="350 bar"/>',
                "HA": "P1.A C1.B R2.P R3.T C3.B", "HC": "C3.A C3.X M1.A R4.P", "HB": sound["HB"] + " R4.T"}),
        "piloted-check-shorted": changed(
            "load-holding fail error: a piloted check with both ends on one line holds no load", **{
                "D1": '<load id="D1" overrunning="yes"/>', "W2": "M1 D1",
                "X1": '<check-valve id="X1" pilot="opens"/>', "HA": sound["HA"] + " X1.A X1.B"}),
    }.items()}
