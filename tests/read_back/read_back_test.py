"""Reads finished drawings by geometry and words alone and holds what they say against the circuits.

    read_back_test.py PROGRAM
"""

import functools
import multiprocessing
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest
import xml.etree.ElementTree as ElementTree

import circuit
import compare
import damage
import kinds
import random_circuits
import reader
import strip
import variants

ROOT = pathlib.Path(__file__).resolve().parents[2]
PROGRAM = None


def examples():
    """Every circuit of the tree; files whose root is not a circuit are parts of one, and one
    without lines is what `size` is asked."""
    texts = ((p, p.read_text(encoding="utf-8")) for p in sorted((ROOT / "circuits").rglob("*.xml")))
    return [p for p, text in texts if "<circuit" in text and "<line" in text]


def draw(path, *options):
    """The SVG of a circuit. Findings in the circuit (exit status 1) are no hindrance."""
    with tempfile.TemporaryDirectory() as folder:
        out = pathlib.Path(folder) / "out.svg"
        run = subprocess.run([PROGRAM, "draw", str(path), "-o", str(out), *options],
                             capture_output=True,
                             text=True, check=False)
        if run.returncode not in (0, 1):
            raise AssertionError(f"{path.name}: draw {options}: {run.returncode}, {run.stderr}")
        return out.read_text(encoding="utf-8")


PLAIN = ("--without-findings",)
BY_LOT = 200  # circuits that a seed makes
# Above this size the findings on circuits that make no sense as drives are more than a sheet holds.
WITH_FINDINGS = 60  # components
# Variants that between them show every shape of a symbol; the drawings of the tree lack some.
RICH = ("hoses", "electric-control", "no-control", "one-way-filter-bypass", "manual-control",
        "valve-in-the-loop",
        "valve-4-3-throttled-lever", "valve-4-3-open-pedal", "valve-4-3-float-pilot",
        "valve-4-2-rest-first",
        "hand-valve-closed", "hand-valve-open")
# Those that show what stands in none of the above.
FITTED = ("bench-pump-motors", "bench-controls", "bench-hand-pumps", "bench-cylinders",
          "bench-cushions", "bench-accumulators", "bench-heaters", "bench-instruments",
          "bench-sensors", "bench-couplings", "bench-devices", "hydraulic-clutch",
          "electric-clutch")


def differences(svg, meant, seed=1):
    return compare.differences(reader.read(strip.strip(svg, seed)), meant, circuit.turning(meant))


@functools.cache
def workers():
    """Processes that read drawings: one a core, as reading takes nearly all of the time."""
    return multiprocessing.get_context("fork").Pool()


def _reading_of(work):
    """Name and differences of one (name, path, options of `draw`)."""
    name, path, options = work
    return name, options, differences(draw(path, *options), circuit.load(path))


def _damages_of(work):
    """(damage, whether a difference is found) of one (damages, svg, circuit)."""
    make, svg, meant = work
    return [(what, differences(damaged, meant) != []) for what, damaged in make(svg, meant)]


