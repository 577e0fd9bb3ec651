"""Findings: everything the rules have to say, as data that changes nothing."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.quantity import Mark, Missing, Value


class Level(StrEnum):
    """How bad it is, after the usage of aviation manuals."""

    WARNING = "WARNING"  # could hurt somebody
    CAUTION = "CAUTION"  # could break something
    NOTE = "NOTE"


@dataclass(frozen=True, slots=True)
class Cited:
    """A source by its key in references.bib, with the mark its figure was taken with."""

    key: str
    mark: Mark


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing a rule found: where, what, what is allowed, why, and what to try.

    `place` is an object path in the builder's file such as `lines.left_leg.via.2`; whoever prints
    the finding asks the evaluation for the line and column.
    """

    rule: str
    level: Level
    place: str
    message: str
    tries: tuple[str, ...]
    measured: Value | None = None
    allowed: Value | None = None
    relation: str = ""  # what measured should be to allowed: "at most" or "at least"
    sources: tuple[Cited, ...] = ()
    accepted: str | None = None
    about: tuple[str, ...] = ()  # other places that it speaks of, such as the ports of two elbows


@dataclass(frozen=True, slots=True)
class NotShown:
    """A rule that could not answer, and what somebody has to measure or look up first."""

    rule: str
    place: str
    message: str
    missing: tuple[Missing, ...]


class Verdict(StrEnum):
    """The one word on an aircraft."""

    SOUND = "sound"
    NOT_SOUND = "not sound"
    NOT_SHOWN = "not shown"


@dataclass(frozen=True, slots=True)
class Span:
    """A place in a text file; line and column count from 1."""

    file: str
    line: int
    column: int


@dataclass(frozen=True, slots=True)
class Problem:
    """Something in the file that cannot be read: where, what, and what the builder may have meant."""

    span: Span
    message: str
    text: str = ""
    suggestion: str = ""
    also: Span | None = None  # the other place that it is about
    opened: bool = False  # whether that is where a list or keys began that do not end as they should
