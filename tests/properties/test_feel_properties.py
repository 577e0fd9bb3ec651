"""What holds for the curve of any pedal: it never turns back, and more of what gives never goes less far."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from feel_rows import terms
from firmpedal.analysis.feel.solve import at_force
from firmpedal.analysis.feel.terms import curves

ROUNDING = 1e-9
MORE = {  # what makes a pedal go further, and by how much of a usual figure
    "gap": 1e-6,
    "fluid": 5e-5,
    "air": 2e-6,
    "free_stroke": 2e-3,
}
KNOTS = [0.0, 1e6, 5e6]


@st.composite
def pedals(draw):
    """One pedal without friction of its lever: everything from nothing to far too much."""
    share = st.floats(0, 1)
    slopes = sorted((draw(share) * 1e-12 for _ in KNOTS), reverse=True)
    steps = np.diff(slopes, prepend=0.0)
    return {
        **{name: draw(share) * most for name, most in MORE.items()},
        "area": draw(st.floats(1e-4, 5e-4)),
        "full_stroke": 0.03,
        "modulus": draw(st.floats(5e8, 3e9)),
        "exponent": draw(st.floats(1, 1.4)),
        "spring": draw(st.floats(0, 40)),
        "spring_rate": draw(st.floats(0, 3000)),
        "friction": draw(st.floats(0, 20)),
        "ratio": draw(st.floats(1.2, 5)),
        "walls": list(zip(KNOTS, steps.tolist(), strict=True)),
    }


forces = st.floats(30, 900)


def _travel(pedal, force):
    return at_force(terms(pedal), np.array([[force]])).travel[0, 0]


@given(pedals(), st.lists(st.floats(0, 2e7), min_size=2, max_size=2, unique=True))
def test_more_pressure_takes_more_and_wants_more(pedal, pressures):
    found = curves(terms(pedal), np.array([sorted(pressures)]))
    for each in (found.stroke, found.travel, found.force):
        assert each[0, 0] <= each[0, 1] * (1 + ROUNDING)


@given(pedals(), forces, st.sampled_from(sorted(MORE)), st.floats(0, 1))
def test_more_of_anything_that_gives_never_takes_less_travel(pedal, force, name, share):
    more = {**pedal, name: pedal[name] + share * MORE[name]}
    assert _travel(more, force) >= _travel(pedal, force) * (1 - ROUNDING)


@given(pedals(), forces, st.floats(1, 3))
def test_a_softer_wall_never_takes_less_travel(pedal, force, times):
    softer = {**pedal, "walls": [(knot, slope * times) for knot, slope in pedal["walls"]]}
    assert _travel(softer, force) >= _travel(pedal, force) * (1 - ROUNDING)


@given(pedals(), forces, st.sampled_from(["spring", "friction"]), st.floats(0, 30))
def test_a_stiffer_spring_or_seal_never_lets_the_pad_further(pedal, force, name, more):
    assert _travel({**pedal, name: pedal[name] + more}, force) <= _travel(pedal, force) * (1 + ROUNDING)


@given(pedals(), forces)
def test_the_force_of_the_point_found_is_the_force_asked_for(pedal, force):
    found = terms(pedal)
    there = at_force(found, np.array([[force]]))
    assume(there.pressure[0, 0] > 1e3)
    assert curves(found, there.pressure).force[0, 0] == pytest.approx(force, rel=1e-6)


@given(st.lists(pedals(), min_size=2, max_size=5), forces)
def test_cases_side_by_side_know_nothing_of_each_other(many, force):
    whole = at_force(terms(*many), np.full((len(many), 1), force)).travel[:, 0]
    assert whole == pytest.approx([_travel(pedal, force) for pedal in many], rel=1e-9)
