"""From a reading back to text: the aircraft with its option, copies and mirror images written out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.project.edit import EditError, edited
from firmpedal.project.plain import text_of

if TYPE_CHECKING:
    from firmpedal.project.read import Reading

__all__ = ["EditError", "edited", "written"]


def written(reading: Reading) -> str:
    """Write the aircraft of a reading as a fresh file that reads back to the same aircraft.

    The reader writes every copy out before it fills the model, so the tree that it kept is what has to
    be written: in the builder's own words and fractions, with the other side's names and signs.

    Raises:
        ValueError: The reading has no aircraft.
    """
    if reading.aircraft is None or reading.tree is None:
        raise ValueError(f"{reading.file} cannot be read, so it cannot be written")
    return text_of(reading.tree)
