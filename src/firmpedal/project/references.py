"""What refers to what: dangling names, and two lines on one port."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from firmpedal.catalog import PartError, find
from firmpedal.finding import Problem
from firmpedal.model.surroundings import Stretch
from firmpedal.project.names import UNKNOWN, suggest, suggest_from
from firmpedal.units import Dimension, UnitError, canonical_unit

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.finding import Span
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Line, Port, Side
    from firmpedal.model.surroundings import State
    from firmpedal.project.tree import Spans

VERSION = "1"


@dataclass
class _References:
    aircraft: Aircraft
    spans: Spans
    problems: list[Problem] = field(default_factory=list)

    def problem(
        self, place: str, message: str, text: str = "", suggestion: str = "", also: Span | None = None
    ) -> None:
        self.problems.append(Problem(self.spans.nearest(place), message, text, suggestion, also))

    def known(self, place: str, kind: str, name: str, names: Iterable[str]) -> None:
        if name and name not in list(names):
            self.problem(place, f"there is no {kind} `{name}`", name, suggest(name, names))


def connections(aircraft: Aircraft) -> dict[str, str]:
    """Everything a line can be connected to by name, with the place where it is declared."""
    found = {f"{part.name}.{port.name}": port.place for part in aircraft.components for port in part.ports}
    found |= {f"{wall.name}.{side.name}": side.place for wall in aircraft.bulkheads for side in wall.sides}
    found |= {
        f"{line.name}.{end}": f"{line.place}.{end}" for line in aircraft.lines for end in ("from", "to")
    }
    return found


def check_references(aircraft: Aircraft, spans: Spans) -> list[Problem]:
    """List every name that points nowhere and every connection that is used twice."""
    work = _References(aircraft, spans)
    if aircraft.version != VERSION:
        message = f"this file is written for version `{aircraft.version}` of the format"
        work.problem("firmpedal", message, aircraft.version, f"this program reads version {VERSION}")
    _lines(work)
    _states(work)
    _names(work)
    _units(work)
    _parts(work)
    return work.problems


def _lines(work: _References) -> None:
    targets = connections(work.aircraft)
    taken: dict[str, tuple[str, str]] = {}
    for line in work.aircraft.lines:
        for end, target in (("from", line.start), ("to", line.finish)):
            place = f"{line.place}.{end}"
            if target not in targets:
                work.problem(
                    place,
                    f"{line.name} leads nowhere: there is no `{target}`",
                    target,
                    suggest(target, targets),
                )
            elif target in taken:
                _taken_twice(work, line, place, target, taken[target])
            else:
                taken[target] = (line.name, place)


def _taken_twice(work: _References, line: Line, place: str, target: str, other: tuple[str, str]) -> None:
    name, also = other[0], work.spans.nearest(other[1])
    if name == line.name:
        work.problem(place, f"{name} starts and ends at `{target}`", target, also=also)
        return
    # A mirror image has no text of its own for its ends: then it is named where it is asked for.
    place = line.place if work.spans.nearest(place) == also else place
    work.problem(place, f"two lines come to `{target}`: {line.name} and {name}", target, also=also)


def _states(work: _References) -> None:
    """Look at the states in which things were measured."""
    states = {state.name: state for state in work.aircraft.states}
    for state in work.aircraft.states:
        if "measured_at" in state.written:
            _setting(work, state, state.measured_at, f"{state.place}.measured at")
    for thing in (*work.aircraft.components, *work.aircraft.bulkheads):
        for name, setting in thing.measured_in:
            place = f"{thing.place}.measured in.{name}"
            work.known(place, "state", name, states)
            if name in states:
                _setting(work, states[name], setting, place)


def _setting(work: _References, state: State, setting: str, place: str) -> None:
    if state.values:
        if setting not in state.values:
            message = f"{state.name} has no position `{setting}`"
            work.problem(place, message, setting, suggest(setting, state.values))
        return
    try:
        number = float(setting)
    except ValueError:
        number = math.nan
    if not math.isfinite(number):
        message = f"`{setting}` is not a number between the two ends of {state.name}"
        work.problem(place, message, setting, "write a number such as 0")


def _names(work: _References) -> None:
    aircraft = work.aircraft
    moving = [thing.name for thing in aircraft.moving]
    pedals = [pedal.name for pedal in aircraft.pedals]
    lines = [line.name for line in aircraft.lines]
    for thing in (*aircraft.components, *aircraft.bulkheads, *aircraft.pedals):
        work.known(f"{thing.place}.moves with", "moving thing", thing.moves_with, moving)
    for carried in aircraft.moving:
        work.known(f"{carried.place}.with", "moving thing", carried.carried_by, moving)
    for cylinder in aircraft.cylinders:
        work.known(f"{cylinder.place}.pedal", "pedal", cylinder.pedal, pedals)
    for zone in aircraft.zones:
        for shape in zone.where:
            if isinstance(shape, Stretch):
                work.known(f"{zone.place}.where.line", "line", shape.line, lines)
    for panel in aircraft.panels:
        for passage in panel.passes:
            work.known(passage.place, "line", passage.name, lines)


def _units(work: _References) -> None:
    for dimension in Dimension:
        word = getattr(work.aircraft.units, dimension.value, "") if dimension.value.isidentifier() else ""
        if not word:
            continue
        try:
            canonical_unit(word, dimension)
        except UnitError as error:
            work.problem(
                f"units.{dimension.value}", str(error), word, suggest_from(error.suggestion, error.choices)
            )


def _parts(work: _References) -> None:
    """Look up what the builder held to a port or a bulkhead while measuring a seat."""
    ports = [port for part in work.aircraft.components for port in part.ports]
    sides = [side for wall in work.aircraft.bulkheads for side in wall.sides]
    seats: list[Port | Side] = [*ports, *sides]
    for seat in seats:
        name = seat.seat_measured_with
        if name in ("", UNKNOWN):
            continue
        try:
            find(name)
        except PartError as error:
            suggestion = suggest_from(error.suggestion, error.choices)
            work.problem(
                f"{seat.place}.seat measured with", f"`{name}` is not in the catalogue", name, suggestion
            )
