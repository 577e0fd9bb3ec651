"""Stopping against the end of the pedal's travel, and full throttle against the weight that it shifts."""

import pytest
from evaluated import words

from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Answer, Dimension, Mark, exactly
from firmpedal.report.sheet import Group, Paragraph, Tone
from firmpedal.report.stopping import stopping_sheet
from firmpedal.report.stopping_travel import does_it, endings, first_end
from texts import example


def force(number):
    return exactly("foot", Dimension.FORCE, number, Mark.READ)


@pytest.mark.parametrize(
    ("needed", "end", "answer"),
    [
        (50, (60, 70), Answer.YES),
        (65, (60, 70), Answer.UNKNOWN),
        (75, (60, 70), Answer.NO),
        (120, (200, 300), Answer.NO),
    ],
)
def test_beyond_the_end_of_the_travel_a_harder_foot_does_no_more(needed, end, answer):
    assert does_it(force(needed), force(100), end) is answer


def test_plastic_that_ends_the_travel_hot_is_said_where_it_stops():
    """50 to 56 lbf by the pedal's own curve; the hard foot is 120, and the wanted stop takes 46 to 61."""
    evaluation = evaluate_text(example("fennimoss"), "fennimoss.yaml")
    low, high = first_end(endings(evaluation))
    assert (low / 4.4482216, high / 4.4482216) == pytest.approx((50, 56), abs=1)
    said = [
        block.text
        for block in stopping_sheet(evaluation).blocks
        if isinstance(block, Paragraph) and block.tone is Tone.CAUTION
    ]
    assert any("makes no more pressure" in text for text in said)
    rigid = evaluate_text(example("fennimoss"), "fennimoss.yaml", "rigid")
    assert "makes no more pressure" not in words(stopping_sheet(rigid))


def test_full_throttle_may_take_the_weight_off_the_wheels_that_hold_it():
    """571 lbf of grip for 560 of pull leave no room for what the pull takes off the main wheels."""
    assert "yes yes" not in words(stopping_sheet(evaluate_text(example("oatmere"), "oatmere.yaml")))


@pytest.mark.parametrize(
    ("name", "option", "rows"),
    [
        (
            "fennimoss",
            None,
            ["normal", "hard", "panic"],
        ),  # it may end at 50 lbf
        ("oatmere", None, ["hard", "panic"]),  # at 75 lbf or more: the normal foot's 75 just goes so far
        ("brindlewick", "rigid", []),
    ],
)
def test_a_foot_that_the_pedal_may_not_go_along_with_is_told_as_such(name, option, rows):
    sheet = stopping_sheet(evaluate_text(example(name), f"{name}.yaml", option))
    (table,) = (
        block.blocks[1]
        for block in sheet.blocks
        if isinstance(block, Group) and block.blocks[0].text == "What each foot gives"
    )
    told = [row[0].partition(",")[0] for row in table.rows if "if the pedal goes so far" in row[0]]
    assert told == rows
    assert ("if the pedal goes so far" in sheet.blocks[0].text) is bool(rows)


@pytest.mark.parametrize(
    ("old", "new"), [("    pad gap: 0.020\n", "    pad gap: unknown\n"), ("stroke: 0.80", "stroke: unknown")]
)
def test_where_the_travel_is_not_known_no_foot_is_said_to_do_it(old, new):
    """As written hot plastic ends the travel from 102 lbf on; that a figure is missing makes it no longer."""
    text = example("brindlewick")
    assert text.count(old) == 1
    evaluation = evaluate_text(text.replace(old, new), "brindlewick.yaml")
    assert first_end(endings(evaluation))[0] == 0
    said = words(stopping_sheet(evaluation))
    assert "can go is not known, so neither is whether it goes along with the hard foot" in said
    assert said.count("if the pedal goes so far") >= len(("normal", "hard", "panic"))
    assert "makes no more pressure" not in said
    assert "is not known, so neither" not in words(stopping_sheet(evaluate_text(text, "brindlewick.yaml")))
