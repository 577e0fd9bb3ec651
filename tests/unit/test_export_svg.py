"""Drawings as SVG, read back as XML."""

from __future__ import annotations

from xml.etree import ElementTree as ET

import pytest
from evaluated import example

from firmpedal.export.plain import plain
from firmpedal.export.svg import svg
from firmpedal.report.pictures import picture
from firmpedal.report.sheet import Dot, Drawing, Label, Paragraph, Sheet, Stroke, Table, Tone

SPACE = "{http://www.w3.org/2000/svg}"


def read(*marks, size=(200.0, 100.0)):
    return ET.fromstring(svg(Drawing(size, marks)))  # noqa: S314  written by our own program


def test_up_on_the_drawing_is_up_in_the_picture():
    root = read(Dot((10, 90), 2), Dot((10, 10), 2))
    high, low = root.findall(f"{SPACE}circle")
    assert float(high.get("cy")) == 10
    assert float(low.get("cy")) == 90


def test_the_picture_is_as_large_as_the_drawing():
    root = read()
    assert root.get("width") == "200pt"
    assert root.get("viewBox") == "0 0 200 100"


def test_a_dimension_has_a_head_at_each_end_pointing_outwards():
    root = read(Stroke(((20, 50), (180, 50)), 1, arrows=True))
    heads = [
        [tuple(map(float, p.split(","))) for p in each.get("points").split()]
        for each in root.findall(f"{SPACE}polygon")
    ]
    assert [head[0] for head in heads] == [(20, 50), (180, 50)]
    assert all(x > 20 for x, _ in heads[0][1:])
    assert all(x < 180 for x, _ in heads[1][1:])


def test_dashes_and_weights_are_kept():
    (line,) = read(Stroke(((0, 0), (10, 0), (10, 10)), 2.5, dashed=True)).findall(f"{SPACE}polyline")
    assert line.get("stroke-width") == "2.5"
    assert line.get("stroke-dasharray")
    assert line.get("points") == "0,100.00 10,100.00 10,90.00"


@pytest.mark.parametrize("text", ["<b>", "a & b", '"quoted"', "39.1\u00b0"])
def test_any_text_survives(text):
    (label,) = read(Label(text, (50, 50))).findall(f"{SPACE}text")
    assert label.text == text


def test_blanks_that_keep_room_for_a_ring_are_kept():
    (label,) = read(Label(" 1   58.6", (50, 50))).findall(f"{SPACE}text")
    assert label.text == " 1   58.6"
    assert label.get("{http://www.w3.org/XML/1998/namespace}space") == "preserve"


def test_a_turned_label_turns_to_the_left_as_angles_do():
    (label,) = read(Label("x", (50, 50), angle=90)).findall(f"{SPACE}text")
    assert label.get("transform") == "rotate(-90 50 50.00)"


def test_every_mark_of_a_real_drawing_arrives():
    evaluation = example("rigid")
    drawing = picture(next(line for line in evaluation.laid if line.name == "left_leg"), evaluation.display)
    root = ET.fromstring(svg(drawing))  # noqa: S314
    assert len(root) == len(drawing.marks)


def test_sheets_become_plain_data():
    sheet = Sheet("t", (Paragraph("p", Tone.NOTE), Table(("a", "b"), (("1", "2"),), frozenset({1, 0}))))
    assert plain(sheet) == {
        "kind": "sheet",
        "title": "t",
        "state": "",
        "blocks": [
            {"kind": "paragraph", "text": "p", "tone": "NOTE"},
            {"kind": "table", "columns": ["a", "b"], "rows": [["1", "2"]], "right": [0, 1], "title": "",
             "widths": [], "large": [], "pen": [], "about": None},
        ],
        "new_page": True,
        "subtitle": "",
    }  # fmt: skip
