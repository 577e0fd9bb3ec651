"""Lists as people write them: separators, titles, spellings, counts; every doubt is a question."""

import pytest
from evaluated import example
from hypothesis import given
from hypothesis import strategies as st

from firmpedal.decide.goods import Kind
from firmpedal.decide.listed import understood
from firmpedal.decide.listing import ListError, Meaning, decoded, entries, rows, separator
from firmpedal.report.reconcile import needed_items

WANTED = tuple({each.goods.key: each.goods for each in needed_items(example("rigid"))}.values())


def read(text):
    return understood(entries(text), WANTED, "in")


def counts(text):
    return {row.goods.name: row.quantity for row in read(text).rows}


EXPECTED = {"AN818-4D": 4, "AN819-4D": 3}


@pytest.mark.parametrize(
    "text",
    [
        "qty,part\n4,AN818-4D\n3,AN819-4D\n",
        "Menge;Teil\n4;AN818-4D\n3;AN819-4D\n",
        "part number\tquantity\nAN818-4D\t4\nAN819-4D\t3\n",
        "designation|count\r\nAN818-4D|4\r\nAN819-4D|3\r\n",
        "4,AN818-4D\n3,AN819-4D\n",
        "AN818-4D;4\nAN819-4D;3\n",
        "\n\nKit list\n\n# by me\nQTY ,Part No.\n4,AN818-4D\n\n,\n// checked\n3,AN819-4D\n",
        "no,number,description\n4,AN818-4D,nut\n3,AN819-4D,sleeve\n",
        'qty,part\n"4","AN818-4D"\n3,"AN819-4D"',
        "item,qty,description\n1,4,AN818-4D nut\n2,3,AN819-4D sleeve\n",
        'qty,part,price\n4,AN818-4D,"1,20"\n3,AN819-4D,\n',
    ],
)  # fmt: skip
def test_however_it_is_written(text):
    assert counts(text) == EXPECTED


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_whatever_program_wrote_it(encoding):
    text = decoded("Stück;Teil\n4;AN818-4D\n3;AN819-4D\n".encode(encoding))
    assert counts(text) == EXPECTED


@pytest.mark.parametrize(
    ("written", "designation"),
    [
        ("AN818-4D", "AN818-4D"),
        ("an818-4d", "AN818-4D"),
        ("AN 818 4 D", "AN818-4D"),
        ("AN818 - 4D", "AN818-4D"),
        ("an818 -4d", "AN818-4D"),
        ("AN818\u20134D", "AN818-4D"),
        ("MS20819-4D", "AN819-4D"),
        ("AS5175-4D", "AN818-4D"),
        ("AN818-4", "AN818-4"),
        ("AN818-4D nut, tube coupling", "AN818-4D"),
        ("ms20822-4d elbow", "AN822-4D"),
    ],
)
def test_designations(written, designation):
    assert counts(f'qty,part\n1,"{written}"\n') == {designation: 1}


@pytest.mark.parametrize(
    ("written", "count"),
    [
        ("2", 2),
        ("2 ea", 2),
        ("2x", 2),
        ("2 pcs.", 2),
        ("2.0", 2),
        ('"2,0"', 2),
        ("2 EA", 2),
        ("12 off", 12),
        ("0", 0),
    ],
)
def test_quantities(written, count):
    assert counts(f"qty,part\n{written},AN818-4D\n") == {"AN818-4D": count}


@pytest.mark.parametrize("written", ["a pair", "2 doz", "-1", "2.5", "some", "4 bags"])
def test_quantity_that_is_no_count_is_a_question(written):
    found = read(f"qty,part\n4,AN819-4D\n{written},AN818-4D\n")
    assert [row.goods.name for row in found.rows] == ["AN819-4D"]
    assert (found.questions[0].line, found.questions[0].column) == (3, 1)
    assert written in found.questions[0].message


def test_part_without_quantity_is_a_question():
    found = read("qty,part\n,AN818-4D\n")
    assert (found.questions[0].line, found.questions[0].column) == (2, 2)
    assert "how many are there?" in found.questions[0].message


def test_heading_is_a_note():
    found = read("qty,part\n,Left side\n4,AN818-4D\n")
    assert found.questions == ()
    assert found.notes == ("line 2: `Left side` was taken for a heading",)


@pytest.mark.parametrize(
    ("written", "meant"), [("AN819-4E", "AN819-4D"), ("AN8I8-4D", "AN818-4D"), ("AN924-4DD", "AN924-4D")]
)
def test_unknown_designation_is_asked_with_the_nearest(written, meant):
    found = read(f"qty,part\n1,{written}\n")
    assert found.rows == ()
    assert found.questions[0].message.endswith(f"did you mean {meant}?")
    assert found.questions[0].suggestion == meant


def test_what_is_like_nothing_has_no_guess():
    assert read("qty,part\n1,left-handed widget\n").questions[0].message.endswith("what is it?")


