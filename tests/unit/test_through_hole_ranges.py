"""What holes, panels and nuts with a range leave open: only what holds at both ends of a range is sure."""

from __future__ import annotations

import pytest
from test_through_hole import BENT, STRAIGHT, evaluated, first_end

from firmpedal.lay import through_hole
from firmpedal.lay.through_hole import Way, holes_of
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Answer, Mark, Value
from firmpedal.units import Dimension, from_unit, to_unit

NO, UNKNOWN, YES = Answer.NO, Answer.UNKNOWN, Answer.YES
VIA = "      - [14, 0, 4]\n      - [14, 0, -6]\n"
V = ([[14, 0, 4], [14, 0, -4.5]], [17.2, 0, -1.3])  # its second leg comes back up by 45 degrees
HOOK = ([[14, 0, 4], [14, 0, -3], [17, 0, -3]], [17, 0, -1])  # its last leg points up, 3 in from the hole
SHELF = "  shelf: {where: {up: -3}, thickness: 0.04, passes: {run: {grommet: yes, hole: 3/8}}}\nlines:\n"


def bent(corners, last, hole="hole: 0.6", thickness="3/4", where="{up: 0}"):
    text = BENT.replace(VIA, "".join(f"      - {one}\n" for one in corners))
    text = text.replace("seat: [19, 0, -6]", f"seat: {last}").replace(
        "thickness: 3/4", f"thickness: {thickness}"
    )
    return evaluated(text.replace("where: {up: 0}", f"where: {where}"), hole)


def holes(evaluation):
    return holes_of(evaluation.aircraft, evaluation.assembly, evaluation.laid[0])


def clear(evaluation, end="to"):
    (hole,) = holes(evaluation)
    return next(way.clear for way in hole.ways if way.end == end)


@pytest.mark.parametrize(
    ("hole", "answer"),
    [("0.4", NO), ("1.5", YES), ("0.4 to 1.5", UNKNOWN), ("0.4 to 0.41", NO), ("1.4 to 1.5", YES)],
)
def test_a_hole_of_a_range_is_sure_only_where_both_its_ends_agree(hole, answer):
    assert clear(bent(*V, f"hole: {hole}", "0.3")) is answer


@pytest.mark.parametrize(
    ("thickness", "answer"),
    # while nobody knows it, anything up to an inch: with the one end it goes, with the other it does not
    [
        ("0.03", YES),
        ("1", NO),
        ("0.03 to 1", UNKNOWN),
        ("unknown", UNKNOWN),
        ("0.9 to 1", NO),
        ("0.03 to 0.04", YES),
    ],
)
def test_a_panel_of_unknown_thickness_may_be_thin_or_an_inch_thick(thickness, answer):
    assert clear(bent(*V, "hole: 0.6", thickness)) is answer


@pytest.mark.parametrize(
    ("thickness", "answer"), [("0.1", YES), ("1.6", UNKNOWN), ("0.1 to 1.6", UNKNOWN), ("0.1 to 1.1", YES)]
)
def test_a_leg_along_a_panel_clears_it_at_its_thickest(thickness, answer):
    """It runs 0.85 in below; half of 1.1 in and of the tube are 0.675 in, of 1.6 in and the tube 0.925 in."""
    text = STRAIGHT.replace("[10, 0, -6]", "[10, 0, -0.85]").replace("[16, 0, -6]", "[16, 0, -0.85]")
    text = text.replace("thickness: 0.040", f"thickness: {thickness}")
    assert clear(evaluated(text, "hole: 0.26"), "from") is answer


def test_a_hole_that_the_plain_tube_passes_and_a_bend_does_not_is_open():
    assert clear(evaluated(BENT, "hole: 3/8")) is UNKNOWN


