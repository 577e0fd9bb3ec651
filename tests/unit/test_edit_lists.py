"""Lists and keys of a builder's text change, and what stands around them stays as it is."""

from __future__ import annotations

import pytest

from firmpedal.project.edit import EditError
from firmpedal.project.edit_lists import Item, with_items, with_key

DASHED = """\
lines:
  one:                       # the first
    from: a.b
    via:   # seen from above
      # below the floor
      - [1, 2, 3]   # measured twice
      # at the leg
      - {value: [4, 5, 6], mark: assumed}
      - value: [7, 8, 9]
        mark: assumed   # by eye

    clamps: none   # yet
  two: {from: a.b, to: c.d}
"""
FLOW = """\
lines:
  one: {from: a.b, via: [[1, 2, 3],   # measured twice
                         [4, 5, 6], [7, 8, 9]], clamps: none}   # yet
"""
KEEP_ALL = (Item(1), Item(2), Item(3))


def test_keeping_everything_changes_nothing():
    assert with_items(DASHED, "lines.one.via", KEEP_ALL) == DASHED
    assert with_items(FLOW, "lines.one.via", KEEP_ALL) == FLOW


def test_one_item_is_replaced_and_its_remark_stays():
    after = with_items(DASHED, "lines.one.via", (Item(1, "[1, 2, 3.5]"), Item(2), Item(3)))
    assert after == DASHED.replace("[1, 2, 3]   #", "[1, 2, 3.5] #")
    after = with_items(FLOW, "lines.one.via", (Item(1, "[1, 2, 3.5]"), Item(2), Item(3)))
    assert after == FLOW.replace("[1, 2, 3],   #", "[1, 2, 3.5], #")


def test_an_item_with_keys_on_lines_of_their_own_is_replaced():
    after = with_items(DASHED, "lines.one.via", (Item(1), Item(2), Item(3, "[0, 0, 0]")))
    assert after == DASHED.replace("value: [7, 8, 9]\n        mark: assumed ", "[0, 0, 0]     ")


def test_items_come_in_between():
    wanted = (
        Item(None, "[0, 0, 0]"),
        Item(1),
        Item(None, "[3, 3, 3]"),
        Item(2),
        Item(3),
        Item(None, "[9, 9, 9]"),
    )
    assert with_items(DASHED, "lines.one.via", wanted) == DASHED.replace(
        "      # below the floor\n", "      - [0, 0, 0]\n      # below the floor\n"
    ).replace("      # at the leg\n", "      - [3, 3, 3]\n      # at the leg\n").replace(
        "by eye\n", "by eye\n      - [9, 9, 9]\n"
    )


def test_an_item_goes_and_takes_its_own_remarks_along():
    assert with_items(DASHED, "lines.one.via", (Item(1), Item(3))) == DASHED.replace(
        "      # at the leg\n      - {value: [4, 5, 6], mark: assumed}\n", ""
    )
    assert with_items(FLOW, "lines.one.via", (Item(1), Item(3))) == FLOW.replace(
        "[4, 5, 6], [7, 8, 9]], clamps: none}", "[7, 8, 9]], clamps: none}           "
    )


def test_all_items_go():
    after = with_items(DASHED, "lines.one.via", ())
    assert "    via: []  # seen from above\n\n    clamps: none   # yet\n" in after
    assert with_items(FLOW, "lines.one.via", ()).count("via: [], clamps") == 1


def test_a_list_between_brackets_grows():
    text = "lines: {one: {via: [[1, 2, 3]]}}   # end\n"
    after = with_items(text, "lines.one.via", (Item(1), Item(None, "[4, 5, 6]")))
    assert after == text.replace("3]]}}   #", "3], [4, 5, 6]]}}  #")
    many = tuple(Item(None, f"[{n}.123456, 2.123456, 3.123456]") for n in range(4))
    after = with_items(text, "lines.one.via", (Item(1), *many))
    assert max(map(len, after.splitlines())) < 100


@pytest.mark.parametrize("written", ["[]", "unknown", ""])
def test_a_list_that_was_not_there_yet(written):
    text = f"lines:\n  one:\n    via: {written}\n    to: c\n"
    after = with_items(text, "lines.one.via", (Item(None, "[1, 2, 3]"),))
    assert after == f"lines:\n  one:\n    via: [[1, 2, 3]]{'' if written else ' '}\n    to: c\n"


