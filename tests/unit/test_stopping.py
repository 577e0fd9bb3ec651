"""Stopping of whole aircraft: from the file to what each foot gives, and back."""

import math
import re

import numpy as np
import pytest

from firmpedal.analysis.feel.pedals import feel
from firmpedal.analysis.net_pressure import SPRING_AT_REST
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Answer, Mark
from firmpedal.report.packet import packet_sheets
from firmpedal.report.sheet import Group, Table
from firmpedal.report.stopping import TITLE, stopping_sheet
from firmpedal.report.stopping_left_out import LOSSES
from firmpedal.report.stopping_plot import stopping_plot
from firmpedal.report.story import cautions, every_value
from firmpedal.units import to_unit
from texts import example

# Two wheels, each with one piston of 1.5 in; the foot makes 500 psi: 153.398 lbf on a bore of 5/8 at ratio 1.
AIRCRAFT = """
firmpedal: 1
aircraft: {name: Quillfen, gear: nosewheel, brakes: toe, landing weight: 1320 lb, type certificate: no}
units: {length: in, angle: deg, force: lbf, pressure: psi, temperature: degF}
fluid: MIL-PRF-5606
foot: {normal: 153.398 lbf, hard: 200, panic: 250}
on the ground: {tyre radius: 6.5, landing speed: 39 kt}
components:
  left_cylinder: &cylinder
    kind: master cylinder
    side: left
    bore: 5/8
    stroke: 3/4
    pedal: left_pedal
    ports:
      outlet: {thread: 1/8 NPT female, faces: down, seat: [10, -4, 4]}
  left_caliper:
    kind: caliper
    side: left
    pistons: {bore: 1-1/2, count per side: 1}
    effective radius: 2.3
    lining friction: 0.3
    ports:
      inlet: {thread: 1/8 NPT female, faces: forward, seat: [16, -4, -6]}
pedals:
  left_pedal: {side: left, brake: {pad: 5, arm: 5}}
lines:
  left_run: {from: left_cylinder.outlet, to: left_caliper.inlet, made of: tube 5052-O 1/4 x .035}
mirror: [left_cylinder, left_caliper, left_pedal, left_run]
""".replace(" &cylinder", "")
LEFT = AIRCRAFT[AIRCRAFT.index("  left_cylinder:") : AIRCRAFT.index("  left_caliper:")]
STANCE = "wheelbase: 60, mains to cg: 12, cg height: 30"


def stopping(text):
    return evaluate_text(text).results.stopping


def with_ground(words, text=AIRCRAFT):
    return text.replace("landing speed: 39 kt", words)


def tailwheel(words):
    return with_ground(words).replace("gear: nosewheel", "gear: tailwheel")


def in_unit(value, unit):
    assert value.exact
    return to_unit(value.middle, unit)


def test_the_way_from_foot_to_drag_by_hand():
    """500 psi on 1.5 in, friction 0.3 at 2.3 in, tyre 6.5 in: 883.6 lbf, 1219.3 lbf in, 375.2 lbf for two."""
    found = stopping(AIRCRAFT)
    normal = found.feet[0]
    one = found.brakes[0].feet[0]
    assert in_unit(one.pressure, "psi") == pytest.approx(500.0, abs=0.01)
    assert in_unit(one.clamp, "lbf") == pytest.approx(883.6, abs=0.05)
    assert in_unit(one.torque, "lbf in") == pytest.approx(1219.3, abs=0.05)
    assert in_unit(normal.drag, "lbf") == pytest.approx(375.2, abs=0.05)
    assert in_unit(normal.by_brakes, "m/s^2") / 9.80665 == pytest.approx(0.2842, abs=5e-5)


def test_a_second_piston_on_the_same_side_doubles_it():
    two = AIRCRAFT.replace("count per side: 1", "count per side: 2")
    assert in_unit(stopping(two).feet[0].drag, "lbf") == pytest.approx(750.4, abs=0.05)


def test_the_way_back_leads_to_the_same_foot():
    """What is wanted is what the normal foot makes: then the normal foot is needed, and its 500 psi."""
    made = in_unit(stopping(AIRCRAFT).feet[0].by_brakes, "m/s^2")
    found = stopping(with_ground(f"wanted deceleration: {made} m/s^2"))
    assert in_unit(found.wanted.foot, "lbf") == pytest.approx(153.398, rel=1e-9)
    assert in_unit(found.wanted.pressure, "psi") == pytest.approx(500.0, abs=0.01)


