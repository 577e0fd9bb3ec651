"""The circuit's verdicts are those of an exhaustive search, on the examples and on random circuits."""

from __future__ import annotations

from pathlib import Path

import pytest
from circuit_search import search
from hypothesis import event, given, settings
from hypothesis import strategies as st

from firmpedal.analysis.circuit import circuits_of, graph_of, reaches, verdicts
from firmpedal.analysis.circuit.verdicts import seal_question
from firmpedal.project import read_file, read_text

ROOT = Path(__file__).parents[2]
FILES = sorted([*ROOT.glob("examples/*.yaml"), *ROOT.glob("tests/aircraft/*.yaml")])
HEAD = """\
firmpedal: 1
aircraft: {name: Anyhow, gear: tailwheel, brakes: toe, landing weight: 900 lb, type certificate: no}
units: {length: in, angle: deg, force: lbf, pressure: psi, temperature: degF}
pedals: {foot: {brake: {pad: 5, arm: 2-1/2}}}
"""
PORT = "thread: 1/8 NPT female"
KEYS = {"opens at rest": "opens", "seals when pressed": "seals", "vented": "vented"}


def told(aircraft):
    """The program's verdicts in the words of the search."""
    found = {}
    for circuit in circuits_of(graph_of(aircraft)):
        for verdict in verdicts(aircraft, circuit):
            fact = verdict.fact
            key = (fact.kind.value, fact.caliper, fact.cylinder, fact.by)
            places = (missing.place.split(".") for missing in verdict.matters)
            found[key] = (verdict.answer.value, frozenset((KEYS[key], name) for _, name, key in places))
    return found


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_examples_agree_with_the_search(path):
    for option in (None, *read_file(path).options):
        aircraft = read_file(path, option).aircraft
        assert told(aircraft) == search(aircraft)


MOST = 4  # cylinders: the search goes through every order of events
ANSWERS = st.sampled_from(["yes", "yes", "yes", "yes", "no", "unknown"])
SEALS = st.sampled_from(["yes", "no", "unknown"])


def component(name, kind, ports, **keys):
    body = "".join(f", {key.replace('_', ' ')}: {value}" for key, value in keys.items())
    return (
        f"  {name}: {{kind: {kind}{body}, ports: {{{', '.join(f'{port}: {{{PORT}}}' for port in ports)}}}}}\n"
    )


def cylinder(draw, name, *, inlet, own):
    keys = {"reservoir": "built in"} if own else {}
    ports = ["inlet", "outlet"] if inlet else ["outlet"]
    return component(
        name,
        "master cylinder",
        ports,
        bore="5/8",
        stroke=1,
        pedal="foot",
        opens_at_rest=draw(ANSWERS),
        seals_when_pressed=draw(SEALS),
        **keys,
    )


def written(components, tees, pipes):
    """A file of these components and tees, with hoses between pairs of ports."""
    sides = "".join(f"{side}: {{seat: unknown}}, " for side in "abc")
    walls = "".join(f"  {tee}: {{through panel: no, sides: {{{sides}}}}}\n" for tee in tees)
    lines = "".join(
        f"  line{n}: {{from: {one}, to: {other}, made of: hose -4 PTFE braided}}\n"
        for n, (one, other) in enumerate(pipes)
    )
    text = HEAD + "components:\n" + "".join(components)
    return text + (f"bulkheads:\n{walls}" if walls else "") + (f"lines:\n{lines}" if lines else "")


@st.composite
def in_series(draw):
    """Reservoir, seats, valve and wheels one after another, the valve anywhere, then some ends swapped."""
    seats, sides = draw(st.sampled_from([2, 2, 2, 1, 3])), draw(st.integers(1, 2))
    if seats * sides > MOST:
        sides = 1
    valve, own = draw(st.sampled_from([None, *range(seats + 1)])), draw(st.booleans())
    parts = [component("pot", "reservoir", ["p0", "p1"], vented=draw(ANSWERS))]
    chains = []
    for side in range(sides):
        chain = []
        for seat in range(seats):
            alone = own and seat == 0
            parts.append(cylinder(draw, f"c{seat}{side}", inlet=not alone, own=alone))
            chain.append((f"c{seat}{side}.inlet", f"c{seat}{side}.outlet"))
        if valve is not None:
            chain.insert(valve, (f"valve.i{side}", f"valve.o{side}"))
        parts.append(component(f"w{side}", "caliper", ["in"], pistons="{bore: 1, count per side: 1}"))
        ends = [f"pot.p{side}", *(end for pair in chain for end in pair), f"w{side}.in"]
        chains += [pair for pair in zip(ends[::2], ends[1::2], strict=True) if not own or "c0" not in pair[1]]
    if valve is not None:
        ports = [f"{end}{side}" for side in range(sides) for end in "io"]
        ways = ", ".join(f"[i{side}, o{side}]" for side in range(sides))
        parts.append(component("valve", "parking valve", ports, ways=f"[{ways}]"))
    return written(parts, [], draw(shuffled(chains, draw(st.sampled_from([0, 0, 1, 2])))))


