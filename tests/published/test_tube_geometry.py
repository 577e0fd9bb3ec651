"""Corner points of tubes to bend data: published points and figures, and cases by vector algebra.

Two cases start from print. A question in a machining forum (web copy) gives the four corners of a
tube in inches and asks for lengths, rotations and angles; its answers here are derived. An exercise
on the torsional angle of four points (web copy) prints the angle between the two planes. The
page on bend lengths prints its constant. Everything else is [firmpedal-derivation]: vector algebra
apart from the program, checked against the chords of a sampled line.

The last three tubes are those of invented aircraft, worked by hand. They are not published.
"""

from math import cos, degrees, sin

import pytest
from as_printed import as_printed

from firmpedal.lay.centreline import Centreline, Impossible, ImpossibleKind, centreline

DERIVED = "firmpedal-derivation"
CUBE = ((0, 0, 0), (100, 0, 0), (100, 100, 0), (100, 100, 100))


@pytest.fixture
def compared(case):
    """Compare a whole centreline with its figures, in the unit of its points and in degrees."""

    def compare(name, line, straights, angles, rotations, developed, unit="mm"):
        assert isinstance(line, Centreline), line
        lists = {
            "straight": (straights, line.straights, unit),
            "bend": (angles, [degrees(bend.angle) for bend in line.bends], "deg"),
            "rotation before bend": (rotations, [degrees(bend.rotation) for bend in line.bends], "deg"),
            "developed length, no.": ([developed], [line.developed_length], unit),
        }
        for what, (figures, ours, in_unit) in lists.items():
            for n, (figure, number) in enumerate(zip(figures, ours, strict=True), 1):
                case(DERIVED, f"{name}: {what} {n}", f"{figure} {in_unit}".strip(), number, how="derived")

    return compare


def test_published_points_of_an_offset_that_is_flat_though_three_coordinates_vary(compared, case):
    """Points read in the forum question; the answers derived. Sharp corners give the lengths asked for."""
    points = (
        (38.5202, -14.0264, 0),
        (45.3142, -14.0264, 0),
        (45.3142, -17.5214, 0.9654),
        (48.6822, -17.5214, 0.9654),
    )
    sharp = centreline(points, 0.0)
    for n, (figure, ours) in enumerate(zip(("6.7940", "3.62588", "3.3680"), sharp.straights, strict=True), 1):
        case(DERIVED, f"offset from published points: segment {n}", f"{figure} in", ours, how="derived")
    compared(
        "offset from published points, R 0.75 in",
        centreline(points, 0.75),
        straights=("6.0440", "2.12588", "2.6180"),
        angles=("90.00000", "90.00000"),
        rotations=("0.00000", "180.00000"),
        developed="13.144077",
        unit="in",
    )


class TestTorsionalAngle:
    """A(0,4,5) B(1,7,6) C(0,5,9) D(1,7,2)."""

    LINE = centreline(((0, 4, 5), (1, 7, 6), (0, 5, 9), (1, 7, 2)), 0.1)

    def test_angle_between_the_planes_is_as_printed(self, case):
        """Printed without a sign, as the angle between the planes ABC and BCD: 8.19 degrees."""
        ours = abs(degrees(self.LINE.bends[1].rotation))
        case("torsional-angle-exercise", "angle between the planes ABC and BCD", "8.19 deg", ours)

    def test_the_rest_is_as_derived(self, compared):
        compared(
            "four points of a torsional angle, R 0.1",
            self.LINE,
            straights=("3.17694", "3.00387", "6.75037"),
            angles=("108.80384", "161.01625"),
            rotations=("0.00000", "-8.18921"),
            developed="13.402105",
            unit="",
        )


def test_length_of_a_bend_with_the_rounded_constant(case):
    line = centreline(((0, 0, 0), (9, 0, 0), (9, 9, 0)), 2.0)
    why = "the page's constant 0.01745 is pi/180 rounded"
    case("tube-bend-lengths", "arc of a tube with one bend of 90 deg, R 2", "3.1410", line.arcs[0],
         off_by="0.0006", why=why)  # fmt: skip


def test_one_bend(compared):
    compared(
        "one bend",
        centreline(((0, 0, 0), (100, 0, 0), (100, 80, 0)), 20.0),
        straights=("80.000000", "60.000000"),
        angles=("90.00000",),
        rotations=("0.00000",),
        developed="171.415927",
    )


@pytest.mark.parametrize(
    ("hand", "last", "rotation"), [("right", 100, "90.00000"), ("left", -100, "-90.00000")]
)
def test_corner_of_a_cube_tells_right_hand_from_left(compared, hand, last, rotation):
    """Lengths and angles are equal: only the sign of the rotation tells these two tubes apart."""
    compared(
        f"corner of a cube, {hand} hand",
        centreline((*CUBE[:3], (100, 100, last)), 20.0),
        straights=("80.000000", "60.000000", "80.000000"),
        angles=("90.00000", "90.00000"),
        rotations=("0.00000", rotation),
        developed="282.831853",
    )


