"""The rule that left pedals brake left wheels."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.circuit_words import listed, pedal_words
from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level
from firmpedal.model.aircraft import find
from firmpedal.model.component import SideOf

if TYPE_CHECKING:
    from collections.abc import Iterator


def sides_crossed(view: View) -> Iterator[Outcome]:
    """Left pedals brake the left wheel, right pedals the right one, from every seat.

    Sides are those that the file declares for cylinders, pedals and calipers. Where two seats share the
    lines, the crossing lines look right: they go from the outer pedal to the outer one.
    """
    reported = practice("builder-reports")
    for crossing in view.results.plumbing.crossings:
        line = find(view.aircraft.lines, crossing.lines[0]) if crossing.lines else None
        ends = [find(view.aircraft.components, name) for name in (crossing.one, crossing.other)]
        one, other = (f"{part.name} ({_side(view, part.name)})" for part in ends if part is not None)
        lead = "lead" if len(crossing.lines) > 1 else "leads"
        message = (
            f"{listed(crossing.lines) if crossing.lines else 'a way inside'} {lead} from {one} to {other}"
        )
        if crossing.presses:
            wrong = listed(
                f"{pedal_words(view, name)} brakes {caliper}" for name, caliper in crossing.presses
            )
            message = f"{message}: {wrong}"
        place = line.place if line else next(part.place for part in ends if part is not None)
        tries = ("swap the two lines at one end: left to left, right to right",)
        yield Finding("sides-crossed", Level.WARNING, place, message, tries, sources=reported)
    for cylinder in view.aircraft.cylinders:
        pedal = find(view.aircraft.pedals, cylinder.pedal)
        if pedal is not None and {cylinder.side, pedal.side} == {SideOf.LEFT, SideOf.RIGHT}:
            message = (
                f"{cylinder.name} is {cylinder.side}, and {pedal.name}, which presses it, is {pedal.side}"
            )
            tries = ("give it the pedal of its own side, or declare the side it serves",)
            yield Finding("sides-crossed", Level.WARNING, cylinder.place, message, tries, sources=reported)


def _side(view: View, name: str) -> str:
    part = find(view.aircraft.components, name)
    cylinder = find(view.aircraft.cylinders, name)
    pedal = find(view.aircraft.pedals, cylinder.pedal) if cylinder else None
    if part is not None and part.side is SideOf.CENTRE and pedal is not None:
        return str(pedal.side)
    return str(part.side) if part else ""
