"""Rules about bent tube: what can be bent, flared and made up."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.quantity import Answer, Mark, Missing, Value, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.tube import TubeShape

# Least straight at an end for nut, sleeve and flaring tool, by dash: from memory, a shop figure.
END_STRAIGHT = {"-3": from_unit(1.25, "in"), "-4": from_unit(1.5, "in")}
ONLY_JUST = {"-3": from_unit(1.875, "in"), "-4": from_unit(1.875, "in")}
LEAST_BEND = math.radians(5)  # what gives way at all: our estimate
# What a straight may be off: both its points by a sixteenth along each axis, by tape and pen.
READING = from_unit(2 * 3**0.5 / 16, "in")


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


def end_straight_too_short(view: View) -> Iterator[Outcome]:
    """The straight at each end is long enough for nut, sleeve and flaring tool.

    Under the least the end cannot be flared; just over it, flare that end before bending or check
    the tool's grip first. The least lengths are from memory; your own tool decides.
    """
    for line, shape in _tubes(view):
        if not shape.straights:
            continue
        least = _least_straight(view, line)
        for name, straight in (("first", shape.straights[0]), ("last", shape.straights[-1])):
            yield from _end_straight(view, line, name, straight, least)


def _least_straight(view: View, line: LaidLine) -> Value:
    declared = view.aircraft.bench.end_straight
    if declared.known:
        return declared
    dash = getattr(line.stock, "dash", None)
    label = "least straight for nut, sleeve and flaring tool"
    if dash in END_STRAIGHT:
        return exactly(label, Dimension.LENGTH, END_STRAIGHT[dash], Mark.MEMORY, source="common-practice")
    missing = (Missing("bench.end straight", f"{label}, for {line.stock.phrase}"),)
    return Value(label, Dimension.LENGTH, None, Mark.MEASURED, "bench.end straight", missing=missing)


def _end_straight(view: View, line: LaidLine, name: str, straight: Value, least: Value) -> Iterator[Outcome]:
    rule = "end-straight-too-short"
    named = straight.named(f"{name} straight of {line.name}")
    found = f"the {name} straight of {line.name} is {view.show(named)}"
    message = f"{found}; nut, sleeve and tool need {view.show(least)}"
    limit = Limit(named, least, "at least")
    yield from judge(
        limit,
        rule=rule,
        level=Level.CAUTION,
        place=line.place,
        message=message,
        tries=("move the nearest corner away from the end", "a tighter bend radius if the tube allows it"),
    )
    ample = _ample(view, line, least)
    if limit.kept is Answer.YES and ample is not None and named.low - READING < ample:
        message = f"{found}: enough, but only just"
        tries = ("flare this end before bending, or try the tool's grip on a test piece first",)
        yield Finding(
            rule,
            Level.NOTE,
            line.place,
            message,
            tries,
            named,
            least,
            "at least",
            practice("common-practice"),
        )


def _ample(view: View, line: LaidLine, least: Value) -> float | None:
    """The length above which nothing needs saying; a tape's reading error is allowed for."""
    if view.aircraft.bench.end_straight.known:
        return least.high + from_unit(0.375, "in")
    return ONLY_JUST.get(getattr(line.stock, "dash", None) or "")


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
                ("give it at least one bend", "or take a hose"),
                sources=practice("mil-h-8891a"),
            )
