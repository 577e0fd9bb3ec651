"""What lines are made of: tube, hose and plastic as sold, with what is known of them."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from firmpedal.quantity import Mark, Value, unknown
from firmpedal.units import Dimension

_NO_FATIGUE_STRENGTH = unknown("fatigue strength", Dimension.PRESSURE, "catalogue")
_NO_EXPANSION = unknown("thermal expansion", Dimension.EXPANSION, "catalogue")
_NO_TEMPERATURE = unknown("temperature limit", Dimension.TEMPERATURE, "catalogue")
_NO_TENSION = unknown("surface tension", Dimension.SURFACE_TENSION, "catalogue")


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
    fatigue_strength: Value = _NO_FATIGUE_STRENGTH
    thermal_expansion: Value = _NO_EXPANSION  # of length
    brake_pressure: bool = True  # False: for low or no pressure only, never in a brake line
    other_values: tuple[Value, ...] = ()  # conflicting figures that are kept and not used


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
    nominal_size: str = ""  # the outside diameter as trade words, for compression fittings: 1/4 in, 6 mm

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
class SealRating:
    """Whether a fluid goes with seals of one material, and where that stands."""

    seals: str
    good: bool
    source: str
    mark: Mark


@dataclass(frozen=True, slots=True)
class Fluid:
    """A brake fluid by its specification."""

    name: str
    density: Value
    bulk_modulus: Value
    flash_point: Value
    seals: str
    colour: str
    thermal_expansion: Value = _NO_EXPANSION  # of volume
    boiling_point: Value = _NO_TEMPERATURE  # of wet fluid, the lowest allowed
    dry_boiling_point: Value = _NO_TEMPERATURE  # of fresh fluid, the lowest allowed
    service_temperature: Value = _NO_TEMPERATURE  # lowest to highest
    surface_tension: Value = _NO_TENSION  # against air
    viscosity_at: tuple[tuple[float, Value], ...] = ()  # kinematic, by temperature [K], coldest first
    note: str = ""
    family: str = ""  # hydrocarbon, glycol, silicone: fluids of one family mix
    seal_ratings: tuple[SealRating, ...] = ()

    def rating(self, seals: str) -> SealRating | None:
        """What is known of this fluid with seals of one material."""
        return next((each for each in self.seal_ratings if each.seals == seals), None)