class ReadBack(unittest.TestCase):
    maxDiff = None

    def hold(self, circuits, ways=((), PLAIN)):
        """Holds drawings against circuits, given as (path, name), each drawn in all ways: options
        of the program, as with findings and without."""
        self.hold_each((name, path, options) for path, name in circuits for options in ways)

    def hold_each(self, work):
        """Holds each (name, path, options)."""
        for name, options, found in workers().imap(_reading_of, work, chunksize=4):
            with self.subTest(name, options=options):
                self.assertEqual(found, [])

    def test_the_circuits_of_the_tree(self):
        self.assertGreater(len(examples()), 0)
        self.hold_each((path.relative_to(ROOT).as_posix(), path, options)
                       for path in examples() for options in ((), PLAIN))

    def test_computed_points_of_the_circuits_of_the_tree(self):
        work = [(f"{path.stem} {point.get('id')}", path, ("--point", point.get("id")))
                for path in examples() if "retrofit" not in path.stem
                for point in ElementTree.parse(path).getroot().iter("point")]
        self.assertGreater(len(work), 50)
        self.hold_each(work)

    def test_designations_stand_at_their_own_symbols(self):
        for path in examples():
            with self.subTest(path.name):
                self.assertEqual(reader.read(strip.strip(draw(path), 1)).doubts, [])

    def test_every_kind_and_option(self):
        with tempfile.TemporaryDirectory() as folder:
            variants.main(folder)
            self.hold([(pathlib.Path(folder) / f"{name}.xml", name)
                       for name in variants.circuits()])

    def test_circuits_by_lot(self):
        with tempfile.TemporaryDirectory() as folder:
            work = []
            for seed, text in random_circuits.circuits(BY_LOT):
                path = pathlib.Path(folder) / f"{seed}.xml"
                path.write_text(text, encoding="utf-8")
                bare = seed % 2 or random_circuits.size(text) > WITH_FINDINGS
                work.append((f"seed {seed}", path, PLAIN if bare else ()))
            self.hold_each(work)

    def test_the_circuits_by_lot_have_every_kind_and_size(self):
        made = [text for _, text in random_circuits.circuits(BY_LOT)]
        for kind in kinds.KINDS + ("junction", "hose"):
            with self.subTest(kind):
                self.assertGreater(sum(f"<{kind} " in text for text in made), BY_LOT // 10)
        sizes = sorted(map(random_circuits.size, made))
        self.assertLess(sizes[0], 12)
        self.assertGreaterEqual(sizes[-1], random_circuits.LARGEST)
        self.assertLess(max(b - a for a, b in zip(sizes, sizes[1:])), 5)

    def test_the_variants_have_every_kind(self):
        drawn = " ".join(variants.circuits().values())
        for kind in kinds.KINDS + ("junction", "assembly", "use"):
            self.assertIn(f"<{kind} ", drawn)

    def test_the_kinds_are_those_of_the_program(self):
        told = subprocess.run([PROGRAM, "kinds"], capture_output=True, text=True, check=True).stdout
        words = [line.split()[0] for line in told.split("\n\n")[0].splitlines()]
        self.assertEqual(sorted(kinds.KINDS + ("junction",)), sorted(words))

    def test_findings_are_on_the_sheets_that_are_read(self):
        marked = [p for p in examples() if 'class="finding' in draw(p)]
        self.assertGreater(len(marked), 0)


class Stripping(unittest.TestCase):
    def test_nothing_but_shapes_and_words_is_left(self):
        svg = draw(examples()[0])
        for word in ("id=", "class=", "<title", "<desc", "<g"):
            self.assertIn(word, svg)
        bare = strip.strip(svg, 5)
        names = r"\b(?:id|class|role|data-[\w-]+)=|<(?:\w+:)?(?:title|desc|g)\b"
        self.assertEqual(re.findall(names, bare), [])

    def test_the_order_does_not_matter(self):
        path = examples()[0]
        svg, meant = draw(path), circuit.load(path)
        self.assertNotEqual(strip.strip(svg, 2), strip.strip(svg, 3))
        for seed in (2, 3):
            self.assertEqual(differences(svg, meant, seed), [])

    def test_what_is_not_known_is_not_passed_over(self):
        for part in ('<path d="M0 0L1 1"/>', '<g transform="rotate(90)"/>',
                     '<g style="display:none"/>'):
            svg = ('<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm" '
                   f'viewBox="0 0 9 9">{part}</svg>')
            with self.subTest(part), self.assertRaises(ValueError):
                strip.strip(svg, 1)


class Damage(unittest.TestCase):
    """Each damage of each sheet must be reported as a difference."""

    def sheets(self):
        for path in examples():
            if not path.stem.startswith("retrofit"):
                yield path.stem, draw(path, *PLAIN), circuit.load(path)

    def rich_sheets(self, names=RICH):
        with tempfile.TemporaryDirectory() as folder:
            variants.main(folder)
            for name in names:
                path = pathlib.Path(folder) / f"{name}.xml"
                yield name, draw(path, *PLAIN), circuit.load(path)

    def caught(self, make, least=1, sheets=None):
        count = 0
        given = list(sheets or self.sheets())
        work = [(make, svg, meant) for _, svg, meant in given]
        for (name, svg, meant), results in zip(given, workers().imap(_damages_of, work)):
            self.assertEqual(differences(svg, meant), [], name)
            for what, noticed in results:
                count += 1
                with self.subTest(name, damage=what):
                    self.assertTrue(noticed)
        self.assertGreaterEqual(count, least)

    def test_dots(self):
        self.caught(damage.without_a_dot, 10)
        self.caught(damage.with_a_dot_on_a_crossing)

    def test_lines(self):
        self.caught(damage.without_a_line, 20)
        self.caught(damage.with_a_line_moved, 20)

    def test_hoses(self):
        self.caught(damage.with_a_hose_straight, 5, self.rich_sheets())
        self.caught(damage.without_a_line, 20, self.rich_sheets())

    def test_dashes(self):
        self.caught(damage.with_a_dash_changed, 5)

    def test_letters(self):
        self.caught(damage.with_letters_swapped, 10)

    def test_words_at_frames(self):
        self.caught(damage.with_a_word_at_a_frame_changed, 10)

    def test_labels(self):
        self.caught(damage.with_labels_swapped, 10)

    def test_symbols_turned(self):
        self.caught(damage.with_a_symbol_turned, 10)

    def test_symbols_with_a_part_missing(self):
        self.caught(damage.without_a_part, 50)

    def test_parts_of_every_symbol_missing(self):
        self.caught(damage.without_a_part, 500, self.rich_sheets(RICH + FITTED))

    def test_fittings(self):
        for make, least in ((damage.without_a_dot, 40), (damage.with_letters_swapped, 80),
                            (damage.with_labels_swapped, 100), (damage.with_a_symbol_turned, 40)):
            self.caught(make, least, self.rich_sheets(FITTED))


if __name__ == "__main__":
    PROGRAM = sys.argv.pop(1)
    unittest.main()
