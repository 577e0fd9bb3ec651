"""Bend data and points go out as tables and come back the same."""

from __future__ import annotations

from dataclasses import replace
from math import degrees

import numpy as np
import pytest
from evaluated import EXAMPLE, example
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from firmpedal.decide.bend_rows import PLANE, SIGN_WORDS, TUBE
from firmpedal.decide.listing import ListError
from firmpedal.decide.shape_tables import shapes_of
from firmpedal.export.bend_tables import BEND_COLUMNS, _bend_rows, _table, _unsure, bends_csv, points_csv
from firmpedal.lay.half_bent import BendData
from firmpedal.lay.shape import Bend
from firmpedal.pipeline import evaluate_text

NANOMETRE = 1e-9
HEADING = ",".join(BEND_COLUMNS)
POINTS = "line,point,aft_in,right_in,up_in"


def test_the_heading_names_units_and_sign():
    text = bends_csv(example("rigid"))
    assert text.splitlines()[0].startswith("# rotation: the plane of the next bend, right hand")
    assert "straight_before_mm,rotation_deg,angle_deg,radius_mm" in text


def test_the_leg_as_a_table():
    # worked by hand: straights 1.879 in, 3.155 in; bends 58.6 and 39.1 degrees, rotation 129.5
    rows = [
        line.split(",") for line in bends_csv(example("rigid")).splitlines() if line.startswith("left_leg")
    ]
    assert [float(cell) for cell in rows[0][2:]] == pytest.approx([47.73, 0, 58.6, 19.05], abs=0.05)
    assert [float(cell) for cell in rows[1][2:]] == pytest.approx([80.13, 129.5, 39.1, 19.05], abs=0.05)
    assert rows[3][:2] == ["left_leg", "end"]


def test_a_tube_that_nobody_measured_says_so_above_its_figures():
    sure = bends_csv(example("rigid"))
    assert "Measure before you bend" not in sure
    text = EXAMPLE.read_text(encoding="utf-8")
    for guessed in ("{value: [9.0, -11.6, -5.2], mark: assumed}", "[about 9.0, -11.6, -5.2]"):
        there = text.replace("[9.0, -11.6, -5.2]", guessed)
        assert there != text
        unsure = bends_csv(evaluate_text(there, "guessed.yaml", "rigid"))
        (remark,) = [line for line in unsure.splitlines() if line.startswith("# left_leg")]
        assert "Measure before you bend" in remark
        assert shapes_of(unsure).keys() == shapes_of(sure).keys()


@pytest.mark.parametrize(
    ("point", "why"),
    [
        ("{value: [9.0, -11.6, -5.2], mark: assumed}", "rests on an assumed point"),
        ("[about 9.0, -11.6, -5.2]", "rests on an estimate"),
        ("[8.9 to 9.1, -11.6, -5.2]", "has figures with a range"),
    ],
)
def test_why_a_table_is_unsure_is_told_as_it_is(point, why):
    text = EXAMPLE.read_text(encoding="utf-8").replace("[9.0, -11.6, -5.2]", point)
    remarks = [row for row in bends_csv(evaluate_text(text, "x", "rigid")).splitlines() if row[0] == "#"]
    assert f"# left_leg: {why}; here is the middle. Measure before you bend" in remarks
    assert f"# right_leg: {why}; here is the middle. Measure before you bend" in remarks


def test_a_line_that_is_not_known_yet_has_no_rows():
    corners = "- [9.0, -11.6, -5.2]\n          - [5.6, -32.2, -28.6]"
    unknown = EXAMPLE.read_text(encoding="utf-8").replace(corners, "- unknown")
    evaluation = evaluate_text(unknown, "x", "rigid")
    for table in (bends_csv(evaluation), points_csv(evaluation)):
        assert not [row for row in table.splitlines() if row.startswith(("left_leg", "right_leg"))]
    assert [row for row in points_csv(evaluation).splitlines() if row.startswith("left_tail")]


def widened(value):
    return replace(value, span=(value.low, value.high + 0.002))


