"""Finding a part: spellings, near misses, choices, and what is said of nonsense."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from firmpedal.catalog import CatalogueError, PartError, catalogue, find


@pytest.mark.parametrize(
    "spelling",
    [
        "AN816-4D",
        "an816-4d",
        " AN816-4D ",
        "AN 816-4D",
        "AN-816-4D",
        "AN816 4D",
        "AN816-4 D",
        "AN816-4-D",
        "an 816 4 d",
    ],
)
def test_spellings_of_a_designation(spelling):
    assert find(spelling).designation == "AN816-4D"


def test_every_designation_and_successor_is_found():
    for part in catalogue().parts:
        assert find(part.designation) is part
        for alias in part.also_known_as:
            if "-" in alias:
                assert find(alias) is part


def test_a_wrong_letter_names_the_part_meant():
    with pytest.raises(PartError, match="did you mean AN822-4D") as caught:
        find("AN822-4DD")
    assert caught.value.suggestion == "AN822-4D"


def test_a_wrong_family_names_one_of_the_same_shape():
    with pytest.raises(PartError) as caught:
        find("AM816-4D")
    assert caught.value.suggestion == "AN816-4D"


def test_a_size_that_is_not_made_is_never_turned_into_another():
    with pytest.raises(PartError, match="choose from: AN816-3D") as caught:
        find("AN816-7D")
    assert caught.value.suggestion == ""
    assert "AN816-4D" in caught.value.choices
    assert all(choice.startswith("AN816-") for choice in caught.value.choices)


def test_nonsense_gets_the_families():
    with pytest.raises(PartError) as caught:
        find("wheelbarrow")
    assert caught.value.suggestion == ""
    assert {"AN816", "AN818", "AN819"} <= set(caught.value.choices)


def test_absence_without_an_exception():
    assert catalogue().part("AN816-7D") is None
    assert catalogue().size("-7") is None
    assert catalogue().thread("7/8-14") is None


def test_the_catalogue_is_read_once():
    assert catalogue() is catalogue()


def refusal(designation):
    """Give the error that a designation gets, or None where it is a part."""
    try:
        find(designation)
    except PartError as error:
        return error
    return None


@given(st.text(max_size=80))
def test_any_text_is_a_part_or_a_part_error(text):
    error = refusal(text)
    assert (error is None) == (catalogue().part(text) is not None)
    if error:
        assert isinstance(error, CatalogueError)
        assert str(error).isprintable()
        assert error.choices


@given(st.from_regex(r"(AN|MS|AS)[ -]?\d{3,5}[ -]\d(-\d)?[ -]?[A-Z]{0,2}", fullmatch=True))
def test_what_is_suggested_can_be_found(text):
    error = refusal(text)
    assert error is None or not error.suggestion or refusal(error.suggestion) is None
