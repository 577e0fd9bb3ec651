"""The pieces to practise flares on, in words that card, list and plan share."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.tube_plan import COUPONS, practice_pieces

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation


def practice_count(evaluation: Evaluation) -> int:
    """How many pieces are flared before the first tube: as many as are ordered, but as wanted at least."""
    return max(COUPONS, practice_pieces(evaluation))


def too_few(evaluation: Evaluation) -> str:
    """What is said where the file orders fewer than are wanted; empty otherwise."""
    ordered = practice_pieces(evaluation)
    return f"{COUPONS} are wanted, and your file orders {ordered or 'none'}" if ordered < COUPONS else ""


def practice_words(evaluation: Evaluation) -> str:
    """The sentence that stands before the first tube."""
    said = too_few(evaluation)
    more = f": {said}" if said else ""
    return f"First make {practice_count(evaluation)} practice pieces of each kind of tube{more}."
