"""`loopwright draw --point`: every figure on a sheet is the one that `solve` gives, rounded; none is
missing; heads show where the oil goes; a point that has no solution touches nothing.

Units by their definitions (BIPM, The International System of Units; the revolution is 2 pi rad).
"""

import dataclasses
import json
import math
import pathlib
import re
import sys
import xml.etree.ElementTree as ElementTree

import program
from program import CIRCUITS, InAFolder, RESURFACER, changed, run

sys.path.append(str(pathlib.Path(__file__).resolve().parents[1] / "sheet_faults"))
import geometry
import ink
import meant

SVG = "{http://www.w3.org/2000/svg}"
UNIT = {"bar": 1e5, "L/min": 1e-3 / 60, "rpm": math.pi / 30, "N.m": 1.0, "kN": 1e3, "kW": 1e3,
        "m/s": 1.0, "%": 0.01}
FIGURE = re.compile(r"(?:takes |holds |set )?(-?[0-9.]+) (\S+)(?: from (\S+) to (\S+))?\Z")
TOLD = 0.005  # what is less than this in its unit is written as nothing


def circuits():
    """(path, ids of its points) of every circuit of the tree that has a duty."""
    for path in sorted(CIRCUITS.rglob("*.xml")):
        root = ElementTree.parse(path).getroot()
        whole = root.tag == "circuit" and root.find("line") is not None
        points = [one.get("id") for one in root.iter("point")] if whole else []
        if points:
            yield path, points


def rounds_to(words, si):
    """Whether a figure as written is a figure in SI, to the digits written."""
    number, unit = FIGURE.match(words).groups()[:2]
    digits = len(number.partition(".")[2])
    exact = si / UNIT[unit]
    if number == "0":
        return abs(exact) < TOLD * 1.0001
    most = 0.5 * 10.0 ** -digits * 1.000001
    significant = max(3, len(number.lstrip("-").partition(".")[0]))
    return abs(float(number) - exact) <= most and len(re.sub(r"\D", "", number)) == significant


def computed(svg):
    """Name of a component or line -> the figures beside it."""
    found = {}
    for group in ElementTree.fromstring(svg).iter(SVG + "g"):
        if group.get("class") == "computed":
            words = [t.text for t in group.findall(SVG + "text")]
            found[group.findtext(SVG + "title")] = [w for t in words for w in t.split("  ")]
    return found


def listed(svg):
    """The same of what the list of the point has for want of a place."""
    words = " ".join(t.text for t in ElementTree.fromstring(svg).iter(SVG + "text"))
    found = {}
    for name, rest in re.findall(r"Not at its place: (\S+) (.*?)\.(?= |\Z)(?! ?\d)", words):
        figure = re.findall(r"-?[0-9.]+ (?:bar|L/min(?: from \S+ to [^\s,]+)?)", rest)
        found.setdefault(name, []).extend(figure)
    return found


class Figures(InAFolder):
    def sheet(self, path, point, *options):
        out = self.folder / "sheet.svg"
        self.assertStatus(run("draw", str(path), "--point", point, "-o", str(out), *options), 0)
        return out.read_text(encoding="utf-8")

    def test_every_figure_is_the_one_of_solve(self):
        sheets = 0
        for path, points in circuits():
            solved = json.loads(run("solve", str(path), "--format", "json").out)["points"]
            net_of = meant.load(path).net_of
            for one in solved:
                if not one["solved"]:
                    continue
                sheets += 1
                with self.subTest(path.stem, point=one["id"]):
                    svg = self.sheet(path, one["id"], "--without-findings")
                    beside, apart = computed(svg), listed(svg)
                    self.components(one, beside, apart)
                    self.lines(one, beside, apart, net_of)
                    words = " ".join(t.text for t in ElementTree.fromstring(svg).iter(SVG + "text"))
                    self.assertIn(f"Duty point {one['id']}", words)
                    self.assertIn("Computed steady state", words)
                    self.assertIn(one["oil"]["text"], words)
        self.assertGreaterEqual(sheets, 120)

    def components(self, point, beside, apart):
        on_shafts = {one["id"]: one for one in point["on_shafts"]}
        for one in [*point["machines"], *on_shafts.values()]:
            figures = beside.get(one["id"]) or apart[one["id"]]
            turning = "torque" if "torque" in one else "force"
            if "holding" in one:
                if one["holding"]["value"] < TOLD:
                    self.assertEqual(figures, ["released"])
                    continue
                expected = [("takes ", one["torque"]), ("holds ", one["holding"])]
            else:
                expected = [("", one["speed"]), ("", one[turning]),
                            ("", one.get("shaft_power") or one.get("power"))]
            for (before, quantity), words in zip(expected, figures):
                self.assertTrue(words.startswith(before))
                self.assertTrue(rounds_to(words, quantity["value"]), (one["id"], words, quantity))
            for words in figures[len(expected):]:
                self.assertTrue(words in ("as pump", "as motor") or words.startswith("set "), words)
                if words.startswith("set "):
                    self.assertAlmostEqual(float(words.split()[1]), 100 * one["stroke"], delta=0.05)

    def lines(self, point, beside, apart, net_of):
        pressures = {one["line"]: one["pressure"]["value"] for one in point["nodes"]}
        flows = {one["id"]: one["flow"]["value"] for one in point["lines"] if "flow" in one}
        written = {}  # net -> pressures that stand in it
        for line, own in pressures.items():
            figures = [*beside.get(line, []), *apart.get(line, [])]
            shown = [words for words in figures if FIGURE.match(words).group(2) == "bar"]
            self.assertLessEqual(len(shown), 1)
            for words in shown:
                self.assertTrue(rounds_to(words, own), (line, words, own))
                written.setdefault(net_of[line], []).append(words)
            shown = [words for words in figures if FIGURE.match(words).group(2) == "L/min"]
            flow = flows.get(line, 0.0)
            self.assertEqual(len(shown), int(abs(flow) / UNIT["L/min"] >= TOLD), (line, flow))
            for words in shown:
                self.assertTrue(rounds_to(words, abs(flow)), (line, words, flow))
        for line, own in pressures.items():
            self.assertTrue(any(rounds_to(words, own) for words in written[net_of[line]]),
                            f"no pressure for {line}")

    def test_heads_show_where_the_oil_goes(self):
        """Cut at its head, a net falls into what stands before and behind the line as the circuit
        has it; where it does not, lines meet elsewhere on the sheet, and nothing is said here."""
        heads = settled = 0
        for path, points in circuits():
            root = ElementTree.parse(path).getroot()
            if "retrofit" in path.stem or root.find("use") is not None:
                continue
            circuit = meant.load(path)
            solved = json.loads(run("solve", str(path), "--format", "json").out)["points"]
            for one in solved:
                sheet = ink.read(self.sheet(path, one["id"], "--without-findings"))
                flows = {line["id"]: line["flow"]["value"] for line in one["lines"]
                         if "flow" in line}
                for region in sheet.regions:
                    if region.sort != "head":
                        continue
                    heads += 1
                    line = region.group.name
                    before, behind = sides(path, line)
                    to = towards(sheet, circuit, region)
                    if before != behind and to in (before, behind):
                        settled += 1
                        self.assertEqual(to == behind, flows[line] > 0.0,
                                         (path.stem, one["id"], line))
        self.assertGreater(heads, 500)
        self.assertGreater(settled, 0.6 * heads)

    def test_the_same_again(self):
        first = self.sheet(RESURFACER, "climb")
        self.assertEqual(first, self.sheet(RESURFACER, "climb"))

    def test_without_a_point_nothing_is_computed(self):
        out = self.folder / "sheet.svg"
        self.assertStatus(run("draw", str(RESURFACER), "-o", str(out)), 0)
        self.assertNotIn("computed", out.read_text(encoding="utf-8"))


