"""Units: what is refused, and in which words."""

from __future__ import annotations

import re

import pytest

from firmpedal.units import Dimension, UnitError, read, units_of
from firmpedal.units.names import EXAMPLES

D = Dimension


class TestRefusals:
    @pytest.mark.parametrize(
        ("text", "words"),
        [
            ("9-1/4", "has no unit: write it as in 9-1/4 in or 235 mm, or give the file a unit for length"),
            ("600 psi", "'psi' measures pressure, and a length is wanted here"),
            ("5 inchs", "'inchs' is not a unit of length known here: did you mean in?"),
            ("5 NPT", "'NPT' is not a unit of length known here: write one of in, ft, mm, cm, m"),
            ("1 ft3", "'ft3' is not a unit of length"),
            ("10 - 1/2 in", "a dash between numbers has several meanings"),
            ("10- 1/2 in", "a dash between numbers has several meanings"),
            ("10 -1/2 in", "a dash between numbers has several meanings"),
            ("2.3-2.6 mm", "write 10-1/2 for ten and a half, 2 to 3 for a range"),
            ("3-16 in", "a dash between numbers has several meanings"),
            ("1/0 in", "'1/0' divides by nothing"),
            ("3-1/0 in", "divides by nothing"),
            ("3-1/4/2 in", "a fraction has one bar, as in 3-1/4"),
            ("1/2/4 in", "a fraction has one bar"),
            ("3-5/4 in", "after a whole number comes a fraction less than one"),
            ("3-4/4 in", "after a whole number comes a fraction less than one"),
            ("10.5-1/2 in", "a dash between numbers has several meanings"),
            ("1,5 in", "write a decimal with a point, as in 1.5"),
            ("0,500 in", "write a decimal with a point"),
            ("12,34 in", "a comma marks thousands only"),
            ("\N{VULGAR FRACTION ONE HALF}3 in", "cannot be read as a length"),
            ("1 ft 3 mm", "after feet come inches, not mm"),
            ("1' 3'", "after feet come inches, not ft"),
            ("1/4 to 1/8 in", "runs backwards"),
            ("5 to +/- 1 in", "'to' is not a unit of length"),
            ("+/- -5 in", "one number without a sign"),
            ("+/- 5 to 6 in", "one number without a sign"),
            ("5 +/- -1 in", "a tolerance after +/- has no sign of its own"),
            ("0...6 in", "cannot be read"),
            ("5 in 3", "cannot be read"),
            ("5 in 10-1/2 in", "it does not fit any way of writing one"),
            ("in", "there is no number in it"),
            ("nan in", "there is no number in it"),
            ("inf", "there is no number in it"),
            ("-", "there is no number in it"),
            ("", "nothing is written"),
            ("   ", "nothing is written"),
            ("1e400 in", "nothing here is measured with such a number"),
            ("9" * 41 + " in", "longer than any number"),
            ("9" * 10_000, "nothing here is measured with such a number"),
            ("\N{ARABIC-INDIC DIGIT THREE} in", "there is no number in it"),
            ("5\x00in", "cannot be read"),
        ],
    )
    def test_lengths(self, text, words):
        with pytest.raises(UnitError, match=re.escape(words)):
            read(text, D.LENGTH)

    def test_a_whole_message(self):
        with pytest.raises(UnitError) as refused:
            read("10 - 1/2", D.ANGLE)
        assert str(refused.value) == (
            "'10 - 1/2' cannot be read as an angle: a dash between numbers has several meanings; "
            "write 10-1/2 for ten and a half, 2 to 3 for a range. Write for example 17 deg or 0.3 rad"
        )

    def test_text_is_read_up_to_160_letters(self):
        assert read("5 in".rjust(160), D.LENGTH) == read("5 in", D.LENGTH)
        with pytest.raises(UnitError, match="cannot be read"):
            read("5 in".rjust(161), D.LENGTH)

    def test_forty_digits_are_still_read(self):
        assert read("9" * 40, D.LENGTH, "m").low == int("9" * 40)

    @pytest.mark.parametrize(
        ("text", "dimension", "suggestion"),
        [
            ("5 inchs", D.LENGTH, "in"),
            ("5 Milimeters", D.LENGTH, "mm"),
            ("5 degf", D.TEMPERATURE, "degF"),
            ("5 mPa", D.PRESSURE, "MPa"),  # a thousand million times smaller, so never taken for MPa
            ("5 ps", D.PRESSURE, "psi"),
            ("75 kg", D.FORCE, "kgf"),
            ("5 us pint", D.VOLUME, "US pt"),
            ("5 in", D.VOLUME, "cu in"),
            ("5 furlongs", D.LENGTH, ""),
        ],
    )
    def test_near_misses(self, text, dimension, suggestion):
        with pytest.raises(UnitError) as refused:
            read(text, dimension)
        assert refused.value.suggestion == suggestion
        assert refused.value.choices == units_of(dimension)
        assert (f"did you mean {suggestion}?" in str(refused.value)) == bool(suggestion)

    @pytest.mark.parametrize(
        ("bare", "choices"),
        [
            ("pint", ("US pt", "imp pt")),
            ("quarts", ("US qt", "imp qt")),
            ("gallon", ("US gal", "imp gal")),
            ("floz", ("US fl oz", "imp fl oz")),
            ("fluid ounce", ("US fl oz", "imp fl oz")),
            ("fluid ounces", ("US fl oz", "imp fl oz")),
            ("ounce", ("US fl oz", "imp fl oz")),
            ("ounces", ("US fl oz", "imp fl oz")),
            ("pints", ("US pt", "imp pt")),
            ("pt", ("US pt", "imp pt")),
            ("qt", ("US qt", "imp qt")),
            ("quart", ("US qt", "imp qt")),
            ("gal", ("US gal", "imp gal")),
            ("gallons", ("US gal", "imp gal")),
            ("fl oz", ("US fl oz", "imp fl oz")),
            ("fl. oz.", ("US fl oz", "imp fl oz")),
            ("oz", ("US fl oz", "imp fl oz")),
            ("GAL", ("US gal", "imp gal")),
        ],
    )
    def test_bare_fluid_measures_ask_which(self, bare, choices):
        with pytest.raises(UnitError, match=f"write {choices[0]} or {choices[1]}") as refused:
            read(f"2 {bare}", D.VOLUME)
        assert refused.value.choices == choices

    @pytest.mark.parametrize(
        ("text", "words"),
        [
            ("-500 degF", "colder than absolute zero"),
            ("+/- 20 degC", "write both temperatures"),
            ("20 deg", "'deg' measures angle, and a temperature is wanted here"),
            ("20", "or give the file a unit for temperature"),
        ],
    )
    def test_temperatures(self, text, words):
        with pytest.raises(UnitError, match=re.escape(words)):
            read(text, D.TEMPERATURE)

    def test_missing_unit_lists_the_choices(self):
        with pytest.raises(UnitError) as refused:
            read("5", D.ANGLE)
        assert refused.value.choices == ("deg", "rad")
        assert "an angle" not in str(refused.value)

    def test_message_quotes_briefly_and_printably(self):
        with pytest.raises(UnitError) as refused:
            read("5 in \x07 " + "x" * 100, D.LENGTH)
        assert "\x07" not in str(refused.value)
        for letters, quoted in ((40, "'" + "x" * 40 + "'"), (41, "'" + "x" * 37 + "...'")):
            with pytest.raises(UnitError, match=re.escape(f"{quoted} cannot be read")):
                read("x" * letters, D.LENGTH)
        assert "'5 in ? xxx" in str(refused.value)
        assert "..." in str(refused.value)

    @pytest.mark.parametrize("dimension", Dimension)
    def test_the_examples_in_messages_are_one_value_twice(self, dimension):
        customary, metric = (read(example, dimension).span[0] for example in EXAMPLES[dimension])
        assert customary == pytest.approx(metric, rel=0.03)
