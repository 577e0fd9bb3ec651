"""Copies are what a builder would have written out by hand: names, sides, exceptions, removals."""

from __future__ import annotations

import pytest
from planting import MIRROR, SMALL, only, planted, sound

from firmpedal.lay.movement import Carried, carriers_of, travel
from firmpedal.model.aircraft import find
from firmpedal.model.component import SideOf
from firmpedal.model.space import Position
from firmpedal.quantity import Mark, exactly
from firmpedal.units import Dimension


def inches(position):
    return tuple(round(value.middle / 0.0254, 9) for value in position.coordinates)


def place(craft, name):
    return inches(next(point.position for point in craft.points if point.name == name))


def seat(craft, name):
    head, _, tail = name.partition(".")
    part = find(craft.components, head)
    inner = part.ports if part is not None else find(craft.bulkheads, head).sides
    return inches(find(inner, tail).seat)


def read(text, option=None):
    return sound(text, option).aircraft


# -- names ------------------------------------------------------------------------------------------------


def test_the_passages_of_a_mirrored_panel_are_those_of_the_other_side():
    panel = "panels: {left_rib: {passes: {left_lower: {hole: 1/2}, left_upper: {}}}}\n"
    craft = read(SMALL + panel + MIRROR.replace("[", "[left_rib, "))
    assert [passage.name for passage in find(craft.panels, "right_rib").passes] == [
        "right_lower",
        "right_upper",
    ]


def test_a_mirrored_cylinder_names_the_reservoir_of_its_own_side():
    pot = "  left_pot: {kind: reservoir, ports: {out: {thread: 1/8 NPT female}}}\n"
    text = planted("pedals:\n", pot + "pedals:\n", MIRROR.replace("[", "[left_pot, "))
    named = text.replace("pedal: left_heel", "pedal: left_heel\n    reservoir: left_pot")
    built_in = text.replace("pedal: left_heel", "pedal: left_heel\n    reservoir: built in")
    assert find(read(named).components, "right_cylinder").reservoir == "right_pot"
    assert find(read(built_in).components, "right_cylinder").reservoir == "built in"


VALVE = """\
  valve:
    kind: parking valve
    ports:
      left_in: {thread: 1/8 NPT female, at: [20, -1, 1]}
      right_in: {thread: 1/8 NPT female, at: [20, 1, 1]}
"""


@pytest.mark.parametrize("name", ["valve", "second"])
def test_a_mirrored_line_comes_to_its_own_port_of_a_thing_in_the_middle(name):
    parts = VALVE + "  second: {like: valve, shift: {aft: 3}}\n"
    text = planted("pedals:\n", parts + "pedals:\n", MIRROR)
    text = text.replace("to: left_caliper.inlet", f"to: {name}.left_in")
    assert find(read(text).lines, "right_lower").finish == f"{name}.right_in"


def test_swapped_names_reach_into_ports():
    swap = "{left_cylinder: left_twin, above: below, left_floor: left_wall}"
    more = f"  upper: {{like: left_upper, swap: {swap}}}\n"
    parts = "  left_twin: {like: left_cylinder, shift: {right: 1}}\n"
    text = planted("pedals:\n", parts + "pedals:\n")
    text = text.replace("lines:\n", "  left_wall: {like: left_floor}\nlines:\n")
    line = find(read(text + more).lines, "upper")
    assert (line.start, line.finish) == ("left_twin.outlet", "left_wall.below")


def test_the_side_is_turned_by_a_mirror_and_by_nothing_else():
    parts = "  left_twin: {like: left_cylinder, swap: {left: right}}\n"
    craft = read(planted("pedals:\n", parts + "pedals:\n", MIRROR))
    assert find(craft.components, "left_twin").side is SideOf.LEFT
    assert find(craft.components, "right_cylinder").side is SideOf.RIGHT
    assert find(craft.pedals, "right_heel").side is SideOf.RIGHT


# -- places -----------------------------------------------------------------------------------------------


