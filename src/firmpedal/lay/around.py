"""What the file says lies about: things to stay clear of, and panels, as solids where they were measured."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.lay import near
from firmpedal.lay.solids import body_off, half_range, point_off, reach_of, solid_of
from firmpedal.model.shapes import Sheet, UnknownShape

if TYPE_CHECKING:
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Panel
    from firmpedal.model.surroundings import KeepClear


@dataclass(frozen=True, slots=True)
class Thing:
    """A solid with its name; `off` is how far its surface can be from there [m].

    `through` names the lines that pass it by a hole.
    """

    name: str
    place: str
    solid: near.Solid
    off: float
    through: tuple[str, ...] = ()


def things_about(aircraft: Aircraft) -> tuple[Thing, ...]:
    """Give every thing to stay clear of and every panel whose place is known."""
    bodies = [found for thing in aircraft.keep_clear_of if (found := _body(thing))]
    return (*bodies, *(found for panel in aircraft.panels if (found := _plate(panel))))


@lru_cache(maxsize=256)
def _body(thing: KeepClear) -> Thing | None:
    if isinstance(thing.where, UnknownShape):
        return None
    return Thing(thing.name, thing.place, solid_of(thing.where), body_off(thing.where))


@lru_cache(maxsize=256)
def _plate(panel: Panel) -> Thing | None:
    """A panel as a box: as far as the file says, and as thick; nothing to half that where it is unknown."""
    sheet = panel.where
    if not isinstance(sheet, Sheet):
        return None
    half = panel.thickness.middle / 2 if panel.thickness.known else 0.0
    (x, to_x), (y, to_y), (z, to_z) = reach_of(sheet, sheet.offset.middle, half)
    off = half_range(sheet.offset) + (half_range(panel.thickness) / 2 if panel.thickness.known else 0.0)
    corners = (sheet.within.low, sheet.within.high) if sheet.within is not None else ()
    off += max(map(point_off, corners), default=0.0)
    lines = tuple(passage.name for passage in panel.passes)
    return Thing(panel.name, panel.place, near.Box((x, y, z), (to_x, to_y, to_z)), off, lines)
