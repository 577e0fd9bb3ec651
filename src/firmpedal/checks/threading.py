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

RULE = "thread-in-before-bending"


def thread_in_before_bending(view: View) -> Iterator[Outcome]:
    """A tube that goes through a closed place lengthwise has its last bends made after that.

    Where nobody gets at it from the side it is pushed in straight, and what is bent beyond it would not
    follow. What is bent inside such a place goes in before that is closed, and does not come out again.
    """
    for line in view.laid:
        for crossing in view.crossings_of(line.name):
            bends, shut = _bends(line, crossing), _shut(crossing.zone)
            if shut is Answer.NO or not (bends.inside or bends.later):
                continue
            if shut is Answer.UNKNOWN:
                yield _not_shown(line, crossing.zone, bends)
            elif bends.later is None:
                yield _bent_inside(line, crossing.zone, bends.inside)
            else:
                yield _threaded(line, crossing, bends.later)


@dataclass(frozen=True, slots=True)
class Bends:
    """The bends of a tube, from 1, as a zone parts them."""

    before: tuple[int, ...] = ()
    inside: tuple[int, ...] = ()
    after: tuple[int, ...] = ()

    @property
    def later(self) -> Later | None:
        """The side with fewer, so that less is done on the aircraft; None where it is not pushed through."""
        if self.inside or not self.before or not self.after:
            return None
        if len(self.before) < len(self.after):
            return Later(self.before, "first")
        return Later(self.after, "last")


@dataclass(frozen=True, slots=True)
class Later:
    """What of a tube is made only when it is threaded in: bends, from 1, and the flare at one end."""

    bends: tuple[int, ...]
    end: str  # first, last

    @property
    def words(self) -> str:
        flare = f"the flare at the {self.end} end"
        return f"{_named(self.bends)} and {flare}" if self.bends else flare


def made_later(line: LaidLine, crossings: Iterable[Crossing]) -> Later | None:
    """What waits until a tube is threaded in; None where it can, or perhaps can, be put in from the side."""
    found = (_bends(line, crossing).later for crossing in crossings if _shut(crossing.zone) is Answer.YES)
    return next((later for later in found if later is not None), None)


def _shut(zone: Zone) -> Answer:
    """Whether nobody gets at a zone from the side."""
    if zone.hidden is Answer.NO or zone.access is Answer.YES:
        return Answer.NO
    return Answer.UNKNOWN if Answer.UNKNOWN in (zone.hidden, zone.access) else Answer.YES


def _bends(line: LaidLine, crossing: Crossing) -> Bends:
    """On the first end's side of a zone, inside it, and on the last end's side of it."""
    if line.tube is None or line.tube.centreline is None or not crossing.inside:
        return Bends()
    start, stop = crossing.stretches[0][0], crossing.stretches[-1][1]
    stations = line.tube.centreline.tangent_stations
    middles = [(stations[2 * n + 1] + stations[2 * n + 2]) / 2 for n in range(len(line.tube.bends))]
    return Bends(
        tuple(n for n, middle in enumerate(middles, 1) if middle < start),
        tuple(
            n
            for n, middle in enumerate(middles, 1)
            if any(begin <= middle <= end for begin, end in crossing.stretches)
        ),
        tuple(n for n, middle in enumerate(middles, 1) if middle > stop),
    )


def _named(bends: tuple[int, ...]) -> str:
    return f"bend {bends[0]}" if len(bends) == 1 else f"bends {', '.join(map(str, bends))}"


def _not_shown(line: LaidLine, zone: Zone, bends: Bends) -> NotShown:
    missing = Missing(f"{zone.place}.access", f"whether {zone.name} can be reached from the side")
    way = "can be taken out again" if bends.inside else "has to be threaded in before it is bent"
    return NotShown(RULE, line.place, f"whether {line.name} {way}", (missing,))


def _bent_inside(line: LaidLine, zone: Zone, inside: tuple[int, ...]) -> Finding:
    message = (
        f"{_named(inside)} of {line.name} {'lies' if len(inside) == 1 else 'lie'} in {zone.name}, which is "
        "closed: it can be neither pushed in nor drawn out"
    )
    tries = (
        f"bend it, test it and lay it in before {zone.name} is closed; write down that it stays there",
        f"run it straight through {zone.name}, with the bends outside",
    )
    return Finding(RULE, Level.NOTE, line.place, message, tries, sources=practice("common-practice"))


def _threaded(line: LaidLine, crossing: Crossing, later: Later) -> Finding:
    message = (
        f"{line.name} goes through {crossing.zone.name}, which nobody gets at from the side, and is bent at "
        "both ends of it"
    )
    tries = (
        f"thread it in before {later.words} are made, and make those in place",
        "a union on either side of it, where it can be reached",
    )
    return Finding(RULE, Level.NOTE, line.place, message, tries, sources=practice("common-practice"))