@pytest.mark.parametrize("part", ["developed_length", "straights", "bends"])
def test_one_figure_with_a_range_is_enough_to_measure_first(part):
    """The last straight or angle alone, by two millimetres or a tenth of a degree."""
    (tube, *_) = [line.tube for line in example("rigid").laid if line.tube]
    assert list(_unsure("leg", tube)) == []
    whole = getattr(tube, part)
    if part == "developed_length":
        unsure = widened(whole)
    elif part == "straights":
        unsure = (*whole[:-1], widened(whole[-1]))
    else:
        unsure = (*whole[:-1], replace(whole[-1], angle=widened(whole[-1].angle)))
    (remark,) = _unsure("leg", replace(tube, **{part: unsure}))
    assert remark.startswith("leg: has figures with a range")


def by_hand(rows, sign):
    """What a bender makes of the rows of one tube: its places from the first end on, in millimetres.

    The tube is fed along the first axis and bent from there towards the second, about the third. With
    `plane` the bender goes round a tube that lies still; with `tube` it stays, and the tube is turned.
    """
    places, (x, y, z) = [np.zeros(3)], np.eye(3)
    for feed, turn, angle, radius in rows:
        if sign == TUBE:
            places = list(Rotation.from_rotvec(np.radians(turn) * x).apply(np.array(places) - places[-1]))
        else:
            y, z = Rotation.from_rotvec(np.radians(turn) * x).apply((y, z))
        places.append(places[-1] + feed * x)
        middle, bent = places[-1] + radius * y, Rotation.from_rotvec(np.radians(angle) * z)
        places.append(middle + bent.apply(places[-1] - middle))
        if sign == TUBE:  # laid in again, so that the bender finds its straight along the first axis
            places = list(bent.inv().apply(np.array(places)))
        else:
            x, y = bent.apply((x, y))
    return np.array(places)


@pytest.mark.parametrize("sign", [PLANE, TUBE])
def test_a_bender_that_follows_the_table_makes_the_tube_and_not_its_mirror_image(sign):
    """scipy lays the one on the other by turning alone: a mirror image would stay centimetres off."""
    for line in example("rigid").laid:
        if not line.tube:
            continue
        rows = [row.split(",") for row in bends_csv(example("rigid"), sign).splitlines()]
        figures = [
            [float(cell) for cell in row[2:]] for row in rows if row[0] == line.name and row[1] != "end"
        ]
        made = by_hand(figures, sign)
        wanted = 1000 * np.array(line.tube.centreline.tangent_points[:-1])
        _, apart = Rotation.align_vectors(made - made[0], wanted - wanted[0])
        assert apart < 1e-3
        _, mirrored = Rotation.align_vectors((made - made[0]) * [1, 1, -1], wanted - wanted[0])
        assert mirrored > 10


def test_the_other_sign_turns_every_rotation_round():
    plane, tube = (read_rows(bends_csv(example("rigid"), sign)) for sign in (PLANE, TUBE))
    assert [row[3] for row in tube] == [-row[3] for row in plane]
    assert [row[2] for row in tube] == [row[2] for row in plane]


def read_rows(text):
    rows = [
        line.split(",") for line in text.splitlines() if line.startswith("left_leg") and "end" not in line
    ]
    return [[row[0], row[1], *(float(cell) for cell in row[2:])] for row in rows]


@pytest.mark.parametrize("sign", [PLANE, TUBE])
def test_bends_come_back(sign):
    back = shapes_of(bends_csv(example("rigid"), sign))
    for line in example("rigid").laid:
        if line.tube:
            same(back[line.name], BendData(line.tube.centreline.straights, line.tube.centreline.bends))


def same(one, other):
    assert one.straights == pytest.approx(other.straights, abs=NANOMETRE)
    for a, b in zip(one.bends, other.bends, strict=True):
        assert (a.angle, a.rotation, a.radius) == pytest.approx((b.angle, b.rotation, b.radius), abs=1e-10)


def test_points_come_back():
    back = shapes_of(points_csv(example("rigid")))
    for line in example("rigid").laid:
        for one, other in zip(back[line.name], line.path, strict=True):
            assert one == pytest.approx(other, abs=NANOMETRE)


TURNS = st.floats(-3.14, 3.14)
BENDS = st.builds(Bend, st.just(1), st.floats(0.01, 3), TURNS, st.floats(0.005, 0.5), st.just(0.0))
TUBES = st.lists(BENDS, min_size=1, max_size=6).flatmap(
    lambda bends: st.lists(st.floats(0, 5), min_size=len(bends) + 1, max_size=len(bends) + 1).map(
        lambda straights: BendData(tuple(straights), tuple(bends))
    )
)


