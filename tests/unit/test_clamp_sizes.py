"""Clamps by what they go round: the line itself, or the sleeve over it that somebody measured.

That a clamp for the bare hose does not close round a fire sleeve is common practice, no source.
"""

from __future__ import annotations

import pytest
from evaluated import EXAMPLE

from firmpedal.decide.clamp_sizes import clamp_size
from firmpedal.decide.keep import kept_pairs
from firmpedal.decide.pieces import find_line, line_pieces
from firmpedal.decide.same import sameness
from firmpedal.model.part import Category
from firmpedal.pipeline import evaluate_text
from firmpedal.report.parts import parts_list
from firmpedal.units import to_unit

TEXT = EXAMPLE.read_text(encoding="utf-8")
HOSE, TUBE = "hose -4 PTFE braided", "tube 5052-O 1/4 x .035"
LEG = (
    f"        made of: {TUBE}\n"
    "        via:\n"
    "          - [7.0, -9.0, -3.2]\n"
    "          - [9.0, -11.6, -5.2]\n"
    "          - [5.6, -32.2, -28.6]\n"
    "        clamps: propose\n"
)


def legs(*keys, stock=HOSE):
    """The example with both legs of one stock, the right a mirror image, and what more is said of them."""
    assert TEXT.count(LEG) == 1
    new = LEG.replace("clamps: propose", "clamps: [8, 20]").replace(TUBE, stock)
    text = TEXT.replace(LEG, new + "".join(f"        {key}\n" for key in keys))
    return evaluate_text(text, "brindlewick", "rigid")


def of_leg(evaluation):
    return clamp_size(evaluation, find_line(evaluation, "left_leg"))


def rows(evaluation):
    return [item for item in parts_list(evaluation) if item.category is Category.CLAMP]


def test_a_bare_hose_takes_a_clamp_by_its_own_outside():
    evaluation = legs()
    found = of_leg(evaluation)
    assert (found.name, found.over) == (f"cushioned clamp for {HOSE}", "")
    assert found.across == find_line(evaluation, "left_leg").stock.outside_diameter


@pytest.mark.parametrize("nothing", ["nothing", "None", "no"])
def test_no_sleeve_is_no_sleeve(nothing):
    assert of_leg(legs(f"sleeve: {nothing}")).name == f"cushioned clamp for {HOSE}"


@pytest.mark.parametrize("stock", [HOSE, TUBE])
def test_over_a_sleeve_the_clamp_goes_by_the_sleeved_diameter(stock):
    evaluation = legs("sleeve: fire sleeve", "sleeved diameter: 0.62", stock=stock)
    found = of_leg(evaluation)
    assert to_unit(found.across.middle, "in") == pytest.approx(0.62)
    assert found.size == ""  # the dash number of the bare line is that of a clamp too small
    (row,) = rows(evaluation)
    assert (row.designation, row.quantity) == ("cushioned clamp 0.62 in over fire sleeve", 4)
    assert row.description == "goes round 0.62 in across, over the sleeve"


def test_a_measured_sleeve_needs_no_name():
    assert of_leg(legs("sleeved diameter: 0.62")).name == "cushioned clamp 0.62 in over its sleeve"


@pytest.mark.parametrize(
    "keys",
    [
        ("sleeve: fire sleeve",),
        ("sleeve: fire sleeve", "sleeved diameter: unknown"),
        ("sleeve: fire sleeve", "sleeved diameter: 0.1"),  # less than the bare hose: not what was meant
    ],
)
def test_an_unknown_sleeve_is_asked_for(keys):
    evaluation = legs(*keys)
    found = of_leg(evaluation)
    assert not found.across.known
    assert [item.place for item in found.across.missing] == ["lines.left_leg.sleeved diameter"]
    (row,) = rows(evaluation)
    assert row.designation == f"cushioned clamp over fire sleeve on {HOSE}"
    assert row.description == "size not shown: measure the outside of the sleeved hose"


def test_sleeves_of_two_sizes_are_two_rows():
    one, other = (legs("sleeve: fire", f"sleeved diameter: {across}") for across in (0.62, 0.66))
    (first,), (second,) = rows(one), rows(other)
    assert first.key != second.key


def test_a_clamp_over_a_new_sleeve_does_not_stay():
    bare, over = legs(), legs("sleeve: fire sleeve", "sleeved diameter: 0.62")
    for before, after, kept in ((bare, bare, 4), (bare, over, 0), (over, over, 4)):
        pairs = kept_pairs(before, after, sameness(before, after))
        clamps = [one for one, _ in pairs if one.category is Category.CLAMP and one.line.endswith("_leg")]
        assert len(clamps) == kept


def test_pieces_and_list_name_the_same_clamp():
    evaluation = legs("sleeve: fire sleeve", "sleeved diameter: 0.62")
    line = find_line(evaluation, "left_leg")
    assert {piece.designation for piece in line_pieces(evaluation, line)[1:]} == {
        rows(evaluation)[0].designation
    }
