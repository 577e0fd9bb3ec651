"""The one numbering of joints: on the circuit, on the cards and on the check sheet."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from firmpedal.model.component import SideOf
from firmpedal.report.flow import flow_of
from firmpedal.report.flow_sides import RANK, rights_of, sides_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.fit.assembly import Assembly
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.flow import Flow

    Key = tuple[int, float, int]


def joint_numbers(evaluation: Evaluation) -> dict[str, int]:
    """Number all joints by name, along the fluid from the reservoir to the wheels, left before right.

    A joint comes after all that feeds it; then one branch is followed to its end before the next, the
    left one first. The numbers hang on the circuit alone, not on the order of the file, as far as side
    and place tell things apart.
    """
    aircraft, assembly = evaluation.aircraft, evaluation.assembly
    flow = flow_of(aircraft)
    names = [joint.name for joint in assembly.joints]
    follows: dict[str, set[str]] = {name: set() for name in names}
    for upper, lower in _steps(aircraft, assembly, flow):
        if upper in follows and lower in follows and upper != lower:
            follows[upper].add(lower)
    order = _in_order(follows, _keys(aircraft, flow, names))
    return {name: number for number, name in enumerate(order, 1)}


def number_asked(words: str) -> int | None:
    """The number in `joint 12`, or in `12` alone; None where words say anything else."""
    found = re.fullmatch(r"(?:joint\s*)?(?:no\.?\s*|#\s*)?(\d{1,6})", words.strip(), re.IGNORECASE | re.ASCII)
    return int(found[1]) if found else None


def number_words(number: int | None) -> str:
    """A joint's number as it stands in a heading, empty if it has none."""
    return "" if number is None else f"joint {number}"


def numbered(name: str, evaluation: Evaluation) -> str:
    """A joint by its name and its number on the circuit."""
    words = number_words(joint_numbers(evaluation).get(name))
    return f"{name} ({words})" if words else name


def _steps(aircraft: Aircraft, assembly: Assembly, flow: Flow) -> Iterator[tuple[str, str]]:
    """From each joint to the next one down: along lines, and through components."""
    for line in aircraft.lines:
        joints = [assembly.joint_of(line.name, end) for end in ("from", "to")]
        if joints[0] is not None and joints[1] is not None:
            pair = (joints[0].name, joints[1].name)
            yield pair if flow.runs_down(line) else pair[::-1]
    for way in flow.graph.ways:
        met = sorted((way.above, way.below), key=lambda node: flow.met[node])
        yield (way.above, way.below) if way.below in flow.outlets else (met[0], met[1])
    for part in aircraft.components:
        for one, other in part.inner_ways:
            ends = (f"{part.name}.{one}", f"{part.name}.{other}")
            if not set(ends) & flow.outlets and set(ends) <= flow.met.keys():
                met = sorted(ends, key=lambda node: flow.met[node])
                yield met[0], met[1]


def _keys(aircraft: Aircraft, flow: Flow, names: list[str]) -> dict[str, Key]:
    """What decides between joints that may come next: side, then how far right, then the file."""
    sides, rights = sides_of(aircraft, flow.graph), rights_of(aircraft)
    hubs = {each.name: [f"{each.name}.{side.name}" for side in each.sides] for each in aircraft.bulkheads}
    keys = {}
    for number, name in enumerate(names):
        places = hubs.get(name) or [name]
        side = next((sides[place] for place in places if place in sides), SideOf.CENTRE)
        right = next((rights[place] for place in places if place in rights), 0.0)
        keys[name] = (RANK[side], round(right, 6), number)
    return keys


def _in_order(follows: dict[str, set[str]], keys: dict[str, Key]) -> list[str]:
    """Each joint after those before it, deep before wide; a circle is cut at its least key."""
    before = {name: {one for one, others in follows.items() if name in others} for name in follows}
    order: list[str] = []
    waiting = sorted((name for name in follows if not before[name]), key=keys.__getitem__, reverse=True)
    while len(order) < len(follows):
        if not waiting:
            waiting = [min((name for name in follows if name not in order), key=keys.__getitem__)]
        name = waiting.pop()
        if name in order:
            continue
        order.append(name)
        ready = [each for each in follows[name] if each not in order and before[each] <= set(order)]
        waiting += sorted(ready, key=keys.__getitem__, reverse=True)
    return order
