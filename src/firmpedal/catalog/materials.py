"""Materials of tube and plastic line, and brake fluids."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

from firmpedal.catalog.records import Row, chosen, load, mark_of, pairs, read_value, rows
from firmpedal.model.stock import Fluid, LineKind, Material, SealRating
from firmpedal.quantity import Value, unknown
from firmpedal.units import Dimension, read

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

_BLANKS = str.maketrans("-_,", "   ")
_STRENGTHS = ("yield_strength", "ultimate_strength", "elastic_modulus", "fatigue_strength")
_OTHERS = {
    "poisson_ratio": Dimension.NUMBER,
    "density": Dimension.DENSITY,
    "thermal_expansion": Dimension.EXPANSION,
}
MATERIAL_VALUES = dict.fromkeys(_STRENGTHS, Dimension.PRESSURE) | _OTHERS
FLUID_VALUES = {
    "density": Dimension.DENSITY,
    "bulk_modulus": Dimension.PRESSURE,
    "flash_point": Dimension.TEMPERATURE,
    "thermal_expansion": Dimension.EXPANSION,
    "boiling_point": Dimension.TEMPERATURE,
    "dry_boiling_point": Dimension.TEMPERATURE,
    "service_temperature": Dimension.TEMPERATURE,
    "surface_tension": Dimension.SURFACE_TENSION,
}


@cache
def materials() -> tuple[Material, ...]:
    """Read the materials of tube and plastic line."""
    data = load("tubes.yaml")
    names = [record["name"] for record in data["materials"]]
    found = rows(data["columns"], names, "{key}", data["measures"])
    chosen(found, "tubes.yaml")
    warm = _by_temperature(data["modulus_at"], names, "elastic modulus", Dimension.PRESSURE)
    kept = data["strength_kept"]
    mark_of(kept, "strength_kept")
    return tuple(
        _material(record, found, warm[record["name"]], kept if record["group"] == kept["group"] else None)
        for record in data["materials"]
    )


@cache
def material_names() -> dict[str, str]:
    """Map every spelling of a material, in the folded form of `folded`, to its name."""
    spellings: dict[str, str] = {}
    for record in load("tubes.yaml")["materials"]:
        for spelling in (record["name"], *record.get("also", ())):
            for form in _forms(folded(spelling)):
                spellings.setdefault(form, record["name"])
    return spellings


def folded(words: str) -> str:
    """Bring spellings that differ in capitals, dashes, commas and blanks to one form."""
    return " ".join(words.casefold().translate(_BLANKS).split())


def _forms(spelling: str) -> tuple[str, ...]:
    """Give a temper's usual slips: `5052 o` is also written 5052-0 and 5052O."""
    if spelling.endswith(" o"):
        return spelling, spelling[:-1] + "0", spelling[:-2] + "o"
    return (spelling, spelling.replace(" ", "")) if spelling[:4].isdigit() else (spelling,)


def _material(
    record: Mapping[str, Any],
    found: tuple[Row, ...],
    warm: tuple[tuple[float, Value], ...],
    kept: Mapping[str, Any] | None,
) -> Material:
    name = record["name"]
    own = [row for row in found if row.key == name]
    values = used_values(own, MATERIAL_VALUES, name)
    return Material(
        name=name,
        kind=LineKind(record["kind"]),
        group=record["group"],
        modulus_at=warm,
        strength_kept=_strength_kept(kept) if kept else (),
        strength_kept_source=kept["source"] if kept else "",
        note=record.get("note", ""),
        brake_pressure=record.get("brake_pressure", True),
        other_values=tuple(row.value for row in own if not row.used),
        **values,
    )


def used_values(own: list[Row], wanted: Mapping[str, Dimension], name: str) -> dict[str, Value]:
    """Give the figures in use by name; what no source gives is unknown."""
    used = {row.name: row.value for row in own if row.used}
    return {
        each: used.get(each) or unknown(f"{name} {each.replace('_', ' ')}", dimension, "catalogue")
        for each, dimension in wanted.items()
    }


def _by_temperature(
    groups: list[dict[str, Any]], names: list[str], what: str, dimension: Dimension
) -> dict[str, tuple[tuple[float, Value], ...]]:
    """Read figures by temperature [K], coldest first."""
    found: dict[str, list[tuple[float, Value]]] = {name: [] for name in names}
    for group in groups:
        kelvin = read(group["temperature"], Dimension.TEMPERATURE).span[0]
        for name, figure in pairs(group["values"], names, what):
            label = f"{name} {what} at {group['temperature']}"
            found[name].append((kelvin, read_value(figure, dimension, label, group)))
    return {name: tuple(sorted(table, key=lambda each: each[0])) for name, table in found.items()}


def _strength_kept(record: Mapping[str, Any]) -> tuple[tuple[float, float], ...]:
    """Read the shares of strength kept by temperature [K], coldest first."""
    items = (item.split(" = ") for item in record["values"].split(", "))
    return tuple(
        (read(warmth, Dimension.TEMPERATURE).span[0], read(share, Dimension.NUMBER).span[0])
        for warmth, share in items
    )


@cache
def fluids() -> tuple[Fluid, ...]:
    """Read the brake fluids."""
    data = load("fluids.yaml")
    names = [record["name"] for record in data["fluids"]]
    found = rows(data["columns"], names, "{key}", data["measures"])
    chosen(found, "fluids.yaml")
    thick = _by_temperature(data["viscosity_at"], names, "viscosity", Dimension.KINEMATIC_VISCOSITY)
    return tuple(
        _fluid(
            record,
            [row for row in found if row.key == record["name"]],
            data["seals"],
            thick[record["name"]],
        )
        for record in data["fluids"]
    )


@cache
def fluid_names() -> dict[str, str]:
    """Map every spelling of a fluid, in the folded form of `folded`, to its name."""
    records = load("fluids.yaml")["fluids"]
    return {
        folded(spelling): record["name"]
        for record in records
        for spelling in (record["name"], *record.get("also", ()))
    }


def _fluid(
    record: Mapping[str, Any],
    own: list[Row],
    seals: list[dict[str, Any]],
    thick: tuple[tuple[float, Value], ...],
) -> Fluid:
    mark_of(record, record["name"])
    return Fluid(
        name=record["name"],
        seals=record["seals"],
        colour=record["colour"],
        note=record.get("note", ""),
        family=record["family"],
        viscosity_at=thick,
        seal_ratings=tuple(_seal_ratings(seals, record["family"])),
        **used_values(own, FLUID_VALUES, record["name"]),
    )


def _seal_ratings(records: list[dict[str, Any]], family: str) -> Iterator[SealRating]:
    for record in (each for each in records if each["family"] == family):
        mark = mark_of(record, f"seals of {family}")
        for key, good in (("goes_with", True), ("attacks", False)):
            for seals in record.get(key, ()):
                yield SealRating(seals, good, record["source"], mark)
