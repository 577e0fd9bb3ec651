"""What is ordered: used and spares, sticks of tube, packs, the words that close the list, tools and fluid."""

from __future__ import annotations

import csv
import io
import json

import pytest
from evaluated import EXAMPLE, awkward, example, of_kind, words
from test_fit_sealed import ALUMINIUM
from test_fit_sealed import TEXT as SEALED

from commands import firmpedal, prints
from firmpedal.decide.fluid import fluid_plan
from firmpedal.decide.prices_reading import price_book
from firmpedal.decide.retrofit import retrofit
from firmpedal.decide.spares import RULES, Use, rule_of
from firmpedal.model.part import Category
from firmpedal.pipeline import evaluate_text
from firmpedal.report.buying import parts_sheet
from firmpedal.report.buying_data import COLUMNS, buying_data, order_csv
from firmpedal.report.consumables import consumables
from firmpedal.report.order import order_list, wanted_goods
from firmpedal.report.retrofit import retrofit_sheet
from firmpedal.report.sheet import Table
from firmpedal.report.tools import tools
from firmpedal.units import from_unit, to_unit

TEXT = EXAMPLE.read_text(encoding="utf-8")
BENCH = "bench:\n  bend radius: 3/4\n"
RUN = ("parts", EXAMPLE)


def row(evaluation, designation):
    (found,) = [each for each in order_list(evaluation) if each.item.designation == designation]
    return found


@pytest.mark.parametrize(
    ("use", "used", "spares"),
    # by hand from the rule's own words: one for every four, at least two; as many again; none
    [
        (Use.FLARE_SLEEVE, 1, 2),
        (Use.FLARE_SLEEVE, 8, 2),
        (Use.FLARE_SLEEVE, 9, 3),
        (Use.FLARE_NUT, 12, 3),
        (Use.FLARE_NUT, 0, 0),
        (Use.O_RING, 5, 5),
        (Use.WASHER, 1, 1),
        (Use.OTHER, 40, 0),
    ],
)
def test_spares_by_the_rule(use, used, spares):
    assert rule_of(use, example().aircraft.buying).spares(used) == spares


def test_every_use_but_tube_has_exactly_one_rule():
    ruled = [use for rule in RULES for use in rule.uses]
    assert sorted(ruled) == sorted(set(Use) - {Use.TUBE})


def test_the_example_takes_six_nuts_and_six_sleeves():
    for designation in ("AN818-4D", "AN819-4D"):
        found = row(example("rigid"), designation)
        assert (found.quantity, found.spares, found.order) == (4, 2, 6)


def buying(keys, option="rigid"):
    return evaluate_text(TEXT.replace(BENCH, f"buying: {{{keys}}}\n{BENCH}", 1), "brindlewick", option)


@pytest.mark.parametrize(
    ("keys", "designation", "order"),
    # by hand: four nuts, four sleeves, eight clamps, two nipples are used
    [
        ("spare nuts and sleeves: 3", "AN818-4D", 7),
        ("spare nuts and sleeves: 0", "AN819-4D", 4),
        ("spare nuts and sleeves: 3", "cushioned clamp 1/4 in", 9),  # our rule stays for the others
        ("spare clamps: 4", "cushioned clamp 1/4 in", 12),
        ("spare fittings: 1", "AN816-4D", 3),
        ("spare fittings: 1", "AN818-4D", 6),
        ("spare nuts and sleeves: unknown", "AN818-4D", 6),
        ("packs: {bag: {of: AN818-4D, pieces: 10}}", "AN818-4D", 10),
        ("packs: {bag: {of: MS20819-4D, pieces: 4}}", "AN819-4D", 8),  # a successor's number
        ("packs: {bag: {of: cushioned clamp, pieces: 5}}", "cushioned clamp 1/4 in", 10),
        ("spare nuts and sleeves: 0, packs: {bag: {of: AN818-4D, pieces: 4}}", "AN818-4D", 4),
    ],
)
def test_the_file_overrules_our_spares(keys, designation, order):
    assert row(buying(keys), designation).order == order


def test_no_spare_hose_comes_with_spare_fittings():
    hoses = [each for each in order_list(buying("spare fittings: 2")) if each.item.category is Category.HOSE]
    assert hoses
    assert all(each.order == each.quantity for each in hoses)


def test_the_list_says_whose_rule_it_is():
    said = words(parts_sheet(buying("spare nuts and sleeves: 3")))
    assert "Spares by your file, in place of our rule: Coupling nuts and sleeves: 3 of each." in said
    assert "our estimate. The small figures are used + spare. Clamps: one for every 8" in said
    assert "Coupling nuts and sleeves: one for every 4" not in said
    assert "by your file" not in words(parts_sheet(example("rigid")))
    assert "Coupling nuts and sleeves: none of each" in words(
        parts_sheet(buying("spare nuts and sleeves: 0"))
    )


