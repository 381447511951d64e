"""The XML schema against the program, with xmllint (package libxml2-utils) as the judge of XML.

    schema_test.py PROGRAM

Whatever the schema refuses, an editor underlines while the circuit is typed; so what XSD 1.0 can
express, both must refuse, and what the program reads, the schema must let pass.
"""

import json
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
SCHEMA = ROOT / "parser" / "circuit.xsd"
PROGRAM = None

# Read by both. Every bad circuit is this one with one thing changed.
SOUND = """<?xml version="1.0" encoding="UTF-8"?>
<circuit format="1" title="quay winch" revision="A">
  <engine id="E1" power="55 kW" speed="2400 rpm"/>
  <pump id="P1" displacement="71 cm3/rev" min-displacement="10 cm3/rev" variable="yes"
        flow-directions="2" control="hydraulic" drain="external" case-ports="2" case-pressure="3 bar"/>
  <motor id="M1" displacement="80 cm3/rev"/>
  <shaft id="W1" joins="E1 P1"/>
  <reservoir id="T1" volume="60 L"> <port id="S" level="below"/> <port id="R" level="above"/> </reservoir>
  <junction id="J1"> <port id="A"/> <port id="B"/> </junction>
  <relief-valve id="R1" setting="24 bar" full-flow-pressure="30 bar"/>
  <directional-valve id="V1" actuation="lever">
    <port id="P"/> <port id="A"/>
    <position id="0" rest="yes"/>
    <position id="a" in="drive-forward"><path from="P" to="A" throttled="yes"/></position>
  </directional-valve>
  <assembly id="U1" title="make-up block">
    <check-valve id="C1"/>
    <port id="A" of="C1.A"/>
    <port id="B" of="C1.B"/>
  </assembly>
  <line id="HA" joins="P1.A M1.A" bore="25 mm" length="2 m" function="working"/>
  <line id="HB" joins="P1.B M1.B"/>
  <device id="X1"> <port id="A"/> <port id="B"/> <passage from="A" to="B" class="metering"/> </device>
  <throttle id="O9"> <table> <row flow="10 l/min" drop="1 bar"/> <row flow="20 l/min" drop="4 bar"/> </table>
    <tolerance of="bore" value="0.1 mm"/> </throttle>
  <load id="D1"/>
  <fluid grade="VG 46" viscosity-index="105"/>
  <command id="Z1" given-by="pedal"> <stage of="P1" from="0 %" to="33 %"/> </command>
  <duty altitude="200 m"> <point id="haul" travel="20 %" share="40 %"> <set of="D1" torque="30 N.m"/> </point> </duty>
  <interlock when="E1 turns" prevents="V1.a"/>
  <remark subject="P1.A" text="as on the plate" date="2026-02-28"/>
  <waiver rule="filtration" subject="circuit" reason="a test" by="owner" until="2027-06-30"/>
  <sheet size="A3"> <place of="P1" x="3" turn="90"/> </sheet>
</circuit>
"""

