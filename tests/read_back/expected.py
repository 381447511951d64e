"""What the shape of a component must show, from its kind and its attributes."""

import kinds

# Which port letter belongs to which part of the shape, where the kind fixes it.
ROLES = {
    "check-valve": {"in": "A", "out": "B", "pilot": "X"}, "filter": {"in": "A", "out": "B"},
    "cooler": {"in": "A", "out": "B"},
    "shuttle-valve": {"out": "C"},
    "relief-valve": {"in": "P", "out": "T", "drain": "Y"},
    "sequence-valve": {"in": "P", "out": "A", "pilot": "X", "drain": "Y"},
    "counterbalance-valve": {"in": "B", "out": "A", "pilot": "X", "drain": "Y"},
    "unloading-valve": {"in": "P", "out": "T", "pilot": "X", "drain": "Y"},
    "reducing-valve": {"in": "P", "out": "A", "reduced": "A", "return": "T", "drain": "Y"},
    "priority-valve": {"in": "P", "first": "CF", "rest": "EF", "sensed": "LS"},
    "throttle-check": {"in": "A", "out": "B"}, "flow-control": {"in": "A", "out": "B"},
    "flow-divider": {"common": "P"},
    "hand-pump": {"top": "P", "bottom": "S"}, "strainer": {"in": "A", "out": "B"},
    "cylinder": {"cap": "A", "rod": "B"}, "accumulator": {"oil": "A"}, "clutch": {"release": "Z"},
    "thermostatic-bypass": {"in": "A", "cooler": "B", "past": "C"},
}


def _yes(value):
    return "yes" if value else "no"


def _check(component, is_there):
    """A check beside a valve, with a spring where its opening pressure is given."""
    if not is_there:
        return "no"
    return "spring" if component.attributes.get("check-opening-pressure") else "yes"


MACHINES = ("pump", "motor", "pump-motor")
# What stands on the end of a line, with one port.
ENDS = ("gauge", "thermometer", "level-indicator", "sensor", "pressure-switch", "breather", "plug",
        "measuring-point")
PRESSURE_VALVES = ("relief-valve", "sequence-valve", "counterbalance-valve", "unloading-valve")


def pressure_valve_options(component):
    """PV1 to PV5: which pressure opens it, where its spring chamber drains, what stands beside."""
    get, kind = component.attributes.get, component.kind
    external = get("pilot", "external" if kind == "counterbalance-valve" else "internal")
    pilots = {"relief-valve": ["in"], "unloading-valve": ["X"],
              "sequence-valve": ["X"] if external == "external" else ["in"],
              "counterbalance-valve": ["in", "X"] if external == "external" else ["in"]}[kind]
    return {"open-at-rest": "no", "pilots": pilots, "operation": get("operation", "direct"),
            "check": _check(component, kind == "counterbalance-valve" or get("check") == "yes"
                            or get("make-up-check") == "yes"),
            "adjustable": get("adjustable", "yes"), "spring": "yes",
            "drain": get("drain", "external" if kind == "sequence-valve" else "internal")}


