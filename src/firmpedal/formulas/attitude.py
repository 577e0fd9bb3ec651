"""Heights when the aircraft does not stand level."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require


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
