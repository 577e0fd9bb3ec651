"""The picture of the lines as plain data: what is where, which way a drag goes, what is written."""

from __future__ import annotations

import json

import numpy as np
import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.project.corners import Tape
from firmpedal.units import from_unit
from firmpedal.web.space.figures import not_placed, said_of
from firmpedal.web.space.plane import dragged, facing, middle, stepped
from firmpedal.web.space.pose import pose_json, pose_of, scene_json, setting_of
from firmpedal.web.space.scene import scene_of
from firmpedal.web.space.states import travelled
from texts import edited, example

INCH = 0.0254  # m, exact by definition


def inches(*numbers):
    return tuple(number * INCH for number in numbers)


def pictured(name, option=None, *edits):
    evaluation = evaluate_text(edited(example(name), *edits), f"{name}.yaml", option)
    return evaluation, scene_of(evaluation)


@pytest.fixture(scope="module")
def rigid():
    return pictured("brindlewick", "rigid")


@pytest.fixture(scope="module")
def oatmere():
    return pictured("oatmere")


def test_a_tube_runs_from_seat_to_seat_along_its_bends(rigid):
    evaluation, scene = rigid
    way = scene.way("lines.left_leg")
    assert way.points[0] == pytest.approx(inches(7.0, -9.0, -0.9))  # as the file has its two seats
    assert way.points[-1] == pytest.approx(inches(6.6, -33.4, -30.2))
    assert [spot.point for spot in way.corners] == [
        pytest.approx(inches(*corner)) for corner in ((7, -9, -3.2), (9, -11.6, -5.2), (5.6, -32.2, -28.6))
    ]
    assert way.radius == pytest.approx(INCH / 8)  # tube of 1/4 in
    # Chords of a sampled curve are a little shorter than the curve, and never longer.
    chords = np.linalg.norm(np.diff(way.points, axis=0), axis=1).sum()
    assert chords == pytest.approx(way.stations[-1], rel=2e-3)
    assert chords < way.stations[-1]
    # No corner is touched: bends cut them by a part of their radius.
    for spot in way.corners:
        off = np.linalg.norm(way.points - np.array(spot.point), axis=1).min()
        assert 0 < off < 0.75 * INCH
    assert len(way.clamps) == len(evaluation.laid[1].supports.stations)


def test_hose_and_plastic_follow_the_way_in_the_file():
    for name, option, line in (("brindlewick", None, "left_line"), ("brindlewick", "rigid", "left_tail")):
        _, scene = pictured(name, option)
        way = scene.way(f"lines.{line}")
        assert [tuple(point) for point in way.points[1:-1]] == [spot.point for spot in way.corners]
    assert {each.kind for each in scene.ways} == {"hose", "tube"}


def test_the_other_side_is_the_mirror_image(rigid):
    _, scene = rigid
    left, right = (scene.way(f"lines.{side}_leg").points for side in ("left", "right"))
    assert right == pytest.approx(left * np.array([1, -1, 1]))


def test_every_body_is_where_the_file_has_it(oatmere):
    _, scene = oatmere
    disc = scene.thing("keep clear of.left_disc").solids[0]
    assert (disc.shape, disc.one, disc.radius, disc.thickness) == (
        "disc", pytest.approx(inches(49, -41, -27)), pytest.approx(3.5 * INCH), pytest.approx(0.25 * INCH),
    )  # fmt: skip
    assert np.abs(disc.other) == pytest.approx([0, 1, 0])  # axis: right
    leaf = scene.thing("keep clear of.left_leaf").solids[0]
    assert (leaf.shape, leaf.one) == ("bar", pytest.approx(inches(47, -15.5, -4.6)))
    floor = scene.thing("panels.cabin_floor").solids[0]
    assert (floor.one[2], floor.other[2]) == (pytest.approx(-0.02 * INCH), pytest.approx(0.02 * INCH))
    fire = scene.thing("zones.engine_side").solids[0]  # everything forward of the firewall, cut off
    assert fire.other[0] == 0
    assert fire.one[0] == scene.room.low[0] < 0
    heat = scene.thing("zones.left_brake_heat").solids[0]
    assert heat.one == heat.other == pytest.approx(inches(49.5, -40, -27.5))
    low, high = np.array(scene.room.low), np.array(scene.room.high)
    assert all(np.all((low < point) & (point < high)) for way in scene.ways for point in way.points)


