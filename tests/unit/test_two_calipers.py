"""Two calipers on one wheel: torque, energy and heat by hand, and how the file tells it."""

from types import SimpleNamespace

import pytest
from test_stopping import AIRCRAFT

from firmpedal.analysis.stopping.wheels import braked_wheels
from firmpedal.model.component import SideOf
from firmpedal.pipeline import evaluate_text
from firmpedal.project import read_text
from firmpedal.quantity import Answer
from firmpedal.report.heat import heat_sheet
from firmpedal.report.sheet import Group, Paragraph, Table
from firmpedal.report.stopping import stopping_sheet
from firmpedal.units import from_unit, to_unit

# A second caliper at each wheel, fed by the first; both calipers of a wheel grip one disc.
FIRST = "      inlet: {thread: 1/8 NPT female, faces: forward, seat: [16, -4, -6]}\n"
OVER = "      over: {thread: 1/8 NPT female, faces: forward, seat: [16.5, -4, -6]}\n"
SECOND = """\
  left_second:
    kind: caliper
    side: left
    pistons: {bore: 1-1/2, count per side: 1}
    effective radius: 2.3
    lining friction: 0.3
%s    ports:
      inlet: {thread: 1/8 NPT female, faces: forward, seat: %s}
pedals:
"""
LINE = (
    "  left_over: {from: left_caliper.over, to: left_second.inlet, made of: tube 5052-O 1/4 x .035}\nmirror"
)
WEIGHTS = "    mass: 1.5 lb\n    disc: {mass: 0.80 kg, radius: 3%s}\n"
NEAR = "[20, -4, -9]"
ENERGY = 44471.4  # ft-lbf for each of two wheels, by the rule; a handbook's worked example


def double(keys="", spot=NEAR, disc=None, text=AIRCRAFT):
    """Four calipers on two wheels."""
    weights = "" if disc is None else WEIGHTS % disc
    for old, new in (
        (FIRST, FIRST + OVER),
        ("pedals:\n", SECOND % (keys + weights, spot)),
        ("mirror: [", "mirror: [left_second, left_over, "),
    ):
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    text = text.replace("mirror", LINE, 1)
    first = f"    ports:\n{FIRST}{OVER}"
    assert text.count(first) == 1
    return text.replace(first, weights + first)


def results(text):
    return evaluate_text(text, "text").results


def number(value, unit):
    assert value.exact
    return to_unit(value.middle, unit)


class TestByHand:
    def test_both_torques_add_up_at_the_wheel(self):
        """Twice 1219.3 lbf in at each wheel: 750.4 lbf of drag for two wheels, as with two pistons a side."""
        evaluation = evaluate_text(double(), "text")
        stop = evaluation.results.stopping
        assert number(stop.brakes[0].feet[0].torque, "lbf in") == pytest.approx(1219.3, abs=0.05)
        assert number(stop.feet[0].drag, "lbf") == pytest.approx(750.4, abs=0.05)
        groups = [block for block in stopping_sheet(evaluation).blocks if isinstance(block, Group)]
        tables = [block for group in groups for block in group.blocks if isinstance(block, Table)]
        (table,) = [each for each in tables if "brakes alone" in each.columns]
        assert "2,439 lbf in of torque" in table.rows[0][3]

    def test_the_energy_goes_by_wheels_and_not_by_calipers(self):
        stop = results(double()).stopping
        assert number(stop.stance.wheels, "") == 2
        assert number(stop.rule_energy, "ft-lbf") == pytest.approx(ENERGY, abs=0.5)
        assert number(stop.energy, "ft-lbf") == pytest.approx(ENERGY, abs=0.5)

    def test_a_caliper_with_a_disc_of_its_own_gets_half_and_a_shared_disc_gets_all(self):
        own, open_, shared = (
            results(double(disc=f", own: {answer}")).stopping.energies[0]
            for answer in ("yes", "unknown", "no")
        )
        assert number(own, "ft-lbf") == pytest.approx(ENERGY / 2, abs=0.5)
        for either in (open_, shared):
            ends = [to_unit(end, "ft-lbf") for end in either.span]
            assert ends == pytest.approx([ENERGY / 2, ENERGY], abs=0.5)

    def test_one_shared_disc_warms_as_with_one_caliper_that_takes_it_all(self):
        """60,254 J into 0.80 kg: the disc does not care how many calipers put it in."""
        share, heat = (0.85, 0.97), (460.0, 500.0)
        low, high = 60254 * share[0] / (0.80 * heat[1]), 60254 * share[1] / (0.80 * heat[0])
        ground = "landing speed: 39 kt, taxi drag: 5, hot day: 100"
        brake = results(double(disc=", own: no").replace("landing speed: 39 kt", ground)).heating.brakes[0]
        start = from_unit(100, "degF")
        assert brake.disc_alone.low == pytest.approx(start + low, abs=0.1)
        assert brake.disc_alone.high == pytest.approx(start + high, abs=0.1)

    def test_a_disc_of_its_own_warms_half_as_much(self):
        ground = "landing speed: 39 kt, taxi drag: 5, hot day: 100"
        own, shared = (
            results(double(disc=f", own: {answer}").replace("landing speed: 39 kt", ground)).heating.brakes[0]
            for answer in ("yes", "no")
        )
        start = from_unit(100, "degF")
        assert own.disc_alone.high - start == pytest.approx((shared.disc_alone.high - start) / 2, rel=1e-9)
        either = results(double(disc="").replace("landing speed: 39 kt", ground)).heating.brakes[0]
        assert either.disc_alone.low == pytest.approx(own.disc_alone.low)
        assert either.disc_alone.high == pytest.approx(shared.disc_alone.high)
        assert any("disc of its own" in missing.what for missing in either.to_try)

    def test_the_surface_of_a_shared_disc_is_shared_with_its_mass(self):
        figures = results(double(disc=", own: no")).heating.brakes[0].figures
        assert figures.disc_mass.middle == pytest.approx(0.40)
        assert figures.disc_radius.middle**2 == pytest.approx((3 * 0.0254) ** 2 / 2)


