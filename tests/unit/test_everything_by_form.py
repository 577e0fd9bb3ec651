"""Whatever a file holds can be added by a form, named anew, and taken out: and the rest of the text stays.

What a text says is read here by the YAML library itself, apart from the program's own reader.
"""

from __future__ import annotations

import difflib
import re

import pytest
from yaml_said import at, yaml_of

from firmpedal.model.aircraft import Aircraft
from firmpedal.model.component import BaseComponent
from firmpedal.model.kinds import KINDS
from firmpedal.project import read_text
from firmpedal.project.edit import EditError
from firmpedal.project.field_edits import put_in, without_thing
from firmpedal.project.field_places import thing_at, things_of
from firmpedal.project.fields import form_of
from firmpedal.project.mirror_list import can_be_mirrored, is_mirrored, mirrored, not_mirrored
from firmpedal.project.new_things import called_by, questions, with_new
from firmpedal.project.renaming import named_by, renamed
from firmpedal.project.schema import known_keys
from firmpedal.project.sorts import ONE_OF, SORTS, sort_of, word_for
from texts import edited, example

TEXT = example("brindlewick")
NAMES = ("brindlewick", "oatmere", "fennimoss")
# Within which thing something can be added: under what name, with which answers, and what is written.
WITHIN = [
    ("components.left_caliper.ports", "bleeder", {"thread": "M10 x 1 female"},
     {"thread": "M10 x 1 female", "faces": "unknown", "at": "unknown"}),
    ("panels.cabin_floor.passes", "third_line", {}, {"grommet": "unknown", "hole": "unknown"}),
    ("bench.tube", "coil", {"made of": "tube 5052-O 1/4 x .035", "pieces": "120, 96"},
     {"made of": "tube 5052-O 1/4 x .035", "pieces": [120, 96]}),
    ("bench.bender.parts", "handle", {}, {"where": "unknown"}),
    ("buying.packs", "rings", {"of": "O-ring"}, {"of": "O-ring", "pieces": "unknown"}),
]  # fmt: skip


def changed(before, after):
    """The lines that are gone, and those that are new."""
    rows = list(difflib.ndiff(before.splitlines(), after.splitlines()))
    return [row[2:] for row in rows if row[0] == "-"], [row[2:] for row in rows if row[0] == "+"]


def reading_of(text, option=None):
    reading = read_text(text, "a.yaml", option)
    assert reading.problems == ()
    return reading


def sound_in_all(text):
    for option in (None, *read_text(text, "a.yaml").options):
        assert read_text(text, "a.yaml", option).problems == ()


# -- added ------------------------------------------------------------------------------------------


def added(text, word, name, answers, option=None):
    after = with_new(reading_of(text, option), sort_of(word), name, answers)
    sound_in_all(after)
    gone, _ = changed(text, after)
    old = iter(after.splitlines())
    assert all(line in old for line in text.splitlines() if line not in gone)
    return after


@pytest.mark.parametrize(("section", "name", "answers", "written"), WITHIN)
def test_what_stands_within_a_thing_comes_and_goes(section, name, answers, written):
    text = TEXT
    if name == "third_line":  # a line that passes has to be there
        inlet = "      inlet:\n        thread: 1/8 NPT female\n        faces: {value: right"
        bleeder = "      bleeder: {thread: 1/8 NPT female, at: unknown}\n"
        lines = "bulkheads:\n  wall: {sides: {a: {seat: unknown}, b: {seat: unknown}}}\nlines:\n"
        lines += "  third_line: {from: left_caliper.bleeder, to: wall.a, made of: hose -4 PTFE braided}\n"
        text = edited(TEXT, (inlet, bleeder + inlet), ("\nlines:\n  left_line:", f"\n{lines}  left_line:"))
        assert called_by(reading_of(text).tree, sort_of(section)) == ("third_line",)
    after = added(text, section, name, answers)
    assert at(yaml_of(after), f"{section}.{name}") == written
    thing = thing_at(reading_of(after), f"{section}.{name}")
    groups = {group.place: group for group in every_group(form_of(reading_of(after), thing))}
    assert groups[f"{section}.{name}"].member
    again = without_thing(reading_of(after), f"{section}.{name}")
    assert yaml_of(again) == yaml_of(text)


