"""What a sound text means: options, mirror images, copies, chains, marks and directions."""

from __future__ import annotations

import pytest
from project_texts import SOUND

from firmpedal.model.aircraft import find
from firmpedal.model.circuit import ClampPlan
from firmpedal.model.component import SideOf
from firmpedal.model.shapes import Ball, Box, HalfSpace, UnknownShape
from firmpedal.model.surroundings import Shift, Swing, UnknownMotion
from firmpedal.project import read_text
from firmpedal.quantity import Answer, Mark
from texts import edited

INCH = 0.0254
VIA = "    via: [[1, -2, 3], [4, -5, 6]]\n"
MIRROR = "mirror: [left_pedal_swing, left_cylinder, left_caliper, left_brake, left_line]\n"


def aircraft(*edits, added="", option=None):
    reading = read_text(edited(SOUND, *edits) + added, option=option)
    assert [(problem.span.line, problem.message) for problem in reading.problems] == []
    return reading.aircraft


def port(craft, name):
    part, _, own = name.partition(".")
    return find(find(craft.components, part).ports, own)


def inches(position):
    return pytest.approx(tuple(coordinate / INCH for coordinate in position.point))


# -- options ------------------------------------------------------------------------------------------

OPTION = """\
options:
  soft:
    components: {left_cylinder: {bore: 3/4}}
    lines: {left_line: {via: [[7, 8, 9]], clamps: none}}
  bare:
    lines: {left_line: removed}
    bench: {bend radius: 1}
"""


def test_option_changes_what_it_says_and_nothing_else():
    written = aircraft(added=VIA + OPTION)
    soft = aircraft(added=VIA + OPTION, option="soft")
    assert (find(written.components, "left_cylinder").bore.middle / INCH) == pytest.approx(0.625)
    cylinder = find(soft.components, "left_cylinder")
    assert cylinder.bore.middle / INCH == pytest.approx(0.75)
    assert cylinder.stroke.middle / INCH == pytest.approx(0.8)
    assert cylinder.pedal == "left_brake"


def test_option_replaces_a_list_as_a_whole():
    soft = aircraft(added=VIA + OPTION, option="soft")
    (line,) = soft.lines
    assert [each.point for each in line.via] == [pytest.approx((7 * INCH, 8 * INCH, 9 * INCH))]
    assert line.clamps is ClampPlan.NONE
    assert len(aircraft(added=VIA + OPTION).lines[0].via) == 2


def test_option_takes_things_out_and_adds_sections():
    bare = aircraft(added=VIA + OPTION, option="bare")
    assert bare.lines == ()
    assert bare.bench.bend_radius.middle / INCH == pytest.approx(1)
    assert not aircraft(added=VIA + OPTION).bench.bend_radius.known


def test_mirror_list_of_an_option_adds_to_that_of_the_file():
    both = MIRROR + "panels:\n  left_wall: {thickness: 1}\noptions:\n  more: {mirror: [left_wall]}\n"
    assert [panel.name for panel in aircraft(added=both).panels] == ["left_wall"]
    more = aircraft(added=both, option="more")
    assert [panel.name for panel in more.panels] == ["left_wall", "right_wall"]
    assert find(more.lines, "right_line") is not None


def test_what_an_option_takes_out_may_stand_on_the_mirror_list():
    text = MIRROR + "options:\n  bare: {lines: {left_line: removed}}\n"
    assert aircraft(added=text, option="bare").lines == ()
    assert len(aircraft(added=text).lines) == 2


# -- mirror images ------------------------------------------------------------------------------------


