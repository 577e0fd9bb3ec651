"""Half-bent tubes in the bender, against the finished centreline and against a dense sweep."""

from __future__ import annotations

from itertools import combinations, pairwise, permutations, product

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from firmpedal.lay import near
from firmpedal.lay.bend_order import (
    BenderBody,
    BenderSpace,
    BendStep,
    Hit,
    _first_hit,
    _straight_after,
    _straight_before,
    bend_order,
)
from firmpedal.lay.centreline import centreline
from firmpedal.lay.half_bent import bend_data, half_bent
from firmpedal.lay.shape import Centreline

DIAMETER = 0.25


def lengths(path):
    return np.linalg.norm(np.diff(path, axis=0), axis=1).sum()


def chain(shape):
    """The whole polyline without the arc under way, from the far end of the held side."""
    return np.concatenate([shape.held[::-1], shape.moving])


# A tube of three bends in three planes; straights are long against the radius.
TUBE = centreline(((0, 0, 0), (6, 0, 0), (6, 5, 1), (2, 8, 4), (2, 8, 12)), 0.75)


@pytest.mark.parametrize("number", range(3))
def test_with_all_bends_made_it_is_the_finished_tube(number):
    tube, others = bend_data(TUBE), {0, 1, 2} - {number}
    shape = half_bent(tube, number, tube.bends[number].angle, others)
    ends = np.array([TUBE.tangent_points[0], TUBE.tangent_points[-1]])
    found = chain(shape)[[0, -1]]
    assert np.linalg.norm(found[1] - found[0]) == pytest.approx(np.linalg.norm(ends[1] - ends[0]))
    # the tangent points of the bend under way are where the finished tube has them, as seen from its ends
    start, stop = TUBE.tangent_points[2 * number + 1], TUBE.tangent_points[2 * number + 2]
    for end, far in ((found[0], ends[0]), (found[1], ends[1])):
        assert np.linalg.norm(end - shape.held[0]) == pytest.approx(np.linalg.norm(far - np.array(start)))
        assert np.linalg.norm(end - shape.moving[0]) == pytest.approx(np.linalg.norm(far - np.array(stop)))


def handedness(points):
    """The sign of the volume of four points: a mirror image has the other one."""
    a, b, c, d = points
    return np.sign(np.dot(np.cross(b - a, c - a), d - a))


def test_it_is_no_mirror_image():
    tube = bend_data(TUBE)
    shape = half_bent(tube, 1, tube.bends[1].angle, {0, 2})
    found = np.array([shape.held[-1], shape.held[0], shape.moving[0], shape.moving[-1]])
    tangents = TUBE.tangent_points
    finished = np.array([tangents[0], tangents[3], tangents[4], tangents[-1]])
    assert handedness(found) == handedness(finished) != 0


@given(st.floats(0, 1), st.sets(st.sampled_from([0, 2])))
def test_no_length_is_lost_in_the_bender(share, made):
    tube = bend_data(TUBE)
    shape = half_bent(tube, 1, share * tube.bends[1].angle, made)
    made_arc = tube.bends[1].radius * share * tube.bends[1].angle
    assert lengths(shape.held) + lengths(shape.moving) + made_arc == pytest.approx(
        TUBE.developed_length, rel=2e-3
    )


def test_fed_from_the_other_end_it_is_the_same_tube():
    tube = bend_data(TUBE)
    back = tube.backwards
    assert back.backwards == tube

    forth = half_bent(tube, 1, tube.bends[1].angle, {0, 2})
    other = half_bent(back, 1, back.bends[1].angle, {0, 2})
    assert np.linalg.norm(forth.held[-1] - forth.moving[-1]) == pytest.approx(
        np.linalg.norm(other.held[-1] - other.moving[-1])
    )


def test_a_straight_tube_is_the_same_from_either_end():
    tube = bend_data(centreline(((0, 0, 0), (6, 0, 0)), 0.75))
    assert tube.backwards == tube
    assert tube.bends == ()


# An L in one plane: 10 to the corner, 8 beyond it, bent by 90 degrees about the third axis.
ELL = centreline(((0, 0, 0), (10, 0, 0), (10, 8, 0)), 1.0)


def wall(*bodies, grip=0.5):
    return BenderSpace(tuple(bodies), grip)


def test_nothing_in_the_way():
    assert bend_order(ELL, DIAMETER, wall()).steps == (BendStep(0, "from"),)


def test_a_tube_without_a_bend_is_as_good_as_bent():
    straight = bend_order(centreline(((0, 0, 0), (6, 0, 0)), 0.75), DIAMETER, wall(grip=30))
    assert (straight.steps, straight.hits) == ((), ())
    assert straight.possible


