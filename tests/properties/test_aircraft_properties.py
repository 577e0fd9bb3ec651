"""What has to hold of any aircraft: where it stands and which units it is written in change nothing."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from firmpedal.pipeline import Evaluation, evaluate_text

if TYPE_CHECKING:
    from collections.abc import Callable

    Vector = tuple[float, float, float]

coordinates = st.integers(-400, 400).map(lambda tenths: tenths / 10)
vectors = st.tuples(coordinates, coordinates, coordinates)
quick = settings(max_examples=30, deadline=None)


@dataclass(frozen=True)
class Course:
    """A tube from a cylinder that swings to a wall, and a hose from there to a caliper that slides."""

    outlet: Vector
    corners: tuple[Vector, ...]
    wall: Vector
    beyond: Vector
    inlet: Vector
    slide: Vector
    pivot: Vector


@st.composite
def courses(draw) -> Course:
    """Places far enough apart that the tube between them can be bent."""
    places = draw(st.lists(vectors, min_size=6, max_size=8, unique=True))
    slide = draw(st.tuples(*[st.integers(-20, 20).map(lambda tenths: tenths / 10)] * 3))
    outlet, *corners, wall, beyond, inlet, pivot = places
    gaps = [math.dist(a, b) for a, b in zip([outlet, *corners], [*corners, wall], strict=True)]
    assume(min(gaps) > 4)
    assume(math.dist(beyond, inlet) > 1)
    return Course(outlet, tuple(corners), wall, beyond, inlet, slide, pivot)


def written(
    course: Course,
    place: Callable[[Vector], Vector] = lambda point: point,
    way: Callable[[Vector], Vector] = lambda vector: vector,
    unit: str = "in",
    radius: float = 0.75,
    side: str = "",
) -> str:
    """Write a course down with every point and every direction put somewhere else.

    What has a mirror image is named with its side.
    """

    def at(point: Vector) -> str:
        return "[" + ", ".join(f"{number:.12f} {unit}" for number in place(point)) + "]"

    def along(vector: Vector) -> str:
        return "[" + ", ".join(f"{number:.12f}" for number in way(vector)) + "]"

    slide = "[" + ", ".join(f"{number:.12f} {unit}" for number in way(course.slide)) + "]"
    swing = f"{{about: {at(course.pivot)}, axis: {along((0.0, 0.6, 0.8))}, swing: +/- 12 deg}}"
    via = ", ".join(at(corner) for corner in course.corners)
    return f"""\
firmpedal: 1
aircraft: {{name: Anywhere, gear: nosewheel, brakes: toe, landing weight: 400 kg}}
fluid: MIL-PRF-5606
states: {{rudder: {{from: -1, to: 1}}, pads: {{values: [new, worn]}}}}
moving: {{{side}swing: {{rudder: {swing}}}, {side}slide: {{pads: {{worn: {slide}}}}}}}
components:
  {side}cylinder:
    kind: master cylinder
    bore: 5/8 in
    stroke: 3/4 in
    pedal: brake
    moves with: {side}swing
    ports: {{outlet: {{thread: 1/8 NPT female, faces: {along((0.0, 0.0, -1.0))}, seat: {at(course.outlet)}}}}}
  {side}caliper:
    kind: caliper
    pistons: {{bore: 1-1/2 in, count per side: 1}}
    pad gap: 0.5 mm
    moves with: {side}slide
    ports: {{inlet: {{thread: 1/8 NPT female, faces: {along((1.0, 0.0, 0.0))}, seat: {at(course.inlet)}}}}}
pedals: {{brake: {{brake: {{pad: 5 in, arm: 2.5 in}}}}}}
bulkheads:
  {side}wall: {{sides: {{near: {{seat: {at(course.wall)}}}, far: {{seat: {at(course.beyond)}}}}}}}
bench: {{bend radius: {radius!r} {unit}}}
lines:
  {side}tube:
    from: {side}cylinder.outlet
    to: {side}wall.near
    made of: tube 5052-O 1/4 in x .035 in
    via: [{via}]
  {side}hose: {{from: {side}wall.far, to: {side}caliper.inlet, made of: hose -4 PTFE braided}}
