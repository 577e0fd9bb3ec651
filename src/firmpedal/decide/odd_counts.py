"""Halves that go together one to one: as many sleeves as nuts, as many bulkhead nuts as bulkhead fittings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import count_of
from firmpedal.model.part import Form, Gender, Interface

if TYPE_CHECKING:
    from collections import Counter
    from collections.abc import Mapping

    from firmpedal.decide.goods import Goods

PAIRS = {  # what goes with what, one to one: the name of the male half and of the female one
    Form.NUT_SHOULDER: ("sleeve", "coupling nut"),
    Form.PANEL: ("bulkhead fitting", "bulkhead nut"),
    Form.COMPRESSION: ("compression nut", "compression end"),
    Form.COMPRESSION_SHOULDER: ("compression sleeve", "compression nut"),
    Form.SUPPORTED_TUBE: ("insert", "compression sleeve"),
    Form.WASHER_FACE: ("washer face", "washer"),
    Form.O_RING: ("boss thread", "O-ring"),
}


def odd_counts(goods: Mapping[str, Goods], need: Counter[str], have: Counter[str]) -> list[tuple[int, str]]:
    """Halves that go together one to one and are not as many, where the design has as many."""
    found_odd = []
    for form, (male, female) in PAIRS.items():
        for size in _sizes(goods, form):
            wanted, found = (
                tuple(_halves(goods, counts, form, size, gender) for gender in (Gender.MALE, Gender.FEMALE))
                for counts in (need, have)
            )
            off = (found[0] - found[1]) - (wanted[0] - wanted[1])
            if off and all(found):
                name = f"{count_of(found[0], male)} for {count_of(found[1], female)} of size {size}"
                found_odd.append((abs(off), name))
    return found_odd


def _sizes(goods: Mapping[str, Goods], form: Form) -> list[str]:
    ends = (end.interface for each in goods.values() if each.part for end in each.part.ends)
    return list(dict.fromkeys(end.size for end in ends if end.form is form))


def _halves(goods: Mapping[str, Goods], counts: Counter[str], form: Form, size: str, gender: Gender) -> int:
    half = Interface(form, size, gender)
    return sum(
        counts[key] * sum(end.interface == half for end in each.part.ends)
        for key, each in goods.items()
        if each.part
    )
