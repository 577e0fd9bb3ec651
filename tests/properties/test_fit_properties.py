"""The fitting search against every sequence written down, other names, other orders, and a graph library."""

from __future__ import annotations

import random
import re
from dataclasses import dataclass, replace
from itertools import pairwise
from math import radians

import networkx as nx
import pytest
from fit_enumeration import (
    BOUND,
    SEALED,
    allowed,
    cheapest_chains,
    cheapest_hub,
    flow,
    through_a_panel,
    turn_of,
)
from hypothesis import HealthCheck, assume, event, given, settings
from hypothesis import strategies as st

from firmpedal.catalog import catalogue
from firmpedal.fit.closing import violations
from firmpedal.fit.hub import fit_hub, fit_meeting
from firmpedal.fit.joint import EndRef, Hub, LineEnd, Mating, Port
from firmpedal.fit.mating import line_end, port_end
from firmpedal.fit.search import fit_port
from firmpedal.fit.ways import MOST_PARTS
from firmpedal.model.part import DRY, Category, Clocking, End, Form, Gender, Interface, Part
from firmpedal.quantity import Mark, exactly, unknown
from firmpedal.units import Dimension

MALE, FEMALE = Gender.MALE, Gender.FEMALE
REAL = catalogue()


@dataclass(frozen=True, eq=False)
class Stock:
    parts: tuple[Part, ...]


SHOWN = [
    Interface(form, size, gender)
    for form, sizes in (
        (Form.PIPE, ("1/8-27", "1/4-18")),
        (Form.FLARE_37, ("-3", "-4")),
        (Form.METRIC, ("M10x1",)),
        (Form.BOSS, ("-4",)),
        (Form.NUT_SHOULDER, ("-4",)),
    )
    for size in sizes
    for gender in Gender
]
TUBE_END = Interface(Form.TUBE_FLARE_37, "-4", MALE)
PANELS = [Interface(Form.PANEL, size, MALE) for size in ("-4", "-5")]

interfaces = st.sampled_from([*SHOWN, TUBE_END.complement])
UNSEALED = st.sampled_from(
    [Interface(Form.NUT_SHOULDER, size, one) for size in ("-3", "-4") for one in Gender]
)
"""What holds no fluid, so that a longer chain can have fewer leak paths."""

SEATS = [Interface(Form.WASHER_FACE, "M10", MALE), Interface(Form.O_RING, "-4", MALE), PANELS[0]]
seats = st.lists(st.sampled_from(SEATS), max_size=2)
"""Dry ends that a part may have besides: each asks for a washer, an O-ring or a jam nut."""

grams = st.sampled_from([None, 1, 2, 2, 3, 3, 4])


@st.composite
def parts(draw, metals, ends, number, *, row=Category.FITTING, turn=None):
    """A part with given ends; its metal, mass and turn are drawn, most of them usual ones."""
    flowing = sum(end.flow for end in ends)
    turn = draw(st.sampled_from([0] * 6 + [45, 90])) if turn is None else turn
    weight = draw(grams)
    return Part(
        designation=f"P{number:02d}",
        family=f"F{draw(st.integers(0, 3))}",
        name="",
        category=row,
        size="",
        material=draw(st.sampled_from(metals)),
        ends=tuple(ends),
        turn=radians(turn) if flowing == 2 else None,
        brake_pressure=draw(st.sampled_from([True] * 9 + [False])),
        mass=unknown("mass", Dimension.MASS, "")
        if weight is None
        else exactly("mass", Dimension.MASS, weight / 1000, Mark.ESTIMATE),
        dimensions=(),
        also_known_as=(),
        source="invented",
        mark=Mark.ESTIMATE,
    )


def flows(interface):
    return End(interface, flow=interface.form not in DRY, clocking=Clocking.FREE)


METALS = st.sampled_from(
    [("aluminium",), ("aluminium",), ("aluminium", "steel"), ("aluminium", "aluminium", "steel", "brass")]
)
"""What a whole stock is made of; where all is of one metal, leak paths and parts decide."""

THROUGH = st.sampled_from([Category.FITTING] * 4 + [Category.COUPLING_NUT, Category.SLEEVE])


