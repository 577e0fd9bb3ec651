"""A list of parts against the design: every kind of fault planted alone, then several together."""

import json
from collections import Counter

import pytest
from evaluated import EXAMPLE, awkward, example
from hypothesis import given, settings
from hypothesis import strategies as st
from typer.testing import CliRunner

from firmpedal.cli.main import app
from firmpedal.decide.fault import Fault
from firmpedal.decide.goods import Kind
from firmpedal.decide.listed import understood
from firmpedal.decide.listing import entries
from firmpedal.decide.reconcile import Needed, reconcile
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Mark, exactly, unknown
from firmpedal.report.parts import parts_list
from firmpedal.report.reconcile import headline, needed_items, reconcile_sheet, reconciled
from firmpedal.units import Dimension, from_unit, to_unit
from texts import edited
from texts import example as text_of

OPTION = "rigid"
TUBE, HOSE = "tube 5052-O 1/4 x .035", "hose -4 PTFE braided"
FAULTS = {
    "short": ("AN822-4D", 1, {(Fault.SHORT, 1, "AN822-4D")}),
    "gone": ("AN832-4D", 0, {(Fault.SHORT, 2, "AN832-4D"), (Fault.ODD, 2, "")}),
    "left over": ("AN816-4D", 5, {(Fault.LEFT_OVER, 3, "AN816-4D")}),
    "odd": ("AN819-4D", 3, {(Fault.SHORT, 1, "AN819-4D"), (Fault.ODD, 1, "")}),
}


def right():
    """A list that agrees, written from what the design needs: rows of quantity and text."""
    rows = []
    for each in needed_items(example(OPTION)):
        if each.goods.kind is Kind.PIECE:
            rows.append([each.quantity, each.goods.name])
        elif each.goods.kind is Kind.TUBE:
            rows.append([1, f"{each.goods.name} 12 ft"])
        else:
            rows += [
                [1, f"{each.goods.name} {to_unit(length.middle, 'in'):.2f} in"] for length in each.lengths
            ]
    return rows


def with_quantity(rows, name, quantity):
    assert any(text == name for _, text in rows)
    return [[quantity if text == name else count, text] for count, text in rows]


def renamed(rows, name, other):
    assert any(text == name for _, text in rows)
    return [[count, other if text == name else text] for count, text in rows]


def held(rows):
    text = "qty,part\n" + "".join(f'{count},"{words}"\n' for count, words in rows)
    return reconciled(example(OPTION), entries(text))


def faults(found):
    return {
        (each.fault, each.quantity, each.name if each.fault is not Fault.ODD else "") for each in found.faults
    }


def test_what_is_needed_is_the_parts_list():
    counted = Counter({item.designation: 0 for item in parts_list(example(OPTION))})
    for item in parts_list(example(OPTION)):
        counted[item.designation] += item.quantity
    needed = Counter()
    for each in needed_items(example(OPTION)):
        needed[each.goods.name] += each.quantity
    assert needed == counted


def test_a_right_list_agrees():
    found = held(right())
    assert found.agrees
    assert headline(found) == "Your list agrees with the design."
    assert all(row.agrees for row in found.rows)


@pytest.mark.parametrize("kind", FAULTS)
def test_one_wrong_count(kind):
    name, quantity, expected = FAULTS[kind]
    found = faults(held(with_quantity(right(), name, quantity)))
    if kind == "gone":  # two bulkhead fittings less than their nuts: two are left
        expected = {(Fault.SHORT, 2, "AN832-4D"), (Fault.ODD, 2, "")}
    assert found == expected


@pytest.mark.parametrize(("listed", "over"), [(4, 0), (6, 0), (7, 1)])
def test_spares_are_not_needed_and_not_left_over(listed, over):
    goods = next(each.goods for each in needed_items(example(OPTION)) if each.goods.name == "AN818-4D")
    listing = understood(entries(f"qty,part\n{listed},AN818-4D\n"), (goods,), "in")
    found = reconcile([Needed(goods, 4), Needed(goods, 2, spare=True)], listing)
    assert found.count(Fault.LEFT_OVER) == over
    assert found.count(Fault.SHORT) == 0


def test_clamps_of_two_sizes_are_two_things():
    # the file has ten clamps round tube of 1/4 in and ten round hose, which is thicker
    design = evaluate_text(text_of("oatmere"), "oatmere")
    found = reconciled(design, entries("qty,part\n20,cushioned clamp 1/4 in\n"))
    assert (Fault.WRONG_SIZE, 10, "cushioned clamp 1/4 in") in faults(found)
    by_dash = reconciled(design, entries("qty,part\n10,cushioned clamp -4\n"))
    assert not any("1/4 in" in name for _, _, name in faults(by_dash))
    (question,) = reconciled(design, entries("qty,part\n20,cushioned clamp\n")).listing.questions
    assert "can be cushioned clamp 1/4 in or cushioned clamp for hose -4 PTFE braided" in question.message


