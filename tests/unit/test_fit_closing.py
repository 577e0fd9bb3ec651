"""The closing law and what follows from it, on sound assemblies and on ones tampered with."""

from __future__ import annotations

from dataclasses import replace
from math import radians

import pytest
from invented_parts import FEMALE, PIPE_PORT, STOCK, flare, hose, tube

from firmpedal.fit.closing import key_of, violations
from firmpedal.fit.counts import FlaredCount, flared_count
from firmpedal.fit.hub import fit_hub
from firmpedal.fit.joint import EndRef, Hub, Mating, Port
from firmpedal.fit.mating import line_end, port_end
from firmpedal.fit.search import fit_port

CAPPED = Port("components.valve.ports.spare", "valve.spare", flare("-4"), closed=True)


def assembly():
    """A cylinder, a tube to a bulkhead elbow, a hose from it to a caliper, and a capped port."""
    run = tube(line="run")
    run_end = replace(run, end="from")
    gear = hose(line="gear")
    caliper = Port("components.caliper.ports.inlet", "caliper.inlet", PIPE_PORT.interface)
    hub = Hub("bulkheads.floor", "floor", radians(90), through_panel=True, sides=("above", "below"))
    joints = (
        fit_port(PIPE_PORT, run_end, STOCK),
        fit_hub(hub, (run, gear), STOCK),
        fit_port(caliper, replace(gear, end="to", leaves=radians(45)), STOCK),
        fit_port(CAPPED, None, STOCK),
    )
    outer = [
        *map(port_end, (PIPE_PORT, caliper, CAPPED)),
        *map(line_end, (run_end, run, gear, replace(gear, end="to"))),
    ]
    return joints, outer


JOINTS, OUTER = assembly()
HUB = JOINTS[1]


def tampered(joint):
    """Put a changed hub joint into the assembly and give what breaks the law."""
    return violations((JOINTS[0], joint, *JOINTS[2:]), OUTER)


def broken(found):
    return {(wrong.end.owner, wrong.end.index): wrong.words for wrong in found}


def test_a_whole_assembly_closes():
    assert [part.designation for part in HUB.parts] == ["SLEEVE-4", "NUT-4", "BULKELL-4", "JAM-4"]
    assert violations(JOINTS, OUTER) == ()


def test_the_counts_of_a_whole_assembly_agree():
    """Counted by hand from the parts above.

    Male ends: 1 on the straight, 2 on the elbow, 1 on the caliper's, 1 on the capped port.
    """
    count = flared_count(JOINTS, OUTER)
    assert count == FlaredCount(
        male_flare_ends=5,
        hose_swivels=2,
        coupling_nuts=2,
        caps=1,
        other_female_flare_ends=0,
        sleeves=2,
        flared_tube_ends=2,
        jam_nuts=1,
        bulkhead_ends=1,
    )
    assert count.disagreements == ()


@pytest.mark.parametrize("dropped", range(len(HUB.matings)))
def test_a_mating_that_is_taken_apart_leaves_two_ends_with_nothing_on_them(dropped):
    mating = HUB.matings[dropped]
    kept = tuple(one for one in HUB.matings if one is not mating)
    assert broken(tampered(replace(HUB, matings=kept))) == {
        (end.owner, end.index): "has nothing on it" for end in (mating.one, mating.other)
    }


@pytest.mark.parametrize("doubled", range(len(HUB.matings)))
def test_a_mating_that_is_made_twice_is_found_at_both_ends(doubled):
    mating = HUB.matings[doubled]
    found = tampered(replace(HUB, matings=(*HUB.matings, mating)))
    assert broken(found) == {
        (end.owner, end.index): "has 2 things on it" for end in (mating.one, mating.other)
    }


def test_a_dropped_nut_is_found():
    """Without its jam nut the elbow's thread is bare, and the mating names a part that is not there."""
    found = tampered(replace(HUB, parts=HUB.parts[:-1]))
    assert broken(found) == {("part 3", 0): "part 3 has no such end"}
    bare = replace(
        HUB, parts=HUB.parts[:-1], matings=tuple(m for m in HUB.matings if "part 3" not in _owners(m))
    )
    assert broken(tampered(bare)) == {("part 2", 2): "has nothing on it"}
    assert flared_count((bare,), ()).disagreements[-1] == "0 jam nuts, but 1 bulkhead ends"


