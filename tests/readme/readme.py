"""What of the README is made by the program: tables, the output that it shows, and all drawings.

    readme.py PROGRAM

writes them anew (./dev readme); readme_test.py holds them against the program. A block of the
README marked `sh` is a list of commands, a line each, run one after the other in a scratch folder;
behind one stands "# exit status N" where it is not 0. A block marked `text` right behind is the
standard output of the last command. The block marked `xml` is the file drum.xml.
"""

import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
CIRCUITS = ROOT / "circuits"
README = ROOT / "README.md"
BLOCK = re.compile(r"^```(xml|sh|text)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
ELSEWHERE = re.compile(r"\./dev |sudo apt install ")  # what readme_test.py accounts for otherwise


def blocks(text):
    return [(match[1], match[2], match) for match in BLOCK.finditer(text)]


def commands(block):
    """Pairs of a command and its exit status."""
    for line in filter(None, block.splitlines()):
        command, _, note = line.partition("#") if line.startswith(("loopwright", "./dev")) else (
            line, "", "")
        status = re.search(r"exit status (\d)", note)
        yield command.strip(), int(status[1]) if status else 0


class Session:
    """A user's folder, in which the README is followed."""

    def __init__(self, program, folder):
        self.folder = folder
        self.path = f"{pathlib.Path(program).resolve().parent}:{os.environ['PATH']}"
        shutil.copytree(CIRCUITS, folder / "circuits")

    def run(self, command, status=0):
        """Standard output of a command; an error where its status is another."""
        ran = subprocess.run(["bash", "-euo", "pipefail", "-c", command], cwd=self.folder,
                             stdin=subprocess.DEVNULL, capture_output=True, text=True,
                             check=False, env={**os.environ, "PATH": self.path})
        if ran.returncode != status:
            raise AssertionError(f"`{command}` gives {ran.returncode}, not {status}:\n{ran.stderr}")
        return ran.stdout

    def follow(self, text):
        """Does what the README says; gives it back with the outputs of today, and all commands."""
        done, output, result, at = [], "", "", 0
        for kind, content, match in blocks(text):
            if kind == "xml":
                (self.folder / "drum.xml").write_text(content)
            elif kind == "sh":
                for command, status in commands(content):
                    done.append(command)
                    if not ELSEWHERE.match(command):
                        output = self.run(command, status)
            else:
                result += text[at:match.start(2)] + output
                at = match.end(2)
        return result + text[at:], done


def table(rows, *columns):
    lines = [columns, ["---"] * len(columns), *rows]
    return "".join(f"| {' | '.join(cells)} |\n" for cells in lines)


def tables(session):
    """The lists of rules and kinds, each entry with a link to the file that it comes from."""
    def entries(verb):
        return json.loads(session.run(f"loopwright {verb} --format json"))[verb]

    def link(folder, name):
        return f"[{name}]({folder}/{name.replace('-', '_')}.cpp)"
    return {
        "rules": table([(link("rules", one["id"]), one["question"], one["level"])
                        for one in entries("rules")], "rule", "question", "at worst"),
        "kinds": table([(link("parser/kinds", one["name"]), one["doc"])
                        for one in entries("kinds")], "kind", "what it is"),
    }


def with_tables(text, made):
    for name, rows in made.items():
        text, count = re.subn(rf"(<!-- {name}: [^>]*-->\n).*?(<!-- end -->)",
                              lambda match, rows=rows: match[1] + "\n" + rows + "\n" + match[2],
                              text, flags=re.DOTALL)
        if count != 1:
            raise AssertionError(f"the README has {count} places for the table of {name}")
    return text


def drawings(session):
    """Every drawing of the tree and its bytes of today; those of the README's own circuit are
    made by the README's commands."""
    made = {}
    for page in sorted(CIRCUITS.glob("*/README.md")):
        name = page.parent.name
        session.run(f"loopwright draw circuits/{name}/{name}.xml -o example.svg")
        made[page.with_name(f"{name}.svg")] = (session.folder / "example.svg").read_bytes()
    for name in ("drum", "drum-turned"):
        made[CIRCUITS / f"twenty-lines/{name}.svg"] = (session.folder / f"{name}.svg").read_bytes()
    return made


def made_anew(program):
    """The README and all drawings, by path, as the program makes them today."""
    with tempfile.TemporaryDirectory() as folder:
        session = Session(program, pathlib.Path(folder))
        text, _ = session.follow(README.read_text())
        return {README: with_tables(text, tables(session)).encode(), **drawings(session)}


if __name__ == "__main__":
    for PATH, CONTENT in made_anew(sys.argv[1]).items():
        PATH.write_bytes(CONTENT)
