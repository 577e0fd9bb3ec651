"""Printing to a terminal: findings, problems and tables in the width there is."""

from __future__ import annotations

import json
import sys
import textwrap
from typing import TYPE_CHECKING, Any

from rich.box import SIMPLE_HEAD
from rich.table import Table as RichTable
from rich.text import Text

from firmpedal.cli.columns import filled, widths
from firmpedal.cli.tidy import TidyConsole
from firmpedal.finding import Verdict
from firmpedal.model.worked import in_words_of
from firmpedal.pipeline import Evaluation, UnusableFileError, evaluate_file
from firmpedal.project.names import BEGIN_ANEW
from firmpedal.report.contract import errors_data
from firmpedal.report.cover import verdict_line
from firmpedal.report.findings import alike
from firmpedal.report.measure_sheet import line_of
from firmpedal.report.sheet import Bullets, Group, Heading, Paragraph, Sum, Table, Tone
from firmpedal.report.story import reason_of
from firmpedal.report.to_measure import to_measure

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from firmpedal.finding import Finding, Problem, Span
    from firmpedal.project import Reading
    from firmpedal.report.sheet import Block, Sheet

# What a builder is told to do elsewhere by a button, and here by a command.
COMMANDS = {BEGIN_ANEW: "firmpedal new"}
STYLES = {"WARNING": "bold red", "CAUTION": "bold yellow", "NOTE": "bold"}
WIDEST = 100
IDENTIFY = "firmpedal identify tells which thread it is, by what calliper and thread gauge say"
BETWEEN = 3  # blanks from one column of a table to the next
UNUSABLE = 2


def console(*, error: bool = False) -> Console:
    made = TidyConsole(stderr=error, highlight=False, soft_wrap=False)
    return TidyConsole(stderr=error, highlight=False, width=WIDEST) if made.width > WIDEST else made


def evaluated(file: Path, option: str | None, *, as_json: bool = False) -> Evaluation | None:
    """Evaluate a file, or say what is wrong with it; None when it cannot be used."""
    try:
        return evaluate_file(file, option)
    except UnusableFileError as error:
        if as_json:
            print_json(errors_data(error.reading))
        print_problems(error.reading)
        return None


def print_verdict(out: Console, evaluation: Evaluation) -> None:
    """Say first that a file is not sound, or not shown to be, before anybody buys or cuts by it."""
    if evaluation.verdict is not Verdict.SOUND:
        style = STYLES["WARNING"] if evaluation.verdict is Verdict.NOT_SOUND else "bold"
        words = f"{verdict_line(evaluation)}. See firmpedal check before you buy or cut."
        print_wrapped(out, "", words, style)


def print_json(data: dict[str, Any]) -> None:
    sys.stdout.write(json.dumps(data, indent=1, ensure_ascii=False) + "\n")


def print_unwritable(path: Path, trouble: OSError) -> None:
    """Say that a file or folder cannot be written, and why."""
    console(error=True).print(Text(f"{path} cannot be written: {trouble.strerror}"))


def print_problems(reading: Reading) -> None:
    out = console(error=True)
    if not reading.text:  # the file as a whole is the trouble
        for problem in reading.problems:
            hint = f"; {_advice(problem)}" if problem.suggestion else ""
            out.print(Text(f"{reading.file}: {problem.message}{hint}"))
        return
    for problem in reading.problems:
        _print_problem(out, problem, reading.text)
    count = len(reading.problems)
    things = "one thing" if count == 1 else f"{count} things"
    out.print(f"{reading.file} cannot be used yet: {things} to put right.")


def _print_problem(out: Console, problem: Problem, text: str) -> None:
    out.print(Text(f"{_where(problem.span)}: {problem.message}"))
    _print_line(out, problem.span, text, problem.text)
    if problem.also is not None:
        words = "it was opened at" if problem.opened else "the other one:"
        out.print(Text(f"   {words} {_where(problem.also)}"))
    if problem.suggestion and problem.suggestion.removeprefix("choose one of: ") not in problem.message:
        print_wrapped(out, "   try: ", _advice(problem))


def _advice(problem: Problem) -> str:
    """What to do about a problem, with the command where one does it."""
    command = COMMANDS.get(problem.suggestion)
    return f"{problem.suggestion}: {command}" if command else problem.suggestion


def _where(span: Span) -> str:
    return f"{span.file}:{span.line}:{span.column}"


def _print_line(out: Console, span: Span, text: str, marked: str = "") -> None:
    """Print the builder's own line, and a mark under the piece that is meant."""
    rows = text.splitlines()
    if not 0 < span.line <= len(rows):
        return
    number, room = f"{span.line:>5} | ", out.width - 9
    row, start = rows[span.line - 1].rstrip(), span.column - 1
    shift = max(0, start - room + 12)
    out.print(Text(number + row[shift : shift + room], style="dim"), no_wrap=True, overflow="crop")
    under = " " * (start - shift) + "^" * max(1, min(len(marked), room - start + shift))
    out.print(Text(" " * 6 + "| " + under, style="dim"), no_wrap=True, overflow="crop")


