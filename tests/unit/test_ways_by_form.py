"""A point by coordinates or by tape, a shape, a movement: each can be given in another way.

What a text says is read here by the YAML library itself; where a point is, is worked out here by hand.
"""

from __future__ import annotations

import difflib
import re
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from yaml_said import at, yaml_of

from firmpedal.project import read_text
from firmpedal.project.edit import EditError
from firmpedal.project.field_cells import COORDINATES, FROM, Kind
from firmpedal.project.field_edits import put_in, with_mark
from firmpedal.project.field_places import thing_at
from firmpedal.project.field_rows import NOT_KNOWN, STILL, STRAIGHT, SWING, given_in
from firmpedal.project.fields import form_of
from texts import edited, example

TEXT = example("brindlewick")
CORNER = "lines.left_leg.via"
BELOW = FROM + "left_floor.below"
AXLE = "points:\n  axle: [1, -2, 1/2]\n  axle_too: {from: axle, aft: 2}\n  nowhere: unknown\n\nzones:\n"
POINTS = edited(TEXT, ("zones:\n", AXLE))


def new_lines(before, after):
    rows = [row for row in difflib.ndiff(before.splitlines(), after.splitlines()) if row[0] in "+-"]
    return [row[2:].strip() for row in rows if row[0] == "+"]


def field_at(text, place, option=None):
    reading = read_text(text, "a.yaml", option)
    assert reading.problems == ()
    form = form_of(reading, thing_at(reading, place))
    return reading, next(each for each in form.all_fields() if each.place == place)


def turned(text, place, way, row=0, option=None):
    """The text with a row of a field given in another way; it has to be readable."""
    reading, field = field_at(text, place, option)
    after = given_in(reading, field.rows[row], way, field.method)
    assert read_text(after, "a.yaml", option).problems == ()
    return after


def put(text, place, words, row=0, number=0, option=None):
    reading, field = field_at(text, place, option)
    return put_in(reading, field, field.rows[row].cells[number], words)


# -- points -----------------------------------------------------------------------------------------


def test_a_corner_is_given_by_tape_and_stays_where_it_is():
    # by hand: [9.0, -11.6, -5.2] less left_floor.below, [7.0, -9.0, -0.9]
    after = turned(TEXT, CORNER, BELOW, 1, "rigid")
    assert new_lines(TEXT, after) == ["- {from: left_floor.below, aft: 2, left: 2.6, down: 4.3}"]
    _, field = field_at(after, CORNER, "rigid")
    row = field.rows[1]
    assert row.start == "left_floor.below"
    assert {cell.label: cell.words for cell in row.cells if cell.words} == {
        "aft": "2",
        "left": "2.6",
        "down": "4.3",
    }
    assert row.comes_to == "aft 9.00 in, right -11.60 in, up -5.20 in"
    back = turned(after, CORNER, COORDINATES, 1, "rigid")
    assert new_lines(TEXT, back) == ["- [9, -11.6, -5.2]"]


def test_the_ways_of_a_chain_are_written_as_people_say_them():
    text = turned(TEXT, CORNER, BELOW, 1, "rigid")
    _, field = field_at(text, CORNER, "rigid")
    labels = [cell.label for cell in field.rows[1].cells]
    after = put(text, CORNER, "", 1, labels.index("aft"), "rigid")
    after = put(after, CORNER, "10 1/2", 1, labels.index("forward"), "rigid")
    after = put(after, CORNER, "38 mm", 1, labels.index("down"), "rigid")
    assert at(yaml_of(after)["options"]["rigid"], f"{CORNER}.2") == {
        "from": "left_floor.below", "left": 2.6, "down": "38 mm", "forward": "10 1/2",
    }  # fmt: skip
    assert len(new_lines(TEXT, after)) == 1
    assert put(after, CORNER, "", 1, labels.index("up"), "rigid") == after  # nothing was there
    with pytest.raises(EditError):
        put(after, CORNER, "a bit", 1, labels.index("up"), "rigid")


@pytest.mark.parametrize(("way", "other"), [("forward", "aft"), ("left", "right"), ("down", "up")])
def test_a_figure_takes_the_place_of_the_unknown_one_of_its_pair(way, other):
    after = turned(POINTS, "points.nowhere", FROM + "axle")
    _, field = field_at(after, "points.nowhere")
    labels = [cell.label for cell in field.rows[0].cells]
    assert field.rows[0].cells[labels.index(other)].words == "unknown"
    after = put(after, "points.nowhere", "2", 0, labels.index(way))
    said = {"aft": "unknown", "right": "unknown", "up": "unknown"}
    del said[other]
    assert at(yaml_of(after), "points.nowhere") == {"from": "axle", **said, way: 2}
    back = put(after, "points.nowhere", "", 0, labels.index(way))
    back = put(back, "points.nowhere", "3", 0, labels.index(other))
    assert at(yaml_of(back), "points.nowhere") == {"from": "axle", **said, other: 3}


