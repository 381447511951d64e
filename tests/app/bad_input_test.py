"""Bad input: exit 2, a message with place and remedy, no output touched, no crash and no hang.

The list is the project's own statement of what must be refused. A bad circuit is a sound one with
one thing changed, and stands here with a mark where the message must point.
"""

import json
import os
import re
import resource

import program
from program import InAFolder, SOUND

MARK = "\u2907"
OLD = b"what stood here before\n"
CPU_SECONDS = 5  # they take hundredths; with sanitizers more
MOST = 16 * 1024 * 1024

# name: (what stands in SOUND, what stands there instead, pieces of the message)
BAD = {
    "no end": ("</circuit>", f"</{MARK}circuit", "closed"),
    "wrong end": ("</reservoir>", f"</{MARK}tank>", "tank"),
    "an attribute without quotes": ('<load id="D1"', f"<load {MARK}id=D1", "quotes"),
    "a bare ampersand": ('title="Mixer drum"', f'title="Mixer {MARK}& drum"', "&"),
    "duplicate attribute": ('<motor id="M1"', f'<motor id="M1" {MARK}id="M1"', "'id'"),
    "second root": ("</circuit>", f"</circuit>\n<{MARK}circuit/>", "second root"),
    "text behind the root": ("</circuit>", f"</circuit>\n{MARK}end", "root"),
    "unknown entity": ('title="Mixer drum"', f'title="Mixer {MARK}&drum;"', "drum"),
    "DOCTYPE": ("<circuit ", f"{MARK}<!DOCTYPE circuit>\n<circuit ", "DOCTYPE"),
    "entities that blow up": ("<circuit ", MARK + '<!DOCTYPE c [<!ENTITY a "aa"><!ENTITY b '
                              '"&a;&a;">]>\n<circuit ', "DOCTYPE"),
    "a file as an entity": ("<circuit ", MARK + '<!DOCTYPE c [<!ENTITY a SYSTEM '
                            '"file:///etc/passwd">]>\n<circuit ', "DOCTYPE"),
    "wrong unit": ('setting="24 bar"', f'setting="{MARK}24 mm"', "'mm'"),
    "unknown unit": ('setting="24 bar"', f'setting="{MARK}24 baar"', "baar"),
    "missing unit": ('setting="24 bar"', f'setting="{MARK}24"', "unit"),
    "no number": ('setting="24 bar"', f'setting="{MARK}bar"', "number"),
    "unknown element": ("<motor ", f"<{MARK}moter ", "'moter'"),
    "unknown attribute": ("flow-directions=", f"{MARK}flow-direction=", "'flow-direction'"),
    "unknown word": ('clogging-indicator="visual"', f'clogging-indicator="{MARK}vissual"', "vissual"),
    "unknown component": ("P2.P R1.P F1.A", f"P2.P {MARK}R9.P F1.A", "R9"),
    "unknown port": ("P2.P R1.P F1.A", f"P2.P {MARK}R1.Q F1.A", "Q"),
    "unknown part of a shaft": ('joins="M1 D1"', f'joins="M1 {MARK}D9"', "D9"),
    "id twice": ('<check-valve id="C2"', f'<check-valve id="{MARK}C1"', "'C1'"),
    "port joined twice": ("R1.T T1.R", f"R1.T T1.R {MARK}R1.P", r"R1\.P"),
    "line that joins nothing": ('<line id="L1" joins="I4.P P1.L M1.L T1.D"/>',
                                f'<{MARK}line id="L1"/>', "joins"),
    "line with empty joins": ('joins="I4.P P1.L M1.L T1.D"', f'{MARK}joins=" "', "joins|port"),
    "a control character": ("Mixer drum", f"Mixer {MARK}\x01drum", "U\\+0001|character|control"),
    "no format": ('<circuit format="1"', f"<{MARK}circuit", "format"),
}


def marked(old, new):
    """The circuit, and line and column of the mark."""
    if SOUND.count(old) != 1:
        raise AssertionError(f"'{old}' must stand once in the circuit")
    text = SOUND.replace(old, new)
    before, _, _ = text.partition(MARK)
    return text.replace(MARK, ""), (before.count("\n") + 1, len(before) - before.rfind("\n"))