@st.composite
def routes(draw, metals, start, goal, first, longest=4):
    """Parts that lead from an exposed interface to a goal, over interfaces drawn at random."""
    drawn = draw(st.sampled_from([interfaces, interfaces, UNSEALED]))
    between = [draw(drawn) for _ in range(draw(st.integers(0, longest - 1)))]
    shows = [start, *between, goal.complement]
    steps = enumerate(pairwise(shows), first)
    dry = draw(st.sampled_from([st.just([])] * 2 + [seats]))
    mixed = [
        (
            number,
            draw(st.permutations([flows(end) for end in (one.complement, two, *draw(dry))])),
        )
        for number, (one, two) in steps
    ]
    return [draw(parts(metals, ends, number, row=draw(THROUGH))) for number, ends in mixed]


@st.composite
def strays(draw, metals, first):
    """Parts that lead nowhere in particular: through, closing, branching, for a panel, jam nuts."""
    made = []
    for number in range(first, first + draw(st.integers(0, 4))):
        kind = draw(st.sampled_from(["through", "plug", "tee", "bulkhead", "jam nut"]))
        count = {"through": 2, "plug": 1, "tee": 3, "bulkhead": 2, "jam nut": 0}[kind]
        ends = [flows(draw(interfaces)) for _ in range(count)]
        thread = draw(st.sampled_from(PANELS))
        ends += [flows(thread)] * (kind == "bulkhead") + [flows(thread.complement)] * (kind == "jam nut")
        row = {"plug": Category.CAP, "jam nut": Category.JAM_NUT}.get(kind, Category.FITTING)
        made.append(draw(parts(metals, ends, number, row=row)))
    return made + draw(that_go_on(metals, first + len(made)))


@st.composite
def that_go_on(draw, metals, first):
    """Washers, O-rings and jam nuts for the dry ends, of any metal: some, all or none of them."""
    wanted = draw(st.sampled_from([SEATS, SEATS, SEATS * 2, SEATS[:1], []]))
    rows = {Form.PANEL: Category.JAM_NUT}
    return [
        draw(
            parts(
                (*metals, "copper"),
                [flows(seat.complement)],
                number,
                row=rows.get(seat.form, Category.WASHER),
            )
        )
        for number, seat in enumerate(wanted, first)
    ]


angles = st.sampled_from([None, 0, 22.5, 45, 60, 67.5, 90, 135])


@st.composite
def line_ends(draw, name="line", *, aimed=True):
    interface = draw(st.sampled_from([*SHOWN, TUBE_END, TUBE_END]))
    leaves, turn = (draw(angles), draw(st.sampled_from([None] * 4 + [0, 45, 90]))) if aimed else (None, None)
    return LineEnd(
        name,
        "from",
        interface,
        draw(st.sampled_from(["hose", "hose", "plastic", "aluminium", "steel"])),
        None if leaves is None else radians(leaves),
        None if turn is None else radians(turn),
        (),
        draw(st.sampled_from([""] * 5 + ["aluminium", "steel"])),
    )


@st.composite
def at_ports(draw):
    """A stock, a port and a line end, with some routes between them in the stock."""
    port, line = Port("p", "port", draw(st.sampled_from(SHOWN))), draw(line_ends())
    made, metals = [], draw(METALS)
    for _ in range(draw(st.integers(0, 3))):
        made += draw(routes(metals, port.interface, line.interface, len(made)))
    made += draw(strays(metals, len(made)))
    return Stock(tuple(draw(st.permutations(made)))), port, line


@st.composite
def at_hubs(draw, *, aimed=False):
    """A stock, a hub and two line ends, with some bodies and routes from them in the stock."""
    lines = draw(line_ends("one", aimed=aimed)), draw(line_ends("two", aimed=aimed))
    turn, panel = draw(st.sampled_from([0, 0, 45, 90])), draw(st.booleans())
    hub = Hub("h", "hub", radians(turn), panel, ("a", "b"), draw(st.sampled_from([""] * 5 + ["steel"])))
    made, metals = [], draw(METALS)
    for _ in range(draw(st.sampled_from([0, 1, 2, 3, 4, 4]))):
        direct = [line.interface.complement for line in lines]
        shown = [draw(st.sampled_from([one, one, draw(interfaces), draw(UNSEALED)])) for one in direct]
        thread = draw(st.sampled_from(PANELS))
        dry = draw(st.sampled_from([[], [], SEATS[:1]]))
        ends = [flows(one) for one in (*draw(st.permutations(shown)), *[thread] * panel, *dry)]
        made.append(draw(parts(metals, ends, len(made), turn=draw(st.sampled_from([turn, turn, turn, 0])))))
        for one, line in zip(shown, lines, strict=True):
            if one != line.interface.complement:
                made += draw(routes(metals, one, line.interface, len(made), longest=3))
    for _ in range(draw(st.integers(0, 4))):
        thread = flows(draw(st.sampled_from(PANELS)).complement)
        made.append(draw(parts(metals, [thread], len(made), row=Category.JAM_NUT)))
    made += draw(strays(metals, len(made)))
    return Stock(tuple(draw(st.permutations(made)))), hub, lines