@pytest.mark.parametrize(
    ("where", "answer"),
    [
        ("{up: 0}", NO),
        ("{up: 0, within: [[4, -8, 0], [20, 8, 0]]}", NO),
        ("{up: 0, within: [[4, -5, 0], [15.5, 5, 0]]}", UNKNOWN),  # ends 1.5 in from the hole
        ("{up: 0, within: [[12.5, -5, 0], [40, 5, 0]]}", UNKNOWN),  # surely goes on for 1.5 in all round
        ("{up: 0, within: [[4, -1.5, 0], [40, 5, 0]]}", UNKNOWN),
        ("{up: 0, within: [[4, -5, 0], [40, 1.5, 0]]}", UNKNOWN),
    ],
)
def test_a_panel_is_in_the_way_only_as_far_as_it_surely_reaches(where, answer):
    assert clear(bent(*HOOK, "hole: 0.4", "0.04", where)) is answer


@pytest.mark.parametrize(
    ("apart", "thickness", "answer"),
    # two square bends of 3/4 in leave `apart` less 1.5 in of straight; the hole holds as much of it as the
    # panel is thick, and the tube's 0.25 in
    [
        (1.77, "0.04", UNKNOWN),  # 0.27 of 0.29
        (1.81, "0.04", YES),  # 0.31
        (1.90, "0.04 to 0.2", UNKNOWN),  # 0.40 of 0.45
        (1.97, "0.04 to 0.2", YES),  # 0.47
    ],
)
def test_two_bends_are_told_one_by_one_where_the_hole_never_holds_both(apart, thickness, answer):
    corners = [[14, 0, 4], [14, 0, -4], [14 + apart, 0, -4]]
    (hole,) = holes(bent(corners, [14 + apart, 0, -8], "hole: 3/4", thickness))
    assert next(way.apart for way in hole.ways if way.end == "to") is answer


def length(low, high=None):
    span = (from_unit(low, "in"), from_unit(low if high is None else high, "in"))
    return Value("some length", Dimension.LENGTH, span, Mark.MEASURED)


@pytest.mark.parametrize(
    ("nut", "answer"),
    [
        (None, UNKNOWN),
        (length(0.5), YES),  # the hole is 0.5 to 0.6 in wide
        (length(0.51), UNKNOWN),
        (length(0.6), UNKNOWN),
        (length(0.61), NO),
        (length(0.4, 0.5), YES),
        (length(0.4, 0.7), UNKNOWN),
        (length(0.61, 0.7), NO),
    ],
)
def test_a_nut_goes_where_the_narrowest_hole_takes_its_widest_corners(nut, answer):
    assert Way("from", length(0.5, 0.6), nut, (), YES, YES).nut_goes is answer


def test_each_end_goes_with_its_own_nut(monkeypatch):
    corners = {"from": length(0.5), "to": length(0.7)}
    monkeypatch.setattr(through_hole, "_corners", lambda _assembly, _line, end: corners[end])
    (hole,) = holes(evaluated(BENT, "hole: 0.6"))
    assert {way.end: way.nut_goes for way in hole.ways} == {"from": YES, "to": NO}


@pytest.mark.parametrize(("floor", "shelf"), [("3/4", "3/8"), ("3/8", "3/4")])
def test_the_nut_has_to_go_through_every_hole(floor, shelf):
    text = BENT.replace("lines:\n", SHELF.replace("3/8", shelf)).replace("hole: 3/4", f"hole: {floor}", 1)
    assert text.count(f"hole: {shelf}") >= 1
    assert first_end(evaluate_text(text)).nut_goes is NO  # 0.65 in across its corners


def test_the_bends_are_those_before_the_furthest_hole():
    """With the first end first bend 1 goes through the floor, bends 1 and 2 through the wall behind it."""
    passes = "{run: {grommet: yes, hole: 3/8, tried: yes}}"
    wall = f"  wall: {{where: {{aft: 17}}, thickness: 0.04, passes: {passes}}}\nlines:\n"
    text = BENT.replace("lines:\n", wall).replace("hole: 3/4", "hole: 3/4, tried: yes", 1)
    evaluation = evaluate_text(text)
    ways = [{way.end: [bend.number for bend in way.bends] for way in hole.ways} for hole in holes(evaluation)]
    assert ways == [{"from": [1], "to": [2]}, {"from": [1, 2], "to": []}]
    assert first_end(evaluation).end == "to"
    assert first_end(evaluation).bends == (2,)
    assert first_end(evaluation).bends_go is YES  # somebody has tried both
    assert to_unit(holes(evaluation)[1].ways[0].nut.high, "in") > 3 / 8
