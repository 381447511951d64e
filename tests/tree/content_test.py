"""What no file may hold, how long a file may be, and what stands at the top of the tree."""

import re
import unittest

import tree

TOP = {"CMakeLists.txt", "CMakePresets.json", "DEVELOPERS.md", "LICENSE", "README.md", "dev", "app",
       "base", "circuits", "graph", "hydraulics", "parser", "render", "rules", "tests"}

LONGEST = 400
# Longer files, each with its reason. A file that is short again must leave the list.
LONG_FILES = {}

# Hosts that may be named, each with its reason; registries and mirrors are not among them.
HOSTS = {
    "www.w3.org": "namespaces of SVG and XML schema",
    "json-schema.org": "the dialect of our JSON schemas",
    "json.schemastore.org": "the name of SARIF's schema in each log",
    "www.apache.org": "the licence's own text",
    "www.debian.org": "the name of the form that Debian's copyright files have",
}

CPP_WORDS = {
    r"\bstd::(ranges::)?views\b|\bviews::": "Clang 14 cannot compile views of libstdc++ 12",
    r"\bstd::(format|expected|print)\b": "not in GCC 12",
    r"\b(GTEST_SKIP|DISABLED_\w*)\b": "a test that is skipped proves nothing",
    r"\bsetlocale\b|\bstd::locale\b": "no result depends on the locale",
}

# Written in two parts, so that this file does not hold them itself.
ANY_WORDS = {
    r"\b(TO" r"DO|FIX" r"ME|XX" r"X)\b": "unfinished work belongs in an issue",
    r"(?<![\w.])/(wo" r"rk|tm" r"p|ro" r"ot|ho" r"me)/": "a path of one machine",
}
URL = re.compile(r"https?://([\w.-]+)")


def lines_with(pattern, text):
    return [text.count("\n", 0, m.start()) + 1 for m in re.finditer(pattern, text)]


def complaints(texts):
    wrong = []
    for path, text in texts.items():
        for pattern, reason in ANY_WORDS.items():
            wrong += [f"{path}:{line}: {reason}" for line in lines_with(pattern, text)]
        for host in URL.findall(text):
            if host not in HOSTS:
                wrong.append(f"{path}: names the host {host}")
        if tree.is_cpp(path):
            code = tree.without_comments(text)
            for pattern, reason in CPP_WORDS.items():
                wrong += [f"{path}:{line}: {reason}" for line in lines_with(pattern, code)]
        if "\r" in text and not path.startswith("tests/"):
            wrong.append(f"{path}: has carriage returns")
    return wrong


def length_complaints(texts, listed):
    lengths = {path: text.count("\n") for path, text in texts.items()}
    return ([f"{path} has {n} lines, more than {LONGEST}" for path, n in lengths.items()
             if n > LONGEST and path not in listed] +
            [f"{path} is listed as long and is not" for path in listed
             if lengths.get(path, 0) <= LONGEST])


def top_complaints(paths):
    there = {path.split("/")[0] for path in paths}
    visible = {name for name in there if not name.startswith(".")}
    return ([f"{name} does not belong at the top" for name in sorted(visible - TOP)] +
            [f"{name} is missing at the top" for name in sorted(TOP - visible)])


def is_source(path):
    return tree.is_cpp(path) or path.endswith(".py") or path == "dev"


class Content(unittest.TestCase):
    def test_of_this_tree(self):
        self.assertEqual(complaints(tree.texts()), [])

    def test_lengths_of_this_tree(self):
        self.assertEqual(length_complaints(tree.texts(is_source), LONG_FILES), [])

    def test_top_of_this_tree(self):
        self.assertEqual(top_complaints(tree.files()), [])

    def test_each_offence_is_seen(self):
        for path, text in {
            "base/a.cpp": "auto x = std::views::iota(0);",
            "base/b.cpp": "auto x = std::format(1);",
            "tests/base/c.cpp": "TEST(A, DISABLED_b) {}",
            "README.md": "see /wo" "rk/main",
            "dev": "# TO" "DO later",
            "DEVELOPERS.md": "from https:" "//packages.example.org/pool",
            "app/d.h": "int a;\r\n",
        }.items():
            with self.subTest(path):
                self.assertEqual(len(complaints({path: text})), 1, complaints({path: text}))

    def test_words_in_comments_and_strings_are_no_code(self):
        self.assertEqual(complaints({"base/a.cpp": '// no std::views\nf("std::format");\n'}), [])

    def test_a_long_file_and_a_stale_entry_are_seen(self):
        self.assertEqual(len(length_complaints({"a.h": "\n" * 401}, {})), 1)
        self.assertEqual(length_complaints({"a.h": "\n" * 401}, {"a.h": "why"}), [])
        self.assertEqual(len(length_complaints({"a.h": "\n" * 400}, {"a.h": "why"})), 1)

    def test_a_stray_and_a_missing_entry_at_the_top_are_seen(self):
        paths = [name + "/x" for name in TOP - {"LICENSE"}] + ["notes/x", ".ci/run"]
        self.assertEqual(top_complaints(paths), ["notes does not belong at the top",
                                                 "LICENSE is missing at the top"])


if __name__ == "__main__":
    unittest.main()
