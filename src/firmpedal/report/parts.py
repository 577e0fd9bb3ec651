"""The parts list: what to buy, each thing once, with where it goes."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.part import Category
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Value, total
from firmpedal.report.sheet import Paragraph, Sheet, Table, Tone

if TYPE_CHECKING:
    from firmpedal.fit.joint import Joint
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.part import Part
    from firmpedal.pipeline import Evaluation

ORDER = tuple(Category)


@dataclass(frozen=True, slots=True)
class Item:
    """One row of the parts list; `lengths` holds the length of each piece of tube or hose in it.

    Rows merge when designation, category, size, material and length agree.
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

    @property
    def key(self) -> tuple[str, str, str, str, str]:
        lengths = {f"{length.middle:.4f}" if length.known else "unknown" for length in self.lengths}
        return (self.designation, self.category, self.size, self.material, " ".join(sorted(lengths)))


def parts_list(evaluation: Evaluation) -> tuple[Item, ...]:
    """Collect every part of every joint, every line, and the clamps, and add up equal ones."""
    items: list[Item] = []
    for joint in evaluation.assembly.joints:
        items += [_part_item(part, joint) for part in joint.parts]
    for line in evaluation.laid:
        items.append(_line_item(line, evaluation))
        items += _clamp_items(line)
    merged: dict[tuple[str, ...], Item] = {}
    for item in items:
        merged[item.key] = _added(merged[item.key], item) if item.key in merged else item
    return tuple(
        sorted(merged.values(), key=lambda item: (ORDER.index(item.category), item.designation, item.size))
    )


def _added(one: Item, other: Item) -> Item:
    return Item(
        one.designation,
        one.category,
        one.quantity + other.quantity,
        one.size,
        one.material,
        one.description,
        tuple(dict.fromkeys((*one.where, *other.where))),
        one.also_known_as,
        (*one.lengths, *other.lengths),
    )


def _part_item(part: Part, joint: Joint) -> Item:
    category = Category.CAP if len(part.flow_ends) == 1 and len(part.ends) == 1 else part.category
    return Item(
        part.designation, category, 1, part.size, part.material, part.name, (joint.name,), part.also_known_as
    )


def _line_item(line: LaidLine, evaluation: Evaluation) -> Item:
    category = {LineKind.TUBE: Category.TUBE, LineKind.HOSE: Category.HOSE, LineKind.PLASTIC: Category.OTHER}
    length = line.order_length
    shown = evaluation.display.value(length)
    words = {
        LineKind.TUBE: f"tube, cut to {shown}",
        LineKind.HOSE: f"hose with swivel ends, {shown} from seat to seat",
        LineKind.PLASTIC: f"plastic line, {shown}",
    }
    size = line.stock.dash or evaluation.display.value(line.stock.outside_diameter)
    return Item(
        line.stock.phrase,
        category[line.kind],
        1,
        size.lstrip("-"),
        _material(line),
        words[line.kind],
        (line.name,),
        (),
        (length.named(f"length of {line.name}"),),
    )


def _material(line: LaidLine) -> str:
    return line.stock.specification if isinstance(line.stock, Hose) else line.stock.material.name


def _clamp_items(line: LaidLine) -> list[Item]:
    count = len(line.supports.stations)
    if not count:
        return []
    size = (line.stock.dash or "").lstrip("-")
    words = f"cushioned clamp for {line.stock.phrase.split(' x ')[0]}"
    return [Item("cushioned clamp", Category.CLAMP, count, size, "", words, (line.name,))]


def parts_sheet(evaluation: Evaluation) -> Sheet:
    """The parts list as a table to order from."""
    items = parts_list(evaluation)
    rows = tuple(
        (str(item.quantity), item.designation, item.description, ", ".join(item.where)) for item in items
    )
    table = Table(("qty", "designation", "what", "where"), rows, frozenset({0}))
    return Sheet("Parts to order", (table, *_closing(evaluation, items)))


def _closing(evaluation: Evaluation, items: tuple[Item, ...]) -> list[Paragraph]:
    """Say in words that the list closes, or that it does not, and what is not in it."""
    open_ends = len(evaluation.violations)
    counted = Counter(dict.fromkeys(Category, 0))
    for item in items:
        counted[item.category] += item.quantity
    if open_ends:
        said = Paragraph(
            f"This list does not close: {open_ends} ends mate with nothing. See the findings.", Tone.WARNING
        )
    else:
        said = Paragraph(
            f"The list closes: {counted[Category.COUPLING_NUT]} coupling nuts, "
            f"{counted[Category.SLEEVE]} sleeves, {counted[Category.JAM_NUT]} jam nuts, "
            "and every end has its partner."
        )
    left_out = "Not in this list yet: washers, spares, practice tube, sealant, fluid, caps for open ends."
    aliases = [
        f"{item.designation}: also {', '.join(item.also_known_as)}" for item in items if item.also_known_as
    ]
    names = [Paragraph("Other names on the bag. " + "; ".join(aliases) + ".", Tone.SMALL)] if aliases else []
    return [said, Paragraph(left_out, Tone.SMALL), *names]


def whole_length(item: Item) -> Value | None:
    """The length of all pieces in a row together."""
    return total(f"length of {item.designation}", item.lengths) if item.lengths else None
