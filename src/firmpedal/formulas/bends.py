"""Bends and flares of rigid tube: lengths, walls, strain."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require, require_not_negative, require_positive, require_tube


def setback(centreline_radius: float, bend_angle: float) -> float:
    """Setback of a bend: from the crossing of the two straights back to where the bend begins.

    s = R tan(theta / 2)

    Args:
        centreline_radius: R, of the bend [m].
        bend_angle: theta, angle through which the tube turns, 0 if straight [rad].

    Returns:
        Setback s [m].

    Valid: R > 0, 0 <= theta < pi; grows without bound towards a turn of 180 degrees.
    Source: [tube-bend-lengths], setback of a bend.
    """
    require_positive(centreline_radius, "the centreline radius")
    require(0 <= bend_angle < math.pi, "the bend angle has to be less than 180 degrees")
    return centreline_radius * math.tan(bend_angle / 2)


def arc_length(centreline_radius: float, bend_angle: float) -> float:
    """Length of tube in a bend, along its centre line.

    l = R theta

    Args:
        centreline_radius: R, of the bend [m].
        bend_angle: theta, angle through which the tube turns, 0 if straight [rad].

    Returns:
        Length of the arc l [m].

    Valid: R > 0, theta >= 0.
    Source: [tube-bend-lengths], length of a bend.
    """
    require_positive(centreline_radius, "the centreline radius")
    require(0 <= bend_angle < math.inf, "the bend angle cannot be below zero")
    return centreline_radius * bend_angle


def extrados_wall(wall_thickness: float, outside_diameter: float, centreline_radius: float) -> float:
    """Wall on the outside of a bend, thinned by stretching.

    t_e = t 2 R / (2 R + D)

    Args:
        wall_thickness: t, of the straight tube [m].
        outside_diameter: D, of the tube [m].
        centreline_radius: R, of the bend [m].

    Returns:
        Wall at the extrados t_e [m].

    Valid: 0 < 2 t < D < 2 R; neutral line on the centre line, no mandrel, no boost.
    Source: [bend-wall-article], wall thickness at the extrados.
    """
    _require_bend(wall_thickness, outside_diameter, centreline_radius)
    return wall_thickness * 2 * centreline_radius / (2 * centreline_radius + outside_diameter)


def intrados_wall(wall_thickness: float, outside_diameter: float, centreline_radius: float) -> float:
    """Wall on the inside of a bend, thickened by squeezing.

    t_i = t 2 R / (2 R - D)

    Args:
        wall_thickness: t, of the straight tube [m].
        outside_diameter: D, of the tube [m].
        centreline_radius: R, of the bend [m].

    Returns:
        Wall at the intrados t_i [m].

    Valid: 0 < 2 t < D < 2 R; neutral line on the centre line, no mandrel, no boost.
    Source: [bend-wall-article], wall thickness at the intrados.
    """
    _require_bend(wall_thickness, outside_diameter, centreline_radius)
    return wall_thickness * 2 * centreline_radius / (2 * centreline_radius - outside_diameter)


def bending_strain(outside_diameter: float, centreline_radius: float) -> float:
    """Strain of the outermost fibre of a tube bent from straight.

    e = D / (2 R)

    Args:
        outside_diameter: D, of the tube [m].
        centreline_radius: R, of the bend [m].

    Returns:
        Strain that the material's elongation has to cover, e [-].

    Valid: 0 < D < 2 R; neutral line on the centre line.
    Source: [firmpedal-derivation], length of the outside of a bend against its centre line.
    """
    require_positive(outside_diameter, "the outside diameter")
    require(
        outside_diameter < 2 * centreline_radius < math.inf, "the bend has to be wider than the tube itself"
    )
    return outside_diameter / (2 * centreline_radius)


def intrados_hoop_factor(centreline_radius: float, mean_radius: float) -> float:
    """Hoop stress on the inside of a bend, as a multiple of that of the straight tube.

    f_i = (2 R - r) / (2 R - 2 r)

    Args:
        centreline_radius: R, of the bend [m].
        mean_radius: r, of the tube's section at mid wall [m].

    Returns:
        Factor on the hoop stress of a straight tube with the wall at that place, f_i [-].

    Valid: 0 < r < R; membrane of a ring-shaped tube.
    Source: [firmpedal-derivation], balance of a sector of a ring-shaped tube.
    """
    _require_ring(centreline_radius, mean_radius)
    return (2 * centreline_radius - mean_radius) / (2 * centreline_radius - 2 * mean_radius)


def extrados_hoop_factor(centreline_radius: float, mean_radius: float) -> float:
    """Hoop stress on the outside of a bend, as a multiple of that of the straight tube.

    f_e = (2 R + r) / (2 R + 2 r)

    Args:
        centreline_radius: R, of the bend [m].
        mean_radius: r, of the tube's section at mid wall [m].

    Returns:
        Factor on the hoop stress of a straight tube with the wall at that place, f_e [-].

    Valid: 0 < r < R; membrane of a ring-shaped tube.
    Source: [firmpedal-derivation], balance of a sector of a ring-shaped tube.
    """
    _require_ring(centreline_radius, mean_radius)
    return (2 * centreline_radius + mean_radius) / (2 * centreline_radius + 2 * mean_radius)


def flare_allowance(flare_diameter: float, outside_diameter: float, half_angle: float) -> float:
    """Length of tube that one flare uses up beyond its length along the axis.

    c = (D_f - D) / 2 (1 / sin(alpha) - 1 / tan(alpha))

    Args:
        flare_diameter: D_f, outside diameter of the flare's edge [m].
        outside_diameter: D, of the tube [m].
        half_angle: alpha, of the flare from the tube's axis [rad].

    Returns:
        Slant length of the flare less its length along the axis, c [m].

    Valid: D_f >= D > 0, 0 < alpha < pi/2; sharp root, the wall keeps its length along the slant.
    Source: [firmpedal-derivation], slant of a cone less its height.
    """
    require_positive(outside_diameter, "the outside diameter")
    require(outside_diameter <= flare_diameter < math.inf, "a flare cannot be smaller than its tube")
    require(0 < half_angle < math.pi / 2, "the flare angle from the axis has to be less than a right angle")
    return (flare_diameter - outside_diameter) / 2 * math.tan(half_angle / 2)


def hole_for_bend(
    centreline_radius: float, outside_diameter: float, panel_thickness: float, bend_angle: float
) -> float:
    """Diameter of the round hole that a bent tube goes through, straights longer than the panel is thick.

    w = R + D / 2 - (R - D / 2) / cos(b) + T / 2 tan(b), b = min(theta / 2, asin(T / (2 R - D)))

    Args:
        centreline_radius: R, of the bend [m].
        outside_diameter: D, of the tube [m].
        panel_thickness: T, of the panel with its grommet [m].
        bend_angle: theta, angle through which the tube turns, 0 if straight [rad].

    Returns:
        Least diameter of the hole, the tube being turned as its bend goes through, w [m].

    Valid: 0 < D < 2 R, 0 <= T < 2 R - D, 0 <= theta < pi; sharp edges, square to the panel.
    Source: [firmpedal-derivation], the bend's outside at mid panel against its inside at both faces.
    """
    require_positive(outside_diameter, "the outside diameter")
    require(
        outside_diameter < 2 * centreline_radius < math.inf, "the bend has to be wider than the tube itself"
    )
    inside = 2 * centreline_radius - outside_diameter
    require(0 <= panel_thickness < inside, "the panel has to be thinner than the inside of the bend is wide")
    require(0 <= bend_angle < math.pi, "a bend turns by less than half a turn")
    half = min(bend_angle / 2, math.asin(panel_thickness / inside))
    outside = centreline_radius + outside_diameter / 2
    return outside - inside / 2 / math.cos(half) + panel_thickness / 2 * math.tan(half)


def hole_for_lean(outside_diameter: float, panel_thickness: float, lean: float) -> float:
    """Diameter of the round hole that a straight tube goes through at a slant.

    w = D / cos(a) + T tan(a)

    Args:
        outside_diameter: D, of the tube [m].
        panel_thickness: T, of the panel with its grommet [m].
        lean: a, between the tube and the square to the panel [rad].

    Returns:
        Least diameter of the hole, w [m].

    Valid: D > 0, T >= 0, 0 <= a < pi/2; sharp edges.
    Source: [firmpedal-derivation], a slanting strip through a gap as deep as the panel.
    """
    require_positive(outside_diameter, "the outside diameter")
    require_not_negative(panel_thickness, "the panel's thickness")
    require(0 <= lean < math.pi / 2, "a tube along the panel does not go through it")
    return outside_diameter / math.cos(lean) + panel_thickness * math.tan(lean)


def _require_bend(wall_thickness: float, outside_diameter: float, centreline_radius: float) -> None:
    require_tube(outside_diameter, wall_thickness)
    require(
        outside_diameter < 2 * centreline_radius < math.inf, "the bend has to be wider than the tube itself"
    )


def _require_ring(centreline_radius: float, mean_radius: float) -> None:
    require(0 < mean_radius < centreline_radius < math.inf, "the bend has to be wider than the tube itself")