def test_without_a_wish_ten_feet_per_second_squared_is_the_yardstick():
    wanted = stopping(AIRCRAFT).stance.wanted
    assert in_unit(wanted, "ft/s^2") == pytest.approx(10.0)
    assert wanted.source == "14cfr25-735"


def test_energies_by_rule_and_by_motion():
    found = stopping(AIRCRAFT)
    assert in_unit(found.rule_energy, "ft-lbf") == pytest.approx(44471, abs=0.5)
    assert in_unit(found.motion_energy, "ft-lbf") == pytest.approx(44441, abs=0.5)
    assert found.energy.middle == found.rule_energy.middle


def test_usual_friction_is_a_range_from_memory_and_the_result_too():
    found = stopping(AIRCRAFT.replace("    lining friction: 0.3\n", ""))
    drag = found.feet[0].drag
    assert found.brakes[0].friction.mark is Mark.MEMORY
    assert to_unit(drag.low, "lbf") == pytest.approx(375.2, abs=0.05)
    assert drag.high / drag.low == pytest.approx(4 / 3)


def test_friction_said_to_be_unknown_is_not_taken_from_memory():
    found = stopping(AIRCRAFT.replace("lining friction: 0.3", "lining friction: unknown"))
    assert not found.feet[0].drag.known
    assert "lining friction of left_caliper" in found.feet[0].drag.missing[0].what


def test_a_leaflet_tells_the_friction():
    """1219.3 lbf in at 500 psi is friction 0.3."""
    leaflet = "leaflet: {torque: 1219.3 lbf in, at pressure: 500}"
    found = stopping(AIRCRAFT.replace("lining friction: 0.3", leaflet))
    assert in_unit(found.brakes[0].friction, "-") == pytest.approx(0.3, abs=5e-5)
    assert found.contradictions == ()


def test_a_leaflet_that_counts_both_sides_is_said_and_not_believed():
    leaflet = "leaflet: {torque: 2438.7 lbf in, at pressure: 500}"
    found = stopping(AIRCRAFT.replace("lining friction: 0.3", leaflet))
    (one, other) = found.contradictions
    assert "left_caliper" in one.words
    assert "right_caliper" in other.words
    assert "both sides" in one.reason
    assert found.brakes[0].friction.span == (0.3, 0.4)


def test_pads_instead_of_a_radius_give_the_range_between_worn_in_and_new():
    """From 1 to 2 in: 1.5 in worn in and 14/9 in new."""
    pads = "pads: {inner radius: 1, outer radius: 2}"
    radius = stopping(AIRCRAFT.replace("effective radius: 2.3", pads)).brakes[0].effective_radius
    assert to_unit(radius.low, "in") == pytest.approx(1.5)
    assert to_unit(radius.high, "in") == pytest.approx(14 / 9)


def test_the_lesser_of_brakes_and_tyres_counts():
    """Wheelbase 60, 12 ahead, 30 up, friction 0.5: 0.5 x 48 / (60 + 15) = 0.32 g; brakes 0.2842 g."""
    found = stopping(with_ground(f"{STANCE}, usual tyre friction: 0.5"))
    assert in_unit(found.limits.usable, "m/s^2") / 9.80665 == pytest.approx(0.32)
    normal, hard = found.feet[:2]
    assert normal.reached.span == normal.by_brakes.span
    assert hard.reached.span == found.limits.usable.span


def test_the_foot_that_locks_the_wheels():
    """Peak friction 0.8: 0.8 x 48 / (60 + 24) = 0.4571 g; the foot goes with it from 0.2842 at 153.4 lbf."""
    found = stopping(with_ground(f"{STANCE}, peak tyre friction: 0.8"))
    assert in_unit(found.lock.foot, "lbf") == pytest.approx(153.398 * 0.8 * 48 / 84 / 0.28424, rel=1e-4)


def test_a_nosewheel_type_has_no_nose_over_limit_and_a_tailwheel_type_has():
    assert stopping(with_ground(STANCE)).nose_over is None
    found = stopping(tailwheel(STANCE))
    assert in_unit(found.limits.nose_over, "m/s^2") / 9.80665 == pytest.approx(12 / 30)
    assert in_unit(found.nose_over.foot, "lbf") == pytest.approx(153.398 * 0.4 / 0.28424, rel=1e-4)


