"""`firmpedal fullsize`: templates to lay tube and panels on, printed at full size."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.targets import refused
from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_unwritable, print_wrapped
from firmpedal.model.display import count_of
from firmpedal.report.fullsize import drawable, fullsize_pages, not_drawn
from firmpedal.report.paper import PAPERS

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.paper import Paper


def run(file: Path, out: Path, option: str | None, paper: str, line: str | None) -> int:
    """Write the pages of a file; the result is the exit code."""
    error = console(error=True)
    chosen = next((each for name, each in PAPERS.items() if name.lower() == paper.lower()), None)
    if chosen is None:
        error.print(Text(f"--paper is {' or '.join(PAPERS)}, not {paper!r}."))
        return UNUSABLE
    if refused(out, ".pdf", file):
        return UNUSABLE
    with error.status("Working it out ..."):
        evaluation = evaluated(file, option)
    if evaluation is None:
        return UNUSABLE
    names = [each.name for each in drawable(evaluation)]
    if line is not None and line not in names:
        known = f"Those are: {', '.join(names)}." if names else "There is none."
        error.print(Text(f"{line} is no tube whose shape is known. {known}"))
        return UNUSABLE
    return _write(evaluation, out, chosen, line)


def _write(evaluation: Evaluation, out: Path, paper: Paper, line: str | None) -> int:
    from firmpedal.export.fullsize import write  # noqa: PLC0415  the printing library is slow to load

    error, pages = console(error=True), fullsize_pages(evaluation, paper, line)
    for words in not_drawn(evaluation):
        print_wrapped(error, "Not drawn: ", words)
    if not pages:
        error.print(
            Text("Nothing to print at full size: no tube of known shape, no fitting through a panel.")
        )
        return UNUSABLE
    with error.status("Printing ..."):
        try:
            write(pages, evaluation, paper, out)
        except OSError as trouble:
            print_unwritable(out, trouble)
            return UNUSABLE
    console().print(Text(f"Wrote {out}, {count_of(len(pages), 'page')} of {paper.name}:"))
    for title, count in _counted([page.title for page in pages]).items():
        console().print(Text(f"  {title}{f', {count} pages' if count > 1 else ''}"))
    console().print(Text("Print at 100 percent, no fit to page. Measure the ruler before you cut anything."))
    return 0


def _counted(titles: list[str]) -> dict[str, int]:
    return {title: titles.count(title) for title in dict.fromkeys(titles)}
