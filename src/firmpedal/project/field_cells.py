"""What is written at a field, cut into the cells in which it can be written anew."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.project.plain import flow
from firmpedal.project.position import NAMES
from firmpedal.project.tree import UNKNOWN, Branch, Items, Leaf, Node, at, word_of

if TYPE_CHECKING:
    from collections.abc import Iterator


@dataclass(frozen=True, slots=True)
class Cell:
    """One piece that is written at a time.

    What is put in it is written at `place`. Where a point is not written out yet, that is the place of the
    whole point: `others` has the words of all its coordinates, and `number` says which of them this is.
    """

    place: str
    label: str
    words: str
    choices: tuple[str, ...] = ()
    others: tuple[str, ...] = ()
    number: int = 0
    mark: str = ""

    def written(self, words: str) -> str:
        """What is to stand at its place when somebody puts words in it."""
        words = words.strip()
        if not self.others or words[:1] in ("[", "{"):
            return words
        others = list(self.others)
        others[self.number] = words or UNKNOWN
        return f"[{', '.join(others)}]"


@dataclass(frozen=True, slots=True)
class Row:
    """The cells of one value: one for a figure, three for a point; it has its own place within a list."""

    place: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class Cutting:
    """How a field is cut: whether its values are points, whether there may be several, what it is a copy of.

    `choices` are the words to choose from; none where anything may be written.
    """

    points: bool = False
    many: bool = False
    copied: bool = False
    choices: tuple[str, ...] = ()


def rows_of(node: Node | None, place: str, how: Cutting) -> tuple[Row, ...]:
    """Cut what is written at a place into rows of cells; one row, perhaps empty, where it is no list.

    What is a copy of something else is not written there piece by piece, so it is one piece.
    """
    if how.many and isinstance(node, Items) and not how.copied:
        items = enumerate(node.nodes, 1)
        return tuple(_row(item, f"{place}.{n}", points=how.points) for n, item in items)
    if how.many and how.points:
        return () if node is None else (Row(place, (Cell(place, "", words_of(node)),)),)
    if how.points:
        row = _row(node, place, points=True)
        return (_whole(row),) if how.copied else (row,)
    choices = () if isinstance(node, Items) else how.choices
    return (Row(place, (Cell(place, "", words_of(node), choices),)),)


def _whole(row: Row) -> Row:
    """A row of which each cell writes all of them."""
    words = tuple(cell.words for cell in row.cells)
    if len(words) == 1:
        return Row(row.place, (replace(row.cells[0], place=row.place),))
    return Row(
        row.place,
        tuple(replace(cell, place=row.place, others=words, number=n) for n, cell in enumerate(row.cells)),
    )


def words_of(node: Node | None) -> str:
    """What is written, in one line; empty where nothing is."""
    if node is None:
        return ""
    return node.text if isinstance(node, Leaf) else flow(node)


def _row(node: Node | None, place: str, *, points: bool) -> Row:
    inner, at_place = node, place
    if isinstance(node, Branch) and "value" in node.entries:
        inner, at_place = at(node, "value"), f"{place}.value"
    cells = tuple(_coordinates(inner, at_place)) if points else ()
    return Row(place, cells or (Cell(at_place, "", words_of(inner), mark=word_of(at(node, "mark"))),))


def _coordinates(node: Node | None, place: str) -> Iterator[Cell]:
    """Three cells for a point in numbers or one that is not known; none for one that hangs on another."""
    if isinstance(node, Items) and len(node.nodes) == len(NAMES):
        for number, (name, item) in enumerate(zip(NAMES, node.nodes, strict=True), 1):
            marked = isinstance(item, Branch) and "value" in item.entries
            words = words_of(at(item, "value") if marked else item)
            own = f"{place}.{number}.value" if marked else f"{place}.{number}"
            yield Cell(own, name, words, mark=word_of(at(item, "mark")))
    elif node is None or word_of(node) == UNKNOWN:
        nothing = (UNKNOWN,) * len(NAMES)
        for number, name in enumerate(NAMES):
            yield Cell(place, name, "" if node is None else UNKNOWN, others=nothing, number=number)
