"""Findings that the builder accepts in the file, each with a reason."""

from __future__ import annotations

from dataclasses import replace
from difflib import get_close_matches
from typing import TYPE_CHECKING

from firmpedal.finding import Finding, Level
from firmpedal.place import is_within

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.checks.view import Outcome
    from firmpedal.model.aircraft import Acceptance

RULE = "accepted-but-gone"


def accepted(
    acceptances: tuple[Acceptance, ...], outcomes: tuple[Outcome, ...], rules: Iterable[str]
) -> tuple[Outcome, ...]:
    """Put the builder's reasons on the findings they accept; the level stays.

    An entry that nothing answers to any more is said, so that it does not hide the next finding.
    """
    marked = tuple(_with_reason(outcome, acceptances) for outcome in outcomes)
    return (*marked, *_gone(acceptances, outcomes, tuple(rules)))


def _with_reason(outcome: Outcome, acceptances: tuple[Acceptance, ...]) -> Outcome:
    reason = next((item.reason for item in acceptances if concerns(item, outcome)), None)
    if reason is None or not isinstance(outcome, Finding):
        return outcome
    return replace(outcome, accepted=reason)


def _gone(
    acceptances: tuple[Acceptance, ...], outcomes: tuple[Outcome, ...], rules: tuple[str, ...]
) -> Iterator[Finding]:
    for item in acceptances:
        if any(concerns(item, outcome) for outcome in outcomes):
            continue
        message = f"{item.rule} at {item.at} was accepted, and is not found any more"
        tries: tuple[str, ...] = ("take the entry out",)
        if item.rule not in rules:
            message = f"{item.rule} at {item.at} was accepted, and there is no rule of that name"
            tries = tuple(f"did you mean {name}?" for name in get_close_matches(item.rule, rules, 1)) or tries
        yield Finding(RULE, Level.NOTE, item.place, message, tries)


def concerns(acceptance: Acceptance, outcome: Outcome) -> bool:
    """Say whether an entry means this outcome."""
    return acceptance.rule == outcome.rule and means(acceptance.at, outcome.place)


def means(at: str, place: str) -> bool:
    """Say whether an entry's `at` means a place: by its name (`left_leg`) or by its path in the file."""
    section, _, inner = place.partition(".")
    paths = [inner] if inner and at == section else [inner, place]
    return any(is_within(path, at) for path in paths)