@given(TUBES, st.sampled_from([PLANE, TUBE]))
def test_any_bend_data_comes_back(tube, sign):
    text = _table((SIGN_WORDS[sign],), BEND_COLUMNS, list(_bend_rows("t", tube, sign)))
    back = shapes_of(text)["t"]
    assert back.straights == pytest.approx(tube.straights, abs=NANOMETRE)
    for number, (a, b) in enumerate(zip(back.bends, tube.bends, strict=True)):
        wanted = (b.angle, b.rotation if number else 0.0, b.radius)
        assert (a.angle, a.rotation, a.radius) == pytest.approx(wanted, abs=1e-9)


BROKEN = [
    ("", 1, 1, "there is no table"),
    ("# only a remark\n", 1, 1, "there is no table"),
    ("line,bend\na,1\n", 1, 1, "there is no column `straight before`"),
    ("line,aft_in,up_in\na,1,2\n", 1, 1, "there is no column `right`"),
    (f"{HEADING}\n", 1, 1, "no rows under the titles"),
    (f"{HEADING}\na,1,ten,0,90,20\n", 2, 5, "straight before: 'ten'"),
    (f"{HEADING}\na,1,10,0,90\n", 2, 1, "nothing under radius"),
    (f"{HEADING}\na,1,10,0,,20\n", 2, 10, "nothing under angle"),
    (f"{HEADING}\na,1,10,0,180,20\n", 2, 10, "less than 180"),
    (f"{HEADING}\na,1,10,0,0,20\n", 2, 10, "more than nothing"),
    (f"{HEADING}\na,1,-10,0,90,20\n", 2, 5, "below nothing"),
    (f"{HEADING}\na,1,10,0,90,0\n", 2, 13, "no bend of radius 0"),
    (f"{HEADING}\na,1,10 to 11,0,90,20\n", 2, 5, "no single figure"),
    (f"{HEADING}\na,1,10,0,90,20\n", 2, 1, "a has no row `end`"),
    (f"{HEADING}\na,end,10,,,\na,1,10,0,90,20\n", 3, 1, "a goes on after its last straight"),
    (f"{HEADING}\na,2,10,0,90,20\n", 2, 3, "bend 2 stands where bend 1 should"),
    (f"{HEADING}\na,1,9,0,90,20\na,2,9,45,90,20\na,end,9,,,\n", 3, 7, "does not say what turns"),
    (f"{HEADING}\na,1,9,30,90,20\na,end,9,,,\n", 2, 7, "bend 1 has a rotation of 30, and there is no bend"),
    (f"{HEADING}\na,1,9,x,90,20\na,end,9,,,\n", 2, 7, "rotation: 'x'"),
    (f"{HEADING}\na,1,9,0,90,20\na,end,9,30,,\n", 3, 9, "after the last straight nothing is turned"),
    (f"{HEADING}\na,1,9,0,90,20\na,end,9,,45,\n", 3, 10, "after the last straight nothing is bent"),
    (f"{HEADING}\na,1,9,0,90,20\na,end,9,0,0,25\n", 3, 13, "radius 25, and no bend of this line has it"),
    (f"{HEADING}\na,1,9,0,90,20\na,end,,0,0,20\n", 3, 7, "nothing under straight before"),
    (f"{POINTS}\nrun,1,1,2,3\n", 2, 1, "a line has two ends"),
    (f"{POINTS}\nrun,1,1,2,3\nrun,3,1,2,9\n", 3, 5, "point 3 stands where point 2 should"),
    (f"{POINTS},aft_mm\nrun,1,1,2,3,4\n", 1, 34, "two columns `aft`"),
    ("aft_stone,right_in,up_in\n1,2,3\n2,3,4", 1, 1, "'stone' is not a unit"),
    ("aft,right_in,up_in\n1,2,3\n2,3,4", 2, 1, "aft: '1' has no unit"),
    ("aft_mm;right_mm;up_mm\n1,500;2;3\n2;3;4\n", 2, 1, "the comma in 1,500 can be read in two ways"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "row", "column", "message"), BROKEN)
