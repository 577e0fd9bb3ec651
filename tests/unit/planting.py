"""A small aircraft to plant mistakes in, and what was found of them."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from firmpedal.project import Reading, read_text

if TYPE_CHECKING:
    from firmpedal.finding import Span

FILES = Path(__file__).parents[1] / "files"
SMALL = (FILES / "small.yaml").read_text("utf-8")

MIRROR = (
    "mirror: [left_pedal, left_wheel, left_mark, left_cylinder, left_caliper, left_heel, left_floor,"
    " left_upper, left_lower]\n"
)


def planted(old: str, new: str, after: str = "") -> str:
    """The small aircraft with one piece written otherwise, and perhaps something after its end."""
    assert SMALL.count(old) >= 1, old
    return SMALL.replace(old, new, 1) + after


@dataclass(frozen=True)
class Found:
    """A problem as the builder meets it: what stands at its place, what is said, what helps."""

    stands: str
    message: str
    suggestion: str
    also: str


def problems(text: str, option: str | None = None) -> list[Found]:
    """Read a text and list what is wrong with it."""
    reading = read_text(text, "a.yaml", option)
    assert (reading.aircraft is None) == bool(reading.problems)
    assert all(problem.span.file == "a.yaml" for problem in reading.problems)
    return [
        Found(
            _standing(text, problem.span),
            problem.message,
            problem.suggestion,
            _standing(text, problem.also) if problem.also else "",
        )
        for problem in reading.problems
    ]


def only(text: str, option: str | None = None) -> Found:
    """The one problem of a text."""
    found = problems(text, option)
    assert len(found) == 1, found
    return found[0]


def sound(text: str, option: str | None = None) -> Reading:
    """Read a text that has nothing wrong with it."""
    reading = read_text(text, "a.yaml", option)
    assert not reading.problems, reading.problems
    assert reading.aircraft is not None
    return reading


def _standing(text: str, span: Span) -> str:
    """The rest of the line from a place on."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return lines[span.line - 1][span.column - 1 :]
