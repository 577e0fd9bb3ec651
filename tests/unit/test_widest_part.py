"""How wide a joint is: corners of hexagons by hand, washers and O-rings by their rim."""

from __future__ import annotations

import pytest
from test_report_chain import ELBOW, STRAIGHT, at_caliper

from firmpedal.checks.joints import widest_part
from firmpedal.units import to_unit

CORNERS = 2 / 3**0.5


def millimetres(value):
    return [to_unit(bound, "mm") for bound in value.span]


def test_a_fitting_with_a_washer():
    # hexagon 13 to 17 mm, washer 13.5 to 16 mm, nut .562 in = 14.275 mm: corners 15.01 to 19.63 and 16.48
    _, joint = at_caliper("M10 x 1 female", STRAIGHT)
    assert millimetres(widest_part(joint)) == pytest.approx([0.562 * 25.4 * CORNERS, 17 * CORNERS])


def test_a_fitting_with_an_o_ring():
    # O-ring .495 in = 12.57 mm, hexagon .47 to .53 in: the nut, .562 in, is wider than both
    _, joint = at_caliper("-4 boss female", STRAIGHT)
    assert millimetres(widest_part(joint)) == pytest.approx([0.562 * 25.4 * CORNERS] * 2)


def test_a_washer_may_be_the_widest():
    # alone with a plug: hexagon 12 to 14 mm, corners 13.86 to 16.17; washer 13.5 to 16 mm
    evaluation, _ = at_caliper("M10 x 1 female", STRAIGHT)
    (joint,) = [one for one in evaluation.assembly.joints if one.name == "caliper.second"]
    assert widest_part(joint).known
    _, banjo = at_caliper("M10 x 1 female", ELBOW)
    assert widest_part(banjo).known  # the banjo stands out by its arm, .90 to 1.40 in
    assert millimetres(widest_part(banjo)) == pytest.approx([0.9 * 25.4, 1.4 * 25.4])
