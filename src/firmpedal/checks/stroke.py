"""Rules about stroke."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge
from firmpedal.finding import Level
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.stroke import StrokeBudget
    from firmpedal.model.kinds import MasterCylinder


def stroke_short(view: View) -> Iterator[Outcome]:
    """The cylinder's stroke closes the pads and fills what swells, with some left.

    Counted are the pad gap, the growth of tube and plastic, hose swelling up to its published limit,
    and the fluid's own give. Hot means that all of a plastic line is as hot as its hottest place. No
    air is counted: any air comes on top.
    """
    for cylinder in view.aircraft.cylinders:
        budgets = [item for item in view.results.budgets if item.cylinder == cylinder.name]
        limits = [Limit(item.hot, cylinder.stroke, "at most") for item in budgets]
        broken = next((n for n, limit in enumerate(limits) if limit.kept is Answer.NO), None)
        unknown = next((n for n, limit in enumerate(limits) if limit.kept is Answer.UNKNOWN), None)
        number = broken if broken is not None else unknown
        if number is not None:
            yield from _judged(view, cylinder, budgets[number], limits[number])


def _judged(view: View, cylinder: MasterCylinder, budget: StrokeBudget, limit: Limit) -> Iterator[Outcome]:
    used = f"{view.show(budget.hot)} hot and {view.show(budget.cold)} cold"
    message = (
        f"{cylinder.name} has {view.show(cylinder.stroke)} of stroke; the {budget.foot} foot uses "
        f"{used}, of it {view.show(budget.gap)} for the pad gap"
    )
    yield from judge(
        limit,
        rule="stroke-short",
        level=Level.WARNING,
        place=cylinder.place,
        message=message,
        tries=("metal line instead of plastic, which swells", "a larger bore, if the pressure allows it"),
    )
