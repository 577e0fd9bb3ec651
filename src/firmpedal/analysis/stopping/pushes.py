"""What the cylinders make of a foot at the calipers, and which foot a pressure there takes."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.stance import PLACE
from firmpedal.quantity import Answer, Mark, Value, any_of, exactly, largest, smallest
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from firmpedal.analysis.circuit import Reach
    from firmpedal.analysis.stroke import Pressing, StrokeBudget
    from firmpedal.model.kinds import Caliper


@dataclass(frozen=True, slots=True)
class Pushing:
    """One cylinder: what it presses, and its budgets at each foot; without a caliper it has none."""

    pressing: Pressing
    budgets: tuple[StrokeBudget, ...]

    def foot(self, pressure: Value, words: str) -> Value:
        """The foot that a pressure takes, springs and seals included."""
        return self.pressing.push.foot(pressure, self._stroke_at(pressure, words), words)

    def pressure(self, foot: Value, about: Value, words: str) -> Value:
        """The pressure of a foot, springs and seals off; `about` is one near it, by which the stroke goes."""
        return self.pressing.push.pressure(foot, self._stroke_at(about, words), words)

    def _stroke_at(self, pressure: Value, words: str) -> Value:
        """The stroke, which takes its time to add up; any will do where nothing goes by it."""
        if self.pressing.push.goes_by_stroke:
            return self.pressing.stroke_at(pressure, words)
        return exactly("no stroke", Dimension.LENGTH, 0.0, Mark.DERIVED)


def pressing_on(caliper: Caliper, pushes: Sequence[Pushing], reach: Sequence[Reach]) -> tuple[Pushing, ...]:
    """The cylinders that press on one caliper."""
    return tuple(each for each, way in zip(pushes, reach, strict=True) if caliper.name in way.calipers)


def foot_of_all(label: str, place: str, brakes: Sequence[tuple[Sequence[Pushing], Sequence[Value]]]) -> Value:
    """The foot that makes one pressure in the mean of all brakes.

    Args:
        label: Of what is wanted.
        place: Of it.
        brakes: For each brake, at least one of them, the cylinders that press on it and the foot that each
            takes: of one pedal the least counts, of two pedals either. Between the least and the greatest of
            them all lies the foot with which the brakes make as much together, whichever seat presses.
    """
    found = [
        value
        for pushes, feet in brakes
        for value in _of_each_pedal(pushes, feet, lambda values: smallest(label, values, place))
    ]
    return _whichever(label, place, found, "between the least and the greatest of")


def from_either_seat(label: str, pushes: Sequence[Pushing], made: Sequence[Value], place: str) -> Value:
    """Pressure at a brake that more cylinders press: of one pedal the hardest, of two pedals either.

    Args:
        label: Of the pressure.
        pushes: The cylinders.
        made: What each of them makes.
        place: Of the pressure.
    """
    each = _of_each_pedal(pushes, made, lambda values: largest(label, values, place))
    return _whichever(label, place, each, "from one seat or another:")


def _whichever(label: str, place: str, values: Sequence[Value], words: str) -> Value:
    """The one of some values, where all are alike; else any of them."""
    if len({value.span for value in values}) == 1:
        return values[0].named(label, place)
    names = ", ".join(f"x{n}" for n in range(1, len(values) + 1))
    return any_of(label, values, place, f"{words} {names}")


def _of_each_pedal(
    pushes: Sequence[Pushing], values: Sequence[Value], picked: Callable[[list[Value]], Value]
) -> list[Value]:
    """One value for each pedal; where it works more than one cylinder, which of theirs counts is picked."""
    pedals = defaultdict[str, list[Value]](list)
    for each, value in zip(pushes, values, strict=True):
        pedals[each.pressing.cylinder.pedal].append(value)
    return [own[0] if len(own) == 1 else picked(own) for own in pedals.values()]


def made_by(pushes: Sequence[Pushing], foot: Value, about: Value, caliper: str, words: str) -> Value:
    """Pressure at one brake under a foot, springs and seals off, from whichever seat.

    `about` is a pressure near it.
    """
    made = [each.pressure(foot, about, words) for each in pushes]
    place = f"{PLACE}.{words}.pressure.{caliper}"
    return from_either_seat(f"pressure at {caliper} for {words}", pushes, made, place)


def counted(pushes: Sequence[Pushing]) -> Answer:
    """Whether return spring and seal friction are in the figures: of every cylinder, of some, of none."""
    given = [
        value.known
        for each in pushes
        for value in (each.pressing.cylinder.return_spring.at_rest, each.pressing.cylinder.seal_friction)
    ]
    if given and all(given):
        return Answer.YES
    return Answer.UNKNOWN if any(given) else Answer.NO
