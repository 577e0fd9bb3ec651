"""How a thing is measured is said of that thing, not of another one whose key is the same word."""

from __future__ import annotations

import pytest

from firmpedal.model.meanings import MEANINGS
from firmpedal.pipeline import evaluate_text
from firmpedal.project.examples import examples
from firmpedal.project.layouts import Layout, layout_text
from firmpedal.report.measuring_words import HOWS, SECTION_HOWS, how_at
from firmpedal.report.to_measure import to_measure

TEXTS = [
    *(path.read_text() for path in examples().values()),
    layout_text(Layout("tailwheel", "rod", "toe", "tandem", "yes", "mm"), "a.yaml"),
    layout_text(Layout("nosewheel", "link", "heel", "1", "no"), "a.yaml"),
    layout_text(Layout("nosewheel", "bow", "hand", "tandem", "yes"), "a.yaml"),
]
# Keys that are measured alike wherever they stand: a panel's thickness, a mass, a heat strip, a tape.
ALIKE = {
    "bore": {"components"},
    "arm": {"brake"},
    "seat": {"ports"},
    "at": {"ports", "bulkheads"},
    "normal": {"bulkheads"},
    "under": {"gives"},
    "volume": {"swells", "units"},
    "thickness": {"bulkheads", "panels"},
    "material": {"bulkheads", "panels"},
    "temperature": {"zones", "units"},
    "bend radius": {"lines", "bench"},
    "mass": {"components", "disc", "units"},
    "rated pressure": {"components", "lines"},
}  # the file's units are chosen, never measured


@pytest.mark.parametrize("key", HOWS)
def test_a_hint_is_of_one_thing_or_each_other_thing_has_its_own(key):
    where = {section for section, keys in MEANINGS.items() if key in keys}
    own = {section for section in where if (section, key) in SECTION_HOWS}
    assert len(where - own) <= 1 or where - own == ALIKE[key]


@pytest.mark.parametrize(("section", "key"), SECTION_HOWS)
def test_every_hint_of_a_section_is_of_a_key_that_it_has(section, key):
    assert key in MEANINGS[section]


@pytest.mark.parametrize(
    ("place", "words"),
    [
        ("components.left_caliper.ports.inlet.arm", "where its open end looks"),
        ("pedals.left_brake.brake.arm", "pin of the cylinder's rod"),
        ("pedals.brake.brake.arm", "pin of the cylinder's rod"),
        ("pedals.brake.seat", "whose it is"),
        ("components.left_caliper.ports.inlet.seat", "straight nipple"),
        ("bulkheads.left_floor.sides.ahead.seat", "hold the fitting in place"),
        ("components.left_caliper.pistons.bore", "piston pushed out"),
        ("components.left_cylinder.bore", "stamped or cast"),
    ],
)
def test_the_innermost_thing_decides(place, words):
    *steps, key = place.split(".")
    assert words in how_at(steps, key)


@pytest.mark.parametrize("text", TEXTS, ids=range(len(TEXTS)))
def test_every_question_with_a_box_says_how(text):
    asked = [one for one in to_measure(evaluate_text(text)) if one.at]
    assert [one.what for one in asked if not one.how] == []
