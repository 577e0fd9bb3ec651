"""What is said of a thing in the picture that is chosen: its name, its figures, and its place in the file."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import dist
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import find
from firmpedal.model.display import count_of
from firmpedal.quantity import Answer
from firmpedal.report.ends import from_to
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.stay_clear import Gap
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.space import Position
    from firmpedal.model.surroundings import Zone
    from firmpedal.pipeline import Evaluation
    from firmpedal.web.space.scene import Scene

    Row = tuple[str, str]

FEW = 3
ONE_OF = {
    "component": "component",
    "bulkhead": "bulkhead or bracket",
    "panel": "panel",
    "keep clear": "to stay clear of",
    "zone": "zone",
}
END_WORDS = {"from": "first end", "to": "last end"}


@dataclass(frozen=True)
class Said:
    """The name of a thing, what sort of thing it is, its figures, and where its field is."""

    name: str
    sort: str
    rows: tuple[Row, ...]
    place: str


def said_of(evaluation: Evaluation, scene: Scene, key: str) -> Said | None:
    """Tell of what has a key; nothing where there is none of it."""
    way, thing = scene.line_of(key), scene.thing(key)
    if thing is not None:
        rows = tuple(_thing_rows(evaluation, thing.sort, thing.name))
        return Said(thing.name, ONE_OF[thing.sort], rows, key)
    line = next((each for each in evaluation.laid if way is not None and each.name == way.name), None)
    if way is None or line is None:
        return None
    rest = key.removeprefix(way.key).lstrip(".")
    if not rest:
        return Said(line.name, line.kind.value, tuple(_line_rows(evaluation, line)), key)
    if rest in END_WORDS:
        return Said(
            f"{END_WORDS[rest]} of {line.name}", "fittings", tuple(_ends(evaluation, line, rest)), key
        )
    if rest.startswith("clamp"):
        return _clamp(evaluation, line, key, int(rest.split()[-1]))
    number = int(rest.rpartition(".")[2])
    return Said(f"corner {number} of {line.name}", "corner", tuple(_corner(evaluation, line, number)), key)


def _line_rows(evaluation: Evaluation, line: LaidLine) -> Iterator[Row]:
    show = evaluation.display.value
    yield "Runs", from_to(evaluation, line)
    if line.tube is not None and line.tube.impossible is not None:
        yield "Cannot be bent", line.tube.impossible.words
    if line.tube is not None and line.developed_length is not None:
        yield "Length along it", show(line.developed_length)
        yield "Bends", str(len(line.tube.bends))
    else:
        yield "Length of the way shown", show(line.path_length)
    if line.cut_length is not None:
        yield "Cut", show(line.cut_length)
    elif line.hose is not None:
        yield "Order", show(line.hose.order_length)
    yield "Clamps", count_of(len(line.supports.stations), "clamp")
    yield "Longest length between supports", show(line.supports.longest_gap)
    for gap in _nearest(gap for gap in evaluation.gaps if gap.line == line.name):
        yield f"Kept from {gap.thing.name}", show(gap.distance)


def _count(number: int, word: str) -> str:
    return f"{number or 'no'} {word}{'' if number == 1 else 's'}"


def _corner(evaluation: Evaluation, line: LaidLine, number: int) -> Iterator[Row]:
    yield from _where(evaluation, line.points[number])
    path = line.path
    if path is not None:
        legs = [dist(*pair) for pair in pairwise(path)]
        yield "Leg before it", evaluation.display.number(legs[number - 1], Dimension.LENGTH)
        yield "Leg after it", evaluation.display.number(legs[number], Dimension.LENGTH)
    for bend in line.tube.bends if line.tube is not None else ():
        if bend.corner == number:
            yield "Bend", evaluation.display.value(bend.angle)


def _where(evaluation: Evaluation, position: Position) -> Iterator[Row]:
    for name, value in zip(("Aft", "Right", "Up"), position.coordinates, strict=True):
        yield name, evaluation.display.value(value)


def _clamp(evaluation: Evaluation, line: LaidLine, key: str, number: int) -> Said:
    station = line.supports.stations[number - 1]
    whose = "proposed" if line.supports.proposed else "yours"
    rows = (("From the first end", evaluation.display.value(station)), ("Place", whose))
    return Said(f"clamp {number} of {line.name}", "clamp", rows, f"{key.rpartition('.')[0]}.clamps")


def _ends(evaluation: Evaluation, line: LaidLine, end: str) -> Iterator[Row]:
    yield from _where(evaluation, line.points[0 if end == "from" else -1])
    joint = evaluation.assembly.joint_of(line.name, end)
    names = [part.designation for part in joint.parts] if joint is not None else []
    yield "Parts, in order", ", ".join(names) or "none found"


def _thing_rows(evaluation: Evaluation, sort: str, name: str) -> Iterator[Row]:
    aircraft, display = evaluation.aircraft, evaluation.display
    if sort == "component" and (part := find(aircraft.components, name)) is not None:
        yield "Kind", part.kind
        yield from _moves(part.moves_with)
        for port in part.ports:
            seat = port.seat if port.seat.known else port.at
            yield f"Port {port.name}", display.spot(seat.point) if seat.known else "place unknown"
    elif sort == "bulkhead" and (wall := find(aircraft.bulkheads, name)) is not None:
        yield from _moves(wall.moves_with)
        for side in wall.sides:
            yield f"Side {side.name}", display.spot(side.seat.point) if side.seat.known else "place unknown"
    elif sort == "panel" and (panel := find(aircraft.panels, name)) is not None:
        yield "Thickness", display.value(panel.thickness)
        yield "Passed by", ", ".join(each.name for each in panel.passes) or "no line"
    elif sort == "keep clear" and (body := find(aircraft.keep_clear_of, name)) is not None:
        yield "Kind", body.kind.value
        yield from _moves(body.moves_with)
        for gap in _nearest(gap for gap in evaluation.gaps if gap.thing.name == name):
            yield f"From {gap.line}", display.value(gap.distance)
    elif sort == "zone" and (zone := find(aircraft.zones, name)) is not None:
        yield "What it is", _zone_words(zone)
        yield "Lines in it", ", ".join(_lines_in(evaluation, name)) or "none"


def _nearest(gaps: Iterable[Gap]) -> list[Gap]:
    """The gaps that count: those that are not known, then the few that are least."""
    found = sorted(gaps, key=lambda gap: gap.distance.low if gap.distance.known else -1.0)
    known = [gap for gap in found if gap.distance.known]
    return [*found[: len(found) - len(known)], *known[:FEW]]


def _moves(carrier: str) -> Iterator[Row]:
    if carrier:
        yield "Moves with", carrier


def _zone_words(zone: Zone) -> str:
    words = [zone.heat.value + " heat"] if zone.heat is not None else []
    words += [
        word
        for word, answer in (("fire", zone.fire), ("covered", zone.covered), ("hidden", zone.hidden))
        if answer is Answer.YES
    ]
    return ", ".join(words) or "a part of the aircraft"


def _lines_in(evaluation: Evaluation, name: str) -> list[str]:
    return [each.line for each in evaluation.crossings if each.zone.name == name and each.stretches]


def not_placed(aircraft: Aircraft, scene: Scene) -> tuple[str, ...]:
    """What is in the file and cannot be in the picture, for nobody has said where it is."""
    named = {line.name: line for line in aircraft.lines}
    lines = [name for name in scene.lacking if name in named]
    return (*lines, *(thing.name for thing in scene.things if not thing.solids))
