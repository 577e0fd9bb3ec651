"""What the lines weigh, added up once more by hand."""

from __future__ import annotations

import math

import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import edited, small

HOSE = ("made of: tube 5052-O 1/4 x .035\n", "made of: hose -4 PTFE braided\n")


def evaluated(*edits: tuple[str, str]):
    return evaluate_text(edited(small("quillfen"), *edits), "text")


def ring(outside: float, wall: float) -> float:
    return math.pi / 4 * (outside**2 - (outside - 2 * wall) ** 2)


def test_a_tube_by_its_cut_length():
    evaluation = evaluated()
    (line,), (mass,) = evaluation.laid, evaluation.results.masses
    area = ring(0.25 * 0.0254, 0.035 * 0.0254)
    assert mass.middle == pytest.approx(
        area * line.cut_length.middle * line.stock.material.density.middle, rel=1e-9
    )


def test_a_hose_with_both_its_ends():
    evaluation = evaluated(HOSE)
    (line,), (mass,) = evaluation.laid, evaluation.results.masses
    ends = line.stock.end_mass
    for bound in (0, 1):
        per_length = line.stock.mass_per_length.span[bound]
        assert mass.span[bound] == pytest.approx(per_length * line.order_length.middle + 2 * ends.span[bound])


def test_the_volume_of_the_bore():
    (volume,) = evaluated().results.volumes
    (line,) = evaluated().laid
    bore = math.pi / 4 * 0.18**2 * to_unit(line.developed_length.middle, "in")
    assert to_unit(volume.middle, "cu in") == pytest.approx(bore)


def test_everything_together_is_lines_fittings_and_fluid():
    evaluation = evaluated()
    results, density = evaluation.results, evaluation.aircraft.fluid.density
    parts = [part.mass for joint in evaluation.assembly.joints for part in joint.parts]
    fluid = [volume.middle * bound for volume in results.volumes for bound in density.span]
    low = sum(value.low for value in (*results.masses, *parts)) + fluid[0]
    high = sum(value.high for value in (*results.masses, *parts)) + fluid[1]
    assert len(parts) == 6
    assert results.mass.span == pytest.approx((low, high))


def test_no_lines_weigh_nothing():
    text = small("quillfen")
    assert evaluate_text(text[: text.index("components:\n")], "text").results.mass.span == (0.0, 0.0)


def test_an_unknown_fluid_leaves_the_whole_unknown():
    mass = evaluated(("fluid: MIL-PRF-5606", "fluid: unknown")).results.mass
    assert mass.span is None
    assert [missing.place for missing in mass.missing] == ["fluid"]
