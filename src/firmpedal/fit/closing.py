"""The closing law: every end mates with exactly one complementary end, or is named open.

This knows nothing of how joints are found. It reads only the parts, the matings and the ends of an
assembly, so it can find fault with what the search made.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.fit.joint import EndRef, Joint

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Iterator

Key = tuple[str, EndRef]
"""An end in the whole assembly: the place of its joint for the end of a part, empty for a port or line."""


@dataclass(frozen=True, slots=True)
class Violation:
    """An end that breaks the closing law: the joint it is in (empty if none), which end, and how."""

    place: str
    end: EndRef
    words: str


def key_of(joint: Joint, end: EndRef) -> Key:
    """Give the key of an end; parts are numbered within their joint, ports and line ends stand alone."""
    return (joint.place if end.owner.startswith("part ") else "", end)


def violations(
    joints: Iterable[Joint], outer: Iterable[EndRef], named_open: Collection[Key] = ()
) -> tuple[Violation, ...]:
    """Find every end that breaks the closing law.

    Args:
        joints: All joints of an assembly, each with a place of its own.
        outer: Every port and every line end of the assembly.
        named_open: Keys of the ends that are declared open.
    """
    all_joints, all_outer = tuple(joints), tuple(outer)
    ends = {key: key[0] for joint in all_joints for key in part_keys(joint)}
    ends |= {("", end): "" for end in all_outer}
    found = [wrong for joint in all_joints for wrong in _wrong_matings(joint, ends)]
    uses = Counter(
        key_of(joint, end)
        for joint in all_joints
        for mating in joint.matings
        for end in (mating.one, mating.other)
    )
    found += [
        Violation(place, key[1], words)
        for key, place in ends.items()
        if (words := _wrong_count(uses[key], open_=key in named_open))
    ]
    return tuple(found)


def part_keys(joint: Joint) -> Iterator[Key]:
    """Give the key of every end of every part of a joint."""
    for number, part in enumerate(joint.parts):
        for index, end in enumerate(part.ends):
            yield joint.place, EndRef(f"part {number}", index, end.interface)


def _wrong_matings(joint: Joint, ends: Collection[Key]) -> Iterator[Violation]:
    for mating in joint.matings:
        for end in (mating.one, mating.other):
            if key_of(joint, end) not in ends:
                yield Violation(joint.place, end, f"{end.owner} has no such end")
        one, other = mating.one.interface, mating.other.interface
        if (one.form, one.size) != (other.form, other.size) or one.gender == other.gender:
            yield Violation(joint.place, mating.one, f"{one} is put together with {other}")


def _wrong_count(uses: int, *, open_: bool) -> str:
    if open_:
        return "is named open, but something is put on it" if uses else ""
    if uses == 0:
        return "has nothing on it"
    return f"has {uses} things on it" if uses > 1 else ""
