"""What `heat --json` prints: bands of temperature, and each thing that must stand them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.report.contract import head, missing_data, span_data
from firmpedal.report.heat import main_values
from firmpedal.report.stopping_words import wanted

if TYPE_CHECKING:
    from firmpedal.analysis.heating import BrakeHeat, HeatLimit, Peak
    from firmpedal.pipeline import Evaluation


def heat_data(evaluation: Evaluation) -> dict[str, Any]:
    """The heat of every brake."""
    heat = evaluation.results.heating
    missing = wanted(value for brake in heat.brakes for value in main_values(brake))
    return {
        **head(evaluation.reading),
        "air": span_data(heat.air),
        "brakes": [_brake(brake) for brake in heat.brakes],
        "unknown": missing_data(evaluation, missing),
    }


def _brake(brake: BrakeHeat) -> dict[str, Any]:
    return {
        "caliper": brake.caliper,
        "peaks": [_peak(peak) for peak in brake.peaks],
        "stands": [_limit(limit) for limit in brake.limits],
        "trial_agrees": brake.agrees,
        "measured_port": None if brake.measured is None else span_data(brake.measured),
    }


def _peak(peak: Peak) -> dict[str, Any]:
    return {
        "after": peak.situation,
        "disc": span_data(peak.disc),
        "caliper_port": span_data(peak.caliper),
        "fluid_there": span_data(peak.fluid),
        "line_end": span_data(peak.line),
    }


def _limit(limit: HeatLimit) -> dict[str, Any]:
    return {
        "kind": limit.kind,
        "what": limit.words,
        "found": span_data(limit.found),
        "relation": limit.relation,
        "limit": span_data(limit.allowed),
    }
