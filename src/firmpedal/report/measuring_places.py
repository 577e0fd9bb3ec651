"""Where on the aircraft a thing is found, for the order of the measuring form."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.surroundings import Obstacle

if TYPE_CHECKING:
    from firmpedal.model.aircraft import Aircraft

SEAT, CABIN, LEG, WHEEL, TANK, WHOLE = (
    "Seats and pedals",
    "Floor and cabin",
    "Leg",
    "Wheel",
    "Reservoir",
    "The whole aircraft, and the bench",
)
STATIONS = (SEAT, CABIN, LEG, WHEEL, TANK, WHOLE)
BY_SECTION = {"pedals": SEAT, "panels": CABIN, "wheels": WHEEL, "lines": CABIN, "points": CABIN}
BY_KIND = {"master cylinder": SEAT, "parking valve": CABIN, "caliper": WHEEL, "reservoir": TANK}
BY_OBSTACLE = {Obstacle.DISC: WHEEL, Obstacle.TYRE: WHEEL, Obstacle.LEG: LEG}


def station_of(aircraft: Aircraft, path: str) -> str:
    """The stop on the walk at which a path of the file is measured."""
    section, _, rest = path.partition(".")
    name = rest.partition(".")[0]
    if section == "components":
        part = find(aircraft.components, name)
        return BY_KIND.get(part.kind, WHOLE) if part else WHOLE
    if section == "bulkheads":
        wall = find(aircraft.bulkheads, name)
        return LEG if wall and wall.moves_with else CABIN
    if section == "keep clear of":
        thing = find(aircraft.keep_clear_of, name)
        return BY_OBSTACLE.get(thing.kind, CABIN) if thing else CABIN
    if section == "zones":
        zone = find(aircraft.zones, name)
        return WHEEL if zone and zone.heat else LEG
    if section == "moving":
        pedals = {pedal.moves_with for pedal in aircraft.pedals}
        pedals |= {cylinder.moves_with for cylinder in aircraft.cylinders}
        return SEAT if name in pedals else WHEEL
    return BY_SECTION.get(section, WHOLE)
