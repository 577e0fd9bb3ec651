"""What is still to be measured: each thing once, whoever asks for it, counted on whole aircraft."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

import pytest

from firmpedal.decide.lacking import lacking, lacking_for, waiting
from firmpedal.finding import NotShown
from firmpedal.pipeline import evaluate_text
from firmpedal.project.measured import measured
from firmpedal.quantity import Missing, When
from texts import edited, example, small

RATED = "components.left_cylinder.rated pressure"


def of(text):
    return tuple(one.what for one in lacking(evaluate_text(text, "x")))


@pytest.fixture(scope="module")
def brindlewick():
    return of(example("brindlewick"))


def test_what_is_written_once_for_both_sides_is_one(brindlewick):
    """Its right side is the mirror image of the left one: nothing there is a measurement of its own."""
    assert not [what for what in brindlewick if "right_" in what]
    assert len(brindlewick) == len(set(brindlewick))
    assert [what for what in brindlewick if "rated pressure of left_cylinder" in what]


def test_what_two_lines_lack_alike_is_one(brindlewick):
    assert len([what for what in brindlewick if "support spacing of plastic" in what]) == 1


def test_one_figure_that_is_found_is_one_less(brindlewick):
    text, _ = measured(example("brindlewick"), RATED, "1500")
    found = of(text)
    assert set(brindlewick) - set(found) == {"the rated pressure of left_cylinder, from its maker"}
    assert set(found) <= set(brindlewick)


def test_what_no_rule_waits_for_and_the_file_leaves_unknown_stands_at_the_end(brindlewick):
    assert brindlewick[-1] == "left_wheel gear on jacks"


@pytest.mark.parametrize(
    ("old", "new", "what"),
    [
        ("    pad gap: 0.020\n", "    pad gap: unknown\n", "caliper pad gap"),
        ("- [10, 0, -6]", "- unknown", "run via 1 (aft, right, up)"),
        ("    bend radius: 3/4\n", "    bend radius: unknown\n", "run bend radius"),
        ("    bend radius: 3/4\n", "    bend radius: {value: unknown}\n", "run bend radius"),
    ],
)
def test_a_figure_that_rules_wait_for_and_the_file_calls_unknown_is_told_once(old, new, what):
    assert of(small("quillfen")) == ()
    assert of(edited(small("quillfen"), (old, new))) == (what,)


@pytest.mark.parametrize(
    ("first", "second", "count"),
    [
        (
            "components.left_cylinder.rated pressure",
            "components.right_cylinder.rated pressure",
            1,
        ),  # its image
        ("components.left_cylinder.rated pressure", "components.left_caliper.rated pressure", 2),
        ("components.left_cylinder", "components.right_cylinder", 2),  # much can be asked of a whole thing
        (
            "the brakes.rated pressure",
            "components.left_cylinder.rated pressure",
            2,
        ),  # nothing that a file has
        ("bulkheads.left_axle.thickness", "bulkheads.left_axle.thickness", 1),  # with its value and its mark
    ],
)
def test_two_things_are_one_where_one_figure_is_written_for_both(first, second, count):
    evaluation = evaluate_text(example("brindlewick"), "x", "rigid")
    found = lacking_for(evaluation, (Missing(first, "one thing"), Missing(second, "another")))
    assert len(found) == count
    assert {place for one in found for place in one.places} == {first, second}


def not_shown(*missing, rule="rule-a", place="lines.run"):
    return NotShown(rule, place, "whether it holds", missing)


def asking(*unclear):
    return SimpleNamespace(not_shown=unclear)


def test_each_thing_is_told_with_every_rule_and_place_that_waits_for_it():
    gap, size = Missing("components.one.gap", "the gap"), Missing("", "the size")
    found = waiting(
        asking(
            not_shown(gap, size),
            not_shown(gap, rule="rule-b"),
            not_shown(gap, rule="rule-b", place="lines.other"),
            not_shown(Missing("components.two.gap", "the gap")),
            not_shown(Missing("catalogue", "the size"), place="lines.other"),
        )
    )
    assert found == {
        "the gap": (("rule-a", "rule-b"), ("components.one.gap", "components.two.gap")),
        "the size": (("rule-a",), ("lines.run", "lines.other")),  # where it is asked, not where it is printed
    }


@pytest.mark.parametrize(
    ("said", "latest"),
    [
        ((When.NOW,), When.NOW),
        ((When.FITTED, When.NOW), When.FITTED),
        ((When.IN_HAND, When.TRIED, When.FITTED), When.TRIED),
        ((When.IN_HAND, When.NOW), When.IN_HAND),
    ],
)
def test_a_thing_can_be_measured_from_the_latest_moment_that_is_said_of_it(said, latest):
    unclear = [not_shown(Missing("a", "the gap", when=when), Missing("b", "other")) for when in said]
    evaluation = replace(evaluate_text(small("quillfen"), "x"), not_shown=tuple(unclear))
    assert {one.what: one.when for one in lacking(evaluation)} == {"the gap": latest, "other": When.NOW}
