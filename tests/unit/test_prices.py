"""A price book of one's own: figures as people write them, packs, lengths, currencies, what is missing."""

from __future__ import annotations

import csv
import io
import json
from decimal import Decimal

import pytest
from evaluated import EXAMPLE, example, words
from hypothesis import given
from hypothesis import strategies as st

from commands import firmpedal
from firmpedal.decide.listing import ListError
from firmpedal.decide.prices import Per, Price, bill
from firmpedal.decide.prices_reading import price_book
from firmpedal.pipeline import evaluate_text
from firmpedal.report.buying import parts_sheet
from firmpedal.report.buying_data import buying_data, order_csv
from firmpedal.report.order import bill_of, order_list, wanted_goods

NUT = next(each for each in wanted_goods(example("rigid")) if each.key == "AN818-4D")
TITLES = "designation,price,currency,pack,per,length\n"


def book(*lines, titles=TITLES):
    return price_book(titles + "\n".join(lines), wanted_goods(example("rigid")), "in")


def priced(*lines):
    return {
        (row.item.designation, row.length and row.length.known and round(row.length.high, 4)): row
        for row in order_list(example("rigid"), book(*lines))
    }


def nuts(*lines):
    return next(row for (name, _), row in priced(*lines).items() if name == "AN818-4D")


def refused(*lines, titles=TITLES):
    with pytest.raises(ListError) as caught:
        book(*lines, titles=titles)
    return caught.value


@pytest.mark.parametrize(
    ("written", "amount", "currency"),
    [
        ("1.95", "1.95", "USD"),
        ("1.234,50", "1234.50", "USD"),
        ('"1,234.50"', "1234.50", "USD"),
        ("1'234.50", "1234.50", "USD"),
        ("0.125", "0.125", "USD"),
        ("12", "12", "USD"),
    ],
)
def test_a_price_as_people_write_it(written, amount, currency):
    text = f"AN818-4D\t{written}\t{currency}".replace('"', "")
    (price,) = price_book(f"part\tprice\tcurrency\n{text}", [NUT], "in").prices
    assert (price.amount, price.currency) == (Decimal(amount), currency)


def test_semicolons_and_decimal_commas_of_a_spreadsheet():
    text = "Bezeichnung;Preis;Währung;Packung;je\nAN818-4D;1,95;EUR;10;Stück\nAN819-4D;0,8;EUR;;\n"
    prices = price_book(text, wanted_goods(example("rigid")), "in").prices
    assert [price.amount for price in prices] == [Decimal("1.95"), Decimal("0.8")]
    assert (prices[0].pack, prices[0].per) == (10, Per.EACH)


@pytest.mark.parametrize(
    ("cell", "currency"), [("$1.95", "$"), ("1.95 €", "€"), ("eur 1.95", "EUR"), ("1.95", "no currency said")]
)
def test_a_currency_may_stand_with_the_price(cell, currency):
    assert nuts(f"AN818-4D,{cell}").price.currency == currency


def test_the_name_on_the_bag_is_as_good():
    assert next(iter(book("MS20819-4D,0.85,USD").prices)).goods.key == "AN819-4D"


# six are wanted, four used and two spare
@pytest.mark.parametrize(
    ("line", "order", "cost"),
    [
        ("AN818-4D,1.50,USD", 6, "9.00"),
        ("AN818-4D,1.50,USD,1,each", 6, "9.00"),
        ("AN818-4D,1.50,USD,4,each", 8, "12.00"),  # sold by fours at 1.50 each
        ("AN818-4D,12.50,USD,10,pack", 10, "12.50"),
        ("AN818-4D,12.50,USD,5,pack", 10, "25.00"),
        ("AN818-4D,12.50,USD,6,pack", 6, "12.50"),
    ],
)
def test_packs_are_whole(line, order, cost):
    assert (nuts(line).order, nuts(line).cost) == (order, Decimal(cost))


def test_tube_by_the_foot_the_metre_and_the_stick():
    # two sticks of 72 in are 12 ft or 3.6576 m
    for line, cost in (
        ("tube 5052-O 1/4 x .035,2.00,USD,,ft", "24.00"),
        ("tube 5052-O 1/4 x .035,2.00,USD,5,ft", "30.00"),  # three times 5 ft
        ("tube 5052-O 1/4 x .035,2.00,USD,6,ft", "24.00"),
        ("tube 5052-O 1/4 x .035,10.00,USD,,m", "36.58"),
        ("tube 5052-O 1/4 x .035,14.00,USD,,each", "28.00"),
    ):
        (row,) = [row for (name, _), row in priced(line).items() if name.startswith("tube")]
        assert (row.order, row.cost) == (2, Decimal(cost)), line


