"""What is typed in the form about a thread, from the page or its address, and what it asks."""

from __future__ import annotations

import re
from dataclasses import dataclass, fields
from typing import TYPE_CHECKING

from firmpedal.decide.identify_reading import Asked
from firmpedal.model.part import Gender
from firmpedal.quantity import Answer
from firmpedal.units import Dimension, UnitError, read

if TYPE_CHECKING:
    from collections.abc import Mapping

LONGEST = 160  # signs; no figure is longer
# What stands behind a count of threads: `27 tpi`, `27 per inch`, `27 threads to the inch`.
TO_THE_INCH = re.compile(
    r"\s*(?:tpi|threads?(?: (?:per|to the|to an|an) inch)?|(?:per|to the) inch|/ ?in(?:ch)?)\.?\s*$",
    re.IGNORECASE,
)
# The field of the form that each figure is typed in.
FIELDS = {
    "outside_diameter": "wide",
    "inside_diameter": "wide",
    "threads": "threads",
    "pitch": "threads",
    "taper": "taper",
    "seat_angle": "seat",
    "tube": "tube",
    "turns": "turns",
    "accuracy": "accuracy",
    "counted": "counted",
}


@dataclass(frozen=True)
class Typed:
    """The form as it stands, every field as text; empty is not measured."""

    where: str = Gender.MALE.value
    wide: str = ""
    threads: str = ""
    taper: str = Answer.UNKNOWN.value
    seat: str = ""
    tube: str = ""
    turns: str = ""
    accuracy: str = ""
    counted: str = ""

    @property
    def gender(self) -> Gender:
        return Gender.FEMALE if self.where == Gender.FEMALE.value else Gender.MALE

    @property
    def further(self) -> bool:
        """Whether something stands in the fields that are folded at first."""
        return any((self.tube, self.turns, self.accuracy, self.counted))


def typed(given: Mapping[str, str]) -> Typed:
    """Take what a form or an address gives; what has another name is left."""
    names = {each.name for each in fields(Typed)}
    found = {name: " ".join(words.split())[:LONGEST] for name, words in given.items() if name in names}
    return Typed(**{name: words for name, words in found.items() if words})


def asked_of(form: Typed, unit: str) -> Asked:
    """What the form asks; a bare length is in `unit`, a bare angle in degrees."""
    male = form.gender is Gender.MALE
    count, pitch = _count_or_pitch(form.threads)
    return Asked(
        (form.wide or None) if male else None,
        None if male else (form.wide or None),
        count,
        pitch,
        form.taper,
        form.seat or None,
        form.tube or None,
        form.turns or None,
        form.accuracy or None,
        None,
        form.counted or None,
        unit,
        "deg",
    )


def _count_or_pitch(text: str) -> tuple[str | None, str | None]:
    """Threads to the inch, or a pitch, which is a length with its unit."""
    if not text:
        return None, None
    try:
        read(text, Dimension.LENGTH)
    except UnitError:
        return TO_THE_INCH.sub("", text) or text, None
    return None, text
