"""A catalogue in canonical order: what parts physically are decides, never what they are called."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Protocol

from firmpedal.fit.mating import Pass, passes_of
from firmpedal.fit.wishes import chain_objection
from firmpedal.units import to_unit

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from firmpedal.model.part import Interface, Part

_MICROGRAMS = 1e9  # in a kilogram; whole numbers, so that the order of adding cannot decide a tie


class Catalogue(Protocol):
    """Anything that has parts."""

    @property
    def parts(self) -> tuple[Part, ...]: ...


@dataclass(frozen=True, slots=True)
class Shelf:
    """Parts that are physically the same, by whatever numbers; `part` stands for them all.

    `flowing` are its ends that fluid flows through; `objection` says why nothing can be passed through it on
    the way from a port to a line, or nothing.
    """

    rank: int
    part: Part
    twins: tuple[Part, ...]
    unknown_masses: int
    micrograms: int
    flowing: tuple[Interface, ...]
    objection: str


@dataclass(frozen=True, slots=True, eq=False)
class Shop:
    """A catalogue as shelves, and every way through a part of two flow ends.

    Shops are told apart by identity, so that what was found in one is looked up without reading it.

    `passes` go with `shelf_of` (the shelf of each pass). Passes are known by their number: `by_after`
    gives those that end with an interface showing, `by_before` those that screw onto one. `on_dry_end`
    gives what goes on an end that carries no fluid: jam nuts, washers, O-rings.
    """

    parts: tuple[Part, ...]
    shelves: tuple[Shelf, ...]
    passes: tuple[Pass, ...]
    shelf_of: tuple[Shelf, ...]
    by_after: Mapping[Interface, tuple[int, ...]]
    by_before: Mapping[Interface, tuple[int, ...]]
    on_dry_end: Mapping[Interface, tuple[Shelf, ...]]


class _Same:
    """A catalogue told apart by identity: to compare hundreds of parts would cost more than to fit them."""

    def __init__(self, catalogue: Catalogue) -> None:
        self.catalogue = catalogue

    def __hash__(self) -> int:
        return id(self.catalogue)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other.catalogue is self.catalogue


def shop_of(catalogue: Catalogue) -> Shop:
    """Put a catalogue in canonical order, once for each catalogue object."""
    return _shop(_Same(catalogue))


@lru_cache(maxsize=16)
def _shop(same: _Same) -> Shop:
    parts = same.catalogue.parts
    alike: dict[tuple[object, ...], list[Part]] = defaultdict(list)
    for part in parts:
        alike[physical_key(part)].append(part)
    shelves = tuple(_shelf(rank, alike[key]) for rank, key in enumerate(sorted(alike)))
    steps = [(step, shelf) for shelf in shelves if not shelf.objection for step in passes_of(shelf.part)]
    return Shop(
        parts,
        shelves,
        tuple(step for step, _ in steps),
        tuple(shelf for _, shelf in steps),
        _numbered_by(step.after for step, _ in steps),
        _numbered_by(step.before for step, _ in steps),
        _by_dry_end(shelves),
    )


def _by_dry_end(shelves: Iterable[Shelf]) -> Mapping[Interface, tuple[Shelf, ...]]:
    """Sort what has one dry end and nothing else by the end that it goes on."""
    found: dict[Interface, list[Shelf]] = defaultdict(list)
    for shelf in shelves:
        if len(shelf.part.ends) == 1 and shelf.part.dry_ends:
            found[shelf.part.dry_ends[0].complement].append(shelf)
    return {interface: tuple(some) for interface, some in found.items()}


def _numbered_by(interfaces: Iterable[Interface]) -> Mapping[Interface, tuple[int, ...]]:
    numbers: dict[Interface, list[int]] = defaultdict(list)
    for number, interface in enumerate(interfaces):
        numbers[interface].append(number)
    return {interface: tuple(some) for interface, some in numbers.items()}


def _shelf(rank: int, alike: list[Part]) -> Shelf:
    first, *twins = sorted(alike, key=lambda part: part.designation)
    flowing = tuple(first.ends[index].interface for index in first.flow_ends)
    return Shelf(rank, first, tuple(twins), *weight(first), flowing, chain_objection(first))


def weight(part: Part) -> tuple[int, int]:
    """Give 1 if a part's mass is unknown, else 0, and the middle of its mass in micrograms."""
    return (0, round(part.mass.middle * _MICROGRAMS)) if part.mass.known else (1, 0)


def physical_key(part: Part) -> tuple[object, ...]:
    """Give what a part physically is, in a form that sorts; its names are left out."""
    ends = tuple(
        [
            (end.interface.form, end.interface.size, end.interface.gender, end.flow, end.clocking)
            for end in part.ends
        ]
    )
    lengths = tuple(sorted([(name, value.span or ()) for name, value in part.dimensions]))
    mass = part.mass.span or ()
    return (part.category, part.material, ends, turn_of(part), part.brake_pressure, mass, lengths, part.mark)


def turn_of(part: Part) -> float:
    """Give the turn of a part's body in degrees; straight where it has none."""
    return degrees(part.turn or 0.0)


@lru_cache(maxsize=256)
def degrees(radians: float) -> float:
    """Give an angle in degrees without a float's last digits, so that 22.5 is as far from 0 as from 45."""
    return round(to_unit(radians, "deg"), 6)


def angle_words(angle: float) -> str:
    """Say an angle in degrees as people do: `straight`, `22.5 degrees`."""
    return f"{round(angle, 1):g} degrees" if angle else "straight"
