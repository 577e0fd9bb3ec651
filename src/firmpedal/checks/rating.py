"""What is rated for a pressure, and what it gets at all three feet."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.checks.view import Limit, Outcome, View, cited, judge_first, practice
from firmpedal.finding import Cited, Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.model.kinds import Caliper
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Answer, Missing, Value, largest

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.model.circuit import Line
    from firmpedal.model.kinds import Component

RATING = "pressure-above-rating"


def pressure_above_rating(view: View) -> Iterator[Outcome]:
    """No hose, plastic line or component sees more than it is rated for, at any foot force.

    Ratings are taken at the temperature the line meets, where data exist. The panic foot counts: it
    makes about three times the usual pressure. A hose that is over its rating in panic only, and under its
    proof pressure, is a CAUTION. A material made for vents and instruments, however
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
            if isinstance(line.made_of, Hose) and _only_in_panic(pressure.pressures, rated, line.made_of):
                yield _within_proof(view, line, line.made_of, pressure.pressures, rated)
                continue
            yield from _over(view, line.place, rating.line, pressure.pressures, rated, advice, words)
    for component in view.aircraft.components:
        yield from _rated(view, component)
    if not view.aircraft.calipers:
        missing = (Missing("components", "the calipers and what presses on them: the file has none"),)
        yield NotShown(RATING, "components", "whether the brakes are good for their pressure", missing)


def _only_in_panic(pressures: tuple[Value, ...], rated: Value, hose: Hose) -> bool:
    """Whether a hose is surely good for every foot but the panic foot, and surely proved for that one."""
    *usual, panic = pressures
    kept = all(pressure.at_most(rated) is Answer.YES for pressure in usual)
    over = panic.at_most(rated) is Answer.NO
    return kept and over and panic.at_most(hose.proof_pressure) is Answer.YES


def _within_proof(view: View, line: Line, hose: Hose, pressures: tuple[Value, ...], rated: Value) -> Finding:
    """A hose is proved once at twice its rating: a panic stop between the two can harm it, not burst it."""
    panic, proof = pressures[-1], hose.proof_pressure
    message = (
        f"{line.name} is rated for {view.show(rated)} in use and gets {view.show(panic)} at the panic foot; "
        f"that is under its proof pressure of {view.show(proof)}"
    )
    advice = (
        "hose with a higher rating, or a larger bore, if the pressure is to stay within the rating",
        "look the hose over after such a stop",
    )
    sources = cited(rated, proof)
    return Finding(RATING, Level.CAUTION, line.place, message, advice, panic, rated, "at most", sources)


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
