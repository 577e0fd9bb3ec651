"""The circuit under pressure as plain data in SI: every connection, whatever is pressed; leaks; flows."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.analysis.network.flows import flows
from firmpedal.analysis.network.leaks import leaks
from firmpedal.analysis.network.pressures import pressures
from firmpedal.report.contract import span
from firmpedal.report.network import FOOT

if TYPE_CHECKING:
    from firmpedal.analysis.network.pressures import Pressures
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value


def network_data(evaluation: Evaluation) -> dict[str, Any]:
    """Pressures at the hard foot, what one leak costs, and the fluid that goes through each line."""
    aircraft, results = evaluation.aircraft, evaluation.results
    return {
        "circuits": [_circuit(each) for each in pressures(aircraft, results, FOOT)],
        "leaks": [
            {
                "line": each.line,
                "cylinders": list(each.pedals),
                "wheels": list(each.wheels),
                "emptied": list(each.emptied),
                "in_time": list(each.in_time),
            }
            for each in leaks(aircraft, results)
        ],
        "flows": _flows(evaluation),
    }


def _circuit(found: Pressures) -> dict[str, Any]:
    return {
        "pressed": [
            {"cylinders": list(each.cylinders), "nodes": _places(each.nodes)} for each in found.pressed
        ],
        "left": _places(found.left),
        "asked": [each.what for each in found.asked],
    }


def _places(values: tuple[tuple[str, Value], ...]) -> list[dict[str, Any]]:
    return [{"at": name, "pressure": span(value)} for name, value in values]


def _flows(evaluation: Evaluation) -> list[dict[str, Any]]:
    """The fluid that enters each line as one pedal is pressed with the hard foot, cold."""
    results = evaluation.results
    pressing = {each.cylinder.name: each for each in results.presses}
    return [
        {"cylinder": budget.cylinder, "line": each.line, "enters": each.enters, "volume": span(each.through)}
        for budget in results.budgets
        if budget.foot == FOOT
        for each in flows(
            results.plumbing.graph,
            budget,
            tuple(part.name for part in pressing[budget.cylinder].calipers),
            hot=False,
        )
    ]
