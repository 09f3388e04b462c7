# SPDX-License-Identifier: GPL-3.0-or-later
"""What the tests share that use the program from outside, as a screen reader or a person does."""

import os
import signal
import subprocess
import sys
import time

from gi.repository import GLib

LONGEST_WAIT = 30  # seconds; a busy machine under sanitizers is slow


def wait_for(what, condition):
    """Returns what `condition` returns once it is true; ends the test when that takes too long."""
    end = time.monotonic() + LONGEST_WAIT
    while True:
        try:
            found = condition()
        except GLib.GError:  # a window went while it was looked at
            found = None
        if found:
            return found
        if time.monotonic() > end:
            raise AssertionError(f"waited in vain: {what}")
        time.sleep(0.05)


class Program:
    """The program under test; a warning of GTK or GLib ends it."""

    def __init__(self, *command, **variables):
        environment = dict(os.environ, G_DEBUG="fatal-warnings", **variables)
        self.process = subprocess.Popen(command, env=environment)

    def is_running(self):
        return self.process.poll() is None

    def kill(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def end(self):
        if self.is_running():
            self.process.terminate()
        self.process.wait()

    def wait(self):
        """Waits until it has ended by itself; returns its exit status."""
        wait_for("the program to end", lambda: not self.is_running())
        return self.process.returncode


class Report:
    """Runs cases and prints TAP."""

    def __init__(self):
        self.lines = []
        self.failed = False

    def case(self, name, function, *arguments):
        try:
            messages = function(*arguments) or []
        except (AssertionError, GLib.GError) as error:
            messages = [str(error) or "an assertion failed"]
        number = len(self.lines) + 1
        for message in messages:
            print(f"# {message}", flush=True)
        self.lines.append(name)
        self.failed |= bool(messages)
        print(f"{'not ok' if messages else 'ok'} {number} - {name}", flush=True)

    def end(self):
        print(f"1..{len(self.lines)}")
        sys.exit(self.failed)
