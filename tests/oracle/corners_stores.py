"""Corners of what charges a loop beside a pump: a reservoir under pressure, an accumulator, the return
of a pump's other consumers. In the base a sealed reservoir feeds both sides over their checks, as in a
drive without charge pump. Titles say what is expected, as in `corners_feeding`."""

NO_PUMP = {"W1": "E1 P1", "P2": None, "R1": None, "F1": None, "S1": None, "G1": None, "G3": None}
FEEDS = {"G2": "T1.S C1.A C2.A"}
VENTED = '<reservoir id="T2" breather="yes"><port id="A" level="below"/></reservoir>'
STORE = '<accumulator id="X1"/>'
MAIN = {"HA": "P1.A M1.A C1.B R2.P R3.T", "HB": "P1.B M1.B C2.B R3.P R2.T"}


def circuits(changed, valve, tank):
    """Name -> text; `changed` makes the sound drive with elements replaced or added, `tank` is its
    reservoir."""
    sealed = tank.replace(' breather="yes"', ' pressure="5 bar"')

    def kept(what, expected, **more):
        return changed(f"{what}; {expected}", **{"T1": sealed, **NO_PUMP, **FEEDS, **more})

    def stored(what, expected, **more):
        """An accumulator on the line of the checks, all else vented."""
        return changed(f"{what}; {expected}", **{
            **NO_PUMP, "X1": STORE, "G2": "X1.A C1.A C2.A", **more})

    def beside(what, expected, **more):
        """The sound drive with an accumulator."""
        return changed(f"{what}; {expected}", **{"X1": STORE, **more})

    fails, low = "fail error", "charge-supply side:P1.A"
    hand = {"H1": '<shut-off-valve id="H1" position="closed"/>', "G2": "H1.B C1.A C2.A", "G4": "T1.S H1.A"}
    opened = {**hand, "H1": '<shut-off-valve id="H1"/>'}
    turned = {"G2": "T1.S C1.A C2.B", "HB": "P1.B M1.B C2.A R3.P R2.T"}
    teed = {"T2": VENTED, "F1": '<filter id="F1"/>', "G4": "T1.S F1.A", "G2": "F1.B C1.A C2.A H1.A",
            "H1": '<shut-off-valve id="H1"/>', "G5": "H1.B T2.A"}
    restricted = {"C1": '<orifice id="C1"/>'}
    at_reservoir = {"HA": "P1.A M1.A C1.B R2.P", "HB": "P1.B M1.B C2.B R3.P", "G3": "R2.T R3.T T1.R"}
    found = {
        "sealed": kept("sealed reservoir", f"{low} pass"),
        "sealed-vented": kept("the same vented", f"{low} {fails}", T1=tank),
        "sealed-breathing": kept("a pressure given, yet it breathes", f"{low} {fails}",
                                 T1=tank.replace('id="T1"', 'id="T1" pressure="5 bar"')),
        "sealed-unstated": kept("no breather, no pressure: vented", f"{low} {fails}",
                                T1=tank.replace(' breather="yes"', "")),
        "sealed-shut": kept("sealed reservoir behind a closed valve", f"{low} {fails}", **hand),
        "sealed-check": kept("sealed reservoir", "make-up-check side:P1.B pass"),
        "sealed-orifice": kept("sealed reservoir over an orifice", f"{low} pass", **restricted),
        "sealed-orifice-check": kept("the same", f"make-up-check side:P1.A {fails}", **restricted),
        "sealed-path": kept("sealed reservoir", "make-up-path C1 pass"),
        "sealed-path-valve": kept("over a hand valve", f"make-up-path C1 {fails}", **opened),
        "sealed-turned": kept("a check turned round", f"charge-backflow side:P1.B {fails}", **turned),
        "sealed-turned-supply": kept("the same", f"charge-supply side:P1.B {fails}", **turned),
        "sealed-backflow": kept("checks as they should be", "charge-backflow side:P1.B pass"),
        "sealed-relief": kept("no pump delivers into its line", "charge-relief loop:P1 not-applicable"),
        "sealed-drive": kept("nothing need turn it", "charge-pump-drive loop:P1 not-applicable"),
        "sealed-inlet": kept("no charge pump", "charge-pump-inlet circuit not-applicable"),
        "sealed-keeps": kept("its line is shut", "charge-vented loop:P1 pass"),
        "sealed-teed": kept("its line teed to a vented reservoir", f"charge-vented loop:P1 {fails}",
                            **teed),
        "sealed-teed-supply": kept("the same", f"{low} {fails}", **teed),
        "sealed-joined": kept("one line into both is one vented reservoir", f"{low} {fails}",
                              T2=VENTED, G2="T1.S C1.A C2.A T2.A"),
        "sealed-sprung": kept("to a vented one over a spring", "charge-vented loop:P1 pass", T2=VENTED,
                              G2="T1.S C1.A C2.A X2.A", G4="X2.B T2.A",
                              X2='<check-valve id="X2" opening-pressure="8 bar"/>'),
        "sealed-relieved": kept("reliefs into the sealed reservoir", "crossport-relief side:P1.A pass",
                                **at_reservoir),
        "sealed-relieved-filter": kept("the same over a filter", "crossport-relief side:P1.A pass", **{
            **at_reservoir, "G3": "R2.T R3.T X2.A", "G4": "X2.B T1.R", "X2": '<filter id="X2"/>'}),
        "sealed-relieved-valve": kept("the same over a hand valve", f"crossport-relief side:P1.A {fails}", **{
            **at_reservoir, "G3": "R2.T R3.T X2.A", "G4": "X2.B T1.R", "X2": '<shut-off-valve id="X2"/>'}),
        "vented-relieved": changed(f"reliefs into a vented one; crossport-relief side:P1.A {fails}", **{
            **at_reservoir, "G3": "R1.T R2.T R3.T T1.R"}),
        "sealed-relieved-idle": changed(
            f"reliefs into a sealed one that charges nothing; crossport-relief side:P1.A {fails}", **{
                **at_reservoir, "T1": sealed, "G3": "R1.T R2.T R3.T T1.R"}),
        "sealed-unfiltered": kept("nothing filters it", f"filtration loop:P1 {fails}"),
        "sealed-filtered": kept("filtered", "filtration loop:P1 pass", F1='<filter id="F1"/>',
                                G2="F1.B C1.A C2.A", G4="T1.S F1.A"),
        "sealed-rating": kept("the low side has the gas pressure: 350 and 5 bar",
                              f"pressure-rating HA {fails}",
                              HA=f'<line id="HA" joins="{MAIN["HA"]}" rating="354 bar"/>'),
        "sealed-rating-bears": kept("the same, just enough", "pressure-rating HA pass",
                                    HA=f'<line id="HA" joins="{MAIN["HA"]}" rating="355 bar"/>'),
        "sealed-behind-pump": changed("charge pump into a sealed reservoir that feeds; "
                                      f"{low} pass", T1=sealed, G1="P2.P R1.P T1.X",
                                      F1=None, G2="T1.Y C1.A C2.A"),
        "sealed-beside-pump": changed("charge line open to a sealed reservoir; "
                                      "charge-vented loop:P1 pass", T1=sealed, H1='<shut-off-valve id="H1"/>',
                                      G2="F1.B C1.A C2.A H1.A", G4="H1.B T1.X"),
        "vented-beside-pump": changed("the same, vented; "
                                      f"charge-vented loop:P1 {fails}", H1='<shut-off-valve id="H1"/>',
                                      G2="F1.B C1.A C2.A H1.A", G4="H1.B T1.X"),
        "sealed-draws": changed("charge pump out of a sealed reservoir; charge-relief loop:P1 pass",
                                T1=sealed),
        "sealed-draws-backflow": changed("flushed over a cooler into it; charge-backflow side:P1.A pass", **{
            "T1": sealed, "V1": '<flushing-valve id="V1"/>', "HA": f"{MAIN['HA']} V1.A",
            "HB": f"{MAIN['HB']} V1.B", "K1": '<cooler id="K1"/>', "G4": "V1.F K1.A", "G5": "K1.B T1.X"}),
        "sealed-section": kept("a motor cut off and fed", "charge-supply side:M1.A pass", V1=valve(
            "V1", ("A1", "A2", "B1", "B2"), "on: A1-A2 B1-B2", "off*:"), N1="P1.A V1.A1", N2="P1.B V1.B1",
            HA="V1.A2 M1.A C1.B R2.P R3.T", HB="V1.B2 M1.B C2.B R3.P R2.T"),
        "store": stored("accumulator alone", f"{low} fail note"),
        "store-check": stored("accumulator alone", "make-up-check side:P1.A pass"),
        "store-path": stored("accumulator alone", "make-up-path C1 pass"),
        "store-shut": stored("behind a closed valve", f"{low} {fails}", **{
            **hand, "G4": "X1.A H1.A"}),
        "store-relief": stored("no pump delivers into its line", "charge-relief loop:P1 not-applicable"),
        "store-turned": stored("a check turned round", f"charge-backflow side:P1.B {fails}",
                               G2="X1.A C1.A C2.B", HB=turned["HB"]),
        "store-vented": stored("open to the reservoir", f"charge-vented loop:P1 {fails}",
                               G2="X1.A C1.A C2.A H1.A", H1='<shut-off-valve id="H1"/>', G4="H1.B T1.X"),
        "store-vented-supply": stored("the same", f"{low} {fails}",
                                      G2="X1.A C1.A C2.A H1.A", H1='<shut-off-valve id="H1"/>',
                                      G4="H1.B T1.X"),
        "store-keeps": stored("shut in", "charge-vented loop:P1 pass"),
        "store-beside": beside("on the charge line", f"{low} pass", G2="F1.B C1.A C2.A X1.A"),
        "store-behind-check": beside("behind a check, the pump's line vented", f"{low} fail note",
                                     G1="P2.P R1.P F1.A T1.X", G2="F1.B X2.A", G4="X2.B X1.A C1.A C2.A",
                                     X2='<check-valve id="X2"/>'),
        "store-behind-check-vented": beside(
            "the same: the pump's line decides", f"charge-vented loop:P1 {fails}",
            G1="P2.P R1.P F1.A H1.A", H1='<shut-off-valve id="H1"/>', G5="H1.B T1.X",
            G2="F1.B X2.A", G4="X2.B X1.A C1.A C2.A", X2='<check-valve id="X2"/>'),
        "store-on-side": stored("on a side that nothing else feeds", f"{low} fail note", G2=None,
                                HA=f"{MAIN['HA']} X1.A"),
        "store-on-side-other": stored("the other side", f"charge-supply side:P1.B {fails}", G2=None,
                                      HA=f"{MAIN['HA']} X1.A"),
        "store-on-side-backflow": beside("on a side of the sound drive", "charge-backflow side:P1.A pass",
                                         HA=f"{MAIN['HA']} X1.A"),
        "store-at-side-backflow": beside("behind a hand valve at a side", "charge-backflow side:P1.A pass",
                                         HA=f"{MAIN['HA']} H1.A", H1='<shut-off-valve id="H1"/>',
                                         G4="H1.B X1.A"),
        "store-at-side-rating": beside(
            "the same: no ceiling of the charge line", "pressure-rating G2 pass",
            HA=f"{MAIN['HA']} H1.A", H1='<shut-off-valve id="H1"/>', G4="H1.B X1.A",
            G2='<line id="G2" joins="F1.B C1.A C2.A" rating="24 bar"/>'),
        "store-switched-backflow": beside(
            "filled over a check, emptied over a valve", "charge-backflow side:P1.A pass",
            HA=f"{MAIN['HA']} V1.P X2.A", V1=valve("V1", "PA", "shut*:", "open: P-A"),
            X2='<check-valve id="X2"/>', G4="X2.B V1.A X1.A"),
        # A pump's other consumers: their oil comes past them at rest, or not.
        "return-of-steering": changed(
            f"return of an open centre behind a back-pressure valve; {low} pass", G1="P2.P V1.P",
            V1=valve("V1", "PTAB", "centre*: P-T", "left: P-A B-T", "right: P-B A-T"),
            X1='<cylinder id="X1" area-ratio="1" rods="2"/>', X2='<relief-valve id="X2" setting="100 bar"/>',
            X3='<relief-valve id="X3" setting="100 bar"/>', N1="V1.A X1.A X2.P X3.T",
            N2="V1.B X1.B X2.T X3.P", N3="V1.T R1.P F1.A"),
        "return-not-held-up": changed(
            f"the same without the back-pressure valve; {low} {fails}", G1="P2.P V1.P", R1=None, G3=None,
            V1=valve("V1", "PTAB", "centre*: P-T", "left: P-A B-T", "right: P-B A-T"),
            X1='<cylinder id="X1" area-ratio="1" rods="2"/>', X2='<relief-valve id="X2" setting="100 bar"/>',
            X3='<relief-valve id="X3" setting="100 bar"/>', N1="V1.A X1.A X2.P X3.T",
            N2="V1.B X1.B X2.T X3.P", N3="V1.T F1.A T1.X"),
    }
    return {f"stores-{name}": text for name, text in found.items()}