def test_a_wall_stops_the_sweeping_leg_where_it_should():
    """The straight beyond the bend swings up; a wall 4 above the bed stops it part of the way."""
    found = bend_order(ELL, DIAMETER, wall(BenderBody("wall", near.Box((-50, 4, -5), (50, 5, 5)))))
    assert found.steps == ()
    (hit,) = found.hits
    # at turn a the tip is at (1 - cos a) + (arc left + 7) sin a above the bed, and half the tube beyond
    angles = np.linspace(0, np.pi / 2, 200001)
    tips = 1 - np.cos(angles) + (np.pi / 2 - angles + 7) * np.sin(angles) + DIAMETER / 2
    assert hit.body == "wall"
    assert hit.angle == pytest.approx(angles[np.argmax(tips >= 4)], abs=0.005)


def test_the_other_side_in_the_hook_cures_it():
    """A post stands where the held side lies; held by its short leg the tube does not reach it."""
    post = BenderBody("post", near.Box((-9.5, -0.5, -1), (-8.5, 0.5, 1)))
    found = bend_order(ELL, DIAMETER, wall(post))
    assert [hit.body for hit in found.hits] == ["post"]
    assert found.steps == (BendStep(0, "to"),)


def test_what_turns_with_the_lever_is_never_hit_by_the_leg_that_goes_with_it():
    beside = near.Box((4, 0.5, -1), (5, 1.5, 1))
    assert bend_order(ELL, DIAMETER, wall(BenderBody("lever", beside, turns=True))).hits == ()
    assert bend_order(ELL, DIAMETER, wall(BenderBody("post", beside))).hits != ()


PLANAR_U = centreline(((0, 0, 0), (9, 0, 0), (9, 3, 0), (-3, 3, 0)), 0.75)


def test_an_order_is_found_where_the_usual_one_is_blocked():
    """A hook. In the usual order its 9 in leg, held, stands where the handle is, 2.25 in behind the bend.

    With the far bend made first the other leg, 12 in long, comes to lie along the handle, 3 in from the
    axis of the held leg: half a tube and half a handle, together 0.425, are free of 0.8.
    """
    handle = BenderBody("handle", near.Bar((-2, 2.2, 0), (-12, 2.2, 0), 0.3))
    found = bend_order(PLANAR_U, DIAMETER, wall(handle))
    assert [(hit.bend, hit.body, hit.angle) for hit in found.hits] == [(1, "handle", 0.0)]
    assert found.steps == (BendStep(1, "from"), BendStep(0, "from"))


FORMER = np.sqrt((0.75 + DIAMETER) ** 2 - 0.75**2)  # how far a groove as deep as the tube reaches


def dense_held(body, way, room, *, fixed):
    """How far along a straight tube, laid in, a body touches it from right at the bend; by many points."""
    places = np.linspace(0, 40, 8001)
    off = near.distance(places[:, None] * np.array([way, 0.0, 0.0]), body.solid)
    touched = places[off < DIAMETER / 2 + 2e-4 - room]
    if not len(touched) or touched[0] > FORMER:
        return 0.0
    return max(FORMER, touched[-1]) if fixed else FORMER


def dense_points(path, start):
    """Many points of a path from a length on, and how far along it each is."""
    points, gone = [], 0.0
    for a, b in pairwise(path):
        length = np.linalg.norm(b - a)
        shares = np.linspace(0, 1, max(2, int(length / 0.02)))
        points += [a + share * (b - a) for share in shares if gone + share * length >= start]
        gone += length
    return np.array(points)


def straight_of(path):
    """How much of a path is straight from its start on."""
    steps = np.diff(path, axis=0)
    steps = steps[np.linalg.norm(steps, axis=1) > 1e-9]
    ways = steps / np.linalg.norm(steps, axis=1)[:, None]
    bent = np.flatnonzero(ways @ ways[0] < 1 - 1e-9) if len(steps) else [0]
    return np.linalg.norm(steps, axis=1)[: bent[0] if len(bent) else None].sum()


def dense_hit(tube, number, made, space, room):
    """Whether the sweep comes within some room of a body, looked at in very many steps and points.

    Of what a body holds as much more is taken to be held as the room is less than nothing.
    """
    bend = tube.bends[number]
    centre = np.array([0, bend.radius, 0])
    if straight_of(half_bent(tube, number, 0, made).held) + 1e-4 < space.grip:
        return True
    holds = {
        (body, way): dense_held(body, way, room, fixed=body.turns == (way > 0))
        for body, way in product(space.bodies, (-1.0, 1.0))
    }
    for angle in np.linspace(0, bend.angle, 91):
        shape = half_bent(tube, number, angle, made)
        for body in space.bodies:
            for path, way in ((shape.held, -1.0), (shape.moving, 1.0)):
                held = holds[body, way]
                start = max(FORMER, min(held, straight_of(path))) if held else 0.0
                seen = dense_points(path, start - room)
                if not len(seen):
                    continue
                if body.turns:
                    c, s = np.cos(-angle), np.sin(-angle)
                    seen = centre + (seen - centre) @ np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]]).T
                if near.distance(seen, body.solid).min() < DIAMETER / 2 + room:
                    return True
    return False


