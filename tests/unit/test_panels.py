"""Lines through panels: where, worked by hand, and what is no passing at all."""

from __future__ import annotations

import pytest

from firmpedal.lay.panels import passing
from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import edited, example, small

# The tube of Quillfen runs from [10, 0, 4] down to a corner at [10, 0, -6], then aft to [16, 0, -6].
VIA = "      - [10, 0, -6]\n"


def passed(where: str, *edits: tuple[str, str]):
    text = edited(small("quillfen"), ("lines:\n", f"panels:\n  wall: {{where: {where}}}\nlines:\n"), *edits)
    evaluation = evaluate_text(text, "text")
    (line,), (panel,) = evaluation.laid, evaluation.aircraft.panels
    return passing(line.run, panel)


def points(cut) -> list[list[float]]:
    return [[to_unit(one, "in") for one in point] for _, point in cut.points]


def test_a_floor_is_passed_where_the_tube_goes_through():
    cut = passed("{up: 1}")
    assert points(cut) == [pytest.approx([10, 0, 1], abs=1e-3)]
    assert to_unit(cut.points[0][0], "in") == pytest.approx(3, abs=1e-3)
    assert cut.unsure == ()


def test_a_wall_across_the_other_axis():
    assert points(passed("{aft: 13}")) == [pytest.approx([13, 0, -6], abs=1e-3)]


def test_beyond_the_panel_there_is_nothing_to_pass():
    assert points(passed("{up: 1, within: [[0, -5, 1], [9, 5, 1]]}")) == []
    assert len(points(passed("{up: 1, within: [[11, -5, 1], [9, 5, 1]]}"))) == 1


def test_a_line_along_a_panel_does_not_pass_it():
    assert points(passed("{right: 0}")) == []


def test_a_line_that_ends_on_a_panel_does_not_pass_it():
    assert points(passed("{up: 4}")) == []
    assert points(passed("{aft: 16}")) == []


def test_a_line_can_pass_twice():
    # Down at 10, up again at 14: through the floor at -2 three times with the last way down.
    edits = (
        VIA,
        "".join(f"      - [{x}, 0, {z}]\n" for x, z in ((10, -5), (13, -5), (13, 2), (16, 2), (16, -3))),
    )
    cut = passed(
        "{up: -2}", edits, ("faces: forward, seat: [16, 0, -6]", "faces: forward, seat: [20, 0, -3]")
    )
    assert [point[0] for point in points(cut)] == pytest.approx([10, 13, 16], abs=1e-3)


@pytest.mark.parametrize("where", ["{up: 3 to 5}", "{up: 1, within: [[9.5 to 10.5, -5, 1], [20, 5, 1]]}"])
def test_a_range_in_which_the_answer_changes_is_asked_for(where):
    (asked,) = passed(where).unsure
    assert "where wall is, more closely" in asked.what


def test_a_range_in_which_it_does_not_change_is_not_asked_for():
    cut = passed("{up: 0 to 1}")
    assert cut.unsure == ()
    assert len(cut.points) == 1


def test_what_is_not_known_is_asked_for():
    assert passed("unknown").unsure
    assert passed("{up: 1}", ("seat: [10, 0, 4]", "seat: unknown")).unsure


@pytest.mark.parametrize(
    ("name", "option", "line", "expected"),
    [  # on the straights between the declared corners, by the share of the height that is gone by
        ("oatmere", None, "left_run", [10.125, -2.025, 0]),
        ("fennimoss", "rigid", "left_keel", [12.5, -3.55, 0]),
    ],
)
def test_where_the_examples_pass_their_floors(name, option, line, expected):
    evaluation = evaluate_text(example(name), name, option)
    laid = next(each for each in evaluation.laid if each.name == line)
    (panel,) = evaluation.aircraft.panels
    assert points(passing(laid.run, panel)) == [pytest.approx(expected, abs=1e-3)]
