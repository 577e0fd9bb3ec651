"""What tells the wheels apart: the foot with which each of them locks, and left held against right."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.analysis.stopping.needs import Needed, Needs
from firmpedal.analysis.stopping.stance import PLACE
from firmpedal.formulas.braking import brake_torque, share_of_other
from firmpedal.model.component import SideOf
from firmpedal.quantity import Value, apply, smallest, total

if TYPE_CHECKING:
    from collections.abc import Sequence

    from firmpedal.analysis.stopping.brake import WheelBrake
    from firmpedal.analysis.stopping.pushes import Pushing
    from firmpedal.analysis.stopping.stance import Stance
    from firmpedal.model.kinds import Caliper


@dataclass(frozen=True, slots=True)
class WheelLock:
    """One wheel by its calipers, and the foot with which it locks."""

    calipers: tuple[str, ...]
    side: SideOf
    needed: Needed

    @property
    def name(self) -> str:
        """As people call it: `the left wheel`, else by its caliper."""
        return f"the wheel of {self.calipers[0]}" if self.side is SideOf.CENTRE else f"the {self.side} wheel"


@dataclass(frozen=True, slots=True)
class Apart:
    """What the brakes of both sides hold at equal feet, and the lesser as a share of the greater.

    `stronger` is the side that surely holds more; nothing where that cannot be said.
    """

    left: Value
    right: Value
    share: Value
    stronger: SideOf | None


def wheel_locks(
    calipers: Sequence[Caliper],
    brakes: Sequence[WheelBrake],
    pushes: Sequence[tuple[Pushing, ...]],
    ground: Stance,
    peak: Value,
) -> tuple[WheelLock, ...]:
    """The foot that locks each wheel, every braked wheel bearing as much; nothing where wheels are alike."""
    braked = ground.braked
    if braked.fewest != braked.most:
        return ()  # which calipers brake one wheel is asked for first
    found = []
    for group in braked.most:
        at = [n for n, caliper in enumerate(calipers) if caliper.name in group]
        work = Needs(tuple(brakes[n] for n in at), tuple(pushes[n] for n in at), ground)
        sides = {calipers[n].side for n in at}
        side = sides.pop() if len(sides) == 1 else SideOf.CENTRE
        found.append(WheelLock(group, side, work.stop_of_wheel(f"locking {group[0]}", peak)))
    spans = {each.needed.foot.span for each in found}
    return tuple(found) if len(spans) > 1 else ()


def first_lock(together: Needed, wheels: tuple[WheelLock, ...]) -> Needed:
    """The lightest foot that locks a wheel; of wheels that are alike that of all together."""
    if not wheels:
        return together
    foot = smallest(
        "foot on each pedal with which the first wheel locks",
        [each.needed.foot for each in wheels],
        f"{PLACE}.{together.what}.foot",
    )
    first = min(wheels, key=lambda each: each.needed.foot.high if each.needed.foot.known else 0.0)
    return Needed(together.what, together.drag, foot, first.needed.pressure)


def apart(calipers: Sequence[Caliper], brakes: Sequence[WheelBrake], *, plain: bool) -> Apart | None:
    """Left against right; None where one side has no brake, or nothing tells them apart.

    Where lining, radius or clamping force stand alike at every brake, range for range, they are taken to be
    one figure that is not known better: it does not make one side stronger.

    Args:
        calipers: Of the aircraft.
        brakes: What each makes of a foot, in the same order.
        plain: Whether there is neither return spring nor seal friction, so that one foot tells of all.
    """
    pressed = [(brake.by_foot if plain else brake.feet[1]).clamp for brake in brakes]
    parts = (pressed, [brake.friction for brake in brakes], [brake.effective_radius for brake in brakes])
    torques: dict[SideOf, list[Value]] = {SideOf.LEFT: [], SideOf.RIGHT: []}
    signs: dict[SideOf, list[object]] = {SideOf.LEFT: [], SideOf.RIGHT: []}
    for caliper, own, (clamp, lining, radius) in zip(
        calipers, zip(*parts, strict=True), zip(*map(_one, parts), strict=True), strict=True
    ):
        if caliper.side in torques:
            signs[caliper.side].append(tuple(each.span for each in own))
            torques[caliper.side].append(_torque(caliper, clamp, lining, radius))
    if not all(torques.values()) or sorted(signs[SideOf.LEFT], key=str) == sorted(
        signs[SideOf.RIGHT], key=str
    ):
        return None
    left, right = (
        total(f"torque of the {side} brakes at equal feet", found, f"{PLACE}.torque.{side}")
        for side, found in torques.items()
    )
    return _beside(left, right)


def _one(values: list[Value]) -> list[Value]:
    """The same figure everywhere, however wide, as its middle; else each its own."""
    first = values[0] if values else None
    if first is None or first.span is None or len({value.span for value in values}) > 1:
        return values
    return [replace(value, span=(first.middle, first.middle)) for value in values]


def _torque(caliper: Caliper, clamp: Value, lining: Value, radius: Value) -> Value:
    return apply(
        brake_torque,
        f"torque of {caliper.name} at equal feet",
        place=f"{caliper.place}.braking.equal feet",
        clamp=clamp,
        friction=lining,
        effective_radius=radius,
    )


def _beside(left: Value, right: Value) -> Apart:
    label, place = "what the weaker side holds of what the other does", f"{PLACE}.left against right"
    weaker, other = (
        (left, right) if not right.known or (left.known and left.middle <= right.middle) else (right, left)
    )
    share = apply(share_of_other, label, place=place, part=weaker, other=other)
    if left.span is None or right.span is None:
        return Apart(left, right, share, None)
    if weaker.high >= other.low:  # neither is surely the stronger one, and they may be alike
        low = min(left.low / right.high, right.low / left.high)
        return Apart(left, right, replace(share, span=(low, 1.0)), None)
    return Apart(left, right, share, SideOf.LEFT if other is left else SideOf.RIGHT)