def test_a_mirrored_chain_hangs_on_the_other_sides_own_place():
    own = "  right_floor: {at: [7.2, 9.5, 0]}\n"  # measured, and not quite where the mirror has it
    craft = read(planted("lines:\n", own + "lines:\n", MIRROR))
    assert seat(craft, "left_floor.above") == (7, -9, 1.3)
    assert seat(craft, "right_floor.above") == (7.2, 9.5, 1.3)


def test_a_chain_from_a_place_in_the_middle_is_mirrored_as_a_whole():
    text = planted(
        "left_mark: [20, -4, 1]", "left_mark: {from: middle, left: 4}\n  middle: [20, 1, 1]", MIRROR
    )
    assert place(read(text), "left_mark") == (20, -3, 1)
    assert place(read(text), "right_mark") == (20, 3, 1)


def test_points_can_hang_on_points_given_in_place():
    text = planted("left_mark: [20, -4, 1]", "left_mark: {from: {from: [20, 0, 1], left: 4}, mirror: 1}")
    assert only(text).message == "`mirror` is not a way to go"
    text = planted("left_mark: [20, -4, 1]", "left_mark: {mirror of: {from: [20, 3, 1], right: 1}}")
    assert place(read(text), "left_mark") == (20, -4, 1)


def test_a_chain_that_hangs_on_another_place_in_the_copy_is_not_shifted_with_it_once_more():
    copy = "  left_shelf: {like: left_floor, shift: {aft: 12}, swap: {floor: shelf}}\n"
    same = "  left_twin: {like: left_floor, shift: {aft: 12}}\n"
    craft = read(planted("lines:\n", copy + same + "lines:\n"))
    assert seat(craft, "left_shelf.above") == (19, -9, 1.3)
    assert seat(craft, "left_twin.above") == (19, -9, 1.3)


def test_a_plane_is_shifted_across_itself_and_mirrored():
    zones = "zones:\n  left_low: {where: {up below: -5, right above: 2}}\n"
    zones += "  left_high: {like: left_low, shift: {up: 3, left: 1}}\n"
    craft = read(SMALL + zones + "mirror: [left_low, left_high]\n")
    found = {
        zone.name: [(shape.axis, shape.sign, round(shape.offset.middle / 0.0254, 9)) for shape in zone.where]
        for zone in craft.zones
    }
    assert found["left_high"] == [(2, -1, -2), (1, 1, 1)]
    assert found["right_low"] == [(2, -1, -5), (1, -1, -2)]
    assert found["right_high"] == [(2, -1, -2), (1, -1, -1)]
    text = SMALL + "zones:\n  low: {where: {up below: {from: -5, aft: 1}}}\n"
    assert only(text).message == "`aft` is not a way this plane can be moved"


# -- movement ---------------------------------------------------------------------------------------------


def still(name, *numbers):
    values = [exactly(name, Dimension.LENGTH, number * 0.0254, Mark.MEASURED) for number in numbers]
    return Position(*values)


@pytest.mark.parametrize(
    ("movement", "play"),
    # From one end to the other left goes 3 in forward and right 3 in aft. A swing at 10 in through 15
    # degrees either way takes a pad 2 x 10 sin 15 along; down both go alike, which is no play.
    [("[-1.5, 0, 0]", 6.0), ("{about: [12, -8, 0], axis: left, swing: +/- 15}", 4 * 10 * 0.25881904510252)],
)
def test_pedals_go_opposite_ways_at_the_same_rudder(movement, play):
    text = planted("rudder: [-1.5, 0, 0]", f"rudder: {movement}", MIRROR)
    for answer, expected in (("yes", play), ("no", 0.0)):
        craft = read(text.replace("opposite when mirrored: yes", f"opposite when mirrored: {answer}"))
        ends = [
            Carried(still("pad", 12, across, 10), carriers_of(f"{side}_pedal", craft.moving))
            for side, across in (("left", -8), ("right", 8))
        ]
        found = travel(ends[0], ends[1], craft.states, "here").play
        assert found.middle / 0.0254 == pytest.approx(expected, abs=1e-9)


