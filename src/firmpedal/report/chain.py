"""The parts at one end of one line, in the order in which they go together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.part import Category

if TYPE_CHECKING:
    from firmpedal.fit.joint import EndRef, Joint, Mating
    from firmpedal.model.part import Part


def chain_at(joint: Joint, line: str, end: str) -> tuple[Part, ...]:
    """Walk from a line's end through what mates with it, up to and with the last fitting before the port.

    At a bulkhead the walk ends with its body: what lies beyond belongs to the other line.
    """
    owner = f"line {line} {end}"
    found: list[Part] = []
    seen = {owner}
    while True:
        step = next((one for one in _partners(joint.matings, owner) if one.owner not in seen), None)
        if step is None or not step.owner.startswith("part "):
            return tuple(found)
        part = joint.parts[int(step.owner.removeprefix("part "))]
        found.append(part)
        if part.category is Category.FITTING and len(part.ends) > len(part.flow_ends):
            return tuple(found)
        seen.add(step.owner)
        owner = step.owner


def _partners(matings: tuple[Mating, ...], owner: str) -> list[EndRef]:
    forward = [mating.other for mating in matings if mating.one.owner == owner]
    return forward + [mating.one for mating in matings if mating.other.owner == owner]


def chain_words(joint: Joint, line: str, end: str) -> str:
    """The parts at one end of a line in words, from the line to the port."""
    if joint.mismatches:
        return joint.mismatches[0].words
    parts = chain_at(joint, line, end)
    if not parts:
        return "nothing that mates with it"
    return " on ".join(part.designation for part in parts)
