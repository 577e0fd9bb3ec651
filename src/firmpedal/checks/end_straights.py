"""The rule about the straight at the end of a tube, which nut, sleeve and flaring tool take up."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge, practice
from firmpedal.finding import Finding, Level
from firmpedal.fit.chain import chain_at
from firmpedal.model.part import Category
from firmpedal.quantity import Answer, Mark, Missing, Value, exactly, total
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine

# Least straight at an end for nut, sleeve and flaring tool, by dash: from memory, a shop figure.
END_STRAIGHT = {"-3": from_unit(1.25, "in"), "-4": from_unit(1.5, "in")}
ONLY_JUST = {"-3": from_unit(1.875, "in"), "-4": from_unit(1.875, "in")}  # as it is told in the shop
MARGIN = from_unit(0.375, "in")  # over the least, for how tools grip: the same shop figure
# What a straight may be off: both its points by a sixteenth along each axis, by tape and pen.
READING = from_unit(2 * 3**0.5 / 16, "in")


def end_straight_too_short(view: View) -> Iterator[Outcome]:
    """The straight at each end is long enough for nut, sleeve and flaring tool.

    Under the least the end cannot be flared; just over it, flare that end before bending or check
    the tool's grip first. The least lengths are from memory; your own tool decides. Only just is
    below 1-7/8 in by the usual figures, and less than 3/8 in over what your file or tool sets: shop figures
    from memory for how tools grip. The tape adds 0.22 in: both points of a straight can be off by 1/16 in
    along each axis.
    """
    for line in view.laid:
        shape = line.tube
        if shape is None or not shape.straights:
            continue
        for end, name, straight in (
            ("from", "first", shape.straights[0]),
            ("to", "last", shape.straights[-1]),
        ):
            yield from _end_straight(view, line, name, straight, _least_straight(view, line, end))


def _least_straight(view: View, line: LaidLine, end: str) -> Value:
    """What the builder says, else what tool, nut and sleeve take up, else the usual figure of the trade."""
    declared = view.aircraft.bench.end_straight
    if declared.known:
        return declared
    if (stacked := _stacked(view, line, end)) is not None:
        return stacked
    dash = getattr(line.stock, "dash", None)
    label = "least straight for nut, sleeve and flaring tool"
    if dash in END_STRAIGHT:
        return exactly(label, Dimension.LENGTH, END_STRAIGHT[dash], Mark.MEMORY, source="common-practice")
    missing = (Missing("bench.end straight", f"{label}, for {line.stock.phrase}", Dimension.LENGTH),)
    return Value(label, Dimension.LENGTH, None, Mark.MEASURED, "bench.end straight", missing=missing)


def _stacked(view: View, line: LaidLine, end: str) -> Value | None:
    """The tool's own grip and stick-out with nut and sleeve pushed back behind it, up to the bend.

    The sleeve sits in the nut with its head; how far is not known, from wholly to not at all.
    """
    tool = view.aircraft.bench.flaring_tool
    joint = view.assembly.joint_of(line.name, end)
    parts = () if joint is None else chain_at(joint, line.name, end)
    lengths = [
        next((part.dimension("overall_length") for part in parts if part.category is category), None)
        for category in (Category.COUPLING_NUT, Category.SLEEVE)
    ]
    nut, sleeve = lengths
    if not (tool.grip.known and tool.stick_out.known) or nut is None or sleeve is None:
        return None
    if not (nut.known and sleeve.known):
        return None
    behind = replace(sleeve, label=f"what of {sleeve.label} stands out of the nut", span=(0.0, sleeve.high))
    label = "least straight for this flaring tool, with nut and sleeve behind it"
    return total(label, (tool.stick_out, tool.grip, nut, behind), tool.place)


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
    ample = _ample(line, least)
    if limit.kept is Answer.YES and ample is not None and named.low - READING < ample:
        enough = exactly("enough", Dimension.LENGTH, ample + READING, Mark.MEMORY)
        message = (
            f"{found}: enough but only just; it needs {view.show(least)}, and below {view.show(enough)} the "
            "tool's grip and the tape's error can use up what is over"
        )
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


def _ample(line: LaidLine, least: Value) -> float | None:
    """The length above which nothing needs saying; a tape's reading error is allowed for."""
    if least.known and least.source != "common-practice":
        return least.high + MARGIN
    return ONLY_JUST.get(getattr(line.stock, "dash", None) or "")