def print_wrapped(out: Console, head: str, words: str, style: str = "") -> None:
    """Print words in the width there is, the lines after the first indented as far as the head is wide."""
    filled = textwrap.fill(
        words,
        out.width - 1,
        initial_indent=head,
        subsequent_indent=" " * len(head),
        break_on_hyphens=False,  # names of rules and places stay whole, to be searched and copied
        break_long_words=False,
    )
    out.print(Text(filled, style=style), soft_wrap=True)


def print_findings(out: Console, evaluation: Evaluation) -> None:
    """Print every finding; what is found alike in several places is written out once."""
    for first, *others in alike(evaluation.findings):
        out.print()
        print_finding(out, evaluation, first)
        for other in others:
            print_wrapped(out, "   and ", f"{_where(evaluation.span_of(other.place))}: {other.message}")


def print_finding(out: Console, evaluation: Evaluation, finding: Finding) -> None:
    """Print where, what, what is allowed, why and what to try."""
    span = evaluation.span_of(finding.place)
    head = Text(f"{_where(span)}: ")
    head.append(finding.level.value, style=STYLES[finding.level.value])
    head.append(f" [{finding.rule}]")
    out.print(head, soft_wrap=True)
    print_wrapped(out, "   ", finding.message)
    figures = [evaluation.display.value(value) for value in (finding.measured, finding.allowed) if value]
    if len(figures) == 2 and not all(figure in finding.message for figure in figures):
        print_wrapped(out, "   ", f"found {figures[0]}, should be {finding.relation} {figures[1]}")
    brakes = evaluation.aircraft.aircraft.brakes
    print_wrapped(out, "   why: ", in_words_of(brakes, reason_of(finding)))
    for advice in finding.tries:
        print_wrapped(out, "   try: ", advice)
    if finding.accepted is not None:
        print_wrapped(out, "   accepted by the builder: ", finding.accepted)


def print_unclear(out: Console, evaluation: Evaluation) -> None:
    """Print what somebody has to measure, each thing once, with what it is for."""
    found = to_measure(evaluation)
    for each in found:
        why = f" ({each.why})" if each.why else ""
        print_wrapped(out, " [ ] ", f"{line_of(each)}{why}")
    if any(each.of_thread for each in found):
        print_wrapped(out, "     ", IDENTIFY)


def print_sheet(out: Console, sheet: Sheet) -> None:
    """Print a sheet under its title; drawings are for paper and pages."""
    out.print(Text(f"\n{sheet.title}", style="bold"))
    for block in sheet.blocks:
        print_block(out, block)


def print_block(out: Console, block: Block) -> None:
    """Print one block of a sheet."""
    if isinstance(block, Heading):
        out.print(Text(f"\n{block.text}", style="bold"))
    elif isinstance(block, Paragraph):
        style = "bold" if block.tone is Tone.LEAD else STYLES.get(block.tone.value, "")
        label = f"{block.tone.value}: " if block.tone.value in STYLES else ""
        print_wrapped(out, "", f"{label}{block.text}", style)
    elif isinstance(block, Bullets):
        for item in block.items:
            print_wrapped(out, " [ ] " if block.boxes else "  - ", item)
    elif isinstance(block, Table):
        out.print(_table(block, out.width))
    elif isinstance(block, Sum):
        print_sum(out, block)
    elif isinstance(block, Group):
        for inner in block.blocks:
            print_block(out, inner)


def _table(block: Table, width: int) -> RichTable:
    table = RichTable(box=SIMPLE_HEAD, title=block.title or None, title_justify="left", pad_edge=False)
    room = width + 1 - BETWEEN * len(block.columns)  # the last one has none behind it
    shared = widths((block.columns, *block.rows), room)
    for number, column in enumerate(block.columns):
        head, width_of = filled(column, shared[number]), shared[number]
        table.add_column(head, justify="right" if number in block.right else "left", width=width_of)
    for row in block.rows:
        table.add_row(*(Text(filled(cell, shared[n])) for n, cell in enumerate(row)))
    return table


def print_sum(out: Console, block: Sum, indent: str = "") -> None:
    """Print a calculation: result first, then how it comes about."""
    out.print(Text(f"{indent}{block.result}", style="bold"))
    for line in (block.equation, block.figures):
        if line:
            print_wrapped(out, f"{indent}   = " if line is block.figures else f"{indent}   ", line)
    for line in block.where:
        print_wrapped(out, f"{indent}   ", line)
    if block.source:
        print_wrapped(out, f"{indent}   source: ", block.source)
