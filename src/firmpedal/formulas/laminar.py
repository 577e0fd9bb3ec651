"""Slow flow through round lines, which is what brake fluid does in them."""

from __future__ import annotations

import math

from firmpedal.formulas._validity import require_not_negative, require_positive, require_tube


def tube_bore(outside_diameter: float, wall_thickness: float) -> float:
    """Bore of a tube.

    d = D - 2 t

    Args:
        outside_diameter: D, of the tube [m].
        wall_thickness: t, of the tube [m].

    Returns:
        Bore d [m].

    Valid: round, 0 < 2 t < D.
    Source: [firmpedal-derivation], two walls less.
    """
    require_tube(outside_diameter, wall_thickness)
    return outside_diameter - 2 * wall_thickness


def laminar_pressure_drop(viscosity: float, density: float, length: float, bore: float, flow: float) -> float:
    """Pressure that slow flow through a round line uses up.

    p = 128 rho nu L Q / (pi d^4)

    Args:
        viscosity: nu, kinematic viscosity of the fluid [m^2/s].
        density: rho, of the fluid [kg/m^3].
        length: L, of the line [m].
        bore: d, of the line [m].
        flow: Q, volume in a time [m^3/s].

    Returns:
        Pressure used up between the ends, p [Pa].

    Valid: laminar, which is a Reynolds number under 2000; long against its bore; nu, rho, d > 0, L, Q >= 0.
    Source: [fluid-power-engineering], flow through a round pipe after Hagen and Poiseuille.
    """
    require_positive(viscosity, "the viscosity")
    require_positive(density, "the density")
    require_not_negative(length, "the length")
    require_positive(bore, "the bore")
    require_not_negative(flow, "the flow")
    return 128 * density * viscosity * length * flow / (math.pi * bore**4)


def reynolds_number(flow: float, bore: float, viscosity: float) -> float:
    """Reynolds number of a flow through a round line; below 2000 it is laminar.

    Re = 4 Q / (pi d nu)

    Args:
        flow: Q, volume in a time [m^3/s].
        bore: d, of the line [m].
        viscosity: nu, kinematic viscosity of the fluid [m^2/s].

    Returns:
        Reynolds number Re [-].

    Valid: Q >= 0, d, nu > 0.
    Source: [fluid-power-engineering], Reynolds number of a round pipe.
    """
    require_not_negative(flow, "the flow")
    require_positive(bore, "the bore")
    require_positive(viscosity, "the viscosity")
    return 4 * flow / (math.pi * bore * viscosity)


def flow_at_pressure(flow: float, drop: float, pressure: float) -> float:
    """Flow that a pressure drives, from one flow whose pressure drop is known.

    Q = Q_0 p / p_0

    Args:
        flow: Q_0, the flow that is known [m^3/s].
        drop: p_0, pressure that it uses up [Pa].
        pressure: p, pressure that is there to be used up [Pa].

    Returns:
        Flow Q [m^3/s].

    Valid: laminar, so that flow goes with pressure; Q_0, p_0 > 0, p >= 0.
    Source: [firmpedal-derivation], laminar flow is in proportion to pressure.
    """
    require_positive(flow, "the known flow")
    require_positive(drop, "the pressure drop")
    require_not_negative(pressure, "the pressure")
    return flow * pressure / drop


def time_to_pass(volume: float, flow: float) -> float:
    """Time in which a volume passes.

    t = V / Q

    Args:
        volume: V, of fluid [m^3].
        flow: Q, volume in a time [m^3/s].

    Returns:
        Time t [s].

    Valid: V >= 0, Q > 0, steady flow.
    Source: [firmpedal-derivation], definition of a flow.
    """
    require_not_negative(volume, "the volume")
    require_positive(flow, "the flow")
    return volume / flow
