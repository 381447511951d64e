"""Text, JSON and SARIF of `check` say the same things, over all circuits, each read by itself."""

import collections
import json
import re

import program
import sarif_log
from program import CIRCUITS, UNDECIDED, WITH_ERROR, InAFolder, changed
from sarif_log import BLOCK, TODAY, VALVE, with_waiver

FINDING = re.compile(r"(?m)^(\S.*?):(\d+):(\d+): (?P<word>(?:waived )?(?:error|warning|note|"
                     r"cannot tell|inconclusive|pass|not-applicable)): (.*) \[([a-z-]+)\]$")
COUNTS = re.compile(r"(?m)^(\d+) needs? proved, \d+ refuted \((\d+) errors?, (\d+) warnings?, "
                    r"(\d+) notes?\), (\d+) undecided, (\d+) not applicable(?:, (\d+) waived)?$")


def circuits():
    """Every circuit of the tree, and those of the tests here (name, text)."""
    for path in sorted(CIRCUITS.glob("*/*.xml")):
        yield "-".join(path.parts[-2:]), path.read_text(encoding="utf-8")
    yield "error.xml", WITH_ERROR
    yield "warning.xml", program.WITH_WARNING
    yield "note.xml", program.WITH_NOTE
    yield "undecided.xml", UNDECIDED
    yield "waived.xml", with_waiver(WITH_ERROR)
    yield "due.xml", with_waiver(WITH_ERROR).replace("2027", "2025")
    yield "doubtful.xml", changed("</circuit>", '<remark subject="P1" text="as built" by="owner"/>'
                                  "</circuit>")
    yield "use.xml", changed('<check-valve id="C1"/>', '<use id="C1" file="parts/block.xml"/>',
                             WITH_ERROR)


def word_of(verdict):
    """A verdict's word in the report for people."""
    outcome = verdict["outcome"]
    word = verdict["level"] if outcome == "fail" else outcome
    if "waived" in verdict:
        return f"waived {word}"
    return "cannot tell" if word == "inconclusive" else word