def expected_options(component):
    """Options that the shape of a component must show."""
    get = component.attributes.get
    if component.kind in MACHINES:
        variable = get("variable", "no")
        directions = get("flow-directions", "1" if component.kind == "pump" else "2")
        return {"flow-directions": directions,
                "unit": _yes(component.kind == "pump-motor" and directions == "1"),
                "variable": variable, "control": get("control",
                                                     "none") if variable == "yes" else "none",
                "drain": get("drain", "internal")}
    if component.kind == "cylinder":
        return {"action": get("action", "double"), "rods": get("rods", "1"),
                "cushion": get("cushion", "none"), "spring-return": get("spring-return", "no")}
    if component.kind == "accumulator":
        return {"charge": get("charge", "gas"), "separator": get("separator", "none")}
    if component.kind == "level-indicator":
        return {"switched": get("switched", "no")}
    if component.kind == "pressure-switch":
        return {"adjustable": "yes", "spring": "yes"}
    if component.kind == "sensor":
        return {"measures": get("measures", "pressure"), "signal": "yes"}
    if component.kind == "thermostatic-bypass":
        return {"spring": "yes"}
    if component.kind == "breather":
        return {"spring": _yes(get("opening-pressure"))}
    if component.kind == "quick-coupling":
        return {"joined": get("joined", "yes"), "valves": get("valves", "both")}
    if component.kind == "device":
        return {"inside": get("inside", "declared")}
    if component.kind == "rotary-joint":
        return {"ways": len(component.levels) // 2}
    if component.kind == "reservoir":
        return {"sealed": _yes(get("pressure"))}
    if component.kind == "brake":
        return {"applied": get("applied", "spring")}
    if component.kind == "clutch":
        return {"engaged": get("engaged", "yes"), "actuation": get("actuation", "manual")}
    if component.kind == "check-valve":
        return {"spring": _yes(get("opening-pressure")), "pilot": get("pilot", "none")}
    if component.kind in PRESSURE_VALVES:
        return pressure_valve_options(component)
    if component.kind == "reducing-valve":
        relieving = get("relieving", "no")
        return {"relieving": relieving, "pilots": ["in" if relieving == "yes" else "out"],
                "adjustable": get("adjustable", "yes"), "spring": "yes"}
    if component.kind == "priority-valve":
        return {"load-sensing": get("load-sensing", "no"), "spring": "yes"}
    if component.kind in ("throttle", "throttle-check", "flow-control"):
        with_check = component.kind == "throttle-check" or get("check") == "yes"
        return {"adjustable": get("adjustable", "yes"), "check": _check(component, with_check)}
    if component.kind == "flow-divider":
        return {"design": get("design", "spool")}
    if component.kind == "filter":
        return {"bypass": _yes(get("bypass")), "one-way": get("one-way", "no"),
                "clogging-indicator": get("clogging-indicator", "none")}
    if component.kind in ("cooler", "strainer"):
        return {"bypass": _yes(get("bypass"))}
    if kinds.shape(component.kind) == "shut-off-valve":
        # A bypass valve is shut unless the file says otherwise.
        closed = component.kind == "bypass-valve"
        return {"position": get("position", "closed" if closed else "open")}
    return {}


def expected_letters(component):
    """Letters of the ports that must stand at the symbol."""
    get, kind = component.attributes.get, component.kind
    if kind in MACHINES:
        one_way = get("flow-directions", "1" if kind == "pump" else "2") == "1"
        ports = ["S", "P"] if kind == "pump" and one_way else ["A", "B"]
        if get("drain") == "external":
            count = int(get("case-ports", "1"))
            ports += ["L"] if count == 1 else [f"L{i + 1}" for i in range(count)]
        pilots = int(get("pilot-ports", "0")) if get("variable") == "yes" else 0
        return ports + (["X"] if pilots == 1 else [f"X{i + 1}" for i in range(pilots)])
    if kind in ("directional-valve", "device", "rotary-joint"):
        return list(component.levels)
    if kind == "cylinder":
        return ["A"] + ["B"] * (get("action", "double") == "double")
    if kind == "clutch":
        return ["Z"] * (get("actuation") == "hydraulic")
    if kind == "flow-divider":
        return ["P"] + list(component.levels)
    if kind in PRESSURE_VALVES:
        options = pressure_valve_options(component)
        return [letter for end, letter in ROLES[kind].items() if end in ("in", "out")] + [
            "X"] * ("X" in options["pilots"]) + ["Y"] * (options["drain"] == "external")
    if kind == "check-valve":
        return ["A", "B"] + ["X"] * (get("pilot", "none") != "none")
    if kind == "reducing-valve":
        return ["P", "A"] + ["T" if get("relieving") == "yes" else "Y"]
    if kind == "priority-valve":
        return ["P", "CF", "EF"] + ["LS"] * (get("load-sensing") == "yes")
    if kind == "pilot-control-valve":
        return ["P", "T", "A"] + ["B"] * (get("outlets") == "2")
    return {"flushing-valve": ["A", "B", "F"], "shuttle-valve": ["A", "B", "C"], "engine": [],
            "electric-motor": [], "gearbox": [], "brake": ["Z"], "load": [], "tachometer": [],
            "hand-pump": ["S", "P"], "thermostatic-bypass": ["A", "B", "C"], "accumulator": ["A"],
            **{end: ["P"] for end in ENDS}}.get(kind, ["A", "B"])


def positions_meant(component):
    """Ports, positions as (ident, at rest, paths), and what moves the valve."""
    if component.kind == "directional-valve":
        return (list(component.levels), component.positions,
                component.attributes.get("actuation", "solenoid"))
    # A pilot control valve leads its outlets to T when it is let go, and one of them to P, else.
    two = component.attributes.get("outlets") == "2"
    back = [("A", "T", False)] + [("B", "T", False)] * two
    positions = [("a", False, [("P", "A", False)] + back[1:]), ("released", True, back)]
    if two:
        positions.append(("b", False, [("P", "B", False), back[0]]))
    return (expected_letters(component), positions,
            component.attributes.get("actuation", "lever"))
