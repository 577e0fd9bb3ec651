"""Whether a piece that comes off may go on again, and what to look at first. Common practice, no source."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.part import Category, Form

if TYPE_CHECKING:
    from firmpedal.decide.pieces import Piece
    from firmpedal.model.part import Part


@dataclass(frozen=True, slots=True)
class Again:
    """Whether a piece may be used a second time; `words` say what to look at, or why not."""

    words: str
    allowed: bool


NEVER = {
    Category.COUPLING_NUT: "it sits behind the flare of the old tube",
    Category.SLEEVE: "it took the shape of the old flare",
    Category.TUBE: "it was cut, bent and flared for its old place",
    Category.OTHER: "it was cut for its old place, and plastic ages",
    Category.WASHER: "it was squeezed once",
}
LOOK = {
    Category.JAM_NUT: "look at its thread",
    Category.CLAMP: "its cushion must be whole and soft",
    Category.HOSE: "look at its age, its ends and its cover; lay it in the shape it has taken",
    Category.CAP: "look at its thread and its seat",
    Category.FITTING: "look at its thread",
}
MADE_UP = "it was made up on the old line, and a sleeve bites once"
CONE = "its cone must be smooth, with no ring and no scratch"
TAPER = "take the old sealant off; its taper thread goes further in than a new one"
STRETCHED = "often screwed in too far to make it point or hold, it stretches the port each time"


def again(piece: Piece) -> Again:
    """Judge a piece by what it is, not by what it is called."""
    forms = _forms(piece.part)
    if Form.COMPRESSION in forms:
        return Again(STRETCHED if Form.PIPE in forms else MADE_UP, allowed=False)
    if piece.category in NEVER:
        return Again(NEVER[piece.category], allowed=False)
    looks = [CONE] if forms & {Form.FLARE_37, Form.FLARE_45} else []
    looks += [TAPER] if Form.PIPE in forms else []
    return Again("; ".join(looks) or LOOK[piece.category], allowed=True)


def _forms(part: Part | None) -> frozenset[Form]:
    return frozenset(end.interface.form for end in part.ends) if part else frozenset()
