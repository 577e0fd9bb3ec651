"""Options side by side: who surely wins on what, what tells them apart, and what to do about it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.decide.contest import Outcome, Result, contest
from firmpedal.decide.lacking import lacking
from firmpedal.decide.measures import MEASURES, components, mass_change
from firmpedal.finding import Finding, Level, Verdict
from firmpedal.quantity import Missing

if TYPE_CHECKING:
    from firmpedal.decide.measures import Cell, Measure
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value


@dataclass(frozen=True, slots=True)
class Row:
    """One measure with the figure of every option, in their order, and how the contest ended."""

    measure: str
    cells: tuple[Cell, ...]
    result: Result


@dataclass(frozen=True, slots=True)
class Separator:
    """A rule that says more of one option than of another: its findings, or its questions."""

    rule: str
    level: Level | None  # None: it cannot say and asks
    counts: tuple[int, ...]
    message: str


@dataclass(frozen=True, slots=True)
class Advice:
    """What follows: who is out and why, who is left, who wins on everything that can be told.

    `wins` goes with `standing`: the measures that each surely wins alone or with others. So does
    `behind`: the rules that find or ask something of it, and nothing of another one that is left.
    """

    out: tuple[tuple[int, Finding, int], ...]  # which, its first warning, how many
    standing: tuple[int, ...]
    wins: tuple[tuple[str, ...], ...]
    behind: tuple[tuple[Separator, ...], ...]
    same_job: bool  # whether all that are left join components of the same kinds and numbers
    best: int | None
    measure: tuple[Missing, ...]


@dataclass(frozen=True)
class Comparison:
    """Some options of one aircraft side by side."""

    options: tuple[str | None, ...]
    rows: tuple[Row, ...]
    mass_changes: tuple[Value | None, ...]  # against the first; None for itself
    separators: tuple[Separator, ...]
    unknown_in_all: tuple[str, ...]
    unknown_apart: tuple[tuple[str, ...], ...]
    advice: Advice


def compare(evaluations: tuple[Evaluation, ...]) -> Comparison:
    """Compare evaluations of one aircraft; the first is what changes of mass are counted from.

    Winners are looked for among those without a WARNING, or among all where every one has some.
    """
    standing = _standing(evaluations)
    rows = tuple(_rows(evaluations, standing))
    separators = _separators(evaluations)
    things = [tuple(one.what for one in lacking(each)) for each in evaluations]
    common = tuple(what for what in things[0] if all(what in other for other in things))
    return Comparison(
        tuple(evaluation.reading.option for evaluation in evaluations),
        rows,
        (None, *(mass_change(evaluations[0], other) for other in evaluations[1:])),
        separators,
        common,
        tuple(tuple(what for what in own if what not in common) for own in things),
        _advice(evaluations, standing, rows, separators),
    )


def _standing(evaluations: tuple[Evaluation, ...]) -> tuple[int, ...]:
    fit = [n for n, each in enumerate(evaluations) if each.verdict is not Verdict.NOT_SOUND]
    return tuple(fit or range(len(evaluations)))


def _rows(evaluations: tuple[Evaluation, ...], standing: tuple[int, ...]) -> list[Row]:
    rows = []
    for measure in MEASURES:
        cells = tuple(measure.of(evaluation) for evaluation in evaluations)
        if all(cell.value is None for cell in cells):
            continue
        rows.append(Row(measure.name, cells, _result(measure, cells, standing)))
    return rows


def _result(measure: Measure, cells: tuple[Cell, ...], standing: tuple[int, ...]) -> Result:
    if measure.least is None:
        return Result(Outcome.NO_CONTEST)
    result = contest([cell.value for cell in cells], standing, least=measure.least)
    if result.outcome is Outcome.OVERLAP and measure.ask:
        return replace(result, measure=(Missing("", measure.ask),))
    return result


def _separators(evaluations: tuple[Evaluation, ...]) -> tuple[Separator, ...]:
    """Rules that find, or ask, more in one option than in another, the gravest first."""
    keys: dict[tuple[str, Level | None], str] = {}
    for evaluation in evaluations:
        for finding in evaluation.findings:
            keys.setdefault((finding.rule, finding.level), finding.message)
        for unclear in evaluation.not_shown:
            keys.setdefault((unclear.rule, None), unclear.message)
    order = [*Level, None]
    found = []
    for (rule, level), message in sorted(keys.items(), key=lambda item: order.index(item[0][1])):
        counts = tuple(_said(evaluation, rule, level) for evaluation in evaluations)
        if len(set(counts)) > 1:
            found.append(Separator(rule, level, counts, message))
    return tuple(found)


def _said(evaluation: Evaluation, rule: str, level: Level | None) -> int:
    if level is None:
        return sum(item.rule == rule for item in evaluation.not_shown)
    return sum(item.rule == rule and item.level is level for item in evaluation.findings)


def _advice(
    evaluations: tuple[Evaluation, ...],
    standing: tuple[int, ...],
    rows: tuple[Row, ...],
    separators: tuple[Separator, ...],
) -> Advice:
    out = []
    for number, evaluation in enumerate(evaluations):
        warnings = [item for item in evaluation.findings if item.level is Level.WARNING]
        if warnings:
            out.append((number, warnings[0], len(warnings)))
    wins = tuple(tuple(row.measure for row in rows if number in row.result.winners) for number in standing)
    vague = [row for row in rows if row.result.outcome in (Outcome.OVERLAP, Outcome.UNKNOWN)]
    measure = dict.fromkeys(missing for row in vague for missing in row.result.measure)
    behind = tuple(_behind(number, standing, separators) for number in standing)
    jobs = {components(evaluations[number]).about for number in standing}
    best = _best(evaluations, standing, rows) if len(jobs) == 1 else None
    return Advice(tuple(out), standing, wins, behind, len(jobs) == 1, best, tuple(measure))


def _behind(
    number: int, standing: tuple[int, ...], separators: tuple[Separator, ...]
) -> tuple[Separator, ...]:
    """The rules that another one that is left passes without a word, and this one does not."""
    said = {
        one.rule: [sum(each.counts[n] for each in separators if each.rule == one.rule) for n in standing]
        for one in separators
    }
    return tuple(one for one in separators if one.counts[number] and 0 in said[one.rule])


def _best(
    evaluations: tuple[Evaluation, ...], standing: tuple[int, ...], rows: tuple[Row, ...]
) -> int | None:
    """The one left that loses nothing that can be told; nobody where all that is left is unsound."""
    if all(evaluations[number].verdict is Verdict.NOT_SOUND for number in standing):
        return None
    won = [row.result.winners for row in rows if row.result.winners]
    able = [number for number in standing if all(number in winners for winners in won)]
    if len(standing) == 1:
        return standing[0]
    return able[0] if won and len(able) == 1 else None
