"""Names and words that are refused say what is wrong with them; a slip of capitals or blanks is taken."""

from __future__ import annotations

import pytest

from firmpedal.catalog import StockError, fluid
from firmpedal.catalog.materials import fluids
from firmpedal.model.aircraft import find
from firmpedal.project import read_text
from firmpedal.project.edit import EditError
from firmpedal.project.field_edits import put_in
from firmpedal.project.field_places import thing_at
from firmpedal.project.fields import form_of
from firmpedal.project.options_edit import option_begun
from firmpedal.project.unknowns import as_known
from firmpedal.project.usable_names import usable_name
from texts import edited, example

TEXT = example("brindlewick")
SEALS = "components.left_caliper.seals"


@pytest.mark.parametrize(
    ("name", "sign", "could"),
    [
        ("as it was, plastic", ", (comma)", "as it was plastic"),
        ("Left brake pedal!", "! (exclamation mark)", "Left brake pedal"),
        ("left.leg", ". (full stop)", "left leg"),
        ("hose: braided", ": (colon)", "hose braided"),
        ("#2", "# (number sign)", "2"),
        ("unknown?", "? (question mark)", "left_leg"),
    ],
)
def test_a_name_is_refused_by_the_sign_and_a_near_one_is_offered(name, sign, could):
    with pytest.raises(EditError) as refusal:
        usable_name(name)
    assert str(refusal.value) == f"a name here cannot have {sign} in it"
    assert refusal.value.suggestion == f"write such as `{could}`"
    assert usable_name(could) == could
    assert could in read_text(option_begun(read_text(TEXT), could)).options


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("", "it needs a name of its own"),
        ("  ", "it needs a name of its own"),
        ("removed", "`removed` has a meaning of its own here"),
        ("null", "`null` has a meaning of its own here"),
        ("-leg", "a name here cannot begin with - (hyphen-minus)"),
    ],
)
def test_a_name_that_is_none_says_why(name, said):
    with pytest.raises(EditError, match=f"^{said.replace('(', '.').replace(')', '.')}$"):
        usable_name(name)


@pytest.mark.parametrize("words", ["Nitrile", " nitrile", "NITRILE"])
def test_a_known_word_in_capitals_is_taken_and_written_as_it_is_known(words):
    text = edited(TEXT, ("    pad gap: 0.020\n", "    pad gap: 0.020\n    seals: unknown\n"))
    tree = read_text(text).tree
    assert as_known(tree, SEALS, words) == "nitrile"
    reading = read_text(text, "a.yaml")
    fields = form_of(reading, thing_at(reading, SEALS)).all_fields()
    field = next(each for each in fields if each.place == SEALS)
    after = put_in(reading, field, field.rows[0].cells[0], words)
    assert after == edited(text, ("seals: unknown", "seals: nitrile"))


def test_a_known_word_in_capitals_in_the_file_reads_the_same():
    texts = (
        edited(TEXT, ("    pad gap: 0.020\n", f"    pad gap: 0.020\n    seals: {words}\n"))
        for words in ("ethylene propylene", "Ethylene  Propylene", "EthylenePropylene")
    )
    found = {find(read_text(text).aircraft.components, "left_caliper").seals for text in texts}
    assert len(found) == 1
    tree = read_text(TEXT).tree
    assert as_known(tree, SEALS, "leather") == "leather"
    assert as_known(tree, "components.left_caliper.pad gap", "Nitrile") == "Nitrile"


@pytest.mark.parametrize("name", ["DOT 9", "DOT", "MIL-PRF-9999", "5607"])
def test_another_fluid_is_not_offered_as_if_it_were_a_slip(name):
    with pytest.raises(StockError) as refusal:
        fluid(name)
    assert refusal.value.suggestion == ""
    assert all(each.name in str(refusal.value) for each in fluids())


def test_a_fluid_with_its_own_figures_is_offered_for_a_slip_in_its_letters():
    with pytest.raises(StockError) as refusal:
        fluid("MIL-PFR-5606")
    assert refusal.value.suggestion == "MIL-PRF-5606"
