"""The fields of things as data, and what is done in them as changes of the text.

What a text says is read here by the YAML library itself, apart from the program's own reader.
"""

from __future__ import annotations

from io import StringIO
from itertools import product

import pytest
from ruamel.yaml import YAML

from firmpedal.model.aircraft import Aircraft
from firmpedal.model.component import BaseComponent
from firmpedal.project import read_text
from firmpedal.project.edit import EditError
from firmpedal.project.edit_keys import with_thing, with_value, without_key
from firmpedal.project.field_edits import put_in, with_mark, with_row, without_row, without_thing
from firmpedal.project.field_places import FILE, thing_at, things_of
from firmpedal.project.fields import form_of
from firmpedal.project.layouts import chosen, layout_text
from firmpedal.project.new_things import SORTS, questions, with_new
from firmpedal.project.reference import COPY_KEYS, EACH, file_reference
from firmpedal.project.schema import known_keys
from firmpedal.project.unknowns import next_unknown, unknowns
from texts import edited, example

LAYOUTS = [
    layout_text(chosen(gear="tailwheel", leg=leg, brakes=brakes, seats=seats, valve=valve), "new.yaml")
    for leg, (brakes, seats, valve) in product(
        ("leaf", "rod"), (("toe", "1", "no"), ("hand", "tandem", "yes"), ("toe", "side-by-side", "no"))
    )
]
TEXT = example("brindlewick")
# One file that has, of every section, a thing with everything that stands in one.
WHOLE = f"""{TEXT}
points: {{a_place: [1, 2, 3]}}
limits: {{burst factor: 4}}
buying: {{packs: {{rings: {{of: O-ring, pieces: 10}}}}}}
wheels: {{left_main: {{caliper: left_caliper}}}}
keep clear of: {{left_disc: {{kind: disc, where: unknown}}}}
accepted: [{{rule: tube-yields, at: lines.left_line, reason: tried}}]
"""

HOSE = "        made of: hose -4 PTFE braided\n"
ON_THE_BENCH = """\
  tube: {coil: {made of: tube 5052-O 1/4 x .035, pieces: [120]}}
  bender: {springback: [{asked: 90, got: 88}], parts: {former: {where: unknown}}}
"""
REFUSED = [
    ("components.left_cylinder.bore", "5/8 elbows"),
    ("components.left_cylinder.bore", "-1"),
    ("lines.left_line.made of", "string"),
    ("foot.hard", "a lot"),
]
LED = [
    ("lines.left_leg.via.2", "lines.left_leg"),
    ("bench.bend radius", "bench"),
    ("components.left_cylinder.ports.outlet.seat", "components.left_cylinder"),
    ("fluid", FILE),
]
PUT = [
    "bench.bender.grip",
    "limits.end play",
    "aircraft.date",
    "zones.left_brake_heat.gap",
    "pedals.left_pedal_brake.brake.arm",
    "components.left_caliper.lifts off",
]


def yaml_of(text):
    return YAML(typ="safe", pure=True).load(StringIO(text))


def every_field(reading):
    for things in things_of(reading).values():
        for thing in things:
            yield from form_of(reading, thing).all_fields()


def field_at(text, place, option=None):
    reading = read_text(text, "a.yaml", option)
    form = form_of(reading, thing_at(reading, place))
    return reading, next(each for each in form.all_fields() if each.place == place)


def put(text, place, words, row=0, number=0, option=None):
    reading, field = field_at(text, place, option)
    return put_in(reading, field, field.rows[row].cells[number], words)


def remarks(text):
    return [line.partition("#")[2] for line in text.splitlines() if "#" in line]


