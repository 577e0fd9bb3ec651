"""Every published case with the book's number beside ours, from a run of the tests in tests/published."""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
from decimal import Decimal
from itertools import groupby
from pathlib import Path
from typing import Any

from generator.region import PageError, table

from firmpedal.formulas.references import entry

_ROOT = Path(__file__).parents[2]
Case = dict[str, Any]

HOW = {
    "read": "read in the source",
    "derived": "worked out by hand or otherwise apart from the program",
    "memory": "from memory: nobody has looked it up",
}
# Our own derivations come last: a published figure says more.
_LAST = ("firmpedal-derivation", "common-practice")


def page(_argument: str) -> str:
    """The count, then one table for each source."""
    cases = _cases()
    groups = groupby(sorted(cases, key=_order), key=lambda case: case["source"])
    return "\n\n".join([_summary(cases), *(_source(key, list(group)) for key, group in groups)])


def _cases() -> list[Case]:
    """Run the published tests and take their cases; a failing one stops the page."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "cases.json"
        command = [sys.executable, "-m", "pytest", "tests/published", "-p", "no:cacheprovider"]
        run = subprocess.run(  # noqa: S603  our own tests, by the interpreter that runs this
            [*command, "--validation-json", str(path)], cwd=_ROOT, capture_output=True, text=True, check=False
        )
        if run.returncode != 0:
            last = "\n".join(run.stdout.splitlines()[-15:])
            raise PageError(f"validation: the published tests do not all pass, so there is no page:\n{last}")
        cases: list[Case] = json.loads(path.read_text(encoding="utf-8"))
    if not cases:
        raise PageError("validation: tests/published wrote no case")
    return cases


def _order(case: Case) -> tuple[bool, str, str]:
    return case["source"] in _LAST, case["source"], case["test"].split("[")[0]


def _summary(cases: list[Case]) -> str:
    differ = sum(not case["agrees"] for case in cases)
    rows = [
        (words, str(len(found)), str(sum(case["agrees"] for case in found)))
        for how, words in HOW.items()
        if (found := [case for case in cases if case["how"] == how])
    ]
    head = ("where the figure comes from", "figures", "agree to the last digit given")
    counted = table(head, rows, frozenset({1, 2}))
    sources = len({case["source"] for case in cases})
    return (
        f"{len(cases)} figures from {sources} sources. {differ} of them differ by more than half a unit "
        f"of the last digit, each for a reason that is given beside it.\n\n{counted}"
    )


def _source(key: str, cases: list[Case]) -> str:
    source = entry(key)
    note = f"How we know this source: {source.note}." if source.note else ""
    rows = [_row(case) for case in cases]
    head = ("what", "where", "figure", "ours", "difference", "how")
    return f"### {source.title}\n\n{note}\n\n{table(head, rows, frozenset({2, 3, 4}))}"


def _row(case: Case) -> tuple[str, ...]:
    """One case; ours is shown with one digit more than the figure has, so that a difference shows."""
    figure = Decimal(case["printed"].replace(",", "").replace(" ", ""))
    place = Decimal((0, (1,), int(figure.as_tuple().exponent) - 1))  # type: ignore[operator]
    ours = Decimal(repr(case["ours"])).quantize(place)
    difference = (ours - figure).quantize(place)
    shown = "none" if difference == 0 else f"{difference:+,f}"
    if case["why"]:
        shown = f"{difference:+,f}: {case['why']}"
    unit = f" {case['unit']}" if case["unit"] else ""
    return (case["name"], case["place"], f"{case['printed']}{unit}", f"{ours:,f}", shown, case["how"])