def test_wrong_dash():
    found = held(renamed(right(), "AN819-4D", "AN819-3D"))
    assert faults(found) == {(Fault.WRONG_SIZE, 4, "AN819-3D")}
    assert found.faults[0].needed == "AN819-4D"
    assert found.faults[0].where


def test_steel_for_aluminium():
    found = held(renamed(right(), "AN818-4D", "AN818-4"))
    assert faults(found) == {(Fault.WRONG_MATERIAL, 4, "AN818-4")}
    assert found.faults[0].detail == "steel for aluminium"


def test_wrong_size_and_material():
    found = held(renamed(right(), "AN822-4D", "AN822-3"))
    assert faults(found) == {(Fault.WRONG_BOTH, 2, "AN822-3")}


def test_part_of_another_family_replaces_nothing():
    found = held(renamed(right(), "AN822-4D", "AN823-4D"))
    assert faults(found) == {(Fault.SHORT, 2, "AN822-4D"), (Fault.LEFT_OVER, 2, "AN823-4D")}


def test_three_sleeves_for_four_nuts():
    found = held(with_quantity(right(), "AN819-4D", 3))
    odd = next(each for each in found.faults if each.fault is Fault.ODD)
    assert odd.name == "3 sleeves for 4 coupling nuts of size -4"


def test_bulkhead_nuts_fewer_than_bulkhead_fittings():
    found = held(with_quantity(right(), "AN924-4D", 3))
    odd = next(each for each in found.faults if each.fault is Fault.ODD)
    assert odd.name == "4 bulkhead fittings for 3 bulkhead nuts of size -4"


def test_inserts_and_compression_sleeves():
    """The nylon lines of the file as written: four fittings, each with nut, sleeve and insert."""
    needed = needed_items(example())
    rows = [
        [each.quantity, f"{each.goods.name} 60 in"] if each.lengths else [each.quantity, each.goods.name]
        for each in needed
    ]
    text = "".join(f'{count},"{words}"\n' for count, words in with_quantity(rows, "COMP-INSERT-1/4", 3))
    found = reconciled(example(), entries("qty,part\n" + text))
    assert faults(found) == {(Fault.SHORT, 1, "COMP-INSERT-1/4"), (Fault.ODD, 1, "")}
    assert found.faults[-1].name == "3 inserts for 4 compression sleeves of size 1/4 in"


def test_design_that_does_not_close_is_said(tmp_path):
    file = tmp_path / "open.yaml"
    file.write_text(awkward().reading.text)
    kit = tmp_path / "kit.csv"
    kit.write_text("qty,part\n1,AN818-4D\n")
    words = ["reconcile", str(file), "--list", str(kit)]
    assert "The design itself does not close" in CliRunner(env={"COLUMNS": "200"}).invoke(app, words).output
    assert json.loads(CliRunner().invoke(app, [*words, "--json"]).output)["open_ends"] > 0


# Tube and hose


def tube_of(words):
    return [[count, f"{TUBE} {words}" if text.startswith(TUBE) else text] for count, text in right()]


def test_tube_too_short_in_all():
    found = held(tube_of("6 ft"))  # two of 39.67 in are needed, one goes into 72 in
    assert faults(found) == {(Fault.SHORT, 1, TUBE)}


def test_two_short_sticks_do_not_make_a_long_one():
    rows = [row for row in right() if not row[1].startswith(TUBE)] + [[4, f"{TUBE} 36 in"]]
    found = held(rows)  # 144 in altogether, and no stick holds 39.67 in
    assert faults(found) == {(Fault.SHORT, 2, TUBE)}
    assert found.faults[0].detail == "no listed length holds it"


def test_more_tube_than_needed_is_practice_stock():
    assert held(tube_of("20 ft")).agrees


def test_tube_in_feet_in_the_quantity_column():
    rows = [row for row in right() if not row[1].startswith(TUBE)] + [["12 ft", TUBE]]
    assert held(rows).agrees


def test_tube_of_another_alloy_or_size():
    other = [
        [count, text.replace("5052-O", "3003-O") if text.startswith(TUBE) else text]
        for count, text in right()
    ]
    thin = [
        [count, text.replace("1/4 x", "3/16 x") if text.startswith(TUBE) else text] for count, text in right()
    ]
    assert {fault for fault, *_ in faults(held(other))} == {Fault.WRONG_MATERIAL}
    assert {fault for fault, *_ in faults(held(thin))} == {Fault.WRONG_SIZE}


def hose_instead(old, new):
    rows, done = [], False
    for count, text in right():
        swap = text == f"{HOSE} {old}" and not done
        rows.append([count, f"{HOSE} {new}" if swap else text])
        done = done or swap
    assert done
    return rows