def test_same_part_twice_is_added_up_with_a_note():
    found = read("qty,part\n2,AN819-4D\n1,AN818-4D\n2,MS20819-4D\n")
    assert found.notes == ("AN819-4D stands on lines 2 and 4: added up to 4",)


def test_another_metal_in_the_words_is_a_question():
    found = read("qty,part,material\n4,AN818-4D,steel\n")
    assert "AN818-4D is aluminium and the list says steel" in found.questions[0].message
    assert read("qty,part,material\n4,AN818-4D,aluminium\n").questions == ()


@pytest.mark.parametrize(
    ("written", "key", "inches"),
    [
        ("tube 5052-O 1/4 x .035 6 ft", "tube 5052-O", 72),
        ("tube 5052-O 1/4 x .035, 39-1/2 in", "tube 5052-O", 39.5),
        ("hose -4 PTFE braided 9.0 in", "hose -4", 9),
        ("hose -4 PTFE braided, 9 in from seat to seat", "hose -4", 9),
        ("hose -3 PTFE 230 mm", "hose -3", 230 / 25.4),
    ],
)
def test_lengths_in_the_phrase(written, key, inches):
    row = read(f'qty,part\n2,"{written}"\n').rows[0]
    assert row.goods.key.startswith(key)
    assert row.lengths == ((pytest.approx(inches * 0.0254),) * 2,) * 2


def test_length_in_a_column_or_in_the_words_beside_it():
    column = read("qty,part,length\n2,hose -4 PTFE braided,9\n").rows[0]
    words = read("qty,part,description\n2,hose -4 PTFE braided,9.00 in from seat to seat\n").rows[0]
    assert column.lengths == words.lengths == ((pytest.approx(9 * 0.0254),) * 2,) * 2


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize(
    ("written", "inches"),
    [
        ("tube 5052-O 1/4 x .035 1 m", 1 / 4),
        ("tube 5052-O 6 mm x 1 mm 1 m", 6 / 25.4),
        ("tube 5052-O 1/4 in x .035 3 ft", 1 / 4),
    ],
)
def test_fractions_are_inches_in_a_file_in_millimetres_too(written, inches, unit):
    row = understood(entries(f'qty,part\n1,"{written}"\n'), (), unit).rows[0]
    assert row.goods.size.startswith(f"{inches * 0.0254:.6f}")


def test_clamps_go_by_name_and_size():
    row = read("qty,part\n8,Cushioned clamp -4\n").rows[0]
    assert (row.goods.kind, row.quantity) == (Kind.PIECE, 8)


# The cells and their places


def test_places_of_cells():
    found = rows('a, b\n"c\nd",e\n', ",")
    assert [[(cell.text, cell.line, cell.column) for cell in row] for row in found] == [
        [("a", 1, 1), ("b", 1, 4)],
        [("c d", 2, 1), ("e", 3, 4)],
    ]


def test_quotes_inside_quotes():
    assert [cell.text for cell in rows('"1/4"" tube",x', ",")[0]] == ['1/4" tube', "x"]


plain = st.text(st.sampled_from("ab1 .-/"), min_size=1, max_size=6).map(str.strip).filter(bool)


@given(st.lists(st.lists(plain, min_size=2, max_size=5), min_size=1, max_size=6), st.sampled_from(",;\t|"))
def test_cells_come_back_as_they_were_written(table, sign):
    text = "\n".join(sign.join(row) for row in table)
    assert [[cell.text for cell in row] for row in rows(text, sign)] == [
        [" ".join(cell.split()) for cell in row] for row in table
    ]
    lines = text.split("\n")
    for row in rows(text, sign):
        for cell in row:
            assert lines[cell.line - 1][cell.column - 1] == cell.text[0]


@pytest.mark.parametrize("sign", [",", ";", "\t", "|"])
def test_separator_is_found_beside_others_in_the_text(sign):
    text = "\n".join(sign.join(row) for row in [["qty", "part"], ["4", "AN818-4D"], ["3", "sleeve AN819-4D"]])
    assert separator(text) == sign


def refusal(work, thing):
    """What is said where something cannot be read, else nothing."""
    try:
        work(thing)
    except ListError as error:
        return error.message, error.suggestion
    return ("-", "-")


@given(st.text(max_size=200))
def test_any_text_is_read_or_refused_in_words(text):
    assert all(refusal(read, text))


@given(st.binary(max_size=200))
def test_any_bytes_are_read_or_refused_in_words(data):
    assert all(refusal(decoded, data))


def test_meanings_of_titles():
    row = entries("Pos,Qty.,Part No.,Description,Material,Length\n1,4,AN818-4D,nut,alloy,9 in\n")[0]
    found = {meaning: row.cell(meaning).text for meaning in Meaning}
    assert list(found.values()) == ["4", "AN818-4D", "nut", "alloy", "9 in"]