# -- exceptions and removals ------------------------------------------------------------------------------


def test_a_key_can_be_removed_from_a_mirror_image():
    own = "  right_caliper: {ports: {inlet: {seat measured with: removed}}}\n"
    craft = read(planted("pedals:\n", own + "pedals:\n", MIRROR))
    assert find(find(craft.components, "right_caliper").ports, "inlet").seat_measured_with == ""
    assert find(find(craft.components, "left_caliper").ports, "inlet").seat_measured_with == "AN822-4D"


@pytest.mark.parametrize("where", ["in the file", "in an option"])
def test_a_mirror_image_can_be_removed(where):
    if where == "in the file":
        craft = read(planted("lines:\n", "lines:\n  right_lower: removed\n", MIRROR))
    else:
        craft = read(SMALL + MIRROR + "options: {odd: {lines: {right_lower: removed}}}\n", "odd")
    assert [line.name for line in craft.lines if line.name.startswith("right")] == ["right_upper"]


def test_what_an_option_removes_takes_its_mirror_image_with_it():
    craft = read(SMALL + MIRROR + "options: {odd: {lines: {left_lower: removed}}}\n", "odd")
    assert [line.name for line in craft.lines] == ["left_upper", "right_upper"]


def test_removing_what_is_not_there_is_a_slip():
    found = only(SMALL + "options: {odd: {lines: {left_lowr: removed}}}\n", "odd")
    assert found.message == "there is no `left_lowr` in lines to remove"
    assert found.suggestion == "did you mean `left_lower`?"
    assert found.stands.startswith("left_lowr")
    assert (
        only(planted("normal: up", "normal: removed")).message
        == "there is no `normal` in left_floor to remove"
    )


def test_an_option_replaces_a_value_as_a_whole_and_merges_things():
    zone = (
        "zones:\n  z: {where: {box: [[1, 2, 3], [4, 5, 6]]}, gap: {value: 3, mark: assumed}, covered: yes}\n"
    )
    over = """\
options:
  odd:
    zones: {z: {where: {ball: [1, 2, 3], radius: 4}, gap: {value: 5}}}
    bulkheads: {left_floor: {sides: {above: {seat: {from: left_mark, aft: 3}}}}}
    points: {left_mark: {from: left_floor, up: 1}}
"""
    craft = read(SMALL + zone + over, "odd")
    (found,) = craft.zones
    assert [type(shape).__name__ for shape in found.where] == ["Ball"]
    assert (found.gap.mark, round(found.gap.middle / 0.0254, 9)) == (Mark.MEASURED, 5)
    assert found.covered.value == "yes"
    assert seat(craft, "left_floor.above") == (10, -9, 1)
    assert seat(craft, "left_floor.below") == (7, -9, -0.9)


def test_an_exception_is_laid_over_each_level_of_a_copy():
    ports = "{inlet: {faces: aft}, bleed: {thread: 1/8 NPT female}}"
    own = f"  right_caliper: {{pistons: {{bore: 1-5/8}}, ports: {ports}}}\n"
    caliper = find(read(planted("pedals:\n", own + "pedals:\n", MIRROR)).components, "right_caliper")
    assert round(caliper.pistons.bore.middle / 0.0254, 6) == 1.625
    assert caliper.pistons.count_per_side.middle == 1
    assert [port.name for port in caliper.ports] == ["inlet", "bleed"]
    assert caliper.ports[0].faces.vector == (1, 0, 0)
    assert inches(caliper.ports[0].seat) == (9.4, 32.6, -31.4)


def test_what_is_like_something_else_is_no_mirror_image_too():
    more = "  left_x: {like: left_upper, from: right_x.to, to: right_x.from}\n"
    more += "  right_x: {like: left_upper, from: left_x.to, to: left_x.from}\n"
    craft = read(SMALL + more + "mirror: [left_x]\n")
    assert find(craft.lines, "right_x").start == "left_x.to"
