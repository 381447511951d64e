"""The rules shorted-ports and dangling-line: is the drawing itself in order, whatever the state?"""

import kinds
from verdict import Verdict


def _offenders(rule, subject_type, asked, found):
    """A fail for each, or a pass on the circuit if there is anything to ask."""
    return ([Verdict(rule, subject_type, subject, "fail", "error") for subject in found]
            or ([Verdict(rule, "circuit", "circuit", "pass")] if asked else []))


def shorted_ports(judged):
    """Does a component's passage begin and end on the same node?"""
    ways = [way for way in judged.circuit.ways if way.kind not in (kinds.LEAKAGE, kinds.BYPASS)]
    shorted = {way.owner for way in ways if way.tail == way.head}
    return _offenders("shorted-ports", "component", ways,
                      [path for path in judged.circuit.components if path in shorted])


def dangling_line(judged):
    """Does a line or hose join one port alone?"""
    return _offenders("dangling-line", "line", judged.circuit.lines,
                      [line for line, ports in judged.circuit.joins.items() if len(ports) == 1])
