"""What every component has: ports, a side, and what it moves with."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from firmpedal.model.circuit import Port
from firmpedal.model.fields import Members, Named, OptionalPressure, Reads, Text


class SideOf(StrEnum):
    """The side of the aircraft a thing belongs to: declared, never read from a name."""

    LEFT = "left"
    RIGHT = "right"
    CENTRE = "centre"


class BaseComponent(Named):
    """A component of the brake circuit."""

    kind: Text
    side: Annotated[SideOf, Reads("side")] = SideOf.CENTRE
    moves_with: Annotated[str, Reads("reference", target="moving")] = ""
    measured_in: Annotated[tuple[tuple[str, str], ...], Reads("state")] = ()
    rated_pressure: OptionalPressure
    ports: Annotated[tuple[Port, ...], Members]

    @property
    def inner_ways(self) -> tuple[tuple[str, str], ...]:
        """Pairs of ports that fluid passes between inside the component."""
        return ()