def every_group(group):
    yield group
    for inner in group.groups:
        yield from every_group(inner)


def test_items_of_a_list_come_and_go():
    text = edited(
        TEXT, ("  bend radius: 3/4", "  bend radius: 3/4\n  bender: {springback: [{asked: 90, got: 88}]}")
    )
    after = added(text, "bench.bender.springback", "", {})
    assert at(yaml_of(after), "bench.bender.springback") == [
        {"asked": 90, "got": 88}, {"asked": "unknown", "got": "unknown"},
    ]  # fmt: skip
    assert without_thing(reading_of(after), "bench.bender.springback.2") == text


def test_nobody_is_asked_for_the_name_of_a_rule():
    assert all(sort.section != "accepted" for sort in SORTS)


def test_a_port_says_what_it_moves_with():
    reading = reading_of(TEXT)
    (port,) = form_of(reading, thing_at(reading, "components.left_caliper")).groups[:1]
    assert "moves with left_caliper_float" in port.note
    floor = form_of(reading_of(TEXT, "rigid"), thing_at(reading_of(TEXT, "rigid"), "bulkheads.left_floor"))
    assert all("stands still" in group.note for group in floor.groups)


def test_a_state_is_a_range_or_positions_and_what_it_moves_is_to_be_measured():
    text = added(TEXT, "state", "flaps", {"values": "up, half, down"})
    assert yaml_of(text)["states"]["flaps"] == {"values": ["up", "half", "down"], "measured at": "up"}
    text = added(text, "moving thing", "left_flap", {"moved by": "flaps"})
    assert yaml_of(text)["moving"]["left_flap"] == {"flaps": {"half": "unknown", "down": "unknown"}}
    text = added(text, "state", "trim", {"opposite when mirrored": "yes"})
    assert yaml_of(text)["states"]["trim"] == {
        "from": -1, "to": 1, "measured at": 0, "opposite when mirrored": "yes",
    }  # fmt: skip
    text = added(text, "moving thing", "left_tab", {"moved by": "trim", "with": "left_flap"})
    assert yaml_of(text)["moving"]["left_tab"] == {"with": "left_flap", "trim": "unknown"}
    for values in ("up", "up,"):
        with pytest.raises(EditError):
            with_new(reading_of(text), sort_of("state"), "gust_lock", {"values": values})
    with pytest.raises(EditError, match="nothing moves it"):
        with_new(reading_of(text), sort_of("moving thing"), "left_door", {})


def test_a_named_point_and_an_attitude_start_as_unknown():
    text = added(TEXT, "named point", "left_axle_end", {})
    assert yaml_of(text)["points"] == {"left_axle_end": "unknown"}
    text = added(text, "named point", "tunnel front", {})
    assert list(yaml_of(text)["points"]) == ["left_axle_end", "tunnel front"]
    text = added(text, "attitude", "on a slope", {})
    assert yaml_of(text)["attitudes"]["on a slope"] == {"nose up": "unknown"}
    reading = reading_of(text)
    (field,) = form_of(reading, thing_at(reading, "points.left_axle_end")).fields
    after = put_in(reading, field, field.rows[0].cells[1], "-31 7/8")
    assert yaml_of(after)["points"]["left_axle_end"] == ["unknown", "-31 7/8", "unknown"]


def test_every_sort_is_known_again_by_its_word():
    reading = reading_of(TEXT)
    for sort in SORTS:
        assert sort_of(word_for(sort)) == sort
        assert questions(reading.tree, sort) or called_by(reading.tree, sort) is None
    assert sort_of("nothing") is None
    assert sort_of("components.left_caliper.wheels") is None


def things_by_name_or_in_a_list(cls):
    for key in known_keys(cls).values():
        if key.inner is None:
            continue
        if key.many:
            yield cls, key.key
        for inner in KINDS.values() if key.inner is BaseComponent else (key.inner,):
            yield from things_by_name_or_in_a_list(inner)


