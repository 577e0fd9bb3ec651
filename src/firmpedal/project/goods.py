"""What comes from the catalogue or is named by its thread: stock, fluid, threads and fittings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.catalog import PartError, StockError, catalogue, find, fluid, stock
from firmpedal.model.part import Form, Gender, Interface
from firmpedal.model.thread import Thread
from firmpedal.project.measures import marked
from firmpedal.project.names import choices_text, label_of, parted
from firmpedal.project.thread import ThreadError, read_thread
from firmpedal.project.tree import UNKNOWN, Branch, Leaf, Node, with_path
from firmpedal.project.words import text
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.catalog import CatalogueError
    from firmpedal.model.stock import Fluid, Stock
    from firmpedal.project.context import Context

_EXAMPLE = "write a size that there is, as in `tube 5052-O 1/4 x .035` or `hose -4 PTFE braided`"

# Stands where a thread could not be read; the aircraft is not handed out then.
NO_THREAD = Thread(Interface(Form.PIPE, "", Gender.FEMALE))


def read_port_thread(context: Context, node: Node) -> Thread:
    """Read `1/8 NPT female`, or {value: 1/8 NPT female, mark: assumed} where nobody has looked yet."""
    if isinstance(node, Branch) and "value" in node.entries:
        inner = read_port_thread(context, with_path(node.entries["value"], node.path))
        return Thread(inner.interface, marked(context, node, inner.mark))
    word = text(context, node)
    if not word:
        return NO_THREAD
    try:
        return Thread(read_thread(word))
    except ThreadError as error:
        context.notes.note(node, f"{label_of(node.path)}: {error}", error.suggestion)
        return NO_THREAD


def read_stock(context: Context, node: Node) -> Stock | None:
    """Read what a line is made of."""
    word = text(context, node)
    if not word:
        return None
    unit = context.default_unit(Dimension.LENGTH)
    try:
        return stock(word, unit)
    except StockError as error:
        if unit is None and _is_stock(word, "in"):
            context.without_unit.setdefault(Dimension.LENGTH, []).append((node, label_of(node.path)))
        else:
            _note(context, node, error)
        return None


def _is_stock(word: str, unit: str) -> bool:
    try:
        stock(word, unit)
    except StockError:
        return False
    return True


def read_fluid(context: Context, node: Node) -> Fluid | None:
    """Read which fluid is in the brakes; the builder may not know."""
    word = text(context, node)
    if word in ("", UNKNOWN):
        return None
    try:
        return fluid(word)
    except StockError as error:
        _note(context, node, error)
        return None


def read_designation(context: Context, node: Node) -> str:
    """Read the designation of a fitting that is in the catalogue, spelled as the catalogue spells it."""
    word = text(context, node)
    if word in ("", UNKNOWN) or not isinstance(node, Leaf):
        return ""
    part = catalogue().part(word)
    if part is not None:
        return part.designation
    try:
        return find(word).designation
    except PartError as error:
        _note(context, node, error)
        return ""


def _note(context: Context, node: Node, error: CatalogueError) -> None:
    message, advice = parted(str(error), error.suggestion)
    advice = advice or choices_text(error.choices) or _EXAMPLE
    context.notes.note(node, f"{label_of(node.path)}: {message}", advice)
