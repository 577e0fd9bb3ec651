"""A line that is pushed in or pulled out by some blanks is named, or the one right under it."""

from __future__ import annotations

import re

import pytest

from firmpedal.project.read import read_text
from texts import example

FILES = ("brindlewick", "fennimoss", "oatmere")
BEGINS = re.compile(r"^this line begins (\d+ blanks? in|at the margin)[,;] ")
EVERY = 9  # so many lines are left between two that are tried


def said(text):
    """Where the text cannot be laid out, and what is said of it; empty where it can."""
    return [(each.span.line, each.message, each.suggestion) for each in read_text(text, "x").problems[:1]]


def moved(lines, number, by):
    """The text with a line that begins so many blanks further in, or less far."""
    words = lines[number].lstrip(" ")
    blanks = len(lines[number]) - len(words) + by
    return "\n".join([*lines[:number], " " * blanks + words, *lines[number + 1 :]]) if blanks >= 0 else ""


def next_row(lines, number):
    return next(
        n for n, line in enumerate(lines) if n > number and line.strip() and not line.strip().startswith("#")
    )


@pytest.mark.parametrize("name", FILES)
@pytest.mark.parametrize("by", [-3, -1, 1, 3])
def test_the_line_that_was_moved_is_named_or_the_one_under_it(name, by):
    lines = example(name).split("\n")
    keys = [n for n, line in enumerate(lines[:-9]) if re.match(r" *[A-Za-z][\w ]*:", line)]
    told = 0
    for number in keys[::EVERY]:
        for line, message, _ in said(moved(lines, number, by)):
            if BEGINS.match(message):
                told += 1
                named = {line, *map(int, re.findall(r"line (\d+)", message))}
                assert named & {number + 1, next_row(lines, number) + 1}, (number + 1, line, message)
    assert told > 2


ABOVE, OVER, TOP = "line 4 above it", "line 2 begins", "line 1 begins"
STRAIGHT = "begin it straight under the one that it belongs beside"
TEXT = """a:
  one:
    kind: x
    side: left
    bore: 1
  two:
    via: [1,
      2]
    list:
      - from: x
        aft: 2
"""


@pytest.mark.parametrize(
    ("old", "new", "line", "message", "advice"),
    [
        (
            "    bore",
            "   bore",
            5,
            f"this line begins 3 blanks in, but {ABOVE} begins 4 blanks in and {OVER} 2 blanks in",
            STRAIGHT,
        ),
        (
            "    bore",
            "     bore",
            5,
            "this line begins 5 blanks in, and line 4 above it 4 blanks in",
            "begin both alike, if they belong to one thing: line 4 has its value already",
        ),
        (
            "    side",
            "  side",
            5,
            "this line begins 4 blanks in, and line 4 above it 2 blanks in",
            "begin both alike, if they belong to one thing: line 4 has its value already",
        ),
        (
            "  two:",
            " two:",
            6,
            f"this line begins 1 blank in, but line 2 above it begins 2 blanks in and {TOP} at the margin",
            STRAIGHT,
        ),
        (
            "        aft",
            "         aft",
            11,
            "this line begins 9 blanks in, and line 10 above it 8 blanks in",
            "begin both alike, if they belong to one thing: line 10 has its value already",
        ),
    ],
)
def test_it_is_told_which_of_those_above_it_it_belongs_beside(old, new, line, message, advice):
    assert TEXT.count(old) == 1
    assert said(TEXT.replace(old, new)) == [(line, message, advice)]


def test_what_stands_straight_and_is_wrong_otherwise_is_not_called_crooked():
    for old, new in (("kind: x", "kind: x: y"), ("aft: 2", "aft: 2: 3"), ("via: [1,", "via: [1: 2: 3,")):
        ((_, message, _),) = said(TEXT.replace(old, new))
        assert "begins" not in message
