"""Whatever stands in a file: reading it never fails, and evaluating it fails only by saying so."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from mutations import ODD, damaged, other_figures

from firmpedal.finding import Problem
from firmpedal.pipeline import UnusableFileError, evaluate
from firmpedal.project import read_text
from texts import example, small

TEXTS = {"brindlewick": example("brindlewick"), "quillfen": small("quillfen"), "tarnholt": small("tarnholt")}
OPTIONS = {"brindlewick": [None, "rigid"], "quillfen": [None], "tarnholt": [None]}


def read(text, option=None):
    """Read a text; either there is an aircraft, or at least one problem that stands in the text."""
    reading = read_text(text, "fuzz.yaml", option)
    assert (reading.aircraft is None) == bool(reading.problems)
    for problem in reading.problems:
        assert isinstance(problem, Problem)
        assert problem.message
        assert 1 <= problem.span.line <= text.count("\n") + 2
        assert problem.span.column >= 1
    return reading


def test_any_text_is_read(fuzzed):
    @fuzzed
    @given(
        st.text()
        | st.lists(st.sampled_from(ODD)).map(" ".join)
        | st.lists(st.sampled_from(ODD)).map("\n".join)
    )
    def check(text):
        read(text)

    check()


@pytest.mark.parametrize("name", TEXTS)
@pytest.mark.parametrize("damage", [damaged, other_figures])
def test_damaged_aircraft_is_read_and_evaluated(fuzzed, damage, name):
    @fuzzed
    @given(damage(TEXTS[name]), st.sampled_from(OPTIONS[name]))
    def check(text, option):
        reading = read(text, option)
        try:
            evaluation = evaluate(reading)
        except UnusableFileError as error:
            assert error.reading.problems  # noqa: PT017 - an aircraft that is not there says why
        else:
            assert evaluation.verdict

    check()
