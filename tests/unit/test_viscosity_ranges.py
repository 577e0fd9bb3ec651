"""Thickness over ranges: of temperature, of what the table gives, and out to the very ends of the table."""

from __future__ import annotations

from dataclasses import replace

import pytest

from firmpedal.analysis.viscosity import viscosity_at
from firmpedal.catalog import fluid
from firmpedal.quantity import Mark, Value
from firmpedal.units import Dimension

CENTISTOKE, ICE = 1e-6, 273.15
OIL = fluid("MIL-PRF-5606")


def at(low, high=None, mark=Mark.READ):
    span = (low + ICE, (low if high is None else high) + ICE)
    return Value("temperature", Dimension.TEMPERATURE, span, mark)


def centistokes(value):
    return tuple(bound / CENTISTOKE for bound in value.span)


def table(*points):
    """A fluid with these points: degrees Celsius, least and most in mm^2/s, and where that is from."""
    rows = tuple(
        (
            celsius + ICE,
            Value("thickness", Dimension.KINEMATIC_VISCOSITY, (low * CENTISTOKE, high * CENTISTOKE), mark),
        )
        for celsius, low, high, mark in points
    )
    return replace(OIL, viscosity_at=rows)


@pytest.mark.parametrize(("celsius", "thick"), [(-54, 2300), (-40, 491), (40, 14.1), (100, 5.3)])
def test_at_each_of_its_points_it_is_what_the_table_says(celsius, thick):
    """The first and the last are points of the table, too; typical figures of data sheets, from memory."""
    assert centistokes(viscosity_at(OIL, at(celsius))) == pytest.approx((thick, thick), rel=1e-6)


@pytest.mark.parametrize("span", [(-54.1, 20), (20, 100.1), (-54.1, 100.1), (100.1, 100.1), (-54.1, -54.1)])
def test_a_tenth_of_a_degree_beyond_the_table_nothing_is_known(span):
    found = viscosity_at(OIL, at(*span))
    assert not found.known
    assert "colder or warmer than its table" in found.missing[0].what


def test_over_three_points_the_coldest_is_thickest_and_the_warmest_thinnest():
    given = ((0, 40, 60, Mark.READ), (20, 20, 30, Mark.READ), (50, 8, 12, Mark.MEMORY))
    found = viscosity_at(table(*given), at(0, 50))
    assert centistokes(found) == pytest.approx((8, 60))
    (_, thin), (_, thick) = found.step.inputs
    assert centistokes(thin) == pytest.approx((8, 12))
    assert centistokes(thick) == pytest.approx((40, 60))


def test_it_is_no_better_known_than_the_worse_of_its_ends():
    for colder, warmer in ((Mark.READ, Mark.MEMORY), (Mark.MEMORY, Mark.READ)):
        given = ((0, 50, 50, colder), (20, 25, 25, Mark.READ), (50, 10, 10, warmer))
        assert viscosity_at(table(*given), at(0, 50)).mark is Mark.MEMORY


def test_one_point_alone_tells_nothing_of_other_temperatures():
    found = viscosity_at(table((20, 25, 25, Mark.READ)), at(20))
    assert [missing.what for missing in found.missing] == [f"viscosity of {OIL.name} at two temperatures"]
