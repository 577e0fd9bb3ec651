"""The figures of the network: what the file gives, and for what nobody knows a stated range."""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.stance import asked, usual
from firmpedal.formulas.grip import stop_energy
from firmpedal.formulas.warming import disc_mass_of_each, disc_radius_of_each, drag_power, stop_time
from firmpedal.model.component import Metal
from firmpedal.model.kinds.caliper import DiscMetal
from firmpedal.quantity import Mark, Value, apply, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.analysis.stopping import Stopping
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import Caliper

D = Dimension
PLACE = "on the ground"
SPECIFIC_HEAT = {  # J/kg K; handbook figures from memory
    DiscMetal.STEEL: (460.0, 500.0),
    DiscMetal.STAINLESS_STEEL: (470.0, 520.0),
    DiscMetal.CAST_IRON: (460.0, 550.0),
}
BODY_HEAT = {
    Metal.ALUMINIUM: (880.0, 960.0),
    Metal.MAGNESIUM: (1000.0, 1050.0),
}
ANY_BODY = (450.0, 1050.0)
USUAL_STOPS, USUAL_HOT_DAY = 3.0, 100.0  # stops; degF
USUAL_BETWEEN, USUAL_TAXI = (240.0, 360.0), (600.0, 600.0)  # s


Spans = tuple[tuple[str, tuple[float, float]], ...]


@dataclass(frozen=True, slots=True)
class HeatFigures:
    """Every figure of the network as a value; ranges where nobody knows better."""

    energy: Value  # of one stop, for each wheel
    stop_time: Value
    share: Value  # of a stop's heat that goes into the disc; the rest goes into the pads and the caliper
    disc_mass: Value
    disc_heat: Value
    disc_radius: Value
    caliper_mass: Value
    caliper_heat: Value
    caliper_area: Value
    fluid_heat: Value  # capacity for each cubic metre, told as a share of water's
    fluid_depth: Value  # how deep the fluid stands behind the pistons
    line_mass: Value  # fitting and first inch of line, as so much aluminium
    disc_to_caliper: Value
    caliper_to_fluid: Value
    caliper_to_line: Value
    fluid_to_line: Value
    line_to_air: Value
    moving: Value  # heat transfer coefficient while it rolls
    standing: Value
    taxi_power: Value
    between: Value
    taxi_time: Value

    def values(self) -> tuple[tuple[str, Value], ...]:
        return tuple((each.name, getattr(self, each.name)) for each in fields(self))

    @property
    def spans(self) -> Spans:
        """The range of each figure by name [SI]; all have to be known."""
        return tuple((name, (value.low, value.high)) for name, value in self.values())


# What no source gives for a light brake: ranges wide enough to hold what builders report, estimates all.
ESTIMATES: dict[str, tuple[str, Dimension, tuple[float, float]]] = {
    "share": ("share of a stop's heat that goes into the disc", D.NUMBER, (0.85, 0.97)),
    "caliper_area": ("surface of the caliper", D.AREA, (0.015, 0.035)),
    "fluid_heat": ("heat capacity of the fluid against water", D.NUMBER, (0.35, 0.5)),
    "fluid_depth": ("depth of the fluid behind the pistons", D.LENGTH, (0.004, 0.015)),
    "line_mass": ("fitting and first inch of line, as aluminium", D.MASS, (0.008, 0.03)),
    "disc_to_caliper": ("heat conductance from disc to caliper, pads between", D.CONDUCTANCE, (0.2, 1.2)),
    "caliper_to_fluid": ("heat conductance from caliper to fluid", D.CONDUCTANCE, (1.0, 8.0)),
    "caliper_to_line": ("heat conductance from caliper to fitting", D.CONDUCTANCE, (0.1, 0.5)),
    "fluid_to_line": ("heat conductance along the fluid into the line", D.CONDUCTANCE, (0.005, 0.05)),
    "line_to_air": ("heat conductance from fitting and line to the air", D.CONDUCTANCE, (0.03, 0.15)),
    "moving": ("heat transfer while rolling, radiation counted in", D.HEAT_TRANSFER, (15.0, 60.0)),
    "standing": ("heat transfer while standing, radiation counted in", D.HEAT_TRANSFER, (8.0, 25.0)),
}


def estimate(name: str, place: str) -> Value:
    """A stated range for what nobody has measured."""
    label, dimension, span = ESTIMATES[name]
    return Value(
        label, dimension, span, Mark.ESTIMATE, f"{place}.{name.replace('_', ' ')}", "firmpedal-estimate"
    )


