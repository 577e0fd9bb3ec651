"""Hose by specification and dash size."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Any

from firmpedal.catalog.materials import folded, used_values
from firmpedal.catalog.records import Row, load, mark_of, read_value, rows
from firmpedal.model.stock import Hose, LineKind
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Mapping

_END_ANGLES = (0, 45, 90)
_HOSE_VALUES = {
    "bore": Dimension.LENGTH,
    "outside_diameter": Dimension.LENGTH,
    "operating_pressure": Dimension.PRESSURE,
    "proof_pressure": Dimension.PRESSURE,
    "burst_pressure": Dimension.PRESSURE,
    "least_bend_radius": Dimension.LENGTH,
    "temperature": Dimension.TEMPERATURE,
    "mass_per_length": Dimension.LINEAR_DENSITY,
    "end_mass": Dimension.MASS,
    "expansion": Dimension.VOLUME_PER_LENGTH,
}


@dataclass(frozen=True, slots=True)
class HoseFamily:
    """A hose specification: how builders call it, and its hose by dash."""

    specification: str
    usual_words: str  # PTFE braided
    spellings: frozenset[str]  # in the folded form
    by_dash: tuple[tuple[str, Hose], ...]
    note: str


@cache
def hose_families() -> tuple[HoseFamily, ...]:
    """Read the hoses by specification."""
    data = load("hoses.yaml")
    return tuple(_family(record, data) for record in data["hoses"])


def _family(record: Mapping[str, Any], data: Mapping[str, Any]) -> HoseFamily:
    specification = record["specification"]
    mark_of(record, specification)
    dashes = [str(dash) for dash in record["dashes"]]
    groups = [{**group, "used": True} for group in record["columns"]]
    found = rows(groups, dashes, f"{specification} -{{key}}", data["measures"])
    spellings = frozenset(folded(each) for each in (specification, record["name"], *record["also"]))
    by_dash = tuple(
        (f"-{dash}", _hose(specification, f"-{dash}", [row for row in found if row.key == dash], data))
        for dash in dashes
    )
    return HoseFamily(specification, record["also"][0], spellings, by_dash, record.get("note", ""))


def _hose(specification: str, dash: str, own: list[Row], data: Mapping[str, Any]) -> Hose:
    label = f"{specification} {dash}"
    values = used_values(own, _HOSE_VALUES, label)
    cutoffs = {row.name: row.value for row in own}
    support, pressure = data["support_spacing"], data["expansion_pressure"]
    return Hose(
        phrase=f"hose {dash} {specification}",
        kind=LineKind.HOSE,
        specification=specification,
        dash=dash,
        expansion_pressure=read_value(
            pressure["value"], Dimension.PRESSURE, f"{label} pressure of its expansion", pressure
        ),
        support_spacing=read_value(support["value"], Dimension.LENGTH, f"{label} support spacing", support),
        end_cutoff=tuple(
            (angle, cutoffs[f"end_cutoff_{angle}"])
            for angle in _END_ANGLES
            if f"end_cutoff_{angle}" in cutoffs
        ),
        **values,
    )
