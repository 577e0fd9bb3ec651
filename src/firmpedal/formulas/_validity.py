"""The one way a formula refuses inputs it does not hold for."""

from __future__ import annotations

import math


def require(holds: bool, message: str) -> None:
    """Stop with a plain message unless a condition holds; write conditions so that NaN fails them.

    Raises:
        ValueError: The condition does not hold.
    """
    if not holds:
        raise ValueError(message)


def require_tube(outside_diameter: float, wall_thickness: float) -> None:
    """Stop unless there is a wall and a bore."""
    require(
        0 < 2 * wall_thickness < outside_diameter < math.inf,
        "the wall has to be thicker than nothing and thinner than half the outside diameter",
    )


def require_positive(number: float, name: str) -> None:
    """Stop unless a number is finite and above zero."""
    require(0 < number < math.inf, f"{name} has to be above zero")


def require_not_negative(number: float, name: str) -> None:
    """Stop unless a number is finite and not below zero."""
    require(0 <= number < math.inf, f"{name} cannot be below zero")
