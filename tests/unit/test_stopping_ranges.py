"""Stopping where figures are ranges: each verdict only where all of its band bears it, by hand."""

from __future__ import annotations

import pytest
from test_stopping import STANCE, tailwheel, with_ground

from firmpedal.finding import Level
from firmpedal.pipeline import evaluate_text
from firmpedal.report.sheet import Group, Paragraph, Table
from firmpedal.report.stopping import EITHER, NOSE, TYRES, stopping_sheet


def nose_over(height):
    """The centre of gravity 12 in behind the main wheels and this high; the hard foot is 200 lbf."""
    text = tailwheel(STANCE.replace("cg height: 30", f"cg height: {height}"))
    return [each for each in evaluate_text(text).findings if each.rule == "noses-over"]


@pytest.mark.parametrize(
    ("height", "level"),
    [("40", Level.CAUTION), ("40 to 45", Level.CAUTION), ("30 to 40", Level.NOTE), ("30", Level.NOTE)],
)
def test_the_hard_foot_tips_it_for_sure_only_where_all_of_the_band_does(height, level):
    """153.4 lbf make 0.2842 g, so 12 / 40 g takes 161.9 lbf and 12 / 30 g takes 215.9: 200 lies between."""
    (found,) = nose_over(height)
    assert found.level is level


def test_a_hard_foot_that_is_a_range_tips_it_for_sure_only_where_all_of_it_does():
    """161.9 lbf lie within 150 to 200, and below 165 to 200."""
    stance = tailwheel(STANCE.replace("cg height: 30", "cg height: 40"))
    for hard, level in (("150 to 200", Level.NOTE), ("165 to 200", Level.CAUTION)):
        evaluation = evaluate_text(stance.replace("hard: 200", f"hard: {hard}"))
        (found,) = (each for each in evaluation.findings if each.rule == "noses-over")
        assert found.level is level


@pytest.mark.parametrize(("height", "said"), [("20 to 26", True), ("20 to 25", False)])
def test_the_panic_foot_is_said_where_it_may_tip_it(height, said):
    """It is 250 lbf; 12 / 26 g takes 249.1 lbf, and 12 / 25 g takes 259.1."""
    assert bool(nose_over(height)) is said


def lead(text):
    """The first words of the sheet, with a foot that passes every limit: 400 lbf make 0.741 g."""
    evaluation = evaluate_text(text.replace("hard: 200, panic: 250", "hard: 400, panic: 450"))
    return " ".join(each.text for each in stopping_sheet(evaluation).blocks if isinstance(each, Paragraph))


@pytest.mark.parametrize(
    ("height", "friction", "words"),
    [
        ("30", "0.5", NOSE),  # tyres 24 / 45 = 0.533 g, tail 0.4 g
        ("20", "0.5", TYRES),  # tyres 24 / 50 = 0.48 g, tail 0.6 g
        ("20 to 30", "0.5", EITHER),  # tyres 0.48 to 0.533 g, tail 0.4 to 0.6 g
        ("26", "0.35 to 0.6", EITHER),  # tyres 0.330 to 0.649 g, tail 0.4615 g
        ("20 to 22", "0.5", TYRES),  # tyres 0.48 to 0.490 g, tail 0.545 g at least
        ("28 to 30", "0.5", NOSE),  # tyres 0.522 g at least, tail 0.429 g at most
    ],
)
def test_tyres_or_tail_is_told_only_where_the_bands_are_apart(height, friction, words):
    """On a tailwheel type tyres slide at f (L - b) / (L - f h), and the tail lifts at b / h."""
    stance = STANCE.replace("cg height: 30", f"cg height: {height}")
    assert words in lead(tailwheel(f"{stance}, usual tyre friction: {friction}"))


def table(evaluation, title):
    groups = (each for each in stopping_sheet(evaluation).blocks if isinstance(each, Group))
    (found,) = (each for each in groups if each.blocks[0].text == title)
    return next(each for each in found.blocks if isinstance(each, Table))


def test_each_row_of_the_feet_has_its_own_pressure_and_torque():
    """500 psi and 1,219.3 lbf in are of 153.398 lbf; 200 and 250 lbf make as much more."""
    rows = table(evaluate_text(with_ground(STANCE)), "What each foot gives").rows
    for force, row in zip((153.398, 200, 250), rows, strict=True):
        pressure, torque = (words.split()[0].replace(",", "") for words in row[3].splitlines())
        assert float(pressure) == pytest.approx(500 * force / 153.398, abs=0.51)
        assert float(torque) == pytest.approx(1219.3 * force / 153.398, rel=6e-3)
