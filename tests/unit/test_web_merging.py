"""Two versions of a text: every place where they differ once, and one text by what is chosen there."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from firmpedal.web.merging import AROUND, Version, hunks, merged

MINE = "a\nb\nc\nd\ne\nf\ng\nh\nend"
THEIRS = "a\nB\nc\nd\ne\nf\ng\nnew\nh\nend"
LINES = st.lists(st.sampled_from(["a", "b", "c", ""]), max_size=8).map("\n".join)
ALL = {version: dict.fromkeys(range(20), version) for version in Version}


def test_each_place_has_its_lines_and_a_few_round_it():
    first, second = hunks(MINE, THEIRS)
    assert (first.line, first.before, first.mine, first.theirs) == (2, ("a",), ("b",), ("B",))
    assert first.after == ("c", "d", "e")
    assert (second.line, second.mine, second.theirs) == (8, (), ("new",))
    assert (second.before, second.after) == (("e", "f", "g"), ("h", "end"))
    assert len(first.after) <= AROUND


def test_each_place_is_chosen_by_itself_and_the_rest_stays():
    chosen = {0: Version.MINE, 1: Version.THEIRS}
    assert merged(MINE, THEIRS, chosen) == "a\nb\nc\nd\ne\nf\ng\nnew\nh\nend"
    with pytest.raises(KeyError):
        merged(MINE, THEIRS, {0: Version.MINE})


@given(LINES, LINES)
def test_one_version_at_every_place_is_that_version_and_every_line_comes_from_one(mine, theirs):
    assert merged(mine, theirs, ALL[Version.MINE]) == mine
    assert merged(mine, theirs, ALL[Version.THEIRS]) == theirs
    assert bool(hunks(mine, theirs)) == (mine != theirs)
    for number in range(len(hunks(mine, theirs))):
        mixed = merged(mine, theirs, {**ALL[Version.MINE], number: Version.THEIRS})
        assert mixed != mine
