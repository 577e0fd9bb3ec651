"""How many spares to buy of a thing: one rule table, our estimate, which the builder's file overrules."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.model.part import Category, Form

if TYPE_CHECKING:
    from firmpedal.model.buying import Buying
    from firmpedal.model.part import Part


class Use(StrEnum):
    """What a thing is for, as far as it decides how many of it are spoiled."""

    FLARE_NUT = "coupling nuts"
    FLARE_SLEEVE = "sleeves"
    COMPRESSION_NUT = "compression nuts"
    COMPRESSION_SLEEVE = "compression sleeves"
    INSERT = "inserts"
    WASHER = "sealing washers"
    O_RING = "O-rings"
    CLAMP = "clamps"
    TUBE = "tube"
    FITTING = "fittings"
    OTHER = "everything else"


@dataclass(frozen=True, slots=True)
class SpareRule:
    """One more for every `one_in` that are used, and never fewer than `least`; our estimate."""

    uses: tuple[Use, ...]
    one_in: int  # 0: none
    least: int
    why: str

    def spares(self, used: int) -> int:
        """How many spares go with a number of used ones; nothing used needs no spare."""
        if used <= 0 or self.one_in == 0:
            return 0
        return max(self.least, -(-used // self.one_in))

    @property
    def words(self) -> str:
        """The rule as it is printed."""
        names = " and ".join(use.value for use in self.uses)
        if self.one_in == 0:
            return f"{names}: none, {self.why}"
        if self.one_in == 1:
            return f"{names}: as many again, {self.why}"
        return f"{names}: one for every {self.one_in}, at least {self.least}, {self.why}"


RULES = (
    SpareRule((Use.FLARE_NUT, Use.FLARE_SLEEVE), 4, 2, "for the practice flares and one bad one"),
    SpareRule((Use.COMPRESSION_NUT,), 4, 1, "for one that is cross-threaded"),
    SpareRule((Use.COMPRESSION_SLEEVE, Use.INSERT), 2, 2, "because a sleeve bites once"),
    SpareRule((Use.WASHER, Use.O_RING), 1, 1, "because each is squeezed once"),
    SpareRule((Use.CLAMP,), 8, 1, "for one of a size that does not grip"),
    SpareRule((Use.FITTING, Use.OTHER), 0, 0, "what is wrong is exchanged"),
)


@dataclass(frozen=True, slots=True)
class OwnRule:
    """What the builder's file says instead: so many of each kind and size that is used."""

    uses: tuple[Use, ...]
    count: int

    def spares(self, used: int) -> int:
        """How many spares go with a number of used ones; nothing used needs no spare."""
        return self.count if used > 0 else 0

    @property
    def words(self) -> str:
        """The rule as it is printed."""
        names = " and ".join(use.value for use in self.uses)
        return f"{names}: {self.count or 'none'} of each"


def rule_of(use: Use, buying: Buying) -> SpareRule | OwnRule | None:
    """The rule for a use, the builder's before ours; tube has none, the cutting plan says what is bought."""
    own = next((rule for rule in own_rules(buying) if use in rule.uses), None)
    return own or next((rule for rule in RULES if use in rule.uses), None)


def own_rules(buying: Buying) -> tuple[OwnRule, ...]:
    """Every rule that the builder's file gives; half a spare is a whole one."""
    said = (
        ((Use.FLARE_NUT, Use.FLARE_SLEEVE), buying.spare_nuts_and_sleeves),
        ((Use.COMPRESSION_NUT, Use.COMPRESSION_SLEEVE, Use.INSERT), buying.spare_compression_parts),
        ((Use.WASHER, Use.O_RING), buying.spare_washers_and_rings),
        ((Use.CLAMP,), buying.spare_clamps),
        ((Use.FITTING,), buying.spare_fittings),
    )
    return tuple(OwnRule(uses, math.ceil(count.high)) for uses, count in said if count.known)


def use_of(part: Part | None, category: Category) -> Use:
    """What a thing is for, by its ends, whatever it is called."""
    if category is Category.CLAMP:
        return Use.CLAMP
    if category is Category.TUBE:
        return Use.TUBE
    if category in (Category.HOSE, Category.OTHER):
        return Use.OTHER
    forms = {end.interface.form for end in part.ends} if part is not None else set()
    return _OF_CATEGORY.get(category, _fitting)(forms)


def _fitting(_forms: set[Form]) -> Use:
    return Use.FITTING


def _nut(forms: set[Form]) -> Use:
    return Use.COMPRESSION_NUT if Form.COMPRESSION in forms else Use.FLARE_NUT


def _sleeve(forms: set[Form]) -> Use:
    if Form.PLAIN_TUBE in forms:
        return Use.INSERT
    return Use.COMPRESSION_SLEEVE if Form.SUPPORTED_TUBE in forms else Use.FLARE_SLEEVE


def _washer(forms: set[Form]) -> Use:
    return Use.O_RING if Form.O_RING in forms else Use.WASHER


_OF_CATEGORY = {Category.COUPLING_NUT: _nut, Category.SLEEVE: _sleeve, Category.WASHER: _washer}
