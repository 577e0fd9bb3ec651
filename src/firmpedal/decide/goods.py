"""From what stands on a list or on a bag to one thing that can be counted."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.catalog import CatalogueError, PartError, catalogue, find, stock
from firmpedal.catalog.errors import near_miss
from firmpedal.model.stock import Hose, LineKind
from firmpedal.units import Dimension, UnitError, read

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.model.part import Part
    from firmpedal.model.stock import Stock

ALIKE = 0.75
INCH_UNITS = "in"
_BEGUN = re.compile(r"^[A-Za-z]{1,5}[ -]?\d+(?:[ -]\d+)*(?:[ -]?[A-Za-z])?(?=$|[\s,;:(])")
_DASHED = re.compile(r"(?<=[A-Za-z0-9])\s*[-\u2010-\u2013]\s*(?=[0-9])")
_BY_LENGTH = re.compile(
    r"""^(?P<phrase>.*?\S)[\s,;:@(]+(?:cut\ to\ |length\ |l\ ?=\ ?)?
        (?P<length>(?:\d+[-\s])?\d+/\d+\s*[a-z"']+|\d*\.?\d+\s*[a-z"']+)
        (?:\s+(?:long|each|from\ seat\ to\ seat|total))?\)?$""",
    re.VERBOSE | re.IGNORECASE,
)


class Kind(StrEnum):
    """How a thing is counted."""

    PIECE = "piece"
    TUBE = "tube"  # by length, cut at the bench
    HOSE = "hose"  # by piece, each of its own length


@dataclass(frozen=True, slots=True)
class Goods:
    """One thing that can be bought, whatever name it goes by."""

    key: str
    name: str
    kind: Kind
    family: str
    size: str = ""
    material: str = ""
    part: Part | None = None


@dataclass(frozen=True, slots=True)
class Named:
    """What a text names, with the length that stands in it."""

    goods: Goods
    length: tuple[float, float] | None = None


def named(text: str, wanted: Iterable[Goods], length_unit: str | None) -> Named | None:
    """Find what a text names: a part, tube or hose, or something by its name among what is wanted."""
    part = _part(text)
    if part is not None:
        return Named(goods_of_part(part))
    known = tuple(wanted)
    lines = [line for unit in _units(text, length_unit) if (line := _line(text, unit)) is not None]
    keys = {each.key for each in known}
    needed = next((line for line in lines if line.goods.key in keys), None)
    return needed or (lines[0] if lines else _by_name(text, known))


def _units(text: str, length_unit: str | None) -> tuple[str | None, ...]:
    """Units of a bare dimension, the likelier first: fractions are inches, whatever the file has."""
    units = (INCH_UNITS, length_unit) if "/" in text else (length_unit, INCH_UNITS)
    return tuple(dict.fromkeys(units))


def goods_of_part(part: Part) -> Goods:
    """A part of the catalogue."""
    return Goods(part.designation, part.designation, Kind.PIECE, part.family, part.size, part.material, part)


def goods_of_stock(made_of: Stock) -> Goods:
    """Tube, plastic or hose, whatever the phrase it was written with."""
    if isinstance(made_of, Hose):
        key = f"hose {made_of.dash} {made_of.specification}"
        return Goods(key, made_of.phrase, Kind.HOSE, "hose", made_of.dash.lstrip("-"), made_of.specification)
    across, wall = made_of.outside_diameter, made_of.wall
    size = f"{across.middle:.6f} x {wall.middle:.6f}"
    family = "plastic" if made_of.kind is LineKind.PLASTIC else "tube"
    key = f"{family} {made_of.material.name} {size}"
    return Goods(key, made_of.phrase, Kind.TUBE, family, size, made_of.material.name)


def _part(text: str) -> Part | None:
    """A designation, alone or with words behind it; blanks round a dash do not count."""
    closed = _DASHED.sub("-", text.strip())
    whole = catalogue().part(closed)
    if whole is not None:
        return whole
    begun = _BEGUN.match(closed)
    return catalogue().part(begun[0]) if begun else None


def _line(text: str, unit: str | None) -> Named | None:
    """A stock phrase, alone or with a length behind it."""
    try:
        return Named(goods_of_stock(stock(text, unit)))
    except CatalogueError:
        found = _BY_LENGTH.match(text)
    length = length_of(found["length"]) if found else None
    if found is None or length is None:
        return None
    try:
        return Named(goods_of_stock(stock(found["phrase"].rstrip(" ,;:@("), unit)), length)
    except CatalogueError:
        return None


def length_of(text: str, unit: str | None = None) -> tuple[float, float] | None:
    """A length as somebody wrote it, if it is one."""
    try:
        span = read(text, Dimension.LENGTH, unit).span
    except UnitError:
        return None
    return span if span[0] > 0 else None


def _by_name(text: str, wanted: Iterable[Goods]) -> Named | None:
    """Something without a number: by its name, by its family and size, or by a family that has one kind."""
    found = by_name(text, wanted)
    return Named(found[0]) if len(found) == 1 else None


def by_name(text: str, wanted: Iterable[Goods]) -> tuple[Goods, ...]:
    """Everything without a number that a text can mean; more than one where it says too little."""
    asked = folded(text)
    known = [each for each in wanted if each.part is None and each.kind is Kind.PIECE]
    exact = [each for each in known if asked == each.key]
    sized = [each for each in known if each.size and asked == folded(f"{each.family} {each.size}")]
    return tuple(exact or sized or [each for each in known if asked == folded(each.family)])


def folded(text: str) -> str:
    """Letters and digits only, for comparing names."""
    return re.sub(r"[^a-z0-9]", "", text.casefold())


def nearest(text: str, wanted: Iterable[Goods]) -> str:
    """The name probably meant: what the design needs first, then the rest of the catalogue."""
    begun = _BEGUN.match(text.strip())
    asked = begun[0] if begun else text
    near = near_miss(asked, [each.name for each in wanted], ALIKE)
    if near:
        return near
    try:
        find(asked)
    except PartError as error:
        return error.suggestion
    return ""
