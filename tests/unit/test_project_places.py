"""Problems that have two places, or none: both are said right, and none is invented."""

from __future__ import annotations

from project_texts import SOUND, place_of, spoiled
from pydantic import BaseModel, ConfigDict

from firmpedal.finding import Span
from firmpedal.project import read_text
from firmpedal.project.context import UNEXPECTED, Context, read_aircraft
from firmpedal.project.notes import Notes
from firmpedal.project.tree import Branch, Leaf
from texts import edited

SECOND_LINE = """\
  second_line:
    from: left_cylinder.outlet
    to: second_caliper.inlet
    made of: hose -4 PTFE braided
"""
CENTRE_VALVE = """\
  valve:
    kind: parking valve
    ports:
      middle: {thread: 1/8 NPT female, at: [0, 0, 0], faces: up}
"""


def only(reading):
    (problem,) = reading.problems
    return problem


def test_sound_text_has_no_problem():
    assert spoiled().problems == ()


def test_problem_of_one_place_has_no_other_place():
    problem = only(spoiled(("pedal: left_brake", "pedal: left_brakes")))
    assert problem.also is None


def test_two_lines_on_one_port_say_both_places():
    text = SOUND + SECOND_LINE.replace("second_caliper.inlet", "left_line.to")
    problem = only(read_text(text))
    assert "two lines come to `left_cylinder.outlet`: second_line and left_line" in problem.message
    line, _ = place_of(text, "second_line")
    first_line, _ = place_of(text, "left_line:")
    assert (problem.span.line, problem.span.column) == (line + 1, 11)
    assert (problem.also.line, problem.also.column) == (first_line + 1, 11)


def test_line_that_comes_back_to_its_own_port_is_one_problem_with_both_ends():
    problem = only(spoiled(("to: left_caliper.inlet", "to: left_cylinder.outlet")))
    assert "left_line starts and ends at" in problem.message
    assert (problem.span.line, problem.also.line) == (31, 30)
    assert not problem.opened


def test_mirror_image_on_the_same_port_is_placed_where_it_was_asked_for():
    text = edited(
        SOUND, ("to: left_caliper.inlet", "to: valve.middle"), ("pedals:\n", CENTRE_VALVE + "pedals:\n")
    )
    text += "mirror: [left_line, left_cylinder, left_caliper, left_brake, left_pedal_swing]\n"
    problem = only(read_text(text))
    assert "two lines come to `valve.middle`: right_line and left_line" in problem.message
    assert (problem.span.line, problem.span.column) == place_of(text, "left_line, left_cylinder")
    assert (problem.also.line, problem.also.column) == place_of(text, "valve.middle")


def test_text_that_serves_on_both_sides_is_complained_about_once():
    reading = read_text(edited(SOUND, ("bore: 0.625", "bore: 0.625 furlong")) + "mirror: [left_cylinder]\n")
    assert [problem.text for problem in reading.problems] == ["0.625 furlong"]


def test_what_the_model_refuses_without_a_recorded_problem_becomes_a_general_one():
    class Picky(BaseModel):
        model_config = ConfigDict(extra="forbid")
        count: int

    place = Span("some.yaml", 4, 2)
    context = Context(Branch({"count": Leaf("many", place)}, {}, place), Notes())
    assert read_aircraft(Picky, context) is None
    (problem,) = context.notes.problems()
    assert problem.span == place
    assert problem.message == UNEXPECTED
    assert "Picky" in problem.suggestion


def test_seat_measured_with_a_part_that_is_not_there_names_the_near_miss():
    seat = "seat: [9.4, -32.6, -31.4]"
    text = edited(SOUND, (seat, f"{seat}, seat measured with: AN8222-4D"))
    problem = only(read_text(text))
    assert "`AN8222-4D` is not in the catalogue" in problem.message
    assert "AN822-4D" in problem.suggestion
    assert (problem.span.line, problem.span.column) == place_of(text, "AN8222-4D")
    assert read_text(text.replace("AN8222-4D", "AN822-4D")).problems == ()
    assert read_text(text.replace("AN8222-4D", "unknown")).problems == ()
