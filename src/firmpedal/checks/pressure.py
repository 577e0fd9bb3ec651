"""Rules about too little pressure, and about tube under too much: yield and burst."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.strength import METAL_HOLDS
from firmpedal.checks.circuit_words import together_words
from firmpedal.checks.view import Limit, Outcome, View, judge
from firmpedal.finding import Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.quantity import Mark, Missing, Value, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.circuit import Line

YIELD_FACTOR = 1.0
USUAL_LOW = from_unit(400, "psi")
HOT = (
    "how hot {name} gets, by heat strips along it: up to {holds} its strength is known. If it gets hotter, "
    "lead it where it is cooler, or take a metal by its maker's sheet for that temperature"
)
BURST_FACTOR = 4.0  # on the hard foot: published practice for hydraulic tube, from memory


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
                "a smaller bore or a higher pedal ratio; either uses more of the stroke",
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
        yield from _hot_tube(view, line, strength.temperature)
        wanted = _wanted(
            view.aircraft.limits.yield_factor, "yield factor wanted at the panic foot", YIELD_FACTOR
        )
        message = (
            f"{strength.line} first yields at {view.show(strength.yield_pressure)}, "
            f"{view.show(strength.yield_factor)} times the panic foot; {view.show(wanted)} is wanted"
            f"{together_words(view, strength.line)}"
        )
        yield from judge(
            Limit(strength.yield_factor, wanted, "at least"),
            rule="tube-yields",
            level=Level.WARNING,
            place=line.place,
            message=message,
            tries=("a stronger alloy such as 5052-O", "a smaller tube or a thicker wall"),
        )


def _hot_tube(view: View, line: Line, met: Value | None) -> Iterator[Outcome]:
    """Ask for the strength of a metal tube where it runs hotter than its figures hold."""
    if met is not None and (met.span is None or met.high > METAL_HOLDS):
        holds = exactly("heat that metal tube stands", Dimension.TEMPERATURE, METAL_HOLDS, Mark.MEMORY)
        what = HOT.format(name=line.name, holds=view.show(holds))
        missing = met.missing or (Missing(f"{line.place}.temperature", what, Dimension.TEMPERATURE),)
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
            f"{together_words(view, strength.line)}"
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