def test_mirror_image_has_the_other_side_of_everything():
    craft = aircraft(added=VIA + MIRROR)
    seat, image = port(craft, "left_cylinder.outlet").seat, port(craft, "right_cylinder.outlet").seat
    assert inches(seat) == (13.1, -7.5, 3)
    assert inches(image) == (13.1, 7.5, 3)
    assert port(craft, "left_caliper.inlet").faces.vector == (0, 1, 0)
    assert port(craft, "right_caliper.inlet").faces.vector == (0, -1, 0)
    assert port(craft, "right_cylinder.outlet").faces.vector == (-1, 0, 0)
    assert find(craft.components, "right_cylinder").side is SideOf.RIGHT
    assert find(craft.pedals, "right_brake").side is SideOf.RIGHT
    line = find(craft.lines, "right_line")
    assert (line.start, line.finish) == ("right_cylinder.outlet", "right_caliper.inlet")
    assert [inches(point) for point in line.via] == [(1, 2, 3), (4, 5, 6)]
    assert find(craft.components, "right_cylinder").pedal == "right_brake"
    assert find(craft.components, "right_cylinder").moves_with == "right_pedal_swing"


def test_what_is_not_mirrored_keeps_its_name():
    craft = aircraft(added="mirror: [left_cylinder]\n")
    assert find(craft.components, "right_cylinder").pedal == "left_brake"


def test_what_is_written_wins_over_the_mirror_image():
    spare = "  right_cylinder: {bore: 3/4, ports: {outlet: {seat: [1, 2, 3]}}}\n"
    craft = aircraft(("pedals:\n", spare + "pedals:\n"), added=MIRROR)
    image = find(craft.components, "right_cylinder")
    assert image.bore.middle / INCH == pytest.approx(0.75)
    assert image.stroke.middle / INCH == pytest.approx(0.8)
    assert inches(image.ports[0].seat) == (1, 2, 3)
    assert image.ports[0].faces.vector == (-1, 0, 0)


def test_copy_written_for_the_other_side_wins_over_the_mirror_list():
    own = "  right_caliper: {like: left_caliper, shift: {right: 60}}\n"
    craft = aircraft(("pedals:\n", own + "pedals:\n"), added="mirror: [left_caliper]\n")
    assert inches(port(craft, "right_caliper.inlet").seat) == (9.4, 27.4, -31.4)


def test_swing_written_for_the_other_side_is_not_mirrored_again():
    own = "  right_pedal_swing:\n    rudder: {about: [15, 8, 1], axis: left, swing: 10}\n"
    craft = aircraft(("components:\n", own + "components:\n"), added=MIRROR)
    (swing,) = find(craft.moving, "right_pedal_swing").motions
    assert inches(swing.about) == (15, 8, 1)
    assert swing.axis.vector == (0, -1, 0)


def test_chain_written_for_the_other_side_is_not_mirrored_again():
    start = ("seat: [13.1, -7.5, 3]", "seat: {from: left_caliper.inlet, left: 1}")
    own = "  right_cylinder: {ports: {outlet: {seat: {from: right_caliper.inlet, left: 2}}}}\n"
    craft = aircraft(start, ("pedals:\n", own + "pedals:\n"), added=MIRROR)
    assert inches(port(craft, "left_cylinder.outlet").seat) == (9.4, -33.6, -31.4)
    assert inches(port(craft, "right_cylinder.outlet").seat) == (9.4, 30.6, -31.4)


def test_mark_written_for_the_other_side_replaces_the_whole_value():
    own = "  right_cylinder: {bore: {value: 0.7}}\n"
    marked = ("bore: 0.625", "bore: {value: 0.625, mark: assumed, because: worn}")
    craft = aircraft(marked, ("pedals:\n", own + "pedals:\n"), added=MIRROR)
    assert find(craft.components, "left_cylinder").bore.mark is Mark.ASSUMED
    assert find(craft.components, "right_cylinder").bore.mark is Mark.MEASURED


def test_mirror_list_as_keys_gives_any_names():
    craft = aircraft(added="mirror: {left_cylinder: starboard, left_brake: other}\n")
    assert find(craft.components, "starboard").pedal == "other"
    assert find(craft.pedals, "other").side is SideOf.RIGHT


