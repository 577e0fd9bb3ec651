"""Rules about pressure: ratings, yield, burst, at all three feet."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.analysis.strength import METAL_HOLDS
from firmpedal.checks.view import Limit, Outcome, View, cited, judge, judge_first, practice
from firmpedal.finding import Cited, Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.model.kinds import Caliper
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Answer, Mark, Missing, Value, exactly, largest
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.model.circuit import Line
    from firmpedal.model.kinds import Component

RATING = "pressure-above-rating"
YIELD_FACTOR = 1.0
USUAL_LOW = from_unit(400, "psi")
BURST_FACTOR = 4.0  # on the hard foot: published practice for hydraulic tube, from memory


def pressure_above_rating(view: View) -> Iterator[Outcome]:
    """No hose, plastic line or component sees more than it is rated for, at any foot force.

    Ratings are taken at the temperature the line meets, where data exist. The panic foot counts: it
    makes about three times the usual pressure. A material made for vents and instruments, however
    strong its tube works out, is no brake line.
    """
    for laid in view.laid:
        yield from _made_for_pressure(view, laid)
    yield from _low_pressure_parts(view)
    for rating in view.results.ratings:
        pressure = view.results.pressure_of(rating.line)
        line = find(view.aircraft.lines, rating.line)
        if pressure is not None and line is not None:
            met = rating.temperature
            yield from _too_hot(view, line, met)
            words = f" at {view.show(met)}" if met is not None and met.known else ""
            advice = ("tube or hose with a higher rating", "a larger bore or a lower pedal ratio")
            cold = any(p.at_most(rating.cold) is Answer.NO for p in pressure.pressures)
            rated = rating.cold if cold and not rating.hot.known else rating.hot  # hot is never better
            words = "" if rated is rating.cold else words
            yield from _over(view, line.place, rating.line, pressure.pressures, rated, advice, words)
    for component in view.aircraft.components:
        yield from _rated(view, component)
    if not view.aircraft.calipers:
        missing = (Missing("components", "the calipers and what presses on them: the file has none"),)
        yield NotShown(RATING, "components", "whether the brakes are good for their pressure", missing)


def _made_for_pressure(view: View, line: LaidLine) -> Iterator[Outcome]:
    stock = line.stock
    if isinstance(stock, Hose) or stock.material.brake_pressure or not view.results.pressure_of(line.name):
        return
    yield Finding(
        RATING,
        Level.WARNING,
        line.place,
        f"{line.name} carries brake pressure, and {stock.material.name} is for low or no pressure only",
        ("tube of 5052-O or of corrosion-resistant steel", "braided hose rated for the panic foot"),
        sources=practice("faa-h-8083-30" if stock.kind is LineKind.TUBE else "common-practice"),
    )


def _too_hot(view: View, line: Line, met: Value | None) -> Iterator[Outcome]:
    """A hose that surely runs hotter than its limit has no rating left."""
    if met is None or met.span is None or not isinstance(line.made_of, Hose):
        return
    most = line.made_of.temperature
    if most.span is not None and met.low > most.high:
        message = f"{line.name} meets {view.show(met)}; this hose is good from {view.show(most)}"
        advice = ("lead it out of the heat, or shield it", "a hose for that heat, by its maker's word")
        yield Finding(RATING, Level.WARNING, line.place, message, advice, sources=cited(most))


def _low_pressure_parts(view: View) -> Iterator[Outcome]:
    for joint in view.assembly.joints:
        for part in joint.parts:
            if not part.brake_pressure:
                yield Finding(
                    RATING,
                    Level.WARNING,
                    joint.place,
                    f"{joint.name}: {part.designation} is a low-pressure or obsolete form: {part.note}",
                    ("leave the fitting out of the file and take the one that is found",),
                    sources=(Cited(part.source, part.mark),),
                )


def _rated(view: View, component: Component) -> Iterator[Outcome]:
    pressures = _component_pressures(view, component)
    if pressures:
        rated = component.rated_pressure.named(f"rated pressure of {component.name}")
        if not rated.known:
            what = Missing(rated.place, f"the rated pressure of {component.name}, from its maker")
            rated = replace(rated, missing=(what,))
        advice = ("a component rated for the panic foot", "a larger master cylinder bore")
        yield from _over(view, component.place, component.name, pressures, rated, advice)
    elif isinstance(component, Caliper):
        words = f"which master cylinder presses on {component.name}: none does by the lines in the file"
        message = f"whether {component.name} is good for its pressure"
        yield NotShown(RATING, component.place, message, (Missing(component.place, words),))


def _over(
    view: View,
    place: str,
    name: str,
    pressures: tuple[Value, ...],
    rated: Value,
    tries: tuple[str, ...],
    where: str = "",
) -> Iterator[Outcome]:
    """Say it once, at the lightest foot that breaks the rating; else all that is unknown."""
    listed = ", ".join(f"{view.show(p)} at the {foot} foot" for foot, p in zip(FEET, pressures, strict=True))
    message = f"{name} is good for {view.show(rated)}{where} and gets {listed}"
    yield from judge_first(
        [Limit(pressure, rated, "at most") for pressure in pressures],
        [message] * len(pressures),
        rule=RATING,
        level=Level.WARNING,
        place=place,
        asked=f"whether {name} is good for its pressure",
        tries=tries,
    )


def _component_pressures(view: View, component: Component) -> tuple[Value, ...]:
    """The greatest pressure at each foot: of the cylinder's own making, or of the lines that come to it."""
    names = {f"{component.name}.{port.name}" for port in component.ports}
    lines = [line.name for line in view.aircraft.lines if {line.start, line.finish} & names]
    coming = [made.pressures for made in view.results.cylinders if made.cylinder == component.name]
    coming += [item.pressures for item in view.results.pressures if item.line in lines]
    at_each = zip(*coming, strict=True)
    return tuple(_greatest(component, foot, values) for foot, values in zip(FEET, at_each, strict=False))


