"""What the program tells about its rules and kinds, against the files that define them.

The first argument is the program.
"""

import re
import subprocess
import sys
import unittest

import tree
from lists_test import KIND, RULE, definitions, entries

PROGRAM = None


def told(*arguments):
    run = subprocess.run([PROGRAM, *arguments], capture_output=True, text=True, check=False,
                         timeout=60)
    return run.returncode, run.stdout


def ids(folder, pattern, list_file):
    """Ids in the order of the list, from the sources alone."""
    texts = tree.texts(tree.is_cpp)
    defined = definitions(texts, folder, pattern)
    names = entries(texts[list_file])
    return {name.replace("_", "-"): texts[defined[name]] for name in names}


class Program(unittest.TestCase):
    def listed(self, verb, known):
        status, text = told(verb)
        self.assertEqual(status, 0)
        places = []
        for name in known:
            line = re.search(rf"^\s*{re.escape(name)}\s+(\S.*)$", text, re.MULTILINE)
            self.assertIsNotNone(line, f"`loopwright {verb}` does not list {name} with its title")
            places.append(line.start())
        self.assertEqual(places, sorted(places), "not in the order of the list")

    def test_rules_are_listed_and_documented(self):
        known = ids("rules", RULE, "rules/registry.cpp")
        self.listed("rules", known)
        for name, source in known.items():
            with self.subTest(name):
                status, text = told("rules", name)
                self.assertEqual(status, 0)
                words = " ".join(text.split())
                for field in ("question", "why", "decided", "remedy"):
                    first = re.search(rf'\.{field}\s*=\s*"((?:\\.|[^"\\])*)"', source)
                    self.assertIsNotNone(first, f"{name} has no {field}")
                    self.assertIn(" ".join(first.group(1).replace('\\"', '"').split()), words,
                                  f"`loopwright rules {name}` does not tell its {field}")

    def test_kinds_are_listed_and_documented(self):
        known = ids("parser/kinds", KIND, "parser/kinds/catalogue.cpp")
        self.listed("kinds", known)
        for name, source in known.items():
            with self.subTest(name):
                status, text = told("kinds", name)
                self.assertEqual(status, 0)
                self.assertNotIn('.doc = ""', source)
                for word in re.findall(r'\.(?:name|letter)\s*=\s*"([^"]+)"', source):
                    self.assertRegex(text, rf"(?<![\w-]){re.escape(word)}(?![\w-])",
                                     f"`loopwright kinds {name}` does not tell of {word}")

    def test_an_unknown_name_is_refused(self):
        self.assertEqual(told("rules", "no-such-rule")[0], 2)
        self.assertEqual(told("kinds", "no-such-kind")[0], 2)


if __name__ == "__main__":
    PROGRAM = sys.argv.pop(1)
    unittest.main()