"""


def evaluated(text: str) -> Evaluation:
    evaluation = evaluate_text(text, "text")
    assume(all(line.tube is None or line.tube.centreline for line in evaluation.laid))
    return evaluation


def lengths(evaluation: Evaluation) -> list[float]:
    """Every length that is found, in metres."""
    tube, hose = evaluation.laid
    values = [*tube.tube.straights, tube.developed_length, tube.cut_length, tube.path_length]
    values += [hose.path_length, hose.hose.longest_path, hose.hose.least_length]
    values += [
        value
        for line in (tube, hose)
        for value in (line.travel.play, line.travel.nearest, line.travel.farthest)
    ]
    values += [bend.arc for bend in tube.tube.bends]
    return [value.middle for value in values]


def angles(evaluation: Evaluation) -> list[float]:
    """Bend angles, and rotations as directions so that a half turn either way is the same."""
    bends = evaluation.laid[0].tube.bends
    turns = [bend.rotation.middle for bend in bends]
    return [bend.angle.middle for bend in bends] + [f(turn) for turn in turns for f in (math.cos, math.sin)]


def parts(evaluation: Evaluation) -> list[list[str]]:
    return [[part.designation for part in joint.parts] for joint in evaluation.assembly.joints]


def close(numbers: list[float]) -> object:
    return pytest.approx(numbers, rel=1e-7, abs=1e-8)


def sharp(evaluation: Evaluation) -> bool:
    """Leave out bends so slight that the plane of bend is all rounding."""
    return all(bend.angle.middle > 1e-3 for bend in evaluation.laid[0].tube.bends)


def about_the_vertical(angle: float) -> Callable[[Vector], Vector]:
    cosine, sine = math.cos(angle), math.sin(angle)
    return lambda point: (point[0] * cosine - point[1] * sine, point[0] * sine + point[1] * cosine, point[2])


@quick
@given(course=courses(), by=vectors)
def test_moving_the_whole_aircraft_changes_no_length_angle_or_part(course, by):
    here = evaluated(written(course))
    assume(sharp(here))
    there = evaluated(written(course, lambda point: tuple(a + b for a, b in zip(point, by, strict=True))))
    assert lengths(there) == close(lengths(here))
    assert angles(there) == close(angles(here))
    assert parts(there) == parts(here)


@quick
@given(course=courses(), angle=st.floats(-math.pi, math.pi))
def test_turning_the_whole_aircraft_about_the_vertical_changes_no_length_or_angle(course, angle):
    turn = about_the_vertical(angle)
    here = evaluated(written(course))
    assume(sharp(here))
    there = evaluated(written(course, turn, turn))
    assert lengths(there) == close(lengths(here))
    assert angles(there) == close(angles(here))


@quick
@given(course=courses(), factor=st.floats(0.5, 3))
def test_an_aircraft_so_many_times_as_large_has_lines_so_many_times_as_long(course, factor):
    """Slack and flares apart: what is bent grows with its points and its radius, and no angle changes."""
    here = evaluated(written(course))
    assume(sharp(here))

    def grown(point: Vector) -> Vector:
        return tuple(factor * number for number in point)

    there = evaluated(written(course, grown, grown, radius=0.75 * factor))
    small, large = here.laid[0].tube, there.laid[0].tube
    assert [value.middle for value in large.straights] == close(
        [factor * value.middle for value in small.straights]
    )
    assert large.developed_length.middle == close(factor * small.developed_length.middle)
    assert angles(there) == close(angles(here))
    for one, other in zip(here.laid, there.laid, strict=True):
        assert other.travel.play.middle == close(factor * one.travel.play.middle)
        assert other.path_length.middle == close(factor * one.path_length.middle)


@quick
@given(course=courses())
def test_millimetres_and_inches_describe_the_same_aircraft(course):
    def metric(point: Vector) -> Vector:
        return tuple(25.4 * number for number in point)

    inches = evaluated(written(course))
    assume(sharp(inches))
    millimetres = evaluated(written(course, metric, metric, "mm", radius=0.75 * 25.4))
    assert lengths(millimetres) == close(lengths(inches))
    assert parts(millimetres) == parts(inches)


@quick
@given(course=courses())
def test_a_mirrored_twin_has_equal_lengths_and_opposite_rotations(course):
    """Mirrored by the file's own word, which knows nothing of the bends."""
    names = "left_tube, left_cylinder, left_wall, left_swing, left_slide, left_hose, left_caliper"
    both = evaluated_pair(f"{written(course, side='left_')}mirror: [{names}]\n")
    assume(all(bend.angle.middle > 1e-3 for bend in both["left_tube"].tube.bends))
    left, right = both["left_tube"], both["right_tube"]
    assert [value.middle for value in right.tube.straights] == close([v.middle for v in left.tube.straights])
    assert [bend.angle.middle for bend in right.tube.bends] == close(
        [b.angle.middle for b in left.tube.bends]
    )
    for one, other in zip(left.tube.bends, right.tube.bends, strict=True):
        assert math.sin(one.rotation.middle + other.rotation.middle) == pytest.approx(0, abs=1e-7)
        assert math.cos(one.rotation.middle + other.rotation.middle) == pytest.approx(1)
    assert [point.right.middle for point in right.points] == close([-p.right.middle for p in left.points])
    for name in ("tube", "hose"):
        one, other = both[f"left_{name}"].travel, both[f"right_{name}"].travel
        assert [other.play.middle, other.farthest.middle] == close([one.play.middle, one.farthest.middle])


