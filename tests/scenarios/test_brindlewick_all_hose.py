"""The first aircraft with hose all the way below the floor: the fewest joints of its ways out of nylon.

Brindlewick is invented. Its right answers were worked out by hand before the program was written; they
are nobody's published data.
"""

from __future__ import annotations

import itertools
import math
from collections import Counter

import pytest

from firmpedal.finding import Level, Verdict
from firmpedal.model.part import Form
from firmpedal.model.stock import LineKind
from firmpedal.pipeline import Evaluation, evaluate_text
from firmpedal.report.parts import parts_list
from firmpedal.units import to_unit
from texts import edited, example

OPTION = "all hose"
FITTINGS = ("fitting", "jam nut", "coupling nut", "sleeve", "washer", "cap", "other")
SIDES = ("left", "right")
# The builder's corners of the hose down the leg, in inches, from the floor to the caliper.
LEG = [
    *[(7.0, -9.0, -0.9), (7.0, -9.0, -3.2), (9.0, -11.6, -5.2), (5.6, -32.2, -28.6)],
    *[(7.6, -33.9, -33.2), (9.4, -33.4, -34.4), (10.2, -32.8, -32.6), (9.4, -32.6, -31.4)],
]
MOST_BETWEEN_CLAMPS = 24.0


@pytest.fixture(scope="module")
def all_hose() -> Evaluation:
    return evaluate_text(example("brindlewick"), "brindlewick.yaml", OPTION)


def inches(number: float) -> float:
    return to_unit(number, "in")


def line(evaluation, name):
    return next(item for item in evaluation.laid if item.name == name)


def totals(evaluation) -> Counter[str]:
    counted: Counter[str] = Counter()
    for item in parts_list(evaluation):
        if item.category.value in FITTINGS and not item.spare:
            counted[item.designation] += item.quantity
    return counted


def test_fittings_are_exactly_these(all_hose):
    assert totals(all_hose) == {"AN816-3D": 2, "AN833-3D": 2, "AN924-3D": 2, "AN822-3D": 2}


def test_four_hoses_and_nothing_else(all_hose):
    assert Counter(item.kind for item in all_hose.laid) == {LineKind.HOSE: 4}


def test_joints_by_kind(all_hose):
    joints = all_hose.assembly.joints
    forms = Counter(mating.one.interface.form for joint in joints for mating in joint.matings)
    assert (forms[Form.FLARE_37], forms[Form.PIPE]) == (8, 4)


def test_every_end_has_its_partner(all_hose):
    assert all_hose.violations == ()
    assert all(not joint.mismatches for joint in all_hose.assembly.joints)


@pytest.mark.parametrize("side", SIDES)
def test_one_hose_from_the_floor_to_the_caliper(all_hose, side):
    """The seats were measured with the larger fittings, so the path is a range round the one they gave."""
    hose = line(all_hose, f"{side}_leg").hose
    path = sum(math.dist(one, other) for one, other in itertools.pairwise(LEG))
    assert path == pytest.approx(48.5, abs=0.05)
    assert inches(hose.path_length.low) <= path <= inches(hose.path_length.high)
    assert path * 1.06 == pytest.approx(51.5, abs=0.1)
    assert 51.5 <= inches(hose.order_length.middle) <= 52.5


@pytest.mark.parametrize("side", SIDES)
def test_clamps_on_the_leg(all_hose, side):
    leg = line(all_hose, f"{side}_leg")
    places = [inches(station.middle) for station in leg.supports.stations]
    ends = [0.0, *places, inches(leg.path_length.high)]
    assert max(b - a for a, b in itertools.pairwise(ends)) <= MOST_BETWEEN_CLAMPS
    assert len(places) >= 2  # 48.5 in three lengths


def test_nothing_against_it_but_what_nobody_measured(all_hose):
    assert all_hose.verdict is Verdict.NOT_SHOWN
    assert not [finding for finding in all_hose.findings if finding.level is Level.WARNING]


def test_fewer_joints_than_with_tube_on_the_legs(all_hose):
    rigid = evaluate_text(example("brindlewick"), "brindlewick.yaml", "rigid")
    leaks = [sum(joint.leak_paths for joint in item.assembly.joints) for item in (all_hose, rigid)]
    assert leaks == [12, 16]


def test_the_option_goes_by_what_it_says_and_not_by_its_name():
    text = edited(example("brindlewick"), ("  all hose:\n", "  of tube:\n"))
    assert totals(evaluate_text(text, "text", "of tube")) == {
        "AN816-3D": 2,
        "AN833-3D": 2,
        "AN924-3D": 2,
        "AN822-3D": 2,
    }


def test_in_the_larger_size_the_same_fittings_one_size_up():
    text = example("brindlewick").replace("hose -3 PTFE braided", "hose -4 PTFE braided")
    evaluation = evaluate_text(text, "text", OPTION)
    assert totals(evaluation) == {"AN816-4D": 2, "AN833-4D": 2, "AN924-4D": 2, "AN822-4D": 2}
