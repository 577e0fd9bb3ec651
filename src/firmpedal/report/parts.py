"""The parts list: what the design takes, each thing once, with where it goes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.catalog import StockError, catalogue, stock
from firmpedal.decide.clamp_sizes import CLAMP, clamp_size
from firmpedal.decide.goods import Goods, Kind, folded, goods_of_part, goods_of_stock
from firmpedal.decide.pieces import as_bought, closes
from firmpedal.fit.mating import NUTS_AND_SLEEVES
from firmpedal.model.display import listed
from firmpedal.model.part import Category
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Value, total

if TYPE_CHECKING:
    from firmpedal.fit.joint import Joint
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.part import Part
    from firmpedal.pipeline import Evaluation

ORDER = tuple(Category)
LENGTHS = {
    LineKind.TUBE: ", cut to {length}",
    LineKind.HOSE: ", {length} from seat to seat",
    LineKind.PLASTIC: ", {length}",
}


@dataclass(frozen=True, slots=True)
class Item:
    """One row of the parts list; `lengths` holds the length of each piece of tube or hose in it.

    `supposed` has, for each piece chosen for a thread that nobody has looked at yet, the port it goes in.
    Rows merge when designation, category, size, material, words and length agree.
    """

    designation: str
    category: Category
    quantity: int
    size: str
    material: str
    description: str
    where: tuple[str, ...]
    also_known_as: tuple[str, ...] = ()
    lengths: tuple[Value, ...] = ()
    spare: bool = False
    supposed: tuple[str, ...] = ()

    @property
    def key(self) -> tuple[str, ...]:
        """What must agree for two rows to be one."""
        lengths = {f"{length.middle:.4f}" if length.known else "unknown" for length in self.lengths}
        sort = (self.designation, self.category, self.size, self.material, self.description)
        return (*sort, " ".join(sorted(lengths)))


def parts_list(evaluation: Evaluation) -> tuple[Item, ...]:
    """Collect every part of every joint, every line, and the clamps, and add up equal ones."""
    items: list[Item] = []
    ports = evaluation.aircraft.supposed_ports
    for joint in evaluation.assembly.joints:
        items += [_part_item(part, joint, supposed=joint.name in ports) for part in joint.parts]
    for line in evaluation.laid:
        items.append(_line_item(line, evaluation))
        items += _clamp_items(line, evaluation)
    merged: dict[tuple[str, ...], Item] = {}
    for item in items:
        merged[item.key] = _added(merged[item.key], item) if item.key in merged else item
    return tuple(
        sorted(merged.values(), key=lambda item: (ORDER.index(item.category), item.designation, item.size))
    )


def _added(one: Item, other: Item) -> Item:
    return replace(
        one,
        quantity=one.quantity + other.quantity,
        where=tuple(dict.fromkeys((*one.where, *other.where))),
        lengths=(*one.lengths, *other.lengths),
        supposed=(*one.supposed, *other.supposed),
    )


def _part_item(part: Part, joint: Joint, *, supposed: bool) -> Item:
    """One part of a joint; a line's own nut and sleeve are the same whatever thread its port has."""
    bought = as_bought(part)
    category = Category.CAP if closes(bought) else bought.category
    size, material, where = bought.size, bought.material, (joint.name,)
    waits = where if supposed and part.category not in NUTS_AND_SLEEVES else ()
    names = bought.also_known_as
    return Item(bought.designation, category, 1, size, material, bought.name, where, names, supposed=waits)


def _line_item(line: LaidLine, evaluation: Evaluation) -> Item:
    category = {LineKind.TUBE: Category.TUBE, LineKind.HOSE: Category.HOSE, LineKind.PLASTIC: Category.OTHER}
    length = line.order_length
    names = {LineKind.TUBE: "tube", LineKind.HOSE: "hose with swivel ends", LineKind.PLASTIC: "plastic line"}
    words = names[line.kind]
    if length.known:
        words += LENGTHS[line.kind].format(length=evaluation.display.value(length))
    size = line.stock.dash or evaluation.display.value(line.stock.outside_diameter)
    return Item(
        line.stock.phrase,
        category[line.kind],
        1,
        size.lstrip("-"),
        _material(line),
        words,
        (line.name,),
        (),
        (length.named(f"length of {line.name}"),),
    )


def _material(line: LaidLine) -> str:
    return line.stock.specification if isinstance(line.stock, Hose) else line.stock.material.name


def _clamp_items(line: LaidLine, evaluation: Evaluation) -> list[Item]:
    count = len(line.supports.stations)
    if not count:
        return []
    clamp = clamp_size(evaluation, line)
    if not clamp.across.known:
        words = f"size not shown: measure {listed([item.what for item in clamp.across.missing])}"
    else:
        over = ", over the sleeve" if clamp.over else ""
        first = "" if clamp.across.exact else ": measure it before you order"
        words = f"goes round {evaluation.display.value(clamp.across)} across{over}{first}"
    return [Item(clamp.name, Category.CLAMP, count, clamp.size, "", words, (line.name,))]


def goods_of_item(item: Item, unit: str | None) -> Goods:
    """What a row of the list is, under the key by which lists and price books are compared."""
    part = catalogue().part(item.designation)
    if part is not None:
        return goods_of_part(part)
    if item.lengths:
        try:
            return goods_of_stock(stock(item.designation, unit))
        except StockError:
            pass
    family = CLAMP if item.category is Category.CLAMP else item.designation
    return Goods(folded(item.designation), item.designation, Kind.PIECE, family, item.size, item.material)


def whole_length(item: Item) -> Value | None:
    """The length of all pieces in a row together."""
    return total(f"length of {item.designation}", item.lengths) if item.lengths else None
