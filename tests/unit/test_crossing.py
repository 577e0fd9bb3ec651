"""Lines through zones: stretches, passes, ends inside, and what has to be known first."""

from __future__ import annotations

import math

import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import edited, small

# The tube runs from [10, 0, 4] down to a corner at [10, 0, -6], then aft to [16, 0, -6]; bend radius 3/4.
VIA = "      - [10, 0, -6]\n"


def cut(where: str, *edits: tuple[str, str], more: str = "", line: str = "run"):
    zone = f"zones:\n  zone: {{where: {where}{more}}}\nlines:\n"
    evaluation = evaluate_text(edited(small("quillfen"), ("lines:\n", zone), *edits), "text")
    return next(crossing for crossing in evaluation.crossings if crossing.line == line)


def stretches(crossing) -> list[tuple[float, float]]:
    return [(to_unit(start, "in"), to_unit(stop, "in")) for start, stop in crossing.stretches]


def asked(missing) -> list[str]:
    return [item.what for item in missing]


class TestShapes:
    def test_a_box_across_the_first_straight(self):
        crossing = cut("{box: [[9, -1, 0], [11, 1, 2]]}")
        assert stretches(crossing) == [(pytest.approx(2), pytest.approx(4))]
        assert [to_unit(point[2], "in") for _, point in crossing.passes] == pytest.approx([2, 0], abs=1e-6)
        assert crossing.ends_inside == ()
        assert to_unit(crossing.length("").middle, "in") == pytest.approx(2)

    def test_the_corners_of_a_box_come_in_any_order(self):
        assert stretches(cut("{box: [[11, -1, 2], [9, 1, 0]]}")) == [(pytest.approx(2), pytest.approx(4))]

    def test_a_ball(self):
        crossing = cut("{ball: [10, 0.6, 0], radius: 1}")
        assert stretches(crossing) == [(pytest.approx(4 - 0.8), pytest.approx(4 + 0.8))]

    def test_half_a_space(self):
        crossing = cut("{up above: 3}")
        assert stretches(crossing) == [(pytest.approx(0), pytest.approx(1))]
        assert crossing.ends_inside == ("from",)
        assert len(crossing.passes) == 1
        assert cut("{up below: -3, aft above: 13}").ends_inside == ("to",)

    def test_a_stretch_of_the_line_itself(self):
        crossing = cut("{line: run, from: 2, to: 5}")
        assert stretches(crossing) == [(pytest.approx(2), pytest.approx(5))]
        assert len(crossing.passes) == 2

    def test_a_stretch_ends_with_the_line(self):
        crossing = cut("{line: run, from: 2, to: 99}")
        whole = 10 + 6 - 2 * 0.75 + 0.75 * math.pi / 2
        assert stretches(crossing) == [(pytest.approx(2), pytest.approx(whole))]
        assert crossing.ends_inside == ("to",)

    def test_what_lies_past_the_line(self):
        crossing = cut("{box: [[9, 1, 0], [11, 2, 2]]}")
        assert not crossing.inside
        assert crossing.passes == crossing.ends_inside == ()


def test_a_tube_cuts_its_corners():
    """A ball at the corner, smaller than what the bend cuts off: R (sqrt 2 - 1) is 0.31."""
    assert not cut("{ball: [10, 0, -6], radius: 0.30}").inside
    assert cut("{ball: [10, 0, -6], radius: 0.32}").inside
    hose = ("tube 5052-O 1/4 x .035", "hose -4 PTFE braided")
    assert cut("{ball: [10, 0, -6], radius: 0.30}", hose).inside


class TestUnknown:
    def test_a_zone_that_nobody_has_placed(self):
        crossing = cut("unknown")
        assert not crossing.inside
        assert len(asked(crossing.unsure_inside)) == 1
        assert crossing.unsure_inside == crossing.unsure_passes == crossing.unsure_ends

    def test_a_point_of_the_line(self):
        crossing = cut("{up above: 3}", (VIA, "      - [10, unknown, -6]\n"))
        assert len(crossing.unsure_inside) == 1
        assert not crossing.inside

    def test_a_stretch_of_another_line_asks_nothing(self):
        tail = "  tail: {from: run.to, to: caliper.inlet, made of: hose -4 PTFE braided}\n"
        edits = (("to: caliper.inlet\n", "to: tail.from\n"), (VIA, VIA + tail))
        crossing = cut("{line: tail, from: 1, to: 2}", *edits)
        assert not crossing.inside
        assert crossing.unsure_inside == ()


