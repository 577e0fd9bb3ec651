"""The caliper at the wheel."""

from __future__ import annotations

from itertools import combinations

from firmpedal.model.component import BaseComponent
from firmpedal.model.fields import (
    Declared,
    Length,
    Number,
    OptionalLength,
    OptionalPressure,
    OptionalStep,
    YesNo,
)
from firmpedal.quantity import Answer


class Pistons(Declared):
    """The pistons on one side of the disc."""

    bore: Length
    count_per_side: Number


class Gives(Declared):
    """How far each piston of one side goes on once the pads touch, and the pressure that it took."""

    travel: OptionalLength
    under: OptionalPressure


class Caliper(BaseComponent):
    """A caliper; `pad_gap` is what the pistons of one side travel before both pads touch.

    `gives` is what caliper and pads give under pressure.
    `lifts_off` is how far, and which way, it is moved when it comes off the disc.
    """

    pistons: Pistons
    pad_gap: OptionalLength
    pad_wear: OptionalLength
    gives: Gives
    floats: YesNo = Answer.UNKNOWN
    lifts_off: OptionalStep

    @property
    def inner_ways(self) -> tuple[tuple[str, str], ...]:
        return tuple((one.name, other.name) for one, other in combinations(self.ports, 2))