@pytest.mark.parametrize("number", range(3))
def test_how_much_is_straight_on_either_side_is_seen_in_the_half_bent_tube(number):
    """Whichever of the other bends are made: up to the next of these all is straight, the bend itself too."""
    tube = bend_data(TUBE)
    others = [other for other in range(3) if other != number]
    for made in (frozenset(some) for count in range(3) for some in combinations(others, count)):
        shape = half_bent(tube, number, 0.0, made)
        assert _straight_before(tube, number, made) == pytest.approx(straight_of(shape.held))
        after = _straight_after(tube, number, made) + tube.bends[number].arc
        assert after == pytest.approx(straight_of(shape.moving))


COORDINATES = st.floats(-8, 8)
BODIES = st.builds(
    lambda low, size, turns: BenderBody(
        "block", near.Box(low, tuple(a + b for a, b in zip(low, size, strict=True))), turns
    ),
    st.tuples(COORDINATES, COORDINATES, COORDINATES),
    st.tuples(*[st.floats(0.5, 4)] * 3),
    st.booleans(),
)
CORNERS = st.lists(
    st.tuples(st.integers(-6, 6), st.integers(-6, 6), st.integers(-6, 6)), min_size=3, max_size=4, unique=True
)


@settings(max_examples=25, deadline=None)
@given(CORNERS, BODIES)
def test_the_order_is_one_that_a_dense_sweep_allows_and_none_is_missed(corners, body):
    line = centreline(tuple(tuple(map(float, corner)) for corner in corners), 0.75)
    assume(isinstance(line, Centreline) and line.bends)
    space = wall(body)
    found = bend_order(line, DIAMETER, space)
    forth = bend_data(line)
    sides, count = {"from": forth, "to": forth.backwards}, len(line.bends)

    def blocked(step, made, room):
        flip = step.held == "to"
        number = count - 1 - step.bend if flip else step.bend
        done = {count - 1 - other for other in made} if flip else set(made)
        return dense_hit(sides[step.held], number, done, space, room)

    if found.steps:
        made = set()
        for step in found.steps:
            assert not blocked(step, made, -0.001)
            made.add(step.bend)
        assert made == set(range(count))
        return
    for order, held in product(permutations(range(count)), product(("from", "to"), repeat=count)):
        made, free = set(), True
        for bend, side in zip(order, held, strict=True):
            free = free and not blocked(BendStep(bend, side), made, 0.05)
            made.add(bend)
        assert not free


def test_a_straight_that_the_bender_cannot_hold_sends_the_order_another_way():
    """Between the bends of the hook are 3 - 2 x 0.75 = 1.5: no 2 can be held there once both are made."""
    found = bend_order(PLANAR_U, DIAMETER, wall(grip=2))
    (hit,) = found.hits
    assert (hit.bend, hit.body) == (1, "")
    assert hit.straight == pytest.approx(1.5)
    assert found.steps == (BendStep(1, "from"), BendStep(0, "from"))  # the first leg is all straight yet
    assert bend_order(PLANAR_U, DIAMETER, wall(grip=1.5)).hits == ()


def test_a_grip_that_no_straight_is_long_enough_for_leaves_no_order():
    """The legs of the hook are 9 and 12 to the corners, so 8.25 and 11.25 are straight."""
    for grip, possible in ((8.25, True), (11.25, True), (30, False)):
        assert bend_order(PLANAR_U, DIAMETER, wall(grip=grip)).possible is possible
    assert bend_order(ELL, DIAMETER, wall(grip=9.1)).steps == ()  # 10 less the radius is 9, the other 7


# Half a turn and more: 10 to the bend, 8 beyond it, 150 degrees on a radius of 1.
TURN, SETBACK = np.radians(150.0), np.tan(np.radians(75.0))
HAIRPIN = centreline(
    (
        (0, 0, 0),
        (10 + SETBACK, 0, 0),
        (10 + SETBACK + (8 + SETBACK) * np.cos(TURN), (8 + SETBACK) * np.sin(TURN), 0),
    ),
    1.0,
)


def test_a_lever_that_swings_against_the_held_straight_hits_it_however_much_is_held():
    """The lever's near end is 2 in over the middle of the bend, and comes down behind it.

    At turn a it is at (-2 sin a, 1 + 2 cos a): on the tube where 1 + 2 cos a is the half of both, 0.425.
    """
    lever = BenderBody("lever", near.Bar((0, 3, 0), (12, 3, 0), 0.3), turns=True)
    meets = np.arccos((0.425 - 1) / 2)
    assert 2 * np.sin(meets) == pytest.approx(1.9155, abs=1e-4)  # behind the bend: within a grip of 6
    for grip in (0.5, 1.5, 6, 7.5):
        found = bend_order(HAIRPIN, DIAMETER, wall(lever, grip=grip))
        assert found.steps == ()
        assert found.hits[0].body == "lever"
        assert found.hits[0].angle == pytest.approx(meets, abs=0.005)


