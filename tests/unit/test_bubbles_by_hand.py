"""A long bubble in an upright bore, where the laws of the published correlation come out as round shares."""

from __future__ import annotations

import pytest

from firmpedal.formulas.bubbles import CRITICAL_BOND_NUMBER, bubble_speed_at_most, share_of_volume
from firmpedal.formulas.laminar import tube_bore


@pytest.mark.parametrize(
    ("stands_for_one", "power", "outer", "wide", "buoyancy"),
    [(6197, 2.561, 0.5793, 0.009494 * 5**1.026, 5), (3805, 3.06, 0.58, 0.34, 1e9)],
)
def test_where_the_tension_term_is_one_the_speed_falls_by_two_to_a_power(
    stands_for_one, power, outer, wide, buoyancy
):
    """Eotvos^2.561 = 6197 is 30.2, and Eotvos^3.06 = 3805 is 14.8: there 1 + 1 stands under the power."""
    bond = stands_for_one ** (1 / power) / 4
    assert bubble_speed_at_most(bond, buoyancy) == pytest.approx(wide / 2**outer, rel=1e-9)


def test_in_thick_fluid_and_a_wide_bore_it_is_a_hundredth_of_the_buoyancy_number():
    """Wallis (1969), the law for slow flow: F = 0.01 N; from memory. Ten is where the laws part."""
    for buoyancy in (1, 3, 10):
        assert bubble_speed_at_most(1e5, buoyancy) == pytest.approx(0.01 * buoyancy, rel=0.06)


def test_just_at_the_critical_number_it_stays():
    assert bubble_speed_at_most(CRITICAL_BOND_NUMBER, 5.0) == 0


def test_a_bore_is_the_outside_less_two_walls():
    assert tube_bore(0.25, 0.035) == pytest.approx(0.18)


def test_a_share_of_a_volume_is_that_part_of_it():
    assert share_of_volume(8.0, 0.25) == 2.0
