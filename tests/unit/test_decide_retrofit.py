"""From one option to another: what stays, what comes off, what to buy, and the work in order."""

from __future__ import annotations

from collections import Counter

import pytest
from evaluated import words
from options_text import TEXT, thistlemoor

from firmpedal.decide.retrofit import Retrofit, retrofit
from firmpedal.decide.step import Action, Phase
from firmpedal.pipeline import evaluate_text
from firmpedal.report.retrofit import retrofit_sheet
from firmpedal.report.sheet import Bullets, Paragraph
from texts import edited
from texts import example as text_of


def to(option: str | None, start: str | None = None) -> Retrofit:
    return retrofit(thistlemoor(start), thistlemoor(option))


def names(pieces) -> Counter[str]:
    return Counter(piece.designation for piece in pieces)


def removed(plan) -> Counter[str]:
    return names(item.piece for item in plan.remove)


def kept(plan) -> Counter[str]:
    return names(pair.after for pair in plan.keep)


def reused(plan) -> Counter[str]:
    return names(pair.after for pair in plan.reuse)


def steps(plan, action: Action):
    return [step for step in plan.steps if step.action is action]


class TestNothingToDo:
    @pytest.mark.parametrize("option", ["no change", "leg renamed"])
    def test_the_same_thing_by_another_name_is_the_same_thing(self, option):
        plan = to(option)
        assert plan.empty
        assert (plan.reuse, plan.remove, plan.buy, plan.gauge) == ((), (), (), ())

    def test_it_is_said_in_a_word(self):
        (block,) = retrofit_sheet(thistlemoor(), thistlemoor("no change")).blocks
        assert isinstance(block, Paragraph)
        assert block.text == "Nothing to do from as written to no change."


class TestALineChanged:
    def test_nuts_and_sleeves_go_with_their_tube(self):
        plan = to("leg moved")
        assert names(plan.buy) == {"AN818-4D": 2, "AN819-4D": 2, "tube 5052-O 1/4 x .035": 1}
        reasons = {item.piece.designation: item.why_not for item in plan.remove}
        assert "flare" in reasons["AN818-4D"]
        assert "flare" in reasons["AN819-4D"]

    def test_what_they_are_screwed_to_stays_and_its_cone_is_looked_at(self):
        plan = to("leg moved")
        assert kept(plan)["AN832-4D"] == kept(plan)["AN924-4D"] == 1
        assert {step.subject for step in steps(plan, Action.LOOK_CONE)} == {"floor", "caliper.inlet"}
        assert plan.gauge == ()  # nothing is unscrewed from a taper thread

    def test_clamps_that_fit_may_go_on_again(self):
        plan = to("leg moved")
        assert set(reused(plan)) == {"cushioned clamp 1/4 in"}
        assert all("cushion" in pair.look for pair in plan.reuse)

    def test_the_other_line_at_the_bulkhead_is_joined_again(self):
        assert [step.subject for step in steps(to("leg moved"), Action.JOIN_AGAIN)] == ["pedal"]

    def test_a_hose_of_the_same_length_may_be_laid_another_way(self):
        plan = to("hose swung")
        assert reused(plan) == {"hose -4 PTFE braided": 1}
        assert (plan.buy, plan.remove) == ((), ())

    def test_a_hose_of_another_length_may_not(self):
        other = evaluate_text(edited(TEXT, ("via: [[9, 0, 3]]", "via: [[4, 0, 3]]")), "text", "hose swung")
        plan = retrofit(thistlemoor(), other)
        assert names(plan.buy)["hose -4 PTFE braided"] == removed(plan)["hose -4 PTFE braided"] == 1
        assert not plan.reuse

    def test_an_elbow_that_stays_in_its_taper_thread_may_have_to_turn(self):
        assert [turn.kept.owner for turn in to("hose swung").turn] == ["cylinder.outlet"]
        assert to("leg moved").turn == ()


