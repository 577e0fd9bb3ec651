"""One value of a file is changed at its place; what is written elsewhere is told by its line."""

# ruff: noqa: E501 - one case a line reads as a table

from __future__ import annotations

import pytest
from planting import MIRROR, SMALL

from firmpedal.project import read_text
from firmpedal.project.write import EditError, edited

OPTION = """\
options:
  thick:
    bulkheads: {left_floor: {thickness: 1/8}}   # a doubler
    lines:
      left_short: {from: left_floor.below, to: left_caliper.inlet, made of: hose -4 PTFE braided}
      left_lower: removed
"""
TEXT = SMALL + "  right_x: {like: left_upper, from: left_upper.to, to: left_upper.from}\n" + MIRROR + OPTION


def test_number_is_changed_and_nothing_else():
    after = edited(TEXT, "components.left_cylinder.bore", "3/4")
    assert after == TEXT.replace("bore: 5/8", "bore: 3/4")
    assert read_text(after + "").text == after


def test_number_inside_a_list_inside_braces():
    after = edited(TEXT, "components.left_caliper.ports.inlet.seat.2", "-33")
    assert after == TEXT.replace("[9.4, -32.6, -31.4]", "[9.4, -33, -31.4]")


def test_whole_list_and_keys_in_braces():
    assert edited(TEXT, "points.left_mark", "{from: left_floor, aft: 2}") == TEXT.replace(
        "left_mark: [20, -4, 1]", "left_mark: {from: left_floor, aft: 2}"
    )
    assert edited(TEXT, "pedals.left_heel.brake", "{pad: 6, arm: 3}") == TEXT.replace(
        "{pad: 5, arm: 2-1/2}", "{pad: 6, arm: 3}"
    )


@pytest.mark.parametrize("end", ["\r\n", "\r", "\n"])
def test_line_ends_and_remarks_stay(end):
    text = TEXT.replace("bore: 5/8", "bore:   5/8     # measured twice").replace("\n", end)
    after = edited(text, "components.left_cylinder.bore", "0.63 in")
    assert after == text.replace("5/8     #", "0.63 in #")


@pytest.mark.parametrize("written", ["bore:", "bore:   # not yet", "bore :", "bore: ''"])
def test_value_that_was_left_out_is_put_in(written):
    text = TEXT.replace("bore: 5/8", written)
    after = edited(text, "components.left_cylinder.bore", "3/4")
    (cylinder,) = [part for part in read_text(after).aircraft.cylinders if part.name == "left_cylinder"]
    assert cylinder.bore.span == pytest.approx((0.01905, 0.01905))
    assert ("# not yet" in after) == ("# not yet" in written)


def test_value_of_an_option_is_changed_in_the_option():
    path = "bulkheads.left_floor.thickness"
    assert edited(TEXT, path, "0.2", "thick") == TEXT.replace("thickness: 1/8", "thickness: 0.2")
    assert edited(TEXT, path, "0.2") == TEXT.replace("thickness: 0.095", "thickness: 0.2")
    assert edited(TEXT, "options.thick." + path, "0.2") == edited(TEXT, path, "0.2", "thick")


REFUSED = [
    ("components.right_cylinder.bore", None, "it comes from line 19", "write it out for this one"),
    ("lines.right_x.made of", None, "it comes from line 43", "write it out for this one"),
    ("lines.left_short.from", None, "stands in option `thick` only", "change it in option thick"),
    ("components.left_cylinder.bore", "thick", "holds for every option", "without an option"),
    ("components.left_cylinder.boar", None, "`boar` is not written under components left_cylinder", "`bore`"),
    ("components.left_cylindr.bore", None, "`left_cylindr` is not written under components", "`left_cylinder`"),
    ("component.left_cylinder.bore", None, "`component` is not written under the file", "`components`"),
    ("lines.left_lower.via.7", None, "`7` is not written under lines left_lower via", "write it out first"),
    ("lines.left_lower.clamps", None, "`clamps` is not written under lines left_lower", "write it out first"),
    ("lines.left_lower", None, "takes more than one line", "inside it"),
    ("", None, "is not written", "write it out first"),
]  # fmt: skip


@pytest.mark.parametrize(("path", "option", "message", "advice"), REFUSED)
def test_what_cannot_be_changed_is_told_kindly(path, option, message, advice):
    with pytest.raises(EditError) as caught:
        edited(TEXT, path, "1", option)
    assert message in str(caught.value)
    assert advice in caught.value.suggestion


def test_value_behind_an_anchor_or_taken_over_is_not_changed():
    text = TEXT.replace("bore: 5/8", "bore: &b 5/8").replace("thickness: 0.095", "thickness: *b")
    for path in ("components.left_cylinder.bore", "bulkheads.left_floor.thickness"):
        with pytest.raises(EditError, match="shared with another place"):
            edited(text, path, "1")
    merged = TEXT.replace("  left_heel: {", "  left_heel: &h {").replace(
        "bulkheads:\n", "  other: {<<: *h, side: right}\nbulkheads:\n"
    )
    with pytest.raises(EditError, match="it comes from line 33"):
        edited(merged, "pedals.other.brake.pad", "1")
    assert edited(merged, "pedals.other.side", "left") == merged.replace("side: right}", "side: left}")


def test_text_with_problems_can_be_changed_to_put_them_right():
    text = TEXT.replace("bore: 5/8", "bore: 5/8 psi")
    assert not read_text(edited(text, "components.left_cylinder.bore", "5/8 in")).problems
