"""Sheets as plain data, for whatever reads JSON."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from typing import Any


def plain(thing: object) -> Any:
    """Turn sheets, and all that is in them, into dictionaries, lists, text and numbers.

    What a block is stands under `kind`.
    """
    if is_dataclass(thing) and not isinstance(thing, type):
        inner = {field.name: plain(getattr(thing, field.name)) for field in fields(thing)}
        return {"kind": type(thing).__name__.lower(), **inner}
    if isinstance(thing, frozenset):
        return sorted(thing)
    if isinstance(thing, tuple | list):
        return [plain(item) for item in thing]
    return str(thing) if isinstance(thing, str) else thing
