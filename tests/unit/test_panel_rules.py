"""Panels and what sits in them or goes through: planted mistakes and their cures."""

from __future__ import annotations

import pytest

from firmpedal.pipeline import evaluate_text
from texts import edited, example, small

HOLE, THICK, CARRY = "panel-hole-without-grommet", "panel-thicker-than-thread", "panel-cannot-carry-fitting"


def fennimoss(thickness: str, material: str) -> str:
    """Fennimoss with its gear fitting in something else than the bracket that its file chose."""
    before, name, after = example("fennimoss").partition("      left_gear_bracket:\n")
    bracket, sides, rest = after.partition("        sides:")
    thin = ("thickness: {value: 0.063, mark: assumed}", f"thickness: {thickness}")
    return (
        before + name + edited(bracket, thin, ("material: aluminium", f"material: {material}")) + sides + rest
    )


def said(text: str, rule: str, option: str | None = None) -> list[str]:
    found = evaluate_text(text, "text", option).findings
    return [f"{item.level} {item.place}: {item.message}" for item in found if item.rule == rule]


def asked(text: str, rule: str, option: str | None = None) -> list[str]:
    unclear = evaluate_text(text, "text", option).not_shown
    return [missing.what for item in unclear if item.rule == rule for missing in item.missing]


def test_a_sandwich_is_too_thick_and_crushes():
    text = fennimoss("0.75", "sandwich")
    (thick, mirrored), (weak, _) = said(text, THICK, "rigid"), said(text, CARRY, "rigid")
    assert "left_gear_bracket is 0.75 in thick" in thick
    assert "right_gear_bracket" in mirrored
    assert weak.startswith("CAUTION")


def test_a_solid_insert_does_not_make_it_thinner():
    text = fennimoss("0.75", "sandwich\n        solid insert: yes")
    assert len(said(text, THICK, "rigid")) == 2
    assert said(text, CARRY, "rigid") == []


def test_inside_the_estimate_the_fitting_in_hand_decides():
    text = fennimoss("0.30", "solid laminate")
    assert said(text, THICK, "rigid") == []
    assert all("grip of AN832-3D" in what for what in asked(text, THICK, "rigid"))
    assert asked(text, THICK, "rigid")


def test_the_floor_of_brindlewick_is_thin_enough():
    for option in ("rigid", "all hose"):
        assert (
            said(example("brindlewick"), THICK, option) == asked(example("brindlewick"), THICK, option) == []
        )


def test_a_thin_panel_of_unknown_thickness_is_not_asked_for():
    assert asked(small("tarnholt"), THICK) == []


def test_what_it_sits_in_is_asked_once_for_each_bulkhead():
    assert len(asked(small("tarnholt"), CARRY)) == 6
    assert asked(small("sedgeholm"), CARRY) == []  # on brackets, not through a panel


@pytest.mark.parametrize("material", ["aluminium", "steel", "stainless steel", "titanium", "plywood"])
def test_what_carries_a_fitting(material):
    assert said(fennimoss("0.063", material), CARRY, "rigid") == []


def test_a_hole_that_nobody_listed_is_owed():
    text = edited(
        example("oatmere"),
        ("      left_run: {grommet: yes}                   # near [10.1, -2.0, 0]\n", ""),
        ("      right_run: {grommet: yes}\n", ""),
        ("    passes:\n", ""),
        (
            "panels: {cabin_floor: {passes: {left_run: {grommet: no}, right_run: {grommet: no}}}}",
            "panels: {}",
        ),
    )
    left, right = said(text, HOLE)
    assert "left_run passes cabin_floor near aft 10.13, right -2.03, up 0" in left
    assert "or a bulkhead fitting, is owed" in right
    assert said(example("oatmere"), HOLE) == []


# A tube down to a bulkhead in the floor, whose seat was measured a little below the floor.
FLOOR = """panels:
  floor: {where: {up: 0}, thickness: 0.040, material: aluminium}
bulkheads:
  plate:
    {at: [10, 0, 0], thickness: 0.040, material: aluminium,
     sides: {above: {seat: SEAT}, below: {seat: [10, 0, -2]}}}
lines:
  run:
    from: cylinder.outlet
    to: plate.above
    made of: tube 5052-O 1/4 x .035
  tail:
    from: plate.below
"""


def on_plate(seat: str, *edits: tuple[str, str]) -> str:
    old = "lines:\n  run:\n    from: cylinder.outlet\n"
    return edited(small("quillfen"), (old, FLOOR.replace("SEAT", seat)), *edits)


def test_a_line_that_ends_at_a_bulkhead_in_the_panel_passes_nothing():
    assert said(on_plate("[10, 0, -0.5]"), HOLE) == []
    (owed,) = said(on_plate("[10, 0, -0.5]", ("at: [10, 0, 0], ", "")), HOLE)
    assert "run passes floor" in owed


def test_it_passes_the_panel_elsewhere_all_the_same():
    (owed,) = said(on_plate("[10, 0, -3]"), HOLE)  # it ends at the side below, and goes through to get there
    assert "run passes floor near aft 10.00, right 0" in owed
