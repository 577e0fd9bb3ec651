"""Bulkheads, brackets and unions: one body, its ends either way round, and what leads to each line."""

from __future__ import annotations

from math import radians

import pytest
from invented_parts import (
    FEMALE,
    STOCK,
    Stock,
    flare,
    hose,
    metric,
    names,
    panel,
    part,
    pipe,
    plastic,
    reasons,
    shoulder,
    tube,
)

from firmpedal.fit.closing import violations
from firmpedal.fit.hub import fit_hub, fit_meeting
from firmpedal.fit.joint import Hub, LineEnd, MismatchKind
from firmpedal.fit.mating import line_end


def hub(turn=0, *, panel=True, sides=("above", "below"), **more):
    return Hub("bulkheads.floor", "floor", radians(turn), panel, sides, **more)


def opened(joint):
    return [(end.owner, end.index) for end in joint.open_ends]


def test_a_hose_above_and_a_tube_below_a_bulkhead_elbow():
    joint = fit_hub(hub(90), (hose(), tube()), STOCK)
    assert names(joint) == ["BULKELL-4", "JAM-4", "NUT-4", "SLEEVE-4"]
    assert (joint.mismatches, joint.open_ends, joint.leak_paths) == ((), (), 2)


def test_parts_stand_from_the_first_side_to_the_second():
    joint = fit_hub(hub(), (tube(), hose()), STOCK)
    assert names(joint) == ["SLEEVE-4", "NUT-4", "BULKHEAD-4", "JAM-4"]
    assert violations([joint], [line_end(tube()), line_end(hose())]) == ()


def test_a_free_union_has_no_bulkhead_thread():
    assert names(fit_hub(hub(panel=False), (hose(), hose(line="other")), STOCK)) == ["UNION-4"]


@pytest.mark.parametrize("sizes", [("-3", "-4"), ("-4", "-3")])
def test_a_body_of_two_sizes_is_turned_round_as_needed(sizes):
    one, other = hose(sizes[0]), hose(sizes[1], line="other")
    joint = fit_hub(hub(panel=False), (one, other), STOCK)
    assert names(joint) == ["REDUCER-43"]
    assert violations([joint], [line_end(one), line_end(other)]) == ()


def test_without_a_reducing_bulkhead_a_swivel_reducer_is_found_and_cost_decides():
    swivel = part("SWIVEL-34", flare("-3", FEMALE), flare("-4"))
    lines = (hose("-3"), hose("-4", line="other"))
    assert names(fit_hub(hub(), lines, STOCK.plus(swivel))) == ["BULKHEAD-3", "JAM-3", "SWIVEL-34"]
    reducing = part("WALL-34", flare("-3"), flare("-4"), panel("-4"), grams=999)
    stock = STOCK.plus(swivel, reducing)
    assert names(fit_hub(hub(), lines, stock)) == ["WALL-34", "JAM-4"]


def test_without_any_reducer_one_side_is_fitted_and_the_other_told():
    joint = fit_hub(hub(), (hose("-3"), hose("-4", line="other")), STOCK)
    assert names(joint) == ["BULKHEAD-3", "JAM-3"]  # lighter than -4
    (mismatch,) = joint.mismatches
    assert mismatch.kind is MismatchKind.DASH_SIZE
    assert mismatch.other.owner == "line other from"
    assert opened(joint) == [("line other from", 0), ("part 0", 1)]


def test_a_side_without_a_line_leaves_an_end_of_the_same_size_open():
    light = part("WALL-43", flare("-4"), flare("-3"), panel("-4"), grams=1)
    for lines in ((hose(), None), (None, hose()), (hose(),)):
        joint = fit_hub(hub(), lines, STOCK.plus(light))
        assert names(joint) == ["BULKHEAD-4", "JAM-4"]
        assert len(joint.open_ends) == 1
        assert joint.mismatches == ()
    assert reasons(joint)["WALL-43"] == "its open end is of another size than the line"


def test_a_hub_without_lines_asks_for_nothing():
    joint = fit_hub(hub(), (None, None), STOCK)
    assert (joint.parts, joint.mismatches, joint.open_ends) == ((), (), ())


def test_three_lines_meet_in_a_tee():
    lines = (hose(), tube(), hose(line="third"))
    joint = fit_hub(hub(panel=False, sides=("a", "b", "c")), lines, STOCK)
    assert names(joint) == ["TEE-4", "NUT-4", "SLEEVE-4"]
    assert (joint.mismatches, joint.open_ends, joint.leak_paths) == ((), (), 3)