def test_the_centre_of_gravity_from_the_scales():
    weights = "wheelbase: 60, cg height: 30, weight on mains: 1056 lb, weight on nose or tail: 264 lb"
    assert in_unit(stopping(with_ground(weights)).stance.distance, "in") == pytest.approx(12.0)


def test_thrust_against_foot_and_tyres():
    """375.2 lbf are held by the foot that makes 375.2 lbf of drag.

    A level pull 30 in up: 0.3 x 1320 x 48 / (60 + 0.3 x 30) at usual grip, the same with 0.8 at the peak.
    """
    line = "thrust line height: 30, thrust line nose up: 0"
    found = stopping(with_ground(f"{STANCE}, static thrust: 375.2, {line}"))
    assert in_unit(found.hold.foot, "lbf") == pytest.approx(153.398, rel=2e-4)
    assert in_unit(found.run_up.pull, "lbf") == pytest.approx(375.2)
    assert to_unit(found.run_up.holds.low, "lbf") == pytest.approx(0.3 * 1320 * 48 / 69)
    assert to_unit(found.run_up.holds.high, "lbf") == pytest.approx(0.8 * 1320 * 48 / 84)


@pytest.mark.parametrize(
    ("thrust", "height", "words"),
    [
        (275, "30", "yes"),
        (276, "30", "not shown"),
        (600, "30", "not shown"),
        (604, "30", "no"),
        (200, "unknown", "not shown"),
        (844, "unknown", "not shown"),
        (846, "unknown", "no"),
    ],
)
def test_the_ground_surely_holds_a_run_up_or_not_or_nobody_knows(thrust, height, words):
    """30 in up 275.5 lbf are held at usual grip and 603.4 at the peak; 844.8 where the pull has no arm."""
    line = f"static thrust: {thrust}, thrust line height: {height}, thrust line nose up: 0"
    sheet = stopping_sheet(evaluate_text(with_ground(f"{STANCE}, {line}")))
    groups = [block for block in sheet.blocks if isinstance(block, Group)]
    tables = [each for group in groups for each in group.blocks if isinstance(each, Table)]
    (needs,) = [each for each in tables if each.columns[0] == "for"]
    assert needs.rows[1][-1] == words


def test_what_is_unknown_stays_unknown_and_says_what_to_measure():
    bare = re.sub(r"on the ground: .*\n", "", AIRCRAFT).replace("    effective radius: 2.3\n", "")
    found = stopping(bare)
    asked = " ".join(missing.what for missing in found.wanted.foot.missing)
    assert "effective radius of left_caliper" in asked
    assert "tyre radius: from the axle to the ground" in asked


def test_a_file_that_says_nothing_of_braking_is_left_in_peace():
    bare = re.sub(r"on the ground: .*\n", "", AIRCRAFT)
    bare = re.sub(r"    (effective radius|lining friction): .*\n", "", bare)
    evaluation = evaluate_text(bare)
    assert not evaluation.results.stopping.asked
    rules = {item.rule for item in (*evaluation.findings, *evaluation.not_shown)}
    assert not rules & {"stop-too-weak", "run-up-not-held", "noses-over", "stop-energy-above-rating"}
    assert TITLE not in {sheet.title for sheet in packet_sheets(evaluation)}
    assert stopping_plot(evaluation.results.stopping, evaluation.display) is None


@pytest.mark.parametrize(
    "words",
    [
        "effective radius: 2.3",
        "lining friction: 0.3",
        "pads: {inner radius: 2}",
        "leaflet: {torque: 1200 lbf in}",
        "leaflet: {energy: 50000 ft-lbf}",
    ],
)
def test_one_figure_of_a_brake_is_enough_to_be_asked_about_stopping(words):
    bare = re.sub(r"on the ground: .*\n|    lining friction: .*\n", "", AIRCRAFT)
    assert stopping(bare.replace("effective radius: 2.3", words)).asked


def test_the_same_file_with_a_stance_has_its_sheet_in_the_packet():
    evaluation = evaluate_text(with_ground(STANCE))
    assert TITLE in {sheet.title for sheet in packet_sheets(evaluation)}
    assert stopping_plot(evaluation.results.stopping, evaluation.display) is not None
    assert stopping_sheet(evaluation).title == TITLE


def test_every_figure_can_be_asked_for_by_its_place():
    places = every_value(evaluate_text(with_ground(STANCE)))
    for place in ("on the ground.wanted stop.foot", "on the ground.braking.hard.deceleration"):
        assert places[place][0].step is not None