@pytest.mark.parametrize("end", ["\r\n", "\n", "\r"])
def test_line_ends_stay(end):
    text = DASHED.replace("\n", end)
    after = with_items(text, "lines.one.via", (Item(1), Item(2), Item(3), Item(None, "[0, 0, 0]")))
    assert after == text.replace(f"by eye{end}", f"by eye{end}      - [0, 0, 0]{end}")
    after = with_key(text, "lines.one", "bend radius", "3/4")
    assert after == text.replace(f"none   # yet{end}", f"none   # yet{end}    bend radius: 3/4{end}")


def test_a_list_at_the_end_of_a_text_without_a_last_line_end():
    text = "lines:\n  one:\n    via:\n      - [1, 2, 3]"
    after = with_items(text, "lines.one.via", (Item(1), Item(None, "[4, 5, 6]")))
    assert after == text + "\n      - [4, 5, 6]"
    assert with_items(text, "lines.one.via", (Item(1, "[9, 9, 9]"),)) == text.replace("1, 2, 3", "9, 9, 9")
    assert with_key(text, "lines.one", "to", "c") == text + "\n    to: c"


def test_keys_are_written_in_the_style_of_the_thing():
    assert with_key(DASHED, "lines.two", "bend radius", "3/4") == DASHED.replace(
        "to: c.d}", "to: c.d, bend radius: 3/4}"
    )
    after = with_key(DASHED, "lines.two", "via", [f"[{n}.123456, 2, 3]" for n in range(6)])
    assert max(map(len, after.splitlines())) <= 100
    assert with_key(DASHED, "lines.one", "flare", "37").splitlines()[-2] == "    flare: 37"
    assert with_key("a: {b: {c: 1}}\n", "a.b", "via", ["[1, 2, 3]"]) == "a: {b: {c: 1, via: [[1, 2, 3]]}}\n"
    block = with_key("a:\n  b:\n    c: 1\n  d: 2\n", "a.b", "via", ["[1, 2, 3]", "[4, 5, 6]"])
    assert block == "a:\n  b:\n    c: 1\n    via:\n      - [1, 2, 3]\n      - [4, 5, 6]\n  d: 2\n"


def test_what_is_shared_or_stands_elsewhere_is_not_touched():
    shared = DASHED.replace("- [1, 2, 3]", "- &p [1, 2, 3]").replace("to: c.d", "to: c.d, via: [*p]")
    with pytest.raises(EditError, match="touching more"):
        with_items(shared, "lines.one.via", (Item(2), Item(3)))
    with pytest.raises(EditError, match="shared with another place"):
        with_items(DASHED.replace("via:   #", "via: &v   #"), "lines.one.via", KEEP_ALL)
    with pytest.raises(EditError, match="`via` is not written under lines two"):
        with_items(DASHED, "lines.two.via", ())
    with pytest.raises(EditError, match="has no keys of its own"):
        with_key(DASHED, "lines.one.clamps", "a", "b")


def test_words_that_would_say_more_than_one_thing_are_refused():
    with pytest.raises(EditError, match="touching more"):
        with_items(DASHED, "lines.one.via", (Item(1, "[1, 2, 3]\n    to: c"), Item(2), Item(3)))


def test_a_key_comes_to_the_end_of_the_whole_file_or_of_an_option():
    text = DASHED + "options:\n  a.b:\n    fluid: x   # yet\n  c: {fluid: y}\n\n# the end\n"
    after = with_key(text, "", "accepted", ["{rule: a}", "{rule: b}"])
    assert after == text.replace(
        "c: {fluid: y}\n", "c: {fluid: y}\naccepted:\n  - {rule: a}\n  - {rule: b}\n"
    )
    after = with_key(text, "", "accepted", ["{rule: a}"], "a.b")
    assert after == text.replace("x   # yet\n", "x   # yet\n    accepted:\n      - {rule: a}\n")
    after = with_key(text, "", "accepted", ["{rule: a}"], "c")
    assert after == text.replace("{fluid: y}", "{fluid: y, accepted: [{rule: a}]}")
    with pytest.raises(EditError, match="option nobody is not written"):
        with_key(text, "", "accepted", ["{rule: a}"], "nobody")
    with pytest.raises(EditError, match="no keys of its own"):
        with_key("options:\n  a:\n", "", "accepted", ["{rule: a}"], "a")
