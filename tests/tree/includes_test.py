"""The include lines: which folder may know which, and where a third-party header may stand.

app -> (render, rules) -> hydraulics -> graph -> parser -> base; render and rules never meet.
"""

import re
import unittest

import tree

BELOW = {
    "base": set(),
    "parser": {"base"},
    "graph": {"parser", "base"},
    "hydraulics": {"graph", "parser", "base"},
    "rules": {"hydraulics", "graph", "parser", "base"},
    "render": {"hydraulics", "graph", "parser", "base"},
    "app": {"render", "rules", "hydraulics", "graph", "parser", "base"},
}

# Header pattern -> where it may be included from.
THIRD_PARTY = {
    r"pugixml\.hpp": r"parser/xml_reader\.cpp|tests/.*\.cpp",
    r"boost/container/.*": r"(graph|rules)/[^/]*\.cpp",
    r"boost/(?!container/).*": r"graph/[^/]*\.cpp",
    r"nlohmann/json_fwd\.hpp": r"render/writers/(json_parts|sarif_artifacts)\.h",
    r"nlohmann/(?!json_fwd).*": r"(render|tests)/.*\.cpp",
    r"CLI/.*": r"app/[^/]*\.cpp",
    r"(cairo|pango|fontconfig).*": r"(render|tests/render)/.*\.cpp",
    r"(gtest|gmock|benchmark)/.*": r"tests/.*",
    r"format|ranges|expected": r"",  # Clang 14 cannot compile views; GCC 12 lacks the other two
}

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*(?:<([^>]+)>|"([^"]+)")', re.MULTILINE)


def complaints(texts):
    """What is wrong with the include lines of these files (path -> text)."""
    wrong = []
    for path, text in texts.items():
        folder = path.split("/")[0]
        for angle, quoted in INCLUDE.findall(text):
            if quoted:
                wrong.append(f'{path}: "{quoted}": our own headers are <loopwright/...>')
            elif angle.startswith("loopwright/"):
                target = angle.removeprefix("loopwright/")
                if target not in texts:
                    wrong.append(f"{path}: <{angle}> is not in the tree")
                if folder in BELOW and target.split("/")[0] not in BELOW[folder] | {folder}:
                    wrong.append(f"{path}: {folder}/ must not know <{angle}>")
                if path.startswith("parser/kinds/") and not target.startswith(
                        ("parser/kinds/", "base/")):
                    wrong.append(f"{path}: a kind knows base/ and parser/kinds/ only, not <{angle}>")
            else:
                for header, places in THIRD_PARTY.items():
                    if re.fullmatch(header, angle) and not re.fullmatch(places, path):
                        wrong.append(f"{path}: <{angle}> has no place here")
    return wrong + cycles(texts)


def cycles(texts):
    """Headers that include each other in a circle."""
    includes = {path: [a.removeprefix("loopwright/") for a, _ in INCLUDE.findall(text)
                       if a.startswith("loopwright/")]
                for path, text in texts.items() if path.endswith(".h")}
    state, found = {}, []

    def visit(path, trail):
        state[path] = "open"
        for target in includes.get(path, []):
            if state.get(target) == "open":
                found.append("circle: " + " -> ".join(trail[trail.index(target):] + [target]))
            elif target not in state:
                visit(target, trail + [target])
        state[path] = "done"

    for path in includes:
        if path not in state:
            visit(path, [path])
    return found


class Includes(unittest.TestCase):
    def test_of_this_tree(self):
        self.assertEqual(complaints(tree.texts(tree.is_cpp)), [])

    def test_there_is_something_to_look_at(self):
        texts = tree.texts(tree.is_cpp)
        self.assertGreater(sum(len(INCLUDE.findall(text)) for text in texts.values()), 100)

    def test_each_offence_is_seen(self):
        offences = {
            "base/a.h": "#include <loopwright/graph/b.h>",
            "graph/b.h": "#include <boost/graph/filtered_graph.hpp>",
            "rules/a.cpp": "#include <loopwright/render/b.h>",
            "render/b.h": "#include <loopwright/rules/c.h>",
            "rules/c.h": "",
            "parser/reader.cpp": "#include <pugixml.hpp>",
            "parser/kinds/pump.cpp": "#include <loopwright/parser/reader.h>",
            "parser/reader.h": "  # include <format>",
            "app/main.cpp": '#include "commands.h"',
            "app/other.cpp": "#include <loopwright/app/gone.h>",
        }
        wrong = complaints(offences)
        for path in offences:
            if path != "rules/c.h":
                self.assertTrue(any(text.startswith(path) for text in wrong), f"{path}: {wrong}")

    def test_a_circle_is_seen(self):
        texts = {"base/a.h": "#include <loopwright/base/b.h>",
                 "base/b.h": "#include <loopwright/base/a.h>"}
        self.assertEqual(complaints(texts), ["circle: base/a.h -> base/b.h -> base/a.h"])

    def test_what_is_allowed_is_silent(self):
        self.assertEqual(complaints({
            "parser/xml_reader.cpp": "#include <pugixml.hpp>\n#include <loopwright/base/a.h>",
            "base/a.h": "#include <vector>\n#include <fmt/core.h>",
            "graph/a.cpp": "#include <boost/graph/strong_components.hpp>",
        }), [])


if __name__ == "__main__":
    unittest.main()
