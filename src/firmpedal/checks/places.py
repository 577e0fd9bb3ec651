"""Rules about places that contradict what is declared: mostly a lost sign or a slip of the pen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level
from firmpedal.model.component import SideOf
from firmpedal.quantity import Mark
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

CLEAR = from_unit(1, "in")  # of the centreline; a wheel stands well off it


def wheel_on_the_other_side(view: View) -> Iterator[Outcome]:
    """A caliper that is declared left stands left of the centreline, and a right one right of it.

    Right counts as plus: a lost minus sign puts a wheel on the other side, and every length to it is wrong.
    """
    for caliper in view.aircraft.calipers:
        sign = {SideOf.LEFT: 1, SideOf.RIGHT: -1}.get(caliper.side, 0)
        for port in caliper.ports:
            place = port.seat if port.seat.known else port.at
            if not sign or not place.known or sign * place.right.middle < CLEAR:
                continue
            off = view.display.number(abs(place.right.middle), place.right.dimension)
            other = "right" if sign > 0 else "left"
            message = (
                f"{caliper.name} is declared {caliper.side.value}, and its {port.name} is {off} {other} "
                "of the centreline"
            )
            yield Finding(
                "wheel-on-the-other-side",
                Level.CAUTION,
                port.place,
                message,
                ("look at the sign of the second number: left is minus", "look at its side"),
                sources=practice("firmpedal-derivation", Mark.DERIVED),
            )
            break
