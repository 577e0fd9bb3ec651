"""Fittings that the builder declared: taken as they are, in their order, and never an exception."""

from __future__ import annotations

import pytest
from invented_parts import (
    FEMALE,
    PIPE_PORT,
    STOCK,
    Stock,
    flare,
    hose,
    metric,
    names,
    part,
    pipe,
    tube,
)

from firmpedal.fit.joint import MismatchKind, Port
from firmpedal.fit.search import fit_port


def opened(joint):
    return [(end.owner, end.index) for end in joint.open_ends]


def test_declared_fittings_win_over_the_search():
    joint = fit_port(PIPE_PORT, hose(leaves=0, fittings=("SQUARE-4-S",)), STOCK)
    assert names(joint) == ["SQUARE-4-S"]
    assert (joint.mismatches, joint.open_ends) == ((), ())


def test_the_nut_and_sleeve_of_the_tube_are_added():
    joint = fit_port(PIPE_PORT, tube(group="steel", fittings=("HALF-4",)), STOCK)
    assert names(joint) == ["HALF-4", "NUT-4-S", "SLEEVE-4-S"]
    assert joint.open_ends == ()


def test_a_declared_nut_is_not_doubled():
    joint = fit_port(PIPE_PORT, tube(fittings=("STRAIGHT-4", "NUT-4")), STOCK)
    assert names(joint) == ["STRAIGHT-4", "NUT-4", "SLEEVE-4"]
    assert joint.open_ends == ()


def test_nothing_but_nut_and_sleeve_is_added():
    joint = fit_port(PIPE_PORT, hose(fittings=("NIPPLE-1",)), STOCK)
    assert names(joint) == ["NIPPLE-1"]
    (mismatch,) = joint.mismatches
    assert mismatch.needed == ("COUPLING-1", "STRAIGHT-4")
    assert opened(joint) == [("line hose from", 0), ("part 0", 1)]


def test_parts_are_turned_so_that_most_neighbours_mate():
    """A bushing entered by the wrong end would leave two joints open instead of none."""
    backwards = part("BUSHING-B", pipe(gender=FEMALE), pipe("1/4-18"))
    port = Port("p", "p", pipe("1/4-18", FEMALE))
    joint = fit_port(port, hose(fittings=("BUSHING-B", "STRAIGHT-4")), STOCK.plus(backwards))
    assert joint.mismatches == ()
    assert [(mating.one.index, mating.other.index) for mating in joint.matings] == [(0, 1), (0, 0), (1, 0)]


def test_neighbours_that_do_not_mate_are_told_and_left_open():
    joint = fit_port(PIPE_PORT, hose(fittings=("STRAIGHT-3",)), STOCK)
    (mismatch,) = joint.mismatches
    assert mismatch.kind is MismatchKind.DASH_SIZE
    assert (mismatch.one.owner, mismatch.other.owner) == ("part 0", "line hose from")
    assert opened(joint) == [("line hose from", 0), ("part 0", 1)]
    assert len(joint.matings) == 1


def test_a_taper_fitting_in_a_metric_port_is_told_in_a_builders_words():
    port = Port("p", "p", metric(gender=FEMALE))
    joint = fit_port(port, hose(fittings=("STRAIGHT-4",)), STOCK)
    (mismatch,) = joint.mismatches
    assert mismatch.kind is MismatchKind.METRIC_AND_PIPE
    assert "may start by hand, then they wedge, split the port or leak" in mismatch.words
    assert opened(joint) == [("port p", 0), ("part 0", 0)]


def test_a_pipe_dash_read_as_tube_dash_is_told_with_the_right_one():
    """On an all-pipe fitting the dash is eighths of an inch: TM 1-1500-204-23-2, page css 56."""
    joint = fit_port(PIPE_PORT, hose(fittings=("NIPPLE-4",)), STOCK)
    first = joint.mismatches[0]
    assert first.kind is MismatchKind.PIPE_DASH
    assert first.words == (
        "dash -4 on an all-pipe fitting is 1/2 pipe, not tube size 4; the port is 1/8: dash -1"
    )


