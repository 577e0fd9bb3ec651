"""From a file to the model: lay out, apply an option, derive, fill, and look after references."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from firmpedal.finding import Problem, Span
from firmpedal.model.aircraft import Aircraft
from firmpedal.project.bench import check_bench
from firmpedal.project.beyond import check_beyond
from firmpedal.project.context import Context, read_aircraft
from firmpedal.project.contradictions import check_contradictions
from firmpedal.project.derive import derive
from firmpedal.project.file import load_file
from firmpedal.project.grow import load_text
from firmpedal.project.measures import note_missing_units
from firmpedal.project.notes import Notes
from firmpedal.project.option import option_names, with_option
from firmpedal.project.overlay import without_removed
from firmpedal.project.references import References, check_references
from firmpedal.project.sections import check_sections
from firmpedal.project.spelling import with_known_sections
from firmpedal.project.tree import Branch, Spans, placed

if TYPE_CHECKING:
    from pathlib import Path


@dataclass(frozen=True)
class Reading:
    """A file as read: the model, or what is wrong with the file.

    `spans` tells for every object path where it stands in the file; `tree` is what the model was
    filled from, with the option applied and every copy written out.
    """

    file: str
    text: str
    option: str | None
    options: tuple[str, ...]
    aircraft: Aircraft | None
    problems: tuple[Problem, ...]
    spans: dict[str, Span]
    tree: Branch | None = field(default=None, repr=False, compare=False)

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
    notes = Notes()
    written = load_text(text, file, notes)
    if written is None:
        return Reading(file, text, option, (), None, notes.problems(), {})
    written = with_known_sections(written, notes)
    spans = Spans()
    tree = _settled(written, option, notes, spans)
    aircraft = None if tree is None else _filled(tree, notes)
    problems = notes.problems()
    return Reading(
        file,
        text,
        option,
        option_names(written),
        None if problems else aircraft,
        problems,
        spans.by_path,
        tree,
    )


def _settled(written: Branch, option: str | None, notes: Notes, spans: Spans) -> Branch | None:
    """Apply the option, write out every copy, take out what is removed, and give each piece its path."""
    chosen = with_option(written, option, notes)
    if chosen is None:
        return None
    whole = placed(without_removed(derive(chosen, notes), notes), "", spans)
    return whole if isinstance(whole, Branch) else None


def _filled(tree: Branch, notes: Notes) -> Aircraft | None:
    context = Context(tree, notes)
    aircraft: Aircraft | None = read_aircraft(Aircraft, context)
    if aircraft is not None:
        references = References(aircraft, tree, notes)
        check_references(references)
        check_sections(references)
        check_contradictions(references)
        check_bench(references)
        check_beyond(references)
    note_missing_units(context)
    return aircraft
