"""What was found about one line, for whoever is about to make it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.bench import NO_ORDER
from firmpedal.checks.elbow_room import RULE as ELBOWS
from firmpedal.finding import Level
from firmpedal.model.display import count_of
from firmpedal.place import is_within
from firmpedal.report.remarks import rests_on
from firmpedal.report.sheet import Paragraph, Tone

if TYPE_CHECKING:
    from firmpedal.finding import Finding
    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

NOTHING_AGAINST = "no warning, nothing to measure"
RIGHT_FIRST = "Put this right before you make it. What to try stands with the findings."


def concerns(place: str, line: LaidLine) -> bool:
    """Whether what stands at a place speaks of a line."""
    return is_within(place, line.place)


def findings_of(evaluation: Evaluation, line: LaidLine, level: Level) -> list[Finding]:
    """The findings of one level that concern a line, or the fittings in the ports at its ends."""
    joints = [evaluation.assembly.joint_of(line.name, end) for end in ("from", "to")]
    ports = {joint.place for joint in joints if joint and joint.place.startswith("components.")}
    return [
        each
        for each in evaluation.findings
        if each.level is level
        and (concerns(each.place, line) or (each.rule == ELBOWS and ports & {each.place, *each.about}))
    ]


def state_of(evaluation: Evaluation, line: LaidLine) -> str:
    """How a line stands, in a few words: what was found about it, and how much is still to be measured."""
    found = {
        level: sum(each.accepted is None for each in findings_of(evaluation, line, level))
        for level in (Level.WARNING, Level.CAUTION)
    }
    missing = {
        each.what
        for unclear in evaluation.not_shown
        if concerns(unclear.place, line)
        for each in unclear.missing
    }
    words = [count_of(count, level.value) for level, count in found.items() if count]
    words += [f"{len(missing)} to measure"] if missing else []
    words += ["its length is not measured"] if rests_on(line.order_length) else []
    return ", ".join(words) or NOTHING_AGAINST


def warnings_first(evaluation: Evaluation, line: LaidLine) -> list[Block]:
    """What could hurt somebody, to stand before the first figure: nobody cuts before it is read."""
    found = findings_of(evaluation, line, Level.WARNING)
    words = [each.message + (f" (accepted: {each.accepted})" if each.accepted else "") for each in found]
    blocks: list[Block] = [Paragraph(text, Tone.WARNING) for text in words]
    return [*blocks, Paragraph(RIGHT_FIRST)] if any(not each.accepted for each in found) else blocks


def without_order(evaluation: Evaluation, line: LaidLine) -> Finding | None:
    """Why the bends of a tube can be made in no order; None where they can, or nobody knows."""
    found = findings_of(evaluation, line, Level.WARNING)
    return next((each for each in found if each.rule == NO_ORDER), None)
