"""Rules about the heat that is worked out; they speak only where the file tells of disc and caliper."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.heating.limits import FLUID, SEALS
from firmpedal.checks.view import Outcome, View, cited, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.heating import BrakeHeat, HeatLimit

COOLER = (
    "a heavier disc, or one that gets more air",
    "let the brakes cool between stops; taxi slowly without riding them",
)


def fluid_too_hot(view: View) -> Iterator[Outcome]:
    """The fluid in the caliper stays below its limit after stops in a row and after a long taxi.

    The limit is where fluid boils that has taken up water; for fluids that do not, their service range. Fluid
    that boils gives a pedal that goes to the floor. Most of what goes into the sum is a range that nobody has
    measured for a light brake: a verdict is given only where all of the band lies on one side.
    """
    yield from _judged(view, FLUID, "fluid-too-hot", "a fluid that stands more heat, if the seals allow it")


def seals_too_hot(view: View) -> Iterator[Outcome]:
    """The seals of the caliper stay below what their rubber stands.

    Taken is the temperature of the caliper as a whole, after stops in a row and after a long taxi. Rubber
    that has been too hot hardens and weeps, onto a hot disc.
    """
    yield from _judged(
        view, SEALS, "seals-too-hot", "seals of a rubber that stands more heat, if the fluid allows it"
    )


def _judged(view: View, kind: str, rule: str, advice: str) -> Iterator[Outcome]:
    for brake in _asked(view):
        for limit in brake.limits:
            if limit.kind == kind:
                yield from _one(view, brake, limit, rule, advice)


def _asked(view: View) -> tuple[BrakeHeat, ...]:
    return view.results.heating.brakes if view.results.heating.asked else ()


def _one(view: View, brake: BrakeHeat, limit: HeatLimit, rule: str, advice: str) -> Iterator[Outcome]:
    kept = limit.answer()
    if kept is Answer.NO:
        band, allowed = view.show(limit.found), view.show(limit.allowed)
        yield Finding(
            rule,
            Level.WARNING,
            limit.place,
            f"{limit.words}: {band} at its hottest{_by_trial(brake)}; the {limit.allowed.label} is {allowed}",
            (*COOLER, advice),
            limit.found,
            limit.allowed,
            limit.relation,
            cited(limit.allowed),
        )
    elif kept is Answer.UNKNOWN:
        missing = (*limit.found.missing, *limit.allowed.missing) or brake.to_try
        yield NotShown(rule, limit.place, f"whether it gets too hot for the {limit.words}", missing)


def _by_trial(brake: BrakeHeat) -> str:
    """Where the trial overrules the reckoning, a figure above it would be strange without this."""
    return ", by its heat trial" if brake.measured is not None and not brake.agrees else ""


def heat_trial_disagrees(view: View) -> Iterator[Outcome]:
    """A trial with temperature labels agrees with some set of figures inside the ranges.

    If none agrees, a figure of the trial or of the brake is wrong, or the brake does something that the sum
    leaves out: it drags, or air is led over it. The bands are then shown as if there had been no trial, and
    what was measured is held against the limits: it was there, whatever the sum says.
    """
    for brake in _asked(view):
        caliper = find(view.aircraft.calipers, brake.caliper)
        if brake.agrees is False and caliper is not None:
            yield Finding(
                "heat-trial-disagrees",
                Level.CAUTION,
                caliper.heat_trial.port.place,
                f"{view.show(caliper.heat_trial.port)} at the port of {brake.caliper} does not go with any "
                "figures in the ranges reckoned with",
                (
                    "look at the trial again: stops, speed, pauses, the air then",
                    "look whether the brake drags: turn the wheel by hand",
                ),
                sources=practice("common-practice"),
            )
