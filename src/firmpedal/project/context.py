"""The reading context: what the model's markers ask for, made from pieces of the file."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, TypeVar

from pydantic import ValidationError

from firmpedal import units
from firmpedal.finding import Problem
from firmpedal.hashing import first_of_equals
from firmpedal.project import bodies, directions, goods, measures, motions, shapes, things, words
from firmpedal.project.known import Known
from firmpedal.project.names import label_of
from firmpedal.project.position import Places
from firmpedal.project.tree import Absent, Branch, Items, Node, at, is_empty, word_of

if TYPE_CHECKING:
    from collections.abc import Callable
    from enum import StrEnum

    from firmpedal.model.circuit import ClampPlan
    from firmpedal.model.component import BaseComponent, SideOf
    from firmpedal.model.fields import Declared, Reads
    from firmpedal.model.shapes import Body, Shape, Sheet, UnknownShape
    from firmpedal.model.space import Direction, NamedPoint, Position
    from firmpedal.model.stock import Fluid, Stock
    from firmpedal.model.surroundings import Motion
    from firmpedal.model.thread import Thread
    from firmpedal.project.notes import Notes
    from firmpedal.quantity import Answer, Value
    from firmpedal.units import Dimension

Thing = TypeVar("Thing", bound="Declared")
UNEXPECTED = "this cannot be read, and the program does not know why"


@dataclass
class Context:
    """Reads the pieces of one file; every method that a marker names is here."""

    tree: Branch
    notes: Notes
    units: dict[Dimension, str | None] = field(default_factory=dict)
    without_unit: dict[Dimension, list[tuple[Node, str]]] = field(default_factory=dict)
    places: Places = field(init=False)
    known: Known = field(init=False)

    def __post_init__(self) -> None:
        self.places = Places(self)
        self.known = Known(self)

    @property
    def troubled(self) -> bool:
        """Whether anything was noted or doubted so far."""
        return self.notes.count > 0 or bool(self.without_unit)

    def nothing(self, node: Node, advice: str) -> None:
        """Note a key with nothing behind it."""
        self.notes.note(node, f"nothing is written after {label_of(node.path)}", advice)

    def default_unit(self, dimension: Dimension) -> str | None:
        """The file's own unit for bare numbers of a dimension; None where it names none."""
        if dimension not in self.units:
            section = self.tree.entries.get("units")
            readable = section is None or isinstance(section, Branch) or is_empty(section)
            word = word_of(at(section, dimension.value))
            self.units[dimension] = _unit(word, dimension) if readable else units.units_of(dimension)[0]
        return self.units[dimension]

    def listed(self, node: Node, advice: str) -> tuple[Node, ...]:
        """The items of a list; anything else is noted."""
        if isinstance(node, Items):
            return node.nodes
        if is_empty(node):
            self.nothing(node, advice)
        elif not isinstance(node, Absent):
            self.notes.note(node, f"{label_of(node.path)} should be a list", advice)
        return ()

    # -- things with keys -------------------------------------------------------------------------

    def thing(self, cls: type[Thing], node: Any, filled: Callable[[Any], Thing]) -> Thing:
        """A thing as an earlier reading gave it, where nothing of it has changed; else read now."""
        return self.known.thing(cls, node, lambda: first_of_equals(filled(things.prepare(self, cls, node))))

    def children(self, nodes: list[Node]) -> list[Node]:
        return nodes

    def component(self, node: Node, _marker: Reads) -> BaseComponent:
        return things.component(self, node)

    # -- words ------------------------------------------------------------------------------------

    def text(self, node: Node, marker: Reads) -> str:
        return goods.read_designation(self, node) if marker.target == "parts" else words.text(self, node)

    reference = text

    def words(self, node: Node, _marker: Reads) -> tuple[str, ...]:
        return words.words(self, node)

    def choice(self, node: Node, marker: Reads) -> StrEnum | None:
        return words.choice(self, node, marker)

    def side(self, node: Node, _marker: Reads) -> SideOf:
        return words.side(self, node)

    def answer(self, node: Node, _marker: Reads) -> Answer:
        return words.answer(self, node)

    def connection(self, node: Node, _marker: Reads) -> str:
        return words.connection(self, node)

    def pairs(self, node: Node, _marker: Reads) -> tuple[tuple[str, str], ...]:
        return words.pairs(self, node)

    def state(self, node: Node, _marker: Reads) -> tuple[tuple[str, str], ...]:
        return words.state(self, node)

    def clamps(self, node: Node, _marker: Reads) -> ClampPlan | tuple[Value, ...]:
        return words.clamps(self, node)

    def lengths(self, node: Node, _marker: Reads) -> tuple[Value, ...]:
        return words.lengths(self, node)

    # -- numbers and places -----------------------------------------------------------------------

    def measure(self, node: Node, marker: Reads) -> Value:
        return measures.measure(self, node, marker)

    def position(self, node: Node, _marker: Reads | None = None) -> Position:
        return self.places.position(node)

    vector = position

    def positions(self, node: Node, _marker: Reads) -> tuple[Position, ...]:
        return self.places.positions(node)

    def named_points(self, node: Node, _marker: Reads) -> tuple[NamedPoint, ...]:
        return things.named_points(self, node)

    def direction(self, node: Node, _marker: Reads) -> Direction:
        return directions.direction(self, node)

    def motions(self, node: Node, _marker: Reads) -> tuple[Motion, ...]:
        return motions.motions(self, node)

    def shape(self, node: Node, _marker: Reads) -> tuple[Shape, ...]:
        return shapes.shape(self, node)

    def body(self, node: Node, _marker: Reads) -> Body:
        return bodies.body(self, node)

    def sheet(self, node: Node, _marker: Reads) -> Sheet | UnknownShape:
        return bodies.sheet(self, node)

    # -- catalogue --------------------------------------------------------------------------------

    def thread(self, node: Node, _marker: Reads) -> Thread:
        return goods.read_port_thread(self, node)

    def stock(self, node: Node, _marker: Reads) -> Stock | None:
        return goods.read_stock(self, node)

    def fluid(self, node: Node, _marker: Reads) -> Fluid | None:
        return goods.read_fluid(self, node)


def _unit(text: str, dimension: Dimension) -> str | None:
    """The unit of a word; any unit for a word that is none, so that nothing more is said about it."""
    try:
        return units.canonical_unit(text, dimension) if text else None
    except units.UnitError as error:  # said once, where the file's units are looked at
        return error.suggestion or units.units_of(dimension)[0]


def read_aircraft(cls: type[Any], context: Context) -> Any | None:
    """Fill the model; every piece that cannot be read is noted and has something standing in for it.

    So the model's own validation finds nothing to complain about. If it does all the same, the builder
    gets a sentence and the place, and our tests fail on it.
    """
    try:
        return cls.model_validate(context.tree, context=context)
    except ValidationError as error:
        for fault in error.errors(include_url=False, include_context=False, include_input=False):
            where = ".".join(str(part) for part in fault["loc"])
            advice = f"please report this: {where or 'the file'}: {fault['msg']}"
            context.notes.found.append(Problem(context.tree.span, UNEXPECTED, suggestion=advice))
        return None
