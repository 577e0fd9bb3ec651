"""Rules about what a reservoir has to hold."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge, practice
from firmpedal.finding import Finding, Level
from firmpedal.model.kinds import MasterCylinder, Reservoir
from firmpedal.quantity import total, unknown

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.quantity import Value


def reservoir_too_small(view: View) -> Iterator[Outcome]:
    """A reservoir holds what the pistons take as the pads of all its wheels wear out.

    Fluid follows the pistons out. If it runs out before the pads do, the cylinder draws air and the pedal
    goes down. Counted is what the reservoir gives from its full to its low mark.
    """
    for tank, wear, wheels in _tanks(view):
        yield from _judged(
            Limit(wear, _asked(tank.capacity, "gives from its full to its low mark", tank), "at most"),
            "common-practice",
            rule="reservoir-too-small",
            level=Level.CAUTION,
            place=tank.place,
            message=(
                f"the pads of {wheels} take {view.show(wear)} as they wear out, and {tank.name} gives "
                f"{view.show(tank.capacity)}"
            ),
            tries=(
                "a larger reservoir",
                "look at its level at every inspection, and top up before the low mark",
            ),
        )


def reservoir_overflows(view: View) -> Iterator[Outcome]:
    """A reservoir that was topped up over worn pads takes back what new pads push out of the calipers.

    New pads push the pistons home, and as much fluid comes back as pad wear has taken. Asked
    for only where the reservoir's capacity is known.
    """
    for tank, wear, wheels in _tanks(view):
        if not tank.capacity.known:
            continue
        yield from _judged(
            Limit(wear, _asked(tank.air_space, "has free above its full mark", tank), "at most"),
            "builder-reports",
            rule="reservoir-overflows",
            level=Level.NOTE,
            place=tank.place,
            message=(
                f"new pads on {wheels} push {view.show(wear)} back, and {tank.name} has room for "
                f"{view.show(tank.air_space)} above its full mark: topped up over worn pads, it runs over"
            ),
            tries=("draw fluid off before the pistons are pushed back", "never top up between pad changes"),
        )


def _asked(value: Value, words: str, tank: MasterCylinder | Reservoir) -> Value:
    """Say what to measure, where nobody has, in words that can be followed."""
    what = f"what the reservoir of {tank.name} {words}"
    if isinstance(tank, Reservoir):
        what = f"what {tank.name} {words}"
    return value if value.known else unknown(value.label, value.dimension, value.place, what)


def _judged(
    limit: Limit,
    source: str,
    *,
    rule: str,
    level: Level,
    place: str,
    message: str,
    tries: tuple[str, ...],
) -> Iterator[Outcome]:
    """Judge two figures of the builder's own, which bring no source with them."""
    for outcome in judge(limit, rule=rule, level=level, place=place, message=message, tries=tries):
        yield replace(outcome, sources=practice(source)) if isinstance(outcome, Finding) else outcome


def _tanks(view: View) -> Iterator[tuple[MasterCylinder | Reservoir, Value, str]]:
    """Every reservoir with the fluid that the pads of all its wheels take, and their calipers."""
    wear = {item.caliper: item.volume for item in view.results.wear}
    for part in view.aircraft.components:
        if not isinstance(part, MasterCylinder | Reservoir):
            continue
        fed = [way.caliper for way in view.results.heights.ways if way.has_reservoir and way.top == part.name]
        calipers = tuple(dict.fromkeys(fed))
        if calipers:
            label = f"fluid that the pads take from {part.name}"
            volume = total(label, [wear[name] for name in calipers], f"{part.place}.pads take")
            yield part, volume, " and ".join(calipers)
