"""What a rule gets to see, and the few words all rules share."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.checks.closer import closer
from firmpedal.finding import Cited, Finding, Level, NotShown
from firmpedal.quantity import Answer, Mark, Missing, Value

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Sequence

    from firmpedal.analysis.results import Results
    from firmpedal.fit.assembly import Assembly
    from firmpedal.fit.closing import Violation
    from firmpedal.lay.crossing import Crossing
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.stay_clear import Gap
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.display import Display
    from firmpedal.model.surroundings import Zone

Outcome = Finding | NotShown


@dataclass(frozen=True)
class View:
    """One aircraft with everything that was worked out about it."""

    aircraft: Aircraft
    assembly: Assembly
    violations: tuple[Violation, ...]
    laid: tuple[LaidLine, ...]
    crossings: tuple[Crossing, ...]
    gaps: tuple[Gap, ...]
    results: Results
    display: Display

    def show(self, value: Value) -> str:
        return self.display.value(value)

    def crossings_of(self, line: str) -> tuple[Crossing, ...]:
        return tuple(item for item in self.crossings if item.line == line)


@dataclass(frozen=True)
class Rule:
    """One design rule: its stable name, how it looks, and the words of its docs page."""

    name: str
    check: Callable[[View], Iterable[Outcome]]

    @property
    def words(self) -> str:
        return (self.check.__doc__ or "").strip()

    @property
    def asks(self) -> str:
        """What it asks for, in one sentence."""
        return " ".join(self.words.partition("\n\n")[0].split())


@dataclass(frozen=True)
class Limit:
    """What a rule compares: a measured value, the limit, and which way round is good."""

    measured: Value
    allowed: Value
    relation: str  # "at most" or "at least"

    @property
    def kept(self) -> Answer:
        if self.relation == "at most":
            return self.measured.at_most(self.allowed)
        return self.measured.at_least(self.allowed)

    @property
    def missing(self) -> tuple[Missing, ...]:
        found = (*self.measured.missing, *self.allowed.missing)
        return found or tuple(dict.fromkeys((*closer(self.measured), *closer(self.allowed))))


def whether_covered(zone: Zone) -> tuple[Missing, ...]:
    """What to find out about a zone of which it is unknown whether it is covered."""
    unknown = zone.covered is Answer.UNKNOWN
    return (Missing(f"{zone.place}.covered", f"whether {zone.name} is covered"),) if unknown else ()


def judge(
    limit: Limit, *, rule: str, level: Level, place: str, message: str, tries: tuple[str, ...]
) -> Iterator[Outcome]:
    """Yield a finding where a limit is broken, what to measure where that cannot be told, else nothing."""
    if limit.kept is Answer.NO:
        yield Finding(
            rule,
            level,
            place,
            message,
            tries,
            limit.measured,
            limit.allowed,
            limit.relation,
            cited(limit.allowed, limit.measured),
        )
    elif limit.kept is Answer.UNKNOWN:
        yield NotShown(rule, place, f"{limit.measured.label} against {limit.allowed.label}", limit.missing)


def judge_first(
    limits: Sequence[Limit],
    messages: Sequence[str],
    *,
    rule: str,
    level: Level,
    place: str,
    asked: str,
    tries: tuple[str, ...],
) -> Iterator[Outcome]:
    """Yield the first of several limits that is broken; where none is, all that has to be measured."""
    for limit, message in zip(limits, messages, strict=True):
        if limit.kept is Answer.NO:
            yield from judge(limit, rule=rule, level=level, place=place, message=message, tries=tries)
            return
    unknown = [limit for limit in limits if limit.kept is Answer.UNKNOWN]
    if unknown:
        missing = dict.fromkeys(item for limit in unknown for item in limit.missing)
        yield NotShown(rule, place, asked, tuple(missing))


def cited(*values: Value) -> tuple[Cited, ...]:
    """The sources behind some values, each once, the least trusted mark of each, in order."""
    marks: dict[str, Mark] = {}
    for value in values:
        for key, mark in sorted(value.sources()):
            if key != "firmpedal-derivation":
                marks[key] = max(mark, marks.get(key, mark))
    return tuple(Cited(key, mark) for key, mark in marks.items())


def practice(key: str, mark: Mark = Mark.READ) -> tuple[Cited, ...]:
    """One source that a rule rests on where no figure carries it; what only the trade knows is memory."""
    return (Cited(key, Mark.MEMORY if key == "common-practice" else mark),)
