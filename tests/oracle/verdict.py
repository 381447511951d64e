"""Verdicts, and how the outcomes of single situations become one verdict.

The term read here is "Verdict": one for each rule and subject; the worst state decides (fail,
inconclusive, pass, not applicable), and the states that share it are listed.
"""

from dataclasses import dataclass, replace

from states import RUNNING

WORST_FIRST = ["fail", "inconclusive", "pass", "not-applicable"]
LEVELS = ["error", "warning", "note"]


@dataclass(frozen=True)
class Verdict:
    """A verdict as `check --format json` gives it, without the words for people."""

    rule: str
    subject_type: str
    subject: str
    outcome: str
    level: str = ""
    #: ((state, ((valve, position), ...)), ...) in the order of the states.
    states: tuple = ()
    missing: tuple = ()


@dataclass(frozen=True)
class Finding:
    """What one situation says about one subject."""

    outcome: str
    level: str = ""
    missing: tuple = ()

    @property
    def rank(self):
        """The lower, the worse."""
        return (WORST_FIRST.index(self.outcome), LEVELS.index(self.level) if self.level else 9)


class Ledger:
    """Collects findings of a rule over situations and closes with a verdict for each subject."""

    def __init__(self, rule):
        self.rule = rule
        self._findings = {}

    def note(self, subject_type, subject, situation, finding):
        """Of several findings in the same state and positions the worst stays.

        Where the combinations are too many nothing is decided, and the valves are named.
        """
        survey = situation.survey
        if survey.too_many:
            finding = Finding("inconclusive", missing=tuple(f"{valve.path}.positions"
                                                            for valve in survey.region.valves))
        findings = self._findings.setdefault((subject_type, subject), {})
        key = situation.state, tuple(sorted(situation.positions.items()))
        before = findings.get(key)
        if before is None or finding.rank < before.rank:
            findings[key] = finding
        elif finding.rank == before.rank and finding.missing != before.missing:
            findings[key] = replace(before, missing=before.missing + finding.missing)

    def verdicts(self):
        """One verdict for each subject, in the order in which they were first met."""
        for (subject_type, subject), findings in self._findings.items():
            worst = min(findings.values(), key=lambda finding: finding.rank)
            shared = {key for key, finding in findings.items() if finding.rank == worst.rank}
            missing = sorted({name for key in shared for name in findings[key].missing})
            yield Verdict(self.rule, subject_type, subject, worst.outcome, worst.level,
                          _states(shared, findings), tuple(missing))


def _states(shared, asked):
    """Positions stand only where not all combinations of a state share the outcome.

    Those are all combinations in which the subject is asked about: a section where it exists. Where a
    part without ways stands in two regions, each has combinations of its own.
    """
    def alike(state, valves):
        return [(name, positions) for name, positions in asked
                if name == state and [valve for valve, _ in positions] == valves]

    listed = []
    for state in RUNNING + ["stopped", "towing"]:
        for name, positions in sorted(key for key in shared if key[0] == state):
            whole = shared.issuperset(alike(state, [valve for valve, _ in positions]))
            listed.append((state, () if whole else positions))
    return tuple(dict.fromkeys(listed))