def test_a_hose_of_its_own_length_has_its_own_price():
    found = priced("hose -4 PTFE braided,48.00,USD", "hose -4 PTFE braided,52.50,USD,,,9 in")
    assert found["hose -4 PTFE braided", 0.1905].cost == Decimal("96.00")
    assert found["hose -4 PTFE braided", 0.2286].cost == Decimal("105.00")


def test_currencies_are_never_mixed_and_missing_prices_are_named():
    found = bill_of(
        order_list(example("rigid"), book("AN818-4D,1.50,USD", "AN819-4D,1.00,EUR", "AN816-4D,4,eur"))
    )
    # by hand: 6 x 1.50 USD; 6 x 1.00 + 2 x 4.00 EUR
    assert found.totals == (("EUR", Decimal("14.00")), ("USD", Decimal("9.00")))
    assert (len(found.missing), found.rows) == (8, 11)
    assert "AN822-4D" in found.missing
    said = words(parts_sheet(example("rigid"), book("AN818-4D,1.50,USD")))
    assert "Together 9.00 USD; 10 of 11 prices are missing." in said
    assert "Missing: AN816-4D, AN822-4D" in said


def test_an_empty_price_is_a_missing_one_and_zero_is_a_price():
    assert nuts("AN818-4D,,USD").cost is None
    assert nuts("AN818-4D,0,USD").cost == 0


def test_rows_for_other_things_are_counted_and_never_judged():
    found = book("AN818-4D,1.50,USD", "AN999-9,a lot,USD", "paint,1,EUR,many,bucket")
    assert (len(found.prices), found.others) == (1, 2)


@pytest.mark.parametrize(
    ("line", "message", "column"),
    [
        ("AN818-4D,soon,USD", "`soon` is no price", 10),
        ('AN818-4D,"1,234",USD', "`1,234` can be read in two ways", 10),
        ("AN818-4D,1.234,EUR", "`1.234` can be read in two ways", 10),
        ("AN818-4D,3,10,,", "`10` is no currency", 12),
        ("AN818-4D,3,10,USD,pack", "`10` is no currency", 12),
        ("AN818-4D,1.50,USD,10", "for one piece or for the pack", 10),
        ("AN818-4D,1.50,USD,few,pack", "`few` is no number of pieces", 19),
        ("AN818-4D,1.50,USD,0,pack", "`0` is no number of pieces", 19),
        ("AN818-4D,1.50,USD,,furlong", "`furlong` is no measure", 20),
        ("AN818-4D,1.50,USD,,ft", "is not sold by length", 20),
        ("AN818-4D,1.50 EUR,USD", "the price says EUR, its currency USD", 10),
        ("AN818-4D,-1,USD", "`-1` is no price", 10),
    ],
)
def test_a_mistake_has_its_place(line, message, column):
    problem = refused(line)
    assert message in problem.message
    assert (problem.line, problem.column) == (2, column)
    assert problem.suggestion


def test_a_thing_priced_twice_is_asked_about():
    problem = refused("AN819-4D,1,USD", "MS20819-4D,2,USD")
    assert "has a price in line 2 already" in problem.message
    assert problem.line == 3


@pytest.mark.parametrize("text", ["", "AN818-4D,1.50\n", "quantity,designation\n4,AN818-4D\n"])
def test_a_book_without_titles_is_refused(text):
    assert "which column is the part" in refused(titles=text).message


@given(st.integers(1, 500), st.integers(1, 60), st.decimals("0", "99.99", places=2))
def test_whole_packs_hold_what_is_wanted_and_no_pack_is_too_many(wanted, pack, amount):
    price = Price(NUT, amount, "USD", pack, Per.PACK, 1)
    packs = price.packs(wanted)
    assert packs * pack >= wanted > (packs - 1) * pack
    assert price.cost(wanted) == amount * packs


@given(
    st.lists(st.tuples(st.sampled_from(["USD", "EUR"]), st.decimals("0", "999.99", places=2)), max_size=20)
)
def test_a_total_is_the_sum_of_its_own_currency(rows):
    found = bill((str(n), currency, cost) for n, (currency, cost) in enumerate(rows))
    for currency, amount in found.totals:
        assert amount == sum(cost for own, cost in rows if own == currency)
    assert {currency for currency, _ in found.totals} == {currency for currency, _ in rows}


@pytest.mark.parametrize("option", [None, "rigid", "all hose"])
@pytest.mark.parametrize("pack", [1, 4, 7])
def test_the_order_is_never_less_than_what_is_used(option, pack):
    evaluation = example(option)
    lines = [f'"{goods.name}",1.00,USD,{pack},pack' for goods in wanted_goods(evaluation)]
    for row in order_list(evaluation, price_book(TITLES + "\n".join(lines), wanted_goods(evaluation), "in")):
        assert row.price is not None, row.item.designation
        assert row.order >= row.quantity + row.spares
        assert row.order % pack == 0


