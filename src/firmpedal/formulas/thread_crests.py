"""What a calliper finds on a thread: diameters over and inside the crests, and turns and angles beside it."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive

_INCH = 0.0254


def least_external_crest(major_diameter: float, pitch: float, allowance: float) -> float:
    """Least diameter over the crests of an external parallel thread.

    d_min = d - 0.060 (1 in)^(1/3) p^(2/3) - a

    Args:
        major_diameter: d, in the thread's name [m].
        pitch: p, of the thread [m].
        allowance: a, by which the thread is made smaller than its name [m].

    Returns:
        Least diameter over the crests d_min [m].

    Valid: fine threads, p > 0, a >= 0, d larger than both together.
    Source: [asme-b1-1], tolerance on the major diameter of classes 2A and 3A, recalled.
    """
    require_positive(pitch, "the pitch")
    require_not_negative(allowance, "the allowance")
    tolerance: float = 0.060 * _INCH ** (1 / 3) * pitch ** (2 / 3)
    require(tolerance + allowance < major_diameter < math.inf, "the thread is too small for this pitch")
    return major_diameter - tolerance - allowance


def internal_crest(crest_diameter: float, thread_height: float) -> float:
    """Diameter inside the crests of an internal thread.

    D_1 = d - 2 h

    Args:
        crest_diameter: d, over the crests of the external thread that belongs to it [m].
        thread_height: h, of the thread [m].

    Returns:
        Diameter inside the crests D_1 [m].

    Valid: h >= 0, d > 2 h.
    Source: [firmpedal-derivation], a thread stands on both sides.
    """
    require_not_negative(thread_height, "the height of the thread")
    require(2 * thread_height < crest_diameter < math.inf, "the thread is deeper than it is wide")
    return crest_diameter - 2 * thread_height


def play_of_crests(pitch: float, share: float) -> float:
    """What crests may lie off their basic place.

    e = k p

    Args:
        pitch: p, of the thread [m].
        share: k, of the pitch [-].

    Returns:
        Play of the crests e [m].

    Valid: p > 0, k >= 0.
    Source: [firmpedal-derivation], tolerances grow with the pitch.
    """
    require_positive(pitch, "the pitch")
    require_not_negative(share, "the share")
    return pitch * share


def growth_along_taper(length: float, taper: float) -> float:
    """Growth of a taper thread's diameter along it.

    dd = L c

    Args:
        length: L, along the axis [m].
        taper: c, on the diameter [-].

    Returns:
        Growth of the diameter dd [m].

    Valid: L >= 0, c >= 0.
    Source: [firmpedal-derivation], the taper is a straight cone.
    """
    require_not_negative(length, "the length")
    require_not_negative(taper, "the taper")
    return length * taper


def gap_under_template(
    edge_diameter: float, inner_diameter: float, angle: float, other_angle: float
) -> float:
    """Gap under a blunter template laid on a cone, at the wide end of the cone.

    g = (D - d) sin(b - a) / (2 sin(a))

    Args:
        edge_diameter: D, of the cone at its wide end [m].
        inner_diameter: d, of the cone at its narrow end [m].
        angle: a, between the cone's side and its axis [rad].
        other_angle: b, that of the template [rad].

    Returns:
        Gap g [m].

    Valid: D > d >= 0, 0 < a <= b < 90 degrees.
    Source: [firmpedal-derivation], the blunter template touches at the narrow end.
    """
    require(0 <= inner_diameter < edge_diameter < math.inf, "the cone is wider at one end")
    require(0 < angle <= other_angle < math.pi / 2, "the template is the blunter cone, short of 90 degrees")
    side = (edge_diameter - inner_diameter) / (2 * math.sin(angle))
    return side * math.sin(other_angle - angle)
