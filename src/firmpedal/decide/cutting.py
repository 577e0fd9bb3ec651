"""Which piece to cut from which stick: the least tube bought, then the least tube opened.

The choice is a small integer programme, handed to a kept solver and solved to the end.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from numpy.typing import NDArray

    Array = NDArray[np.float64]

OPENED = 1e-4  # what a metre opened costs beside a metre bought: it only chooses among equal purchases
UNCUT = 1e3  # what a metre left uncut costs: more than any stick that it could be cut from


@dataclass(frozen=True, slots=True)
class Piece:
    """A finished tube to cut: its name, and the length to cut [m]."""

    name: str
    length: float


@dataclass(frozen=True, slots=True)
class Stick:
    """Tube in one length: `in_hand` lies there; otherwise as many as are wanted can be bought [m]."""

    name: str
    length: float
    in_hand: bool


@dataclass(frozen=True, slots=True)
class Cut:
    """One stick with the pieces that come out of it, longest first, and what is left over [m]."""

    stick: Stick
    pieces: tuple[Piece, ...]
    left_over: float


@dataclass(frozen=True, slots=True)
class CuttingPlan:
    """All cuts; `without_stick` are pieces that find none to be cut from, as little of them as can be."""

    cuts: tuple[Cut, ...]
    without_stick: tuple[Piece, ...]

    @property
    def bought(self) -> float:
        """Length to buy [m]."""
        return sum(cut.stick.length for cut in self.cuts if not cut.stick.in_hand)

    @property
    def opened(self) -> float:
        """Length of all sticks that are cut into [m]."""
        return sum(cut.stick.length for cut in self.cuts)


def cutting_plan(pieces: Sequence[Piece], sticks: Sequence[Stick], cutter_loss: float = 0.0) -> CuttingPlan:
    """Cut every piece from some stick.

    Args:
        pieces: What to cut.
        sticks: Each stick in hand once; each length that can be bought once.
        cutter_loss: What one cut takes [m]; between pieces, and before the left-over.

    Raises:
        ValueError: A length is not positive, or the loss is negative.
    """
    lengths = [*(piece.length for piece in pieces), *(stick.length for stick in sticks)]
    if min(lengths, default=1.0) <= 0 or cutter_loss < 0:
        raise ValueError("lengths are positive, and a cut gives nothing back")
    most = max((stick.length for stick in sticks), default=0.0)
    kept = [piece for piece in pieces if piece.length <= most]
    hand = [stick for stick in sticks if stick.in_hand]
    shelf = [*hand, *(stick for stick in sticks if not stick.in_hand for _ in kept)]
    solved = _solve(kept, shelf, cutter_loss) if kept else np.zeros((0, len(shelf)))
    cuts = sorted(_cuts(kept, shelf, solved, cutter_loss), key=lambda cut: _first(cut, kept))
    cut_up = [piece for piece, row in zip(kept, solved, strict=True) if row.any()]
    return CuttingPlan(tuple(cuts), tuple(piece for piece in pieces if piece not in cut_up))


def _first(cut: Cut, pieces: list[Piece]) -> int:
    """Where the first of its pieces stands in the list."""
    return min(pieces.index(piece) for piece in cut.pieces)


def _solve(pieces: list[Piece], shelf: list[Stick], loss: float) -> Array:
    """Say for each piece (row) and stick (column) whether it is cut from it.

    Where what fits one by one does not fit together and nothing can be bought, pieces stay uncut.
    """
    solved = _solved(pieces, shelf, loss, least=1.0)
    if solved is None:
        solved = _solved(pieces, shelf, loss, least=0.0)
    assert solved is not None  # noqa: S101  to cut nothing is always possible
    return solved


def _solved(pieces: list[Piece], shelf: list[Stick], loss: float, least: float) -> Array | None:
    """Cut each piece `least` times, 1 or 0, and at most once; None where that cannot be."""
    from scipy.optimize import Bounds, LinearConstraint, milp  # noqa: PLC0415  loads slowly, used by few

    count, width = len(pieces), len(shelf)
    gained = np.repeat([(1 - least) * UNCUT * piece.length for piece in pieces], width)
    cost = np.concatenate([-gained, [_cost(stick) for stick in shelf]])
    rows = [*_each_once(count, width, least), *_all_fit(pieces, shelf, loss), *_same_in_order(shelf, count)]
    matrix, low, high = (np.array(part) for part in zip(*rows, strict=True))
    found = milp(
        cost,
        integrality=np.ones_like(cost),
        bounds=Bounds(0, 1),
        constraints=LinearConstraint(matrix, low, high),
        options={"mip_rel_gap": 0.0},
    )
    return None if found.x is None else np.round(found.x[: count * width]).reshape(count, width)


def _cost(stick: Stick) -> float:
    return stick.length * (OPENED if stick.in_hand else 1 + OPENED)


Row = tuple["Array", float, float]


def _each_once(count: int, width: int, least: float) -> Iterator[Row]:
    for piece in range(count):
        row = np.zeros(count * width + width)
        row[piece * width : (piece + 1) * width] = 1
        yield row, least, 1.0


def _all_fit(pieces: list[Piece], shelf: list[Stick], loss: float) -> Iterator[Row]:
    """A stick holds its pieces and a cut after each but the last, which may end where the stick ends."""
    width = len(shelf)
    for number, stick in enumerate(shelf):
        row = np.zeros(len(pieces) * width + width)
        row[number : len(pieces) * width : width] = [piece.length + loss for piece in pieces]
        row[len(pieces) * width + number] = -(stick.length + loss)
        yield row, -np.inf, 1e-9


def _same_in_order(shelf: list[Stick], count: int) -> Iterator[Row]:
    """Of sticks that are alike the first is opened first, so that the solver need not try them all."""
    width = len(shelf)
    for number, (one, other) in enumerate(pairwise(shelf)):
        if (one.length, one.in_hand) == (other.length, other.in_hand):
            row = np.zeros(count * width + width)
            row[count * width + number], row[count * width + number + 1] = 1, -1
            yield row, 0.0, 1.0


def _cuts(pieces: list[Piece], shelf: list[Stick], solved: Array, loss: float) -> Iterator[Cut]:
    for number, stick in enumerate(shelf):
        own = [piece for piece, row in zip(pieces, solved, strict=True) if row[number]]
        if own:
            left = stick.length - sum(piece.length for piece in own) - loss * len(own)
            yield Cut(stick, tuple(sorted(own, key=lambda piece: -piece.length)), max(left, 0.0))
