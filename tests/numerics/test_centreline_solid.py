"""The centreline beside a CAD kernel's: the same corners filleted there, and a tube swept along them.

The kernel is build123d. It rounds the corners by its own fillet and measures the wire and the
solid by its own integration; nothing of ours goes in but the corner points and the radii.
"""

from math import pi

import numpy as np
import pytest

from firmpedal.lay.centreline import box, centreline, sample

DIAMETER = 6.35

TUBES = {
    "in one plane": (((0, 0, 0), (100, 0, 0), (100, 80, 0)), (20,)),
    "corner of a cube": (((0, 0, 0), (100, 0, 0), (100, 100, 0), (100, 100, 100)), (20, 20)),
    "offset": (((0, 0, 0), (100, 0, 0), (100, 100, 0), (200, 100, 0)), (20, 20)),
    "three radii": (
        ((0, 0, 0), (150, 0, 0), (220, 90, 40), (220, 200, 120), (340, 260, 60)),
        (14.3, 19.05, 14.3),
    ),
    "down a gear leg": (
        (
            (177.8, -228.6, -22.86),
            (177.8, -228.6, -81.28),
            (228.6, -294.64, -132.08),
            (142.24, -817.88, -726.44),
            (167.64, -848.36, -767.08),
        ),
        (19.05, 19.05, 19.05),
    ),
}


@pytest.fixture(scope="module")
def kernel():
    import build123d  # noqa: PLC0415  # takes seconds, so only where it is used

    return build123d


@pytest.fixture(params=TUBES)
def tube(request):
    return TUBES[request.param]


def wire(kernel, points, radii):
    return kernel.FilletPolyline(*points, radius=list(radii))


def test_the_wire_is_as_long(kernel, tube):
    points, radii = tube
    assert centreline(points, radii).developed_length == pytest.approx(
        wire(kernel, points, radii).length, rel=1e-9
    )


def test_the_swept_tube_has_the_volume_of_the_developed_length(kernel, tube):
    """By Pappus a round section swept along its own centre has the volume of the straight rod."""
    points, radii = tube
    line = centreline(points, radii)
    solid = rod(kernel, points, radii)
    assert solid.is_valid
    assert solid.volume == pytest.approx(pi / 4 * DIAMETER**2 * line.developed_length, rel=1e-6)


def test_the_box_is_that_of_the_swept_tube(kernel, tube):
    points, radii = tube
    low, high = box(centreline(points, radii), DIAMETER)
    solid = rod(kernel, points, radii).bounding_box(optimal=True)
    assert low == pytest.approx(tuple(solid.min), abs=1e-3)
    assert high == pytest.approx(tuple(solid.max), abs=1e-3)


def rod(kernel, points, radii):
    path = wire(kernel, points, radii)
    section = kernel.Plane(origin=path @ 0, z_dir=path % 0) * kernel.Circle(DIAMETER / 2)
    return kernel.sweep(section, path=path).solid()


def test_samples_lie_on_the_wire(kernel, tube):
    points, radii = tube
    path = wire(kernel, points, radii)
    samples, _ = sample(centreline(points, radii), 5.0)
    assert max(path.distance_to(tuple(point)) for point in samples.tolist()) < 1e-6


def test_the_way_along_the_chords_converges_at_the_second_order(tube):
    points, radii = tube
    line = centreline(points, radii)
    missing = []
    for spacing in (0.4, 0.2, 0.1):
        samples, _ = sample(line, spacing)
        missing.append(line.developed_length - np.linalg.norm(np.diff(samples, axis=0), axis=1).sum())
    order = np.log2(np.array(missing[:-1]) / np.array(missing[1:]))
    assert order == pytest.approx(2.0, abs=0.1)  # a tenth, because an arc takes a whole number of steps
