"""Rules about air that cannot rise, and lines that stand above their reservoir."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.bleeding.rises import POT
from firmpedal.analysis.heights import LEAST_DEPTH
from firmpedal.checks.view import Limit, Outcome, View, cited, judge, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.formulas.attitude import column_pressure
from firmpedal.model.kinds import MasterCylinder
from firmpedal.quantity import Answer, Mark, apply, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.heights import Column, Trap
    from firmpedal.quantity import Value

TRAP = "air-trap"
ABOVE = "line-above-reservoir"
# As much line of 1/4 in as this can hold air that takes a fifth of a usual stroke to press together.
MUCH = from_unit(2, "in")
TRIES = (
    "push fluid up from the caliper at {pot} until no more bubbles come",
    "lower the line here, so that it rises all the way",
    "put a tee with a cap in the high point, and let the air out there",
)
WORK_PEDALS = "work the pedals of every seat while fluid is pushed up: moving a line does not cure it"
TRIES_ABOVE = (
    "push fluid up from the caliper at {pot}: gravity cannot fill this line",
    "lower the line, or put the reservoir higher",
    "park it in another attitude, and look for fluid at the vent",
)


def air_trap(view: View) -> Iterator[Outcome]:
    """Air rises from every caliper all the way to its reservoir, however the aircraft stands.

    A high point on the way keeps what air gets there, and so does a cylinder whose inlet is fed from
    below. In lines this thin a bubble rises slowly or not at all, and never goes down by itself: it has to be
    pushed.
    Dips of less than an inch are left out. It is a NOTE up to two inches, or where the point is none in
    another attitude, so that the brakes can be bled there.
    """
    heights = view.results.heights
    for trap in heights.traps:
        yield from _trapped(view, trap)
    told = {caliper for trap in heights.traps for caliper in trap.calipers}
    for way in heights.ways:
        missing = (*way.missing, *heights.missing)
        if missing and way.caliper not in told:
            told.add(way.caliper)
            message = f"whether air rises from {way.caliper} to {way.top}"
            yield NotShown(TRAP, _place(view, way.caliper), message, missing)


def _trapped(view: View, trap: Trap) -> Iterator[Outcome]:
    allowed = exactly(
        "dip that is left out",
        Dimension.LENGTH,
        LEAST_DEPTH,
        Mark.ESTIMATE,
        source="firmpedal-estimate",
    )
    limit = Limit(trap.deepest, allowed, "at most")
    if limit.kept is not Answer.NO:
        message = f"whether air stays at {trap.spot.near}"
        yield NotShown(TRAP, trap.spot.place, message, limit.missing)
        return
    sure = sorted((each for each in trap.depths if each[1].low > LEAST_DEPTH), key=_deepest_first)
    depths = ", ".join(f"{view.show(value)} ({name})" for name, value in sure)
    free = next(iter(view.results.heights.without(trap)), "")
    yield Finding(
        TRAP,
        Level.CAUTION if trap.deepest.low > MUCH and not free else Level.NOTE,
        trap.spot.place,
        f"air stays at {trap.spot.near}: to rise on to {trap.top} it would first have to go down {depths}",
        _tries(view, trap, free),
        trap.deepest,
        allowed,
        "at most",
        (*practice("builder-reports"), *cited(allowed)),
    )


def _tries(view: View, trap: Trap, free: str) -> tuple[str, ...]:
    cylinders = {part.place for part in view.aircraft.components if isinstance(part, MasterCylinder)}
    push, lower, tee = (each.format(pot=view.show(POT)) for each in TRIES)
    stand = (f"fill and bleed it in the attitude {free}: there air gets past here",) if free else ()
    return (*stand, push, WORK_PEDALS if trap.spot.place in cylinders else lower, tee)


def _deepest_first(depth: tuple[str, Value]) -> float:
    return -depth[1].high


def _place(view: View, name: str) -> str:
    return next(part.place for part in view.aircraft.components if part.name == name)


def line_above_reservoir(view: View) -> Iterator[Outcome]:
    """No part of a line stands higher than the fill cap of its reservoir, however the aircraft stands.

    With the pedals free the line is open to the reservoir. What stands above it presses on the fluid there,
    so that it seeps from the vent wherever air can take its place; and gravity cannot fill such a
    line.
    """
    heights = view.results.heights
    ways = [way for way in heights.ways if way.has_reservoir and not way.closed_at]
    for top in dict.fromkeys(way.top for way in ways):
        said = list(_highest(view, [column for column in heights.columns if column.top == top]))
        unseen = [item for way in ways if way.top == top for item in way.missing]
        missing = tuple(dict.fromkeys((*unseen, *heights.missing)))
        yield from said
        if missing and not said:
            message = f"whether a line stands above the reservoir {top}"
            yield NotShown(ABOVE, _place(view, top), message, missing)


def _highest(view: View, columns: list[Column]) -> Iterator[Outcome]:
    """The line that stands highest over one reservoir; where none surely does, what to measure."""
    level = exactly("the fill cap", Dimension.LENGTH, 0.0, Mark.DERIVED, source="builder-reports")
    limits = [(column, Limit(column.above, level, "at most")) for column in columns]
    over = [column for column, limit in limits if limit.kept is Answer.NO]
    if over:
        most = max(over, key=lambda column: column.above.low)
        yield Finding(
            ABOVE,
            Level.CAUTION,
            most.place,
            _words(view, most, over),
            tuple(each.format(pot=view.show(POT)) for each in TRIES_ABOVE),
            most.above,
            level,
            "at most",
            practice("builder-reports"),
        )
        return
    for column, limit in limits:
        if limit.kept is Answer.UNKNOWN:
            message = f"whether {column.line} stands above the reservoir {column.top}"
            yield from judge(
                limit, rule=ABOVE, level=Level.CAUTION, place=column.place, message=message, tries=()
            )
            return


def _words(view: View, most: Column, over: list[Column]) -> str:
    others: dict[str, Column] = {}
    for column in sorted(over, key=lambda each: each.above.low):
        others[column.line] = column
    lines = sorted(others.values(), key=lambda each: -each.above.low)
    heights = ", ".join(f"{each.line} {view.show(each.above)} ({each.attitude})" for each in lines)
    return f"above the fill cap of {most.top} stand {heights}{_pressing(view, most)}"


def _pressing(view: View, column: Column) -> str:
    fluid = view.aircraft.fluid
    if fluid is None or not fluid.density.known:
        return ""
    pressure = apply(
        column_pressure,
        f"pressure at the cap of {column.top} from {column.line}",
        place=f"{column.place}.pressure at the cap",
        height=column.above,
        density=fluid.density,
    )
    return f"; that column presses {view.show(pressure)} on the cap"