def test_every_key_of_the_file_has_its_field():
    text = edited(WHOLE, ("bench:\n", f"bench:\n{ON_THE_BENCH}"))
    text = text.replace(HOSE, f"{HOSE}        expansion curve: [{{under: 500, per length: 0.2 ml/m}}]\n", 1)
    found = set()
    for option in (None, "rigid"):
        reading = read_text(text, "a.yaml", option)
        assert reading.problems == ()
        kinds = {f"components.{part.name}": part.kind for part in reading.aircraft.components}
        for field in every_field(reading):
            steps = field.place.split(".")
            found.add((tuple(steps), field.key, kinds.get(".".join(steps[:2]), "")))
    shown = {(len(steps), steps[0], key) for steps, key, _ in found}
    missing = []
    for entry in file_reference():
        if entry.kinds and not {"master cylinder", "caliper"} & set(entry.kinds):
            continue  # the kinds that this aircraft has; the others have a test of their own
        named = entry.section.split(".") if entry.section else []
        if entry.key in COPY_KEYS or entry.key in ("mirror", "options", EACH):
            continue
        holder = (*named, entry.key)
        inner = any(other.section.split(".")[: len(holder)] == list(holder) for other in file_reference())
        if inner or entry.words.startswith(
            ("things by name", "a list, each", "keys of its own", "points by")
        ):
            continue  # a section, whose own keys are asked for
        if (len(holder), holder[0], entry.key) not in shown:
            missing.append(".".join(holder))
    assert missing == []


@pytest.mark.parametrize("sort", [each for each in SORTS if each.kind], ids=lambda each: each.name)
def test_every_key_of_every_kind_of_component_has_its_field(sort):
    reading = read_text(TEXT, "a.yaml")
    answers = {one.key: (one.choices or ("x",))[0] for one in questions(reading.tree, sort)}
    after = read_text(with_new(reading, sort, "new_one", answers), "a.yaml")
    cls = type(next(part for part in after.aircraft.components if part.name == "new_one"))
    shown = {each.place for each in form_of(after, thing_at(after, "components.new_one")).all_fields()}
    for key in known_keys(cls).values():
        if key.inner is None:
            assert f"components.new_one.{key.key}" in shown
    assert issubclass(cls, BaseComponent)


@pytest.mark.parametrize("name", ["brindlewick", "oatmere", "fennimoss"])
def test_every_section_is_in_the_list_and_what_is_written_shows_as_it_is(name):
    reading = read_text(example(name), "a.yaml")
    sections = {key.key for key in known_keys(Aircraft).values() if key.inner is not None}
    written = set(yaml_of(example(name))) & sections
    assert written <= set(things_of(reading))
    fields = {each.place: each for each in every_field(reading)}
    for thing, keys in yaml_of(example(name))["components"].items():
        for key, value in keys.items():
            if isinstance(value, str | int | float) and key in ("bore", "stroke", "side", "pad gap"):
                cell = fields[f"components.{thing}.{key}"].rows[0].cells[0]
                assert float(cell.words) == value if not isinstance(value, str) else cell.words == value


def test_words_are_put_where_they_belong_and_remarks_stay():
    text = LAYOUTS[0]
    after = put(text, "components.left_cylinder.bore", " 1 1/2 ")
    assert after == edited(
        text, ("bore: unknown                    # cast", "bore: 1 1/2                      # cast")
    )
    after = put(after, "components.left_cylinder.ports.outlet.seat", "-7 1/2", number=1)
    after = put(after, "components.left_cylinder.ports.outlet.seat", "13.1", number=0)
    said = yaml_of(after)["components"]["left_cylinder"]
    assert said["bore"] == "1 1/2"
    assert said["ports"]["outlet"]["seat"] == [13.1, "-7 1/2", "unknown"]
    assert remarks(after) == remarks(text)


@pytest.mark.parametrize("newline", ["\n", "\r\n"])
@pytest.mark.parametrize("place", PUT)
def test_a_value_that_was_put_in_and_taken_out_again_leaves_the_rest_as_it_was(place, newline):
    text = without_key(TEXT, place) if place == "aircraft.date" else TEXT
    text = text.replace("\n", newline)
    words = "2026-11-26" if place == "aircraft.date" else "[1, 2, 3]" if "lifts" in place else "2 1/2"
    after = put(text, place, words)
    assert str(at(yaml_of(after), place)).replace("'", "") == words
    assert remarks(after) == remarks(text)
    assert after.count("\r\n") == (after.count("\n") if newline == "\r\n" else 0)
    if "arm" in place:
        return  # it was there before
    again = put(after, place, "") if place == "aircraft.date" else without_key(after, place)
    assert yaml_of(again) == yaml_of(text)