@pytest.mark.parametrize(("new", "way"), [("8.25 in", "too short"), ("10 in", "too long")])
def test_hose_of_the_wrong_length(new, way):
    found = held(hose_instead("9.00 in", new))
    assert faults(found) == {(Fault.WRONG_LENGTH, 1, HOSE)}
    assert found.faults[0].detail == way


def test_hose_within_a_tapes_reading_is_right():
    assert held(hose_instead("9.00 in", "9-1/16 in")).agrees


def test_hose_of_the_wrong_dash():
    rows = [[count, text.replace("hose -4", "hose -3")] for count, text in right()]
    assert {(fault, name) for fault, _, name in faults(held(rows))} == {
        (Fault.WRONG_SIZE, "hose -3 PTFE braided")
    }


def test_hose_without_a_length_is_asked_for():
    found = held([*right(), [2, HOSE]])
    assert not found.agrees
    assert "how long is each?" in found.listing.questions[0].message


def test_missing_and_extra_hose():
    less = [row for row in right() if row[1] != f"{HOSE} 7.50 in"]
    assert faults(held(less)) == {(Fault.SHORT, 2, HOSE)}
    assert faults(held([*right(), [1, f"{HOSE} 30 in"]])) == {(Fault.LEFT_OVER, 1, HOSE)}


def tubes_from(lengths, listed, loss=0.0):
    """Hold tubes of these lengths in inches against a list of one kind of tube."""
    goods = next(each.goods for each in needed_items(example(OPTION)) if each.goods.name == TUBE)
    needed = [
        exactly("length", Dimension.LENGTH, from_unit(length, "in"), Mark.MEASURED) for length in lengths
    ]
    rows = "".join(f'1,"{TUBE} {length} in"\n' for length in listed)
    listing = understood(entries(f"qty,part\n{rows}"), (goods,), "in")
    return reconcile([Needed(goods, len(needed), ("keel",), tuple(needed))], listing, from_unit(loss, "in"))


def test_tube_that_longest_first_would_leave_short_is_enough():
    # longest first: 44 + 24, 24 + 24 + 22, and 6 finds no place; but 44 + 22 + 6 and 3 x 24 are 72 each
    assert tubes_from([44, 24, 24, 24, 22, 6], [72, 72]).agrees


def test_the_cutter_takes_its_share_of_the_listed_tube():
    assert tubes_from([36, 36], [72]).agrees
    found = tubes_from([36, 36], [72], loss=0.1)
    assert faults(found) == {(Fault.SHORT, 1, TUBE)}
    assert tubes_from([36, 35.9], [72], loss=0.1).agrees


def test_what_is_short_is_as_little_as_can_be():
    found = tubes_from([40, 20, 20, 10], [60, 20])
    (short,) = found.faults
    assert (short.fault, short.quantity) == (Fault.SHORT, 1)
    assert to_unit(short.asked.middle, "in") == pytest.approx(10)


@pytest.mark.parametrize(("loss", "short"), [("0", False), ("0.02", True)])
def test_the_file_says_what_the_cutter_takes(loss, short):
    """One length that holds all tubes to the hair, and a cutter that takes nothing or something."""
    text = edited(text_of("brindlewick"), ("bench:\n", f"bench:\n  cutter loss: {loss}\n"))
    evaluation = evaluate_text(text, "text", OPTION)
    needed = next(each for each in needed_items(evaluation) if each.goods.name == TUBE)
    whole = sum(to_unit(length.high, "in") for length in needed.lengths)
    listed = f'qty,part\n1,"{TUBE} {whole + 0.01:.3f} in"\n'
    found = reconciled(evaluation, entries(listed))
    assert ((Fault.SHORT, 1, TUBE) in faults(found)) == short


@pytest.mark.parametrize(("name", "kind"), [(f"{HOSE} 9 in", "hose"), (f"{TUBE} 60 in", "tube")])
def test_unknown_length_is_never_taken_for_covered(name, kind):
    words = HOSE if kind == "hose" else TUBE
    goods = next(each.goods for each in needed_items(example(OPTION)) if each.goods.name == words)
    nobody_knows = unknown("length", Dimension.LENGTH, "lines.left_leg")
    listing = understood(entries(f'qty,part\n1,"{name}"\n'), (goods,), "in")
    found = reconcile([Needed(goods, 1, ("left_leg",), (nobody_knows,))], listing)
    assert [(each.fault, each.quantity) for each in found.faults] == [(Fault.NOT_SHOWN, 1)]
    assert not found.agrees
    assert headline(found) == "Your list cannot be judged yet: 1 not shown."


# Several together

PIECES = sorted({text for _, text in right() if text.startswith("AN")})


