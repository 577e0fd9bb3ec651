"""The traps of a pusher that parks nose down: which rule finds each, where and how gravely, and its cure.

Each stands in the aircraft by its shape, or is laid in its right answer by one mistake of a builder; the
cure takes it out again. Not tested, since nothing works it out yet: that the tube has to be threaded in
before its last bends and its last flare; and how the volume of a smaller bore is spent, beyond the stroke
that it needs.
"""

from __future__ import annotations

import pytest
from traps import Trap, cured, laid, level, said

from firmpedal.finding import Level
from texts import example

NAME = "fennimoss"
NYLON = "made of: plastic nylon 3/16 x .025             # wall assumed"
UNION = "        form: straight\n        sides:\n          ahead: {seat: {value"
GEAR = "          - [98.5, -18.0, 6.0]\n          - [105.0, -32.0, -18.0]\n"
INBOARD = GEAR.replace("-32.0, -18.0", "-36.0, -20.0")  # of the disc, and through it
BRACKET = "          ahead: {seat: [94.5, -14.0, 7.0]}\n          behind: {seat: [96.6, -15.0, 7.2]}\n"
KEEL = "          - [14.0, -2.2, -3.0]\n          - [88.0, -2.2, -1.0]\n          - [92.0, -6.0, 3.0]\n"
JACKED = (("gear: {on jacks: unknown}", "gear: {on jacks: [0, 1, -3]}"),)

AS_WRITTEN = (
    Trap(
        1,
        "nylon at a wheel that the aircraft is steered by",
        "plastic-in-hot-place",
        Level.WARNING,
        "lines.left_line",
        "left_line is plastic and goes right to left_caliper",
        cured_by="rigid",
    ),
    Trap(
        1,
        "hot nylon swells until the pedal is on the floor",
        "stroke-short",
        Level.WARNING,
        "components.left_cylinder",
        "left_cylinder has 0.70 in of stroke",
        cured_by="rigid",
    ),
)

BY_SHAPE = (
    Trap(
        3,
        "the bulkhead at the gear stands above the keel",
        "air-trap",
        Level.CAUTION,
        "bulkheads.left_gear_bracket",
        "air stays at left_gear_bracket",
        lay=(),
        cure=(
            (BRACKET, BRACKET.replace("7.0]", "-7.5]").replace("7.2]", "-7.6]")),
            (
                f"{KEEL}        clamps",
                "          - [14.0, -2.2, -0.5]\n          - [88.0, -2.2, -7.0]\n        clamps",
            ),
            (f"{GEAR}          - [107.0", f"{GEAR.replace('6.0]', '-9.0]')}          - [107.0"),
        ),
        option="rigid",
    ),
    Trap(
        3,
        "parked, the line stands above the reservoir",
        "line-above-reservoir",
        Level.CAUTION,
        "lines.left_gear",
        "left_keel 22.38 in (parked)",
        cure=(("fill cap: [6, -4, 6]", "fill cap: [6, -4, 31]"),),
        option="rigid",
    ),
    Trap(
        3,
        "a cylinder that shuts at rest lets nothing back to its vent",
        "line-above-reservoir",
        Level.CAUTION,
        "lines.left_gear",
        "left_keel 22.38 in (parked)",
        cure=(("    stroke: 0.70\n", "    stroke: 0.70\n    opens at rest: no\n"),),
        option="rigid",
    ),
    Trap(
        8,
        "a heel makes little pressure",
        "pressure-below-usual",
        Level.CAUTION,
        "components.left_cylinder",
        "left_cylinder makes 313 psi at the normal foot",
        cure=(("bore: 0.625", "bore: 1/2"),),
        option="rigid",
    ),
)

MISTAKES = (
    Trap(
        1,
        "the old nylon kept as a duct into the heat",
        "plastic-in-hot-place",
        Level.WARNING,
        "lines.left_gear",
        "left_gear has a sleeve of the old nylon and goes right to left_caliper",
        lay=(("sleeve: silicone", "sleeve: the old nylon"),),
        cure=(("sleeve: the old nylon", "sleeve: fire sleeve"),),
        option="rigid",
    ),
    Trap(
        2,
        "the hose on the disc's side of the strut",
        "too-near-to-stay-clear",
        Level.WARNING,
        "lines.left_gear",
        "left_gear touches left_disc",
        lay=(
            *JACKED,
            (
                f"{GEAR}          - [107.0",
                f"{INBOARD}          - [107.0",
            ),
        ),
        cure=(
            (
                "          - [105.0, -36.0, -20.0]\n          - [107.0",
                "          - [105.0, -32.0, -18.0]\n          - [107.0",
            ),
        ),
        option="rigid",
    ),
    Trap(
        7,
        "too few clamps along the keel",
        "clamp-spacing",
        Level.CAUTION,
        "lines.left_keel.clamps",
        "left_keel is unsupported for 25.00 in; supports may be 12.00 in apart",
        lay=((f"{KEEL}        clamps: propose", f"{KEEL}        clamps: [10, 35, 60, 85]"),),
        cure=(("[10, 35, 60, 85]", "[10, 21, 32, 43, 54, 65, 76, 87, 96]"),),
        option="rigid",
    ),
    Trap(
        9,
        "the -4 fitting of an old plan",
        "dash-sizes-differ",
        Level.WARNING,
        "bulkheads.left_bracket",
        "-4 37-degree flare, male against -3 tube with a 37-degree flare",
        lay=(
            (
                UNION,
                UNION.replace("        sides", "        fitting: AN832-4D\n        sides"),
            ),
        ),
        option="rigid",
    ),
    Trap(
        10,
        "a tube to a cylinder that swings",
        "rigid-line-between-moving-ends",
        Level.WARNING,
        "lines.left_pedal",
        "the ends of left_pedal move 0.394 in against each other",
        lay=(
            (
                "to: left_bracket.ahead\n        made of: hose -3 PTFE braided",
                "to: left_bracket.ahead\n        made of: tube 5052-O 3/16 x .035",
            ),
        ),
        option="rigid",
    ),
)


@pytest.mark.parametrize("trap", [*AS_WRITTEN, *BY_SHAPE], ids=str)
def test_it_stands_in_the_aircraft(trap):
    assert [level(item) for item in said(trap, example(NAME), trap.option)] == [trap.level]


@pytest.mark.parametrize("trap", MISTAKES, ids=str)
def test_the_right_answer_does_not_have_it(trap):
    assert not said(trap, example(NAME), trap.option)


@pytest.mark.parametrize("trap", MISTAKES, ids=str)
def test_one_mistake_brings_it_in(trap):
    assert [level(item) for item in said(trap, laid(trap, example(NAME)), trap.option)] == [trap.level]


@pytest.mark.parametrize(
    "trap", [trap for trap in (*AS_WRITTEN, *BY_SHAPE, *MISTAKES) if trap.has_cure], ids=str
)
def test_the_cure_takes_it_away(trap):
    """A high point that another attitude does not have stays worth a note; it is no longer a fault."""
    assert not [item for item in cured(trap, example(NAME)) if level(item) is not Level.NOTE]