GAP, BORE = "components.left_caliper.pad gap", "components.left_cylinder.bore"


def test_a_figure_that_is_emptied_is_to_be_measured_again_and_its_remark_stays():
    text = edited(TEXT, ("    pad gap: 0.020\n", "    pad gap: 0.020   # both pads, by feeler gauge\n"))
    after = put(text, GAP, " ")
    assert after == edited(text, ("pad gap: 0.020   #", "pad gap: unknown #"))
    assert GAP in [one.path for one in unknowns(read_text(after))]
    marked = edited(TEXT, ("    pad gap: 0.020\n", "    pad gap: {value: 0.010, mark: memory}\n"))
    assert put(marked, GAP, "") == edited(marked, ("value: 0.010", "value: unknown"))


@pytest.mark.parametrize(
    ("place", "words"),
    [
        ("foot.normal", "70"),  # left out, the usual force for these brakes
        ("limits.burst factor", "5"),  # left out, four
        ("lines.left_line.clamps.1", ""),
        ("aircraft.revision", "B"),  # nobody has to find it out
    ],
)
def test_a_key_goes_with_its_figure_where_something_stands_in_for_it_or_nobody_asks(place, words):
    if not words:
        text = with_value(TEXT, "lines.left_line.clamps", "[5]")
        reading, field = field_at(text, "lines.left_line.clamps")
        assert yaml_of(without_row(reading, field, place)) == yaml_of(
            with_value(text, "lines.left_line.clamps", "propose")
        )
        return
    holder, _, key = place.partition(".")
    without = without_key(TEXT, place) if key in yaml_of(TEXT).get(holder, {}) else TEXT
    assert yaml_of(put(put(without, place, words), place, "")) == yaml_of(without)


def test_what_is_emptied_for_one_copy_alone_is_again_what_it_is_a_copy_of():
    text = example("oatmere")
    own = put(text, "components.copilot_left.bore", "3/4")
    assert yaml_of(put(own, "components.copilot_left.bore", "")) == yaml_of(text)


def test_what_is_emptied_in_an_option_is_again_what_is_written_for_all_of_them():
    play = "limits.end play"
    for_all = put(TEXT, play, "0.06")
    in_one = edited(for_all, ("  rigid:\n", f"  rigid:\n    limits: {{{play.partition('.')[2]}: 0.1}}\n"))
    assert at(yaml_of(in_one), f"options.rigid.{play}") == 0.1
    assert yaml_of(put(in_one, play, "", option="rigid")) == yaml_of(for_all)
    alone = with_value(in_one, play, "unknown")
    assert at(yaml_of(put(alone, play, "", option="rigid")), play) == "unknown"


def test_what_is_unknown_and_is_emptied_stays_to_be_measured():
    text, place = LAYOUTS[0], "pedals.left_brake.brake.pad"
    assert put(text, place, "  ") == text
    assert put(put(text, place, "5/8"), place, "unknown") == text


@pytest.mark.parametrize(
    ("text", "place"),
    [
        (LAYOUTS[0], "components.left_caliper.seals"),  # nobody has to find them out
        (with_value(TEXT, "foot.normal", "unknown"), "foot.normal"),  # the usual force stands in
    ],
)
def test_what_is_unknown_goes_when_emptied_where_nobody_has_to_find_it_out(text, place):
    assert yaml_of(put(text, place, "")) == yaml_of(without_key(text, place))


def at(said, place):
    for step in place.split("."):
        said = said[step]
    return said


