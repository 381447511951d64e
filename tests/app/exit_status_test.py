"""The exit status: 0 nothing at or above --fail-on, 1 there is, 2 unusable; the highest counts.

Expected values are the contract's for the command line, circuit by circuit.
"""

import itertools

import program
from program import (InAFolder, SOUND, UNDECIDED, WITH_ERROR, WITH_NOTE, WITH_WARNING, changed, run)

class FailOn(InAFolder):
    LEVELS = ("error", "warning", "note", "never")

    def statuses(self, text, *options):
        path = self.file("c.xml", text)
        return [self.run_here("check", path.name, "--fail-on", level, *options).status
                for level in self.LEVELS]

    def test_nothing_wrong(self):
        self.assertEqual(self.statuses(SOUND), [0, 0, 0, 0])

    def test_an_error(self):
        self.assertEqual(self.statuses(WITH_ERROR), [1, 1, 1, 0])

    def test_a_warning(self):
        self.assertEqual(self.statuses(WITH_WARNING), [0, 1, 1, 0])

    def test_a_note(self):
        self.assertEqual(self.statuses(WITH_NOTE), [0, 0, 1, 0])

    def test_without_the_option_it_is_warning(self):
        for text, status in ((SOUND, 0), (WITH_ERROR, 1), (WITH_WARNING, 1), (WITH_NOTE, 0),
                             (UNDECIDED, 0)):
            self.file("c.xml", text)
            self.assertEqual(self.run_here("check", "c.xml").status, status)

    def test_undecided_counts_when_asked(self):
        self.assertEqual(self.statuses(UNDECIDED), [0, 0, 0, 0])
        self.assertEqual(self.statuses(UNDECIDED, "--fail-on-inconclusive"), [1, 1, 1, 1])
        structural = ("--rule", "charge-supply", "--rule", "case-drain-path")
        self.assertEqual(self.statuses(UNDECIDED, "--fail-on-inconclusive", *structural),
                         [1, 1, 1, 1])
        self.assertEqual(self.statuses(SOUND, "--fail-on-inconclusive", *structural), [0, 0, 0, 0])

    def test_without_a_duty_rules_at_work_are_undecided(self):
        self.assertEqual(self.statuses(SOUND, "--fail-on-inconclusive"), [1, 1, 1, 1])
        self.file("c.xml", SOUND)
        ran = self.run_here("check", "c.xml")
        self.assertEqual(ran.words.count("there is no duty"), 1)

    def test_the_undecided_one_names_its_datum(self):
        self.file("c.xml", UNDECIDED)
        ran = self.run_here("check", "c.xml")
        self.assertIn("M1.case-pressure", ran.words)

    def test_one_rule_alone(self):
        self.file("c.xml", WITH_ERROR)
        expected = {"lost-loop": 0, "charge-supply": 1, "make-up-check": 1, "crossport-relief": 0,
                    "filtration": 0, "case-drain-path": 0}
        for rule, status in expected.items():
            with self.subTest(rule):
                ran = self.run_here("check", "c.xml", "--rule", rule)
                self.assertStatus(ran, status)
        both = self.run_here("check", "c.xml", "--rule", "lost-loop", "--rule", "make-up-check")
        self.assertStatus(both, 1)
        self.assertIn("[make-up-check]", both.words)
        self.assertNotIn("[charge-supply]", both.words)

    def test_a_file_behind_a_rule_is_a_file(self):
        self.file("c.xml", WITH_ERROR)
        ran = self.run_here("check", "--rule", "make-up-check", "c.xml")
        self.assertStatus(ran, 1)


class SeveralFiles(InAFolder):
    def setUp(self):
        super().setUp()
        self.file("good.xml", SOUND)
        self.file("wrong.xml", WITH_ERROR)
        self.file("bad.xml", changed("<motor ", "<moter "))

    def test_the_highest_counts_in_any_order(self):
        status = {"good.xml": 0, "wrong.xml": 1, "bad.xml": 2, "missing.xml": 2}
        for count in (2, 3):
            for files in itertools.permutations(status, count):
                with self.subTest(files):
                    self.assertEqual(self.run_here("check", *files).status,
                                     max(status[file] for file in files))

    def test_the_others_are_judged_all_the_same_and_in_order(self):
        ran = self.run_here("check", "wrong.xml", "bad.xml", "good.xml")
        self.assertStatus(ran, 2)
        self.assertEqual(ran.words.count("Mixer drum"), 2)
        self.assertRegex(ran.words, r"(?s)wrong\.xml:\d+:\d+: error: side:P1\.A: .*Mixer drum")
        self.assertRegex(ran.messages, r"^bad\.xml:6:\d+: error: ")

    def test_the_same_file_twice(self):
        ran = self.run_here("check", "good.xml", "good.xml")
        self.assertStatus(ran, 0)
        once = self.run_here("check", "good.xml")
        self.assertEqual(ran.words, once.words + "\n" + once.words)


