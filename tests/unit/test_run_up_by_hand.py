"""A run-up held against the whole balance of forces, about the centre of gravity, solved by scipy."""

import math

import numpy as np
import pytest
from scipy.optimize import brentq
from test_stopping import STANCE, tailwheel, with_ground

from firmpedal.formulas import run_up
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Answer, Mark
from firmpedal.report.sheet import Group, Paragraph, Table
from firmpedal.report.stopping import stopping_sheet
from firmpedal.units import to_unit

G = 9.80665
MASS, BASE, CG_HEIGHT = 600.0, 4.5, 1.1  # kg, m, m


def loads(pull, height, angle, cg, *, tailwheel):
    """Load on the mains and on the third wheel: forces across the ground, and moments about the cg.

    Aft is plus x, from the contact of the mains; the cg is `cg` from there, towards the third wheel. The pull
    acts on its line `height` above the ground over the mains, the brakes' drag where the mains stand.
    """
    third = BASE if tailwheel else -BASE
    x = cg if tailwheel else -cg
    up = pull * math.tan(angle)
    # moments nose-down about (x, CG_HEIGHT): a force (fx, fz) at (px, pz) turns by fz (px - x) - fx (pz - h)
    of_pull = up * (0 - x) - (-pull) * (height - CG_HEIGHT)
    of_drag = -pull * (0 - CG_HEIGHT)
    across = np.array([[1.0, 1.0], [0 - x, third - x]])
    return np.linalg.solve(across, [MASS * G - up, -(of_pull + of_drag)])


@pytest.mark.parametrize("friction", [0.3, 0.55, 0.8])
@pytest.mark.parametrize(("height", "degrees"), [(1.2, 0.0), (1.6, 3.0), (2.3, 12.0)])
def test_a_nosewheel_type_slides_where_the_mains_hold_just_friction_times_their_load(
    friction, height, degrees
):
    angle = math.radians(degrees)

    def spare(pull):
        mains, _ = loads(pull, height, angle, 0.4, tailwheel=False)
        return friction * mains - pull

    expected = brentq(spare, 0.0, MASS * G)
    found = run_up.pull_held_nosewheel(friction, MASS, 0.4, BASE, height, angle)
    assert found == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("friction", [0.2, 0.4, 0.6, 0.8])
@pytest.mark.parametrize(("height", "degrees"), [(1.2, 0.0), (1.6, 12.0), (2.3, 15.0)])
def test_a_tailwheel_type_slides_with_its_tail_down_or_up(friction, height, degrees):
    angle = math.radians(degrees)

    def spare(pull):
        mains, tail = loads(pull, height, angle, 0.5, tailwheel=True)
        return friction * (mains if tail >= 0 else MASS * G - pull * math.tan(angle)) - pull

    expected = brentq(spare, 0.0, MASS * G)
    found = run_up.pull_held_tailwheel(friction, MASS, 0.5, BASE, height, angle)
    assert found == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("height", [5.0, 7.0, 40.0])
def test_a_tail_that_is_up_leaves_all_to_the_mains_however_high_the_thrust_line_is(height):
    """With the mains alone on the ground the tyres hold friction times all the weight, by Coulomb's law."""
    found = run_up.pull_held_tailwheel(0.8, MASS, 0.5, BASE, height, 0.0)
    assert found == pytest.approx(0.8 * MASS * G)


@pytest.mark.parametrize(("height", "degrees"), [(1.2, 0.0), (1.6, 12.0)])
def test_the_tail_is_up_where_its_wheel_carries_nothing(height, degrees):
    """Whatever the thrust line looks up: over the main wheels it has no arm by that."""
    angle = math.radians(degrees)
    expected = brentq(lambda pull: loads(pull, height, angle, 0.5, tailwheel=True)[1], 0.0, MASS * G)
    assert run_up.pull_that_lifts_the_tail(MASS, 0.5, height) == pytest.approx(expected, rel=1e-9)


def test_tyres_that_slide_just_as_the_tail_lifts_hold_that_pull():
    """Level, with friction b / z: the same pull does both."""
    held = run_up.pull_held_tailwheel(0.4, MASS, 0.6, BASE, 1.5, 0.0)
    assert held == pytest.approx(run_up.pull_that_lifts_the_tail(MASS, 0.6, 1.5))


def test_along_the_ground_the_thrust_pulls_by_its_cosine():
    assert run_up.forward_pull(1000.0, math.radians(30.0)) == pytest.approx(500 * math.sqrt(3))


# 1320 lb, 12 in behind: 15840 lbf in. Level pull; 300 lbf lift the tail from 52.8 in of height on.
LEVEL = "static thrust: 300, thrust line nose up: 0"