def test_a_point_by_tape_is_known_when_its_three_figures_are():
    after = turned(POINTS, "points.nowhere", FROM + "axle")
    for number, words in ((3, "2"), (4, "4"), (5, "1/2")):  # forward, left, down
        after = put(after, "points.nowhere", words, 0, number)
    _, field = field_at(after, "points.nowhere")
    assert not field.unknown
    # by hand: the axle is at [1, -2, 1/2]
    assert field.rows[0].comes_to == "aft -1.00 in, right -6.00 in, up 0 in"


def test_both_ways_along_one_axis_are_refused():
    _, field = field_at(POINTS, "points.axle_too")
    labels = [cell.label for cell in field.rows[0].cells]
    with pytest.raises(EditError, match="aft and forward are the same direction: give one") as refusal:
        put(POINTS, "points.axle_too", "1", 0, labels.index("forward"))
    assert refusal.value.suggestion == "empty aft first, or write the figure there"
    marked = edited(POINTS, ("axle_too: {from: axle, aft: 2}",
                             "axle_too: {from: axle, aft: {value: unknown, mark: measured}}"))  # fmt: skip
    after = put(marked, "points.axle_too", "1", 0, labels.index("forward"))
    assert at(yaml_of(after), "points.axle_too") == {"from": "axle", "forward": 1}
    whole = edited(POINTS, ("axle_too: {from: axle, aft: 2}",
                            "axle_too: {value: {from: axle, aft: unknown}, mark: assumed}"))  # fmt: skip
    after = put(whole, "points.axle_too", "1", 0, labels.index("forward"))
    assert at(yaml_of(after), "points.axle_too.value") == {"from": "axle", "forward": 1}


def test_another_place_to_measure_from_keeps_the_point():
    text = turned(TEXT, CORNER, BELOW, 1, "rigid")
    # by hand: [9.0, -11.6, -5.2] less left_cylinder.outlet, [13.1, -7.5, 3.0]
    after = turned(text, CORNER, FROM + "left_cylinder.outlet", 1, "rigid")
    assert new_lines(TEXT, after) == ["- {from: left_cylinder.outlet, forward: 4.1, left: 4.1, down: 8.2}"]


def test_what_is_not_known_yet_is_to_be_measured_from_there():
    text = edited(POINTS, ("  nowhere: unknown", "  nowhere: unknown   # a remark"))
    after = turned(text, "points.nowhere", FROM + "axle_too")
    assert new_lines(text, after) == [
        "nowhere: {from: axle_too, aft: unknown, right: unknown, up: unknown}  # a remark",
    ]
    _, field = field_at(after, "points.nowhere")
    assert field.unknown
    again = turned(after, "points.nowhere", COORDINATES)
    assert re.sub(r" +# a remark", "  # a remark", again) == text.replace("   # a remark", "  # a remark")
    some = put(after, "points.nowhere", "2 1/4", 0, 0)
    # by hand: axle_too is at [3, -2, 1/2]
    back = yaml_of(turned(some, "points.nowhere", COORDINATES))
    assert at(back, "points.nowhere") == ["5-1/4", "unknown", "unknown"]


def test_a_figure_that_hangs_in_the_air_is_not_thrown_away():
    text = edited(POINTS, ("  axle_too: {from: axle, aft: 2}", "  axle_too: {from: nowhere, aft: 2}"))
    with pytest.raises(EditError, match="nowhere is not measured yet"):
        turned(text, "points.axle_too", COORDINATES)
    after = turned(text, "points.axle_too", FROM + "axle")  # measured from the wrong place: the figures stay
    assert at(yaml_of(after), "points.axle_too") == {"from": "axle", "aft": 2}
    with pytest.raises(EditError, match="nowhere is not measured yet"):
        turned(POINTS, "points.axle", FROM + "nowhere")


