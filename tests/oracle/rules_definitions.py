"""What the description defines and nothing uses.

The rule read here is unused-definition: command stages of parts that cannot follow, and waivers
that meet no finding. The day on which a waiver ends is not looked at.
"""

from verdict import Verdict

RULE = "unused-definition"


def _follows(part):
    attribute = "variable-speed" if part.kind in ("engine", "electric-motor") else "variable"
    return part.attributes.get(attribute, "no") == "yes" or "min-displacement" in part.attributes


def unused_definition(judged):
    """A verdict for each part with a stage."""
    return [Verdict(RULE, "component", path, "pass") if _follows(judged.circuit.components[path])
            else Verdict(RULE, "component", path, "fail", "note")
            for path in judged.circuit.components if path in judged.circuit.staged]


def waivers(circuit, verdicts):
    """The verdicts, and one more for each waiver whose rule was judged."""
    ran = {verdict.rule for verdict in verdicts}
    found = {(verdict.rule, verdict.subject) for verdict in verdicts
             if verdict.outcome in ("fail", "inconclusive")}
    own = [Verdict(RULE, "waiver", f"{rule} of {subject}",
                   *(("pass",) if (rule, subject) in found else ("fail", "note")))
           for rule, subject in circuit.waivers if rule in ran]
    if not own or RULE not in ran:
        return verdicts
    return [verdict for verdict in verdicts
            if verdict.rule != RULE or verdict.outcome != "not-applicable"] + own
