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
    from firmpedal.analysis.pressure import CylinderPressure
    from firmpedal.analysis.stroke import Pressing, StrokeBudget
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Missing, Value

COLD, HOT = Case(), Case(Warmth.HOT)
CHOSEN = "chosen"  # the name of a force that is asked for, beside those of the feet
ALIKE = 1e-9


@dataclass(frozen=True)
class Felt:
    """Pedals that feel alike, the curves of one of them, and its budget at one of the forces."""

    names: tuple[str, ...]
    feel: Feel
    budget: StrokeBudget
    chosen: int

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
    """Work out every pedal of an aircraft; those that come out alike are one.

    Args:
        evaluation: The aircraft.
        force: At which the budget is wanted; without it at the hard foot, else at the greatest that is known.
    """
    found: list[Felt | Unfelt] = []
    results = evaluation.results
    for pressing, made in zip(results.presses, results.cylinders, strict=True):
        if not pressing.calipers:
            continue
        one = _felt(evaluation, pressing, made, force)
        twin = next((n for n, each in enumerate(found) if _alike(each, one)), None)
        if twin is None:
            found.append(one)
        else:
            found[twin] = _joined(found[twin], one)
    return tuple(found)


def _felt(
    evaluation: Evaluation, pressing: Pressing, made: CylinderPressure, force: Value | None
) -> Felt | Unfelt:
    name = pressing.pedal.name if pressing.pedal is not None else pressing.cylinder.name
    known = [each for each in evaluation.results.forces if each.known]
    forces = tuple(sorted([*known, *([force] if force is not None else [])], key=lambda each: each.middle))
    if not forces:
        return Unfelt(name, tuple(what for each in evaluation.results.forces for what in each.missing))
    found = feel(pressing, made.ratio, forces)
    if not isinstance(found, Feel):
        return Unfelt(name, found)
    wanted = force or next((each for each in forces if each.label == f"{FEET[1]} foot"), forces[-1])
    return Felt((name,), found, _budget(evaluation, pressing, made, wanted), forces.index(wanted))


def _budget(evaluation: Evaluation, pressing: Pressing, made: CylinderPressure, force: Value) -> StrokeBudget:
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
        lever_ratio=made.ratio,
        bore=pressing.cylinder.bore,
    )
    return pressing.budget(force, made.ratio, plain, CHOSEN)


def _alike(one: Felt | Unfelt, other: Felt | Unfelt) -> bool:
    """Whether two pedals come out the same in every case, or lack things of the same kind."""
    if isinstance(one, Unfelt) or isinstance(other, Unfelt):
        return False
    if one.feel.cases != other.feel.cases or len(one.feel.forces) != len(other.feel.forces):
        return False
    if (one.feel.stops is None) != (other.feel.stops is None):
        return False
    pairs = [
        (one.feel.pressed.travel, other.feel.pressed.travel),
        (one.feel.pressed.stroke, other.feel.pressed.stroke),
        (one.feel.bottoms, other.feel.bottoms),
    ]
    if one.feel.stops is not None and other.feel.stops is not None:
        pairs.append((one.feel.stops, other.feel.stops))
    return all(np.allclose(a, b, rtol=ALIKE, atol=0, equal_nan=True) for a, b in pairs)


def _joined(one: Felt | Unfelt, other: Felt | Unfelt) -> Felt | Unfelt:
    if isinstance(one, Felt) and isinstance(other, Felt):
        return Felt((*one.names, *other.names), one.feel, one.budget, one.chosen)
    return one
