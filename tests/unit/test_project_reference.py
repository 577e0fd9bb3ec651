"""The list of all keys says what the reader does: which keys there are, and which must be there."""

from __future__ import annotations

import pytest
from planting import FILES, sound
from ruamel.yaml import YAML

from firmpedal.model.kinds import KINDS
from firmpedal.model.meanings import LEFT_OUT, MEANINGS
from firmpedal.project import read_text
from firmpedal.project.plain import text_of
from firmpedal.project.reference import EACH, Entry, file_reference
from firmpedal.project.tree import Branch, Items
from firmpedal.project.write import written

EVERYTHING = (FILES / "everything.yaml").read_text("utf-8")
ENTRIES = file_reference()
COPYING = {"like", "mirror of", "swap", "shift"}


def places(node, section):
    """Every branch that a section's path leads to, with `*` for any name or number."""
    if not section:
        yield node
        return
    head, _, rest = section.partition(".")
    inner = dict(node.entries) if isinstance(node, Branch) else {}
    if isinstance(node, Items):
        inner = {str(n): item for n, item in enumerate(node.nodes, 1)}
    for name, item in inner.items():
        if head in (EACH, name):
            yield from places(item, rest)


def written_out():
    """The whole file as a tree, with its copies written out."""
    return sound(written(sound(EVERYTHING))).tree


def test_every_entry_is_there_once():
    keys = [(entry.section, entry.key, entry.kinds) for entry in ENTRIES]
    assert len(keys) == len(set(keys))
    assert {"firmpedal", "aircraft", "lines", "points", "mirror", "options"} <= {
        entry.key for entry in ENTRIES if not entry.section
    }


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: f"{entry.section} {entry.key}")
def test_the_file_with_everything_writes_every_key(entry: Entry):
    raw = YAML(typ="safe", pure=True).compose(EVERYTHING)
    assert raw is not None
    tree = sound(EVERYTHING).tree if entry.key not in COPYING | {"mirror", "options"} else None
    if tree is None:
        assert f"{entry.key}:" in EVERYTHING
        return
    found = [place for place in places(tree, entry.section) if isinstance(place, Branch)]
    keys = {key for place in found for key in place.entries}
    assert keys if entry.key == EACH else entry.key in keys


def without(tree, section, key, kinds):
    """The file without one key in the first place that has it; None where no place has it."""
    if not section:
        return tree.without(key) if key in tree.entries else None
    head, _, rest = section.partition(".")
    inner = list(tree.entries) if isinstance(tree, Branch) else list(range(len(tree.nodes)))
    for name in inner:
        item = tree.entries[name] if isinstance(tree, Branch) else tree.nodes[name]
        kind = item.entries.get("kind") if isinstance(item, Branch) else None
        if head not in (EACH, name) or (kinds and kind is not None and kind.text not in kinds):
            continue
        changed = without(item, rest, key, kinds) if isinstance(item, Branch | Items) else None
        if changed is not None:
            if isinstance(tree, Branch):
                return tree.with_entry(name, changed)
            return Items((*tree.nodes[:name], changed, *tree.nodes[name + 1 :]), tree.span)
    return None


ASKED = [entry for entry in ENTRIES if entry.key not in COPYING | {"mirror", "options", EACH}]
# Left out, these leave names of other things without meaning, which is another problem.
NAMED_ELSEWHERE = {
    "points",
    "states",
    "moving",
    "components",
    "pedals",
    "bulkheads",
    "lines",
    "units",
    "values",
}


@pytest.mark.parametrize("entry", ASKED, ids=lambda entry: f"{entry.section} {entry.key}")
def test_a_key_is_missed_where_the_list_says_so_and_nowhere_else(entry: Entry):
    tree = without(written_out(), entry.section, entry.key, entry.kinds)
    assert tree is not None
    problems = read_text(text_of(tree)).problems
    lacking = [problem for problem in problems if problem.message.endswith(f"has no `{entry.key}`")]
    assert len(lacking) == (1 if entry.required else 0)
    if entry.required or entry.key not in NAMED_ELSEWHERE:
        units = entry.section == "units" or entry.key in ("from", "to")
        assert len(problems) == len(lacking) or units


def test_words_default_and_what_it_is_about():
    listed = {(entry.section, entry.key): entry for entry in ENTRIES if not entry.kinds}
    bore = next(entry for entry in ENTRIES if entry.key == "bore" and "master cylinder" in entry.kinds)
    assert bore == Entry(
        "components.*",
        "bore",
        "a length, or unknown",
        required=True,
        default="",
        field="bore",
        kinds=("master cylinder",),
        about="A master cylinder; its outlet is the port named so, an inlet takes fluid from above.",
    )
    assert listed["lines.*", "support"].default == "cushioned clamps"
    assert listed["lines.*", "from"].required
    assert listed["zones.*", "access"].default == "unknown"
    assert listed["", "fluid"].default == "unknown"
    assert listed["aircraft", "brakes"].words == "one of: toe, heel, hand"
    assert listed["components.*", "kind"].words == "one of: " + ", ".join(KINDS)
    assert listed["bulkheads.*.sides.*", "seat measured with"].words == "the designation of a fitting"
    assert listed["moving.*", EACH].words.startswith("for each state")
    assert all(entry.words and (entry.required or entry.default) for entry in ENTRIES)


def test_what_stands_in_for_a_figure_that_is_left_out_is_said_last_and_in_one_way():
    said = [words for table in MEANINGS.values() for words in table.values() if "left out" in words]
    assert len(said) > 20
    for words in said:
        _, said_so, usual = words.partition(LEFT_OUT)
        assert said_so, words
        assert usual
        assert "left out" not in usual
