"""Figures of bench and shop that cannot be: trial bends no metal makes, pieces and packs of nothing."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from firmpedal.model.bench import Springback
    from firmpedal.project.references import References
    from firmpedal.quantity import Value

# More springback than this is a slip of the pen: our own choice, several times what a tube bender
# finds in soft tube. A small bend may lose a larger share, so some degrees are always let pass.
MOST_SHARE = 1 / 4
ALWAYS_LET_PASS = math.radians(5)


def check_bench(work: References) -> None:
    """Note trial bends that cannot be believed, and tube in hand without length."""
    for trial in work.aircraft.bench.bender.springback:
        _trial(work, trial)
    for tube in work.aircraft.bench.tube:
        for piece in tube.pieces:
            if piece.known and piece.low == piece.high == 0:
                message, advice = f"a piece of {tube.name} has no length", "take it out of the list"
                work.notes.note(work.node(piece.place), message, advice)


def _trial(work: References, trial: Springback) -> None:
    """Only what its figures rule out however they were read is noted: a range may be on either side."""
    signs = [_nothing(work, trial.asked, "asked of the bender"), _nothing(work, trial.got, "that it came to")]
    if any(signs) or not (trial.asked.known and trial.got.known):
        return
    asked, got, node = trial.asked, trial.got, work.node(trial.got.place)
    if got.low > asked.high:
        message = f"this trial bend came to {_shown(got)}, more than the {_shown(asked)} that was asked"
        advice = "tube springs back, never on; see whether `asked` and `got` are swapped, or bend it again"
        work.notes.note(node, message, advice)
    elif asked.low - got.high > max(MOST_SHARE * asked.low, ALWAYS_LET_PASS):
        message = f"this trial bend sprang back from {_shown(asked)} to {_shown(got)}"
        advice = (
            "more than a quarter of the angle is more than metal does (a bound of our own); "
            "measure how far the tube itself turned, or bend it again"
        )
        work.notes.note(node, message, advice)


def _nothing(work: References, angle: Value, what: str) -> bool:
    if not angle.known or angle.low > 0:
        return False
    message = f"the angle {what} has to be more than nothing"
    work.notes.note(work.node(angle.place), message, "write how far the tube was turned, without a sign")
    return True


def _shown(angle: Value) -> str:
    low, high = (f"{math.degrees(bound):.4g}" for bound in (angle.low, angle.high))
    return f"{low} deg" if low == high else f"{low} to {high} deg"
