"""From families of parts to one part per size and material."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

from firmpedal.catalog.errors import RecordError
from firmpedal.catalog.mass import estimated_mass
from firmpedal.catalog.records import EVERY_KEY, load, mark_of, read_value, rows
from firmpedal.catalog.sizes import threads
from firmpedal.hashing import first_of_equals
from firmpedal.model.part import DRY, Category, Clocking, End, Form, Gender, Interface, Part
from firmpedal.units import Dimension, read

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from firmpedal.quantity import Value

PART_FILES = (
    "fittings_flared.yaml",
    "nuts_sleeves.yaml",
    "bulkhead.yaml",
    "pipe.yaml",
    "caps_plugs.yaml",
    "compression.yaml",
    "metric.yaml",
    "boss.yaml",
    "washers.yaml",
    "clamps.yaml",
)

_THREADED = (Form.FLARE_37, Form.PIPE, Form.METRIC, Form.BOSS)


def load_parts() -> tuple[Part, ...]:
    """Read every part of the catalogue."""
    metals = {record["name"]: record for record in load("part_materials.yaml")["materials"]}
    families = (family for file in PART_FILES for family in load(file)["families"])
    return tuple(part for family in families for part in family_parts(family, metals))


def family_parts(family: Mapping[str, Any], metals: Mapping[str, Mapping[str, Any]]) -> Iterator[Part]:
    """Make the parts of one family, each size in each material.

    Raises:
        RecordError: The record is not written as the data files explain.
    """
    name = family["family"]
    sizes = dict(item.split(" = ") for item in family["sizes"].split(", "))
    dimensions: dict[str, dict[str, Value]] = {size: {} for size in sizes}
    for row in rows(_only(family["dimensions"], sizes), sizes, f"{name}-{{key}}"):
        if row.name in dimensions[row.key]:
            raise RecordError(f"{name}-{row.key}", f"two figures for {row.name}")
        dimensions[row.key][row.name] = row.value
    for size, spec in sizes.items():
        ends = _ends(_words(family.get("ends")), spec.split(" by "), f"{name}-{size}")
        for metal in family["materials"].split(", "):
            yield _part(family, size, ends, metals[metal], dimensions[size])


def _only(groups: list[dict[str, Any]], sizes: Mapping[str, Any]) -> list[dict[str, Any]]:
    """Leave out of shared columns the sizes that this family does not have."""

    def kept(text: str) -> str:
        return ", ".join(item for item in text.split(", ") if item.partition(" = ")[0] in (*sizes, EVERY_KEY))

    return [
        {key: kept(text) if " = " in str(text) and key != "note" else text for key, text in group.items()}
        for group in groups
    ]


def _part(
    family: Mapping[str, Any],
    size: str,
    ends: tuple[End, ...],
    metal: Mapping[str, Any],
    dimensions: dict[str, Value],
) -> Part:
    letter = metal["letter"] if family.get("letters", True) else ""
    pattern = family.get("designation", "{family}-{size}{letter}")
    designation = pattern.format(family=family["family"], size=size, letter=letter)
    density = read_value(metal["density"], Dimension.DENSITY, f"density of {metal['name']}", metal)
    return Part(
        designation=designation,
        family=family["family"],
        name=family["name"],
        category=Category(family["category"]),
        size=size,
        material=metal["name"],
        ends=ends,
        turn=read(family["turn"], Dimension.ANGLE).span[0] if "turn" in family else None,
        brake_pressure=family.get("brake_pressure", True),
        mass=estimated_mass(designation, family["envelope"], dimensions, _male_threads(ends), density),
        dimensions=tuple(dimensions.items()),
        also_known_as=tuple(
            alias.format(size=size, letter=letter) for alias in _words(family.get("also_known_as"))
        ),
        source=family["source"],
        mark=mark_of(family, designation),
        note=family.get("note", ""),
        same_as=family.get("same_as", "").format(size=size, letter=letter),
    )


def _words(text: str | None) -> list[str]:
    return text.split(", ") if text else []


def _ends(texts: list[str], spec: list[str], where: str) -> tuple[End, ...]:
    sizes = spec * len(texts) if len(spec) == 1 else spec
    if len(sizes) != len(texts):
        raise RecordError(where, f"{len(texts)} ends but {len(sizes)} sizes")
    return tuple(_end(text, size) for text, size in zip(texts, sizes, strict=True))


def _end(text: str, size: str) -> End:
    """Make an end of `male taper pipe thread`; only a taper thread limits how it clocks."""
    gender, _, form = text.partition(" ")
    interface = first_of_equals(Interface(Form(form), size, Gender(gender)))
    clocking = Clocking.MAKE_UP if interface.form is Form.PIPE else Clocking.FREE
    return End(interface, interface.form not in DRY, clocking)


def _male_threads(ends: tuple[End, ...]) -> tuple[Value, ...]:
    """Give the major diameters of a part's male threads."""
    known = _major_diameters()
    male = (end.interface for end in ends if end.interface.gender is Gender.MALE)
    return tuple(known[end.size] for end in male if end.form in _THREADED)


@cache
def _major_diameters() -> dict[str, Value]:
    """Index the major diameters by the names that the sizes of ends have: thread or dash."""
    found = ((thread.dash or thread.name, thread.value("major_diameter")) for thread in threads())
    return {name: value for name, value in found if value is not None}
