"""What a text comes to, in the units that somebody wants to see; remembered, for pages ask often."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache
from threading import Lock
from typing import TYPE_CHECKING

from firmpedal.checks.plausible import odd_figures
from firmpedal.model.display import METRIC_LENGTHS, display_of, usual_display
from firmpedal.pipeline import evaluate
from firmpedal.place import is_within
from firmpedal.project import Reading, read_text

if TYPE_CHECKING:
    from firmpedal.model.aircraft import FileUnits
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation

REMEMBERED = 24  # a few files, their options, and what undo goes back to
ON_THE_TAPE = 16  # in this part of an inch a tape measure is read


class System(StrEnum):
    """In which units figures are shown."""

    INCH = "in"
    METRIC = "mm"


@dataclass(frozen=True)
class Answer:
    """What a text comes to: an evaluation, or else a reading with what is wrong in the text."""

    reading: Reading
    evaluation: Evaluation | None


def answer(text: str, file: str, option: str | None, system: System | None) -> Answer:
    """Evaluate a text.

    Args:
        text: The builder's text.
        file: The file's name, for places.
        option: One of the file's options; none for the file as written.
        system: The units for figures; none for the file's own.
    """
    with _alone(text, file, option, system):
        return _worked_out(text, file, option, system)


@lru_cache(maxsize=REMEMBERED)
def _alone(_text: str, _file: str, _option: str | None, _system: System | None) -> Lock:
    """Where several windows ask the same at once, the first works it out and the others wait for that."""
    return Lock()


@lru_cache(maxsize=REMEMBERED)
def reading_of(text: str, file: str, option: str | None) -> Reading:
    """Read a text, without working it out."""
    return read_text(text, file, option)


def odd_in(text: str, file: str, option: str | None, system: System | None, place: str) -> dict[str, str]:
    """Figures out of the usual at a place or inside it, in the words of their findings."""
    aircraft = reading_of(text, file, option).aircraft
    if aircraft is None:
        return {}
    display = _display(aircraft.units, system) or display_of(aircraft.units)
    found = odd_figures(aircraft, display)
    return {at: words for at, words in found if not place or is_within(at, place)}


@lru_cache(maxsize=REMEMBERED)
def _worked_out(text: str, file: str, option: str | None, system: System | None) -> Answer:
    reading = reading_of(text, file, option)
    if reading.aircraft is None:
        return Answer(reading, None)
    return Answer(reading, evaluate(reading, _display(reading.aircraft.units, system)))


def system_of(units: FileUnits) -> System:
    """The system that a file is written in."""
    return System.METRIC if units.length in METRIC_LENGTHS else System.INCH


def _display(units: FileUnits, system: System | None) -> Display | None:
    """The file's own display where it is of that system, else the usual units of the other one."""
    if system is None or system is system_of(units):
        return None
    return usual_display(system.value, ON_THE_TAPE)
