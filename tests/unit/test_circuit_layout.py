"""Where things stand in the diagram: rows along the fluid, sides in columns, lines that cross no symbol."""

from __future__ import annotations

from itertools import combinations, pairwise, permutations

import networkx as nx
import numpy as np
import pytest
from drawn_circuits import CASES, evaluated
from scipy.optimize import isotonic_regression

from firmpedal.report.placing import Box
from firmpedal.report.schematic.channels import tracked
from firmpedal.report.schematic.columns import _apart
from firmpedal.report.schematic.figures import box_at
from firmpedal.report.schematic.layers import rows_of
from firmpedal.report.schematic.nodes import Kind, scheme_of
from firmpedal.report.schematic.picture import _Drawing


def laid(case):
    """The diagram of a case, with its plan in the first of its sizes."""
    work = _Drawing(evaluated(*case), scheme_of(evaluated(*case)))
    return work, work._plan([60.0] * len(work.scheme.nodes), set(), 40.0, 490.0)


def place_of(case, name):
    work, plan = laid(case)
    number = next(n for n, node in enumerate(work.scheme.nodes) if node.name == name)
    return plan.spots[number]


@pytest.mark.parametrize("case", CASES, ids=str)
def test_rows_are_the_longest_way_from_the_top(case):
    # second opinion: networkx on the same lines; what nothing feeds may stand lower than the top
    scheme = scheme_of(evaluated(*case))
    rows = rows_of(scheme)
    graph = nx.DiGraph([(span.path[0], span.path[-1]) for span in rows.spans])
    graph.add_nodes_from(range(len(scheme.nodes)))
    assert nx.is_directed_acyclic_graph(graph)
    for number in graph:
        before = nx.ancestors(graph, number) | {number}
        if before != {number}:
            assert rows.items[number].layer == nx.dag_longest_path_length(graph.subgraph(before))


@pytest.mark.parametrize("case", CASES, ids=str)
def test_lines_run_level_or_upright_and_through_no_symbol_of_another(case):
    work, plan = laid(case)
    for number, points in plan.routes.items():
        edge = work.scheme.edges[number]
        own = {edge.upper[0], edge.lower[0]}
        for one, other in pairwise(points):
            assert one[0] == other[0] or one[1] == other[1]
            for n, spot in enumerate(plan.spots):
                if n not in own:
                    assert not box_at(work.drawn[n], spot).cuts((one, other))


@pytest.mark.parametrize("case", CASES, ids=str)
def test_no_two_lines_lie_on_each_other(case):
    _, plan = laid(case)
    pieces = [(n, piece) for n, points in plan.routes.items() for piece in pairwise(points)]
    for (n, one), (m, other) in combinations(pieces, 2):
        if n != m:
            assert not along(one, other), (n, one, m, other)


def along(one, other) -> bool:
    """Whether two pieces share more than a point."""
    for axis in (0, 1):
        level = {point[axis] for point in (*one, *other)}
        if len(level) == 1:
            low = max(min(p[1 - axis] for p in piece) for piece in (one, other))
            high = min(max(p[1 - axis] for p in piece) for piece in (one, other))
            return high - low > 0.01
    return False


@pytest.mark.parametrize("case", CASES, ids=str)
def test_symbols_stand_clear_of_each_other(case):
    work, plan = laid(case)
    boxes = [box_at(each, spot) for each, spot in zip(work.drawn, plan.spots, strict=True)]
    assert not [pair for pair in combinations(boxes, 2) if pair[0].meets(pair[1])]


def crossings(case) -> int:
    _, plan = laid(case)
    pieces = [(n, piece) for n, points in plan.routes.items() for piece in pairwise(points)]
    return sum(n != m and crosses(one, other) for (n, one), (m, other) in combinations(pieces, 2))


def crosses(one, other) -> bool:
    if (one[0][0] == one[1][0]) == (other[0][0] == other[1][0]):
        return False
    upright, level = (one, other) if one[0][0] == one[1][0] else (other, one)
    low, high = sorted(y for _, y in upright)
    left, right = sorted(x for x, _ in level)
    return left < upright[0][0] < right and low < level[0][1] < high


@pytest.mark.parametrize(
    ("case", "count"),
    [
        (("brindlewick", "rigid"), 0),
        (("oatmere", None), 0),
        (("oatmere", "single brakes"), 0),
        (("oatmere", "first sketch"), 1),  # left to right and right to left: one crossing is the least
        (("four", None), 0),
        (("tee", None), 0),
    ],
)
def test_lines_cross_no_more_than_they_must(case, count):
    assert crossings(case) == count


