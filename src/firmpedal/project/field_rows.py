"""The rows of what is written in several pieces: shapes, movements, and states of being measured."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.project.chains import with_way
from firmpedal.project.edit import EditError
from firmpedal.project.edit_keys import with_value, without_key
from firmpedal.project.field_cells import Cell, Kind, Row, point_row, value_cell, words_of
from firmpedal.project.field_choices import other_positions, positions_of
from firmpedal.project.field_edits import readable
from firmpedal.project.locate import walked
from firmpedal.project.tree import UNKNOWN, Branch, Items, Node, at, branch_at, word_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.project.read import Reading

NOT_KNOWN, STILL, STRAIGHT, SWING = "not measured yet", "does not move it", "straight, so far", "a swing"
AT_END = "at +1"  # of a range the movement is given there
TOGETHER = "several together"
THREE = "[unknown, unknown, unknown]"
PAIRS = {"box": ("one corner", "opposite corner"), "bar": ("one end", "other end"),
         "within": ("within: one corner", "within: opposite corner")}  # fmt: skip
SWINGS = "{about: unknown, axis: unknown, swing: unknown}"
_BOX, _BALL = "{box: [unknown, unknown]}", "{ball: unknown, radius: unknown}"
_PLANES = {
    "up": "up: a floor", "aft": "aft: a wall across", "right": "right: a wall along",
}  # fmt: skip
_SIDES = {
    "up below": "all below a height", "up above": "all above a height",
    "aft below": "all forward of a plane", "aft above": "all aft of a plane",
    "right below": "all left of a plane", "right above": "all right of a plane",
}  # fmt: skip
_LABELS = {**_SIDES, "from": "along it from", "to": "along it to"}


@dataclass(frozen=True, slots=True)
class Form:
    """One way in which a shape can be given: its name, the key by which it is known, and its first words."""

    name: str
    key: str
    words: str


def forms_of(tree: Branch, method: str) -> tuple[Form, ...]:
    """The ways in which a zone, a body or a panel can be given."""
    if method == "sheet":
        return tuple(Form(name, key, f"{{{key}: unknown}}") for key, name in _PLANES.items())
    both = (Form("a box", "box", _BOX), Form("a ball", "ball", _BALL))
    if method == "body":
        disc = "{disc: unknown, axis: unknown, radius: unknown, thickness: unknown}"
        bar = Form("a bar", "bar", "{bar: [unknown, unknown], radius: unknown}")
        return (*both, bar, Form("a disc", "disc", disc))
    sides = tuple(Form(name, key, f"{{{key}: unknown}}") for key, name in _SIDES.items())
    lines = [Form("a stretch of a line", "line", f"{{line: {name}, from: unknown, to: unknown}}")
             for name in branch_at(tree, "lines")][:1]  # fmt: skip
    return (*both, *sides, *lines)


def shape_rows(tree: Branch, node: Node | None, place: str, method: str) -> tuple[Row, ...]:
    """The rows of where a zone, a body or a panel is."""
    forms = forms_of(tree, method)
    ways = (NOT_KNOWN, *(form.name for form in forms))
    if node is None or word_of(node) == UNKNOWN:
        way = NOT_KNOWN if node is not None else ""
        return (Row(place, (), kind=Kind.SHAPE, at=place, way=way, ways=ways, unknown=node is not None),)
    if not isinstance(node, Branch):
        return ()
    written = [form.name for form in forms if form.key in node.entries]
    way = written[0] if len(written) == 1 else TOGETHER
    head = Row(place, (), kind=Kind.SHAPE, at=place, way=way, ways=ways if way in ways else (*ways, way))
    return (head, *_parts(tree, node, place))


def _parts(tree: Branch, node: Branch, place: str) -> Iterator[Row]:
    """The points of a shape, each in a row, then its figures in one."""
    cells: list[Cell] = []
    for key, item in node.entries.items():
        own = f"{place}.{key}"
        if key in PAIRS and isinstance(item, Items):
            for number, (each, label) in enumerate(zip(item.nodes, PAIRS[key], strict=False), 1):
                yield point_row(each, f"{own}.{number}", label)
        elif key in ("ball", "disc", "about"):
            yield point_row(item, own, "middle" if key != "about" else "about a point")
        else:
            choices = tuple(branch_at(tree, "lines")) if key == "line" else ()
            cells.append(value_cell(item, own, _LABELS.get(key, key), choices))
    if cells:
        yield Row(place, tuple(cells))


def motion_rows(tree: Branch, node: Node | None, place: str, state: str) -> tuple[Row, ...]:
    """The rows of how a state moves a thing: for each of its named positions, or at the end of its range."""
    if not positions_of(tree, state):
        return tuple(_movement(tree, node, place, AT_END))
    if node is not None and not isinstance(node, Branch):
        return tuple(_movement(tree, node, place, ""))
    names = dict.fromkeys((*other_positions(tree, state), *branch_at(node)))
    return tuple(
        row for name in names for row in _movement(tree, at(node, name), f"{place}.{name}", f"when {name}")
    )


def _movement(tree: Branch, node: Node | None, place: str, label: str) -> Iterator[Row]:
    ways = (STILL, NOT_KNOWN, STRAIGHT, SWING)
    swings = isinstance(node, Branch) and "about" in node.entries
    straight = isinstance(node, Items)
    way = STILL if node is None else SWING if swings else STRAIGHT if straight else NOT_KNOWN
    if node is not None and way == NOT_KNOWN and word_of(node) != UNKNOWN:  # as it stands, to be mended
        yield Row(place, (Cell(place, "", words_of(node)),), label)
        return
    yield Row(place, (), label, Kind.MOTION, place, way, ways, unknown=way == NOT_KNOWN)
    if isinstance(node, Branch):
        yield from _parts(tree, node, place)
    elif straight:
        row = point_row(node, place, "")
        yield Row(place, row.cells)


def measured_rows(tree: Branch, node: Node | None, place: str) -> tuple[Row, ...]:
    """The position of each state when something was measured."""
    states = dict.fromkeys((*branch_at(tree, "states"), *branch_at(node)))
    if not states or (node is not None and not isinstance(node, Branch)):
        return ()
    cells = tuple(
        Cell(f"{place}.{name}", name, word_of(at(node, name)), positions_of(tree, name), own_key=True)
        for name in states
    )
    return (Row(place, cells),)


def given_in(reading: Reading, row: Row, way: str, method: str) -> str:
    """Give what a row holds in another way.

    Args:
        reading: The text, with the option that is looked at.
        row: The row, with the way in which it is given now.
        way: One of its ways.
        method: How its field is read.

    Raises:
        EditError: It cannot be given so.
    """
    if row.kind is Kind.POINT:
        return with_way(reading, row.at, way)
    return with_form(reading, row.at, row.kind, way, method)


def with_form(reading: Reading, place: str, kind: Kind, way: str, method: str) -> str:
    """Give a shape or a movement in another way, its figures still to be measured.

    Raises:
        EditError: It cannot be written there without touching more.
    """
    text, option, tree = reading.text, reading.option, reading.tree
    if tree is None:
        raise EditError("a text that cannot be read cannot be changed", "mend it in the text first")
    if way == STILL:
        return readable(reading, _without(text, tree, place, option))
    words = {NOT_KNOWN: UNKNOWN, STRAIGHT: THREE, SWING: SWINGS} if kind is Kind.MOTION else {
        NOT_KNOWN: UNKNOWN, **{form.name: form.words for form in forms_of(tree, method)}
    }  # fmt: skip
    if way not in words:
        raise EditError("choose one of the ways in the list", "or write it in the text")
    return readable(reading, with_value(text, place, words[way], option))


def _without(text: str, tree: Branch, place: str, option: str | None) -> str:
    """Nothing moves it there; but something has to move a thing, or carry it."""
    thing = ".".join(place.split(".")[:2])
    here = place
    while here != thing:
        around = here.rpartition(".")[0]
        if len(branch_at(walked(tree, around))) > 1:
            return without_key(text, place, option)
        here = around
    message = "nothing would move it then"
    raise EditError(message, "take it out as a whole, or leave it at `not measured yet`")
