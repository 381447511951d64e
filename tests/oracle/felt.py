"""Which main sides' pressure stands at a node ("High and low", "Pilots" in DEVELOPERS.md)."""

import kinds
from ways import OPEN_BOTH_WAYS


class Felt:
    """What a pilot or a flushing valve's port feels, everything standing as given."""

    def __init__(self, region, loops, standing):
        self.reservoirs = region.reservoirs
        self.ways = [way for way in region.ways
                     if way.kind in (kinds.PILOTED, kinds.UNLOADED) or standing.open(way)]
        #: node -> (loop, side, high) of each main side there.
        self.sides = {}
        for loop, high in loops:
            for side in loop.main_sides:
                for node in side.nodes:
                    self.sides.setdefault(node, []).append((loop, side, high))

    def _joins(self, way):
        """One pressure at both ends?"""
        return (way.both and way.kind in OPEN_BOTH_WAYS and way.kind != kinds.HIGHER
                and way.passage.shuttle is None and not way.passage.pilot)

    def _piece(self, start, seen):
        """Nodes at the pressure of `start`; the walk ends at a side and before a reservoir."""
        piece, waiting = {start}, [start]
        while waiting:
            here = waiting.pop()
            if here in self.sides:
                continue
            for way in filter(self._joins, self.ways):
                for end, other in ((way.tail, way.head), (way.head, way.tail)):
                    if end == here and other not in piece | seen | self.reservoirs:
                        piece.add(other)
                        waiting.append(other)
        return piece

    def _around(self, piece, seen):
        """(way, node beyond, does it lead away from the piece?) of what touches a piece."""
        return [(way, other, leaves) for way in self.ways for end, other, leaves in
                ((way.tail, way.head, True), (way.head, way.tail, False))
                if end in piece and end not in self.sides and other not in piece | seen
                and not self._joins(way)]

    def _drains(self, piece):
        """Can oil flow off to a reservoir over a way that joins?"""
        return any({way.tail, way.head} & piece and {way.tail, way.head} & self.reservoirs
                   for way in self.ways if self._joins(way) or way.kind == kinds.METERING
                   or way.kind == kinds.ONE_WAY)

    def at_port(self, node):
        """(loop, side, high) at a flushing valve's port: a restriction before it changes nothing."""
        found, seen, waiting = [], set(), [node]
        while waiting:
            start = waiting.pop(0)
            if start in seen:
                continue
            piece = self._piece(start, seen)
            around = self._around(piece, seen)
            seen |= piece
            on = [one for at in piece for one in self.sides.get(at, ())]
            found += on
            if on:
                continue
            waiting += [other for way, other, leaves in around
                        if (way.kind == kinds.HIGHER and not leaves)
                        or (way.kind == kinds.METERING and other not in self.reservoirs)]
        return found

    def at_pilot(self, node):
        """The same at a pilot: a restriction counts only where the line behind it ends dead, so that
        no oil flows through it."""
        found, seen, waiting = [], set(), [(node, True, None)]
        while waiting:
            start, still, by = waiting.pop(0)
            if start in seen:
                continue
            piece = self._piece(start, seen)
            around = [one for one in self._around(piece, seen) if one[0].number != by]
            drains = self._drains(piece)
            seen |= piece
            on = [one for at in piece for one in self.sides.get(at, ())]
            found += on
            if on:
                continue
            inlets = [(way, other) for way, other, leaves in around
                      if way.kind == kinds.HIGHER and not leaves]
            exits = [(way, other, leaves) for way, other, leaves in around
                     if way.kind in (kinds.METERING, kinds.ONE_WAY)]
            dead = still and not drains and len(inlets) + len(exits) == len(around)
            waiting += [(other, dead and not exits, way.number) for way, other in inlets]
            lets_in = [way for way, _, leaves in exits
                       if way.kind == kinds.METERING and (way.both or not leaves)]
            if dead and not inlets and lets_in and len({other for _, other, _ in exits}) == 1:
                waiting.append((exits[0][1], True, lets_in[0].number))
        return found
