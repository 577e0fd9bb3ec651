"""A corner as it is written, and what is written when it moves: not a letter besides, no form lost."""

from __future__ import annotations

import pytest

from firmpedal.model.aircraft import FileUnits
from firmpedal.pipeline import evaluate_text
from firmpedal.project.corner_list import as_a_point, with_corner, without_corner
from firmpedal.project.corners import Form, Tape, as_point, corner_at, moved_words, tape_of
from firmpedal.project.edit import EditError
from firmpedal.project.edit import edited as changed
from texts import edited, example

INCH = 0.0254  # m, exact by definition
TAPE = Tape("in")
OLD = "          - [9.0, -11.6, -5.2]\n          - [5.6"
PLACE = "lines.left_leg.via.2"


def inches(*numbers):
    return tuple(number * INCH for number in numbers)


def written(words):
    return edited(example("brindlewick"), (OLD, f"          - {words}\n          - [5.6"))


def moved(words, now, to, tape=TAPE):
    corner = corner_at(written(words), PLACE, "rigid")
    return corner.form, moved_words(corner, inches(*now), inches(*to), tape)


@pytest.mark.parametrize(
    ("words", "to", "after"),
    [
        ("[9.0, -11.6, -5.2]", (9.8125, -11.6, -5.2), "[9.8125, -11.6, -5.2]"),
        ("[9.0, -11.6, -5.2]", (9, -11.6, -4.9375), "[9.0, -11.6, -4.9375]"),
        ("[9, -11-5/8, -5-1/4]", (9.5625, -11.625, -5.25), "[9-9/16, -11-5/8, -5-1/4]"),
        ("[9, -11-5/8, -5-1/4]", (0, -11.625, -5.25), "[0, -11-5/8, -5-1/4]"),
        (
            "[9.0, {value: -11.6, mark: assumed}, -5.2]",
            (9, -12, -5.2),
            "[9.0, {value: -12, mark: assumed}, -5.2]",
        ),
        ("[9.0, 10 to 11, -5.2]", (8, 10.5, -5.2), "[8, 10 to 11, -5.2]"),
    ],
)  # fmt: skip
def test_only_the_coordinates_that_move_are_written_anew(words, to, after):
    now = {"[9.0, 10": (9, 10.5, -5.2), "[9, -11-": (9, -11.625, -5.25)}.get(words[:8], (9, -11.6, -5.2))
    assert moved(words, now, to) == (Form.POINT, after)


def test_a_point_with_a_mark_keeps_it():
    text = written("{value: [9.0, -11.6, -5.2], mark: assumed}")
    corner = corner_at(text, PLACE, "rigid")
    assert corner.place == f"{PLACE}.value"
    words = moved_words(corner, inches(9, -11.6, -5.2), inches(9.5, -11.6, -5.2), Tape("in"))
    after = changed(text, corner.place, words, corner.option)
    assert after == edited(text, ("{value: [9.0, -11.6, -5.2]", "{value: [9.5, -11.6, -5.2]"))


@pytest.mark.parametrize(
    ("to", "after"),
    [
        ((9.5, -9, -3.25), "{from: left_floor, aft: 2-1/2, down: 3-1/4}"),
        ((9, -9, -3), "{from: left_floor, aft: 2, down: 3}"),
        ((6.5, -9, -3.25), "{from: left_floor, forward: 1/2, down: 3-1/4}"),  # turned round
        ((9, -9.125, -3.25), "{from: left_floor, aft: 2, down: 3-1/4, left: 1/8}"),  # a way more
    ],
)
def test_a_chain_stays_a_chain(to, after):
    assert moved("{from: left_floor, aft: 2, down: 3-1/4}", (9, -9, -3.25), to) == (Form.CHAIN, after)


def test_a_chain_that_was_moved_reads_back_where_it_was_put():
    text = written("{from: left_floor, aft: 2, down: 3-1/4}")
    corner = corner_at(text, PLACE, "rigid")
    words = moved_words(corner, inches(9, -9, -3.25), inches(6.5, -9.125, -3), Tape("in"))
    after = evaluate_text(changed(text, corner.place, words, corner.option), "a.yaml", "rigid")
    assert after.laid[1].points[2].point == pytest.approx(inches(6.5, -9.125, -3))


@pytest.mark.parametrize(
    "words", ["left_floor", "{mirror of: left_floor}", "{from: left_floor, aft: 2, forward: 1}", "unknown"]
)
def test_what_is_no_point_and_no_chain_is_not_moved_by_itself(words):
    assert corner_at(written(words), PLACE, "rigid").form is Form.OTHER


def test_it_becomes_a_point_where_that_is_asked_for():
    text = written("{from: left_floor,\n             aft: 2}")
    after = as_a_point(text, "lines.left_leg", 2, as_point(inches(9, -9.01, 0.5), Tape("in")), "rigid")
    assert after == written("[9, -9, 0.5]")


@pytest.mark.parametrize("coordinate", ["8 to 10", "9 +/- 1/4", "about 9", "unknown"])
def test_a_range_is_not_lost(coordinate):
    with pytest.raises(EditError, match=r"is a range|is not one length"):
        moved(f"[{coordinate}, -11.6, -5.2]", (9, -11.6, -5.2), (9.5, -11.6, -5.2))


def test_what_holds_for_every_option_is_found_there():
    corner = corner_at(example("oatmere"), "lines.left_run.via.1", "single brakes")
    assert corner.option is None
    assert corner_at(example("brindlewick"), PLACE, "rigid").option == "rigid"


def test_a_mirrored_corner_is_written_nowhere():
    with pytest.raises(EditError, match="not written by itself"):
        corner_at(example("brindlewick"), "lines.right_leg.via.2", "rigid")


def test_a_corner_is_put_in_and_taken_out_again():
    text = example("brindlewick")
    more = with_corner(text, "lines.left_leg", 1, "[8, -10, -4]", "rigid")
    assert more == edited(text, (OLD, "          - [8, -10, -4]\n" + OLD))
    assert without_corner(more, "lines.left_leg", 2, "rigid") == text


def test_the_first_corner_of_a_line_brings_its_key():
    after = with_corner(example("brindlewick"), "lines.left_pedal", 0, "[10, -8, 3]", "rigid")
    line = next(each for each in evaluate_text(after, "a.yaml", "rigid").laid if each.name == "left_pedal")
    assert [point.point for point in line.points[1:-1]] == [pytest.approx(inches(10, -8, 3))]


@pytest.mark.parametrize(
    ("units", "length", "words"),
    [
        ({"length": "in"}, 9.1875 * INCH, "9.1875"),
        ({"length": "in", "fractions": "16"}, 9.1875 * INCH, "9-3/16"),
        ({"length": "mm"}, 0.133, "133"),
        ({"length": "cm"}, 0.133, "13.3"),
        ({"length": "m"}, 0.133, "0.133"),
        ({}, 9.5 * INCH, "9.5 in"),
    ],
)
def test_figures_are_written_as_the_file_has_them(units, length, words):
    tape = tape_of(FileUnits.model_construct(**units))
    assert tape.write(tape.snapped(length)) == words
