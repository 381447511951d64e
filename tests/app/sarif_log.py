"""Reading a SARIF log as its standard says (OASIS SARIF 2.1.0; the numbers are its sections)."""

import json
import pathlib
import re
import urllib.parse

import program

# What the tests of SARIF share: an assembly that uses another, and a waiver.
BLOCK = ('<assembly format="1"> <use id="V" file="inner/valve.xml"/>'
         '<port id="A" of="V.A"/> <port id="B" of="V.B"/> </assembly>')
VALVE = ('<assembly format="1"> <check-valve id="C"/>'
         '<port id="A" of="C.A"/> <port id="B" of="C.B"/> </assembly>')
WAIVER = ('<waiver rule="make-up-check" subject="side:P1.A" reason="{}" by="owner" '
          'until="2027-06-30"/>')
TODAY = ("--today", "2026-11-25")

OUTCOMES = {"pass": "pass", "fail": "fail", "open": "inconclusive",
            "notApplicable": "not-applicable"}
NEWLINES = re.compile(r"\r\n|\n|\r")  # as the run's newlineSequences have them


class Log:
    """One run; `folder` is where the program was run, which the log leaves open (3.14.14)."""

    def __init__(self, text, folder=pathlib.Path(".")):
        self.whole = json.loads(text)
        (self.run,) = self.whole["runs"]
        self.folder = pathlib.Path(folder)
        self.results = self.run["results"]
        self.rules = self.run["tool"]["driver"]["rules"]
        (invocation,) = self.run["invocations"]
        self.successful = invocation["executionSuccessful"]
        self.notifications = invocation["toolExecutionNotifications"]

    def file(self, location):
        """What an artifactLocation (3.4) names: a path, or None for what is no file."""
        artifact = self.run["artifacts"][location["index"]]
        if "uri" not in location:
            return None
        if artifact["location"] != {k: v for k, v in location.items() if k != "index"}:
            raise AssertionError(f"index and URI differ: {location}, {artifact['location']}")
        uri = urllib.parse.urlsplit(location["uri"])
        path = urllib.parse.unquote_to_bytes(uri.path).decode("utf-8", "surrogateescape")
        if uri.scheme:
            return pathlib.Path(path)
        if location["uriBaseId"] not in self.run["originalUriBaseIds"]:
            raise AssertionError(f"no such base: {location}")
        return self.folder / path

    def place(self, physical):
        """(file, line, column, end line, end column)."""
        region = physical["region"]
        return (self.file(physical["artifactLocation"]), region["startLine"],
                region["startColumn"], region["endLine"], region["endColumn"])

    def text(self, physical):
        """The text of a region: columns count characters, the end is behind the last (3.30)."""
        path, line, column, end_line, end_column = self.place(physical)
        text = (path.read_bytes() if path else
                self.run["artifacts"][physical["artifactLocation"]["index"]]["contents"]["text"]
                .encode()).decode("utf-8").removeprefix("\ufeff")
        starts = [0, *(match.end() for match in NEWLINES.finditer(text))]
        return text[starts[line - 1] + column - 1:starts[end_line - 1] + end_column - 1]


def plain(message):
    """A message's text without what the standard escapes (3.11.5, 3.11.6)."""
    return re.sub(r"\\([\[\]])", r"\1", message["text"]).replace("{{", "{").replace("}}", "}")


def of(*arguments, cwd=None, status=None, **options):
    """Runs `check --format sarif`."""
    ran = program.run("check", "--format", "sarif", *arguments, cwd=cwd, **options)
    if status is not None and ran.status != status:
        raise AssertionError(f"{ran.status}: {ran.messages}")
    return Log(ran.out, cwd or pathlib.Path.cwd())


def with_waiver(text, reason="test stand"):
    """The circuit with its make-up check's finding accepted."""
    return program.changed("</circuit>", WAIVER.format(reason) + "</circuit>", text)