def test_a_pack_of_something_else_is_told():
    said = words(parts_sheet(buying("packs: {bag: {of: AN818-8D, pieces: 10}}")))
    assert "Not on this list, though the file has packs of it: AN818-8D." in said


def test_the_price_book_s_pack_comes_before_the_file_s():
    evaluation = buying("packs: {bag: {of: AN818-4D, pieces: 10}}")
    for line, order in (("AN818-4D,9,USD,7,pack", 7), ("AN818-4D,1,USD,,each", 10)):
        text = f"designation,price,currency,pack,per\n{line}\n"
        priced = order_list(evaluation, price_book(text, wanted_goods(evaluation), "in"))
        (nut,) = [each for each in priced if each.item.designation == "AN818-4D"]
        assert nut.order == order


def test_more_practice_takes_more_tube():
    # by hand: two legs of 39.67 in out of two sticks of 72 in leave 2 x 32.33 in, 16 pieces of 4 in; 40 are
    # wanted, so 24 lack, and a stick of 72 in gives 18: two more
    found = row(buying("practice pieces: 40"), "tube 5052-O 1/4 x .035")
    assert (found.quantity, found.spares, found.order) == (2, 2, 4)
    assert "40 pieces" in words(parts_sheet(buying("practice pieces: 40")))


def test_inserts_are_no_sleeves_in_the_closing_words():
    said = words(parts_sheet(example()))
    assert "The list closes: 4 plastic line ends, 4 nuts, 4 sleeves, 4 inserts; every end" in said
    assert "8 sleeves" not in said
    rigid = words(parts_sheet(example("rigid")))
    assert "4 flared tube ends, 4 coupling nuts, 4 sleeves; 4 bulkhead ends, 4 jam nuts;" in rigid
    assert "left out" not in rigid


def test_a_list_that_does_not_close_says_so():
    assert "This list does not close" in words(parts_sheet(awkward()))


def test_tube_comes_in_sticks_and_holds_what_is_cut():
    found = row(example("rigid"), "tube 5052-O 1/4 x .035")
    assert (found.unit, found.quantity, found.spares, found.order) == ("stick", 2, 0, 2)
    assert to_unit(found.length.high, "ft") == pytest.approx(6)
    assert found.order * found.length.high > sum(length.high for length in found.item.lengths)


def test_a_stick_more_where_nothing_is_left_to_practise_on():
    # two tubes of 39.67 in out of one stick of 84 in leave 4.66 in: one practice piece, and three are wanted
    short = evaluate_text(TEXT.replace(BENCH, BENCH + "  longest tube: 84\n", 1), "brindlewick", "rigid")
    found = row(short, "tube 5052-O 1/4 x .035")
    assert (found.quantity, found.spares, found.order) == (1, 1, 2)
    assert "does not give 3 pieces" in words(parts_sheet(short))


def test_sticks_of_two_lengths_name_what_is_cut_from_each():
    # by hand: the right tube goes 39 in aft and comes back, near 112 in in all; with the left one of 39.67 in
    # that is too much for 144 in, so a stick of 12 ft is bought for the one and one of 6 ft for the other
    out = "[7, 9, -3.2], [9, 11.6, -5.2], [48, 11.6, -5.2]"
    back = "[48, 15, -8.2], [9, 20, -12], [5.6, 32.2, -28.6]"
    way = f"[{out}, {back}]"
    line = "      left_tail:\n        from: left_axle.lower"
    assert line in TEXT
    longer = TEXT.replace(line, f"      right_leg: {{via: {way}}}\n{line}", 1)
    evaluation = evaluate_text(longer, "brindlewick", "rigid")
    rows = [each for each in order_list(evaluation) if each.item.category == "tube"]
    assert [to_unit(each.length.high, "in") for each in rows] == pytest.approx([72, 144])
    assert [each.item.where for each in rows] == [("left_leg",), ("right_leg",)]
    assert [each.item.description.count(" in") for each in rows] == [1, 1]
    assert rows[0].item.description == "tube, to cut 39.67 in"


def test_a_stick_to_practise_on_names_no_line():
    whole = BENCH + "  tube: {coil: {made of: tube 5052-O 1/4 x .035, pieces: [84]}}\n"
    evaluation = evaluate_text(
        TEXT.replace(BENCH, f"buying: {{practice pieces: 40}}\n{whole}", 1), "brindlewick", "rigid"
    )
    found = row(evaluation, "tube 5052-O 1/4 x .035")
    assert (found.quantity, found.item.where, found.item.description) == (0, (), "tube, to practise on")