def test_what_has_no_place_is_named_and_not_drawn():
    old, more = "          - [9.0, -11.6, -5.2]\n", "          - [5.6"
    evaluation, scene = pictured("brindlewick", "rigid", (old + more, "          - unknown\n" + more))
    assert scene.way("lines.left_leg") is None
    assert not_placed(evaluation.aircraft, scene) == ("left_leg", "right_leg")
    assert said_of(evaluation, scene, "lines.left_leg") is None


@pytest.mark.parametrize(
    ("place", "key"),
    [
        ("lines.left_leg", "lines.left_leg"),
        ("lines.left_leg.clamps", "lines.left_leg"),
        ("lines.left_leg.via.2.1", "lines.left_leg.via.2"),
        ("components.left_caliper.ports.inlet", "components.left_caliper"),
        ("zones.left_brake_heat", "zones.left_brake_heat"),
        ("pedals.left_pedal_brake", ""),
        ("lines", ""),
        ("", ""),
    ],
)
def test_a_finding_leads_to_what_its_place_belongs_to(rigid, place, key):
    assert rigid[1].nearest_key(place) == key


def test_every_finding_about_a_line_or_a_body_can_be_opened(oatmere):
    evaluation, scene = oatmere
    heads = {"lines", "keep clear of", "bulkheads", "panels", "components", "zones"}
    places = [each.place for each in (*evaluation.findings, *evaluation.not_shown)]
    assert places
    assert all(scene.nearest_key(place) for place in places if place.partition(".")[0] in heads)


def test_whatever_can_be_chosen_has_a_name_and_figures(rigid, oatmere):
    for evaluation, scene in (rigid, oatmere):
        for key in scene.keys:
            told = said_of(evaluation, scene, key)
            assert told is not None, key
            assert told.name, key
            assert told.rows, key


def test_a_line_says_its_length_its_bends_and_what_it_keeps_from(oatmere):
    evaluation, scene = oatmere
    rows = dict(said_of(evaluation, scene, "lines.left_run").rows)
    assert rows["Bends"] == "4"
    assert rows["Length along it"] == evaluation.display.value(evaluation.laid[4].developed_length)
    assert rows["Kept from left_leaf"].endswith(" in")
    assert dict(said_of(evaluation, scene, "lines.left_gear").rows)["Kept from left_disc"] == "unknown"


def test_a_state_moves_the_end_at_the_pedal_and_not_the_other(rigid):
    """The pedal turns 17 degrees about a point of its axis, forward of neutral on the left: by hand."""
    evaluation, scene = rigid
    pose = pose_of(evaluation, scene, (("rudder", 1.0),), "")
    points, still = pose.lines["lines.left_pedal"], scene.way("lines.left_pedal").points
    arm, angle = np.array([13.1 - 15.0, 3.0 - 1.0]), np.radians(17)  # aft and up, from the pivot
    # About an axis to the left by the right hand, up goes aft to forward: aft' = aft cos - up sin.
    turned = np.array(
        [arm[0] * np.cos(angle) - arm[1] * np.sin(angle), arm[0] * np.sin(angle) + arm[1] * np.cos(angle)]
    )
    assert points[0] == pytest.approx(inches(15.0 + turned[0], -7.5, 1.0 + turned[1]))
    assert points[-1] == pytest.approx(still[-1])
    assert pose.moved
    # The body at the end goes along, and keeps its shape.
    matrix = pose.bodies["components.left_cylinder"]
    assert (matrix @ [*still[0], 1])[:3] == pytest.approx(points[0])
    assert matrix[:3, :3] @ matrix[:3, :3].T == pytest.approx(np.eye(3))


def test_as_measured_nothing_is_moved(rigid, oatmere):
    for evaluation, scene in (rigid, oatmere):
        for setting in ((), (("rudder", 0.0),)):
            pose = pose_of(evaluation, scene, setting, "")
            assert not pose.moved
            assert pose.bodies == {}
            assert pose.nose_up == 0
            assert all(pose.lines[way.key] == pytest.approx(way.points) for way in scene.ways)


def test_a_movement_that_is_not_known_is_named_and_not_shown(rigid):
    evaluation, scene = rigid
    pose = pose_of(evaluation, scene, (("gear", "on jacks"),), "")
    assert not pose.moved
    assert {item.place for item in pose.missing} == {
        "moving.left_wheel.gear.on jacks", "moving.right_wheel.gear.on jacks",
    }  # fmt: skip
    assert pose_of(evaluation, scene, (), "").missing == ()


