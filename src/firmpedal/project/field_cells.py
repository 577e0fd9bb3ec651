"""What is written at a field, cut into the cells in which it can be written anew."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.model.space import AXIS_NAMES
from firmpedal.project.plain import flow
from firmpedal.project.points import AXES
from firmpedal.project.tree import UNKNOWN, Branch, Items, Leaf, Node, at, word_of

if TYPE_CHECKING:
    from collections.abc import Iterator

WAYS = tuple(way for sign in (1, -1) for way, (_, own) in AXES.items() if own == sign)
COORDINATES, FROM = "by coordinates", "from "


@dataclass(frozen=True, slots=True)
class Cell:
    """One piece that is written at a time.

    What is put in it is written at `place`. Where a point is not written out yet, that is the place of the
    whole point: `others` has the words of all its coordinates, and `number` says which of them this is.
    `several` says that words with commas between them are a list; `own_key` that it goes, key and all, when
    nothing is written in it. `unit` is that of a bare number there, empty where there is none.
    """

    place: str
    label: str
    words: str
    choices: tuple[str, ...] = ()
    others: tuple[str, ...] = ()
    number: int = 0
    mark: str = ""
    several: bool = False
    own_key: bool = False
    unit: str = ""

    def written(self, words: str) -> str:
        """What is to stand at its place when somebody puts words in it."""
        words = words.strip()
        if self.several:
            return listed(words)
        if not self.others or words[:1] in ("[", "{"):
            return words
        others = list(self.others)
        others[self.number] = words or UNKNOWN
        return f"[{', '.join(others)}]"


def listed(words: str) -> str:
    """Words with commas between them as a list; one alone, or a list already, as it is."""
    pieces = [each.strip() for each in words.split(",") if each.strip()]
    return words if words[:1] in ("[", "{") or len(pieces) < 2 else f"[{', '.join(pieces)}]"


class Kind(StrEnum):
    """What a row is, where it can be written in several ways."""

    VALUE = "value"
    POINT = "point"
    SHAPE = "shape"
    MOTION = "motion"


@dataclass(frozen=True, slots=True)
class Row:
    """The cells of one value: one for a figure, three for a point; it has its own place within a list.

    `ways` are the ways in which it can be given, of which `way` is the one that is written, at `at`. `label`
    tells it from the others of its field. `comes_to` is where a chain leads, in words.
    """

    place: str
    cells: tuple[Cell, ...]
    label: str = ""
    kind: Kind = Kind.VALUE
    at: str = ""
    way: str = ""
    ways: tuple[str, ...] = ()
    comes_to: str = ""
    unknown: bool = False

    @property
    def start(self) -> str:
        """The place that a point is measured from; empty for anything else."""
        return self.way.removeprefix(FROM) if self.kind is Kind.POINT and self.way != COORDINATES else ""


@dataclass(frozen=True, slots=True)
class Cutting:
    """How a field is cut: whether its values are points, whether there may be several, what it is a copy of.

    `choices` are the words to choose from; none where anything may be written. `chains` says that its points
    may hang on other places, `several` that words with commas between them are a list.
    """

    points: bool = False
    chains: bool = False
    several: bool = False
    many: bool = False
    copied: bool = False
    choices: tuple[str, ...] = ()


def rows_of(node: Node | None, place: str, how: Cutting) -> tuple[Row, ...]:
    """Cut what is written at a place into rows of cells; one row, perhaps empty, where it is no list.

    What is a copy of something else is not written there piece by piece, so it is one piece.
    """
    if how.many and isinstance(node, Items) and not how.copied:
        items = enumerate(node.nodes, 1)
        return tuple(_row(item, f"{place}.{n}", points=how.points, chains=how.chains) for n, item in items)
    if how.many and how.points:
        return () if node is None else (Row(place, (Cell(place, "", words_of(node)),)),)
    if how.points:
        row = _row(node, place, points=True, chains=how.chains)
        return (_whole(row),) if how.copied else (row,)
    choices = () if isinstance(node, Items) else how.choices
    words = words_of(node)
    if how.several and isinstance(node, Items) and "," not in "".join(map(word_of, node.nodes)):
        words = ", ".join(map(word_of, node.nodes))
    return (Row(place, (Cell(place, "", words, choices, several=how.several),)),)


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


def point_row(node: Node | None, place: str, label: str) -> Row:
    """The row of a point that stands within something else, such as the middle of a ball."""
    return replace(_row(node, place, points=True, chains=True), label=label)


def value_cell(node: Node | None, place: str, label: str, choices: tuple[str, ...] = ()) -> Cell:
    """The cell of one value, with its mark apart from it."""
    if isinstance(node, Branch) and "value" in node.entries:
        return Cell(f"{place}.value", label, words_of(at(node, "value")), mark=word_of(at(node, "mark")))
    return Cell(place, label, words_of(node), choices)


def _row(node: Node | None, place: str, *, points: bool, chains: bool = False) -> Row:
    inner, at_place = node, place
    if isinstance(node, Branch) and "value" in node.entries:
        inner, at_place = at(node, "value"), f"{place}.value"
    cells = tuple(_coordinates(inner, at_place)) if points else ()
    start = chain_start(inner) if chains else ""
    if start:
        cells = tuple(_along_the_tape(inner, at_place))
    if cells and chains:
        return Row(place, cells, kind=Kind.POINT, at=at_place, way=start)
    return Row(place, cells or (Cell(at_place, "", words_of(inner), mark=word_of(at(node, "mark"))),))


def chain_start(node: Node | None) -> str:
    """The name that a chain starts from, by plain ways alone; empty for anything else."""
    start = word_of(at(node, "from"))
    plain = isinstance(node, Branch) and all(key in AXES or key == "from" for key in node.entries)
    return start if plain else ""


def other_way(row: Row, cell: Cell) -> Cell | None:
    """The cell of a chain that goes along the same axis as another one, but backwards."""
    axis, sign = AXES[cell.label]
    return next((each for each in row.cells if AXES[each.label] == (axis, -sign)), None)


def chain_key(row: Row, cell: Cell) -> str:
    """The place of a whole way of a chain, with its mark."""
    return f"{row.at}.{cell.label}"


def _along_the_tape(node: Node | None, place: str) -> Iterator[Cell]:
    """A cell for each way that a chain can go."""
    for way in WAYS:
        yield replace(value_cell(at(node, way), f"{place}.{way}", way), own_key=True)


def _coordinates(node: Node | None, place: str) -> Iterator[Cell]:
    """Three cells for a point in numbers or one that is not known; none for one that hangs on another."""
    if isinstance(node, Items) and len(node.nodes) == len(AXIS_NAMES):
        for number, (name, item) in enumerate(zip(AXIS_NAMES, node.nodes, strict=True), 1):
            marked = isinstance(item, Branch) and "value" in item.entries
            words = words_of(at(item, "value") if marked else item)
            own = f"{place}.{number}.value" if marked else f"{place}.{number}"
            yield Cell(own, name, words, mark=word_of(at(item, "mark")))
    elif node is None or word_of(node) == UNKNOWN:
        nothing = (UNKNOWN,) * len(AXIS_NAMES)
        for number, name in enumerate(AXIS_NAMES):
            yield Cell(place, name, "" if node is None else UNKNOWN, others=nothing, number=number)
