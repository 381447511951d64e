"""Holds the second opinion to what the corners say of themselves: in a title "RULE OUTCOME LEVEL: words",
the worst verdict of that rule ("none": nothing is to be judged), or "words; RULE SUBJECT OUTCOME LEVEL
STATES" ("nothing": the rule says nothing of the subject); or in `corners_said`, by name."""

import pathlib
import re
import sys
import tempfile

import decide
import pool
from corners_said import SAID
from verdict import Finding

TITLE = re.compile(r'<circuit [^>]*title="([^"]*)"')
WORST = re.compile(r"([a-z-]+) (none|(?:pass|fail|inconclusive|not-applicable)"
                   r"(?: (?:error|warning|note))?): ")
OF_ONE = re.compile(r".*; ([a-z-]+) (\S+) (.*)")
RULES = {"rating": "pressure-rating", "trapped": "trapped-volume", "raised": "pressure-intensification",
         "flushing": "flushing-setting", "setting": "relief-setting"}
NAMED = ("flushing-setting", "relief-setting")  # rules of which a pass is named


def verdicts_of(file, rule):
    """The verdicts of a rule, but not that there is nothing to judge."""
    return [verdict for verdict in decide.decide(str(file)).verdicts([rule])
            if (verdict.outcome, verdict.subject_type) != ("not-applicable", "circuit")]


def _words(verdict):
    return f"{verdict.outcome} {verdict.level}".strip()


def worst(verdicts):
    """The worst verdict of a rule in a word or two."""
    if not verdicts:
        return "none"
    return _words(min(verdicts, key=lambda verdict: Finding(verdict.outcome, verdict.level).rank))


def of_one(verdicts, subject):
    """The verdict on one subject, with its states."""
    for verdict in verdicts:
        if verdict.subject == subject:
            states = [name + "".join(f"[{valve}={position}]" for valve, position in positions)
                      for name, positions in verdict.states]
            return " ".join([_words(verdict), *states])
    return "not-applicable" if subject == "circuit" else "nothing"


def of_all(verdicts, rule):
    """Subjects by what is said of them; a pass is named only where not all are asked."""
    found = {}
    for verdict in verdicts:
        if verdict.outcome != "pass" or rule in NAMED:
            found.setdefault(" ".join([_words(verdict), *verdict.missing]), []).append(verdict.subject)
    named = "; ".join(f"{' '.join(subjects)} {words}" for words, subjects in found.items())
    return named or ("all pass" if verdicts else "nothing")


def said(name, title, file):
    """(what is said, what should be) of a corner; None where it expects nothing that can be read."""
    if name in SAID:
        rule = RULES[name.partition("-")[0]]
        return of_all(verdicts_of(file, rule), rule), SAID[name]
    found = WORST.match(title)
    if found and found.group(1) in decide.RULES:
        return worst(verdicts_of(file, found.group(1))), found.group(2)
    found = OF_ONE.match(title)
    if found and found.group(1) in decide.RULES:
        rule, subject, expected = found.groups()
        now = of_one(verdicts_of(file, rule), subject)
        # States are named only where they matter.
        return (expected if now.startswith(expected + " ") else now), expected
    return None


def main():
    wrong, tried = 0, 0
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "corner.xml"
        for name, text in pool.hand_made().items():
            file.write_text(text, encoding="utf-8")
            both = said(name.removeprefix("corner-"), TITLE.search(text).group(1), file)
            tried += both is not None
            if both and both[0] != both[1]:
                wrong += 1
                print(f"{name}: {both[0]}, should be {both[1]}")
    print(f"{tried} corners, {wrong} wrong")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
