"""The cards for the bench: lengths, marks, order of work, ends."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from evaluated import EXAMPLE, awkward, example, of_kind, sheets, words

from firmpedal.lay.bend_order import BendOrder, BendStep
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark, Value, exactly, total
from firmpedal.report.bend_blocks import bend_blocks
from firmpedal.report.cards import card, card_sheets
from firmpedal.report.remarks import length_remark
from firmpedal.report.sheet import Bullets, Drawing, Fields, Figures, Group, Paragraph, Table, Tone
from firmpedal.report.tube_work import order_of_work
from firmpedal.units import Dimension


def line_of(name: str, option: str | None = "rigid"):
    return next(line for line in example(option).laid if line.name == name)


def bend_table(name: str) -> Table:
    return next(table for table in of_kind(sheets("rigid")[f"Tube {name}"], Table) if "bend" in table.columns)


def test_every_line_has_one_card_of_its_own_page():
    found = [sheet for title, sheet in sheets("rigid").items() if title.split(" ")[0] in ("Tube", "Hose")]
    assert len(found) == len(example("rigid").laid)
    assert all(sheet.new_page for sheet in found)


def test_the_lengths_of_the_leg_are_the_ones_worked_out_by_hand():
    # left_leg, from its corner points with 3/4 in bends: 39.63 in developed, 39.66 in with two flares
    (figures,) = of_kind(sheets("rigid")["Tube left_leg"], Figures)
    shown = {item.label: item for item in figures.items}
    assert shown["cut to"].text == "39-21/32 in"
    assert shown["developed length"].note == "39.63 in"
    assert shown["bends"].text == "3"


def test_marks_are_the_running_length_to_the_start_of_each_bend():
    # straights 1.879, 3.155, 30.872 in and arcs .767, .511 in before them
    starts = [1.879, 1.879 + 0.767 + 3.155, 1.879 + 0.767 + 3.155 + 0.511 + 30.872]
    marks = [row[1].split("\n")[1] for row in bend_table("left_leg").rows]
    for mark, start in zip(marks, starts, strict=True):
        assert float(mark.removesuffix(" in")) == pytest.approx(start, abs=0.006)


def test_the_main_figures_of_a_bend_are_large_and_on_the_tape():
    table = bend_table("left_leg")
    assert {1, 2, 3} <= table.large
    assert [row[1].split("\n")[0] for row in table.rows] == ["1-7/8 in", "5-13/16 in", "37-3/16 in"]
    assert [row[3] for row in table.rows] == ["58.6\u00b0", "39.1\u00b0", "33.1\u00b0"]
    assert all(row[4] == "" for row in table.rows)  # room for the builder's own tool


def test_the_twin_is_named_and_turns_the_other_way():
    left, right = bend_table("left_leg"), bend_table("right_leg")
    assert [row[1] for row in left.rows] == [row[1] for row in right.rows]
    assert [row[2].split("\n")[0] for row in left.rows[1:]] == ["+129.5\u00b0", "+157.5\u00b0"]
    assert [row[2].split("\n")[0] for row in right.rows[1:]] == ["-129.5\u00b0", "-157.5\u00b0"]
    assert "Mirror image of right_leg" in words(sheets("rigid")["Tube left_leg"])


def test_the_printed_sum_of_straights_and_arcs_comes_out():
    said = words(sheets("rigid")["Tube left_leg"]).splitlines()
    straights = next(line for line in said if line.startswith("straights: "))
    arcs = next(line for line in said if line.startswith("and arcs: "))
    parts = [float(part) for part in straights.partition(": ")[2].split(" + ")]
    parts += [float(part) for part in arcs.partition(": ")[2].partition(",")[0].split(" + ")]
    total = float(arcs.rpartition("together ")[2].removesuffix(" in"))
    assert math.fsum(parts) == pytest.approx(total, abs=0.005 + 0.0005 * len(parts))


def test_nut_before_sleeve_before_flare_and_the_last_flare_last():
    line = line_of("left_leg")
    steps = order_of_work(example("rigid"), line, line.tube)
    first = next(step for step in steps if step.startswith("End A"))
    assert first.index("AN818-4D") < first.index("AN819-4D") < first.index("flare")
    places = [next(n for n, step in enumerate(steps) if step.startswith(start)) for start in
              ("Cut square", "Deburr", "End A", "Mark the bends", "Try it", "End B")]  # fmt: skip
    assert places == sorted(places)


def test_an_end_that_is_only_just_long_enough_carries_a_note():
    line = line_of("left_leg")
    steps = order_of_work(example("rigid"), line, line.tube)
    assert "NOTE: only just long enough" in next(step for step in steps if step.startswith("End A"))
    none = order_of_work(replace(example("rigid"), findings=()), line, line.tube)
    assert not [step for step in none if "NOTE" in step]


def test_springback_is_a_field_to_fill_in_and_no_figure():
    sheet = sheets("rigid")["Tube left_leg"]
    assert "bend a coupon first" in words(sheet)
    fields = [label for block in of_kind(sheet, Fields) for label in block.labels]
    assert "so add, degrees" in fields


def test_both_ends_show_their_parts_in_order_the_torque_and_what_was_refused():
    said = words(sheets("rigid")["Tube left_leg"])
    assert "parts: sleeve AN819-4D, nut AN818-4D, elbow 90\u00b0 AN833-4D, held by jam nut AN924-4D" in said
    assert "parts: sleeve AN819-4D, nut AN818-4D, union AN832-4D, held by jam nut AN924-4D" in said
    assert "torque: 50 to 65 lbf in" in said
    assert "not taken: AN837-4D" in said


def test_high_points_stand_on_the_card_of_a_line_that_has_some():
    assert "High points" not in words(sheets("rigid")["Tube left_leg"])  # it falls all the way
    said = words(card(awkward(), awkward().laid[0]))
    assert "parked: highest at end A, 29.3 mm above the datum; air stays at bend 12" in said


def test_clamps_stand_on_the_card():
    said = words(sheets("rigid")["Tube left_leg"])
    for station in line_of("left_leg").supports.stations:
        assert f"{int(station.middle / 0.0254)}-" in said


def test_a_hose_card_says_what_to_order_and_what_is_not_checked():
    sheet = sheets("rigid")["Hose left_tail"]
    (figures,) = of_kind(sheet, Figures)
    assert figures.items[0].text == "9 in"
    assert "made to length" in figures.items[0].note
    assert "declared path" in [item.label for item in figures.items]
    said = words(sheet)
    assert "NOT CHECKED" in said
    assert "2.00 in" in said
    assert "MIL-H-27267" in said


def test_a_plastic_card_says_that_its_bends_are_not_checked():
    said = words(sheets()["Plastic line left_line"])
    assert "radius NOT CHECKED" in said
    assert "513 psi at 176 degF" in said


def test_a_length_that_rests_on_an_assumption_says_measure_first():
    assert any(
        "Measure from seat to seat" in block.text for block in length_remark(_marked(Mark.ASSUMED), "cut")
    )
    assert any(
        "Measure from seat to seat" in block.text for block in length_remark(_marked(Mark.ESTIMATE), "cut")
    )
    assert length_remark(_marked(Mark.MEASURED), "cut") == []


def test_a_length_says_which_part_to_measure():
    leg = exactly("leg", Dimension.LENGTH, 0.3, Mark.MEASURED)
    guess = Value("leg of AN822-4", Dimension.LENGTH, (0.02, 0.025), Mark.ESTIMATE)
    still = Value("a part that moves nothing", Dimension.LENGTH, (0.02, 0.02), Mark.ESTIMATE)
    (remark,) = length_remark(total("cut length", (leg, guess, still)), "cut")
    assert remark.text == (
        "This length rests on an estimate: leg of AN822-4. Measure it, or from seat to seat, before you cut."
    )


def test_of_many_estimates_the_whole_is_measured():
    many = [Value(f"part {n}", Dimension.LENGTH, (0.02, 0.025), Mark.ESTIMATE) for n in range(5)]
    (remark,) = length_remark(total("cut length", many), "cut")
    assert remark.text == "This length rests on an estimate. Measure from seat to seat before you cut."


def test_a_bend_that_is_not_counted_from_the_last_one_made_names_its_base():
    # made in the order 1, 3, 2: bend 2 lies next to 1, while 3 was made last
    evaluation, line = example("rigid"), line_of("left_leg")
    steps = tuple(BendStep(number, "from") for number in (0, 2, 1))
    work = replace(line.work, order=BendOrder(steps, ()))
    table, *rest = bend_blocks(evaluation, line.tube, work)
    assert [row[0] for row in table.rows] == ["\u2460", "\u2462", "\u2461"]
    assert "from bend \u2460, seen from A" in table.rows[2][2]
    (clock,) = [words(it) for block in rest if isinstance(block, Group) for it in block.blocks
                if "12 o'clock" in words(it)]  # fmt: skip
    assert "Where it names a bend" in clock


def test_in_the_usual_order_no_base_is_named():
    line = line_of("left_leg")
    table = bend_blocks(example("rigid"), line.tube, line.work)[0]
    assert not any("from bend" in row[2] for row in table.rows)


def _marked(mark: Mark):
    return replace(line_of("left_leg").path_length, mark=mark)


def test_findings_and_gaps_of_a_line_stand_on_its_card_and_no_others():
    said = words(sheets()["Plastic line left_line"])
    assert any(text.startswith("left_line is plastic") for text in said.splitlines())
    assert "right_line is plastic" not in said
    waiting = [each for each in example("rigid").not_shown if each.place == "lines.left_leg"]
    assert waiting
    for missing in waiting[0].missing:
        assert f"TO MEASURE: {missing.what}" in words(sheets("rigid")["Tube left_leg"])


def test_a_tube_that_cannot_be_bent_is_not_to_be_cut():
    text = EXAMPLE.read_text(encoding="utf-8").replace("bend radius: 3/4", "bend radius: 12")
    evaluation = evaluate_text(text, option="rigid")
    line = next(line for line in evaluation.laid if line.name == "left_leg")
    sheet = card(evaluation, line)
    warnings = [block.text for block in of_kind(sheet, Paragraph) if block.tone is Tone.WARNING]
    assert any("cannot be bent" in text and "Do not cut it" in text for text in warnings)
    assert not of_kind(sheet, Figures)
    assert of_kind(sheet, Drawing)


def test_a_tube_with_an_unknown_seat_says_what_to_measure():
    text = EXAMPLE.read_text(encoding="utf-8").replace(
        "upper: {seat: [6.6, -33.4, -30.2]}", "upper: {seat: unknown}"
    )
    evaluation = evaluate_text(text, option="rigid")
    line = next(line for line in evaluation.laid if line.name == "left_leg")
    sheet = card(evaluation, line)
    assert "cannot be cut yet" in words(sheet)
    assert any(block.boxes for block in of_kind(sheet, Bullets))


def test_a_hump_between_the_ends_is_named_as_a_place_for_air():
    said = words(card(awkward(), awkward().laid[0]))
    assert "air stays at" in said
    assert "air stays at" not in words(sheets("rigid")["Tube left_leg"])


def test_nobody_signs_on_a_page_by_itself():
    for option in ("rigid", "all hose", None):
        for sheet in card_sheets(example(option)):
            last = sheet.blocks[-1]
            assert isinstance(last, Group), sheet.title
            assert isinstance(last.blocks[-1], Fields)
            assert len(last.blocks) > 1, "a group stays on one page"
