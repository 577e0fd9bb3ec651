"""The one road: read, fit, lay, analyse, check. Every front end takes it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.analysis.results import Results, analyse
from firmpedal.catalog import Catalogue, catalogue
from firmpedal.checks.acceptance import accepted
from firmpedal.checks.rules import RULES
from firmpedal.checks.view import Outcome, View
from firmpedal.finding import Finding, Level, NotShown, Span, Verdict
from firmpedal.fit.assembly import Assembly, assemble, named_open, outer_ends
from firmpedal.fit.closing import Violation, violations
from firmpedal.lay.crossing import Crossing, crossing
from firmpedal.lay.line import LaidLine, LineSetting, lay_line
from firmpedal.lay.movement import carriers_of
from firmpedal.lay.seats import seat_of
from firmpedal.lay.stay_clear import Gap, least_gap
from firmpedal.model.aircraft import find
from firmpedal.model.display import Display, display_of
from firmpedal.model.worked import in_words_of
from firmpedal.project import Reading, read_file, read_text

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Line


@dataclass(frozen=True)
class Evaluation:
    """Everything worked out about one option of one file, from first reading to last finding."""

    reading: Reading
    aircraft: Aircraft
    assembly: Assembly
    violations: tuple[Violation, ...]
    laid: tuple[LaidLine, ...]
    filled: tuple[LaidLine, ...]  # the same for sums of fluid: see `as_filled`
    crossings: tuple[Crossing, ...]
    gaps: tuple[Gap, ...]
    results: Results
    findings: tuple[Finding, ...]
    not_shown: tuple[NotShown, ...]
    display: Display

    @property
    def verdict(self) -> Verdict:
        if any(finding.level is Level.WARNING for finding in self.findings):
            return Verdict.NOT_SOUND
        return Verdict.NOT_SHOWN if self.not_shown else Verdict.SOUND

    def span_of(self, place: str) -> Span:
        """Where an object path stands in the file."""
        return self.reading.span_of(place)


class UnusableFileError(Exception):
    """The file cannot be evaluated; `reading.problems` say why."""

    def __init__(self, reading: Reading) -> None:
        super().__init__(f"{reading.file}: {len(reading.problems)} problems")
        self.reading = reading


def evaluate_file(path: Path, option: str | None = None) -> Evaluation:
    """Evaluate one option of a builder's file, or the file as written.

    Raises:
        UnusableFileError: The file has problems that stop it being read.
    """
    return evaluate(read_file(path, option))


def evaluate_text(text: str, file: str = "text", option: str | None = None) -> Evaluation:
    """Evaluate one option of a builder's text.

    Raises:
        UnusableFileError: The text has problems that stop it being read.
    """
    return evaluate(read_text(text, file, option))


def evaluate_options(reading: Reading, names: Iterable[str | None] | None = None) -> tuple[Evaluation, ...]:
    """Evaluate other options of a text that was read: those named, else as written and every option.

    None is the file as written.

    Raises:
        UnusableFileError: One of them has problems that stop it being read.
    """
    wanted = (None, *reading.options) if names is None else tuple(names)
    return tuple(
        evaluate(reading if name == reading.option else read_text(reading.text, reading.file, name))
        for name in wanted
    )


def usable_options(reading: Reading) -> tuple[Evaluation, ...]:
    """Evaluate a text as written and every option of it; what has problems is left out."""
    readings = [
        reading if name == reading.option else read_text(reading.text, reading.file, name)
        for name in (None, *reading.options)
    ]
    return tuple(evaluate(each) for each in readings if each.aircraft is not None)


def evaluate(reading: Reading, display: Display | None = None) -> Evaluation:
    """Take the road from a reading to findings.

    Args:
        reading: A file as read.
        display: The units in which figures are told; without it, the file's own.

    Raises:
        UnusableFileError: The file has problems that stop it being read.
    """
    if reading.aircraft is None:
        raise UnusableFileError(reading)
    aircraft, parts = reading.aircraft, catalogue()
    assembly = assemble(aircraft, parts)
    broken = violations(assembly.joints, outer_ends(aircraft), named_open(aircraft))
    settings = tuple(line_setting(aircraft, assembly, parts, line) for line in aircraft.lines)
    laid = tuple(lay_line(setting) for setting in settings)
    filled = tuple(as_filled(aircraft, assembly, parts, line) for line in laid)
    runs = [line.run for line in laid]
    things = [(thing, carriers_of(thing.moves_with, aircraft.moving)) for thing in aircraft.keep_clear_of]
    gaps = tuple(
        least_gap(run, (setting.start, setting.finish), thing, carriers, aircraft.states)
        for run, setting in zip(runs, settings, strict=True)
        for thing, carriers in things
    )
    crossings = tuple(crossing(run, zone) for run in runs for zone in aircraft.zones)
    results = analyse(aircraft, assembly, filled, crossings)
    display = display or display_of(aircraft.units)
    view = View(aircraft, assembly, broken, laid, crossings, gaps, results, display)
    found = tuple(_worded(aircraft, outcome) for rule in RULES for outcome in rule.check(view))
    outcomes = accepted(aircraft.accepted, found, (rule.name for rule in RULES))
    findings = tuple(sorted((item for item in outcomes if isinstance(item, Finding)), key=_gravity))
    unclear = tuple(item for item in outcomes if isinstance(item, NotShown))
    return Evaluation(
        reading,
        aircraft,
        assembly,
        broken,
        laid,
        filled,
        crossings,
        gaps,
        results,
        findings,
        unclear,
        display,
    )


def as_filled(aircraft: Aircraft, assembly: Assembly, parts: Catalogue, laid: LaidLine) -> LaidLine:
    """A line for the sums of fluid, which a few millimetres at a thread do not touch.

    Where it is not known how far a thread screws in, the line is laid with all that is usual; what is cut and
    bent keeps to the line as it was laid, which is unknown then.
    """
    line = find(aircraft.lines, laid.name)
    if laid.path_length.known or line is None:
        return laid
    rough = lay_line(line_setting(aircraft, assembly, parts, line, any_depth=True))
    return rough if rough.path_length.known else laid


def line_setting(
    aircraft: Aircraft, assembly: Assembly, parts: Catalogue, line: Line, *, any_depth: bool = False
) -> LineSetting:
    """Gather what one line's shape depends on."""
    start, finish = (
        seat_of(aircraft, line, end, assembly.joint_of(line.name, end), parts, any_depth=any_depth)
        for end in ("from", "to")
    )
    return LineSetting(line, start, finish, aircraft.bench, aircraft.states, aircraft.attitudes)


def _worded(aircraft: Aircraft, outcome: Outcome) -> Outcome:
    """What a rule says, in the words of the brakes that this aircraft has."""
    brakes = aircraft.aircraft.brakes
    message = in_words_of(brakes, outcome.message)
    if isinstance(outcome, NotShown):
        return outcome if message == outcome.message else replace(outcome, message=message)
    tries = tuple(in_words_of(brakes, each) for each in outcome.tries)
    same = (message, tries) == (outcome.message, outcome.tries)
    return outcome if same else replace(outcome, message=message, tries=tries)


def _gravity(finding: Finding) -> int:
    return list(Level).index(finding.level)


__all__ = [
    "Evaluation",
    "UnusableFileError",
    "evaluate",
    "evaluate_file",
    "evaluate_options",
    "evaluate_text",
    "line_setting",
    "read_text",
    "usable_options",
]
