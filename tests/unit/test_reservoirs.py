"""What pads take from a reservoir, by hand, where one wheel or two hang on it."""

from __future__ import annotations

import pytest

from firmpedal.pipeline import Evaluation, evaluate_text
from texts import edited, example, small

CUBIC_INCH = 0.0254**3
CAP = "    fill cap: [-3, 0, 27]\n"
SECOND_WHEEL = (
    (
        "below: {seat: [46.6, -15.6, -3.6]}",
        "below: {seat: [46.6, -15.6, -3.6]}, third: {seat: [46, -14, -3]}",
    ),
    ("pedals:\n", "  caliper_2: {like: caliper, shift: {right: 78}}\npedals:\n"),
    (
        "lines:\n",
        "lines:\n  other: {from: belly.third, to: caliper_2.inlet, made of: hose -4 PTFE braided}\n",
    ),
)


def evaluated(*edits: tuple[str, str]) -> Evaluation:
    return evaluate_text(edited(small("withyford"), *edits), "withyford")


def found(evaluation: Evaluation, rule: str):
    return [finding for finding in evaluation.findings if finding.rule == rule]


def asked(evaluation: Evaluation, rule: str):
    return [missing.what for item in evaluation.not_shown if item.rule == rule for missing in item.missing]


def test_one_wheel_takes_what_its_piston_sweeps():
    """Piston 1-3/4, both pads 0.1: pi/4 x 3.0625 x 0.2 = 0.481 cu in."""
    (finding,) = found(evaluated((CAP, f"{CAP}    capacity: 0.4\n")), "reservoir-too-small")
    assert finding.measured.middle / CUBIC_INCH == pytest.approx(0.481, abs=5e-4)
    assert finding.place == "components.pot"


def test_a_reservoir_for_two_wheels_has_to_hold_what_both_take():
    enough_for_one = (CAP, f"{CAP}    capacity: 0.9\n")
    assert not found(evaluated(enough_for_one), "reservoir-too-small")
    (finding,) = found(evaluated(enough_for_one, *SECOND_WHEEL), "reservoir-too-small")
    assert finding.measured.middle / CUBIC_INCH == pytest.approx(0.962, abs=5e-4)
    assert "caliper and caliper_2" in finding.message


def test_pistons_pushed_home_need_air_space():
    capacity = f"{CAP}    capacity: 2\n"
    (finding,) = found(evaluated((CAP, f"{capacity}    air space: 0.4\n")), "reservoir-overflows")
    assert "draw fluid off" in " ".join(finding.tries)
    assert not found(evaluated((CAP, f"{capacity}    air space: 0.5\n")), "reservoir-overflows")


def test_air_space_is_asked_for_only_once_the_capacity_is_known():
    assert not asked(evaluated(), "reservoir-overflows")
    assert asked(evaluated(), "reservoir-too-small") == ["what pot gives from its full to its low mark"]
    known = evaluated((CAP, f"{CAP}    capacity: 2\n"))
    assert asked(known, "reservoir-overflows") == ["what pot has free above its full mark"]


def test_unknown_wear_is_asked_for_too():
    worn = evaluated((CAP, f"{CAP}    capacity: 2\n"), ("    pad wear: 0.1\n", ""))
    assert asked(worn, "reservoir-too-small") == ["caliper pad wear"]


def test_each_built_in_reservoir_is_asked_for_once():
    evaluation = evaluate_text(example("brindlewick"), "brindlewick", "rigid")
    assert asked(evaluation, "reservoir-too-small") == [
        f"what the reservoir of {side}_cylinder gives from its full to its low mark"
        for side in ("left", "right")
    ]
