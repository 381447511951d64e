"""Holds the second opinion to what the titles of some corners say: "RULE OUTCOME LEVEL: words" names
the worst verdict of that rule; "none" says that nothing is to be judged."""

import pathlib
import re
import sys
import tempfile

import decide
import pool
from verdict import Finding

TITLE = re.compile(r'<circuit [^>]*title="([a-z-]+) (none|(?:pass|fail|inconclusive|not-applicable)'
                   r'(?: (?:error|warning|note))?): ')


def said(file, rule):
    """The worst verdict of a rule in a word or two."""
    verdicts = decide.decide(str(file)).verdicts([rule])
    worst = min(verdicts, key=lambda verdict: Finding(verdict.outcome, verdict.level).rank)
    if worst.outcome == "not-applicable" and worst.subject_type == "circuit":
        return "none"
    return f"{worst.outcome} {worst.level}".strip()


def main():
    wrong, tried = 0, 0
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "corner.xml"
        for name, text in pool.hand_made().items():
            title = TITLE.search(text)
            if title and title.group(1) in decide.RULES:
                file.write_text(text, encoding="utf-8")
                found = said(file, title.group(1))
                tried += 1
                if found != title.group(2):
                    wrong += 1
                    print(f"{name}: {found}, should be {title.group(2)}")
    print(f"{tried} corners, {wrong} wrong")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
