"""Manual page and completion say what `--help` says. Held against man (for the page's macros) and
bash (which runs the completion)."""

import json
import os
import re
import subprocess

import program
from program import InAFolder, run


def verbs():
    return re.findall(r"^  ([a-z-]+) ", run("--help").words.partition("Subcommands:")[2],
                      re.MULTILINE)


def options(*verb):
    """The options that the help of a verb lists, in its order."""
    return [name for names in re.findall(r"^  (-[^ ]+)", run(*verb, "--help").words, re.MULTILINE)
            for name in names.split(",")]


class SharedFiles(InAFolder):
    def setUp(self):
        super().setUp()
        self.assertStatus(self.run_here("--write-shared-files", "shared"), 0)

    def completed(self, *words):
        """What bash offers for the last of these words."""
        script = ('source shared/loopwright.bash; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1));'
                  '_loopwright; printf "%s\\n" "${COMPREPLY[@]}"')
        ran = subprocess.run(["bash", "-c", script, "bash", "loopwright", *words], cwd=self.folder,
                             capture_output=True, text=True, check=True)
        self.assertEqual(ran.stderr, "")
        return ran.stdout.split()

    def test_there_is_one_schema_file_each(self):
        names = {name.split(".")[0] for name in os.listdir(self.folder / "shared/schemas")}
        self.assertEqual(names, set(self.completed("schema", "")))
        for name in names:
            file, = (self.folder / "shared/schemas").glob(f"{name}.*")
            self.assertEqual(file.read_bytes(), run("schema", name).out)

    def test_the_page_has_every_command_and_option(self):
        source = (self.folder / "shared/loopwright.1").read_text().replace("\\-", "-")
        parts = dict(re.findall(r"^\.SS (\S+)\n(.*?)(?=^\.S)", source, re.MULTILINE | re.DOTALL))
        self.assertEqual(list(parts), verbs())
        self.assertGreater(len(parts), 5)
        for verb, text in parts.items():
            told = [name for names in re.findall(r"^\\fB(-[^\\]*)", text, re.MULTILINE)
                    for name in names.split(", ")]
            self.assertEqual(told, options(verb), verb)

    def test_man_has_nothing_to_say_against_the_page(self):
        words = ["man", "--warnings", "-E", "UTF-8", "-l", "-Tutf8", "-Z"]
        surroundings = {**os.environ, "LC_ALL": "C.UTF-8", "MANWIDTH": "80"}
        page = self.folder / "shared/loopwright.1"
        ran = subprocess.run([*words, page], capture_output=True, check=True, env=surroundings)
        self.assertEqual(ran.stderr, b"")
        bad = self.file("bad.1", page.read_text() + ".XY no such macro\n")
        ran = subprocess.run([*words, bad], capture_output=True, check=False, env=surroundings)
        self.assertIn(b"XY", ran.stderr)

    def test_completes_commands_and_options(self):
        self.assertEqual(self.completed(""), verbs())
        self.assertEqual(self.completed("dr"), ["draw"])
        self.assertEqual(self.completed("-"), options())
        for verb in verbs():
            self.assertEqual(self.completed(verb, "-"), options(verb))
            self.assertEqual(self.completed(verb, "--form"),
                             [name for name in options(verb) if name == "--format"])

    def test_completes_values_that_the_program_takes(self):
        said = json.loads(run("kinds", "--format", "json").out)
        kinds = {one["name"] for one in said["kinds"] + said["elements"]}
        rules = [one["id"] for one in json.loads(run("rules", "--format", "json").out)["rules"]]
        self.assertEqual(set(self.completed("kinds", "")), kinds)
        self.assertEqual(self.completed("rules", ""), rules)
        self.assertEqual(self.completed("check", "--rule", ""), rules)
        for drive in self.completed("new", ""):
            self.assertStatus(run("new", drive), 0)
        self.assertEqual(self.completed("draw", "--format", "=", "s"), ["svg"])
        self.assertEqual(self.completed("draw", "--format", "="), ["svg", "pdf", "png"])

    def test_completes_files(self):
        for name in ("a b.xml", "notes.txt", "more/c.xml", "layout.json"):
            self.file(name, "")
        self.assertEqual(self.completed("check", "mo"), ["more"])
        self.assertEqual(self.completed("check", "more/"), ["more/c.xml"])
        self.assertEqual(self.completed("check", "a"), ["a", "b.xml"])  # one name with a blank
        self.assertEqual(self.completed("check", "n"), [])
        self.assertEqual(self.completed("check", "-o", "n"), ["notes.txt"])
        self.assertEqual(self.completed("draw", "--read-layout", "l"), ["layout.json"])
        self.assertEqual(self.completed("check", "--assemblies", "m"), ["more"])

    def test_what_cannot_be_written_is_told(self):
        self.file("taken", "")
        ran = self.run_here("--write-shared-files", "taken")
        self.assertStatus(ran, 2)
        self.assertIn("'taken' cannot be made", ran.messages)


if __name__ == "__main__":
    program.main()
