"""Strength and network have one model: no feet make more in a line than its strength is held against."""

from itertools import pairwise, permutations
from types import SimpleNamespace

import networkx as nx
import pytest
from hypothesis import event, given, settings
from hypothesis import strategies as st
from test_circuit_properties import anyhow, in_series

from firmpedal.analysis.circuit import Kind, plumbing, reaches
from firmpedal.analysis.network.pressures import pressures
from firmpedal.analysis.pressure import cylinder_pressures, line_pressures
from firmpedal.analysis.together import pressed_together
from firmpedal.project import read_text
from firmpedal.quantity import Mark, Value, exactly
from firmpedal.units import Dimension


def worked_out(text):
    reading = read_text(text, "a.yaml")
    assert reading.aircraft is not None, reading.problems
    aircraft = reading.aircraft
    circuit, made = plumbing(aircraft), cylinder_pressures(aircraft)
    lines = line_pressures(aircraft, made, reaches(aircraft, circuit.graph), circuit.feeds)
    network = pressures(aircraft, SimpleNamespace(cylinders=made, plumbing=circuit), "panic")
    return aircraft, circuit, lines, network


def answered(draw, text):
    """The same with an answer of the maker's to whether feet add up, each time another one."""
    head, *rest = text.split("kind: master cylinder")
    answers = [draw(st.sampled_from(["yes", "no", "unknown"])) for _ in rest]
    return head + "".join(
        f"kind: master cylinder, feet add up: {answer}{part}"
        for answer, part in zip(answers, rest, strict=True)
    )


def greatest(network):
    """The most that any pedals pressed together make at each connection."""
    found = {}
    for circuit in network:
        for each in circuit.pressed:
            for node, value in each.nodes:
                found[node] = max(found.get(node, 0.0), value.high)
    return found


def makes_all(circuit):
    """Whether every cylinder makes pressure wherever it leads, and is open at rest for the others."""
    lost = {Kind.MAKES_NO_PRESSURE, Kind.NOT_FOLLOWED}
    return not any(verdict.fact.kind in lost for judged in circuit.circuits for verdict in judged.verdicts)


@settings(max_examples=80, deadline=None)
@given(st.data())
def test_no_feet_make_more_than_strength_is_held_against(data):
    text = answered(data.draw, data.draw(st.one_of(in_series(), anyhow())))
    aircraft, circuit, lines, network = worked_out(text)
    most = greatest(network)
    for line in aircraft.lines:
        held = next((each.at("panic").high for each in lines if each.line == line.name), 0.0)
        for node in (line.start, line.finish):
            assert most.get(node, 0.0) <= held * (1 + 1e-12)
    event(f"every cylinder makes pressure: {makes_all(circuit)}")


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_nor_less_where_every_cylinder_makes_pressure(data):
    """Open at rest, in series: the most that the network finds is what strength is held against."""
    text = answered(data.draw, data.draw(in_series())).replace("opens at rest: no", "opens at rest: yes")
    aircraft, circuit, lines, network = worked_out(text.replace("rest: unknown", "rest: yes"))
    if not makes_all(circuit):
        return
    most = greatest(network)
    inside = {node for judged in circuit.circuits for node, _ in judged.circuit.nodes}
    for line in aircraft.lines:
        held = next((each.at("panic") for each in lines if each.line == line.name), None)
        if held is not None and line.start in inside:
            event(f"feet add up: {held.step is not None and not held.exact}")
            assert most[line.start] == pytest.approx(held.high)


def plain(name, number):
    return exactly(name, Dimension.PRESSURE, number, Mark.MEASURED)


@st.composite
def fed(draw):
    """Cylinders some of which feed others that come later, with what each adds."""
    names = [f"c{n}" for n in range(draw(st.integers(1, 5)))]
    feeds = {
        name: frozenset(other for other in names[:n] if draw(st.booleans())) for n, name in enumerate(names)
    }
    own = {name: plain(name, draw(st.floats(1e5, 1e7))) for name in names}
    shares = {}
    for name in names:
        span = draw(st.sampled_from([(0.0, 1.0), (0.0, 0.0), (0.75, 1.0)]))
        shares[name] = Value(name, Dimension.NUMBER, span)
    return own, feeds, shares


@given(fed())
def test_the_most_is_that_of_the_best_chain_of_all(case):
    """By trying every chain of cylinders, one behind the other."""
    own, feeds, shares = case
    closed = nx.DiGraph()
    closed.add_nodes_from(own)
    closed.add_edges_from((one, name) for name, some in feeds.items() for one in some)
    feeds = {name: frozenset(nx.ancestors(closed, name)) for name in own}  # who feeds a feeder feeds as well
    found = pressed_together(own, feeds, shares, "together", "here")
    ways = [
        way
        for count in range(1, len(own) + 1)
        for way in permutations(own, count)
        if all(one in feeds[other] for one, other in pairwise(way))
    ]
    for end, number in ((0, found.low), (1, found.high)):
        assert number == pytest.approx(max(_along(way, own, shares, end) for way in ways))


def _along(way, own, shares, end):
    """What stands at the end of one chain of cylinders."""
    stands = 0.0
    for name in way:
        stands = max(stands, own[name].span[end] + shares[name].span[end] * stands)
    return stands
