"""Output files are written whole or not at all, and no input is ever one."""

import json
import os
import resource
import shutil
import signal
import stat
import subprocess

import program
from program import InAFolder, SOUND, WITH_ERROR, run

OLD = b"what stood here before\n"
NOBODY = 65534  # Debian's user of that name


class Outputs(InAFolder):
    """`self.make` runs each command that writes a file, onto a name."""

    def setUp(self):
        super().setUp()
        self.file("c.xml")
        self.whole = {}
        for command in self.commands("whole"):
            self.assertStatus(self.run_here(*command), 0)
            self.whole[command[0]] = (self.folder / "whole").read_bytes()
            (self.folder / "whole").unlink()
        self.assertGreater(len(self.whole["draw"]), 16_384)

    @staticmethod
    def commands(name):
        yield "check", "c.xml", "--all", "-o", name
        yield "draw", "c.xml", "--format", "svg", "-o", name

    def each(self, name, status, said="", prepare=lambda: None, **options):
        """Every command onto that output; gives what the tests look at next."""
        for command in self.commands(name):
            with self.subTest(command):
                prepare()
                ran = self.run_here(*command, **options)
                self.assertStatus(ran, status)
                self.assertEqual(ran.out, b"")
                self.assertIn(said, ran.messages)
                if status == 0:
                    self.assertEqual(ran.err, b"")
                yield command[0], ran
                self.assertNothingLeft()

    def assertNothingLeft(self):
        self.assertEqual([p.name for p in self.folder.rglob(".*")], [])

    def read(self, name):
        return (self.folder / name).read_bytes()


class Written(Outputs):
    def test_a_new_file_gets_the_usual_mode(self):
        for verb, _ in self.each("new", 0, preexec_fn=lambda: os.umask(0o027)):
            self.assertEqual(self.read("new"), self.whole[verb])
            self.assertEqual(stat.S_IMODE((self.folder / "new").stat().st_mode), 0o640)
            (self.folder / "new").unlink()

    def test_an_old_file_keeps_its_mode(self):
        def prepare():
            self.file("old", OLD).chmod(0o604)

        for verb, _ in self.each("old", 0, prepare=prepare):
            self.assertEqual(self.read("old"), self.whole[verb])
            self.assertEqual(stat.S_IMODE((self.folder / "old").stat().st_mode), 0o604)

    def test_a_link_is_kept_and_its_target_replaced(self):
        (self.folder / "elsewhere").mkdir()
        (self.folder / "link").symlink_to("second")
        (self.folder / "second").symlink_to("elsewhere/target")
        for verb, _ in self.each("link", 0,
                                 prepare=lambda: self.file("elsewhere/target", OLD)):
            self.assertEqual(os.readlink(self.folder / "link"), "second")
            self.assertEqual(os.readlink(self.folder / "second"), "elsewhere/target")
            self.assertFalse((self.folder / "elsewhere/target").is_symlink())
            self.assertEqual(self.read("elsewhere/target"), self.whole[verb])

    def test_a_link_to_nothing_gets_its_target(self):
        (self.folder / "elsewhere").mkdir()
        (self.folder / "link").symlink_to("elsewhere/target")
        for verb, _ in self.each("link", 0):
            self.assertTrue((self.folder / "link").is_symlink())
            self.assertEqual(self.read("elsewhere/target"), self.whole[verb])
            (self.folder / "elsewhere/target").unlink()

    def test_a_name_as_long_as_names_may_be(self):
        name = "n" * 255
        for verb, _ in self.each(name, 0):
            self.assertEqual(self.read(name), self.whole[verb])

    def test_a_pipe_by_name(self):
        fifo = self.folder / "fifo"
        os.mkfifo(fifo)
        readers = []

        def prepare():  # opening a pipe waits for the other end
            readers.append(subprocess.Popen(["cat", fifo], stdout=subprocess.PIPE))

        for verb, _ in self.each("fifo", 0, prepare=prepare):
            got, _ = readers.pop().communicate(timeout=program.HANG)
            self.assertEqual(got, self.whole[verb])
            self.assertTrue(fifo.is_fifo())

    def test_standard_output_by_name(self):
        for name in ("/dev/stdout", "/dev/fd/1", "/proc/self/fd/1"):
            for command in self.commands(name):
                with self.subTest(command):
                    ran = self.run_here(*command)
                    self.assertStatus(ran, 0)
                    self.assertEqual(ran.out, self.whole[command[0]])
                    with open(self.folder / "log", "wb") as log:
                        log.write(OLD)
                        log.flush()
                        self.assertStatus(self.run_here(*command, stdout=log), 0)
                    self.assertEqual(self.read("log"), OLD + self.whole[command[0]])
                    self.assertNothingLeft()

    def test_a_drawing_and_its_layout(self):
        ran = self.run_here("draw", "c.xml", "-o", "c.svg", "--write-layout", "c.json")
        self.assertStatus(ran, 0)
        self.assertEqual(self.read("c.svg"), self.whole["draw"])
        json.loads(self.read("c.json"))

    def test_findings_do_not_keep_a_report_from_being_written(self):
        self.file("wrong.xml", WITH_ERROR)
        self.assertStatus(self.run_here("check", "wrong.xml", "-o", "report"), 1)
        self.assertIn(b"[make-up-check]", self.read("report"))


