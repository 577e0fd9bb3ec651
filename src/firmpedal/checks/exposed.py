"""The rule about fittings that the ground meets first."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.checks.joints import widest_part
from firmpedal.checks.view import Limit, Outcome, View, judge
from firmpedal.finding import Level
from firmpedal.lay.movement import carriers_of
from firmpedal.model.aircraft import find
from firmpedal.quantity import Step, all_missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.fit.joint import Joint
    from firmpedal.model.space import Position
    from firmpedal.model.surroundings import Wheel
    from firmpedal.quantity import Value

RULE = "fitting-exposed-at-wheel"


def fitting_exposed_at_wheel(view: View) -> Iterator[Outcome]:
    """At the wheel some piece of structure hangs lower, and stands further forward, than every fitting.

    With a flat tyre, in long grass or over a stone the lowest and the foremost thing is hit first. Heights
    are taken along the aircraft's own axes, as measured: over the short way from a fitting to the structure
    beside it the attitude on the ground changes little.
    """
    for wheel in view.aircraft.wheels:
        for joint, seat in _at_wheel(view, wheel):
            if joint.parts:
                yield from _one(wheel, joint, seat)


def _one(wheel: Wheel, joint: Joint, seat: Position) -> Iterator[Outcome]:
    half = widest_part(joint)
    structures = (
        ("lowest", "height", seat.up, wheel.lowest_structure.up, "hangs lower"),
        ("foremost", "aft position", seat.aft, wheel.foremost_structure.aft, "stands further forward"),
    )
    for word, figure, own, structure, does in structures:
        measured = _edge(own, half, f"{figure} of the edge of {joint.name}", joint.place)
        limit = Limit(
            measured, structure.named(f"{figure} of the {word} structure at {wheel.name}"), "at least"
        )
        yield from judge(
            limit,
            rule=RULE,
            level=Level.CAUTION,
            place=joint.place,
            message=f"{joint.name} {does} than the {word} structure at {wheel.name}: it is hit first",
            tries=(
                "turn the fitting or move the bracket behind or above structure",
                "guard it with a plate",
            ),
        )


def _edge(seat: Value, width: Value, label: str, place: str) -> Value:
    """The lowest or foremost that a joint can reach: its seat less half of its widest part."""
    step = Step("s - w / 2", (("s", seat), ("w", width)))
    mark = max(seat.mark, width.mark)
    if seat.span is None or width.span is None:
        missing = all_missing((seat, width))
        return replace(seat, label=label, span=None, mark=mark, place=place, step=step, missing=missing)
    span = (seat.low - width.high / 2, seat.high - width.low / 2)
    return replace(seat, label=label, span=span, mark=mark, place=place, source="", step=step)


def _at_wheel(view: View, wheel: Wheel) -> Iterator[tuple[Joint, Position]]:
    """The joints of the caliper, and those on brackets that move with it, with each end's place."""
    aircraft = view.aircraft
    caliper = find(aircraft.components, wheel.caliper)
    if caliper is None:
        return
    movers = carriers_of(caliper.moves_with, aircraft.moving)
    brackets = {
        bulkhead.name
        for bulkhead in aircraft.bulkheads
        if any(mover in movers for mover in carriers_of(bulkhead.moves_with, aircraft.moving))
    }
    for line in view.laid:
        declared = find(aircraft.lines, line.name)
        ends = () if declared is None else (("from", declared.start, 0), ("to", declared.finish, -1))
        for end, target, number in ends:
            head = target.rpartition(".")[0]
            joint = view.assembly.joint_of(line.name, end)
            if joint is not None and (head == caliper.name or head in brackets):
                yield joint, line.points[number]
