"""The comparison itself: half a unit of the last printed digit, no more and no less."""

import json
import math

import pytest
from as_printed import as_printed
from comparison import PROPERTY, compare


@pytest.mark.parametrize(
    ("text", "inside", "outside"),
    [
        ("488.92", [488.9151, 488.9249, 488.92], [488.9149, 488.9251]),
        ("43.3 in^4", [43.251, 43.349], [43.249, 43.351]),
        ("667", [666.6, 667.4, 667], [666.4, 667.6]),
        ("1.0", [0.951, 1.049], [0.949, 1.051]),
        ("-16", [-15.6, -16.4], [-15.4, 16]),
        ("44 471", [44470.6], [44471.6, 44]),
        ("1,955.7", [1955.66], [1955.76]),
        ("6.802e11", [6.8016e11], [6.8026e11]),
        ("5.", [4.6], [4.4]),
    ],
)
def test_half_a_unit_of_the_last_digit(text, inside, outside):
    assert all(as_printed(text) == number for number in inside)
    assert all(number == as_printed(text) for number in inside)
    assert not any(as_printed(text) == number for number in outside)
    assert all(as_printed(text) != number for number in outside)


@pytest.mark.parametrize("nothing", [math.nan, math.inf, -math.inf, "1.0", None])
def test_a_figure_is_never_equal_to_what_is_no_number(nothing):
    assert as_printed("1.0") != nothing


@pytest.mark.parametrize("text", ["", "about 500", "1.2.3", "1,95.7", "5/8 in", "1.0\n2.0"])
def test_only_figures_can_be_read(text):
    with pytest.raises(ValueError, match="not a printed figure"):
        as_printed(text)


def test_unit_is_kept():
    assert as_printed("43.3 in^4").unit == "in^4"


def _compare(*args, **keywords):
    recorded = []
    try:
        compare(lambda name, value: recorded.append((name, value)), *args, **keywords)
    finally:
        assert [name for name, _ in recorded] == [PROPERTY]
    return recorded[0][1]


def test_case_is_recorded_with_both_numbers():
    recorded = _compare("common-practice", "a length", "1.00 in", 1.004, how="memory", place="here")
    assert (recorded["printed"], recorded["unit"]) == ("1.00", "in")
    assert recorded["ours"] == 1.004
    assert recorded["agrees"] is True
    assert json.loads(json.dumps(recorded)) == recorded


def test_case_refuses_a_wrong_number():
    with pytest.raises(AssertionError):
        _compare("common-practice", "a wrong number", "1.00 in", 1.006)


def test_case_refuses_a_difference_other_than_the_one_stated():
    stated = {"off_by": "0.50", "why": "for a reason"}
    assert not _compare("common-practice", "off as stated", "1.00 in", 1.50, **stated)["agrees"]
    for wrong in (1.51, 1.49, 1.0):
        with pytest.raises(AssertionError):
            _compare("common-practice", "off otherwise", "1.00 in", wrong, **stated)


def test_case_refuses_a_difference_without_reason_and_a_source_nobody_knows():
    with pytest.raises(AssertionError, match="needs a reason"):
        compare(print, "common-practice", "no reason", "1.00 in", 1.50, off_by="0.50")
    with pytest.raises(LookupError):
        compare(print, "no-such-source", "anything", "1 in", 1.0)
