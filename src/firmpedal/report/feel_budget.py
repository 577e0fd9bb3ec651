"""What the travel of a pedal is spent on, item by item, cold and hot."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.formulas.levers import cylinder_stroke
from firmpedal.quantity import Value, apply, total
from firmpedal.report.feel_pedals import HOT
from firmpedal.report.feel_shares import items, share_words
from firmpedal.report.feel_words import at_force
from firmpedal.report.lengths import fine
from firmpedal.report.sheet import Table

if TYPE_CHECKING:
    from firmpedal.model.display import Display
    from firmpedal.report.feel_pedals import Felt

COLUMNS = ("what takes it", "fluid", "stroke", "pad travel", "share")
WIDTHS = (0.26, 0.22, 0.19, 0.19, 0.14)


def budget_tables(felt: Felt, display: Display) -> list[Table]:
    """One table cold, and one hot where heat matters."""
    warmths = (False, True) if felt.softest == HOT else (False,)
    return [_table(felt, display, hot=hot) for hot in warmths]


def _table(felt: Felt, display: Display, *, hot: bool) -> Table:
    budget = felt.budget
    whole, travel = (budget.hot, budget.pads[1]) if hot else (budget.cold, budget.pads[0])
    found = list(items(felt, hot=hot))
    volume = total("all", (each for _, each in found))
    rows = [_row(felt, each, (volume, whole, travel), display) for each in found]
    free = felt.feel.pressing.cylinder.free_stroke
    if free.known:
        cells = (fine(display).value(free), _at_pad(free, whole, travel, display))
        rows.insert(0, ("the free stroke", "", *cells, ""))
    all_of_it = (fine(display).value(volume), display.value(whole), display.value(travel))
    rows.append(("all of it", *all_of_it, ""))
    warm = ", hot" if hot else ", cold" if felt.softest == HOT else ""
    title = f"Where the travel goes at {at_force(felt.force, display)}{warm}"
    return Table(COLUMNS, tuple(rows), frozenset({1, 2, 3, 4}), title, WIDTHS)


def _row(
    felt: Felt, item: tuple[str, Value], wholes: tuple[Value, Value, Value], display: Display
) -> tuple[str, ...]:
    """One item beside all of the fluid, of the stroke and of the travel."""
    name, taken = item
    volume, whole, travel = wholes
    bore = felt.feel.pressing.cylinder.bore
    stroke = apply(cylinder_stroke, f"stroke for {name}", volume=taken, bore=bore)
    at_pad = _at_pad(stroke, whole, travel, display)
    shown = fine(display)
    return name, shown.value(taken), shown.value(stroke), at_pad, share_words(taken, volume)


def _at_pad(stroke: Value, whole: Value, travel: Value, display: Display) -> str:
    """A part of the stroke at the pad, by the mean ratio on the way."""
    if stroke.span is None or not (whole.known and travel.known) or not whole.middle:
        return "unknown"
    scale = travel.middle / whole.middle
    span = (stroke.low * scale, stroke.high * scale)
    return fine(display).value(Value("travel at the pad", stroke.dimension, span, stroke.mark))
