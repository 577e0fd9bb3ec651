"""Heat of every brake: bands of temperature in each situation, narrowed by a trial."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.analysis.heating.figures import HeatFigures, heat_figures, hot_day, stops_in_a_row
from firmpedal.analysis.heating.limits import HeatLimit, limits
from firmpedal.analysis.heating.samples import CALIPER, drawn, every_share, moved_onto
from firmpedal.analysis.heating.situations import IN_A_ROW, SITUATIONS, course, films, peaks
from firmpedal.formulas.warming import warmed
from firmpedal.quantity import Mark, Missing, Step, Value, When, all_missing, apply, largest
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Mapping

    from firmpedal.analysis.heating.network import Array
    from firmpedal.analysis.stopping import Stopping, WheelBrake
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import Caliper

LABEL_STEP = 5.0  # K; from one field of a temperature label to the next
EQUATION = "four lumps that warm and cool each other, C T' = q - G T, every set of figures in their ranges"
HOW = (
    "temperature labels on {name} at its port and on the line 12 in from it, read after three hard stops: "
    "what the one at the port shows goes under `heat trial`"
)

Spans = tuple[tuple[str, tuple[float, float]], ...]

CLOCK = ("stop_time", "between", "taxi_time")  # one for all sets where a picture has one time along it


@dataclass(frozen=True, slots=True)
class Peak:
    """The greatest temperatures of one situation."""

    situation: str
    disc: Value
    caliper: Value
    fluid: Value
    line: Value


@dataclass(frozen=True, slots=True)
class BrakeHeat:
    """The heat of one brake; `agrees` says whether its trial agrees with any set of figures."""

    caliper: str
    figures: HeatFigures
    peaks: tuple[Peak, ...]
    limits: tuple[HeatLimit, ...]
    agrees: bool | None
    pistons: float | None
    stops: int | None
    trial: Trial | None
    disc_alone: Value  # right after one stop, with nothing lost: a check by hand
    to_try: tuple[Missing, ...]  # what to do where a band is too wide for a verdict


@dataclass(frozen=True, slots=True)
class Heating:
    """The heat of every brake, in the air of a hot day."""

    asked: bool
    air: Value
    brakes: tuple[BrakeHeat, ...]


def heating(aircraft: Aircraft, stop: Stopping) -> Heating:
    """Work out the heat of every brake, as far as the file goes."""
    air = hot_day(aircraft)
    brakes = tuple(
        _brake(aircraft, caliper, stop, brake, air)
        for caliper, brake in zip(aircraft.calipers, stop.brakes, strict=True)
    )
    return Heating(any(_asked(caliper) for caliper in aircraft.calipers), air, brakes)


def _asked(caliper: Caliper) -> bool:
    return bool(caliper.disc.written or caliper.heat_trial.written or "mass" in caliper.written)


def _brake(aircraft: Aircraft, caliper: Caliper, stop: Stopping, brake: WheelBrake, air: Value) -> BrakeHeat:
    figures, row = heat_figures(aircraft, caliper, stop), stops_in_a_row(aircraft)
    pistons = _piston_area(caliper)
    known = pistons is not None and row.exact and all(value.known for _, value in figures.values())
    trial = _trial(aircraft, caliper, stop) if known else None
    found, agrees = None, None
    stops = max(1, round(row.middle)) if row.known else None
    if known and pistons is not None and stops is not None:
        found, agrees = bands(_spans(figures), pistons, stops, trial)
    situations = tuple(
        _peak(caliper, name, figures, row, air, None if found is None else found[n])
        for n, name in enumerate(SITUATIONS)
    )
    hottest = tuple(
        largest(f"hottest of {part} of {caliper.name}", [getattr(each, part) for each in situations])
        for part in ("caliper", "fluid", "line")
    )
    body, fluid, line = hottest
    allowed = limits(aircraft, caliper, (body, fluid, line), brake.feet[1].pressure)
    return BrakeHeat(
        caliper.name,
        figures,
        situations,
        allowed,
        agrees,
        pistons,
        stops,
        trial,
        _disc_alone(caliper, figures, air),
        _to_try(caliper),
    )


def _to_try(caliper: Caliper) -> tuple[Missing, ...]:
    """A trial, which needs brakes that brake, or what one that is given lacks."""
    place, given = f"{caliper.place}.heat trial", caliper.heat_trial
    warm = f"how warm the air was in the heat trial of {caliper.name}"
    air = Missing(f"{place}.air", warm, Dimension.TEMPERATURE, When.TRIED)
    if given.port.known and not given.air.known:
        return (air,)
    port = Missing(f"{place}.port", HOW.format(name=caliper.name), Dimension.TEMPERATURE, When.TRIED)
    return (port,) if given.air.known else (port, air)


def _disc_alone(caliper: Caliper, figures: HeatFigures, air: Value) -> Value:
    return apply(
        warmed,
        f"disc of {caliper.name} right after one stop, nothing lost",
        place=f"{caliper.place}.heat.disc alone",
        start=air,
        energy=figures.energy,
        share=figures.share,
        mass=figures.disc_mass,
        specific_heat=figures.disc_heat,
    )


def _piston_area(caliper: Caliper) -> float | None:
    """All pistons of one side; an opposed caliper has as many again, with as much caliper round them."""
    bore, count = caliper.pistons.bore, caliper.pistons.count_per_side
    if not (bore.known and count.known):
        return None
    return math.pi * bore.middle**2 / 4 * count.middle


def _spans(figures: HeatFigures) -> Spans:
    return tuple((name, (value.low, value.high)) for name, value in figures.values())


def _peak(
    caliper: Caliper,
    name: str,
    figures: HeatFigures,
    row: Value,
    air: Value,
    band: tuple[tuple[float, float], ...] | None,
) -> Peak:
    inputs = (("T_a", air), ("n", row), *((each, value) for each, value in figures.values()))
    step = Step(EQUATION, inputs)
    missing = all_missing(value for _, value in inputs)
    values = []
    for number, part in enumerate(("disc", "caliper", "fluid", "line")):
        words = "end of the line" if part == "line" else part
        place = f"{caliper.place}.heat.{name}.{part}"
        span = None if band is None else (air.low + band[number][0], air.high + band[number][1])
        label = f"greatest temperature of the {words}, {name}"
        lacks = missing if span is None else ()
        values.append(
            Value(
                label, Dimension.TEMPERATURE, span, Mark.ESTIMATE, place, "firmpedal-derivation", step, lacks
            )
        )
    return Peak(name, *values)


@dataclass(frozen=True, slots=True)
class Trial:
    """A trial as plain numbers: the spans of its own figures, its stops, and how much warmer the port was."""

    spans: Spans
    stops: int
    rise: tuple[float, float]


def _trial(aircraft: Aircraft, caliper: Caliper, stop: Stopping) -> Trial | None:
    """The trial of one brake; None where the file gives none."""
    given = caliper.heat_trial
    if not (given.port.known and given.air.known):
        return None
    speed = given.from_speed if given.from_speed.known else None
    figures = heat_figures(aircraft, caliper, stop, speed)
    spans = dict(_spans(figures))
    if given.time_between_stops.known:
        spans["between"] = (given.time_between_stops.low, given.time_between_stops.high)
    stops = round(given.stops.middle) if given.stops.known else round(stops_in_a_row(aircraft).middle)
    rise = (given.port.low - given.air.high - LABEL_STEP, given.port.high - given.air.low + LABEL_STEP)
    return Trial(tuple(spans.items()), max(1, stops), rise)


Band = tuple[tuple[float, float], ...]
Bands = tuple[Band, ...]
UNFOUND = 0.15  # of a narrowed band's width, on each side: brute force finds ends half as far out


@lru_cache(maxsize=64)
def bands(spans: Spans, pistons: float, stops: int, trial: Trial | None) -> tuple[Bands, bool | None]:
    """The lowest and highest peak of every lump above the air, in every situation.

    Args:
        spans: Ranges of all figures by name [SI].
        pistons: Area that fluid stands behind [m^2].
        stops: In a row.
        trial: Keeps the sets of figures that agree with it; if none can, all are kept.

    Returns:
        For each situation and each lump its band [K], and whether the trial agrees with any set.
    """
    shares, agrees = _kept(tuple(name for name, _ in spans), pistons, trial)
    if agrees:
        everything, _ = bands(spans, pistons, stops, None)
        return tuple(map(_widened, _bands(spans, shares, pistons, stops), everything)), agrees
    return _bands(spans, shares, pistons, stops), agrees


def _bands(spans: Spans, shares: Array, pistons: float, stops: int) -> Bands:
    figures = drawn(dict(spans), shares)
    both, found = films(figures, pistons), []
    for name in SITUATIONS:
        highest = peaks(name, figures, both, stops)
        ends = zip(highest.min(axis=0), highest.max(axis=0), strict=True)
        found.append(tuple((float(low), float(high)) for low, high in ends))
    return tuple(found)


def _widened(narrow: Band, wide: Band) -> Band:
    """What a search among the sets that agree with a trial found, with room for what it did not find."""
    found = []
    for (low, high), (least, most) in zip(narrow, wide, strict=True):
        room = UNFOUND * (high - low)
        found.append((max(least, low - room), min(most, high + room)))
    return tuple(found)


@lru_cache(maxsize=16)
def _kept(names: tuple[str, ...], pistons: float, trial: Trial | None) -> tuple[Array, bool | None]:
    """The sets of figures that agree with a trial, as shares of their ranges; all, if none can."""
    everything = every_share(names)
    if trial is None:
        return everything, None
    spans, count = dict(trial.spans), trial.stops

    def shown(shares: Array) -> Array:
        tried = drawn(spans, shares)
        found: Array = peaks(IN_A_ROW, tried, films(tried, pistons), count)[:, CALIPER]
        return found

    seen, (low, high) = shown(everything), trial.rise
    if seen.min() > high or seen.max() < low:
        return everything, False
    agreeing = everything[(seen >= low) & (seen <= high)]
    edges = [moved_onto(everything, seen, label, shown) for label in (low, high)]
    return np.concatenate((agreeing, *edges)), True


def courses(
    brake: BrakeHeat, name: str, looks: int = 60
) -> tuple[Array, Mapping[int, tuple[Array, Array]]] | None:
    """Bands of temperature over time in one situation, for a picture; None before it is known.

    What takes time takes the middle of its range, so that all sets have one clock.

    Returns:
        Times [s], and for each lump its lowest and highest temperature above the air at each time [K].
    """
    if brake.pistons is None or brake.stops is None or not brake.peaks[0].disc.known:
        return None
    spans = dict(_spans(brake.figures))
    shares, _ = _kept(tuple(spans), brake.pistons, brake.trial)
    spans |= {name: (sum(spans[name]) / 2,) * 2 for name in CLOCK}
    figures = drawn(spans, shares)
    times, found = course(name, figures, films(figures, brake.pistons), brake.stops, looks)
    return times[0], {n: (found[:, :, n].min(axis=0), found[:, :, n].max(axis=0)) for n in range(4)}
