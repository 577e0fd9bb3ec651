"""Rules about the fluid: what it does to seals, and what was there before it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Cited, Finding, Level, NotShown
from firmpedal.model.kinds import Reservoir
from firmpedal.quantity import Answer, Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import Component
    from firmpedal.model.stock import Fluid

USUAL = "hydrocarbon"  # what aircraft brake parts are sold for, with nitrile seals
WHICH = Missing("fluid", "which brake fluid is used")


def fluid_against_seals(view: View) -> Iterator[Outcome]:
    """The seals of every component go with the fluid.

    The wrong fluid swells cups and rings: relief ports stay shut, brakes drag and get hot, and seals
    leak. Aircraft brake parts have nitrile seals unless somebody has changed them, so nothing is asked of
    mineral fluid and its relatives where no seals are declared at all and no other fluid was in there.
    What the file says is unknown is asked for always.
    """
    rule, aircraft = "fluid-against-seals", view.aircraft
    fluid = aircraft.fluid
    if fluid is None:
        if aircraft.components:
            yield NotShown(rule, "fluid", "whether the seals go with the fluid", (WHICH,))
        return
    for part in aircraft.components:
        yield from _attacked(rule, fluid, part)
    silent = [part for part in aircraft.components if part.seals is None and _has_seals(part)]
    every = _matters(aircraft, fluid)
    asked = [_made_of(part, fluid) for part in silent if every or "seals" in part.written]
    if asked:
        yield NotShown(rule, "fluid", f"whether {fluid.name} goes with the seals", tuple(asked))


def _made_of(part: Component, fluid: Fluid) -> Missing:
    good = " or ".join(each.seals for each in fluid.seal_ratings if each.good)
    what = f"what the seals of {part.name} are made of: {fluid.name} goes with {good}"
    return Missing(f"{part.place}.seals", what)


def _attacked(rule: str, fluid: Fluid, part: Component) -> Iterator[Outcome]:
    if part.seals is None:
        return
    rating = fluid.rating(part.seals)
    if rating is None:
        what = f"whether {fluid.name} goes with seals of {part.seals}"
        yield NotShown(rule, part.place, what, (Missing(part.place, what),))
    elif not rating.good:
        good = " or ".join(each.seals for each in fluid.seal_ratings if each.good)
        yield Finding(
            rule,
            Level.WARNING,
            part.place,
            f"{fluid.name} attacks the seals of {part.name}, which are of {part.seals}",
            (
                f"fill it with the fluid that its seals are made for; {fluid.name} goes with {good}",
                "flush out what is in there, and put in new seals, if the wrong fluid has been in",
            ),
            sources=(Cited(rating.source, rating.mark),),
        )


def _has_seals(part: Component) -> bool:
    """Whether seals of this kind of component hold pressure: a reservoir has none but its cap's."""
    return not isinstance(part, Reservoir)


def _matters(aircraft: Aircraft, fluid: Fluid) -> bool:
    before = aircraft.fluid_before
    return (
        fluid.family != USUAL
        or (before is not None and before.family != fluid.family)
        or any(part.seals is not None for part in aircraft.components)
    )


def fluids_mixed(view: View) -> Iterator[Outcome]:
    """What was in the system before mixes with the fluid, or it is flushed out and the seals are changed.

    Mineral fluid and its synthetic relatives mix; so do the glycol fluids. No family mixes with another:
    the rest of the old fluid goes on swelling seals. Where the old fluid burns sooner, what stays of it
    takes away from what the new one was chosen for.
    """
    rule, fluid, before = "fluids-mixed", view.aircraft.fluid, view.aircraft.fluid_before
    if before is None:
        return
    if fluid is None:
        yield NotShown(rule, "fluid", f"whether it mixes with {before.name}", (WHICH,))
    elif before.family != fluid.family:
        yield Finding(
            rule,
            Level.CAUTION,
            "fluid before",
            f"{before.name} was in the system and {fluid.name} never mixes with it",
            (
                f"flush every line and component, and change all seals for such as go with {fluid.name}",
                "write the fluid on the reservoir's cap",
            ),
            sources=practice("brake-fluid-articles"),
        )
    elif fluid.flash_point.at_most(before.flash_point) is Answer.NO:
        yield Finding(
            rule,
            Level.NOTE,
            "fluid before",
            f"{before.name} mixes with {fluid.name}, but flashes at {view.show(before.flash_point)}, not at "
            f"{view.show(fluid.flash_point)}: what stays of it takes away from the fire resistance",
            ("flush until what comes out is all new fluid",),
            sources=practice("mil-prf-83282d"),
        )
