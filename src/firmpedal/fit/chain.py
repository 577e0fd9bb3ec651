"""The parts at one end of one line, in the order in which they go together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.fit.mating import part_number
from firmpedal.model.part import DRY, Category, Form, Gender

if TYPE_CHECKING:
    from firmpedal.fit.joint import EndRef, Joint, Mating
    from firmpedal.model.part import Part

    Group = tuple[Part, ...]


def chain_at(joint: Joint, line: str, end: str) -> tuple[Part, ...]:
    """Walk from a line's end through what mates with it, up to and with the last fitting before the port.

    At a bulkhead the walk ends with its body: what lies beyond belongs to the other line. Washers, O-rings
    and the nut of a fitting in a boss follow the part they go on.
    """
    return tuple(part for group in groups_at(joint, line, end) for part in group)


def groups_at(joint: Joint, line: str, end: str) -> tuple[Group, ...]:
    """The same parts, each together with what goes on it; a banjo and its bolt are one group, bolt first."""
    numbers = _walked(joint, f"line {line} {end}")
    groups: list[Group] = []
    for number in numbers:
        group = (joint.parts[number], *_rings(joint, number))
        if groups and is_banjo_bolt(group[0]):
            group = (*group, *groups.pop())
        groups.append(group)
    return tuple(groups)


def is_banjo_bolt(part: Part) -> bool:
    """Whether a part goes through the eye of a banjo."""
    return any((end.interface.form, end.interface.gender) == (Form.BANJO, Gender.MALE) for end in part.ends)


def _walked(joint: Joint, owner: str) -> list[int]:
    """The numbers of the parts that the fluid passes, from a line's end."""
    found: list[int] = []
    seen = {owner}
    while True:
        step = next((one for one in _partners(joint.matings, owner) if one.owner not in seen), None)
        number = None if step is None else part_number(step)
        if step is None or number is None:
            return found
        found.append(number)
        if joint.parts[number].needs_panel:
            return found
        seen.add(step.owner)
        owner = step.owner


def _partners(matings: tuple[Mating, ...], owner: str) -> list[EndRef]:
    wet = [mating for mating in matings if mating.one.interface.form not in DRY]
    forward = [mating.other for mating in wet if mating.one.owner == owner]
    return forward + [mating.one for mating in wet if mating.other.owner == owner]


def _rings(joint: Joint, number: int) -> list[Part]:
    """What goes on the dry ends of a part, the nut first; the nut of a panel is no part of the chain."""
    body = joint.parts[number]
    if body.needs_panel:
        return []
    pairs = [
        {part_number(mating.one), part_number(mating.other)}
        for mating in joint.matings
        if mating.one.interface.form in DRY
    ]
    others = [other for pair in pairs if number in pair for other in pair if other not in (number, None)]
    on_it = [joint.parts[other] for other in others if other is not None]
    return sorted(on_it, key=lambda part: part.category is not Category.JAM_NUT)


def nut_at(joint: Joint, line: str, end: str) -> Part | None:
    """The coupling nut on one end of a tube; None where there is none."""
    parts = chain_at(joint, line, end)
    return next((part for part in parts if part.category is Category.COUPLING_NUT), None)
