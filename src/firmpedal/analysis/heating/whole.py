"""Heat of every brake: bands of temperature in each situation, narrowed by a trial."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.heating.bands import Trial, bands, following
from firmpedal.analysis.heating.figures import HeatFigures, heat_figures, hot_day, stops_in_a_row
from firmpedal.analysis.heating.limits import HeatLimit, limits
from firmpedal.analysis.heating.measured import LABEL_STEP, another_trial, as_warm, hottest, port_as_measured
from firmpedal.analysis.heating.situations import IN_A_ROW, SITUATIONS
from firmpedal.formulas.warming import warmed
from firmpedal.model.display import METRIC_LENGTHS, display_of
from firmpedal.quantity import Mark, Missing, Step, Value, When, all_missing, apply, largest
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Mapping

    from firmpedal.analysis.pressure import LinePressure
    from firmpedal.analysis.stopping import Stopping
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import Caliper

EQUATION = "four lumps that warm and cool each other, C T' = q - G T, every set of figures in their ranges"
HOW = (
    "temperature labels on {name} at its port and on the line {away} from it, read after three hard "
    "stops: what the one at the port shows goes into its heat trial, under port"
)


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
    sharing: Value  # by how many the energy of a stop is divided for this brake
    measured: Value | None  # how hot the port was in the trial
    to_try: tuple[Missing, ...]  # what to do where a band is too wide for a verdict


@dataclass(frozen=True, slots=True)
class Heating:
    """The heat of every brake, in the air of a hot day."""

    asked: bool
    air: Value
    brakes: tuple[BrakeHeat, ...]


def heating(aircraft: Aircraft, stop: Stopping, pressures: Mapping[str, LinePressure]) -> Heating:
    """Work out the heat of every brake, as far as the file goes; the pressures are those of the lines."""
    air = hot_day(aircraft)
    brakes = tuple(_brake(aircraft, caliper, stop, pressures, air) for caliper in aircraft.calipers)
    return Heating(any(_asked(caliper) for caliper in aircraft.calipers), air, brakes)


def _asked(caliper: Caliper) -> bool:
    return bool(caliper.disc.written or caliper.heat_trial.written or "mass" in caliper.written)


def _brake(
    aircraft: Aircraft,
    caliper: Caliper,
    stop: Stopping,
    pressures: Mapping[str, LinePressure],
    air: Value,
) -> BrakeHeat:
    figures, row = heat_figures(aircraft, caliper, stop), stops_in_a_row(aircraft)
    pistons = _piston_area(caliper)
    known = pistons is not None and row.exact and all(value.known for _, value in figures.values())
    trial = _trial(aircraft, caliper, stop) if known else None
    found, agrees = None, None
    stops = max(1, round(row.middle)) if row.known else None
    if known and pistons is not None and stops is not None:
        found, agrees = bands(figures.spans, pistons, stops, trial)
    situations = tuple(
        _peak(caliper, name, figures, row, air, None if found is None else found[n])
        for n, name in enumerate(SITUATIONS)
    )
    measured = port_as_measured(caliper, air, agrees=agrees)
    follow = (None, None) if trial is None or pistons is None else following(trial, pistons)
    shown = (
        measured,
        *(
            as_warm(measured, share, caliper, part, None if agrees else air)
            for share, part in zip(follow, ("fluid", "line"), strict=True)
        ),
    )
    body, fluid, line = (
        hottest(f"hottest of {part} of {caliper.name}", _hottest_of(situations, part, caliper), seen)
        for part, seen in zip(("caliper", "fluid", "line"), shown, strict=True)
    )
    unbounded = measured is not None and not agrees
    allowed = limits(aircraft, caliper, (body, fluid, line), pressures, at_least=unbounded)
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
        stop.sharing_of(caliper.name),
        measured,
        (*_of_its_wheel(caliper, stop), *_to_try(aircraft, caliper, situations, agrees)),
    )


def _hottest_of(situations: tuple[Peak, ...], part: str, caliper: Caliper) -> Value:
    label = f"hottest of {part} of {caliper.name}"
    return largest(label, [getattr(each, part) for each in situations])


def _of_its_wheel(caliper: Caliper, stop: Stopping) -> tuple[Missing, ...]:
    """What is not known of the calipers at its wheel, where there may be more."""
    sharing, at_disc = stop.sharing_of(caliper.name), stop.stance.braked.at_disc(caliper)
    return tuple(dict.fromkeys((*sharing.missing, *(at_disc.missing if at_disc is not None else ()))))


def how_to_try(aircraft: Aircraft, name: str) -> str:
    """How a trial is done, with its distance in the builder's unit, round there."""
    display = display_of(aircraft.units)
    metric = display.unit(Dimension.LENGTH) in METRIC_LENGTHS
    away = from_unit(300, "mm") if metric else from_unit(12, "in")
    return HOW.format(name=name, away=display.round(away, Dimension.LENGTH))


def _to_try(
    aircraft: Aircraft, caliper: Caliper, situations: tuple[Peak, ...], agrees: bool | None
) -> tuple[Missing, ...]:
    """A trial, which needs brakes that brake, or what one that is given lacks."""
    place, given = f"{caliper.place}.heat trial", caliper.heat_trial
    warm = f"how warm the air was in the heat trial of {caliper.name}"
    air = Missing(f"{place}.air", warm, Dimension.TEMPERATURE, When.TRIED)
    if given.port.known and not given.air.known:
        return (air,)
    if given.port.known:
        after = hottest_case(situations, "caliper").situation if situations[0].caliper.known else IN_A_ROW
        return another_trial(caliper, f"after {after}", agrees=agrees)
    port = Missing(f"{place}.port", how_to_try(aircraft, caliper.name), Dimension.TEMPERATURE, When.TRIED)
    return (port,) if given.air.known else (port, air)


def hottest_case(situations: tuple[Peak, ...], part: str) -> Peak:
    """The situation in which a part can get hottest; their temperatures have to be known."""
    return max(situations, key=lambda peak: float(getattr(peak, part).high))


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


def _trial(aircraft: Aircraft, caliper: Caliper, stop: Stopping) -> Trial | None:
    """The trial of one brake; None where the file gives none."""
    given = caliper.heat_trial
    if not (given.port.known and given.air.known):
        return None
    speed = given.from_speed if given.from_speed.known else None
    figures = heat_figures(aircraft, caliper, stop, speed)
    spans = dict(figures.spans)
    if given.time_between_stops.known:
        spans["between"] = (given.time_between_stops.low, given.time_between_stops.high)
    stops = round(given.stops.middle) if given.stops.known else round(stops_in_a_row(aircraft).middle)
    rise = (given.port.low - given.air.high - LABEL_STEP, given.port.high - given.air.low + LABEL_STEP)
    return Trial(tuple(spans.items()), max(1, stops), rise)
