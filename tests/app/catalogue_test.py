"""`loopwright kinds`, `rules` and `schema`: what they print of the tables, and every JSON output of
the program against the schema that it prints (python3-jsonschema)."""

import json
import subprocess
import unittest

import jsonschema

import program
from program import RESURFACER, TURNED, InAFolder, changed, run


def schema(name):
    return json.loads(run("schema", name).out)


class Schemas(InAFolder):
    def held(self, name, ran):
        jsonschema.Draft202012Validator.check_schema(schema(name))
        said = json.loads(ran.out)
        jsonschema.Draft202012Validator(schema(name)).validate(said)
        return said

    def test_kinds(self):
        said = self.held("kinds", run("kinds", "--format", "json"))
        classes = {p["class"] for kind in said["kinds"] for p in kind["passages"]}
        self.assertLessEqual({"reduced", "displacement", "one-way"}, classes)
        self.assertLessEqual({"line", "hose", "shaft", "assembly", "use", "waiver"},
                             {element["name"] for element in said["elements"]})

    def test_rules(self):
        self.held("rules", run("rules", "--format", "json"))

    def test_check(self):
        for circuit in (RESURFACER, TURNED):
            self.held("check", run("check", circuit, "--format", "json"))

    def test_check_tells_remarks(self):
        self.file("c.xml", changed("</circuit>", """<remark subject="P2" text="noisy when cold"
            by="owner" date="2026-11-02"/><remark subject="side:P1.A" text="hose rubs"/></circuit>"""))
        said = self.held("check", self.run_here("check", "c.xml", "--format", "json"))
        remarks = said["circuits"][0]["remarks"]
        self.assertEqual([{k: v for k, v in r.items() if k != "place"} for r in remarks],
                         [{"subject": "P2", "text": "noisy when cold", "by": "owner",
                           "date": "2026-11-02"}, {"subject": "side:P1.A", "text": "hose rubs"}])
        words = self.run_here("check", "c.xml").words
        self.assertIn("Remark P2: noisy when cold (owner, 2026-11-02)\n", words)
        self.assertIn("Remark side:P1.A: hose rubs\n", words)
        self.assertStatus(self.run_here("draw", "c.xml", "-o", "c.svg"), 0)
        sheet = (self.folder / "c.svg").read_text()
        self.assertIn(">Remarks<", sheet)
        self.assertIn(">side:P1.A: hose rubs<", sheet)

    def test_layout(self):
        ran = self.run_here("draw", RESURFACER, "-o", "a.svg", "--write-layout", "a.json")
        self.assertStatus(ran, 0)
        layout = json.loads((self.folder / "a.json").read_text())
        jsonschema.Draft202012Validator(schema("layout")).validate(layout)

    def test_a_schema_refuses_what_is_not_meant(self):
        said = json.loads(run("kinds", "--format", "json").out)
        said["kinds"][0]["passages"] = [{"from": "A", "to": "B", "class": "magic",
                                         "both_ways": True}]
        with self.assertRaises(jsonschema.ValidationError):
            jsonschema.Draft202012Validator(schema("kinds")).validate(said)


class SymbolSheet(InAFolder):
    def test_shows_a_symbol_of_every_kind(self):
        self.assertStatus(self.run_here("kinds", "--symbols", "all.svg"), 0)
        sheet = (self.folder / "all.svg").read_text()
        for kind in json.loads(run("kinds", "--format", "json").out)["kinds"]:
            if kind["name"] != "junction":  # a dot on lines
                self.assertIn(kind["name"].split("-")[0], sheet, kind["name"])
        self.assertStatus(self.run_here("kinds", "--symbols", "all.pdf"), 0)
        self.assertTrue((self.folder / "all.pdf").read_bytes().startswith(b"%PDF"))
        self.assertStatus(self.run_here("kinds", "--symbols", "all.txt"), 2)
        self.assertStatus(self.run_here("kinds", "--symbols", "no/such/all.svg"), 2)
        self.assertFalse((self.folder / "all.txt").exists())


