"""The traps of Fennimoss, each with what finds it, the mistake that brings it in, and its cure."""

from __future__ import annotations

from traps import Trap

from firmpedal.finding import Level

NYLON = "made of: plastic nylon 3/16 x .025             # wall assumed"
UNION = "        form: straight\n        sides:\n          ahead: {seat: {value"
GEAR = "          - [98.5, -18.0, 6.0]\n          - [105.0, -32.0, -18.0]\n"
INBOARD = GEAR.replace("-32.0, -18.0", "-36.0, -20.0")  # of the disc, and through it
BRACKET = "          ahead: {seat: [94.5, -14.0, 7.0]}\n          behind: {seat: [96.6, -15.0, 7.2]}\n"
KEEL = "          - [14.0, -2.2, -3.0]\n          - [88.0, -2.2, -1.0]\n          - [92.0, -6.0, 3.0]\n"

FLOOR = "          left_keel: {grommet: yes}              # near [12.5, -3.6, 0]\n"
GEAR_BRACKET = "      left_gear_bracket:\n        normal: aft\n"
ON_BRACKET = f"{GEAR_BRACKET}        thickness: {{value: 0.063, mark: assumed}}\n        material: aluminium"
IN_SANDWICH = f"{GEAR_BRACKET}        thickness: 0.75\n        material: sandwich"
MID_SIDES = "{ahead: {seat: [49, -2.2, -2.05]}, behind: {seat: [50.5, -2.2, -2.01]}}"
FRONT_PATH = "via: [[12.0, -4.0, 1.0], [14.0, -2.2, -3.0]]"
FRONT = f"from: left_bracket.behind, to: left_mid.ahead, made of: tube 5052-O 3/16 x .035, {FRONT_PATH}"
JOINT_IN_KEEL = (
    ("        from: left_bracket.behind\n", "        from: left_mid.behind\n"),
    (
        f"          - [12.0, -4.0, 1.0]\n{KEEL}        clamps",
        "          - [88.0, -2.2, -1.0]\n          - [92.0, -6.0, 3.0]\n        clamps",
    ),
    (
        "      left_pedal:\n        from",
        f"      left_front: {{{FRONT}}}\n      left_pedal:\n        from",
    ),
    (
        "      left_bracket:\n",
        f"      left_mid: {{through panel: no, sides: {MID_SIDES}}}\n      left_bracket:\n",
    ),
    ("mirror: [left_bracket,", "mirror: [left_mid, left_front, left_bracket,"),
)

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
        6,
        "the tube has to be threaded in before its last bends",
        "thread-in-before-bending",
        Level.NOTE,
        "lines.left_keel",
        "left_keel goes through keel, which nobody gets at from the side, and is bent at both ends",
        cure=(("    access: no\n", "    access: yes\n"),),
        option="rigid",
    ),
    Trap(
        11,
        "nobody knows whether the hole in the floor has a grommet",
        "panel-hole-without-grommet",
        None,
        "panels.cabin_floor.passes.left_line",
        "left_line in cabin_floor near aft 12.50, right -3.55, up 0.00 in",
        cured_by="rigid",
    ),
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
        Level.NOTE,
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
        "the hose on the disc's side of the strut, on its wheels already",
        "too-near-to-stay-clear",
        Level.WARNING,
        "lines.left_gear",
        "left_gear touches left_disc",
        lay=(
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
    Trap(
        4,
        "a union through the sandwich itself",
        "panel-thicker-than-thread",
        Level.CAUTION,
        "bulkheads.left_gear_bracket",
        "is 0.75 in thick, and the thread of AN832-3D spans 0.20 to 0.50 in",
        lay=((ON_BRACKET, IN_SANDWICH),),
        cure=(
            ("thickness: 0.75\n        material: sandwich", "thickness: 0.125\n        material: aluminium"),
        ),
        option="rigid",
    ),
    Trap(
        4,
        "the foam crushes under the nut",
        "panel-cannot-carry-fitting",
        Level.CAUTION,
        "bulkheads.left_gear_bracket",
        "the foam of a sandwich crushes under the nut",
        lay=((ON_BRACKET, IN_SANDWICH),),
        cure=(("material: sandwich", "material: sandwich\n        solid insert: yes"),),
        option="rigid",
    ),
    Trap(
        5,
        "only 6 ft sticks can be shipped",
        "tube-longer-than-stock",
        Level.CAUTION,
        "lines.left_keel",
        "left_keel is cut 99.30 in long, and the longest piece to be had is 72.00 in",
        lay=(("longest tube: 12 ft", "longest tube: 6 ft"),),
        cure=(("longest tube: 6 ft", "longest tube: 9 ft"),),
        option="rigid",
    ),
    Trap(
        5,
        "a union in the closed keel",
        "joint-without-access",
        Level.WARNING,
        "bulkheads.left_mid",
        "left_mid lies inside keel, which is closed",
        lay=JOINT_IN_KEEL,
        cure=(("    access: no\n", "    access: yes\n"),),
        option="rigid",
    ),
    Trap(
        11,
        "a bare hole in the floor",
        "panel-hole-without-grommet",
        Level.CAUTION,
        "panels.cabin_floor.passes.left_keel",
        "left_keel passes cabin_floor near aft 12.50, right -3.55, up 0.00 in in a hole without a grommet",
        lay=((FLOOR, FLOOR.replace("yes", "no")),),
        option="rigid",
    ),
    Trap(
        11,
        "a floor of which nobody has thought",
        "panel-hole-without-grommet",
        Level.CAUTION,
        "lines.left_keel",
        "left_keel passes cabin_floor near aft 12.50, right -3.55, up 0.00 in, and nothing is said of a hole",
        lay=((FLOOR, ""),),
        option="rigid",
    ),
)
