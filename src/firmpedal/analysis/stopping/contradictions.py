"""Given figures that cannot all be true."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.brake import CREDIBLE_LINING
from firmpedal.analysis.stopping.stance import usual
from firmpedal.quantity import Value, total
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.stopping.brake import WheelBrake
    from firmpedal.analysis.stopping.stance import Stance
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import Caliper

SLACK = 0.1  # leaflets round, and a radius is taped: up to there two figures count as one
# Light disc brakes use 400 to 600 psi at the normal foot. Five times the upper figure is no brake's: mostly
# a bore in inches stands in a file in millimetres. Common practice, no source.
NOT_OF_A_BRAKE = from_unit(3000, "psi")
BOTH_RADII = "one of them may be a diameter"
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
    sizes = [found for caliper in aircraft.calipers for found in _sizes(caliper, stance)]
    sizes += [found for brake in brakes for found in _pressure(brake)]
    return (*torques, *sizes, *_distances(aircraft, stance), *_weights(aircraft, stance))


def _pressure(brake: WheelBrake) -> Iterator[Contradiction]:
    """A pressure that no brake works with comes of a bore or an arm in other units than the file's."""
    made = brake.feet[0].pressure
    most = usual("the most that can be", Dimension.PRESSURE, (NOT_OF_A_BRAKE, NOT_OF_A_BRAKE), made.place)
    if made.known and made.low > NOT_OF_A_BRAKE:
        words = f"no brake works with what the normal foot makes at {brake.caliper}"
        reason = "look at the cylinder's bore, the pedal's arms and their units"
        yield Contradiction(f"components.{brake.caliper}", words, made, most, "at most", reason)


def _sizes(caliper: Caliper, stance: Stance) -> Iterator[Contradiction]:
    """Linings rub within the rim of their disc, the disc turns within the tyre, and a lining is a lining."""
    name, radius, pads = caliper.name, caliper.effective_radius, caliper.pads
    if radius.known and caliper.disc.radius.known and radius.low >= caliper.disc.radius.high:
        words = f"the pads of {name} would press beside their disc: its rim is nearer to the axle"
        yield Contradiction(radius.place, words, radius, caliper.disc.radius, "at most", BOTH_RADII)
    for inner, outer, words in (
        (pads.inner_radius, pads.outer_radius, f"the pads of {name} end before they begin"),
        (pads.outer_radius, caliper.disc.radius, f"the pads of {name} stand out over the rim of their disc"),
        (radius, stance.tyre_radius, f"the pads of {name} would rub outside the tyre"),
        (caliper.disc.radius, stance.tyre_radius, f"the disc of {name} would stand out of the tyre"),
    ):
        if inner.known and outer.known and inner.low > outer.high:
            yield Contradiction(inner.place, words, inner, outer, "at most", "")
    lining = caliper.lining_friction
    if lining.known and caliper.leaflet.torque.span is None:  # else it is held against the torque
        usually = usual("that of brake linings", Dimension.NUMBER, CREDIBLE_LINING, lining.place)
        if side := _apart(lining, usually):
            words = f"the lining friction of {name} is not that of a brake lining on a clean disc"
            yield Contradiction(lining.place, words, lining, usually, side, "")


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
    mains, third = ground.weight_on_mains, ground.weight_on_nose_or_tail
    parts = [part for part in (mains, third) if part.known]
    if not (parts and stance.mass.known):
        return
    weighed = total("weight on all wheels", parts, f"{ground.place}.weighed") if len(parts) > 1 else parts[0]
    if weighed.low > stance.mass.high:
        words = "the weights on the wheels are more than the landing weight"
        heavier = max(parts, key=lambda part: part.low)
        yield Contradiction(heavier.place, words, weighed, stance.mass, "at most", "")
        return
    if mains.known and third.known and third.low > mains.high:
        words = "more weight on the nose or tail wheel than on both main wheels"
        yield Contradiction(third.place, words, third, mains, "at most", "the two may be swapped")


def _apart(found: Value, expected: Value) -> str:
    """Which limit is surely broken: `at most`, `at least`, or none."""
    if found.low > expected.high * (1 + SLACK):
        return "at most"
    return "at least" if found.high < expected.low * (1 - SLACK) else ""
