"""Between a port and a line end: fewest leak paths, then parts, then the angle, then mass."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from invented_parts import (
    FEMALE,
    PIPE_PORT,
    STOCK,
    Stock,
    compression,
    flare,
    hose,
    metric,
    names,
    panel,
    part,
    pipe,
    plastic,
    reasons,
    tube,
)

from firmpedal.fit.joint import MismatchKind, Port
from firmpedal.fit.search import fit_port


def port(interface, **more):
    return Port("components.thing.ports.one", "thing.one", interface, **more)


@pytest.mark.parametrize(
    ("leaves", "chosen"),
    [
        (None, "STRAIGHT-4"),
        (0, "STRAIGHT-4"),
        (22, "STRAIGHT-4"),
        (22.5, "STRAIGHT-4"),  # as near to straight as to 45: the straighter
        (23, "HALF-4"),
        (45, "HALF-4"),
        (67, "HALF-4"),
        (67.5, "HALF-4"),
        (68, "SQUARE-4"),
        (90, "SQUARE-4"),
        (170, "SQUARE-4"),
    ],
)
def test_the_nearest_angle_wins_and_the_straighter_of_two_equally_near(leaves, chosen):
    assert names(fit_port(PIPE_PORT, hose(leaves=leaves), STOCK)) == [chosen]


@pytest.mark.parametrize(("turn", "chosen"), [(0, "STRAIGHT-4"), (45, "HALF-4"), (90, "SQUARE-4")])
def test_a_declared_turn_wins_over_where_the_line_leaves(turn, chosen):
    for leaves in (None, 0, 45, 90):
        assert names(fit_port(PIPE_PORT, hose(leaves=leaves, turn=turn), STOCK)) == [chosen]


def test_a_declared_turn_takes_more_joints_if_it_must():
    stock = STOCK.without("SQUARE-4", "SQUARE-4-S")
    assert names(fit_port(PIPE_PORT, hose(turn=90), stock)) == ["STREET-1", "STRAIGHT-4"]
    assert names(fit_port(PIPE_PORT, hose(leaves=90), stock)) == ["HALF-4"]


def test_a_turn_that_nothing_has_is_told_with_what_there_is():
    joint = fit_port(PIPE_PORT, hose(turn=30), STOCK)
    (mismatch,) = joint.mismatches
    assert joint.parts == ()
    assert mismatch.kind is MismatchKind.TURN
    assert mismatch.words == "nothing here is 30 degrees; there is straight, 45 degrees, 90 degrees"


def test_two_elbows_in_series_are_refused_with_the_reason():
    joint = fit_port(PIPE_PORT, hose(turn=135), STOCK)
    assert joint.parts == ()
    assert "two elbows in series do not settle where the line points" in joint.mismatches[0].words


def test_a_tube_gets_a_nut_and_a_sleeve_that_are_no_leak_paths():
    joint = fit_port(PIPE_PORT, tube(), STOCK)
    assert names(joint) == ["STRAIGHT-4", "NUT-4", "SLEEVE-4"]
    assert joint.leak_paths == 2
    assert [(mating.one.owner, mating.other.owner) for mating in joint.matings] == [
        ("port cylinder.outlet", "part 0"),
        ("part 0", "part 1"),
        ("part 1", "part 2"),
        ("part 2", "line tube to"),
    ]


def test_a_hose_on_a_flared_port_needs_nothing():
    joint = fit_port(port(flare("-4")), hose(), STOCK)
    assert names(joint) == []
    assert joint.leak_paths == 1
    assert joint.open_ends == ()


def test_like_metal_goes_with_like():
    """Aluminium with aluminium, steel with steel: FAA AC 65-9A, plumbing assembly precautions."""
    joint = fit_port(PIPE_PORT, tube(group="steel"), STOCK)
    assert names(joint) == ["STRAIGHT-4-S", "NUT-4-S", "SLEEVE-4-S"]


def test_mass_decides_between_metals_where_the_line_is_a_hose():
    assert names(fit_port(PIPE_PORT, hose(), STOCK)) == ["STRAIGHT-4"]


def test_a_metal_asked_for_rules_the_fittings_but_not_the_nut_and_sleeve():
    joint = fit_port(PIPE_PORT, tube(material="steel"), STOCK)
    assert names(joint) == ["STRAIGHT-4-S", "NUT-4", "SLEEVE-4"]


def test_a_metal_asked_for_that_is_not_there_is_told_with_what_is():
    joint = fit_port(PIPE_PORT, hose(material="brass"), STOCK)
    (mismatch,) = joint.mismatches
    assert joint.parts == ()
    assert mismatch.kind is MismatchKind.NO_PARTS
    assert mismatch.needed == ("STRAIGHT-4",)
    assert "STRAIGHT-4 (aluminium)" in mismatch.words


def test_another_metal_is_taken_where_nothing_else_joins():
    stock = STOCK.plus(part("ADAPTER-4", metric(), flare("-4"), metal="steel"))
    joint = fit_port(port(metric(gender=FEMALE)), tube(), stock)
    assert names(joint) == ["ADAPTER-4", "NUT-4", "SLEEVE-4"]


def test_brass_is_taken_for_compression_and_never_where_something_else_joins():
    light = part("LIGHT-4", pipe(), flare("-4"), metal="brass", grams=1)
    assert names(fit_port(PIPE_PORT, hose(), STOCK.plus(light))) == ["STRAIGHT-4"]
    assert names(fit_port(PIPE_PORT, hose(material="brass"), STOCK.plus(light))) == ["LIGHT-4"]
    assert names(fit_port(PIPE_PORT, plastic(), STOCK)) == ["SQUEEZE-4"]


def test_low_pressure_forms_tees_and_bulkhead_fittings_never_stand_in_a_chain():
    light = (
        part("LOW-4", pipe(), flare("-4"), grams=1, pressure=False),
        part("BRANCH-4", pipe(), flare("-4"), flare("-4"), grams=1),
        part("WALL-4", pipe(), flare("-4"), panel("-4"), grams=1),
    )
    joint = fit_port(PIPE_PORT, hose(), Stock(light))
    assert joint.parts == ()
    assert reasons(joint) == {
        "LOW-4": "low-pressure or obsolete form: never in a brake line",
        "BRANCH-4": "leaves an end open: it has a branch",
        "WALL-4": "made for a panel: it needs a hole and a jam nut",
    }
    assert names(fit_port(PIPE_PORT, hose(), STOCK.plus(*light))) == ["STRAIGHT-4"]


def test_fewer_leak_paths_win_over_fewer_parts():
    """Three parts whose inner joints hold no fluid have fewer leak paths than two that all do."""
    inner = compression("1/4 in")
    dry = [panel(size) for size in ("a", "b")]
    stock = Stock(
        (
            part("WET1", pipe(), inner),
            part("WET2", inner.complement, flare("-4")),
            _dry("DRY1", pipe(), dry[0]),
            _dry("DRY2", dry[0].complement, dry[1]),
            _dry("DRY3", dry[1].complement, flare("-4")),
        )
    )
    joint = fit_port(PIPE_PORT, hose(), stock)
    assert (names(joint), joint.leak_paths) == (["DRY1", "DRY2", "DRY3"], 2)


def _dry(name, *interfaces):
    """Make a part whose inner thread holds no fluid yet passes it, as between a nut and its sleeve."""
    made = part(name, *interfaces)
    return replace(made, ends=tuple(replace(end, flow=True) for end in made.ends), turn=0.0)


def test_fewer_parts_win_over_the_better_angle_and_less_mass():
    stock = Stock(
        (
            part("HEAVY", pipe(), flare("-4"), grams=500),
            part("STREET", pipe(), pipe(gender=FEMALE), turn=90, grams=1),
            part("SLIM", pipe(), flare("-4"), turn=90, grams=900),
        )
    )
    assert names(fit_port(PIPE_PORT, hose(), stock)) == ["HEAVY"]
    assert names(fit_port(PIPE_PORT, hose(leaves=90), stock)) == ["SLIM"]
    assert names(fit_port(PIPE_PORT, hose(leaves=90), stock.without("SLIM"))) == ["HEAVY"]


def test_of_equal_parts_the_lighter_wins_and_an_unknown_mass_loses():
    light, heavy = part("A", pipe(), flare("-4"), grams=9), part("B", pipe(), flare("-4"), grams=10)
    unweighed = part("C", pipe(), flare("-4"), grams=None)
    assert names(fit_port(PIPE_PORT, hose(), Stock((heavy, unweighed, light)))) == ["A"]
    assert names(fit_port(PIPE_PORT, hose(), Stock((unweighed, heavy)))) == ["B"]
    assert names(fit_port(PIPE_PORT, hose(), Stock((unweighed,)))) == ["C"]


def test_a_size_is_reduced_by_the_parts_there_are():
    assert names(fit_port(port(pipe("1/4-18", FEMALE)), hose(), STOCK)) == ["BUSHING-2", "STRAIGHT-4"]


def test_a_chain_of_six_parts_is_found_and_one_of_seven_is_not():
    """The bound that `ways.MOST_PARTS` states."""
    steps = [pipe(f"{n}/8", FEMALE) for n in range(2, 9)]
    ladder = [part(f"STEP{n}", one.complement, two) for n, (one, two) in enumerate(pairwise(steps))]
    six = fit_port(
        port(steps[0]), hose(), Stock((*ladder[:5], part("LAST", steps[5].complement, flare("-4"))))
    )
    assert len(six.parts) == 6
    seven = fit_port(port(steps[0]), hose(), Stock((*ladder, part("LAST", steps[6].complement, flare("-4")))))
    assert seven.parts == ()
    assert seven.mismatches


def test_an_open_port_stays_open_and_a_closed_one_gets_the_lightest_plug_or_cap():
    joint = fit_port(PIPE_PORT, None, STOCK)
    assert (names(joint), [end.owner for end in joint.open_ends]) == ([], ["port cylinder.outlet"])
    plugged = fit_port(port(pipe(gender=FEMALE), closed=True), None, STOCK)
    assert (names(plugged), plugged.open_ends, plugged.leak_paths) == (["PLUG-1"], (), 1)
    assert reasons(plugged) == {"PLUG-1-S": "heavier: steel"}
    assert names(fit_port(port(flare("-3"), closed=True), None, STOCK)) == ["CAP-3"]


def test_a_port_that_nothing_closes_is_told():
    joint = fit_port(port(metric(gender=FEMALE), closed=True), None, STOCK)
    (mismatch,) = joint.mismatches
    assert mismatch.kind is MismatchKind.NO_PARTS
    assert mismatch.words == "nothing in the catalogue closes M10x1 metric parallel thread, female"
    assert [end.owner for end in joint.open_ends] == ["port thing.one"]


def test_the_same_question_is_answered_from_memory_and_another_stock_is_not():
    first = fit_port(PIPE_PORT, hose(leaves=45), STOCK)
    assert fit_port(PIPE_PORT, hose(leaves=45), STOCK) is first
    assert names(fit_port(PIPE_PORT, hose(leaves=45), STOCK.without("HALF-4"))) == ["HALF-4-S"]
