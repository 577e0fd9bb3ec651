"""A bent tube's figures and their ranges, against geometry by hand."""

from __future__ import annotations

import math

import pytest

from firmpedal.lay import tube
from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import edited, small

VIA = "      - [10, 0, -6]\n"
RADIUS = "    bend radius: 3/4\n"


def laid(*edits: tuple[str, str]):
    (line,) = evaluate_text(edited(small("quillfen"), *edits), "text").laid
    return line


def through(*points: str) -> tuple[str, str]:
    return VIA, "".join(f"      - {point}\n" for point in points)


def degrees(value) -> tuple[float, float]:
    return math.degrees(value.low), math.degrees(value.high)


class TestCutLength:
    def test_a_flare_takes_what_its_slant_is_longer_than_its_depth(self):
        """From the tube's outside to the flare's rim along the slant, less the same along the tube."""
        line = laid()
        rise = (line.stock.flare_diameter.middle - line.stock.outside_diameter.middle) / 2
        half = math.radians(37)
        slant, depth = rise / math.sin(half), rise / math.tan(half)
        assert line.cut_length.middle - line.developed_length.middle == pytest.approx(2 * (slant - depth))

    def test_the_builder_may_say_what_a_flare_takes(self):
        line = laid(("lines:\n", "bench: {flare allowance: 1/16}\nlines:\n"))
        assert to_unit(line.cut_length.middle - line.developed_length.middle, "in") == pytest.approx(1 / 8)


class TestRadius:
    def test_the_line_s_own_wins_over_the_bench(self):
        bench = ("lines:\n", "bench: {bend radius: 1-1/2}\nlines:\n")
        assert to_unit(laid(bench).tube.radius.middle, "in") == pytest.approx(0.75)
        assert to_unit(laid(bench, (RADIUS, "")).tube.radius.middle, "in") == pytest.approx(1.5)

    def test_none_at_all_is_asked_for(self):
        assert laid((RADIUS, "")).tube.developed_length.missing


class TestRanges:
    def test_a_corner_known_only_within_a_range(self):
        """Straight down and then level, so the corner's height moves two lengths one for one."""
        line = laid(through("[10, 0, -6 to -5]"), ("seat: [16, 0, -6]", "seat: [16, 0, -5.5]"))
        assert line.tube.straights[0].low < line.tube.straights[0].middle < line.tube.straights[0].high
        whole = line.tube.straights[0].step.inputs[0][1]
        assert to_unit(whole.low, "in") == pytest.approx(9)
        assert to_unit(whole.high, "in") == pytest.approx(10)
        assert [label for label, _ in whole.step.inputs] == ["run via 1 up"]

    def test_a_rotation_near_a_half_turn_has_a_narrow_range_on_one_side_of_it(self):
        """The last length steps out of the plane a little to either side: nearly over, this way or that."""
        line = laid(through("[10, 0, 0]", "[7, -0.2 to 0.2, -6]"))
        low, high = degrees(line.tube.bends[1].rotation)
        assert 170 < low < 180 < high < 190
        assert -180 < (low + high) / 2 <= 180

    def test_a_rotation_that_is_mostly_the_other_way_is_negative(self):
        line = laid(through("[10, 0, 0]", "[7, 0.1 to 0.5, -6]"))
        mirrored = laid(through("[10, 0, 0]", "[7, -0.5 to -0.1, -6]"))
        low, high = degrees(line.tube.bends[1].rotation)
        assert degrees(mirrored.tube.bends[1].rotation) == pytest.approx((-high, -low))
        ends = [
            laid(through("[10, 0, 0]", f"[7, {right}, -6]")).tube.bends[1].rotation for right in (0.1, 0.5)
        ]
        assert sorted(degrees(end)[0] for end in ends) == pytest.approx([low, high])
        assert -180 < (low + high) / 2 <= 180

    @pytest.mark.parametrize(
        ("span", "homed"), [((170, 200), (-190, -160)), ((-200, -170), (160, 190)), ((100, 200), (100, 200))]
    )
    def test_a_span_of_rotation_has_its_middle_within_half_a_turn(self, span, homed):
        found = tube.homed(tuple(math.radians(bound) for bound in span))
        assert [math.degrees(bound) for bound in found] == pytest.approx(homed)

    def test_a_range_inside_which_the_bends_change_is_asked_for(self):
        """In the middle the second corner makes room, at one end of its range the bends overlap."""
        line = laid(through("[10, 0, -6]", "[10.8 to 15, 0, -6]"), ("seat: [16, 0, -6]", "seat: [16, 0, 2]"))
        assert line.tube.centreline is None
        assert line.tube.impossible is None
        (missing,) = line.tube.developed_length.missing
        assert "the points of run more closely" in missing.what


class TestImpossible:
    @pytest.mark.parametrize(
        "points",
        [
            ("[10, 0, -5.5]", "[10.4, 0, -5.5]", "[10.4, 0, -6]"),
            ("[10, 0, 4]",),
            ("[10, 0, -6]", "[10, 0, 0]"),
        ],
    )
    def test_points_that_are_no_tube(self, points):
        shape = laid(through(*points)).tube
        assert shape.impossible is not None
        assert shape.centreline is None
        assert shape.straights == shape.bends == ()
        assert shape.developed_length.span is None
