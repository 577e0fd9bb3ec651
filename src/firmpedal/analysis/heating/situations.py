"""What a brake goes through: one stop, stops in a row, a long taxi; each ends with standing still."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from firmpedal.analysis.heating.network import Array, Own, Phase, march, own_directions
from firmpedal.analysis.heating.samples import heat_into, lumps_of

if TYPE_CHECKING:
    from firmpedal.analysis.heating.samples import Figures

STAND = 1800.0  # s of standing afterwards: heat goes on creeping into caliper and line
ONE_STOP, IN_A_ROW, TAXI = "one stop", "stops in a row", "long taxi"
SITUATIONS = (ONE_STOP, IN_A_ROW, TAXI)


def films(figures: Figures, pistons: float) -> tuple[Own, Own]:
    """The network of every set while it rolls, and while it stands."""
    moving, standing = (own_directions(lumps_of(figures, pistons, film)) for film in ("moving", "standing"))
    return moving, standing


def phases(name: str, figures: Figures, both: tuple[Own, Own], stops: int) -> tuple[Phase, ...]:
    """The phases of one situation for every set of figures."""
    moving, standing = both
    sets = len(figures["energy"])
    nothing = np.zeros((sets, 4))
    rest = Phase(standing, np.full(sets, STAND), nothing)
    if name == TAXI:
        taxi = Phase(moving, figures["taxi_time"], heat_into(figures, figures["taxi_power"]))
        return taxi, rest
    energy, time = figures["energy"], figures["stop_time"]
    power = np.divide(energy, time, out=np.zeros(sets), where=time > 0)  # from no speed there is no stop
    braking = Phase(moving, time, heat_into(figures, power))
    if name == ONE_STOP:
        return braking, rest
    rolling = Phase(moving, figures["between"], nothing)
    return (*((braking, rolling) * (stops - 1)), braking, rest)


def course(name: str, figures: Figures, both: tuple[Own, Own], stops: int, looks: int) -> tuple[Array, Array]:
    """Times and temperatures above the air of one situation, for every set of figures."""
    return march(phases(name, figures, both, stops), looks)


def peaks(name: str, figures: Figures, both: tuple[Own, Own], stops: int, looks: int = 12) -> Array:
    """The greatest temperature of each lump above the air, for every set of figures (sets, lumps)."""
    _, found = course(name, figures, both, stops, looks)
    highest: Array = found.max(axis=1)
    return highest
