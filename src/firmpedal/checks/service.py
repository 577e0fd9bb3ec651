"""Rules about work on the finished aircraft: room for wrenches, and a caliper that comes off unopened."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge
from firmpedal.finding import Level, NotShown
from firmpedal.lay.around import things_about
from firmpedal.lay.wrench import free_swing
from firmpedal.model.aircraft import find
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Mark, Value, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Point
    from firmpedal.model.kinds import Caliper

SHORT_WRENCH = from_unit(4, "in")  # a short one for these nuts: our estimate, a field to overrule
WRENCH_THICKNESS = from_unit(1 / 4, "in")
# An open-ended wrench turned over takes its next bite after a twelfth of a turn.
LEAST_SWING = math.radians(30)


def no_room_for_wrench(view: View) -> Iterator[Outcome]:
    """There is room to swing a wrench on every nut, among what the file says lies about.

    An open-ended wrench needs a twelfth of a turn, then it is turned over. What is not in the file is
    not seen: look for yourself before the joint is closed up.
    """
    solids = tuple(thing.solid for thing in things_about(view.aircraft))
    wrench = view.aircraft.bench.wrench_length
    length = wrench.low if wrench.known else SHORT_WRENCH
    allowed = exactly(
        "swing of a wrench", Dimension.ANGLE, LEAST_SWING, Mark.MEMORY, source="common-practice"
    )
    for line in view.laid if solids else ():
        for end, seat, axis in _ends(line):
            swing = free_swing(seat, axis, solids, length, WRENCH_THICKNESS)
            place = f"{line.place}.{end}"
            mark = Mark.DERIVED if wrench.known else Mark.ESTIMATE
            label = f"free swing of a wrench at {line.name}.{end}"
            free = Value(label, Dimension.ANGLE, (swing, swing), mark, place)
            yield from judge(
                Limit(free, allowed, "at least"),
                rule="no-room-for-wrench",
                level=Level.CAUTION,
                place=place,
                message=f"a wrench on the nut at {line.name}.{end} swings {view.show(free)} and no further",
                tries=("make this joint up on the bench first", "move the joint to where there is room"),
            )


def _ends(line: LaidLine) -> Iterator[tuple[str, Point, Point]]:
    """Each end with a nut: where it sits, and along what; a line that goes nowhere has no direction."""
    if line.path is None or line.kind is LineKind.PLASTIC:
        return
    for end, (seat, *others) in (("from", line.path), ("to", line.path[::-1])):
        beyond = next((point for point in others if point != seat), None)
        if beyond is not None:
            step = tuple(b - a for a, b in zip(seat, beyond, strict=True))
            yield end, seat, (step[0], step[1], step[2])


def caliper_not_lifted_off(view: View) -> Iterator[Outcome]:
    """A caliper can be lifted off for new pads without opening its line.

    The hose follows its path to the corner before the caliper and then the straight to where the
    caliper's port is once it is off.
    """
    rule = "caliper-not-lifted-off"
    for caliper in view.aircraft.calipers:
        if "lifts_off" not in caliper.written:
            continue
        for line in _hoses_at(view, caliper):
            if missing := caliper.lifts_off.missing:
                message = f"whether {caliper.name} can be lifted off without opening {line.name}"
                yield NotShown(rule, caliper.place, message, missing)
                continue
            length = _path_to_lifted(view, line, caliper)
            message = (
                f"{caliper.name} lifted off needs {view.show(length)} of {line.name}, which is "
                f"{view.show(line.order_length)}"
            )
            yield from judge(
                Limit(length, line.order_length, "at most"),
                rule=rule,
                level=Level.NOTE,
                place=line.place,
                message=message,
                tries=(f"order {line.name} longer, if it still bends easily enough",),
            )


def _hoses_at(view: View, caliper: Caliper) -> list[LaidLine]:
    ports = {f"{caliper.name}.{port.name}" for port in caliper.ports}
    named = [line.name for line in view.aircraft.lines if ports & {line.start, line.finish}]
    return [line for line in view.laid if line.name in named and line.hose is not None]


def _path_to_lifted(view: View, line: LaidLine, caliper: Caliper) -> Value:
    label, place = f"path of {line.name} with {caliper.name} lifted off", f"{line.place}.lifted"
    declared = find(view.aircraft.lines, line.name)
    if line.path is None or declared is None:
        missing = tuple(dict.fromkeys(item for point in line.points for item in point.missing))
        return Value(label, Dimension.LENGTH, None, Mark.MEASURED, place, missing=missing)
    path = line.path if declared.finish.startswith(f"{caliper.name}.") else line.path[::-1]
    moved = tuple(a + b for a, b in zip(path[-1], caliper.lifts_off.point, strict=True))
    length = sum(math.dist(one, other) for one, other in pairwise((*path[:-1], moved)))
    return Value(label, Dimension.LENGTH, (length, length), Mark.ESTIMATE, place)
