"""Sheets said in other words: every text in them goes through one function, nothing else changes."""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from enum import Enum
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable


def reworded(thing: Any, say: Callable[[str], str]) -> Any:
    """A sheet, a block or several, with every text in it said by `say`; names of kinds and tones stay."""
    if isinstance(thing, Enum):
        return thing
    if isinstance(thing, str):
        return say(thing)
    if isinstance(thing, tuple):
        return tuple(reworded(each, say) for each in thing)
    if is_dataclass(thing) and not isinstance(thing, type):
        return replace(
            thing, **{each.name: reworded(getattr(thing, each.name), say) for each in fields(thing)}
        )
    return thing
