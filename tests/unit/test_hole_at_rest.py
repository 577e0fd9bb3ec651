"""What a tube needs of its hole where it sits: formulas by hand, and very many places on its surface."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from scipy.spatial.distance import pdist
from test_through_hole import BENT, STRAIGHT, evaluated, first_end
from test_through_hole_ranges import SHELF, bent, holes

from firmpedal.lay.through_hole import holes_of, unclear_passages
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Answer
from firmpedal.units import to_unit

TUBE, THICK, RADIUS = 0.25, 0.75, 0.75  # inches: the tube's diameter, the panel, the bends' radius


def needs(evaluation):
    (hole,) = holes(evaluation)
    return [to_unit(bound, "in") for bound in hole.needs.span]


LEANING = ([[14, 0, 4], [20, 0, -4]], [26, 0, -6])  # through the panel by six across to eight down


def test_a_tube_that_leans_by_three_to_four_needs_more_than_its_width():
    """A strip of 0.25 at cos 4/5 covers 0.3125, and a panel of 0.75 adds three quarters of that."""
    assert needs(bent(*LEANING, thickness="3/4")) == pytest.approx([0.3125 + 0.5625] * 2)


def test_while_the_panel_is_unknown_it_is_nothing_to_an_inch_thick():
    assert needs(bent(*LEANING, thickness="unknown")) == pytest.approx([0.3125, 0.3125 + 0.75])


def test_a_tube_square_to_the_panel_needs_its_width():
    assert needs(bent([[14, 0, 4], [14, 0, -4]], [20, 0, -4], thickness="3/4")) == pytest.approx([TUBE] * 2)


def surface(line):
    """Places all over a bent tube's surface in inches, from its tangent points alone; bends in one plane."""
    found = []
    points = np.array(line.tangent_points) / 0.0254
    across = np.array([0.0, 1.0, 0.0])
    turns = np.linspace(0, 2 * np.pi, 48)
    for number, (a, b) in enumerate(pairwise(points)):
        places, ways = np.linspace(a, b, 400), np.tile((b - a) / np.linalg.norm(b - a), (400, 1))
        if number % 2:  # a bend: on a circle about what is square to both of its straights
            before = (a - points[number - 1]) / np.linalg.norm(a - points[number - 1])
            inward = (b - a) - before * ((b - a) @ before)
            inward = inward / np.linalg.norm(inward)
            turn = np.linspace(0, line.bends[number // 2].angle, 400)[:, None]
            places = a + RADIUS * (np.sin(turn) * before + (1 - np.cos(turn)) * inward)
            ways = np.cos(turn) * before + np.sin(turn) * inward
        aside = np.cross(ways, across)
        ring = np.cos(turns)[:, None, None] * across + np.sin(turns)[:, None, None] * aside
        found.append((places + TUBE / 2 * ring).reshape(-1, 3))
    return np.concatenate(found)


@pytest.mark.parametrize(
    ("corners", "last", "up"),
    [
        ([[16, 0, -0.02]], [12, 0, -4], 0),
        ([[14, 0, 4], [14, 0, -0.3]], [19, 0, -3], 0),
        ([[14, 0, 4], [14, 0, 0.7]], [19, 0, -2], 1),
        (*LEANING, 0),
    ],
)
def test_a_hole_holds_all_of_the_tube_that_sits_in_the_panel(corners, last, up):
    """Two places that lie furthest apart have to fit; a third more in the middle lines holds any shape."""
    evaluation = bent(corners, last, "hole: 2", where=f"{{up: {up}}}")
    places = surface(evaluation.laid[0].tube.centreline)
    inside = places[abs(places[:, 2] - up) <= THICK / 2][:, :2]
    widest = pdist(inside[:: max(1, len(inside) // 3000)]).max()
    low, high = needs(evaluation)
    assert low <= high
    assert widest <= high + 0.005
    assert high <= widest * 2 / 3**0.5 + TUBE


def test_one_hole_is_told_by_itself_and_two_at_once_are_not():
    assert first_end(evaluated(BENT, "hole: 3/4")).bends_go is Answer.YES
    two = evaluate_text(BENT.replace("lines:\n", SHELF.replace("3/8", "3/4")))
    assert first_end(two).bends_go is Answer.UNKNOWN


def test_two_holes_that_are_too_narrow_for_a_bend_are_surely_so():
    """A bend of the tube needs 0.375 in of a panel of 3/4 in, and more than 0.3 of a thin one."""
    two = BENT.replace("lines:\n", SHELF.replace("3/8", "0.26")).replace("hole: 3/4", "hole: 0.3", 1)
    assert first_end(evaluate_text(two)).bends_go is Answer.NO


def test_two_holes_with_nothing_bent_before_them_are_sure():
    two = evaluate_text(STRAIGHT.replace("lines:\n", SHELF.replace("3/8", "3/4")))
    assert len(holes(two)) == 2
    assert first_end(two).bends == ()
    assert first_end(two).bends_go is Answer.YES


@pytest.mark.parametrize(
    ("old", "new"),
    [("made of: tube 5052-O 1/4 x .035", "made of: hose -4 PTFE braided"), ("- [14, 0, 4]", "- unknown")],
)
def test_a_hose_and_a_tube_that_nobody_has_measured_sit_in_no_hole(old, new):
    assert old in BENT
    evaluation = evaluate_text(BENT.replace(old, new))
    (line,) = evaluation.laid
    assert holes_of(evaluation.aircraft, evaluation.assembly, line) == ()
    assert unclear_passages(evaluation.aircraft, line) == ()