def _owners(mating):
    return {mating.one.owner, mating.other.owner}


def test_ends_of_different_sizes_or_the_same_gender_put_together_are_found():
    small = EndRef("line gear from", 0, flare("-3", FEMALE))
    swapped = tuple(replace(m, other=small) if m.other.owner == "line gear from" else m for m in HUB.matings)
    outer = [small if end.owner == "line gear from" else end for end in OUTER]
    words = [
        wrong.words for wrong in violations((JOINTS[0], replace(HUB, matings=swapped), *JOINTS[2:]), outer)
    ]
    assert words == ["male 37-degree flare -4 is put together with female 37-degree flare -3"]
    port, other = (EndRef(f"port {name}", 0, PIPE_PORT.interface) for name in ("a", "b"))
    two_ports = replace(JOINTS[3], parts=(), matings=(Mating(port, other),))
    assert len(violations((two_ports,), [port, other])) == 1


def test_an_interface_that_the_part_does_not_have_is_found():
    wrong = replace(HUB.parts[2], ends=(*HUB.parts[2].ends[:2], HUB.parts[3].ends[0]))
    found = tampered(replace(HUB, parts=(*HUB.parts[:2], wrong, HUB.parts[3])))
    assert ("part 2", 2) in broken(found)


def test_a_line_end_used_in_two_joints_is_found():
    again = fit_port(Port("p", "p", PIPE_PORT.interface), hose(line="gear"), STOCK)
    found = violations((*JOINTS, again), [*OUTER, port_end(Port("p", "p", PIPE_PORT.interface))])
    assert broken(found) == {("line gear from", 0): "has 2 things on it"}


def test_a_port_and_a_line_that_no_joint_knows_are_found():
    stray = [EndRef("port stray", 0, PIPE_PORT.interface), line_end(hose(line="stray"))]
    assert broken(violations(JOINTS, [*OUTER, *stray])) == {
        ("port stray", 0): "has nothing on it",
        ("line stray from", 0): "has nothing on it",
    }
    assert violations(JOINTS, [*OUTER, *stray], {("", end) for end in stray}) == ()


def test_an_end_is_named_open_or_has_something_on_it_but_not_both():
    hub = Hub("bulkheads.spare", "spare", 0.0, through_panel=True, sides=("one", "other"))
    half = fit_hub(hub, (hose(line="lone"), None), STOCK)
    outer = [line_end(hose(line="lone"))]
    (open_end,) = half.open_ends
    assert broken(violations((half,), outer)) == {(open_end.owner, open_end.index): "has nothing on it"}
    named = {key_of(half, open_end)}
    assert violations((half,), outer, named) == ()
    assert flared_count((half,), outer, named).disagreements == ()
    assert flared_count((half,), outer).disagreements == ("2 male flare ends, but 1 swivels, nuts and caps",)
    joined = half.matings[0].one
    found = violations((half,), outer, named | {key_of(half, joined)})
    assert broken(found) == {(joined.owner, joined.index): "is named open, but something is put on it"}


def test_counts_that_disagree_are_told():
    sleeve_lost = replace(JOINTS[0], parts=JOINTS[0].parts[:-1])
    assert flared_count((sleeve_lost, *JOINTS[1:]), OUTER).disagreements == (
        "2 coupling nuts, but 1 sleeves",
        "1 sleeves, but 2 flared tube ends",
    )


def test_what_the_search_leaves_open_is_what_breaks_the_law():
    joint = fit_port(PIPE_PORT, hose("-3", fittings=("STRAIGHT-4",)), STOCK)
    found = violations((joint,), [port_end(PIPE_PORT), line_end(hose("-3"))])
    assert {wrong.end for wrong in found} == set(joint.open_ends) != set()