class Refused(Outputs):
    def test_a_full_device(self):
        for _ in self.each("/dev/full", 2, "/dev/full: "):
            pass

    def test_a_folder_and_no_folder(self):
        (self.folder / "folder").mkdir()
        self.file("plain", OLD)
        for name in ("folder", "folder/", ".", "missing/out", "plain/out", "n" * 256):
            before = self.names()
            for _ in self.each(name, 2, f"loopwright: {name}: "):
                self.assertEqual(self.names(), before)
        self.assertEqual(self.read("plain"), OLD)

    def test_links_in_a_circle(self):
        (self.folder / "a").symlink_to("b")
        (self.folder / "b").symlink_to("a")
        for _ in self.each("a", 2, "a: "):
            self.assertTrue((self.folder / "a").is_symlink())

    def test_the_input_under_any_name(self):
        (self.folder / "soft.xml").symlink_to("c.xml")
        (self.folder / "hard.xml").hardlink_to(self.folder / "c.xml")
        for name in ("c.xml", "./c.xml", str(self.folder / "c.xml"), "soft.xml", "hard.xml"):
            for _ in self.each(name, 2, "is an input"):
                self.assertEqual(self.read("c.xml"), SOUND.encode())
                self.assertTrue((self.folder / "soft.xml").is_symlink())
                self.assertEqual((self.folder / "hard.xml").stat().st_nlink, 2)

    def test_the_input_on_standard_input(self):
        for command in (("check", "-", "-o", "c.xml"),
                        ("draw", "-", "--format", "svg", "-o", "c.xml")):
            with open(self.folder / "c.xml", "rb") as source:
                ran = self.run_here(*command, stdin=source)
            self.assertStatus(ran, 2)
            self.assertIn("is an input", ran.messages)
            self.assertEqual(self.read("c.xml"), SOUND.encode())

    def test_a_file_that_the_input_uses(self):
        parts = {"parts/block.xml": '<assembly format="1"> <use id="V" file="inner/valve.xml"/>'
                                    '<port id="A" of="V.A"/> <port id="B" of="V.B"/> </assembly>',
                 "parts/inner/valve.xml": '<assembly format="1"> <check-valve id="C"/>'
                                          '<port id="A" of="C.A"/> <port id="B" of="C.B"/> </assembly>'}
        for name, text in parts.items():
            self.file(name, text)
        text = program.changed("R3.T C1.B", "R3.T U.B", program.changed("F1.B C1.A", "F1.B U.A", SOUND))
        self.file("c.xml", program.changed('<check-valve id="C1"/>',
                                           '<use id="U" file="parts/block.xml"/>', text))
        self.assertStatus(self.run_here("check", "c.xml"), 0)
        for name in parts:
            for _ in self.each(name, 2, "is an input"):
                self.assertEqual(self.read(name).decode(), parts[name])
            ran = self.run_here("draw", "c.xml", "-o", "c.svg", "--write-layout", name)
            self.assertStatus(ran, 2)
            self.assertEqual(self.read(name).decode(), parts[name])
        self.assertNotIn("c.svg", self.names())

    def test_a_used_file_in_which_there_is_nothing(self):
        empty = '<assembly format="1"/>'
        user = '<assembly format="1"> <use id="V" file="empty.xml"/> </assembly>'
        self.file("parts/empty.xml", empty)
        self.file("parts/user.xml", user)
        self.file("c.xml", program.changed('<check-valve id="C1"/>', '<check-valve id="C1"/>'
                                           '<use id="U" file="parts/user.xml"/>'))
        for name, text in (("parts/empty.xml", empty), ("parts/user.xml", user)):
            for _ in self.each(name, 2, "is an input"):
                self.assertEqual(self.read(name).decode(), text)

    def test_any_of_several_inputs(self):
        self.file("d.xml", WITH_ERROR)
        for name in ("c.xml", "d.xml"):
            self.assertStatus(self.run_here("check", "c.xml", "d.xml", "-o", name), 2)
        self.assertEqual(self.read("d.xml"), WITH_ERROR.encode())

    def test_a_layout_that_is_read(self):
        self.assertStatus(self.run_here("draw", "c.xml", "-o", "c.svg", "--write-layout", "l.json"), 0)
        layout = self.read("l.json")
        ran = self.run_here("draw", "c.xml", "--format", "svg", "-o", "l.json", "--read-layout", "l.json")
        self.assertStatus(ran, 2)
        self.assertEqual(self.read("l.json"), layout)

    def test_one_name_for_two_outputs(self):
        self.file("out.svg", OLD)
        for other in ("out.svg", "./out.svg"):
            ran = self.run_here("draw", "c.xml", "-o", "out.svg", "--write-layout", other)
            self.assertStatus(ran, 2)
            self.assertEqual(self.read("out.svg"), OLD)
        ran = self.run_here("draw", "c.xml", "-o", "new.svg", "--write-layout", "./new.svg")
        self.assertStatus(ran, 2)
        self.assertNotIn("new.svg", self.names())

    def test_two_outputs_or_none(self):
        self.file("out.svg", OLD)
        for layout in ("missing/l.json", ".", "/dev/full", "c.xml"):
            ran = self.run_here("draw", "c.xml", "-o", "out.svg", "--write-layout", layout)
            self.assertStatus(ran, 2)
            self.assertIn(f"loopwright: {layout}: ", ran.messages)
            self.assertEqual(self.read("out.svg"), OLD)
            self.assertNothingLeft()


