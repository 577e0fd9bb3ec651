"""Whatever stands in a file: reading it never fails, and evaluating it fails only by saying so."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from mutations import ODD, damaged, other_figures

from firmpedal.finding import Problem
from firmpedal.pipeline import UnusableFileError, evaluate
from firmpedal.project import read_file, read_text
from firmpedal.project.context import UNEXPECTED
from firmpedal.project.write import written
from texts import example, small

FILES = Path(__file__).parents[1] / "files"
TEXTS = {"brindlewick": example("brindlewick"), "quillfen": small("quillfen"), "tarnholt": small("tarnholt")}
TEXTS |= {path.stem: path.read_text(encoding="utf-8") for path in sorted(FILES.glob("*.yaml"))}
OPTIONS = {key: [None] for key in TEXTS} | {"brindlewick": [None, "rigid"], "everything": [None, "long"]}


def read(text, option=None):
    """Read a text; either there is an aircraft, or at least one problem that stands in the text."""
    reading = read_text(text, "fuzz.yaml", option)
    assert (reading.aircraft is None) == bool(reading.problems)
    for problem in reading.problems:
        assert isinstance(problem, Problem)
        assert problem.message != UNEXPECTED, problem.suggestion
        assert 0 < len(problem.message) < 500
        assert 0 < len(problem.suggestion) < 1000
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


@pytest.mark.parametrize("name", TEXTS)
def test_what_is_read_can_be_written_and_reads_back_the_same(fuzzed, name):
    @fuzzed
    @given(damaged(TEXTS[name]) | other_figures(TEXTS[name]), st.sampled_from(OPTIONS[name]))
    def check(text, option):
        reading = read(text, option)
        assume(reading.aircraft is not None)
        again = read(written(reading))
        assert again.problems == ()
        assert again.aircraft == reading.aircraft

    check()


def test_any_bytes_are_a_file_that_is_read_or_refused(fuzzed, tmp_path):
    path = tmp_path / "any.yaml"

    @fuzzed
    @given(st.binary() | st.text().map(lambda text: text.encode("utf-16")) | st.just(b"\xef\xbb\xbfa: 1"))
    def check(data):
        path.write_bytes(data)
        reading = read_file(path)
        assert (reading.aircraft is None) == bool(reading.problems)

    check()


@pytest.mark.parametrize("name", TEXTS)
def test_any_name_of_an_option_is_taken_or_refused(fuzzed, name):
    @fuzzed
    @given(st.text() | st.sampled_from(["rigid", "long", "rigd", "", "a.b", "removed"]))
    def check(option):
        reading = read(TEXTS[name], option)
        assert (reading.aircraft is not None) == (option in reading.options)

    check()
