"""What holds a line: clamps as given or proposed, and the longest length left free."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace

import pytest

from firmpedal.checks.support import clamp_spacing
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark, Value, total
from firmpedal.units import Dimension, to_unit
from texts import edited, small

PROPOSED = ("radius: 3/4\n", "radius: 3/4\n    clamps: propose\n")
WHOLE = 10 + 6 - 2 * 0.75 + 0.75 * math.pi / 2  # developed length of the tube, from its corner and radius


def laid(clamps: str, *edits: tuple[str, str]):
    radius = ("radius: 3/4\n", f"radius: 3/4\n    clamps: {clamps}\n")
    evaluation = evaluate_text(edited(small("quillfen"), radius, *edits), "text")
    (line,) = evaluation.laid
    return line.supports


def inches(value) -> tuple:
    return tuple(
        pytest.approx(bound, abs=1e-9) for bound in (to_unit(value.low, "in"), to_unit(value.high, "in"))
    )


def test_without_clamps_the_whole_line_is_free():
    supports = laid("none")
    assert supports.stations == ()
    assert inches(supports.longest_gap) == (WHOLE, WHOLE)
    assert not supports.proposed


@pytest.mark.parametrize(
    ("clamps", "gap"),
    [("[5]", WHOLE - 5), ("[9]", 9), ("[4, 11]", 7), ("[11, 4]", 7), ("[1, 2, 3]", WHOLE - 3)],
)
def test_the_fittings_at_the_ends_count_and_the_order_does_not(clamps, gap):
    assert inches(laid(clamps).longest_gap) == (gap, gap)


def test_clamps_are_counted_from_the_first_end():
    stations = laid("[11, 4]").stations
    assert [to_unit(station.middle, "in") for station in stations] == pytest.approx([4, 11])
    assert [station.label for station in stations] == ["clamp 1 of run", "clamp 2 of run"]
    assert {station.mark for station in stations} == {Mark.MEASURED}


def test_proposed_clamps_keep_the_spacing():
    supports = laid("propose")
    assert supports.proposed
    assert supports.stations
    assert supports.longest_gap.high <= supports.spacing.low
    assert {station.mark for station in supports.stations} == {Mark.DERIVED}


class TestRanges:
    def test_a_clamp_known_only_within_a_range(self):
        assert inches(laid("[8 to 9]").longest_gap) == (8, 9)
        assert inches(laid("[4 to 5, 11]").longest_gap) == (6, 7)

    def test_a_line_whose_length_has_a_range(self):
        supports = laid("[5]", ("seat: [16, 0, -6]", "seat: [15 to 17, 0, -6]"))
        assert inches(supports.longest_gap) == (WHOLE - 6, WHOLE - 4)


class TestUnknown:
    def test_a_clamp_nobody_has_measured(self):
        supports = laid("[8, unknown]")
        assert supports.longest_gap.span is None
        assert len(supports.longest_gap.missing) == 1
        assert len(supports.stations) == 1

    def test_a_line_whose_length_is_unknown(self):
        supports = laid("[8]", ("[10, 0, -6]", "[10, unknown, -6]"))
        assert supports.longest_gap.span is None
        assert supports.longest_gap.missing

    def test_no_spacing_in_the_table_proposes_nothing(self):
        supports = laid("propose", ("tube 5052-O 1/4 x .035", "tube 5052-O 6 mm x 1 mm"))
        assert supports.stations == ()
        assert supports.spacing.span is None


def test_a_clamp_where_there_is_no_line_holds_nothing():
    supports = laid("[8, 18]")
    assert inches(supports.longest_gap) == (8, 8)
    assert len(supports.beyond) == 1
    assert len(supports.stations) == 1


def test_a_clamp_that_may_be_past_the_end_is_taken_as_on_the_line():
    supports = laid("[8, 15 to 17]")
    assert supports.beyond == ()
    assert inches(supports.longest_gap) == (8, 9)


class TestJustAsFarAsTheyMayBe:
    """Sums of lengths in metres round: 0.3429000000000001 against 13.5 in, which is 0.3429."""

    @pytest.mark.parametrize("end", ["80, 0, -6", "80.25, 0, -6", "93.75, 0, -6", "107.25, 0, -6"])
    def test_what_is_proposed_is_accepted(self, end):
        text = edited(small("quillfen"), ("seat: [16, 0, -6]", f"seat: [{end}]"), PROPOSED)
        evaluation = evaluate_text(text, "text")
        assert len(evaluation.laid[0].supports.stations) > 4
        assert not [item for item in evaluation.findings if item.rule == "clamp-spacing"]
        assert not [item for item in evaluation.not_shown if item.rule == "clamp-spacing"]

    def test_a_tenth_of_a_millimetre_more_is_too_far(self):
        gap = "[13.504, 27, 40.5, 54, 67.5]"
        text = edited(
            small("quillfen"),
            ("seat: [16, 0, -6]", "seat: [80, 0, -6]"),
            ("radius: 3/4\n", f"radius: 3/4\n    clamps: {gap}\n"),
        )
        assert [item for item in evaluate_text(text, "text").findings if item.rule == "clamp-spacing"]


def test_a_range_of_the_fittings_about_the_limit_asks_for_one_clamp_and_not_for_them():
    """13 to 14 in by what a standard allows of an elbow's leg, where 13.5 in is the most."""
    evaluation = evaluate_text(edited(small("quillfen"), PROPOSED), "text")
    (line,) = evaluation.laid
    legs = [
        Value("leg of an elbow", Dimension.LENGTH, (low * 0.0254, high * 0.0254), Mark.ESTIMATE, place)
        for low, high, place in ((6, 7, "catalogue"), (7, 7, "lines.run.clamps.1"))
    ]
    gap = total("longest unsupported length of run", legs, "lines.run.longest gap")
    free = replace(line, supports=replace(line.supports, longest_gap=gap))
    view = SimpleNamespace(laid=(free,), show=evaluation.display.value)
    (unclear,) = clamp_spacing(view)
    (missing,) = unclear.missing
    assert missing.place == "lines.run.clamps"
    assert "13.00 to 14.00 in, and supports may be 13.50 in apart" in missing.what
