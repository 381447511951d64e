"""Standard input, output and error; colours; and that nothing around a run changes its result."""

import json
import os
import pty
import shutil
import subprocess

import program
from program import (InAFolder, RESURFACER, SOUND, TURNED, WITH_ERROR, changed, environment, run)

ESCAPE = b"\x1b["
BLOCK = ('<assembly format="1"> <check-valve id="C"/> <port id="A" of="C.A"/> <port id="B" of="C.B"/>'
         "</assembly>")


class StandardInput(InAFolder):
    def test_it_is_read_for_a_dash(self):
        self.file("c.xml", WITH_ERROR)
        by_name = self.run_here("check", "c.xml")
        ran = run("check", "-", input=WITH_ERROR.encode())
        self.assertStatus(ran, 1)
        self.assertEqual(ran.words, by_name.words.replace("c.xml:", "-:"))

    def test_it_stands_among_files(self):
        self.file("c.xml", SOUND)
        for files in (("-", "c.xml"), ("c.xml", "-")):
            ran = self.run_here("check", "--format", "json", *files, input=WITH_ERROR.encode())
            self.assertStatus(ran, 1)
            self.assertEqual([c["file"] for c in json.loads(ran.out)["circuits"]], list(files))

    def test_it_is_drawn(self):
        self.assertStatus(self.run_here("draw", "-", "-o", "a.svg", input=SOUND.encode()), 0)
        self.file("c.xml", SOUND)
        self.assertStatus(self.run_here("draw", "c.xml", "-o", "b.svg"), 0)
        self.assertEqual((self.folder / "a.svg").read_bytes(), (self.folder / "b.svg").read_bytes())

    def test_once_only(self):
        ran = run("check", "-", "-", input=SOUND.encode())
        self.assertStatus(ran, 2)
        self.assertEqual(ran.out, b"")
        self.assertIn("once", ran.messages)

    def test_use_has_no_folder_there(self):
        self.file("block.xml", BLOCK)
        text = changed('<check-valve id="C1"/>', '<use id="C1" file="block.xml"/>')
        self.file("c.xml", text)
        self.assertStatus(self.run_here("check", "c.xml"), 0)
        ran = self.run_here("check", "-", input=text.encode())
        self.assertStatus(ran, 2)
        self.assertRegex(ran.messages, r"(?m)^-:8:\d+: error: .*block\.xml.*\n.*\n.*\n +expected ")

    def test_what_cannot_be_read(self):
        folder = os.open(self.folder, os.O_RDONLY)
        self.addCleanup(os.close, folder)
        for options, said in (({"stdin": folder}, "folder"),
                              ({"preexec_fn": lambda: os.close(0)}, "cannot be read"),
                              ({"stdin": subprocess.DEVNULL}, "empty")):
            ran = run("check", "-", **options)
            self.assertStatus(ran, 2)
            self.assertRegex(ran.messages, rf"^-:1:1: error: .*{said}")

    def test_the_limit_holds_there_too(self):
        most = 16 * 1024 * 1024
        full = SOUND.encode() + b" " * (most - len(SOUND.encode()))
        self.assertStatus(run("check", "-", input=full), 0)
        ran = run("check", "-", input=full + b" ")
        self.assertStatus(ran, 2)
        self.assertIn(str(most), ran.messages)


