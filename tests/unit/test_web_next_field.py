"""From one unknown to the next in the form: each leads to the cell in which it is written."""

from __future__ import annotations

import pytest

from firmpedal.project import read_text
from firmpedal.project.field_places import thing_at
from firmpedal.project.fields import form_of
from firmpedal.project.layouts import chosen, layout_text
from firmpedal.project.unknowns import unknowns
from firmpedal.web.form.chosen import cell_of

READING = read_text(
    layout_text(chosen(gear="tailwheel", leg="leaf", brakes="toe", seats="1", valve="yes", length="in"), "a"),
    "a",
)
SUPPOSED = {item.path: item.supposed for item in unknowns(READING)}
PATHS = list(SUPPOSED)


def field_of(path):
    group = form_of(READING, thing_at(READING, path))
    return next(field for field in group.all_fields() if f"{path}.".startswith(f"{field.place}."))


@pytest.mark.parametrize("path", PATHS)
def test_the_cell_says_that_it_is_unknown_or_what_it_is_supposed_to_be(path):
    field = field_of(path)
    row, cell = cell_of(field, path)
    found = field.rows[row]
    said = found.cells[cell].words if found.cells else found.way
    assert said in ((SUPPOSED[path],) if SUPPOSED[path] else ("unknown", "not measured yet"))


def test_the_figures_of_one_shape_have_cells_of_their_own():
    within = [path for path in PATHS if path.startswith("keep clear of.left_disc.where")]
    assert len(within) == 3
    assert len({cell_of(field_of(path), path) for path in within}) == 3


def test_a_path_that_leads_nowhere_leads_to_the_first_cell():
    assert cell_of(field_of(PATHS[0]), "nowhere") == (0, 0)
