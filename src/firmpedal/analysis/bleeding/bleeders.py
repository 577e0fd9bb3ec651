"""Where air can leave a caliper: a bleeder, a port that faces up, or nothing that the file names."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.quantity import Answer, Missing

if TYPE_CHECKING:
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Port
    from firmpedal.model.kinds import Caliper

UPWARD = math.cos(math.radians(45))  # a port within this of straight up is at the top of what it leads to


@dataclass(frozen=True, slots=True)
class WayOut:
    """The ports of one caliper by what they are for; `lets_out` says whether air can leave its top.

    `lets_out` is None where the file names the line's port alone: then its bleeder is taken to be there, as
    nearly every caliper has one and few builders write it down.
    """

    caliper: str
    place: str
    bleeders: tuple[str, ...]
    plugged: tuple[str, ...]
    upward: tuple[str, ...]
    lets_out: Answer | None
    missing: tuple[Missing, ...]


def way_out(aircraft: Aircraft, caliper: Caliper) -> WayOut:
    """Sort the ports of a caliper: a free one is its bleeder, one that faces up ends at its top.

    A free port that faces down lets no air out, which is common practice, no source.
    """
    taken = {end for line in aircraft.lines for end in (line.start, line.finish)}
    ports = caliper.ports
    free = [each for each in ports if f"{caliper.name}.{each.name}" not in taken]
    bleeders = tuple(each.name for each in free if each.closed is Answer.NO)
    plugged = tuple(each.name for each in free if each.closed is not Answer.NO)
    upward = tuple(each.name for each in ports if _up(each) is Answer.YES)
    unclear = tuple(_asked(caliper, each) for each in ports if _up(each) is Answer.UNKNOWN)
    lets_out: Answer | None
    if len(ports) == 1:
        lets_out = None
    elif bleeders or upward:
        lets_out = Answer.YES
    else:
        lets_out = Answer.UNKNOWN if unclear else Answer.NO
    missing = unclear if lets_out is Answer.UNKNOWN else ()
    return WayOut(caliper.name, caliper.place, bleeders, plugged, upward, lets_out, missing)


def _up(port: Port) -> Answer:
    if port.faces.vector is None:
        return Answer.UNKNOWN
    return Answer.YES if port.faces.vector[2] >= UPWARD else Answer.NO


def _asked(caliper: Caliper, port: Port) -> Missing:
    return Missing(f"{port.place}.faces", f"which way {caliper.name}.{port.name} faces")
