"""Where the bodies of joints stand: rows of them in a port, elbows, tees and free unions, by hand.

Lengths are the catalogue's: AN816-4 1.141 +/- .10 in, AN910-1 .70 to 1.00 in, AN822-4 legs .67 and .89
+/- .10 in. A 1/8-27 taper thread goes in .1615 in by hand (ASME B1.20.1) and 1-1/2 to 3 turns of 1/27 in
by the wrench.
"""

from __future__ import annotations

from math import cos, radians, sin

import pytest

from firmpedal.export.rooms import fitting_rooms
from firmpedal.model.part import Category
from firmpedal.pipeline import evaluate_text
from firmpedal.units import from_unit
from texts import edited, example, small

INCH = from_unit(1, "in")
TO = "    to: caliper.inlet\n"
IN_LEAST, IN_MOST = 0.1615 + 1.5 / 27, 0.1615 + 3 / 27


def rooms(text, option=None):
    """Every room by its name, as paths in inches; and what is left out."""
    found, left_out = fitting_rooms(evaluate_text(text, "text", option))
    paths = {
        room.name: [[tuple(one / INCH for one in point) for point in path] for path in room.paths]
        for room in found
    }
    return paths, left_out


def in_caliper(words, *edits):
    return rooms(edited(small("quillfen"), (TO, f"{TO}    to fitting: {words}\n"), *edits))


def near(*points):
    return [pytest.approx(point, abs=1e-3) for point in points]


class TestRows:
    """Quillfen's caliper faces forward, its seat is at 16 aft: the port lies aft of it."""

    def test_an_adapter_begins_where_the_thread_of_the_fitting_ends(self):
        found, left_out = in_caliper("[AN910-1D, AN816-4D]")
        assert left_out == ()
        assert found["room_of_AN816-4D_at_caliper.inlet_estimate"] == [near((16, 0, -6), (17.241, 0, -6))]
        first, last = 17.041 - IN_MOST, 17.241 - IN_LEAST + 1.00
        assert found["room_of_AN910-1D_at_caliper.inlet_estimate"] == [near((first, 0, -6), (last, 0, -6))]

    def test_an_adapter_behind_an_elbow_stands_on_the_axis_of_the_port(self):
        via, leaves = ("      - [10, 0, -6]\n", "      - [10, 0, -2]\n      - [16, 0, -2]\n"), "arm: up, "
        port = ("faces: forward, seat: [16", f"faces: forward, {leaves}seat: [16")
        found, left_out = in_caliper("[AN910-1D, AN822-4D]", via, port)
        assert left_out == ()
        elbow = found["room_of_AN822-4D_at_caliper.inlet_estimate"]
        assert elbow == [near((16, 0, -6), (16, 0, -6.89), (16.77, 0, -6.89))]
        # .10 in of the stem are open either way, and what the thread leaves open
        (path,) = found["room_of_AN910-1D_at_caliper.inlet_estimate"]
        assert all((right, up) == pytest.approx((0, -6.89)) for _, right, up in path)
        assert path[0][0] <= 16 + 0.57 - IN_MOST
        assert path[1][0] >= 16 + 0.77 - IN_LEAST + 1.00

    def test_two_elbows_may_point_anywhere(self):
        found, left_out = in_caliper("[AN914-1D, AN822-4D]")
        assert list(found) == ["room_of_AN816-4D_at_cylinder.outlet_estimate"]
        assert len(left_out) == 2
        assert all("more than one fitting turns the line. Measure which way each" in one for one in left_out)

    def test_an_elbow_without_an_arm_points_as_its_line_leaves(self):
        # the line comes straight down onto the seat, the port faces forward
        via = ("      - [10, 0, -6]\n", "      - [10, 0, -2]\n      - [16, 0, -2]\n")
        found, _ = in_caliper("AN822-4D", via)
        elbow = found["room_of_AN822-4D_at_caliper.inlet_estimate"]
        assert elbow == [near((16, 0, -6), (16, 0, -6.89), (16.77, 0, -6.89))]

    def test_a_port_without_a_way_asks_for_it(self):
        _, left_out = in_caliper("AN816-4D", ("faces: forward", "faces: unknown"))
        assert left_out == (
            (
                "AN816-4D at caliper.inlet: which way the port points is not known. "
                "Measure which way caliper.inlet faces"
            ),
        )

    def test_from_the_face_outwards_where_the_seat_is_not_known(self):
        at = ("faces: forward, seat: [16, 0, -6]", "faces: forward, at: [16, 0, -6]")
        found, left_out = in_caliper("[AN910-1D, AN816-4D]", at)
        assert left_out == ()
        (inner,) = found["room_of_AN910-1D_at_caliper.inlet_estimate"]
        assert inner[1] == pytest.approx((16 + IN_MOST, 0, -6), abs=1e-3)
        assert inner[0] == pytest.approx((16 + IN_LEAST - 1.00, 0, -6), abs=1e-3)
        (outer,) = found["room_of_AN816-4D_at_caliper.inlet_estimate"]
        assert outer[0] == pytest.approx((16 + 2 * IN_LEAST - 1.00 - 1.241, 0, -6), abs=1e-3)

    def test_a_plug_stands_in_its_port(self):
        # AN913-1: the pipe plug; its head stays outside by its length less the thread
        port = "      inlet: {thread: 1/8 NPT female, faces: forward, seat: [16, 0, -6]}\n"
        spare = "      spare: {thread: 1/8 NPT female, faces: up, at: [20, 0, -6], closed: yes}\n"
        text = edited(small("quillfen"), (port, port + spare))
        long = part_of(text, "caliper.spare").dimension("overall_length").high / INCH
        found, _ = rooms(text)
        (name,) = [name for name in found if "spare" in name]
        assert found[name] == [near((20, 0, -6 + long - IN_LEAST), (20, 0, -6 - IN_MOST))]


