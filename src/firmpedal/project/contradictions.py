"""Figures and answers in a file that contradict each other."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.model.stock import LineKind
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from firmpedal.model.circuit import Line
    from firmpedal.project.references import References

FEET = ("normal", "hard", "panic")
_OF_HOSES = (
    ("swells", "what it takes is worked out from its wall"),
    ("expansion curve", "what it takes is worked out from its wall"),
    ("tightest bend", "how tight it is bent is told by its bend radius"),
    ("outside diameter", "its size stands in what it is made of"),
)
# Metal is as stiff and strong as its alloy, a hose as its standard says: only plastic has grades.
_OF_PLASTIC = (
    ("stiffness", "how stiff its wall is, is known or plays no part"),
    ("rated pressure", "what it stands is worked out from its wall, or its specification says it"),
)
# What lines of one kind alone can have, each with the reason why the others cannot.
ONLY_OF = {LineKind.HOSE: _OF_HOSES, LineKind.PLASTIC: _OF_PLASTIC}


def check_contradictions(work: References) -> None:
    """Note forces out of order, what hoses alone have, and closed ports with a line on them."""
    _feet(work)
    _closed_ports(work)
    _of_one_kind(work, LineKind.HOSE, "{name} is no hose, and {why}")
    _expansion(work)
    _of_one_kind(work, LineKind.PLASTIC, "{name} is not plastic: {why}")


def _feet(work: References) -> None:
    foot = work.aircraft.foot
    for lighter, heavier in pairwise(FEET):
        if getattr(foot, lighter).at_most(getattr(foot, heavier)) is Answer.NO:
            message = f"the {heavier} foot is lighter than the {lighter} foot"
            work.notes.note(
                work.node(f"foot.{heavier}"), message, "normal, hard and panic go from light to heavy"
            )


def _of_one_kind(work: References, kind: LineKind, words: str) -> None:
    """What is measured at lines of one kind alone; that of others follows from what is written otherwise."""
    for line in work.aircraft.lines:
        if line.made_of is None or line.made_of.kind is kind:
            continue
        for key, why in ONLY_OF[kind]:
            if key.replace(" ", "_") in line.written:
                message = words.format(name=line.name, why=why)
                work.notes.note(work.node(f"{line.place}.{key}"), message, f"take `{key}` out")


def _expansion(work: References) -> None:
    """The points of a curve rise, and it is not given beside a measurement of the whole hose."""
    for line in work.aircraft.lines:
        place = f"{line.place}.expansion curve"
        if not line.expansion_curve:
            continue
        if "swells" in line.written:
            message = f"{line.name} has a curve and a measurement of what it takes"
            work.notes.note(work.node(place), message, "leave the one that you trust more")
        _rising(work, line)


def _rising(work: References, line: Line) -> None:
    """Each point of a curve stands at surely more pressure than the one before it, and takes no less."""
    under, taken = 0.0, 0.0  # the most pressure, and the least taken, of the points so far
    for point in line.expansion_curve:
        if point.under.span is None or point.per_length.span is None:
            continue
        low, high = point.under.span
        if low <= under or point.per_length.high < taken:
            message = f"this point of the curve of {line.name} does not follow on what is before it"
            advice = (
                "write the points with rising pressure, their ranges apart, nothing left out; a hose takes "
                "more, never less"
            )
            work.notes.note(work.node(point.place), message, advice)
        under, taken = max(under, high), max(taken, point.per_length.low)


def _closed_ports(work: References) -> None:
    comes = {target: line.name for line in work.aircraft.lines for target in (line.start, line.finish)}
    for component in work.aircraft.components:
        for port in component.ports:
            line = comes.get(f"{component.name}.{port.name}")
            if line is not None and (port.closed is Answer.YES or port.open):
                word = "closed" if port.closed is Answer.YES else "open"
                message = f"{component.name}.{port.name} is {word}, and {line} comes to it"
                work.notes.note(work.node(f"{port.place}.{word}"), message, f"take the line or `{word}` out")
