"""Reading the catalogue's records: YAML files in which every figure has its unit, source and mark."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import TYPE_CHECKING, Any

import yaml

from firmpedal.catalog.errors import RecordError
from firmpedal.quantity import Mark, Step, Value
from firmpedal.units import Dimension, UnitError, read

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Iterator, Mapping

# Our own files need none of the places that a builder's file is read with, and so are read by compiled code
# where there is some: it takes a fifteenth of the time.
LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_PROVENANCE = frozenset({"source", "mark", "note", "for", "used"})
EVERY_KEY = "all"


@dataclass(frozen=True, slots=True)
class Row:
    """One figure as a record gives it: of what, for whom, on what basis, and whether it is the one used."""

    name: str  # outside_diameter
    key: str  # the size, material, thread or fluid it holds for
    basis: str  # drawn tube minimum
    used: bool
    value: Value
    note: str


@cache
def load(name: str) -> dict[str, Any]:
    """Read one data file of the catalogue, once; nobody changes what comes back."""
    text = resources.files("firmpedal.catalog").joinpath("data", name).read_text("utf-8")
    data: dict[str, Any] = yaml.load(text, LOADER)  # noqa: S506  a safe one, and the file is our own
    return data


def mark_of(record: Mapping[str, Any], where: str) -> Mark:
    """Give a record's mark.

    Raises:
        RecordError: The record has no source, or no mark that we know.
    """
    if not record.get("source"):
        raise RecordError(where, "no source")
    try:
        return Mark[str(record["mark"]).upper()]
    except KeyError:
        raise RecordError(where, f"mark is {record.get('mark')!r}") from None


def read_value(text: object, dimension: Dimension, label: str, record: Mapping[str, Any]) -> Value:
    """Read a figure with its unit; a figure worked out here keeps the words of its sum.

    Raises:
        RecordError: The figure cannot be read, or the record lacks source or mark.
    """
    mark = mark_of(record, label)
    try:
        span = _span(str(text), dimension)
    except UnitError as error:
        raise RecordError(label, str(error)) from error
    note = str(record.get("note", ""))
    step = Step(note, ()) if note and mark in (Mark.DERIVED, Mark.ESTIMATE) else None
    return Value(label, dimension, span, mark, source=str(record["source"]), step=step)


@cache
def _span(text: str, dimension: Dimension) -> tuple[float, float]:
    """Read a figure once, however many records repeat it."""
    return read(text, dimension).span


def pairs(text: object, keys: Collection[str], where: str) -> Iterator[tuple[str, str]]:
    """Split `3 = 7/16 in, 4 = 9/16 in` into keys and figures; `all = 1 in` holds for every key.

    Raises:
        RecordError: Not written so, or for a key that the record does not have.
    """
    for item in str(text).split(", "):
        key, equals, figure = item.partition(" = ")
        if not equals or (key not in keys and key != EVERY_KEY):
            raise RecordError(where, f"cannot place {item!r}")
        for each in keys if key == EVERY_KEY else (key,):
            yield each, figure


def rows(
    groups: Iterable[Mapping[str, Any]],
    keys: Collection[str],
    owner: str,
    measures: Mapping[str, str] | None = None,
) -> tuple[Row, ...]:
    """Read groups of columns into rows; what `measures` does not name is a length.

    Args:
        groups: Each with source and mark, perhaps `for`, `used` and a note, and columns by name.
        keys: The sizes, materials or whatever the columns may speak of.
        owner: What the figures belong to, for labels; `{key}` in it stands for the key.
        measures: Dimension by column name.
    """
    found: list[Row] = []
    for group in groups:
        note, basis, used = str(group.get("note", "")), str(group.get("for", "")), bool(group.get("used"))
        for name in (each for each in group if each not in _PROVENANCE):
            dimension = Dimension((measures or {}).get(name, "length"))
            for key, figure in pairs(group[name], keys, f"{owner} {name}"):
                label = _label(owner.replace("{key}", key), name, basis)
                found.append(Row(name, key, basis, used, read_value(figure, dimension, label, group), note))
    return tuple(found)


def _label(owner: str, name: str, basis: str) -> str:
    plain = f"{owner} {name.replace('_', ' ')}".replace(" yield strength", " yield")
    return plain if basis in ("", "any") else f"{plain}, {basis}"


def chosen(found: Iterable[Row], where: str) -> dict[tuple[str, str, str], Row]:
    """Index the rows in use by key, name and basis; two for one place are a mistake in the data.

    Raises:
        RecordError: Two rows in use for the same place.
    """
    index: dict[tuple[str, str, str], Row] = {}
    for row in found:
        place = (row.key, row.name, row.basis)
        if row.used and index.setdefault(place, row) is not row:
            raise RecordError(where, f"two figures in use for {place}")
    return index
