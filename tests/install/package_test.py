"""The Debian package: what it holds, that lintian has no error, that it installs into an empty root
and works from there. Arguments: the build folder and the compiler.

Held against Debian's own tools (dpkg, lintian with the Debian Policy Manual behind it, man).
"""

import gzip
import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
BUILD = COMPILER = None


def done(*words, status=0, **options):
    """Runs a command; its standard output and error as one text."""
    ran = subprocess.run([str(word) for word in words], stdin=subprocess.DEVNULL,
                         stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False,
                         **options)
    if ran.returncode != status:
        raise AssertionError(f"{words} gives {ran.returncode}:\n{ran.stdout[-3000:]}")
    return ran.stdout


def errors_of_lintian(package):
    said = subprocess.run(["lintian", "--allow-root", "--display-level", "=error", package],
                          capture_output=True, text=True, check=False,
                          env={**os.environ, "LC_ALL": "C.UTF-8"})
    return [line for line in said.stdout.splitlines() if line.startswith("E: ")], said.returncode


class Package(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        folder = tempfile.TemporaryDirectory()
        cls.addClassCleanup(folder.cleanup)
        cls.folder = pathlib.Path(folder.name).resolve()
        done("cpack", "-G", "DEB", "-B", cls.folder, "--config", BUILD / "CPackConfig.cmake")
        cls.package, = cls.folder.glob("*.deb")
        cls.root = cls.folder / "root"
        known = cls.root / "var/lib/dpkg"
        for name in ("updates", "info", "triggers"):
            (known / name).mkdir(parents=True)
        for name in ("status", "available"):
            (known / name).touch()
        # An empty root has none of the libraries that the package depends on: those of this system
        # are used. The package has no scripts, so nothing has to run inside the root.
        done("fakeroot", "dpkg", f"--root={cls.root}", "--force-depends",
             "--force-script-chrootless", f"--log={cls.folder / 'dpkg.log'}", "-i", cls.package)
        cls.share = cls.root / "usr/share"
        cls.examples = cls.share / "doc/loopwright/examples"
        cls.program = cls.root / "usr/bin/loopwright"

    def run_installed(self, *arguments, status=0):
        """As a user of another machine: nothing of ours in the surroundings."""
        return done(self.program, *arguments, status=status, cwd=self.folder,
                    env={"PATH": f"{self.program.parent}:/usr/bin:/bin"})

    def test_lintian_has_no_error(self):
        self.assertEqual(errors_of_lintian(self.package), ([], 0))

    def test_lintian_would_see_one(self):
        taken = self.folder / "taken"
        done("dpkg-deb", "-R", self.package, taken)
        (taken / "usr/share/doc/loopwright/copyright").unlink()
        done("fakeroot", "dpkg-deb", "-b", taken, self.folder / "bad.deb")
        said, status = errors_of_lintian(self.folder / "bad.deb")
        self.assertIn("E: loopwright: no-copyright-file", said)
        self.assertNotEqual(status, 0)

    def test_names_the_version_everywhere(self):
        version = done("dpkg-deb", "-f", self.package, "Version").strip()
        self.assertEqual(self.run_installed("--version").strip(), f"loopwright {version}")
        with gzip.open(self.share / "doc/loopwright/changelog.gz", "rt") as log:
            self.assertTrue(log.readline().startswith(f"loopwright ({version}) "))

    def test_depends_on_what_the_program_loads(self):
        depends = done("dpkg-deb", "-f", self.package, "Depends")
        for one in ("fonts-osifont", "libc6", "libcairo2", "libfmt9", "libpugixml1v5"):
            self.assertIn(one, depends)
        self.assertNotIn("-dev", depends)

    def test_nothing_leads_back_to_the_tree(self):
        for file in filter(pathlib.Path.is_file, (self.root / "usr").rglob("*")):
            text = file.read_bytes()
            for folder in (ROOT, BUILD):
                self.assertNotIn(os.fsencode(folder) + b"/", text, file)

    def test_checks_and_draws_the_examples(self):
        sound = [self.examples / f"{page.parent.name}/{page.parent.name}.xml"
                 for page in self.examples.glob("*/README.md")]
        self.assertGreaterEqual(len(sound), 8)
        self.run_installed("check", *sound)
        said = self.run_installed(
            "check", self.examples / "ice-resurfacer/retrofit-make-up-check-turned.xml", status=1)
        self.assertIn("[make-up-check]", said)
        for ending, start in {"svg": b"<?xml", "pdf": b"%PDF", "png": b"\x89PNG"}.items():
            self.run_installed("draw", sound[0], "-o", f"drive.{ending}")
            self.assertTrue((self.folder / f"drive.{ending}").read_bytes().startswith(start))
        done(BUILD / "app/loopwright", "draw", sound[0], "-o", self.folder / "here.svg")
        self.assertEqual((self.folder / "drive.svg").read_bytes(),
                         (self.folder / "here.svg").read_bytes())

    def test_has_the_schemas(self):
        schemas = self.share / "loopwright/schemas"
        for file in schemas.iterdir():
            said = self.run_installed("schema", file.name.split(".")[0])
            self.assertEqual(file.read_text(), said)
        circuits = [file for file in self.examples.glob("*/*.xml")
                    if file.parent.name != "assemblies"]
        self.assertGreaterEqual(len(circuits), 20)
        done("xmllint", "--noout", "--schema", schemas / "circuit.xsd", *circuits)

    def test_has_a_manual_page(self):
        page = self.share / "man/man1/loopwright.1.gz"
        words = done("man", "--warnings", "-l", page,
                     env={**os.environ, "LC_ALL": "C.UTF-8", "MANWIDTH": "80"})
        self.assertIn("loopwright - check, compute and draw closed-loop hydrostatic drives", words)
        self.assertNotIn("warning:", words)

    def test_has_a_completion_that_bash_takes(self):
        script = self.share / "bash-completion/completions/loopwright"
        said = done("bash", "-euc", f"source {script}; complete -p loopwright")
        self.assertEqual(said, "complete -F _loopwright loopwright\n")

    def test_builds_a_user_of_the_library(self):
        built = self.folder / "user"
        done("cmake", "-S", ROOT / "tests/install/user", "-B", built,
             f"-DCMAKE_CXX_COMPILER={COMPILER}", f"-DCMAKE_PREFIX_PATH={self.root / 'usr'}")
        done("cmake", "--build", built)
        said = done(built / "user", self.examples / "roller/roller.xml")
        self.assertRegex(said, "^1 loop, [1-9][0-9]* verdicts, %PDF-")


if __name__ == "__main__":
    BUILD = pathlib.Path(sys.argv.pop(1)).resolve()
    COMPILER = sys.argv.pop(1)
    unittest.main()
