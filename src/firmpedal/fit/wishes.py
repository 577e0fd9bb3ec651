"""Which parts may stand in a joint, and of which metal they should be."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.fit.mating import NUTS_AND_SLEEVES
from firmpedal.model.part import Category

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.fit.joint import LineEnd
    from firmpedal.model.part import Part

USUAL_METALS = frozenset({"aluminium", "steel"})
"""What fittings are made of where nothing asks for another metal; brass only where nothing else joins."""

_OF_ITS_OWN = NUTS_AND_SLEEVES | {Category.WASHER}
"""What does not follow the metal of the fittings: a washer or O-ring is of what seals."""

# Aluminium with aluminium and steel with steel: FAA training handbook AC 65-9A, plumbing assembly
# precautions. Brass with copper: common practice, no source.
_LIKE_METAL = {"aluminium": "aluminium", "steel": "steel", "copper": "brass"}


@dataclass(frozen=True, slots=True)
class Wishes:
    """The metals wanted in a joint.

    `bodies` are the metals that fittings should be of; another metal is taken only where nothing
    else joins, and never if `asked` says that the builder named the metal. `nuts` is the metal of
    nuts and sleeves, which follows the tube they sit on; empty for no wish. `only` are the rows of the
    parts list that may be used; empty for all.
    """

    bodies: frozenset[str] = USUAL_METALS
    asked: bool = False
    nuts: str = ""
    only: frozenset[Category] = frozenset()

    def objection(self, part: Part) -> str:
        """Say why a part must not stand in the joint, or nothing."""
        if self.only and part.category not in self.only:
            return "not wanted here"
        if not part.brake_pressure:
            return "low-pressure or obsolete form: never in a brake line"
        if part.category in NUTS_AND_SLEEVES:
            if self.nuts and part.material != self.nuts:
                return f"{part.material}: the nut and sleeve are of the tube's metal, {self.nuts}"
        elif self.asked and self.unlike(part):
            return f"{part.material}: {' or '.join(sorted(self.bodies))} is asked for"
        return ""

    def unlike(self, part: Part) -> bool:
        """Say whether a part is of a metal to be taken only where nothing else joins."""
        return part.category not in _OF_ITS_OWN and part.material not in self.bodies

    def without_asking(self) -> Wishes:
        """Drop the wish for the metal of fittings, to see what there would be."""
        return replace(self, bodies=USUAL_METALS, asked=False)


def wishes_of(line: LineEnd, material: str = "") -> Wishes:
    """Give the wishes at the end of one line; `material` is a metal asked for at that place."""
    return Wishes(*_bodies([line], material), nuts=_LIKE_METAL.get(line.group, ""))


def body_wishes(lines: Iterable[LineEnd], material: str = "") -> Wishes:
    """Give the wishes for a body that carries several lines; no nut or sleeve belongs to it."""
    return Wishes(*_bodies(list(lines), material))


def _bodies(lines: list[LineEnd], material: str) -> tuple[frozenset[str], bool]:
    asked = frozenset({material} if material else {line.material for line in lines if line.material})
    like = frozenset(_LIKE_METAL[line.group] for line in lines if line.group in _LIKE_METAL)
    return (asked, True) if asked else (like or USUAL_METALS, False)


def chain_objection(part: Part) -> str:
    """Say why a part cannot be passed through on the way from a port to a line, or nothing."""
    flow_ends = len(part.flow_ends)
    if part.needs_panel:
        return "made for a panel: it needs a hole and a jam nut"
    if flow_ends > 2:
        return "leaves an end open: it has a branch"
    return "" if flow_ends == 2 else "has one end only: it closes what it is screwed to"
