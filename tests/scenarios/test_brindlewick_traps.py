"""The traps of the first aircraft: which rule finds each, what cures it, and that it is found elsewhere too.

Every trap is laid in the example's own text by a small edit (or stands in it already), cured by another,
and planted in a second aircraft of other names, shapes and units. What nothing finds yet is listed with
the reason.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from firmpedal.finding import Finding, NotShown
from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import edited, example, small

Edits = tuple[tuple[str, str], ...]

LATER = {
    6: "no fault but an answer: the right tube is bent the other way round; see the bend tables",
    8: "old brass elbows may have stretched the port's thread: belongs to the plan of what to take out",
    10: "both short hoses bend too tightly: shapes of hoses are not solved yet, so it is asked for",
}


@dataclass(frozen=True)
class Trap:
    number: int
    title: str
    rule: str
    words: str  # of the message in the example
    lay: Edits = ()  # how the trap comes into the example, nothing if it is there
    cure: Edits = ()  # how it goes again
    plant: Edits = ()  # how it comes into the other aircraft
    planted_words: str = ""
    option: str | None = "rigid"


HOSE_TO_PEDAL = "to: left_floor.above\n        made of: hose -4 PTFE braided"
HOSE_TO_CALIPER = "to: left_caliper.inlet\n        made of: hose -4 PTFE braided"
MID = "    to: port_joint.inner\n    made of: tube 5052-O 3/16 in x .035 in\n"
FOUND = (
    Trap(
        1,
        "a rigid tube to the pedal, which swings",
        "rigid-line-between-moving-ends",
        "the ends of left_pedal move 1.61 in against each other",
        lay=((HOSE_TO_PEDAL, HOSE_TO_PEDAL.replace("hose -4 PTFE braided", "tube 5052-O 1/4 x .035")),),
        cure=(("to: left_floor.above\n        made of: tube 5052-O 1/4 x .035", HOSE_TO_PEDAL),),
        plant=(
            (
                "port_wall.inside, made of: hose -3 PTFE braided",
                "port_wall.inside, made of: tube 5052-O 3/16 in x .035 in",
            ),
        ),
        planted_words="the ends of port_top move 80.0 mm against each other",
    ),
    Trap(
        1,
        "a rigid tube into the caliper, which floats",
        "rigid-line-between-moving-ends",
        "left_tail is rigid and goes into left_caliper, which floats",
        lay=((HOSE_TO_CALIPER, HOSE_TO_CALIPER.replace("hose -4 PTFE braided", "tube 5052-O 1/4 x .035")),),
        cure=(("to: left_caliper.inlet\n        made of: tube 5052-O 1/4 x .035", HOSE_TO_CALIPER),),
        plant=(
            (
                "to: port_clamp.feed\n    made of: hose -3 PTFE braided",
                "to: port_clamp.feed\n    made of: tube 5052-O 3/16 in x .035 in",
            ),
        ),
        planted_words="port_end is rigid and goes into port_clamp, which floats",
    ),
    Trap(
        2,
        "a joint inside the leg fairing",
        "joint-in-covered-length",
        "left_axle lies inside left_leg_fairing",
        lay=(
            ("upper: {seat: [6.6, -33.4, -30.2]}", "upper: {seat: [5.6, -32.2, -27.0]}"),
            (
                "          - [5.6, -32.2, -28.6]\n        clamps",
                "          - [6.2, -28.6, -24.6]\n        clamps",
            ),
        ),
        cure=(
            ("upper: {seat: [5.6, -32.2, -27.0]}", "upper: {seat: [6.6, -33.4, -30.2]}"),
            ("          - [6.2, -28.6, -24.6]\n", "          - [5.6, -32.2, -28.6]\n"),
        ),
        plant=(
            ("covered: no", "covered: yes"),
            ("{seat: [440, -400, -215]}", "{seat: [440, -400, -275]}"),
        ),
        planted_words="port_joint lies inside port_boot",
    ),
    Trap(
        3,
        "nylon under a hard foot, hot",
        "pressure-above-rating",
        "left_line is good for 513 psi at 176 degF and gets 489 psi at the normal foot, 978 psi",
        cure=(("made of: plastic nylon 1/4 x .040", "made of: tube 5052-O 1/4 x .035"),),
        plant=((MID, MID.replace("tube 5052-O 3/16 in x .035 in", "plastic nylon 1/4 in x .040 in")),),
        planted_words="port_mid is good for 68.9 bar",
        option=None,
    ),
    Trap(
        4,
        "no union between hose and tube",
        "part-missing-between",
        "both are female, a union or nipple is missing between them",
        lay=(("to: left_axle.upper", "to: left_tail.from"), ("from: left_axle.lower", "from: left_leg.to")),
        cure=(("to: left_tail.from", "to: left_axle.upper"), ("from: left_leg.to", "from: left_axle.lower")),
        plant=(
            ("to: port_joint.inner", "to: port_bow.from"),
            ("from: port_joint.outer", "from: port_mid.to"),
        ),
        planted_words="both are female, a union or nipple is missing between them",
    ),
    Trap(
        5,
        "too few clamps on the leg",
        "clamp-spacing",
        "left_leg is unsupported for",
        lay=(("        clamps: propose", "        clamps: [6.8, 37]"),),
        cure=(("clamps: [6.8, 37]", "clamps: [6.8, 17, 27, 37]"),),
        plant=((MID, MID + "    clamps: none\n"), ("[390, -210, -160], ", "[390, -210, -560], ")),
        planted_words="port_mid is unsupported for",
    ),
    Trap(
        5,
        "tie wraps as the only support",
        "only-tie-wraps",
        "left_line is held by nothing but tie wraps",
        cure=(("support: tie wraps", "support: cushioned clamps"),),
        plant=((MID, MID + "    support: tie wraps\n"),),
        planted_words="port_mid is held by nothing but tie wraps",
        option=None,
    ),
    Trap(
        7,
        "a first straight that is only just long enough",
        "end-straight-too-short",
        "the first straight of left_leg is 1.88 in: enough but only just",
        cure=(("          - [7.0, -9.0, -3.2]\n", "          - [7.0, -9.0, -3.6]\n"),),
        plant=(("[390, -210, -160], ", "[390, -210, -148], "),),
        planted_words="the first straight of port_mid is 37.7 mm: enough but only just",
    ),
    Trap(
        7,
        "a last straight that is only just long enough",
        "end-straight-too-short",
        "the last straight of left_leg is 2.01 in: enough but only just",
        cure=(("upper: {seat: [6.6, -33.4, -30.2]}", "upper: {seat: [6.8, -33.64, -30.52]}"),),
        plant=(("[420, -340, -200]]", "[434, -378, -209]]"),),
        planted_words="the last straight of port_mid is",
    ),
    Trap(
        9,
        "nylon at the wheel",
        "plastic-in-hot-place",
        "left_line is plastic and goes right to left_caliper",
        cure=(("made of: plastic nylon 1/4 x .040", "made of: hose -4 PTFE braided"),),
        plant=(
            (
                "to: port_clamp.feed\n    made of: hose -3 PTFE braided",
                "to: port_clamp.feed\n    made of: plastic nylon 1/4 in x .040 in",
            ),
        ),
        planted_words="port_end is plastic and goes right to port_clamp",
        option=None,
    ),
    Trap(
        9,
        "the old nylon kept as a liner",
        "plastic-in-hot-place",
        "left_leg has a sleeve of the old nylon and runs",
        lay=(("        clamps: propose", "        clamps: propose\n        sleeve: the old nylon"),),
        cure=(("        sleeve: the old nylon", "        sleeve: silicone"),),
        plant=(("to: port_clamp.feed\n", "to: port_clamp.feed\n    sleeve: nylon spiral\n"),),
        planted_words="port_end has a sleeve of nylon spiral and goes right to port_clamp",
    ),
    Trap(
        11,
        "the edges of the leg fairing",
        "covered-edge-chafes",
        "left_leg passes the edge of left_leg_fairing twice",
        cure=(("covered: yes\n    gap: 0.45", "covered: no\n    gap: 0.45"),),
        plant=(("covered: no", "covered: yes"),),
        planted_words="port_bow passes the edge of port_boot twice",
    ),
)


def named(trap: Trap) -> str:
    return f"{trap.number}: {trap.title}"


def found(text: str, option: str | None, rule: str, words: str) -> list[Finding]:
    evaluation = evaluate_text(text, "text", option)
    return [item for item in evaluation.findings if item.rule == rule and words in item.message]


def test_every_trap_is_found_or_said_to_come_later():
    assert sorted({trap.number for trap in FOUND} | set(LATER)) == list(range(1, 12))
    assert not {trap.number for trap in FOUND} & set(LATER)


@pytest.mark.parametrize("trap", FOUND, ids=named)
def test_the_example_shows_the_trap(trap):
    text = edited(example("brindlewick"), *trap.lay)
    assert found(text, trap.option, trap.rule, trap.words)


@pytest.mark.parametrize("trap", FOUND, ids=named)
def test_the_cure_takes_it_away(trap):
    laid = edited(example("brindlewick"), *trap.lay)
    line = trap.words.split(" is ")[0].split(" ")[0]
    cured = evaluate_text(edited(laid, *trap.cure), "text", trap.option)
    left = [item for item in (*cured.findings, *cured.not_shown) if item.rule == trap.rule]
    assert not [item for item in left if isinstance(item, Finding) and trap.words in item.message]
    assert (
        not [item for item in left if isinstance(item, NotShown) and item.place == f"lines.{line}"]
        or trap.number == 1
    )


@pytest.mark.parametrize("trap", FOUND, ids=named)
def test_it_is_found_in_another_aircraft_too(trap):
    text = small("tarnholt")
    assert not found(text, None, trap.rule, trap.planted_words)
    assert found(edited(text, *trap.plant), None, trap.rule, trap.planted_words)


def test_the_fairing_edges_are_where_the_builder_will_look():
    evaluation = evaluate_text(example("brindlewick"), "text", "rigid")
    (crossing,) = [
        item
        for item in evaluation.crossings
        if (item.line, item.zone.name) == ("left_leg", "left_leg_fairing")
    ]
    heights = [to_unit(point[2], "in") for _, point in crossing.passes]
    assert heights == pytest.approx([-5, -28], abs=1e-6)


def test_a_dash_4_union_is_too_wide_for_the_fairing():
    (trap,) = [trap for trap in FOUND if trap.number == 2]
    (finding,) = found(edited(example("brindlewick"), *trap.lay), "rigid", trap.rule, trap.words)
    assert to_unit(finding.allowed.middle, "in") == pytest.approx(0.45)
    assert to_unit(finding.measured.low, "in") >= 0.65


def test_the_tightness_of_hoses_is_asked_for_and_not_passed():
    evaluation = evaluate_text(example("brindlewick"), "text", "rigid")
    asked = [item.place for item in evaluation.not_shown if item.rule == "hose-bend-radius"]
    assert sorted(asked) == [f"lines.{side}_{end}" for side in ("left", "right") for end in ("pedal", "tail")]
