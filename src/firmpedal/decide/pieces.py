"""An evaluation taken apart into pieces that one can hold: fittings, nuts, sleeves, lines, clamps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.decide.clamp_sizes import clamp_size
from firmpedal.fit.mating import NUTS_AND_SLEEVES
from firmpedal.model.part import Category
from firmpedal.model.stock import Hose, LineKind

if TYPE_CHECKING:
    from firmpedal.fit.joint import Joint
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.part import Part
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

LINE_CATEGORIES = {
    LineKind.TUBE: Category.TUBE,
    LineKind.HOSE: Category.HOSE,
    LineKind.PLASTIC: Category.OTHER,
}


@dataclass(frozen=True, slots=True)
class Piece:
    """One thing in its place; `line` is the line that a nut, sleeve or clamp sits on, or that it is."""

    place: str  # components.left_caliper.ports.inlet, bulkheads.left_floor, lines.left_leg
    owner: str  # the joint's or line's name
    number: int  # which of the pieces of its place
    designation: str
    category: Category
    size: str
    material: str
    holds: str = ""  # what a clamp goes round
    line: str = ""
    length: Value | None = None
    part: Part | None = None

    @property
    def sort(self) -> tuple[object, ...]:
        """What must agree for two pieces to be the same thing to buy."""
        span = self.length.span if self.length is not None else None
        rounded = tuple(round(bound, 6) for bound in span) if span else None
        return (self.designation, self.category, self.size, self.material, rounded)


def pieces_of(evaluation: Evaluation) -> tuple[Piece, ...]:
    """Every piece of an evaluation, joint by joint, then line by line."""
    found: list[Piece] = []
    for joint in evaluation.assembly.joints:
        found += joint_pieces(joint)
    for line in evaluation.laid:
        found += line_pieces(evaluation, line)
    return tuple(found)


def joint_pieces(joint: Joint) -> list[Piece]:
    """The parts of a joint in order; nuts and sleeves belong to the line they sit on."""
    return [_joint_piece(joint, number, part) for number, part in enumerate(joint.parts)]


def _joint_piece(joint: Joint, number: int, part: Part) -> Piece:
    bought = as_bought(part)
    category = Category.CAP if closes(part) else part.category
    return Piece(
        joint.place,
        joint.name,
        number,
        bought.designation,
        category,
        bought.size,
        bought.material,
        line=line_of(joint, number) if part.category in NUTS_AND_SLEEVES else "",
        part=part,
    )


def as_bought(part: Part) -> Part:
    """The part under the number to order it by: that of the part it is, where it is put to another use."""
    return (catalogue().part(part.same_as) if part.same_as else None) or part


def closes(part: Part) -> bool:
    """Whether a part has one end only, and fluid comes to it: a cap or a plug."""
    return len(part.flow_ends) == 1 and len(part.ends) == 1


def line_of(joint: Joint, number: int) -> str:
    """The line whose tube a nut or sleeve holds: from it through nuts and sleeves to a line's end."""
    seen, waiting = {f"part {number}"}, [f"part {number}"]
    while waiting:
        here = waiting.pop()
        for mating in joint.matings:
            pair = (mating.one.owner, mating.other.owner)
            for one, other in (pair, pair[::-1]):
                if one != here or other in seen:
                    continue
                if other.startswith("line "):
                    return line_name(other)
                if _nut_or_sleeve(joint, other):
                    seen.add(other)
                    waiting.append(other)
    return ""


def _nut_or_sleeve(joint: Joint, owner: str) -> bool:
    word, _, number = owner.partition(" ")
    return word == "part" and joint.parts[int(number)].category in NUTS_AND_SLEEVES


def line_name(owner: str) -> str:
    """The name in an owner such as `line left_leg from`."""
    return owner.removeprefix("line ").rpartition(" ")[0]


def find_line(evaluation: Evaluation, name: str) -> LaidLine | None:
    return next((line for line in evaluation.laid if line.name == name), None)


def line_pieces(evaluation: Evaluation, line: LaidLine) -> list[Piece]:
    """A line as one piece, and each of its clamps."""
    stock = line.stock
    size = (stock.dash or evaluation.display.value(stock.outside_diameter)).lstrip("-")
    material = stock.specification if isinstance(stock, Hose) else stock.material.name
    category = LINE_CATEGORIES[line.kind]
    whole = Piece(
        line.place,
        line.name,
        0,
        stock.phrase,
        category,
        size,
        material,
        line=line.name,
        length=line.order_length,
    )
    clamp, holds = clamp_size(evaluation, line), stock.phrase.split(" x ", maxsplit=1)[0]
    clamps = [
        Piece(line.place, line.name, number, clamp.name, Category.CLAMP, clamp.size, "", holds, line.name)
        for number, _ in enumerate(line.supports.stations, 1)
    ]
    return [whole, *clamps]


def lines_at(joint: Joint) -> tuple[str, ...]:
    """The names of the lines that come to a joint."""
    owners = [
        end.owner
        for mating in joint.matings
        for end in (mating.one, mating.other)
        if end.owner.startswith("line ")
    ]
    owners += [end.owner for end in joint.open_ends if end.owner.startswith("line ")]
    return tuple(dict.fromkeys(line_name(owner) for owner in owners))
