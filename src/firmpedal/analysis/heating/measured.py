"""What a heat trial itself showed: it was measured, so it counts whatever the reckoning says."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.formulas.warming import carried_to
from firmpedal.quantity import Mark, Missing, Step, Value, When, apply, largest
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.kinds import Caliper

Span = tuple[float, float]
LABEL_STEP = 5.0  # K; from one field of a temperature label to the next


def port_as_measured(caliper: Caliper, air: Value, *, agrees: bool | None) -> Value | None:
    """How hot the port was, and where no reckoning can carry it to a hot day, what it would be then.

    Args:
        caliper: The caliper with its trial.
        air: On a hot day.
        agrees: Whether the trial goes with any figures; if so the bands carry it to a hot day.

    Returns:
        The temperature; None where none was read.
    """
    given, place = caliper.heat_trial, f"{caliper.place}.heat.trial"
    if not given.port.known:
        return None
    read = given.port.named(f"port of {caliper.name} in its heat trial")
    if agrees or not given.air.known:
        return read
    label = f"port of {caliper.name} as in its heat trial, on a hot day"
    hot = apply(carried_to, label, place=place, measured=given.port, then=given.air, now=air)
    return largest(read.label, (read, hot), place)


def as_warm(
    shown: Value | None, share: Span | None, caliper: Caliper, part: str, day: Value | None
) -> Value | None:
    """How warm a part was that warms with the caliper, from how warm the port was; None where not known.

    Args:
        shown: How hot the port was.
        share: How much of the port's rise above the air the part takes, least and most.
        caliper: The caliper with its trial.
        part: What the part is called.
        day: Air of a hot day to which it is carried as the port was; None where it is not.
    """
    given, air = caliper.heat_trial, caliper.heat_trial.air
    if shown is None or share is None or not (air.known and given.port.known):
        return None
    rises = given.port.low - air.high, given.port.high - air.low
    above = air if day is None else largest("air", (air, day))
    ends = [above.low + rises[0] * share[0], above.high + rises[1] * share[1]]
    step = Step(
        f"as much above the air as {share[0]:.2f} to {share[1]:.2f} of what the port is", (("T", shown),)
    )
    mark = Mark.ESTIMATE
    label, place = f"{part} at {caliper.name}, by its heat trial", f"{caliper.place}.heat.trial.{part}"
    return Value(
        label, Dimension.TEMPERATURE, (min(ends), max(ends)), mark, place, "firmpedal-derivation", step
    )


def hottest(label: str, reckoned: Value, shown: Value | None) -> Value:
    """The greatest of what is reckoned and what was measured; what was measured is there at least."""
    if shown is None:
        return reckoned
    if not reckoned.known:
        return Value(
            label,
            Dimension.TEMPERATURE,
            shown.span,
            shown.mark,
            shown.place,
            shown.source,
            shown.step,
            reckoned.missing,
        )
    return largest(label, (reckoned, shown))


def another_trial(caliper: Caliper, after: str, *, agrees: bool | None) -> tuple[Missing, ...]:
    """What can still be tried where labels were read and leave a verdict open; never the same once more."""
    place, name = f"{caliper.place}.heat trial", caliper.name
    if agrees is False:
        words = (
            f"why the heat trial of {name} does not go with the ranges: its stops, speed, pauses and air, "
            "and whether the brake drags"
        )
        return (Missing(place, words, when=When.TRIED),)
    words = f"a harder heat trial of {name}, {after}: the one that was read leaves this open"
    return (Missing(place, words, when=When.TRIED),)
