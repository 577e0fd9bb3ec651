"""What the cylinders make of a foot at the calipers, and which foot a pressure there takes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.quantity import Answer, Mark, Step, Value, all_missing
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Sequence

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
        return self.pressing.push.foot(pressure, self.pressing.stroke_at(pressure, words), words)


def pressing_on(caliper: Caliper, pushes: Sequence[Pushing], reach: Sequence[Reach]) -> tuple[Pushing, ...]:
    """The cylinders that press on one caliper."""
    return tuple(each for each, way in zip(pushes, reach, strict=True) if caliper.name in way.calipers)


def foot_of_all(label: str, place: str, feet: Sequence[Sequence[Value]]) -> Value:
    """The foot that makes one pressure in the mean of all brakes.

    Args:
        label: Of what is wanted.
        place: Of it.
        feet: For each brake, at least one of them, the foot that it takes by each cylinder that presses
            on it, of which the one that needs the least counts. Between the least and the greatest of the
            brakes lies the foot with which they make as much together.
    """
    found = [value for each in feet for value in each]
    if len({value.span for value in found}) == 1:
        return found[0].named(label, place)
    mark = max(Mark.DERIVED, *(value.mark for value in found))
    inputs = tuple((f"x{n}", value) for n, value in enumerate(found, 1))
    step = Step("between the least and the greatest of " + ", ".join(name for name, _ in inputs), inputs)
    missing = all_missing(found)
    if missing:
        return Value(label, Dimension.FORCE, None, mark, place, step=step, missing=missing)
    brakes = [each for each in feet if each]
    low = min(value.low for value in found)
    high = max(min(value.high for value in each) for each in brakes)
    return Value(label, Dimension.FORCE, (low, high), mark, place, step=step)


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
