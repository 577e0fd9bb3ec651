"""What a part cannot do without: the jam nut on its bulkhead thread, the washer on its face, its O-ring."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.fit.shop import Shelf, Shop
    from firmpedal.fit.wishes import Wishes
    from firmpedal.model.part import Interface, Part


def companions_of(part: Part, wishes: Wishes, shop: Shop) -> list[Shelf | None]:
    """Pick what goes on each dry end of a part, of its own metal if there is one; None where nothing does."""
    if not part.flow_ends:
        return []
    return [_best(end, part, wishes, shop) for end in part.dry_ends]


def still_owed(parts: Iterable[Part], wishes: Wishes, shop: Shop) -> list[Part]:
    """Pick what goes on the dry ends of parts, over and above what already stands among them."""
    placed = list(parts)
    there = [end.complement for part in placed if not part.flow_ends for end in part.dry_ends]
    owed: list[Part] = []
    for part in placed:
        for end in part.dry_ends if part.flow_ends else ():
            if end in there:
                there.remove(end)
            elif (shelf := _best(end, part, wishes, shop)) is not None:
                owed.append(shelf.part)
    return owed


def dry_seals(part: Part) -> int:
    """Count the places beside a part's flow ends where it holds fluid: its washer faces."""
    return sum(end.seals for end in part.dry_ends)


def _best(end: Interface, body: Part, wishes: Wishes, shop: Shop) -> Shelf | None:
    usable = [shelf for shelf in shop.on_dry_end.get(end, ()) if not wishes.objection(shelf.part)]
    return min(usable, key=lambda shelf: _order(shelf, body, wishes), default=None)


def _order(shelf: Shelf, body: Part, wishes: Wishes) -> tuple[int, ...]:
    other_metal = shelf.part.material != body.material
    return (wishes.unlike(shelf.part), other_metal, shelf.unknown_masses, shelf.micrograms, shelf.rank)
