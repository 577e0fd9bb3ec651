"""Temperature against time after stops in a row, with its band and what must not get hotter."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from firmpedal.analysis.heating.bands import courses
from firmpedal.analysis.heating.limits import FLUID, SEALS
from firmpedal.analysis.heating.samples import CALIPER, DISC
from firmpedal.analysis.heating.situations import IN_A_ROW
from firmpedal.report.plot import Axis, Band, Curve, Limit, plot
from firmpedal.units import Dimension, to_unit

if TYPE_CHECKING:
    from firmpedal.analysis.heating import BrakeHeat
    from firmpedal.model.display import Display
    from firmpedal.quantity import Value
    from firmpedal.report.sheet import Drawing

MINUTE = 60.0
LIMITS = {FLUID: "fluid's limit", SEALS: "seals' limit"}
CAPTION = (
    "Stops in a row, then standing: how warm disc and caliper get over time, each as wide as it is known."
)


def heat_plot(brake: BrakeHeat, air: Value, display: Display) -> Drawing | None:
    """Bands over time; None before they are known."""
    found = courses(brake, IN_A_ROW)
    if found is None or not air.known:
        return None
    unit = display.unit(Dimension.TEMPERATURE) or "degC"
    times, ends = found
    minutes = [0.0, *(float(each) / MINUTE for each in times)]
    edges = {
        lump: tuple(
            [to_unit(start, unit), *(to_unit(start + float(rise), unit) for rise in rises)]
            for start, rises in zip((air.low, air.high), ends[lump], strict=True)
        )
        for lump in (DISC, CALIPER)
    }
    low, high = (tuple(zip(minutes, edge, strict=True)) for edge in edges[CALIPER])
    cool, hot = (tuple(zip(minutes, edge, strict=True)) for edge in edges[DISC])
    shown: list[Curve | Band] = [
        Band("caliper and fluid", low, high),
        Curve("disc, at most", hot, dashed=True),
        Curve("disc, at least", cool, dashed=True),
    ]
    top = max(max(edge) for both in edges.values() for edge in both)
    limits = [
        Limit(LIMITS[each.kind], to_unit(each.allowed.middle, unit))
        for each in brake.limits
        if each.kind in LIMITS and each.allowed.known
    ]
    bottom = float(np.floor(to_unit(air.low, unit) / 10) * 10)
    along, up = Axis("minutes", 0.0, minutes[-1]), Axis(f"temperature, {unit}", bottom, 1.05 * top)
    return plot(along, up, shown, limits, CAPTION)
