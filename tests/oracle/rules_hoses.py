"""Hoses.

The rule read here is hose-safety: burst pressure over rating, at least 4 (SAE J517 as a trade article
gives it); not asked where the burst pressure is not given, undecided without a rating. Pressures of
the circuits here are in bar.
"""

from verdict import Verdict

RULE = "hose-safety"
LEAST = 4


def _bar(text):
    number, _, unit = text.partition(" ")
    if unit != "bar":
        raise ValueError(f"{text} is not in bar")
    return float(number)


def _judged(path, attributes):
    if "burst-pressure" not in attributes:
        return Verdict(RULE, "line", path, "not-applicable")
    if "rating" not in attributes:
        return Verdict(RULE, "line", path, "inconclusive", missing=(f"{path}.rating",))
    enough = _bar(attributes["burst-pressure"]) >= LEAST * _bar(attributes["rating"])
    return Verdict(RULE, "line", path, *(("pass",) if enough else ("fail", "warning")))


def hose_safety(judged):
    """A verdict for each hose."""
    return [_judged(path, attributes) for path, attributes in judged.circuit.hoses.items()]
