"""Fluid is neither made nor lost: at every connection of any tree of lines, what comes goes on or stays."""

import networkx as nx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from firmpedal.analysis.circuit import Graph, Joint
from firmpedal.analysis.network.flows import flows
from firmpedal.analysis.stroke import StrokeBudget
from firmpedal.analysis.swelling import Swell
from firmpedal.quantity import Mark, exactly
from firmpedal.units import Dimension

OUTLET = "cylinder.outlet"


def volume(label, number):
    return exactly(label, Dimension.VOLUME, number, Mark.MEASURED)


@st.composite
def trees(draw):
    """Lines that branch from the outlet, some turned round, with calipers at some of their ends."""
    count = draw(st.integers(1, 12))
    ends = [OUTLET, *(f"point{n}.a" for n in range(count))]
    joints, swells = [], []
    for n in range(count):
        near, far = ends[draw(st.integers(0, n))], ends[n + 1]
        one, other = (far, near) if draw(st.booleans()) else (near, far)
        joints.append(Joint(one, other, f"line{n}"))
        wall, fluid = (volume("", draw(st.floats(0, 1e-5))) for _ in range(2))
        swells.append(Swell(f"line{n}", wall, wall, fluid))
    some = draw(st.lists(st.integers(1, count), unique=True))
    wheels = tuple((f"caliper{n}", (ends[n],)) for n in some)
    gaps = tuple(volume("", draw(st.floats(0, 1e-5))) for _ in some)
    return Graph(tuple(joints), (), (), (("cylinder", OUTLET),), wheels), tuple(swells), gaps


def followed(tree):
    graph, swells, gaps = tree
    nothing = volume("", 0.0)
    budget = StrokeBudget(
        "cylinder", "hard", nothing, nothing, nothing, swells, nothing, gaps, (), (nothing, nothing)
    )
    return flows(graph, budget, tuple(name for name, _ in graph.wheels), hot=False)


@given(trees())
def test_volume_is_conserved_at_every_node(tree):
    graph, swells, gaps = tree
    found = followed(tree)
    assert {each.line for each in found} == {each.line for each in swells}
    at_wheel = {ports[0]: gap.middle for (_, ports), gap in zip(graph.wheels, gaps, strict=True)}
    for node in {end for joint in graph.joints for end in (joint.one, joint.other)} - {OUTLET}:
        comes = sum(each.through.middle - each.taken.middle for each in found if each.leaves == node)
        goes = sum(each.through.middle for each in found if each.enters == node)
        assert comes == pytest.approx(goes + at_wheel.get(node, 0.0), abs=1e-18)


@given(trees())
def test_all_that_the_cylinder_pushes_out_is_taken_somewhere(tree):
    _, swells, gaps = tree
    out = sum(each.through.middle for each in followed(tree) if each.enters == OUTLET)
    taken = [value.middle for each in swells for value in (each.wall, each.fluid)]
    assert out == pytest.approx(sum(taken) + sum(gap.middle for gap in gaps), abs=1e-18)


@given(trees())
def test_each_line_carries_what_lies_beyond_it(tree):
    """The same by another library: all that is downstream of the line in the tree."""
    graph, swells, gaps = tree
    whole = nx.bfs_tree(nx.Graph([(joint.one, joint.other) for joint in graph.joints]), OUTLET)
    lines = {frozenset((joint.one, joint.other)): joint.line for joint in graph.joints}
    takes = {each.line: each.wall.middle + each.fluid.middle for each in swells}
    at_wheel = {ports[0]: gap.middle for (_, ports), gap in zip(graph.wheels, gaps, strict=True)}
    through = {each.line: each.through.middle for each in followed(tree)}
    for near, far in whole.edges:
        beyond = {far, *nx.descendants(whole, far)}
        inside = [takes[lines[frozenset(edge)]] for edge in whole.edges if set(edge) <= beyond]
        expected = sum(inside) + sum(at_wheel.get(node, 0.0) for node in beyond)
        own = lines[frozenset((near, far))]
        assert through[own] == pytest.approx(expected + takes[own], abs=1e-18)