UNION = """bulkheads:
  half: {{through panel: no, {more}sides: {{fore: {{seat: {fore}}}, aft: {{seat: {aft}}}}}}}
"""
TUBE = "made of: tube 5052-O 1/4 x .035, bend radius: 3/4"
TWO_LINES = """lines:
  first: {{from: cylinder.outlet, to: half.fore, {tube}, via: [{first}]}}
  second: {{from: half.aft, to: caliper.inlet, {tube}, via: [{second}]}}
"""


def part_of(text, name):
    """The one part at a joint, or the one body of it."""
    (joint,) = [joint for joint in evaluate_text(text).assembly.joints if joint.name == name]
    return next(part for part in joint.parts if part.category in (Category.FITTING, Category.CAP))


def halved(fore, aft, first, second, more=""):
    text = small("quillfen")
    head = text[: text.index("lines:\n")]
    lines = TWO_LINES.format(first=first, second=second, tube=TUBE)
    return head + UNION.format(fore=fore, aft=aft, more=more) + lines


class TestFreeUnions:
    def test_a_straight_union_lies_between_its_seats(self):
        found, left_out = rooms(halved("[12, 0, -6]", "[13, 0, -6]", "[10, 0, -6]", ""))
        assert left_out == ()
        assert found["room_of_AN815-4D_at_half_estimate"] == [near((12, 0, -6), (13, 0, -6))]

    def test_with_one_seat_it_goes_on_as_the_line_comes(self):
        text = halved("[12, 0, -6]", "unknown", "[10, 0, -6]", "")
        found, _ = rooms(text)
        long = part_of(text, "half").dimension("overall_length").high / INCH
        assert found["room_of_AN815-4D_at_half_estimate"] == [near((12, 0, -6), (12 + long, 0, -6))]

    def test_with_no_seat_both_are_asked_for(self):
        _, left_out = rooms(halved("unknown", "unknown", "[10, 0, -6]", ""))
        assert left_out == (
            "AN815-4D at half: where its ends sit is not known. Measure the seats of both sides of half",
        )

    def test_a_free_elbow_has_its_corner_where_its_lines_point(self):
        # down to [10, 0, -5.1], and on from [10.9, 0, -6]: the corner is at [10, 0, -6]
        text = halved("[10, 0, -5.1]", "[10.9, 0, -6]", "", "", more="form: 90 degrees, ")
        found, left_out = rooms(text)
        assert left_out == ()
        (path,) = found["room_of_AN821-4D_at_half_estimate"]
        assert path == near((10, 0, -5.1), (10, 0, -6), (10.9, 0, -6))

    def test_lines_that_leave_another_way_ask_for_the_panel(self):
        text = halved("[10, 0, -5.1]", "[10.9, 0, -6]", "", "[12, 0, -12]", more="form: 90 degrees, ")
        _, (said,) = rooms(text)
        assert "its lines do not leave it as an elbow of 90 degrees lets them" in said

    def test_lines_that_meet_with_nothing_declared_have_no_place(self):
        text = small("quillfen")
        head = text[: text.index("lines:\n")]
        hose = "made of: hose -4 PTFE braided"
        lines = (
            f"lines:\n  first: {{from: cylinder.outlet, to: second.from, {hose}}}\n"
            f"  second: {{from: first.to, from fitting: AN815-4D, to: caliper.inlet, {hose}}}\n"
        )
        _, left_out = rooms(head + lines)
        assert left_out == (
            (
                "AN815-4D at where first meets second: nobody has said where the two lines meet. "
                "Measure where it is: add it as a bulkhead with through panel set to no, and a seat on each "
                "side"
            ),
        )