def test_more_foot_never_stops_it_less():
    found = stopping(with_ground(STANCE))
    lows = [at.reached.low for at in found.feet]
    assert lows == sorted(lows)


class TestSpringAndSeals:
    """Bore 5/8 in, 0.306796 sq in; 12 lbf of friction, and a spring of 10 lbf at rest."""

    HELD = ("    stroke: 3/4\n", "    stroke: 3/4\n    seal friction: 12\n    return spring: {at rest: 10}\n")
    RISING = (HELD[0], HELD[1].replace("at rest: 10", "at rest: 10, pressed: 25"))
    AREA = 0.25 * math.pi * 0.625**2

    def test_they_are_taken_off_by_hand(self):
        """153.398 - 22 lbf make 428.29 psi; 756.87 lbf of clamping, 321.4 lbf of drag on two wheels."""
        found = stopping(AIRCRAFT.replace(*self.HELD))
        one, normal = found.brakes[0].feet[0], found.feet[0]
        assert in_unit(one.pressure, "psi") == pytest.approx(428.29, abs=0.01)
        assert in_unit(one.clamp, "lbf") == pytest.approx(756.87, abs=0.05)
        assert in_unit(normal.drag, "lbf") == pytest.approx(321.4, abs=0.05)
        assert found.losses is Answer.YES

    def test_the_way_back_puts_them_on_again(self):
        text = AIRCRAFT.replace(*self.HELD)
        made = in_unit(stopping(text).feet[0].by_brakes, "m/s^2")
        found = stopping(with_ground(f"wanted deceleration: {made} m/s^2", text))
        assert in_unit(found.wanted.foot, "lbf") == pytest.approx(153.398, rel=1e-9)
        assert in_unit(found.wanted.pressure, "psi") == pytest.approx(428.29, abs=0.01)
        assert in_unit(found.begins, "lbf") == pytest.approx(22.0)

    def test_the_lines_are_still_held_against_the_whole_foot(self):
        results = evaluate_text(AIRCRAFT.replace(*self.HELD)).results
        assert in_unit(results.pressure_of("left_run").at("normal"), "psi") == pytest.approx(500.0, abs=0.01)

    @pytest.mark.parametrize("gap", ["pad gap: 0.02", "pad gap: 0.01 to 0.03"])
    def test_the_brakes_get_what_the_curve_of_the_pedal_shows(self, gap):
        """Pressure against foot from the curves of the pedal, read between their points."""
        text = AIRCRAFT.replace(*self.RISING).replace("    effective", f"    {gap}\n    effective")
        results = evaluate_text(text + "bench: {bend radius: 0.75}\n").results
        found = feel(results.presses[0], results.forces)
        firm, soft = ((found.curves.force[n], found.curves.pressure[n]) for n in (0, 1))
        for at, brake in zip(results.stopping.feet, results.stopping.brakes[0].feet, strict=True):
            for (force, pressure), bound in ((firm, brake.pressure.high), (soft, brake.pressure.low)):
                assert bound == pytest.approx(np.interp(at.force.middle, force, pressure), rel=2e-4)

    def test_where_the_stroke_is_not_known_the_spring_is_anywhere(self):
        """From 10 lbf at rest to 25 at the end."""
        found = stopping(AIRCRAFT.replace(*self.RISING))
        pressure = found.brakes[0].feet[0].pressure
        assert to_unit(pressure.high, "psi") == pytest.approx((153.398 - 22) / self.AREA)
        assert to_unit(pressure.low, "psi") == pytest.approx((153.398 - 37) / self.AREA)

    @pytest.mark.parametrize("pressed", [10, 15, 40])
    def test_a_spring_given_at_rest_alone_gives_bounds(self, pressed):
        """Whatever it is at the end, if no less than 10 lbf: no more drag, and no less of a foot."""
        rising = AIRCRAFT.replace(
            self.HELD[0], self.HELD[1].replace("rest: 10", f"rest: 10, pressed: {pressed}")
        )
        alone, given = stopping(AIRCRAFT.replace(*self.HELD)), stopping(rising)
        for most, found in zip(alone.feet, given.feet, strict=True):
            assert found.drag.high <= most.drag.high * (1 + 1e-12)
        assert given.wanted.foot.low >= alone.wanted.foot.low * (1 - 1e-12)

    def test_a_spring_given_at_rest_alone_is_said_to_be_a_bound_in_the_sum_and_on_the_sheet(self):
        words = SPRING_AT_REST.format(name="left_cylinder")
        alone = evaluate_text(AIRCRAFT.replace(*self.HELD))
        rising = evaluate_text(AIRCRAFT.replace(*self.RISING))
        for evaluation, said in ((alone, True), (rising, False)):
            stop = evaluation.results.stopping
            for value in (stop.brakes[0].feet[0].pressure, stop.wanted.foot, stop.feet[0].drag):
                assert (words in cautions(value)) is said
            sheet = str(stopping_sheet(evaluation))
            assert ("left_cylinder and right_cylinder is given at rest alone" in sheet) is said

    def test_what_is_not_given_is_said(self):
        evaluation = evaluate_text(AIRCRAFT)
        assert evaluation.results.stopping.losses is Answer.NO
        assert LOSSES[Answer.NO] in str(stopping_sheet(evaluation))


