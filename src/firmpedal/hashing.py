"""Frozen values for the memories of the stages, which ask for their hash and compare them again and again.

They work their hash out once; and of those that are read anew after each change, the first goes on
standing for all that are equal to it.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Generic, TypeVar

if TYPE_CHECKING:
    from collections.abc import Hashable

Kept = TypeVar("Kept", bound="HashKept")
Thing = TypeVar("Thing", bound="Hashable")
Kind = TypeVar("Kind")
REMEMBERED = 16_384  # some tens of aircraft


class HashKept:
    """What a frozen dataclass with slots inherits from to keep its hash; see `hash_kept`."""

    __slots__ = ("_hash",)
    _hash: int


def hash_kept(cls: type[Kept]) -> type[Kept]:
    """Let a frozen dataclass with slots keep its hash: its value cannot change, so that cannot either.

    It is no field, so it is neither compared nor shown, and a copy for another process, where words have
    other hashes, goes without it.
    """
    work_out = cls.__hash__

    def kept(self: Kept) -> int:
        try:
            return self._hash
        except AttributeError:
            found = work_out(self)
            object.__setattr__(self, "_hash", found)
            return found

    cls.__hash__ = kept  # type: ignore[method-assign, assignment]
    return cls


class Same(Generic[Kind]):
    """A thing in a memory that knows it as itself: for what cannot be hashed, or takes long to compare.

    Whoever remembers by this must not change the thing.
    """

    __slots__ = ("thing",)

    def __init__(self, thing: Kind) -> None:
        self.thing = thing

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Same) and other.thing is self.thing

    def __hash__(self) -> int:
        return id(self.thing)


def first_of_equals(thing: Thing) -> Thing:
    """Give the thing that came first of all that are equal to this one: it knows its hash already.

    What is the same thing is found in a memory at once, where one that is only equal is compared piece by
    piece, in every memory anew.
    """
    first: Thing = _first(thing)
    return first


@lru_cache(maxsize=REMEMBERED)
def _first(thing: Thing) -> Thing:
    return thing