def test_a_post_before_the_sweeping_leg_is_hit_however_near_to_the_bend():
    """The leg is 1 from the middle of the bend, at (0, 1); the post stands 3 to its right and 1 over it."""
    post = BenderBody("post", near.Bar((3, 2, -5), (3, 2, 5), 0.2))
    angles = np.linspace(0, np.pi / 2, 200001)
    meets = angles[np.argmax(3 * np.sin(angles) - np.cos(angles) >= 1 - 0.2 - DIAMETER / 2)]
    for grip in (0.5, 5):
        (hit,) = bend_order(ELL, DIAMETER, wall(post, grip=grip)).hits
        assert (hit.body, hit.angle) == ("post", pytest.approx(meets, abs=0.005))


def test_former_hook_and_shoe_hold_the_tube_and_are_not_in_its_way():
    """A former with a groove as deep as the tube, a hook behind the bend and a shoe that goes along."""
    former = BenderBody("former", near.Disc((0, 1, 0), (0, 0, 1), 1 + DIAMETER / 2, 0.5))
    hook = BenderBody("hook", near.Box((-2, -0.4, -0.3), (0, 0.2, 0.3)))
    shoe = BenderBody("shoe", near.Box((0, -0.6, -0.3), (2, -DIAMETER / 2, 0.3)), turns=True)
    for grip in (0.1, 2, 6):
        assert bend_order(ELL, DIAMETER, wall(former, hook, shoe, grip=grip)).hits == ()


def test_tools_longer_than_both_legs_hold_all_of_them():
    """Hook and shoe reach past the tube's ends; the leg beyond has what is not bent yet of the arc, too."""
    hook = BenderBody("hook", near.Box((-30, -0.4, -0.3), (0, -DIAMETER / 2, 0.3)))
    shoe = BenderBody("shoe", near.Box((0, -0.6, -0.3), (30, -DIAMETER / 2, 0.3)), turns=True)
    assert bend_order(ELL, DIAMETER, wall(hook)).hits == ()
    assert bend_order(ELL, DIAMETER, wall(shoe)).hits == ()


def test_a_bend_that_is_drawn_into_the_shoe_is_hit_when_it_comes_there():
    """Between two square bends are 1.5, at first all of the arc besides; the shoe holds 2 and half a tube.

    At turn a what is straight is 1.5 and 0.75 times what is left of a quarter turn.
    """
    shoe = BenderBody("shoe", near.Box((0, -0.4, -0.3), (2, 0.2, 0.3)), turns=True)
    comes = np.pi / 2 - (2 + DIAMETER / 2 - 1.5) / 0.75
    found = _first_hit(bend_data(PLANAR_U), 0, frozenset({1}), DIAMETER / 2, wall(shoe))
    assert found == ("shoe", pytest.approx(comes, abs=0.005))


def test_a_bend_that_lies_in_the_hook_is_hit():
    """The hook of the bender is 2 long, and between the bends of the tube are 1.5."""
    hook = BenderBody("hook", near.Box((-2, -0.4, -0.3), (0, 0.2, 0.3)))
    found = bend_order(PLANAR_U, DIAMETER, wall(hook))
    assert [(hit.bend, hit.body, hit.angle) for hit in found.hits] == [(1, "hook", 0.0)]


def test_what_stands_in_the_held_straight_and_not_at_the_bend_is_in_the_way():
    """It may be meant as what holds the tube; nothing shows that, so it is said, and nothing is passed."""
    post = BenderBody("post", near.Box((-5, -0.5, -1), (-4, 0.5, 1)))
    for grip in (0.5, 6):
        assert bend_order(ELL, DIAMETER, wall(post, grip=grip)).hits == (Hit(0, "from", "post", 0.0),)


GRIPS = st.floats(0.1, 12)


@settings(max_examples=50, deadline=None)
@given(CORNERS, st.lists(BODIES, max_size=2), GRIPS, GRIPS)
def test_a_longer_grip_never_opens_a_way(corners, bodies, one, other):
    less, more = sorted((one, other))
    line = centreline(tuple(tuple(map(float, corner)) for corner in corners), 0.75)
    assume(isinstance(line, Centreline) and line.bends)
    if bend_order(line, DIAMETER, wall(*bodies, grip=more)).possible:
        assert bend_order(line, DIAMETER, wall(*bodies, grip=less)).possible
