"""A mark along a tube is one figure on a metric card, for two that differ by their rounding make doubt."""

from __future__ import annotations

import re

import pytest

from firmpedal.model.display import Display
from firmpedal.pipeline import evaluate
from firmpedal.project import read_text
from firmpedal.report.bend_blocks import bend_blocks
from firmpedal.report.sheet import Table
from firmpedal.units import Dimension
from texts import example


@pytest.mark.parametrize(("unit", "lines"), [("mm", 1), ("in", 2)])
def test_a_mark_has_one_figure_in_millimetres_and_a_decimal_beside_a_fraction(unit, lines):
    reading = read_text(example("brindlewick"), "a.yaml", "rigid")
    evaluation = evaluate(reading, Display(((Dimension.LENGTH, unit),)))
    marks = [
        row[1]
        for line in evaluation.laid
        if line.tube is not None and line.work is not None and line.tube.bends
        for block in bend_blocks(evaluation, line.tube, line.work)
        if isinstance(block, Table)
        for row in block.rows
    ]
    assert marks
    assert max(len(each.split("\n")) for each in marks) == lines
    if unit == "mm":
        assert all(re.fullmatch(r"(\d+\.[05] to )?\d+\.[05] mm", each) for each in marks)
