"""A number with the other sign, as text, is that number with the other sign."""

from __future__ import annotations

from hypothesis import example, given
from hypothesis import strategies as st

from firmpedal.project.signs import negated, negated_swing
from firmpedal.units import Dimension, UnitError, read

MINUS = ["", "", "-", "+", "\N{MINUS SIGN}", "\N{EN DASH}"]
PLAIN = st.one_of(
    st.integers(0, 400).map(str),
    st.decimals(0, 400, places=3).map(str),
    st.builds("{}-{}/{}".format, st.integers(0, 90), st.integers(1, 7), st.just(8)),
    st.builds("{} {}/16".format, st.integers(1, 90), st.integers(1, 15)),
    st.builds("{}' {}-1/2".format, st.integers(1, 9), st.integers(0, 11)),
    st.sampled_from(["3\N{VULGAR FRACTION ONE QUARTER}", ".5", "1e-3", "1,250"]),
)
SIGNED = st.builds("{}{}".format, st.sampled_from(MINUS), PLAIN)
UNIT = st.sampled_from(["", " in", '"', " mm", " ft", "in."])
ONE = st.builds("{}{}{}".format, st.sampled_from(["", "", "about ", "~", "ca. "]), SIGNED, UNIT)
RANGE = st.builds(
    "{}{}{}{}".format,
    SIGNED,
    st.sampled_from([" to ", "..", " .. ", " +/- ", " \N{PLUS-MINUS SIGN} "]),
    SIGNED,
    UNIT,
)
BOTH = st.builds("{}{}{}".format, st.sampled_from(["+/- ", "+/-", "\N{PLUS-MINUS SIGN}"]), PLAIN, UNIT)


def measured(text, dimension=Dimension.LENGTH, unit="in"):
    try:
        return read(text, dimension, unit)
    except UnitError:
        return None


@given(ONE | RANGE | BOTH)
@example("-0")
@example("1' 3-1/2\" to 2 ft")
def test_a_length_turned_round_is_the_same_length_the_other_way(text):
    before, after = measured(text), measured(negated(text))
    if before is None:
        assert negated(text) == text
    else:
        assert (after.low, after.high, after.about) == (-before.high, -before.low, before.about)
        again = measured(negated(negated(text)))
        assert (again.low, again.high) == (before.low, before.high)


@given(st.text())
def test_what_is_no_number_stays_as_it_is(text):
    before = measured(text)
    if before is None:
        assert negated(text) == text
    else:
        assert measured(negated(text)).low == -before.high


@given(PLAIN, st.sampled_from(["", " deg", " rad"]))
def test_a_swing_to_both_sides_turned_round_goes_the_other_way_at_the_end(number, unit):
    full = measured(number + unit, Dimension.ANGLE, "deg")
    turned = measured(negated_swing(f"+/- {number}{unit}"), Dimension.ANGLE, "deg")
    if full is not None:
        assert turned.low == turned.high == -full.high