def test_an_attitude_tilts_the_picture_and_marks_where_air_stays():
    evaluation, scene = pictured("fennimoss")
    assert pose_of(evaluation, scene, (), "").high == ()
    pose = pose_of(evaluation, scene, (), "parked")
    assert pose.nose_up == pytest.approx(evaluation.aircraft.attitudes[1].nose_up.middle) != 0
    traps = [each for each in evaluation.results.heights.traps if "parked" in dict(each.depths)]
    assert len(pose.high) == len(traps) == 4
    for key, point, words in pose.high:
        # It is the top of the line there: both neighbours stand lower in that attitude.
        up = scene.way(key).points @ [-np.sin(pose.nose_up), 0, np.cos(pose.nose_up)]
        at = int(np.argmin(np.linalg.norm(scene.way(key).points - point, axis=1)))
        assert up[at] >= max(up[at - 1], up[at + 1])
        assert "air stays" in words


def test_states_that_are_gone_are_left_out(oatmere):
    states = oatmere[0].aircraft.states
    assert setting_of({"gear": "on jacks", "rudder": 0.5, "flaps": 1.0}, states) == (
        ("rudder", 0.5), ("gear", "on jacks"),
    )  # fmt: skip


def test_the_browser_gets_the_same_figures(oatmere):
    evaluation, scene = oatmere
    told = json.loads(scene_json(scene))
    pose = json.loads(pose_json(pose_of(evaluation, scene, (("rudder", 1.0),), "taxi")))
    assert [each["key"] for each in told["lines"]] == [way.key for way in scene.ways]
    assert len(told["things"]) == len(scene.things)
    assert told["lines"][4]["points"][0] == pytest.approx(scene.way("lines.left_run").points[0], abs=1e-6)
    moved = np.array(pose["things"]["components.pilot_left"]).reshape(4, 4)  # column by column
    assert moved[3] == pytest.approx([*inches(-1.5, 0, 0), 1], abs=1e-6)  # +1 is left pedals forward


@pytest.mark.parametrize(
    ("view", "axis"),
    [((0, 1, 0), 1), ((1, 0, 0), 0), ((0, 0, -1), 2), ((0.75, 1, -0.6), 1), ((0.8, 0.1, -0.7), 0)],
)  # fmt: skip
def test_the_plane_that_faces_the_viewer_best(view, axis):
    assert facing(view) == axis


def test_a_drag_stays_in_its_plane_and_on_the_marks():
    now, by = inches(9.0, -11.6, -5.2), inches(0.8, 3, 0.27)
    to = dragged(now, by, (0, 1, 0), Tape("in"))
    assert to[1] == now[1]  # seen from the left it goes neither left nor right
    assert np.array(to) / INCH * 16 == pytest.approx([round(9.8 * 16), -11.6 * 16, round(-4.93 * 16)])
    assert dragged(now, by, (0, 1, 0), Tape("in"), single=True) == (to[0], now[1], now[2])


def test_a_drag_of_less_than_half_a_mark_moves_nothing():
    now = inches(9.03, -11.6, -5.2)
    assert dragged(now, inches(0.03, 0, 0.03), (0, 1, 0), Tape("in")) == now


def test_a_metric_file_goes_by_millimetres():
    to = dragged((0.1234, 0, 0), (0.01, 0, 0), (0, 0, 1), Tape("mm"))
    assert to[0] == pytest.approx(0.133)


def test_steps_and_middles():
    assert stepped((1.0, 2.0, 3.0), 2, -0.5) == (1.0, 2.0, 2.5)
    assert middle((0.0, 0.0, 2.0), (1.0, 4.0, 0.0)) == (0.5, 2.0, 1.0)
    assert Tape("in").mark == from_unit(1, "in") / 16


@pytest.mark.parametrize(
    ("value", "words"),
    [(0.0, "0 %"), (-0.001, "0 %"), (0.5, "50 %"), (-1.0, "-100 %"), (1.0, "100 %")],
)
def test_a_position_within_a_range_is_said_as_a_share_of_the_travel(value, words):
    assert travelled(value) == f"{words} of full travel"


def test_a_named_position_is_said_by_its_name():
    assert travelled("on jacks") == "on jacks"