def heat_figures(
    aircraft: Aircraft, caliper: Caliper, stop: Stopping, speed: Value | None = None
) -> HeatFigures:
    """Gather the figures of one brake."""
    stance, name = stop.stance, caliper.name
    sharing = stop.sharing_of(caliper.name)
    begins = speed or stance.speed
    place = f"{caliper.place}.heat"
    given = {each: estimate(each, place) for each in ESTIMATES}
    heat = BODY_HEAT.get(caliper.body, ANY_BODY) if caliper.body is not None else ANY_BODY
    return HeatFigures(
        energy=_energy(stop, begins, sharing, place),
        stop_time=apply(
            stop_time, "time of a stop", place=f"{place}.stop time", speed=begins, braking=stance.wanted
        ),
        disc_mass=_of_each(
            disc_mass_of_each,
            stance.braked.at_disc(caliper),
            mass=asked(
                caliper.disc.mass, f"mass of the disc of {name}", f"mass of the disc of {name}: weigh it"
            ),
        ),
        disc_heat=usual(
            "specific heat of the disc", D.SPECIFIC_HEAT, SPECIFIC_HEAT[caliper.disc.material], place
        ),
        disc_radius=_of_each(
            disc_radius_of_each,
            stance.braked.at_disc(caliper),
            radius=asked(
                caliper.disc.radius, f"radius of the disc of {name}", f"radius of the disc of {name}: tape"
            ),
        ),
        caliper_mass=asked(
            caliper.mass, f"mass of {name}", f"mass of {name} with its pads, without line: weigh it"
        ),
        caliper_heat=usual("specific heat of the caliper", D.SPECIFIC_HEAT, heat, place),
        taxi_power=_taxi_power(aircraft, stop, sharing, place),
        between=_time(aircraft.on_the_ground.time_between_stops, "time between stops", USUAL_BETWEEN),
        taxi_time=_time(aircraft.on_the_ground.taxi_time, "taxi time", USUAL_TAXI),
        **given,
    )


def _of_each(formula: Callable[..., float], calipers: Value | None, **whole: Value) -> Value:
    """The part of a disc that one caliper has to itself; all of it where it is the only one."""
    (value,) = whole.values()
    if calipers is None:
        return value
    return apply(formula, f"{value.label}, for each caliper", place=value.place, calipers=calipers, **whole)


def _energy(stop: Stopping, begins: Value, sharing: Value, place: str) -> Value:
    """The energy by motion: what there is, not what a rule asks for."""
    return apply(
        stop_energy,
        "energy of one stop for each wheel",
        place=f"{place}.energy",
        mass=stop.stance.mass,
        speed=begins,
        wheels=sharing,
    )


def _taxi_power(aircraft: Aircraft, stop: Stopping, sharing: Value, place: str) -> Value:
    ground = aircraft.on_the_ground
    speed = ground.taxi_speed
    if not speed.known:
        span = (from_unit(8, "kt"), from_unit(12, "kt"))
        speed = usual("taxi speed", D.SPEED, span, f"{PLACE}.taxi speed")
    return apply(
        drag_power,
        "heat of a dragging brake in a taxi",
        place=f"{place}.taxi power",
        drag=_taxi_drag(aircraft, stop),
        speed=speed.named("taxi speed"),
        wheels=sharing,
    )


def _taxi_drag(aircraft: Aircraft, stop: Stopping) -> Value:
    """As declared, else 5 to 10 percent of the static thrust: what an idling propeller pulls too much."""
    declared, thrust = aircraft.on_the_ground.taxi_drag, stop.stance.thrust
    label = "drag of the brakes in a taxi"
    if declared.known or thrust.span is None:
        what = "what the brakes hold back in a taxi, or the static thrust"
        return asked(declared, label, what)
    span = (0.05 * thrust.low, 0.10 * thrust.high)
    return usual(label, D.FORCE, span, f"{PLACE}.taxi drag")


def _time(declared: Value, label: str, span: tuple[float, float]) -> Value:
    return declared.named(label) if declared.known else usual(label, D.TIME, span, f"{PLACE}.{label}")


def hot_day(aircraft: Aircraft) -> Value:
    """The air that everything is reckoned in."""
    declared = aircraft.on_the_ground.hot_day
    if declared.known:
        return declared.named("air on a hot day")
    number = from_unit(USUAL_HOT_DAY, "degF")
    return exactly(
        "air on a hot day",
        D.TEMPERATURE,
        number,
        Mark.MEMORY,
        source="common-practice",
        place=f"{PLACE}.hot day",
    )


def stops_in_a_row(aircraft: Aircraft) -> Value:
    """How many stops follow each other."""
    declared = aircraft.on_the_ground.stops_in_a_row
    if declared.known:
        return declared.named("stops in a row")
    return exactly(
        "stops in a row",
        D.NUMBER,
        USUAL_STOPS,
        Mark.MEMORY,
        source="common-practice",
        place=f"{PLACE}.stops in a row",
    )
