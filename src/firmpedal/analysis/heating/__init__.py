"""How warm disc, caliper, fluid and the end of the line get, and what stands it."""

from __future__ import annotations

from firmpedal.analysis.heating.limits import HeatLimit
from firmpedal.analysis.heating.whole import BrakeHeat, Heating, Peak, heating

__all__ = ["BrakeHeat", "HeatLimit", "Heating", "Peak", "heating"]
