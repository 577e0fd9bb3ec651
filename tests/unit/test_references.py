"""The bibliography: what is in it, and what its reader refuses."""

import pytest

from firmpedal.formulas.references import entry, every_entry, parse

TEXT = """% a comment
@book{first-book,
  title = {A title that goes on
    over two lines},
  year = {1945},
  note = {recalled},
}

@misc{second,
  title = {Another},
}
"""


def test_entries_are_read_with_their_fields():
    references = parse(TEXT)
    assert list(references) == ["first-book", "second"]
    first = references["first-book"]
    assert (first.key, first.title, first.note) == (
        "first-book",
        "A title that goes on over two lines",
        "recalled",
    )
    assert first.fields == {"type": "book", "title": first.title, "year": "1945", "note": "recalled"}
    assert references["second"].note == ""


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (TEXT + "stray words\n", "not an entry: stray words"),
        (TEXT.replace("  year = {1945},", "  year = 1945,"), "first-book: not a field: year = 1945,"),
        (TEXT.replace("{Another}", "{An {inner} brace}"), "second: not a field"),
        (TEXT.replace("second", "first-book"), "two entries are called first-book"),
        (TEXT.replace("  title = {Another},\n", ""), "second: no title"),
        (TEXT.rstrip()[:-1], "not an entry: @misc"),
    ],
)
def test_what_cannot_be_read_is_refused(text, message):
    with pytest.raises(ValueError, match=message):
        parse(text)


def test_unknown_key_is_an_error_that_names_it():
    with pytest.raises(LookupError, match="no-such-key"):
        entry("no-such-key")


def test_file_is_read_once_and_cannot_be_changed():
    assert every_entry() is every_entry()
    with pytest.raises(TypeError):
        every_entry()["new"] = entry("common-practice")
    with pytest.raises(TypeError):
        entry("common-practice").fields["note"] = "changed"


@pytest.mark.parametrize("key", every_entry())
def test_every_entry_says_how_we_know_it_and_names_no_address(key):
    reference = entry(key)
    assert reference.note
    assert "http" not in " ".join(reference.fields.values())


def test_what_nobody_has_seen_is_told_from_what_was_read():
    assert entry("common-practice").title == "Common practice, no source"
    assert "recalled" in entry("astm-b210").note
    assert "web copy" in entry("asme-b1-20-1").note
