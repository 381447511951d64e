"""Logs of `check --format sarif` against the published schema and a validator of the format.

    sarif_schema_test.py PROGRAM FOLDER

The schema of OASIS SARIF 2.1.0 comes with the npm package @microsoft/jest-sarif, the validator is
@microsoft/sarif-multitool, which reads the standard's rules as well that no schema can hold. Both
are put into FOLDER, below the build folder, by the first run, which needs the network; without it
this test fails and says so.
"""

import json
import os
import pathlib
import subprocess
import sys

import jsonschema

import program
import sarif_log
from program import CIRCUITS, TURNED, UNDECIDED, WITH_ERROR, InAFolder, changed
from sarif_log import BLOCK, VALVE, with_waiver

PACKAGES = {"@microsoft/jest-sarif": "1.0.0-beta.0", "@microsoft/sarif-multitool": "5.7.0",
            "@microsoft/sarif-multitool-linux": "5.7.0"}
TOOLS = None


def installed(name):
    try:
        text = (TOOLS / "node_modules" / name / "package.json").read_text(encoding="utf-8")
        return json.loads(text)["version"]
    except OSError:
        return None


def setUpModule():
    if {name: installed(name) for name in PACKAGES} != PACKAGES:
        TOOLS.mkdir(parents=True, exist_ok=True)
        (TOOLS / "package.json").write_text('{"private": true}\n', encoding="utf-8")
        named = [f"{name}@{version}" for name, version in PACKAGES.items()]
        try:
            done = subprocess.run(["npm", "install", "--no-audit", "--no-fund", "--ignore-scripts",
                                   "--save-exact", *named], cwd=TOOLS, capture_output=True,
                                  text=True, check=False, timeout=600)
        except FileNotFoundError as error:
            raise AssertionError("npm is not installed (Debian package npm), and without it "
                                 "nothing can be said about the schema") from error
        if done.returncode != 0:
            raise AssertionError(f"npm cannot install {', '.join(named)}; is there no network? "
                                 f"Nothing can be said about the schema.\n{done.stderr[-2000:]}")
    # What its own script would do.
    validator().chmod(0o755)


def validator():
    return TOOLS / "node_modules/@microsoft/sarif-multitool-linux/Sarif.Multitool"


def schema_complaints(log):
    path = TOOLS / "node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json"
    schema = json.loads(path.read_text(encoding="utf-8"))
    checker = jsonschema.validators.validator_for(schema)(schema)
    return [f"{list(error.absolute_path)}: {error.message[:300]}"
            for error in checker.iter_errors(log)]


def validator_errors(path):
    """What the validator holds for an error; its exit status speaks of its own trouble only."""
    report = path.with_suffix(".report")
    program_of_it = TOOLS / "node_modules/@microsoft/sarif-multitool/bin.js"
    done = subprocess.run(["node", program_of_it, "validate", path, "-o", report, "--log",
                           "ForceOverwrite"],
                          capture_output=True, text=True, check=False, timeout=600,
                          env={**os.environ, "DOTNET_SYSTEM_GLOBALIZATION_INVARIANT": "1"})
    if not report.exists():
        raise AssertionError(f"the validator gave {done.returncode} and no report: {done.stdout}"
                             f"{done.stderr}")
    found = json.loads(report.read_text(encoding="utf-8-sig"))["runs"][0]
    trouble = [n["message"]["text"] for invocation in found.get("invocations", ())
               for kind in ("toolExecutionNotifications", "toolConfigurationNotifications")
               for n in invocation.get(kind, ()) if n.get("level") == "error"]
    if done.returncode != 0:
        trouble.append(f"status {done.returncode}: {done.stdout[-2000:]}{done.stderr[-2000:]}")
    return trouble + [
        f"{r['ruleId']} {r['locations'][0].get('physicalLocation', {}).get('region')}: "
        f"{r['message']}" for r in found.get("results", ()) if r.get("level") == "error"]


class Valid(InAFolder):
    def valid(self, *files, **options):
        ran = self.run_here("check", "--format", "sarif", "-o", "log.sarif", *files, **options)
        self.assertIn(ran.status, (0, 1, 2))
        log = json.loads((self.folder / "log.sarif").read_text(encoding="utf-8"))
        self.assertEqual(schema_complaints(log), [])
        self.assertEqual(validator_errors(self.folder / "log.sarif"), [])
        return sarif_log.Log(json.dumps(log), self.folder)

    def test_the_circuits_of_the_tree(self):
        files = sorted(CIRCUITS.glob("*/*.xml"))
        self.assertGreater(len(files), 20)
        log = self.valid(*files)
        self.assertLessEqual({"pass", "fail", "notApplicable"}, {r["kind"] for r in log.results})

    def test_all_that_a_log_can_hold(self):
        self.file("sub/parts/block.xml", BLOCK)
        self.file("sub/parts/inner/valve.xml", VALVE)
        text = changed('<check-valve id="C1"/>', '<use id="C1" file="parts/block.xml"/>',
                       with_waiver(WITH_ERROR, "{0} [as](agreed)"))
        self.file("sub/a:b \u00e9%.xml", text)
        self.file("undecided.xml", UNDECIDED)
        self.file("bad.xml", changed("<motor ", "<moter "))
        self.file("ready.xml", changed("<engine ", '<use id="U9" name="brake-block"/> <engine '))
        self.file("own.xml", '<thresholds format="1"> <hose-safety burst-ratio="5"/> </thresholds>')
        log = self.valid("sub/a:b \u00e9%.xml", "undecided.xml", self.folder / "bad.xml", TURNED,
                         "none.xml", "ready.xml", "-", "--thresholds", "own.xml", "--today",
                         "2026-11-25", input=WITH_ERROR.encode())
        self.assertEqual({r["kind"] for r in log.results},
                         {"pass", "fail", "open", "notApplicable"})
        self.assertTrue(any(r["suppressions"] for r in log.results))
        self.assertTrue(any("relationships" in r["locations"][0] for r in log.results))
        self.assertGreater(len(log.notifications), 1)

    def test_nothing_to_say(self):
        self.file("bad.xml", "<circuit")
        self.assertEqual(self.valid("bad.xml").results, [])

    def test_each_judge_sees_what_is_wrong(self):
        self.file("c.xml", WITH_ERROR)
        sound = self.run_here("check", "--format", "sarif", "c.xml").words
        for old, new in (('"columnKind": "unicodeCodePoints"', '"columnKind": "characters"'),
                         ('"kind":"fail"', '"kind":"failed"')):
            self.assertIn(old, sound)
            self.assertNotEqual(schema_complaints(json.loads(sound.replace(old, new))), [])
        log = json.loads(sound)
        result = log["runs"][0]["results"][0]  # where a schema sees nothing
        result["ruleIndex"] = len(log["runs"][0]["tool"]["driver"]["rules"])
        result["locations"][0]["physicalLocation"]["region"]["endLine"] = 1
        self.assertEqual(schema_complaints(log), [])
        found = validator_errors(self.file("log.sarif", json.dumps(log)))
        self.assertEqual({error.split()[0] for error in found}, {"SARIF1007", "SARIF1009"})


if __name__ == "__main__":
    TOOLS = pathlib.Path(sys.argv.pop(2)).resolve()
    program.main()
