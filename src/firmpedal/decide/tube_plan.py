"""The cutting plan of a whole aircraft: one for each kind of tube."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.decide.cutting import CuttingPlan, Piece, Stick, cutting_plan
from firmpedal.model.stock import LineKind
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from firmpedal.decide.cutting import Cut
    from firmpedal.pipeline import Evaluation

# Sticks as tube is sold, where the file does not say what can be had: common practice, no source.
USUAL_STICKS = (from_unit(6, "ft"), from_unit(12, "ft"))
COUPON = from_unit(4, "in")  # enough to grip and to flare both ends of
ROUNDING = 1e-6  # of a practice piece: 12 in are three of them, whatever is left of it in floating point
COUPONS = 3  # practice pieces wanted before the first tube: our estimate, ordered where the file says nothing


@dataclass(frozen=True, slots=True)
class StickCount:
    """Sticks of one length [m] to buy: what the named tubes take, and what is for practice."""

    length: float
    used: int
    practice: int
    tubes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class TubePlan:
    """The plan for one kind of tube; `unknown` names the tubes whose length is not known yet."""

    phrase: str
    plan: CuttingPlan
    unknown: tuple[str, ...]
    usual_sticks: bool  # nothing in the file says which sticks can be had
    shortest_on_sale: float  # [m]
    unopened: tuple[Stick, ...] = ()  # in hand, and nothing is cut from it
    practice: int = COUPONS  # pieces ordered to practise on

    @property
    def coupons(self) -> int:
        """How many practice pieces come out of what is left over, and of sticks that stay whole."""
        rest = [cut.left_over for cut in self.plan.cuts] + [stick.length for stick in self.unopened]
        return sum(map(practice_out_of, rest))

    @property
    def coupons_lacking(self) -> int:
        """How many practice pieces have to come from somewhere else."""
        return max(0, self.practice - self.coupons)

    @property
    def sticks_to_buy(self) -> tuple[StickCount, ...]:
        """What to buy by length: for the pieces, and more where too little is left to practise on."""
        bought = [cut for cut in self.plan.cuts if not cut.stick.in_hand]
        used = Counter(cut.stick.length for cut in bought)
        shortest = self.shortest_on_sale
        sticks = -(-self.coupons_lacking // max(practice_out_of(shortest), 1)) if self.plan.cuts else 0
        more = Counter({shortest: sticks} if sticks else {})
        return tuple(
            StickCount(length, used[length], more[length], _cut_from(bought, length))
            for length in sorted({*used, *more})
        )

    @property
    def to_buy(self) -> float:
        """How much tube is bought in all [m]."""
        return sum(sticks.length * (sticks.used + sticks.practice) for sticks in self.sticks_to_buy)


def practice_out_of(length: float) -> int:
    """How many practice pieces come out of a length [m]."""
    return int(length / COUPON + ROUNDING)


def _cut_from(bought: list[Cut], length: float) -> tuple[str, ...]:
    """Which tubes come out of the sticks of one length."""
    return tuple(piece.name for cut in bought if cut.stick.length == length for piece in cut.pieces)


def tube_plans(evaluation: Evaluation) -> tuple[TubePlan, ...]:
    """Plan the cuts of each kind of tube, in the order of the file.

    Tube in hand is under `bench: tube:` of the file; what can be bought is the longest tube there, or
    else the usual sticks. A tube is cut at the upper end of its range: what is too long can be trimmed.
    """
    phrases = dict.fromkeys(line.stock.phrase for line in evaluation.laid if line.kind is LineKind.TUBE)
    return tuple(_plan(evaluation, phrase) for phrase in phrases)


def practice_pieces(evaluation: Evaluation) -> int:
    """How many pieces to practise on are ordered of each kind of tube; `COUPONS` are wanted in any case."""
    own = evaluation.aircraft.buying.practice_pieces
    return math.ceil(own.high) if own.known else COUPONS


def _plan(evaluation: Evaluation, phrase: str) -> TubePlan:
    tubes = [
        (line.name, line.tube.cut_length)
        for line in evaluation.laid
        if line.tube and line.stock.phrase == phrase
    ]
    pieces = [Piece(name, length.high) for name, length in tubes if length.known]
    bench = evaluation.aircraft.bench
    loss = bench.cutter_loss.high if bench.cutter_loss.known else 0.0
    hand = [
        Stick(f"{stock.name} {number}" if len(stock.pieces) > 1 else stock.name, length.low, in_hand=True)
        for stock in bench.tube
        if stock.made_of.phrase == phrase
        for number, length in enumerate(stock.pieces, 1)
        if length.known
    ]
    lengths = (bench.longest_tube.low,) if bench.longest_tube.known else USUAL_STICKS
    sale = [Stick("to buy", length, in_hand=False) for length in lengths]
    plan = cutting_plan(pieces, [*hand, *sale], loss)
    wanted = practice_pieces(evaluation)
    unknown = tuple(name for name, length in tubes if not length.known)
    opened = {cut.stick for cut in plan.cuts}
    unopened = tuple(stick for stick in hand if stick not in opened)
    return TubePlan(phrase, plan, unknown, not bench.longest_tube.known, min(lengths), unopened, wanted)