def test_fluid_runs_down_the_page_from_the_reservoir_to_the_wheel():
    names = (
        "reservoir",
        "left_firewall",
        "copilot_left",
        "pilot_left",
        "valve",
        "left_belly",
        "left_caliper",
    )
    heights = [place_of(("oatmere", None), name)[1] for name in names]
    assert heights == sorted(heights, reverse=True)
    assert len(set(heights)) == len(heights)


def test_left_is_left_by_what_is_declared_and_both_sides_are_columns():
    case = ("oatmere", "first sketch")
    lefts, rights = (
        {place_of(case, f"{name.format(side)}")[0] for name in ("{}_firewall", "pilot_{}", "{}_caliper")}
        for side in ("left", "right")
    )
    assert len(lefts) == len(rights) == 1
    assert lefts.pop() < place_of(case, "valve")[0] < rights.pop()


def test_where_no_side_is_declared_the_place_decides():
    assert place_of(("tarnholt", None), "port_clamp")[0] < place_of(("tarnholt", None), "star_clamp")[0]


def test_one_chain_is_one_straight_column():
    _, plan = laid(("withyford", None))
    assert len({x for x, _ in plan.spots}) == 1
    assert all(len(points) == 2 for points in plan.routes.values())


def test_a_cylinder_that_is_joined_upside_down_is_drawn_so():
    # its outlet is below it and its inlet above, whatever comes to them
    work, plan = laid(("upside_down", None))
    number = next(n for n, node in enumerate(work.scheme.nodes) if node.name == "second_right")
    node, drawn = work.scheme.nodes[number], work.drawn[number]
    ends = {each.line: drawn.at[n][1] for n, each in enumerate(node.terminals)}
    assert ends["feed_second_right"] < 0 < ends["out_second_right"]
    route = plan.routes[next(n for n, e in enumerate(work.scheme.edges) if e.line == "feed_second_right")]
    spot = plan.spots[number]
    assert (spot[0] + drawn.at[0][0], spot[1] + ends["feed_second_right"]) in (route[0], route[-1])


def test_a_union_a_bulkhead_and_a_tee_are_told_apart():
    kinds = {node.name: node.kind for node in scheme_of(evaluated("tee")).nodes}
    assert kinds["tee"] is Kind.TEE
    kinds = {node.name: node.kind for node in scheme_of(evaluated("oatmere")).nodes}
    assert kinds["left_firewall"] is Kind.PLATE
    kinds = {node.name: node.kind for node in scheme_of(evaluated("withyford")).nodes}
    assert kinds["belly"] is Kind.UNION


@pytest.mark.parametrize("order", list(permutations(range(4))))
def test_no_order_of_lines_makes_two_lie_on_each_other_between_rows(order):
    ends = [(60.0 * n, 60.0 * stop) for n, stop in enumerate(order)]
    pieces = []
    for number, ((start, stop), jogs) in enumerate(zip(ends, tracked(ends), strict=True)):
        points = [(start, 1.0)]
        for jog in jogs:
            points += [(jog.start, -float(jog.track)), (jog.stop, -float(jog.track))]
        points.append((stop, -20.0))
        pieces += [(number, piece) for piece in pairwise(points)]
    assert not [(a, b) for (n, a), (m, b) in combinations(pieces, 2) if n != m and along(a, b)]


def test_places_are_the_nearest_that_keep_their_order():
    # second opinion: scipy's isotonic regression, after the room between neighbours is taken away
    wanted = [10.0, 80.0, 30.0, 35.0, 200.0, 150.0]
    reaches = [(5.0, 7.0), (3.0, 9.0), (4.0, 4.0), (6.0, 2.0), (8.0, 1.0), (5.0, 5.0)]
    offsets = np.cumsum([0, *(a[1] + b[0] for a, b in pairwise(reaches))])
    expected = isotonic_regression(np.array(wanted) - offsets).x + offsets
    assert _apart(wanted, reaches) == pytest.approx(list(expected))


def test_a_box_is_where_its_symbol_is():
    work, plan = laid(("quillfen", None))
    for each, (x, y) in zip(work.drawn, plan.spots, strict=True):
        assert box_at(each, (x, y)).meets(Box(x - 1, y - 1, x + 1, y + 1))
