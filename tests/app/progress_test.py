"""The line that tells how far a long run is: on a terminal only, and gone in the end.

A run is made long by keeping its standard input open, so that no test hangs on how fast a machine
is.
"""

import os
import pty
import re
import select
import subprocess
import time

import program
from program import SOUND, WITH_ERROR, InAFolder, environment, run

QUIET = 0.5  # seconds in which nothing is told
ROWS = "travel=0%..100%:1000", "torque=0 N.m..400 N.m:4000"


def screen(written):
    """What stands on a terminal after that, line by line."""
    lines, column = [""], 0
    for piece in re.findall(r"\r|\n|\x1b\[K|[^\r\n\x1b]+", written.decode("utf-8")):
        line = lines[-1]
        if piece == "\r":
            column = 0
        elif piece == "\n":
            lines.append("")
        elif piece == "\x1b[K":
            lines[-1] = line[:column]
        else:
            lines[-1] = line[:column] + piece + line[column + len(piece):]
            column += len(piece)
    return lines


class Run:
    """The program with one or both of its output streams on a terminal."""

    def __init__(self, folder, *arguments, out=True, err=True, **variables):
        self.terminal, side = pty.openpty()
        variables.setdefault("TERM", "xterm")
        self.child = subprocess.Popen(
            [program.PROGRAM, *map(str, arguments)], stdin=subprocess.PIPE,
            stdout=side if out else subprocess.PIPE, stderr=side if err else subprocess.PIPE,
            cwd=folder, env=environment(**variables))
        os.close(side)
        self.written = b""

    def read(self, seconds=0.2):
        """Takes what comes next to the terminal; False at its end."""
        ready, _, _ = select.select([self.terminal], [], [], seconds)
        try:
            part = os.read(self.terminal, 65_536) if ready else None
        except OSError:  # how a terminal ends
            part = b""
        self.written += part or b""
        return part != b""

    def wait_for(self, pattern):
        """Until that is written; gives the match."""
        end = time.monotonic() + program.HANG
        while (match := re.search(pattern, self.written)) is None:
            if time.monotonic() > end or not self.read():
                raise AssertionError(f"{pattern} is not in {self.written[-500:]}")
        return match

    def stay(self, seconds):
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            self.read(end - time.monotonic())

    def finish(self, text=""):
        """Gives it its standard input; returns what went to the pipes."""
        self.child.stdin.write(text.encode())
        self.child.stdin.close()
        while self.read(program.HANG):
            pass
        os.close(self.terminal)
        pipes = [stream.read() for stream in (self.child.stdout, self.child.stderr) if stream]
        for stream in (self.child.stdout, self.child.stderr):
            if stream:
                stream.close()
        self.status = self.child.wait(program.HANG)
        self.written = self.written.replace(b"\r\n", b"\n")
        return pipes

    def stop(self):
        self.child.terminate()
        self.finish()


class Progress(InAFolder):
    def setUp(self):
        super().setUp()
        self.file("a.xml", WITH_ERROR)
        self.file("b.xml")

    def test_it_tells_which_of_several_files_and_goes(self):
        ran = Run(self.folder, "check", "a.xml", "-", "b.xml", out=False)
        ran.wait_for(rb"checking 2 of 3: -")
        (out,) = ran.finish(SOUND)
        self.assertEqual(screen(ran.written), [""])
        plain = self.run_here("check", "a.xml", "-", "b.xml", input=SOUND.encode())
        self.assertEqual((ran.status, out), (1, plain.out))

    def test_results_on_the_same_terminal_stay_whole(self):
        ran = Run(self.folder, "check", "a.xml", "-", "b.xml", "--color", "never")
        ran.wait_for(rb"checking 2 of 3: -")
        ran.finish("<circuit")
        plain = self.run_here("check", "a.xml", "-", "b.xml", input=b"<circuit")
        shown = "\n".join(screen(ran.written))
        for part in plain.words.split("\n\n"):
            self.assertIn(part.strip("\n"), shown)
        self.assertIn(plain.messages.strip(), shown)
        self.assertNotIn("checking", shown)

    def test_a_pipe_gets_nothing(self):
        ran = Run(self.folder, "check", "a.xml", "-", err=False)
        ran.stay(QUIET + 0.5)
        (err,) = ran.finish(SOUND)
        self.assertEqual(err, b"")
        self.assertNotIn(b"checking", ran.written)

    def test_a_terminal_that_cannot_go_back_gets_nothing(self):
        ran = Run(self.folder, "check", "a.xml", "-", out=False, TERM="dumb")
        ran.stay(QUIET + 0.5)
        ran.finish(SOUND)
        self.assertEqual(ran.written, b"")

    def test_what_is_short_stays_quiet(self):
        for _ in range(20):
            begin = time.monotonic()
            ran = Run(self.folder, "check", "a.xml", "b.xml", out=False)
            ran.finish()
            if time.monotonic() - begin < QUIET:
                self.assertEqual(ran.written, b"")
                return
        self.fail("no check of two small circuits took less than half a second")

    def test_a_long_name_stays_on_the_line(self):
        name = "n" * 200 + "\x1b.xml"
        self.file(name)
        ran = Run(self.folder, "check", name, "-", name, out=False)
        ran.wait_for(rb"checking 2 of 3: -")
        ran.finish(SOUND)
        ran = Run(self.folder, "draw", "-", "-o", f"{name}.svg", out=False)
        ran.wait_for(rb"reading -")
        ran.finish(SOUND)
        self.assertEqual(screen(ran.written), [""])
        longest = max(len(part) for part in re.split(rb"\r|\x1b\[K", ran.written))
        self.assertLess(longest, 80)

    def test_a_drawing(self):
        ran = Run(self.folder, "draw", "-", "-o", "c.svg")
        ran.wait_for(rb"reading -")
        ran.finish(SOUND)
        self.assertEqual((ran.status, screen(ran.written)), (0, [""]))

    def test_rows_of_a_sweep_are_counted(self):
        ran = Run(self.folder, "solve", program.RESURFACER, "--sweep", ROWS[0], "--sweep", ROWS[1],
                  "-o", "rows")
        try:
            first = int(ran.wait_for(rb"\rrow (\d+) of 4000000\x1b\[K")[1])
            ran.written = b""
            second = int(ran.wait_for(rb"\rrow (\d+) of 4000000\x1b\[K")[1])
            self.assertLess(first, second)
        finally:
            ran.stop()

    def test_it_changes_no_result(self):
        arguments = ("solve", program.RESURFACER, "--sweep", "travel=10%..100%:10")
        ran = Run(self.folder, *arguments, out=False)
        (out,) = ran.finish()
        self.assertEqual(out, run(*arguments).out)


if __name__ == "__main__":
    program.main()
