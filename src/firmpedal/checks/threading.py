"""Rules about getting a finished tube to where it belongs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.quantity import Answer, Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.crossing import Crossing
    from firmpedal.lay.line import LaidLine


def thread_in_before_bending(view: View) -> Iterator[Outcome]:
    """A tube that goes through a closed place lengthwise has its last bends made after that.

    Where nobody gets at it from the side it is pushed in straight, and what is bent beyond it would not
    follow. What is bent inside such a place goes in before that is closed, and does not come out again.
    """
    rule = "thread-in-before-bending"
    for line in view.laid:
        if line.tube is None or line.tube.centreline is None:
            continue
        for crossing in view.crossings_of(line.name):
            zone = crossing.zone
            before, inside, after = _bends(line, crossing)
            if zone.hidden is Answer.NO or zone.access is Answer.YES or not (inside or (before and after)):
                continue
            if Answer.UNKNOWN in (zone.hidden, zone.access):
                missing = Missing(f"{zone.place}.access", f"whether {zone.name} can be reached from the side")
                way = "can be taken out again" if inside else "has to be threaded in before it is bent"
                yield NotShown(rule, line.place, f"whether {line.name} {way}", (missing,))
                continue
            if inside:
                yield _bent_inside(line, crossing, inside)
            else:
                yield _threaded(line, crossing, (before, after))


def _bends(line: LaidLine, crossing: Crossing) -> tuple[list[int], list[int], list[int]]:
    """The bends, from 1: on the first end's side of a zone, inside it, and on the last end's side of it."""
    if line.tube is None or line.tube.centreline is None or not crossing.inside:
        return [], [], []
    start, stop = crossing.stretches[0][0], crossing.stretches[-1][1]
    stations = line.tube.centreline.tangent_stations
    middles = [(stations[2 * n + 1] + stations[2 * n + 2]) / 2 for n in range(len(line.tube.bends))]
    inside = [
        n
        for n, middle in enumerate(middles, 1)
        if any(begin <= middle <= end for begin, end in crossing.stretches)
    ]
    before = [n for n, middle in enumerate(middles, 1) if middle < start]
    return before, inside, [n for n, middle in enumerate(middles, 1) if middle > stop]


def _bent_inside(line: LaidLine, crossing: Crossing, inside: list[int]) -> Finding:
    name = crossing.zone.name
    message = (
        f"{_named(inside)} of {line.name} {'lies' if len(inside) == 1 else 'lie'} in {name}, which is "
        "closed: it can be neither pushed in nor drawn out"
    )
    tries = (
        f"bend it, try its pressure and lay it in before {name} is closed; write down that it stays there",
        f"or run it straight through {name}, with the bends outside",
    )
    return Finding(
        "thread-in-before-bending",
        Level.NOTE,
        line.place,
        message,
        tries,
        sources=practice("common-practice"),
    )


def _named(bends: list[int]) -> str:
    return f"bend {bends[0]}" if len(bends) == 1 else f"bends {', '.join(map(str, bends))}"


def _threaded(line: LaidLine, crossing: Crossing, sides: tuple[list[int], list[int]]) -> Finding:
    """Make the side with fewer bends last: less is done on the aircraft."""
    before, after = sides
    last, end = (before, "first") if len(before) < len(after) else (after, "last")
    message = (
        f"{line.name} goes through {crossing.zone.name}, which nobody gets at from the side, and is bent at "
        "both ends of it"
    )
    tries = (
        f"thread it in before {_named(last)} and the flare at the {end} end are made; make those in place",
        "or a union on either side of it, where it can be reached",
    )
    return Finding(
        "thread-in-before-bending",
        Level.NOTE,
        line.place,
        message,
        tries,
        sources=practice("common-practice"),
    )