def bare(part):
    """Give what a part is, without its names."""
    return replace(part, designation="", family="", name="", also_known_as=())


many = settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@many
@given(at_ports())
def test_a_port_costs_what_the_cheapest_of_all_sequences_costs(asked):
    stock, port, line = asked
    least, chains = cheapest_chains(stock.parts, port.interface, line)
    joint = fit_port(port, line, stock)
    event("no chain" if least is None else f"{least[2]} parts")
    if least is None:
        assert joint.parts == ()
        assert joint.mismatches
        return
    assert joint.mismatches == ()
    assert list(joint.parts) in chains
    assert (joint.leak_paths, len(joint.parts)) == least[1:3]


def test_the_bound_of_both_ways_is_the_same():
    assert BOUND == MOST_PARTS


@many
@given(at_hubs())
def test_a_hub_costs_what_the_cheapest_body_with_the_cheapest_chains_costs(asked):
    stock, hub, lines = asked
    least = cheapest_hub(stock.parts, hub, lines)
    joint = fit_hub(hub, lines, stock)
    event("no body" if least is None else f"{least[0]} lines not joined, {least[1]} threads bare")
    if least is None or least[0] == len(lines):
        assert joint.parts == ()
        assert joint.mismatches
        return
    masses = [part.mass.middle for part in joint.parts if part.mass.known]
    open_lines = sum(end.owner.startswith("line ") for end in joint.open_ends)
    bare = [end.interface for end in joint.open_ends if end.interface.form in DRY]
    leaks = joint.leak_paths + sum(interface.seals for interface in bare)  # a bare face leaks, unmated
    found = (open_lines, len(bare), leaks, len(joint.parts), len(joint.parts) - len(masses))
    assert found == (*least[:2], *least[3:6])
    assert sum(masses) == pytest.approx(float(least[6]))


@many
@given(at_ports())
def test_a_graph_library_finds_the_same_leak_paths_and_parts(asked):
    """networkx's shortest path over interfaces and turns, a leak path weighing more than all parts."""
    stock, port, line = asked
    line = replace(line, material="", group="hose", turn=None)
    stock = Stock(tuple(_without_dry_ends(part) for part in stock.parts if flow(part)))
    graph = nx.DiGraph()
    goal = (line.interface.complement, "end")
    for turned in (False, True):
        graph.add_edge((line.interface.complement, turned), goal, weight=_weight(line.interface))
    graph.add_node((port.interface, False))
    for part in stock.parts:
        if len(part.ends) == len(flow(part)) == 2 and allowed(part, line):
            for enter, leave in (part.ends, part.ends[::-1]):
                for before, after in ((False, turn_of(part) != 0), (True, True))[: 2 - (turn_of(part) != 0)]:
                    before_part = (enter.interface.complement, before)
                    weight = _weight(enter.interface) + 1
                    graph.add_edge(before_part, (leave.interface, after), weight=weight)
    try:
        found = divmod(nx.dijkstra_path_length(graph, (port.interface, False), goal), 1000)
    except nx.NetworkXNoPath:
        found = None
    joint = fit_port(port, line, stock)
    if found is None:
        assert joint.parts == () != joint.mismatches
    else:
        assume(found[1] <= MOST_PARTS)
        assert (joint.leak_paths, len(joint.parts)) == found


def _without_dry_ends(part):
    """Give a part in aluminium without dry ends, which a path through a graph knows nothing of."""
    kept = tuple(end for end in part.ends if end.flow) if not through_a_panel(part) else part.ends
    return replace(part, material="aluminium", ends=kept)


def _weight(interface):
    return 1000 if interface.form in SEALED else 0


@many
@given(at_ports(), st.randoms(use_true_random=False))
def test_names_and_order_decide_nothing(asked, chance):
    stock, port, line = asked
    renamed, _ = _renamed(stock, chance)
    first, second = fit_port(port, line, stock), fit_port(port, line, renamed)
    assert [bare(part) for part in first.parts] == [bare(part) for part in second.parts]
    assert (first.matings, first.open_ends) == (second.matings, second.open_ends)
    assert [wrong.kind for wrong in first.mismatches] == [wrong.kind for wrong in second.mismatches]


