"""From one evaluation to another: what stays, what goes on again, what comes off, what to buy.

Everything here is a difference of two evaluations. Which parts go together was decided when each was
made; nothing is decided anew.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.decide.again import again
from firmpedal.decide.keep import kept_pairs
from firmpedal.decide.pieces import pieces_of
from firmpedal.decide.ports import Gauge, MixedMetal, Turned, gauges, mixed_metals, turned
from firmpedal.decide.same import sameness
from firmpedal.decide.steps import steps_of
from firmpedal.decide.work import Kept, Removed, Reused, Work
from firmpedal.fit.assembly import Assembly

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.decide.keep import Pair
    from firmpedal.decide.pieces import Piece
    from firmpedal.decide.step import Step
    from firmpedal.pipeline import Evaluation


@dataclass(frozen=True)
class Retrofit:
    """The way from one evaluation to another: every piece once, what to look at, the work in order."""

    before: str | None
    after: str | None
    keep: tuple[Kept, ...]
    reuse: tuple[Reused, ...]
    remove: tuple[Removed, ...]
    buy: tuple[Piece, ...]
    gauge: tuple[Gauge, ...]
    metals: tuple[MixedMetal, ...]
    turn: tuple[Turned, ...]
    steps: tuple[Step, ...]

    @property
    def empty(self) -> bool:
        """Whether there is nothing to do."""
        return not self.steps


def retrofit(before: Evaluation, after: Evaluation) -> Retrofit:
    """Plan the work that leads from one evaluation to another of the same aircraft."""
    same = sameness(before, after)
    kept = tuple(Kept(*pair) for pair in kept_pairs(before, after, same))
    stay, go_in = {pair.before for pair in kept}, {pair.after for pair in kept}
    freed = [piece for piece in pieces_of(before) if piece not in stay]
    wanted = [piece for piece in pieces_of(after) if piece not in go_in]
    reuse = tuple(Reused(old, new, again(old).words) for old, new in _matched(freed, wanted))
    used, served = {pair.before for pair in reuse}, {pair.after for pair in reuse}
    buy = tuple(piece for piece in wanted if piece not in served)
    bought = {piece.sort for piece in buy}
    remove = tuple(Removed(piece, _why_not(piece, bought)) for piece in freed if piece not in used)
    work = Work(before, after, same, kept, reuse, remove, buy)
    checked, metals, turns = gauges(work), mixed_metals(work), turned(work)
    return Retrofit(
        before.reading.option,
        after.reading.option,
        kept,
        reuse,
        remove,
        buy,
        checked,
        metals,
        turns,
        steps_of(work, checked),
    )


def from_bare(evaluation: Evaluation) -> tuple[Step, ...]:
    """Give the work that makes all of it, where nothing of it is there yet."""
    return retrofit(bare(evaluation), evaluation).steps


def bare(evaluation: Evaluation) -> Evaluation:
    """The same aircraft before anything of its brake lines is on it."""
    gone = ("components", "bulkheads", "panels", "lines")
    aircraft = evaluation.aircraft.model_copy(update=dict.fromkeys(gone, ()))
    results = replace(evaluation.results, volumes=(), reach=())
    nothing = Assembly((), ())
    return replace(
        evaluation, aircraft=aircraft, assembly=nothing, laid=(), crossings=(), gaps=(), results=results
    )


def _matched(freed: Iterable[Piece], wanted: Iterable[Piece]) -> list[Pair]:
    """Give freed pieces to places that want the same thing, the same place first; each goes once."""
    free = [piece for piece in freed if again(piece).allowed]
    pairs = []
    for want in sorted(wanted, key=lambda piece: not any(piece.place == one.place for one in free)):
        fitting = [piece for piece in free if piece.sort == want.sort and _sure(piece)]
        if fitting:
            one = min(fitting, key=lambda piece: piece.place != want.place)
            free.remove(one)
            pairs.append((one, want))
    return pairs


def _sure(piece: Piece) -> bool:
    """A length that nobody knows is not known to be the same."""
    return piece.length is None or piece.length.known


def _why_not(piece: Piece, bought: set[tuple[object, ...]]) -> str:
    """Why a piece that comes off is bought new all the same; empty where nothing wants it."""
    verdict = again(piece)
    return verdict.words if piece.sort in bought and not verdict.allowed else ""
