"""What an option has written out for itself is changed there alone, wherever the rest of it comes from."""

from __future__ import annotations

import pytest
from options_text import TEXT as THISTLEMOOR
from yaml_said import yaml_of

from firmpedal.project import read_text
from firmpedal.project.apart import goes_under, is_lent, is_own, thing_of
from firmpedal.project.corner_list import as_a_point, with_corner, without_corner
from firmpedal.project.edit import EditError
from firmpedal.project.edit_keys import with_value, without_key
from firmpedal.project.field_edits import put_in, with_mark, with_row, without_row
from firmpedal.project.field_places import thing_at, things_of
from firmpedal.project.field_rows import given_in
from firmpedal.project.fields import form_of
from firmpedal.project.measured import measured
from firmpedal.web.form.fields import LENT, Around, field_html
from texts import edited, example

OPTION = "odd"
HOSE = "        made of: hose -4 PTFE braided\n"
# One key of each thing is written in the option; everything else of it comes from the aircraft as written.
PARTIAL = (
    example("brindlewick").partition("options:\n")[0]
    + """\
options:
  odd:
    lines: {left_line: {clamps: none}}
    components: {left_cylinder: {stroke: 0.75}, left_caliper: {pad gap: 0.025}}
    zones: {left_brake_heat: {temperature: 180}}
    moving: {left_caliper_float: {pads: {worn: [0, 0.15, 0]}}}
    pedals: {left_pedal_brake: {brake: {arm: 2.25}}}
    panels: {cabin_floor: {thickness: 0.1}}
    states: {pads: {measured at: worn}}
    foot: {panic: 210}
    on the ground: {wheelbase: 180}
"""
)


def as_written(text):
    said = yaml_of(text)
    odd = said["options"].pop(OPTION, {})
    return said, odd


def fields_of(text, place):
    reading = read_text(text, "a.yaml", OPTION)
    assert reading.problems == ()
    return reading, tuple(form_of(reading, thing_at(reading, place)).all_fields())


def field_at(text, place):
    reading, fields = fields_of(text, place)
    return reading, next(each for each in fields if each.place == place)


def put(text, place, words, row=0, number=0):
    reading, field = field_at(text, place)
    return put_in(reading, field, field.rows[row].cells[number], words)


def tried(reading, field):
    """Every text that comes out of something done to a field."""
    for row in field.rows:
        for cell in row.cells:
            for words in ("", "unknown", "1", *cell.choices[:2]):
                yield lambda cell=cell, words=words: put_in(reading, field, cell, words)
        for way in row.ways:
            yield lambda row=row, way=way: given_in(reading, row, way, field.method)
        if field.many and row.place != field.place:
            yield lambda row=row: without_row(reading, field, row.place)
    if field.many:
        yield lambda: with_row(reading, field)
    if field.mark:
        yield lambda: with_mark(reading, field, "assumed")


THINGS = [
    "lines.left_line",
    "components.left_cylinder",
    "components.left_caliper",
    "zones.left_brake_heat",
    "moving.left_caliper_float",
    "pedals.left_pedal_brake",
    "panels.cabin_floor",
    "states.pads",
    "foot",
    "on the ground",
]


@pytest.mark.parametrize("place", THINGS)
def test_nothing_done_to_a_thing_of_the_option_changes_the_aircraft_as_written(place):
    reading, fields = fields_of(PARTIAL, place)
    before = PARTIAL.partition("options:\n")[0]
    lent, done = 0, 0
    for field in fields:
        assert field.lent == is_lent(PARTIAL, field.place, OPTION) or field.copied or not field.written
        lent += field.lent
        for does in tried(reading, field):
            try:
                after = does()
            except EditError:
                continue
            assert after.partition("options:\n")[0] == before, field.place
            done += after != PARTIAL
    assert lent
    assert done > len(fields) / 2


@pytest.mark.parametrize("place", THINGS)
def test_what_is_typed_stands_in_the_field_and_the_rest_of_the_thing_stays(place):
    reading, fields = fields_of(PARTIAL, place)
    for field in fields:
        for number, row in enumerate(field.rows):
            for n, cell in enumerate(row.cells):
                words = f"{cell.words} " if cell.choices else "7/8"
                if not cell.words or field.copied:
                    continue
                try:
                    after = put_in(reading, field, cell, words)
                except EditError:
                    continue
                _, again = fields_of(after, place)
                now = {each.place: each for each in again}
                assert now[field.place].rows[number].cells[n].words == words.strip()
                assert not now[field.place].lent or after == PARTIAL
                others = {each.place: each for each in fields if each.place != field.place}
                for at, one in others.items():
                    assert [c.words for r in now[at].rows for c in r.cells] == [
                        c.words for r in one.rows for c in r.cells
                    ], (field.place, at)


