"""What an evaluation answers, as plain numbers in the builder's units, and lengths worked out once more."""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Sequence
from typing import TYPE_CHECKING

from firmpedal.report.parts import parts_list
from firmpedal.units import to_unit

if TYPE_CHECKING:
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.part import Form
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

FITTINGS = ("fitting", "jam nut", "coupling nut", "sleeve", "washer", "cap", "other")
SIDES = ("left", "right")

Points = Sequence[tuple[float, float, float]]


def inches(value: Value) -> float:
    return to_unit(value.middle, "in")


def line(evaluation: Evaluation, name: str) -> LaidLine:
    return next(item for item in evaluation.laid if item.name == name)


def totals(evaluation: Evaluation) -> Counter[str]:
    """Fittings, nuts and sleeves to buy, by designation."""
    counted: Counter[str] = Counter()
    for item in parts_list(evaluation):
        if item.category.value in FITTINGS and not item.spare:
            counted[item.designation] += item.quantity
    return counted


def joints_by_form(evaluation: Evaluation) -> Counter[Form]:
    joints = evaluation.assembly.joints
    return Counter(mating.one.interface.form for joint in joints for mating in joint.matings)


def closes(evaluation: Evaluation) -> bool:
    """Whether every end has its partner."""
    joints = evaluation.assembly.joints
    return evaluation.violations == () and not any(each.mismatches or each.open_ends for each in joints)


def bends(laid: LaidLine) -> tuple[list[float], list[float]]:
    """Angles of the bends of a tube, and its rotations from the second bend on, in degrees."""
    found = laid.tube.bends
    turned = [math.degrees(bend.rotation.middle) for bend in found]
    return [math.degrees(bend.angle.middle) for bend in found], turned[1:]


def pressures(evaluation: Evaluation) -> set[tuple[int, ...]]:
    """The rounded pressures at each foot force, in psi, of all cylinders."""
    return {
        tuple(round(to_unit(value.middle, "psi")) for value in made.pressures)
        for made in evaluation.results.cylinders
    }


def asked(evaluation: Evaluation) -> dict[str, set[str]]:
    """For each rule the places of what nobody has measured."""
    places: dict[str, set[str]] = {}
    for item in evaluation.not_shown:
        places.setdefault(item.rule, set()).update(missing.place for missing in item.missing)
    return places


def polyline(points: Points) -> float:
    return sum(math.dist(one, other) for one, other in itertools.pairwise(points))


def turns(points: Points) -> list[float]:
    """The angle at each corner, in radians, from the dot product."""
    steps = [[b - a for a, b in zip(one, other, strict=True)] for one, other in itertools.pairwise(points)]
    return [
        math.acos(
            sum(a * b for a, b in zip(one, other, strict=True)) / (math.hypot(*one) * math.hypot(*other))
        )
        for one, other in itertools.pairwise(steps)
    ]


def developed_length(points: Points, radius: float) -> float:
    """Polyline less, at each corner, two setbacks R tan(a/2), plus the arc R a."""
    return polyline(points) + sum(radius * (turn - 2 * math.tan(turn / 2)) for turn in turns(points))