@st.composite
def shuffled(draw, pipes, times):
    """The same pipes with the ends of some pairs swapped."""
    ends = [end for pipe in pipes for end in pipe]
    for _ in range(times):
        one, other = (draw(st.integers(0, len(ends) - 1)) for _ in range(2))
        ends[one], ends[other] = ends[other], ends[one]
    return list(zip(ends[::2], ends[1::2], strict=True))


@st.composite
def anyhow(draw):
    """Up to three cylinders, two wheels, a valve, tees and a reservoir, joined as it comes."""
    parts, ports = [], []

    def add(name, text, names):
        parts.append(text)
        ports.extend(f"{name}.{port}" for port in names)

    for n in range(draw(st.integers(1, 3))):
        inlet, own = draw(st.booleans()), draw(st.sampled_from([False, True]))
        names = ["inlet", "outlet"] if inlet else ["outlet"]
        add(f"c{n}", cylinder(draw, f"c{n}", inlet=inlet, own=own), names)
    for n in range(draw(st.integers(1, 2))):
        names = ["in", "over"][: draw(st.integers(1, 2))]
        add(f"w{n}", component(f"w{n}", "caliper", names, pistons="{bore: 1, count per side: 1}"), names)
    if draw(st.booleans()):
        names = ["i", "o", "j", "q"][: draw(st.sampled_from([2, 4]))]
        ways = "[[i, o], [j, q]]" if len(names) == 4 else "[[i, o]]"
        add("valve", component("valve", "parking valve", names, ways=ways), names)
    if draw(st.booleans()):
        names = ["p", "r", "s"][: draw(st.integers(1, 3))]
        add("pot", component("pot", "reservoir", names, vented=draw(ANSWERS)), names)
    tees = [f"tee{n}" for n in range(draw(st.integers(0, 2)))]
    ports += [f"{tee}.{side}" for tee in tees for side in "abc"]
    order = draw(st.permutations(ports))
    most = len(order) // 2
    kept = draw(st.integers(max(0, most - 1), most))
    return written(parts, tees, list(zip(order[::2], order[1::2], strict=False))[:kept])


@settings(max_examples=60, deadline=None)
@given(st.one_of(in_series(), anyhow()))
def test_verdicts_are_those_of_the_search(text):
    reading = read_text(text, "a.yaml")
    assert reading.aircraft is not None, reading.problems
    found = told(reading.aircraft)
    for kind, answer in {(key[0], value[0]) for key, value in found.items()}:
        event(f"{kind}: {answer}")
    assert found == search(reading.aircraft)


@settings(max_examples=40, deadline=None)
@given(in_series())
def test_a_definite_answer_stays_when_an_unknown_one_is_found_out(text):
    """Yes for sure stays yes, and what is not even possible stays so, whatever the answers turn out to be."""
    reading = read_text(text, "a.yaml")
    assert reading.aircraft is not None, reading.problems
    before = told(reading.aircraft)
    for answer in ("yes", "no"):
        after = told(read_text(text.replace("unknown,", f"{answer},"), "a.yaml").aircraft)
        assert {key for key, value in before.items() if value[0] == "yes"} <= after.keys() <= before.keys()
        assert {value[0] for value in after.values()} <= {"yes"}


@settings(max_examples=30, deadline=None)
@given(in_series())
def test_no_cylinder_serves_what_it_does_not_reach(text):
    reading = read_text(text, "a.yaml")
    assert reading.aircraft is not None, reading.problems
    reach = {way.cylinder: way.calipers for way in reaches(reading.aircraft)}
    for _, caliper, name, by in (key for key in told(reading.aircraft) if key[0] in ("held", "shut out")):
        assert caliper in reach[name]
        assert caliper in reach[by]


def test_a_cylinder_right_below_open_air_lets_nothing_of_another_out():
    """Far through near and one of its own beside them: near keeps what far pressed while its own presses.

    The pedal right below the pot is said not to seal. It could only let the held fluid out into the pot,
    and then it would make no pressure of its own.
    """
    row = {"bore": "5/8", "stroke": 1, "pedal": "foot"}
    parts = [
        component("pot", "reservoir", ["p", "q"], vented="yes"),
        component("far", "master cylinder", ["inlet", "outlet"], **row, opens_at_rest="no"),
        component(
            "near",
            "master cylinder",
            ["inlet", "outlet"],
            **row,
            opens_at_rest="yes",
            seals_when_pressed="yes",
        ),
        component(
            "own",
            "master cylinder",
            ["inlet", "outlet"],
            **row,
            opens_at_rest="no",
            seals_when_pressed="no",
        ),
        component("wheel", "caliper", ["in"], pistons="{bore: 1, count per side: 1}"),
    ]
    pipes = [
        ("pot.p", "far.inlet"),
        ("far.outlet", "near.inlet"),
        ("near.outlet", "tee.a"),
        ("pot.q", "own.inlet"),
        ("own.outlet", "tee.b"),
        ("tee.c", "wheel.in"),
    ]
    aircraft = read_text(written(parts, ["tee"], pipes), "a.yaml").aircraft
    assert told(aircraft)["held", "wheel", "far", "own"] == ("yes", frozenset())
    assert told(aircraft) == search(aircraft)


def test_what_is_asked_names_the_cylinder():
    (path,) = [path for path in FILES if path.stem == "quillfen"]
    (cylinder_,) = read_file(path).aircraft.cylinders
    assert "cylinder" in seal_question(cylinder_).what
