"""How much faster a warm point is than by scipy's `root` on the same equations, in one run.

    scipy_ratio.py LOOPWRIGHT_BENCH

The circuit is the traction loop of tests/hydraulics/network with its 18 equations written by hand;
both go through 41 x 41 strokes and loads, each point from the last one's solution.
"""

import json
import os
import pathlib
import subprocess
import sys
import tempfile
import time
from types import SimpleNamespace

sys.path.insert(0, str(pathlib.Path(__file__).parents[1] / "hydraulics" / "network"))

import closed_circuits  # noqa: E402
from balance import SCALE  # noqa: E402
from scipy.optimize import root  # noqa: E402

STEPS = 41


def by_scipy(circuit):
    """CPU seconds a point with root's default settings, and the share that it solves."""
    names = list(circuit.start)
    vector = [circuit.start[name] / SCALE[name[0]] for name in names]
    solved, begin = 0, time.process_time()
    for row in range(STEPS):
        stroke = 0.5 + 0.5 * row / (STEPS - 1)
        for column in range(STEPS)[::1 if row % 2 == 0 else -1]:
            torque = 20.0 + 180.0 * column / (STEPS - 1)

            def residuals(values):
                x = SimpleNamespace(**{name: one * SCALE[name[0]]
                                       for name, one in zip(names, values)})
                return circuit.equations(x, stroke, torque).scaled()

            found = root(residuals, vector)
            if max(map(abs, residuals(found.x))) < 1e-6:
                solved, vector = solved + 1, found.x
    return (time.process_time() - begin) / STEPS ** 2, solved / STEPS ** 2


def by_ours(bench, circuit):
    """CPU seconds a point."""
    with tempfile.NamedTemporaryFile("w", suffix=".xml") as file:
        file.write(circuit.text)
        file.flush()
        run = subprocess.run([bench, "--benchmark_filter=warm_sweep_of_file",
                              "--benchmark_format=json"], capture_output=True, check=True,
                             env={**os.environ, "LOOPWRIGHT_BENCH_CIRCUIT": file.name})
    (result,) = json.loads(run.stdout)["benchmarks"]
    return result["cpu_time"] * 1e-6


def main():
    """Prints both and their ratio."""
    circuit = closed_circuits.CIRCUITS["traction loop"]
    theirs, solved = by_scipy(circuit)
    ours = by_ours(sys.argv[1], circuit)
    print(f"scipy {theirs * 1e6:.0f} us a point ({100 * solved:.0f} % solved), "
          f"ours {ours * 1e6:.2f} us: {theirs / ours:.0f} times")


if __name__ == "__main__":
    main()
