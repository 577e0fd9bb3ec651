"""What `stop --json` prints: each figure as its least and greatest number in SI."""

from __future__ import annotations

from math import isfinite
from typing import TYPE_CHECKING, Any

from firmpedal.report.contract import head, missing_data, span_data
from firmpedal.report.stopping import main_values
from firmpedal.report.stopping_travel import endings, first_end, met
from firmpedal.report.stopping_words import wanted

if TYPE_CHECKING:
    from firmpedal.analysis.stopping import Needed
    from firmpedal.analysis.stopping.whole import AtFoot
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Answer


def stopping_data(evaluation: Evaluation) -> dict[str, Any]:
    """What each foot gives, what each thing takes, the limits and the energies."""
    stop = evaluation.results.stopping
    end = first_end(endings(evaluation))
    asked = zip((stop.wanted, stop.hold), met(stop, end), strict=True)
    limiting = [stop.lock, *((stop.nose_over,) if stop.nose_over else ())]
    limits = {
        "tyres_usual": span_data(stop.limits.usual),
        "tyres_peak": span_data(stop.limits.peak),
        "nose_over": span_data(stop.limits.nose_over),
    }
    return {
        **head(evaluation.reading),
        "feet": [_foot(at) for at in stop.feet],
        "run_up": {
            "pull": span_data(stop.run_up.pull),
            "tyres_hold": span_data(stop.run_up.holds),
            "held": stop.run_up.held.value,
            "lifts_tail": span_data(stop.run_up.lifts),
            "tips": stop.run_up.tips.value,
        },
        "needed": [
            *(_needed(need) | _answers(*answers) for need, answers in asked),
            *map(_needed, limiting),
        ],
        "travel_ends_at": list(end) if isfinite(end[1]) else None,
        "limits": limits,
        "energy_by_rule": span_data(stop.rule_energy),
        "energy_by_motion": span_data(stop.motion_energy),
        "unknown": missing_data(evaluation, wanted(main_values(stop))),
    }


def _foot(at: AtFoot) -> dict[str, Any]:
    return {
        "foot": at.foot,
        "force": span_data(at.force),
        "drag": span_data(at.drag),
        "deceleration_by_brakes": span_data(at.by_brakes),
        "deceleration": span_data(at.reached),
        "distance": span_data(at.distance),
    }


def _needed(need: Needed) -> dict[str, Any]:
    return {
        "for": need.what,
        "drag": span_data(need.drag),
        "foot": span_data(need.foot),
        "pressure": span_data(need.pressure),
    }


def _answers(foot: Answer, ground: Answer) -> dict[str, str]:
    return {"hard_foot_does_it": foot.value, "ground_holds_it": ground.value}
