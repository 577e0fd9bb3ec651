"""Sentences about where fluid goes in at a caliper, and where its air gets out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.bleeding.bleeders import way_out
from firmpedal.model.aircraft import find
from firmpedal.model.display import listed

if TYPE_CHECKING:
    from firmpedal.analysis.bleeding import Rise
    from firmpedal.analysis.bleeding.bleeders import WayOut
    from firmpedal.pipeline import Evaluation

TURN = (
    "Where a corner of the caliper is higher than every bleeder, take it off its bracket and hold it so that "
    "it is not."
)
HOLD = "take it off its bracket and hold it with a port that has a line on it as its highest point"


def where_to_fill(evaluation: Evaluation, rise: Rise) -> str:
    """Where the pump's hose goes on, and how the caliper is held."""
    out = _out(evaluation, rise.caliper)
    if out is None or out.bleeders or out.lets_out is None:
        on = "the bleeder that the maker names for filling, else on the lowest one"
        return f"{on}. {TURN}"
    if not out.plugged:
        ask = f"The file names none on {rise.caliper}: ask its maker where it is filled from."
        return f"its bleeder. {ask} {_top(rise.caliper, out)}"
    plug = f"{rise.caliper}.{out.plugged[0]}"
    return (
        f"{plug}, in place of its plug: the file names no bleeder on {rise.caliper}. Have an adapter with a "
        f"shut-off for it. {_top(rise.caliper, out)}"
    )


def on_the_way(evaluation: Evaluation, name: str) -> str:
    """What to do at a caliper that fluid passes on its way up: air may still stand in its top."""
    out = _out(evaluation, name)
    if out is None or out.bleeders or out.lets_out is None:
        named = listed(f"{name}.{each}" for each in out.bleeders) if out is not None else ""
        return (
            f"While the pump still presses, open {named or f'the bleeder of {name}'} into a jar, its clear "
            "hose under fluid there, until no more bubbles come. Then shut it."
        )
    return f"The file names no bleeder on {name}. {_top(name, out)} Tap it while fluid runs."


def _top(name: str, out: WayOut) -> str:
    if out.upward:
        return f"{name}.{out.upward[0]} faces up, and its air leaves that way."
    return f"Air in its top stays: {HOLD}."


def _out(evaluation: Evaluation, name: str) -> WayOut | None:
    caliper = find(evaluation.aircraft.calipers, name)
    return way_out(evaluation.aircraft, caliper) if caliper is not None else None