def test_a_figure_emptied_in_the_option_shows_the_one_as_written_and_never_changes_it():
    text = edited(THISTLEMOOR, ("  pedal: {from: cylinder", "  pedal: {tightest bend: 3, from: cylinder"))
    text += f"  {OPTION}:\n    lines:\n      pedal:\n{HOSE}        tightest bend: 2\n"
    place = "lines.pedal.tightest bend"
    once = put(text, place, "")
    _, field = field_at(once, place)
    assert (field.rows[0].cells[0].words, field.lent) == ("3", True)
    assert LENT in field_html(field, Around("a.yaml", OPTION))
    typed = put(once, place, "unknown")
    assert as_written(typed)[0] == as_written(text)[0]
    assert as_written(typed)[1]["lines"]["pedal"]["tightest bend"] == "unknown"
    assert put(once, place, "") == typed  # somebody still has to find it out


def test_a_word_emptied_in_the_option_is_left_out_there_alone_and_can_be_typed_again():
    place = "lines.left_line.support"
    _, field = field_at(PARTIAL, place)
    assert (field.rows[0].cells[0].words, field.lent) == ("tie wraps", True)
    out = put(PARTIAL, place, "")
    assert as_written(out)[0] == as_written(PARTIAL)[0]
    assert as_written(out)[1]["lines"]["left_line"] == {"clamps": "none", "support": "removed"}
    _, field = field_at(out, place)
    assert not field.written
    assert LENT not in field_html(field, Around("a.yaml", OPTION))
    again = put(out, place, "tie wraps")
    assert as_written(again)[1]["lines"]["left_line"] == {"clamps": "none", "support": "tie wraps"}


def test_what_is_left_out_in_an_option_may_go_from_the_aircraft_as_written_too():
    text = THISTLEMOOR + f"  {OPTION}: {{lines: {{leg: {{bend radius: removed}}}}}}\n"
    for changed in (text, without_key(text, "lines.leg.bend radius")):
        reading = read_text(changed, "a.yaml", OPTION)
        assert reading.problems == ()
        assert (
            "bend radius" not in next(each for each in reading.aircraft.lines if each.name == "leg").written
        )


def test_a_list_of_corners_is_taken_along_as_a_whole():
    first, *corners = yaml_of(PARTIAL)["lines"]["left_line"]["via"]
    line, via, new, words = "lines.left_line", "lines.left_line.via", [1, 2, 3], "[1, 2, 3]"
    wanted = {
        with_value(PARTIAL, f"{via}.2", words, OPTION): [first, new, *corners[1:]],
        with_corner(PARTIAL, line, 1, words, OPTION): [first, new, *corners],
        without_corner(PARTIAL, line, 1, OPTION): corners,
        as_a_point(PARTIAL, line, 1, words, OPTION): [new, *corners],
    }
    for after, listed in wanted.items():
        said, odd = as_written(after)
        assert said == as_written(PARTIAL)[0]
        assert odd["lines"]["left_line"] == {"clamps": "none", "via": listed}
        assert max(map(len, after.splitlines())) <= max(map(len, PARTIAL.splitlines()))


def test_what_is_measured_of_a_thing_of_the_option_is_written_there():
    place = "components.left_cylinder.rated pressure"
    open_ = edited(PARTIAL, ("    bore: 0.625\n", "    bore: 0.625\n    rated pressure: unknown\n"))
    for text in (PARTIAL, open_):
        after, where = measured(text, place, "1500", OPTION)
        assert where == OPTION
        assert as_written(after)[0] == as_written(text)[0]
        assert as_written(after)[1]["components"]["left_cylinder"] == {"stroke": 0.75, "rated pressure": 1500}


def test_what_is_not_written_out_holds_for_every_option_as_before():
    place = "zones.left_leg_fairing.gap"
    after = put(PARTIAL, place, "1/2")
    assert as_written(after)[0]["zones"]["left_leg_fairing"]["gap"] == "1/2"
    assert as_written(after)[1] == as_written(PARTIAL)[1]
    assert not field_at(PARTIAL, place)[1].lent


def test_of_which_thing_a_place_is_and_where_it_goes():
    reading = read_text(PARTIAL, "a.yaml", OPTION)
    for things in things_of(reading).values():
        for thing in things:
            for field in form_of(reading, thing).all_fields() if thing.place else ():
                assert thing_of(field.place) == thing.place
                own = thing.place in THINGS
                assert is_own(PARTIAL, field.place, OPTION) == own
                if own:
                    assert goes_under(PARTIAL, field.place, OPTION) == OPTION