@many
@given(at_hubs(aimed=True), st.booleans(), st.randoms(use_true_random=False))
def test_names_and_order_decide_nothing_at_a_hub(asked, both, chance):
    stock, hub, (one, two) = asked
    two = two if both else None
    renamed, _ = _renamed(stock, chance)
    first, second = fit_hub(hub, (one, two), stock), fit_hub(hub, (one, two), renamed)
    assert [bare(part) for part in first.parts] == [bare(part) for part in second.parts]
    assert (first.matings, first.open_ends) == (second.matings, second.open_ends)


def _renamed(stock, chance):
    """Give the stock under other names and in another order, and the old name of each new one."""
    old = [part.designation for part in stock.parts]
    new = [f"Q{number:04d}Q" for number in range(len(old))]
    chance.shuffle(new)
    families = {part.family: f"G{chance.random()}" for part in stock.parts}
    mixed = [
        replace(part, designation=name, family=families[part.family], also_known_as=())
        for part, name in zip(stock.parts, new, strict=True)
    ]
    chance.shuffle(mixed)
    return Stock(tuple(mixed)), dict(zip(new, old, strict=True))


REAL_LINES = [
    LineEnd("hose", "from", Interface(Form.FLARE_37, "-4", FEMALE), "hose", radians(45)),
    LineEnd("hose", "from", Interface(Form.FLARE_37, "-3", FEMALE), "hose", turn=radians(90)),
    LineEnd("tube", "to", Interface(Form.TUBE_FLARE_37, "-4", MALE), "aluminium"),
    LineEnd("steel", "to", Interface(Form.TUBE_FLARE_37, "-3", MALE), "steel", radians(80)),
    LineEnd("plastic", "to", Interface(Form.PLAIN_TUBE, "1/4 in", MALE), "plastic", radians(10)),
    LineEnd("metric", "to", Interface(Form.TUBE_FLARE_37, "6 mm", MALE), "aluminium"),
]
REAL_PORTS = [
    Interface(Form.PIPE, "1/8-27", FEMALE),
    Interface(Form.PIPE, "1/4-18", FEMALE),
    Interface(Form.METRIC, "M10x1", FEMALE),
    Interface(Form.FLARE_37, "-4", MALE),
    Interface(Form.BOSS, "-4", FEMALE),
]


@pytest.mark.parametrize("seed", range(4))
def test_the_real_catalogue_under_other_names_gives_the_same_answers_renamed(seed):
    """Everything a joint says, its refusals in their order included, is the same but for the names."""
    real = Stock(REAL.parts)
    renamed, old = _renamed(real, random.Random(seed))
    for interface in REAL_PORTS:
        for line in REAL_LINES:
            port = Port("p", "port", interface)
            assert _said(fit_port(port, line, renamed), old) == _said(fit_port(port, line, real), {})
    for one in REAL_LINES:
        for two in REAL_LINES:
            hub = Hub("h", "hub", radians(90), through_panel=True, sides=("a", "b"))
            lines = (replace(one, turn=None), replace(two, line="other", turn=None))
            assert _said(fit_hub(hub, lines, renamed), old) == _said(fit_hub(hub, lines, real), {})
            assert _said(fit_meeting(*lines, renamed), old) == _said(fit_meeting(*lines, real), {})


def _said(joint, old):
    """Give all that a joint says, new names put back into old ones."""

    def back(text):
        return re.sub(r"Q\d{4}Q", lambda found: old[found[0]], text)

    return (
        [back(part.designation) for part in joint.parts],
        joint.matings,
        joint.open_ends,
        [(tuple(map(back, told.designations)), back(told.reason)) for told in joint.refused],
        [(wrong.kind, back(wrong.words), tuple(map(back, wrong.needed))) for wrong in joint.mismatches],
    )


@many
@given(at_ports(), at_hubs(aimed=True), st.booleans())
def test_what_is_joined_closes_and_what_is_left_open_is_named(at_port, at_hub, closed):
    stock, port, line = at_port
    shop, hub, (one, two) = at_hub
    joints = [
        (fit_port(port, line, stock), [port_end(port), line_end(line)]),
        (fit_port(replace(port, closed=closed), None, stock), [port_end(port)]),
        (fit_hub(hub, (one, two), shop), [line_end(one), line_end(two)]),
        (fit_hub(hub, (None, two), shop), [line_end(two)]),
        (fit_meeting(one, two, shop), [line_end(one), line_end(two)]),
    ]
    for joint, outer in joints:
        assert {wrong.end for wrong in violations((joint,), outer)} == set(joint.open_ends)
        if joint.mismatches:
            assert joint.open_ends
        event(f"{joint.name}: {len(joint.matings)} matings")