class BadInput(InAFolder):
    def refused(self, name, *pieces, place=None, file=None):
        """Every command that reads it says the same and touches nothing."""
        for out in ("out", "layout"):
            self.file(out, OLD)
        before = {path: (self.folder / path).stat().st_mtime_ns for path in self.names()}
        said = set()
        for command in (("check", name), ("check", name, "-o", "out"),
                        ("draw", name, "--format", "svg", "-o", "out", "--write-layout", "layout"),
                        ("draw", name, "-o", "new.png")):
            used = resource.getrusage(resource.RUSAGE_CHILDREN)
            ran = self.run_here(*command)
            now = resource.getrusage(resource.RUSAGE_CHILDREN)
            self.assertLess(now.ru_utime + now.ru_stime - used.ru_utime - used.ru_stime, CPU_SECONDS)
            self.assertStatus(ran, 2)
            self.assertEqual(ran.out, b"")
            said.add(ran.messages)
            self.assertEqual({path: (self.folder / path).stat().st_mtime_ns for path in self.names()},
                             before)
        self.assertEqual(len(said), 1)
        message = said.pop()
        first = message.splitlines()[0]
        found = re.match(r"(.*?):(\d+):(\d+): error: \S", first)
        self.assertIsNotNone(found, message)
        self.assertEqual(found.group(1), file or str(name))
        if place:
            self.assertEqual((int(found.group(2)), int(found.group(3))), place, message)
        for piece in pieces:
            self.assertRegex(message, piece)
        self.assertRegex(message, r"(?m)^    (expected|perhaps)   ?\S", "no remedy")
        self.assertLess(len(message), 10_000)
        self.same_in_json(name, found, message)
        return message

    def same_in_json(self, name, found, message):
        ran = self.run_here("check", name, "--format", "json")
        self.assertStatus(ran, 2)
        self.assertEqual(ran.messages, message)
        document = json.loads(ran.out)
        circuit = document["circuits"][0]
        self.assertEqual((circuit["file"], circuit["readable"]), (str(name), False))
        place = circuit["diagnostics"][0]["place"]
        self.assertEqual((place["file"], place["line"], place["column"]),
                         (found.group(1), int(found.group(2)), int(found.group(3))))
        self.assertEqual((document["summary"]["files"], document["summary"]["unreadable"]), (1, 1))
        self.assertEqual(sum(v for k, v in document["summary"].items()
                             if k not in ("files", "unreadable")), 0)

    def test_the_sound_one_is_read(self):
        self.file("c.xml")
        self.assertStatus(self.run_here("check", "c.xml"), 0)

    def test_each_mistake(self):
        for name, (old, new, piece) in BAD.items():
            with self.subTest(name):
                text, place = marked(old, new)
                self.file("c.xml", text)
                self.refused("c.xml", piece, place=place)

    def test_all_mistakes_at_once_but_the_first_alone_where_no_XML(self):
        text = SOUND
        for name in ("wrong unit", "unknown element", "unknown port", "id twice"):
            old, new, _ = BAD[name]
            text = text.replace(old, new.replace(MARK, ""))
        self.file("c.xml", text)
        message = self.refused("c.xml", "mm", "moter", "C1", "Q")
        self.assertGreaterEqual(message.count(": error: "), 4)
        lines = [int(line) for line in re.findall(r"(?m)^c\.xml:(\d+):", message)]
        self.assertEqual(lines, sorted(lines))
        self.file("c.xml", text.replace("</reservoir>", "</tank>").replace("</circuit>", "<circuit"))
        self.assertEqual(self.refused("c.xml").count(": error: "), 1)

    def test_bytes_that_are_no_text(self):
        sound = SOUND.encode()
        line, column = 2, len('<circuit format="1" title="Mixer ') + 1
        for name, bad in {"alone": b"\x80", "short": b"\xc3", "overlong": b"\xc0\xaf",
                          "surrogate": b"\xed\xa0\x80", "too high": b"\xf4\x90\x80\x80",
                          "Latin": "\xfc".encode("latin-1")}.items():
            with self.subTest(name):
                self.file("c.xml", sound.replace(b"Mixer drum", b"Mixer " + bad + b"drum"))
                self.refused("c.xml", "UTF-8", place=(line, column))
        for name, bad in {"UTF-16": SOUND.encode("utf-16"), "UTF-32": SOUND.encode("utf-32"),
                          "other": sound.replace(b"UTF-8", b"ISO-8859-1"), "nothing": b"",
                          "noughts": b"\0" * 100, "no XML": b"\x7fELF\x02\x01\x01"}.items():
            with self.subTest(name):
                self.file("c.xml", bad)
                self.refused("c.xml")

    def test_deep_nesting(self):
        for element in ("a", 'assembly id="A"'):
            for closed in (True, False):
                with self.subTest(element=element, closed=closed):
                    name = element.split()[0]
                    self.file("c.xml", '<circuit format="1">' + f"<{element}>" * 100_000 +
                              f"</{name}>" * (100_000 if closed else 0) + "</circuit>")
                    self.refused("c.xml", "deep|nest|levels|64")

    def test_many_mistakes_on_one_line(self):
        mistakes = " ".join(f"X{i}.A" for i in range(300_000))
        self.file("c.xml", SOUND.replace("</circuit>", f'<line id="X" joins="{mistakes}"/></circuit>'))
        used = resource.getrusage(resource.RUSAGE_CHILDREN)
        ran = self.run_here("check", "c.xml")
        now = resource.getrusage(resource.RUSAGE_CHILDREN)
        self.assertLess(now.ru_utime + now.ru_stime - used.ru_utime - used.ru_stime, CPU_SECONDS)
        self.assertStatus(ran, 2)
        self.assertIn("299800 more messages", ran.messages)

    def test_the_limit_of_a_file(self):
        sound = SOUND.encode()
        for padding in (b" ", b"\n"):
            full = sound + padding * (MOST - len(sound))
            self.file("c.xml", full)
            self.assertStatus(self.run_here("check", "c.xml"), 0)
            self.file("c.xml", full + padding)
            self.refused("c.xml", str(MOST), str(MOST + 1), place=(1, 1))

    def test_what_is_no_file(self):
        (self.folder / "folder").mkdir()
        (self.folder / "nowhere.xml").symlink_to("missing")
        (self.folder / "circle.xml").symlink_to("circle.xml")
        for name, said in {"missing.xml": "no such file", "folder": "folder", ".": "folder",
                           "nowhere.xml": "no such file", "circle.xml": "circle",
                           "/dev/null": "regular", "/dev/zero": "regular", "n" * 300: "long"}.items():
            with self.subTest(name):
                self.file_place(name, said)

    def file_place(self, name, said):
        ran = self.run_here("check", name)
        self.assertStatus(ran, 2)
        self.assertRegex(ran.messages, f"^{re.escape(name)}:1:1: error: .*{said}.*\n    expected  ")


