"""Tables as HTML: heads, names of rows, boxes, places to write in, and labels for stacked rows."""

from __future__ import annotations

from html_trees import names, of_class, tree, words

from firmpedal.report.sheet import BOX, Table

JOINTS = Table(
    ("no.", "joint", "torque", "torqued"),
    (("1", "left\nAN816-4D", "50 lbf in", BOX), ("2", "right", "", BOX)),
    right=frozenset({0}),
    title="All joints",
    large=frozenset({2}),
    pen=frozenset({2}),
)


def cells(root):
    return [list(row) for row in root.find(".//tbody")]


def test_heads_have_scope_and_the_caption_is_the_title():
    root = tree(JOINTS)
    assert words(root.find(".//caption")) == "All joints"
    heads = root.findall(".//thead/tr/*")
    assert [(head.tag, head.get("scope"), words(head)) for head in heads] == [
        ("th", "col", title) for title in JOINTS.columns
    ]


def test_each_row_is_named_by_its_name_not_by_its_figure():
    for row in cells(tree(JOINTS)):
        assert [cell.tag for cell in row] == ["td", "th", "td", "td"]
        assert row[1].get("scope") == "row"


def test_without_names_the_first_titled_column_counts():
    table = Table(("", "bend", "mark"), ((BOX, "1", "2.0 in"),))
    (row,) = cells(tree(table))
    assert [cell.tag for cell in row] == ["td", "th", "td"]
    assert row[1].get("class") == "fp-count"


def test_names_may_stand_under_no_title():
    table = Table(("", "as written"), (("verdict", "sound"), ("joints", "4")))
    root = tree(table)
    assert [row[0].tag for row in cells(root)] == ["th", "th"]
    assert root.find(".//thead/tr")[0].tag == "td"  # an empty head is no head


def test_every_cell_says_its_column_and_roles_stay_when_rows_are_stacked():
    root = tree(JOINTS)
    for row in cells(root):
        assert [cell.get("data-label") for cell in row] == list(JOINTS.columns)
        assert [cell.get("role") for cell in row] == ["cell", "rowheader", "cell", "cell"]
    assert root.find(".//table").get("role") == "table"
    assert {each.get("role") for each in root.iter("tr")} == {"row"}


def test_the_lines_under_the_first_stand_back():
    first = cells(tree(JOINTS))[0]
    assert words(first[1][0]) == "left"
    assert [words(each) for each in of_class(first[1], "fp-aside")] == ["AN816-4D"]


def test_columns_are_set_right_and_large():
    first = cells(tree(JOINTS))[0]
    assert first[0].get("class") == "fp-right"
    assert first[2].get("class") == "fp-large"


def test_a_box_says_of_what_it_is():
    boxes = tree(JOINTS).findall(".//input[@type='checkbox']")
    assert [box.get("aria-label") for box in boxes] == ["1, left, 50 lbf in: torqued", "2, right: torqued"]


def test_an_empty_cell_is_written_in_only_where_the_table_says_so():
    first, second = cells(tree(JOINTS))
    assert first[2].find("input") is None
    assert second[2].find("input").get("aria-label") == "2, right: torque"
    bare = Table(("a", "b"), (("x", ""),))
    (row,) = cells(tree(bare))
    assert row[1].find("input") is None
    assert row[1].get("class") == "fp-nothing"


def test_a_row_that_says_another_thing_gets_another_name():
    changed = Table(JOINTS.columns, (("1", "left\nAN816-4D", "65 lbf in", BOX),), pen=JOINTS.pen)
    assert names(tree(changed))[0] not in names(tree(JOINTS))


def test_designations_and_fractions_stay_whole_and_names_may_break():
    root = tree(Table(("a",), (("AN818-4D 3/16 left_caliper.inlet",),)))
    cell = cells(root)[0][0]
    assert words(cell) == "AN818-4D 3/16 left_caliper.inlet"
    assert [words(each) for each in of_class(cell, "fp-whole")] == ["AN818-4D"]
    assert len(cell.findall(".//wbr")) == 2
