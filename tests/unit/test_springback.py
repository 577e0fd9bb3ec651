"""What to set a bender to, from trial bends: by hand, and undone by the bender they came from."""

from __future__ import annotations

from math import degrees, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from firmpedal.lay.springback import COUPON, angle_to_ask
from firmpedal.model.bench import Bender, Springback
from firmpedal.quantity import Mark, Value, unknown
from firmpedal.units import Dimension


def angle(number, label="bend 1", mark=Mark.MEASURED):
    return Value(label, Dimension.ANGLE, (radians(number), radians(number)), mark, "lines.run.bend 1")


def bender(*trials):
    nothing = unknown("grip", Dimension.LENGTH, "bench.bender.grip")
    pairs = tuple(
        Springback.model_construct(place="bench.bender.springback.1", asked=angle(asked), got=angle(got))
        for asked, got in trials
    )
    return Bender.model_construct(place="bench.bender", grip=nothing, springback=pairs)


def asked(wanted, *trials):
    return degrees(angle_to_ask(angle(wanted), bender(*trials)).middle)


def test_one_trial_holds_in_proportion():
    assert asked(87, (90, 87)) == pytest.approx(90)
    assert asked(43.5, (90, 87)) == pytest.approx(45)


def test_between_two_trials_the_ratio_goes_evenly():
    # got 40 of 42 asked: 1.05; got 80 of 82: 1.025; half way at 60: 1.0375
    assert asked(60, (42, 40), (82, 80)) == pytest.approx(60 * 1.0375)


def test_beyond_the_trials_it_is_an_estimate():
    assert angle_to_ask(angle(60), bender((42, 40), (82, 80))).mark is Mark.DERIVED
    far = angle_to_ask(angle(120), bender((42, 40), (82, 80)))
    assert far.mark is Mark.ESTIMATE
    assert degrees(far.middle) == pytest.approx(123)


def test_without_a_trial_it_is_unknown_and_asks_for_one():
    found = angle_to_ask(angle(60), bender())
    assert found.span is None
    assert [item.what for item in found.missing] == [COUPON]


@given(
    st.lists(
        st.tuples(st.floats(5, 150), st.floats(0.85, 0.999)), min_size=1, max_size=5, unique_by=lambda t: t[0]
    ),
    st.floats(1, 170),
)
def test_it_always_asks_for_more_and_gives_each_trial_back(trials, wanted):
    made = [(got / share, got) for got, share in trials]
    assert asked(wanted, *made) > wanted
    for ask, got in made:
        assert asked(got, *made) == pytest.approx(ask)