class StandardOutput(InAFolder):
    def test_results_go_there_and_messages_to_the_other(self):
        self.file("wrong.xml", WITH_ERROR)
        self.file("bad.xml", changed("<motor ", "<moter "))
        ran = self.run_here("check", "wrong.xml", "bad.xml")
        self.assertIn("[make-up-check]", ran.words)
        self.assertNotIn("moter", ran.words)
        self.assertIn("moter", ran.messages)
        self.assertNotIn("make-up-check", ran.messages)
        for verb in (("rules",), ("kinds",), ("schema", "circuit"), ("schema", "check"), ("--help",)):
            ran = run(*verb)
            self.assertEqual((ran.status, ran.err), (0, b""))
            self.assertGreater(len(ran.out), 200)

    WRITERS = (("check", RESURFACER), ("check", RESURFACER, "--format", "json"),
               ("check", TURNED, RESURFACER), ("rules",), ("rules", "filtration"), ("kinds",),
               ("kinds", "pump", "--format", "json"), ("schema", "circuit"), ("schema", "check"),
               ("--help",), ("check", "--help"), ("--version",),
               ("draw", RESURFACER, "--format", "svg", "-o", "/dev/stdout"))

    def test_a_closed_pipe_ends_quietly(self):
        for arguments in self.WRITERS:
            with self.subTest(arguments):
                reading, writing = os.pipe()
                os.close(reading)
                ran = run(*arguments, stdout=writing)
                os.close(writing)
                self.assertEqual(ran.err, b"")
                self.assertIn(ran.status, (0, 1))  # no signal, no 2

    def test_a_reader_that_takes_one_byte(self):
        # More than a pipe holds, so that the rest meets the closed end.
        files = [RESURFACER] * 40
        done = subprocess.run(["bash", "-c", '"$@" | head -c1', "-", program.PROGRAM, "check",
                               "--format", "json", *files], capture_output=True, check=False,
                              timeout=program.HANG, env=environment())
        self.assertEqual((done.stdout, done.stderr), (b"{", b""))

    def test_a_failed_write(self):
        for arguments in self.WRITERS:
            with self.subTest(arguments):
                with open("/dev/full", "wb") as full:
                    ran = run(*arguments, stdout=full)
                self.assertStatus(ran, 2)
                self.assertRegex(ran.messages, r"^loopwright: .*cannot be written.*\n$")
                ran = run(*arguments, preexec_fn=lambda: os.close(1))
                self.assertStatus(ran, 2)
                self.assertRegex(ran.messages, r"^loopwright: .*\n$")


class Colour(InAFolder):
    def setUp(self):
        super().setUp()
        self.file("wrong.xml", WITH_ERROR)
        self.file("bad.xml", "<circuit")

    def test_a_pipe_gets_none_unless_asked(self):
        plain = self.run_here("check", "wrong.xml", "bad.xml")
        self.assertNotIn(ESCAPE, plain.out + plain.err)
        for choice in ("auto", "never"):
            ran = self.run_here("check", "wrong.xml", "bad.xml", "--color", choice)
            self.assertEqual((ran.out, ran.err), (plain.out, plain.err))
        for variables in ({}, {"NO_COLOR": "1"}):  # an option counts more than a variable
            ran = self.run_here("check", "wrong.xml", "bad.xml", "--color", "always",
                                env=environment(**variables))
            self.assertIn(ESCAPE, ran.out)
            self.assertIn(ESCAPE, ran.err)
            self.assertEqual(self.bare(ran.out), plain.out)
            self.assertEqual(self.bare(ran.err), plain.err)

    @staticmethod
    def bare(text):
        pieces = text.split(ESCAPE)
        return pieces[0] + b"".join(piece[piece.index(b"m") + 1:] for piece in pieces[1:])

    def on_a_terminal(self, *arguments, **variables):
        terminal, side = pty.openpty()
        child = subprocess.Popen([program.PROGRAM, *arguments], stdin=subprocess.DEVNULL, stdout=side,
                                 stderr=side, cwd=self.folder, env=environment(**variables))
        os.close(side)
        got = b""
        while True:
            try:
                part = os.read(terminal, 65_536)
            except OSError:  # how a terminal ends
                break
            if not part:
                break
            got += part
        os.close(terminal)
        child.wait(program.HANG)
        return got.replace(b"\r\n", b"\n")

    def test_a_terminal_gets_it_unless_told_otherwise(self):
        for name in ("wrong.xml", "bad.xml"):
            plain = self.on_a_terminal("check", name, "--color", "never")
            self.assertNotIn(ESCAPE, plain)
            self.assertIn(b"error", plain)
            coloured = self.on_a_terminal("check", name)
            self.assertIn(ESCAPE, coloured)
            self.assertEqual(self.bare(coloured), plain)
            self.assertEqual(self.on_a_terminal("check", name, NO_COLOR="1"), plain)
            # By the convention that names the variable, an empty one is none.
            self.assertEqual(self.on_a_terminal("check", name, NO_COLOR=""), coloured)

    def test_machine_output_and_files_have_none(self):
        ran = self.run_here("check", "wrong.xml", "--format", "json", "--color", "always")
        self.assertNotIn(ESCAPE, ran.out)
        json.loads(ran.out)
        self.run_here("check", "wrong.xml", "-o", "report")
        self.assertNotIn(ESCAPE, (self.folder / "report").read_bytes())

    def test_what_a_circuit_says_cannot_steer_the_terminal(self):
        self.file("c.xml", changed('title="Mixer drum"', 'title="Mixer&#x9b;31m drum&#x7f;"'))
        ran = self.run_here("check", "c.xml")
        self.assertNotRegex(ran.words, "[\x00-\x09\x0b-\x1f\x7f-\x9f]")
        self.file("bad.xml", b'<circuit format="1"><\x1b[31m/></circuit>')
        ran = self.run_here("check", "bad.xml")
        self.assertStatus(ran, 2)
        self.assertNotIn(b"\x1b", ran.err)


