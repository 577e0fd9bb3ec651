"""The real server, started as a builder starts it, on a folder of its own."""

from __future__ import annotations

import os
import queue
import re
import signal
import socket
import subprocess
import sys
import threading
import time
from contextlib import contextmanager

COMMAND = "from firmpedal.cli.main import main; main()"
SLOW = 30_000  # ms; the first answer about an aircraft, on a small machine that does more than this
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
            stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
            env=_environment(),
        )  # fmt: skip
        self.said, self._lines = "", queue.SimpleQueue()
        # It never waits for somebody to read what it says.
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()
        try:
            while not (found := re.search(r"open at (http\S+?:\d+)(/\S*)", self.said)):
                self.said += self._line(began)
            _wait_for(int(found[1].rpartition(":")[2]), began)
        except BaseException:
            self.process.kill()
            self._end()
            raise
        self.base, self.first = found[1], found[1] + found[2]

    def _read(self):
        for line in self.process.stdout:
            self._lines.put(line)
        self._lines.put("")

    def _line(self, began):
        try:
            line = self._lines.get(timeout=max(began + PATIENCE - time.monotonic(), 0))
        except queue.Empty:
            raise AssertionError(f"it does not start: {self.said}") from None
        assert line, f"it ended: {self.said}"
        return line

    def _end(self):
        """Wait for it, and give the pipe back; the result is what it said that nobody read."""
        self.process.wait(timeout=PATIENCE)
        self._reader.join(timeout=PATIENCE)
        self.process.stdout.close()
        rest = ""
        while not self._lines.empty():
            rest += self._lines.get()
        return rest

    def more(self):
        """What it says next."""
        return self._line(time.monotonic())

    def stop(self):
        """Stop it as Ctrl+C does; the result is its exit code and all that it said."""
        self.process.send_signal(signal.SIGINT)
        rest = self._end()
        return self.process.returncode, self.said + rest


def saved(path, words):
    """Wait until the file on the disk holds words."""
    for _ in range(100):
        text = path.read_text(encoding="utf-8")
        if words in text:
            return text
        time.sleep(0.1)
    raise AssertionError(f"{words!r} is not on the disk:\n{text}")


def hear_faults(page):
    """Note in a page's `faults` what goes wrong there: scripts that fail, errors on the console."""
    page.faults = []
    page.on("pageerror", lambda fault: page.faults.append(str(fault)))
    page.on("console", lambda said: page.faults.append(said.text) if said.type == "error" else None)


@contextmanager
def serving(place, *more):
    """The server on a folder and a free port; in the end it stops as it should, and never fell over."""
    served = Served(place, "--port", str(free_port()), *more)
    try:
        yield served
    finally:
        code, said = served.stop()
    assert code == 0, said
    assert "Traceback" not in said, said
