"""What a retrofit sorts pieces into, and all that the planning of its steps looks at."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.decide.pieces import Piece
    from firmpedal.decide.same import Sameness
    from firmpedal.pipeline import Evaluation


@dataclass(frozen=True, slots=True)
class Kept:
    """A piece that stays untouched, as it was and as it will be."""

    before: Piece
    after: Piece


@dataclass(frozen=True, slots=True)
class Reused:
    """A piece that comes off and may go on again, and what to look at first."""

    before: Piece
    after: Piece
    look: str


@dataclass(frozen=True, slots=True)
class Removed:
    """A piece that comes off for good; `why_not` where the same thing is bought new."""

    piece: Piece
    why_not: str


@dataclass(frozen=True)
class Work:
    """Both evaluations and what became of every piece."""

    before: Evaluation
    after: Evaluation
    same: Sameness
    kept: tuple[Kept, ...]
    reuse: tuple[Reused, ...]
    remove: tuple[Removed, ...]
    buy: tuple[Piece, ...]

    @property
    def off(self) -> tuple[Piece, ...]:
        """Everything that comes off, whether it goes on again or not."""
        return (*(item.before for item in self.reuse), *(item.piece for item in self.remove))

    @property
    def on(self) -> tuple[Piece, ...]:
        """Everything that goes on, used or new."""
        return (*(item.after for item in self.reuse), *self.buy)
