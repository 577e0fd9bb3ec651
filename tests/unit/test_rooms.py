"""The room of fittings: where it lies, worked out by hand from the seats and the catalogue's lengths."""

from __future__ import annotations

from math import sqrt

import pytest
from evaluated import example

from firmpedal.export.rooms import fitting_rooms, nut_rooms
from firmpedal.pipeline import evaluate_text
from texts import edited, small

INCH = 0.0254


def rooms(option="rigid"):
    found, _ = fitting_rooms(example(option))
    return {room.name: room for room in found}


def inches(room):
    return [tuple(one / INCH for one in point) for point in room.path]


def test_a_straight_body_goes_back_from_the_seat_into_the_port():
    # the outlet faces forward, so the port lies aft of the seat; at most 1.241 in of body
    (seat, back) = inches(rooms()["room_of_AN816-4D_at_left_cylinder.outlet_estimate"])
    assert seat == pytest.approx((13.1, -7.5, 3.0))
    assert back == pytest.approx((13.1 + 1.241, -7.5, 3.0))


def test_an_elbow_goes_round_its_corner():
    # the arm is [0.8, -0.2, -1.2] made one long, the leg 0.89 in by its middle; the port faces right
    seat, corner, back = inches(rooms()["room_of_AN822-4D_at_left_caliper.inlet_estimate"])
    arm = [one / sqrt(0.8**2 + 0.2**2 + 1.2**2) for one in (0.8, -0.2, -1.2)]
    assert seat == pytest.approx((9.4, -32.6, -31.4))
    # the arm leans 0.2 towards the port, so the reader or the fit may square it; the leg's length stays
    assert sum((a - b) ** 2 for a, b in zip(seat, corner, strict=True)) == pytest.approx(0.89**2, rel=1e-6)
    assert corner == pytest.approx([s - 0.89 * a for s, a in zip(seat, arm, strict=True)], abs=0.15)
    assert back == pytest.approx((corner[0], corner[1] - 0.77, corner[2]))


def test_a_bulkhead_elbow_turns_on_the_axis_through_its_hole():
    path = inches(rooms()["room_of_AN833-4D_at_left_floor_estimate"])
    assert path == [pytest.approx(p) for p in ((7.0, -9.0, -0.9), (7.0, -9.0, 1.3), (7.6, -9.0, 1.3))]


def test_a_room_is_as_wide_as_the_corners_of_the_widest_flats():
    # 0.44 in over flats at most; over corners 2 / sqrt 3 of it
    room = rooms()["room_of_AN822-4D_at_left_caliper.inlet_estimate"]
    assert 2 * room.radius / INCH == pytest.approx(0.44 * 2 / sqrt(3), abs=1e-4)


def test_a_nut_starts_at_the_seat_and_goes_along_the_line():
    line = next(line for line in example("rigid").laid if line.name == "left_leg")
    (first, _), without = nut_rooms(example("rigid"), line)
    assert without == ()
    assert first.name == "room_of_nut_left_leg_from_estimate"
    assert inches(first) == [pytest.approx((7.0, -9.0, -0.9)), pytest.approx((7.0, -9.0, -0.9 - 0.666))]


def test_the_nut_of_a_bulkhead_elbow_lies_on_the_panel_on_the_side_of_the_leg_through_it():
    # the floor is .095 in thick with its middle at up 0; AN924-4 is .250 in thick; the tube goes down from it
    room = rooms()["room_of_AN924-4D_at_left_floor"]
    assert inches(room) == [pytest.approx((7.0, -9.0, -0.0475)), pytest.approx((7.0, -9.0, -0.2975))]
    assert 2 * room.radius / INCH == pytest.approx(
        0.688 * 2 / sqrt(3), abs=1e-4
    )  # both figures of AN924 read


def test_a_nut_whose_panel_has_no_place_asks_for_the_hole():
    _, left_out = fitting_rooms(example("rigid"))
    assert left_out == tuple(
        f"AN924-4D at {name}: where the panel sits along it is not known. "
        f"Measure where the middle of the hole of {name} is"
        for name in ("left_axle", "right_axle")
    )


def test_a_nut_without_a_place_says_what_to_measure():
    text = edited(small("quillfen"), ("[10, 0, -6]", "unknown"))
    (line,) = evaluate_text(text).laid
    nuts, left_out = nut_rooms(evaluate_text(text), line)
    assert nuts == ()
    assert left_out[0].startswith("AN818-4D at run.from: where it lies is not known. Measure ")