class TestHoles:
    @pytest.mark.parametrize(("turn", "up"), [(90, -1.7), (45, -1.7 + 0.6)])
    def test_an_elbow_turns_on_the_axis_of_its_hole(self, turn, up):
        # the leg aside is .6 in beside the axis; at 45 degrees its corner stands as much before its foot
        more = f"form: {turn} degrees, at: [0, 0, 0], normal: up, "
        text = halved("[0, 0, 1]", "[0.6, 0, -1.7]", "", "", more=more).replace("through panel: no, ", "")
        found, _ = rooms(text.replace("form:", "thickness: 0.1, form:"))
        (name,) = [name for name in found if "at_half" in name and "AN924" not in name]
        assert found[name] == [near((0, 0, 1), (0, 0, up), (0.6, 0, -1.7))]
        assert cos(radians(turn)) * 0.6 == pytest.approx(sin(radians(turn)) * (up + 1.7))
        # the long leg goes up through the panel of .1 in: its nut of .25 in lies on top
        assert found["room_of_AN924-4D_at_half"] == [near((0, 0, 0.05), (0, 0, 0.3))]

    def test_without_the_hole_either_leg_may_stand_in_it(self):
        found, left_out = rooms(example("oatmere"))
        assert found["room_of_AN833-4D_at_left_belly_either_way_estimate"] == [
            near((46, -15, -1.9), (46, -15, -3.6), (46.6, -15.6, -3.6)),
            near((46.6, -15.6, -3.6), (46.6, -15.6, -1.9), (46, -15, -1.9)),
        ]
        assert any("AN924-4D at left_belly" in one and "Measure where the middle" in one for one in left_out)

    def test_a_straight_union_may_have_its_nut_on_either_side(self):
        # the firewall is .020 in thick, AN924-4 .250 in
        found, _ = rooms(example("oatmere"))
        assert found["room_of_AN924-4_at_left_firewall_either_side"] == [
            near((0.01, -1, 20), (0.26, -1, 20)),
            near((-0.01, -1, 20), (-0.26, -1, 20)),
        ]

    def test_a_panel_of_unknown_thickness_asks_for_it(self):
        text = edited(example("oatmere"), ("thickness: {value: 0.020, mark: assumed}", "thickness: unknown"))
        _, left_out = rooms(text)
        assert any(
            "AN924-4 at left_firewall" in one and "Measure the thickness of the panel" in one
            for one in left_out
        )


def test_a_tee_has_a_leg_to_each_seat_from_the_middle_of_its_run():
    caliper = small("quillfen").partition("  caliper:\n")[2].partition("pedals:\n")[0]
    other = caliper.replace("[16, 0, -6]", "[16, 4, -6]")
    text = edited(small("quillfen"), ("pedals:\n", f"  other:\n{other}pedals:\n"))
    head = text[: text.index("lines:\n")]
    sides = "in: {seat: [10, 0, -5.1]}, one: {seat: [10.9, 0, -6]}, two: {seat: [10, 0, -6.9]}"
    hose = "made of: hose -4 PTFE braided"
    lines = (
        f"bulkheads:\n  tee: {{through panel: no, sides: {{{sides}}}}}\nlines:\n"
        f"  first: {{from: cylinder.outlet, to: tee.in, {hose}}}\n"
        f"  second: {{from: tee.one, to: caliper.inlet, {hose}}}\n"
        f"  third: {{from: tee.two, to: other.inlet, {hose}}}\n"
    )
    found, _ = rooms(head + lines)
    middle = (10, 0, -6)
    ends = ((10, 0, -5.1), (10.9, 0, -6), (10, 0, -6.9))
    assert found["room_of_AN824-4D_at_tee_estimate"] == [near(end, middle) for end in ends]