def test_of_whatever_there_can_be_several_one_can_be_added():
    sections = {sort.section for sort in SORTS}
    for cls, key in things_by_name_or_in_a_list(Aircraft):
        # what is accepted is added at the finding itself
        assert key in (sections | {"accepted"} if cls is Aircraft else ONE_OF)


# -- named anew -------------------------------------------------------------------------------------


def new_name(name):
    side = next((side for side in ("left", "right") if side in name.split("_")), "")
    return f"{side}_otherwise" if side else "otherwise"


def written_things(reading):
    for section, things in things_of(reading).items():
        for thing in things:
            if thing.place != section and not thing.copy_of:
                yield thing


def columns_aside(text):
    return re.sub(r" +(?=# )", " ", text)


@pytest.mark.parametrize("name", NAMES)
def test_a_thing_is_named_anew_wherever_it_is_named_and_back_again(name):
    text, refused = example(name), []
    for thing in written_things(reading_of(text)):
        place = f"{thing.section}.{new_name(thing.name)}"
        try:
            after = renamed(reading_of(text), thing.place, new_name(thing.name))
        except EditError:
            refused.append(thing.name)
            continue
        sound_in_all(after)
        assert place.rpartition(".")[2] in at(yaml_of(after), thing.section)
        assert len(named_by(after, place)) == len(named_by(text, thing.place))
        assert not named_by(after, thing.place)
        gone, new = changed(text, after)
        assert (
            len(gone) == len(new) <= 1 + len(named_by(text, thing.place)) + 3
        )  # it, its image, the mirror list
        back = renamed(reading_of(after), place, thing.name)
        assert columns_aside(back) == columns_aside(text)  # a longer name may have moved a remark
        if len(new_name(thing.name)) <= len(thing.name):
            assert back == text
    assert refused == {"oatmere": ["pilot_left"]}.get(name, [])  # its copies are named by parts of its name


def test_only_the_name_changes_and_not_what_only_begins_like_it():
    after = renamed(reading_of(TEXT), "components.left_caliper", "left_brake")
    to = "to: left_caliper.inlet\n{0}made of: {1}"
    inner = " " * 8
    pairs = [
        ("  left_caliper:\n    kind", "  left_brake:\n    kind"),
        ("left_cylinder, left_caliper, left_pedal_brake", "left_cylinder, left_brake, left_pedal_brake"),
    ]
    for blanks, made_of in (("    ", "plastic"), (inner, "hose -4"), (inner, "hose -3")):
        old = to.format(blanks, made_of)
        pairs.append((old, old.replace("left_caliper", "left_brake")))
    assert after == edited(TEXT, *pairs)


def test_a_port_is_named_anew_with_the_lines_and_chains_that_name_it():
    first = "made of: tube 5052-O 1/4 x .035\n        via:\n          - "
    text = edited(TEXT, (f"{first}[7.0, -9.0, -3.2]", f"{first}{{from: left_floor.below, down: 2.3}}"))
    reading = reading_of(text, "rigid")
    after = renamed(reading, "bulkheads.left_floor.sides.below", "under")
    _, new = changed(text, after)
    # in each of the two options that write the bulkhead: its side, and the line that begins there
    assert [row.strip() for row in new] == [
        "under: {seat: [7.0, -9.0, -0.9]}", "from: left_floor.under", "- {from: left_floor.under, down: 2.3}",
        "under: {seat: [7.0, -9.0, -0.9]}", "from: left_floor.under",
    ]  # fmt: skip
    assert renamed(reading_of(after, "rigid"), "bulkheads.left_floor.sides.under", "below") == text
    oatmere = example("oatmere")
    valve = renamed(reading_of(oatmere), "components.valve.ports.left_in", "left_entry")
    # left_in and right_in of a valve in the middle answer to each other, and stay together
    assert yaml_of(valve)["components"]["valve"]["ways"] == [
        ["left_entry", "left_out"], ["right_entry", "right_out"],
    ]  # fmt: skip
    assert renamed(reading_of(valve), "components.valve.ports.left_entry", "left_in") == oatmere


