"""Makes the pages of the rules: what `loopwright rules` says of each, and a circuit that passes
and one that fails, drawn, both cut from the rule's own tests.

    rule_pages.py PROGRAM RULES_TESTS FOLDER

The tests write down the circuits that they read (tests/support/circuit_text.h), a suite is named
after its rule, and the program judges them here anew. Of all pairs of one that passes and one that
fails the page shows that which differs least, of several such the smallest.
"""

import collections
import concurrent.futures
import hashlib
import itertools
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

BATCH = 100  # circuits that one run of the program judges
LARGEST = 40_000  # bytes; what is longer, such as a generated circuit, shows nothing to a reader


def called(*words, good=(0,), **options):
    ran = subprocess.run([str(word) for word in words], stdin=subprocess.DEVNULL,
                         capture_output=True, text=True, check=False, **options)
    if ran.returncode not in good:
        raise SystemExit(f"{' '.join(map(str, words[:3]))} gives {ran.returncode}: {ran.stderr}")
    return ran.stdout


def catalogue(program):
    return json.loads(called(program, "rules", "--format", "json"))["rules"]


def suite_of(rule):
    return "".join(word.capitalize() for word in rule.split("-"))


def circuits_of_tests(tests, rules, folder):
    """Runs the tests of the rules and gives the circuits that each rule's suite reads, by rule."""
    suites = ":".join(f"{suite_of(rule['id'])}.*" for rule in rules)
    called(tests, f"--gtest_filter={suites}", "--gtest_brief=1",
           env={**os.environ, "LOOPWRIGHT_CIRCUITS_TO": str(folder)})
    found = {}
    for rule in rules:
        known = {}
        for file in sorted((folder / suite_of(rule["id"])).glob("*.xml")):
            text = file.read_bytes()
            if len(text) <= LARGEST:
                known.setdefault(hashlib.sha256(text).digest(), file)
        found[rule["id"]] = list(known.values())
    return found


def outcomes(program, rule, files):
    """What the rule (its entry in the catalogue) says of each circuit: "fail" where it fails as
    badly as it can, "pass" where it passes and leaves nothing undecided, else None."""
    judged = {}
    for first in range(0, len(files), BATCH):
        batch = files[first:first + BATCH]
        said = json.loads(called(program, "check", "--rule", rule["id"], "--format", "json",
                                 "--fail-on", "never", *batch, good=(0, 2)))
        for file, one in zip(batch, said["circuits"], strict=True):
            verdicts = [(verdict["outcome"], verdict.get("level"))
                        for verdict in one.get("verdicts", [])]
            only = {outcome for outcome, _ in verdicts} - {"not-applicable"}
            judged[file] = ("fail" if ("fail", rule["level"]) in verdicts else
                            "pass" if only == {"pass"} else None)
    return judged


def elements_of(file):
    return collections.Counter(re.findall(r"<[^>]*>", file.read_text()))


def best_pair(judged):
    """The circuits that pass and fail and differ in least, the smallest of those."""
    sides = {outcome: [(file, elements_of(file)) for file, said in judged.items()
                       if said == outcome] for outcome in ("pass", "fail")}

    def cost(pair):
        (_, good), (_, bad) = pair
        return ((good - bad) + (bad - good)).total(), good.total() + bad.total()
    pairs = itertools.product(sides["pass"], sides["fail"])
    best = min(pairs, key=cost, default=None)
    return best and {"pass": best[0][0], "fail": best[1][0]}


HEADINGS = {"pass": "A circuit that passes", "fail": "A circuit that fails"}


def command(rule, outcome):
    """How the program is asked for what a page shows; it has nothing to say of passes unasked."""
    return ["check", *(["--all"] if outcome == "pass" else []), "--rule", rule,
            f"{rule}.{outcome}.xml"]


def page(program, rule, folder):
    text = called(program, "rules", rule, "--format", "markdown")
    for outcome, heading in HEADINGS.items():
        words = command(rule, outcome)
        said = called(program, *words, good=(0, 1), cwd=folder)
        text += (f"\n### {heading}\n\n![{heading}]({rule}.{outcome}.svg)\n\n"
                 f"Of [this circuit]({words[-1]}) the program says:\n\n"
                 f"```text\n$ loopwright {' '.join(words)}\n{said}```\n")
    return text


def make_one(program, rule, files, folder):
    """Makes the page of a rule; gives what is missing, or nothing."""
    name = rule["id"]
    pair = best_pair(outcomes(program, rule, files))
    if not pair:
        return (f"{name}: of {len(files)} circuits in the tests {suite_of(name)} none passes, or "
                "none fails at the rule's level")
    for outcome, file in pair.items():
        circuit = folder / f"{name}.{outcome}.xml"
        shutil.copyfile(file, circuit)
        called(program, "draw", "--rule", name, circuit, "-o", circuit.with_suffix(".svg"))
    (folder / f"{name}.md").write_text(page(program, name, folder))
    return None


def contents(rules):
    text = "# Rules\n\nMade from the program and its tests; a passing and a failing circuit each.\n"
    for family, some in itertools.groupby(rules, key=lambda rule: rule["family"]):
        text += f"\n## {family}\n\n"
        text += "".join(f"- [`{one['id']}`]({one['id']}.md): {one['question']}\n" for one in some)
    return text


def make(program, tests, folder):
    """Makes all pages; gives what is missing, a line each."""
    folder.mkdir(parents=True, exist_ok=True)
    for file in folder.iterdir():  # of a run before, when there may have been other rules
        if file.suffix in (".md", ".svg", ".xml"):
            file.unlink()
    rules = catalogue(program)
    with tempfile.TemporaryDirectory() as read:
        circuits = circuits_of_tests(tests, rules, pathlib.Path(read))
        with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as workers:
            missing = list(filter(None, workers.map(
                lambda rule: make_one(program, rule, circuits[rule["id"]], folder), rules)))
    (folder / "README.md").write_text(contents(rules))
    return missing


if __name__ == "__main__":
    MISSING = make(*(pathlib.Path(word).resolve() for word in sys.argv[1:4]))
    print("\n".join(MISSING) or f"The rules' pages: {sys.argv[3]}/README.md")
    sys.exit(1 if MISSING else 0)
