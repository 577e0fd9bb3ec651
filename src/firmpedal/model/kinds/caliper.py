"""The caliper at the wheel."""

from __future__ import annotations

from enum import StrEnum
from itertools import combinations
from typing import Annotated

from firmpedal.model.component import BaseComponent
from firmpedal.model.fields import (
    Declared,
    Length,
    Name,
    Number,
    OptionalCount,
    OptionalEnergy,
    OptionalLength,
    OptionalMass,
    OptionalNumber,
    OptionalPressure,
    OptionalSpeed,
    OptionalStep,
    OptionalTemperature,
    OptionalTime,
    OptionalTorque,
    Reads,
    YesNo,
)
from firmpedal.quantity import Answer


class Pistons(Declared):
    """The pistons on one side of the disc."""

    bore: Length
    count_per_side: Number


class Pads(Declared):
    """Where the pads rub, from the axle; another way to say where their friction acts."""

    inner_radius: OptionalLength
    outer_radius: OptionalLength


class Leaflet(Declared):
    """What the brake's own leaflet says of it."""

    torque: OptionalTorque
    at_pressure: OptionalPressure
    energy: OptionalEnergy


class DiscMetal(StrEnum):
    """What a brake disc is made of."""

    STEEL = "steel"
    STAINLESS_STEEL = "stainless steel"
    CAST_IRON = "cast iron"


class Disc(Declared):
    """The disc that a caliper grips, for its heat, and whether no other caliper of its wheel grips it."""

    mass: OptionalMass
    radius: OptionalLength
    material: Annotated[DiscMetal, Reads("choice", choices=DiscMetal)] = DiscMetal.STEEL
    own: YesNo = Answer.UNKNOWN


class HeatTrial(Declared):
    """How warm a brake was after some hard stops, by temperature labels: it narrows what is reckoned."""

    stops: OptionalCount
    time_between_stops: OptionalTime
    from_speed: OptionalSpeed
    air: OptionalTemperature
    port: OptionalTemperature


class Gives(Declared):
    """How far each piston of one side goes on once the pads touch, and the pressure that it took."""

    travel: OptionalLength
    under: OptionalPressure


class Caliper(BaseComponent):
    """A caliper of the wheel named; `pad_gap` is what the pistons of one side travel before both pads touch.

    `gives` is what caliper and pads give under pressure.
    `lifts_off` is how far, and which way, it is moved when it comes off the disc.
    """

    wheel: Name = ""
    pistons: Pistons
    pad_gap: OptionalLength
    pad_wear: OptionalLength
    gives: Gives
    floats: YesNo = Answer.UNKNOWN
    lifts_off: OptionalStep
    effective_radius: OptionalLength
    pads: Pads
    lining_friction: OptionalNumber
    leaflet: Leaflet
    mass: OptionalMass
    disc: Disc
    heat_trial: HeatTrial

    @property
    def inner_ways(self) -> tuple[tuple[str, str], ...]:
        return tuple((one.name, other.name) for one, other in combinations(self.ports, 2))
