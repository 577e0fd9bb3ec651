"""Every drawing of the packet, the form and the pages at full size goes out, each under a name of its own."""

from __future__ import annotations

from xml.etree import ElementTree as ET

import pytest
from evaluated import awkward, example, of_kind

from firmpedal.export.formats import FORMATS
from firmpedal.report.drawings import drawings
from firmpedal.report.fullsize import fullsize_pages
from firmpedal.report.measuring import form_sheets
from firmpedal.report.packet import packet_sheets
from firmpedal.report.paper import PAPERS
from firmpedal.report.sheet import Drawing

EVALUATIONS = {"written": example, "rigid": lambda: example("rigid"), "awkward": awkward}


@pytest.mark.parametrize("which", EVALUATIONS)
def test_no_drawing_is_left_behind(which):
    evaluation = EVALUATIONS[which]()
    sheets = (*packet_sheets(evaluation), *form_sheets(evaluation))
    printed = [drawing for sheet in sheets for drawing in of_kind(sheet, Drawing)]
    printed += [page.drawing for page in fullsize_pages(evaluation, PAPERS["A4"])]
    found = list(drawings(evaluation).values())
    assert len(found) == len(printed)
    assert all(drawing in found for drawing in printed)


def test_names_say_what_is_drawn():
    assert {
        *(
            "left_leg",
            "left_leg_clock_faces",
            "left_tail",
            "circuit",
            "flares",
            "torque",
            "to_measure",
            "pedal",
        ),
        *("fullsize_left_leg_bends_2_3", "fullsize_Holes_in_panels"),
    } <= set(drawings(example("rigid")))


def test_each_is_a_file_of_its_own_that_can_be_read(tmp_path):
    made = FORMATS["svg"](example("rigid"), tmp_path, "plane").paths
    assert {path.stem for path in made} == set(drawings(example("rigid")))
    assert len({path.name.casefold() for path in made}) == len(made)
    for path in made:
        ET.fromstring(path.read_text(encoding="utf-8"))  # noqa: S314  written by our own program
