"""A list on a page whose pieces stay as long as they are wanted, with what is typed in them."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Generic, Protocol, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable, Sequence

    from nicegui.element import Element

Told_contra = TypeVar("Told_contra", contravariant=True)
Data = TypeVar("Data")


class Piece(Protocol[Told_contra]):
    """One piece of the list: its element, and how it shows what there is to say of it now."""

    element: Element

    def show(self, told: Told_contra) -> None:
        """Show what is told of it now."""


class Kept(Generic[Data]):
    """The pieces of one list, by what they are about.

    Args:
        holder: The list's element.
        make: Makes a piece inside it.
    """

    def __init__(self, holder: Element, make: Callable[[Data], Piece[Data]]) -> None:
        self._holder, self._make = holder, make
        self._pieces: dict[Hashable, Piece[Data]] = {}

    def show(self, wanted: Sequence[tuple[Hashable, Data]]) -> bool:
        """Show these, each under what it is about, in their order; says whether any went away."""
        numbered = _numbered(wanted)
        gone = [key for key in self._pieces if key not in numbered]
        for key in gone:
            self._pieces.pop(key).element.delete()
        for place, (key, told) in enumerate(numbered.items()):
            piece = self._pieces.get(key)
            if piece is None:
                with self._holder:
                    piece = self._pieces[key] = self._make(told)
            piece.show(told)
            children = self._holder.default_slot.children
            if place >= len(children) or children[place] is not piece.element:
                piece.element.move(target_index=place)
        return bool(gone)


def _numbered(wanted: Sequence[tuple[Hashable, Data]]) -> dict[Hashable, Data]:
    """Two that are about the same are two pieces still, so that nothing is left out."""
    counted: Counter[Hashable] = Counter()
    found: dict[Hashable, Data] = {}
    for key, told in wanted:
        counted[key] += 1
        found[key, counted[key]] = told
    return found
