"""A pusher that parks nose down: every answer out of the engine that any file goes through.

Fennimoss is invented. Its right answers were worked out by hand before its file was written, apart from
this program; they are nobody's published data. The way of the pedal hose is assumed, so that of its
length only the band is checked in which a hose for such a pedal lies.
"""

from __future__ import annotations

import math
import re
from collections import Counter
from typing import TYPE_CHECKING

import pytest
from answers import (
    SIDES,
    bends,
    closes,
    developed_length,
    inches,
    joints_by_form,
    line,
    polyline,
    pressures,
    totals,
)

from firmpedal.finding import Level, Verdict
from firmpedal.model.part import Form
from firmpedal.model.stock import LineKind
from firmpedal.pipeline import Evaluation, evaluate_text
from firmpedal.units import to_unit
from texts import edited, example

if TYPE_CHECKING:
    from firmpedal.quantity import Value

# The builder's corners on the left, in inches.
KEEL = [
    *[(7.5, -4.0, 1.0), (12.0, -4.0, 1.0), (14.0, -2.2, -3.0)],
    *[(88.0, -2.2, -1.0), (92.0, -6.0, 3.0), (94.5, -14.0, 7.0)],
]
GEAR = [
    *[(96.6, -15.0, 7.2), (98.5, -18.0, 6.0), (105.0, -32.0, -18.0)],
    *[(107.0, -33.0, -21.5), (108.2, -33.2, -22.6)],
]
BENDER_RADIUS = 0.50
DISC, DISC_RADIUS = (106.0, -34.5, -22.0), 3.2


@pytest.fixture(scope="module")
def rigid() -> Evaluation:
    return evaluate_text(example("fennimoss"), "fennimoss.yaml", "rigid")


@pytest.fixture(scope="module")
def written() -> Evaluation:
    return evaluate_text(example("fennimoss"), "fennimoss.yaml")


class TestWhatToBuy:
    def test_fittings_nuts_and_sleeves_are_exactly_these(self, rigid):
        assert totals(rigid) == {
            "AN822-3D": 2,
            "AN832-3D": 4,
            "AN924-3D": 4,
            "AN823-3D": 2,
            "AN818-3D": 4,
            "AN819-3D": 4,
        }

    def test_two_tubes_and_four_hoses(self, rigid):
        assert Counter(item.kind for item in rigid.laid) == {LineKind.TUBE: 2, LineKind.HOSE: 4}

    def test_joints_by_kind(self, rigid):
        forms = joints_by_form(rigid)
        assert (forms[Form.FLARE_37], forms[Form.PIPE]) == (12, 4)

    def test_every_end_has_its_partner(self, rigid):
        assert closes(rigid)


class TestTheKeelTube:
    @pytest.mark.parametrize("side", SIDES)
    def test_developed_length(self, rigid, side):
        developed = inches(line(rigid, f"{side}_keel").developed_length)
        assert developed == pytest.approx(99.3, abs=0.3)
        assert f"{developed:.2f}" == f"{developed_length(KEEL, BENDER_RADIUS):.2f}"

    @pytest.mark.parametrize("side", SIDES)
    def test_bends(self, rigid, side):
        angles, _ = bends(line(rigid, f"{side}_keel"))
        assert angles == pytest.approx([65.5, 66.9, 52.9, 27.0], abs=0.05)

    def test_rotations_and_their_mirror_image(self, rigid):
        (_, left), (_, right) = (bends(line(rigid, f"{side}_keel")) for side in SIDES)
        assert left == pytest.approx([179.3, 20.4, 44.9], abs=0.05)
        assert right == pytest.approx([-angle for angle in left])

    @pytest.mark.parametrize("side", SIDES)
    def test_clamps(self, rigid, side):
        """At 12 spacing at least 6 on the long straight, 8 to 9 in all."""
        keel = line(rigid, f"{side}_keel")
        straights = [inches(value) for value in keel.tube.straights]
        arcs = [inches(bend.arc) for bend in keel.tube.bends]
        assert straights[2] == pytest.approx(74, abs=1)
        start = sum(straights[:2]) + sum(arcs[:2])
        places = [inches(value) for value in keel.supports.stations]
        assert sum(start < place < start + straights[2] for place in places) >= 6
        assert 8 <= len(places) <= 9
        assert inches(keel.supports.longest_gap) <= 12