class Drawing(InAFolder):
    def test_findings_do_not_count(self):
        for name, text in (("good", SOUND), ("wrong", WITH_ERROR), ("open", WITH_NOTE),
                           ("undecided", UNDECIDED)):
            with self.subTest(name):
                self.file(f"{name}.xml", text)
                ran = self.run_here("draw", f"{name}.xml", "-o", f"{name}.svg")
                self.assertStatus(ran, 0)
                self.assertIn(b"<svg", (self.folder / f"{name}.svg").read_bytes())
                self.assertEqual((ran.out, ran.err), (b"", b""))

    def test_the_format_goes_by_the_ending_or_the_option(self):
        self.file("c.xml")
        first = {"svg": b"<?xml", "pdf": b"%PDF-", "png": b"\x89PNG\r\n\x1a\n"}
        for kind, bytes_ in first.items():
            self.assertStatus(self.run_here("draw", "c.xml", "-o", f"c.{kind}"), 0)
            self.assertStatus(self.run_here("draw", "c.xml", "-o", "c.out", "--format", kind), 0)
            for name in (f"c.{kind}", "c.out"):
                self.assertTrue((self.folder / name).read_bytes().startswith(bytes_), name)

    def test_what_cannot_be_drawn_so(self):
        self.file("c.xml")
        self.file("bad.xml", "<circuit")
        before = self.names()
        for arguments, piece in {
            ("c.xml",): "--output",
            ("c.xml", "-o", "c"): "--format",
            ("c.xml", "-o", "c.doc"): "--format",
            ("c.xml", "-o", "c.svg", "--format", "doc"): "svg",
            ("c.xml", "-o", "c.svg", "--sheet", "A5"): "A4",
            ("c.xml", "-o", "c.png", "--dpi", "35"): "dpi",
            ("c.xml", "-o", "c.png", "--dpi", "nan"): "dpi",
            ("c.xml", "-o", "c.png", "--dpi", "many"): "dpi",
            ("c.xml", "-o", "c.png", "--dpi", "1200", "--sheet", "A0"): "--dpi",
            (program.RESURFACER, "-o", "c.svg", "--sheet", "A4"): "--sheet",
            ("c.xml", "-o", ""): "name of a file",
            ("bad.xml", "-o", "c.svg"): "bad.xml:1:",
            ("c.xml", "bad.xml", "-o", "c.svg"): "not expected: bad.xml",
        }.items():
            with self.subTest(arguments):
                ran = self.run_here("draw", *arguments)
                self.assertStatus(ran, 2)
                self.assertIn(piece, ran.messages)
                self.assertNotIn("internal", ran.messages)
                self.assertEqual(ran.out, b"")
                self.assertEqual(self.names(), before)