def filled_in(table, separator=",", **cells):
    """A table as a spreadsheet gives it back, with these cells written into every row."""
    text = io.StringIO()
    read = csv.DictReader(io.StringIO(table))
    out = csv.DictWriter(text, read.fieldnames, delimiter=separator)
    out.writeheader()
    out.writerows([row | cells for row in read])
    return text.getvalue()


def read_file(name):
    return evaluate_text((EXAMPLE.parent / f"{name}.yaml").read_text(encoding="utf-8"), name)


@pytest.mark.parametrize("separator", [",", ";"])
@pytest.mark.parametrize("name", ["brindlewick", "oatmere", "fennimoss"])
def test_the_list_that_is_written_is_filled_in_and_read_back(name, separator):
    evaluation = read_file(name)
    wanted, rows = wanted_goods(evaluation), order_list(evaluation)
    table = order_csv(evaluation)
    assert not price_book(table, wanted, "in").prices  # nothing filled in is no price, and no mistake
    text = filled_in(table, separator, price="2.00", currency="USD")
    found = price_book(text, wanted, "in")
    priced = order_list(evaluation, found)
    assert not bill_of(priced).missing
    assert found.others == 0
    # two a piece, by hand: whatever is ordered costs twice its count
    assert bill_of(priced).totals == (("USD", Decimal(2 * sum(row.order for row in rows))),)
    again = price_book(order_csv(evaluation, found), wanted, "in")  # written with its prices, read once more
    assert order_list(evaluation, again) == priced


def test_a_table_in_other_units_keeps_its_lengths():
    table = filled_in(order_csv(example("rigid")), price="2.00", currency="USD")
    wanted = wanted_goods(example("rigid"))
    assert price_book(table, wanted, "mm") == price_book(table, wanted, "in")


def test_sticks_of_two_lengths_have_two_prices_and_one_price_by_the_foot():
    lines = ["tube 5052-O 1/4 x .035,14.00,USD,,each,6 ft", "tube 5052-O 1/4 x .035,30.00,USD,,each,12 ft"]
    (row,) = [row for (name, _), row in priced(*lines).items() if name.startswith("tube")]
    assert row.cost == Decimal("28.00")  # two sticks of 6 ft
    twice = ["tube 5052-O 1/4 x .035,2.00,USD,,ft,6 ft", "tube 5052-O 1/4 x .035,2.00,USD,,ft,12 ft"]
    (row,) = [row for (name, _), row in priced(*twice).items() if name.startswith("tube")]
    assert row.cost == Decimal("24.00")
    assert "has a price in line 2" in refused(twice[0], twice[1].replace("2.00", "3.00")).message


def test_a_name_that_two_clamps_go_by_is_asked_about():
    wanted = wanted_goods(read_file("oatmere"))
    with pytest.raises(ListError, match="cushioned clamp 1/4 in or cushioned clamp for hose") as caught:
        price_book("designation,price\ncushioned clamp,1.20\n", wanted, "in")
    assert (caught.value.line, caught.value.column) == (2, 1)
    (price,) = price_book("designation,price\ncushioned clamp 1/4 in,1.20\n", wanted, "in").prices
    assert price.goods.size == "4"


def test_the_data_of_prices():
    data = buying_data(example("rigid"), book("AN818-4D,12.50,USD,10,pack"))
    assert data["prices"]["totals"] == [{"currency": "USD", "total": "12.50"}]
    (nut,) = [each for each in data["order"] if each["designation"] == "AN818-4D"]
    assert (nut["order"], nut["pack"], nut["per"], nut["cost"]) == (10, 10, "pack", "12.50")


def test_the_command_says_where_a_mistake_stands(tmp_path):
    path = tmp_path / "prices.csv"
    path.write_text("designation,price\nAN818-4D,soon\n", encoding="utf-8")
    run = ("parts", EXAMPLE, "--option", "rigid", "--prices")
    wrong = firmpedal(*run, path)
    assert wrong.returncode == 2
    assert "prices.csv:2:10: `soon` is no price" in wrong.stderr
    missing = firmpedal(*run, tmp_path / "none.csv", "--json")
    assert missing.returncode == 2
    assert "cannot be read" in json.loads(missing.stdout)["errors"][0]["message"]


@pytest.mark.parametrize("titles", ["designation,price\n", "designation,currency,price\n"])
def test_a_price_cut_in_two_at_its_comma_is_no_price(titles):
    row = "AN818-4D,3,10" if titles.count(",") == 1 else "AN818-4D,EUR,3,10"
    with pytest.raises(ListError, match="`10` stands in no column") as caught:
        book(row, titles=titles)
    assert "in quotes" in caught.value.suggestion
    assert caught.value.column == row.index("10") + 1


def test_words_behind_the_last_column_and_small_prices_do_no_harm():
    assert book("AN818-4D,0.612,for later", titles="designation,price\n").prices[0].amount == Decimal("0.612")