class TestLinesAddedAndRemoved:
    def test_one_hose_in_the_place_of_two_lines(self):
        plan = to("one hose")
        assert {step.subject for step in steps(plan, Action.TAKE_LINE)} == {"pedal", "leg"}
        assert [step.subject for step in steps(plan, Action.FIT_LINE)] == ["whole"]
        assert kept(plan)["AN816-4D"] == 2  # of the tank and the caliper: nobody touches them
        assert {name: count for name, count in names(plan.buy).items() if "clamp" not in name} == {
            "AN816-4D": 1,
            "hose -4 PTFE braided": 1,
        }
        assert [gauge.port for gauge in plan.gauge] == ["cylinder.outlet"]

    def test_the_bulkhead_leaves_a_hole(self):
        assert [step.subject for step in steps(to("one hose"), Action.CLOSE_HOLE)] == ["floor"]

    def test_and_back_again_all_that_went_is_bought_or_made(self):
        there, back = to("one hose"), to(None, "one hose")
        assert removed(there) == names(back.buy)
        assert names(there.buy) == removed(back)


class TestAnotherSize:
    def test_nothing_of_the_old_size_is_used_in_the_circuit(self):
        plan = to("dash 3")
        assert not plan.reuse
        assert kept(plan) == {"AN816-4D": 1, "AN823-4D": 1, "hose -4 PTFE braided": 1}  # the feed
        assert not any(name.endswith("-4D") for name in names(plan.buy))

    def test_every_port_of_it_is_gauged(self):
        found = {gauge.port: (gauge.old.designation, gauge.new.designation) for gauge in to("dash 3").gauge}
        assert found == {
            "cylinder.outlet": ("AN823-4D", "AN823-3D"),
            "caliper.inlet": ("AN816-4D", "AN816-3D"),
        }

    def test_a_good_thread_takes_this_many_turns_by_hand(self):
        """4 to 4.5: pipe thread article; L1 0.1615 in over a pitch of 1/27 in is 4.36, ASME B1.20.1."""
        for gauge in to("dash 3").gauge:
            assert gauge.by_hand is not None
            assert abs(gauge.by_hand.middle - 0.1615 * 27) < 0.5

    def test_the_hole_was_made_for_the_other_size(self):
        (step,) = steps(to("dash 3"), Action.FIT_BULKHEAD)
        assert step.about == ("AN832-4D",)


class TestPortsLeftOver:
    def test_a_port_without_its_line_is_plugged(self):
        plan = to("own fluid")
        assert names(plan.buy) == {"AN932-1D": 1}
        assert [(step.phase, step.subject) for step in steps(plan, Action.PLUG)] == [
            (Phase.CLOSE, "cylinder.inlet")
        ]
        assert [gauge.port for gauge in plan.gauge] == ["cylinder.inlet"]  # the plug has a taper thread too

    def test_the_reservoir_comes_off(self):
        assert [step.subject for step in steps(to("own fluid"), Action.TAKE_COMPONENT)] == ["tank"]

    def test_a_line_that_no_cylinder_presses_on_is_drained_too(self):
        assert [step.about for step in steps(to("own fluid"), Action.DRAIN)] == [("feed",)]

    def test_a_port_that_nothing_closes_is_named_with_the_reason(self):
        plan = to("vented")
        assert plan.buy == ()
        (step,) = steps(plan, Action.LEFT_OPEN)
        assert (step.subject, step.about) == ("cylinder.inlet", ("a breather is in it",))


class TestMetals:
    def test_aluminium_left_in_beside_new_steel(self):
        found = {
            (mixed.kept.designation, mixed.partner, mixed.partner_metal) for mixed in to("steel leg").metals
        }
        assert ("AN832-4D", "AN818-4", "steel") in found
        assert all(mixed.metal == "aluminium" for mixed in to("steel leg").metals)

    @pytest.mark.parametrize("option", ["leg moved", "one hose", "dash 3", "floor moved", "bigger bore"])
    def test_like_with_like_is_not_spoken_of(self, option):
        assert to(option).metals == ()

    def test_metals_that_were_mixed_before_and_stay_untouched_are_not_news(self):
        assert to("steel leg", "steel leg").metals == ()