def test_offset_in_a_plane(compared):
    compared(
        "offset in a plane",
        centreline(((0, 0, 0), (100, 0, 0), (100, 100, 0), (200, 100, 0)), 20.0),
        straights=("80.000000", "60.000000", "80.000000"),
        angles=("90.00000", "90.00000"),
        rotations=("0.00000", "180.00000"),
        developed="282.831853",
    )


def test_three_bends_of_different_radii(compared, case):
    points = ((0, 0, 0), (150, 0, 0), (220, 90, 40), (220, 200, 120), (340, 260, 60))
    line = centreline(points, (14.3, 19.05, 14.3))
    compared(
        "three bends of different radii",
        line,
        straights=("142.61970", "107.04900", "116.54812", "133.90395"),
        angles=("54.59698", "37.14660", "84.83380"),
        rotations=("0.00000", "20.25144", "-161.45534"),
        developed="547.270896",
    )
    for bend, figure in zip(line.bends, ("7.38030", "6.40115", "13.06543"), strict=True):
        case(DERIVED, f"setback at point {bend.corner + 1} of that tube", f"{figure} mm", bend.setback,
             how="derived")  # fmt: skip


def test_u_of_two_bends_that_meet(compared):
    line = centreline(((0, 0, 0), (100, 0, 0), (100, 40, 0), (0, 40, 0)), 20.0)
    compared(
        "U of two bends without a straight between",
        line,
        straights=("80.000000", "0.000000", "80.000000"),
        angles=("90.00000", "90.00000"),
        rotations=("0.00000", "0.00000"),
        developed="222.831853",
    )
    assert line.straights[1] == 0.0


@pytest.mark.parametrize("scale", [1, 0.0254, 1 / 3])
def test_bends_that_meet_may_round_either_way(scale):
    points = tuple(
        (x * scale, y * scale, z * scale) for x, y, z in ((0, 0, 0), (100, 0, 0), (100, 40, 0), (0, 40, 0))
    )
    assert centreline(points, 20 * scale).straights[1] == 0.0


def test_point_in_the_middle_of_a_straight_is_as_if_it_were_not_there(compared):
    with_it = centreline(((0, 0, 0), (50, 0, 0), (100, 0, 0), (100, 100, 0)), 20.0)
    without = centreline(((0, 0, 0), (100, 0, 0), (100, 100, 0)), 20.0)
    compared(
        "one bend after a point in the middle of a straight",
        with_it,
        straights=("80.000000", "80.000000"),
        angles=("90.00000",),
        rotations=("0.00000",),
        developed="191.415927",
    )
    assert (with_it.straights, with_it.corners) == (without.straights, without.corners)
    assert (with_it.bends[0].corner, without.bends[0].corner) == (2, 1)  # each in its own list of points


def test_turns_too_small_to_see_add_up_to_one_that_is_seen():
    """Ten turns of half a millionth of a radian: each is no bend by itself, together they are."""
    headings = [n * 5e-7 for n in range(11)]
    points = [(0.0, 0.0, 0.0)]
    for heading in headings:
        x, y, _ = points[-1]
        points.append((x + cos(heading), y + sin(heading), 0.0))
    line = centreline(tuple(points), 0.0)
    assert sum(bend.angle for bend in line.bends) == pytest.approx(headings[-1], abs=2e-6)


def test_bends_that_overlap_are_refused_by_name_and_amount(case):
    points = ((0, 0, 0), (100, 0, 0), (100, 30, 0), (200, 30, 0))
    refused = centreline(points, 20.0)
    assert isinstance(refused, Impossible)
    assert (refused.kind, refused.corner, refused.other) == (ImpossibleKind.NO_ROOM, 1, 2)
    assert refused.words == "the bends at point 2 and point 3 overlap"
    case(DERIVED, "negative straight between two bends", "-10.000000 mm", refused.amount, how="derived")


@pytest.mark.parametrize(
    ("points", "radius", "kind", "corner", "words"),
    [
        ((), 1.0, ImpossibleKind.TOO_FEW, 0, "a line needs at least two points"),
        (((0, 0, 0),), 1.0, ImpossibleKind.TOO_FEW, 0, "a line needs at least two points"),
        (
            ((0, 0, 0), (9, 0, 0), (9, 0, 0), (9, 9, 0)),
            1.0,
            ImpossibleKind.COINCIDE,
            1,
            "point 2 and point 3 are the same place",
        ),
        (((1, 2, 3), (1, 2, 3)), 1.0, ImpossibleKind.COINCIDE, 0, "point 1 and point 2 are the same place"),
        (
            ((0, 0, 0), (9, 0, 0), (3, 0, 0)),
            1.0,
            ImpossibleKind.DOUBLES_BACK,
            1,
            "the line doubles back at point 2",
        ),
        (
            ((0, 0, 0), (5, 0, 0), (9, 0, 0), (3, 0, 0), (3, 5, 0)),
            1.0,
            ImpossibleKind.DOUBLES_BACK,
            2,
            "the line doubles back at point 3",
        ),
        (
            ((0, 0, 0), (1, 0, 0), (1, 9, 0)),
            2.0,
            ImpossibleKind.NO_ROOM,
            0,
            "the bend at point 2 would begin before the line does",
        ),
        (
            ((0, 0, 0), (9, 0, 0), (9, 1, 0)),
            2.0,
            ImpossibleKind.NO_ROOM,
            1,
            "the bend at point 2 would end past the end of the line",
        ),
    ],
)
def test_what_cannot_be_bent_is_refused_by_name(points, radius, kind, corner, words):
    refused = centreline(points, radius)
    assert isinstance(refused, Impossible)
    assert (refused.kind, refused.corner, refused.words) == (kind, corner, words)
    assert (refused.amount is None) == (kind is not ImpossibleKind.NO_ROOM)


