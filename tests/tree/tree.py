"""What the tests of the tree share: the files that belong to it, and what they say."""

import os
import pathlib
import re
import subprocess

ROOT = pathlib.Path(__file__).resolve().parents[2]


def files(root=ROOT):
    """All files of the tree as paths relative to it with '/', sorted: those that git knows or would
    add; without git (an unpacked archive) all but the build folder."""
    git = subprocess.run(["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
                         cwd=root, capture_output=True, check=False)
    if git.returncode == 0:
        names = [name for name in os.fsdecode(git.stdout).split("\0") if name]
        return sorted({name for name in names if (root / name).is_file()})
    found = []
    for folder, folders, names in os.walk(root):
        here = pathlib.Path(folder).relative_to(root)
        folders[:] = [f for f in folders if f not in ("build", "__pycache__", ".git")]
        found += [(here / name).as_posix() for name in names]
    return sorted(found)


def texts(wanted=lambda path: True, root=ROOT):
    """Path and text of each wanted file that is text."""
    result = {}
    for path in files(root):
        if wanted(path):
            try:
                result[path] = (root / path).read_text(encoding="utf-8")
            except UnicodeDecodeError:
                pass  # a picture, or a test's broken UTF-8
    return result


def is_cpp(path):
    return path.endswith((".h", ".cpp"))


def without_comments(text):
    """C++ text with comments and the inside of string literals blanked, line numbers kept."""
    pattern = re.compile(r'R"(\w*)\(.*?\)\1"|"(?:\\.|[^"\\\n])*"|//[^\n]*|/\*.*?\*/', re.DOTALL)

    def blank(match):
        lines = "\n" * match.group().count("\n")
        return '""' + lines if match.group()[0] in 'R"' else lines

    return pattern.sub(blank, text)
