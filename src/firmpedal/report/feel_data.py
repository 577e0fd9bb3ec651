"""Pedal feel as plain data in SI, and its curves as a table for spreadsheets."""

from __future__ import annotations

import csv
import io
import math
from typing import TYPE_CHECKING, Any

from firmpedal.analysis.together_travel import Travel
from firmpedal.report.contract import head, span
from firmpedal.report.feel_pedals import Felt, felt_pedals
from firmpedal.report.feel_shares import items
from firmpedal.report.feel_together import together_of
from firmpedal.report.network_data import network_data
from firmpedal.units import Dimension, to_unit

if TYPE_CHECKING:
    from firmpedal.analysis.feel.cases import Case
    from firmpedal.analysis.together_travel import PressedTogether
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.feel_pedals import Unfelt

FIGURES = 6
EDGES = ("firm", "soft")
SHOWN = (
    ("pressure", Dimension.PRESSURE),
    ("stroke", Dimension.LENGTH),
    ("travel", Dimension.LENGTH),
    ("force", Dimension.FORCE),
)


def feel_data(evaluation: Evaluation, force: Value | None = None) -> dict[str, Any]:
    """Every pedal with its cases and its budget; what is not worked out with what is missing."""
    pedals = [_pedal(each) for each in felt_pedals(evaluation, force)]
    both = [_together(each) for each in together_of(evaluation)]
    return {**head(evaluation.reading), "pedals": pedals, "both_seats": both, **network_data(evaluation)}


def _together(each: PressedTogether) -> dict[str, Any]:
    """The most that one cylinder uses at the hard foot with another seat's pressing as well."""
    known = each.travel is not Travel.NOT_RECKONED
    return {
        "cylinder": each.cylinder,
        "with": list(each.others),
        "travel": each.travel.value,
        "stroke": span(each.strokes[0]) if known else None,
        "stroke_hot": span(each.strokes[1]) if known else None,
        "why": each.why,
    }


def _pedal(one: Felt | Unfelt) -> dict[str, Any]:
    if not isinstance(one, Felt):
        return {"pedals": [one.name], "missing": [each.what for each in one.missing]}
    found = one.feel
    return {
        "pedals": list(one.names),
        "forces": [list(force.span or ()) for force in found.forces],
        "full_travel": span(found.full_travel),
        "cases": [_case(one, case) for case in found.cases],
        "budget": {
            "force": span(one.force),
            "cold": [{"what": name, "volume": span(each)} for name, each in items(one, hot=False)],
            "hot": [{"what": name, "volume": span(each)} for name, each in items(one, hot=True)],
        },
        "not_counted": [each.what for each in found.filled.not_counted],
    }


def _case(one: Felt, case: Case) -> dict[str, Any]:
    found = one.feel
    stops = None if found.stops is None else _finite(found.force_of(found.stops, case))
    return {
        "warmth": case.warmth.value,
        "pads_worn": case.worn,
        "air": case.air,
        "air_exponent": case.exponent,
        "travel": [span(found.travel(case, number)) for number in range(len(found.forces))],
        "stroke": [span(found.stroke(case, number)) for number in range(len(found.forces))],
        "cylinder_at_end": _finite(found.force_of(found.bottoms, case)) if found.end_known else None,
        "pad_at_stop": stops,
    }


def _finite(force: tuple[float, float]) -> list[float | None]:
    """A range of forces; None where no force does it."""
    return [each if math.isfinite(each) else None for each in force]


def curves_csv(evaluation: Evaluation, force: Value | None = None) -> str:
    """Every curve point by point, in the units of the file."""
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\n")
    units = [evaluation.display.unit(dimension) or "" for _, dimension in SHOWN]
    heads = [f"{name} {unit}" for (name, _), unit in zip(SHOWN, units, strict=True)]
    table.writerow(["pedals", "case", "edge", *heads])
    for one in felt_pedals(evaluation, force):
        if isinstance(one, Felt):
            table.writerows(_rows(one, units))
    return out.getvalue()


def _rows(one: Felt, units: list[str]) -> list[list[str]]:
    found = []
    columns = [getattr(one.feel.curves, name) for name, _ in SHOWN]
    for row in range(2 * len(one.feel.cases)):
        case, edge = one.feel.cases[row // 2], EDGES[row % 2]
        for point in zip(*(column[row] for column in columns), strict=True):
            figures = [f"{to_unit(float(x), unit):.{FIGURES}g}" for x, unit in zip(point, units, strict=True)]
            found.append([" ".join(one.names), case.words, edge, *figures])
    return found
