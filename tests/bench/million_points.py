"""What a sweep of a million points takes of the machine.

    million_points.py LOOPWRIGHT

Prints the share of the cores that it keeps busy and the most memory that it holds. A thread that
waits for a core that others use is busy: Linux tells the time that it ran and the time that it was
ready to run (/proc/PID/task/TID/schedstat).
"""

import os
import pathlib
import subprocess
import sys
import time

CIRCUIT = pathlib.Path(__file__).parents[2] / "circuits" / "ice-resurfacer" / "ice-resurfacer.xml"
SWEEP = ("--sweep", "travel=0%..100%:1000", "--sweep", "torque=0N.m..8000N.m:1000")


def main():
    begin = time.monotonic()
    with subprocess.Popen([sys.argv[1], "solve", CIRCUIT, *SWEEP, "--format", "json",
                           "-o", os.devnull]) as process:
        folder = pathlib.Path("/proc") / str(process.pid)
        busy, memory = {}, 0
        while process.poll() is None:
            try:
                for thread in (folder / "task").iterdir():
                    ran, ready, _ = (thread / "schedstat").read_text().split()
                    busy[thread.name] = (int(ran) + int(ready)) * 1e-9
                lines = (folder / "status").read_text().splitlines()
                memory = max([memory] + [int(line.split()[1]) for line in lines
                                         if line.startswith("VmHWM")])
            except (FileNotFoundError, ProcessLookupError):
                continue  # a thread or the program has just ended
            time.sleep(0.05)
    took = time.monotonic() - begin
    cores = len(os.sched_getaffinity(0))
    print(f"a million points: {took:.1f} s, {sum(busy.values()) / took / cores:.0%} of {cores} "
          f"cores busy, at most {memory / 1024:.0f} MB")
    return process.returncode


if __name__ == "__main__":
    sys.exit(main())
