"""The order of assembly: what is worked out about fittings, and what the sheet says of it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from evaluated import example, words

from firmpedal.decide.bench_order import goes_before, in_order
from firmpedal.decide.retrofit import from_bare
from firmpedal.decide.step import Action
from firmpedal.model.part import Category
from firmpedal.pipeline import evaluate_text
from firmpedal.report.cards import card_sheets
from firmpedal.report.joint_numbers import joint_numbers
from firmpedal.report.packet import packet_sheets
from firmpedal.report.putting_together import TITLE, putting_together_sheet
from firmpedal.report.retrofit import retrofit_sheet
from firmpedal.report.sheet import Bullets

FILES = Path(__file__).parents[1] / "rules" / "elbows-cannot-turn"


def valve(name: str, *edits: tuple[str, str]):
    text = (FILES / name).read_text(encoding="utf-8")
    for old, new in edits:
        assert old in text
        text = text.replace(old, new)
    return evaluate_text(text)


def is_body(part) -> bool:
    return part.category is Category.FITTING


def bullets(evaluation) -> list[str]:
    sheet = putting_together_sheet(evaluation)
    return [item for block in sheet.blocks if isinstance(block, Bullets) for item in block.items]


def subjects(evaluation, action: Action) -> list[str]:
    return [step.subject for step in from_bare(evaluation) if step.action is action]


# In the file the ports stand 0.9 in apart. The elbow's outlet sweeps 0.79 to 0.99 in, the straight
# nipple is about half an inch wide: the elbow cannot pass it, and the nipple sweeps nothing.
def test_an_elbow_goes_in_before_the_straight_one_that_its_outlet_would_meet():
    evaluation = valve("passing-straight.yaml")
    assert goes_before(evaluation, "valve") == {"valve.in": ("valve.out",), "valve.out": ()}


def test_the_order_hangs_on_the_fittings_and_not_on_the_file():
    evaluation = valve(
        "passing-straight.yaml",
        ("to fitting: 90 degrees", "to fitting: straight"),
        ("run: {from: valve.out, from fitting: straight", "run: {from: valve.out, from fitting: 90 degrees"),
    )
    assert goes_before(evaluation, "valve") == {"valve.in": (), "valve.out": ("valve.in",)}
    bench = [name for name in subjects(evaluation, Action.FIT_ON_BENCH) if name.startswith("valve.")]
    assert bench == ["valve.out", "valve.in"]


def test_ports_far_enough_apart_may_be_filled_in_any_order():
    evaluation = valve("passing-straight.yaml", ("[40, 0.9, -5]", "[40, 2.5, -5]"))
    assert goes_before(evaluation, "valve") == {"valve.in": (), "valve.out": ()}


def test_the_sheet_says_why_and_names_joints_by_their_numbers():
    evaluation = valve("passing-straight.yaml")
    numbers = joint_numbers(evaluation)
    (words,) = [item for item in bullets(evaluation) if "into valve.in" in item]
    assert f"valve.in (joint {numbers['valve.in']})" in words
    assert f"First, before valve.out (joint {numbers['valve.out']})" in words
    assert not any("First, before" in item for item in bullets(evaluation) if item != words)


def test_what_meets_a_panel_in_place_is_said_at_its_step():
    said = [item for item in bullets(valve("failing-panel.yaml")) if "On the bench, not later" in item]
    assert len(said) == 1
    assert "valve.in" in said[0]
    assert not any("not later" in item for item in bullets(valve("passing-panel.yaml")))


@pytest.mark.parametrize("circle", [0, 1])
def test_a_circle_of_waiting_still_gives_every_joint_once(circle):
    joints = valve("passing-straight.yaml").assembly.joints[:3]
    one, other, third = (joint.name for joint in joints)
    before = {one: (other,), other: (third,), third: (one,) if circle else ()}
    assert in_order(reversed(joints), before)[0].name == (third if circle else one)
    assert {joint.name for joint in in_order(joints, before)} == {one, other, third}


@pytest.mark.parametrize("name", ["brindlewick", "oatmere", "fennimoss"])
def test_every_joint_is_made_once_and_before_any_line_comes_to_it(name):
    evaluation = evaluate_text((Path("examples") / f"{name}.yaml").read_text(encoding="utf-8"))
    steps = list(from_bare(evaluation))
    lines = [n for n, step in enumerate(steps) if step.action is Action.FIT_LINE]
    fitting = (Action.FIT_ON_BENCH, Action.FIT_BULKHEAD, Action.FIT_PARTS)
    made = [step.subject for step in steps[: lines[0]] if step.action in fitting]
    assert sorted(steps[n].subject for n in lines) == sorted(line.name for line in evaluation.laid)
    held = [joint.name for joint in evaluation.assembly.joints if any(map(is_body, joint.parts))]
    assert sorted(made) == sorted(held)
    actions = [step.action for step in steps]
    assert actions.index(Action.TIGHTEN) > lines[-1]
    assert actions.index(Action.LEAK_CHECK) > actions.index(Action.TIGHTEN)


def test_what_hides_lines_is_closed_after_they_stayed_dry():
    text = (FILES.parent / "thread-in-before-bending" / "failing.yaml").read_text(encoding="utf-8")
    evaluation = evaluate_text(text)
    steps = list(from_bare(evaluation))
    (close,) = [n for n, step in enumerate(steps) if step.action is Action.CLOSE_UP]
    assert steps[close - 1].action is Action.LEAK_CHECK
    assert steps[close].about
    assert any(item.startswith(f"Only now close {steps[close].subject}") for item in bullets(evaluation))
    assert not subjects(evaluate_text(text.replace("hidden: yes", "hidden: no")), Action.CLOSE_UP)


def test_it_stands_behind_the_cards_in_every_packet():
    evaluation = example()
    titles = [sheet.title for sheet in packet_sheets(evaluation)]
    assert titles.count(TITLE) == 1
    last_card = [sheet.title for sheet in card_sheets(evaluation)][-1]
    assert titles.index(TITLE) == titles.index(last_card) + 1


def test_what_makes_safe_speaks_of_fluid_before_any_line_is_there():
    # common practice, no source: no joint is opened or tightened under pressure; goggles; no flame
    (words,) = [item for item in bullets(example("rigid")) if item.startswith("Chock the wheels")]
    for said in ("From the first fluid on", "goggles", "no flame", "while it is under pressure"):
        assert said in words
    assert "until the end" not in words  # there is no pressure yet, and pedals have to be moved to be fitted


def test_what_makes_safe_speaks_of_pressure_where_lines_are_there():
    steps = retrofit_sheet(example(), example("rigid"))
    (words,) = [
        item
        for block in steps.blocks
        if isinstance(block, Bullets)
        for item in block.items
        if item.startswith("Chock")
    ]
    assert "No pressure in any line, and nobody touches a pedal until the end" in words


# Two elbows whose ports stand too near to each other: neither can be turned in beside the other.
def test_elbows_that_neither_can_go_in_last_are_said_at_their_steps_and_on_their_cards():
    evaluation = valve("failing.yaml")
    (found,) = [one for one in evaluation.findings if "neither can go in last" in one.message]
    ports = {place.removeprefix("components.").replace(".ports.", ".") for place in found.about}
    assert len(ports) == 2
    for port in ports:
        (step,) = [item for item in bullets(evaluation) if f"into {port} " in item]
        assert f"CAUTION: {found.message}; put that right first" in step
    others = [item for item in bullets(evaluation) if not any(f"into {port} " in item for port in ports)]
    assert not any("CAUTION" in item for item in others)
    lines = {line for line in evaluation.aircraft.lines if ports & {line.start, line.finish}}
    told = {sheet.title for sheet in card_sheets(evaluation) if found.message in words(sheet)}
    assert {title.split()[-1] for title in told} == {line.name for line in lines}


def test_nothing_promises_room_to_swing_an_elbow():
    for name in ("failing.yaml", "passing-straight.yaml"):
        assert "room to swing" not in words(putting_together_sheet(valve(name)))


RUN = Path(__file__).parents[1] / "rules" / "tube-does-not-go-through" / "failing.yaml"


def test_what_a_card_pushes_through_bare_is_flared_in_its_place_here_too():
    # a -4 nut is about 0.65 in across its corners: it does not go through 3/8 in, and it does through 3/4
    text = RUN.read_text(encoding="utf-8")
    narrow, wide = evaluate_text(text), evaluate_text(text.replace("hole: 3/8", "hole: 3/4"))
    (step,) = [item for item in bullets(narrow) if item.startswith("Thread in run")]
    assert "in place, make the flare at the first end" in step
    assert "except what is bent or flared only in its place" in words(putting_together_sheet(narrow))
    assert not any("Thread in" in item for item in bullets(wide))
    assert "except" not in putting_together_sheet(wide).blocks[0].text


def proving(evaluation) -> list[str]:
    wanted = ("Open ", "Fill and bleed")
    return [item for item in bullets(evaluation) if item.startswith(wanted)]


def test_a_circuit_is_filled_once_from_its_wheel_up_and_through_an_open_valve():
    # the order of the left side is read off the file by hand, from the caliper back to the reservoir
    example_file = Path(__file__).parents[2] / "examples" / "oatmere.yaml"
    evaluation = evaluate_text(example_file.read_text(encoding="utf-8"))
    opened, *fills = proving(evaluation)
    assert opened.startswith("Open valve, and leave it open")
    assert ("left_gear, then left_run, then left_to_valve, then left_cross, then left_cabin, then left_feed"
            in next(fill for fill in fills if "left_caliper" in fill))  # fmt: skip
    lines = [line.name for line in evaluation.aircraft.lines]
    assert all(sum(name in re.findall(r"\w+", fill) for fill in fills) == 1 for name in lines)
    assert all("_caliper up to reservoir" in fill for fill in fills)
