"""`check --format sarif`: each thing where SARIF wants it.

That it says the same as text and JSON, sarif_same_test.py asks; whether it is valid at all,
sarif_schema_test.py.
"""

import json
import shutil

import program
import sarif_log
from program import CIRCUITS, SOUND, TURNED, UNDECIDED, WITH_ERROR, InAFolder, changed, run
from sarif_log import BLOCK, TODAY, VALVE, WAIVER, with_waiver


class Rules(InAFolder):
    def test_texts_once_and_by_index(self):
        log = sarif_log.of(TURNED, status=1)
        catalogue = json.loads(run("rules", "--format", "json").out)["rules"]
        self.assertEqual([r["id"] for r in log.rules], [r["id"] for r in catalogue])
        for ours, rule in zip(log.rules, catalogue):
            self.assertEqual(ours["shortDescription"]["text"], rule["question"])
            self.assertEqual(ours["fullDescription"]["text"], rule["why"])
            self.assertEqual(ours["defaultConfiguration"]["level"], rule["level"])
            for form in ("text", "markdown"):
                page = run("rules", rule["id"], "--format", form).words
                self.assertEqual(ours["help"][form], page)
        for result in log.results:
            self.assertEqual(log.rules[result["ruleIndex"]]["id"], result["ruleId"])

    def test_only_those_asked_for(self):
        log = sarif_log.of(TURNED, "--rule", "make-up-check", "--rule", "charge-supply", status=1)
        self.assertEqual([r["id"] for r in log.rules], ["charge-supply", "make-up-check"])
        self.assertEqual({r["ruleIndex"] for r in log.results}, {0, 1})

    def test_figures_that_they_hold_things_against(self):
        self.file("c.xml")
        self.file("own.xml", '<thresholds format="1"> <hose-safety burst-ratio="5"/> </thresholds>')
        options = ("c.xml", "--thresholds", "own.xml")
        log = sarif_log.of(*options, cwd=self.folder, status=0)
        machine = json.loads(self.run_here("check", "--format", "json", *options).out)
        self.assertEqual(log.run["properties"]["thresholds"], machine["thresholds"])
        self.assertEqual([a["location"]["uri"] for a in log.run["artifacts"]
                          if a["roles"] == ["userSpecifiedConfiguration"]], ["own.xml"])


class Suppressed(InAFolder):
    def test_a_waiver_stands_where_it_is_written(self):
        self.file("c.xml", with_waiver(WITH_ERROR))
        log = sarif_log.of("c.xml", *TODAY, cwd=self.folder)
        (result,) = [r for r in log.results if r["suppressions"]]
        self.assertEqual((result["ruleId"], result["kind"], result["level"]),
                         ("make-up-check", "fail", "error"))
        (one,) = result["suppressions"]
        self.assertEqual(one["justification"], "test stand (owner, until 2027-06-30)")
        self.assertEqual(log.text(one["location"]["physicalLocation"]), WAIVER.format("test stand"))
        self.assertEqual(log.run["properties"]["today"], TODAY[1])

    def test_not_when_it_is_due(self):
        self.file("c.xml", with_waiver(WITH_ERROR))
        log = sarif_log.of("c.xml", "--today", "2027-07-01", cwd=self.folder)
        self.assertEqual([r for r in log.results if r["suppressions"]], [])

    def test_all_results_have_the_list_or_none(self):
        """3.27.23."""
        self.assertTrue(all("suppressions" in r for r in sarif_log.of(TURNED).results))


class Fingerprints(InAFolder):
    @staticmethod
    def of(log):
        return {(r["ruleId"], r["locations"][0]["logicalLocations"][0]["fullyQualifiedName"]):
                r["partialFingerprints"] for r in log.results}

    def test_each_its_own_and_kept_when_lines_shift(self):
        text = TURNED.read_text(encoding="utf-8")
        before = sarif_log.of(self.file("c.xml", text))
        shifted = text.replace("<engine ", "<!-- moved -->\n\n  <engine ").replace("/>", "  />")
        after = sarif_log.of(self.file("c.xml", shifted))
        self.assertNotEqual([r["locations"] for r in before.results],
                            [r["locations"] for r in after.results])
        self.assertEqual(self.of(before), self.of(after))
        seen = {json.dumps(prints) for prints in self.of(before).values()}
        self.assertEqual(len(seen), len(before.results))


