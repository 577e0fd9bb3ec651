"""Texts made to unfold, nest or hang on each other without end are refused soon, with a sentence."""

from __future__ import annotations

import time

import pytest
from planting import SMALL, only, problems, sound

from firmpedal.project import read_text

SECONDS = 60  # of processor time: what unfolds without end would take hours, on any machine

MANY = ", ".join(["[1, 2, 3]"] * 600)
BIG = f"  big: {{from: left_upper.to, to: left_lower.from, made of: hose -4 PTFE braided, via: [{MANY}]}}\n"
LAUGH = "a: &a [x, x, x, x, x, x, x, x, x]\n" + "".join(
    f"{name}: &{name} [{', '.join([f'*{before}'] * 9)}]\n"
    for before, name in zip("abcdefgh", "bcdefghi", strict=True)
)


def chain(count, backwards):
    """Points of which each hangs on the next, named so that the last or the first stands in numbers."""
    order = range(count, 0, -1) if backwards else range(1, count + 1)
    return "".join(f"  p{n}: {{from: p{n - 1}, aft: 1}}\n" for n in order)


def points(more):
    return SMALL.replace("points:\n", "points:\n  p0: [0, 0, 0]\n" + more)


@pytest.fixture(autouse=True)
def soon():
    start = time.process_time()
    yield
    assert time.process_time() - start < SECONDS


def test_copies_of_something_big():
    found = problems(SMALL + BIG + "".join(f"  c{n}: {{like: big}}\n" for n in range(300)))
    assert "the file unfolds to too many pieces" in [problem.message for problem in found]
    assert len(found) < 5


def test_a_long_row_of_things_like_each_other():
    zones = "zones:\n  z0: {where: unknown}\n"
    forwards = "".join(f"  z{n}: {{like: z{n - 1}}}\n" for n in range(1, 1500))
    backwards = "".join(f"  z{n}: {{like: z{n - 1}}}\n" for n in range(1500, 0, -1))
    assert len(sound(SMALL + zones + forwards).aircraft.zones) == 1500
    found = problems(SMALL + zones + backwards)
    assert "and so on, too often" in found[0].message
    assert found[0].suggestion == "name the first of them here"


@pytest.mark.parametrize("backwards", [False, True])
def test_a_chain_of_a_few_places(backwards):
    last = sound(points(chain(25, backwards))).aircraft.points
    assert max(point.position.aft.middle for point in last) == pytest.approx(25 * 0.0254)


def test_a_long_chain_is_worked_out_from_its_beginning():
    assert len(sound(points(chain(1500, backwards=False))).aircraft.points) == 1502


def test_a_chain_too_long_to_follow_from_its_end():
    found = problems(points(chain(1500, backwards=True)))
    assert "and so on, too often" in found[0].message
    assert found[0].suggestion == "give it in numbers"


def test_points_in_a_circle_of_many():
    circle = "".join(f"  q{n}: {{from: q{(n + 1) % 20}, up: 1}}\n" for n in range(20))
    assert only(points(circle)).message == "`q0` hangs on itself, round in a circle"


def test_aliases_of_aliases():
    assert only(LAUGH).message == "the file unfolds to too many pieces"
    found = read_text(SMALL + LAUGH).problems
    assert [problem.message for problem in found] == ["the file unfolds to too many pieces"]


def test_an_alias_inside_its_own_anchor():
    assert only("a: &a {b: *a}\n").message == "lists or keys are nested too deeply"
    assert only("a: &a [*a, *a, *a, *a]\n").message in (
        "lists or keys are nested too deeply",
        "the file unfolds to too many pieces",
    )


@pytest.mark.parametrize(
    "text", ["[" * 100_000, "{a: " * 50_000, "- " * 100_000, "? " * 100_000, "!a " * 60_000]
)
def test_brackets_that_never_close(text):
    assert len(problems(text)) == 1


def test_very_many_keys_are_read_or_refused():
    zones = "zones:\n" + "".join(f"  z{n}: {{where: unknown}}\n" for n in range(1500))
    assert len(sound(SMALL + zones).aircraft.zones) == 1500
    numbers = "zones: [" + "1," * 100_000 + "1]\n"
    assert only(SMALL + numbers).message == "the file unfolds to too many pieces"


@pytest.mark.parametrize(
    "long", ["x" * 100_000, "9" * 100_000, "left_" * 20_000, "a.b" * 30_000, "\u00e9" * 90_000]
)
@pytest.mark.parametrize(
    "old",
    [
        "kind: caliper",
        "bore: 5/8",
        "from: left_cylinder.outlet",
        "made of: hose -4 PTFE braided",
        "faces: right",
    ],
)
def test_very_long_words_are_quoted_short(long, old):
    text = SMALL.replace(old, f"{old.partition(':')[0]}: {long}", 1)
    found = problems(text)
    assert found
    assert all(len(problem.message) < 300 and len(problem.suggestion) < 1000 for problem in found)


def test_a_very_long_name_is_read():
    name = "left_" + "x" * 900
    assert len(sound(SMALL.replace("left_mark", name)).aircraft.points) == 1
    assert len(sound(SMALL.replace("left_mark", name) + f"mirror: [{name}]\n").aircraft.points) == 2
