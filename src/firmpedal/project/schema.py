"""What the model's classes look like in the file: their keys, and what stands behind each."""

from __future__ import annotations

import typing
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Any

from firmpedal.model.component import BaseComponent
from firmpedal.model.fields import Declared, Named, Reads
from firmpedal.model.kinds import KINDS
from firmpedal.project.tree import Node, at, word_of

if TYPE_CHECKING:
    from pydantic.fields import FieldInfo


@dataclass(frozen=True, slots=True)
class Key:
    """One key of a class: the field it fills, and how it is read.

    `inner` is the class of a thing with keys of its own, `many` says that there are several of them.
    """

    key: str
    field: str
    reads: Reads | None
    inner: type[Declared] | None
    many: bool
    required: bool
    info: FieldInfo

    @property
    def named(self) -> bool:
        """Whether the things behind this key have names, and so stand as keys themselves."""
        return self.many and self.inner is not None and issubclass(self.inner, Named)


@cache
def known_keys(cls: type[Declared]) -> dict[str, Key]:
    """The keys that a class takes in the file, without those that the builder names freely."""
    own = {"place", "written", "name"} if issubclass(cls, Named) else {"place", "written"}
    fields = {name: info for name, info in cls.model_fields.items() if name not in own}
    keys = [_key(name, info) for name, info in fields.items() if name != cls.free_keys]
    return {key.key: key for key in keys}


@cache
def keys_asked_for(cls: type[Declared]) -> tuple[Key, ...]:
    """Those of its keys for which something has to stand where the builder leaves them out."""
    return tuple(key for key in known_keys(cls).values() if key.required or key.info.is_required())


def _key(name: str, info: FieldInfo) -> Key:
    reads = next((item for item in info.metadata if isinstance(item, Reads)), None)
    inner, many = (None, False) if reads else _inner(info.annotation)
    needed = info.is_required() and (not reads.optional if reads else _needed(inner, many=many))
    return Key(info.alias or name.replace("_", " "), name, reads, inner, many, needed, info)


def _inner(annotation: Any) -> tuple[type[Declared] | None, bool]:
    """The class behind `Pistons` or `tuple[Port, ...]`; any kind of component counts as the bare one."""
    if isinstance(annotation, type) and issubclass(annotation, Declared):
        return annotation, False
    member = typing.get_args(annotation)[0]
    if isinstance(member, type):
        return member, True
    return BaseComponent, True


def _needed(inner: type[Declared] | None, *, many: bool) -> bool:
    """Things that must be there are asked for; one thing with keys only if one of them must be there."""
    return many or (inner is not None and any(key.required for key in known_keys(inner).values()))


@cache
def _keys_of_all_kinds() -> dict[str, Key]:
    return {name: key for cls in KINDS.values() for name, key in known_keys(cls).items()}


def keys_at(cls: type[Declared], *nodes: Node | None) -> dict[str, Key]:
    """The keys a piece can have; a component's kind is looked up in the first piece that tells it."""
    if cls is not BaseComponent:
        return known_keys(cls)
    kinds = [KINDS[word] for node in nodes if (word := word_of(at(node, "kind"))) in KINDS]
    return known_keys(kinds[0]) if kinds else _keys_of_all_kinds()