class Spoiled(Outputs):
    """What goes wrong only while writing."""

    def unchanged(self, name, said, **options):
        """An old file keeps its bytes, a new one does not appear."""
        folder = (self.folder / name).parent
        for old in (True, False):
            target = self.folder / name
            self.file(name, OLD) if old else target.unlink()
            before = sorted(folder.iterdir())
            for _ in self.each(name, 2, said, **options):
                self.assertEqual(sorted(folder.iterdir()), before)
                if old:
                    self.assertEqual(target.read_bytes(), OLD)

    def test_a_file_that_may_grow_no_more(self):
        def limit():
            # Python ignores the signal; a user's shell does not.
            signal.signal(signal.SIGXFSZ, signal.SIG_DFL)
            resource.setrlimit(resource.RLIMIT_FSIZE, (512, 512))

        self.unchanged("out", "out: cannot be written", preexec_fn=limit)

    def test_a_full_disk(self):
        disk = self.folder / "disk"
        disk.mkdir()
        done = subprocess.run(["mount", "-t", "tmpfs", "-o", "size=4k", "none", disk],
                              capture_output=True, check=False)
        if done.returncode == 0:
            self.addCleanup(subprocess.run, ["umount", disk], check=True)
            (disk / "out").write_bytes(OLD)
            before = sorted(disk.iterdir())
            for _ in self.each("disk/out", 2, "No space left"):
                self.assertEqual((disk / "out").read_bytes(), OLD)
                self.assertEqual(sorted(disk.iterdir()), before)
            return
        # Who may not mount finds the same end of room at a limit, a page away.
        self.unchanged("disk/out", "cannot be written", preexec_fn=lambda: resource.setrlimit(
            resource.RLIMIT_FSIZE, (4096 - len(OLD), 4096 - len(OLD))))

    def ordinary(self):
        """Arguments that run a copy of the program with no privileges, in a folder it may read."""
        copy = self.folder / "copy"
        shutil.copy(program.PROGRAM, copy)
        copy.chmod(0o755)
        self.folder.chmod(0o755)
        if os.geteuid() != 0:
            return {"program": copy}
        return {"program": copy, "user": NOBODY, "group": NOBODY, "extra_groups": []}

    def test_a_folder_that_may_not_be_written_in(self):
        options = self.ordinary()
        locked = self.folder / "locked"
        self.file("locked/old", OLD).chmod(0o666)
        locked.chmod(0o555)
        self.addCleanup(locked.chmod, 0o755)
        for name in ("locked/old", "locked/new"):
            for _ in self.each(name, 2, f"{name}: cannot be written", **options):
                self.assertEqual(os.listdir(locked), ["old"])
                self.assertEqual(self.read("locked/old"), OLD)

    def test_a_file_that_is_write_protected(self):
        options = self.ordinary()
        free = self.folder / "free"
        self.file("free/old", OLD).chmod(0o444)
        free.chmod(0o777)
        for _ in self.each("free/old", 2, "free/old: cannot be written", **options):
            self.assertEqual(self.read("free/old"), OLD)
            self.assertEqual(os.listdir(free), ["old"])
        for _ in self.each("free/new", 0, **options):
            (self.folder / "free/new").unlink()

    def test_a_closed_stream_for_messages_is_no_output(self):
        ran = run("check", "c.xml", "missing.xml", "-o", "out", cwd=self.folder,
                  preexec_fn=lambda: os.close(2))
        self.assertEqual(ran.status, 2)
        ran = run("check", "c.xml", "--all", "-o", "out", cwd=self.folder,
                  preexec_fn=lambda: (os.close(0), os.close(1), os.close(2)))
        self.assertEqual(ran.status, 0)
        self.assertEqual(self.read("out"), self.whole["check"])


if __name__ == "__main__":
    program.main()
