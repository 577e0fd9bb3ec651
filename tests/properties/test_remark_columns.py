"""A remark at a line's end stays in its column while the words before it leave room; undo gives all back."""

from __future__ import annotations

import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firmpedal.project.edit import EditError, edited
from firmpedal.project.edit_keys import with_value, without_key
from firmpedal.project.edit_lists import Item, with_items
from firmpedal.web.desk import Document
from firmpedal.web.merging import Version, hunks, merged
from texts import example

TEXT = """\
# A file of remarks
first:
  bore: 0.7                # measured
  rod: {value: 0.25, mark: about, because: "it's # 7"}   # "yes", said # both
  none:                    # not yet
  tight: 1 # one blank
  via:                     # from above
    - [1, 2, 3]            # floor
    - [4, 5, 6]            # leg
  row: [[1, 2, 3],         # floor
        [4, 5, 6]]         # leg
  last: x
"""
PLACES = ["first.bore", "first.rod.value", "first.rod.because", "first.none", "first.tight", "first.last",
          "first.via.1", "first.via.2.3", "first.row.1.2", "first.row.2"]  # fmt: skip
WORDS = st.one_of(
    st.sampled_from(["0.7", "3/4", "unknown", "[7, 8, 9]", "it's # 7", "{value: 1/8, mark: about}"]),
    st.text(alphabet="abc01 '\"#", min_size=1, max_size=40).filter(lambda words: words.strip()),
)
EDITS = st.tuples(st.sampled_from([*PLACES, "first.new", "first.rod.more"]), WORDS, st.booleans())
REMARKS = (
    "# measured",
    '# "yes", said # both',
    "# not yet",
    "# one blank",
    "# from above",
    "# floor",
    "# leg",
)
SEVERAL = settings(max_examples=60, deadline=None)  # each reads its text several times


def remark_of(line):
    """Where the line's remark begins; the text's own are known, and no value can hold them."""
    return next((line.rindex(each) for each in REMARKS if line.endswith(each)), None)


def changed(text, place, words, goes):
    try:
        return without_key(text, place) if goes else with_value(text, place, words)
    except EditError:
        return text


@SEVERAL
@given(st.sampled_from(PLACES), WORDS)
def test_a_remark_keeps_its_column_while_there_is_room_and_goes_no_further_than_it_must(place, words):
    try:
        after = edited(TEXT, place, words)
    except EditError:
        return
    old, new = TEXT.split("\n"), after.split("\n")
    assert len(old) == len(new)
    (line,) = [n for n, row in enumerate(old) if row != new[n]] or [0]
    column, now = remark_of(old[line]), remark_of(new[line])
    if column is None:
        assert now is None
        return
    ends = len(new[line][:now].rstrip(" "))
    apart = column - len(old[line][:column].rstrip(" "))
    assert now == (column if ends < column else ends + min(2, apart))
    assert new[line][now:] == old[line][column:]


@pytest.mark.parametrize("end", ["\n", "\r\n"])
@SEVERAL
@given(edits=st.lists(EDITS, max_size=6), back=st.lists(st.booleans(), max_size=6))
def test_changes_and_undo_give_the_first_bytes_back(end, edits, back):
    first = TEXT.replace("\n", end).encode()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "mine.yaml"
        path.write_bytes(first)
        document = Document(path)
        for number, (place, words, goes) in enumerate(edits):
            document.rewrite(changed(document.text, place, words, goes), f"change {number}")
            if number < len(back) and back[number]:
                document.undo()
        while document.undoes:
            document.undo()
        assert path.read_bytes() == first


@SEVERAL
@given(EDITS, EDITS)
def test_two_versions_differ_only_where_something_was_done(mine, theirs):
    one, other = changed(TEXT, *mine), changed(TEXT, *theirs)
    assert len(hunks(TEXT, one)) <= 1
    both = hunks(one, other)
    assert len(both) <= 2
    assert merged(one, other, dict.fromkeys(range(len(both)), Version.MINE)) == one
    assert merged(one, other, dict.fromkeys(range(len(both)), Version.THEIRS)) == other


@SEVERAL
@given(st.sampled_from(["first.via", "first.row"]), st.lists(WORDS, min_size=2, max_size=2))
def test_every_item_of_a_list_keeps_its_own_remark_in_its_column(place, words):
    try:
        after = with_items(TEXT, place, [Item(1, words[0]), Item(2, words[1])])
    except EditError:
        return
    rows = [line for line in after.split("\n") if line.endswith(("# floor", "# leg"))]
    assert len(rows) == 4
    for line in rows:
        column = remark_of(line)
        assert column == max(27, len(line[:column].rstrip(" ")) + (2 if column > 27 else 0))


def test_remarks_of_an_example_stay_under_each_other():
    first = after = example("oatmere")
    for key, words in (("seals when pressed", "yes"), ("feet add up", "no")):
        after = edited(after, f"components.pilot_left.{key}", words)
    pairs = zip(first.split("\n"), after.split("\n"), strict=True)
    rows = [(old, new) for old, new in pairs if old != new]
    assert len(rows) == 2
    assert {row.index("#") for pair in rows for row in pair} == {49}