class Use(BadInput):
    """`use` stays below the folder of the outermost circuit and comes to an end."""

    BLOCK = ('<assembly format="1"> <check-valve id="C"/> <port id="A" of="C.A"/>'
             ' <port id="B" of="C.B"/> </assembly>')

    def user(self, file):
        text = SOUND.replace("F1.B C1.A", "F1.B U.A").replace("R3.T C1.B", "R3.T U.B")
        old = '<check-valve id="C1"/>'
        text = text.replace(old, f'<use id="U" file="{file}"/>')
        return text

    def setUp(self):
        super().setUp()
        self.file("block.xml", self.BLOCK)
        self.file("inside/block.xml", self.BLOCK)
        # Where the `use` stands in `user`, by its text.
        before = self.user("x").partition('<use ')[0]
        self.place = (before.count("\n") + 1, len(before) - before.rfind("\n"))

    def used_at(self):
        return rf"used at +c\.xml:{self.place[0]}:{self.place[1]}\b"

    def at_the_use(self, message, file):
        """The message points at the file's name in the `use` element, or at that element; at the
        attribute where the name is empty."""
        line, column = map(int, re.match(re.escape(file) + r":(\d+):(\d+): ", message).groups())
        self.assertEqual(line, self.place[0])
        self.assertIn(column - self.place[1], (len("<"), len('<use id="U" '), len('<use id="U" file="')))

    def test_a_block_in_the_folder_is_read(self):
        for file in ("block.xml", "./block.xml", "inside/../block.xml", "inside/block.xml"):
            self.file("c.xml", self.user(file))
            self.assertStatus(self.run_here("check", "c.xml"), 0)

    def test_out_of_the_folder(self):
        for file in ("../block.xml", "../inside/../block.xml", "../../block.xml",
                     str(self.folder / "block.xml"), str(self.folder / "inside/block.xml")):
            with self.subTest(file):
                self.file("inside/c.xml", self.user(file))
                self.at_the_use(self.refused("inside/c.xml", re.escape(file)), "inside/c.xml")

    def test_out_of_the_folder_by_a_link(self):
        (self.folder / "inside/file.xml").symlink_to("../block.xml")
        (self.folder / "inside/up").symlink_to("..")
        (self.folder / "inside/root").symlink_to("/")
        for file in ("file.xml", "up/block.xml", f"root{self.folder}/block.xml"):
            with self.subTest(file):
                self.file("inside/c.xml", self.user(file))
                self.at_the_use(self.refused("inside/c.xml", re.escape(file), "folder"),
                                "inside/c.xml")

    def test_what_is_not_there_or_no_file(self):
        for file in ("missing.xml", "inside", "", "."):
            with self.subTest(file):
                self.file("c.xml", self.user(file))
                self.at_the_use(self.refused("c.xml"), "c.xml")

    def test_a_pipe_does_not_hang(self):
        os.mkfifo(self.folder / "inside/pipe.xml")
        self.file_place("inside/pipe.xml", "regular")
        self.file("inside/c.xml", self.user("pipe.xml"))
        self.at_the_use(self.refused("inside/c.xml", "regular"), "inside/c.xml")

    def test_itself(self):
        self.file("c.xml", self.user("c.xml"))
        self.at_the_use(self.refused("c.xml"), "c.xml")
        (self.folder / "other.xml").symlink_to("c.xml")
        self.file("c.xml", self.user("other.xml"))
        self.at_the_use(self.refused("c.xml"), "c.xml")

    def test_in_a_circle(self):
        one = '<assembly format="1"> <use id="V" file="{}"/> <port id="A" of="V.A"/></assembly>'
        self.file("one.xml", one.format("two.xml"))
        self.file("two.xml", one.format("one.xml"))
        self.file("three.xml", one.format("three.xml"))
        for file, last in (("one.xml", "two.xml"), ("three.xml", "three.xml")):
            with self.subTest(file):
                self.file("c.xml", self.user(file).replace(" U.B", ""))
                message = self.refused("c.xml", "uses itself", file=last)
                self.assertRegex(message, self.used_at())

    def test_a_mistake_in_a_used_file_has_its_place_there(self):
        self.file("inside/block.xml", self.BLOCK.replace("<check-valve ", "<chek-valve "))
        self.file("c.xml", self.user("inside/block.xml"))
        message = self.refused("c.xml", "chek-valve", file="inside/block.xml", place=(1, 24))
        self.assertRegex(message, self.used_at())
        self.assertRegex(message, r"perhaps +'?check-valve")


