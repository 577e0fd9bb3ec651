"""When the tube in the bender hits something, beside a CAD kernel's solids of tube and body.

The kernel is build123d. The tube is swept there along straight, arc and straight, as the bender makes
them, and its own measuring tells how far the two solids are apart. Nothing of ours goes in but the sizes.
"""

from math import cos, degrees, radians, sin, tan

import pytest

from firmpedal.lay import near
from firmpedal.lay.bend_order import BenderBody, BenderSpace, bend_order
from firmpedal.lay.centreline import centreline

BEFORE, AFTER, RADIUS, DIAMETER = 10.0, 8.0, 1.0, 0.25
GRIP = 6.0  # longer than where the bodies stand
BARS = {
    "lever": ((0, 3, 0), (12, 3, 0), 0.3, True),
    "lever from behind": ((-1, 2.5, 0), (14, 3.5, 0.4), 0.3, True),
    "post": ((3, 2, -5), (3, 2, 5), 0.2, False),
    "rail": ((-2, 4, -3), (8, 3, 3), 0.2, False),
}


@pytest.fixture(scope="module")
def kernel():
    import build123d  # noqa: PLC0415  # takes seconds, so only where it is used

    return build123d


def tube(kernel, turn, angle):
    """The tube with a part of its one bend made, from the first end to the last."""
    left = AFTER + RADIUS * (turn - angle)
    begin = kernel.Vector(RADIUS * sin(angle), RADIUS * (1 - cos(angle)), 0)
    path = [
        kernel.Edge.make_line((-BEFORE, 0, 0), (0, 0, 0)),
        kernel.Edge.make_three_point_arc(
            (0, 0, 0), (RADIUS * sin(angle / 2), RADIUS * (1 - cos(angle / 2)), 0), begin
        ),
        kernel.Edge.make_line(begin, begin + kernel.Vector(cos(angle), sin(angle), 0) * left),
    ]
    plane = kernel.Plane(origin=(-BEFORE, 0, 0), z_dir=(1, 0, 0))
    return kernel.sweep(plane * kernel.Circle(DIAMETER / 2), path=kernel.Wire(path)).solid()


def bar(kernel, start, finish, radius, angle):
    axis = kernel.Vector(*finish) - kernel.Vector(*start)
    made = [
        kernel.Solid.make_cylinder(radius, axis.length, kernel.Plane(origin=start, z_dir=axis)),
        kernel.Solid.make_sphere(radius, kernel.Plane(origin=start)),
        kernel.Solid.make_sphere(radius, kernel.Plane(origin=finish)),
    ]
    about = kernel.Axis((0, RADIUS, 0), (0, 0, 1))
    return [solid.rotate(about, degrees(angle)) for solid in made]


@pytest.mark.parametrize("name", BARS)
def test_the_hit_is_where_the_solids_meet(kernel, name):
    start, finish, thick, turns = BARS[name]
    turn = radians(150)
    setback = RADIUS * tan(turn / 2)
    corner = BEFORE + setback
    leg = AFTER + setback
    line = centreline(((0, 0, 0), (corner, 0, 0), (corner + leg * cos(turn), leg * sin(turn), 0)), RADIUS)
    space = BenderSpace((BenderBody(name, near.Bar(start, finish, thick), turns),), GRIP)
    hit = next(each for each in bend_order(line, DIAMETER, space).hits)
    assert hit.body == name

    def apart(angle):
        solids = bar(kernel, start, finish, thick, angle if turns else 0.0)
        return min(tube(kernel, turn, angle).distance_to(solid) for solid in solids)

    assert apart(hit.angle - radians(1)) > 0.005
    assert apart(hit.angle + radians(0.3)) == pytest.approx(0, abs=1e-6)
