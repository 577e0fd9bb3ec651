"""What `bleed --json` prints: plain data in SI units, schema 1."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.report.bleeding import bleeding_of
from firmpedal.report.bleeding_steps import steps_for
from firmpedal.report.contract import SCHEMA
from firmpedal.report.options_contract import figure
from firmpedal.report.trapped import found_in as trapped

if TYPE_CHECKING:
    from firmpedal.analysis.bleeding import Rise
    from firmpedal.pipeline import Evaluation

Data = dict[str, Any]


def bleed_data(evaluation: Evaluation) -> Data:
    """Bores, high points, what valves shut in, and every wheel with what it takes and its steps."""
    found = bleeding_of(evaluation)
    return {
        "schema": SCHEMA,
        "file": evaluation.reading.file,
        "option": evaluation.reading.option,
        "lines": [
            {
                "name": each.line,
                "bore": figure(each.bore),
                "bond_number": figure(each.bond),
                "air_stays": each.stays.value,
                "sweeping_flow": figure(each.sweep),
            }
            for each in found.bores
        ],
        "high_points": [
            {
                "at": each.near,
                "attitude": each.attitude,
                "depth": figure(each.depth),
                "air": figure(each.air),
                "inside": list(each.inside),
            }
            for each in found.pockets
        ],
        "shut_in": [
            {
                "valve": each.valve,
                "at": each.caliper,
                "lines": list(each.lines),
                "volume": figure(each.volume),
                "degree": each.unit,
                "rise": figure(each.rise),
                "rise_if_rigid": figure(each.rigid),
                "gives_first": each.first.name if each.first is not None else None,
                "degrees": figure(each.degrees),
                "slack_after": figure(each.slack),
            }
            for each in trapped(evaluation)
        ],
        "wheels": [
            _wheel(rise) | {"steps": list(steps_for(evaluation, found, rise))} for rise in found.rises
        ],
    }


def _wheel(rise: Rise) -> Data:
    return {
        "from": rise.caliper,
        "to": rise.top,
        "lines": list(rise.lines),
        "attitude": rise.attitude,
        "volume": figure(rise.volume),
        "flow": figure(rise.flow),
        "pressure": figure(rise.pressure),
        "pressure_pot_enough": rise.enough.value,
        "time": figure(rise.time),
        "gravity": [
            {
                "attitude": each.attitude,
                "above_cap": each.blocked.line if each.blocked is not None else None,
                "flow": figure(each.flow),
                "enough": each.enough.value,
            }
            for each in rise.gravity
        ],
    }
