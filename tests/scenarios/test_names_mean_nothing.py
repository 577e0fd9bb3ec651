"""Names are the builder's own: calling everything otherwise changes no finding and no question."""

from __future__ import annotations

import re
from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firmpedal.pipeline import Evaluation, evaluate_text
from texts import example, small

# Everything with a name in the first aircraft: the aircraft, what moves, zones, components and their
# ports, pedals, panels, bulkheads and their sides, lines. The right side's names come from the mirror list.
BRINDLEWICK = (
    "Brindlewick",
    *(
        f"{side}_{name}"
        for side in ("left", "right")
        for name in (
            *("pedal_swing", "wheel", "caliper_float", "leg_fairing", "wheel_fairing", "brake_heat"),
            *("cylinder", "caliper", "pedal_brake", "line", "floor", "axle", "pedal", "leg", "tail"),
        )
    ),
    *("outlet", "inlet", "cabin_floor", "above", "below", "upper", "lower"),
)
TARNHOLT = (
    "Tarnholt",
    *(
        f"{side}_{name}"
        for side in ("port", "star")
        for name in (
            *("heel", "hub", "slide", "boot", "glow", "pump", "clamp", "plate", "wall", "stub", "joint"),
            *("top", "mid", "bow", "end"),
        )
    ),
    *("out", "feed", "inside", "outside", "inner", "outer", "above", "below"),
)

OATMERE = (
    "Oatmere",
    *(
        f"{side}_{name}"
        for side in ("left", "right")
        for name in (
            *("pedals", "wheel", "caliper_float", "brake_heat", "caliper", "firewall", "belly", "main"),
            *("disc", "leaf", "feed", "cabin", "cross", "to_valve", "run", "gear", "out", "in"),
        )
    ),
    *(
        f"{seat}_{side}{name}"
        for seat in ("pilot", "copilot")
        for side in ("left", "right")
        for name in ("", "_pedal", "_tube")
    ),
    *("cabin_floor", "engine_side", "cabin_side", "upper", "lower"),
)
FENNIMOSS = (
    "Fennimoss",
    *(
        f"{side}_{name}"
        for side in ("left", "right")
        for name in (
            *("cylinder_swing", "wheel", "caliper_float", "brake_heat", "cylinder", "caliper", "heel"),
            *("main", "disc", "line", "bracket", "gear_bracket", "pedal", "keel", "gear"),
        )
    ),
    *("keel", "cabin_floor", "ahead", "behind"),
)

# Names that are words of the file's own too, and keep their meaning there.
ALSO_WORDS = {"inlet", "outlet", "reservoir", "valve"}

# Words that a careless program could take a meaning from.
TEMPTING = (
    "left",
    "right",
    "nylon",
    "hose",
    "plastic",
    "caliper",
    "line",
    "from",
    "to",
    "inlet",
    "outlet",
    "pad",
)

FAULTS = (
    ("covered: no", "covered: yes"),
    ("bore: 16", "bore: 10"),
    ("stroke: 20", "stroke: 1"),
    ("floats: yes", "floats: unknown"),
)


@st.composite
def renamings(draw, names: tuple[str, ...]) -> dict[str, str]:
    """Give every name another one, different from all others and from every word of the file."""
    words = draw(st.lists(st.sampled_from(TEMPTING), min_size=len(names), max_size=len(names)))
    marks = draw(st.permutations(range(len(names))))
    swap = draw(st.booleans())
    return {
        name: f"{word}_zq{mark}" if swap else f"zq{mark}_{word}"
        for name, word, mark in zip(names, words, marks, strict=True)
    }


def renamed(text: str, names: dict[str, str]) -> str:
    """Rename everything; a mirror list by name becomes one by key, since nothing is called left any more."""

    def as_keys(found: re.Match[str]) -> str:
        listed = [name.strip() for name in found[1].split(",")]
        return "mirror: {" + ", ".join(f"{name}: {name.replace('left', 'right')}" for name in listed) + "}"

    text = re.sub(r"mirror: \[([^\]]*)\]", as_keys, text)
    return swapped(text.replace("swap: {left: right}", f"swap: {{{_sides(names)}}}"), names)


