"""`loopwright new` and the ready assemblies: what comes with the program is sound and draws."""

import json

import program
from program import CIRCUITS, InAFolder, run

STARTING = sorted(path.stem for path in (CIRCUITS / "starting").glob("*.xml"))
READY = sorted(path.stem for path in (CIRCUITS / "assemblies").glob("*.xml"))

# The ready assemblies make up a drive between them.
FROM_ASSEMBLIES = """<circuit format="1" title="Sweeper drive from ready assemblies">
  <engine id="E1" speed="2200 rpm" power="40 kW"/> <load id="D1"/>
  <use id="U1" file="pump-unit.xml"/>
  <use id="U2" file="flushed-motor.xml"/>
  <use id="U3" file="conditioning.xml"/>
  <use id="U4" file="brake-block.xml"/>
  <shaft id="W1" joins="E1 U1/P1 U1/P2"/> <shaft id="W2" joins="U2/M1 U4/B1 D1"/>
  <line id="HA" joins="U1.A U2.A"/> <line id="HB" joins="U1.B U2.B"/>
  <line id="S1" joins="U3.S U1.S"/> <line id="G1" joins="U1.G U3.P"/> <line id="G2" joins="U3.F U1.F U4.P"/>
  <line id="L1" joins="U2.L2 U1.L1"/> <line id="L2" joins="U1.L2 U3.D"/> <line id="B1" joins="U4.T U3.R"/>
</circuit>
"""


class New(InAFolder):
    def judged(self, name):
        ran = self.run_here("check", "--format", "json", name)
        self.assertStatus(ran, 0)
        return json.loads(ran.words)["circuits"][0]

    def test_each_is_sound_complete_and_draws(self):
        self.assertEqual(STARTING, ["hoist", "stationary", "traction"])
        for kind in STARTING:
            with self.subTest(kind):
                name = f"{kind}.xml"
                ran = self.run_here("new", kind, "-o", name)
                self.assertStatus(ran, 0)
                self.assertEqual((ran.out, ran.err), (b"", b""))
                said = self.judged(name)
                self.assertEqual(said["diagnostics"], [])
                self.assertEqual(len(said["loops"]), 1)
                # Measuring points would take it to a larger sheet: they are the reader's to add.
                self.assertEqual({(one["rule"], one["level"]) for one in said["verdicts"]
                                  if one["outcome"] not in ("pass", "not-applicable")
                                  and one.get("missing") != ["duty"]},
                                 {("test-points", "note")})
                self.assertStatus(self.run_here("draw", name, "-o", f"{kind}.svg"), 0)

    def test_traction_is_what_comes_without_a_name(self):
        self.assertEqual(run("new").out, run("new", "traction").out)
        self.assertEqual(run("new").out, (CIRCUITS / "starting" / "traction.xml").read_bytes())

    def test_says_what_there_is(self):
        ran = run("new", "tracton")
        self.assertStatus(ran, 2)
        self.assertEqual((ran.out, ran.messages),
                         (b"", "loopwright: no starting circuit 'tracton'; perhaps 'traction'\n"))
        ran = run("new", "xyz")
        self.assertStatus(ran, 2)
        self.assertIn(", ".join(STARTING), ran.messages)

    def test_a_file_that_is_there_stays(self):
        kept = self.file("mine.xml", "a day's work")
        ran = self.run_here("new", "-o", "mine.xml")
        self.assertStatus(ran, 2)
        self.assertIn("'mine.xml' is there already", ran.messages)
        self.assertEqual(kept.read_text(), "a day's work")
        self.assertEqual(self.names(), ["mine.xml"])

    def test_a_folder_that_is_not_there(self):
        ran = self.run_here("new", "-o", "nowhere/new.xml")
        self.assertStatus(ran, 2)
        self.assertIn("nowhere", ran.messages)

    def test_a_device_is_written_straight(self):
        ran = self.run_here("new", "-o", "/dev/stdout")
        self.assertStatus(ran, 0)
        self.assertEqual(ran.out, run("new").out)


class Assemblies(InAFolder):
    def test_make_up_a_sound_drive(self):
        for name in READY:
            self.file(f"{name}.xml", (CIRCUITS / "assemblies" / f"{name}.xml").read_bytes())
        for name in ("pump-unit", "flushed-motor", "brake-block", "conditioning"):
            self.assertIn(name, READY)
        self.file("drive.xml", FROM_ASSEMBLIES)
        ran = self.run_here("check", "--format", "json", "drive.xml")
        self.assertStatus(ran, 0)
        said = json.loads(ran.words)["circuits"][0]
        self.assertEqual(said["diagnostics"], [])
        self.assertEqual([(loop["id"], loop["actuators"]) for loop in said["loops"]],
                         [("loop:U1/P1", ["U2/M1"])])
        passed = {(one["rule"], one["subject"]["id"]) for one in said["verdicts"] if one["outcome"] == "pass"}
        for rule in ("charge-supply", "make-up-check", "crossport-relief"):
            self.assertLessEqual({(rule, "side:U1/P1.A"), (rule, "side:U1/P1.B")}, passed)
        self.assertStatus(self.run_here("draw", "drive.xml", "-o", "drive.svg"), 0)


if __name__ == "__main__":
    program.main()
