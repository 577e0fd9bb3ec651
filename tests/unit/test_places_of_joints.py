"""Joints in fire, out of reach, side by side and at the wheel; metals and long tube: mistakes and cures."""

from __future__ import annotations

import math

import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.units import to_unit
from texts import edited, example, small

STEEL, SLEEVE, ACCESS = "steel-forward-of-firewall", "fire-sleeve-missing", "joint-without-access"
ELBOWS, METALS, WHEEL, STOCK = (
    "elbows-cannot-turn",
    "dissimilar-metals",
    "fitting-exposed-at-wheel",
    "tube-longer-than-stock",
)


def said(text: str, rule: str, option: str | None = None) -> list[str]:
    found = evaluate_text(text, "text", option).findings
    return [f"{item.level} {item.place}: {item.message}" for item in found if item.rule == rule]


def asked(text: str, rule: str, option: str | None = None) -> list[str]:
    unclear = evaluate_text(text, "text", option).not_shown
    return [missing.what for item in unclear if item.rule == rule for missing in item.missing]


class TestFire:
    def test_the_first_sketch_of_oatmere(self):
        found = said(example("oatmere"), STEEL, "first sketch")
        assert sum("left_firewall lies in engine_side" in words for words in found) == 1
        assert sum("reservoir.left_out lies in engine_side" in words for words in found) == 1
        assert len(found) == 4
        assert len(said(example("oatmere"), SLEEVE, "first sketch")) == 2

    def test_steel_and_a_sleeve_cure_it(self):
        assert said(example("oatmere"), STEEL) == said(example("oatmere"), SLEEVE) == []

    def test_the_cabin_side_may_be_aluminium(self):
        found = said(example("oatmere"), STEEL, "first sketch")
        assert not any("copilot" in words or "valve" in words for words in found)

    def test_plastic_burns_too(self):
        zone = ("lines:\n", "zones: {engine: {where: {up above: 2}, fire: yes}}\nlines:\n")
        text = edited(small("quillfen"), zone, ("tube 5052-O 1/4 x .035", "plastic nylon 1/4 x .040"))
        assert any("run is plastic" in words for words in said(text, STEEL))


class TestAccess:
    @staticmethod
    def wider() -> str:
        """Fennimoss with a keel that is closed up to its forward brackets."""
        before, name, after = example("fennimoss").partition("  keel:\n")
        _, hidden, rest = after.partition("    hidden: yes")
        return f"{before}{name}    where: {{box: [[7, -5, -4], [80, 5, 2]]}}\n{hidden}{rest}"

    def test_a_tube_in_one_piece_may_run_through(self):
        assert (
            said(example("fennimoss"), ACCESS, "rigid") == asked(example("fennimoss"), ACCESS, "rigid") == []
        )

    def test_a_joint_inside_may_not_be(self):
        text = self.wider()
        left, *_ = said(text, ACCESS, "rigid")
        assert left.startswith("WARNING bulkheads.left_bracket")
        assert said(edited(text, ("access: no", "access: yes")), ACCESS, "rigid") == []
        assert asked(edited(text, ("access: no", "access: unknown")), ACCESS, "rigid")


class TestElbows:
    LEFT, RIGHT = "at: [4.0, -0.6, 1.5]", "at: [4.0, 0.6, 1.5]"
    STRAIGHT = "{to fitting: 90 degrees, to end: 0 deg}"
    # The copilot's pedal tubes stand just in reach of other elbows: out of the way, so that they ask nothing.
    TUBES = tuple(
        (f"pilot_{side}_tube, shift: {{right: 21}}", f"pilot_{side}_tube, shift: {{right: 21, aft: 3}}")
        for side in ("left", "right")
    )

    def apart(self, half: float) -> str:
        edits = ((self.LEFT, f"at: [4.0, -{half}, 1.5]"), (self.RIGHT, f"at: [4.0, {half}, 1.5]"))
        return edited(example("oatmere"), *edits, *self.TUBES)

    def test_what_is_needed_is_the_sweep_and_half_the_body(self):
        # AN822-4: leg .89 +/- .10, body .423 to .440: from .79 + .2115 to .99 + .220.
        found = evaluate_text(self.apart(0.45), "text", "first sketch").findings
        (finding,) = [item for item in found if item.rule == ELBOWS]
        assert to_unit(finding.measured.middle, "in") == pytest.approx(0.9)
        assert [to_unit(end, "in") for end in finding.allowed.span] == pytest.approx([1.0015, 1.21])

    def test_between_the_two_the_elbow_in_hand_decides(self):
        assert said(self.apart(0.6), ELBOWS, "first sketch") == []
        found = asked(self.apart(0.6), ELBOWS, "first sketch")
        assert len(found) == 2
        assert all(what.startswith("the outlet leg of AN822-4D at valve.") for what in found)

    def test_far_enough_apart(self):
        text = self.apart(0.61)
        assert said(text, ELBOWS, "first sketch") == asked(text, ELBOWS, "first sketch") == []

    def test_straight_nipples_go_in_side_by_side(self):
        text = self.apart(0.45)
        assert said(text, ELBOWS) == asked(text, ELBOWS) == []

    def test_an_outlet_that_may_reach_a_pedal_tube_is_asked_for(self):
        # The tube is 1.0 in behind the port, where an AN822-4 reaches .79 to .99 in from an axis that stands
        # as far before its seat as the leg is long.
        found = asked(example("oatmere"), ELBOWS)
        assert all("copilot_" in what and "outlet leg of AN822-4D" in what for what in found)
        assert len(found) == 2

    def test_a_port_that_faces_away_is_no_neighbour(self):
        ends = "right_in: {thread: 1/8 NPT female, faces: forward,"
        text = edited(self.apart(0.45), (ends, ends.replace("forward", "up")))
        assert said(text, ELBOWS, "first sketch") == []