def at(height, more=LEVEL, stance=tailwheel):
    return evaluate_text(stance(f"{STANCE}, {more}, thrust line height: {height}"))


@pytest.mark.parametrize(
    ("height", "tips", "said"),
    [
        ("52.7", Answer.NO, "full throttle does not lift it"),
        ("52.9", Answer.YES, "full throttle lifts it"),
        ("52.7 to 52.9", Answer.UNKNOWN, "full throttle may lift it"),
    ],
)
def test_full_throttle_lifts_the_tail_where_its_moment_is_that_of_the_weight(height, tips, said):
    evaluation = at(height)
    assert evaluation.results.stopping.run_up.tips is tips
    assert said in words(evaluation)


def test_tyres_that_slide_before_let_the_tail_down():
    """At most 0.1 of 1,320 lbf are held, and 300 lift it at 60 in."""
    grips = "usual tyre friction: 0.1, peak tyre friction: 0.1"
    evaluation = at("60", f"{LEVEL}, {grips}")
    assert evaluation.results.stopping.run_up.tips is Answer.NO
    assert "the tyres slide before" in words(evaluation)
    assert not [each for each in evaluation.findings if each.rule == "run-up-noses-over"]


def test_without_the_height_of_the_thrust_line_it_says_what_it_does_not_know():
    evaluation = at("unknown")
    run = evaluation.results.stopping.run_up
    assert (run.held, run.tips) == (Answer.UNKNOWN, Answer.UNKNOWN)
    assert "Whether the ground holds full throttle and whether the tail stays down is not shown" in words(
        evaluation
    )
    assert any("height of the propeller's thrust line" in each.what for each in run.holds.missing)


def test_what_the_tail_does_is_told_where_what_the_tyres_hold_is_not_known():
    """It takes no wheelbase: 15,840 lbf in of weight against 300 lbf at 52.9 in."""
    evaluation = at(
        "52.9", stance=lambda more: tailwheel(more.replace("wheelbase: 60", "wheelbase: unknown"))
    )
    run = evaluation.results.stopping.run_up
    assert (run.holds.known, run.tips) == (False, Answer.YES)
    assert [each for each in evaluation.findings if each.rule == "run-up-noses-over"]
    told = words(evaluation)
    assert "full throttle lifts it" in told
    assert "whether the tail stays down is not shown" not in told
    assert "Whether the tyres hold it is not shown" in told


def test_a_thrust_that_no_height_makes_good_slides_for_sure():
    """With the tail up 0.8 of 1,320 lbf, 1,056, are all that a level pull gets; with a nose wheel 844.8."""
    for thrust, answer in ((1050, Answer.UNKNOWN), (1060, Answer.NO)):
        line = f"static thrust: {thrust}, thrust line nose up: 0"
        assert at("unknown", line).results.stopping.run_up.held is answer
    assert "however high the propeller sits" in words(
        at("unknown", "static thrust: 1060, thrust line nose up: 0")
    )


@pytest.mark.parametrize(("stance", "low", "high"), [(with_ground, 0, 3), (tailwheel, 8, 15)])
def test_how_far_the_thrust_line_looks_up_is_taken_as_usual_where_it_is_left_out(stance, low, high):
    stop = at("60", "static thrust: 300", stance).results.stopping
    angle = stop.stance.thrust_nose_up
    assert angle.mark is Mark.MEMORY
    assert [to_unit(bound, "deg") for bound in angle.span] == pytest.approx([low, high])
    pull = stop.run_up.pull
    assert [to_unit(bound, "lbf") for bound in pull.span] == pytest.approx(
        [300 * math.cos(math.radians(high)), 300 * math.cos(math.radians(low))]
    )


def test_thrust_and_pull_are_told_apart_where_the_propeller_looks_up():
    """Of 300 lbf, 12 degrees up, 300 cos 12 = 293.4 lbf pull along the ground; a level one pulls all."""
    up = at("40", "static thrust: 300, thrust line nose up: 12")
    assert "of 300 lbf of thrust the pull along the ground is 293 lbf" in words(up)
    assert full_throttle(up) == "300 lbf\nall of the thrust"
    assert "wheels held: the pull along the ground is 300 lbf" in words(at("40"))
    assert full_throttle(at("40")) == "300 lbf"


def full_throttle(evaluation):
    """What the table of what it takes says that full throttle is."""
    blocks = stopping_sheet(evaluation).blocks
    within = (inner for each in blocks for inner in (each.blocks if isinstance(each, Group) else (each,)))
    rows = (row for each in within if isinstance(each, Table) for row in each.rows)
    return next(row[1] for row in rows if row[0] == "holding full throttle")


def words(evaluation):
    return " ".join(each.text for each in stopping_sheet(evaluation).blocks if isinstance(each, Paragraph))