@many
@given(at_ports(), st.lists(st.integers(0, 14), max_size=5))
def test_declared_fittings_stand_in_their_order_whatever_they_are(asked, numbers):
    stock, port, line = asked
    declared = tuple(f"P{number:02d}" for number in numbers)
    assume(declared)
    known = {part.designation for part in stock.parts}
    joint = fit_port(port, replace(line, turn=None, fittings=declared), stock)
    placed = [part.designation for part in joint.parts]
    wanted = [name for name in declared if name in known]
    assert placed[: len(wanted)] == wanted
    added = joint.parts[len(wanted) :]
    assert all(part.category in (Category.COUPLING_NUT, Category.SLEEVE) or not flow(part) for part in added)
    outer = [port_end(port), line_end(line)]
    assert {wrong.end for wrong in violations((joint,), outer)} == set(joint.open_ends)


@many
@given(st.sampled_from(REAL_PORTS), st.sampled_from(REAL_LINES), st.data())
def test_an_assembly_tampered_with_breaks_the_law(interface, line, data):
    port = Port("p", "port", interface)
    joint = fit_port(port, line, REAL)
    assume(joint.matings)
    outer = [port_end(port), line_end(line)]
    assert violations((joint,), outer) == ()
    wrong = data.draw(st.sampled_from(TAMPERINGS))(joint, data)
    assume(wrong is not None)
    assert violations((wrong,), outer) != ()


def _drop_a_mating(joint, data):
    number = data.draw(st.integers(0, len(joint.matings) - 1))
    return replace(joint, matings=joint.matings[:number] + joint.matings[number + 1 :])


def _mate_an_end_twice(joint, data):
    one, other = (data.draw(st.sampled_from(joint.matings)) for _ in range(2))
    return replace(joint, matings=(*joint.matings, Mating(one.one, other.other)))


def _drop_a_part(joint, data):
    if not joint.parts:
        return None
    number = data.draw(st.integers(0, len(joint.parts) - 1))
    return replace(joint, parts=joint.parts[:number] + joint.parts[number + 1 :])


def _swap_a_part(joint, data):
    """Put another part in a part's place, with other ends."""
    if not joint.parts:
        return None
    number = data.draw(st.integers(0, len(joint.parts) - 1))
    other = data.draw(st.sampled_from(REAL.parts))
    if {end.interface for end in other.ends} == {end.interface for end in joint.parts[number].ends}:
        return None
    return replace(joint, parts=(*joint.parts[:number], other, *joint.parts[number + 1 :]))


def _change_one_half(joint, data):
    """Let a mating claim another interface for one of its halves."""
    number = data.draw(st.integers(0, len(joint.matings) - 1))
    mating = joint.matings[number]
    other = data.draw(st.sampled_from(SHOWN))
    if other == mating.one.interface:
        return None
    changed = Mating(EndRef(mating.one.owner, mating.one.index, other), mating.other)
    return replace(joint, matings=(*joint.matings[:number], changed, *joint.matings[number + 1 :]))


def _make_an_end_otherwise(joint, data):
    """Give a part another interface at one end, and let the matings say so too: only the halves differ."""
    if not joint.parts:
        return None
    number = data.draw(st.integers(0, len(joint.parts) - 1))
    part = joint.parts[number]
    index = data.draw(st.integers(0, len(part.ends) - 1))
    old = EndRef(f"part {number}", index, part.ends[index].interface)
    new = replace(old, interface=data.draw(st.sampled_from([one for one in SHOWN if one != old.interface])))
    ends = [replace(end, interface=new.interface) if n == index else end for n, end in enumerate(part.ends)]
    return replace(
        joint,
        parts=(*joint.parts[:number], replace(part, ends=tuple(ends)), *joint.parts[number + 1 :]),
        matings=tuple(
            Mating(*(new if end == old else end for end in (mating.one, mating.other)))
            for mating in joint.matings
        ),
    )


def _add_a_part(joint, data):
    with_ends = [part for part in REAL.parts if part.ends]  # what lies loose mates with nothing anyway
    return replace(joint, parts=(*joint.parts, data.draw(st.sampled_from(with_ends))))


TAMPERINGS = [
    _drop_a_mating,
    _mate_an_end_twice,
    _drop_a_part,
    _swap_a_part,
    _change_one_half,
    _make_an_end_otherwise,
    _add_a_part,
]
