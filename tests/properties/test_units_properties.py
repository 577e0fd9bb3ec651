"""Units: what holds for every number, spelling and text."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from strategies import (
    almost_measurements,
    dimensions_and_units,
    everyday_numbers,
    mixed_numbers,
    written_decimals,
)

from firmpedal.units import Dimension, Measurement, UnitError, from_unit, read, show, show_span, to_unit

INCH = Fraction(254, 10_000)  # international yard and pound agreement, 1959


@given(mixed_numbers())
def test_every_spelling_is_the_same_fraction(number):
    for text in number.spellings():
        found = read(text, Dimension.LENGTH)
        assert found.low == found.high == number.size * INCH, text


@given(mixed_numbers())
def test_a_sign_is_for_the_whole_number(number):
    for text in number.spellings():
        assert read(f"-{text.strip()}", Dimension.LENGTH).low == -number.size * INCH, text
        assert read(f"+{text.strip()}", Dimension.LENGTH).low == number.size * INCH, text


@given(mixed_numbers())
def test_a_spaced_dash_is_never_guessed_at(number):
    for dash in (" - ", "- ", " -"):
        with pytest.raises(UnitError, match="a dash between numbers"):
            read(f"{number.whole}{dash}{number.top}/{number.bottom} in", Dimension.LENGTH)


@given(written_decimals())
def test_decimals_are_exact(text):
    digits = text.replace(",", "")
    assert read(text, Dimension.LENGTH, "mm").low == Fraction(digits or "0") / 1000


@given(mixed_numbers(), mixed_numbers())
def test_ranges_and_tolerances_have_the_ends_of_their_parts(one, other):
    low, high = sorted((one, other), key=lambda number: number.size)
    for first in low.spellings():
        found = read(f"{first.strip()} to {high.spellings()[0]}", Dimension.LENGTH)
        assert (found.low, found.high) == (low.size * INCH, high.size * INCH)
        found = read(f"{first.strip()} +/- {high.spellings()[0]}", Dimension.LENGTH)
        assert (found.low, found.high) == ((low.size - high.size) * INCH, (low.size + high.size) * INCH)
    if low.size < high.size:
        with pytest.raises(UnitError, match="runs backwards"):
            read(f"{high.spellings()[0]} to {low.spellings()[0]}", Dimension.LENGTH)


@given(mixed_numbers())
def test_a_swing_goes_as_far_both_ways(number):
    found = read(f"+/- {number.spellings()[0]}", Dimension.LENGTH)
    assert found.swing
    assert (found.low, found.high) == (-number.size * INCH, number.size * INCH)


@given(dimensions_and_units(), dimensions_and_units(), everyday_numbers())
def test_a_written_unit_wins_and_a_bare_number_takes_the_default(written, default, number):
    dimension, unit = written
    assume(unit != "-")
    assert read(f"{number!r} {unit}", dimension, default[1]) == read(f"{number!r} {unit}", dimension)
    assert read(f"{number!r}", dimension, unit) == read(f"{number!r} {unit}", dimension)


@given(dimensions_and_units(), everyday_numbers())
def test_a_table_and_a_file_give_the_same_float(unit, number):
    assert from_unit(number, unit[1]) == read(f"{number!r}", *unit).span[0]


@given(dimensions_and_units(), everyday_numbers(), st.booleans())
def test_to_si_and_back(unit, number, difference):
    there = from_unit(number, unit[1], difference=difference)
    # a temperature loses what the offset of some 500 degrees takes from its digits
    allowed = 1e-12 if unit[0] is Dimension.TEMPERATURE else 0.0
    assert to_unit(there, unit[1], difference=difference) == pytest.approx(number, rel=1e-14, abs=allowed)


@given(dimensions_and_units(), everyday_numbers(), st.integers(0, 6))
def test_what_is_shown_reads_back_within_half_a_step(unit, number, decimals):
    dimension, name = unit
    shown = show(from_unit(number, name), name, decimals=decimals)
    again = to_unit(read(shown, dimension).span[0], name)
    assert abs(again - number) <= 0.5 * 10**-decimals + 1e-10 * number + 1e-12


@given(dimensions_and_units(), everyday_numbers())
def test_showing_again_what_was_read_from_the_page_changes_nothing(unit, number):
    dimension, name = unit
    on_the_page = read(show(from_unit(number, name), name), dimension)
    assert read(show(on_the_page.span[0], name), dimension) == on_the_page


@given(st.floats(-3000, 3000), st.sampled_from([16, 32, 64]))
@example(1 / 32, 16)
@example(-1 / 32, 16)
def test_a_shown_fraction_is_within_half_a_part(inches, parts):
    shown = show(from_unit(inches, "in"), "in", fraction=parts)
    again = to_unit(read(shown, Dimension.LENGTH).span[0], "in")
    assert abs(again - inches) <= 0.5 / parts + 1e-8
    assert (Fraction(again).limit_denominator(1000) * parts).denominator == 1


@given(mixed_numbers(), st.booleans())
def test_a_fraction_of_the_tape_is_shown_exactly(number, negative):
    size = -number.size if negative else number.size
    shown = show(float(size * INCH), "in", fraction=64)
    assert read(shown, Dimension.LENGTH).low == size * INCH


@given(everyday_numbers(), everyday_numbers(), st.integers(0, 3))
def test_a_span_is_one_number_only_where_both_ends_look_the_same(one, other, decimals):
    low, high = sorted((one, other))
    ends = [show(from_unit(end, "mm"), "mm", decimals=decimals) for end in (low, high)]
    shown = show_span((from_unit(low, "mm"), from_unit(high, "mm")), "mm", decimals=decimals)
    assert (" to " in shown) == (ends[0] != ends[1])
    found = read(shown, Dimension.LENGTH)
    assert [found.low, found.high] == [read(end, Dimension.LENGTH).low for end in ends]


@given(
    st.text() | almost_measurements(),
    st.sampled_from(Dimension),
    st.sampled_from([None, "in", "psi", "%", "zz"]),
)
@example("9" * 5000, Dimension.LENGTH, "in")
@example("1e99 in", Dimension.LENGTH, None)
@example("\ud800 5", Dimension.LENGTH, "in")
def test_any_text_gives_a_finite_measurement_or_a_kind_word(text, dimension, default):
    try:
        found = read(text, dimension, default)
    except UnitError as refused:
        message = str(refused)
        assert message.isprintable()
        assert len(message) < 500
    else:
        assert isinstance(found, Measurement)
        assert any(letter.isdigit() or letter in "¼½¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚" for letter in text)
        assert found.low <= found.high
        assert all(math.isfinite(end) for end in found.span)
