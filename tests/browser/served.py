"""The real server, started as a builder starts it, on a folder of its own."""

from __future__ import annotations

import os
import re
import selectors
import signal
import socket
import subprocess
import sys
import time

COMMAND = "from firmpedal.cli.main import main; main()"
PATIENCE = 60.0  # s; CI's machines are small and shared


def _environment():
    """As a builder has it: nothing tells the server that it is being tested."""
    kept = {key: word for key, word in os.environ.items() if not key.startswith(("PYTEST_", "NICEGUI_"))}
    return {**kept, "COLUMNS": "80", "PYTHONUNBUFFERED": "1"}


def free_port():
    """A port that is free on every address of this machine."""
    with socket.socket() as probe:
        probe.bind(("", 0))
        return probe.getsockname()[1]


def _wait_for(port, began):
    """It says where it is a moment before it listens there."""
    while time.monotonic() < began + PATIENCE:
        with socket.socket() as probe:
            if probe.connect_ex(("127.0.0.1", port)) == 0:
                return
        time.sleep(0.02)
    raise AssertionError(f"nobody listens at {port}")


class Served:
    """A running `firmpedal open`; what it said, and where it answers."""

    def __init__(self, place, *more):
        began = time.monotonic()
        self.process = subprocess.Popen(
            [sys.executable, "-c", COMMAND, "open", str(place), "--no-browser", *more],
            stdout=subprocess.PIPE, stderr=subprocess.STDOUT, bufsize=0,
            env=_environment(),
        )  # fmt: skip
        self.said = ""
        try:
            while not (found := re.search(r"open at (http\S+?:\d+)(/\S*)", self.said)):
                self.said += self._line(began)
            _wait_for(int(found[1].rpartition(":")[2]), began)
        except BaseException:
            self.process.kill()
            self.process.communicate()
            raise
        self.base, self.first = found[1], found[1] + found[2]

    def _line(self, began):
        with selectors.DefaultSelector() as waiting:
            waiting.register(self.process.stdout, selectors.EVENT_READ)
            assert waiting.select(began + PATIENCE - time.monotonic()), f"it does not start: {self.said}"
        line = self.process.stdout.readline().decode()
        assert line, f"it ended: {self.said}"
        return line

    def more(self):
        """What it says next."""
        return self._line(time.monotonic())

    def stop(self):
        """Stop it as Ctrl+C does; the result is its exit code and all that it said."""
        self.process.send_signal(signal.SIGINT)
        rest, _ = self.process.communicate(timeout=PATIENCE)
        return self.process.returncode, self.said + rest.decode()
