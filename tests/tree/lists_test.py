"""Rules and kinds: the file, the entry in the list, the symbol and the tests belong together.

A rule is a file of rules/ that defines a Rule, a kind a file of parser/kinds/ that defines a Kind. An id
in kebab-case is the file's name in snake_case, which is the object's name as well.
"""

import re
import unittest

import tree

RULE = re.compile(r"^extern constinit const Rule (\w+)\b", re.MULTILINE)
KIND = re.compile(r"^extern constinit const Kind (\w+)\b", re.MULTILINE)
ID = re.compile(r'\.id\s*=\s*"([^"]*)"')
NAME = re.compile(r'\.name\s*=\s*"([a-z][a-z0-9-]*)"')


def definitions(texts, folder, pattern):
    """Object name -> path, for every definition in the folder's sources."""
    return {name: path for path, text in texts.items()
            if re.fullmatch(re.escape(folder) + r"/[^/]*\.cpp", path)
            for name in pattern.findall(text)}


def entries(text):
    """The objects whose addresses stand in a list, in its order."""
    return re.findall(r"&(\w+)\b\s*[,}]", tree.without_comments(text))


def rule_complaints(texts):
    wrong = []
    defined = definitions(texts, "rules", RULE)
    listed = entries(texts["rules/registry.cpp"])
    wrong += [f"{path}: {name} is not in rules/registry.cpp"
              for name, path in defined.items() if name not in listed]
    wrong += [f"rules/registry.cpp: {name} has no file" for name in listed if name not in defined]
    wrong += [f"rules/registry.cpp: {name} stands twice" for name in set(listed)
              if listed.count(name) > 1]
    for name, path in defined.items():
        ids = ID.findall(texts[path])
        if path != f"rules/{name}.cpp" or ids != [name.replace("_", "-")]:
            wrong.append(f"{path}: file, object {name} and id {ids} must be the same words")
        suite = "".join(word.capitalize() for word in name.split("_"))
        cases = sum(len(re.findall(rf"^TEST\({suite},", text, re.MULTILINE))
                    for p, text in texts.items() if re.fullmatch(r"tests/rules/[^/]*\.cpp", p))
        if cases < 2:
            wrong.append(f"{path}: {cases} cases of TEST({suite}, ...) in tests/rules/, fewer than 2")
    return wrong


def kind_complaints(texts):
    wrong = []
    defined = definitions(texts, "parser/kinds", KIND)
    drawn = any(path.startswith("render/symbols/") for path in texts)
    listed = entries(texts["parser/kinds/catalogue.cpp"])
    wrong += [f"{path}: {name} is not in parser/kinds/catalogue.cpp"
              for name, path in defined.items() if name not in listed]
    wrong += [f"parser/kinds/catalogue.cpp: {name} has no file"
              for name in listed if name not in defined]
    words = [name.replace("_", "-") for name in listed]
    if words != sorted(set(words)):
        wrong.append("parser/kinds/catalogue.cpp: not sorted by name, or one stands twice")
    for name, path in defined.items():
        if path != f"parser/kinds/{name}.cpp" or name.replace("_", "-") not in NAME.findall(texts[path]):
            wrong.append(f"{path}: file, object {name} and the kind's name must be the same words")
        if drawn and f"render/symbols/{name}.cpp" not in texts:
            wrong.append(f"{path}: has no symbol render/symbols/{name}.cpp")
    return wrong


def norm_complaints(texts):
    """Every row of ISO 4413 stands once in the contributors' guide, and leads to rules that there are;
    one in brackets is yet to come."""
    rules = {name.replace("_", "-") for name in definitions(texts, "rules", RULE)}
    rows = re.findall(r"^\| (K\d\d) \| (.*) \|$", texts["DEVELOPERS.md"], re.MULTILINE)
    wrong = [] if [row for row, _ in rows] == [f"K{n:02}" for n in range(1, 51)] else [
        "DEVELOPERS.md: rows K01 to K50 do not stand there once each, in order"]
    for row, words in rows:
        named = [] if words.startswith("none") else re.sub(r"\([^)]*\)", "", words.partition(";")[0]).split(",")
        wrong += [f"DEVELOPERS.md: {row} leads to {name.strip()}, which is no rule"
                  for name in named if name.strip() and name.strip() not in rules]
    return wrong


