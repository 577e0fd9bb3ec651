"""The tools that the other tests of the pages stand on."""

import pytest
from page_blocks import blocks, joined, replaced, sections

FILE = "a: 1\n\nlines:\n  one: {from: x}\n  two:\n    from: y\n"


def test_blocks_know_their_info_and_place():
    (block,) = blocks("words\n\n```yaml file=my.yaml try\na: 1\n```\n")
    assert (block.kind, block.file, block.mode, block.text, block.line) == (
        "yaml",
        "my.yaml",
        "try",
        "a: 1",
        3,
    )


def test_console_block_with_texts_to_keep():
    (block,) = blocks("```console only=NOT SOUND | [a-rule]\n$ firmpedal check\n```\n")
    assert block.only == ("NOT SOUND", "[a-rule]")


def test_open_block_is_refused():
    with pytest.raises(AssertionError, match="never closed"):
        blocks("```yaml\na: 1\n")


def test_entry_joins_its_section():
    assert joined(FILE, "lines:\n  three: {from: z}\n") == FILE + "  three: {from: z}\n"


def test_entry_takes_the_place_of_its_namesake():
    assert joined(FILE, "lines:\n  two: {from: z}\n") == FILE.replace("two:\n    from: y", "two: {from: z}")


def test_plain_key_is_replaced_and_a_new_one_comes_last():
    assert joined(FILE, "a: 2\nb: 3\n") == FILE.replace("a: 1", "a: 2") + "\nb: 3\n"


def test_comment_belongs_to_what_stands_above():
    assert sections("lines:\n  # why\n  one: 1\n")["lines"].head == "lines:\n  # why"


def test_key_twice_in_a_block_is_refused():
    with pytest.raises(AssertionError, match="twice"):
        sections("a: 1\na: 2\n")


def test_contents_change_and_the_rest_stays():
    page = "one\n\n```a\n1\n2\n```\n\ntwo\n\n```b\n3\n```\n"
    first, second = blocks(page)
    assert (
        replaced(page, [(first, "x"), (second, "y\nz")]) == "one\n\n```a\nx\n```\n\ntwo\n\n```b\ny\nz\n```\n"
    )