class Files(InAFolder):
    def uri(self, name, **options):
        """The URI of the circuit that was named so; the program runs in the test's folder."""
        log = sarif_log.of(name, cwd=self.folder, **options)
        (target,) = [a for a in log.run["artifacts"] if "roles" in a]
        return target["location"]

    def test_names_as_uris(self):
        """RFC 3986: all but unreserved characters percent-encoded."""
        for name, uri in {"c.xml": "c.xml", "./c.xml": "c.xml", "sub/./c.xml": "sub/c.xml",
                          "a b.xml": "a%20b.xml", "a:b.xml": "a%3Ab.xml", "50%.xml": "50%25.xml",
                          "\u00e9.xml": "%C3%A9.xml", "#?.xml": "%23%3F.xml"}.items():
            with self.subTest(name):
                self.file(name)
                self.assertEqual(self.uri(name), {"uri": uri, "uriBaseId": "%SRCROOT%"})

    def test_bytes_that_are_no_utf_8(self):
        self.assertEqual(self.uri(b"\xff.xml".decode("utf-8", "surrogateescape"), status=2)["uri"],
                         "%FF.xml")

    def test_relative_where_the_working_folder_holds_it(self):
        path = self.file("sub/c.xml")
        self.assertEqual(self.uri(path), {"uri": "sub/c.xml", "uriBaseId": "%SRCROOT%"})
        elsewhere = self.uri(TURNED)
        self.assertEqual(elsewhere, {"uri": TURNED.as_uri()})
        (self.folder / "in").mkdir()
        log = sarif_log.of("../sub/c.xml", cwd=self.folder / "in")
        self.assertEqual(log.run["artifacts"][0]["location"],
                         {"uri": "../sub/c.xml", "uriBaseId": "%SRCROOT%"})

    def test_the_base_is_left_open(self):
        """So that the log is the same wherever the folder stands (3.14.14)."""
        (base,) = sarif_log.of(TURNED).run["originalUriBaseIds"].values()
        self.assertNotIn("uri", base)

    def test_standard_input_is_kept(self):
        log = sarif_log.of("-", input=WITH_ERROR.encode(), status=1)
        (artifact,) = log.run["artifacts"]
        self.assertNotIn("location", artifact)
        self.assertEqual(artifact["contents"]["text"], WITH_ERROR)
        for result in log.results:
            self.assertNotIn("uri", result["locations"][0]["physicalLocation"]["artifactLocation"])
        failed = [r for r in log.results if r["kind"] == "fail"]
        self.assertTrue(log.text(failed[0]["locations"][0]["physicalLocation"]).startswith("<pump"))

    def test_used_files_and_how_they_are_reached(self):
        self.file("sub/parts/block.xml", BLOCK)
        self.file("sub/parts/inner/valve.xml", VALVE)
        used = '<use id="C1" file="parts/block.xml"/>'
        self.file("sub/c.xml", changed('<check-valve id="C1"/>', used))
        log = sarif_log.of("sub/c.xml", cwd=self.folder, status=0)
        self.assertEqual([a["location"]["uri"] for a in log.run["artifacts"]],
                         ["sub/c.xml", "sub/parts/block.xml", "sub/parts/inner/valve.xml"])
        (result,) = [r for r in log.results if r["ruleId"] == "make-up-path" and r["locations"][0]
                     ["logicalLocations"][0]["fullyQualifiedName"] == "C1/V/C"]
        chain = [*result["locations"], *result["relatedLocations"]]
        self.assertEqual(result["locations"][0]["logicalLocations"][0]["name"], "C")
        self.assertEqual([log.text(one["physicalLocation"]) for one in chain],
                         ['<check-valve id="C"/>', '<use id="V" file="inner/valve.xml"/>', used])
        # Each is included by the next (3.34.3).
        self.assertEqual([one["id"] for one in chain], [0, 1, 2])
        self.assertEqual([[(r["target"], *r["kinds"]) for r in one["relationships"]]
                          for one in chain],
                         [[(1, "isIncludedBy")], [(0, "includes"), (2, "isIncludedBy")],
                          [(1, "includes")]])

    def test_a_ready_assembly_is_kept(self):
        """It comes with the program, so nobody else has the file."""
        self.file("c.xml", changed("<engine ", '<use id="U9" name="brake-block"/> <engine '))
        log = sarif_log.of("c.xml", cwd=self.folder)
        ready = log.run["artifacts"][1]
        self.assertIn("brake-block.xml", ready["description"]["text"])
        self.assertEqual(ready["contents"]["text"],
                         (CIRCUITS / "assemblies" / "brake-block.xml").read_text(encoding="utf-8"))

    def test_a_file_that_cannot_be_used_is_told_with_its_place(self):
        self.file("bad.xml", changed("<motor ", "<moter "))
        self.file("c.xml")
        log = sarif_log.of("bad.xml", "c.xml", "none.xml", cwd=self.folder, status=2)
        self.assertFalse(log.successful)
        first, *_, last = log.notifications
        self.assertEqual(log.text(first["locations"][0]["physicalLocation"]), "moter")
        self.assertNotIn("region", last["locations"][0]["physicalLocation"])
        self.assertGreater(len(log.results), 50)

    def test_the_output_file_has_it_too(self):
        """As what reads the file sees no error stream; and so it is with JSON."""
        self.file("bad.xml", "<circuit")
        for form in ("sarif", "json"):
            self.assertStatus(self.run_here("check", "bad.xml", "--format", form, "-o", form), 2)
        log = sarif_log.Log((self.folder / "sarif").read_text(encoding="utf-8"))
        self.assertEqual((log.successful, len(log.notifications)), (False, 1))
        machine = json.loads((self.folder / "json").read_text(encoding="utf-8"))
        self.assertEqual(machine["summary"]["unreadable"], 1)


