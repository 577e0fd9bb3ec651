"""Words that the rules about the circuit share: pedals by seat and side, and lists."""

from __future__ import annotations

from math import floor
from typing import TYPE_CHECKING

from firmpedal.finding import NotShown
from firmpedal.model import display
from firmpedal.model.aircraft import find
from firmpedal.model.component import SideOf

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.analysis.circuit import Verdict
    from firmpedal.checks.view import View
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.quantity import Missing, Value


def pedal_words(view: View, cylinder: str) -> str:
    """Name the pedal of a cylinder as people do: `the pilot's left pedal`, else by its own name."""
    return pedal_called(view.aircraft, cylinder)


def pedal_called(aircraft: Aircraft, cylinder: str) -> str:
    """The same of an aircraft alone."""
    part = find(aircraft.cylinders, cylinder)
    pedal = find(aircraft.pedals, part.pedal) if part else None
    if pedal is None:
        return f"the pedal of {cylinder}"
    if not pedal.seat:
        return f"pedal {pedal.name}"
    side = "" if pedal.side is SideOf.CENTRE else f"{pedal.side} "
    return f"the {pedal.seat}'s {side}pedal"


def seat_words(view: View, cylinder: str) -> str:
    """Name who presses a cylinder: `the pilot`, else its pedal."""
    part = find(view.aircraft.cylinders, cylinder)
    pedal = find(view.aircraft.pedals, part.pedal) if part else None
    return f"the {pedal.seat}" if pedal and pedal.seat else pedal_words(view, cylinder)


def together_words(view: View, *lines: str) -> str:
    """Who presses in the pressures of some lines, where more feet than one may add up there."""
    found = [each for line in lines if (each := view.results.pressure_of(line)) is not None]
    names = dict.fromkeys(name for each in found for name in each.adding)
    return f", with {listed(pedal_words(view, name) for name in names)} pressed together" if names else ""


def same_pedal(view: View, one: str, other: str) -> bool:
    """Whether two cylinders are always pressed together."""
    pedals = {part.pedal for part in view.aircraft.cylinders if part.name in (one, other)}
    return len(pedals) == 1


def listed(names: Iterable[str]) -> str:
    """Names as in a sentence, each once."""
    return display.listed(dict.fromkeys(names))


def place_of(view: View, part: str) -> str:
    found = find(view.aircraft.components, part)
    return found.place if found else f"components.{part}"


def unclear(rule: str, place: str, message: str, verdicts: Iterable[Verdict]) -> NotShown:
    """What has to be known before some verdicts can be given."""
    asked: dict[Missing, None] = {what: None for verdict in verdicts for what in verdict.matters}
    return NotShown(rule, place, message, tuple(asked))


DEGREES = {"degF": "degrees Fahrenheit", "degC": "degrees Celsius", "K": "kelvins"}
ONE_DEGREE = {"degF": "degree Fahrenheit", "degC": "degree Celsius", "K": "kelvin"}


def so_many_degrees(number: int, unit: str) -> str:
    """A whole number of degrees, one of them as one."""
    return f"{number} {ONE_DEGREE[unit] if number == 1 else DEGREES[unit]}"


def degrees_words(degrees: Value, unit: str) -> str:
    """So many degrees of warming, rounded down, or from so many to so many."""
    low, high = (floor(bound) for bound in (degrees.low, degrees.high))
    return so_many_degrees(low, unit) if low == high else f"{low} to {so_many_degrees(high, unit)}"
