"""How the ends of a line move against each other, against sums by hand."""

from __future__ import annotations

import math
import time

import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import edited

# One hose between two brackets, in inches. Nothing else matters here.
TEXT = """\
firmpedal: 1
aircraft: {name: Ends, gear: nosewheel, brakes: toe, landing weight: 900 lb}
units: {length: in, angle: deg}
fluid: MIL-PRF-5606
states:
  rudder: {from: -1, to: 1, measured at: 0}
  pads: {values: [new, worn], measured at: new}
  gear: {values: [on wheels, on jacks], measured at: on wheels}
moving:
  thing: {rudder: [0, 0, 0]}
  carrier: {gear: {on jacks: [0, 0, 0]}}
bulkheads:
  one:
    sides: {a: {seat: [0, 0, 0]}, b: {seat: [0, 0, 1]}}
  other:
    sides: {a: {seat: [4, 0, 0]}, b: {seat: [4, 0, 1]}}
lines:
  hose: {from: one.a, to: other.a, made of: hose -4 PTFE braided}
"""
THING = ("thing: {rudder: [0, 0, 0]}", "thing: {%s}")


def laid(*edits: tuple[str, str]):
    evaluation = evaluate_text(edited(TEXT, *edits), "text")
    return next(line for line in evaluation.laid if line.name == "hose")


def moving(motion: str, *edits: tuple[str, str], also: str = ""):
    """The hose with its far end on a thing that moves; `also` for the near end."""
    carried = [("  other:\n", "  other:\n    moves with: thing\n")]
    carried += [("  one:\n", f"  one:\n    moves with: {also}\n")] if also else []
    return laid((THING[0], THING[1] % motion), *carried, *edits)


def figures(line) -> list[tuple[float, float]]:
    travel = line.travel
    return [
        (to_unit(value.low, "in"), to_unit(value.high, "in"))
        for value in (travel.play, travel.nearest, travel.farthest)
    ]


def exact(*numbers: float) -> list:
    return [(pytest.approx(number, abs=1e-9), pytest.approx(number, abs=1e-9)) for number in numbers]


def test_what_stands_still_does_not_move():
    assert figures(laid()) == exact(0, 4, 4)


def test_a_shift_along_the_line():
    assert figures(moving("rudder: [1.5, 0, 0]")) == exact(3, 2.5, 5.5)


def test_a_shift_across_the_line_is_nearest_in_the_middle():
    assert figures(moving("rudder: [0, 3, 0]")) == exact(6, 4, 5)


def test_a_swing_about_an_axis():
    """The far end is 5 in from the axis, straight above it; the near end is on the axis."""
    line = moving("rudder: {about: [4, 0, -5], axis: right, swing: +/- 17}")
    reach = 5 * math.sin(math.radians(17))
    down = 5 * (1 - math.cos(math.radians(17)))
    assert figures(line) == exact(2 * reach, math.hypot(4 - reach, down), math.hypot(4 + reach, down))


def test_a_swing_turns_by_the_right_hand():
    """About the axis to the right, a positive turn takes up to aft: thumb right, fingers from up to aft."""
    line = moving(
        "rudder: {about: [4, 0, -5], axis: right, swing: 90}", ("from: -1, to: 1", "from: 0, to: 1")
    )
    assert figures(line)[2] == exact(math.hypot(9, 5))[0]
    line = moving("rudder: {about: [4, 0, -5], axis: left, swing: 90}", ("from: -1, to: 1", "from: 0, to: 1"))
    assert figures(line)[2] == exact(math.hypot(-1, -5))[0]


def test_what_carries_both_ends_does_not_count():
    assert figures(moving("rudder: [1.5, 0, 0]", also="thing")) == exact(0, 4, 4)


