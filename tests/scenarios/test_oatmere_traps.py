"""The traps of two seats in series: which rule finds each, where and how gravely, and what cures it.

Each stands in the aircraft by its shape, or is laid in its right answer by one mistake of a builder; the
cure takes it out again. Not tested, since nothing works it out yet: how a cross hose bows between its
ends, where it may reach the pedal tube that moves against it (its declared path is what is looked at);
and the order in which to bleed the two seats.
"""

from __future__ import annotations

import pytest
from traps import Edits, Trap, cured, laid, level, said

from firmpedal.finding import Level
from firmpedal.pipeline import evaluate_text
from texts import edited, example

NAME = "oatmere"
HOSE, TUBE = "made of: hose -4 PTFE braided", "made of: tube 5052-O 1/4 x .035"
CROSS = "from: copilot_left.outlet\n    to: pilot_left.inlet\n"
CROSSED = CROSS.replace("pilot_left.i", "pilot_right.i")
TO_VALVE = "from: pilot_left.outlet\n    to: valve.left_in\n"
CROSS_PATH = "    via: [{value: [5.2, 4.2, 2.9], mark: assumed}, {value: [5.2, -11.2, 7.5], mark: assumed}]\n"
UNION = (
    "  left_union: {through panel: no, sides: {fore: {seat: [5, -0.6, 1.5]}, aft: {seat: [6, -0.6, 1.5]}}}\n"
)
WITHOUT_VALVE = (  # a free union in the valve's place
    ("    to: valve.left_in\n", "    to: left_union.fore\n"),
    ("    from: valve.left_out\n", "    from: left_union.aft\n"),
    ("  right_run: {from: valve.right_out}\n", "  right_run: {from: right_union.aft}\n"),
    ("    to fitting: straight\n", ""),
    (
        "bulkheads:\n  left_firewall:\n    at:",
        f"bulkheads:\n{UNION}  right_union: {{mirror of: left_union}}\n  left_firewall:\n    at:",
    ),
)


def to_rigid(end: str) -> Edits:
    return ((f"to: {end}\n    {HOSE}", f"to: {end}\n    {TUBE}"),)


def to_hose(end: str) -> Edits:
    return ((f"to: {end}\n    {TUBE}", f"to: {end}\n    made of: hose -4 rubber braided"),)


BY_SHAPE = (
    Trap(
        1,
        "may the pilot's cylinders stand downstream of the copilot's?",
        "series-capability-unknown",
        None,
        "components.pilot_left",
        "pilot_left may stand downstream of copilot_left",
        cure=(("seals when pressed: unknown", "seals when pressed: no"),),
    ),
    Trap(
        1,
        "single brakes leave nothing to ask",
        "series-capability-unknown",
        None,
        "components.pilot_left",
        "pilot_left may stand downstream of copilot_left",
        cured_by="single brakes",
    ),
    Trap(
        8,
        "the pilot's inlet is a high point",
        "air-trap",
        Level.CAUTION,
        "components.pilot_left",
        "air stays at pilot_left.inlet: to rise on to reservoir it would first have to go down 6.20 in",
        cured_by="single brakes",
    ),
    Trap(
        11,
        "a shut valve traps what the brake's heat expands",
        "parking-valve-traps-heat",
        Level.CAUTION,
        "components.valve",
        "valve shut traps fluid at left_caliper and right_caliper",
        cure=WITHOUT_VALVE,
    ),
    Trap(
        13,
        "the last straight of the tube is only just long enough",
        "end-straight-too-short",
        Level.NOTE,
        "lines.left_run",
        "the last straight of left_run is 1.58 in: enough, but only just",
        cure=(("      - [44.5, -14.0, -1.2]\n", "      - [44.0, -13.67, -0.97]\n"),),
    ),
)