def test_tube_in_hand_is_not_bought():
    coil = BENCH + "  tube: {coil: {made of: tube 5052-O 1/4 x .035, pieces: [144]}}\n"
    found = row(evaluate_text(TEXT.replace(BENCH, coil, 1), "brindlewick", "rigid"), "tube 5052-O 1/4 x .035")
    assert (found.order, found.wait) == (0, "what you have is enough")


def test_a_length_that_nobody_knows_is_not_ordered():
    corners = "- [9.0, -11.6, -5.2]\n          - [5.6, -32.2, -28.6]"
    unknown = evaluate_text(TEXT.replace(corners, "- unknown"), "brindlewick", "rigid")
    found = row(unknown, "tube 5052-O 1/4 x .035")
    assert found.order is None
    assert "left_leg, right_leg is not known yet" in found.wait
    (table, *_) = of_kind(parts_sheet(unknown), Table)
    assert [cells[0] for cells in table.rows if cells[1] == "tube 5052-O 1/4 x .035"] == ["?"]


def at_caliper(inlet, asked="to fitting: 90 degrees"):
    outlet = second = "1/8 NPT female"
    return evaluate_text(
        SEALED.format(outlet=outlet, inlet=inlet, second=second, stock=ALUMINIUM, asked=asked), "text"
    )


def test_a_part_put_to_another_use_is_ordered_by_its_own_number():
    boss = at_caliper("-4 boss female")
    assert "AN833-4D in a boss" in {
        part.designation for joint in boss.assembly.joints for part in joint.parts
    }
    assert row(boss, "AN833-4D").item.description == "elbow, 90 degrees, bulkhead, flared tube"
    assert not [each for each in order_list(boss) if "boss" in each.item.designation]
    assert (row(boss, "MS28778-4").quantity, row(boss, "MS28778-4").order) == (1, 2)
    assert "1 O-ring seats, 1 O-rings" in words(parts_sheet(boss))


def test_a_retrofit_buys_it_under_the_same_number():
    boss = at_caliper("-4 boss female")
    before = at_caliper("1/8 NPT female")
    plan = retrofit(before, boss)
    assert "AN833-4D" in {piece.designation for piece in plan.buy}
    assert {piece.designation for piece in plan.buy} <= {each.item.designation for each in order_list(boss)}
    assert "in a boss" not in words(retrofit_sheet(before, boss))


def test_washers_are_counted_and_bought_double():
    banjo = at_caliper("M10 x 1 female")
    assert (row(banjo, "WASHER-C-M10").quantity, row(banjo, "WASHER-C-M10").order) == (2, 4)
    assert "2 washer faces, 2 sealing washers" in words(parts_sheet(banjo))


def test_clamps_for_hose_and_for_tube_are_two_rows():
    oatmere = evaluate_text((EXAMPLE.parent / "oatmere.yaml").read_text(encoding="utf-8"), "oatmere")
    clamps = [each.item.designation for each in order_list(oatmere) if each.item.category is Category.CLAMP]
    assert clamps == ["cushioned clamp 1/4 in", "cushioned clamp for hose -4 PTFE braided"]
    assert len({each.key for each in wanted_goods(oatmere) if "clamp" in each.name}) == 2


def test_bulk_hose_has_an_end_to_spare_for_each():
    # two of 7.5, two of 9.0, and four ends of 1.48 in (TM 1-1500-204-23-2, table 4-22): 38.92 in
    said = words(parts_sheet(example("rigid")))
    assert "38.92 in of it is enough for 4 hoses" in said


def test_fluid_is_twice_what_is_held_and_what_the_pads_take():
    # by hand, in cubic inches; tubes: 0.18 in bore, 39.67 in each; hoses: 3/16 in bore, 7.5 and 9 in each
    quarter_pi = 0.785398
    lines = 2 * quarter_pi * (0.18**2 * 39.67 + 0.1875**2 * (7.5 + 9.0))
    cylinders = 2 * quarter_pi * 0.625**2 * 0.80
    pads = 2 * quarter_pi * 1.50**2 * (0.10 + 0.10)  # both pads of each floating caliper
    plan = fluid_plan(example("rigid"))
    assert [to_unit(value.high, "cu in") for value in plan.held] == pytest.approx(
        [lines, cylinders], rel=2e-3
    )
    assert to_unit(plan.amount.high, "cu in") == pytest.approx(2 * (lines + cylinders) + pads, rel=2e-3)
    said = words(parts_sheet(example("rigid")))
    assert "lines 2.93 cu in, cylinders" in said
    assert "all of this twice" in said
    assert "once only pads from new to worn" in said
    assert "On top comes what stands behind" in said
    assert "the reservoir of left_cylinder and right_cylinder" in said


