"""Object paths, by which everything in a builder's file is named: `lines.left_leg.via.2`."""

from __future__ import annotations


def is_within(place: str, thing: str) -> bool:
    """Whether an object path is that of a thing, or of something in it; nothing lies within no place."""
    return bool(thing) and f"{place}.".startswith(f"{thing}.")
