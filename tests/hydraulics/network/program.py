"""Runs `loopwright solve` and lays its answer out as figures by name."""

import json
import subprocess

PROGRAM = None  # path, set by the tests


def solve(circuit):
    """The points of a circuit, given as text or as bytes of a file."""
    return answer(circuit)["points"]


def duty(circuit):
    """Likewise its whole duty."""
    return answer(circuit)["duty"]


def answer(circuit):
    """All that the program tells of it."""
    if isinstance(circuit, str):
        circuit = circuit.encode()
    run = subprocess.run([PROGRAM, "solve", "-", "--format", "json", "--color", "never"],
                         input=circuit, capture_output=True, check=False)
    if run.returncode not in (0, 1):
        raise AssertionError(run.stderr.decode())
    return json.loads(run.stdout)


def figures(point):
    """`HA.pressure`, `HA.flow`, `HA.drop`, `P1.torque`, `W1.speed`, ... in SI."""
    found = {}
    for node in point["nodes"]:
        found[f"{node['line']}.pressure"] = node["pressure"]["value"]
    for kind in ("lines", "machines", "shafts"):
        for one in point[kind]:
            for key, value in one.items():
                if isinstance(value, dict):
                    found[f"{one['id']}.{key}"] = value["value"]
                elif isinstance(value, float):
                    found[f"{one['id']}.{key}"] = value
    return found