def test_what_the_file_does_not_give_comes_on_top_of_the_fluid():
    bare = evaluate_text(TEXT.replace("    pad wear: 0.10\n", ""), "brindlewick", "rigid")
    plan = fluid_plan(bare)
    assert plan.pads is None
    assert "the pad wear of left_caliper and right_caliper" in plan.on_top
    filled = evaluate_text(
        TEXT.replace("reservoir: built in", "reservoir: built in\n    capacity: 3"), "brindlewick", "rigid"
    )
    held = {value.label: to_unit(value.high, "cu in") for value in fluid_plan(filled).held}
    assert held["reservoirs"] == pytest.approx(6)
    assert not any("reservoir" in each for each in fluid_plan(filled).on_top)


def test_fluid_for_a_line_of_unknown_length_is_unknown():
    corners = "- [9.0, -11.6, -5.2]\n          - [5.6, -32.2, -28.6]"
    unknown = evaluate_text(TEXT.replace(corners, "- unknown"), "brindlewick", "rigid")
    assert not fluid_plan(unknown).amount.known
    assert "not known yet" in words(parts_sheet(unknown))


def test_tools_are_for_what_is_there():
    rigid, plastic = dict(tools(example("rigid"))), dict(tools(example()))
    assert rigid["bender"] == "centre line radius 0.75 in (3/4 in)"
    assert "0.453 in for -4" in rigid["step drill or hole cutter"]  # 7/16 + 1/64 in
    # flats by AN818 and AN924: 9/16 and 11/16 in
    (wrenches,) = [tool for tool in rigid if tool.startswith("open-ended wrenches")]
    assert "9/16 in" in wrenches and "11/16 in" in wrenches  # noqa: PT018
    assert rigid["torque wrench with open-ended crowfoot"].startswith("50 to 65 lbf in")
    assert "flaring tool, 37 degrees" not in plastic
    assert "bender" not in plastic


@pytest.mark.parametrize("option", [None, "rigid", "all hose"])
def test_the_table_is_read_back_as_it_was(option):
    evaluation = example(option)
    read = list(csv.DictReader(io.StringIO(order_csv(evaluation))))
    rows = order_list(evaluation)
    assert tuple(read[0]) == COLUMNS
    assert len(read) == len(rows)
    for cells, each in zip(read, rows, strict=True):
        assert (cells["designation"], int(cells["quantity"])) == (each.item.designation, each.quantity)
        assert int(cells["order"]) == each.order == each.quantity + each.spares
        assert cells["where"].split(", ") == list(each.item.where)
        if cells["length"]:
            length = from_unit(float(cells["length"]), cells["length unit"])
            assert length == pytest.approx(each.length.high, rel=1e-5)


def test_an_unknown_order_is_an_empty_cell():
    corners = "- [9.0, -11.6, -5.2]\n          - [5.6, -32.2, -28.6]"
    unknown = evaluate_text(TEXT.replace(corners, "- unknown"), "brindlewick", "rigid")
    read = {each["designation"]: each for each in csv.DictReader(io.StringIO(order_csv(unknown)))}
    assert read["tube 5052-O 1/4 x .035"]["order"] == ""
    assert read["tube 5052-O 1/4 x .035"]["length"] == ""


def test_the_data_keep_their_items_and_add_the_order():
    data = buying_data(example("rigid"))
    assert sum(item["quantity"] for item in data["items"] if item["category"] == "coupling nut") == 4
    assert sum(each["order"] for each in data["order"] if each["category"] == "coupling nut") == 6
    assert "prices" not in data
    json.dumps(data)


def test_the_command_writes_a_table(tmp_path):
    path = tmp_path / "list.csv"
    said = prints(*RUN, "--option", "rigid", "--csv", path)
    assert "list.csv" in said.replace("\n", "")
    assert path.read_text(encoding="utf-8") == order_csv(example("rigid"))
    refused = firmpedal(*RUN, "--csv", tmp_path)
    assert refused.returncode == 2
    assert "cannot be written" in " ".join(refused.stderr.split())


def test_caps_are_for_the_ends_that_there_are():
    # by hand: two plastic lines have four ends, which come out of four fittings in four 1/8 pipe ports
    amounts = {what: amount for what, amount, _ in consumables(example())}
    assert amounts["caps and plugs for open ends"] == (
        "4 for ends of 1/4 in plastic line, 4 for the fittings they came out of, or once the fitting is out "
        "for a port of 1/8 pipe thread"
    )
    # six lines with nuts at both ends, each end and what it came off of the same dash
    rigid = example("rigid")
    amounts = {what: amount for what, amount, _ in consumables(rigid)}
    assert amounts["caps and plugs for open ends"] == f"{4 * len(rigid.laid)} for -4"
