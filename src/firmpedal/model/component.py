"""What every component has: ports, a side, and what it moves with."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from firmpedal.model.circuit import Port
from firmpedal.model.fields import (
    Members,
    Named,
    Reads,
    SomePressure,
    Text,
)


class SideOf(StrEnum):
    """The side of the aircraft a thing belongs to: declared, never read from a name."""

    LEFT = "left"
    RIGHT = "right"
    CENTRE = "centre"


class Seals(StrEnum):
    """What the seals of a component are made of, which decides the fluids it may have."""

    NITRILE = "nitrile"
    FLUOROCARBON = "fluorocarbon"
    ETHYLENE_PROPYLENE = "ethylene propylene"


class Metal(StrEnum):
    """What the body of a component is made of."""

    ALUMINIUM = "aluminium"
    MAGNESIUM = "magnesium"
    STEEL = "steel"
    STAINLESS_STEEL = "stainless steel"
    BRASS = "brass"
    CAST_IRON = "cast iron"


class BaseComponent(Named):
    """A component of the brake circuit."""

    kind: Text
    side: Annotated[SideOf, Reads("side")] = SideOf.CENTRE
    moves_with: Annotated[str, Reads("reference", target="moving")] = ""
    measured_in: Annotated[tuple[tuple[str, str], ...], Reads("state")] = ()
    rated_pressure: SomePressure
    seals: Annotated[Seals | None, Reads("choice", choices=Seals, optional=True)] = None
    body: Annotated[Metal | None, Reads("choice", choices=Metal, optional=True)] = None
    ports: Annotated[tuple[Port, ...], Members]

    @property
    def inner_ways(self) -> tuple[tuple[str, str], ...]:
        """Pairs of ports that fluid passes between inside the component."""
        return ()
