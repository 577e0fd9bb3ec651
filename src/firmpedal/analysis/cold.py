"""How brakes come on and off in the cold: thick fluid through thin lines, each a resistance with its end."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.analysis.bleeding.bores import bore_of
from firmpedal.analysis.pressure import FEET
from firmpedal.analysis.stroke import gap_volume, give, gives
from firmpedal.analysis.swelling import Swell, frost_wall, line_volume, swell
from firmpedal.analysis.viscosity import viscosity_at
from firmpedal.formulas.bubbles import share_of_volume
from firmpedal.formulas.release import (
    damping_ratio,
    echo_time,
    release_time,
    share_taken_up,
    time_through_line,
    wave_speed,
)
from firmpedal.model.aircraft import find
from firmpedal.quantity import Mark, Value, apply, exactly, total
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Mapping

    from firmpedal.analysis.heights_ways import Way
    from firmpedal.analysis.results import Results
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import Caliper
    from firmpedal.model.stock import Fluid

# What drives the pistons back once the pressure is gone: the seals that were bent come straight again.
ROLL_BACK = Value(
    "pressure that piston seals make as they come straight",
    Dimension.PRESSURE,
    (from_unit(3, "psi"), from_unit(10, "psi")),
    Mark.ESTIMATE,
    source="firmpedal-estimate",
)
GONE = exactly(
    "pressure at which a brake counts as let go",
    Dimension.PRESSURE,
    from_unit(10, "psi"),
    Mark.ESTIMATE,
    source="firmpedal-estimate",
)
HALF = exactly("half of what the line itself takes up", Dimension.NUMBER, 0.5, Mark.DERIVED)
CELSIUS = (-54, -40, -30, -20, 0, 20)
ROOM = 20  # degrees Celsius, at which published figures of stiffness hold


@dataclass(frozen=True, slots=True)
class Chill:
    """One wheel at one temperature: the gap `closed`, the pressure `let_go`, the pads `free`, each a time.

    `time_constant` is that of the pressure; `ringing` the least damping of a line, below 1 inertia counts.
    """

    temperature: Value
    viscosity: Value
    closed: Value
    time_constant: Value
    let_go: Value
    free: Value
    ringing: Value | None


@dataclass(frozen=True, slots=True)
class Cold:
    """One wheel, the cylinder farthest from it and the lines between, at several temperatures.

    `own` is what these lines take up themselves at the hard foot, `gap` the fluid of the pad gap, `give` what
    caliper and pads take up at the hard foot, None where the file does not tell it: then the pressure goes
    no sooner than said, and nothing overshoots for sure. `echo` is how long sound takes there and back.
    """

    caliper: str
    cylinder: str
    lines: tuple[str, ...]
    pressure: Value
    gap: Value
    own: Value
    give: Value | None
    echo: Value
    rows: tuple[Chill, ...]


def cold_of(aircraft: Aircraft, laid: tuple[LaidLine, ...], results: Results) -> tuple[Cold, ...]:
    """Every wheel that a cylinder presses; none without a fluid or where its thickness is not known."""
    fluid = aircraft.fluid
    if fluid is None or len(fluid.viscosity_at) < 2:
        return ()
    lines = {line.name: line for line in laid}
    found = (_wheel(aircraft, lines, results, way, fluid) for way in results.heights.ways)
    return tuple(each for each in found if each is not None)


def _wheel(
    aircraft: Aircraft, lines: Mapping[str, LaidLine], results: Results, way: Way, fluid: Fluid
) -> Cold | None:
    caliper, cylinder = find(aircraft.calipers, way.caliper), _farthest(aircraft, way)
    names = _lines_below(way, cylinder)
    made = next((each for each in results.cylinders if each.cylinder == cylinder), None)
    if caliper is None or made is None or not names:
        return None
    held = [lines[name] for name in names]
    hard = made.pressures[FEET.index("hard")]
    swells = [swell(line, hard, "cold", None, fluid) for line in held]
    taken = [_taken(line, each) for line, each in zip(held, swells, strict=True)]
    place = f"{caliper.place}.cold"
    gap = gap_volume(caliper)
    given = give(caliper, hard, "cold") if gives(caliper) else None
    wheel = _Wheel(caliper, tuple(held), tuple(taken), given, gap, fluid, hard)
    in_frost = (_taken_in_frost(*each, hard) for each in zip(held, swells, taken, strict=True))
    colder = replace(wheel, taken=tuple(in_frost))
    rows = tuple(
        _chill(colder if celsius < ROOM else wheel, from_unit(celsius, "degC"), f"{place}.{celsius} degC")
        for celsius in CELSIUS
        if fluid.viscosity_at[0][0] <= from_unit(celsius, "degC") + 1e-6
    )
    own = total(f"what the lines to {caliper.name} take up at the hard foot", taken, f"{place}.own")
    echo = total(
        f"time of sound from {cylinder} to {caliper.name} and back",
        [_echo(line, each, hard, fluid) for line, each in zip(held, swells, strict=True)],
        f"{place}.echo",
    )
    return Cold(caliper.name, cylinder, names, hard, gap, own, given, echo, rows)


def _farthest(aircraft: Aircraft, way: Way) -> str:
    """The cylinder that stands farthest from the wheel, or the top if that is one."""
    names = {each.name for each in aircraft.cylinders}
    heads = [head for spot in way.spots if (head := spot.near.rpartition(".")[0]) in names]
    return heads[-1] if heads else way.top


def _lines_below(way: Way, cylinder: str) -> tuple[str, ...]:
    """The lines between a wheel and a cylinder, from the wheel up."""
    heads = [spot.near.rpartition(".")[0] for spot in way.spots]
    stop = heads.index(cylinder) if cylinder in heads else len(heads) - 1
    return tuple(dict.fromkeys(spot.line for spot in way.spots[: stop + 1] if spot.line))


def _taken(line: LaidLine, each: Swell) -> Value:
    """What wall and fluid of one line take up."""
    return total(f"what {line.name} takes up", (each.wall, each.fluid), f"{line.place}.cold.taken up")


def _taken_in_frost(line: LaidLine, each: Swell, warm: Value, pressure: Value) -> Value:
    """The same in the cold: from what the wall takes at -40 degrees and half the fluid, to all of it warm.

    Plastic and fluid get stiffer as they get colder; how much at each temperature is not published. From
    what fluids lose as they warm, they are not twice as stiff even at -54 degrees Celsius: our estimate.
    """
    if warm.span is None:
        return warm
    frost = frost_wall(line, pressure, "cold")
    least = HALF.low * each.fluid.low + (min(frost.low, each.wall.low) if frost.known else 0.0)
    return replace(warm, span=(least, warm.high), mark=Mark.ESTIMATE)


def _echo(line: LaidLine, each: Swell, hard: Value, fluid: Fluid) -> Value:
    """How long sound takes through one line and back, its wall giving as at the hard foot."""
    place = f"{line.place}.echo"
    growth = apply(
        share_taken_up,
        f"swelling of {line.name} as a share",
        place=place,
        taken=each.wall,
        volume=line_volume(line),
    )
    speed = apply(
        wave_speed,
        f"speed of sound in {line.name}",
        place=f"{line.place}.speed of sound",
        density=fluid.density,
        bulk_modulus=fluid.bulk_modulus,
        growth=growth,
        pressure=hard,
    )
    words = f"sound through {line.name} and back"
    return apply(echo_time, words, place=place, length=_length(line), wave_speed=speed)


def _length(line: LaidLine) -> Value:
    return line.order_length if line.hose else line.developed_length or line.path_length


@dataclass(frozen=True, slots=True)
class _Wheel:
    """One wheel's lines from the wheel up, what each takes up, and what stands at their end."""

    caliper: Caliper
    held: tuple[LaidLine, ...]
    taken: tuple[Value, ...]
    given: Value | None
    gap: Value
    fluid: Fluid
    hard: Value


