"""What lines are made of: tube, hose and plastic as sold, with what is known of them."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.quantity import Value


class LineKind(StrEnum):
    TUBE = "tube"
    HOSE = "hose"
    PLASTIC = "plastic"


@dataclass(frozen=True, slots=True)
class Material:
    """A tube or plastic material in one temper, with its strengths and where they come from.

    Each value is unknown where no source gives it. `strength_kept` is a published table of
    (temperature [K], share of the room-temperature strength [-]), empty for metals.
    """

    name: str  # 5052-O
    kind: LineKind
    group: str  # aluminium, steel, copper, nylon, polyethylene
    yield_strength: Value  # the tube standard's minimum where known, else typical and so labelled
    ultimate_strength: Value
    elastic_modulus: Value
    poisson_ratio: Value
    density: Value
    modulus_at: tuple[tuple[float, Value], ...] = ()
    strength_kept: tuple[tuple[float, float], ...] = ()
    strength_kept_source: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Tube:
    """Metal tube or plastic line by material, outside diameter and wall."""

    phrase: str  # as the builder wrote it
    kind: LineKind
    material: Material
    outside_diameter: Value
    wall: Value
    dash: str | None  # -4, or None where no dash number fits (metric)
    least_bend_radius: Value  # to the centreline
    support_spacing: Value  # greatest distance between supports
    rated_pressure: Value  # as sold, at room temperature; unknown for metal tube (computed instead)
    flare_diameter: Value

    @property
    def description(self) -> str:
        return self.phrase


@dataclass(frozen=True, slots=True)
class Hose:
    """Hose by specification and dash size, with what its standard gives."""

    phrase: str
    kind: LineKind
    specification: str
    dash: str
    bore: Value
    outside_diameter: Value
    operating_pressure: Value
    proof_pressure: Value
    burst_pressure: Value
    least_bend_radius: Value
    temperature: Value  # lowest to highest, as a range
    mass_per_length: Value
    end_mass: Value
    expansion: Value  # volume per length taken at `expansion_pressure`: from nothing to the published limit
    expansion_pressure: Value
    support_spacing: Value
    end_cutoff: tuple[tuple[int, Value], ...]  # by end angle in degrees: what an end takes off the hose

    @property
    def description(self) -> str:
        return self.phrase


Stock = Tube | Hose


@dataclass(frozen=True, slots=True)
class Fluid:
    """A brake fluid by its specification."""

    name: str
    density: Value
    bulk_modulus: Value
    flash_point: Value
    seals: str
    colour: str