class ThresholdsFile(InAFolder):
    """`--thresholds` of check and draw, and its schema."""

    HOSE = changed('<line id="G3" ', '<hose id="G3" rating="60 bar" burst-pressure="200 bar" ')

    def written(self, text):
        self.file("c.xml", self.HOSE)
        self.file("t.xml", text)

    def test_moves_a_verdict_and_is_told(self):
        self.written('<thresholds format="1"><hose-safety burst-ratio="3"/></thresholds>')
        ran = self.run_here("check", "c.xml")
        self.assertStatus(ran, 1)  # 200 bar are not four times 60 bar
        self.assertIn("[hose-safety]", ran.words)
        self.assertNotIn("Threshold", ran.words)
        ran = self.run_here("check", "c.xml", "--thresholds", "t.xml")
        self.assertStatus(ran, 0)
        self.assertIn("Threshold burst-ratio of hose-safety: 3 (set; else 4)", ran.words)
        said = json.loads(self.run_here("check", "c.xml", "--thresholds", "t.xml", "--format",
                                        "json").out)
        own = [t for t in said["thresholds"] if t["rule"] == "hose-safety"]
        self.assertEqual([(t["value"]["value"], t["given"], t["default"]["value"]) for t in own],
                         [(3, True, 4)])
        jsonschema.Draft202012Validator(schema("check")).validate(said)
        said = json.loads(self.run_here("check", "c.xml", "--format", "json", "--rule",
                                        "filtration").out)
        self.assertEqual(said["thresholds"], [])

    def test_a_bad_one_stops_everything(self):
        self.written('<thresholds format="1"><hose-safety burst-ration="3"/></thresholds>')
        for verb in (("check", "c.xml", "-o", "out"), ("draw", "c.xml", "-o", "out.svg")):
            ran = self.run_here(*verb, "--thresholds", "t.xml")
            self.assertStatus(ran, 2)
            self.assertIn("t.xml:1:37: error: unknown attribute 'burst-ration'", ran.messages)
            self.assertEqual(ran.out, b"")
            self.assertFalse((self.folder / verb[-1]).exists())
        ran = self.run_here("check", "c.xml", "--thresholds", "none.xml")
        self.assertStatus(ran, 2)
        self.assertIn("'none.xml' cannot be read", ran.messages)

    def test_is_never_overwritten(self):
        text = '<thresholds format="1"/>'
        self.written(text)
        for verb in (("check", "c.xml"), ("draw", "c.xml", "--format", "svg")):
            self.assertStatus(self.run_here(*verb, "--thresholds", "t.xml", "-o", "t.xml"), 2)
            self.assertEqual((self.folder / "t.xml").read_text(), text)

    def test_the_schema_and_the_program_agree(self):
        self.file("t.xsd", run("schema", "thresholds").words)
        for text, good in (
                ('<thresholds format="1"><hose-safety burst-ratio="3.5"/></thresholds>', True),
                ('<thresholds format="1"/>', True),
                ('<thresholds format="1"><hose-safety burst-ratio="4 bar"/></thresholds>', False),
                ('<thresholds format="1"><hose-safety burst="4"/></thresholds>', False),
                ('<thresholds format="1"><hose-safety/><hose-safety/></thresholds>', False),
                ('<thresholds format="1"><filtration/></thresholds>', False),
                ('<thresholds/>', False), ('<circuit format="1"/>', False)):
            with self.subTest(text):
                self.written(text)
                ran = self.run_here("check", "c.xml", "--thresholds", "t.xml")
                self.assertEqual(ran.status != 2, good)
                lint = subprocess.run(["xmllint", "--noout", "--schema", "t.xsd", "t.xml"],
                                      cwd=self.folder, stderr=subprocess.DEVNULL, check=False)
                self.assertEqual(lint.returncode == 0, good)


class Pages(unittest.TestCase):
    def page(self, name):
        ran = run("kinds", name)
        self.assertEqual((ran.status, ran.err), (0, b""))
        return ran.out.decode()

    def test_every_kind_and_element_has_one(self):
        said = json.loads(run("kinds", "--format", "json").out)
        for one in said["kinds"] + said["elements"]:
            page = self.page(one["name"])
            self.assertIn(one["doc"], page)
            for attribute in one["attributes"]:
                self.assertIn(f"\n  {attribute['name']}: {attribute['doc']}; ", page)

    def test_figures_say_their_unit_range_and_example(self):
        # A filtration ratio is the particles before over those behind: never below 1 (ISO 16889).
        self.assertIn("ratio, 1 or more, such as 200;", self.page("filter"))
        self.assertIn("length, more than 0 mm, such as 10 um;", self.page("filter"))
        self.assertIn("pressure, more than 0 bar, such as 1680 bar;", self.page("hose"))

    def test_elements_of_one_name_are_told_apart(self):
        page = self.page("port")
        for place in ("port: in assembly", "port: in reservoir", "port: in a component"):
            self.assertIn(place, page)


if __name__ == "__main__":
    program.main()
