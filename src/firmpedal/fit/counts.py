"""What follows from the closing law: numbers of nuts, sleeves, washers and ends that must be equal."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.fit.closing import part_keys
from firmpedal.model.part import Category, Form, Gender

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Iterator

    from firmpedal.fit.closing import Key
    from firmpedal.fit.joint import EndRef, Joint

_Ends = Counter[tuple[str, Form, Gender]]
"""How many ends there are of each owner (a row of the parts list, port or line), form and gender."""

_Equal = tuple[str, int, str, int]


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
        return _unequal(
            ("male flare ends", self.male_flare_ends, "swivels, nuts and caps", female),
            ("coupling nuts", self.coupling_nuts, "sleeves", self.sleeves),
            ("sleeves", self.sleeves, "flared tube ends", self.flared_tube_ends),
            ("jam nuts", self.jam_nuts, "bulkhead ends", self.bulkhead_ends),
        )


@dataclass(frozen=True, slots=True)
class SealCount:
    """What an assembly holds of washers, O-rings and compression joints; ends named open are not counted."""

    washer_faces: int
    washers: int
    o_ring_seats: int
    o_rings: int
    compression_sockets: int
    compression_nuts: int
    compression_sleeves: int
    inserts: int
    plain_tube_ends: int

    @property
    def disagreements(self) -> tuple[str, ...]:
        """Say which of the counts that follow from the closing law do not agree."""
        return _unequal(
            ("washer faces", self.washer_faces, "washers", self.washers),
            ("O-ring seats", self.o_ring_seats, "O-rings", self.o_rings),
            ("compression sockets", self.compression_sockets, "compression nuts", self.compression_nuts),
            ("compression nuts", self.compression_nuts, "compression sleeves", self.compression_sleeves),
            ("compression sleeves", self.compression_sleeves, "inserts", self.inserts),
            ("inserts", self.inserts, "plain tube ends", self.plain_tube_ends),
        )


def _unequal(*pairs: _Equal) -> tuple[str, ...]:
    return tuple(
        f"{one} {what}, but {other} {with_what}" for what, one, with_what, other in pairs if one != other
    )


def flared_count(
    joints: Iterable[Joint], outer: Iterable[EndRef], named_open: Collection[Key] = ()
) -> FlaredCount:
    """Count what the closing law makes equal at flares and panels, from the data that `violations` reads."""
    ends = _ends(joints, outer, named_open)
    swivels = ends["line", Form.FLARE_37, Gender.FEMALE]
    nuts = ends[Category.COUPLING_NUT.value, Form.FLARE_37, Gender.FEMALE]
    caps = ends[Category.CAP.value, Form.FLARE_37, Gender.FEMALE]
    return FlaredCount(
        male_flare_ends=_all(ends, Form.FLARE_37, Gender.MALE),
        hose_swivels=swivels,
        coupling_nuts=nuts,
        caps=caps,
        other_female_flare_ends=_all(ends, Form.FLARE_37, Gender.FEMALE) - swivels - nuts - caps,
        sleeves=ends[Category.SLEEVE.value, Form.TUBE_FLARE_37, Gender.FEMALE],
        flared_tube_ends=ends["line", Form.TUBE_FLARE_37, Gender.MALE],
        jam_nuts=_all(ends, Form.PANEL, Gender.FEMALE),
        bulkhead_ends=_all(ends, Form.PANEL, Gender.MALE),
    )


def seal_count(
    joints: Iterable[Joint], outer: Iterable[EndRef], named_open: Collection[Key] = ()
) -> SealCount:
    """Count what the closing law makes equal at washers, O-rings and compression joints."""
    ends = _ends(joints, outer, named_open)
    return SealCount(
        washer_faces=_all(ends, Form.WASHER_FACE, Gender.MALE),
        washers=_all(ends, Form.WASHER_FACE, Gender.FEMALE),
        o_ring_seats=_all(ends, Form.O_RING, Gender.MALE),
        o_rings=_all(ends, Form.O_RING, Gender.FEMALE),
        compression_sockets=_all(ends, Form.COMPRESSION, Gender.FEMALE),
        compression_nuts=_all(ends, Form.COMPRESSION, Gender.MALE),
        compression_sleeves=_all(ends, Form.SUPPORTED_TUBE, Gender.FEMALE),
        inserts=_all(ends, Form.SUPPORTED_TUBE, Gender.MALE),
        plain_tube_ends=_all(ends, Form.PLAIN_TUBE, Gender.MALE),
    )


def _ends(joints: Iterable[Joint], outer: Iterable[EndRef], named_open: Collection[Key]) -> _Ends:
    ends: _Ends = Counter(_of_parts(joints, named_open))
    named = (end for end in outer if ("", end) not in named_open)
    ends.update((end.owner.split()[0], end.interface.form, end.interface.gender) for end in named)
    return ends


def _of_parts(joints: Iterable[Joint], named_open: Collection[Key]) -> Iterator[tuple[str, Form, Gender]]:
    for joint in joints:
        for key in part_keys(joint):
            if key not in named_open:
                _, end = key
                category = joint.parts[int(end.owner.split()[1])].category.value
                yield category, end.interface.form, end.interface.gender


def _all(ends: _Ends, form: Form, gender: Gender) -> int:
    return sum(number for (_, *end), number in ends.items() if end == [form, gender])
