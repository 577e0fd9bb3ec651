"""A line made of another kind: what it cannot have any more goes in the same step, and nothing else does."""

from __future__ import annotations

from itertools import permutations

import pytest
from options_text import TEXT as THISTLEMOOR
from yaml_said import at, yaml_of

from firmpedal.model.circuit import Line
from firmpedal.project import read_text
from firmpedal.project.edit import EditError
from firmpedal.project.field_edits import put_in
from firmpedal.project.field_places import thing_at
from firmpedal.project.fields import form_of
from firmpedal.project.line_kinds import went
from firmpedal.project.measured import measured
from firmpedal.project.options_edit import written_out
from firmpedal.project.schema import known_keys
from firmpedal.web.desk import Document
from texts import edited

LEG, OPTION = "lines.leg", "odd"
MADE_OF = f"{LEG}.made of"
MADE = {
    "tube": "tube 5052-O 1/4 x .035",
    "hose": "hose -4 PTFE braided",
    "plastic": "plastic nylon 1/4 x .040",
}
EVERY = {  # what a line of any kind can have
    "bend radius": "3/4",
    "clamp spacing": "12",
    "clamps": "[3]",
    "support": "tie wraps",
    "flare": "double 37",
    "fittings": "as it was",
    "from fitting": "straight",
    "to fitting": "straight",
    "from end": "45",
    "to end": "90",
    "slack": "0.05",
    "most slack": "0.08",
    "sleeve": "split hose",
    "sleeved diameter": "1/2",
    "along": "pedal",
    "temperature": "150",
    "via": "[[10, 0, -20]]",
}
HOSE = {"tightest bend": "3", "outside diameter": "0.3"}
# One of the two can be given of a hose, never both.
SWELLS = {"swells": "{volume: 0.01, under: 500}"}
CURVE = {"expansion curve": "[{under: 500, per length: 0.2 ml/m}]"}
OWN = {
    "tube": [{}],
    "hose": [HOSE | SWELLS, HOSE | CURVE],
    "plastic": [{"stiffness": "{cool: 200000, hot: 50000}", "rated pressure": "600"}],
}
CASES = [(was, now, own) for was, now in permutations(MADE, 2) for own in OWN[was]]


def whole_line(kind, own):
    keys = {"from": "floor.below", "to": "caliper.inlet", "made of": MADE[kind], **EVERY, **own}
    rows = "".join(f"    {key}: {words}\n" for key, words in keys.items())
    start = THISTLEMOOR.index("  leg:\n")
    return f"{THISTLEMOOR[:start]}  leg:\n{rows}options:\n  {OPTION}: {{fluid: MIL-PRF-5606}}\n"


def field_at(text, place, option):
    reading = read_text(text, "a.yaml", option)
    assert reading.problems == ()
    form = form_of(reading, thing_at(reading, place))
    return reading, next(each for each in form.all_fields() if each.place == place)


def put(text, place, words, option=None):
    reading, field = field_at(text, place, option)
    return put_in(reading, field, field.rows[0].cells[0], words)


def test_the_lines_of_these_tests_have_every_key_that_there_is():
    keys = {"from", "to", "made of", *EVERY, *(key for owns in OWN.values() for own in owns for key in own)}
    assert keys == set(known_keys(Line))


@pytest.mark.parametrize(("was", "now", "own"), CASES)
def test_as_written_only_what_the_old_kind_alone_can_have_goes(was, now, own):
    text = whole_line(was, own)
    after = put(text, MADE_OF, MADE[now])
    said = yaml_of(text)
    for key in own:
        del said["lines"]["leg"][key]
    said["lines"]["leg"]["made of"] = MADE[now]
    assert yaml_of(after) == said
    assert read_text(after).problems == ()
    told = went(text, after, MADE_OF)
    assert all(key in told for key in own)
    assert told.endswith(f"went with the {was}") == bool(own)


