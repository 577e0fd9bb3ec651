"""Fluid shut in between a parking valve and a wheel: how fast its pressure rises, what gives first."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit import Kind, stands_between
from firmpedal.analysis.expansion import by_slope
from firmpedal.analysis.pressure import FEET
from firmpedal.analysis.swelling import swell
from firmpedal.analysis.trapped import WARMING_FROM, rise_per_degree
from firmpedal.formulas.trapped import degrees_until, freed_by_warmth, pressure_that_makes_room
from firmpedal.model.aircraft import find
from firmpedal.model.kinds import ParkingValve
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Mark, Missing, Value, apply, exactly, largest, total
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from firmpedal.analysis.circuit import Graph, Plumbing, Reach
    from firmpedal.analysis.results import Results
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.stock import Fluid

REFERENCE = exactly("pressure at which it is worked out", Dimension.PRESSURE, 1e6, Mark.DERIVED)
NOTHING = exactly("pressure that is left", Dimension.PRESSURE, 0.0, Mark.DERIVED)
# Nobody prints by how much a hose widens with warmth. Left out, the pressure comes out rather too high.
HOSE_WIDENS = exactly(
    "widening of hose with warmth, left out",
    Dimension.EXPANSION,
    0.0,
    Mark.ESTIMATE,
    source="firmpedal-estimate",
)


@dataclass(frozen=True, slots=True)
class Gives:
    """Something that is shut in and the pressure it holds; `words` say what of it that is."""

    name: str
    words: str
    holds: Value


@dataclass(frozen=True, slots=True)
class ShutIn:
    """One wheel behind one valve. All rises are for one degree of `unit`.

    `rigid` is the rise where nothing gives, `rise` the one with what lines and fluid give. `first` is what
    holds least of what is known; `degrees` how far it may warm until that is reached, from the hard foot on
    every pedal that presses there, `alone` from the hard foot on one pedal, whichever presses hardest.
    `slack` is how far it may cool from the normal foot on one pedal until nothing is left.
    """

    valve: str
    caliper: str
    unit: str
    lines: tuple[str, ...]
    volume: Value
    rigid: Value
    rise: Value
    gives: tuple[Gives, ...]
    first: Gives | None
    degrees: Value
    alone: Value
    slack: Value
    not_known: tuple[Missing, ...]


def held_wheels(
    aircraft: Aircraft, plumbing: Plumbing, reach: Sequence[Reach], valve: str
) -> tuple[str, ...]:
    """The calipers at which a shut valve keeps what some pedal has pressed."""
    lost = {
        (verdict.fact.cylinder, verdict.fact.caliper)
        for judged in plumbing.circuits
        for verdict in judged.of(Kind.NOT_PARKED)
        if verdict.fact.by == valve
    }
    kept = {caliper for each in reach for caliper in each.calipers if (each.cylinder, caliper) not in lost}
    parted = {
        caliper
        for judged in plumbing.circuits
        for caliper in judged.circuit.calipers
        if stands_between(judged.circuit, valve, caliper)
    }
    return tuple(each.name for each in aircraft.calipers if each.name in kept & parted)


def shut_in(
    aircraft: Aircraft, laid: tuple[LaidLine, ...], results: Results, valve: ParkingValve, unit: str
) -> tuple[ShutIn, ...]:
    """Every wheel at which a shut valve keeps fluid in."""
    lines = {line.name: line for line in laid}
    return tuple(
        _behind(aircraft, lines, results, valve, caliper, unit)
        for caliper in held_wheels(aircraft, results.plumbing, results.reach, valve.name)
    )


def every_shut_in(
    aircraft: Aircraft, laid: tuple[LaidLine, ...], results: Results, unit: str
) -> tuple[ShutIn, ...]:
    """Every wheel behind every parking valve."""
    return tuple(
        found
        for valve in aircraft.components
        if isinstance(valve, ParkingValve)
        for found in shut_in(aircraft, laid, results, valve, unit)
    )


def _behind(
    aircraft: Aircraft,
    lines: Mapping[str, LaidLine],
    results: Results,
    valve: ParkingValve,
    caliper: str,
    unit: str,
) -> ShutIn:
    names = tuple(name for name in _joined(results.plumbing.graph, caliper) if name in lines)
    place = f"{valve.place}.shut in at {caliper}"
    held = [lines[name] for name in names]
    volumes = dict(zip(lines, results.volumes, strict=True))
    volume = _sum(f"fluid shut in at {caliper}", [volumes[name] for name in names], f"{place}.volume")
    rise = _rise(held, [volumes[name] for name in names], aircraft.fluid, unit, caliper, place)
    gives = tuple(_gives(aircraft, held, results, valve, caliper))
    first = min((each for each in gives if each.holds.known), key=lambda each: each.holds.low, default=None)
    pressed = [found for name in names if (found := results.pressure_of(name)) is not None]
    hard, alone = (
        _shut_in_by(caliper, [each.at("hard", alone=one) for each in pressed], place) for one in (False, True)
    )
    brakes = {each.caliper: each for each in results.stopping.brakes}
    normal = brakes[caliper].feet[FEET.index("normal")].pressure
    words = f"degrees that {valve.name} may warm at {caliper}"
    degrees, of_one = (
        apply(degrees_until, label, place=f"{place}.{key}", limit=first.holds, start=start, rise=rise)
        if first is not None
        else _unknown(label, Dimension.NUMBER, place, "the rated pressure of what is shut in")
        for label, key, start in (
            (words, "degrees", hard),
            (f"{words}, set by one pedal", "degrees alone", alone),
        )
    )
    slack = apply(
        degrees_until,
        f"degrees of cooling until {caliper} is slack",
        place=f"{place}.slack",
        limit=normal,
        start=NOTHING,
        rise=rise,
    )
    missing = tuple(item for each in gives for item in each.holds.missing)
    rigid = rise_per_degree(aircraft.fluid, unit, valve.place)
    return ShutIn(
        valve.name, caliper, unit, names, volume, rigid, rise, gives, first, degrees, of_one, slack, missing
    )


def _shut_in_by(caliper: str, pressures: list[Value], place: str) -> Value:
    label = f"pressure shut in by the hard foot at {caliper}"
    if not pressures:
        return _unknown(label, Dimension.PRESSURE, place, "the pressure of the pedals")
    return largest(label, pressures, place)


def _joined(graph: Graph, caliper: str) -> tuple[str, ...]:
    """The lines that stand open to a caliper whatever pedals and valves do."""
    waiting = list(dict(graph.wheels).get(caliper, ()))
    seen, found = set(waiting), dict[str, None]()
    for node in waiting:
        for other, line, part in graph.neighbours.get(node, ()):
            if part:
                continue
            if line:
                found[line] = None
            if other not in seen:
                seen.add(other)
                waiting.append(other)
    return tuple(found)


def _rise(
    held: list[LaidLine], volumes: list[Value], fluid: Fluid | None, unit: str, caliper: str, place: str
) -> Value:
    label = f"rise of pressure at {caliper}, one degree warmer"
    if fluid is None:
        return _unknown(label, Dimension.PRESSURE, place, "which brake fluid is used", "fluid")
    warm = _later(unit)
    freed = [
        apply(
            freed_by_warmth,
            f"fluid without room in {line.name}",
            place=f"{line.place}.without room",
            volume=volume,
            expansion=fluid.thermal_expansion,
            wall_expansion=_widens(line),
            cool_temperature=exactly("when shut", Dimension.TEMPERATURE, WARMING_FROM, Mark.DERIVED),
            warm_temperature=warm,
        )
        for line, volume in zip(held, volumes, strict=True)
    ]
    swells = [swell(line, REFERENCE, "warmth", None, fluid) for line in held]
    walls = [_any_step(line, each.wall) for line, each in zip(held, swells, strict=True)]
    taken = [*walls, *(each.fluid for each in swells)]
    return apply(
        pressure_that_makes_room,
        label,
        place=f"{place}.rise",
        freed=_sum(f"fluid without room at {caliper}", freed, f"{place}.without room"),
        taken=_sum(f"what gives at {caliper}", taken, f"{place}.gives"),
        reference_pressure=REFERENCE,
    )


def _any_step(line: LaidLine, wall: Value) -> Value:
    """What a wall takes for one more step of pressure: a hose gets firmer as it is pressed.

    By its curve, if that is given; what was measured at one pressure is the most that a further step takes.
    """
    if line.expansion_curve:
        return by_slope(line, REFERENCE, wall.label, f"{line.place}.swell.warmth")
    return replace(wall, span=(0.0, wall.high)) if line.swells.volume.known and wall.span else wall


def _later(unit: str) -> Value:
    warmer = WARMING_FROM + from_unit(1, unit, difference=True)
    return exactly("one degree warmer", Dimension.TEMPERATURE, warmer, Mark.DERIVED)


def _widens(line: LaidLine) -> Value:
    return HOSE_WIDENS if isinstance(line.stock, Hose) else line.stock.material.thermal_expansion


def _gives(
    aircraft: Aircraft, held: list[LaidLine], results: Results, valve: ParkingValve, caliper: str
) -> Iterator[Gives]:
    """What is shut in, each with the pressure that it holds."""
    ratings = {each.line: each.hot for each in results.ratings}
    strengths = {each.line: each for each in results.strengths}
    for line in held:
        if line.kind is LineKind.TUBE:
            if line.name in strengths:
                yield Gives(line.name, "first yield", strengths[line.name].yield_pressure)
        elif line.name in ratings:
            yield Gives(line.name, "rated", ratings[line.name])
    part = find(aircraft.components, caliper)
    for each in (part, valve):
        if each is not None:
            yield Gives(each.name, "rated", each.rated_pressure)


def _sum(label: str, values: list[Value], place: str) -> Value:
    if values:
        return total(label, values, place)
    return _unknown(label, Dimension.VOLUME, place, "which lines are shut in")


def _unknown(label: str, dimension: Dimension, place: str, what: str, where: str = "") -> Value:
    return Value(label, dimension, None, Mark.MEASURED, place, missing=(Missing(where or place, what),))
