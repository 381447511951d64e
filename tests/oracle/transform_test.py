"""Every test circuit gets the same verdicts with its ids renamed, its elements shuffled, hoses
for lines, and A and B mirrored. And where nothing was damaged, nothing is found.

    transform_test.py PROGRAM
"""

import json
import pathlib
import subprocess
import sys
import tempfile

import pool
import transform

CIRCUITS = pathlib.Path(__file__).resolve().parents[2] / "circuits"
SEEDS = (1, 2, 3)  # of the shuffles
# Which pump is the later one, and which line the first there, follows the order of the file.
BY_ORDER = ("double-source", "trapped-volume")
# Computed at the duty points, where a pool's circuits have none: the tests of hydraulics hold them.
AT_WORK = ("charge-flow", "charge-pressure", "low-side-pressure", "relief-capacity", "filter-flow",
           "case-pressure", "suction-pressure", "line-velocity", "control-pressure",
           "motor-overspeed", "torque-limit", "shaft-torque", "brake-torque", "engine-braking",
           "loop-temperature", "oil-temperature", "viscosity-window", "cooling-capacity")


def check(program, folder, texts):
    """The program's entry for each circuit: name -> entry of "circuits"."""
    files = []
    for number, xml in enumerate(texts.values()):
        files.append(folder / f"{number:04}.xml")
        files[-1].write_text(xml, encoding="utf-8")
    results = []
    for start in range(0, len(files), 100):
        run = subprocess.run([program, "check", "--format", "json", *files[start:start + 100]],
                             capture_output=True, text=True, encoding="utf-8", check=False)
        if run.returncode not in (0, 1):
            print(f"the program ended with {run.returncode}: {run.stderr[:2000]}")
        results += json.loads(run.stdout)["circuits"]
    for result in results:
        if result["readable"]:
            result["verdicts"] = [v for v in result["verdicts"] if v["rule"] not in AT_WORK]
    return dict(zip(texts, results))


def all_circuits():
    """Name -> text of every circuit that the test runs on."""
    texts = {**pool.sound_circuits(), **pool.circuits(), **pool.hand_made()}
    for file in sorted(CIRCUITS.glob("**/*.xml")):
        text = file.read_text(encoding="utf-8")
        if "<circuit" in text and "<line" in text:  # else a part of one, or what `size` is asked
            texts[str(file.relative_to(CIRCUITS))] = transform.inlined(file)
    return texts


def unfit(circuit, result):
    """Lines that say what is wrong with a circuit itself: it cannot be read, or it is meant to be
    sound and has findings."""
    if not result["readable"]:
        return [f"{circuit}: cannot be read: {result['diagnostics'][0]['message']}"]
    return [f"{circuit} should be sound: {v['rule']}: {v['outcome']}: {v['message']}"
            for v in result["verdicts"] if circuit.startswith("sound-") and v["outcome"] != "pass"
            and v["rule"] not in pool.SILENT
            and (v["outcome"] != "not-applicable" or v["rule"] not in pool.SELDOM)]


def changes(xml, result):
    """The changed circuits: how -> (text, names)."""
    keep = ("motor",) if transform.shares_sections(result) else ()
    pumps = transform.pumps_can_be_mirrored(xml, result)
    return {"renamed": transform.renamed(xml),
            "with hoses for lines": transform.bent(xml),
            "mirrored" if pumps else "mirrored but for pumps": transform.mirrored(xml, pumps),
            **{f"shuffled {seed}": transform.shuffled(xml, seed, keep) for seed in SEEDS}}


def outcomes(result, rule):
    """How a rule came out, whatever was judged."""
    return {(v["outcome"], v.get("level")) for v in result["verdicts"] if v["rule"] == rule}


def differences(circuit, how, xml, before, after, names):
    """Lines that say what is not the same in the changed circuit."""
    if not after["readable"]:
        return [f"{circuit} {how}: cannot be read: {after['diagnostics'][0]['message']}"]
    shuffled = how.startswith("shuffled")
    but = BY_ORDER if shuffled else ("hose-safety",) if "hoses" in how else ()
    ports = not shuffled or "<directional-valve" not in xml
    found = [f"{circuit} {how}: {rule}: {words}"
             for rule, words in transform.same_verdicts(before, after, names, ports)
             if rule not in but]
    return found + [f"{circuit} {how}: {rule}: {outcomes(before, rule)} before, "
                    f"{outcomes(after, rule)} after" for rule in (BY_ORDER if shuffled else ())
                    if outcomes(before, rule) != outcomes(after, rule)]


def main(program):
    texts = all_circuits()
    with tempfile.TemporaryDirectory() as name:
        before = check(program, pathlib.Path(name), texts)
        found = [line for c, result in before.items() for line in unfit(c, result)]
        changed = {(circuit, how): change for circuit, result in before.items()
                   if result["readable"]
                   for how, change in changes(texts[circuit], result).items()}
        after = check(program, pathlib.Path(name), {key: xml for key, (xml, _) in changed.items()})
    for (circuit, how), result in after.items():
        found += differences(circuit, how, texts[circuit], before[circuit], result,
                             changed[circuit, how][1])
    print(*found, sep="\n")
    wholly = sum(how == "mirrored" for _, how in after)
    print(f"{len(texts)} circuits, {len(after)} changed ones ({wholly} mirrored with their pumps): "
          f"{len(found)} differences")
    return 1 if found else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1]))