def sample():
    """A tree of one sound rule and one sound kind."""
    return {
        "rules/registry.cpp": "all = {\n    &make_up_check,\n};",
        "rules/make_up_check.cpp":
            'extern constinit const Rule make_up_check{\n.info = {.id = "make-up-check",',
        "tests/rules/pairs_test.cpp": "TEST(MakeUpCheck, Sound) {}\nTEST(MakeUpCheck, Broken) {}\n",
        "parser/kinds/catalogue.cpp": "all = {&check_valve};",
        "parser/kinds/check_valve.cpp":
            'extern constinit const Kind check_valve{\n.name = "check-valve",',
        "render/symbols/check_valve.cpp": "",
        "render/symbols/symbols.cpp": "",
    }


class Lists(unittest.TestCase):
    def test_rules_of_this_tree(self):
        self.assertEqual(rule_complaints(tree.texts()), [])

    def test_kinds_of_this_tree(self):
        self.assertEqual(kind_complaints(tree.texts()), [])

    def test_rows_of_the_norm_of_this_tree(self):
        self.assertEqual(norm_complaints(tree.texts()), [])

    def test_lapses_with_rows_of_the_norm_are_seen(self):
        rows = "".join(f"| K{n:02} | make-up-check |\n" for n in range(1, 51))
        self.assertEqual(norm_complaints(sample() | {"DEVELOPERS.md": rows}), [])
        for what, text in {"missing": rows.replace("| K07 | make-up-check |\n", ""),
                           "no rule": rows.replace("K07 | make-up-check", "K07 | make-down-check")}.items():
            with self.subTest(what):
                self.assertEqual(len(norm_complaints(sample() | {"DEVELOPERS.md": text})), 1)

    def test_there_are_rules_and_kinds(self):
        texts = tree.texts(tree.is_cpp)
        self.assertGreaterEqual(len(definitions(texts, "rules", RULE)), 6)
        self.assertGreaterEqual(len(definitions(texts, "parser/kinds", KIND)), 14)

    def test_a_sound_tree_is_silent(self):
        self.assertEqual(rule_complaints(sample()) + kind_complaints(sample()), [])

    def test_each_lapse_with_a_rule_is_seen(self):
        for what, change in {
            "unlisted": {"rules/registry.cpp": "all = {};"},
            "no file": {"rules/registry.cpp": "all = {&make_up_check, &gone};"},
            "twice": {"rules/registry.cpp": "all = {&make_up_check, &make_up_check};"},
            "other id": {"rules/make_up_check.cpp":
                         'extern constinit const Rule make_up_check{.info = {.id = "make-up"'},
            "no tests": {"tests/rules/pairs_test.cpp": None},
            "one test": {"tests/rules/pairs_test.cpp": "TEST(MakeUpCheck, Sound) {}\n"},
        }.items():
            with self.subTest(what):
                texts = {k: v for k, v in (sample() | change).items() if v is not None}
                self.assertEqual(len(rule_complaints(texts)), 1)

    def test_each_lapse_with_a_kind_is_seen(self):
        for what, change in {
            "unlisted": {"parser/kinds/catalogue.cpp": "all = {};"},
            "no file": {"parser/kinds/catalogue.cpp": "all = {&check_valve, &gone};"},
            "twice": {"parser/kinds/catalogue.cpp": "all = {&check_valve, &check_valve};"},
            "other name": {"parser/kinds/check_valve.cpp":
                           'extern constinit const Kind check_valve{.name = "check"'},
            "no symbol": {"render/symbols/check_valve.cpp": None},
        }.items():
            with self.subTest(what):
                texts = {k: v for k, v in (sample() | change).items() if v is not None}
                self.assertEqual(len(kind_complaints(texts)), 1)


if __name__ == "__main__":
    unittest.main()
