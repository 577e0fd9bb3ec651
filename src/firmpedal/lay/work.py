"""What the bench needs to know of a tube: marks, angles to set, order of bends, size of the finished part."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.lay.along import box
from firmpedal.lay.bend_order import BenderBody, BenderSpace, BendOrder, BendStep, bend_order
from firmpedal.lay.centreline import Centreline, centreline, waypoints
from firmpedal.lay.solids import solid_of
from firmpedal.lay.springback import angle_to_ask
from firmpedal.model.bench import MarkAt
from firmpedal.model.shapes import UnknownShape
from firmpedal.quantity import Answer, Missing, Value, total, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.lay.tube import TubeShape
    from firmpedal.model.bench import Bender
    from firmpedal.model.stock import Tube


@dataclass(frozen=True, slots=True)
class BendWork:
    """One bend at the bench: where its mark goes, what to set the bender to, which end's side is held.

    `mark` is the length along the straight tube from the finished flare at the first end.
    """

    mark: Value
    ask: Value
    held: str


@dataclass(frozen=True, slots=True)
class TubeWork:
    """The work on one tube. `order` is None where it is not known what the tube must not hit."""

    bends: tuple[BendWork, ...]
    order: BendOrder | None
    missing: tuple[Missing, ...]
    box: tuple[Value, Value, Value]

    @property
    def steps(self) -> tuple[BendStep, ...]:
        """The order to bend in; the usual one where no other is known."""
        if self.order is not None and self.order.steps:
            return self.order.steps
        return tuple(BendStep(number, bend.held) for number, bend in enumerate(self.bends))


def tube_work(shape: TubeShape, stock: Tube, bender: Bender, place: str) -> TubeWork | None:
    """Work out what the bench needs; None for a tube that cannot be bent."""
    line = shape.centreline
    if line is None:
        return None
    missing = _missing(bender)
    order = (
        bend_order(line, stock.outside_diameter.high, _space(bender))
        if (bender.parts or bender.grip.known) and not missing
        else None
    )
    held = {step.bend: step.held for step in order.steps} if order else {}
    bends = tuple(
        BendWork(
            _mark(shape, number, bender, held.get(number, "from"), place),
            angle_to_ask(bend.angle, bender),
            held.get(number, "from"),
        )
        for number, bend in enumerate(shape.bends)
    )
    return TubeWork(bends, order, missing, _box(line, stock, place))


def _missing(bender: Bender) -> tuple[Missing, ...]:
    found = [
        item for part in bender.parts if isinstance(part.where, UnknownShape) for item in part.where.missing
    ]
    if bender.parts and not bender.grip.known:
        found.append(Missing(f"{bender.place}.grip", "the straight that the bender grips before a bend"))
    return tuple(found)


def _space(bender: Bender) -> BenderSpace:
    bodies = tuple(
        BenderBody(part.name, solid_of(part.where), turns=part.turns is Answer.YES)
        for part in bender.parts
        if not isinstance(part.where, UnknownShape)
    )
    return BenderSpace(bodies, bender.grip.high)


def _mark(shape: TubeShape, number: int, bender: Bender, held: str, place: str) -> Value:
    """Add up what lies before the mark: as fed, the start of a bend is at the side that is held."""
    before = [value for n in range(number) for value in (shape.straights[n], shape.bends[n].arc)]
    before.append(shape.straights[number])
    share = {MarkAt.MIDDLE: 0.5, MarkAt.END: 1.0}.get(bender.mark or MarkAt.START, 0.0)
    share = share if held == "from" else 1 - share
    if share:
        before.append(_part(shape.bends[number].arc, share))
    return total(f"mark of bend {number + 1}", tuple(before), f"{place}.mark {number + 1}")


def _part(arc: Value, share: float) -> Value:
    if share == 1 or arc.span is None:
        return arc
    return replace(arc, label=f"half of {arc.label}", span=(arc.span[0] * share, arc.span[1] * share))


def _box(line: Centreline, stock: Tube, place: str) -> tuple[Value, Value, Value]:
    """The size of the finished part with its first leg along a table's edge and its first bend flat on it."""
    labels = ("length along the first leg", "width in the first bend's plane", "height over it")
    corners = waypoints(line.straights, line.bends, (0, 0, 0), (1, 0, 0), (0, 0, 1))
    flat = centreline(corners, tuple(bend.radius for bend in line.bends))
    outside = stock.outside_diameter
    if not isinstance(flat, Centreline) or not outside.known:
        empty = [unknown(label, Dimension.LENGTH, f"{place}.box") for label in labels]
        return empty[0], empty[1], empty[2]
    low, high = box(flat, outside.middle)
    values = [
        Value(label, Dimension.LENGTH, (top - bottom, top - bottom), outside.mark, f"{place}.box")
        for label, bottom, top in zip(labels, low, high, strict=True)
    ]
    return values[0], values[1], values[2]
