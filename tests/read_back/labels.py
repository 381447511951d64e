"""Gives each port its letter and each symbol its designation: of all ways to pair words and places
the one in which they stand closest. Uses the places of words only."""

import re

import kinds
from shapes import distance, in_mm

LETTER = re.compile(r"[A-Za-z][A-Za-z0-9_-]*\Z")
REACH = 3.4  # modules: farther from its port no letter stands
PITCH = 1.7  # modules: lines of one block of words are closer than this
CLEARLY = 1.0  # modules: by so much nearer to another symbol, a designation is taken for its
# Modules by which a designation counts as farther from a symbol of another kind than the parts list
# gives it, and as farther from a port than a letter.
OTHER_KIND, NO_LETTER = 1.0, 4.0
FAR = 1e6


def pair(costs):
    """Least-cost pairing of rows with columns (rows <= columns): column of each row."""
    n, m = len(costs), len(costs[0]) if costs else 0
    u, v, match, way = [0.0] * (n + 1), [0.0] * (m + 1), [0] * (m + 1), [0] * (m + 1)
    for i in range(1, n + 1):
        match[0], j0 = i, 0
        least, used = [float("inf")] * (m + 1), [False] * (m + 1)
        while True:
            used[j0] = True
            i0, delta, j1 = match[j0], float("inf"), 0
            for j in range(1, m + 1):
                if not used[j]:
                    cost = costs[i0 - 1][j - 1] - u[i0] - v[j]
                    if cost < least[j]:
                        least[j], way[j] = cost, j0
                    if least[j] < delta:
                        delta, j1 = least[j], j
            for j in range(m + 1):
                if used[j]:
                    u[match[j]] += delta
                    v[j] -= delta
                else:
                    least[j] -= delta
            j0 = j1
            if match[j0] == 0:
                break
        while j0:
            match[j0] = match[way[j0]]
            j0 = way[j0]
    columns = [0] * n
    for j in range(1, m + 1):
        if match[j]:
            columns[match[j] - 1] = j - 1
    return columns


def _islands(ports, texts):
    """Ports and texts that compete with one another, apart from those that do not."""
    left = list(ports)
    while left:
        some, words = [left.pop()], []
        for port in some:
            near = [t for t in texts if t not in words
                    and distance(t.centre(), port.place) <= REACH]
            words += near
            more = [p for p in left if any(distance(t.centre(), p.place) <= REACH for t in near)]
            some += more
            left = [p for p in left if p not in more]
        yield some, words


def letters(symbols, texts, names, problems):
    """Sets the letters of all ports but those of reservoirs; returns the texts that are left. A
    word that the parts list has as a designation (names) is a letter only where no other one
    stands near."""
    ports = [p for s in symbols if s.kind != "reservoir" for p in s.ports]
    words = [t for t in texts if LETTER.match(t.words) and t.size > 3]
    used = set()
    for some, near in _islands(ports, words):
        costs = [[distance(t.centre(), p.place) + (NO_LETTER if t.words in names else 0)
                  if distance(t.centre(), p.place) <= REACH else FAR for t in near]
                 + [FAR * 2] * len(some) for p in some]
        for port, column in zip(some, pair(costs)):
            if column < len(near) and distance(near[column].centre(), port.place) <= REACH:
                port.letter = near[column].words
                used.add(near[column])
            else:
                problems.append(f"port at {in_mm(port.place)} has no letter")
    return [t for t in texts if t not in used]


def _block(first, texts):
    """Box of the words that stand under a designation, beginning or ending flush with it."""
    box, y = list(first.box), first.place[1]
    for text in sorted((t for t in texts if t.anchor == first.anchor
                        and abs(t.place[0] - first.place[0]) < 0.1
                        and t.place[1] > y), key=lambda t: t.place[1]):
        if text.place[1] - y > PITCH:
            break
        y = text.place[1]
        box = [min(box[0], text.box[0]), box[1], max(box[2], text.box[2]), text.box[3]]
    return box


def gap(a, b):
    """How far two boxes are apart."""
    dx = max(a[0] - b[2], b[0] - a[2], 0.0)
    dy = max(a[1] - b[3], b[1] - a[3], 0.0)
    return (dx * dx + dy * dy) ** 0.5


def _led(box, leaders):
    """The place to which a thin leader line takes the words in a box, as a box; else the box
    itself."""
    for rule in leaders:
        for near, far in ((rule.p, rule.q), (rule.q, rule.p)):
            if gap(box, (*near, *near)) < 1.0 and gap(box, (*far, *far)) > 1.5:
                return [*far, *far]
    return box


def designations(symbols, texts, names, rules, problems):
    """Sets the label of each symbol from the words that the parts list names as designations: of
    near ones that of the kind in the list. names: designation -> words of its row. Gives what may
    be read amiss: designations that stand clearly nearer to another symbol than to their own."""
    doubts = []
    found = [t for t in texts if t.words in names and t.size > 3]
    leaders = [r for r in rules if r.width < 0.24]
    if len(found) > len(symbols):
        problems.append(f"{len(found)} designations for {len(symbols)} symbols")
        return doubts
    boxes = [_led(_block(t, texts), leaders) for t in found]
    costs = [[gap(box, s.box) for s in symbols] for box in boxes]
    listed = [[0 if s.kind in [kinds.shape(kinds.named(word)) for word in names[t.words]]
               else OTHER_KIND
               for s in symbols] for t in found]
    for i, column in enumerate(pair([[c + k for c, k in zip(*rows)]
                                     for rows in zip(costs, listed)])):
        symbols[column].label = found[i].words
        nearest = min(range(len(symbols)), key=lambda j: costs[i][j])
        if costs[i][column] > costs[i][nearest] + CLEARLY:
            doubts.append(f"designation {found[i].words} stands nearer to a "
                          f"{symbols[nearest].kind} than to its own {symbols[column].kind}")
    tanks = {s.label for s in symbols if s.kind == "reservoir" and s.label}
    for symbol in symbols:
        if symbol.kind == "reservoir" and not symbol.label and len(tanks) == 1:
            symbol.label = next(iter(tanks))  # all marks are the one reservoir
        if not symbol.label:
            problems.append(f"{symbol.kind} at {in_mm(symbol.centre())} has no designation")
    return doubts
