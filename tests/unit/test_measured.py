"""Measurements as builders type them, written where the file lacks them, and refused in plain words."""

from __future__ import annotations

import pytest

from firmpedal.decide.lacking import waiting
from firmpedal.model.aircraft import find
from firmpedal.pipeline import evaluate_text
from firmpedal.project.edit import EditError
from firmpedal.project.measured import measured
from firmpedal.project.unknowns import unknowns
from firmpedal.report.to_measure import NEEDED_LATER, to_measure
from firmpedal.units import from_unit
from texts import edited, example

TEXT, OTHER = example("brindlewick"), example("oatmere")
RATED = "components.left_cylinder.rated pressure"
NORMAL = "bulkheads.left_axle.normal"
HOLE = "panels.cabin_floor.passes.left_run.hole"
EACH = [(TEXT, None), (TEXT, "rigid"), (OTHER, None), (OTHER, "first sketch")]
POINTS = """\
points:
  axle: [1, 2, 3]
  nowhere: unknown
  sure: {value: unknown, mark: assumed}
  by_tape: {from: axle, aft: unknown, right: 2}
  part: [unknown, 2, 3]

keep clear of:
  disc: {kind: disc, where: unknown}
  rod: {kind: disc, where: {bar: [unknown, [1, 2, unknown]], radius: unknown}}
  ball: {kind: disc, where: {ball: unknown, radius: 2}}

zones:
"""
PSI, INCH = 6894.757293, 0.0254  # Pa, m: an inch is exact, a psi to ten digits (NIST SP 811, app. B.8)


def rated(text, name, option=None):
    return find(evaluate_text(text, option=option).aircraft.components, name).rated_pressure


def test_a_key_that_was_left_out_is_written_under_its_thing():
    text, where = measured(TEXT, RATED, " 1500 ")
    assert where is None
    added = [line for line in text.splitlines() if line not in TEXT.splitlines()]
    assert added == ["    rated pressure: 1500"]
    assert text.replace("    rated pressure: 1500\n", "") == TEXT
    assert rated(text, "left_cylinder").span == pytest.approx((1500 * PSI,) * 2)


def test_the_mirror_image_gets_the_same_figure():
    text, _ = measured(TEXT, RATED, "1500")
    assert rated(text, "right_cylinder").span == rated(text, "left_cylinder").span
    asked = {what for what in waiting(evaluate_text(TEXT)) if "cylinder, from its maker" in what}
    assert len(asked) == 2
    assert not asked & set(waiting(evaluate_text(text)))


@pytest.mark.parametrize(
    ("words", "inches"),
    [("5/8", 0.625), ("21/32 in", 0.65625), ('0.65"', 0.65), ("16 mm", 16 / 25.4), ("about 5/8", 0.625)],
)
def test_fractions_and_units_are_typed_as_builders_type_them(words, inches):
    text, _ = measured(OTHER, HOLE, words)
    panel = find(evaluate_text(text).aircraft.panels, "cabin_floor")
    hole = next(each for each in panel.passes if each.name == "left_run").hole
    assert hole.middle == pytest.approx(inches * INCH)


def test_an_unknown_is_replaced_in_the_option_where_it_stands_and_its_remark_stays():
    text = edited(TEXT, ("        normal: unknown\n", "        normal: unknown   # look again\n"))
    after, where = measured(text, NORMAL, "aft and down", "rigid")
    assert where == "rigid"
    assert after == edited(text, ("normal: unknown   # look", "normal: aft and down  # look"))


def test_what_belongs_to_a_thing_of_the_aircraft_is_written_there_from_an_option_too():
    text, where = measured(TEXT, RATED, "1500", "rigid")
    assert where is None
    assert text == measured(TEXT, RATED, "1500")[0]


@pytest.mark.parametrize(
    ("place", "words", "said"),
    [
        (RATED, "1 2/3 kpsi", "'kpsi' is not a unit of pressure"),
        (RATED, "-3", "cannot be less than nothing"),
        (RATED, "a lot", "left_cylinder rated pressure"),
        (RATED, "1500, bore: 3", "left_cylinder rated pressure"),
        (RATED, "1500 # by eye", "cannot be read as a pressure"),
        (RATED, "[1500, 1600]", "left_cylinder rated pressure"),
        (RATED, "{value: 1500, mark: sure}", "not a mark"),
        (RATED, "  ", "nothing is written"),
        ("components.left_cylinder.body", "wood", "not a choice"),
        ("components.nobody.bore", "1", "not written by itself"),
    ],
)
def test_what_cannot_be_read_there_is_refused_in_the_readers_words(place, words, said):
    with pytest.raises(EditError, match=said):
        measured(TEXT, place, words)


