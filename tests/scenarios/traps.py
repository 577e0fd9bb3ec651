"""Traps in an aircraft's file: laid by a mistake in the right answer, found by a rule, cured by a builder."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from firmpedal.finding import Finding, Level, NotShown
from firmpedal.pipeline import Evaluation, evaluate_text
from texts import edited

Edits = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Trap:
    """One trap of a list: what finds it, at which level (none: it is asked for), where, in which words.

    `lay` are edits that bring it into the right answer, nothing where it is there by the aircraft's shape;
    `cure` are edits that take it out again in another way than by taking the mistake back.
    """

    number: int
    title: str
    rule: str
    level: Level | None
    place: str
    words: str
    lay: Edits = ()
    cure: Edits = ()
    option: str | None = None
    cured_by: str | None = None  # the option that cures it, where that does

    @property
    def has_cure(self) -> bool:
        return bool(self.cure or self.cured_by)

    def __str__(self) -> str:
        return f"{self.number}: {self.title}"


def said(trap: Trap, text: str, option: str | None) -> list[Finding | NotShown]:
    """What the trap's rule says at the trap's place in the trap's words."""
    evaluation = _evaluated(text, option)
    everything = (*evaluation.findings, *evaluation.not_shown)
    return [item for item in everything if item.rule == trap.rule and _is_there(trap, item)]


@cache
def _evaluated(text: str, option: str | None) -> Evaluation:
    return evaluate_text(text, "text", option)


def _is_there(trap: Trap, item: Finding | NotShown) -> bool:
    missing = " ".join(part.what for part in item.missing) if isinstance(item, NotShown) else ""
    return item.place == trap.place and trap.words in f"{item.message} {missing}"


def laid(trap: Trap, text: str) -> str:
    return edited(text, *trap.lay)


def cured(trap: Trap, text: str) -> list[Finding | NotShown]:
    """What is left to say once the builder has cured it."""
    return said(trap, edited(laid(trap, text), *trap.cure), trap.cured_by or trap.option)


def level(item: Finding | NotShown) -> Level | None:
    return item.level if isinstance(item, Finding) else None
