"""Which calipers brake one wheel: by the word that the file gives it, by sides, by places, else asked."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import combinations, product
from typing import TYPE_CHECKING

from firmpedal.model.component import SideOf
from firmpedal.quantity import Answer, Mark, Missing, Value, unknown
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable

    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import Caliper
    from firmpedal.model.space import Position

Group = tuple[str, ...]
# Calipers of one disc stand in its plane and within its width of each other; the wheels of two legs are
# farther apart across than a wheel is wide: common practice, no source.
IN_PLANE, IN_REACH, ANOTHER_LEG = (from_unit(number, "in") for number in (2, 14, 12))
PAIR = 2  # calipers of an aircraft that says nothing of sides: one for each main wheel


@dataclass(frozen=True)
class BrakedWheels:
    """The calipers by the wheel that they brake, if as many as can be brake one, and if as few as can be."""

    fewest: tuple[Group, ...]
    most: tuple[Group, ...]
    asked: tuple[Missing, ...]

    @property
    def count(self) -> Value:
        """How many wheels are braked; unknown without calipers."""
        label = "braked wheels"
        if not self.most:
            return unknown(label, Dimension.NUMBER, "components", "the calipers: the file has none")
        return self._number(label, [len(groups) for groups in (self.fewest, self.most)])

    def at_wheel(self, caliper: str) -> tuple[int, int]:
        """The least and the most calipers that brake the wheel of one."""
        fewer, more = sorted(len(_of(groups, caliper)) for groups in (self.most, self.fewest))
        return fewer, more

    def with_it(self, caliper: str) -> Group:
        """The calipers that brake the wheel of one, itself among them, if as many as can be do."""
        return _of(self.fewest, caliper)

    def alone(self, caliper: str) -> bool:
        return self.at_wheel(caliper) == (1, 1)

    def sharing(self, caliper: str) -> Value:
        """By how many the energy of a stop is divided for one caliper: wheels times calipers at its wheel."""
        if self.alone(caliper):
            return self.count
        numbers = [len(groups) * len(_of(groups, caliper)) for groups in (self.fewest, self.most)]
        return self._number(f"braked wheels times calipers at the wheel of {caliper}", numbers)

    def at_disc(self, caliper: Caliper) -> Value | None:
        """How many calipers grip the disc of one; None where it has the disc for its own."""
        _, more = self.at_wheel(caliper.name)
        if more == 1 or caliper.disc.own is Answer.YES:
            return None
        fewer = self.at_wheel(caliper.name)[0] if caliper.disc.own is Answer.NO else 1
        place = f"{caliper.place}.disc.own"
        what = f"whether {caliper.name} has a disc of its own, or another caliper of its wheel grips it too"
        asked = (Missing(place, what),) if caliper.disc.own is Answer.UNKNOWN else ()
        return Value(
            f"calipers that grip the disc of {caliper.name}",
            Dimension.NUMBER,
            (fewer, more),
            Mark.READ if fewer == more else Mark.DERIVED,
            place,
            missing=(*self.asked, *asked),
        )

    def _number(self, label: str, numbers: list[int]) -> Value:
        span = (float(min(numbers)), float(max(numbers)))
        if span[0] == span[1]:
            return Value(label, Dimension.NUMBER, span, Mark.READ, "components")
        return Value(label, Dimension.NUMBER, span, Mark.DERIVED, "components", missing=self.asked)


def _of(groups: tuple[Group, ...], caliper: str) -> Group:
    return next(group for group in groups if caliper in group)


def braked_wheels(aircraft: Aircraft) -> BrakedWheels:
    """Sort the calipers of an aircraft by wheels."""
    calipers = aircraft.calipers
    answers = {
        (one.name, other.name): _one_wheel(one, other, len(calipers))
        for one, other in combinations(calipers, 2)
    }
    names = [each.name for each in calipers]
    apart = {pair for pair, answer in answers.items() if answer is Answer.NO}
    fewest, most = (
        _grouped(names, [pair for pair, answer in answers.items() if answer in joined], apart)
        for joined in ((Answer.YES, Answer.UNKNOWN), (Answer.YES,))
    )
    places = {each.name: each.place for each in calipers}
    asked = tuple(
        Missing(f"{places[one]}.wheel", f"whether {one} and {other} brake one wheel, or each its own")
        for (one, other), answer in answers.items()
        if answer is Answer.UNKNOWN
    )
    return BrakedWheels(fewest, most, asked if fewest != most else ())


def _one_wheel(one: Caliper, other: Caliper, count: int) -> Answer:
    """Whether two calipers brake one wheel."""
    sides = {one.side, other.side}
    if sides == {SideOf.LEFT, SideOf.RIGHT}:
        return Answer.NO
    if one.wheel and other.wheel:
        return Answer.YES if one.wheel == other.wheel else Answer.NO
    by_place = _by_place(_place(one), _place(other))
    if by_place is not Answer.UNKNOWN:
        return by_place
    return Answer.NO if count == PAIR and sides == {SideOf.CENTRE} else Answer.UNKNOWN


def _place(caliper: Caliper) -> Position | None:
    spots = (spot for port in caliper.ports for spot in (port.seat, port.at))
    return next((spot for spot in spots if spot is not None and spot.known), None)


def _by_place(one: Position | None, other: Position | None) -> Answer:
    """What the places of a port each tell; two ports in one spot are a copy that nobody has moved yet."""
    if one is None or other is None:
        return Answer.UNKNOWN
    pairs = list(zip(one.coordinates, other.coordinates, strict=True))
    least = [max(0.0, a.low - b.high, b.low - a.high) for a, b in pairs]
    most = [max(a.high - b.low, b.high - a.low) for a, b in pairs]
    if least[1] > ANOTHER_LEG:
        return Answer.NO
    near = most[1] <= IN_PLANE and math.hypot(*most) <= IN_REACH
    return Answer.YES if near and math.hypot(*least) > 0 else Answer.UNKNOWN


def _grouped(
    names: list[str], joined: Iterable[tuple[str, str]], apart: Collection[tuple[str, str]]
) -> tuple[Group, ...]:
    """Calipers joined pair by pair; a pair that brakes two wheels never comes together by a third."""
    groups = {name: [name] for name in names}
    for one, other in joined:
        meet = product(groups[one], groups[other])
        if any(pair in apart or pair[::-1] in apart for pair in meet):
            continue
        if groups[one] is not groups[other]:
            groups[one] += groups[other]
            for name in groups[other]:
                groups[name] = groups[one]
    return tuple(dict.fromkeys(tuple(sorted(group, key=names.index)) for group in groups.values()))
