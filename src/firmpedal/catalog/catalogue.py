"""The catalogue as a whole, and finding a part in it by designation."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import cache
from typing import TYPE_CHECKING

from firmpedal.catalog.errors import PartError, advice, near_miss, quoted
from firmpedal.catalog.hoses import hose_families
from firmpedal.catalog.materials import fluids, materials
from firmpedal.catalog.parts import load_parts
from firmpedal.catalog.sizes import dash_sizes, threads, torque_rows

if TYPE_CHECKING:
    from firmpedal.catalog.sizes import DashSize, Thread, TorqueRow
    from firmpedal.model.part import Part
    from firmpedal.model.stock import Fluid, Hose, Material

_INSIDE_FAMILY = re.compile(r"^([A-Z]+)[ -]+(?=\d)")
_BEFORE_LETTER = re.compile(r"(?<=\d)[ -]+(?=[A-Z]$)")
_LONGEST_DESIGNATION = 60


@dataclass(frozen=True)
class Catalogue:
    """Everything that can be bought, and what belongs to its sizes."""

    parts: tuple[Part, ...]
    materials: tuple[Material, ...]
    hoses: tuple[Hose, ...]
    fluids: tuple[Fluid, ...]
    sizes: tuple[DashSize, ...]
    threads: tuple[Thread, ...]
    torques: tuple[TorqueRow, ...]
    _by_name: dict[str, Part] = field(repr=False, compare=False)

    def part(self, designation: str) -> Part | None:
        """Find a part by its designation or that of its successor, capitals and blanks apart."""
        return self._by_name.get(_folded(designation))

    def size(self, dash: str) -> DashSize | None:
        """Find a dash number such as `-4`."""
        return next((size for size in self.sizes if size.dash == dash), None)

    def thread(self, name: str) -> Thread | None:
        """Find a thread by its short name, such as `1/8-27`, or the dash it belongs to."""
        return next((each for each in self.threads if name and name in (each.name, each.dash)), None)


@cache
def catalogue() -> Catalogue:
    """Read the catalogue, once."""
    parts = load_parts()
    return Catalogue(
        parts=parts,
        materials=materials(),
        hoses=tuple(hose for family in hose_families() for _, hose in family.by_dash),
        fluids=fluids(),
        sizes=dash_sizes(),
        threads=threads(),
        torques=torque_rows(),
        _by_name=_index(parts),
    )


def find(designation: str) -> Part:
    """Find a part by its designation or that of its successor.

    Raises:
        PartError: No such part; the message says the near miss or the choices.
    """
    known = catalogue()
    part = known.part(designation)
    if part is not None:
        return part
    suggestion, choices = _advice(_folded(designation), known.parts)
    raise PartError(
        f"{quoted(designation)} is not in the catalogue: {advice(suggestion, choices, 'choose from')}",
        suggestion=suggestion,
        choices=choices,
    )


def _advice(asked: str, parts: tuple[Part, ...]) -> tuple[str, tuple[str, ...]]:
    """Give the near miss, never one of another size, and the choices: a family's parts or all families."""
    family = next((part.family for part in parts if asked.startswith(part.family + "-")), "")
    if not family:
        families = tuple(dict.fromkeys(part.family for part in parts))
        near = near_miss(asked, [part.designation for part in parts], 0.8)
        return near, families
    own = [part for part in parts if part.family == family]
    size = asked.removeprefix(family + "-").rstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ")
    near = near_miss(asked, [part.designation for part in own if part.size == size], 0.7)
    return near, tuple(part.designation for part in own)


def _index(parts: tuple[Part, ...]) -> dict[str, Part]:
    """Index parts by every name: their own first, then their successors'."""
    index = {_folded(part.designation): part for part in parts}
    for part in parts:
        for alias in part.also_known_as:
            other = alias if "-" in alias else part.designation.replace(part.family, alias, 1)
            index.setdefault(_folded(other), part)
    return index


def _folded(designation: str) -> str:
    """Bring `an 816 4d`, `AN816-4 D` and `AN816-4D` to one form."""
    words = " ".join(designation[:_LONGEST_DESIGNATION].upper().split())
    return _BEFORE_LETTER.sub("", _INSIDE_FAMILY.sub(r"\1", words)).replace(" ", "-")