class TheSame(InAFolder):
    @classmethod
    def setUpClass(cls):
        cls.all = list(circuits())

    def setUp(self):
        super().setUp()
        self.file("parts/block.xml", BLOCK)
        self.file("parts/inner/valve.xml", VALVE)
        for name, text in self.all:
            self.file(name, text)

    def each(self):
        """(JSON's circuit, SARIF's log, text) of each."""
        unreadable = 0
        for name, _ in self.all:
            with self.subTest(name):
                machine = self.run_here("check", "--format", "json", name, *TODAY)
                ran = self.run_here("check", "--format", "sarif", name, *TODAY)
                text = self.run_here("check", "--all", name, *TODAY)
                self.assertEqual((ran.status, ran.err), (machine.status, machine.err))
                self.assertEqual((text.status, text.err), (machine.status, machine.err))
                (circuit,) = json.loads(machine.out)["circuits"]
                unreadable += not circuit["readable"]
                yield circuit, sarif_log.Log(ran.out, self.folder), text.words
        self.assertEqual(unreadable, 4, "the files of circuits/assemblies")

    def same_place(self, place, log, location):
        file, *rest = log.place(location["physicalLocation"])
        self.assertEqual(rest, [place[key] for key in ("line", "column", "end_line", "end_column")])
        self.assertTrue(str(file).endswith(place["file"]), file)

    def test_verdicts_of_json(self):
        compared = points = 0
        for circuit, log, _ in self.each():
            verdicts = circuit.get("verdicts", [])
            self.assertEqual(len(log.results), len(verdicts))
            for result, verdict in zip(log.results, verdicts):
                self.same_verdict(result, verdict, log)
                compared += 1
                points += "point" in verdict
        self.assertGreater(compared, 2000)
        self.assertGreater(points, 200)

    def same_verdict(self, result, verdict, log):
        self.assertEqual(result["ruleId"], verdict["rule"])
        self.assertEqual(sarif_log.OUTCOMES[result["kind"]], verdict["outcome"])
        self.assertEqual(result["level"], verdict.get("level", "none"))
        (location,) = result["locations"]
        self.same_place(verdict["place"], log, location)
        (subject,) = location["logicalLocations"]
        self.assertEqual((subject["kind"], subject["fullyQualifiedName"]),
                         (verdict["subject"]["type"], verdict["subject"]["id"]))
        properties = result.get("properties", {})
        for key in ("states", "point", "measured", "required", "margin", "missing", "waived",
                    "follows"):
            self.assertEqual(properties.get(key), verdict.get(key), key)
        message = sarif_log.plain(result["message"])
        said = [verdict["message"], verdict["subject"]["id"], verdict.get("point", ""),
                *verdict.get("missing", ()), *(s["name"] for s in verdict.get("states", ()))]
        self.assertEqual([words for words in said if words not in message], [])
        self.same_witness(result, verdict, log)
        self.same_standing(result, verdict)

    def same_witness(self, result, verdict, log):
        flows = result.get("codeFlows", [])
        self.assertEqual(len(flows), "witness" in verdict)
        for flow in flows:
            self.assertEqual(flow["properties"]["shape"], verdict["witness"]["shape"])
            (thread,) = flow["threadFlows"]
            steps = verdict["witness"]["steps"]
            self.assertEqual(len(thread["locations"]), len(steps))
            for one, step in zip(thread["locations"], steps):
                self.same_place(step["place"], log, one["location"])
                (subject,) = one["location"]["logicalLocations"]
                self.assertEqual((subject["kind"], subject["fullyQualifiedName"]),
                                 (step["type"], step["id"]))
                self.assertEqual(one.get("properties", {}),
                                 {k: step[k] for k in ("from", "to", "text") if k in step})
                message = sarif_log.plain(one["location"]["message"])
                self.assertIn(step["id"], message)
                self.assertTrue(message.endswith(step.get("text", "")), message)

    def same_standing(self, result, verdict):
        self.assertEqual(len(result["suppressions"]), "waived" in verdict)
        for one in result["suppressions"]:
            self.assertEqual((one["kind"], one["status"]), ("inSource", "accepted"))
            for words in verdict["waived"].values():
                self.assertIn(words, one["justification"])
        causes = [one for one in result.get("relatedLocations", ())
                  if one["message"]["text"].startswith("Follows from")]
        self.assertEqual(len(causes), "follows" in verdict)
        for one in causes:
            cause = verdict["follows"]
            self.assertEqual(one["logicalLocations"][0]["fullyQualifiedName"],
                             cause["subject"]["id"])
            self.assertIn(cause["rule"], one["message"]["text"])

    def test_findings_of_the_text(self):
        """Causes stand first there, so the order is another."""
        for circuit, log, text in self.each():
            told = collections.Counter(
                (int(line), int(column), word, sentence, rule)
                for _, line, column, word, sentence, rule in FINDING.findall(text))
            verdicts = circuit.get("verdicts", [])
            self.assertEqual(told, collections.Counter(
                (v["place"]["line"], v["place"]["column"], word_of(v),
                 f"{v['subject']['id']}: {v['message']}", v["rule"]) for v in verdicts))
            starts = collections.Counter((line, column, rule)
                                         for line, column, _, _, rule in told.elements())
            self.assertEqual(starts, collections.Counter(
                (*log.place(r["locations"][0]["physicalLocation"])[1:3], r["ruleId"])
                for r in log.results))

    def test_counts(self):
        for circuit, log, text in self.each():
            count = collections.Counter(
                "waived" if r["suppressions"] else r["level"] if r["kind"] == "fail" else r["kind"]
                for r in log.results)
            ours = {key: count[{"not_applicable": "notApplicable", "inconclusive": "open"}
                               .get(key, key)]
                    for key in ("pass", "error", "warning", "note", "inconclusive",
                                "not_applicable", "waived")}
            self.assertEqual(log.run["properties"]["summary"], ours)
            if not circuit["readable"]:
                continue
            self.assertEqual(circuit["summary"], ours)
            self.assertEqual([int(n or 0) for n in COUNTS.search(text).groups()],
                             list(ours.values()))

    def test_what_stands_beside_the_verdicts(self):
        for circuit, log, _ in self.each():
            self.assertEqual(log.successful, circuit["readable"])
            self.assertEqual(len(log.notifications), len(circuit["diagnostics"]))
            for one, diagnostic in zip(log.notifications, circuit["diagnostics"]):
                self.assertEqual(one["level"], diagnostic["level"])
                for key in ("message", "expected", "suggestion"):
                    self.assertIn(diagnostic.get(key, ""), sarif_log.plain(one["message"]))
                self.same_place(diagnostic["place"], log, one["locations"][0])
            (target,) = [a for a in log.run["artifacts"] if "roles" in a]
            self.assertEqual(target["roles"], ["analysisTarget"])
            beside = {k: circuit[k] for k in ("title", "drawing", "revision", "loops", "open_parts",
                                              "remarks", "summary") if k in circuit}
            self.assertEqual(target.get("properties", {}), beside)

    def test_files_together_and_one_by_one(self):
        names = [name for name, _ in self.all]
        together = sarif_log.of(*names, *TODAY, cwd=self.folder, status=2)
        apart = [sarif_log.of(name, *TODAY, cwd=self.folder) for name in names]

        def bare(results):  # an index counts from the run's first file
            text = json.dumps(results, sort_keys=True)
            return re.sub(r'"artifactLocation": \{"index": \d+', '"artifactLocation": {', text)

        self.assertEqual(bare(together.results), bare([r for log in apart for r in log.results]))
        self.assertEqual(bare(together.notifications),
                         bare([n for log in apart for n in log.notifications]))


if __name__ == "__main__":
    program.main()
