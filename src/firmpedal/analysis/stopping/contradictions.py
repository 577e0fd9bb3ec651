"""Given figures that cannot all be true."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.brake import CREDIBLE_LINING
from firmpedal.analysis.stopping.stance import usual
from firmpedal.quantity import Value, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.stopping.brake import WheelBrake
    from firmpedal.analysis.stopping.stance import Stance
    from firmpedal.model.aircraft import Aircraft

SLACK = 0.1  # leaflets round, and a radius is taped: up to there two figures count as one
TWICE = (1.6, 2.4)  # of what the pistons make: somebody has counted the pistons of both sides


@dataclass(frozen=True, slots=True)
class Contradiction:
    """Two figures of which one must be wrong, and what may be the reason."""

    place: str
    words: str
    found: Value
    expected: Value
    relation: str
    reason: str


def contradictions(
    aircraft: Aircraft, stance: Stance, brakes: tuple[WheelBrake, ...]
) -> tuple[Contradiction, ...]:
    """Every contradiction among the figures that are given for braking."""
    torques = [found for brake in brakes for found in _torque(aircraft, brake)]
    return (*torques, *_distances(aircraft, stance), *_weights(aircraft, stance))


def _torque(aircraft: Aircraft, brake: WheelBrake) -> Iterator[Contradiction]:
    stated = brake.stated_friction
    caliper = next(each for each in aircraft.calipers if each.name == brake.caliper)
    if stated is None or not stated.known:
        return
    label = "lining friction that can be"
    expected = caliper.lining_friction
    if not expected.known:
        expected = usual(label, Dimension.NUMBER, CREDIBLE_LINING, f"{caliper.place}.lining friction")
    side = _apart(stated, expected)
    if side:
        ratio = stated.middle / expected.middle
        twice = "it may count the pistons of both sides of the disc" if TWICE[0] <= ratio <= TWICE[1] else ""
        words = f"the torque in the leaflet of {brake.caliper} cannot come from its pistons and pads"
        place = f"{caliper.place}.leaflet.torque"
        yield Contradiction(place, words, stated, expected, side, twice)


def _distances(aircraft: Aircraft, stance: Stance) -> Iterator[Contradiction]:
    declared, weighed = aircraft.on_the_ground.mains_to_cg, stance.by_weights
    if weighed is None or not (declared.known and weighed.known):
        return
    side = _apart(declared, weighed)
    if side:
        words = "the centre of gravity as given is not where the weights on the wheels put it"
        yield Contradiction(declared.place, words, declared, weighed, side, "")


def _weights(aircraft: Aircraft, stance: Stance) -> Iterator[Contradiction]:
    """A weighing of more than the landing weight is of another aircraft, or one of the figures is a slip."""
    ground = aircraft.on_the_ground
    parts = (ground.weight_on_mains, ground.weight_on_nose_or_tail)
    if not all(value.known for value in (*parts, stance.mass)):
        return
    weighed = total("weight on all wheels", parts, f"{ground.place}.weighed")
    if weighed.low > stance.mass.high:
        words = "the weights on the wheels are more than the landing weight"
        yield Contradiction(ground.weight_on_mains.place, words, weighed, stance.mass, "at most", "")


def _apart(found: Value, expected: Value) -> str:
    """Which limit is surely broken: `at most`, `at least`, or none."""
    if found.low > expected.high * (1 + SLACK):
        return "at most"
    return "at least" if found.high < expected.low * (1 - SLACK) else ""