MISTAKES = (
    Trap(
        1,
        "cylinders that seal when pressed",
        "held-by-the-other-seat",
        Level.WARNING,
        "components.pilot_left",
        "the copilot's left pedal leaves left_caliper as hard as it was pressed until the pilot lets go",
        lay=(("seals when pressed: unknown", "seals when pressed: yes"),),
        cure=(("seals when pressed: yes", "seals when pressed: no"),),
    ),
    Trap(
        1,
        "the pilot's cylinder fed at its outlet, side by side with the copilot's",
        "seat-order-wrong",
        Level.WARNING,
        "components.pilot_left",
        "pilot_left makes no pressure: its outlet lies open to reservoir through copilot_left at rest",
        lay=((CROSS, CROSS.replace("inlet", "outlet")), (TO_VALVE, TO_VALVE.replace("outlet", "inlet"))),
    ),
    Trap(
        2,
        "each seat's left joined to the other's right",
        "sides-crossed",
        Level.WARNING,
        "lines.left_cross",
        "leads from copilot_left (left) to pilot_right (right): the copilot's left pedal brakes right",
        lay=((CROSS, CROSSED),),
        cure=((CROSSED, CROSSED.replace("copilot_left.o", "copilot_right.o")),),
    ),
    Trap(
        3,
        "a cross hose straight across, through the other pedal's tube",
        "too-near-to-stay-clear",
        Level.WARNING,
        "lines.left_cross",
        "left_cross touches pilot_right_tube",
        lay=((f"{CROSS}    {HOSE}\n{CROSS_PATH}", f"{CROSS}    {HOSE}\n"),),
        cure=((f"{CROSS}    {HOSE}\n", f"{CROSS}    {HOSE}\n    via: [[5.4, -3, 5]]\n"),),
    ),
    Trap(
        4,
        "a tube from the firewall to the copilot's cylinder",
        "rigid-line-between-moving-ends",
        Level.WARNING,
        "lines.left_cabin",
        "the ends of left_cabin move 3.00 in against each other",
        lay=to_rigid("copilot_left.inlet"),
        cure=to_hose("copilot_left.inlet"),
    ),
    Trap(
        4,
        "a tube from the pilot's cylinder to the valve",
        "rigid-line-between-moving-ends",
        Level.WARNING,
        "lines.left_to_valve",
        "the ends of left_to_valve move 3.00 in against each other",
        lay=to_rigid("valve.left_in"),
        cure=to_hose("valve.left_in"),
    ),
    Trap(
        5,
        "the valve between the seats",
        "parking-valve-not-after-both-seats",
        Level.WARNING,
        "components.valve",
        "it stands on the reservoir's side of pilot_left and pilot_right",
        lay=(
            (CROSS, CROSS.replace("pilot_left.inlet", "valve.left_in")),
            (TO_VALVE, "from: valve.left_out\n    to: pilot_left.inlet\n"),
            (
                "    from: valve.left_out\n    to: left_belly",
                "    from: pilot_left.outlet\n    to: left_belly",
            ),
            ("right_run: {from: valve.right_out}", "right_run: {from: pilot_right.outlet}"),
        ),
    ),
    Trap(
        5,
        "a valve that can creep shut",
        "parking-valve-without-stop",
        Level.WARNING,
        "components.valve",
        "nothing stops valve from creeping shut in flight",
        lay=(("stopped open: yes", "stopped open: no"),),
    ),
    Trap(
        5,
        "a valve out of reach",
        "parking-valve-without-stop",
        Level.CAUTION,
        "components.valve",
        "valve cannot be reached with the belts on",
        lay=(("reachable strapped in: yes", "reachable strapped in: no"),),
    ),
    Trap(
        9,
        "soft aluminium",
        "tube-yields",
        Level.WARNING,
        "lines.left_run",
        "left_run first yields at 1,390 psi",
        lay=((f"{TUBE}\n", "made of: tube 3003-O 1/4 x .035\n"),),
        cure=(("made of: tube 3003-O 1/4 x .035\n    via", "made of: tube 3003-O 1/4 x .049\n    via"),),
    ),
    Trap(
        10,
        "a tube down the leaf",
        "rigid-line-between-moving-ends",
        Level.WARNING,
        "lines.left_gear",
        "left_gear is rigid and goes into left_caliper, which floats",
        lay=to_rigid("left_caliper.inlet"),
        cure=to_hose("left_caliper.inlet"),
    ),
    Trap(
        10,
        "no clamps down the leaf",
        "clamp-spacing",
        Level.CAUTION,
        "lines.left_gear.clamps",
        "left_gear is unsupported for 34.35 in; supports may be 24.00 in apart",
        lay=(("    clamps: propose\n    along", "    clamps: none\n    along"),),
        cure=(("    clamps: none\n    along", "    clamps: [10, 22]\n    along"),),
    ),
)


@pytest.mark.parametrize("trap", BY_SHAPE, ids=str)
def test_it_stands_in_the_aircraft_by_its_shape(trap):
    assert [level(item) for item in said(trap, example(NAME), None)] == [trap.level]


@pytest.mark.parametrize("trap", MISTAKES, ids=str)
def test_the_right_answer_does_not_have_it(trap):
    assert not said(trap, example(NAME), None)


@pytest.mark.parametrize("trap", MISTAKES, ids=str)
def test_one_mistake_brings_it_in(trap):
    assert [level(item) for item in said(trap, laid(trap, example(NAME)), None)] == [trap.level]


@pytest.mark.parametrize("trap", [trap for trap in (*BY_SHAPE, *MISTAKES) if trap.has_cure], ids=str)
def test_the_cure_takes_it_away(trap):
    assert not cured(trap, example(NAME))


def test_moving_the_cross_hose_does_not_let_the_air_out():
    """The high point is the cylinder itself, however the hose lies."""
    (trap,) = [trap for trap in BY_SHAPE if trap.rule == "air-trap"]
    lower = edited(example(NAME), (CROSS_PATH, CROSS_PATH.replace("7.5", "2.9")))
    assert said(trap, lower, None)


def test_the_first_sketch_shows_many_of_them_at_once():
    found = {item.rule for item in evaluate_text(example(NAME), "text", "first sketch").findings}
    assert found >= {"sides-crossed", "too-near-to-stay-clear", "parking-valve-without-stop", "tube-yields"}
