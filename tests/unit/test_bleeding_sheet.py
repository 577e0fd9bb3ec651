"""The sheet on filling where nothing of the way is measured yet: it says so, and what to do first."""

from __future__ import annotations

import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.project.layouts import CHOICES, Layout, layout_text
from firmpedal.report.bleeding import FIRST, bleeding_sheet


@pytest.mark.parametrize("brakes", CHOICES["brakes"])
def test_a_new_aircraft_is_told_what_has_to_come_first(brakes):
    layout = Layout(gear="tailwheel", leg="rod", brakes=brakes, seats="1", valve="no")
    sheet = bleeding_sheet(evaluate_text(layout_text(layout, "new.yaml")))
    lead, _, before = sheet.blocks
    assert "left_caliper and right_caliper cannot be worked out yet" in lead.text
    assert "Measure their points first" in lead.text
    assert len(before.blocks[1].items) == len(FIRST)
    assert before.blocks[1].items[0] == FIRST[0]
