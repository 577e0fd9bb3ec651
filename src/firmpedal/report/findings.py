"""Findings in print, the worst first."""

from __future__ import annotations

from pathlib import PurePath
from typing import TYPE_CHECKING

from firmpedal.finding import Level
from firmpedal.model.display import count_of
from firmpedal.report.sheet import Facts, Group, Paragraph, Sheet, Tone
from firmpedal.report.story import reason_of
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from firmpedal.finding import Finding
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

TONES = {Level.WARNING: Tone.WARNING, Level.CAUTION: Tone.CAUTION, Level.NOTE: Tone.NOTE}
MEANINGS = {
    Level.WARNING: "could hurt somebody",
    Level.CAUTION: "could break something",
    Level.NOTE: "good to know",
}


@worked
def findings_sheet(evaluation: Evaluation) -> Sheet:
    """Every finding, WARNING before CAUTION before NOTE."""
    groups = alike(evaluation.findings)
    blocks: list[Block] = [Paragraph(summary(evaluation))]
    blocks += [_finding_group(evaluation, found) for found in groups]
    return Sheet("What was found", tuple(blocks))


def alike(findings: tuple[Finding, ...]) -> list[list[Finding]]:
    """Findings in order of level, those that say the same of several places together."""
    groups: dict[tuple[object, ...], list[Finding]] = {}
    for level in Level:
        for finding in (each for each in findings if each.level is level):
            groups.setdefault(_likeness(finding), []).append(finding)
    return list(groups.values())


def _likeness(finding: Finding) -> tuple[object, ...]:
    """What must agree for two findings to be told as one: all but the place and the names in the words."""
    figures = [value.span if value else None for value in (finding.measured, finding.allowed)]
    rounded = [tuple(float(f"{bound:.6g}") for bound in span) if span else None for span in figures]
    return (finding.rule, finding.level, *rounded, finding.tries, finding.accepted)


def _finding_group(evaluation: Evaluation, found: list[Finding]) -> Group:
    first = found[0]
    rows: list[tuple[str, str]] = [("where", where_of(evaluation, first.place))]
    rows += [
        ("" if number else "also", f"{finding.message} ({where_of(evaluation, finding.place)})")
        for number, finding in enumerate(found[1:])
    ]
    rows += [*answer_rows(evaluation, first), *why_rows(first), *accepted_rows(first)]
    return Group((Paragraph(first.message, TONES[first.level]), Facts(tuple(rows))))


def answer_rows(evaluation: Evaluation, finding: Finding) -> tuple[tuple[str, str], ...]:
    """What was measured against what is allowed, where there are figures, and what to try."""
    rows = [("or" if number else "try", words) for number, words in enumerate(finding.tries)]
    if finding.measured is not None and finding.allowed is not None:
        show = evaluation.display.value
        words = f"{show(finding.measured)}; should be {finding.relation} {show(finding.allowed)}"
        rows.insert(0, ("found", words))
    return tuple(rows)


def why_rows(finding: Finding) -> tuple[tuple[str, str], ...]:
    """What the rule asks for, on which sources, and its name."""
    reason = reason_of(finding)
    return (*((("why", reason),) if reason else ()), ("rule", finding.rule))


def accepted_rows(finding: Finding) -> tuple[tuple[str, str], ...]:
    """The builder's reason, where the finding is accepted."""
    if finding.accepted is None:
        return ()
    stays = " A warning stays a warning." if finding.level is Level.WARNING else ""
    return (("accepted", f"by the builder: {finding.accepted}.{stays}"),)


def where_of(evaluation: Evaluation, place: str) -> str:
    """A place in the builder's file: the file's own name and line, and what stands there."""
    span = evaluation.span_of(place)
    return f"{PurePath(span.file).name} line {span.line}, {place}" if place else PurePath(span.file).name


def summary(evaluation: Evaluation) -> str:
    """How many findings there are of each level, and what the levels mean."""
    counts = [words for level in Level if (words := level_words(evaluation, level))]
    if not counts:
        waiting = len({each.rule for each in evaluation.not_shown})
        known = f" in what is known; {waiting} {'check waits' if waiting == 1 else 'checks wait'} for figures"
        return f"Nothing was found against these brakes{known if waiting else ''}."
    return ", ".join(counts) + ". What is alike on several lines is written out once."


def level_words(evaluation: Evaluation, level: Level) -> str:
    """How many findings there are of one level, and what it means; empty for none."""
    count = sum(finding.level is level for finding in evaluation.findings)
    return f"{count_of(count, level.value)} ({MEANINGS[level]})" if count else ""