def test_every_overlap_is_told():
    points = ((0, 0, 0), (100, 0, 0), (100, 30, 0), (200, 30, 0), (200, 60, 0), (300, 60, 0))
    refused = centreline(points, 20.0)
    assert [(each.corner, each.other) for each in (refused, *refused.also)] == [(1, 2), (3, 4)]
    assert [each.amount for each in (refused, *refused.also)] == pytest.approx([-10, -10])


@pytest.mark.parametrize("radii", [(1.0,), (1.0, 1.0, 1.0), -1.0, float("nan"), float("inf")])
def test_radii_that_do_not_fit_are_our_mistake(radii):
    with pytest.raises(ValueError, match="radi"):
        centreline(CUBE, radii)


def test_coordinates_that_are_no_numbers_are_our_mistake():
    with pytest.raises(ValueError, match="not finite"):
        centreline(((0, 0, 0), (float("nan"), 0, 0)), 1.0)


LEG_TUBE = (
    (7.0, -9.0, -0.9),
    (7.0, -9.0, -3.2),
    (9.0, -11.6, -5.2),
    (5.6, -32.2, -28.6),
    (6.6, -33.4, -30.2),
)
VALVE_TUBE = (
    (6.0, -0.6, 1.5),
    (9.0, -0.6, 1.5),
    (10.5, -2.5, -0.5),
    (43.0, -2.5, -0.5),
    (44.5, -14.0, -1.2),
    (46.0, -15.0, -1.9),
)
KEEL_TUBE = (
    (7.5, -4.0, 1.0),
    (12.0, -4.0, 1.0),
    (14.0, -2.2, -3.0),
    (88.0, -2.2, -1.0),
    (92.0, -6.0, 3.0),
    (94.5, -14.0, 7.0),
)


class TestInventedAircraft:
    """Tubes of three invented aircraft, worked by hand, inches and degrees; not published."""

    @pytest.mark.parametrize(
        ("points", "radius", "developed", "angles", "rotations"),
        [
            (LEG_TUBE, 0.75, "39.6", ("58.6", "39.1", "33.1"), ("129.5", "157.5")),
            (VALVE_TUBE, 0.75, "51.7", ("61.5", "61.5", "82.6", "50.7"), ("180", "137.0", "154.8")),
            (KEEL_TUBE, 0.50, "99.3", ("65.5", "66.9", "52.9", "27.0"), ("179.3", "20.4", "44.9")),
        ],
        ids=["down a round leg", "from a valve to a belly", "along a keel"],
    )
    def test_left_tube_and_its_mirror_image(self, points, radius, developed, angles, rotations):
        line = centreline(points, radius)
        assert line.developed_length == as_printed(developed)
        assert [degrees(bend.angle) for bend in line.bends] == [as_printed(angle) for angle in angles]
        turns = [degrees(bend.rotation) for bend in line.bends[1:]]
        assert turns == [as_printed(rotation) for rotation in rotations]

        right = centreline(tuple((x, -y, z) for x, y, z in points), radius)
        assert right.straights == pytest.approx(line.straights)
        assert [degrees(bend.angle) for bend in right.bends] == [as_printed(angle) for angle in angles]
        signs = ["" if rotation == "180" else "-" for rotation in rotations]
        mirrored = [as_printed(sign + rotation) for sign, rotation in zip(signs, rotations, strict=True)]
        assert [degrees(bend.rotation) for bend in right.bends[1:]] == mirrored

    def test_straights_down_the_leg(self):
        """Both end straights are only just enough for nut, sleeve and tool."""
        line = centreline(LEG_TUBE, 0.75)
        assert line.polyline_length == as_printed("39.7")
        assert line.straights[0] == as_printed("1.88")
        assert line.straights[-1] == as_printed("2.01")
        assert max(line.straights) == as_printed("30.9")

    def test_last_straight_at_the_belly(self):
        assert centreline(VALVE_TUBE, 0.75).straights[-1] == as_printed("1.58")

    def test_longest_straight_along_the_keel(self):
        """By hand 74, the distance of the corners along the tube; the setbacks take 0.6 of it."""
        straight = max(centreline(KEEL_TUBE, 0.5).straights)
        assert straight == pytest.approx(74.03 - 0.5 * (0.6606 + 0.4979), abs=0.005)