def test_a_file_without_a_unit_of_pressure_asks_for_one_and_takes_it():
    text = edited(TEXT, (" pressure: psi,", ""))
    one = next(each for each in to_measure(evaluate_text(text)) if each.at == RATED)
    assert one.unit == ""
    with pytest.raises(EditError, match="has no unit"):
        measured(text, RATED, "1500")
    after, _ = measured(text, RATED, "100 bar")
    assert rated(after, "left_cylinder").span == pytest.approx((1e7, 1e7))  # a bar is 100 kPa


@pytest.mark.parametrize(("text", "option"), EACH)
def test_everything_that_is_waited_for_or_unknown_is_on_the_list_once(text, option):
    evaluation = evaluate_text(text, option=option)
    listed = to_measure(evaluation)
    covered = {place for one in listed for place in one.places}
    assert covered >= {place for _, places in waiting(evaluation).values() for place in places}
    assert len({one.at for one in listed if one.at}) == sum(bool(one.at) for one in listed)
    for item in unknowns(evaluation.reading):
        first = item.path.replace("feet add up", "seals when pressed")  # answers whether it is a question
        assert any(f"{one}.".startswith(f"{place}.") for place in covered for one in (item.path, first))


def test_whether_feet_add_up_is_asked_once_the_other_seat_is_known_to_get_through():
    text = example("oatmere")
    added = "components.pilot_left.feet add up"
    assert not [one for one in to_measure(evaluate_text(text)) if added in one.places]
    seals = edited(text, ("seals when pressed: unknown", "seals when pressed: no"))
    assert [one for one in to_measure(evaluate_text(seals)) if added in one.places]


def test_what_no_rule_waits_for_says_so_and_a_point_is_no_single_value():
    listed = {one.places[0]: one for one in to_measure(evaluate_text(TEXT, option="rigid"))}
    assert listed[NORMAL].why == NEEDED_LATER
    assert listed[NORMAL].at == NORMAL
    jacks = listed["moving.left_wheel.gear.on jacks"]
    assert (jacks.at, jacks.others) == ("", ("moving.right_wheel.gear.on jacks",))
    hose = listed["lines.left_pedal.tightest bend"]  # one figure in the file, of two hoses in hand
    assert hose.others == ("lines.right_pedal.tightest bend",)
    assert "on both sides: write the tighter" in hose.how
    assert listed[RATED].others == ("components.right_cylinder.rated pressure",)
    assert listed[RATED].unit == "psi"


@pytest.mark.parametrize(("text", "option"), EACH)
def test_each_field_takes_a_figure_that_then_stands_at_its_place(text, option):
    samples = {"yes or no": "yes", "": "steel"}
    for one in to_measure(evaluate_text(text, option=option)):
        if not one.at:
            continue
        key = one.at.rpartition(".")[2]
        words = {"normal": "aft", "seals": "nitrile"}.get(key) or samples.get(one.unit, "1")
        after, _ = measured(text, one.at, words, option)
        left = {each.at for each in to_measure(evaluate_text(after, option=option))}
        assert one.at not in left


def test_a_figure_in_the_files_unit_is_asked_for_whatever_is_shown():
    assert from_unit(1, "psi") == pytest.approx(PSI)
    metric = edited(TEXT, ("pressure: psi", "pressure: bar"))
    one = next(each for each in to_measure(evaluate_text(metric)) if each.at == RATED)
    assert one.unit == "bar"


def test_a_box_is_there_for_one_figure_only_and_takes_it():
    text = edited(TEXT, ("zones:\n", POINTS))
    rows = to_measure(evaluate_text(text))
    boxes = {one.at: one.unit for one in rows if one.at.startswith(("points.", "keep clear of."))}
    assert set(boxes) == {
        "points.by_tape.aft", "points.part.1",
        "keep clear of.rod.where.bar.2.3", "keep clear of.rod.where.radius",
    }  # fmt: skip
    for place in boxes:
        after, _ = measured(text, place, "3 1/2")
        assert place not in {one.at for one in to_measure(evaluate_text(after))}
    whole = ("points.nowhere", "points.sure", "keep clear of.disc.where", "keep clear of.rod.where.bar.1",
             "keep clear of.ball.where.ball")  # fmt: skip
    for place in whole:  # three figures, or a shape: the ways to its fields stand there instead
        assert [one.at for one in rows if place in one.places] == [""], place
        with pytest.raises(EditError):
            measured(text, place, "3 1/2")


def test_what_another_one_measured_meanwhile_is_not_written_over():
    text, _ = measured(TEXT, RATED, "1000 psi")
    with pytest.raises(EditError, match="`1000 psi` stands there by now"):
        measured(text, RATED, "900 psi")
