"""The parts at one end of one line, in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.fit.chain import groups_at, is_banjo_bolt
from firmpedal.model.part import Category

if TYPE_CHECKING:
    from firmpedal.fit.chain import Group
    from firmpedal.fit.joint import Joint


def chain_words(joint: Joint, line: str, end: str) -> str:
    """The parts at one end of a line in words, from the line to the port."""
    if joint.mismatches:
        return joint.mismatches[0].words
    groups = groups_at(joint, line, end)
    if not groups:
        return "nothing that mates with it"
    return " on ".join(_group_words(group) for group in groups)


def _group_words(group: Group) -> str:
    names = [part.designation for part in group]
    if is_banjo_bolt(group[0]):
        banjo = next((part for part in group[1:] if part.category is Category.FITTING), group[0])
        return f"{banjo.designation} (bolt first: {', '.join(names)})"
    return names[0] if len(names) == 1 else f"{names[0]} with {' and '.join(names[1:])}"