def test_mirror_of_is_the_same_as_the_list():
    own = "  right_caliper: {mirror of: left_caliper}\n"
    craft = aircraft(("pedals:\n", own + "pedals:\n"))
    image = find(craft.components, "right_caliper")
    listed = find(aircraft(added="mirror: [left_caliper]\n").components, "right_caliper")
    assert image.ports == listed.ports
    assert image.side is listed.side is SideOf.RIGHT


def test_zones_are_mirrored_in_place():
    zones = """\
zones:
  left_box: {where: {box: [[1, -9, 3], [2, -4, 5]]}}
  left_ball: {where: {ball: [1, -2, 3], radius: 4}}
  left_half: {where: {right below: -5, up above: 2}}
mirror: [left_box, left_ball, left_half]
"""
    craft = aircraft(added=zones)
    (box,) = find(craft.zones, "right_box").where
    assert isinstance(box, Box)
    assert (inches(box.low), inches(box.high)) == ((1, 9, 3), (2, 4, 5))
    (ball,) = find(craft.zones, "right_ball").where
    assert isinstance(ball, Ball)
    assert inches(ball.centre) == (1, 2, 3)
    assert ball.radius.middle / INCH == pytest.approx(4)
    aside, above = find(craft.zones, "right_half").where
    assert isinstance(aside, HalfSpace)
    assert (aside.axis, aside.sign, aside.offset.middle / INCH) == (1, 1, pytest.approx(5))
    assert (above.axis, above.sign, above.offset.middle / INCH) == (2, 1, pytest.approx(2))


MOVING = """\
  left_hub:
    rudder: [1, 2, 3]
  left_loose:
    rudder: unknown
"""


@pytest.mark.parametrize(("opposite", "sign"), [("no", 1), ("yes", -1)])
def test_movements_are_mirrored_and_turned_round_where_the_state_says_so(opposite, sign):
    state = ("measured at: 0", f"measured at: 0, opposite when mirrored: {opposite}")
    added = "mirror: [left_pedal_swing, left_hub, left_loose]\n"
    craft = aircraft(state, ("components:\n", MOVING + "components:\n"), added=added)
    (shift,) = find(craft.moving, "right_hub").motions
    assert isinstance(shift, Shift)
    assert inches(shift.by) == (sign * 1, sign * -2, sign * 3)
    (swing,) = find(craft.moving, "right_pedal_swing").motions
    (own,) = find(craft.moving, "left_pedal_swing").motions
    assert isinstance(swing, Swing)
    assert inches(swing.about) == (15, 7.5, 1)
    assert swing.axis.vector == own.axis.vector == (0, -1, 0)
    assert swing.angle.middle == pytest.approx(sign * own.angle.middle)
    (loose,) = find(craft.moving, "right_loose").motions
    assert isinstance(loose, UnknownMotion)


# -- copies -------------------------------------------------------------------------------------------


def test_copy_takes_everything_and_its_own_words_win():
    own = "  spare: {like: left_caliper, pad gap: 0.02, side: right}\n"
    craft = aircraft(("pedals:\n", own + "pedals:\n"))
    spare, source = find(craft.components, "spare"), find(craft.components, "left_caliper")
    assert spare.pistons.bore.span == source.pistons.bore.span
    assert spare.ports[0].seat.point == source.ports[0].seat.point
    assert spare.pad_gap.middle / INCH == pytest.approx(0.02)
    assert spare.side is SideOf.RIGHT
    assert spare.place == "components.spare"


