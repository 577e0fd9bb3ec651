"""How many of something, in words."""

from __future__ import annotations

import pytest

from firmpedal.model.display import count_of


@pytest.mark.parametrize(
    ("number", "noun", "words"),
    [
        (0, "thing", "0 things"),
        (1, "thing", "1 thing"),
        (2, "leak path", "2 leak paths"),
        (1, "WARNING", "1 WARNING"),
        (3, "WARNING", "3 WARNINGS"),
    ],
)
def test_one_is_one_and_more_are_many(number, noun, words):
    assert count_of(number, noun) == words
