"""What stands beside a box of the measuring form: the thing in words, how to take it, its unit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.meanings import MEANINGS
from firmpedal.report.sheet import Blank
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.model.display import Display
    from firmpedal.project.unknowns import Item

POINTS = ("position", "positions", "vector")
POINT_KEYS = ("ball", "disc", "box", "bar", "about", "via")  # inside shapes and movements
LISTS_OF_POINTS = ("box", "bar", "within", "via")  # a number after one of these is a point, not a coordinate
NO_LENGTHS = ("axis", "line")  # which way a disc is turned, which line a stretch is of
LENGTH_KEYS = ("radius", "thickness", "from", "to")

# By key; where one key means several things, SECTION_HOWS has those that are not measured so.
HOWS = {
    "pad": "tape, from the lever's pivot to the middle of the pad, square to the push",
    "arm": "tape, from the lever's pivot to the pin of the cylinder's rod, square to the rod",
    "bore": "stamped or cast on it, or its leaflet",
    "stroke": "its leaflet, or push the rod by hand with the port open",
    "free stroke": "press slowly, watch the reservoir: how far the rod goes until fluid stops coming up",
    "at rest": "a spring balance on the rod, along it, as it begins to move; line open",
    "pressed": "a spring balance on the rod, along it, at the end of the stroke; line open",
    "seal friction": "a spring balance on the rod, line open, less what the spring takes",
    "travel": "dial gauge on the piston side, from pads just touching to full pressure",
    "under": "a pressure gauge, as the dial or the burette is read",
    "volume": "filled without air, one end plugged: a burette beside the pump, pressed and let go",
    "travel to stop": "tape along the pad's arc, pedal pressed by hand with the bleeder open",
    "rated pressure": "its leaflet or its maker",
    "seat": "screw a straight nipple in by hand; tape and square to the tip of its cone",
    "at": "tape and square to the middle of the hole or of the thread's face",
    "faces": "a word or two: forward, aft, left, right, up, down, aft and down",
    "normal": "which way the panel looks: up, aft, left ...",
    "fill cap": "the lowest edge of the filler neck, where fluid would spill",
    "capacity": "fill from the low to the full mark out of a measuring jug",
    "air space": "what goes in above the full mark until it spills",
    "seals when pressed": "its maker knows; no if the other seat still gets through while this pedal is held",
    "feet add up": "where the other seat gets through, yes if what it presses in pushes its piston's back",
    "stopped open": "does a stop, spring or catch hold it fully open in flight?",
    "reachable strapped in": "belted, seat as you fly",
    "outlet leg": "in hand: a calliper gauge, from the middle of its stem to the tip of its other end",
    "stands off": "screwed in tight: tape from the face of the port to the middle of the other leg; of a "
    "straight one, to its other end",
    "body width": "in hand: calliper gauge across the widest flats of its body",
    "outside diameter": "calliper gauge on the bare hose, or a strip of paper once round it, over 3.14",
    "clamp spacing": "ask its maker how far apart the line is to be held",
    "wheel": "the same word at each caliper of one wheel, another one for each other wheel",
    "own": "look at the wheel: no, if another caliper grips the same disc",
    "count per side": "on one side of the disc",
    "pad gap": "feeler gauges: all that the pads travel before both touch",
    "pad wear": "a new lining's thickness less the least that its maker allows",
    "floats": "does it slide on pins?",
    "lifts off": "which way and how far it comes off the disc",
    "thickness": "calliper gauge at the edge, or a hooked wire through the hole; with doublers",
    "material": "aluminium, steel, stainless steel, plywood, sandwich, solid laminate, fabric",
    "seals": "nitrile, fluorocarbon or ethylene propylene: its leaflet or its maker",
    "body": "the metal: aluminium, magnesium, steel, cast iron ...",
    "lowest structure": "plumb line; leg, axle or bracket, not the tyre",
    "foremost structure": "leg, axle or bracket, not the tyre",
    "temperature": "heat strip at the line's last fitting, after a hard taxi",
    "gap": "a drill shank or feeler that just goes in",
    "fluid": "its specification, from the can or the placard; never mix",
    "nose up": "a level on the cabin floor, as it stands",
    "landing weight": "from the weighing report",
    "type certificate": "yes, no; if yes, the maker's approved data decide",
    "bend radius": "stamped on the bender; to the tube's middle",
    "hole": "drill or calliper gauge",
    "grommet": "yes or no",
    "tyre radius": "tape, from the axle to the floor, loaded as usual",
    "wheelbase": "plumb lines from the axles, tape along the floor",
    "weight on mains": "from the weighing report, both main wheels together",
    "weight on nose or tail": "from the same weighing",
    "mains to cg": "from the weighing report",
    "cg height": "its designer knows; it is near that of engine and seats",
    "landing speed": "when braking begins; not under the stalling speed, flaps down",
    "static thrust": "spring scale at the tail, full throttle, chocks in",
    "thrust line height": "tape, over the main wheels, up to a string along the propeller's axis",
    "thrust line nose up": "level with a scale of degrees, along the propeller's axis, as it stands",
    "effective radius": "tape, from the middle of the axle to the middle of the pistons",
    "mass": "kitchen scales",
    "port": "temperature label there, after three hard stops: the hottest field that has turned",
    "air": "thermometer in the shade, on the day of the trial",
    "rudder": "at the cylinder's port, full left rudder against neutral",
    "on jacks": "mark the axle against a square on the floor, jack up, measure how far it has moved",
    "worn": "slide the caliper by the wear of one pad",
    "disc": "plumb line and tape to the middle of the axle at the disc",
    "ball": "plumb line and tape to its middle",
    "radius": "tape, from its middle",
    "tightest bend": "round things of known size held inside the bend, everything moved through all it can "
    "do, on both sides: write the tighter",
    "axis": "which way its axle points: right for a wheel; else aft, up ...",
}
SECTION_HOWS = {
    ("sides", "seat"): "hold the fitting in place; tape and square to the tip of its cone",
    ("pedals", "seat"): "a word for whose it is, the same at each pedal of one seat",
    (
        "ports",
        "thread",
    ): "a plug of known thread that goes in by hand; else calliper and thread gauge: how wide, and how many "
    "threads to the inch",
    (
        "ports",
        "arm",
    ): "with the elbow tight, where its open end looks, in words: right, aft and down",
    ("pistons", "bore"): "its leaflet, or a calliper gauge on a piston pushed out a little",
    ("foot", "normal"): "scales or a spring balance at the pedal, pressed as for a usual stop",
    ("disc", "material"): "a magnet holds on steel and cast iron; its maker knows",
    ("lines", "temperature"): "heat strip on the line where it gets hottest, after a hard taxi",
    ("swells", "under"): "the pressure of the maker's sheet, or of the gauge as the burette is read",
    ("expansion curve", "under"): "the pressure that stands in its maker's table",
    ("accepted", "at"): "the name of the thing, as the finding says it",
}
AXES = ("aft ", "right ", "up ")
BY_SIGN = "\"'%°"  # units that are no words
SHAPE_THICKNESS = "calliper gauge or feeler at its edge"


ALIKE = Blank(
    "the other side is alike",
    "if not: how, on the back; and make it its own under Describe",
    ("yes or no",),
)


def blank_of(item: Item, display: Display) -> Blank:
    """One row of the form."""
    return Blank(_what(item), _how(item), _boxes(item, display))


def asked_blank(what: str, key: Item | None, dimension: Dimension | None, display: Display) -> Blank:
    """A row for what a rule asks for: by its dimension, else by the key of the file that would hold it."""
    if dimension is not None:
        how = _how(key) if key is not None and key.reads is not None and key.reads.dimension else ""
        return Blank(what, how, (display.unit(dimension) or "",))
    if key is not None:
        return Blank(what, _how(key), _boxes(key, display))
    return Blank(what, "", ("yes or no" if what.startswith("whether ") else "",))


def with_unit(item: Item, words: str, display: Display) -> str:
    """A figure as the file has it, with the unit that is meant where it stands bare."""
    if any(each.isalpha() or each in BY_SIGN for each in words.replace(" to ", "").removeprefix("about ")):
        return words
    box = _boxes(item, display)[0]
    unit = next((box.removeprefix(way) for way in AXES if box.startswith(way)), box)
    return f"{words} {unit}".rstrip()


def _what(item: Item) -> str:
    inner = item.steps[2:] if len(item.steps) > 2 else item.steps[1:] or item.steps
    hidden = ("ports", "sides", "where", "brake")
    words = [step for step in inner if step not in hidden and not step.isdecimal()]
    what = " ".join(words) or item.key
    return f"{what} (supposed: {item.supposed})" if item.supposed else what


def _how(item: Item) -> str:
    if item.key == "thickness" and "where" in item.steps:
        return SHAPE_THICKNESS
    return how_at(item.steps[:-1], item.key)


def how_at(steps: Sequence[str], key: str) -> str:
    """How a key is measured, by the innermost sort of thing that it stands in; empty where nothing is said.

    Args:
        steps: The place of the thing that has the key, step by step, such as components, left_caliper,
            ports, inlet.
        key: The key.
    """
    section = next((step for step in reversed(steps) if key in MEANINGS.get(step, {})), "")
    return SECTION_HOWS.get((section, key), HOWS.get(key, ""))


def _boxes(item: Item, display: Display) -> tuple[str, ...]:
    length = display.unit(Dimension.LENGTH) or ""
    point = tuple(f"{way}{length}" for way in AXES)
    if item.reads is None and _is_whole_point(item):
        return point
    if item.reads is None:
        return (length,) if item.key in LENGTH_KEYS else _inside(item, point, display)
    if item.reads.method in POINTS:
        return point
    if item.reads.method == "answer":
        return ("yes or no",)
    if item.reads.dimension is not None:
        return (display.unit(item.reads.dimension) or "",)
    return ("",)


def _is_whole_point(item: Item) -> bool:
    """Whether a place with a name, or one point of a list, is unknown as a whole."""
    steps = item.steps[:-1] if item.steps[-1] == "value" else item.steps
    if steps[0] == "points":
        return len(steps) == len(("points", "its name"))
    return steps[-1].isdecimal() and steps[-2] in LISTS_OF_POINTS


def _inside(item: Item, point: tuple[str, ...], display: Display) -> tuple[str, ...]:
    """A figure inside a shape or a movement."""
    if item.key == "swing":
        return (display.unit(Dimension.ANGLE) or "",)
    if item.key in NO_LENGTHS:
        return ("",)
    numbered = item.steps[-1].isdecimal()
    if item.steps[0] == "moving" or item.key in POINT_KEYS:
        return (point[int(item.steps[-1]) - 1],) if numbered and int(item.steps[-1]) <= 3 else point
    return (point[0].removeprefix(AXES[0]),)