@pytest.mark.parametrize(
    ("place", "name"),
    [
        ("components.left_caliper", "left_cylinder"),  # there is one
        ("components.left_caliper", "brake"),  # its image could not be named
        ("components.left_caliper", "unknown"),
        ("components.left_caliper", "a.b"),
        ("components.left_caliper", ""),
        ("states.rudder", "gear"),
        ("components.left_caliper", "left_line"),  # a line is called so, and both can be connected to
    ],
)
def test_a_name_that_cannot_be_is_refused(place, name):
    with pytest.raises(EditError) as refusal:
        renamed(reading_of(TEXT), place, name)
    assert str(refusal.value)


# -- taken out --------------------------------------------------------------------------------------


def test_who_names_a_thing_is_known_before_it_goes():
    def places(place):
        return [(each.place, each.option) for each in named_by(TEXT, place)]

    assert places("components.left_caliper") == [
        ("lines.left_line.to", None), ("lines.left_tail.to", "rigid"), ("lines.left_leg.to", "all hose"),
    ]  # fmt: skip
    assert places("moving.left_wheel") == [
        ("moving.left_caliper_float.with", None), ("bulkheads.left_axle.moves with", "rigid"),
    ]  # fmt: skip
    assert places("states.gear") == [("moving.left_wheel.gear", None)]
    assert places("lines.left_line")[0] == ("panels.cabin_floor.passes.left_line", None)
    assert ("panels.cabin_floor.passes.right_line", None) in places("lines.left_line")  # its image goes too
    assert places("components.left_cylinder.ports.outlet") == [
        ("lines.left_line.from", None), ("lines.left_pedal.from", "rigid"),
        ("lines.left_pedal.from", "all hose"),
    ]  # fmt: skip
    assert places("zones.left_leg_fairing") == []


@pytest.mark.parametrize("name", NAMES)
def test_nothing_that_is_taken_out_leaves_a_name_that_leads_nowhere(name):
    text, went = example(name), 0
    for thing in written_things(reading_of(text)):
        try:
            after = without_thing(reading_of(text), thing.place)
        except EditError:
            assert named_by(text, thing.place)  # whoever is refused can see why
            continue
        went += 1
        sound_in_all(after)
        left = [each.place.rpartition(".")[2] for each in named_by(after, thing.place) if not each.declares]
        assert set(left) <= {"along"}  # words, which need not be a name
    assert went >= 4


# -- seen in the mirror -----------------------------------------------------------------------------


def test_a_thing_is_put_on_the_mirror_list_and_taken_off():
    text = added(TEXT, "named point", "left_axle_end", {})
    place = "points.left_axle_end"
    assert can_be_mirrored(place)
    assert not is_mirrored(text, place)
    after = mirrored(reading_of(text), place)
    assert is_mirrored(after, place)
    assert yaml_of(after)["mirror"] == [*yaml_of(text)["mirror"], "left_axle_end"]
    assert "points.right_axle_end" in [thing.place for thing in things_of(reading_of(after))["points"]]
    assert thing_at(reading_of(after), "points.right_axle_end").copy_of == place
    assert yaml_of(not_mirrored(reading_of(after), place)) == yaml_of(text)
    with pytest.raises(EditError):  # lines of the other side come to its image
        not_mirrored(reading_of(example("oatmere")), "components.left_caliper")
    assert not can_be_mirrored("states.rudder")
    assert not can_be_mirrored("components.valve")
    with pytest.raises(EditError):
        mirrored(reading_of(example("oatmere")), "components.valve")


def test_what_an_option_writes_goes_on_the_list_of_that_option():
    text = edited(TEXT, ("    mirror: [left_floor, left_axle, left_pedal, left_leg, left_tail]\n", ""))
    reading = read_text(text, "a.yaml", "rigid")
    after = mirrored(reading, "bulkheads.left_axle")
    assert yaml_of(after)["options"]["rigid"]["mirror"] == ["left_axle"]
    assert yaml_of(after)["mirror"] == yaml_of(text)["mirror"]
    assert is_mirrored(after, "bulkheads.left_axle", "rigid")
    assert not is_mirrored(after, "bulkheads.left_axle")
    assert not is_mirrored(after, "bulkheads.left_axle", "all hose")
