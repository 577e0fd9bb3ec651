"""Decimals and fractions: what a tape shows, and figures that can be added up by hand."""

from __future__ import annotations

import pytest

from firmpedal.model.display import Display
from firmpedal.quantity import Mark, exactly, unknown
from firmpedal.report.lengths import both, degrees, degrees_of, fine, on_tape
from firmpedal.units import Dimension, from_unit

INCHES = Display(((Dimension.LENGTH, "in"), (Dimension.VOLUME, "cu in"), (Dimension.PRESSURE, "psi")))
MILLIMETRES = Display(((Dimension.LENGTH, "mm"),))


def inches(number: float, upper: float | None = None):
    value = exactly("length", Dimension.LENGTH, from_unit(number, "in"), Mark.MEASURED)
    if upper is None:
        return value
    return type(value)(value.label, value.dimension, (value.low, from_unit(upper, "in")))


@pytest.mark.parametrize(
    ("number", "tape"),
    [(39.66, "39-21/32 in"), (0.75, "3/4 in"), (9.0, "9 in"), (1.879, "1-7/8 in"), (0.012, "0 in")],
)
def test_a_tape_shows_thirty_seconds(number, tape):
    assert on_tape(inches(number), INCHES) == tape


def test_a_range_within_one_mark_of_the_tape_is_one_figure():
    assert on_tape(inches(39.65, 39.66), INCHES) == "39-21/32 in"


def test_both_stand_beside_each_other_and_once_where_they_are_equal():
    assert both(inches(0.75), INCHES) == "0.75 in (3/4 in)"
    assert both(exactly("length", Dimension.LENGTH, 0.02, Mark.MEASURED), MILLIMETRES) == "20.0 mm"


def test_what_is_unknown_stays_unknown():
    gap = unknown("length", Dimension.LENGTH, "somewhere")
    assert on_tape(gap, INCHES) == both(gap, INCHES) == fine(INCHES).value(gap) == "unknown"


@pytest.mark.parametrize(
    ("number", "shown"),
    [(0.625, "0.625 in"), (0.035, "0.035 in"), (39.63, "39.63 in"), (1.8789, "1.879 in"), (0.25, "0.25 in")],
)
def test_small_figures_keep_enough_decimals_to_reckon_with(number, shown):
    assert fine(INCHES).value(inches(number)) == shown


def test_both_ends_of_a_range_have_as_many_decimals_and_nothing_is_nothing():
    assert fine(INCHES).value(inches(0.0166, 0.0182)) == "0.0166 to 0.0182 in"
    assert fine(INCHES).value(inches(0.0, 0.0182)) == "0 to 0.0182 in"


def test_pressures_stay_as_people_write_them():
    pressure = exactly("pressure", Dimension.PRESSURE, from_unit(488.92, "psi"), Mark.DERIVED)
    assert fine(INCHES).value(pressure) == "489 psi"


def test_angles_for_the_bench_carry_the_sign_of_degrees():
    angle = exactly("turn", Dimension.ANGLE, from_unit(129.5, "deg"), Mark.DERIVED)
    assert degrees(angle) == "129.5\u00b0"
    assert degrees(angle, signed=True) == "+129.5\u00b0"
    assert degrees_of(from_unit(90, "deg")) == "90\u00b0"