def test_a_point_never_hangs_on_itself():
    _, field = field_at(POINTS, "points.axle")
    assert FROM + "axle" not in field.rows[0].ways
    assert FROM + "axle_too" not in field.rows[0].ways  # which hangs on it
    assert FROM + "nowhere" in field.rows[0].ways
    _, field = field_at(TEXT, "components.left_cylinder.ports.outlet.seat")
    assert FROM + "right_cylinder.outlet" not in field.rows[0].ways  # its own image


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("[5 to 6, -2, 1/2]", {"from": "axle", "aft": "4 to 5"}),
        ("[3 1/2 +/- 1/8, -2, 0]", {"from": "axle", "aft": "2-3/8 to 2-5/8", "down": "1/2"}),
        ("{value: [1, -4, 1/2], mark: assumed}", {"value": {"from": "axle", "left": 2}, "mark": "assumed"}),
        ("[about 3, -2, 0.5]", {"from": "axle", "aft": {"value": 2, "mark": "estimate"}}),
        ("[unknown, -2, 0.5]", {"from": "axle", "aft": "unknown"}),
    ],
)
def test_ranges_marks_and_what_is_not_known_come_along(words, said):
    text = edited(POINTS, ("  axle_too: {from: axle, aft: 2}", f"  axle_too: {words}"))
    after = turned(text, "points.axle_too", FROM + "axle")
    assert at(yaml_of(after), "points.axle_too") == said
    back = turned(after, "points.axle_too", COORDINATES)
    before, now = (read_text(each, "a.yaml").aircraft.points[1].position for each in (text, back))
    for old, new in zip(before.coordinates, now.coordinates, strict=True):
        assert new.mark >= old.mark
        assert (new.span is None) == (old.span is None)
        if old.span is not None:
            assert new.span == pytest.approx(old.span, abs=1e-9)


def test_a_place_that_is_a_range_is_no_place_to_measure_from():
    text = edited(POINTS, ("  axle: [1, -2, 1/2]", "  axle: [1 to 2, -2, 1/2]"),
                  ("  axle_too: {from: axle, aft: 2}", "  axle_too: [3, 3, 3]"))  # fmt: skip
    with pytest.raises(EditError, match="range"):
        turned(text, "points.axle_too", FROM + "axle")


def test_how_sure_a_chain_is():
    reading, field = field_at(POINTS, "points.axle_too")
    after = with_mark(reading, field, "assumed")
    assert at(yaml_of(after), "points.axle_too") == {"value": {"from": "axle", "aft": 2}, "mark": "assumed"}
    reading, field = field_at(after, "points.axle_too")
    assert field.rows[0].start == "axle"
    assert with_mark(reading, field, "measured") == POINTS


SIXTEENTHS = st.integers(-16 * 40, 16 * 40).map(lambda n: Fraction(n, 16))
PLACES = st.tuples(SIXTEENTHS, SIXTEENTHS, SIXTEENTHS)


def mixed(number):
    """As it is said: 3-1/16."""
    whole, part = divmod(abs(number), 1)
    sign = "-" if number < 0 else ""
    if not part:
        return f"{sign}{whole}"
    return f"{sign}{whole}-{part}" if whole else f"{sign}{part}"


def number(said):
    text = str(said)
    sign, text = (-1, text[1:]) if text.startswith("-") else (1, text)
    return sign * sum((Fraction(each) for each in text.split("-")), Fraction(0))


@settings(max_examples=40, deadline=None)
@given(PLACES, PLACES)
def test_coordinates_less_the_start_are_the_ways_and_back_again(start, point):
    rows = [", ".join(map(mixed, each)) for each in (start, point)]
    text = "firmpedal: 1\naircraft: {name: A, gear: tailwheel, brakes: toe}\n"
    text += "units: {length: in, fractions: 16}\n"
    text += f"points:\n  begin: [{rows[0]}]\n  there: [{rows[1]}]   # kept\n"
    after = turned(text, "points.there", FROM + "begin")
    assert after.splitlines()[:-1] == text.splitlines()[:-1]
    assert after.endswith(" # kept\n")
    ways = {key: number(words) for key, words in yaml_of(after)["points"]["there"].items() if key != "from"}
    gone = [
        ways.get(plus, Fraction(0)) - ways.get(minus, Fraction(0))
        for plus, minus in (("aft", "forward"), ("right", "left"), ("up", "down"))
    ]
    assert gone == [end - begin for begin, end in zip(start, point, strict=True)]
    assert all(way >= 0 for way in ways.values())
    back = turned(after, "points.there", COORDINATES)
    assert [number(each) for each in yaml_of(back)["points"]["there"]] == list(point)
    assert back.endswith(" # kept\n")


# -- shapes and movements ---------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("place", "option"),
    [
        ("zones.left_brake_heat.where", None),
        ("panels.cabin_floor.where", None),
        ("keep clear of.left_disc.where", None),
    ],
)
def test_every_shape_can_be_chosen_and_is_then_to_be_measured(place, option):
    text = edited(TEXT, ("bench:\n", "keep clear of: {left_disc: {kind: disc, where: unknown}}\n\nbench:\n"))
    _, field = field_at(text, place, option)
    ways = field.rows[0].ways
    assert ways[0] == NOT_KNOWN
    assert len(ways) >= 4
    for way in ways:
        after = turned(text, place, way, 0, option)
        _, field = field_at(after, place, option)
        assert field.rows[0].way == way
        assert field.unknown
        assert len(new_lines(text, after)) <= 1
        for number, row in enumerate(field.rows):  # each piece of it can be filled in
            for n, cell in enumerate(row.cells):
                if cell.words == "unknown" and cell.label != "axis":
                    assert put(after, place, "3 1/2", number, n, option) != after
    with pytest.raises(EditError):
        turned(text, place, "a cloud", 0, option)


