"""One file per kind of component: its ports and fields."""

from __future__ import annotations

from firmpedal.model.kinds.caliper import Caliper
from firmpedal.model.kinds.master_cylinder import MasterCylinder
from firmpedal.model.kinds.parking_valve import ParkingValve
from firmpedal.model.kinds.reservoir import Reservoir

Component = Caliper | MasterCylinder | ParkingValve | Reservoir

KINDS: dict[str, type[Component]] = {
    "caliper": Caliper,
    "master cylinder": MasterCylinder,
    "parking valve": ParkingValve,
    "reservoir": Reservoir,
}

__all__ = ["KINDS", "Caliper", "Component", "MasterCylinder", "ParkingValve", "Reservoir"]