# A page typed by hand with a mistake in nearly every line.
PAGE = """<?xml version="1.0" encoding="UTF-8"?>
<circuit format="1" title="Sweeper drive" drawing="SW-12">
  <fluid grade="VG46" viscosity-index="105"/>
  <engine id="E1" power="55 KW" speed="2400 rpm"/>
  <pump id="P1" flow-directions="2" variable="yes" drain="external" displacement="71 cc" control="hydraulic"/>
  <pump id="P2" title="charge pump" displacement="18 cm3/rev"/>
  <motor id="M1" drain="external" displacement="80 cm3/rev" case-pressure="3 bar" design="bentaxis"/>
  <load id="D1"/>
  <shaft id="W1" joins="E1 P1 P3"/>
  <shaft id="W2" joins="M1 D1"/>
  <relief-valve id="R1" setting="24 bar" tolerance="1 K"/>
  <relief-valve id="R2" setting="380 bar"/> <relief-valve id="R3" setting="380 bar"/>
  <check-valve id="C1"/> <check-valve id="C2"/>
  <filter id="F1" fineness="10 um" beta="0.5"/>
  <reservoir id="T1" volume="60 L"><port id="S" level="under"/><port id="R"/><port id="D"/></reservoir>
  <line id="S1" joins="T1.S P2.S"/>
  <line id="G1" joins="P2.P R1.P F1.A"/>
  <line id="G2" joins="F1.B C1.A C2.A"/>
  <line id="G3" joins="R1.T T1.R"/>
  <hose id="HA" joins="P1.A M1.A R2.P R3.T C1.B" rating="420 bar" burst-presure="1680 bar"/>
  <hose id="HB" joins="P1.B M1.B R3.P R2.T C2.B R2.T"/>
  <line id="L1" joins="P1.L1 M1.L T1.D"/>
  <command id="Z1" given-by="pedal"><stage of="P1" from="0 %" to="110 %"/></command>
  <duty><point id="climb" state="drive" torque="300 N.m" share="60 %"/><point id="haul" share="50 %"/></duty>
  <interlock when="PS1 below 12 bar" prevents="start E1"/>
  <waiver rule="towing-bypas" subject="loop:P1" reason="stationary" by="owner" until="2027-02-30"/>
  <use id="U1" name="pump-units"/>
  <checkvalve id="C3"/>
</circuit>
"""
# Line, column and the words that name the mistake: what a finger would point at.
MISTAKES = [
    (3, 17, "grade cannot be 'VG46'", "VG 46"),
    (4, 26, "power: unknown unit 'KW'", "55 kW"),
    (5, 83, "displacement: 'cc' is the unit of a volume", "71 cm3/rev"),
    (7, 91, "design cannot be 'bentaxis'", "bent-axis"),
    (9, 31, "there is no 'P3'", None),
    (11, 53, "tolerance: 'K' is the unit of a difference of temperatures", None),
    (14, 42, "beta is out of range: '0.5'", None),
    (15, 56, "level cannot be 'under'", None),
    (20, 67, "unknown attribute 'burst-presure' of hose", "burst-pressure"),
    (21, 49, "'R2.T' is listed twice in this line", None),
    (22, 24, "pump 'P1' has no port 'L1'", None),
    (23, 67, "to is out of range: '110 %'", None),
    (24, 34, "state cannot be 'drive'", None),
    (24, 89, "the shares come to 110 %", None),
    (25, 20, "there is no 'PS1'", None),
    (26, 17, "there is no rule 'towing-bypas'", None),
    (26, 87, "until is no date: '2027-02-30'", None),
    (27, 22, "there is no ready assembly 'pump-units'", "pump-unit"),
    (28, 4, "unknown element 'checkvalve'", "check-valve"),
]


class APageOfMistakes(InAFolder):
    def test_each_is_told_once_and_none_is_made_up(self):
        self.file("page.xml", PAGE)
        ran = self.run_here("check", "page.xml", "--format", "json")
        self.assertStatus(ran, 2)
        told = json.loads(ran.out)["circuits"][0]["diagnostics"]
        self.assertEqual([(d["place"]["line"], d["place"]["column"]) for d in told],
                         [mistake[:2] for mistake in MISTAKES])
        for diagnostic, (_, _, message, meant) in zip(told, MISTAKES):
            self.assertTrue(diagnostic["message"].startswith(message), diagnostic["message"])
            self.assertGreater(len(diagnostic["expected"]), 3)
            if meant:
                self.assertEqual(diagnostic["suggestion"], meant)


if __name__ == "__main__":
    program.main()
