"""Things of the file as they were read before: what nothing has changed about is not read again.

A thing goes by what is written of it, by the file's units and states, and by the places that it starts from.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, TypeVar

from firmpedal.hashing import Same
from firmpedal.project.tree import Branch, at

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.model.fields import Declared
    from firmpedal.model.space import Position
    from firmpedal.project.context import Context
    from firmpedal.project.tree import Node

Thing = TypeVar("Thing", bound="Declared")


@dataclass(frozen=True, slots=True)
class _Read:
    """A thing, and the named places that it started from, with where they were."""

    thing: Declared
    starts: tuple[tuple[str, Position], ...]


class Known:
    """What one reading knows from those before it, and keeps for those after it."""

    def __init__(self, context: Context) -> None:
        self._context = context

    def thing(self, cls: type[Thing], node: object, read: Callable[[], Thing]) -> Thing:
        """A thing of a section as it was read before, if it would be the same again; else as it is read now.

        Where something is wrong or doubtful in the file by then, nothing is kept.
        """
        if not isinstance(node, Branch) or node.path.count(".") != 1:
            return read()
        places, tree = self._context.places, self._context.tree
        kept = _kept(cls, Same(node), Same(at(tree, "units")), Same(at(tree, "states")))
        for each in kept:
            as_before = all(places.start(name) == where for name, where in each.starts)
            if as_before and isinstance(each.thing, cls):
                return each.thing
        before = len(places.starts)
        thing = read()
        if not self._context.troubled:
            kept[:] = [_Read(thing, tuple(dict.fromkeys(places.starts[before:])))]
        return thing


@lru_cache(maxsize=1024)
def _kept(
    _cls: type[Declared], _node: Same[Branch], _units: Same[Node | None], _states: Same[Node | None]
) -> list[_Read]:
    """Where one thing is kept under all that it goes by; empty before it was read."""
    return []
