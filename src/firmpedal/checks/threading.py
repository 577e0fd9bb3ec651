"""Rules about getting a finished tube to where it belongs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.quantity import Answer, Missing

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.lay.crossing import Crossing
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.surroundings import Zone


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
            zone, later = crossing.zone, _later(line, crossing)
            if later is None:
                continue
            if _shut(zone) is Answer.UNKNOWN:
                missing = Missing(f"{zone.place}.access", f"whether {zone.name} can be reached from the side")
                message = f"whether {line.name} has to be threaded in before it is bent"
                yield NotShown(rule, line.place, message, (missing,))
                continue
            yield _threaded(line, crossing, later)


@dataclass(frozen=True, slots=True)
class Later:
    """What of a tube is made only when it is threaded in: bends, from 1, and the flare at one end."""

    bends: tuple[int, ...]
    end: str  # first, last

    @property
    def words(self) -> str:
        numbers = ", ".join(map(str, self.bends))
        return f"{'bend' if len(self.bends) == 1 else 'bends'} {numbers} and the flare at the {self.end} end"


def made_later(line: LaidLine, crossings: Iterable[Crossing]) -> Later | None:
    """What waits until a tube is threaded in; None where it can, or perhaps can, be put in from the side."""
    found = (_later(line, crossing) for crossing in crossings if _shut(crossing.zone) is Answer.YES)
    return next((later for later in found if later is not None), None)


def _shut(zone: Zone) -> Answer:
    """Whether nobody gets at a zone from the side."""
    if zone.hidden is Answer.NO or zone.access is Answer.YES:
        return Answer.NO
    return Answer.UNKNOWN if Answer.UNKNOWN in (zone.hidden, zone.access) else Answer.YES


def _later(line: LaidLine, crossing: Crossing) -> Later | None:
    """The side with fewer bends, so that less is done on the aircraft; None where it need not be threaded."""
    before, after = _bends_outside(line, crossing)
    if _shut(crossing.zone) is Answer.NO or not before or not after:
        return None
    return Later(tuple(before), "first") if len(before) < len(after) else Later(tuple(after), "last")


def _bends_outside(line: LaidLine, crossing: Crossing) -> tuple[list[int], list[int]]:
    """The bends, from 1, on the first end's side of a zone and on the last end's side of it."""
    if line.tube is None or line.tube.centreline is None or not crossing.inside:
        return [], []
    start, stop = crossing.stretches[0][0], crossing.stretches[-1][1]
    stations = line.tube.centreline.tangent_stations
    middles = [(stations[2 * n + 1] + stations[2 * n + 2]) / 2 for n in range(len(line.tube.bends))]
    before = [n for n, middle in enumerate(middles, 1) if middle < start]
    return before, [n for n, middle in enumerate(middles, 1) if middle > stop]


def _threaded(line: LaidLine, crossing: Crossing, later: Later) -> Finding:
    message = (
        f"{line.name} goes through {crossing.zone.name}, which nobody gets at from the side, and is bent at "
        "both ends of it"
    )
    tries = (
        f"thread it in before {later.words} are made, and make those in place",
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