class TestHoses:
    @pytest.mark.parametrize("side", SIDES)
    def test_gear_hose(self, rigid, side):
        hose = line(rigid, f"{side}_gear").hose
        assert inches(hose.path_length) == pytest.approx(polyline(GEAR))
        assert inches(hose.path_length) == pytest.approx(38.1, abs=0.05)
        assert inches(hose.least_length) == pytest.approx(40.4, abs=0.05)
        assert 40.5 <= inches(hose.order_length) <= 41.5

    @pytest.mark.parametrize("side", SIDES)
    def test_pedal_hose(self, rigid, side):
        assert 10 <= inches(line(rigid, f"{side}_pedal").order_length) <= 12

    @pytest.mark.parametrize("side", SIDES)
    def test_the_port_swings_with_its_cylinder(self, rigid, side):
        """The builder saw it move by about 0.4."""
        assert inches(line(rigid, f"{side}_pedal").travel.play) == pytest.approx(0.4, abs=0.05)

    def test_how_far_the_gear_hose_keeps_off_the_disc_asks_for_the_bow(self, rigid):
        assert gap_to_disc(rigid).missing[0].place == "moving.left_wheel.gear.on jacks"

    def test_the_gear_hose_keeps_off_the_disc(self):
        """Its last point is nearest, beside the disc's face; off it go half the disc and half the hose."""
        text = edited(example("fennimoss"), ("gear: {on jacks: unknown}", "gear: {on jacks: [0, 0, 0]}"))
        gap = gap_to_disc(evaluate_text(text, "fennimoss.yaml", "rigid"))
        aft, right, up = GEAR[-1]
        assert math.hypot(aft - DISC[0], up - DISC[2]) < DISC_RADIUS
        off = right - DISC[1] - 0.20 / 2
        assert (to_unit(gap.low, "in"), to_unit(gap.high, "in")) == pytest.approx(
            (off - 0.28 / 2, off - 0.22 / 2)
        )


def gap_to_disc(evaluation: Evaluation) -> Value:
    (gap,) = [each for each in evaluation.gaps if (each.line, each.thing.name) == ("left_gear", "left_disc")]
    return gap.distance


class TestPressureAndStroke:
    def test_pressure_at_normal_and_hard_foot(self, rigid):
        assert {made[:2] for made in pressures(rigid)} == {(313, 626)}

    def test_a_smaller_bore_makes_more_pressure_and_takes_more_stroke(self, rigid):
        half = evaluate_text(
            edited(example("fennimoss"), ("bore: 0.625", "bore: 1/2")), "fennimoss.yaml", "rigid"
        )
        assert {made[0] for made in pressures(half)} == {489}
        for evaluation, stroke in ((rigid, 0.16), (half, 0.25)):
            gaps = [inches(budget.gap) for budget in evaluation.results.budgets]
            assert gaps == pytest.approx([stroke] * len(gaps), abs=0.005)
            assert gaps

    def test_the_nylon_uses_up_the_stroke_hot(self, written):
        """Which tells why one brake went to the floor."""
        short = [finding for finding in written.findings if finding.rule == "stroke-short"]
        assert {finding.place for finding in short} == {f"components.{side}_cylinder" for side in SIDES}


class TestVerdict:
    def test_as_written_it_is_not_sound(self, written):
        assert written.verdict is Verdict.NOT_SOUND

    def test_rigid_has_nothing_that_could_hurt_somebody(self, rigid):
        assert rigid.verdict is Verdict.NOT_SHOWN
        assert all(finding.level is not Level.WARNING for finding in rigid.findings)


def other_side(text: str) -> str:
    """Words and points as the aircraft's other side would have them."""
    swapped = re.sub("left|right", lambda found: "right" if found[0] == "left" else "left", text)
    return re.sub(r"(\[-?[\d.]+, )(-?)([\d.]+, )", lambda it: it[1] + ("" if it[2] else "-") + it[3], swapped)


def test_right_is_left_seen_in_a_mirror(rigid):
    """Every finding on one side is there on the other, word for word and figure for figure."""
    said = {
        (item.rule, item.level, item.place, item.message, item.measured.span if item.measured else None)
        for item in rigid.findings
    }
    assert {
        (rule, how, other_side(at), other_side(words), span) for rule, how, at, words, span in said
    } == said
    assert said
