"""The sheets of the example's packet, as written and as converted."""

from __future__ import annotations

from pathlib import Path

import pytest
from golden_files import FOLDER, compared, differences

from firmpedal.export.plain import plain
from firmpedal.pipeline import evaluate_text, usable_options
from firmpedal.report.packet import footer_of, packet_sheets

EXAMPLES = Path(__file__).parents[2] / "examples"
EVERY = ()
ANSWERS = ("Oatmere", "Fennimoss", "What was found", "To measure", "Options side by side", "Parts to order")
# The example and the option of each golden file, and which of its sheets; no titles: all of them.
CASES = {
    "brindlewick_as_written": ("brindlewick", None, EVERY),
    "brindlewick_rigid": ("brindlewick", "rigid", EVERY),
    "oatmere": ("oatmere", None, ANSWERS),
    "fennimoss_rigid": ("fennimoss", "rigid", ANSWERS),
}


@pytest.mark.parametrize("name", CASES)
def test_the_sheets_are_as_they_were(name, rewrite):
    example, option, titles = CASES[name]
    path = EXAMPLES / f"{example}.yaml"
    evaluation = evaluate_text(path.read_text(encoding="utf-8"), path.name, option)
    sheets = packet_sheets(evaluation, usable_options(evaluation.reading))
    kept = [sheet for sheet in sheets if not titles or sheet.title in titles]
    found = {"footer": plain(footer_of(evaluation)), "sheets": plain(tuple(kept))}
    assert compared(name, found, rewrite=rewrite) == []


def test_no_golden_file_is_left_over():
    assert {path.stem for path in FOLDER.glob("*.json")} == set(CASES)


@pytest.mark.parametrize(
    ("golden", "found", "same"),
    [
        ("cut to 39.66 in", "cut to 39.67 in", True),  # one in the last digit: rounding
        ("cut to 39.66 in", "cut to 39.68 in", False),
        ("39-21/32 in", "39-11/16 in", False),
        ("AN818-4D", "AN818-5D", False),
        ("6 lines", "7 lines", False),
        ("39.66 in", "39.7 in", False),
        ("left", "right", False),
        (100.01, 100.02, True),
        (100.0, 100.2, False),
        ([1, 2], [1, 2, 3], False),
        ({"a": 1}, {"b": 1}, False),
        (True, 1, False),
    ],
)
def test_the_comparison_sees_what_matters_and_not_rounding(golden, found, same):
    assert (differences(golden, found, "here") == []) is same
