"""Sheets in the words of the brakes that an aircraft has: of feet and pedals, or of a hand and its lever."""

from __future__ import annotations

from functools import partial, wraps
from typing import TYPE_CHECKING, Concatenate, ParamSpec, TypeVar

from firmpedal.model.aircraft import Brakes
from firmpedal.model.worked import in_words_of
from firmpedal.pipeline import Evaluation
from firmpedal.report.rewording import reworded

if TYPE_CHECKING:
    from collections.abc import Callable

More = ParamSpec("More")
Of = TypeVar("Of", Evaluation, tuple[Evaluation, ...])
Made = TypeVar("Made")


def worked(make: Callable[Concatenate[Of, More], Made]) -> Callable[Concatenate[Of, More], Made]:
    """Say a sheet, or sheets, for the brakes of the evaluation, or of the first of those it is made of."""

    @wraps(make)
    def made(of: Of, /, *args: More.args, **kwargs: More.kwargs) -> Made:
        found = make(of, *args, **kwargs)
        first = of if isinstance(of, Evaluation) else next(iter(of), None)
        by_hand = first is not None and first.aircraft.aircraft.brakes is Brakes.HAND
        said: Made = reworded(found, partial(in_words_of, Brakes.HAND)) if by_hand else found
        return said

    return made
