"""What is rated for a pressure, and what it gets at all three feet."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.checks.circuit_words import together_words
from firmpedal.checks.view import Limit, Outcome, View, cited, judge_first, practice
from firmpedal.finding import Cited, Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.model.kinds import Caliper
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Answer, Missing, Value, largest

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.pressure import LinePressure
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.circuit import Line
    from firmpedal.model.kinds import Component

RATING = "pressure-above-rating"


def pressure_above_rating(view: View) -> Iterator[Outcome]:
    """No hose, plastic line or component sees more than it is rated for, at any foot force.

    Ratings are taken at the temperature the line meets, where data exist. The panic foot counts: it
    makes about three times the usual pressure. A hose that is over its rating in panic only, and under its
    proof pressure, is a CAUTION. Where the cylinder of one seat feeds that of the other, both may press at
    once: until their maker says whether the feet add up, a line gets anything from what one foot makes to
    the sum of both. A material made for vents and instruments, however strong its tube works out, is no
    brake line.
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
            found = _hose_in_panic(view, line, pressure, rated)
            feet = together_words(view, line.name)
            yield from found or _over(
                view, line.place, line.name, pressure.pressures, rated, advice, words, feet
            )
    for component in view.aircraft.components:
        yield from _rated(view, component)
    if not view.aircraft.calipers:
        missing = (Missing("components", "the calipers and what presses on them: the file has none"),)
        yield NotShown(RATING, "components", "whether the brakes are good for their pressure", missing)


def _hose_in_panic(view: View, line: Line, pressure: LinePressure, rated: Value) -> tuple[Outcome, ...]:
    """A hose that is over its rating in panic only and proved for that; nothing where it is not so.

    Where more feet than one may add up, it is said of one pedal alone, and what is not known beside it.
    """
    hose = line.made_of
    if not isinstance(hose, Hose):
        return ()
    feet = together_words(view, line.name)
    if _only_in_panic(pressure.pressures, rated, hose):
        return (_within_proof(view, line, hose, pressure.pressures[-1], rated, feet),)
    *usual, panic = pressure.pressures
    limits = [
        *(Limit(each, rated, "at most") for each in usual),
        Limit(panic, hose.proof_pressure, "at most"),
    ]
    broken = any(limit.kept is Answer.NO for limit in limits)
    if broken or not _only_in_panic(pressure.alone, rated, hose):
        return ()
    missing = dict.fromkeys(
        item for limit in limits if limit.kept is Answer.UNKNOWN for item in limit.missing
    )
    message = f"whether {line.name} is good for its pressure{feet}"
    return (
        _within_proof(view, line, hose, pressure.alone[-1], rated, ", with one pedal pressed"),
        NotShown(RATING, line.place, message, tuple(missing)),
    )


def _only_in_panic(pressures: tuple[Value, ...], rated: Value, hose: Hose) -> bool:
    """Whether a hose is surely good for every foot but the panic foot, and surely proved for that one."""
    *usual, panic = pressures
    kept = all(pressure.at_most(rated) is Answer.YES for pressure in usual)
    over = panic.at_most(rated) is Answer.NO
    return kept and over and panic.at_most(hose.proof_pressure) is Answer.YES


def _within_proof(view: View, line: Line, hose: Hose, panic: Value, rated: Value, feet: str) -> Finding:
    """A hose is proved once at twice its rating: a panic stop between the two can harm it, not burst it."""
    proof = hose.proof_pressure
    message = (
        f"{line.name} is rated for {view.show(rated)} in use and gets {view.show(panic)} at the panic "
        f"foot{feet}; that is under its proof pressure of {view.show(proof)}"
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
    lines = _lines_at(view, component)
    pressures = _component_pressures(view, component, lines)
    if pressures:
        rated = component.rated_pressure.named(f"rated pressure of {component.name}")
        if not rated.known:
            what = Missing(rated.place, f"the rated pressure of {component.name}, from its maker")
            rated = replace(rated, missing=(what,))
        advice = ("a component rated for the panic foot", "a larger master cylinder bore")
        feet = together_words(view, *lines)
        yield from _over(view, component.place, component.name, pressures, rated, advice, feet=feet)
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
    feet: str = "",
) -> Iterator[Outcome]:
    """Say it once, at the lightest foot that breaks the rating; else all that is unknown."""
    listed = ", ".join(f"{view.show(p)} at the {foot} foot" for foot, p in zip(FEET, pressures, strict=True))
    message = f"{name} is good for {view.show(rated)}{where} and gets {listed}{feet}"
    yield from judge_first(
        [Limit(pressure, rated, "at most") for pressure in pressures],
        [message] * len(pressures),
        rule=RATING,
        level=Level.WARNING,
        place=place,
        asked=f"whether {name} is good for its pressure{feet}",
        tries=tries,
    )


def _lines_at(view: View, component: Component) -> tuple[str, ...]:
    names = {f"{component.name}.{port.name}" for port in component.ports}
    return tuple(line.name for line in view.aircraft.lines if {line.start, line.finish} & names)


def _component_pressures(view: View, component: Component, lines: tuple[str, ...]) -> tuple[Value, ...]:
    """The greatest pressure at each foot: of the cylinder's own making, or of the lines that come to it."""
    coming = [made.greatest for made in view.results.cylinders if made.cylinder == component.name]
    coming += [item.pressures for item in view.results.pressures if item.line in lines]
    at_each = zip(*coming, strict=True)
    return tuple(_greatest(component, foot, values) for foot, values in zip(FEET, at_each, strict=False))


def _greatest(component: Component, foot: str, values: tuple[Value, ...]) -> Value:
    if all(value.span == values[0].span for value in values):
        return values[0]
    label = f"pressure in {component.name} at the {foot} foot"
    return largest(label, values, f"{component.place}.pressure.{foot}")
