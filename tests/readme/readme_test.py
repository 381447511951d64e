"""The README and circuits/README.md: every command runs and ends as they say, every output, table
and drawing is what the program makes today, every link leads somewhere. Arguments: the program and
the version of the package."""

import json
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

import readme
from readme import CIRCUITS, README, ROOT, Session, blocks

PROGRAM = VERSION = None
PAGES = [README, CIRCUITS / "README.md", ROOT / "DEVELOPERS.md",
         *sorted(CIRCUITS.glob("*/README.md"))]


def anchors(text):
    """The places of a page that a link can name, as pages of Markdown are shown on the web."""
    return {re.sub(r"[^a-z0-9 -]", "", heading.lower()).replace(" ", "-")
            for heading in re.findall(r"^#+ (.*)$", text, re.MULTILINE)}


def broken_links(page, text):
    text = re.sub(r"^```.*?^```$", "", text, flags=re.MULTILINE | re.DOTALL)
    wrong = []
    for link in re.findall(r"\]\(([^)]+)\)|src=\"([^\"]+)\"", text):
        target, _, anchor = (link[0] or link[1]).partition("#")
        file = page.parent / target if target else page
        if not file.exists():
            wrong.append(f"{page.name}: {target}")
        elif anchor and anchor not in anchors(file.read_text()):
            wrong.append(f"{page.name}: {target}#{anchor}")
    return wrong


class Readme(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.made = readme.made_anew(PROGRAM)

    def test_commands_run_and_what_they_show_is_what_stands_there(self):
        self.maxDiff = None
        self.assertEqual(README.read_text(), self.made[README].decode(),
                         "./dev readme writes it anew")

    def test_drawings_are_those_of_today(self):
        self.assertGreaterEqual(len(self.made), 11)
        for path, content in self.made.items():
            if path == README:
                continue
            self.assertTrue(path.exists() and path.read_bytes() == content,
                            f"{path.relative_to(ROOT)}: ./dev readme draws it anew")

    def test_every_drawing_of_the_tree_is_made_and_shown(self):
        drawn = {path for path in CIRCUITS.rglob("*.svg")}
        self.assertEqual(drawn, set(self.made) - {README})
        for path in drawn:
            self.assertIn(path.relative_to(ROOT).as_posix(), README.read_text())

    def test_commands_run_elsewhere_are_there(self):
        dev = (ROOT / "dev").read_text()
        told = subprocess.run([ROOT / "dev"], capture_output=True, text=True, check=True).stdout
        count = 0
        for kind, content, _ in blocks(README.read_text()):
            for command, _ in readme.commands(content) if kind == "sh" else ():
                if command.startswith("./dev "):
                    self.assertRegex(told, rf"(?m)^{re.escape(command)} ")
                    count += 1
                elif command.startswith("sudo"):  # tests/install installs it into an empty root
                    self.assertRegex(command,
                                     rf"/package/loopwright_{re.escape(VERSION)}_\w+\.deb$")
        self.assertEqual(count, 3)
        self.assertIn('stage "Demo" demo', dev)  # ./dev demo is run by ./dev test

    def test_the_circuit_has_twenty_lines(self):
        circuit, = (content for kind, content, _ in blocks(README.read_text()) if kind == "xml")
        self.assertEqual(len(circuit.splitlines()), 20)

    def test_links_lead_somewhere(self):
        for page in PAGES:
            self.assertEqual(broken_links(page, page.read_text()), [])
        self.assertEqual(len(broken_links(README, "[a](no/such) [b](#nowhere) [c](#cautions)")), 2)

    def test_a_lapse_is_seen(self):
        with tempfile.TemporaryDirectory() as folder:
            session = Session(PROGRAM, pathlib.Path(folder))
            with self.assertRaises(AssertionError):
                session.follow("```sh\nloopwright check no-such.xml\n```\n")
            with self.assertRaises(AssertionError):
                session.follow("```sh\nloopwright --version  # exit status 1\n```\n")
            wrong = "```sh\nloopwright --version\n```\n\n```text\nanother\n```\n"
            self.assertNotEqual(session.follow(wrong)[0], wrong)


class Fragments(unittest.TestCase):
    """What circuits/README.md writes of circuits: the reader has nothing to say against it."""

    def wrong(self, fragment):
        with tempfile.TemporaryDirectory() as folder:
            file = pathlib.Path(folder) / "c.xml"
            file.write_text(f'<circuit format="1">{fragment}</circuit>')
            said = subprocess.run([PROGRAM, "check", "--format", "json", file],
                                  capture_output=True, check=False)
            messages = [one["message"] for one in
                        json.loads(said.stdout)["circuits"][0]["diagnostics"]]
            # A fragment names parts and a file that are not in it.
            return [message for message in messages
                    if not re.match(r"there is no '|'unit.xml' cannot be read|torque is given, but",
                                    message)]

    def test_all_are_taken(self):
        text = (CIRCUITS / "README.md").read_text()
        fragments = [content for kind, content, _ in blocks(text) if kind == "xml"]
        self.assertGreaterEqual(len(fragments), 4)
        for fragment in fragments:
            if not fragment.startswith("<thresholds"):
                self.assertEqual(self.wrong(fragment), [], fragment)

    def test_a_wrong_word_is_seen(self):
        self.assertNotEqual(self.wrong('<pump id="P1" size="3"/>'), [])

    def test_the_thresholds_are_taken(self):
        text = (CIRCUITS / "README.md").read_text()
        file, = (content for kind, content, _ in blocks(text) if content.startswith("<thresholds"))
        with tempfile.TemporaryDirectory() as folder:
            (pathlib.Path(folder) / "t.xml").write_text(file)
            ran = subprocess.run(
                [PROGRAM, "check", CIRCUITS / "mixer-drum/mixer-drum.xml", "--thresholds", "t.xml"],
                cwd=folder, capture_output=True, text=True, check=False)
            self.assertEqual((ran.returncode, ran.stderr), (0, ""))
            self.assertIn("Threshold burst-ratio of hose-safety: 5", ran.stdout)


if __name__ == "__main__":
    PROGRAM, VERSION = pathlib.Path(sys.argv.pop(1)).resolve(), sys.argv.pop(1)
    unittest.main()
