"""Heights when the aircraft does not stand level."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require

STANDARD_GRAVITY = 9.80665  # m/s^2, exact by definition


def height(aft: float, up: float, nose_up_angle: float) -> float:
    """Height of a point above the datum in a ground attitude.

    h = z cos(theta) - x sin(theta)

    Args:
        aft: x, of the point behind the datum with the aircraft level [m].
        up: z, of the point above the datum with the aircraft level [m].
        nose_up_angle: theta, nose up positive [rad].

    Returns:
        Height of the point above the datum, measured along a plumb line, h [m].

    Valid: theta between -pi/2 and pi/2. One direction in theta only while x cos(theta) + z sin(theta)
        keeps its sign: a range of theta across that point needs the value at the turning point too.
    Source: [firmpedal-derivation], turning of the axes about the lateral axis.
    """
    require(abs(nose_up_angle) <= math.pi / 2, "the aircraft cannot stand steeper than upright")
    require(math.isfinite(aft) and math.isfinite(up), "the point needs plain numbers")
    return up * math.cos(nose_up_angle) - aft * math.sin(nose_up_angle)


def height_above(upper: float, lower: float) -> float:
    """How far one height stands above another.

    d = h_u - h_l

    Args:
        upper: h_u, the upper height [m].
        lower: h_l, the lower height [m].

    Returns:
        Difference of the heights, below zero if the upper is the lower one d [m].

    Valid: plain numbers.
    Source: [firmpedal-derivation], difference of two heights.
    """
    require(math.isfinite(upper) and math.isfinite(lower), "heights need plain numbers")
    return upper - lower


def column_pressure(height: float, density: float) -> float:
    """Pressure at the foot of a column of fluid at rest.

    p = rho g h, g = 9.80665

    Args:
        height: h, of the column along a plumb line [m].
        density: rho, of the fluid [kg/m^3].

    Returns:
        Pressure at the foot above that at the head p [Pa].

    Valid: h >= 0, rho > 0.
    Source: [firmpedal-derivation], weight of a column over its area, standard gravity.
    """
    require(height >= 0, "a column has no negative height")
    require(density > 0, "fluid weighs something")
    return density * STANDARD_GRAVITY * height
