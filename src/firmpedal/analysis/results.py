"""All analyses of one aircraft, together."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit import Plumbing, Reach, plumbing, reaches
from firmpedal.analysis.heating import Heating, heating
from firmpedal.analysis.heights import Heights, heights
from firmpedal.analysis.mass import line_mass, whole_mass
from firmpedal.analysis.pressure import (
    CylinderPressure,
    LinePressure,
    cylinder_pressures,
    foot_forces,
    line_pressures,
)
from firmpedal.analysis.stopping import Pushing, Stopping, stopping
from firmpedal.analysis.strength import Rating, TubeStrength, hot_for_metal, hottest, rating, tube_strength
from firmpedal.analysis.stroke import (
    Pressing,
    StrokeBudget,
    WearVolume,
    budgets,
    wear_volume,
)
from firmpedal.analysis.swelling import line_volume
from firmpedal.model.aircraft import find

if TYPE_CHECKING:
    from firmpedal.fit.assembly import Assembly
    from firmpedal.lay.crossing import Crossing
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.quantity import Value


@dataclass(frozen=True)
class Results:
    """What was computed, every figure a value with its sum."""

    forces: tuple[Value, ...]
    plumbing: Plumbing
    reach: tuple[Reach, ...]
    cylinders: tuple[CylinderPressure, ...]
    pressures: tuple[LinePressure, ...]
    strengths: tuple[TubeStrength, ...]
    ratings: tuple[Rating, ...]
    presses: tuple[Pressing, ...]
    budgets: tuple[StrokeBudget, ...]
    wear: tuple[WearVolume, ...]
    volumes: tuple[Value, ...]
    masses: tuple[Value, ...]
    mass: Value
    heights: Heights
    stopping: Stopping
    heating: Heating

    def pressure_of(self, line: str) -> LinePressure | None:
        return next((item for item in self.pressures if item.line == line), None)


def analyse(
    aircraft: Aircraft, assembly: Assembly, laid: tuple[LaidLine, ...], crossings: tuple[Crossing, ...]
) -> Results:
    """Run every analysis of the first set."""
    circuit = plumbing(aircraft)
    reach = reaches(aircraft, circuit.graph)
    cylinders, forces = cylinder_pressures(aircraft), foot_forces(aircraft)
    pressures = line_pressures(aircraft, cylinders, reach, circuit.feeds)
    by_name = {line.name: line for line in laid}
    pressed = {item.line: item for item in pressures}
    declared = {line.name: line for line in aircraft.lines}
    met = {name: tuple(item for item in crossings if item.line == name) for name in by_name}
    ratings = [rating(declared[line.name], line, met[line.name]) for line in laid]
    hot = {name: hottest(declared[name], met[name]) for name in by_name}
    strengths = [
        tube_strength(line, pressed[line.name], hottest(declared[line.name], hot_for_metal(met[line.name])))
        for line in laid
        if line.name in pressed
    ]
    presses = tuple(
        Pressing(
            cylinder,
            find(aircraft.pedals, cylinder.pedal),
            made.ratio,
            tuple(caliper for caliper in aircraft.calipers if caliper.name in way.calipers),
            tuple(by_name[name] for name in way.lines if name in by_name),
            hot,
            aircraft.fluid,
        )
        for cylinder, made, way in zip(aircraft.cylinders, cylinders, reach, strict=True)
    )
    forces = foot_forces(aircraft)
    pushes = tuple(
        Pushing(pressing, budgets(pressing, made, forces))
        for pressing, made in zip(presses, cylinders, strict=True)
    )
    stop = stopping(aircraft, pushes, reach, forces)
    return Results(
        forces,
        circuit,
        reach,
        cylinders,
        pressures,
        tuple(item for item in strengths if item),
        tuple(item for item in ratings if item),
        presses,
        tuple(budget for each in pushes for budget in each.budgets),
        tuple(wear_volume(caliper) for caliper in aircraft.calipers),
        tuple(line_volume(line) for line in laid),
        tuple(line_mass(line) for line in laid),
        whole_mass(laid, assembly, aircraft.fluid),
        heights(aircraft, laid, circuit.graph),
        stop,
        heating(aircraft, stop, pressed),
    )