def test_metals_of_body_jam_nut_and_tube_ends():
    asked = fit_hub(hub(material="steel"), (hose(), tube()), STOCK)
    assert names(asked) == ["BULKHEAD-4-S", "JAM-4-S", "NUT-4", "SLEEVE-4"]
    like = fit_hub(hub(), (hose(), tube(group="steel")), STOCK)
    assert names(like) == ["BULKHEAD-4-S", "JAM-4-S", "NUT-4-S", "SLEEVE-4-S"]
    both = fit_hub(hub(), (tube(line="one"), tube(group="steel")), STOCK)
    assert names(both) == ["SLEEVE-4", "NUT-4", "BULKHEAD-4", "JAM-4", "NUT-4-S", "SLEEVE-4-S"]


def test_a_bulkhead_thread_without_a_jam_nut_stays_open():
    joint = fit_hub(hub(), (hose(), hose(line="other")), STOCK.without("JAM-4", "JAM-4-S"))
    assert names(joint) == ["BULKHEAD-4"]
    assert opened(joint) == [("part 0", 2)]


def test_a_bulkhead_that_no_jam_nut_holds_is_not_taken_where_another_is():
    light = part("WALL-45", flare("-4"), flare("-4"), panel("-5"), grams=1)
    lines = (hose(), hose(line="other"))
    assert names(fit_hub(hub(), lines, STOCK.plus(light))) == ["BULKHEAD-4", "JAM-4"]


def test_a_jam_nut_is_of_the_bodys_metal_though_another_is_lighter():
    light = part("JAM-L", panel("-4", FEMALE), metal="steel", grams=1)
    assert names(fit_hub(hub(), (hose(), hose(line="other")), STOCK.plus(light))) == ["BULKHEAD-4", "JAM-4"]


def test_fewer_leak_paths_win_over_fewer_parts_at_a_hub():
    """The chain over a nut's inner thread has one joint less that holds fluid, and one part more."""
    dry = [shoulder(size, FEMALE) for size in ("-1", "-2")]
    stock = Stock(
        (
            part("WETBODY", flare("-4"), metric()),
            part("WET", metric(gender=FEMALE), pipe()),
            part("DRYBODY", flare("-4"), dry[0]),
            part("DRY1", dry[0].complement, dry[1]),
            part("DRY2", dry[1].complement, pipe()),
        )
    )
    line = LineEnd("other", "to", pipe(gender=FEMALE), "hose")
    joint = fit_hub(hub(panel=False), (hose(), line), stock)
    assert (names(joint), joint.leak_paths) == (["DRYBODY", "DRY1", "DRY2"], 2)


def test_a_turn_that_no_bulkhead_has_is_told():
    joint = fit_hub(hub(30), (hose(), tube()), STOCK)
    (mismatch,) = joint.mismatches
    assert (joint.parts, mismatch.kind) == ((), MismatchKind.TURN)
    assert mismatch.words == "nothing here is 30 degrees; there is straight, 90 degrees"


def test_an_elbow_on_an_elbow_is_refused_with_the_reason():
    swivel = part("SWIVEL-4", flare("-4", FEMALE), flare("-4"), turn=45)
    straight = fit_hub(hub(0), (hose(), hose(line="other", turn=45)), STOCK.plus(swivel))
    assert names(straight) == ["BULKHEAD-4", "JAM-4", "SWIVEL-4"]
    joint = fit_hub(hub(90), (hose(), hose(line="other", turn=45)), STOCK.plus(swivel))
    (mismatch,) = joint.mismatches
    assert mismatch.kind is MismatchKind.TURN
    assert mismatch.words == (
        "the body turns already, and two elbows in series do not settle where the line points"
    )


def test_a_metal_that_no_bulkhead_has_is_told():
    joint = fit_hub(hub(material="brass"), (hose(), tube()), STOCK)
    assert joint.mismatches[0].words == (
        "there is no such bulkhead fitting of the metal asked for, but of aluminium or steel"
    )


def test_lines_that_go_on_no_body_are_told_one_by_one():
    joint = fit_hub(hub(), (plastic(), plastic(line="other")), STOCK)
    assert joint.parts == ()
    assert [mismatch.other.owner for mismatch in joint.mismatches] == ["line plastic to", "line other to"]


