"""Stopping where figures are ranges: each verdict only where all of its band bears it, by hand."""

from __future__ import annotations

import pytest
from test_stopping import AIRCRAFT, STANCE, tailwheel, with_ground

from firmpedal.finding import Level
from firmpedal.pipeline import evaluate_text
from firmpedal.report.sheet import Group, Paragraph, Table
from firmpedal.report.stopping import stopping_sheet
from firmpedal.report.stopping_answer import EITHER, NOSE, TYRES

FEET = "normal: 153.398 lbf, hard: 200, panic: 250"


def nose_over(height, feet=FEET):
    """The centre of gravity 12 in behind the main wheels and this high."""
    text = tailwheel(STANCE.replace("cg height: 30", f"cg height: {height}")).replace(FEET, feet)
    return [each for each in evaluate_text(text).findings if each.rule == "noses-over"]


@pytest.mark.parametrize(
    ("height", "level"),
    [
        ("43", Level.WARNING),
        ("42", Level.CAUTION),
        ("41 to 43", Level.CAUTION),
        ("40", Level.CAUTION),
        ("40 to 45", Level.CAUTION),
        ("26 to 40", Level.CAUTION),
        ("30", Level.CAUTION),
        ("25 to 40", Level.NOTE),
        ("25 to 30", Level.NOTE),
    ],
)
def test_the_level_goes_by_the_foot_that_does_it_and_by_whether_all_of_the_band_does(height, level):
    """153.398 lbf make 0.28424 g, and what takes 12 / h g goes with it.

    h of 43 in takes 150.6 lbf, 42: 154.2, 40: 161.9, 30: 215.9, 26: 249.1, 25: 259.1; the normal foot is
    153.398 lbf, the hard one 200, the panic one 250.
    """
    (found,) = nose_over(height)
    assert found.level is level


@pytest.mark.parametrize(
    ("feet", "level"),
    [
        ("normal: 100, hard: 150 to 200, panic: 150 to 200", Level.NOTE),
        ("normal: 100, hard: 165 to 200, panic: 165 to 200", Level.CAUTION),
        ("normal: 150 to 170, hard: 170, panic: 200", Level.CAUTION),
        ("normal: 162 to 170, hard: 170, panic: 200", Level.WARNING),
    ],
)
def test_a_foot_that_is_a_range_tips_it_for_sure_only_where_all_of_it_does(feet, level):
    """It takes 161.9 lbf."""
    (found,) = nose_over("40", feet)
    assert found.level is level


@pytest.mark.parametrize(("friction", "said"), [("0.29", False), ("0.31", True), ("0.29 to 0.31", True)])
def test_tyres_that_slide_before_never_let_it_tip(friction, said):
    """With the tail up all the weight is on the mains: they hold friction times g, and 12 / 40 g tips it."""
    stance = f"{STANCE.replace('cg height: 30', 'cg height: 40')}, peak tyre friction: {friction}"
    evaluation = evaluate_text(tailwheel(stance))
    assert any(each.rule == "noses-over" for each in evaluation.findings) is said
    assert (evaluation.results.stopping.nose_over is not None) is said


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


def contradictions(text):
    return evaluate_text(text).results.stopping.contradictions


SCALES = "wheelbase: 60, cg height: 30, weight on mains: 1056 lb, weight on nose or tail: 264 lb"


@pytest.mark.parametrize(
    ("declared", "contradicts"),
    [
        ("13.1", ""),
        ("13.3", "at most"),
        ("13.1 to 15", ""),
        ("13.3 to 15", "at most"),
        ("10.9", ""),
        ("10.7", "at least"),
        ("9 to 10.9", ""),
        ("9 to 10.7", "at least"),
    ],
)
def test_a_distance_that_all_of_its_band_puts_elsewhere_contradicts_the_scales(declared, contradicts):
    """A fifth of the weight is on the third wheel, so it is 12 in; a tenth of it, 1.2 in, is let go."""
    found = contradictions(with_ground(f"{SCALES}, mains to cg: {declared}"))
    assert [each.relation for each in found] == [contradicts] * bool(contradicts)


@pytest.mark.parametrize(
    ("mains", "landing", "contradicts"),
    [
        ("1056 lb", "1320 lb", False),
        ("1060 lb", "1320 lb", True),
        ("1050 to 1100 lb", "1320 lb", False),
        ("1060 to 1100 lb", "1300 to 1322 lb", True),
        ("1060 to 1100 lb", "1300 to 1330 lb", False),
    ],
)
def test_scales_that_surely_show_more_than_the_landing_weight_contradict_it(mains, landing, contradicts):
    """On the third wheel are 264 lb."""
    text = with_ground(SCALES.replace("1056 lb", mains)).replace("1320 lb", landing)
    assert bool(contradictions(text)) is contradicts


@pytest.mark.parametrize(
    ("torque", "relation", "twice"),
    [
        (1219.3 * 1.05, None, False),
        (1219.3 * 1.2, "at most", False),
        (1219.3 * 2, "at most", True),
        (1219.3 * 3, "at most", False),
        (1219.3 * 0.8, "at least", False),
    ],
)
def test_a_torque_is_held_against_the_friction_that_is_declared(torque, relation, twice):
    """At 500 psi 1,219.3 lbf in are friction 0.3; twice that is what the pistons of both sides would be."""
    leaflet = f"lining friction: 0.3\n    leaflet: {{torque: {torque:.1f} lbf in, at pressure: 500}}"
    found = contradictions(AIRCRAFT.replace("lining friction: 0.3", leaflet))
    assert [each.relation for each in found] == [relation] * 2 * bool(relation)
    assert any("both sides" in each.reason for each in found) is twice
