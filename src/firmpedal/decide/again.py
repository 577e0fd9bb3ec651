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
BITTEN = {
    Form.COMPRESSION_SHOULDER: "it has bitten into the old tube, and bites once",
    Form.SUPPORTED_TUBE: "the sleeve has pressed the old tube onto it",
}
SQUEEZED = {
    "copper": "squeezed once, copper is hard: a new one, or the old one annealed - heated to a dull red, "
    "cooled, and cleaned of its scale",
    "bonded rubber": "its rubber was squeezed once and keeps the shape of the old faces: a new one",
}
RING = "squeezed once, an O-ring stays flat: a new one, of a rubber that suits the fluid"
FACE = "the face that its washer lies on must be smooth"
CONE = "its cone must be smooth, with no ring and no scratch"
TAPER = "take the old sealant off; its taper thread goes further in than a new one"
STRETCHED = "often screwed in too far to make it point or hold, it stretches the port each time"


def again(piece: Piece) -> Again:
    """Judge a piece by what it is, not by what it is called."""
    forms = _forms(piece.part)
    if why_not := _bitten(forms) or _squeezed(piece, forms):
        return Again(why_not, allowed=False)
    if piece.category in NEVER:
        return Again(NEVER[piece.category], allowed=False)
    looks = [CONE] if forms & {Form.FLARE_37, Form.FLARE_45} else []
    looks += [TAPER] if Form.PIPE in forms else []
    looks += [FACE] if Form.WASHER_FACE in forms else []
    return Again("; ".join(looks) or LOOK[piece.category], allowed=True)


def _bitten(forms: frozenset[Form]) -> str:
    """Why a part of a compression joint is not used again: nut and body, sleeve, insert."""
    if Form.COMPRESSION in forms:
        return STRETCHED if Form.PIPE in forms else MADE_UP
    return next((why for form, why in BITTEN.items() if form in forms), "")


def _squeezed(piece: Piece, forms: frozenset[Form]) -> str:
    """Why what lay between two faces is not used again."""
    if piece.category is not Category.WASHER:
        return ""
    if Form.O_RING in forms:
        return RING
    return SQUEEZED.get(piece.material, "") if Form.WASHER_FACE in forms else ""


def _forms(part: Part | None) -> frozenset[Form]:
    return frozenset(end.interface.form for end in part.ends) if part else frozenset()
