"""The pedals of an aircraft as their sheet shows them: those that feel alike are one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.analysis.feel.cases import Case, Warmth
from firmpedal.analysis.feel.pedals import Feel, feel
from firmpedal.analysis.pressure import FEET
from firmpedal.formulas.levers import line_pressure
from firmpedal.quantity import apply

if TYPE_CHECKING:
    from firmpedal.analysis.stroke import Pressing, StrokeBudget
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Missing, Value

COLD, HOT = Case(), Case(Warmth.HOT)
CHOSEN = "chosen"  # the name of a force that is asked for, beside those of the feet
ROUNDING = 1e-9
ALIKE = 0.1  # pedals whose travels differ by less are shown as one, the softest of them


@dataclass(frozen=True)
class Felt:
    """Pedals that feel alike, the softest first: its curves, and its budget at one of the forces.

    `differ` is how much less far the firmest of them goes, as a share.
    """

    names: tuple[str, ...]
    feel: Feel
    budget: StrokeBudget
    chosen: int
    differ: float = 0.0

    @property
    def force(self) -> Value:
        return self.feel.forces[self.chosen]

    @property
    def softest(self) -> Case:
        """Hot where heat matters and is known, else cold."""
        return HOT if HOT in self.feel.cases else COLD


@dataclass(frozen=True, slots=True)
class Unfelt:
    """A pedal that cannot be worked out, and what is missing."""

    name: str
    missing: tuple[Missing, ...]


def felt_pedals(evaluation: Evaluation, force: Value | None = None) -> tuple[Felt | Unfelt, ...]:
    """Work out every pedal of an aircraft; those that come out nearly alike are one.

    Args:
        evaluation: The aircraft.
        force: At which the budget is wanted; without it at the hard foot, else at the greatest that is known.
    """
    found: list[Felt | Unfelt] = []
    for pressing in evaluation.results.presses:
        if not pressing.calipers:
            continue
        one = _felt(evaluation, pressing, force)
        twin = next((n for n, each in enumerate(found) if _alike(each, one)), None)
        if twin is None:
            found.append(one)
        else:
            found[twin] = _joined(found[twin], one)
    return tuple(found)


def _felt(evaluation: Evaluation, pressing: Pressing, force: Value | None) -> Felt | Unfelt:
    name = pressing.pedal.name if pressing.pedal is not None else pressing.cylinder.name
    known = [each for each in evaluation.results.forces if each.known]
    forces = tuple(sorted([*known, *([force] if force is not None else [])], key=lambda each: each.middle))
    if not forces:
        return Unfelt(name, tuple(what for each in evaluation.results.forces for what in each.missing))
    found = feel(pressing, forces)
    if not isinstance(found, Feel):
        return Unfelt(name, found)
    wanted = force or next((each for each in forces if each.label == f"{FEET[1]} foot"), forces[-1])
    return Felt((name,), found, _budget(evaluation, pressing, wanted), forces.index(wanted))


def _budget(evaluation: Evaluation, pressing: Pressing, force: Value) -> StrokeBudget:
    """The budget that the rules went by where the force is that of a foot, else one of its own."""
    foot = force.label.removesuffix(" foot")
    for each in evaluation.results.budgets:
        if each.cylinder == pressing.cylinder.name and each.foot == foot:
            return each
    plain = apply(
        line_pressure,
        f"pressure at the {CHOSEN} foot",
        place=f"{pressing.cylinder.place}.pressure.{CHOSEN}",
        foot_force=force,
        lever_ratio=pressing.ratio,
        bore=pressing.cylinder.bore,
    )
    return pressing.budget(force, plain, CHOSEN)


def _alike(one: Felt | Unfelt, other: Felt | Unfelt) -> bool:
    """Whether two pedals come out nearly the same in every case."""
    if isinstance(one, Unfelt) or isinstance(other, Unfelt):
        return False
    if one.feel.cases != other.feel.cases or len(one.feel.forces) != len(other.feel.forces):
        return False
    ends = [(each.feel.full_travel.span, _stop(each)) for each in (one, other)]
    return ends[0] == ends[1] and _difference(one, other) < ALIKE


def _stop(one: Felt) -> tuple[float, float] | None:
    pedal = one.feel.pressing.pedal
    return pedal.brake.travel_to_stop.span if pedal is not None else None


def _difference(one: Felt, other: Felt) -> float:
    """The greatest difference of two pedals' travels, as a share of the greater."""
    a, b = one.feel.pressed.travel, other.feel.pressed.travel
    return float(np.max(np.abs(a - b) / np.maximum(a, b), initial=0.0))


def _joined(one: Felt | Unfelt, other: Felt | Unfelt) -> Felt | Unfelt:
    """Two pedals as one: the softer one leads, unless there is nothing between them."""
    if not (isinstance(one, Felt) and isinstance(other, Felt)):
        return one
    differ = max(one.differ, _difference(one, other))
    softer, firmer = (other, one) if _softness(other) > _softness(one) * (1 + ROUNDING) else (one, other)
    return Felt((*softer.names, *firmer.names), softer.feel, softer.budget, softer.chosen, differ)


def _softness(one: Felt) -> float:
    """The travel at the force looked at, in the softest case."""
    return one.feel.travel(one.softest, one.chosen).high
