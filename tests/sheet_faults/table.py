"""The table of all sheets: faults by class, and crossings, bends, length and area beside those of a
general-purpose layered engine given the same boxes and ports."""

import collections
import dataclasses
import pathlib

from tally import Tally

FILE = pathlib.Path(__file__).with_name("table.txt")
TOLERANCE = 1.005  # of lengths and areas, which the file has rounded
HEAD = """\
Faults of every sheet, written by sheet_faults_test.py --table; see there and faults.py.
Columns: crossings, bends, length of ink in mm (of a net once), area of symbols and lines in cm2;
then the same of elkjs, layered, direction down, each net a chain of edges: it places no shafts
and no words.

"""


@dataclasses.dataclass
class Row:
    name: str
    faults: dict  # class -> number
    cost: Tally
    engine: Tally = None


def _figures(cost):
    if cost is None:
        return " ".join(f"{'-':>{w}}" for w in (5, 5, 7, 6))
    return (f"{cost.crossings:5} {cost.bends:5} {cost.length:7.0f} "
            f"{cost.area / 100:6.0f}")


def _cost(words):
    if words[0] == "-":
        return None
    return Tally(int(words[0]), int(words[1]), float(words[2]), float(words[3]) * 100)


def _line(row):
    told = ", ".join(f"{c} {n}" for c, n in row.faults.items()) or "none"
    return f"{row.name:44} {_figures(row.cost)} | {_figures(row.engine)} | {told}\n"


def write(rows):
    text = HEAD
    text += "".join(map(_line, rows))
    own, engines = sums(rows), sums(rows, "engine")
    text += "\nSums\n"
    for group in sorted(own, key="all".__eq__):
        counts = collections.Counter()
        for row in rows:
            if group in ("all", group_of(row.name)):
                counts.update(row.faults)
        text += _line(Row(group, counts, own[group], engines.get(group)))
    FILE.write_text(text, encoding="utf-8")


def read():
    """Name -> row, in order."""
    if not FILE.exists():
        return {}
    rows = {}
    body = FILE.read_text(encoding="utf-8").removeprefix(HEAD).partition("\nSums\n")[0]
    for line in body.splitlines():
        own, engine, told = (part.strip() for part in line.split("|"))
        *words, crossings, bends, length, area = own.split()
        name, figures = " ".join(words), (crossings, bends, length, area)
        found = {} if told == "none" else {
            c: int(n) for c, _, n in (word.partition(" ") for word in told.split(", "))}
        rows[name] = Row(name, found, _cost(figures), _cost(engine.split()))
    return rows


def group_of(name):
    """tree (circuits of this tree), new, assembly, variant, lot or oracle."""
    return "tree" if "/" in name.partition(" ")[0] else name.partition(" ")[0]


def sums(rows, column="cost"):
    """Group of circuits -> sums of its sheets; `all`: of every one."""
    out = collections.defaultdict(Tally)
    for row in rows:
        cost = getattr(row, column)
        for group in (group_of(row.name), "all") if cost else ():
            total = out[group]
            total.crossings += cost.crossings
            total.bends += cost.bends
            total.length += cost.length
            total.area += cost.area
    return dict(out)