def test_one_state_moves_two_things_together():
    """The near end goes forward as the far end goes aft, never by themselves."""
    things = "rudder: [1.5, 0, 0]}\n  mate: {rudder: [-1.5, 0, 0]"
    assert figures(moving(things, also="mate")) == exact(6, 1, 7)
    things = "rudder: [1.5, 0, 0]}\n  mate: {rudder: [1.5, 0, 0]"
    assert figures(moving(things, also="mate")) == exact(0, 4, 4)


def test_two_states_move_a_thing_in_all_combinations():
    line = moving("rudder: [1, 0, 0], pads: {worn: [0, 3, 0]}")
    assert figures(line) == exact(math.hypot(2, 3), 3, math.hypot(5, 3))


def test_a_carrier_adds_to_what_it_carries():
    carrier = ("on jacks: [0, 0, 0]", "on jacks: [0, 0, -3]")
    line = moving("with: carrier, pads: {worn: [1, 0, 0]}", carrier)
    assert figures(line) == exact(math.hypot(1, 3), 4, math.hypot(5, 3))
    line = moving("with: carrier, pads: {worn: [1, 0, 0]}", carrier, also="carrier")
    assert figures(line) == exact(1, 4, 5)


@pytest.mark.parametrize(
    ("motion", "seat"),
    [
        ("rudder: [1.5, 0, 0]", "[5.5, 0, 0]"),
        ("rudder: {about: [4, 0, -5], axis: right, swing: 90}", "[9, 0, -5]"),
    ],
)
def test_the_state_of_measuring_is_taken_out_again(motion, seat):
    """A seat that was measured with the rudder over is the same seat as the one measured in the middle."""
    middle = figures(moving(motion))
    over = moving(
        motion, ("measured at: 0", "measured at: 1"), ("{a: {seat: [4, 0, 0]}", f"{{a: {{seat: {seat}}}")
    )
    assert figures(over) == [tuple(pytest.approx(bound) for bound in span) for span in middle]
    here = f"    measured in: {{rudder: 1}}\n    sides: {{a: {{seat: {seat}}}"
    own = moving(motion, ("    sides: {a: {seat: [4, 0, 0]}", here))
    assert figures(own) == [tuple(pytest.approx(bound) for bound in span) for span in middle]


class TestRanges:
    def test_a_shift_known_only_within_a_range(self):
        play, nearest, farthest = figures(moving("rudder: [1 to 2, 0, 0]"))
        assert play == (pytest.approx(2), pytest.approx(4))
        assert nearest == (pytest.approx(2), pytest.approx(3))
        assert farthest == (pytest.approx(5), pytest.approx(6))

    def test_a_shift_that_may_be_nothing(self):
        play, *_ = figures(moving("rudder: [-0.1 to 0.1, 0, 0]"))
        assert play == (pytest.approx(0), pytest.approx(0.2))

    def test_a_place_known_only_within_a_range_moves_the_distance_but_not_the_play(self):
        line = moving("rudder: [1.5, 0, 0]", ("{a: {seat: [4, 0, 0]}", "{a: {seat: [3.8 to 4.2, 0, 0]}"))
        play, nearest, farthest = figures(line)
        assert play == (pytest.approx(3), pytest.approx(3))
        assert nearest == (pytest.approx(2.3), pytest.approx(2.7))
        assert farthest == (pytest.approx(5.3), pytest.approx(5.7))
        assert [label for label, _ in line.travel.farthest.step.inputs] == ["other a seat aft"]