@pytest.mark.parametrize("split", ["as a whole", "one key of its own", "what it is made of alone"])
@pytest.mark.parametrize(("was", "now", "own"), CASES)
def test_in_an_option_it_goes_there_and_the_aircraft_as_written_stays(was, now, own, split):
    text = whole_line(was, own)
    if split == "as a whole":
        text = written_out(read_text(text, "a.yaml", OPTION), LEG)
    else:
        key = next(iter(own), "clamps") if split.startswith("one") else "made of"
        words = own.get(key) or {"clamps": "[4]", "made of": MADE[was]}[key]
        text = edited(
            text,
            (
                f"  {OPTION}: {{fluid: MIL-PRF-5606}}\n",
                f"  {OPTION}: {{lines: {{leg: {{{key}: {words}}}}}}}\n",
            ),
        )
    after = put(text, MADE_OF, MADE[now], OPTION)
    before, said = yaml_of(text), yaml_of(after)
    line = said["options"][OPTION]["lines"]["leg"]
    assert line.pop("made of") == MADE[now]
    assert {line.pop(key) for key in own} <= {"removed"}
    kept = before["options"][OPTION]["lines"]["leg"]
    assert line == {key: words for key, words in kept.items() if key not in (*own, "made of")}
    del before["options"][OPTION]["lines"], said["options"][OPTION]["lines"]
    assert said == before
    found = read_text(after, "a.yaml", OPTION)
    assert found.problems == ()
    as_written = set(at(yaml_of(after), LEG))
    assert set(found.tree.entries["lines"].entries["leg"].entries) == as_written - set(own)
    assert bool(went(text, after, MADE_OF, OPTION)) == bool(own)


@pytest.mark.parametrize("option", [None, OPTION])
def test_one_undo_brings_all_of_it_back_to_the_letter(tmp_path, option):
    text = whole_line("hose", HOSE | SWELLS)
    text = text if option is None else written_out(read_text(text, "a.yaml", option), LEG)
    path = tmp_path / "a.yaml"
    path.write_text(text, encoding="utf-8")
    document = Document(path)
    document.rewrite(put(text, MADE_OF, MADE["plastic"], option), "made of plastic")
    assert document.text != text
    document.undo()
    assert document.text == path.read_text(encoding="utf-8") == text


def test_mirror_images_and_likes_lose_it_where_they_become_another_kind():
    text = """\
firmpedal: 1
units: {length: in, pressure: psi, angle: deg, force: lbf, temperature: degF, mass: lb, volume: cu in}
lines:
  left_a: {from: left_b.to, to: left_c.from, made of: hose -4 PTFE braided, tightest bend: 3}
  right_a: {tightest bend: 4}
  left_b: {like: left_a, from: left_c.to, to: left_a.from, made of: hose -3 PTFE braided}
  left_c: {from: left_a.to, to: left_b.from, made of: tube 5052-O 1/4 x .035}
mirror: [left_a]
options:
  odd: {lines: {left_a: {tightest bend: 2}, right_a: {tightest bend: 5}}}
  own: {lines: {left_a: {made of: hose -4 PTFE braided, tightest bend: 2}}}
"""
    reading, field = read_text(text, "a.yaml"), None
    form = form_of(reading, thing_at(reading, "lines.left_a"))
    field = next(each for each in form.all_fields() if each.place == "lines.left_a.made of")
    after = put_in(reading, field, field.rows[0].cells[0], MADE["tube"])
    said = yaml_of(after)
    assert "tightest bend" not in said["lines"]["left_a"]
    assert "tightest bend" not in said["lines"].get("right_a", {})
    assert said["options"]["own"] == yaml_of(text)["options"]["own"]
    assert "tightest bend" not in str(said["options"].get("odd"))
    like = yaml_of(put_in_like(text))["lines"]["left_b"]
    assert like["tightest bend"] == "removed"


def put_in_like(text):
    reading = read_text(text, "a.yaml")
    form = form_of(reading, thing_at(reading, "lines.left_b"))
    field = next(each for each in form.all_fields() if each.place == "lines.left_b.made of")
    return put_in(reading, field, field.rows[0].cells[0], MADE["tube"])


def test_what_was_not_known_yet_and_is_measured_takes_it_along_too():
    text = whole_line("hose", HOSE | SWELLS)
    text = edited(text, (f"    made of: {MADE['hose']}\n    bend", "    made of: unknown\n    bend"))
    after, _ = measured(text, MADE_OF, MADE["plastic"])
    assert not set(HOSE | SWELLS) & set(at(yaml_of(after), LEG))


def test_nothing_goes_with_a_kind_that_cannot_be_had_and_other_sizes_of_one_kind_keep_it():
    text = whole_line("hose", HOSE | SWELLS)
    with pytest.raises(EditError):
        put(text, MADE_OF, "rope")
    after = put(text, MADE_OF, "hose -3 PTFE braided")
    assert after == edited(
        text, (f"    made of: {MADE['hose']}\n    bend", "    made of: hose -3 PTFE braided\n    bend")
    )
    assert went(text, after, MADE_OF) == ""