class TestMovedAndReplaced:
    def test_a_bulkhead_fitting_may_move_with_its_bulkhead(self):
        plan = to("floor moved")
        assert reused(plan)["AN832-4D"] == reused(plan)["AN924-4D"] == 1
        looks = {pair.before.designation: pair.look for pair in plan.reuse}
        assert "cone" in looks["AN832-4D"]

    def test_what_goes_from_the_old_cylinder_to_the_new_one_waits_for_it(self):
        plan = to("bigger bore")
        assert reused(plan) == {"AN823-4D": 2}
        assert all("sealant" in pair.look for pair in plan.reuse)
        bench = steps(plan, Action.FIT_ON_BENCH)
        assert {(step.phase, step.beforehand) for step in bench} == {(Phase.FIXED, False)}
        assert plan.gauge == ()  # the new cylinder's threads are new

    def test_what_is_new_for_a_new_component_is_fitted_ahead(self):
        text = edited(
            TEXT,
            (
                "  bigger bore: {components",
                "  bigger bore: {lines: {pedal: {from fitting: straight}}, components",
            ),
        )
        plan = retrofit(thistlemoor(), evaluate_text(text, "text", "bigger bore"))
        ahead = [step for step in steps(plan, Action.FIT_ON_BENCH) if step.beforehand]
        assert [(step.subject, step.parts) for step in ahead] == [("cylinder.outlet", ("AN816-4D",))]

    def test_a_figure_that_somebody_measured_is_no_new_component(self):
        text = edited(
            TEXT,
            ("  no change: {fluid: MIL-PRF-5606}", "  no change: {components: {caliper: {pad gap: 0.03}}}"),
        )
        assert retrofit(thistlemoor(), evaluate_text(text, "text", "no change")).empty


class TestPlastic:
    def test_another_plastic_line_on_the_same_fittings(self):
        """The bodies stay in their ports, so nobody unscrews them; what sat on the old plastic is new."""
        plan = to("other nylon", "nylon")
        assert names(plan.buy)["plastic nylon 1/4 x .040"] == 1
        assert kept(plan)["COMP-S-1/4x1/8"] == 2
        assert not plan.reuse
        assert plan.gauge == ()

    def test_compression_fittings_that_come_off_are_never_used_again(self):
        plan = to("nylon", "one hose")
        back = retrofit(thistlemoor("nylon"), thistlemoor("one hose"))
        assert names(plan.buy)["COMP-S-1/4x1/8"] == removed(back)["COMP-S-1/4x1/8"] == 2
        assert not [pair for pair in back.reuse if "COMP" in pair.before.designation]


class TestWork:
    def test_phases_come_in_their_order(self):
        order = list(Phase)
        for option in ("one hose", "dash 3", "bigger bore", "own fluid"):
            phases = [order.index(step.phase) for step in to(option).steps]
            assert phases == sorted(phases)

    def test_only_what_needs_no_opened_line_is_marked_for_beforehand(self):
        for step in to("dash 3").steps:
            assert step.beforehand == (step.phase is Phase.READY)

    def test_wheels_are_chocked_before_anything_is_drained(self):
        actions = [step.action for step in to("one hose").steps]
        assert actions.index(Action.CHOCK) < actions.index(Action.DRAIN) < actions.index(Action.TAKE_LINE)

    def test_tubes_before_hoses(self):
        assert [step.subject for step in steps(to("dash 3"), Action.FIT_LINE)] == ["leg", "pedal"]

    def test_everything_that_was_touched_is_proved(self):
        (step,) = steps(to("dash 3"), Action.LEAK_CHECK)
        assert set(step.about) == {"cylinder.outlet", "floor", "caliper.inlet"}
        (step,) = steps(to("hose swung"), Action.LEAK_CHECK)
        assert set(step.about) == {"cylinder.outlet", "floor"}

    def test_another_fluid_is_said(self):
        text = edited(TEXT, ("leg moved: {lines", "leg moved: {fluid: MIL-PRF-83282, lines"))
        plan = retrofit(thistlemoor(), evaluate_text(text, "text", "leg moved"))
        (step,) = steps(plan, Action.FLUSH)
        assert (step.subject, step.about) == ("MIL-PRF-83282", ("MIL-PRF-5606",))
        assert steps(to("leg moved"), Action.FLUSH) == []