@settings(max_examples=60)
@given(st.dictionaries(st.sampled_from(PIECES), st.integers(0, 9), max_size=4), st.randoms())
def test_wrong_counts_are_found_exactly(changes, shuffled):
    """Short by what was taken away, left over by what was added, in whatever order the rows stand."""
    rows, needed = right(), {text: count for count, text in right()}
    for name, count in changes.items():
        rows = with_quantity(rows, name, count)
    shuffled.shuffle(rows)
    found = {each for each in faults(held(rows)) if each[0] is not Fault.ODD}
    short = {(Fault.SHORT, needed[name] - n, name) for name, n in changes.items() if n < needed[name]}
    over = {(Fault.LEFT_OVER, n - needed[name], name) for name, n in changes.items() if n > needed[name]}
    assert found == short | over


@settings(max_examples=60)
@given(st.sets(st.sampled_from(["AN816-4D", "AN822-4D", "AN832-4D", "AN818-4D", "AN819-4D"])), st.booleans())
def test_wrong_dashes_are_found_exactly(names, doubled):
    """Every exchanged part is one wrong size, and listed twice over the second half is left over."""
    rows = right()
    for name in names:
        rows = renamed(rows, name, name.replace("-4", "-3"))
    if doubled:
        rows += [row for row in rows if row[1].endswith("-3D")]
    needed = {text: count for count, text in right()}
    wrong = {(Fault.WRONG_SIZE, needed[name], name.replace("-4", "-3")) for name in names}
    over = {(Fault.LEFT_OVER, needed[name], name.replace("-4", "-3")) for name in names if doubled}
    assert {each for each in faults(held(rows)) if each[0] is not Fault.ODD} == wrong | over


@settings(max_examples=40)
@given(st.randoms(), st.lists(st.sampled_from(PIECES), max_size=4))
def test_splitting_rows_changes_nothing_but_the_notes(shuffled, split):
    rows = right()
    for name in split:
        n, (count, _) = next((n, row) for n, row in enumerate(rows) if row[1] == name)
        if count > 1:
            rows[n : n + 1] = [[1, name], [count - 1, name]]
    shuffled.shuffle(rows)
    assert held(rows).agrees


# On the command line


def said(tmp_path, text, *words):
    path = tmp_path / "kit.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    result = CliRunner(env={"COLUMNS": "200"}).invoke(
        app, ["reconcile", str(EXAMPLE), "--option", OPTION, "--list", str(path), *words]
    )
    return result.exit_code, result.output


def as_csv(rows):
    return "qty,part\n" + "".join(f'{count},"{words}"\n' for count, words in rows)


def test_agreement_ends_with_nought(tmp_path):
    code, text = said(tmp_path, as_csv(right()))
    assert (code, text.splitlines()[0]) == (0, "Your list agrees with the design.")


def test_disagreement_is_said_first(tmp_path):
    rows = with_quantity(renamed(right(), "AN819-4D", "AN819-3D"), "AN816-4D", 4)
    code, text = said(tmp_path, as_csv(rows))
    assert code == 1
    assert text.startswith("Your list does not cover the design: 4 wrong size, 2 left over.")
    assert "AN819-3D" in text


def test_left_over_only_covers_the_design(tmp_path):
    code, text = said(tmp_path, as_csv(with_quantity(right(), "AN816-4D", 4)))
    assert code == 1
    assert text.startswith("Your list covers the design, but does not agree with it: 2 left over.")


def test_json(tmp_path):
    code, text = said(tmp_path, as_csv(with_quantity(right(), "AN816-4D", 1)), "--json")
    data = json.loads(text)
    assert code == 1
    assert not data["agrees"]
    assert [(each["fault"], each["quantity"], each["designation"]) for each in data["faults"]] == [
        ("short", 1, "AN816-4D")
    ]
    assert {each["designation"]: each["listed"] for each in data["items"]}["AN816-4D"] == 1


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "there are no rows"),
        ("part,name\nAN816-4D,x\n", ":1:1: no column says how many"),
        ("qty,price\n2,3\n", ":1:1: no column says which part"),
        (b"PK\0\1", "this is not a text"),
    ],
)
def test_list_that_cannot_be_used(tmp_path, text, message):
    code, output = said(tmp_path, text)
    assert code == 2
    assert message in output
    assert "try: " in output


def test_list_that_is_not_there(tmp_path):
    result = CliRunner().invoke(app, ["reconcile", str(EXAMPLE), "--list", str(tmp_path / "none.csv")])
    assert result.exit_code == 2
    assert "cannot be read" in result.output


def test_questions_stand_with_their_place():
    found = held([*right(), [1, "AN819-4E"]])
    sheet = reconcile_sheet(found, example(OPTION).display, "kit.csv")
    bullets = [item for block in sheet.blocks for item in getattr(block, "items", ())]
    line = len(right()) + 2
    assert (
        f"kit.csv:{line}:3: `AN819-4E` is not known here and was not counted: did you mean AN819-4D?"
        in bullets
    )
