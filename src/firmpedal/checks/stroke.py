"""Rules about stroke."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge_first
from firmpedal.finding import Level, NotShown
from firmpedal.quantity import Answer, Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.stroke import StrokeBudget
    from firmpedal.model.kinds import MasterCylinder

RULE = "stroke-short"


def stroke_short(view: View) -> Iterator[Outcome]:
    """The cylinder's stroke is enough to close the pads and fill what swells.

    Counted are the pad gap, the growth of tube and plastic, hose swelling up to its published limit,
    the fluid's own give, and what the file tells of free stroke and of caliper and pads. Hot means that
    all of a plastic line is as hot as its hottest place. No air is counted: any air comes on top.
    """
    for cylinder in view.aircraft.cylinders:
        budgets = [item for item in view.results.budgets if item.cylinder == cylinder.name]
        if not budgets:
            missing = (Missing(cylinder.place, f"which caliper {cylinder.name} presses on"),)
            yield NotShown(RULE, cylinder.place, f"whether the stroke of {cylinder.name} is enough", missing)
            continue
        yield from judge_first(
            [_limit(budget, cylinder) for budget in budgets],
            [_words(view, budget, cylinder) for budget in budgets],
            rule=RULE,
            level=Level.WARNING,
            place=cylinder.place,
            asked=f"whether the stroke of {cylinder.name} is enough",
            tries=(
                "metal line instead of plastic, which swells",
                "a larger bore, if the pressure allows it",
            ),
        )


def _limit(budget: StrokeBudget, cylinder: MasterCylinder) -> Limit:
    """Hot lines swell more, but what is too much cold is too much whatever the heat does."""
    cold = Limit(budget.cold, cylinder.stroke, "at most")
    return cold if cold.kept is Answer.NO else Limit(budget.hot, cylinder.stroke, "at most")


def _words(view: View, budget: StrokeBudget, cylinder: MasterCylinder) -> str:
    used = f"{view.show(budget.hot)} hot and {view.show(budget.cold)} cold"
    return (
        f"{cylinder.name} has {view.show(cylinder.stroke)} of stroke; the {budget.foot} foot uses "
        f"{used}, of it {view.show(budget.gap)} for the pad gap"
    )
