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
    follow.
    """
    rule = "thread-in-before-bending"
    for line in view.laid:
        if line.tube is None or line.tube.centreline is None:
            continue
        for crossing in view.crossings_of(line.name):
            zone = crossing.zone
            sides = _bends_outside(line, crossing)
            if zone.hidden is Answer.NO or zone.access is Answer.YES or not all(sides):
                continue
            if Answer.UNKNOWN in (zone.hidden, zone.access):
                missing = Missing(f"{zone.place}.access", f"whether {zone.name} can be reached from the side")
                message = f"whether {line.name} has to be threaded in before it is bent"
                yield NotShown(rule, line.place, message, (missing,))
                continue
            yield _threaded(line, crossing, sides)


def _bends_outside(line: LaidLine, crossing: Crossing) -> tuple[list[int], list[int]]:
    """The bends, from 1, on the first end's side of a zone and on the last end's side of it."""
    if line.tube is None or line.tube.centreline is None or not crossing.inside:
        return [], []
    start, stop = crossing.stretches[0][0], crossing.stretches[-1][1]
    stations = line.tube.centreline.tangent_stations
    middles = [(stations[2 * n + 1] + stations[2 * n + 2]) / 2 for n in range(len(line.tube.bends))]
    before = [n for n, middle in enumerate(middles, 1) if middle < start]
    return before, [n for n, middle in enumerate(middles, 1) if middle > stop]


def _threaded(line: LaidLine, crossing: Crossing, sides: tuple[list[int], list[int]]) -> Finding:
    """Make the side with fewer bends last: less is done on the aircraft."""
    before, after = sides
    last, end = (before, "first") if len(before) < len(after) else (after, "last")
    bends = f"bend {last[0]}" if len(last) == 1 else f"bends {', '.join(map(str, last))}"
    message = (
        f"{line.name} goes through {crossing.zone.name}, which nobody gets at from the side, and is bent at "
        "both ends of it"
    )
    tries = (
        f"thread it in before {bends} and the flare at the {end} end are made, and make those in place",
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
