# SPDX-License-Identifier: GPL-3.0-or-later
"""What the lint tests share: the project's files, and a report in TAP.

The first argument of every lint test is the project's root.
"""

import pathlib
import subprocess
import sys

ROOT = pathlib.Path(sys.argv[1]).resolve()


def files():
    """All files of the project, relative to the root, sorted; those git ignores left out."""
    if (ROOT / ".git").exists():
        command = ["git", "-c", "safe.directory=*", "-C", str(ROOT), "ls-files", "-co", "-z",
                   "--exclude-standard"]
        names = subprocess.run(command, check=True, capture_output=True).stdout.decode().split("\0")
        found = {pathlib.Path(name) for name in names if name}
    else:
        found = {
            path.relative_to(ROOT)
            for path in ROOT.rglob("*")
            if path.is_file() and not path.relative_to(ROOT).parts[0].startswith("build")
        }
    return sorted(path for path in found if (ROOT / path).is_file())


def sources(folder, endings=(".c", ".h")):
    """The files under `folder` ("src", "tests") with one of `endings`."""
    return [path for path in files() if path.parts[0] == folder and path.suffix in endings]


def text(path):
    """The text of a file of the project, or None for one that is no text (a picture)."""
    try:
        return (ROOT / path).read_text(encoding="utf-8")
    except UnicodeDecodeError:
        return None


class Report:
    """Collects what is wrong, by check, and ends the program with a TAP report."""

    def __init__(self):
        self.checks = {}

    def check(self, name):
        """Says that `name` is checked, so that it shows even when all is well."""
        self.checks.setdefault(name, [])

    def wrong(self, name, message):
        self.checks.setdefault(name, []).append(message)

    def end(self):
        print(f"1..{len(self.checks)}")
        for number, (name, messages) in enumerate(self.checks.items(), 1):
            for message in messages:
                print(f"# {message}")
            print(f"{'not ok' if messages else 'ok'} {number} - {name}")
        sys.exit(any(self.checks.values()))
