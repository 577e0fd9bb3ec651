"""The test that tells two candidates apart: the measurement in which they differ most for its accuracy."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

from firmpedal.decide.thread_ends import Candidate, Quantity
from firmpedal.formulas.thread_crests import gap_under_template, growth_along_taper
from firmpedal.quantity import Mark, Step, Value, apply
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.decide.identify import Measured

EITHER_WAY = 2  # a reading may be off by the accuracy one way on one part and the other way on the other
PLENTY = 10  # pitches to measure over where the thread is long
NEAR = 1e-12


@dataclass(frozen=True, slots=True)
class Trial:
    """One measurement, what it gives for each of two candidates, and whether that can be told."""

    quantity: Quantity
    first: Value
    second: Value
    difference: Value
    needed: Value  # the least difference that can be told
    over: int = 0  # pitches measured over
    length: Value | None = None  # along which a taper is measured
    gap: Value | None = None  # under a template laid on the cone

    @property
    def clarity(self) -> float:
        return self.difference.middle / self.needed.high if self.needed.high else math.inf

    @property
    def decides(self) -> bool:
        return self.clarity >= 1


@dataclass(frozen=True, slots=True)
class Difference:
    """Two candidates and the clearest test between them, if anything measurable differs at all."""

    first: Candidate
    second: Candidate
    test: Trial | None
    others: tuple[Trial, ...] = ()


def told_apart(candidates: Sequence[Candidate], measured: Measured) -> tuple[Difference, ...]:
    """Find the clearest test for every pair."""
    return tuple(difference(one, other, measured) for one, other in combinations(candidates, 2))


def difference(one: Candidate, other: Candidate, measured: Measured) -> Difference:
    """Work out every test that two candidates answer differently, the clearest first."""
    tests = [
        test
        for quantity in Quantity
        if (test := _test(quantity, one, other, measured)) is not None and test.difference.middle > NEAR
    ]
    tests.sort(key=lambda test: -test.clarity)
    return Difference(one, other, tests[0] if tests else None, tuple(tests[1:]))


def _test(quantity: Quantity, one: Candidate, other: Candidate, measured: Measured) -> Trial | None:
    first, second = one.value(quantity), other.value(quantity)
    if first is None or second is None:
        return None
    needed = _twice(measured.allowed(quantity) if quantity is Quantity.SEAT else measured.accuracy)
    if quantity is Quantity.PITCH:
        return _pitch_test(one, other, needed)
    if quantity is Quantity.TAPER:
        return _taper_test(one, other, needed)
    gap = _gap(one, other) if quantity is Quantity.SEAT else None
    return Trial(quantity, first, second, _apart(first, second), needed, gap=gap)


def _twice(accuracy: Value) -> Value:
    step = Step("2 a", (("a", accuracy),))
    span = (EITHER_WAY * accuracy.low, EITHER_WAY * accuracy.high)
    return Value("least difference that can be told", accuracy.dimension, span, accuracy.mark, step=step)


def _apart(first: Value, second: Value) -> Value:
    """The gap between two ranges, nothing where they overlap."""
    gap = max(0.0, second.low - first.high, first.low - second.high)
    step = Step("gap between x1 and x2", (("x1", first), ("x2", second)))
    mark = max(Mark.DERIVED, first.mark, second.mark)
    return Value("difference", first.dimension, (gap, gap), mark, step=step)


def _lengths(*candidates: Candidate) -> list[Value]:
    """How long the threads are, where that is known."""
    found = []
    for candidate in candidates:
        length = candidate.thread.value("effective_length") if candidate.thread else None
        if length is not None:
            found.append(length)
    return found


def _pitch_test(one: Candidate, other: Candidate, needed: Value) -> Trial | None:
    """Measure over as many pitches as the shorter thread has, ten at most."""
    first, second = one.value(Quantity.PITCH), other.value(Quantity.PITCH)
    if first is None or second is None:
        return None
    coarser = max(first.high, second.high)
    count = min([PLENTY, *(int(length.low / coarser) for length in _lengths(one, other))])
    long, longer = (_times(count, pitch) for pitch in (first, second))
    return Trial(Quantity.PITCH, long, longer, _apart(long, longer), needed, over=count)


def _times(count: int, pitch: Value) -> Value:
    step = Step(f"{count} p", (("p", pitch),))
    span = (count * pitch.low, count * pitch.high)
    return Value(f"{count} pitches", Dimension.LENGTH, span, max(Mark.DERIVED, pitch.mark), step=step)


def _taper_test(one: Candidate, other: Candidate, needed: Value) -> Trial | None:
    """Diameters at both ends of the thread."""
    lengths = _lengths(one, other)
    tapers = one.value(Quantity.TAPER), other.value(Quantity.TAPER)
    if not lengths or tapers[0] is None or tapers[1] is None:
        return None
    length = min(lengths, key=lambda each: each.low)
    first, second = (
        apply(growth_along_taper, "growth of the diameter", length=length, taper=taper)
        for taper in (tapers[0], tapers[1])
    )
    return Trial(Quantity.TAPER, first, second, _apart(first, second), needed, length=length)


def _gap(one: Candidate, other: Candidate) -> Value | None:
    """The gap under the blunter template laid on the sharper cone, where the cone's width is known."""
    pair = sorted((one, other), key=_angle)
    tube, edge = pair[0].value(Quantity.TUBE), pair[0].flare_diameter
    angle, blunter = (each.value(Quantity.SEAT) for each in pair)
    if tube is None or edge is None or angle is None or blunter is None or _angle(one) == _angle(other):
        return None
    return apply(
        gap_under_template, "gap under the template",
        edge_diameter=edge, inner_diameter=tube, angle=angle, other_angle=blunter,
    )  # fmt: skip


def _angle(candidate: Candidate) -> float:
    value = candidate.value(Quantity.SEAT)
    return value.middle if value is not None else 0.0
