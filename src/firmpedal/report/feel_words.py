"""What a pedal's curves come to, in a sentence or two: the answer, then the reason."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.feel.cases import Warmth
from firmpedal.report.feel_pedals import COLD, HOT
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.analysis.feel.cases import Case
    from firmpedal.model.display import Display
    from firmpedal.quantity import Value
    from firmpedal.report.feel_pedals import Felt

CYLINDER, STOP = "the cylinder is at its end", "the pad is at its stop"
NO_FOOT = 3.0  # times the greatest force asked about: beyond, no foot comes
NEVER, NOT_KNOWN = "never", "unknown"


def ending(felt: Felt, case: Case) -> tuple[str, tuple[float, float]]:
    """What ends a pedal's travel first in a case, and the least and greatest force with which it does."""
    bottoms = felt.feel.force_of(felt.feel.bottoms, case)
    if felt.feel.stops is None:
        return CYLINDER, bottoms
    stops = felt.feel.force_of(felt.feel.stops, case)
    first = (min(stops[0], bottoms[0]), min(stops[1], bottoms[1]))
    return (STOP if stops <= bottoms else CYLINDER), first


def force_words(felt: Felt, force: tuple[float, float], display: Display) -> str:
    """A force that ends the travel: `113 to 117 lbf`, or that none does it that anybody presses with."""
    low, high = force
    most = NO_FOOT * felt.feel.forces[-1].high
    if low > most:
        return NEVER
    least = display.number(low, Dimension.FORCE)
    if high > most:
        return f"{least} or more"
    unit = f" {display.unit(Dimension.FORCE)}"
    greatest = display.number(high, Dimension.FORCE)
    return least if least == greatest else f"{least.removesuffix(unit)} to {greatest}"


def end_words(felt: Felt, case: Case, display: Display) -> str:
    """The force that ends the travel in a case; without a stroke the pad's stop alone is known."""
    words = force_words(felt, ending(felt, case)[1], display)
    if felt.feel.end_known:
        return words
    return NOT_KNOWN if words == NEVER else f"{words} or less"


def travel_words(felt: Felt, case: Case, number: int, display: Display) -> str:
    """The travel at one of the forces, or that there is none left."""
    _, (low, high) = ending(felt, case)
    force = felt.feel.forces[number]
    if high <= force.low:
        return "to its end"
    travel = felt.feel.travel(case, number)
    if low <= force.high and travel.known:
        return f"{display.number(travel.low, Dimension.LENGTH)} to its end"
    return display.value(travel)


def at_force(force: Value, display: Display) -> str:
    """A force with its name: `the hard foot (150 lbf)`."""
    name = f"the {force.label}" if force.label.endswith("foot") else "the force asked for"
    return f"{name} ({display.value(force)})"


def lead(felt: Felt, display: Display) -> str:
    """The answer: whether the pressure comes before the travel is used up."""
    force, case = felt.force, felt.softest
    what, (low, high) = ending(felt, case)
    if high <= force.low:
        return f"{_capital(what)} before {at_force(force, display)} is there: {_from(felt, display)}."
    if low <= force.high:
        return (
            f"It cannot be said whether {what} before {at_force(force, display)} is there: "
            f"{_from(felt, display)}. {CLOSER}"
        )
    hot = f" hot, {_goes(felt, COLD, display)} cold" if case == HOT else ""
    warm = ""
    if case == COLD and felt.feel.filled.hot_missing:
        hot, warm = " cold", " Hot it goes further, and how much further is not worked out."
    goes = f"At {at_force(force, display)} the pad goes {_goes(felt, case, display)}{hot}"
    if not felt.feel.end_known and what != STOP:
        return f"{goes}.{warm} {NO_STROKE}"
    return f"{goes}, of the {_whole(felt, display)}.{warm}"


def _goes(felt: Felt, case: Case, display: Display) -> str:
    """How far the pad goes in a case; where something is not counted, only the least or the most of it.

    What takes travel makes it more, what takes from the foot makes it less; with both it is neither.
    """
    travel, found = felt.feel.travel(case, felt.chosen), felt.feel.filled
    if not travel.known or not found.not_counted:
        return display.value(travel)
    if not found.held_back:
        return f"{display.number(travel.low, travel.dimension)} or more"
    if not found.left_out:
        return f"{display.number(travel.high, travel.dimension)} or less"
    return f"about {display.value(travel)}"


CLOSER = "Its figures are ranges; narrow the widest first."


def _whole(felt: Felt, display: Display) -> str:
    what, _ = ending(felt, felt.softest)
    stop = felt.feel.pressing.pedal.brake.travel_to_stop if felt.feel.pressing.pedal else None
    if what == STOP and stop is not None:
        return f"{display.value(stop)} to its stop"
    return f"{display.value(felt.feel.full_travel)} that there are until the cylinder is at its end"


NO_STROKE = "How far it could go is not known: the stroke of its cylinder is not given."


def _from(felt: Felt, display: Display) -> str:
    """The forces that end the travel: `hot from 113 lbf, cold from 283 lbf`."""
    found = {
        name: force_words(felt, ending(felt, case)[1], display)
        for name, case in (("hot", HOT), ("cold", COLD))
        if case in felt.feel.cases
    }
    if HOT not in felt.feel.cases:
        return f"it comes to that at {found['cold']}"
    starts = {name: words if words == NEVER else f"from {words}" for name, words in found.items()}
    return ", ".join(f"{name} {words}" for name, words in starts.items())


def case_words(felt: Felt, case: Case) -> str:
    """A case in words; where heat changes nothing, without it."""
    if felt.feel.filled.softens or case.warmth is Warmth.FROST:
        return case.words
    bare = case.words.removeprefix(f"{case.warmth}").removeprefix(", ")
    return bare or "new pads, no air"


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
