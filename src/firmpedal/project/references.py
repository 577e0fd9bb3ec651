"""What refers to what: dangling names, and two lines on one port."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from firmpedal.finding import Problem
from firmpedal.model.surroundings import Stretch
from firmpedal.project.names import suggest
from firmpedal.units import Dimension, UnitError, canonical_unit

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.model.aircraft import Aircraft
    from firmpedal.project.tree import Spans


@dataclass
class _References:
    aircraft: Aircraft
    spans: Spans
    problems: list[Problem] = field(default_factory=list)

    def problem(self, place: str, message: str, text: str = "", suggestion: str = "", also: str = "") -> None:
        span = self.spans.by_path.get(place) or self.spans.by_path[place.rpartition(".")[0]]
        self.problems.append(Problem(span, message, text, suggestion, self.spans.by_path.get(also)))

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
    _lines(work)
    _names(work)
    _units(work)
    return work.problems


def _lines(work: _References) -> None:
    targets = connections(work.aircraft)
    taken: dict[str, str] = {}
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
                message = f"two lines come to `{target}`: {line.name} and {taken[target].split('.')[1]}"
                work.problem(place, message, target, also=taken[target])
            else:
                taken[target] = place
        if line.start == line.finish:
            work.problem(f"{line.place}.to", f"{line.name} starts and ends at `{line.start}`", line.finish)


def _names(work: _References) -> None:
    aircraft = work.aircraft
    moving = [thing.name for thing in aircraft.moving]
    pedals = [pedal.name for pedal in aircraft.pedals]
    lines = [line.name for line in aircraft.lines]
    for thing in (*aircraft.components, *aircraft.bulkheads, *aircraft.pedals):
        work.known(f"{thing.place}.moves with", "moving thing", thing.moves_with, moving)
    for thing in aircraft.moving:
        work.known(f"{thing.place}.with", "moving thing", thing.carried_by, moving)
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
                f"units.{dimension.value}", str(error), word, error.suggestion or suggest("", error.choices)
            )
