"""Holds the program against the second opinion, circuit by circuit.

`oracle_test.py PROGRAM` judges every circuit in the tree and every one that the pool of test
circuits gives, prints each disagreement with the circuit's name, and exits with 1 where there is
any, or where the circuits try a rule too little.

`oracle_test.py --planted FAULTY` does the same with a program that judges one rule wrongly, rule
after rule, or misreads one state, and exits with 1 where too little gives it away.
"""

import argparse
import functools
import json
import os
import pathlib
import subprocess
import sys
import tempfile
from concurrent.futures import ProcessPoolExecutor, ThreadPoolExecutor
from dataclasses import dataclass

import compare
import decide
import pool

TREE = pathlib.Path(__file__).resolve().parents[2]
BATCH = 50  # files given to the program in one run
LEAST = 20  # random circuits that pass a rule, and that fail it
SHOWS = 3  # points in which a planted error shows at least
STATES = {"hold": "make-up-check", "towing": "towing-bypass"}  # by which rule a misread state shows


@dataclass
class Opinion:
    """What the second opinion holds of one circuit."""

    verdicts: list  # all rules together, or of each the verdicts that it gives alone: rule -> list
    loops: list
    open_parts: list


def opinion(file, alone):
    """Judges a circuit, all rules together or each of them alone."""
    judged = decide.decide(str(file))
    verdicts = ({rule: judged.verdicts([rule]) for rule in decide.RULES} if alone
                else judged.verdicts())
    return Opinion(verdicts, judged.loops, judged.open_parts)


def opinions(files, alone):
    """Name -> opinion, found on all cores."""
    with ProcessPoolExecutor(os.cpu_count()) as pool_of_processes:
        found = pool_of_processes.map(functools.partial(opinion, alone=alone), files.values(),
                                      chunksize=16)
        return dict(zip(files, found))


def circuits(folder):
    """Name -> file of every circuit; those of the pool are written to the folder."""
    files = {str(file.relative_to(TREE)): file for file in sorted((TREE / "circuits").glob("*/*.xml"))
             if "<circuit" in file.read_text(encoding="utf-8")}  # else a part of one
    for name, text in {**pool.circuits(), **pool.hand_made()}.items():
        files[name] = pathlib.Path(folder) / f"{name}.xml"
        files[name].write_text(text, encoding="utf-8")
    return files


def said_by(command, files):
    """Name -> what the program's JSON says of the circuit."""
    names, found = list(files), []
    for start in range(0, len(names), BATCH):
        batch = [str(files[name]) for name in names[start:start + BATCH]]
        run = subprocess.run([*command, *batch], stdout=subprocess.PIPE, check=False)
        if run.returncode not in (0, 1):
            raise SystemExit(f"the program ended with {run.returncode} on {' '.join(batch)}")
        found += json.loads(run.stdout)["circuits"]
    return dict(zip(names, found))


def disagreements(said, held, rule=None):
    """Lines that name the circuit and what differs, with all rules or with one alone."""
    return [f"{name}: {text}" for name, entry in said.items() for text in compare.disagreements(
        entry, held[name].verdicts[rule] if rule else held[name].verdicts, held[name].loops,
        [rule] if rule else None, held[name].open_parts)]


def untried(said):
    """Lines that name a rule which too few of the random circuits pass or fail."""
    random = [entry for name, entry in said.items() if name.startswith("random-")]
    return [f"{rule}: only {count} of {len(random)} random circuits {outcome}"
            for rule, counts in pool.balance(random).items()
            for outcome, count in counts.items() if count < LEAST]


def against(program, files):
    """Holds the program against the second opinion; gives what is wrong."""
    held = opinions(files, alone=False)
    said = said_by([program, "check", "--format", "json"], files)
    wrong = disagreements(said, held) + untried(said)
    print(*wrong, f"{len(files)} circuits, {len(wrong)} points on which the two differ", sep="\n")
    return wrong


def unnoticed(faulty, files):
    """Tries a planted error in each rule and each of some states; gives those whose error hardly
    shows."""
    held = opinions(files, alone=True)
    planted = [*decide.RULES, *STATES]

    def shown(error):
        return disagreements(said_by([faulty, error], files), held, STATES.get(error, error))

    missed = []
    with ThreadPoolExecutor(os.cpu_count()) as pool_of_threads:
        for error, found in zip(planted, pool_of_threads.map(shown, planted)):
            print(f"{error}: the planted error shows in {len(found)} points"
                  + (f", such as {found[0]}" if found else ""))
            missed += [error] if len(found) < SHOWS else []
    return missed


def main():
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("program")
    parser.add_argument("--planted", action="store_true")
    arguments = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        files = circuits(folder)
        hold = unnoticed if arguments.planted else against
        return 1 if hold(arguments.program, files) else 0


if __name__ == "__main__":
    sys.exit(main())