def test_the_pieces_of_a_shape_have_their_own_cells():
    after = put(TEXT, "zones.left_brake_heat.where", "7", 2, 0)
    assert new_lines(TEXT, after) == [
        "where: {ball: {value: [7.0, -35.0, -31.5], mark: assumed}, radius: {value: 7, mark: assumed}}",
    ]
    after = put(TEXT, "zones.left_leg_fairing.where", "-27 1/2", 1, 2)
    assert new_lines(TEXT, after) == ["where: {box: [[2.0, -33.4, -27 1/2], [12.0, -10.0, -5.0]]}"]
    after = turned(TEXT, "zones.left_leg_fairing.where", FROM + "left_cylinder.outlet", 1)
    assert at(yaml_of(after), "zones.left_leg_fairing.where.box.1") == {
        "from": "left_cylinder.outlet", "forward": 11.1, "left": 25.9, "down": 31,
    }  # fmt: skip


def test_a_movement_is_straight_or_a_swing_or_none():
    place = "moving.left_wheel.gear"
    _, field = field_at(TEXT, place)
    assert [(row.label, row.way) for row in field.rows] == [("when on jacks", NOT_KNOWN)]
    straight = turned(TEXT, place, STRAIGHT)
    assert at(yaml_of(straight), f"{place}.on jacks") == ["unknown"] * 3
    filled = put(straight, place, "-1 1/2", 1, 2)
    assert at(yaml_of(filled), f"{place}.on jacks") == ["unknown", "unknown", "-1 1/2"]
    assert "# how far the leg springs out" in filled
    swing = turned(filled, place, SWING)
    assert at(yaml_of(swing), f"{place}.on jacks") == dict.fromkeys(("about", "axis", "swing"), "unknown")
    swing = put(swing, place, "forward", 2, 0)
    swing = put(swing, place, "4", 2, 1)
    swing = turned(swing, place, FROM + "left_caliper.inlet", 1)
    assert at(yaml_of(swing), f"{place}.on jacks.swing") == 4
    with pytest.raises(EditError, match="nothing would move it"):
        turned(TEXT, place, STILL)
    other = "moving.left_pedal_swing.gear"
    moved = turned(TEXT, other, NOT_KNOWN)
    assert at(yaml_of(moved), other) == {"on jacks": "unknown"}
    assert yaml_of(turned(moved, other, STILL)) == yaml_of(TEXT)
    rudder = turned(TEXT, "moving.left_pedal_swing.rudder", STRAIGHT)
    assert at(yaml_of(rudder), "moving.left_pedal_swing.rudder") == ["unknown"] * 3


def test_a_copy_is_changed_where_it_comes_from():
    _, field = field_at(TEXT, "zones.right_brake_heat.where")
    assert all(row.kind is Kind.VALUE for row in field.rows)
    reading = read_text(TEXT, "a.yaml")
    form = form_of(reading, thing_at(reading, "components.right_cylinder"))
    assert not any(row.ways for each in form.all_fields() if each.copied for row in each.rows)


# -- states -----------------------------------------------------------------------------------------


def test_the_state_in_which_something_was_measured_has_a_cell_for_each_state():
    place = "components.left_caliper.measured in"
    _, field = field_at(TEXT, place)
    assert [(cell.label, cell.choices) for cell in field.rows[0].cells] == [
        ("rudder", ()), ("pads", ("new", "worn")), ("gear", ("on wheels", "on jacks")),
    ]  # fmt: skip
    after = put(TEXT, place, "on jacks", 0, 2)
    assert at(yaml_of(after), place) == {"gear": "on jacks"}
    after = put(after, place, "worn", 0, 1)
    assert at(yaml_of(after), place) == {"gear": "on jacks", "pads": "worn"}
    after = put(after, place, "", 0, 2)
    assert at(yaml_of(after), place) == {"pads": "worn"}
    assert yaml_of(put(after, place, "", 0, 1)) == yaml_of(TEXT)


def test_positions_are_written_with_commas_and_chosen_by_name():
    after = put(TEXT, "states.gear.values", "on wheels, on jacks, on trestles")
    assert yaml_of(after)["states"]["gear"]["values"] == ["on wheels", "on jacks", "on trestles"]
    _, field = field_at(after, "states.gear.values")
    assert field.rows[0].cells[0].words == "on wheels, on jacks, on trestles"
    _, field = field_at(after, "states.gear.measured at")
    assert field.choices == ("on wheels", "on jacks", "on trestles")
    with pytest.raises(EditError, match="on jacks"):  # the wheel is moved there
        put(after, "states.gear.values", "on wheels, on trestles")