class TestUnknown:
    def asked(self, line) -> list[str]:
        assert line.travel.play.span is None
        return [missing.what for missing in line.travel.play.missing]

    def test_an_unmeasured_movement(self):
        (what,) = self.asked(moving("gear: {on jacks: unknown}"))
        assert "gear" in what
        assert "on jacks" in what

    def test_an_unmeasured_movement_that_never_comes_about(self):
        line = moving("rudder: unknown", ("from: -1, to: 1", "from: 0, to: 0"))
        assert figures(line) == exact(0, 4, 4)

    def test_an_unmeasured_movement_of_what_carries_both(self):
        assert figures(moving("gear: {on jacks: unknown}", also="thing")) == exact(0, 4, 4)

    @pytest.mark.parametrize("state", ["{from: -1}", "{to: 1}", "{}", "{from: unknown, to: 1}"])
    def test_a_state_without_an_end(self, state):
        line = moving("rudder: [1.5, 0, 0]", ("{from: -1, to: 1, measured at: 0}", state))
        assert self.asked(line) == ["how far rudder goes, from and to"]

    def test_an_unknown_place_of_something_that_moves(self):
        line = moving("rudder: [1.5, 0, 0]", ("{a: {seat: [4, 0, 0]}", "{a: {seat: unknown}"))
        assert len(self.asked(line)) == 1

    def test_an_unknown_place_of_something_that_stands_still(self):
        """Where it is decides what it is fixed to, so whether it moves is not known either."""
        assert len(self.asked(laid(("{a: {seat: [4, 0, 0]}", "{a: {seat: unknown}")))) == 1

    def test_more_states_than_can_be_combined(self):
        names = [f"s{n}" for n in range(12)]
        states = "".join(f"  {name}: {{from: -1, to: 1}}\n" for name in names)
        motion = ", ".join(f"{name}: [1, 0, 0]" for name in names)
        start = time.monotonic()
        line = moving(motion, ("states:\n", f"states:\n{states}"))
        assert "too many" in self.asked(line)[0]
        assert time.monotonic() - start < 5

    @pytest.mark.parametrize("count", [2, 6, 10])
    def test_many_states_are_looked_at_in_fewer_places(self, count):
        names = [f"s{n}" for n in range(count)]
        states = "".join(f"  {name}: {{from: -1, to: 1}}\n" for name in names)
        line = moving(", ".join(f"{name}: [1, 0, 0]" for name in names), ("states:\n", f"states:\n{states}"))
        assert figures(line)[0] == exact(2 * count)[0]
        assert len(line.travel.settings) <= 2000


class TestLongestPath:
    """A hose by declared points, which stay while an end moves."""

    VIA = ("made of: hose -4 PTFE braided}", "made of: hose -4 PTFE braided, via: [[2, 0, 3]]}")

    def longest(self, line) -> float:
        return to_unit(line.hose.longest_path.middle, "in")

    def test_a_straight_hose_is_longest_where_its_ends_are_farthest(self):
        line = moving("rudder: [1.5, 0, 0]")
        assert self.longest(line) == pytest.approx(5.5)
        assert to_unit(line.hose.path_length.middle, "in") == pytest.approx(4)
        assert to_unit(line.hose.least_length.middle, "in") == pytest.approx(5.5 * 1.06)

    def test_a_point_on_the_way_stays(self):
        line = moving("rudder: [1.5, 0, 0]", self.VIA)
        assert self.longest(line) == pytest.approx(math.hypot(2, 3) + math.hypot(3.5, 3))
        assert to_unit(line.hose.path_length.middle, "in") == pytest.approx(2 * math.hypot(2, 3))

    def test_both_ends_may_move(self):
        things = "rudder: [1.5, 0, 0]}\n  mate: {rudder: [1.5, 0, 0]"
        line = moving(things, self.VIA, also="mate")
        ends = [math.hypot(2 - shift, 3) + math.hypot(2 + shift, 3) for shift in (0, 1.5)]
        assert self.longest(line) == pytest.approx(max(ends))

    def test_with_points_on_the_way_an_unmeasured_movement_is_asked_for_but_the_hose_is_not_lost(self):
        line = moving("gear: {on jacks: unknown}", self.VIA)
        assert self.longest(line) == pytest.approx(2 * math.hypot(2, 3))
        assert line.travel.play.missing

    def test_without_points_on_the_way_the_length_hangs_on_it(self):
        line = moving("gear: {on jacks: unknown}")
        assert line.hose.longest_path.span is None
        assert line.hose.order_length.span is None
