"""What is written reads back to the same aircraft, and an edit changes one value and nothing else."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firmpedal.project import read_text
from firmpedal.project.grow import load_text
from firmpedal.project.notes import Notes
from firmpedal.project.tree import Branch, Items, Leaf
from firmpedal.project.write import EditError, edited, written
from texts import example, small

RULES = sorted((Path(__file__).parents[1] / "rules").glob("*/*.yaml"))
TEXTS = {
    "brindlewick": (example("brindlewick"), None),
    "brindlewick rigid": (example("brindlewick"), "rigid"),
    "quillfen": (small("quillfen"), None),
    "tarnholt": (small("tarnholt"), None),
}
TEXTS |= {f"{path.parent.name}/{path.stem}": (path.read_text(encoding="utf-8"), None) for path in RULES}


@pytest.mark.parametrize("name", TEXTS)
def test_written_aircraft_reads_back_the_same(name):
    text, option = TEXTS[name]
    first = read_text(text, option=option)
    assert first.problems == ()
    again = read_text(written(first))
    assert again.problems == ()
    # Object paths, marks, ranges and sums included: only the lines in the file may differ.
    assert again.aircraft == first.aircraft
    assert written(again) == written(first)


def test_written_aircraft_has_neither_options_nor_mirror_list():
    text = written(read_text(example("brindlewick"), option="rigid"))
    assert not {"options", "mirror"} & tree_of(text).entries.keys()
    assert "mirror of" not in text
    assert "right_leg:" in text


def test_what_cannot_be_read_cannot_be_written():
    with pytest.raises(ValueError, match="cannot be read"):
        written(read_text("firmpedal: 1\n"))


HARD = """\
firmpedal: 1
aircraft: {name: 'He said: "yes" # no', gear: tailwheel, brakes: toe, revision: "-",
  structure: "a, b: {c} [d]"}
units: {length: in, angle: deg}
states: {rudder: {from: -1, to: 1, opposite when mirrored: yes}, pads: {values: [new, worn]}}
moving:
  left_a:
    rudder: {about: {from: left_x, up: 1 to 2}, axis: [1, 2, 3], swing: +/- 17.3}
    pads: {worn: [1, about 2, 3]}
  left_b: {with: left_a, rudder: unknown}
points: {left_x: [1/3, -2.7 to -2.1, 1' 3-1/2"], left_y: {from: left_x, left: 2.4 mm}}
zones:
  left_half: {where: {right below: -5, up above: 2}}
  left_ball: {where: {ball: {value: [1, -2, 3], mark: memory}, radius: 4}}
  left_none: {where: unknown}
  right_none: {like: left_half, shift: {right: about 1}}
mirror: [left_a, left_b, left_x, left_y, left_half, left_ball, left_none]
"""


def test_awkward_words_ranges_and_chains_are_written_so_that_they_read_back():
    first = read_text(HARD)
    assert first.problems == ()
    again = read_text(written(first))
    assert again.problems == ()
    assert again.aircraft == first.aircraft


# -- edits --------------------------------------------------------------------------------------------


def values(node, path=""):
    """Every path of a tree at which one piece of text stands, with the text."""
    if isinstance(node, Leaf):
        yield path, node.text
    elif isinstance(node, Items):
        for number, each in enumerate(node.nodes, 1):
            yield from values(each, f"{path}.{number}")
    elif isinstance(node, Branch):
        for key, each in node.entries.items():
            yield from values(each, f"{path}.{key}" if path else key)


def tree_of(text):
    notes = Notes()
    tree = load_text(text, "text", notes)
    assert notes.problems() == ()
    return tree


def values_of(text):
    return dict(values(tree_of(text)))


EXAMPLE = example("brindlewick")
OLD = values_of(EXAMPLE)
FEW = settings(max_examples=25, deadline=None)  # each reads a whole file several times
PATHS = st.sampled_from(list(OLD))


@FEW
@given(PATHS, st.text(max_size=12))
def test_edit_never_does_anything_but_the_edit_or_refuse(path, new):
    try:
        result = edited(EXAMPLE, path, new)
    except EditError:
        return
    found = values_of(result)
    assert {each: found.get(each) for each in OLD if each != path} == {
        each: old for each, old in OLD.items() if each != path
    }


SMALL = """\
lines:
  one: {via: [[1, 2, 3]], clamps: none}   # keep me
  two:
    from: &here a.b
    to: *here
    note: |
      many
      lines
    bend radius:
"""


@pytest.mark.parametrize(
    "new", ["x, y: z", "x}", "x # y", "- x", "&a", "it's", 'a "b"', "a: b", "[1, 2", "# x", "~"]
)
@pytest.mark.parametrize("path", ["lines.one.clamps", "lines.two.bend radius"])
def test_awkward_words_are_put_in_quotes(path, new):
    result = edited(SMALL, path, new)
    assert values_of(result)[path] == new
    assert result.count("\n") == SMALL.count("\n")
    assert "# keep me" in result


def test_edit_of_lists_and_of_what_was_left_out():
    """The remark at the end of the line keeps its column."""
    rest = ", clamps: none}"
    longer = SMALL.replace(f"[[1, 2, 3]]{rest}   #", f"[[1, 9/8, 3]]{rest} #")
    assert edited(SMALL, "lines.one.via.1.2", "9/8") == longer
    shorter = SMALL.replace(f"[[1, 2, 3]]{rest}   #", f"[]{rest}            #")
    assert edited(SMALL, "lines.one.via", "[]") == shorter
    assert edited(SMALL, "lines.two.bend radius", "3/4") == SMALL.replace("radius:", "radius: 3/4")


@pytest.mark.parametrize(
    ("path", "new", "message"),
    [
        ("lines.three", "x", "`three` is not written under lines"),
        ("lines.one.clampz", "x", "`clampz` is not written under lines one"),
        ("lines.one.via.2", "x", "`2` is not written under lines one via"),
        ("lines.one.clamps.far", "x", "`far` is not written under lines one clamps"),
        ("lines.two.from", "x", "shared with another place"),
        ("lines.two.to", "x", "shared with another place"),
        ("lines.two.note", "x", "more than one line"),
        ("lines.two", "x", "more than one line"),
        ("lines.one.clamps", "a\nb", "in one line"),
        ("lines.one.clamps", " ", "in one line"),
    ],
)
def test_edit_that_cannot_be_made_is_refused(path, new, message):
    with pytest.raises(EditError, match=message):
        edited(SMALL, path, new)


def test_refused_edit_names_the_near_miss():
    with pytest.raises(EditError) as caught:
        edited(SMALL, "lines.one.clampz", "x")
    assert caught.value.suggestion == "did you mean `clamps`?"
    with pytest.raises(EditError, match="cannot be read"):
        edited("a: [", "a", "x")
