"""Curves on paper: where they lie, what is cut off, and that every word can be read."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from firmpedal.report.placing import LETTER_WIDTH, Box
from firmpedal.report.plot import Axis, Band, Curve, Limit, plot, round_steps
from firmpedal.report.sheet import Label, Stroke

ALONG, UP = Axis("pedal travel, in", 0, 4), Axis("foot force, lbf", 0, 200)


def labels(drawing):
    return [mark for mark in drawing.marks if isinstance(mark, Label)]


def boxes(drawing):
    found = []
    for label in labels(drawing):
        wide, (x, y) = LETTER_WIDTH * label.size * len(label.text), label.at
        left = {"start": x, "middle": x - wide / 2, "end": x - wide}[label.anchor]
        found.append(Box(left, y - 0.4 * label.size, left + wide, y + 0.4 * label.size))
    return found


def strokes(drawing, weight):
    return [mark for mark in drawing.marks if isinstance(mark, Stroke) and mark.weight == weight]


def test_a_straight_curve_is_straight_and_ends_in_its_corner():
    drawing = plot(ALONG, UP, [Curve("rigid", ((0, 0), (1, 50), (4, 200)))])
    (curve,) = strokes(drawing, 1.3)
    (x0, y0), (x1, y1), (x2, y2) = curve.points
    assert (x1 - x0) / (x2 - x0) == pytest.approx(0.25, abs=1e-4)
    assert (y1 - y0) / (y2 - y0) == pytest.approx(0.25, abs=1e-4)
    (frame,) = [mark for mark in strokes(drawing, 1.0) if len(mark.points) == 3]
    (left, top), (_, low), (right, _) = frame.points
    assert curve.points[0] == (left, low)
    assert curve.points[-1] == (right, top)


def test_what_leaves_the_picture_is_cut_off_where_it_leaves():
    drawing = plot(ALONG, UP, [Curve("soft", ((0, 0), (4, 400), (4.5, 100), (3, 100)))])
    first, second = strokes(drawing, 1.3)
    inside = plot(ALONG, UP, [Curve("soft", ((0, 0), (2, 200)))])
    assert first.points == strokes(inside, 1.3)[0].points
    assert second.points[1][1] == second.points[0][1]


def test_a_band_is_hatched_between_its_edges_and_nowhere_else():
    low, high = ((0, 20), (4, 100)), ((0, 40), (4, 180))
    drawing = plot(ALONG, UP, [Band("hot", low, high)])
    edges = [mark.points for mark in strokes(drawing, 1.3)]
    (x0, a), (x1, b) = edges[0]
    (_, c), (_, d) = edges[1]
    hatches = strokes(drawing, 0.3)
    assert len(hatches) > 20
    for (x, y), (same, z) in (mark.points for mark in hatches):
        share = (x - x0) / (x1 - x0)
        assert same == x
        assert y == pytest.approx(a + share * (b - a), abs=0.05)
        assert z == pytest.approx(c + share * (d - c), abs=0.05)


def test_limits_stand_where_they_are_and_are_named():
    drawing = plot(ALONG, UP, [], [Limit("floor", 3, upright=True), Limit("panic", 150), Limit("far", 999)])
    words = {label.text for label in labels(drawing)}
    assert {"floor", "panic"} <= words
    assert "far" not in words
    assert len([mark for mark in strokes(drawing, 1.0) if mark.dashed]) == 2


@pytest.mark.parametrize(
    ("low", "high", "steps"),
    [
        (0, 200, [0, 50, 100, 150, 200]),
        (0, 1, [0, 0.2, 0.4, 0.6, 0.8, 1]),
        (-40, 100, [-40, -20, 0, 20, 40, 60, 80, 100]),
        (3, 3.7, [3, 3.1, 3.2, 3.3, 3.4, 3.5, 3.6, 3.7]),
    ],
)
def test_figures_along_an_axis_are_round(low, high, steps):
    assert round_steps(Axis("", low, high)) == pytest.approx(steps)


def test_an_axis_without_length_is_a_mistake():
    with pytest.raises(ValueError, match="from a lower to a higher"):
        plot(Axis("", 1, 1), UP, [])


@given(
    st.lists(st.tuples(st.sampled_from(["as written", "rigid, hot", "rigid"]), st.floats(0, 200)), max_size=9)
)
def test_no_word_covers_another_or_leaves_the_paper(curves):
    shown = [Curve(f"{words} {n}", ((0, 0), (4, height))) for n, (words, height) in enumerate(curves)]
    drawing = plot(ALONG, UP, shown, [Limit("floor", 3.5, upright=True), Limit("rated pressure", 100)])
    found = boxes(drawing)
    assert not [pair for pair in combinations(found, 2) if pair[0].meets(pair[1])]
    wide, tall = drawing.size
    for box in found:
        assert box.inside(Box(0, 0, wide, tall))
    assert {f"{words} {n}" for n, (words, _) in enumerate(curves)} <= {mark.text for mark in labels(drawing)}
