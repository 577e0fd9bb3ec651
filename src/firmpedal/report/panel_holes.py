"""The holes for bulkhead fittings at full size: how wide, in which panel, and which way up it is seen."""

from __future__ import annotations

import textwrap
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.checks.panel_fittings import CARRY, THICKER
from firmpedal.quantity import Answer, Mark, Value, exactly, total, unknown
from firmpedal.report.clock_face import circle
from firmpedal.report.lengths import decimals
from firmpedal.report.marks import LETTERS, MILLIMETRE, text
from firmpedal.report.sheet import Mark as Drawn
from firmpedal.report.sheet import Stroke
from firmpedal.report.views import POINTS_PER_METRE
from firmpedal.units import Dimension, from_unit, show

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.model.circuit import Bulkhead
    from firmpedal.model.display import Display
    from firmpedal.model.part import Part
    from firmpedal.model.space import Direction
    from firmpedal.pipeline import Evaluation

# Our estimate: a drilled hole that the thread goes into without force, and that leaves the nut its seat.
CLEARANCE = from_unit(1 / 64, "in")
BESIDE = 36 * MILLIMETRE  # from the left edge of a hole's place to its words
MIDDLE = (17 * MILLIMETRE, -17 * MILLIMETRE)
DRILLS = 64  # parts of an inch in which drills rise
LONGEST_ROW = 38  # letters
LINE = 13.0
ALMOST = 0.98  # a direction this near to an axis is called by it alone
WAYS = (("aft", "forward"), ("right", "left"), ("up", "down"))
SEEN = {
    "aft": "behind", "forward": "ahead", "right": "the right", "left": "the left", "up": "above",
    "down": "below",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class PanelHole:
    """A hole to cut for a fitting; its diameter is unknown where the fitting's thread is."""

    bulkhead: Bulkhead
    fitting: Part | None
    thread: Value
    thread_name: str
    diameter: Value


def panel_holes(evaluation: Evaluation) -> tuple[PanelHole, ...]:
    """The holes of all bulkheads that go through a panel, or may."""
    return tuple(
        _hole(evaluation, bulkhead)
        for bulkhead in evaluation.aircraft.bulkheads
        if bulkhead.through_panel is not Answer.NO
    )


def _hole(evaluation: Evaluation, bulkhead: Bulkhead) -> PanelHole:
    joints = (joint for joint in evaluation.assembly.joints if joint.place == bulkhead.place)
    fitting = next((part for joint in joints for part in joint.parts if part.needs_panel), None)
    size = next((end.size for end in fitting.dry_ends), "") if fitting else ""
    thread = catalogue().thread(size) if size else None
    major = thread.value("major_diameter") if thread else None
    place = f"{bulkhead.place}.hole"
    if major is None:
        major = unknown(f"thread of the fitting in {bulkhead.name}", Dimension.LENGTH, place)
    clearance = exactly(
        "clearance of the hole", Dimension.LENGTH, CLEARANCE, Mark.ESTIMATE, source="firmpedal-estimate"
    )
    diameter = total(f"hole of {bulkhead.name}", (major, clearance), place)
    return PanelHole(bulkhead, fitting, major, thread.full_name if thread else "", diameter)


def hole_marks(evaluation: Evaluation, hole: PanelHole) -> tuple[Drawn, ...]:
    """Draw the hole of a fitting with its words, its upper left corner at the origin."""
    bulkhead = hole.bulkhead
    return drawn_hole(bulkhead.name, hole.diameter, upward(bulkhead.normal), _words(evaluation, hole))


def drawn_hole(name: str, diameter: Value, top: str, words: Iterable[str]) -> tuple[Drawn, ...]:
    """Draw one hole, cross and words alone where its diameter is unknown, from the origin down and right."""
    x, y = MIDDLE
    radius = diameter.middle * POINTS_PER_METRE / 2 if diameter.known else 4 * MILLIMETRE
    reach = radius + 5 * MILLIMETRE
    marks: list[Drawn] = [
        Stroke(((x - reach, y), (x + reach, y)), 0.4),
        Stroke(((x, y - reach), (x, y + reach)), 0.4),
    ]
    if diameter.known:
        marks.append(circle(MIDDLE, radius, 0.6))
    marks += _arrow(top, y + reach)
    marks.append(text(name, (BESIDE, -6.0), 14, "start", bold=True))
    rows = [row for sentence in words for row in textwrap.wrap(sentence, LONGEST_ROW)]
    marks += [text(row, (BESIDE, -22.0 - n * LINE), LETTERS, "start") for n, row in enumerate(rows)]
    return tuple(marks)


def _arrow(word: str, foot: float) -> Iterator[Drawn]:
    """Which way is up on the paper, where that is known."""
    if not word:
        return
    x, top = MIDDLE[0], foot + 5 * MILLIMETRE
    yield Stroke(((x, foot), (x, top)), 1.2)
    yield Stroke(((x - 3, top - 5), (x, top), (x + 3, top - 5)), 1.2)
    yield text(word, (x, top + 7), LETTERS)


def _words(evaluation: Evaluation, hole: PanelHole) -> Iterator[str]:
    display, bulkhead = evaluation.display, hole.bulkhead
    if hole.fitting is None:
        yield "No circle: no fitting for a panel is found here, so its thread is unknown."
    elif not hole.diameter.known:
        yield f"No circle: the thread of {hole.fitting.designation} is unknown."
    else:
        yield f"for {hole.fitting.designation}, thread {hole.thread_name}"
        clearance = decimals(exactly("", Dimension.LENGTH, CLEARANCE, Mark.ESTIMATE), display)
        yield (
            f"hole {_drill(hole.diameter, display)}: thread {decimals(hole.thread, display)} and {clearance} "
            "clearance, an estimate"
        )
    yield seen_from(bulkhead.normal) or "which way the panel looks is unknown"
    if bulkhead.at.known:
        yield f"middle at {display.spot(bulkhead.at.point)}"
    if bulkhead.through_panel is Answer.UNKNOWN:
        yield "Unknown whether it goes through a panel at all: look first."
    if any(
        finding.place == bulkhead.place and finding.rule in (CARRY, THICKER)
        for finding in evaluation.findings
    ):
        yield "Do not drill yet: see the findings on this panel."


def _drill(diameter: Value, display: Display) -> str:
    """A diameter as decimals and, in inches, as the nearest drill."""
    plain = decimals(diameter, display)
    if display.unit(Dimension.LENGTH) != "in":
        return plain
    return f"{plain} ({show(diameter.middle, 'in', fraction=DRILLS)})"


def named(direction: Direction) -> tuple[str, ...]:
    """The words for a direction, the strongest first: `aft`, or `aft` and `down`."""
    if direction.vector is None:
        return ()
    parts = sorted(enumerate(direction.vector), key=lambda part: -abs(part[1]))
    words = [WAYS[axis][part < 0] for axis, part in parts]
    return tuple(words[:1] if abs(parts[0][1]) >= ALMOST else words[:2])


def seen_from(normal: Direction) -> str:
    """From where one looks at the panel's face."""
    words = " and ".join(SEEN[word] for word in named(normal))
    return f"face of the panel seen from {words}" if words else ""


def upward(normal: Direction) -> str:
    """What the top of the paper is: up, or forward on a panel that lies flat."""
    if normal.vector is None:
        return ""
    return "forward" if abs(normal.vector[2]) >= ALMOST else "up"
