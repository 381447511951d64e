"""`loopwright kinds`, `rules` and `schema`: what they print of the tables, and every JSON output of
the program against the schema that it prints (python3-jsonschema)."""

import json
import unittest

import jsonschema

import program
from program import RESURFACER, TURNED, InAFolder, run


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
