"""From a file to the model: parse, apply an option, derive, fill, and look after references."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.finding import Problem, Span
from firmpedal.model.aircraft import Aircraft
from firmpedal.project.context import Context, read_aircraft
from firmpedal.project.derive import derive, option_names, with_option
from firmpedal.project.references import check_references
from firmpedal.project.text import load_file, load_text
from firmpedal.project.tree import Branch, Spans, placed

if TYPE_CHECKING:
    from pathlib import Path


@dataclass(frozen=True)
class Reading:
    """A file as read: the model, or what is wrong with the file.

    `spans` tells for every object path where it stands in the file.
    """

    file: str
    text: str
    option: str | None
    options: tuple[str, ...]
    aircraft: Aircraft | None
    problems: tuple[Problem, ...]
    spans: dict[str, Span]

    def span_of(self, place: str) -> Span:
        """Find the nearest written piece of an object path; the file's start when there is none."""
        while place:
            if place in self.spans:
                return self.spans[place]
            place = place.rpartition(".")[0]
        return Span(self.file, 1, 1)


def read_file(path: Path, option: str | None = None) -> Reading:
    """Read a builder's file with one of its options, or as written."""
    text, problems = load_file(path)
    if problems:
        return Reading(str(path), text, option, (), None, tuple(problems), {})
    return read_text(text, str(path), option)


def read_text(text: str, file: str = "text", option: str | None = None) -> Reading:
    """Read a builder's text; never raises for anything that stands in it."""
    tree, problems = load_text(text, file)
    if tree is None or problems:
        return Reading(file, text, option, (), None, tuple(problems), {})
    options = option_names(tree)
    aircraft, problems, spans = _read_tree(tree, option)
    return Reading(file, text, option, options, aircraft, _each_once(problems), spans.by_path)


def _each_once(problems: list[Problem]) -> tuple[Problem, ...]:
    """Sort problems by place; one place has one problem even where the text serves several times.

    The text of a mirrored thing is read once for every side, and says the same wrong thing again.
    """
    ordered = sorted(problems, key=lambda problem: (problem.span.line, problem.span.column))
    first: dict[tuple[Span, str], Problem] = {}
    for problem in ordered:
        first.setdefault(
            (problem.span, "" if problem.text else problem.suggestion or problem.message), problem
        )
    return tuple(first.values())


def worked_out(text: str, file: str, option: str | None) -> Branch:
    """Give the tree of a text that can be read, with its option, copies and mirror images in place.

    Raises:
        ValueError: The text cannot be read.
    """
    tree, problems = load_text(text, file)
    if tree is None or problems:
        raise ValueError(f"{file} cannot be read")
    derived, _ = derive(with_option(tree, option)[0])
    whole = placed(derived, "", Spans())
    if not isinstance(whole, Branch):
        raise TypeError(file)
    return whole


def _read_tree(tree: Branch, option: str | None) -> tuple[Aircraft | None, list[Problem], Spans]:
    spans = Spans()
    chosen, problems = with_option(tree, option)
    if problems:
        return None, problems, spans
    derived, problems = derive(chosen)
    whole = placed(derived, "", spans)
    if not isinstance(whole, Branch):
        return None, problems, spans
    complete = not problems  # else much would seem to lead to what could not be worked out
    context = Context(whole, spans, problems)
    aircraft = read_aircraft(Aircraft, context)
    if aircraft is not None and complete:
        context.problems += check_references(aircraft, spans)
    return (None if context.problems else aircraft), context.problems, spans