class Refused(InAFolder):
    def refused(self, circuit, point, status):
        self.file("c.xml", circuit)
        self.file("out.svg", "as it was")
        ran = self.run_here("draw", "c.xml", "--point", point, "-o", "out.svg")
        self.assertStatus(ran, status)
        self.assertEqual((self.folder / "out.svg").read_text(encoding="utf-8"), "as it was")
        return ran.messages

    def test_a_point_that_is_not_there(self):
        said = self.refused(RESURFACER.read_text(encoding="utf-8"), "clim", 2)
        self.assertIn("perhaps 'climb'", said)
        self.assertIn("the circuit has none", self.refused(program.SOUND, "any", 2))
        self.refused(RESURFACER.read_text(encoding="utf-8"), "", 2)

    def test_a_point_without_a_solution(self):
        unknown = changed("</circuit>\n", '<duty><point id="full" speed="2400 rpm"/></duty></circuit>\n')
        self.assertIn("the oil is not known", self.refused(unknown, "full", 1))


def sides(path, line):
    """Sets of components on the two sides of a line of a circuit, cut between its first two
    ports. A line's other ports hang on its first."""
    root = ElementTree.parse(path).getroot()
    reader = meant._Reader()
    reader.read(root, "", path.parent)
    beside = {}

    def join(a, b):
        beside.setdefault(a, set()).add(b)
        beside.setdefault(b, set()).add(a)

    for name, ports in reader.lines:
        for k, port in enumerate(ports[1:]):
            if (name, k) != (line, 0):
                join(ports[0], port)
    ports_of = {}
    for port in reader.parent:
        ports_of.setdefault(port.rpartition(".")[0], []).append(port)
    for junction in reader.joining:
        for port in ports_of[junction][1:]:
            join(ports_of[junction][0], port)
    first, second = dict(reader.lines)[line][:2]
    found = []
    for start in (first, second):
        seen, queue = {start}, [start]
        for port in queue:
            more = beside.get(port, set()) - seen
            seen |= more
            queue += more
        found.append({p.rpartition(".")[0] for p in seen} - reader.joining)
    return found


def towards(sheet, circuit, head):
    """Components on the side of the net that a head points to."""
    tip, left, right = head.corners
    middle = ((left[0] + right[0] + 2 * tip[0]) / 4, (left[1] + right[1] + 2 * tip[1]) / 4)
    net = circuit.net_of[head.group.name]
    strokes = [s for s in sheet.strokes if s.sort == "line" and circuit.net_of[s.group.name] == net]
    own, = (s for s in strokes if geometry.inside(s, middle))
    ahead = max((own.p, own.q), key=lambda end: (end[0] - middle[0]) * (tip[0] - middle[0])
                + (end[1] - middle[1]) * (tip[1] - middle[1]))
    reached = [dataclasses.replace(own, p=middle, q=ahead)]
    left_over = [s for s in strokes if s is not own]
    for one in reached:
        touching = [s for s in left_over if touch(one, s)]
        reached += touching
        left_over = [s for s in left_over if s not in touching]
    return {s.group.name for s in sheet.strokes
            if s.sort == "symbol" and s.group.name in circuit.ports[net]
            and any(geometry.holds(one, end) for one in reached for end in (s.p, s.q))}


def touch(a, b):
    """Whether an end of one stroke lies on the other."""
    return any(geometry.holds(a, end) for end in (b.p, b.q)) or any(
        geometry.holds(b, end) for end in (a.p, a.q))


if __name__ == "__main__":
    program.main()
