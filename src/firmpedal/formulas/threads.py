"""American taper pipe thread: diameters, engagement, spreading of the port.

The standard prints its coefficients for inches; they are kept as printed, and 1 in stands in the
equation where they need it.
"""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive

_INCH = 0.0254
_TAPER = 1 / 16


def pitch_diameter_at_small_end(outside_diameter: float, pitch: float) -> float:
    """Pitch diameter of an external taper pipe thread at its small end.

    E_0 = D - (0.05 D / (1 in) + 1.1) p

    Args:
        outside_diameter: D, of the pipe [m].
        pitch: p, of the thread [m].

    Returns:
        Pitch diameter at the beginning of the external thread E_0 [m].

    Valid: taper 1 in 16 on the diameter, p > 0, D larger than the thread is deep, p up to 1/8 in.
    Source: [asme-b1-20-1], formula for E0 under the table of basic dimensions.
    """
    _require_thread(outside_diameter, pitch)
    return outside_diameter - (0.05 * outside_diameter / _INCH + 1.1) * pitch


def pitch_diameter_at_gauge_plane(small_end_pitch_diameter: float, hand_engagement: float) -> float:
    """Pitch diameter of a taper pipe thread at the hand-tight plane.

    E_1 = E_0 + L_1 / 16

    Args:
        small_end_pitch_diameter: E_0, at the beginning of the external thread [m].
        hand_engagement: L_1, length of engagement by hand [m].

    Returns:
        Pitch diameter at the beginning of the internal thread E_1 [m].

    Valid: taper 1 in 16 on the diameter, E_0 > 0, L_1 >= 0.
    Source: [asme-b1-20-1], formula for E1 under the table of basic dimensions.
    """
    require_positive(small_end_pitch_diameter, "the pitch diameter")
    require_not_negative(hand_engagement, "the length of engagement")
    return small_end_pitch_diameter + hand_engagement * _TAPER


def effective_thread_length(outside_diameter: float, pitch: float) -> float:
    """Length of effective thread of an external taper pipe thread.

    L_2 = (0.80 D / (1 in) + 6.8) p

    Args:
        outside_diameter: D, of the pipe [m].
        pitch: p, of the thread [m].

    Returns:
        Length of effective external thread L_2 [m].

    Valid: taper 1 in 16 on the diameter, p > 0, D larger than the thread is deep, p up to 1/8 in.
    Source: [asme-b1-20-1], formula for L2 under the table of basic dimensions.
    """
    _require_thread(outside_diameter, pitch)
    return (0.80 * outside_diameter / _INCH + 6.8) * pitch


def engagement_turns(engagement: float, pitch: float) -> float:
    """Turns of a thread in a length of engagement.

    n = L / p

    Args:
        engagement: L, length of engagement [m].
        pitch: p, of the thread [m].

    Returns:
        Turns n [-].

    Valid: L >= 0, p > 0.
    Source: [firmpedal-derivation], one pitch to a turn.
    """
    require_not_negative(engagement, "the length of engagement")
    require_positive(pitch, "the pitch")
    return engagement / pitch


def diameter_growth_per_turn(pitch: float) -> float:
    """Spreading of a taper pipe port by one more turn.

    dD = p / 16

    Args:
        pitch: p, of the thread [m].

    Returns:
        Growth of the diameter for each turn beyond hand tight, dD [m].

    Valid: taper 1 in 16 on the diameter, p > 0, a fitting that does not shrink.
    Source: [asme-b1-20-1], taper of 1 in 16 on the diameter.
    """
    require_positive(pitch, "the pitch")
    return pitch * _TAPER


def _require_thread(outside_diameter: float, pitch: float) -> None:
    require(0 < pitch <= _INCH / 8, "no pipe thread of the standard is coarser than 8 threads per inch")
    require(2 * pitch < outside_diameter < math.inf, "the pipe is too small for a thread of this pitch")