class TestRanges:
    """An answer that changes inside a range is no answer; one that does not change stands."""

    def test_a_point_that_may_lie_on_either_side(self):
        crossing = cut("{right above: 0.5}", (VIA, "      - [10, 0 to 0.8, -6]\n"))
        assert not crossing.inside
        (what,) = asked(crossing.unsure_inside)
        assert what == "run via 1, more closely: how run runs by zone hangs on it"

    def test_a_point_that_may_move_but_not_so_far(self):
        crossing = cut("{right above: 1.5}", (VIA, "      - [10, 0 to 0.8, -6]\n"))
        assert not crossing.inside
        assert crossing.unsure_inside == ()
        crossing = cut("{right above: -0.1}", (VIA, "      - [10, 0 to 0.8, -6]\n"))
        assert crossing.inside
        assert crossing.unsure_inside == ()

    def test_both_coordinates_together_may_reach_what_each_alone_does_not(self):
        ball = "{ball: [10, 1, -7], radius: 0.7}"
        hose = ("tube 5052-O 1/4 x .035", "hose -4 PTFE braided")
        one = cut(ball, hose, (VIA, "      - [10, -0.7 to 0.7, -6]\n"))
        both = cut(ball, hose, (VIA, "      - [10, -0.7 to 0.7, -6.7 to -5.3]\n"))
        assert one.unsure_inside == ()
        assert len(both.unsure_inside) == 1

    @pytest.mark.parametrize(
        "where",
        [
            "{box: [[9, -0.2 to 0.2, 0], [11, 1, 2]]}",
            "{box: [[11, 1, 2], [9, -0.2 to 0.2, 0]]}",
            "{ball: [10, 1, 0], radius: 0.9 to 1.2}",
            "{ball: [10, 0.9 to 1.2, 0], radius: 1}",
            "{right above: -0.2 to 0.2}",
            "{right below: -0.2 to 0.2}",
        ],
    )
    def test_a_zone_that_may_reach_the_line_or_not(self, where):
        crossing = cut(where)
        assert not crossing.inside
        (what,) = asked(crossing.unsure_inside)
        assert what == "where zone is, more closely: how run runs by zone hangs on it"

    @pytest.mark.parametrize(
        ("where", "inside"),
        [
            ("{box: [[9, -0.4 to -0.2, 0], [11, 1, 2]]}", True),
            ("{box: [[9, 0.2 to 0.4, 0], [11, 1, 2]]}", False),
            ("{ball: [10, 1, 0], radius: 1.1 to 1.4}", True),
            ("{ball: [10, 1, 0], radius: 0.6 to 0.9}", False),
            ("{right above: -0.4 to -0.2}", True),
            ("{right above: 0.2 to 0.4}", False),
            ("{right below: 0.2 to 0.4}", True),
        ],
    )
    def test_a_zone_whose_range_does_not_matter(self, where, inside):
        crossing = cut(where)
        assert crossing.inside is inside
        assert crossing.unsure_inside == ()

    @pytest.mark.parametrize(
        ("where", "stretch"),
        [
            ("{up above: 2 to 3}", (0, 1.5)),
            ("{up below: 2 to 3, up above: 0}", (1.5, 4)),
            ("{box: [[9, -1, 0 to 1], [11, 1, 2 to 3]]}", (1.5, 3.5)),
            ("{ball: [10, 0.6, 0], radius: 0.9 to 1.1}", (4 - 0.8, 4 + 0.8)),
            ("{line: run, from: 1 to 2, to: 5 to 6}", (1.5, 5.5)),
        ],
    )
    def test_a_stretch_is_told_for_the_middle_of_the_range(self, where, stretch):
        (found,) = stretches(cut(where))
        assert found == pytest.approx(stretch, abs=1e-6)

    def test_an_end_that_may_lie_inside(self):
        crossing = cut("{up above: 3.8 to 4.2}")
        (what,) = asked(crossing.unsure_ends)
        assert what.startswith("where zone is, more closely")

    def test_a_line_inside_whatever_the_range_may_still_pass_the_edge_or_not(self):
        crossing = cut("{aft above: 12, right below: 0.8 to 3}", ("seat: [16, 0, -6]", "seat: [16, 1.4, -6]"))
        assert crossing.inside
        assert crossing.unsure_inside == ()
        assert crossing.unsure_ends

    def test_a_stretch_that_may_be_longer_than_the_line(self):
        crossing = cut("{line: run, from: 2, to: 15 to 17}")
        assert crossing.inside
        assert crossing.unsure_ends

    def test_a_seat_with_a_range_moves_the_end(self):
        crossing = cut("{aft above: 15.9}", ("seat: [16, 0, -6]", "seat: [15.7 to 16.3, 0, -6]"))
        (what,) = asked(crossing.unsure_ends)
        assert what.startswith("caliper inlet seat, more closely")