def test_a_thread_size_on_a_fitting_with_a_tube_end_is_no_dash_misread():
    stock = STOCK.plus(part("STRAIGHT-4-4", pipe("1/4-18"), flare("-4")))
    joint = fit_port(PIPE_PORT, hose(fittings=("STRAIGHT-4-4",)), stock)
    assert [mismatch.kind for mismatch in joint.mismatches] == [MismatchKind.THREAD_SIZE]


@pytest.mark.parametrize(
    ("written", "meant"), [("STRAIHGT-4", "STRAIGHT-4"), ("square-44", "SQUARE-4"), ("HAFL-3", "HALF-3")]
)
def test_an_unknown_designation_is_told_with_what_may_be_meant(written, meant):
    joint = fit_port(PIPE_PORT, hose(fittings=(written,)), STOCK)
    (mismatch,) = joint.mismatches
    assert mismatch.kind is MismatchKind.NO_PARTS
    assert mismatch.words.startswith(f"no part called {written} is in the catalogue: did you mean {meant}")
    assert opened(joint) == [("port cylinder.outlet", 0), ("line hose from", 0)]


def test_two_unknown_designations_side_by_side_are_both_told():
    joint = fit_port(PIPE_PORT, hose(fittings=("1111", "2222")), STOCK)
    assert joint.mismatches[0].words == (
        "no part called 1111 is in the catalogue; no part called 2222 is in the catalogue"
    )


def test_a_wild_designation_gets_no_guess():
    joint = fit_port(PIPE_PORT, hose(fittings=("9999",)), STOCK)
    assert joint.mismatches[0].words == "no part called 9999 is in the catalogue"


def test_what_stands_beside_an_unknown_part_is_still_joined():
    joint = fit_port(PIPE_PORT, tube(fittings=("STREET-1", "UNHEARD-OF", "STRAIGHT-4")), STOCK)
    assert names(joint) == ["STREET-1", "STRAIGHT-4", "NUT-4", "SLEEVE-4"]
    assert len(joint.mismatches) == 1
    assert opened(joint) == [("part 0", 1), ("part 1", 0)]


def test_other_names_and_small_letters_are_understood():
    stock = Stock((part("NEW-4", pipe(), flare("-4"), also=("OLD-4",)),))
    assert names(fit_port(PIPE_PORT, hose(fittings=("old-4",)), stock)) == ["NEW-4"]


def test_a_name_that_several_parts_have_is_asked_about():
    stock = Stock(tuple(part(f"NEW{size}", pipe(), flare(size), also=("AS1",)) for size in ("-3", "-4")))
    joint = fit_port(PIPE_PORT, hose(fittings=("AS1",)), stock)
    assert joint.mismatches[0].words == "AS1 is more than one part: write one of NEW-3, NEW-4"


def test_nothing_can_follow_a_plug():
    joint = fit_port(PIPE_PORT, hose(fittings=("PLUG-1",)), STOCK)
    (mismatch,) = joint.mismatches
    assert mismatch.words == "PLUG-1 has one end only: nothing can follow it"
    assert opened(joint) == [("line hose from", 0)]


def test_a_declared_tee_leaves_its_branch_open_and_a_jam_nut_finds_its_thread():
    tee = fit_port(Port("p", "p", flare("-4", FEMALE)), hose(fittings=("TEE-4",)), STOCK)
    assert (tee.mismatches, opened(tee)) == ((), [("part 0", 2)])
    wall = fit_port(Port("p", "p", flare("-4", FEMALE)), hose(fittings=("BULKHEAD-4", "JAM-4")), STOCK)
    assert (names(wall), wall.mismatches, opened(wall)) == (["BULKHEAD-4", "JAM-4"], (), [])


def test_fittings_that_contradict_the_turn_declared_beside_them_are_told():
    joint = fit_port(PIPE_PORT, hose(turn=90, fittings=("HALF-4",)), STOCK)
    (mismatch,) = joint.mismatches
    assert mismatch.kind is MismatchKind.TURN
    assert mismatch.words == "the declared fittings are 45 degrees; 90 degrees is declared"
    assert joint.open_ends == ()
    assert fit_port(PIPE_PORT, hose(turn=45, fittings=("HALF-4",)), STOCK).mismatches == ()