class SameBytes(InAFolder):
    """The same input gives the same bytes, wherever and whenever."""

    def results(self, folder, **variables):
        options = {"cwd": folder, "env": environment(**variables)}
        found = {}
        for arguments in (("check", "c.xml", "--all"), ("check", "c.xml", "--format", "json"),
                          ("check", "bad.xml"), ("rules", "--format", "markdown"), ("kinds",),
                          ("schema", "circuit"), ("check", "c.xml", "--fail-on", "wrong"),
                          *(("draw", "c.xml", "--format", kind, "-o", "/dev/stdout")
                            for kind in ("svg", "pdf", "png"))):
            ran = run(*arguments, **options)
            # Fontconfig has a word of its own for a language that it does not know.
            messages = [line for line in ran.err.splitlines() if not line.startswith(b"Fontconfig ")]
            found[arguments] = (ran.status, ran.out, messages)
        self.assertNotIn(3, [status for status, _, _ in found.values()])
        return found

    def test_everywhere(self):
        shutil.copy(TURNED, self.folder / "c.xml")
        self.file("bad.xml", changed('"24 bar"', '"24,5 bar"'))
        other = self.folder / "somewhere" / "else"
        other.mkdir(parents=True)
        for name in ("c.xml", "bad.xml"):
            shutil.copy(self.folder / name, other)
        first = self.results(self.folder)
        places = {"again": (self.folder, {}), "another folder": (other, {}),
                  "German": (other, {"LC_ALL": "de_DE.UTF-8", "LANG": "de_DE.UTF-8"}),
                  "Turkish": (other, {"LC_ALL": "tr_TR.UTF-8"}), "no locale": (other, {"LC_ALL": "C"}),
                  "UTF-8": (other, {"LC_ALL": "C.UTF-8"}),
                  "no such locale": (other, {"LC_ALL": "nowhere"}),
                  "far east": (other, {"TZ": "Pacific/Kiritimati"}),
                  "another day": (other, {"SOURCE_DATE_EPOCH": "1"})}
        for name, (folder, variables) in places.items():
            with self.subTest(name):
                now = self.results(folder, **variables)
                self.assertEqual([what for what in first if now[what] != first[what]], [])

    def test_a_drawing_does_not_know_how_its_circuit_was_named(self):
        shutil.copy(TURNED, self.folder / "c.xml")
        drawings = set()
        for name in ("c.xml", "./c.xml", self.folder / "c.xml"):
            for kind in ("svg", "pdf"):
                ran = self.run_here("draw", name, "--format", kind, "-o", "/dev/stdout")
                drawings.add(ran.out)
        self.assertEqual(len(drawings), 2)


if __name__ == "__main__":
    program.main()
