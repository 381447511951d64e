"""Ways that a rule may count on, and what a mesh is.

The terms read here: "Sure way", "Mesh", "Free element", "Relief passage", "Wide way".
"""

import kinds

#: Switched whatever does it: by position, by pressure, by a pilot.
SWITCHED = {kinds.SWITCHED, kinds.SHUTTLE, kinds.HAND, kinds.HIGHER, kinds.PILOTED, kinds.UNLOADED}
#: What lets oil through beside a sure way, and may throttle, reduce or part it.
ONWARD = {kinds.ONE_WAY, kinds.METERING, kinds.LEG, kinds.REDUCED}
#: All that carries a flow from a reservoir to a pump or from a pump to a consumer: what a feed may use;
#: leakage, pressure-opened and displacement are not among them.
CARRIES = SWITCHED | ONWARD | {kinds.ELEMENT}
MESHES = ("filter", "strainer")


def is_sure(way):
    """Nobody shuts it by hand: an element, or switched and, if by hand, locked."""
    if way.kind == kinds.HAND:
        return way.passage.locked
    return way.kind == kinds.ELEMENT or way.kind in SWITCHED


def is_mesh(situation, way):
    """Is it the element of a filter or strainer?"""
    return (way.kind == kinds.ELEMENT
            and situation.region.circuit.components[way.owner].kind in MESHES)


def is_free(situation, way):
    """An element that cannot clog, or has a bypass when it does."""
    owner = situation.region.circuit.components[way.owner]
    return not is_mesh(situation, way) or "bypass" in owner.attributes


def sure_ways(situation):
    """The open ways that are sure."""
    return [way for way in situation.open_ways if is_sure(way)]


def sure_and(situation, classes):
    """The open ways that are sure, and those of some other classes."""
    return [way for way in situation.open_ways if is_sure(way) or way.kind in classes]


def senses(way):
    """(from, to) of a passage, each way that it passes."""
    return [(way.tail, way.head), (way.head, way.tail)] if way.both else [(way.tail, way.head)]


def reliefs(situation):
    """(from, to) of every open relief passage; a bypass is none."""
    return [ends for way in situation.open_ways if way.kind == kinds.PRESSURE_OPENED
            for ends in senses(way)]