class Regions(InAFolder):
    def test_each_holds_the_element_it_names(self):
        for ending, text in (("\n", TURNED.read_text(encoding="utf-8")), ("\r\n", WITH_ERROR),
                             ("\r", UNDECIDED), ("\n", "\ufeff" + WITH_ERROR)):
            text = text.replace("<engine ", "<!-- \u00e9\U0001f6a2 --> <engine ")
            path = self.file("c.xml", text.replace("\n", ending))
            log = sarif_log.of(path)
            self.assertEqual(log.run["columnKind"], "unicodeCodePoints")
            self.assertEqual(log.run["newlineSequences"], ["\r\n", "\n", "\r"])
            count = 0
            for result in log.results:
                flows = result.get("codeFlows", [])
                for one in (*result["locations"],
                            *(step["location"] for flow in flows
                              for step in flow["threadFlows"][0]["locations"])):
                    (subject,) = one["logicalLocations"]
                    if subject["kind"] in ("component", "line"):
                        self.assertRegex(log.text(one["physicalLocation"]),
                                         rf'(?s)^<[a-z-]+ .*\bid="{subject["name"]}".*>$')
                        count += 1
            self.assertGreater(count, 100)


class Bytes(InAFolder):
    def test_the_same_everywhere(self):
        shutil.copy(TURNED, self.folder / "c.xml")
        other = self.folder / "else" / "where"
        other.mkdir(parents=True)
        shutil.copy(TURNED, other / "c.xml")
        first = self.run_here("check", "--format", "sarif", "c.xml")
        for folder, name, zone in ((self.folder, "c.xml", "UTC"),
                                   (other, "c.xml", "Pacific/Kiritimati"),
                                   (other, other / "c.xml", "UTC")):
            ran = run("check", "--format", "sarif", name, cwd=folder,
                      env=program.environment(TZ=zone, LC_ALL="de_DE.UTF-8"))
            self.assertEqual(ran.out, first.out)

    def test_what_would_be_read_as_more_than_text(self):
        """Braces begin a placeholder, "](" makes a link of what stands before it (3.11)."""
        reason = "{0} [see](c.xml)"
        self.file("c.xml", with_waiver(SOUND, reason).replace('by="owner"', f'by="{reason}"'))
        log = sarif_log.of("c.xml", "--rule", "unused-definition", "--rule", "make-up-check",
                           "--today", "2028-01-01", cwd=self.folder)
        (result,) = [r for r in log.results if r["kind"] == "fail"]
        self.assertIn(r"{{0}} \[see\](c.xml)", result["message"]["text"])
        self.assertIn(reason, sarif_log.plain(result["message"]))

    def test_a_line_for_each_result(self):
        """What is written can be compared, and is not held as a tree."""
        log = self.run_here("check", "--format", "sarif", TURNED)
        lines = log.words.splitlines()
        begin = lines.index('"results": [') + 1
        for line in lines[begin:lines.index("],", begin)]:
            self.assertIn("ruleId", json.loads(line.removesuffix(",")))


if __name__ == "__main__":
    program.main()
