"""Frozen values that work their hash out once, for the memories of the stages ask for it again and again."""

from __future__ import annotations

from typing import TypeVar

Kept = TypeVar("Kept", bound="HashKept")


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
