"""Tube stress and growth against Hooke's law, the von Mises tensor and thin-wall limits."""

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from firmpedal.formulas import compliance, tube_strength, tube_stress

pressures = st.floats(1e4, 5e7)
strengths = st.floats(1e7, 1e9)
moduli = st.floats(1e8, 3e11)
poisson_ratios = st.floats(0, 0.5)
diameters = st.floats(0.003, 0.03)
wall_shares = st.floats(0.01, 0.49)  # wall as a share of the outside diameter
angles = st.floats(0, 2 * math.pi)

STRESSES = (
    tube_stress.hoop_stress_at_bore,
    tube_stress.von_mises_at_bore,
    tube_stress.tresca_at_bore,
    tube_stress.barlow_stress,
    tube_stress.mean_diameter_stress,
)


@pytest.mark.parametrize("stress", STRESSES, ids=lambda stress: stress.__name__)
@given(p=pressures, diameter=diameters, share=wall_shares, strength=strengths)
def test_doubling_the_pressure_never_raises_a_margin(stress, p, diameter, share, strength):
    wall = share * diameter
    margin = strength / stress(p, diameter, wall) - 1
    doubled = strength / stress(2 * p, diameter, wall) - 1
    assert doubled < margin
    assert doubled + 1 == pytest.approx((margin + 1) / 2, rel=1e-12)


@given(p=pressures, diameter=diameters, share=wall_shares, turns=st.tuples(angles, angles, angles))
def test_von_mises_equals_the_invariant_of_the_turned_stress_tensor(p, diameter, share, turns):
    wall = share * diameter
    principal = np.diag(
        [
            tube_stress.radial_stress_at_bore(p),
            tube_stress.hoop_stress_at_bore(p, diameter, wall),
            tube_stress.axial_stress_closed_ends(p, diameter, wall),
        ]
    )
    turn = _turn(0, turns[0]) @ _turn(1, turns[1]) @ _turn(2, turns[2])
    tensor = turn @ principal @ turn.T
    deviator = tensor - np.trace(tensor) / 3 * np.eye(3)
    expected = math.sqrt(1.5 * float(np.tensordot(deviator, deviator)))
    assert tube_stress.von_mises_at_bore(p, diameter, wall) == pytest.approx(expected, rel=1e-9)


def _turn(axis, angle):
    turn = np.eye(3)
    first, second = [each for each in range(3) if each != axis]
    turn[first, first] = turn[second, second] = math.cos(angle)
    turn[first, second], turn[second, first] = -math.sin(angle), math.sin(angle)
    return turn


@given(strength=strengths, diameter=diameters, share=wall_shares)
def test_at_the_yield_pressure_the_bore_is_at_the_yield_strength(strength, diameter, share):
    pressure = tube_strength.yield_pressure(strength, diameter, share * diameter)
    assert tube_stress.von_mises_at_bore(pressure, diameter, share * diameter) == pytest.approx(strength)


@given(strength=strengths, diameter=diameters, share=wall_shares)
def test_barlow_and_mean_diameter_pressures_undo_their_stresses(strength, diameter, share):
    wall = share * diameter
    barlow = tube_strength.barlow_pressure(strength, diameter, wall)
    assert tube_stress.barlow_stress(barlow, diameter, wall) == pytest.approx(strength)
    assert tube_strength.burst_pressure(strength, diameter, wall) == barlow
    mean = tube_strength.mean_diameter_pressure(strength, diameter, wall)
    assert tube_stress.mean_diameter_stress(mean, diameter, wall) == pytest.approx(strength)


@given(p=pressures, diameter=diameters, share=wall_shares)
def test_tresca_is_hoop_less_radial_and_never_under_von_mises(p, diameter, share):
    wall = share * diameter
    tresca = tube_stress.tresca_at_bore(p, diameter, wall)
    hoop = tube_stress.hoop_stress_at_bore(p, diameter, wall)
    assert tresca == pytest.approx(hoop - tube_stress.radial_stress_at_bore(p))
    assert tresca == pytest.approx(tube_stress.von_mises_at_bore(p, diameter, wall) * 2 / math.sqrt(3))


@given(p=pressures, diameter=diameters, share=wall_shares)
def test_barlow_is_above_the_bore_and_the_mean_is_below_it(p, diameter, share):
    wall = share * diameter
    hoop = tube_stress.hoop_stress_at_bore(p, diameter, wall)
    assert tube_stress.mean_diameter_stress(p, diameter, wall) < hoop
    assert hoop < tube_stress.barlow_stress(p, diameter, wall)


@given(p=pressures, diameter=diameters, share=wall_shares, modulus=moduli, nu=poisson_ratios)
def test_growth_follows_hookes_law_at_the_bore(p, diameter, share, modulus, nu):
    """Twice the hoop strain plus the axial strain, from the stresses and not from the growth formulas."""
    wall = share * diameter
    radial = tube_stress.radial_stress_at_bore(p)
    hoop = tube_stress.hoop_stress_at_bore(p, diameter, wall)

    def growth(axial):
        hoop_strain = (hoop - nu * (radial + axial)) / modulus
        axial_strain = (axial - nu * (hoop + radial)) / modulus
        return 2 * hoop_strain + axial_strain

    tube = (p, diameter, wall)
    shear = compliance.shear_modulus(modulus, nu)
    closed = growth(tube_stress.axial_stress_closed_ends(*tube))
    assert compliance.growth_closed_ends(*tube, modulus, nu) == pytest.approx(closed, rel=1e-9)
    assert compliance.growth_open_ends(*tube, modulus, nu) == pytest.approx(growth(0), rel=1e-9)
    fixed = growth(nu * (hoop + radial))  # the axial stress that keeps the length
    assert compliance.growth_fixed_ends(*tube, shear, nu) == pytest.approx(fixed, rel=1e-9)


@given(p=pressures, diameter=diameters, modulus=moduli, nu=poisson_ratios)
def test_growth_of_a_very_thin_wall_tends_to_the_thin_wall_formulas(p, diameter, modulus, nu):
    """p D / (E t) times 5/4 - nu, 1 - nu/2 and 1 - nu^2; the difference is of the order of t/D."""
    wall = 1e-5 * diameter
    thin = p * (diameter - wall) / (modulus * wall)
    tube = (p, diameter, wall)
    shear = compliance.shear_modulus(modulus, nu)
    closed = compliance.growth_closed_ends(*tube, modulus, nu)
    assert closed == pytest.approx(thin * (1.25 - nu), rel=1e-4)
    assert compliance.growth_open_ends(*tube, modulus, nu) == pytest.approx(thin * (1 - nu / 2), rel=1e-4)
    assert compliance.growth_fixed_ends(*tube, shear, nu) == pytest.approx(thin * (1 - nu**2), rel=1e-4)


@given(volume=st.floats(1e-7, 1e-3), p=pressures, bulk=st.floats(5e8, 5e9))
def test_fluid_gives_less_than_the_straight_line_and_never_more_than_there_is(volume, p, bulk):
    lost = compliance.fluid_compression(volume, p, bulk)
    assert 0 < lost < volume
    assert volume * (p / bulk - (p / bulk) ** 2 / 2) <= lost <= volume * p / bulk


@given(strength=strengths, diameter=diameters, share=wall_shares)
def test_specification_proof_pressure_brings_the_bore_to_the_strength_by_lame(strength, diameter, share):
    wall = share * diameter
    bore = diameter - 2 * wall
    assume(bore > 0)
    proof = tube_strength.specification_proof_pressure(strength, diameter, bore)
    assert tube_stress.hoop_stress_at_bore(proof, diameter, wall) == pytest.approx(strength)
