"""What can be wrong between a list and a design, and one thing that is."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.decide.goods import Goods
    from firmpedal.quantity import Value


class Fault(StrEnum):
    """What can be wrong between a list and a design."""

    SHORT = "short"
    WRONG_SIZE = "wrong size"
    WRONG_MATERIAL = "wrong material"
    WRONG_BOTH = "wrong size and material"
    WRONG_LENGTH = "wrong length"
    NOT_SHOWN = "not shown"  # what is needed is not known
    LEFT_OVER = "left over"
    ODD = "odd count"


@dataclass(frozen=True, slots=True)
class Discrepancy:
    """One thing that does not agree: how many, of what, instead of what."""

    fault: Fault
    quantity: int
    name: str
    needed: str = ""  # what is needed instead
    where: tuple[str, ...] = ()
    detail: str = ""
    found: Value | None = None
    asked: Value | None = None


def mismatch(needed: Goods, listed: Goods) -> Fault:
    """Say what is wrong with another thing of a family in the place of the one that is needed."""
    if needed.size == listed.size:
        return Fault.WRONG_MATERIAL
    return Fault.WRONG_SIZE if needed.material == listed.material else Fault.WRONG_BOTH
