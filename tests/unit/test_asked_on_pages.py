"""What the pages of figures ask for: each thing once, with a place to write it, and what the file offers."""

from __future__ import annotations

import pytest

from firmpedal.finding import Verdict
from firmpedal.pipeline import evaluate_text
from firmpedal.project.measured import measured
from firmpedal.report.feel import feel_asks
from firmpedal.report.heat import heat_asks, heat_sheet
from firmpedal.report.measure_sheet import until_known
from firmpedal.report.sheet import Bullets
from firmpedal.report.stopping import stopping_asks, stopping_sheet
from firmpedal.report.to_measure import to_measure
from firmpedal.web.pages.heat import heat_html
from texts import edited, example

TEXT = example("fennimoss")
GROUND = TEXT[TEXT.index("on the ground:") : TEXT.index("\nstates:")]
DISC = "    disc: {mass: {value: 2.9 lb, mark: assumed}, radius: {value: 3.2, mark: assumed}}\n"
BARE = edited(
    TEXT,
    (GROUND, ""),
    (DISC, ""),
    ("    mass: {value: 2.0 lb, mark: assumed}\n", ""),
    ("    effective radius: {value: 2.5, mark: assumed}\n", ""),
)
RADIUS = "components.left_caliper.disc.radius"


def rows(asks, text=BARE):
    return asks(evaluate_text(text))


def test_left_and_right_are_one_row_and_each_figure_has_a_box():
    asked = {each.at: each for each in rows(heat_asks)}
    assert asked[RADIUS].others == ("components.right_caliper.disc.radius",)
    assert asked["components.left_caliper.mass"].unit == "lb"
    assert not any(at.startswith("components.right_") for at in asked)
    stop = {each.at: each for each in rows(stopping_asks)}
    assert stop["components.left_caliper.effective radius"].unit == "in"
    assert stop["on the ground.tyre radius"].unit == "in"
    assert "" not in stop


@pytest.mark.parametrize("asks", [heat_asks, stopping_asks, feel_asks])
def test_what_is_written_in_the_boxes_is_not_asked_for_any_more(asks):
    text, written = BARE, 0
    while asked := [each for each in rows(asks, text) if each.at]:
        words = "2.5" if asked[0].unit else "60 kt"  # the file has no unit for speeds, and the row says so
        assert asked[0].unit or "write its unit too" in asked[0].how
        text, _ = measured(text, asked[0].at, words)
        assert asked[0].at not in {each.at for each in rows(asks, text)}
        written += 1
    assert written or asks is feel_asks


TRIAL = ("components.left_caliper.heat trial.port", "components.left_caliper.heat trial.air")


def test_what_heat_does_not_show_leads_to_the_trial_that_shows_it():
    text = example("brindlewick")
    asked = {each.at: each for each in rows(heat_asks, text)}
    assert set(asked) == set(TRIAL)
    assert asked[TRIAL[0]].what.startswith("temperature labels on left_caliper at its port")
    assert asked[TRIAL[0]].later
    made = heat_html(text, "mine.yaml", None, None)
    assert made.count("not shown: measure") == made.count('<a href="#measure">not shown: measure</a>') > 0
    assert "/aircraft/mine.yaml/describe?at=components.left_caliper.heat+trial" in made
    for at, words in zip(TRIAL, ("200 degF", "60 degF"), strict=True):
        text, _ = measured(text, at, words)
    assert not set(TRIAL) & {each.at for each in rows(heat_asks, text)}


def test_a_disc_that_stands_in_the_file_is_offered_by_its_own_figure():
    asked = {each.at: each for each in rows(heat_asks)}
    assert [(each.words, each.thing, each.doubt) for each in asked[RADIUS].offers] == [
        ("3.2", "left_disc", "")
    ]
    text, _ = measured(BARE, RADIUS, asked[RADIUS].offers[0].words)
    assert RADIUS not in {each.at for each in rows(heat_asks, text)}


def test_a_guess_is_named_as_one_and_a_disc_on_the_other_side_is_not_offered():
    guess = edited(BARE, ("axis: right, radius: 3.2,", "axis: right, radius: {value: 3.2, mark: assumed},"))
    (offer,) = next(each.offers for each in rows(heat_asks, guess) if each.at == RADIUS)
    assert offer.doubt == "assumed"
    other = edited(BARE, ("{disc: [106, -34.5, -22]", "{disc: [106, 34.5, -22]"))
    found = {offer.thing for each in rows(heat_asks, other) if each.at == RADIUS for offer in each.offers}
    assert "left_disc" not in found


@pytest.mark.parametrize(("sheet", "asks"), [(heat_sheet, heat_asks), (stopping_sheet, stopping_asks)])
def test_the_sheet_counts_and_lists_the_same_rows_as_the_page(sheet, asks):
    evaluation = evaluate_text(BARE)
    blocks = [inner for each in sheet(evaluation).blocks for inner in getattr(each, "blocks", (each,))]
    listed = next(each for each in blocks if isinstance(each, Bullets) and each.boxes)
    assert len(listed.items) == len(asks(evaluation))
    assert f"{len(listed.items)} figures to measure" in sheet(evaluation).blocks[0].text
    mute = sheet(evaluation, asks=False)
    blocks = [inner for each in mute.blocks for inner in getattr(each, "blocks", (each,))]
    assert not any(isinstance(each, Bullets) and each.boxes for each in blocks)


def test_which_way_a_disc_is_turned_is_no_length():
    text = edited(TEXT, ("axis: right, radius: 3.2,", "axis: unknown, radius: unknown,"))
    asked = {each.at: each for each in to_measure(evaluate_text(text))}
    assert asked["keep clear of.left_disc.where.axis"].unit == ""
    assert "which way" in asked["keep clear of.left_disc.where.axis"].how
    assert asked["keep clear of.left_disc.where.radius"].unit == "in"
    after, _ = measured(text, "keep clear of.left_disc.where.axis", "right")
    assert "keep clear of.left_disc.where.axis" not in {each.at for each in to_measure(evaluate_text(after))}


@pytest.mark.parametrize("option", [None, "rigid"])
def test_how_hot_a_line_gets_has_the_same_box_on_every_page(option):
    """Hotter than any table of stiffness, or than the strength of metal holds; left and right are one row."""
    text = edited(
        example("brindlewick"), ("temperature: {value: 176, mark: assumed}", "temperature: 300 degF")
    )
    evaluation = evaluate_text(text, option=option)
    both = [
        {each.at: each for each in asks(evaluation) if "temperature" in each.at}
        for asks in (to_measure, feel_asks)
    ]
    line = "left_line" if option is None else "left_leg"
    row = both[0][f"lines.{line}.temperature"]
    assert row.what.startswith(f"how hot {line} gets, by heat strips")
    assert row.others == (f"lines.{line.replace('left', 'right')}.temperature",)
    assert set(both[1]) <= set(both[0])


def test_the_list_does_not_hang_the_verdict_on_what_is_measured_where_it_is_not_sound():
    wanted = {None: Verdict.NOT_SOUND, "rigid": Verdict.NOT_SHOWN}
    for option, verdict in wanted.items():
        evaluation = evaluate_text(example("brindlewick"), option=option)
        assert evaluation.verdict is verdict
        words = until_known(evaluation)
        assert ("NOT SOUND" in words) is (verdict is Verdict.NOT_SOUND)
        assert ("nobody can say" in words) is (verdict is not Verdict.NOT_SOUND)
