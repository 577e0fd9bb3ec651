"""`firmpedal check`: the verdict, the findings, and what to measure."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.answering import answered
from firmpedal.cli.terminal import (
    print_findings,
    print_unclear,
)
from firmpedal.finding import Level, Verdict
from firmpedal.model.display import count_of
from firmpedal.quantity import Answer
from firmpedal.report.contract import check_data
from firmpedal.report.cover import VERDICTS
from firmpedal.report.to_measure import to_measure

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from firmpedal.pipeline import Evaluation

LIMITS = (
    "The kit maker's and component makers' instructions and your local rules come first. This shows "
    "arithmetic and published practice; it approves nothing."
)


def run(file: Path, option: str | None, *, as_json: bool) -> int:
    """Check a file; the result is the exit code."""
    return answered(
        file,
        option,
        as_json=as_json,
        data=check_data,
        show=print_check,
        code=lambda evaluation: 0 if evaluation.verdict is Verdict.SOUND else 1,
    )


def print_check(out: Console, evaluation: Evaluation) -> None:
    """Print the answer first, then the reasons, then what to measure."""
    if evaluation.aircraft.aircraft.type_certificate is not Answer.NO:
        out.print("On an aircraft with a type certificate the maker's approved data decide.")
    out.print(Text(headline(evaluation), style="bold"))
    out.print(Text(VERDICTS[evaluation.verdict]))
    print_findings(out, evaluation)
    if to_measure(evaluation):
        first = "Not shown: measure or look up first" if evaluation.not_shown else "To measure or look up"
        out.print(Text(f"\n{first}", style="bold"))
        print_unclear(out, evaluation)
    out.print()
    out.print(Text(LIMITS, style="dim"))


def headline(evaluation: Evaluation) -> str:
    """The verdict in one line."""
    counts = [
        count_of(count, level.value.lower())
        for level in Level
        if (count := sum(finding.level is level for finding in evaluation.findings))
    ]
    things = len(to_measure(evaluation))
    if things:
        counts.append(f"{count_of(things, 'thing')} to measure")
    name = evaluation.aircraft.aircraft.name
    option = f", option {evaluation.reading.option}" if evaluation.reading.option else ", as written"
    return f"{name}{option}: {evaluation.verdict.value.upper()}" + (
        f" - {', '.join(counts)}" if counts else ""
    )