def test_copy_is_shifted_and_its_names_are_swapped():
    parts = """\
  right_cylinder: {like: left_cylinder, swap: {left: right}, shift: {right: 7, down: 1/2}}
  right_caliper: {like: left_caliper, shift: {aft: 1}}
"""
    pedal = "  right_brake: {like: left_brake}\n  right_x: {like: left_brake}\n"
    swing = "  right_pedal_swing: {like: left_pedal_swing, shift: {right: 7}}\n"
    line = "  right_line: {like: left_line, swap: {left: right}, shift: {up: 1}}\n"
    edits = [("pedals:\n", parts + "pedals:\n"), ("lines:\n", pedal + "lines:\n")]
    craft = aircraft(*edits, ("components:\n", swing + "components:\n"), added=VIA + line)
    cylinder = find(craft.components, "right_cylinder")
    assert inches(cylinder.ports[0].seat) == (13.1, -0.5, 2.5)
    assert (cylinder.pedal, cylinder.moves_with) == ("right_brake", "right_pedal_swing")
    assert cylinder.side is SideOf.LEFT  # a side is declared, never guessed from a swap
    copy = find(craft.lines, "right_line")
    assert (copy.start, copy.finish) == ("right_cylinder.outlet", "right_caliper.inlet")
    assert [inches(point) for point in copy.via] == [(1, -2, 4), (4, -5, 7)]
    (swung,) = find(craft.moving, "right_pedal_swing").motions
    assert inches(swung.about) == (15, -0.5, 1)


def test_copies_of_copies_add_up():
    more = "  a: {like: left_caliper, shift: {up: 1}}\n  b: {like: a, shift: {up: 2}}\n"
    craft = aircraft(("pedals:\n", more + "pedals:\n"), added="mirror: {b: c}\n")
    assert inches(port(craft, "b.inlet").seat) == (9.4, -32.6, -28.4)
    assert inches(port(craft, "c.inlet").seat) == (9.4, 32.6, -28.4)


# -- chains -------------------------------------------------------------------------------------------

PLACES = """\
points:
  left_corner: [1, -2, 3]
  left_next: {from: left_corner, aft: 1, left: 2}
bulkheads:
  left_wall:
    at: [10, -20, 30]
    sides: {front: {seat: [9, -20, 30]}, back: {seat: {from: left_wall, aft: 1/2}}}
"""
STARTS = {
    "left_corner": (1, -2, 3),
    "left_next": (2, -4, 3),
    "left_wall": (10, -20, 30),
    "left_wall.front": (9, -20, 30),
    "left_wall.back": (10.5, -20, 30),
    "left_caliper.inlet": (9.4, -32.6, -31.4),
}


@pytest.mark.parametrize("start", STARTS)
def test_chain_starts_from_every_kind_of_place(start):
    seat = f"seat: {{from: {start}, aft: 1, left: 2, up: 3-1/4}}"
    craft = aircraft(("seat: [13.1, -7.5, 3]", seat), added=PLACES)
    aft, right, up = STARTS[start]
    assert inches(port(craft, "left_cylinder.outlet").seat) == (aft + 1, right - 2, up + 3.25)


@pytest.mark.parametrize("start", STARTS)
def test_mirrored_chain_is_the_mirror_image_of_the_chain(start):
    via = f"    via:\n      - {{from: {start}, forward: 1, right: 2, down: 3}}\n      - left_corner\n"
    craft = aircraft(added=via + PLACES + MIRROR)
    left, right = find(craft.lines, "left_line"), find(craft.lines, "right_line")
    for point, image in zip(left.via, right.via, strict=True):
        assert image.point == pytest.approx((point.point[0], -point.point[1], point.point[2]))


def test_mirrored_point_can_be_used_by_its_own_name():
    text = "    via: [right_corner, right_next]\n" + PLACES + "mirror: [left_corner, left_next]\n"
    craft = aircraft(added=text)
    assert [inches(point) for point in craft.lines[0].via] == [(1, 2, 3), (2, 4, 3)]


def test_chain_from_an_unknown_place_is_unknown_and_says_what_to_measure():
    seat = "seat: {from: left_caliper.inlet, aft: 1}"
    edits = [("seat: [13.1, -7.5, 3]", seat), ("seat: [9.4, -32.6, -31.4]", "seat: unknown")]
    found = port(aircraft(*edits), "left_cylinder.outlet").seat
    assert not found.known
    assert {missing.place for missing in found.missing} == {"components.left_caliper.ports.inlet.seat"}