def test_what_could_not_be_read_is_refused_in_its_own_words():
    for place, words in REFUSED:
        with pytest.raises(EditError) as refusal:
            put(TEXT, place, words)
        assert str(refusal.value)
    text = edited(TEXT, ("bore: 0.625", "bore: elbows"))  # what was wrong before stands in nobody's way
    assert put(text, "components.left_cylinder.stroke", "7/8") == edited(
        text, ("stroke: 0.80", "stroke: 7/8")
    )
    _, field = field_at(text, "components.left_cylinder.bore")
    assert [each.span.line for each in field.problems] == [text.splitlines().index("    bore: elbows") + 1]


def test_what_holds_for_all_options_is_changed_for_all_and_the_rest_in_its_option():
    after = put(TEXT, "bulkheads.left_floor.thickness", "1/8", option="rigid")
    said = yaml_of(after)["options"]
    assert said["rigid"]["bulkheads"]["left_floor"]["thickness"] == "1/8"
    assert said["all hose"]["bulkheads"]["left_floor"]["thickness"] == 0.095
    after = put(TEXT, "components.left_cylinder.stroke", "7/8", option="rigid")
    assert yaml_of(after)["components"]["left_cylinder"]["stroke"] == "7/8"


def test_what_a_like_takes_over_is_written_for_this_one_alone():
    text = example("oatmere")
    reading, field = field_at(text, "components.copilot_left.bore")
    assert field.copied
    after = put_in(reading, field, field.rows[0].cells[0], "3/4")
    said = yaml_of(after)["components"]
    assert said["copilot_left"]["bore"] == "3/4"
    assert said["pilot_left"] == yaml_of(text)["components"]["pilot_left"]


def test_how_sure_a_figure_is():
    place = "components.left_cylinder.stroke"
    reading, field = field_at(TEXT, place)
    after = with_mark(reading, field, "assumed")
    assert after == edited(TEXT, ("stroke: 0.80", "stroke: {value: 0.80, mark: assumed}"))
    reading, field = field_at(after, place)
    assert field.mark == "assumed"
    assert with_mark(reading, field, "measured") == TEXT
    because = edited(TEXT, ("stroke: 0.80", "stroke: {value: 0.80, mark: assumed, because: it says so}"))
    reading, field = field_at(because, place)
    assert "because: it says so" in with_mark(reading, field, "measured")


def test_clamps_and_corners_come_and_go():
    reading, field = field_at(TEXT, "lines.left_leg.clamps", "rigid")
    one = with_row(reading, field)
    assert yaml_of(one)["options"]["rigid"]["lines"]["left_leg"]["clamps"] == ["unknown"]
    reading, field = field_at(one, "lines.left_leg.clamps", "rigid")
    assert field.unknown
    two = with_row(reading, field)
    reading, field = field_at(two, "lines.left_leg.clamps", "rigid")
    assert without_row(reading, field, field.rows[1].place) == one
    reading, field = field_at(one, "lines.left_leg.clamps", "rigid")
    assert without_row(reading, field, field.rows[0].place) == TEXT
    reading, field = field_at(TEXT, "lines.left_leg.via", "rigid")
    more = with_row(reading, field)
    assert yaml_of(more)["options"]["rigid"]["lines"]["left_leg"]["via"][-1] == "unknown"
    reading, field = field_at(more, "lines.left_leg.via", "rigid")
    assert without_row(reading, field, field.rows[-1].place) == TEXT


