"""The pages of the rules: every rule has both drawings, and what stands beside them is what the
program says. Arguments: the program and the test program of the rules."""

import json
import pathlib
import re
import sys
import tempfile
import unittest

import rule_pages
from rule_pages import HEADINGS, called, catalogue, command

PROGRAM = TESTS = None


def complaints(folder, rule):
    """What is wrong with the page of a rule (its entry in the catalogue), found out anew."""
    name = rule["id"]
    if not (folder / f"{name}.md").is_file():
        return [f"{name} has no page"]
    text = (folder / f"{name}.md").read_text()
    wrong = [f"{name}: the page does not tell the rule's {field}"
             for field in ("question", "why", "decided", "remedy") if rule[field] not in text]
    quoted = re.findall(r"^```text\n\$ loopwright (.*)\n((?s:.*?))```$", text, re.MULTILINE)
    if [words for words, _ in quoted] != [" ".join(command(name, one)) for one in HEADINGS]:
        return wrong + [f"{name}: the page does not ask the program about a circuit of each sort"]
    for outcome, (_, words) in zip(HEADINGS, quoted):
        file = f"{name}.{outcome}.xml"
        if called(PROGRAM, *command(name, outcome), good=(0, 1), cwd=folder) != words:
            wrong.append(f"{file}: the program says something else than the page")
        said = json.loads(called(PROGRAM, "check", "--rule", name, "--format", "json", file,
                                 good=(0, 1), cwd=folder))["circuits"][0]["verdicts"]
        found = [one for one in said if one["outcome"] == outcome]
        others = [one for one in said if one["outcome"] not in ("pass", "not-applicable")]
        if not found:
            wrong.append(f"{file}: no verdict is {outcome}")
        wrong += [f"{file}: the page does not tell: {one['message']}"
                  for one in found if one["message"] not in words]
        wrong += drawing_complaints(folder / f"{name}.{outcome}.svg", text,
                                    [] if outcome == "pass" else others)
    return wrong


def drawing_complaints(drawing, text, found):
    """Whether a page shows a drawing on which just these findings are marked."""
    if f"]({drawing.name})" not in text or not drawing.is_file():
        return [f"{drawing.name}: is not shown"]
    picture = drawing.read_text()
    wrong = []
    if f"components, {len(found)} findings<" not in picture:
        wrong.append(f"{drawing.name}: does not mark {len(found)} findings")
    anew = drawing.with_name("anew.svg")
    called(PROGRAM, "draw", "--rule", drawing.name.split(".")[0], drawing.with_suffix(".xml"), "-o",
           anew)
    if anew.read_text() != picture:
        wrong.append(f"{drawing.name}: is not what the program draws")
    anew.unlink()
    return wrong


class Pages(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        folder = tempfile.TemporaryDirectory()
        cls.addClassCleanup(folder.cleanup)
        cls.folder = pathlib.Path(folder.name).resolve()
        cls.missing = rule_pages.make(PROGRAM, TESTS, cls.folder)
        cls.rules = catalogue(PROGRAM)

    def test_none_is_missing(self):
        self.assertEqual(self.missing, [])
        self.assertGreaterEqual(len(self.rules), 50)

    def test_every_page_says_what_the_program_says(self):
        for rule in self.rules:
            with self.subTest(rule["id"]):
                self.assertEqual(complaints(self.folder, rule), [])

    def test_the_contents_lead_to_every_page(self):
        named = re.findall(r"\]\(([a-z-]+)\.md\)", (self.folder / "README.md").read_text())
        self.assertEqual(named, [rule["id"] for rule in self.rules])

    def test_each_lapse_is_seen(self):
        rule = next(one for one in self.rules if one["id"] == "make-up-check")
        for lapse, (name, change) in {
            "no picture": (".md", lambda text: text.replace("check.fail.svg", "check.pass.svg")),
            "other words": (".md", lambda text: text.replace("a check lets", "a valve lets")),
            "other circuit": (".fail.xml", lambda text: (
                self.folder / "make-up-check.pass.xml").read_text()),
            "other drawing": (".fail.svg", lambda text: text.replace("<line ", "<line x='1' ", 1)
                              .replace("<polyline ", "<polyline fill='none' ", 1)),
            "no remedy": (".md", lambda text: text.replace(rule["remedy"], "")),
        }.items():
            file = self.folder / f"make-up-check{name}"
            with self.subTest(lapse):
                before = file.read_text()
                try:
                    self.assertNotEqual(change(before), before)
                    file.write_text(change(before))
                    self.assertNotEqual(complaints(self.folder, rule), [])
                finally:
                    file.write_text(before)

    def test_a_rule_without_such_circuits_is_told(self):
        rule = self.rules[0]
        files = sorted(self.folder.glob(f"{rule['id']}.pass.xml"))
        with tempfile.TemporaryDirectory() as other:
            self.assertIn("none fails", rule_pages.make_one(PROGRAM, rule, files,
                                                            pathlib.Path(other)))


class DrawOfOneRule(unittest.TestCase):
    """`draw --rule` marks what that rule finds and nothing else."""

    def test_marks_one_of_several(self):
        circuits = pathlib.Path(__file__).resolve().parents[2] / "circuits"
        file = circuits / "ice-resurfacer/retrofit-make-up-check-turned.xml"
        with tempfile.TemporaryDirectory() as folder:
            out = pathlib.Path(folder) / "a.svg"

            def marked(*rules):
                called(PROGRAM, "draw", file, "-o", out, *(word for rule in rules
                                                           for word in ("--rule", rule)))
                return int(re.search(r"components, (\d+) findings?<", out.read_text())[1])

            self.assertEqual(marked("make-up-check"), 1)
            self.assertEqual(marked("make-up-check", "charge-supply"), 2)
            self.assertEqual(marked("filtration"), 0)
            self.assertGreater(marked(), 2)
            called(PROGRAM, "draw", file, "-o", out, "--rule", "make-up-chek", good=(2,))


if __name__ == "__main__":
    PROGRAM, TESTS = (pathlib.Path(sys.argv.pop(1)).resolve() for _ in range(2))
    unittest.main()