class TestSheet:
    def test_every_step_has_a_box_and_words(self):
        for option in (
            "one hose",
            "dash 3",
            "steel leg",
            "own fluid",
            "vented",
            "floor moved",
            "bigger bore",
        ):
            sheet, plan = retrofit_sheet(thistlemoor(), thistlemoor(option)), to(option)
            items = [
                item
                for block in sheet.blocks
                if isinstance(block, Bullets) and block.boxes
                for item in block.items
            ]
            assert len(items) == len(plan.steps)
            assert all(item.endswith(".") and "unknown" not in item for item in items)

    def test_mixed_metals_are_a_caution(self):
        sheet = retrofit_sheet(thistlemoor(), thistlemoor("steel leg"))
        said = [
            block.text for block in sheet.blocks if isinstance(block, Paragraph) and block.tone == "CAUTION"
        ]
        assert any("AN832-4D at floor stays and is of aluminium" in text and "steel" in text for text in said)


class TestAClosedPlace:
    """A tube through a keel that nobody gets at from the side, and old line in laminate."""

    TEXT = text_of("fennimoss")

    def plan(self, *changes):
        text = edited(self.TEXT, *changes)
        before, after = (evaluate_text(text, "fennimoss", option) for option in (None, "rigid"))
        return retrofit(before, after), words(retrofit_sheet(before, after)), after

    def test_the_steps_follow_the_finding(self):
        plan, said, after = self.plan()
        found = [each for each in after.findings if each.rule == "thread-in-before-bending"]
        assert {each.place for each in found} == {"lines.left_keel", "lines.right_keel"}
        begun, ended = steps(plan, Action.MAKE_IN_PART), steps(plan, Action.THREAD_IN)
        assert [step.subject for step in begun] == ["left_keel", "right_keel"]
        assert [step.subject for step in ended] == ["left_keel", "right_keel"]
        assert not steps(plan, Action.MAKE)
        for step, each in zip(begun, found, strict=True):
            assert f"thread it in before {step.about[0]} are made" in each.tries[0]
        assert "Cut, bend and flare" not in said

    def test_what_can_be_reached_is_made_on_the_bench(self):
        plan, said, after = self.plan(("access: no", "access: yes"))
        assert not [each for each in after.findings if each.rule == "thread-in-before-bending"]
        assert len(steps(plan, Action.MAKE)) == 2
        assert not steps(plan, Action.MAKE_IN_PART)
        assert "Cut, bend and flare" in said

    def test_what_nobody_knows_is_looked_at_first(self):
        _, said, after = self.plan(("access: no", "access: unknown"))
        assert any(each.rule == "thread-in-before-bending" for each in after.not_shown)
        assert "See first whether it can be put in from the side" in said

    def test_what_is_glassed_in_is_not_taken_off(self):
        plan, said, _ = self.plan()
        assert [step.subject for step in steps(plan, Action.LEAVE_LINE)] == ["left_line", "right_line"]
        assert not steps(plan, Action.TAKE_LINE)
        assert "cap it at both ends" in said
        assert "Keep it whole as a pattern" not in said
        assert "Glassed in, and so stays where it is, shut off: left_line and right_line." in said

    def test_what_clamps_hold_is_taken_off(self):
        plan, said, _ = self.plan(("support: glassed in", "support: nothing"))
        assert [step.subject for step in steps(plan, Action.TAKE_LINE)] == ["left_line", "right_line"]
        assert "Glassed in" not in said
