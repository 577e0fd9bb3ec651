"""The practice pieces before the first tube: card, list and cutting plan say the same."""

from __future__ import annotations

import pytest
from evaluated import EXAMPLE, of_kind, words

from firmpedal.decide.tube_plan import practice_out_of, tube_plans
from firmpedal.pipeline import evaluate_text
from firmpedal.report.buying import parts_sheet
from firmpedal.report.consumables import consumables
from firmpedal.report.cutplan import cutplan_sheet
from firmpedal.report.flare_card import flare_card
from firmpedal.report.order import order_list
from firmpedal.report.sheet import Table
from firmpedal.units import from_unit, to_unit

TEXT = EXAMPLE.read_text(encoding="utf-8")
BENCH = "bench:\n  bend radius: 3/4\n"
TUBE = "tube 5052-O 1/4 x .035"


def ordering(pieces, bench=""):
    buying = "" if pieces is None else f"buying: {{practice pieces: {pieces}}}\n"
    return evaluate_text(TEXT.replace(BENCH, f"{buying}{BENCH}{bench}", 1), "brindlewick", "rigid")


def pieces_on_card(evaluation):
    table = next(each for each in of_kind(flare_card(evaluation), Table) if "piece" in each.columns)
    return [(row[1], row[2]) for row in table.rows]


@pytest.mark.parametrize(
    ("pieces", "wanted", "amount"),
    # three are wanted in any case; more where the file orders more
    [
        (None, 3, "3 pieces"),
        (3, 3, "3 pieces"),
        (6, 6, "6 pieces"),
        (2, 3, "2 pieces"),
        (1, 3, "1 piece"),
        (0, 3, "none"),
    ],
)
def test_card_list_and_plan_agree(pieces, wanted, amount):
    evaluation = ordering(pieces)
    assert pieces_on_card(evaluation) == [(TUBE, str(number)) for number in range(1, wanted + 1)]
    said = f"First make {wanted} practice pieces of each kind of tube"
    assert said in words(flare_card(evaluation))
    assert said in words(cutplan_sheet(evaluation))
    assert (TUBE, amount) in [row[:2] for row in consumables(evaluation)]


@pytest.mark.parametrize(("pieces", "ordered"), [(2, "2"), (0, "none")])
def test_fewer_than_three_are_told_everywhere(pieces, ordered):
    said = f"3 are wanted, and your file orders {ordered}"
    evaluation = ordering(pieces)
    for sheet in (flare_card(evaluation), cutplan_sheet(evaluation), parts_sheet(evaluation)):
        assert said in words(sheet)
    for enough in (ordering(3), ordering(6), ordering(None)):
        for sheet in (flare_card(enough), cutplan_sheet(enough), parts_sheet(enough)):
            assert "are wanted" not in words(sheet)


def test_a_stick_for_practice_stands_in_the_plan_as_on_the_list():
    # by hand: two tubes of 39.67 in out of a stick of 84 in leave 4.66 in, one piece of 4 in, and three are
    # wanted: one more stick of 84 in, 21 pieces of 4 in
    short = ordering(None, "  longest tube: 84\n")
    (plan,) = tube_plans(short)
    assert to_unit(plan.to_buy, "in") == pytest.approx(168)
    (table,) = of_kind(cutplan_sheet(short), Table)
    assert [row[1:] for row in table.rows][1:] == [
        ("to buy, 84.00 in", "none of the lines", "84.00 in", "21 practice pieces")
    ]
    assert table.rows[0][-1] == "1 practice piece"
    assert "Buy 168.00 in of it." in words(cutplan_sheet(short))
    (row,) = [each for each in order_list(short) if each.item.designation == TUBE]
    assert row.order * row.length.high == pytest.approx(plan.to_buy)
    assert to_unit(tube_plans(ordering(1, "  longest tube: 84\n"))[0].to_buy, "in") == pytest.approx(84)


@pytest.mark.parametrize("pieces", range(80))
def test_a_length_that_is_so_many_pieces_gives_just_so_many(pieces):
    """In floating point 44 in are a little less than eleven times 4 in, and 72 in less 68 in than 4 in."""
    assert practice_out_of(from_unit(4 * pieces, "in")) == pieces
    assert practice_out_of(from_unit(400, "in") - from_unit(400 - 4 * pieces, "in")) == pieces
    assert practice_out_of(from_unit(4 * pieces + 3.99, "in")) == pieces


def test_tube_in_hand_gives_as_many_pieces_as_go_into_it():
    """90 in less both legs leave two; 44 in, which stay whole, are eleven."""
    coil = f"  tube: {{coil: {{made of: {TUBE}, pieces: [90, 44]}}}}\n"
    (plan,) = tube_plans(ordering(None, coil))
    assert plan.coupons == 2 + 11


def test_many_pieces_do_not_fill_the_card():
    evaluation = ordering(40)
    assert len(pieces_on_card(evaluation)) == 12
    assert "From piece 13 on write on the back." in words(flare_card(evaluation))
    assert "on the back" not in words(flare_card(ordering(12)))