def evaluated_pair(text: str) -> dict:
    laid = {line.name: line for line in evaluate_text(text, "text").laid}
    assume(all(line.tube is None or line.tube.centreline for line in laid.values()))
    return laid


STOCK = ("tube 5052-O 1/4 in x .035 in", "tube 3003-O 3/16 in x .028 in", "hose -4 PTFE braided")
NYLON = "plastic nylon 1/4 in x .040 in"
SHORT = Course((0, 0, 4), ((0, 0, -6),), (6, 0, -6), (7, 0, -6), (12, 2, -6), (0, 0.2, 0), (0, 3, 0))


@quick
@given(
    force=st.integers(1, 2000),
    factor=st.floats(1, 4),
    tube=st.sampled_from([*STOCK, NYLON]),
    hose=st.sampled_from(STOCK),
)
def test_a_harder_foot_never_raises_a_margin(force, factor, tube, hose):
    def margins(newtons: float) -> list[float]:
        forces = f"normal: {newtons!r} N, hard: {2 * newtons!r} N, panic: {3 * newtons!r} N"
        foot = f"foot: {{{forces}}}\ncomponents:\n"
        text = written(SHORT).replace(STOCK[0], tube).replace(STOCK[2], hose).replace("components:\n", foot)
        results = evaluate_text(text, "text").results
        found = [
            value
            for strength in results.strengths
            for value in (strength.yield_factor, strength.burst_factor)
        ]
        left = [-value.middle for line in results.pressures for value in line.pressures]
        stroke = [-bound for budget in results.budgets for bound in (*budget.cold.span, *budget.hot.span)]
        assert len(left) == 6
        assert len(stroke) == 12
        return [*(value.middle for value in found), *left, *stroke]

    for before, after in zip(margins(force), margins(force * factor), strict=True):
        assert after <= before + 1e-12 * abs(before)


@quick
@given(force=st.integers(1, 2000), factor=st.floats(0.2, 5))
def test_pressure_grows_with_the_foot_and_falls_with_the_square_of_the_bore(force, factor):
    def panic(newtons: float, bore: float) -> float:
        foot = f"foot: {{panic: {newtons!r} N}}\ncomponents:\n"
        text = written(SHORT).replace("components:\n", foot).replace("bore: 5/8 in", f"bore: {bore!r} in")
        return evaluate_text(text, "text").results.cylinders[0].pressures[2].middle

    once = panic(force, 0.6)
    assert panic(force * factor, 0.6) == pytest.approx(once * factor)
    assert panic(force, 0.6 * factor) == pytest.approx(once / factor**2)
