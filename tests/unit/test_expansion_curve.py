"""A hose's curve with ranges, beside very many curves drawn from them and read by numpy's straight lines."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from test_feel import HOSE

from firmpedal.analysis.expansion import by_curve, by_slope, edges
from firmpedal.pipeline import evaluate_text
from firmpedal.project import read_text
from firmpedal.quantity import Mark, exactly
from firmpedal.units import Dimension
from texts import edited, small

PSI, ML = 6894.757293168, 1e-6
DRAWS = 4000

# Points as (least and most psi, least and most ml/m).
EXACT = (((400, 400), (0.2, 0.2)), ((1000, 1000), (0.3, 0.3)))
RANGES = (((300, 500), (0.1, 0.2)), ((600, 900), (0.25, 0.3)), ((1600, 1700), (0.32, 0.4)))
# By itself the second point may take less than the first, and the first more than the second.
CROSSING = (((300, 400), (0.2, 0.5)), ((700, 800), (0.1, 0.4)), ((1600, 1600), (0.3, 0.6)))
CURVES = pytest.mark.parametrize("points", [EXACT, RANGES, CROSSING], ids=["exact", "ranges", "crossing"])


def span(ends):
    low, high = ends
    return f"{low}" if low == high else f"{low} to {high}"


def curve(points):
    rows = [f"{{under: {span(under)} psi, per length: {span(taken)} ml/m}}" for under, taken in points]
    return (HOSE[0], f"{HOSE[1]}    expansion curve: [{', '.join(rows)}]\n")


def hose(points):
    (line,) = evaluate_text(edited(small("quillfen"), curve(points)), "x").laid
    return line


def drawn(points):
    """Curves with each point anywhere in its ranges, many at an end of them; those that fall are left out."""
    draw = np.random.default_rng(7)
    for _ in range(DRAWS):
        shares = np.clip(draw.uniform(-1, 2, size=(len(points), 2)), 0, 1)
        under, taken = (
            np.array([low + share * (high - low) for (low, high), share in zip(ranges, column, strict=True)])
            for ranges, column in zip(zip(*points, strict=True), shares.T, strict=True)
        )
        if (np.diff(taken) >= 0).all():
            yield np.array([0, *under]) * PSI, np.array([0, *taken]) * ML


@CURVES
def test_no_curve_in_the_ranges_is_outside_the_edges_and_some_come_close(points):
    line = hose(points)
    firm, soft = edges(line)
    length = line.order_length
    for pressure in np.array([50, 200, 350, 450, 650, 850, 950]) * PSI:
        found = [np.interp(pressure, under, taken) for under, taken in drawn(points)]
        if pressure <= points[-1][0][0] * PSI:
            least, most = min(found) * length.low, max(found) * length.high
            assert firm.volume(pressure) <= least * (1 + 1e-9)
            assert soft.volume(pressure) >= most * (1 - 1e-9)
            assert (firm.volume(pressure), soft.volume(pressure)) == pytest.approx((least, most), rel=0.05)


def pressure(psi):
    return exactly("some pressure", Dimension.PRESSURE, psi * PSI, Mark.DERIVED)


@CURVES
def test_one_more_step_takes_what_the_firmest_and_the_steepest_piece_of_any_curve_take(points):
    """The ends of the ranges decide: of drawn curves the least and the greatest slope come close to both."""
    line = hose(points)
    slopes = np.array([np.diff(taken) / np.diff(under) for under, taken in drawn(points)])
    found, length = by_slope(line, pressure(1), "a step", "somewhere"), line.order_length
    told = points[-1][0][0] >= 1500  # a hose of this kind is rated for 1,500 psi
    least = slopes.min() * PSI * length.low if told else 0.0
    most = slopes.max() * PSI * length.high
    assert found.low <= least <= most <= found.high * (1 + 1e-9)
    assert found.high == pytest.approx(most, rel=0.05)
    assert found.low == pytest.approx(least, rel=0.05, abs=1e-3 * most)
    assert "on its firmest and its steepest piece" in found.step.note


@pytest.mark.parametrize(("end", "told"), [((1500, 1600), True), ((1400, 1600), False)])
def test_a_curve_that_may_end_below_the_rating_leaves_open_that_nothing_more_is_taken(end, told):
    found = by_slope(hose((((500, 500), (0.2, 0.2)), (end, (0.3, 0.3)))), pressure(1), "a step", "here")
    assert (found.low > 0) is told


def test_beyond_its_end_a_hose_takes_no_more_than_at_the_steepest_that_its_ranges_allow():
    """From 0.1 at 500 psi to 0.3 at 600 is steeper than any piece along the upper ends of the ranges."""
    line = hose((((300, 500), (0.1, 0.2)), ((600, 900), (0.25, 0.3))))
    found = by_curve(line, pressure(1200), "taken", "here")
    beyond = (1200 - 600) * (0.3 - 0.1) / (600 - 500)
    assert found.high == pytest.approx((0.3 + beyond) * ML * line.order_length.high)
    assert found.low == pytest.approx(0.25 * ML * line.order_length.low)
    assert found.step.caution
    assert not by_curve(line, pressure(599), "taken", "here").step.caution
    assert by_curve(line, pressure(601), "taken", "here").step.caution
    some = by_curve(line, replace(pressure(500), span=(500 * PSI, 700 * PSI)), "taken", "here")
    assert some.step.caution
    least, most = (by_curve(line, pressure(psi), "taken", "here") for psi in (500, 700))
    assert some.span == (least.low, most.high)


@pytest.mark.parametrize("old", ["per length: 0.2 ml/m", "under: 1000 psi", "- [10, 0, -6]"])
def test_an_unknown_figure_leaves_open_what_is_taken_and_what_one_more_step_takes(old):
    new = "- unknown" if old.startswith("-") else f"{old.partition(':')[0]}: unknown"
    (line,) = evaluate_text(edited(small("quillfen"), curve(EXACT), (old, new)), "x").laid
    for found in (by_curve(line, pressure(300), "it", "here"), by_slope(line, pressure(1), "it", "here")):
        assert not found.known
        assert found.missing
        assert "v on straight lines" in found.step.equation


def test_what_a_curve_says_is_no_surer_than_its_points():
    line = hose((((400, 400), (0.2, 0.2)), ((1000, 1000), (0.3, 0.3))))
    assert len(by_curve(line, pressure(300), "taken", "here").step.inputs) == 2 + 4
    text = edited(small("quillfen"), curve(EXACT))
    guessed = text.replace("per length: 0.2 ml/m", "per length: {value: 0.2 ml/m, mark: assumed}")
    assert guessed != text
    (line,) = evaluate_text(guessed, "x").laid
    assert by_curve(line, pressure(300), "taken", "here").mark is Mark.ASSUMED


@pytest.mark.parametrize(
    ("points", "follows"),
    [
        ((((400, 600), (0.2, 0.2)), ((601, 700), (0.3, 0.3))), True),
        ((((400, 600), (0.2, 0.2)), ((599, 700), (0.3, 0.3))), False),  # which of them is first?
        ((((400, 600), (0.2, 0.2)), ((300, 700), (0.3, 0.3))), False),
        ((((400, 400), (0.2, 0.3)), ((800, 800), (0.1, 0.2))), True),  # both may be 0.2
        ((((400, 400), (0.2, 0.3)), ((800, 800), (0.1, 0.19))), False),
        ((((400, 400), (0.3, 0.3)), ((600, 600), (0.1, 0.5)), ((800, 800), (0.2, 0.25))), False),
    ],
)
def test_ranges_of_a_curve_that_cannot_follow_each_other_are_told(points, follows):
    problems = read_text(edited(small("quillfen"), curve(points)), "text").problems
    assert [each for each in problems if "does not follow" in each.message] == list(problems)
    assert (not problems) is follows
