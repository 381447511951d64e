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
    """Every circuit of the tree; files whose root is not a circuit are parts of one."""
    return [p for p in sorted((ROOT / "circuits").rglob("*.xml"))
            if "<circuit" in p.read_text(encoding="utf-8")]


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


SEEDS = range(40)  # of random circuits
# Variants that between them show every shape of a symbol; the drawings of the tree lack some.
RICH = ("hoses", "electric-control", "no-control", "one-way-filter-bypass", "manual-control",
        "valve-in-the-loop",
        "valve-4-3-throttled-lever", "valve-4-3-open-pedal", "valve-4-3-float-pilot",
        "valve-4-2-rest-first",
        "hand-valve-closed", "hand-valve-open")


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

    def hold(self, circuits):
        """Holds drawings with and without findings against circuits, given as (path, name)."""
        work = [(name, path, options) for path, name in circuits
                for options in ((), ("--without-findings",))]
        for name, options, found in workers().imap(_reading_of, work, chunksize=4):
            with self.subTest(name, options=options):
                self.assertEqual(found, [])

    def test_the_circuits_of_the_tree(self):
        self.assertGreater(len(examples()), 0)
        self.hold([(path, path.relative_to(ROOT).as_posix()) for path in examples()])

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
            made = []
            for seed in SEEDS:
                path = pathlib.Path(folder) / f"{seed}.xml"
                path.write_text(random_circuits.make(seed), encoding="utf-8")
                made.append((path, f"seed {seed}"))
            self.hold(made)

    def test_the_variants_have_every_kind(self):
        drawn = " ".join(variants.circuits().values())
        for kind in kinds.KINDS + ("junction", "assembly", "use"):
            self.assertIn(f"<{kind} ", drawn)

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
                yield path.stem, draw(path, "--without-findings"), circuit.load(path)

    def rich_sheets(self):
        with tempfile.TemporaryDirectory() as folder:
            variants.main(folder)
            for name in RICH:
                path = pathlib.Path(folder) / f"{name}.xml"
                yield name, draw(path, "--without-findings"), circuit.load(path)

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
        self.caught(damage.without_a_part, 500, self.rich_sheets())


if __name__ == "__main__":
    PROGRAM = sys.argv.pop(1)
    unittest.main()