class Arguments(InAFolder):
    def refused(self, *arguments, said):
        with self.subTest(arguments):
            self.file("c.xml")
            ran = self.run_here(*arguments)
            self.assertStatus(ran, 2)
            self.assertEqual(ran.out, b"")
            self.assertRegex(ran.messages, said)
            self.assertEqual(ran.messages.count("\n"), 1)

    def test_unknown_names_with_the_nearest(self):
        self.refused("chekc", "c.xml", said="'chekc'.*'check'")
        self.refused("drow", "c.xml", said="'drow'.*'draw'")
        self.refused("kind", said="'kind'.*'kinds'")
        self.refused("check", "c.xml", "--fromat", "json", said="--fromat.*'--format'")
        self.refused("check", "--fromat=json", "c.xml", said="--fromat.*'--format'")
        self.refused("check", "--fail-no=error", "c.xml", said="--fail-no.*'--fail-on'")
        self.refused("draw", "c.xml", "-o", "c.svg", "--shet", "A3", said="--shet.*'--sheet'")
        self.refused("--versoin", said="--versoin.*'--version'")
        self.refused("check", "--rule", "lost-lop", "c.xml", said="'lost-lop'.*'lost-loop'")
        self.refused("rules", "make-up-chek", said="'make-up-chek'.*'make-up-check'")
        self.refused("kinds", "check-vlave", said="'check-vlave'.*'check-valve'")
        self.refused("schema", "chek", said="'chek'.*'check'")
        self.refused("schema", "layuot", said="'layuot'.*'layout'")

    def test_unknown_names_that_are_near_to_nothing(self):
        self.refused("frobnicate", said="'frobnicate'; see 'loopwright --help'")
        self.refused("check", "--zzzzzz", "c.xml", said="--zzzzzz")
        self.refused("check", "-z", "c.xml", said="-z")
        self.refused("-z", said="no option '-z'")
        self.refused("check", "-c.xml", said="no option '-c.xml'")
        self.refused("schema", "zzzzzz", said="circuit, thresholds, check, layout")
        self.refused("kinds", "zzzzzz", said="reservoir")
        self.refused("rules", "zzzzzz", said="lost-loop")

    def test_wrong_values_with_what_is_right(self):
        self.refused("check", "c.xml", "--format", "jsn", said="text.*json")
        self.refused("check", "c.xml", "--fail-on", "eror", said="error.*warning.*note.*never")
        self.refused("check", "c.xml", "--color", "sometimes", said="auto.*always.*never")
        self.refused("rules", "--format", "xml", said="text.*json.*markdown")
        self.refused("check", "c.xml", "-o", "", said="name of a file")
        self.refused("check", "c.xml", "-o", "-", said="'-' names no file.*/dev/stdout")

    def test_too_little_or_too_much(self):
        self.refused(said="no command; there are check, draw, solve, readings, rules, kinds, schema")
        self.refused("check", said="FILE")
        self.refused("draw", "-o", "c.svg", said="FILE")
        self.refused("schema", said="NAME")
        self.refused("rules", "lost-loop", "filtration", said="filtration")
        self.refused("check", "c.xml", "--format", said="--format")
        self.refused("draw", "c.xml", "-o", "a.svg", "-o", "b.svg", said="--output")
        # A layout has a sheet already.
        self.refused("draw", "c.xml", "-o", "a.svg", "--sheet", "A4", "--read-layout", "l.json",
                     said="--sheet|--read-layout")

    def test_what_steers_a_terminal_is_made_visible(self):
        ran = run("che\x1b[31mck")
        self.assertStatus(ran, 2)
        self.assertNotIn(b"\x1b", ran.err)

    def test_a_file_that_looks_like_an_option_or_a_verb(self):
        for name in ("-c.xml", "draw", "check"):
            self.file(name)
            self.assertStatus(self.run_here("check", "--", name), 0)
        self.assertStatus(self.run_here("check", "draw"), 0)

    def test_help_and_version(self):
        ran = run("--version")
        self.assertEqual((ran.status, ran.err), (0, b""))
        self.assertRegex(ran.words, r"^loopwright \d+\.\d+\.\d+\n$")
        ran = run("--help")
        self.assertEqual((ran.status, ran.err), (0, b""))
        # The verbs of this slice, and none that is not there yet.
        listed = {line.split()[0] for line in ran.words.splitlines() if line.startswith("  ")}
        self.assertEqual(listed & {"check", "draw", "rules", "kinds", "schema", "solve", "repair",
                                   "needs", "exercise", "report", "graph", "readings", "new", "size"},
                         {"check", "draw", "rules", "kinds", "schema", "new", "solve", "readings", "size"})
        for verb, options in {
            "check": ("--format", "--output", "--rule", "--all", "--fail-on",
                      "--fail-on-inconclusive", "--color"),
            "draw": ("--format", "--output", "--dpi", "--sheet", "--without-findings",
                     "--write-layout", "--read-layout", "--color"),
            "rules": ("--format",), "kinds": ("--format",), "schema": ("NAME",), "solve": ("--point",),
            "readings": ("--format", "--output"), "size": ("--output",), "new": ("--output",),
        }.items():
            with self.subTest(verb):
                ran = run(verb, "--help")
                self.assertEqual((ran.status, ran.err), (0, b""))
                for option in options:
                    self.assertIn(option, ran.words)


if __name__ == "__main__":
    program.main()
