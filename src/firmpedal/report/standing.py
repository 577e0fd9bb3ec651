"""What an aircraft still lacks, counted: what is to settle, and what is to measure, by when it can be."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.finding import Level
from firmpedal.project.unknowns import unknowns
from firmpedal.quantity import When
from firmpedal.report.to_measure import to_measure

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation


@dataclass(frozen=True, slots=True)
class Standing:
    """What an aircraft still lacks.

    Args:
        lines: Lines that are described.
        unknown: Figures that the file itself says are unknown, copies not counted.
        warnings: WARNINGs that nobody has accepted.
        accepted: WARNINGs that the builder has accepted; the verdict stays not sound by them.
        cautions: CAUTIONs that nobody has accepted.
        asked: Things that rules wait for and that can be measured or looked up now.
        now: Things that can be measured or looked up now, those that no rule waits for as well.
        in_hand: Things that can be measured only with the parts in hand.
        fitted: Things that can be measured only when the lines hang in the aircraft.
        tried: Things that can be measured only when it has braked.
    """

    lines: int = 0
    unknown: int = 0
    warnings: int = 0
    accepted: int = 0
    cautions: int = 0
    asked: int = 0
    now: int = 0
    in_hand: int = 0
    fitted: int = 0
    tried: int = 0

    @property
    def later(self) -> int:
        """Things that nobody can measure yet."""
        return self.in_hand + self.fitted + self.tried

    @property
    def things(self) -> int:
        """All things to measure, as the verdict, the form and the page count them."""
        return self.now + self.later


def standing(evaluation: Evaluation) -> Standing:
    """Count what an aircraft still lacks."""
    rows = to_measure(evaluation)
    when = [each.when for each in rows]
    return Standing(
        lines=len(evaluation.aircraft.lines),
        unknown=len(unknowns(evaluation.reading)),
        warnings=_open(evaluation, Level.WARNING),
        accepted=sum(
            each.level is Level.WARNING and each.accepted is not None for each in evaluation.findings
        ),
        cautions=_open(evaluation, Level.CAUTION),
        asked=sum(each.when is When.NOW and bool(each.rules) for each in rows),
        now=when.count(When.NOW),
        in_hand=when.count(When.IN_HAND),
        fitted=when.count(When.FITTED),
        tried=when.count(When.TRIED),
    )


def _open(evaluation: Evaluation, level: Level) -> int:
    return sum(each.level is level and each.accepted is None for each in evaluation.findings)
