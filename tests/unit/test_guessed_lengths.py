"""A hose is not ordered by a length that nobody measured without a word of it, wherever the order is read."""

from __future__ import annotations

import csv
import io

import pytest
from evaluated import words

from firmpedal.model.part import Category
from firmpedal.model.stock import LineKind
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark
from firmpedal.report.buying import parts_sheet
from firmpedal.report.buying_data import order_csv
from firmpedal.report.cards import card_sheets
from firmpedal.report.order import order_list
from texts import example, small

GUESSED, MEASURED = "oatmere", "withyford"
FIRST, STATE = "from seat to seat before you order", "its length is not measured"


@pytest.fixture(scope="module", params=[GUESSED, MEASURED])
def evaluation(request):
    text = example(GUESSED) if request.param == GUESSED else small(MEASURED)
    return evaluate_text(text, request.param)


def hoses(evaluation):
    """The hoses of known length, by whether somebody measured all of it."""
    known = [each for each in evaluation.laid if each.kind is LineKind.HOSE and each.order_length.known]
    guessed = {each.name for each in known if each.order_length.mark in (Mark.ESTIMATE, Mark.ASSUMED)}
    measured = {each.name for each in known} - guessed
    assert guessed or measured
    return guessed, measured


def test_the_order_says_so_at_each_of_them_and_at_no_other(evaluation):
    guessed, measured = hoses(evaluation)
    rows = [row for row in order_list(evaluation) if row.item.category is Category.HOSE]
    told = {name for row in rows if FIRST in row.waits for name in row.item.where}
    assert guessed <= told
    assert not measured & told
    said = list(csv.DictReader(io.StringIO(order_csv(evaluation))))
    assert {name for row in said if FIRST in row["description"] for name in row["where"].split(", ")} == told
    assert (FIRST in words(parts_sheet(evaluation))) is bool(told)


def test_a_card_that_asks_to_measure_first_does_not_say_that_nothing_is_to_measure(evaluation):
    guessed, measured = hoses(evaluation)
    state = {sheet.title.rpartition(" ")[2]: sheet.state for sheet in card_sheets(evaluation)}
    assert all(STATE in state[name] for name in guessed)
    assert not any(STATE in state[name] for name in measured)


def test_there_is_one_of_either():
    assert hoses(evaluate_text(example(GUESSED)))[0]
    assert hoses(evaluate_text(small(MEASURED)))[1]
