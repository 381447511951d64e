"""The test circuits of the second opinion: sound drives that a seed makes, the same damaged, and
small ones made by hand for the corners (`corners`)."""

import random

import builder
import corners
import damage
import furnish
import pool_ceilings
import pool_feeding
import pool_outfit
import pool_said
import pool_stores
import pool_valves
from pool_drives import sound

COUNT = 500
PLAIN = 300  # the first so many have no other valves than the sound drives
SOUND = 60
RULES = ("lost-loop", "charge-supply", "charge-vented", "charge-pump-inlet", "charge-pump-drive",
         "charge-relief", "charge-backflow", "make-up-check", "make-up-path", "intermediate-side",
         "unequal-cylinder", "crossport-relief", "relief-setting", "pressure-rating",
         "pressure-intensification", "hose-safety", "trapped-volume", "blocked-pump", "filtration",
         "filter-reversal", "filter-in-drain", "case-drain-path", "case-drain-return",
         "loop-flushing", "flushing-side", "flushing-setting", "cooling", "suction-shut-off",
         "reservoir-balance", "control-supply", "neutral-on-loss", "load-holding", "parking-brake",
         "towing-bypass", "accumulator-safety", "unconnected-port", "dangling-line",
         "shorted-ports", "isolated-part", "line-function", "double-source", "unused-definition",
         "reversed-rotation")
# What a sound circuit has nothing for, or not always; and of what it says nothing.
SELDOM = ("intermediate-side", "unequal-cylinder", "pressure-limiter", "pressure-intensification",
          "filter-reversal", "filter-in-drain", "flushing-side", "flushing-setting", "cooler-bypass",
          "suction-shut-off", "control-supply", "neutral-on-loss", "displacement-sequence",
          "load-holding", "start-interlock", "parking-brake", "brake-release", "towing-bypass",
          "accumulator-safety", "double-source", "reversed-rotation")
SILENT = ("unused-definition", "hose-safety", "loop-flushing", "cooling")


def sound_circuits():
    """Some of them before they are damaged, and with nothing left to find: name -> text of the file."""
    made = {}
    for number in range(1, SOUND + 1):
        root = sound(number)
        furnish.complete(root)
        pool_ceilings.complete(root, number)
        pool_outfit.complete(root)
        made[f"sound-{number:03}"] = builder.text(root)
    return made


def circuits():
    """The damaged circuits: name -> text of the file."""
    made = {}
    for number in range(1, COUNT + 1):
        root = sound(number)
        lot = random.Random(f"damage {number}")
        damage.spoil(root, lot, lot.randint(1, 3))
        pool_feeding.spoil(root, number)
        furnish.furnish(root, random.Random(f"furnish {number}"))
        pool_ceilings.spoil(root, number)
        if number > PLAIN:
            pool_valves.fit(root, number)
        pool_said.spoil(root, number)
        pool_stores.fit(root, number)
        made[f"random-{number:03}"] = builder.text(root)
    return made


def hand_made():
    """The corners: name -> text of the file."""
    return corners.circuits()


def balance(results):
    """From the program's entries of "circuits" (or anything with the same "verdicts"): for each
    rule on how many circuits it passes wholly and on how many it fails."""
    counts = {rule: {"pass": 0, "fail": 0} for rule in RULES}
    for result in results:
        for rule in RULES:
            outcomes = {v["outcome"] for v in result["verdicts"] if v["rule"] == rule}
            if "fail" in outcomes:
                counts[rule]["fail"] += 1
            elif outcomes == {"pass"}:
                counts[rule]["pass"] += 1
    return counts
