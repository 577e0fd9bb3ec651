"""The cases that are drawn: how warm the lines run, how worn the pads are, how much air is in the fluid."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Warmth(StrEnum):
    """How warm the lines run: plastic feels it most."""

    FROST = "at -40 degrees"
    COLD = "cold"
    WARM = "half way to hot"
    HOT = "hot"
    HELD = "hot, held for an hour"


SLOW, FAST = 1.0, 1.4  # the exponents of air that has time to cool, and of air that has none


@dataclass(frozen=True, slots=True)
class Case:
    """One case; `air` is a share of the fluid's volume at no pressure."""

    warmth: Warmth = Warmth.COLD
    worn: bool = False
    air: float = 0.0
    exponent: float = SLOW

    @property
    def words(self) -> str:
        """Its name in a table."""
        air = f", {self.air:.1%} of air".replace(".0%", " %").replace("%", " %").replace("  ", " ")
        pads = ", pads worn" if self.worn else ""
        fast = ", pressed fast" if self.exponent == FAST else ""
        return f"{self.warmth}{pads}{air if self.air else ''}{fast}"


LITTLE, MUCH = 0.005, 0.02  # what is left after a good bleeding, and after a poor one: common practice

CASES = (
    Case(),
    Case(worn=True),
    Case(Warmth.FROST),
    Case(Warmth.WARM),
    Case(Warmth.HOT),
    Case(Warmth.HELD),
    Case(air=LITTLE),
    Case(air=MUCH),
    Case(air=MUCH, exponent=FAST),
    Case(Warmth.HOT, air=MUCH),
)
