"""Rules about bent tube: what can be bent, flared and made up."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.quantity import Mark

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.tube import TubeShape

LEAST_BEND = math.radians(5)  # what gives way at all: our estimate


def _tubes(view: View) -> list[tuple[LaidLine, TubeShape]]:
    return [(line, line.tube) for line in view.laid if line.tube is not None]


def tube_cannot_be_bent(view: View) -> Iterator[Outcome]:
    """The points of a tube must leave room for its bends.

    A straight between two bends cannot be shorter than nothing, two points cannot coincide, and a
    tube cannot double back on itself.
    """
    for line, shape in _tubes(view):
        if shape.impossible is not None:
            message = f"{line.name} cannot be bent: {shape.impossible.words}"
            tries = ("move the two points apart", "take a smaller bend radius if the tube allows it")
            reason = practice("firmpedal-derivation", Mark.DERIVED)
            yield Finding("tube-cannot-be-bent", Level.WARNING, line.place, message, tries, sources=reason)
        elif shape.bends and shape.radius.high <= line.stock.outside_diameter.low / 2:
            radius = view.show(shape.radius)
            message = f"{line.name} cannot be bent to {radius}: that is inside the tube itself"
            advice = ("write the radius of your bender, to the centreline",)
            reason = practice("firmpedal-derivation", Mark.DERIVED)
            yield Finding("tube-cannot-be-bent", Level.WARNING, line.place, message, advice, sources=reason)
        elif shape.centreline is None:
            missing = shape.developed_length.missing
            yield NotShown("tube-cannot-be-bent", line.place, f"whether {line.name} can be bent", missing)


def bend_radius_below_minimum(view: View) -> Iterator[Outcome]:
    """No bend is tighter than the least radius for the tube's size and metal.

    The radius is to the centreline. A tighter bend flattens the tube and thins its outside.
    """
    for line, shape in _tubes(view):
        if not shape.bends:
            continue
        least = line.stock.least_bend_radius.named(f"least bend radius of {line.stock.phrase}")
        radius = shape.radius.named(f"bend radius of {line.name}", f"{line.place}.bend radius")
        message = f"{line.name} is bent to {view.show(radius)}; the least for this tube is {view.show(least)}"
        yield from judge(
            Limit(radius, least, "at least"),
            rule="bend-radius-below-minimum",
            level=Level.CAUTION,
            place=f"{line.place}.bend radius",
            message=message,
            tries=(f"a bender of {view.show(least)} or more", "an elbow fitting at this corner"),
        )


def straight_between_bends_too_short(view: View) -> Iterator[Outcome]:
    """The straight between two bends is long enough for the bender's clamp.

    Checked when the file has the bench's `straight between bends`.
    """
    bench = view.aircraft.bench
    if "straight_between_bends" not in bench.written:
        return
    least = bench.straight_between_bends.named("straight that the bender needs between two bends")
    for line, shape in _tubes(view):
        for number, straight in enumerate(shape.straights[1:-1], 2):
            found = f"straight {number} of {line.name} is {view.show(straight)}"
            message = f"{found}; the bender needs {view.show(least)}"
            yield from judge(
                Limit(straight, least, "at least"),
                rule="straight-between-bends-too-short",
                level=Level.CAUTION,
                place=line.place,
                message=message,
                tries=("move the two corners apart", "bend these two in the other order on a test piece"),
            )


def no_bend_in_rigid_line(view: View) -> Iterator[Outcome]:
    """A rigid line has at least one bend.

    A straight tube between two fixed ends cannot be cut exactly, cannot take vibration and cannot
    grow with heat; the flares pay for it. A kink of less than five degrees is no bend.
    """
    for line, shape in _tubes(view):
        if shape.centreline is not None and all(bend.angle.high < LEAST_BEND for bend in shape.bends):
            yield Finding(
                "no-bend-in-rigid-line",
                Level.WARNING,
                line.place,
                f"{line.name} is a straight rigid tube between two ends",
                ("give it at least one bend", "take a hose instead"),
                sources=practice("mil-h-8891a"),
            )