def test_two_wheels_of_which_one_has_the_larger_cylinder():
    """500 psi and 781.25 psi: together 480.7 lbf at the normal foot, and back to both from there."""
    right = LEFT.replace("left", "right").replace("-4", "4").replace("bore: 5/8", "bore: 1/2")
    made_of = "made of: tube 5052-O 1/4 x .035"
    run = f"  right_run: {{from: right_cylinder.outlet, to: right_caliper.inlet, {made_of}}}"
    text = AIRCRAFT.replace(LEFT, LEFT + right).replace("mirror: ", f"{run}\nmirror: ")
    text = text.replace("[left_cylinder, left_caliper, left_pedal, left_run]", "[left_caliper, left_pedal]")
    made = in_unit(stopping(text).feet[0].by_brakes, "m/s^2")
    assert made / 9.80665 * 1320 == pytest.approx(375.2 / 2 * (1 + (5 / 4) ** 2), abs=0.05)
    wanted = stopping(with_ground(f"wanted deceleration: {made} m/s^2", text)).wanted
    assert in_unit(wanted.foot, "lbf") == pytest.approx(153.398)
    assert [in_unit(each, "psi") for each in wanted.pressures] == pytest.approx([500.0, 781.25], abs=0.02)


def test_two_pedals_of_two_seats_press_as_the_harder_one():
    """A second cylinder of a smaller bore on the same line sets the pressure."""
    second = """
  left_second:
    kind: master cylinder
    side: left
    bore: 1/2
    stroke: 3/4
    pedal: left_pedal
    ports:
      outlet: {thread: 1/8 NPT female, faces: down, seat: [2, -4, 4]}
"""
    text = AIRCRAFT.replace("\n  left_caliper:", f"{second}  left_caliper:")
    text = text.replace(
        "      inlet: {thread",
        "      other: {thread: 1/8 NPT female, seat: [16, -5, -6]}\n      inlet: {thread",
    )
    text = text.replace(
        "mirror:",
        "  left_more: {like: left_run, from: left_second.outlet, to: left_caliper.other}\nmirror:",
    )
    found = stopping(text)
    pressure = in_unit(found.brakes[0].feet[0].pressure, "psi")
    assert pressure == pytest.approx(500 * (5 / 8) ** 2 / (1 / 2) ** 2, abs=0.02)


def test_a_range_of_weight_stays_a_range_and_the_verdict_waits_for_it():
    text = AIRCRAFT.replace("landing weight: 1320 lb", "landing weight: 1200 to 1700 lb")
    found = stopping(text)
    assert not found.wanted.foot.exact
    assert found.wanted.foot.at_most(found.feet[1].force) is Answer.UNKNOWN


def test_nothing_but_calipers_is_asked_where_there_is_none():
    text = """
firmpedal: 1
aircraft: {name: Quillfen, gear: tailwheel, brakes: toe, landing weight: 900 lb, type certificate: no}
units: {length: in}
on the ground: {tyre radius: 6}
components: {}
pedals: {}
lines: {}
"""
    found = stopping(text)
    assert any("calipers" in missing.what for missing in found.wanted.foot.missing)


def test_a_tailwheel_type_gets_no_more_of_the_ground_than_what_lifts_its_tail():
    """Moments about the main wheels: g b / h, 15 in behind them and 34 in up: less than dry grip."""
    found = evaluate_text(example("brindlewick"), "brindlewick.yaml").results.stopping.limits
    tips = 9.80665 * 15 / 34
    assert found.nose_over.span == pytest.approx((tips, tips))
    assert found.usual.high > tips
    assert found.usable.high == pytest.approx(tips)