# -- values -------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("words", "span", "mark"),
    [
        ("5/8", (0.625, 0.625), Mark.MEASURED),
        ("0.625 in", (0.625, 0.625), Mark.MEASURED),
        ("25.4 mm", (1, 1), Mark.MEASURED),
        ("about 1", (1, 1), Mark.ESTIMATE),
        ("1 to 2", (1, 2), Mark.MEASURED),
        ("{value: 1, mark: assumed, because: it looks so}", (1, 1), Mark.ASSUMED),
        ("{value: about 1, mark: measured}", (1, 1), Mark.ESTIMATE),
        ("{value: 1, mark: memory}", (1, 1), Mark.MEMORY),
        ("{value: 1}", (1, 1), Mark.MEASURED),
    ],
)
def test_size_is_read_with_its_mark(words, span, mark):
    bore = find(aircraft(("bore: 0.625", f"bore: {words}")).components, "left_cylinder").bore
    assert (bore.span[0] / INCH, bore.span[1] / INCH) == pytest.approx(span)
    assert bore.mark is mark
    assert (bore.label, bore.place) == ("left_cylinder bore", "components.left_cylinder.bore")


@pytest.mark.parametrize("words", ["unknown", "{value: unknown, mark: assumed}"])
def test_unknown_size_says_what_to_measure(words):
    bore = find(aircraft(("bore: 0.625", f"bore: {words}")).components, "left_cylinder").bore
    assert not bore.known
    assert [missing.place for missing in bore.missing] == ["components.left_cylinder.bore"]


def test_mark_of_a_point_or_a_direction_goes_to_all_of_it():
    edits = [
        ("seat: [13.1, -7.5, 3]", "seat: {value: [13.1, about 1, {value: 3, mark: assumed}], mark: memory}"),
        ("faces: forward", "faces: {value: [1, 0, -1], mark: assumed}"),
    ]
    outlet = port(aircraft(*edits), "left_cylinder.outlet")
    assert [value.mark for value in outlet.seat.coordinates] == [Mark.MEMORY, Mark.ESTIMATE, Mark.ASSUMED]
    assert outlet.faces.vector == pytest.approx((0.5**0.5, 0, -(0.5**0.5)))
    assert outlet.faces.mark is Mark.ASSUMED


@pytest.mark.parametrize(
    ("words", "vector"),
    [
        ("aft", (1, 0, 0)),
        ("left", (0, -1, 0)),
        ("aft and down", (0.5**0.5, 0, -(0.5**0.5))),
        ("[0, 3, 4]", (0, 0.6, 0.8)),
    ],
)
def test_directions_are_unit_vectors(words, vector):
    assert port(aircraft(("faces: forward", f"faces: {words}")), "left_cylinder.outlet").faces.vector == (
        pytest.approx(vector)
    )


def test_what_is_unknown_is_neither_yes_nor_no():
    def floats(words):
        added = ("    kind: caliper\n", f"    kind: caliper\n{words}")
        return find(aircraft(added).components, "left_caliper").floats

    assert floats("    floats: yes\n") is Answer.YES
    assert floats("    floats: no\n") is Answer.NO
    assert floats("    floats: unknown\n") is floats("") is Answer.UNKNOWN


def test_unknown_direction_fluid_and_shape_stay_unknown():
    craft = aircraft(
        ("faces: forward", "faces: unknown"),
        ("MIL-PRF-5606", "unknown"),
        added="zones:\n  z: {where: unknown}\n",
    )
    assert craft.fluid is None
    assert not port(craft, "left_cylinder.outlet").faces.known
    assert isinstance(craft.zones[0].where[0], UnknownShape)


def test_state_in_which_a_thing_was_measured_is_kept():
    craft = aircraft(
        ("moves with: left_pedal_swing", "moves with: left_pedal_swing\n    measured in: {rudder: -1}")
    )
    assert find(craft.components, "left_cylinder").measured_in == (("rudder", "-1"),)