class TestMetals:
    NYLON = ("tube 5052-O 1/4 x .035", "plastic nylon 1/4 x .040")

    def caliper(self, metal: str, *edits: tuple[str, str]) -> str:
        return edited(small("quillfen"), ("    floats: no\n", f"    floats: no\n    body: {metal}\n"), *edits)

    @pytest.mark.parametrize("metal", ["aluminium", "steel", "cast iron"])
    def test_what_goes_with_an_aluminium_fitting(self, metal):
        assert said(self.caliper(metal), METALS) == []

    @pytest.mark.parametrize("metal", ["magnesium", "stainless steel"])
    def test_what_does_not(self, metal):
        (found,) = said(self.caliper(metal), METALS)
        assert found.startswith("NOTE components.caliper")

    @pytest.mark.parametrize("metal", ["aluminium", "magnesium"])
    def test_brass_in_light_metal_is_worse(self, metal):
        (found,) = said(self.caliper(metal, self.NYLON), METALS)
        assert found.startswith("CAUTION components.caliper")
        assert said(self.caliper("steel", self.NYLON), METALS) == []

    def test_plated_steel_goes_with_aluminium(self):
        text = self.caliper(
            "aluminium", ("    bend radius: 3/4\n", "    bend radius: 3/4\n    fittings: steel\n")
        )
        assert said(text, METALS) == []

    def test_only_brass_asks_for_the_body(self):
        assert asked(small("quillfen"), METALS) == []
        assert len(asked(edited(small("quillfen"), self.NYLON), METALS)) == 2


class TestWheel:
    LOW = "[106, -33.5, -24.5]"

    def test_the_examples_have_structure_below(self):
        for name, option in (("oatmere", None), ("fennimoss", "rigid")):
            assert said(example(name), WHEEL, option) == asked(example(name), WHEEL, option) == []

    def test_structure_that_is_higher_guards_nothing(self):
        left, right = said(edited(example("fennimoss"), (self.LOW, "[106, -33.5, -22]")), WHEEL, "rigid")
        assert "left_caliper.inlet hangs lower" in left
        assert "right_caliper.inlet" in right

    def test_a_bracket_on_the_axle_belongs_to_the_wheel(self):
        structure = "lowest structure: [7, -34, -30], foremost structure: [0, -34, -30]"
        wheel = f"wheels: {{main: {{caliper: left_caliper, {structure}}}}}\n"
        found = said(example("brindlewick").replace("\nbench:", f"\n{wheel}\nbench:"), WHEEL, "rigid")
        assert any("left_axle hangs lower" in words for words in found)
        assert not any("left_floor" in words or "right_" in words for words in found)

    def test_no_wheels_section_asks_nothing(self):
        assert asked(example("brindlewick"), WHEEL, "rigid") == []


class TestStock:
    def test_the_keel_of_fennimoss(self):
        assert said(example("fennimoss"), STOCK, "rigid") == []
        short = edited(example("fennimoss"), ("longest tube: 12 ft", "longest tube: 6 ft"))
        left, right = said(short, STOCK, "rigid")
        assert left.startswith("CAUTION lines.left_keel")
        assert "72" in right or "6 ft" in right

    def test_the_length_is_the_developed_one(self):
        # Quillfen: 10 down and 6 aft, less two tangents of the bend, plus its arc.
        text = edited(small("quillfen"), ("lines:\n", "bench: {longest tube: 12}\nlines:\n"))
        (finding,) = [item for item in evaluate_text(text, "text").findings if item.rule == STOCK]
        assert to_unit(finding.measured.middle, "in") == pytest.approx(16 - 1.5 + 0.75 * math.pi / 2, abs=0.1)

    def test_where_nothing_is_declared_only_long_tube_is_told(self):
        (note,) = said(small("sedgeholm"), STOCK)
        assert note.startswith("NOTE lines.keel")
        assert said(small("quillfen"), STOCK) == asked(small("quillfen"), STOCK) == []

    def test_a_piece_in_hand_answers_it(self):
        bench = "bench: {tube: {coil: {made of: tube 5052-O 3/16 x .035, pieces: [20 ft]}}}\nlines:\n"
        assert said(edited(small("sedgeholm"), ("lines:\n", bench)), STOCK) == []
