"""Mass and content of tube."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require_not_negative, require_positive, require_tube


def tube_mass_per_length(outside_diameter: float, wall_thickness: float, density: float) -> float:
    """Mass of dry tube per length.

    m = rho pi t (D - t)

    Args:
        outside_diameter: D, of the tube [m].
        wall_thickness: t, of the tube [m].
        density: rho, of the tube's material [kg/m^3].

    Returns:
        Mass per length m [kg/m].

    Valid: round, 0 < 2 t < D, rho > 0.
    Source: [firmpedal-derivation], area of a ring.
    """
    require_tube(outside_diameter, wall_thickness)
    require_positive(density, "the density")
    return density * math.pi * wall_thickness * (outside_diameter - wall_thickness)


def fluid_volume_per_length(outside_diameter: float, wall_thickness: float) -> float:
    """Volume of fluid in a tube per length, the area of its bore.

    A = (pi / 4) (D - 2 t)^2

    Args:
        outside_diameter: D, of the tube [m].
        wall_thickness: t, of the tube [m].

    Returns:
        Volume per length A [m^3/m].

    Valid: round, 0 < 2 t < D, a full tube.
    Source: [firmpedal-derivation], area of a circle.
    """
    require_tube(outside_diameter, wall_thickness)
    return math.pi / 4 * (outside_diameter - 2 * wall_thickness) ** 2


def mass_of_length(mass_per_length: float, length: float) -> float:
    """Mass of a length of tube or hose.

    M = m L

    Args:
        mass_per_length: m, mass per length [kg/m].
        length: L, developed length [m].

    Returns:
        Mass M [kg].

    Valid: m >= 0, L >= 0.
    Source: [firmpedal-derivation], mass per length times length.
    """
    require_not_negative(mass_per_length, "the mass per length")
    require_not_negative(length, "the length")
    return mass_per_length * length


def mass_of_volume(volume: float, density: float) -> float:
    """Mass of a volume of fluid.

    M = V rho

    Args:
        volume: V, of the fluid [m^3].
        density: rho, of the fluid [kg/m^3].

    Returns:
        Mass M [kg].

    Valid: V >= 0, rho > 0.
    Source: [firmpedal-derivation], density times volume.
    """
    require_not_negative(volume, "the volume")
    require_positive(density, "the density")
    return volume * density
