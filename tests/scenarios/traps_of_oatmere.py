"""The traps of Oatmere, each with what finds it, the mistake that brings it in, and its cure."""

from __future__ import annotations

from traps import Edits, Trap

from firmpedal.finding import Level

HOSE, TUBE = "made of: hose -4 PTFE braided", "made of: tube 5052-O 1/4 x .035"
CROSS = "from: copilot_left.outlet\n    to: pilot_left.inlet\n"
CROSSED = CROSS.replace("pilot_left.i", "pilot_right.i")
FEED_END = "    via: [{value: [-8.2, -1, 24], mark: assumed}, {value: [-8.2, -1, 20], mark: assumed}]\n"
FEED_IN_STEEL = f"to: left_firewall.engine_side\n    {HOSE}\n    from fitting: AN816-4\n"
FLOOR = "      left_run: {grommet: yes}                   # near [10.1, -2.0, 0]\n"
BELLY = "    material: aluminium\n    form: 90 degrees"
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
        "the last straight of left_run is 1.58 in: enough but only just",
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
        6,
        "two elbows in ports 1.2 apart: by the estimated lengths of their legs it may go or not",
        "elbows-cannot-turn",
        None,
        "components.valve",
        "whether the elbows at left_in and right_in can both be screwed in",
        lay=(("to fitting: straight", "to fitting: 90 degrees"),),
        cure=(("to fitting: 90 degrees\n    to end", "to fitting: AN816-4D\n    to end"),),
    ),
    Trap(
        6,
        "two elbows in ports 1.0 apart",
        "elbows-cannot-turn",
        Level.CAUTION,
        "components.valve",
        "left_in",
        lay=(
            ("to fitting: straight", "to fitting: 90 degrees"),
            ("faces: forward, at: [4.0, -0.6, 1.5]", "faces: forward, at: [4.0, -0.5, 1.5]"),
            ("faces: forward, at: [4.0, 0.6, 1.5]", "faces: forward, at: [4.0, 0.5, 1.5]"),
        ),
        cure=(
            ("at: [4.0, -0.5, 1.5]", "at: [4.0, -0.7, 1.5]"),
            ("at: [4.0, 0.5, 1.5]", "at: [4.0, 0.7, 1.5]"),
        ),
    ),
    Trap(
        7,
        "aluminium at the reservoir, on the engine's side",
        "steel-forward-of-firewall",
        Level.WARNING,
        "components.reservoir.ports.left_out",
        "has aluminium in it: AN816-4D",
        lay=(("    fittings: steel\n    via", "    via"),),
        cure=((f"to: left_firewall.engine_side\n    {HOSE}\n", FEED_IN_STEEL),),
    ),
    Trap(
        7,
        "aluminium through the firewall",
        "steel-forward-of-firewall",
        Level.WARNING,
        "bulkheads.left_firewall",
        "has aluminium in it: AN832-4D, AN924-4D",
        lay=(
            ("    fittings: steel\n    via", "    via"),
            ("    fittings: steel                              #", "    #"),
        ),
        cure=(("    form: straight\n    #", "    form: straight\n    fitting: AN832-4\n    #"),),
    ),
    Trap(
        7,
        "a bare hose on the engine's side",
        "fire-sleeve-missing",
        Level.WARNING,
        "lines.left_feed",
        "through engine_side, a fire zone, without a fire sleeve",
        lay=(("    sleeve: fire sleeve\n", ""),),
        cure=((FEED_END, f"{FEED_END}    sleeve: silicone fire sleeve\n"),),
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
        "a caliper's fitting that hangs lowest at the wheel",
        "fitting-exposed-at-wheel",
        Level.CAUTION,
        "components.left_caliper.ports.inlet",
        "left_caliper.inlet hangs lower than the lowest structure at left_main",
        lay=(("[49.0, -39.0, -29.5]", "[49.0, -39.0, -25]"),),
        cure=(("[49.0, -39.0, -25]", "[49.0, -39.0, -28.5]"),),
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
    Trap(
        12,
        "a bare hole in the floor",
        "panel-hole-without-grommet",
        Level.CAUTION,
        "panels.cabin_floor.passes.left_run",
        "left_run passes cabin_floor near aft 10.13, right -2.03, up 0.00 in in a hole without a grommet",
        lay=((FLOOR, FLOOR.replace("yes", "no")),),
    ),
    Trap(
        12,
        "a floor of which nobody has thought",
        "panel-hole-without-grommet",
        Level.CAUTION,
        "lines.left_run",
        "left_run passes cabin_floor near aft 10.13, right -2.03, up 0.00 in, and nothing is said of a hole",
        lay=((FLOOR, ""),),
        cure=(
            (
                "      right_run: {grommet: yes}\n",
                "      right_run: {grommet: yes}\n      left_run: {grommet: yes}\n",
            ),
        ),
    ),
    Trap(
        13,
        "an elbow in the belly's fabric",
        "panel-cannot-carry-fitting",
        Level.WARNING,
        "bulkheads.left_belly",
        "left_belly sits in fabric: fabric carries no fitting",
        lay=((BELLY, BELLY.replace("aluminium", "fabric")),),
        cure=((BELLY.replace("aluminium", "fabric"), BELLY.replace("aluminium", "steel")),),
    ),
)
