"""Rules about where the pad of a pedal comes to an end."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.stroke import gives
from firmpedal.checks.view import Limit, Outcome, View, judge
from firmpedal.finding import Level, NotShown
from firmpedal.quantity import Answer, Missing, all_missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.stroke import Pressing, StrokeBudget

RULE = "pad-meets-stop"
FOOT = "hard"


def pad_meets_stop(view: View) -> Iterator[Outcome]:
    """The pad is still clear of floor and stop when the hard foot's pressure is there.

    Where the pad comes to the floor or a stop first, however strong the foot, there is no more brake.
    Counted is what takes fluid and what the file gives of free stroke, spring, caliper and pads, hot where
    plastic runs hot. No air is counted: any air comes on top. A file that says nothing of the way to the
    stop is not asked about it here.
    """
    for pressing in view.results.presses:
        pedal = pressing.pedal
        if pedal is None or "travel_to_stop" not in pedal.brake.written:
            continue
        budgets = [item for item in view.results.budgets if item.cylinder == pressing.cylinder.name]
        hard = next((item for item in budgets if item.foot == FOOT), None)
        if hard is not None:
            yield from _judged(view, pressing, hard)


def _judged(view: View, pressing: Pressing, budget: StrokeBudget) -> Iterator[Outcome]:
    pedal = pressing.pedal
    assert pedal is not None  # noqa: S101  looked at above
    limit = _limit(pressing, budget)
    place = pedal.brake.travel_to_stop.place
    if limit.kept is not Answer.YES:
        yield from judge(
            limit,
            rule=RULE,
            level=Level.WARNING,
            place=place,
            message=_words(view, pressing, budget),
            tries=(
                "metal line instead of plastic, which swells",
                "a stop further away, if pad and floor leave room and the maker allows it",
                "a shorter arm to the foot or a larger bore, if the pressure allows it",
            ),
        )
        return
    missing = _not_counted(pressing)
    if missing:
        yield NotShown(RULE, place, f"whether the pad of {pedal.name} meets its stop too soon", missing)


def _limit(pressing: Pressing, budget: StrokeBudget) -> Limit:
    """Hot lines swell more, but what is too far cold is too far whatever the heat does."""
    assert pressing.pedal is not None  # noqa: S101  looked at above
    stop = pressing.pedal.brake.travel_to_stop
    cold = Limit(budget.pads[0], stop, "at most")
    return cold if cold.kept is Answer.NO else Limit(budget.pads[1], stop, "at most")


def _not_counted(pressing: Pressing) -> tuple[Missing, ...]:
    """What comes on top of the travel and is not given; spring and friction only take from it."""
    free = pressing.cylinder.free_stroke
    asked = list(all_missing([free]))
    asked += [
        missing
        for caliper in pressing.calipers
        if not gives(caliper)
        for missing in all_missing([caliper.gives.travel, caliper.gives.under])
    ]
    return tuple(asked)


def _words(view: View, pressing: Pressing, budget: StrokeBudget) -> str:
    assert pressing.pedal is not None  # noqa: S101  looked at above
    stop = pressing.pedal.brake.travel_to_stop
    cold, hot = (view.show(travel) for travel in budget.pads)
    goes = cold if cold == hot else f"{hot} hot and {cold} cold"
    return (
        f"the pad of {pressing.pedal.name} meets floor or stop after {view.show(stop)}; the pressure of "
        f"the {budget.foot} foot takes {goes}"
    )
