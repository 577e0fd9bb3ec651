"""Ranges through a function: worst case, and which inputs are to blame."""

from __future__ import annotations

import pytest

from firmpedal.lay.spread import spread
from firmpedal.quantity import Mark, Value
from firmpedal.units import Dimension


def ranged(label: str, low: float, high: float) -> Value:
    return Value(label, Dimension.LENGTH, (low, high), Mark.MEASURED)


X, Y, FIXED = ranged("x", 1.0, 3.0), ranged("y", 10.0, 14.0), ranged("c", 5.0, 5.0)


def test_exact_inputs_give_exact_results_that_nothing_moves():
    (bounds,) = spread(lambda flat: (flat[0] * 2,), [FIXED])
    assert bounds.span == (10.0, 10.0)
    assert bounds.movers == ()


def test_deviations_add_up_to_the_worst_case():
    (total,) = spread(lambda flat: (flat[0] - flat[1] + flat[2],), [X, Y, FIXED])
    assert total.span == (1 - 14 + 5, 3 - 10 + 5)
    assert [value.label for value in total.movers] == ["x", "y"]


def test_each_result_has_its_own_movers():
    one, other, neither = spread(lambda flat: (flat[0], flat[1], 7.0), [X, Y])
    assert [value.label for value in one.movers] == ["x"]
    assert [label for label, _ in other.inputs] == ["y"]
    assert neither == (7.0, 7.0, ())


@pytest.mark.parametrize(("width", "felt"), [(1e-4, True), (1e-10, False)])
def test_what_moves_a_result_less_than_anybody_can_measure_does_not_move_it(width, felt):
    (bounds,) = spread(lambda flat: (flat[0],), [ranged("x", 1.0, 1.0 + width)])
    assert bool(bounds.movers) is felt


def test_a_turning_point_inside_the_range_is_seen_from_the_middle():
    (bounds,) = spread(lambda flat: (flat[0] ** 2,), [ranged("x", -1.0, 3.0)])
    assert bounds.span == (1.0, 9.0)
    (bounds,) = spread(lambda flat: (flat[0] ** 2,), [ranged("x", -2.0, 2.0)])
    assert bounds.span == (0.0, 4.0)


@pytest.mark.parametrize("bad", [1.0, 2.0, 3.0])
def test_no_answer_in_the_middle_or_at_an_end_is_no_answer(bad):
    assert spread(lambda flat: None if flat[0] == bad else flat, [X]) is None


def test_another_number_of_results_at_an_end_is_no_answer():
    assert spread(lambda flat: (1.0,) * int(flat[0]), [X]) is None