# name: (what stands in SOUND, what stands there instead, a piece of the program's message).
BOTH_REFUSE = {
    "unknown element": ("<motor ", "<moter ", "unknown element 'moter'"),
    "element in the wrong place": ('<path from="P"', '<port from="P"', "'port'"),
    "line in a line": ('function="working"/>', 'function="working"><line/></line>', "'line'"),
    "unknown attribute": ('volume="60 L"', 'volumes="60 L"', "unknown attribute 'volumes'"),
    "unknown attribute of circuit": ('revision="A"', 'version="A"', "unknown attribute 'version'"),
    "attribute of another kind": ('<engine id="E1"', '<engine id="E1" bore="3 mm"', "'bore'"),
    "wrong word": ('control="hydraulic"', 'control="hydraulics"', "control cannot be 'hydraulics'"),
    "word in capitals": ('function="working"', 'function="Working"', "function cannot be"),
    "blank about a word": ('actuation="lever"', 'actuation=" lever"', "actuation cannot be"),
    "neither yes nor no": ('variable="yes"', 'variable="true"', "variable cannot be 'true'"),
    "level of a junction's port": ('<port id="A"/> <port id="B"/> </j',
                                   '<port id="A" level="above"/> <port id="B"/> </j', "'level'"),
    "no id": ('<junction id="J1"', "<junction", "id"),
    "no id of a port": ('<port id="S" level', "<port level", "id"),
    "no id of an assembly": ('<assembly id="U1"', "<assembly", "id"),
    "format of an inner assembly": ('<assembly id="U1"', '<assembly id="U1" format="1"', "format"),
    "no format": (' format="1"', "", "format"),
    "other format": ('format="1"', 'format="2"', "format"),
    "no joins": (' joins="P1.B M1.B"', "", "joins"),
    "empty joins": ('joins="P1.B M1.B"', 'joins=" "', "joins"),
    "joins without a port": ('joins="P1.B M1.B"', 'joins="P1.B M1"', "'M1'"),
    "port on a shaft": ('joins="E1 P1"', 'joins="E1 P1.A"', "'P1.A'"),
    "no of": (' of="C1.A"', "", "of"),
    "of without a port": (' of="C1.A"', ' of="C1"', "'C1'"),
    "number without unit": ('setting="24 bar"', 'setting="24"', "has no unit"),
    "unit of another dimension": ('setting="24 bar"', 'setting="24 mm"', "is the unit of a length"),
    "unknown unit": ('setting="24 bar"', 'setting="24 Bar"', "unknown unit 'Bar'"),
    "comma": ('setting="24 bar"', 'setting="24,5 bar"', "a comma in a number"),
    "no number": ('setting="24 bar"', 'setting="inf bar"', "decimal number"),
    "hexadecimal": ('setting="24 bar"', 'setting="0x18 bar"', "hexadecimal"),
    "empty quantity": ('setting="24 bar"', 'setting=""', "empty"),
    "count out of range": ('case-ports="2"', 'case-ports="4"', "case-ports"),
    "count with a sign": ('case-ports="2"', 'case-ports="+2"', "case-ports"),
    "count with a fraction": ('case-ports="2"', 'case-ports="2.0"', "case-ports"),
    "id that begins with a digit": ('id="J1"', 'id="1J"', "'1J'"),
    "id with a point": ('id="J1"', 'id="J.1"', "'J.1'"),
    "id with an accent": ('id="J1"', 'id="J\u00e9"', "'J\u00e9'"),
    "id with a blank": ('id="J1"', 'id="J 1"', "'J 1'"),
    "empty id": ('id="J1"', 'id=""', "id"),
    "bad position id": ('<position id="a"', '<position id="-a"', "'-a'"),
    "text in a circuit": ('<motor id="M1"', 'motor <motor id="M1"', "text"),
    "text in a component": ('<check-valve id="C1"/>', '<check-valve id="C1">x</check-valve>', "text"),
    "child of a component": ('<check-valve id="C1"/>',
                             '<check-valve id="C1"><port id="X"/></check-valve>', "'port'"),
    "unknown grade": ('grade="VG 46"', 'grade="VG46"', "'VG46'"),
    "no such date": ('date="2026-02-28"', 'date="2026-02-30"', "date"),
    "date of another land": ('until="2027-06-30"', 'until="30.06.2027"', "until"),
    "stage without an end": (' to="33 %"', "", "'to'"),
    "set without figures of its own": (' of="D1" torque', " torque", "'of'"),
    "point id twice": ("</duty>", '<point id="haul"/></duty>', "'haul'"),
    "command's id twice": ('<command id="Z1"', '<command id="P1"', "'P1'"),
    "unknown class": ('class="metering"', 'class="throttled"', "'throttled'"),
    "row beside a table": ("<tolerance of", '<row flow="1 l/min"/><tolerance of', "'row'"),
    "waiver without a name": (' by="owner"', "", "'by'"),
    "turn by half": ('turn="90"', 'turn="45"', "'45'"),
    "command in an assembly": ("<check-valve id=\"C1\"/>", "<command id=\"C1\"/>", "'command'"),
    "id twice": ('<junction id="J1"', '<junction id="M1"', "'M1'"),
    "id of a component and a line": ('<line id="HA"', '<line id="T1"', "'T1'"),
    "id twice in an assembly": ('<check-valve id="C1"/>',
                                '<check-valve id="C1"/><orifice id="C1"/>', "'C1'"),
    "port twice": ('<port id="R" level', '<port id="S" level', "'S'"),
    "assembly's port twice": ('<port id="B" of', '<port id="A" of', "'A'"),
    "position twice": ('<position id="a"', '<position id="0"', "'0'"),
    "unknown root": (SOUND[SOUND.index("<circuit"):], "<drawing/>", "drawing"),
    "a namespace": ('<circuit format="1"', '<circuit xmlns="urn:x" format="1"', "xmlns"),
}

