"""Every C++ file is as clang-format 14 would write it (./dev format does)."""

import subprocess
import unittest

import tree

TOOL = "clang-format-14"


class Format(unittest.TestCase):
    def test_of_this_tree(self):
        paths = [path for path in tree.files() if tree.is_cpp(path)]
        self.assertGreater(len(paths), 50)
        run = subprocess.run([TOOL, "--dry-run", "-Werror", *paths], cwd=tree.ROOT,
                             capture_output=True, text=True, check=False)
        self.assertEqual(run.returncode, 0, "./dev format repairs it:\n" + run.stderr[:4000])

    def test_an_offence_is_seen(self):
        run = subprocess.run([TOOL, "--dry-run", "-Werror", "--assume-filename=base/a.cpp"],
                             input="int  a ;\n", cwd=tree.ROOT, capture_output=True, text=True,
                             check=False)
        self.assertNotEqual(run.returncode, 0)


if __name__ == "__main__":
    unittest.main()