class TestHowTheFileTells:
    @pytest.mark.parametrize(
        ("keys", "spot", "fewest", "most"),
        [
            ("", NEAR, 2, 2),  # in one plane, 5 in apart
            ("", "unknown", 2, 4),  # on one side: one wheel, or twin wheels
            ("", "[16, -11, -6]", 2, 4),  # 7 in across: the other face of a wheel, or another wheel
            ("", "[16, -20, -6]", 4, 4),  # 16 in across: no wheel is as wide
            ("", "[16, -4, -6]", 2, 4),  # in the same spot: a copy that nobody has moved yet
            ("    wheel: other\n", NEAR, 2, 2),  # a word at one of them alone tells nothing; the places do
            ("    wheel: other\n", "unknown", 2, 4),
        ],
    )
    def test_wheels_by_side_and_place(self, keys, spot, fewest, most):
        found = braked_wheels(read_text(double(keys, spot), "text").aircraft)
        assert (len(found.fewest), len(found.most)) == (fewest, most)
        assert found.count.span == (fewest, most)
        assert bool(found.asked) is (fewest != most)

    @pytest.mark.parametrize(("word", "wheels"), [("main", 2), ("other", 4)])
    def test_a_word_at_both_decides_against_any_place(self, word, wheels):
        text = double(f"    wheel: {word}\n", "unknown")
        text = text.replace("    side: left\n    pistons", "    side: left\n    wheel: main\n    pistons", 1)
        found = braked_wheels(read_text(text, "text").aircraft)
        assert len(found.fewest) == len(found.most) == wheels
        assert not found.asked

    def test_the_same_word_on_either_side_is_another_wheel(self):
        text = AIRCRAFT.replace("    side: left\n    pistons", "    side: left\n    wheel: main\n    pistons")
        assert len(braked_wheels(read_text(text, "text").aircraft).fewest) == 2

    def test_two_calipers_without_sides_are_those_of_two_wheels(self):
        text = AIRCRAFT.replace("    side: left\n    pistons", "    pistons")
        assert len(braked_wheels(read_text(text, "text").aircraft).fewest) == 2

    def test_what_is_not_known_is_asked_where_it_matters(self):
        """22,236 to 44,471 ft-lbf for each: a leaflet of 30,000 is over, or it is not."""
        text = double("    leaflet: {energy: 30000 ft-lbf}\n", "unknown")
        evaluation = evaluate_text(text, "text")
        assert "stop-energy-above-rating" not in {finding.rule for finding in evaluation.findings}
        (item, *_) = [each for each in evaluation.not_shown if each.rule == "stop-energy-above-rating"]
        assert "components.left_caliper.wheel" in {missing.place for missing in item.missing}

    @pytest.mark.parametrize(("energy", "answer"), [(50000, Answer.YES), (20000, Answer.NO)])
    def test_outside_the_range_the_verdict_is_sure(self, energy, answer):
        evaluation = evaluate_text(double(f"    leaflet: {{energy: {energy} ft-lbf}}\n"), "text")
        outcomes = [*evaluation.findings, *evaluation.not_shown]
        told = [each for each in outcomes if each.rule == "stop-energy-above-rating"]
        assert bool(told) is (answer is Answer.NO)
        assert not any(each in evaluation.not_shown for each in told)


def test_the_sheets_say_it():
    evaluation = evaluate_text(double(disc=""), "text")
    words = "left_caliper and left_second brake one wheel: their torques add up, and they share its energy."
    for sheet in (stopping_sheet(evaluation), heat_sheet(evaluation)):
        assert words in [block.text for block in sheet.blocks if isinstance(block, Paragraph)]


def test_left_and_right_never_come_together_by_a_third_that_says_no_side():
    """Fewest: the third brakes one of the two wheels; most: a wheel of its own. Never one wheel for all."""
    names = (("a", SideOf.LEFT), ("b", SideOf.CENTRE), ("c", SideOf.RIGHT))
    calipers = [
        SimpleNamespace(name=name, side=side, wheel="", ports=(), place=f"components.{name}")
        for name, side in names
    ]
    found = braked_wheels(SimpleNamespace(calipers=calipers))
    assert found.fewest == (("a", "b"), ("c",))
    assert found.most == (("a",), ("b",), ("c",))
    assert found.count.span == (2, 3)
    assert found.asked
