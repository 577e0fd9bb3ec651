"""All that filling and bleeding one aircraft takes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.bleeding.bores import bubble_in, not_without_fluid
from firmpedal.analysis.bleeding.pockets import pockets_of
from firmpedal.analysis.bleeding.pumping import pumpings
from firmpedal.analysis.bleeding.rises import Setting, far_ends_first, rise_of
from firmpedal.analysis.viscosity import viscosity_at
from firmpedal.quantity import Mark, Value
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.analysis.bleeding.bores import Bore
    from firmpedal.analysis.bleeding.pockets import Pocket
    from firmpedal.analysis.bleeding.pumping import Pumping
    from firmpedal.analysis.bleeding.rises import Rise
    from firmpedal.analysis.results import Results
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.aircraft import Aircraft

WORKSHOP = Value(
    "fluid in a workshop, neither hot nor freezing",
    Dimension.TEMPERATURE,
    (from_unit(10, "degC"), from_unit(30, "degC")),
    Mark.ESTIMATE,
    source="firmpedal-estimate",
)


@dataclass(frozen=True, slots=True)
class Bleeding:
    """What bubbles do in each line, where air stays and how much, what it takes to push it out."""

    viscosity: Value
    bores: tuple[Bore, ...]
    pockets: tuple[Pocket, ...]
    rises: tuple[Rise, ...]
    pumping: tuple[Pumping, ...]

    def met(self, rise: Rise) -> tuple[Pocket, ...]:
        """The high points that filling one wheel meets in the attitude in which it is done."""
        return tuple(
            pocket
            for pocket in self.pockets
            if rise.caliper in pocket.calipers and (pocket.top, pocket.attitude) == (rise.top, rise.attitude)
        )

    def after(self, rise: Rise) -> Rise | None:
        """The wheel with which one is filled on the way; None where it is filled from its own bleeder."""
        return next((each for each in self.rises if rise.caliper in each.passes), None)

    def bore_of(self, line: str) -> Bore:
        """What a bubble does in one line."""
        return next(each for each in self.bores if each.line == line)


def bleeding(aircraft: Aircraft, laid: tuple[LaidLine, ...], results: Results) -> Bleeding:
    """Work out filling and bleeding; nothing of it is needed for a verdict, so it is done when asked for."""
    place = "fluid.viscosity in a workshop"
    fluid = aircraft.fluid
    viscosity = (
        viscosity_at(fluid, WORKSHOP, place)
        if fluid is not None
        else not_without_fluid("viscosity of the fluid", Dimension.KINEMATIC_VISCOSITY, place)
    )
    bores = tuple(bubble_in(line, fluid, viscosity) for line in laid)
    volumes = dict(zip((line.name for line in laid), results.volumes, strict=True))
    setting = Setting(
        aircraft,
        {line.name: line for line in laid},
        volumes,
        {each.line: each for each in bores},
        viscosity,
        results.heights,
    )
    ways = results.heights.ways
    found = (rise_of(setting, way) for way in ways)
    return Bleeding(
        viscosity,
        bores,
        pockets_of(aircraft, results.heights, volumes),
        far_ends_first(rise for rise in found if rise is not None),
        tuple(each for way in ways for each in pumpings(setting, way)),
    )
