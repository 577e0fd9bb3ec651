"""A mirror image made its own: nothing moves, in no option, and its figures follow nothing any more."""

import pytest

from firmpedal.pipeline import evaluate_text
from firmpedal.project.edit import EditError
from firmpedal.project.field_places import things_of
from firmpedal.project.layouts import Layout, layout_text
from firmpedal.project.own_image import follows, images_to_own, own_image
from firmpedal.project.read import read_text
from firmpedal.project.said import said_of
from texts import edited, example

TEXTS = {
    "brindlewick": example("brindlewick"),
    "fennimoss": example("fennimoss"),
    "oatmere": example("oatmere"),
    "tandem": layout_text(Layout("tailwheel", "rod", "toe", "tandem", "no"), "a.yaml"),
    "side by side": layout_text(Layout("nosewheel", "link", "heel", "side-by-side", "yes"), "a.yaml"),
    "off centre": layout_text(Layout("nosewheel", "rod", "toe", "off-centre", "no"), "a.yaml"),
}


def images(text):
    reading = read_text(text, "a.yaml")
    every = (thing.place for things in things_of(reading).values() for thing in things)
    return [place for place in every if place and follows(reading, place)]


def results(text, option):
    """Findings, lengths and verdict, in whatever order the things are written."""
    evaluation = evaluate_text(text, option=option)
    found = sorted(
        (one.rule, one.level.name, one.message, str(one.measured), str(one.allowed))
        for one in evaluation.findings
    )
    lengths = sorted((line.name, str(line.path_length), str(line.hose)) for line in evaluation.laid)
    return evaluation.verdict, found, lengths


@pytest.mark.parametrize("name", TEXTS)
def test_every_image_can_be_its_own_and_the_tree_stays_in_every_option(name):
    text = TEXTS[name]
    reading = read_text(text, "a.yaml")
    places = images(text)
    assert len(places) >= 6
    for place in places:
        after = own_image(reading, place)
        assert not follows(read_text(after, "a.yaml"), place)
        assert all(row in after.splitlines() or "right_" in row for row in text.splitlines())
        for option in (None, *reading.options):
            before, now = (said_of(read_text(each, "a.yaml", option).tree) for each in (text, after))
            assert now == before


@pytest.mark.parametrize(
    ("name", "option"), [("brindlewick", None), ("brindlewick", "rigid"), ("oatmere", None), ("tandem", None)]
)
def test_all_images_made_their_own_change_no_length_no_finding_no_verdict(name, option):
    text = after = TEXTS[name]
    for place in images(text):
        after = own_image(read_text(after, "a.yaml"), place)
    assert images(after) == []
    assert results(after, option) == results(text, option)


def test_what_is_its_own_follows_no_more():
    text = TEXTS["tandem"]
    after = own_image(read_text(text, "a.yaml"), "lines.right_cross")
    left = "second_left_cylinder.outlet, to: first_left_cylinder.inlet, "
    for each, corners in ((text, 1), (after, 0)):
        bent = edited(each, (left, f"{left}via: [[1, -2, 3]], "))
        line = next(one for one in evaluate_text(bent).aircraft.lines if one.name == "right_cross")
        assert len(line.via) == corners


def test_the_images_of_a_thing_are_told_and_what_is_no_image_is_refused():
    reading = read_text(TEXTS["tandem"], "a.yaml")
    assert images_to_own(reading, "bulkheads.left_floor") == ("bulkheads.right_floor",)
    assert images_to_own(reading, "components.valve") == ()
    with pytest.raises(EditError, match="no mirror image"):
        own_image(reading, "bulkheads.left_floor")
    beside = read_text(TEXTS["side by side"], "a.yaml")
    with pytest.raises(EditError, match="no mirror image"):  # it is like the left one, and has its own places
        own_image(beside, "components.first_right_cylinder")
