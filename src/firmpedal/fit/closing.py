"""The closing law: every end mates with exactly one complementary end, or is named open.

This knows nothing of how joints are found. It reads only the parts, the matings and the ends of an
assembly, so it can find fault with what the search made.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.fit.joint import EndRef, Joint
from firmpedal.model.part import Category, Form, Gender

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
    ends = {key: key[0] for joint in all_joints for key in _part_keys(joint)}
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


def _part_keys(joint: Joint) -> Iterator[Key]:
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


@dataclass(frozen=True, slots=True)
class FlaredCount:
    """What an assembly holds of flared joints and panel fittings; ends named open are not counted."""

    male_flare_ends: int
    hose_swivels: int
    coupling_nuts: int
    caps: int
    other_female_flare_ends: int  # of bodies and ports, where there are any
    sleeves: int
    flared_tube_ends: int
    jam_nuts: int
    bulkhead_ends: int

    @property
    def disagreements(self) -> tuple[str, ...]:
        """Say which of the counts that follow from the closing law do not agree."""
        female = self.hose_swivels + self.coupling_nuts + self.caps + self.other_female_flare_ends
        equal = (
            ("male flare ends", self.male_flare_ends, "swivels, nuts and caps", female),
            ("coupling nuts", self.coupling_nuts, "sleeves", self.sleeves),
            ("sleeves", self.sleeves, "flared tube ends", self.flared_tube_ends),
            ("jam nuts", self.jam_nuts, "bulkhead ends", self.bulkhead_ends),
        )
        return tuple(
            f"{one} {what}, but {other} {with_what}" for what, one, with_what, other in equal if one != other
        )


def flared_count(
    joints: Iterable[Joint], outer: Iterable[EndRef], named_open: Collection[Key] = ()
) -> FlaredCount:
    """Count what the closing law makes equal, from the same data that `violations` reads."""
    all_joints = tuple(joints)
    counted = [
        (joint.parts[int(key[1].owner.split()[1])].category.value, key[1].interface)
        for joint in all_joints
        for key in _part_keys(joint)
        if key not in named_open
    ]
    counted += [(end.owner.split()[0], end.interface) for end in outer if ("", end) not in named_open]
    ends = Counter((whose, interface.form, interface.gender) for whose, interface in counted)
    rows = Counter(part.category for joint in all_joints for part in joint.parts)
    females = sum(n for (_, *end), n in ends.items() if end == [Form.FLARE_37, Gender.FEMALE])
    swivels = ends["line", Form.FLARE_37, Gender.FEMALE]
    nuts = ends[Category.COUPLING_NUT.value, Form.FLARE_37, Gender.FEMALE]
    caps = ends[Category.CAP.value, Form.FLARE_37, Gender.FEMALE]
    return FlaredCount(
        male_flare_ends=sum(n for (_, *end), n in ends.items() if end == [Form.FLARE_37, Gender.MALE]),
        hose_swivels=swivels,
        coupling_nuts=rows[Category.COUPLING_NUT],
        caps=caps,
        other_female_flare_ends=females - swivels - nuts - caps,
        sleeves=rows[Category.SLEEVE],
        flared_tube_ends=ends["line", Form.TUBE_FLARE_37, Gender.MALE],
        jam_nuts=rows[Category.JAM_NUT],
        bulkhead_ends=sum(n for (_, *end), n in ends.items() if end == [Form.PANEL, Gender.MALE]),
    )
