"""What was found, for a page on which it is read and accepted: the answer, and apart from it the reasons."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.checks.acceptance import RULE, concerns, means
from firmpedal.project.acceptances import Entry
from firmpedal.report.explaining import sums_of_finding
from firmpedal.report.findings import TONES, accepted_rows, alike, answer_rows, why_rows
from firmpedal.report.sheet import Facts, Paragraph
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from firmpedal.finding import Finding, Level
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block, Sum


@dataclass(frozen=True, slots=True)
class Found:
    """Findings that say the same, told once.

    `answer` says what and what to try, `reasons` why, `sums` how the figures come about, each with how
    deep it lies behind the others. `entries` are those of the file that accept it, or the one that is told
    to be of no use any more (`gone`). `along` is what would be accepted at the same places besides.
    """

    rule: str
    level: Level
    places: tuple[str, ...]
    answer: tuple[Block, ...]
    reasons: tuple[Block, ...]
    sums: tuple[tuple[int, Sum], ...]
    entries: tuple[Entry, ...] = ()
    gone: bool = False
    along: tuple[str, ...] = ()


def found(evaluation: Evaluation) -> tuple[Found, ...]:
    """Every finding, WARNING before CAUTION before NOTE, what is alike together."""
    return tuple(_found(evaluation, group) for group in alike(evaluation.findings))


def _found(evaluation: Evaluation, group: list[Finding]) -> Found:
    first = group[0]
    answer, reasons, sums = _told(evaluation, group)
    places = tuple(dict.fromkeys(each.place for each in group))
    return Found(
        first.rule,
        first.level,
        places,
        answer,
        reasons,
        sums,
        _entries(evaluation, group),
        gone=first.rule == RULE,
        along=_along(evaluation, group, places),
    )


@worked
def _told(
    evaluation: Evaluation, group: list[Finding]
) -> tuple[tuple[Block, ...], tuple[Block, ...], tuple[tuple[int, Sum], ...]]:
    """What is found and what to try; why; and the sums, each with how deep it lies in others."""
    first, others = group[0], [("also", each.message) for each in group[1:]]
    rows = (*others, *answer_rows(evaluation, first), *accepted_rows(first))
    answer = (Paragraph(first.message, TONES[first.level]), *((Facts(rows),) if rows else ()))
    return answer, (Facts(why_rows(first)),), sums_of_finding(first, evaluation.display)


def _entries(evaluation: Evaluation, group: list[Finding]) -> tuple[Entry, ...]:
    """The entries of the file that accept these findings, or that nothing answers to any more."""
    own = [
        item
        for item in evaluation.aircraft.accepted
        if any(concerns(item, each) or (each.rule == RULE and each.place == item.place) for each in group)
    ]
    return tuple(Entry(item.rule, item.at, item.reason) for item in own)


def _along(evaluation: Evaluation, group: list[Finding], places: tuple[str, ...]) -> tuple[str, ...]:
    """What else the same rule finds there or inside."""
    others = (each for each in evaluation.findings if each.rule == group[0].rule and each not in group)
    return tuple(
        each.message
        for each in others
        if each.accepted is None and any(means(place, each.place) for place in places)
    )
