"""The second opinion's own statement of the valves beside check, relief, flushing, hand and
directional valves: ports and passages, read from the table of kinds ("Passages of a kind").

Written by hand; nothing here comes out of the program.
"""

SETTING_PORTS = {
    "bypass-valve": ["A", "B"],
    "shuttle-valve": ["A", "B", "C"],
    "throttle": ["A", "B"],
    "throttle-check": ["A", "B"],
    "flow-control": ["A", "B"],
    "priority-valve": ["P", "CF", "EF"],
}
VALVES = set(SETTING_PORTS) | {"reducing-valve", "sequence-valve", "counterbalance-valve",
                               "unloading-valve", "pilot-control-valve", "flow-divider"}


def _is(attributes, name, word, otherwise):
    return attributes.get(name, otherwise) == word


def ports(kind, attributes, declared):
    """A valve's ports in the kind's order."""
    if kind == "flow-divider":
        return ["P", *declared]
    if kind == "pilot-control-valve":
        return ["P", "T", "A"] + (["B"] if _is(attributes, "outlets", "2", "1") else [])
    found = list(SETTING_PORTS.get(kind, ()))
    if kind == "reducing-valve":
        return ["P", "A"] + (["T"] if _is(attributes, "relieving", "yes", "no") else ["Y"])
    if kind == "priority-valve" and _is(attributes, "load-sensing", "yes", "no"):
        found.append("LS")
    if kind == "unloading-valve":
        found = ["P", "T", "X"]
    if kind in ("sequence-valve", "counterbalance-valve"):
        found = ["P", "A"] if kind == "sequence-valve" else ["A", "B"]
        if _is(attributes, "pilot", "external",
               "internal" if kind == "sequence-valve" else "external"):
            found.append("X")
    if kind in ("sequence-valve", "counterbalance-valve", "unloading-valve") and _is(
            attributes, "drain", "external", "external" if kind == "sequence-valve" else "internal"):
        found.append("Y")
    return found


def control_positions(attributes):
    """Name -> the ways (class, tail, head) of a pilot control valve's positions; rest first."""
    if not _is(attributes, "outlets", "2", "1"):
        return {"released": [("switched", "A", "T")], "a": [("reduced", "P", "A")]}
    return {"released": [("switched", "A", "T"), ("switched", "B", "T")],
            "a": [("reduced", "P", "A"), ("switched", "B", "T")],
            "b": [("reduced", "P", "B"), ("switched", "A", "T")]}


def passages(kind, attributes, declared):
    """(class, tail, head, both ways, opening's attribute or None, pilot port or None) of each."""
    def check(tail, head, given=True):
        return [("one-way", tail, head, False, "check-opening-pressure", None)] if given else []

    has_check = _is(attributes, "check", "yes", "no")
    if kind == "bypass-valve":
        return [("hand", "A", "B", True, None, None)]
    if kind == "shuttle-valve":
        return [("higher", inlet, "C", True, None, None) for inlet in "AB"]
    if kind == "throttle":
        return [("metering", "A", "B", True, None, None)]
    if kind == "throttle-check":
        return [("metering", "A", "B", True, None, None)] + check("B", "A")
    if kind == "flow-control":
        return [("metering", "A", "B", False, None, None)] + check("B", "A", has_check)
    if kind == "flow-divider":
        return [("leg", "P", port, True, None, None) for port in declared]
    if kind == "priority-valve":
        return [("reduced", "P", "CF", False, None, None),
                ("pressure-opened", "P", "EF", False, "setting", None)]
    if kind == "reducing-valve":
        back = [("pressure-opened", "A", "T", False, "setting", None)]
        return [("reduced", "P", "A", False, None, None)] + (
            back if _is(attributes, "relieving", "yes", "no") else [])
    if kind == "unloading-valve":
        return [("unloaded", "P", "T", False, None, "X")]
    if kind == "sequence-valve":
        opened = (("unloaded", "P", "A", False, None, "X")
                  if _is(attributes, "pilot", "external", "internal")
                  else ("pressure-opened", "P", "A", False, "setting", None))
        return [opened] + check("A", "P", has_check)
    if kind == "counterbalance-valve":
        piloted = [("piloted", "B", "A", False, None, "X")]
        return check("A", "B") + [("pressure-opened", "B", "A", False, "setting", None)] + (
            piloted if _is(attributes, "pilot", "external", "external") else [])
    return []