@pytest.mark.parametrize("number", range(len(LAYOUTS)))
def test_a_new_thing_reads_well_goes_again_and_all_it_does_not_say_is_unknown(number):
    text = LAYOUTS[number]
    reading = read_text(text, "a.yaml")
    free = {
        "caliper": "left_caliper",
        "from": "new_wall.ahead",
        "to": "new_wall.behind",
        "values": "up, down",
    }
    known = ("lines", "states")  # nothing of them has to be measured
    for sort in SORTS:
        if sort.section == "accepted":
            continue  # a list, which has a test of its own
        base = (
            read_text(with_new(reading, SORTS[1], "new_wall", {}), "a.yaml")
            if sort.section == "lines"
            else reading
        )
        answers = {one.key: free.get(one.key) or (one.choices or ("hose -4 PTFE braided",))[0]
                   for one in questions(base.tree, sort)}  # fmt: skip
        after = with_new(base, sort, "new_one", answers)
        lines = iter(after.splitlines())
        assert all(line in lines for line in base.text.splitlines())  # all that was there, in its order
        new = yaml_of(after)[sort.section]["new_one"]
        assert "unknown" in str(new) or sort.section in known
        assert yaml_of(without_thing(read_text(after, "a.yaml"), f"{sort.section}.new_one")) == yaml_of(
            base.text
        )


def test_a_new_thing_has_to_have_a_name_and_its_answers():
    reading = read_text(TEXT, "a.yaml")
    for name in ("", "a.b", "unknown", "a: b", "left_cylinder"):
        with pytest.raises(EditError):
            with_new(reading, next(each for each in SORTS if each.name == "caliper"), name, {"side": "left"})
    with pytest.raises(EditError, match="from"):
        with_new(reading, SORTS[0], "new_line", {"to": "left_caliper.inlet"})


def test_a_thing_goes_from_the_mirror_list_too_and_one_that_is_needed_stays():
    reading = read_text(TEXT, "a.yaml")
    after = yaml_of(without_thing(reading, "zones.left_wheel_fairing"))
    assert "left_wheel_fairing" not in after["zones"]
    assert "left_wheel_fairing" not in after["mirror"]
    for place in ("components.left_caliper", "pedals.left_pedal_brake", "moving.left_wheel"):
        with pytest.raises(EditError):
            without_thing(reading, place)
    with pytest.raises(EditError):  # an option needs it, though the aircraft as written does not
        without_thing(read_text(TEXT, "a.yaml"), "components.left_cylinder")


def test_what_is_next_to_be_measured_comes_round_and_begins_in_what_is_chosen():
    reading = read_text(LAYOUTS[0], "a.yaml")
    every = [item.path for item in unknowns(reading)]
    seen, last = [], ("", -1)
    for _ in every:
        last = next_unknown(reading, "", last)
        seen.append(last[0])
    assert seen == every
    assert next_unknown(reading, "", last)[0] == every[0]
    first = next_unknown(reading, "components.left_caliper", last)
    assert first[0] == "components.left_caliper.pistons.bore"
    filled = read_text(put(LAYOUTS[0], first[0], "1 1/2"), "a.yaml")
    assert (
        next_unknown(filled, "components.left_caliper", first)[0]
        == "components.left_caliper.pistons.count per side"
    )
    assert next_unknown(read_text("firmpedal: 1", "a.yaml"), "", last) == ("", -1)


def test_a_place_leads_to_its_thing():
    reading = read_text(TEXT, "a.yaml", "rigid")
    for place, thing in LED:
        assert thing_at(reading, place).place == thing
    assert thing_at(reading, "lines.nobody") is None
    assert thing_at(reading, "lines.right_leg").copy_of == "lines.left_leg"


def test_a_section_in_braces_is_laid_out_in_lines_when_something_is_added():
    after = with_thing("lines: {a: {from: x}}  # two\n\nfluid: y\n", "lines", "  b:\n    from: y\n")
    assert after == "lines:  # two\n  a: {from: x}\n  b:\n    from: y\n\nfluid: y\n"


@pytest.mark.parametrize("kept", ["lines: &all {a: {from: x}}\n", "lines: {a: {from: x}, # a remark\n  }\n"])
def test_what_cannot_be_laid_out_in_lines_without_loss_is_left_alone(kept):
    with pytest.raises(EditError):
        with_thing(kept, "lines", "  b:\n    from: y\n")
    with pytest.raises(EditError):
        with_value("a: &x {b: 1}\nc: *x\n", "c.b", "2")
