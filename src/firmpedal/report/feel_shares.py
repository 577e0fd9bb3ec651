"""What a pedal's travel is spent on, in figures and in a sentence: what surely takes most, or what may."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.model.stock import Hose
from firmpedal.quantity import total
from firmpedal.report.feel_pedals import HOT
from firmpedal.report.feel_words import at_force

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.display import Display
    from firmpedal.quantity import Value
    from firmpedal.report.feel_pedals import Felt

GAPS, GIVES, SWELLING = "closing the pad gap", "the give", "the swelling"
HOSES, LINES, FLUID = (
    "the swelling of the hoses",
    "the swelling of the other lines",
    "the squeezing of the fluid",
)
# Things of one sort together: its words for several of them, and what narrows its range.
SORTS = {
    GAPS: ("closing the pad gaps", "each pad gap, by feeler gauge"),
    GIVES: ("the give of calipers and pads", "how far the pads go on under pressure, measured"),
    HOSES: (HOSES, "what each hose takes as it swells, measured"),
    LINES: (LINES, "how hot each line runs, and how long it is"),
    FLUID: (FLUID, "how long the lines are"),
}


def reason(felt: Felt, display: Display) -> str:
    """What takes most of the stroke, in the case that is softest; where ranges cross, what may."""
    hot = felt.softest == HOT
    sorts = [each for each in _sorts(felt, hot=hot) if each[2].known]
    if not sorts:
        return ""
    sorts.sort(key=lambda each: each[2].middle, reverse=True)
    whole = total("all", (value for _, _, value in sorts))
    start = f"What takes most at {at_force(felt.force, display)}{' hot' if hot else ''}"
    (_, name, most), *rest = sorts
    if all(most.low >= other.high for _, _, other in rest):
        return f"{start} is {name}: {display.value(most)}, {share_words(most, whole)} of the fluid."
    may = [each for each in sorts if each[2].high >= max(value.low for _, _, value in sorts)]
    takes = listed(f"{name} {_taken(value, whole, display)}" for _, name, value in may)
    widest = max(may, key=lambda each: each[2].high - each[2].low)[0]
    return f"{start} cannot be said yet. Of the fluid, {takes}. What narrows it: {SORTS[widest][1]}."


def _taken(value: Value, whole: Value, display: Display) -> str:
    return f"takes {display.value(value)} ({share_words(value, whole)})"


def _sorts(felt: Felt, *, hot: bool) -> Iterator[tuple[str, str, Value]]:
    """What `items` tells by its sort: the sort, its words, and all that it takes."""
    hoses = {line.name for line in felt.feel.pressing.lines if isinstance(line.stock, Hose)}
    sorts: dict[str, list[tuple[str, Value]]] = {}
    for name, value in items(felt, hot=hot):
        start, _, of = name.partition(" of ")
        sort = {GAPS: GAPS, SWELLING: HOSES if of in hoses else LINES}.get(start, GIVES)
        sorts.setdefault(FLUID if name == FLUID else sort, []).append((name, value))
    for sort, members in sorts.items():
        words = members[0][0] if len(members) == 1 else SORTS[sort][0]
        yield sort, words, total(words, [value for _, value in members])


def items(felt: Felt, *, hot: bool) -> Iterator[tuple[str, Value]]:
    """The fluid that each thing takes: gaps, calipers and pads, walls, and the fluid's own give."""
    budget, calipers = felt.budget, felt.feel.pressing.calipers
    gaps = zip(calipers, budget.gaps, strict=True)
    yield from ((f"{GAPS} of {each.name}", volume) for each, volume in gaps)
    yield from ((value.label, value) for value in budget.gives)
    swells = ((each.line, each.hot_wall if hot else each.wall) for each in budget.swells)
    yield from ((f"{SWELLING} of {line}", value) for line, value in swells)
    yield FLUID, total("fluid squeezed", (each.fluid for each in budget.swells))


def share_words(part: Value, whole: Value) -> str:
    """What share of a whole one part of it is: from its least with the most of the rest, to the other way."""
    if part.span is None or whole.span is None:
        return "an unknown share"
    least = part.low + whole.high - part.high
    most = part.high + whole.low - part.low
    ends = [f"{100 * a / b:.0f}" if b > 0 else "0" for a, b in ((part.low, least), (part.high, most))]
    return f"{ends[0] if ends[0] == ends[1] else ' to '.join(ends)} %"