def test_a_declared_fitting_is_placed_and_its_contradictions_told():
    joint = fit_hub(hub(fitting="BULKELL-4"), (hose(), tube()), STOCK)
    assert names(joint) == ["BULKELL-4", "JAM-4", "NUT-4", "SLEEVE-4"]
    assert [mismatch.words for mismatch in joint.mismatches] == [
        "BULKELL-4 is 90 degrees; straight is declared"
    ]
    plain = fit_hub(hub(fitting="UNION-4"), (hose(), tube()), STOCK)
    assert names(plain) == ["UNION-4", "NUT-4", "SLEEVE-4"]
    assert [mismatch.words for mismatch in plain.mismatches] == [
        "UNION-4 has no bulkhead thread: nothing holds it in a panel or bracket"
    ]
    unknown = fit_hub(hub(fitting="BULKHEDA-4"), (hose(), tube()), STOCK)
    assert "did you mean BULKHEAD-4" in unknown.mismatches[0].words
    plug = fit_hub(hub(fitting="PLUG-1"), (hose(), tube()), STOCK)
    assert plug.mismatches[0].words == "PLUG-1 has too few ends for 2 lines"


def test_fittings_declared_at_a_line_end_stand_between_body_and_line():
    joint = fit_hub(hub(), (hose(), tube(fittings=("NUT-4-S",))), STOCK)
    assert names(joint) == ["BULKHEAD-4", "JAM-4", "NUT-4-S", "SLEEVE-4"]
    assert joint.mismatches == ()


def test_every_body_that_takes_the_same_lines_is_refused_with_a_reason():
    joint = fit_hub(hub(90), (hose(), tube()), STOCK)
    assert reasons(joint) == {
        "BULKHEAD-4": "straight, and 90 degrees is declared",
        "BULKHEAD-4-S": "straight, and 90 degrees is declared",
        "BULKELL-4-S": "steel: another metal is taken only where nothing else joins",
        "UNION-4": "has no bulkhead thread: nothing holds it in a panel or bracket",
        "UNION-4-S": "has no bulkhead thread: nothing holds it in a panel or bracket",
        "TEE-4": "leaves an end open: it has a branch",
        "TEE-4-S": "leaves an end open: it has a branch",
    } | {name: reasons(joint)[name] for name in reasons(joint) if name.startswith("BULKELL-3")}


def test_two_hose_ends_are_both_female_and_the_union_is_named():
    joint = fit_meeting(hose(), hose(line="other"), STOCK)
    (mismatch,) = joint.mismatches
    assert joint.parts == ()
    assert (mismatch.kind, mismatch.needed) == (MismatchKind.BOTH_FEMALE, ("UNION-4",))
    assert "a union or nipple is missing between them" in mismatch.words
    assert joint.name == "where hose meets other"
    assert opened(joint) == [("line hose from", 0), ("line other from", 0)]


def test_two_tube_ends_need_a_union_and_each_its_own_nut_and_sleeve():
    joint = fit_meeting(tube(), tube(line="other", group="steel"), STOCK)
    (mismatch,) = joint.mismatches
    assert joint.parts == ()
    assert mismatch.kind is MismatchKind.BOTH_FEMALE
    assert mismatch.needed == ("UNION-4", "SLEEVE-4", "NUT-4", "NUT-4-S", "SLEEVE-4-S")


def test_ends_of_two_sizes_need_the_reducer():
    joint = fit_meeting(hose("-3"), hose(line="other"), STOCK)
    assert joint.mismatches[0].kind is MismatchKind.DASH_SIZE
    assert joint.mismatches[0].needed == ("REDUCER-43",)
    through_pipe = fit_meeting(hose("-3"), hose(line="other"), STOCK.without("REDUCER-43", "REDUCER-43-S"))
    assert through_pipe.mismatches[0].needed == ("STRAIGHT-3", "COUPLING-1", "STRAIGHT-4")
    pair = Stock(tuple(one for one in STOCK.parts if one.family == "UNION"))
    assert fit_meeting(hose("-3"), hose(line="other"), pair).mismatches[0].needed == ()


def test_ends_that_mate_are_joined_and_a_tube_brings_its_nut_and_sleeve():
    male = LineEnd("male", "to", flare("-4"), "hose")
    assert fit_meeting(male, hose(), STOCK).leak_paths == 1
    steel = tube(group="steel")
    for one, other in ((male, steel), (steel, male)):
        joint = fit_meeting(one, other, STOCK)
        assert names(joint) == ["NUT-4-S", "SLEEVE-4-S"]
        assert (joint.mismatches, joint.open_ends) == ((), ())


def test_a_union_declared_at_either_end_is_placed():
    for one, other in (
        (tube(fittings=("UNION-4",)), hose()),
        (tube(), hose(fittings=("UNION-4",))),
    ):
        joint = fit_meeting(one, other, STOCK)
        assert names(joint) == ["SLEEVE-4", "NUT-4", "UNION-4"]
        assert (joint.mismatches, joint.open_ends) == ((), ())
