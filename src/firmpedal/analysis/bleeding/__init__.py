"""Filling the lines and getting the air out: where it stays, what moves it, which way and how hard."""

from __future__ import annotations

from firmpedal.analysis.bleeding.bores import Bore
from firmpedal.analysis.bleeding.pockets import Pocket
from firmpedal.analysis.bleeding.pumping import Pumping, stroke_volume
from firmpedal.analysis.bleeding.rises import Gravity, Rise
from firmpedal.analysis.bleeding.whole import Bleeding, bleeding

__all__ = ["Bleeding", "Bore", "Gravity", "Pocket", "Pumping", "Rise", "bleeding", "stroke_volume"]