def _chill(wheel: _Wheel, kelvin: float, place: str) -> Chill:
    caliper, held, fluid, hard, gap = wheel.caliper, wheel.held, wheel.fluid, wheel.hard, wheel.gap
    temperature = exactly("temperature", Dimension.TEMPERATURE, kelvin, Mark.DERIVED)
    viscosity = viscosity_at(fluid, temperature, f"{place}.viscosity")
    behind = _behind(wheel, place)

    def through(what: str, volumes: list[Value], pressure: Value) -> Value:
        parts = [
            apply(
                time_through_line,
                f"{what}, part of {line.name}",
                place=f"{place}.{line.name}",
                **_along(line, fluid, viscosity),
                volume=volume,
                pressure=pressure,
            )
            for line, volume in zip(held, volumes, strict=True)
        ]
        return total(f"{what} of {caliper.name}", parts, f"{place}.{what}")

    gaps = [gap] * len(held)
    constant = through("time constant", behind, hard)
    let_go = apply(
        release_time,
        f"pressure gone at {caliper.name}",
        place=f"{place}.let go",
        time_constant=constant,
        from_pressure=hard,
        to_pressure=GONE,
    )
    return Chill(
        temperature,
        viscosity,
        through("gap filled", gaps, hard),
        constant,
        let_go,
        through("pads back", gaps, ROLL_BACK),
        _ringing(wheel, behind, viscosity, place),
    )


def _along(line: LaidLine, fluid: Fluid, viscosity: Value) -> dict[str, Value]:
    """What the flow along a line goes by."""
    return {
        "viscosity": viscosity,
        "density": fluid.density,
        "length": _length(line),
        "bore": bore_of(line),
    }


def _behind(wheel: _Wheel, place: str) -> list[Value]:
    """For each line from the wheel up: what lies behind it takes up, and half of its own."""
    end = [wheel.given] if wheel.given is not None else []
    found = []
    for n, (line, own) in enumerate(zip(wheel.held, wheel.taken, strict=True)):
        half = apply(share_of_volume, f"half of {line.name}", place=f"{place}.half", volume=own, share=HALF)
        parts = [*end, *wheel.taken[:n], half]
        found.append(total(f"taken up behind {line.name}", parts, f"{place}.behind {line.name}"))
    return found


def _ringing(wheel: _Wheel, behind: list[Value], viscosity: Value, place: str) -> Value | None:
    """The least damping of a line; None where it is not known, or nothing behind a line takes anything up."""
    found = [
        apply(
            damping_ratio,
            f"damping of {line.name}",
            place=f"{place}.damping of {line.name}",
            **_along(line, wheel.fluid, viscosity),
            volume=volume,
            pressure=wheel.hard,
        )
        for line, volume in zip(wheel.held, behind, strict=True)
    ]
    known = [value for value in found if value.known]
    return min(known, key=lambda value: value.low) if len(known) == len(found) else None
