"""A hand lever is spoken of as a hand and a lever, on every sheet and in every finding; feet stay feet."""

from __future__ import annotations

import re
from dataclasses import fields, is_dataclass

import pytest
from test_stopping import AIRCRAFT

from firmpedal.model.aircraft import Brakes
from firmpedal.model.worked import in_words_of
from firmpedal.pipeline import evaluate_text
from firmpedal.project.layouts import Layout, layout_text
from firmpedal.report.hangar import before_sheet
from firmpedal.report.packet import packet_sheets

OF_FEET = re.compile(
    r"\b((hard|normal|panic|harder|real|steady|next|each|same) foot|feet off|on each pedal|equal feet)\b",
    re.IGNORECASE,
)


def texts(thing):
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, tuple):
        for each in thing:
            yield from texts(each)
    elif is_dataclass(thing):
        for each in fields(thing):
            yield from texts(getattr(thing, each.name))


def everything(text):
    evaluation = evaluate_text(text)
    yield from texts(packet_sheets(evaluation))
    yield from texts(before_sheet(evaluation))
    for finding in evaluation.findings:
        yield from (finding.message, *finding.tries)
    yield from (each.message for each in evaluation.not_shown)


def test_no_sheet_and_no_finding_of_a_hand_lever_speaks_of_feet():
    by_hand = AIRCRAFT.replace("brakes: toe", "brakes: hand")
    found = [text for text in everything(by_hand) if OF_FEET.search(text)]
    assert found == []
    assert any("the hard pull" in text for text in everything(by_hand))
    assert any("on each lever" in text for text in everything(by_hand))


def test_feet_stay_feet():
    found = list(everything(AIRCRAFT))
    assert any("The hard foot" in text for text in found)
    assert not any(re.search(r"\b(hard|normal) pull\b", text) for text in found)


@pytest.mark.parametrize(
    "own",
    [
        "left_pedal and left_foot",
        "pedals.left_pedal.brake.arm",
        "write `pedal: hand_lever`",
        "rudder pedals",
        "a six foot length of tube",
        "the pad gap of left_caliper",
    ],
)
def test_names_places_and_other_things_stay(own):
    assert in_words_of(Brakes.HAND, own) == own


def test_a_first_file_without_a_rudder_does_not_speak_of_one():
    by_hand = layout_text(Layout("nosewheel", "rod", "hand", "1", "yes", "mm"), "a.yaml")
    assert "rudder" not in by_hand.lower()
    assert "left pedal forward" not in by_hand
    by_toes = layout_text(Layout("nosewheel", "rod", "toe", "1", "yes", "mm"), "a.yaml")
    assert "Rudder +1 is left pedal forward." in by_toes
