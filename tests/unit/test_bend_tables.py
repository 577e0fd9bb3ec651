"""Bend data and points go out as tables and come back the same."""

from __future__ import annotations

from math import degrees

import pytest
from evaluated import example
from hypothesis import given
from hypothesis import strategies as st

from firmpedal.export.bend_tables import (
    BEND_COLUMNS,
    PLANE,
    SIGN_WORDS,
    TUBE,
    TableError,
    _bend_rows,
    _table,
    bends_csv,
    points_csv,
    read_bends,
    read_points,
)
from firmpedal.lay.half_bent import BendData
from firmpedal.lay.shape import Bend

NANOMETRE = 1e-9
HEADING = ",".join(BEND_COLUMNS)


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
    back = read_bends(bends_csv(example("rigid"), sign))
    for line in example("rigid").laid:
        if line.tube:
            same(back[line.name], BendData(line.tube.centreline.straights, line.tube.centreline.bends))


def same(one, other):
    assert one.straights == pytest.approx(other.straights, abs=NANOMETRE)
    for a, b in zip(one.bends, other.bends, strict=True):
        assert (a.angle, a.rotation, a.radius) == pytest.approx((b.angle, b.rotation, b.radius), abs=1e-10)


def test_points_come_back():
    back = read_points(points_csv(example("rigid")))
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
    back = read_bends(text)["t"]
    assert back.straights == pytest.approx(tube.straights, abs=NANOMETRE)
    for number, (a, b) in enumerate(zip(back.bends, tube.bends, strict=True)):
        wanted = (b.angle, b.rotation if number else 0.0, b.radius)
        assert (a.angle, a.rotation, a.radius) == pytest.approx(wanted, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "row 1: there is no table"),
        ("# only a remark\n", "row 1: there is no table"),
        ("line,bend\na,1\n", "row 1: there is no column `straight_before_mm`"),
        (
            ",".join(BEND_COLUMNS) + "\na,1,ten,0,90,20\n",
            "row 2: `ten` under straight_before_mm is no number",
        ),
        (",".join(BEND_COLUMNS) + "\na,1,10,0,90,20\n", "a has no row `end`"),
        (
            ",".join(BEND_COLUMNS) + "\na,end,10,,,\na,1,10,0,90,20\n",
            "row 3: a goes on after its last straight",
        ),
    ],
)
def test_a_broken_table_says_what_and_where(text, message):
    with pytest.raises(TableError, match=message):
        read_bends(text)


def test_a_table_from_a_spreadsheet_is_read():
    text = "\ufeffline , point,aft_mm,right_mm,up_mm\n\nrun,1, 10,20,30\nrun,2,11,21,31\n"
    assert read_points(text) == {"run": ((0.01, 0.02, 0.03), (0.011, 0.021, 0.031))}


def test_angles_are_in_degrees():
    first = example("rigid").laid[1]
    (row,) = [
        line for line in bends_csv(example("rigid")).splitlines() if line.startswith(f"{first.name},1,")
    ]
    assert float(row.split(",")[4]) == pytest.approx(degrees(first.tube.centreline.bends[0].angle))
