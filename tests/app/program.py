"""Running the program as a user does, and the circuits that the tests here share.

Every test file takes the program as its first argument.
"""

import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
CIRCUITS = ROOT / "circuits"
RESURFACER = CIRCUITS / "ice-resurfacer" / "ice-resurfacer.xml"
TURNED = CIRCUITS / "ice-resurfacer" / "retrofit-make-up-check-turned.xml"

PROGRAM = None
HANG = 60  # seconds; no run takes near as long, even with sanitizers on a busy machine

# The drive of a mixer drum: one loop, nothing wrong with it.
SOUND = """<?xml version="1.0" encoding="UTF-8"?>
<circuit format="1" title="Mixer drum">
  <engine id="E1" speed="2400 rpm"/> <pump id="P1" displacement="71 cm3/rev" flow-directions="2" variable="yes"
    drain="external" case-pressure="3 bar" working-pressure="320 bar" max-pressure="420 bar"/>
  <pump id="P2" displacement="18 cm3/rev" max-pressure="60 bar"/>
  <motor id="M1" max-pressure="420 bar" drain="external" case-pressure="3 bar"/> <load id="D1"/>
  <shaft id="W1" joins="E1 P1 P2"/> <shaft id="W2" joins="M1 D1"/>
  <check-valve id="C1"/> <check-valve id="C2"/>
  <relief-valve id="R1" setting="24 bar"/>
  <relief-valve id="R2" setting="350 bar"/> <relief-valve id="R3" setting="350 bar"/>
  <filter id="F1" fineness="10 um" clogging-indicator="visual" max-pressure="60 bar"/>
  <flushing-valve id="V1"/> <relief-valve id="R4" setting="18 bar"/> <cooler id="K1" bypass="1.5 bar"/>
  <reservoir id="T1" volume="60 L" breather="yes" level-indicator="yes"> <port id="S" level="below"/>
    <port id="R" level="below"/> <port id="D" level="below"/> <port id="F" level="below"/> </reservoir>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" rating="60 bar" joins="P2.P R1.P F1.A"/>
  <line id="G2" rating="60 bar" joins="F1.B C1.A C2.A I3.P"/>
  <line id="G3" joins="R1.T T1.R"/>
  <line id="HA" rating="420 bar" joins="I1.P P1.A M1.A R2.P R3.T C1.B V1.A"/>
  <line id="HB" rating="420 bar" joins="I2.P P1.B M1.B R3.P R2.T C2.B V1.B"/>
  <line id="L1" joins="I4.P P1.L M1.L T1.D"/>
  <line id="FA" rating="60 bar" joins="V1.F R4.P"/> <line id="FB" joins="R4.T K1.A"/>
  <line id="FC" joins="K1.B T1.F"/>
  <measuring-point id="I1"/> <measuring-point id="I2"/> <measuring-point id="I3"/> <measuring-point id="I4"/>
</circuit>
"""


def changed(old, new, text=SOUND):
    """A circuit that differs in one place."""
    if text.count(old) != 1:
        raise AssertionError(f"'{old}' must stand once in the circuit")
    return text.replace(old, new)


# One make-up check turned round: an error (charge-supply and make-up-check on side:P1.A).
WITH_ERROR = changed("F1.B C1.A C2.A", "F1.B C1.B C2.A",
                     changed("R3.T C1.B", "R3.T C1.A"))
# The motor's port A hangs on the side through a check that leads out of it, and is made up from the
# charge line through an orifice only: a warning (make-up-check on the branch side:M1.A).
WITH_WARNING = changed("F1.B C1.A C2.A", "F1.B C1.A C2.A O1.A",
                       changed('<line id="HA" rating="420 bar" joins="I1.P P1.A M1.A R2.P R3.T C1.B V1.A"/>',
                               '<check-valve id="C4"/> <orifice id="O1" bore="2 mm"/>'
                               '<line id="HA" rating="420 bar" joins="I1.P P1.A R2.P R3.T C1.B C4.B V1.A"/>'
                               '<line id="HC" rating="420 bar" joins="C4.A O1.B M1.A"/>'))
# No closed loop and nothing that should be in one: a note on the circuit.
WITH_NOTE = """<?xml version="1.0" encoding="UTF-8"?>
<circuit format="1" title="Quay winch, open">
  <engine id="E1"/> <pump id="P1" displacement="28 cm3/rev"/> <motor id="M1"/> <load id="D1"/>
  <shaft id="W1" joins="E1 P1"/> <shaft id="W2" joins="M1 D1"/>
  <reservoir id="T1" breather="yes" level-indicator="yes">
    <port id="S" level="below"/> <port id="R" level="below"/>
  </reservoir>
  <relief-valve id="R1" setting="150 bar"/> <line id="S1" joins="T1.S P1.S"/>
  <line id="H1" joins="P1.P M1.A R1.P"/> <line id="H2" joins="M1.B R1.T T1.R"/>
</circuit>
"""
# A spring-loaded check in the drain, and no figure for what the motor's housing bears.
UNDECIDED = changed('P1.L M1.L T1.D"/>',
                    'P1.L M1.L C3.A"/> <line id="L2" joins="C3.B T1.D"/>',
                    changed('<load id="D1"/>',
                            '<load id="D1"/> <check-valve id="C3" opening-pressure="0.5 bar"/>',
                            changed('drain="external" case-pressure="3 bar"/> <load', 'drain="external"/> <load')))


class Ran:
    """What one run gave."""

    def __init__(self, status, out, err):
        self.status, self.out, self.err = status, out, err

    @property
    def words(self):
        return self.out.decode("utf-8")

    @property
    def messages(self):
        return self.err.decode("utf-8")


def environment(**more):
    """Ours without what changes colours, languages and clocks; with the known leaks of others."""
    kept = {name: value for name, value in os.environ.items()
            if name not in ("NO_COLOR", "LANG", "LANGUAGE", "TZ") and not name.startswith("LC_")}
    kept.setdefault("LSAN_OPTIONS", f"suppressions={ROOT / 'tests' / 'leaks.txt'}")
    return {**kept, **more}


def run(*arguments, program=None, **options):
    """Runs the program; `options` go to subprocess.run."""
    if "input" not in options:
        options.setdefault("stdin", subprocess.DEVNULL)
    options.setdefault("stdout", subprocess.PIPE)
    options.setdefault("env", environment())
    done = subprocess.run([program or PROGRAM, *map(str, arguments)], stderr=subprocess.PIPE,
                          check=False, timeout=HANG, **options)
    return Ran(done.returncode, done.stdout or b"", done.stderr)


class InAFolder(unittest.TestCase):
    """A test with an empty folder of its own."""

    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name).resolve()

    def file(self, name, text=SOUND):
        path = self.folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
        return path

    def names(self):
        return sorted(path.relative_to(self.folder).as_posix()
                      for path in self.folder.rglob("*") if not path.is_dir())

    def run_here(self, *arguments, **options):
        return run(*arguments, cwd=self.folder, **options)

    def assertStatus(self, ran, status):
        self.assertEqual(ran.status, status, ran.err[-2000:])


def main():
    global PROGRAM
    PROGRAM = str(pathlib.Path(sys.argv.pop(1)).resolve())
    unittest.main(module="__main__")
