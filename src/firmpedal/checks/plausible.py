"""Figures far from what light aircraft have: mostly a slip of the pen, a unit, or a point in its decimals."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from functools import cache, lru_cache
from typing import TYPE_CHECKING

from firmpedal.checks.acceptance import means
from firmpedal.checks.view import practice
from firmpedal.finding import Finding, Level
from firmpedal.model.fields import Declared
from firmpedal.model.shapes import Ball, Bar, Box, Disc, HalfSpace, Sheet, Stretch
from firmpedal.model.space import NamedPoint, Position
from firmpedal.model.surroundings import KeepClear, Obstacle
from firmpedal.quantity import Mark, Value, exactly
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.checks.view import View
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.display import Display

    Odd = tuple[Value, Value, Value]  # a figure, and the two ends of what is usual

RULE = "figure-out-of-the-usual"
# What is walked through besides the things of the file: their points and shapes, not what is bought.
PIECES = (Position, NamedPoint, Box, Ball, Bar, Disc, HalfSpace, Sheet, Stretch)
# Wide on purpose: outside it is a slip far more often than an odd aircraft. Common practice, no source.
USUAL: dict[str, tuple[float, float, str]] = {
    "landing_weight": (200, 6000, "lb"),
    "normal": (5, 400, "lbf"),
    "hard": (5, 400, "lbf"),
    "panic": (5, 500, "lbf"),
    "tyre_radius": (2, 20, "in"),
    "wheelbase": (20, 400, "in"),
    "cg_height": (5, 100, "in"),
    "mains_to_cg": (0, 100, "in"),
    "landing_speed": (15, 120, "kt"),
    "static_thrust": (50, 3000, "lbf"),
    "thrust_line_height": (10, 150, "in"),
    "thrust_line_nose_up": (0, 25, "deg"),
    "bore": (1 / 4, 4, "in"),
    "stroke": (1 / 20, 4, "in"),
    "free_stroke": (0, 1 / 2, "in"),
    "rated_pressure": (100, 6000, "psi"),
    "capacity": (0.1, 100, "cu in"),
    "pad_gap": (0, 1 / 2, "in"),
    "pad_wear": (0, 3 / 4, "in"),
    "effective_radius": (1, 12, "in"),
    "pad": (1, 20, "in"),
    "arm": (1 / 2, 15, "in"),
    "travel_to_stop": (1 / 4, 15, "in"),
    "bend_radius": (1 / 4, 6, "in"),
    "outside_diameter": (1 / 8, 2, "in"),
    "sleeved_diameter": (1 / 8, 3, "in"),
    "outlet_leg": (1 / 4, 4, "in"),
    "stands_off": (0, 5, "in"),
    "body_width": (1 / 4, 2, "in"),
    "tightest_bend": (1 / 4, 40, "in"),
    "hole": (1 / 8, 4, "in"),
    "longest_tube": (6, 1200, "in"),
    "wrench_length": (2, 20, "in"),
    "distance": (0, 12, "in"),
    "temperature": (-60, 1200, "degF"),
    "hot_day": (30, 140, "degF"),
    "aft": (-400, 500, "in"),  # no light aircraft is longer, wherever its datum is
    "right": (-250, 250, "in"),  # no brake line goes further out than this
    "up": (-200, 250, "in"),
}
# The same word for different things.
OF_A_THING: dict[tuple[str, str], tuple[float, float, str]] = {
    ("Disc", "mass"): (0.3, 30, "lb"),
    ("Disc", "radius"): (1.5, 15, "in"),
    ("Caliper", "mass"): (0.2, 20, "lb"),
    ("Bulkhead", "thickness"): (0.01, 3, "in"),
    ("Panel", "thickness"): (0.01, 3, "in"),
}
BRAKE_DISC: dict[str, tuple[float, float, str]] = {
    "radius": (1.5, 15, "in"),
    "thickness": (1 / 16, 1.5, "in"),
}


def figure_out_of_the_usual(view: View) -> Iterator[Finding]:
    """A figure is one that light aircraft have.

    A word, not a refusal: bores, radii, masses, forces, temperatures and places far from what is usual are
    mostly a wrong unit, a point in the wrong place or a slip of the pen. The ranges are wide on purpose.
    """
    for value, low, high in _odd_in(view.aircraft):
        yield Finding(
            RULE,
            Level.NOTE,
            value.place,
            _words(view.display, value, low, high),
            ("look at the figure, its unit and where its point stands", "leave it, if it is so"),
            value,
            high if value.low > high.high else low,
            "at most" if value.low > high.high else "at least",
            practice("common-practice"),
        )


def odd_figures(aircraft: Aircraft, display: Display) -> Iterator[tuple[str, str]]:
    """Places of figures out of the usual that nobody has accepted, each with the words of its finding.

    It takes the aircraft alone, for whoever types a figure and waits for no evaluation.
    """
    for value, low, high in _odd_in(aircraft):
        if not any(each.rule == RULE and means(each.at, value.place) for each in aircraft.accepted):
            yield value.place, _words(display, value, low, high)


def _words(display: Display, value: Value, low: Value, high: Value) -> str:
    usual = " to ".join(display.value(each) for each in (low, high))
    return f"{value.label} is {display.value(value)}; from {usual} is usual"


def _odd_in(thing: object) -> Iterator[Odd]:
    """Every declared figure of a thing, and of what stands in it, that is surely outside its usual range."""
    for name, one, limits in _figures(thing):
        if not isinstance(one, Value):
            yield from _known_odd(one)
        elif one.span is not None and limits is not None and one.place:
            yield from _if_odd(name, one, *_in_si(limits))


@lru_cache(maxsize=8192)  # a change leaves nearly every thing of a file as it was
def _known_odd(thing: Declared) -> tuple[Odd, ...]:
    return tuple(_odd_in(thing))


def _if_odd(name: str, value: Value, least: float, most: float) -> Iterator[Odd]:
    if value.high < least or value.low > most:
        label = f"usual {name.replace('_', ' ')}"
        low, high = (exactly(label, value.dimension, bound, Mark.MEMORY) for bound in (least, most))
        yield value, low, high


@cache
def _in_si(limits: tuple[float, float, str]) -> tuple[float, float]:
    """Both ends of a range of the tables above; every figure of a file is held against one."""
    least, most, unit = limits
    return from_unit(least, unit), from_unit(most, unit)


def _figures(thing: object) -> Iterator[tuple[str, Value | Declared, tuple[float, float, str] | None]]:
    """Every figure of a thing and its shapes, by the name of its field; and the things that stand in it."""
    kind = type(thing).__name__
    for name, inner in _parts(thing):
        for one in inner if isinstance(inner, tuple) else (inner,):
            if isinstance(one, Value):
                yield name, one, OF_A_THING.get((kind, name)) or USUAL.get(name)
            elif isinstance(thing, KeepClear) and thing.kind is Obstacle.DISC and isinstance(one, Disc):
                for key, value, limits in _figures(one):
                    yield key, value, BRAKE_DISC.get(key, limits)
            elif isinstance(one, Declared):
                yield name, one, None
            elif isinstance(one, PIECES):
                yield from _figures(one)


def _parts(thing: object) -> Iterator[tuple[str, object]]:
    if isinstance(thing, Declared):
        yield from ((name, getattr(thing, name)) for name in type(thing).model_fields)
    elif is_dataclass(thing):
        yield from ((each.name, getattr(thing, each.name)) for each in fields(thing))