# What XSD 1.0 cannot express, or not without listing every case; the schema must let it pass, or it
# belongs above.
ONLY_THE_PROGRAM_REFUSES = {
    "component that is not there": ('joins="P1.B M1.B"', 'joins="P1.B M9.B"', "M9"),
    "port that is not there": ('joins="P1.B M1.B"', 'joins="P1.B M1.T"', "'T'"),
    "port that a condition takes away": ('joins="P1.B M1.B"', 'joins="P1.L M1.B"', "'L'"),
    "port joined twice": ('joins="P1.B M1.B"', 'joins="P1.B M1.A"', "M1.A"),
    "port inside an assembly": ('joins="P1.B M1.B"', 'joins="P1.B U1/C1.A"', "U1/C1.A"),
    "shaft of what has none": ('joins="E1 P1"', 'joins="E1 T1"', "T1"),
    "path to no port": ('to="A" throttled', 'to="B" throttled', "'B'"),
    "path to itself": ('from="P" to="A"', 'from="P" to="P"', "itself"),
    "no position at rest": (' rest="yes"', "", "rest"),
    "two positions at rest": ('id="a" in="drive-forward"', 'id="a" rest="yes"', "rest"),
    "unknown state": ('in="drive-forward"', 'in="drive-forwards"', "'drive-forwards'"),
    "negative setting": ('setting="24 bar"', 'setting="-24 bar"', "out of range"),
    "displacement of nothing": ('displacement="80 cm3/rev"', 'displacement="0 cm3/rev"', "out of range"),
    "number out of range": ('setting="24 bar"', 'setting="1e999 bar"', "out of range"),
    "full flow below the opening": ('full-flow-pressure="30 bar"', 'full-flow-pressure="20 bar"',
                                    "full-flow-pressure"),
    "least above largest": ('min-displacement="10 cm3/rev"', 'min-displacement="90 cm3/rev"',
                            "min-displacement"),
    "declared port of nothing": ('of="C1.A"', 'of="C9.A"', "C9"),
    "use without its file": ('<line id="HB"', '<use id="U2" file="nothing.xml"/><line id="HB"',
                             "nothing.xml"),
}

# The same circuit written otherwise.
BOTH_READ = {
    "as it is": ("", ""),
    "no blank before a unit": ('setting="24 bar"', 'setting="24bar"'),
    "blanks about a quantity": ('setting="24 bar"', 'setting=" 24  bar "'),
    "sign and exponent": ('setting="24 bar"', 'setting="+2.4e1 bar"'),
    "no leading digit": ('setting="24 bar"', 'setting=".5 bar"'),
    "point behind": ('setting="24 bar"', 'setting="24. bar"'),
    "written absolute": ('setting="24 bar"', 'setting="24 bar  abs"'),
    "minus nought": ('setting="24 bar"', 'setting="-0 bar"'),
    "micro sign": ('bore="25 mm"', 'bore="25000 \u00b5m"'),
    "Greek mu": ('bore="25 mm"', 'bore="25000 \u03bcm"'),
    "count with noughts": ('case-ports="2"', 'case-ports="002"'),
    "line over two lines": ('joins="P1.A M1.A"', 'joins="P1.A\n\t M1.A "'),
    "one port alone": ('joins="P1.B M1.B"', 'joins="P1.B"'),
    "same id inside and outside": ('<check-valve id="C1"/>', '<check-valve id="C1"/><load id="P1"/>'),
    "same letter at two components": ('<port id="S" level', '<port id="A" level'),
    "port and part of one name": ('<port id="B" of', '<port id="C1" of'),
    "entity in a title": ('title="quay winch"', 'title="&#x51;uay &amp; winch"'),
    "no ports (a warning)": ('<port id="A"/> <port id="B"/> </j', "</j"),
    "case ports of an inner drain (a warning)": ('drain="external"', 'drain="internal"'),
    "comment": ("<motor ", "<!-- drum --><motor "),
    "carriage returns": ("\n", "\r\n"),
}


def changed(old, new):
    if old and old not in ("\n",) and SOUND.count(old) != 1:
        raise AssertionError(f"'{old}' must stand once in the sound circuit")
    return SOUND.replace(old, new) if old else SOUND


class Folder:
    """Circuits in files of their own, judged by both."""

    def __init__(self, texts):
        self.names = dict(enumerate(texts))
        self.folder = tempfile.TemporaryDirectory()
        self.paths = {}
        for number, name in self.names.items():
            path = pathlib.Path(self.folder.name) / f"{number}.xml"
            path.write_bytes(texts[name].encode("utf-8"))
            self.paths[name] = path

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.folder.cleanup()

    def valid(self):
        return validated(self.paths)


