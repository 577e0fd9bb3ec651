"""A bare number means the file's own unit, and every field of a figure says which that is.

That it is so is seen in the model: a number alone has to give the same aircraft as one with the unit that
the field shows.
"""

from __future__ import annotations

import re

import pytest

from firmpedal.project import read_text
from firmpedal.project.edit import EditError
from firmpedal.project.field_edits import put_in
from firmpedal.project.field_places import thing_at, things_of
from firmpedal.project.fields import form_of
from firmpedal.web.form.fields import Around, field_html
from texts import edited, example

TEXT = example("brindlewick")
OTHER = example("oatmere")
SHAPES = "keep clear of: {left_rod: {kind: disc, where: {bar: [unknown, [1, 2, 3]], radius: unknown}}}\n\n"
BARE = "firmpedal: 1\naircraft: {name: A, gear: tailwheel, brakes: toe}\npoints: {here: unknown}\n"


def fields_of(text, place, option=None):
    reading = read_text(text, "a.yaml", option)
    form = form_of(reading, thing_at(reading, place))
    return reading, {each.place: each for each in form.all_fields()}


def html_of(text, place, key, option=None):
    _, fields = fields_of(text, place, option)
    return field_html(fields[f"{place}.{key}"], Around("a.yaml", option))


def spans(text, option=None):
    """Every figure of the model, however deep."""
    found = []

    def walk(each):
        if hasattr(each, "span") and hasattr(each, "dimension"):
            found.append((each.dimension, each.span))
        elif isinstance(each, tuple | list):
            list(map(walk, each))
        elif hasattr(type(each), "model_fields"):
            for name in type(each).model_fields:
                walk(getattr(each, name))
        elif hasattr(each, "__dataclass_fields__"):
            for name in each.__dataclass_fields__:
                walk(getattr(each, name))

    walk(read_text(text, "a.yaml", option).aircraft)
    return found


@pytest.mark.parametrize(("text", "option"), [(TEXT, "rigid"), (OTHER, None)])
def test_a_number_alone_is_one_in_the_unit_that_is_shown(text, option):
    reading, tried = read_text(text, "a.yaml", option), set()
    compared = set()
    for thing in (each for several in things_of(reading).values() for each in several):
        form = form_of(reading, thing)
        for field in form.all_fields():
            cells = [cell for row in field.rows for cell in row.cells if cell.unit]
            if not cells or thing.copy_of or (field.key, field.method) in tried:
                continue
            tried.add((field.key, field.method))
            for cell in cells:
                try:
                    bare, named = (put_in(reading, field, cell, words) for words in ("3", f"3 {cell.unit}"))
                except EditError:  # such as both ways along one axis
                    continue
                assert bare != named
                assert spans(bare, option) == spans(named, option), cell.place
                compared.add(cell.unit)
    assert len(tried) > 20
    assert {"in", "psi", "deg"} <= compared


def test_a_field_names_the_unit_of_the_file_for_eyes_and_ears():
    html = html_of(TEXT, "components.left_cylinder", "bore")
    assert 'aria-label="bore, in"' in html
    assert '<span class="fp-unit" aria-hidden="true">in</span>' in html
    metric = edited(TEXT, ("length: in", "length: mm"))
    assert 'aria-label="bore, mm"' in html_of(metric, "components.left_cylinder", "bore")
    assert 'aria-label="rated pressure, psi"' in html_of(TEXT, "components.left_cylinder", "rated pressure")


def test_a_point_names_it_in_coordinates_and_by_tape():
    html = html_of(TEXT, "lines.left_leg", "via", "rigid")
    assert 'aria-label="via 2 aft, in"' in html
    assert ">right (in)</span>" in html
    points = edited(TEXT, ("zones:\n", "points:\n  axle: [1, 2, 3]\n  hub: {from: axle, aft: 2}\n\nzones:\n"))
    _, fields = fields_of(points, "points.hub")
    cells = fields["points.hub"].rows[0].cells
    assert [cell.unit for cell in cells] == ["in"] * 6


def test_the_pieces_of_shapes_and_swings_name_it():
    text = edited(TEXT, ("bench:\n", f"{SHAPES}bench:\n"))
    html = html_of(text, "keep clear of.left_rod", "where")
    assert ">radius (in)</span>" in html
    assert len(re.findall(r"aria-label=\"where one end (?:aft|right|up), in\"", html)) == 3
    reading = read_text(text, "a.yaml")
    units = {
        cell.label: cell.unit
        for thing in things_of(reading)["moving"]
        for field in form_of(reading, thing).all_fields()
        for row in field.rows
        for cell in row.cells
    }
    assert (units["aft"], units["swing"], units["axis"]) == ("in", "deg", "")


def test_what_is_no_figure_and_a_file_without_units_have_none():
    _, fields = fields_of(TEXT, "components.left_cylinder")
    for key in ("kind", "seals", "body"):
        assert not fields[f"components.left_cylinder.{key}"].rows[0].cells[0].unit
    _, fields = fields_of(BARE, "points.here")
    html = field_html(fields["points.here"], Around("a.yaml", None))
    assert 'aria-label="place aft"' in html
    assert "(" not in html.partition("<input")[0].rpartition("<span")[2]
