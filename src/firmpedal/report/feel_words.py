"""What a pedal's curves come to, in a sentence or two: the answer, then the reason."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.quantity import total
from firmpedal.report.feel_pedals import COLD, HOT
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.feel.cases import Case
    from firmpedal.model.display import Display
    from firmpedal.quantity import Value
    from firmpedal.report.feel_pedals import Felt

CYLINDER, STOP = "the cylinder is at its end", "the pad is at its stop"
NO_FOOT = 3.0  # times the greatest force asked about: beyond, no foot comes


def ending(felt: Felt, case: Case) -> tuple[str, tuple[float, float]]:
    """What ends a pedal's travel first in a case, and the least and greatest force with which it does."""
    bottoms = felt.feel.force_of(felt.feel.bottoms, case)
    if felt.feel.stops is None:
        return CYLINDER, bottoms
    stops = felt.feel.force_of(felt.feel.stops, case)
    first = (min(stops[0], bottoms[0]), min(stops[1], bottoms[1]))
    return (STOP if stops <= bottoms else CYLINDER), first


def force_words(felt: Felt, force: tuple[float, float], display: Display) -> str:
    """A force that ends the travel: `113 to 117 lbf`, or that no foot does it."""
    low, high = force
    most = NO_FOOT * felt.feel.forces[-1].high
    if low > most:
        return "no foot"
    least = display.number(low, Dimension.FORCE)
    if high > most:
        return f"{least} or more"
    unit = f" {display.unit(Dimension.FORCE)}"
    greatest = display.number(high, Dimension.FORCE)
    return least if least == greatest else f"{least.removesuffix(unit)} to {greatest}"


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
    least = "at least " if felt.feel.filled.left_out else ""
    travel = felt.feel.travel(case, felt.chosen)
    hot = f" hot, {display.value(felt.feel.travel(COLD, felt.chosen))} cold" if case == HOT else ""
    warm = ""
    if case == COLD and felt.feel.filled.hot_missing:
        hot, warm = " cold", " Hot it goes further, and how much further is not worked out."
    return (
        f"At {at_force(force, display)} the pad goes {least}{display.value(travel)}{hot}, of the "
        f"{_whole(felt, display)}.{warm}"
    )


CLOSER = "Its figures are ranges; narrow the widest first."


def _whole(felt: Felt, display: Display) -> str:
    what, _ = ending(felt, felt.softest)
    stop = felt.feel.pressing.pedal.brake.travel_to_stop if felt.feel.pressing.pedal else None
    if what == STOP and stop is not None:
        return f"{display.value(stop)} to its stop"
    return f"{display.value(felt.feel.full_travel)} that there are until the cylinder is at its end"


def _from(felt: Felt, display: Display) -> str:
    """The forces that end the travel: `hot from 113 lbf, cold from 283 lbf`."""
    found = {
        name: force_words(felt, ending(felt, case)[1], display)
        for name, case in (("hot", HOT), ("cold", COLD))
        if case in felt.feel.cases
    }
    if HOT not in felt.feel.cases:
        return f"it comes to that at {found['cold']}"
    return ", ".join(f"{name} from {words}" for name, words in found.items())


def reason(felt: Felt, display: Display) -> str:
    """What takes most of the stroke, in the case that is softest."""
    hot = felt.softest == HOT
    found = [(name, value) for name, value in items(felt, hot=hot) if value.known]
    if not found:
        return ""
    name, most = max(found, key=lambda each: each[1].middle)
    whole = total("all", (value for _, value in found))
    warm = " hot" if hot else ""
    return (
        f"What takes most at {at_force(felt.force, display)}{warm} is {name}: {display.value(most)}, "
        f"{share_words(most, whole)} of the fluid."
    )


def items(felt: Felt, *, hot: bool) -> Iterator[tuple[str, Value]]:
    """The fluid that each thing takes: gaps, calipers and pads, walls, and the fluid's own give."""
    budget, calipers = felt.budget, felt.feel.pressing.calipers
    gaps = zip(calipers, budget.gaps, strict=True)
    yield from ((f"closing the pad gap of {each.name}", volume) for each, volume in gaps)
    yield from ((value.label, value) for value in budget.gives)
    swells = ((each.line, each.hot_wall if hot else each.wall) for each in budget.swells)
    yield from ((f"the swelling of {line}", value) for line, value in swells)
    yield "the squeezing of the fluid", total("fluid squeezed", (each.fluid for each in budget.swells))


def share_words(part: Value, whole: Value) -> str:
    """What share of a whole one part of it is: from its least with the most of the rest, to the other way."""
    if part.span is None or whole.span is None:
        return "an unknown share"
    least = part.low + whole.high - part.high
    most = part.high + whole.low - part.low
    ends = [f"{100 * a / b:.0f}" if b > 0 else "0" for a, b in ((part.low, least), (part.high, most))]
    return f"{ends[0] if ends[0] == ends[1] else ' to '.join(ends)} %"


def case_words(felt: Felt, case: Case) -> str:
    """A case in words; where heat changes nothing, without it."""
    if felt.feel.filled.softens:
        return case.words
    bare = case.words.removeprefix(f"{case.warmth}").removeprefix(", ")
    return bare or "new pads, no air"


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
