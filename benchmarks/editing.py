"""How soon an answer follows a change in the app, on the largest example, beside one from nothing.

The calls are the app's own: a change of the document, which is saved, and then the evaluation.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path
from statistics import median, quantiles
from time import perf_counter, sleep
from typing import TYPE_CHECKING

import httpx

if TYPE_CHECKING:
    from firmpedal.web.desk import Document

LARGEST = Path(__file__).parents[1] / "examples" / "oatmere.yaml"
COLD_RUNS = 3
PATIENCE = 60.0  # s
LOOKING = 0.2  # s between looks at a page: each is made anew, by the process that works the answer out
VERDICTS = tuple(f'data-verdict":"{each}"' for each in ("sound", "not sound", "not shown"))

# What somebody changes in an evening, each to values it never had, so that no answer is only remembered.
EDITS: tuple[tuple[str, str, tuple[str, ...]], ...] = (
    ("the foot's force", "foot.hard", ("152", "154", "156", "158", "161")),
    ("a bore", "components.pilot_left.bore", ("0.7", "0.71", "0.72", "0.73", "0.74")),
    ("a wall's thickness", "bulkheads.left_belly.thickness", ("0.021", "0.022", "0.023", "0.024", "0.026")),
    ("a corner of tube", "lines.left_run.via.2",
     ("[10.6, -2.5, -0.5]", "[10.7, -2.5, -0.5]", "[10.8, -2.5, -0.5]", "[10.9, -2.5, -0.5]", "[11, -2, 0]")),
    ("a corner of hose", "lines.left_gear.via.1",
     ("[49.1, -18, -5]", "[49.2, -18, -5]", "[49.3, -18, -5]", "[49.4, -18.1, -5]", "[49.5, -18.1, -5]")),
    ("a bend radius", "bench.bend radius", ("0.77", "0.78", "0.79", "0.81", "0.82")),
    ("clamps", "lines.left_run.clamps",
     ("[14]", "[14, 24]", "[14, 24, 34]", "[14, 24, 34, 40]", "[13, 24, 34, 40]")),
)  # fmt: skip


@dataclass(frozen=True)
class Editing:
    """Seconds from a change to its answer, by what was changed, and of evaluations from nothing."""

    by_work: dict[str, list[float]]
    cold: float

    def __str__(self) -> str:
        whole = [each for times in self.by_work.values() for each in times]
        high = quantiles(whole, n=20, method="inclusive")[-1]
        rows = [
            f"  {work:20s} {_ms(median(times))}, at most {_ms(max(times))}"
            for work, times in self.by_work.items()
        ]
        against = f"ratio {self.cold / median(whole):.1f} at p50, {self.cold / high:.1f} at p95"
        head = f"from a change to its answer, {LARGEST.stem}, {len(whole)} changes\n"
        return head + "\n".join(
            [f"  p50 {_ms(median(whole))}, p95 {_ms(high)}; from nothing {_ms(self.cold)}: {against}", *rows]
        )


def edits() -> Editing:
    """Change a copy of the example as the app does, kind by kind in turn; each in a process of its own."""
    cold = min(float(_in_its_own(COLD)) for _ in range(COLD_RUNS))
    return Editing(json.loads(_in_its_own(EDITING)), cold)


def edited() -> dict[str, list[float]]:
    """Seconds from each change to its answer, by what was changed."""
    from firmpedal.web.desk import Document  # noqa: PLC0415  not where only the start is timed
    from firmpedal.web.tidying import hold_back  # noqa: PLC0415

    hold_back()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / LARGEST.name
        path.write_bytes(LARGEST.read_bytes())
        document = Document(path)
        _answered(document)
        times: dict[str, list[float]] = {work: [] for work, _, _ in EDITS}
        for turn in range(len(EDITS[0][2])):
            for work, place, values in EDITS:
                begun = perf_counter()
                document.change(place, values[turn])
                _answered(document)
                times[work].append(perf_counter() - begun)
    return times


def _answered(document: Document) -> None:
    from firmpedal.web.answers import answer  # noqa: PLC0415

    if answer(document.text, document.path.name, None, None).evaluation is None:
        raise RuntimeError("after the change the text cannot be read")


COLD = """
import sys, time
from pathlib import Path
from firmpedal.web.answers import answer
path = Path(sys.argv[1])
text = path.read_text(encoding="utf-8")
begun = time.perf_counter()
answer(text, path.name, None, None)
print(time.perf_counter() - begun)
"""
EDITING = "import json; from benchmarks.editing import edited; print(json.dumps(edited()))"
SERVED = "from firmpedal.cli.main import main; main()"


def _in_its_own(script: str) -> str:
    return subprocess.run(  # noqa: S603  our own command
        [sys.executable, "-c", script, str(LARGEST)], capture_output=True, text=True, check=True
    ).stdout


@dataclass(frozen=True)
class Starting:
    """Seconds from the command to a page that can be used."""

    first: float
    verdict: float

    def __str__(self) -> str:
        return (
            f"from the command to the first page {_ms(self.first)}, to the verdict on {LARGEST.stem} "
            f"{_ms(self.verdict)} after it was asked for"
        )


def start() -> Starting:
    """Start the app on the example once to warm the disk, and once more for the figures."""
    return [_start() for _ in range(2)][-1]


def _start() -> Starting:
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / LARGEST.name).write_bytes(LARGEST.read_bytes())
        begun = perf_counter()
        running = subprocess.Popen(  # noqa: S603  our own command
            [sys.executable, "-c", SERVED, "open", folder, "--no-browser"],
            stdout=subprocess.PIPE, text=True, env=_as_installed(),
        )  # fmt: skip
        try:
            base = _address(running)
            _page(base, "/")
            first = perf_counter() - begun
            asked = perf_counter()
            while not any(word in _page(base, f"/aircraft/{LARGEST.name}/sound") for word in VERDICTS):
                if perf_counter() > asked + PATIENCE:
                    raise RuntimeError("no verdict")
                sleep(LOOKING)
            return Starting(first, perf_counter() - asked)
        finally:
            running.terminate()
            running.wait()


def _as_installed() -> dict[str, str]:
    """The environment of a user, whose program is kept as bytecode once it has run."""
    own = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    return {**own, "PYTHONUNBUFFERED": "1", "COLUMNS": "200"}


def _address(running: subprocess.Popen[str]) -> str:
    if running.stdout is None:
        raise RuntimeError("nothing is said")
    return running.stdout.readline().split(" open at ")[1].strip().rstrip("/")


def _page(base: str, path: str) -> str:
    until = perf_counter() + PATIENCE
    while True:
        try:
            return httpx.get(base + path, timeout=PATIENCE).raise_for_status().text
        except httpx.ConnectError:
            if perf_counter() > until:
                raise
            sleep(0.005)


def _ms(seconds: float) -> str:
    return f"{1000 * seconds:.0f} ms"
