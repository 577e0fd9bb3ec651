"""Left against right: what the two pedals of one seat make of the same foot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit import side_of
from firmpedal.analysis.pressure import FEET
from firmpedal.model.aircraft import find
from firmpedal.model.component import SideOf

if TYPE_CHECKING:
    from firmpedal.analysis.results import Results
    from firmpedal.analysis.stroke import StrokeBudget
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.quantity import Value


@dataclass(frozen=True, slots=True)
class Sides:
    """The left and the right pedal of one seat at one foot: pressures and budgets."""

    seat: str
    pressures: tuple[Value, Value]
    budgets: tuple[StrokeBudget, StrokeBudget]


def sides(aircraft: Aircraft, results: Results, foot: str) -> tuple[Sides, ...]:
    """Set the two sides of every seat beside each other; a seat with one pedal, or three, is left out."""
    seats: dict[str, dict[SideOf, list[str]]] = {}
    for cylinder in aircraft.cylinders:
        pedal = find(aircraft.pedals, cylinder.pedal)
        seat = pedal.seat if pedal is not None else ""
        seats.setdefault(seat, {}).setdefault(side_of(aircraft, cylinder), []).append(cylinder.name)
    made = {each.cylinder: each.pressures[FEET.index(foot)] for each in results.cylinders}
    budgets = {each.cylinder: each for each in results.budgets if each.foot == foot}
    found = []
    for seat, by_side in seats.items():
        left, right = by_side.get(SideOf.LEFT, []), by_side.get(SideOf.RIGHT, [])
        if len(left) == len(right) == 1 and {left[0], right[0]} <= budgets.keys():
            one, other = left[0], right[0]
            found.append(Sides(seat, (made[one], made[other]), (budgets[one], budgets[other])))
    return tuple(found)
