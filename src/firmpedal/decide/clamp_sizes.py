"""Which clamp goes round a line: by its own outside, or by that of the sleeve over it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.stock import Hose
from firmpedal.quantity import Answer, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.circuit import Line
    from firmpedal.model.stock import Stock
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

CLAMP = "cushioned clamp"
NO_SLEEVE = ("", "nothing", "none", "no")


@dataclass(frozen=True, slots=True)
class ClampSize:
    """A clamp to order: its name, its dash number where it has one, and what it goes round [m].

    `over` is what lies between clamp and line; `across` is unknown where that was not measured.
    """

    name: str
    size: str
    across: Value
    over: str = ""


def clamp_size(evaluation: Evaluation, line: LaidLine) -> ClampSize:
    """Choose the clamp by what it goes round: over a sleeve only the sleeved diameter says which."""
    stock, declared = line.stock, find(evaluation.aircraft.lines, line.name)
    if declared is None or not _sleeved(declared):
        return _bare(stock)
    sleeved, over = declared.sleeved_diameter, declared.sleeve.strip() or "its sleeve"
    if sleeved.known and sleeved.at_least(stock.outside_diameter) is not Answer.NO:
        return ClampSize(f"{CLAMP} {evaluation.display.value(sleeved)} over {over}", "", sleeved, over)
    what = f"the outside of the sleeved {line.kind.value}"
    across = unknown(sleeved.label, Dimension.LENGTH, f"{declared.place}.sleeved diameter", what)
    return ClampSize(f"{CLAMP} over {over} on {stock.phrase}", "", across, over)


def _sleeved(declared: Line) -> bool:
    return declared.sleeve.strip().lower() not in NO_SLEEVE or declared.sleeved_diameter.known


def _bare(stock: Stock) -> ClampSize:
    """No clamp goes by the dash size of a hose: it says how wide the hose is inside."""
    if isinstance(stock, Hose):
        return ClampSize(f"{CLAMP} for {stock.phrase}", "", stock.outside_diameter)
    dash = (stock.dash or "").lstrip("-")
    return ClampSize(f"{CLAMP} {stock.nominal_size}", dash, stock.outside_diameter)
