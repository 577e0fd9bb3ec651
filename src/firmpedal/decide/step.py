"""One step of the work of a retrofit, and what all steps are made from."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.checks.threading import Later, made_later
from firmpedal.decide.pieces import find_line
from firmpedal.lay.through_hole import best_end, holes_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.decide.pieces import Piece
    from firmpedal.decide.work import Work
    from firmpedal.fit.joint import Joint
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.stock import LineKind
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

LETTERED = {"from": "first", "to": "last"}


class Phase(StrEnum):
    """The parts of the work, in order."""

    READY = "make ready"
    SAFE = "make safe"
    DRAIN = "drain"
    REMOVE = "take off"
    LOOK = "look and gauge"
    CLOSE = "close"
    FIXED = "fit what holds the lines"
    LINES = "fit the lines"
    PROVE = "fill and prove"


class Action(StrEnum):
    """What is done in a step."""

    BUY = "buy"
    MAKE = "make"
    MAKE_IN_PART = "make in part"
    HAVE_HOSE = "have hose"
    CUT = "cut"
    FIT_ON_BENCH = "fit on the bench"
    CHOCK = "chock"
    OPEN_VALVE = "open valve"
    DRAIN = "drain"
    FLUSH = "flush"
    TAKE_LINE = "take line off"
    LEAVE_LINE = "leave line in"
    TAKE_PARTS = "take parts off"
    TAKE_COMPONENT = "take component off"
    CLOSE_HOLE = "close hole"
    GAUGE = "gauge"
    LOOK_AT = "look at"
    LOOK_CONE = "look at cone"
    PLUG = "plug"
    LEFT_OPEN = "left open"
    FIT_COMPONENT = "fit component"
    MAKE_HOLE = "make hole"
    FIT_BULKHEAD = "fit bulkhead"
    FIT_PARTS = "fit parts"
    FIT_LINE = "fit line"
    THREAD_IN = "thread in"
    JOIN_AGAIN = "join again"
    MOVE_CLAMPS = "move clamps"
    TIGHTEN = "tighten"
    FILL = "fill"
    LEAK_CHECK = "leak check"
    CLOSE_UP = "close up"
    OPEN_TO_FILL = "open to fill"
    RECORD = "record"


@dataclass(frozen=True, slots=True)
class Step:
    """One step: what is done to what, with which parts; `beforehand` marks what needs no opened line."""

    phase: Phase
    action: Action
    subject: str
    parts: tuple[str, ...] = ()
    beforehand: bool = False
    about: tuple[str, ...] = ()  # names that belong to it: lines, panels, ports, joints that wait for it
    amount: Value | None = None


def counted(pieces: Iterable[Piece]) -> tuple[str, ...]:
    """Designations with their counts, in the order in which they come."""
    counts = Counter(piece.designation for piece in pieces)
    return tuple(f"{count} x {name}" if count > 1 else name for name, count in counts.items())


def new_lines(work: Work, *kinds: LineKind) -> list[str]:
    """The lines that come new, those of some kinds or all."""
    return [
        line.name
        for line in work.after.laid
        if line.name not in work.same.new_lines and (line.kind in kinds or not kinds)
    ]


def waits(work: Work, name: str) -> Later | None:
    """What of a new tube is made only when it is in its place: through a closed place, or through a hole."""
    line = find_line(work.after, name)
    if line is None or line.tube is None:
        return None
    crossings = (crossing for crossing in work.after.crossings if crossing.line == name)
    return made_later(line, crossings) or _beyond_hole(work.after, line)


def _beyond_hole(evaluation: Evaluation, line: LaidLine) -> Later | None:
    """What of a tube does not go through the holes that it sits in once it is made."""
    holes = holes_of(evaluation.aircraft, evaluation.assembly, line)
    best = best_end(holes) if holes else None
    return Later(best.later, LETTERED[best.end]) if best and best.bare else None


def component_of(joint: Joint) -> str:
    """The component that a joint is at, empty where it is at none."""
    section, _, rest = joint.place.partition(".")
    return rest.split(".")[0] if section == "components" else ""


def passes(work: Work, *, old: bool) -> dict[str, list[str]]:
    """For each line the panels it passes without a fitting."""
    found: dict[str, list[str]] = {}
    for panel in (work.before if old else work.after).aircraft.panels:
        for passage in panel.passes:
            found.setdefault(passage.name, []).append(panel.name)
    return found
