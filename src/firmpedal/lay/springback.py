"""What to ask of the bender for the angle that is wanted, from the builder's own trial bends.

Springback from theory is not used: annealed tube springs back two or three times as far as its yield
strength says. Between two trials the ratio of asked to got goes evenly from the one to the other; beyond
the smallest and the greatest it stays as it was there, and that is an estimate.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.quantity import Mark, Missing, Step, Value, all_missing, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.bench import Bender, Springback

COUPON = "what a trial bend of this tube comes to: the angle asked of the bender, and the angle got"


def angle_to_ask(wanted: Value, bender: Bender) -> Value:
    """Give the angle to set for a bend; unknown where no trial bend has been made.

    Args:
        wanted: The angle that the finished tube has there [rad].
        bender: With its trial bends.
    """
    label, place = f"angle to set for {wanted.label}", f"{wanted.place}.set"
    trials = [trial for trial in bender.springback if trial.asked.known and trial.got.known]
    if wanted.span is None or not trials:
        lacking = wanted.missing or all_missing(
            [each for trial in bender.springback for each in (trial.asked, trial.got)]
        )
        missing = lacking or (Missing(f"{bender.place}.springback", COUPON),)
        return replace(unknown(label, Dimension.ANGLE, place), missing=missing)
    ends = [bound * _ratio(bound, trials, side) for bound, side in zip(wanted.span, (0, 1), strict=True)]
    return Value(
        label, Dimension.ANGLE, (ends[0], ends[1]), _mark(wanted, bender), place, step=_step(wanted, trials)
    )


def within_trials(wanted: Value, bender: Bender) -> bool:
    """Whether trial bends came to both less and more than a wanted angle, or to just that."""
    got = [trial.got.middle for trial in bender.springback if trial.asked.known and trial.got.known]
    return bool(got) and wanted.known and min(got) <= wanted.low and wanted.high <= max(got)


def _ratio(angle: float, trials: list[Springback], side: int) -> float:
    """Asked over got for an angle, at the low (0) or high (1) side of the trials' own ranges."""
    got = [
        (trial.got.middle, (trial.asked.span or (0, 0))[side] / (trial.got.span or (1, 1))[1 - side])
        for trial in trials
    ]
    places, ratios = zip(*sorted(got), strict=True)
    return float(np.interp(angle, places, ratios))


def _mark(wanted: Value, bender: Bender) -> Mark:
    marks = [each.mark for trial in bender.springback for each in (trial.asked, trial.got) if each.known]
    return max(
        Mark.DERIVED if within_trials(wanted, bender) else Mark.ESTIMATE,
        wanted.mark,
        *marks,
    )


def _step(wanted: Value, trials: list[Springback]) -> Step:
    pairs = [
        (f"{name}{n}", value)
        for n, trial in enumerate(trials, 1)
        for name, value in (("asked", trial.asked), ("got", trial.got))
    ]
    return Step("wanted x asked / got, between the nearest trials", (("wanted", wanted), *pairs))