def _greatest(component: Component, foot: str, values: tuple[Value, ...]) -> Value:
    if all(value.span == values[0].span for value in values):
        return values[0]
    label = f"pressure in {component.name} at the {foot} foot"
    return largest(label, values, f"{component.place}.pressure.{foot}")


def pressure_below_usual(view: View) -> Iterator[Outcome]:
    """The normal foot makes a pressure that brakes work with.

    Light disc brakes use 400 to 600 psi. Under half of the lower figure they hardly brake at all:
    mostly a bore, an arm or a unit is written wrong.
    """
    for made in view.results.cylinders:
        cylinder = find(view.aircraft.components, made.cylinder)
        pressure = made.pressures[0]
        if cylinder is None or not pressure.known:
            continue  # what is unknown is asked for where it decides more
        usual = exactly(
            "least usual pressure", Dimension.PRESSURE, USUAL_LOW, Mark.READ, source="brake-design-theory"
        )
        level = Level.WARNING if pressure.high < USUAL_LOW / 2 else Level.CAUTION
        made_words = f"{cylinder.name} makes {view.show(pressure)} at the normal foot"
        message = f"{made_words}; {view.show(usual)} and more is usual"
        yield from judge(
            Limit(pressure.named(f"pressure of {cylinder.name} at the normal foot"), usual, "at least"),
            rule="pressure-below-usual",
            level=level,
            place=cylinder.place,
            message=message,
            tries=(
                "look at the bore, the pedal's arms and their units",
                "a smaller bore or a higher pedal ratio",
            ),
        )


def tube_yields(view: View) -> Iterator[Outcome]:
    """No metal tube yields at the panic foot.

    First yield is by von Mises at the bore with closed ends, with the tube standard's minimum
    strength where one is known and the wall as bought: outside a bend it is thinner. The strength
    is that of a cool tube, taken to hold up to 100 degC; above, nothing is known.
    """
    for strength in view.results.strengths:
        line = find(view.aircraft.lines, strength.line)
        if line is None:
            continue
        yield from _hot_tube(line, strength.temperature)
        wanted = _wanted(
            view.aircraft.limits.yield_factor, "yield factor wanted at the panic foot", YIELD_FACTOR
        )
        message = (
            f"{strength.line} first yields at {view.show(strength.yield_pressure)}, "
            f"{view.show(strength.yield_factor)} times the panic foot; {view.show(wanted)} is wanted"
        )
        yield from judge(
            Limit(strength.yield_factor, wanted, "at least"),
            rule="tube-yields",
            level=Level.WARNING,
            place=line.place,
            message=message,
            tries=("a stronger alloy such as 5052-O", "a smaller tube or a thicker wall"),
        )


def _hot_tube(line: Line, met: Value | None) -> Iterator[Outcome]:
    """Ask for the strength of a metal tube where it runs hotter than its figures hold."""
    if met is not None and (met.span is None or met.high > METAL_HOLDS):
        missing = met.missing or (Missing(line.place, f"the strength of {line.name} at that temperature"),)
        yield NotShown("tube-yields", line.place, f"whether {line.name} holds where it runs hot", missing)


def burst_margin_too_small(view: View) -> Iterator[Outcome]:
    """Burst is at least four times the pressure of the hard foot.

    Burst is by Barlow's formula with the minimum ultimate strength; four is the usual margin of
    hydraulic tube and a field to overrule.
    """
    for strength in view.results.strengths:
        line = find(view.aircraft.lines, strength.line)
        if line is None:
            continue
        wanted = _wanted(
            view.aircraft.limits.burst_factor, "burst factor wanted at the hard foot", BURST_FACTOR
        )
        message = (
            f"{strength.line} bursts at {view.show(strength.burst_pressure)}, "
            f"{view.show(strength.burst_factor)} times the hard foot; {view.show(wanted)} is wanted"
        )
        yield from judge(
            Limit(strength.burst_factor, wanted, "at least"),
            rule="burst-margin-too-small",
            level=Level.WARNING,
            place=line.place,
            message=message,
            tries=("a stronger alloy or a thicker wall", "a smaller tube"),
        )


def _wanted(declared: Value, label: str, usual: float) -> Value:
    if declared.known:
        return declared.named(label)
    return exactly(label, Dimension.NUMBER, usual, Mark.MEMORY, source="common-practice")
