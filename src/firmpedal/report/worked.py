"""Sheets in the words of the brakes that an aircraft has: of feet and pedals, or of a hand and its lever."""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from enum import Enum
from functools import wraps
from typing import TYPE_CHECKING, Any, Concatenate, ParamSpec, TypeVar

from firmpedal.model.aircraft import Brakes
from firmpedal.model.worked import in_words_of
from firmpedal.pipeline import Evaluation

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
        said: Made = _said(found) if by_hand else found
        return said

    return made


def _said(thing: Any) -> Any:
    """A thing with every text in it said for a hand."""
    if isinstance(thing, Enum):
        return thing
    if isinstance(thing, str):
        return in_words_of(Brakes.HAND, thing)
    if isinstance(thing, tuple):
        return tuple(map(_said, thing))
    if is_dataclass(thing) and not isinstance(thing, type):
        return replace(thing, **{each.name: _said(getattr(thing, each.name)) for each in fields(thing)})
    return thing