def test_a_broken_table_says_what_and_where(text, row, column, message):
    with pytest.raises(ListError) as caught:
        shapes_of(text)
    assert message in caught.value.message
    assert (caught.value.line, caught.value.column) == (row, column)
    assert caught.value.suggestion


def test_a_table_from_a_spreadsheet_is_read():
    text = "line , point,aft_mm,right_mm,up_mm\n\nrun,1, 10,20,30\nrun,2,11,21,31\n"
    assert shapes_of(text) == {"run": ((0.01, 0.02, 0.03), (0.011, 0.021, 0.031))}


def test_columns_in_any_order_and_unit_and_figures_as_people_write_them():
    text = "Up (in);remark;Right [cm];aft_in\n3-1/2;low, at the floor;2;-0.5\n4 mm;x;2;1500\n"
    assert shapes_of(text) == {"": ((-0.0127, 0.02, 0.0889), (38.1, 0.02, 0.004))}


@pytest.mark.parametrize(
    ("remark", "turns", "degrees_turned"),
    [
        ("# rotation: plane", None, 45),
        ('"# rotation: the tube itself, as in the bender",,,,,', None, -45),
        ("#Rotation: Tube", "tube", -45),
        ("# no word of it", "plane", 45),
        ("# no word of it", "tube", -45),
    ],
)
def test_the_sign_is_the_tables_or_else_the_one_asked_for(remark, turns, degrees_turned):
    text = f"{remark}\n{HEADING}\na,1,9,0,90,20\na,2,9,45,90,20\na,end,9,,,\n"
    assert degrees(shapes_of(text, turns)["a"].bends[1].rotation) == pytest.approx(degrees_turned)


def test_a_sign_against_the_tables_own_word_is_refused():
    with pytest.raises(ListError, match="turns the plane, and tube was asked for"):
        shapes_of(f"# rotation: plane\n{HEADING}\na,end,9,,,\n", "tube")


def test_half_a_turn_needs_no_sign():
    text = f"{HEADING}\na,1,9,0,90,20\na,2,9,180,90,20\na,3,9,0,90,20\na,end,9,,,\n"
    assert [degrees(bend.rotation) for bend in shapes_of(text)["a"].bends] == pytest.approx([0, 180, 0])


def test_angles_are_in_degrees():
    first = example("rigid").laid[1]
    (row,) = [
        line for line in bends_csv(example("rigid")).splitlines() if line.startswith(f"{first.name},1,")
    ]
    assert float(row.split(",")[4]) == pytest.approx(degrees(first.tube.centreline.bends[0].angle))


@pytest.mark.parametrize("first", ["", "0", "-", "360", "-360"])
@pytest.mark.parametrize("end", [",,", "0,0,0", "-,-,20", "0,0,20"])
def test_figures_that_say_nothing_are_passed_over(first, end):
    text = f"{HEADING}\na,1,9,{first},90,20\na,end,9,{end}\n"
    (bend,) = shapes_of(text)["a"].bends
    assert bend.rotation == 0.0


@pytest.mark.parametrize(
    ("end", "advice"),
    [("30,,", "move them all one row up"), (",45,", "give the bend its number"), (",,25", "leave it empty")],
)
def test_what_stands_in_the_last_row_is_told_what_to_do_with_it(end, advice):
    with pytest.raises(ListError) as caught:
        shapes_of(f"{HEADING}\na,1,9,0,90,20\na,end,9,{end}\n")
    assert advice in caught.value.suggestion


def test_rotations_in_the_row_before_are_told_what_to_do():
    """Bends 1 and 2 a quarter apart, written in the row of bend 1."""
    text = f"{HEADING}\na,1,9,90,90,20\na,2,9,0,90,20\na,end,9,,,\n"
    with pytest.raises(ListError) as caught:
        shapes_of(text, PLANE)
    assert "move them all one row down" in caught.value.suggestion


@pytest.mark.parametrize("cell", ["-0,9", "0,900", "12,5", "3,0625", "+7,25"])
def test_a_comma_that_can_only_be_the_decimal_one_is_understood(cell):
    (points,) = shapes_of(f"aft_mm;right_mm;up_mm\n{cell};2;3\n2;3;4\n").values()
    assert points[0][0] == pytest.approx(float(cell.replace(",", ".")) / 1000)