def validated(paths):
    """name -> whether xmllint finds it valid; one process for all."""
    run = subprocess.run(["xmllint", "--noout", "--nonet", "--schema", str(SCHEMA),
                          *map(str, paths.values())],
                         capture_output=True, text=True, encoding="utf-8", check=False)
    said = dict(re.findall(r"^(\S+) (validates|fails to validate)$", run.stderr, re.MULTILINE))
    if len(said) != len(paths):
        raise AssertionError(run.stderr[:2000])
    return {name: said[str(path)] == "validates" for name, path in paths.items()}


def check(path):
    """Exit status and what the program says."""
    run = subprocess.run([PROGRAM, "check", "--fail-on", "never", str(path)], capture_output=True,
                         text=True, encoding="utf-8", check=False)
    return run.returncode, run.stdout + run.stderr


class Schema(unittest.TestCase):
    maxDiff = None

    def test_every_example_passes(self):
        paths = {p.relative_to(ROOT).as_posix(): p for p in sorted((ROOT / "circuits").rglob("*.xml"))}
        self.assertGreater(len(paths), 5)
        self.assertEqual([name for name, good in validated(paths).items() if not good], [])

    def test_every_circuit_of_the_other_tests(self):
        """What the schema refuses the program must refuse: those are circuits with a mistake that XSD
        can express; and what the program reads without a word the schema must let pass."""
        texts = {}
        for source in sorted((ROOT / "tests").rglob("*_test.cpp")):
            for number, text in enumerate(re.findall(r'R"\((<circuit format="1".*?</circuit>\s*)\)"',
                                                     source.read_text(encoding="utf-8"), re.DOTALL)):
                texts[f"{source.relative_to(ROOT)} {number}"] = text
        self.assertGreater(len(texts), 150)
        refused = 0
        with Folder(texts) as folder:
            for name, path in folder.paths.items():
                run = subprocess.run(["xmllint", "--noout", "--nonet", "--schema", str(SCHEMA), str(path)],
                                     capture_output=True, text=True, encoding="utf-8", check=False)
                good = run.returncode == 0
                status, said = check(path)
                with self.subTest(name):
                    if not good:
                        refused += 1
                        self.assertEqual(status, 2, run.stderr + said)
        self.assertGreater(refused, 30)

    def test_what_both_read(self):
        with Folder({name: changed(*edit) for name, edit in BOTH_READ.items()}) as folder:
            for name, good in folder.valid().items():
                with self.subTest(name):
                    self.assertTrue(good, "refused by the schema")
                    status, said = check(folder.paths[name])
                    self.assertEqual(status, 0, said)

    def refused_by_the_program(self, folder, bad):
        for name, (_, _, piece) in bad.items():
            with self.subTest(name):
                status, said = check(folder.paths[name])
                self.assertEqual(status, 2, said)
                self.assertRegex(said, r"(?m)^\S+:\d+:\d+: error: .*" + re.escape(piece))

    def test_what_the_schema_can_express_both_refuse(self):
        bad = BOTH_REFUSE
        with Folder({name: changed(old, new) for name, (old, new, _) in bad.items()}) as folder:
            self.assertEqual([name for name, good in folder.valid().items() if good], [])
            self.refused_by_the_program(folder, bad)

    def test_what_it_cannot_express_it_lets_pass(self):
        bad = ONLY_THE_PROGRAM_REFUSES
        with Folder({name: changed(old, new) for name, (old, new, _) in bad.items()}) as folder:
            self.assertEqual([name for name, good in folder.valid().items() if not good], [])
            self.refused_by_the_program(folder, bad)

    def test_both_read_the_same_quantities(self):
        numbers = ("0", "-0", "+3", "12", "1.5", ".5", "5.", "-.5", "1e3", "1E-2", "1.e+2", "007",
                   "", "+", "-", ".", "e3", "1e", "1e+", "+-5", "--5", "1,5", "1 000", "1'000", "0x10",
                   "-0x1p3", "nan", "inf", "-inf", "1/2", "1.2.3", "\u22125", "\u0661", "1_000", "(3)")
        units = ("N.m", " Nm", "  kN.m ", "\tlbf.ft", "", " ", " NM", " N m", " bar", "\u00a0N.m", " N\u00b7m",
                 "%", ".N.m", " N.m N.m")
        texts = [number + unit for number in numbers for unit in units]
        read = 0
        for start in range(0, len(texts), 150):  # the program stops at 200 messages a file
            part = texts[start:start + 150]
            loads = "".join(f'<load id="D{i}" torque="{text}"/>\n' for i, text in enumerate(part))
            with Folder({"loads": f'<circuit format="1">\n{loads}</circuit>'}) as folder:
                path = folder.paths["loads"]
                schema = subprocess.run(["xmllint", "--noout", "--schema", str(SCHEMA), str(path)],
                                        capture_output=True, text=True, encoding="utf-8", check=False)
                judged = {int(n) for n in re.findall(r":(\d+): element load: ", schema.stderr)}
                ours = {int(n) for n in re.findall(r"(?m)^\S+:(\d+):\d+: error: torque: ", check(path)[1])}
                self.assertEqual({part[n - 2] for n in judged ^ ours}, set())
                read += len(part) - len(ours)
        # The first twelve numbers with the first four units; five of them take the point of ".N.m".
        self.assertEqual(read, 12 * 4 + 5)

    def test_every_word_of_every_kind_passes(self):
        run = subprocess.run([PROGRAM, "kinds", "--format", "json"], capture_output=True, text=True,
                             encoding="utf-8", check=True)
        inside = {"directional-valve": '<port id="P"/><position id="0" rest="yes"/>',
                  "flow-divider": '<port id="A"/><port id="B"/>',
                  "declared": '<port id="A"/><port id="B"/><passage from="A" to="B" class="joined"/>'}
        parts = [f'<{kind["name"]} id="X{{}}" {attribute["name"]}="{word}">'
                 f'{inside.get(kind["name"], "") or inside.get(word, "")}</{kind["name"]}>'
                 for kind in json.loads(run.stdout)["kinds"] for attribute in kind["attributes"]
                 for word in attribute.get("choices", ())]
        self.assertGreater(len(parts), 30)
        self.assertTrue(any('design="radial-piston"' in part for part in parts))
        text = "".join(part.format(i) + "\n" for i, part in enumerate(parts))
        with Folder({"words": f'<circuit format="1">{text}</circuit>'}) as folder:
            self.assertEqual(folder.valid(), {"words": True})
            self.assertEqual(check(folder.paths["words"])[0], 0)

    def test_an_assembly_in_a_file_of_its_own(self):
        good = '<assembly format="1" title="block"><orifice id="O1"/><port id="A" of="O1.A"/></assembly>'
        texts = {"good": good, "no format": good.replace(' format="1"', ""),
                 "an id": good.replace("<assembly ", '<assembly id="U1" '),
                 "port twice": good.replace("</a", '<port id="A" of="O1.B"/></a'),
                 "id twice": good.replace("<port", '<load id="O1"/><port')}
        user = SOUND.replace('<line id="HB"', '<use id="U2" file="{}"/><line id="HB"')
        with Folder(texts) as folder:
            self.assertEqual({name for name, valid in folder.valid().items() if valid}, {"good"})
            for name, path in folder.paths.items():
                with self.subTest(name):
                    outer = path.with_suffix(".circuit")
                    outer.write_text(user.format(path.name), encoding="utf-8")
                    status, said = check(outer)
                    self.assertEqual(status, 0 if name == "good" else 2, said)

    def test_set(self):
        block = '<assembly format="1"><orifice id="O1"/><port id="A" of="O1.A"/></assembly>'
        good = SOUND.replace('<line id="HB"', '<use id="U2" file="0.xml"><set of="O1" attribute="bore" '
                                              'value="2 mm"/></use><line id="HB"')
        texts = {"block": block, "good": good, "no of": good.replace(' of="O1" attr', " attr"),
                 "no attribute": good.replace(' attribute="bore"', ""),
                 "no value": good.replace(' value="2 mm"', ""),
                 "as an attribute": good.replace('attribute="bore" value', "bore"),
                 "set in a line": good.replace('<line id="HA"', '<set of="O1"/><line id="HA"')}
        with Folder(texts) as folder:
            self.assertEqual({name for name, valid in folder.valid().items() if valid},
                             {"block", "good"})
            for name in list(texts)[1:]:
                with self.subTest(name):
                    status, said = check(folder.paths[name])
                    self.assertEqual(status, 0 if name == "good" else 2, said)


if __name__ == "__main__":
    PROGRAM = sys.argv.pop(1)
    unittest.main()
