"""What may go on again: common practice, no source, except where a part says what it is by its ends."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

import pytest
from test_report_chain import ELBOW, STRAIGHT, at_caliper

from firmpedal.catalog import catalogue
from firmpedal.decide.again import again
from firmpedal.decide.keep import _body, _from_the_port
from firmpedal.decide.pieces import joint_pieces
from firmpedal.decide.putting_on import _held_before
from firmpedal.decide.retrofit import retrofit
from firmpedal.fit.joint import Joint


def piece(designation):
    part = catalogue().part(designation)
    assert part is not None
    return joint_pieces(Joint("j", "components.c.ports.p", (part,), (), (), (), ()))[0]


@pytest.mark.parametrize(
    ("designation", "words"),
    [
        ("COMP-SLEEVE-1/4", "bitten"),
        ("COMP-INSERT-1/4", "pressed"),
        ("COMP-NUT-1/4", "bites once"),
        ("WASHER-C-M10", "annealed"),
        ("WASHER-B-M10", "rubber"),
        ("MS28778-4", "O-ring"),
        ("AN819-4D", "flare"),
    ],
)
def test_what_never_goes_on_again_and_why(designation, words):
    verdict = again(piece(designation))
    assert not verdict.allowed
    assert words in verdict.words


@pytest.mark.parametrize("designation", ["COMP-SLEEVE-1/4", "COMP-INSERT-1/4", "MS28778-4", "WASHER-C-M10"])
def test_what_knows_no_flare_is_not_told_of_one(designation):
    assert "flare" not in again(piece(designation)).words


def test_a_filled_gasket_is_not_to_be_heated():
    """Copper round a filler: the catalogue warns of asbestos in old ones."""
    verdict = again(piece("AN900-6"))
    assert not verdict.allowed
    assert "anneal" not in verdict.words


@pytest.mark.parametrize(
    ("designation", "word"),
    [
        ("MET-S-M10x1x4D", "washer lies on"),
        ("BANJO-BOLT-M10x1D", "washer lies on"),
        ("AN815-4D in a boss", "cone"),
    ],
)
def test_a_body_may_go_on_again_if_its_faces_are_smooth(designation, word):
    verdict = again(piece(designation))
    assert verdict.allowed
    assert word in verdict.words


def test_what_is_held_in_a_panel_is_the_body_of_a_joint_and_not_what_has_a_washer():
    banjo, bulkhead = piece("BANJO-M10x4D"), piece("AN832-4D")
    assert _body([banjo, bulkhead]) == bulkhead
    assert _body([piece("AN833-4D in a boss"), bulkhead]) == bulkhead
    assert _body([banjo]) == banjo


def pieces_at(inlet, asked):
    _, joint = at_caliper(inlet, asked)
    return [each for each in joint_pieces(joint) if not each.line]


def test_a_banjo_stays_whole_or_not_at_all():
    stays = pieces_at("M10 x 1 female", ELBOW)
    assert [pair[0].designation for pair in _from_the_port(stays, stays)] == [
        one.designation for one in stays
    ]
    other = [piece("BANJO-M10x3D") if one.designation == "BANJO-M10x4D" else one for one in stays]
    assert not list(_from_the_port(stays, other))


def test_washers_are_bought_new_where_a_straight_fitting_becomes_a_banjo():
    straight, banjo = (at_caliper("M10 x 1 female", asked)[0] for asked in (STRAIGHT, ELBOW))
    plan = retrofit(straight, banjo)
    assert sum(one.designation == "WASHER-C-M10" for one in plan.buy) == 2
    (gone,) = [one for one in plan.remove if one.piece.designation == "WASHER-C-M10"]
    assert "annealed" in gone.why_not


def test_only_what_a_panel_holds_sat_in_the_hole():
    place = "bulkheads.floor"
    off = [replace(piece(name), place=place) for name in ("BANJO-M10x4D", "AN833-4D in a boss", "AN832-4D")]
    work = SimpleNamespace(off=off, same=SimpleNamespace(bulkheads={"floor"}))
    assert _held_before(work, SimpleNamespace(place=place)) == [off[-1]]