def _sides(names: dict[str, str]) -> str:
    """Every name of the left by its fellow of the right: a swap of words finds none in the new names."""
    pairs = ((name, re.sub(r"\bleft\b|left(?=_)|(?<=_)left", "right", name)) for name in names)
    return ", ".join(f"{name}: {other}" for name, other in pairs if other != name and other in names)


def swapped(text: str, names: dict[str, str]) -> str:
    pattern = re.compile(r"\b(" + "|".join(sorted(map(re.escape, names), key=len, reverse=True)) + r")\b")
    return pattern.sub(lambda found: names[found[1]], text)


def everything_said(evaluation: Evaluation, names: dict[str, str]) -> Counter[tuple[object, ...]]:
    """All findings and questions as a bag, with the old names put back."""

    def back(text: str) -> str:
        return swapped(text, names) if names else text

    said: list[tuple[object, ...]] = [("verdict", evaluation.verdict)]
    for finding in evaluation.findings:
        figures = [value.span if value else None for value in (finding.measured, finding.allowed)]
        tries = tuple(back(advice) for advice in finding.tries)
        place, message = back(finding.place), back(finding.message)
        said.append(
            (finding.rule, finding.level, place, message, tries, finding.relation, *figures, finding.sources)
        )
    for unclear in evaluation.not_shown:
        missing = tuple(sorted((back(item.place), back(item.what)) for item in unclear.missing))
        said.append((unclear.rule, back(unclear.place), back(unclear.message), missing))
    return Counter(said)


@pytest.mark.parametrize("option", [None, "rigid"])
@settings(max_examples=15, deadline=None)
@given(names=renamings(BRINDLEWICK))
def test_renaming_the_first_aircraft_changes_nothing(option, names):
    text = example("brindlewick")
    before = evaluate_text(text, "text", option)
    after = evaluate_text(renamed(text, names), "text", option)
    back = {new: old for old, new in names.items()}
    assert everything_said(after, back) == everything_said(before, {})
    assert before.findings


@settings(max_examples=15, deadline=None)
@given(
    names=renamings(TARNHOLT), fault=st.sampled_from(["covered: no", "bore: 16", "stroke: 20", "floats: yes"])
)
def test_renaming_another_aircraft_changes_nothing(names, fault):
    faults = {"covered: no": "covered: yes", "bore: 16": "bore: 10", "stroke: 20": "stroke: 1"}
    text = small("tarnholt").replace(fault, faults.get(fault, "floats: unknown"))
    before = evaluate_text(text, "text")
    after = evaluate_text(renamed(text, names), "text")
    back = {new: old for old, new in names.items()}
    assert everything_said(after, back) == everything_said(before, {})


@pytest.mark.parametrize(
    ("name", "option", "known"), [("oatmere", None, OATMERE), ("fennimoss", "rigid", FENNIMOSS)]
)
@settings(max_examples=3, deadline=None)
@given(data=st.data())
def test_renaming_the_other_examples_changes_nothing(name, option, known, data):
    names = data.draw(renamings(known))
    text = example(name)
    before = evaluate_text(text, "text", option)
    after = evaluate_text(renamed(text, names), "text", option)
    back = {new: old for old, new in names.items()}
    assert everything_said(after, back) == everything_said(before, {})
    assert before.findings


@pytest.mark.parametrize(
    ("text", "names"),
    [
        (example("brindlewick"), BRINDLEWICK),
        (small("tarnholt"), TARNHOLT),
        (example("oatmere"), (*OATMERE, *ALSO_WORDS)),
        (example("fennimoss"), (*FENNIMOSS, *ALSO_WORDS)),
    ],
    ids=["1", "2", "3", "4"],
)
def test_every_name_of_the_file_is_renamed(text, names):
    """So that no name is forgotten in the lists above."""
    for option in (None, "rigid") if "  rigid:" in text else (None,):
        aircraft = evaluate_text(text, "text", option).aircraft
        things = (
            *aircraft.moving,
            *aircraft.zones,
            *aircraft.components,
            *(port for part in aircraft.components for port in part.ports),
            *aircraft.pedals,
            *aircraft.panels,
            *aircraft.bulkheads,
            *(side for wall in aircraft.bulkheads for side in wall.sides),
            *aircraft.lines,
            *aircraft.wheels,
            *aircraft.keep_clear_of,
        )
        assert {thing.name for thing in things} <= set(names)
