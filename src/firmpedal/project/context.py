"""The reading context: turns pieces of the file into the model's values, collecting every problem."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, cast

from pydantic import TypeAdapter, ValidationError

from firmpedal import units
from firmpedal.catalog import PartError, StockError, fluid, stock
from firmpedal.finding import Problem
from firmpedal.model.circuit import ClampPlan
from firmpedal.model.fields import Declared, Named, Reads
from firmpedal.model.kinds import KINDS, Component
from firmpedal.model.space import NamedPoint
from firmpedal.project import shapes
from firmpedal.project.filling import children, filled
from firmpedal.project.names import UNKNOWN, label_of, renamed, suggest, suggest_from, without_advice
from firmpedal.project.noted import Noted, UnreadableError
from firmpedal.project.position import Places
from firmpedal.project.thread import ThreadError, read_thread
from firmpedal.project.tree import Branch, Items, Leaf, Node, at
from firmpedal.quantity import Mark, Missing, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.part import Interface
    from firmpedal.model.space import Direction, Position
    from firmpedal.model.stock import Fluid, Stock
    from firmpedal.model.surroundings import Motion, Shape

SIZES = (Dimension.LENGTH, Dimension.FORCE, Dimension.PRESSURE, Dimension.VOLUME, Dimension.MASS)


@dataclass
class Context(Noted):
    """Reads the pieces of one file."""

    def __post_init__(self) -> None:
        self.places = Places(self)

    # -- things with keys -------------------------------------------------------------------------

    def prepare(self, cls: type[Declared], node: Node) -> dict[str, Any]:
        """Turn a branch into the fields of a class."""
        return filled(self, cls, keys_of(cls), node)

    def children(self, node: Node) -> list[Node]:
        return children(self, node)

    def component(self, node: Node, _marker: Reads) -> Component:
        if not isinstance(node, Branch):
            raise self.unreadable(node, f"{label_of(node.path)} should be a list of keys and values")
        kind = node.entries.get("kind")
        name = self.leaf_text(kind) if kind is not None else ""
        if kind is None:
            message = f"{label_of(node.path)} has no `kind`"
            span = self.spans.nearest(node.path)
            self.problems.append(Problem(span, message, "", suggest("", KINDS)))
            raise UnreadableError(message)
        if name not in KINDS:
            raise self.unreadable(kind, f"`{name}` is not a kind of component", suggest(name, KINDS))
        return TypeAdapter(KINDS[name]).validate_python(node, context=self)

    # -- values -----------------------------------------------------------------------------------

    def default_unit(self, dimension: Dimension) -> str | None:
        """The file's own unit for bare numbers of a dimension; None where it names none."""
        node = at(self.tree, "units", dimension.value)
        if not isinstance(node, Leaf):
            return None
        try:
            return units.canonical_unit(node.text, dimension)
        except units.UnitError:
            return None  # said once, where the file's units are read

    def measure(self, node: Node, marker: Reads) -> Value:
        """Read the size of something: it can be unknown, but not less than nothing."""
        value = self.signed(node, marker)
        if value.span is None or value.span[0] >= 0 or marker.dimension not in SIZES:
            return value
        inner = at(node, "value") or node
        self.problem(inner, f"{value.label} cannot be less than nothing")
        return replace(value, span=None)

    def signed(self, node: Node, marker: Reads) -> Value:
        """Read `3/4`, `10-1/2 in`, `unknown`, or `{value: 3/4, mark: assumed}`."""
        dimension = cast("Dimension", marker.dimension)
        label = label_of(node.path)
        if isinstance(node, Branch) and "value" in node.entries:
            return self._marked(node, marker)
        nothing = Value(label, dimension, None, Mark.MEASURED, node.path)
        if not isinstance(node, Leaf):
            self.problem(node, f"{label} should be one number, such as {_sample(dimension)}")
            return nothing
        if node.text == UNKNOWN:
            return replace(nothing, missing=(Missing(node.path, label),))
        if not node.text:
            self.problem(node, f"nothing is written after {label}", "write a number, or `unknown`")
            return nothing
        try:
            read = units.read(node.text, dimension, self.default_unit(dimension))
        except units.UnitError as error:
            self._unit_problem(node, dimension, error)
            return nothing
        return replace(nothing, span=read.span, mark=Mark.ESTIMATE if read.about else Mark.MEASURED)

    def _unit_problem(self, node: Leaf, dimension: Dimension, error: units.UnitError) -> None:
        """Say what is wrong with a number; not where the fault lies with the file's own unit."""
        if at(self.tree, "units", dimension.value) is None or self.default_unit(dimension) is not None:
            suggestion = suggest_from(error.suggestion, error.choices)
            self.problem(node, f"{label_of(node.path)}: {error}", suggestion)

    def _marked(self, node: Branch, marker: Reads) -> Value:
        value = self.signed(replace(node.entries["value"], path=node.path), marker)
        return replace(value, mark=max(value.mark, self.mark_of(node) or value.mark))

    # -- places in space --------------------------------------------------------------------------

    def position(self, node: Node, _marker: Reads | None = None) -> Position:
        return self.places.position(node)

    def positions(self, node: Node, _marker: Reads) -> tuple[Position, ...]:
        if isinstance(node, Items) and not self.places.is_bare_point(node):
            return tuple(self.places.position(item) for item in node.nodes)
        raise self.unreadable(
            node, f"{label_of(node.path)} should be a list of points", "write [[1, 2, 3], [4, 5, 6]]"
        )

    def named_points(self, node: Node, _marker: Reads) -> tuple[NamedPoint, ...]:
        return tuple(
            NamedPoint(item.path.rpartition(".")[2], self.places.position(item))
            for item in children(self, node)
        )

    def direction(self, node: Node, _marker: Reads | None = None) -> Direction:
        return self.places.direction(node)

    def motions(self, node: Node, _marker: Reads) -> tuple[Motion, ...]:
        return shapes.motions(self, node)

    def shape(self, node: Node, _marker: Reads) -> tuple[Shape, ...]:
        return shapes.shape(self, node)

    # -- what refers to something else ------------------------------------------------------------

    def reference(self, node: Node, _marker: Reads | None = None) -> str:
        """A name of another thing, renamed as this piece was mirrored or swapped."""
        return renamed(self.leaf_text(node), node.changes)

    connection = reference

    def clamps(self, node: Node, _marker: Reads) -> ClampPlan | tuple[Value, ...]:
        if isinstance(node, Items):
            marker = Reads("measure", Dimension.LENGTH)
            return tuple(self.measure(item, marker) for item in node.nodes)
        return cast("ClampPlan", self.choice(node, Reads("choice", choices=ClampPlan)))

    # -- catalogue --------------------------------------------------------------------------------

    def thread(self, node: Node, _marker: Reads) -> Interface:
        text = self.leaf_text(node)
        try:
            return read_thread(text)
        except ThreadError as error:
            raise self.unreadable(node, str(error), error.suggestion) from None

    def stock(self, node: Node, _marker: Reads) -> Stock:
        text = self.leaf_text(node)
        try:
            return stock(text, self.default_unit(Dimension.LENGTH))
        except (StockError, PartError) as error:
            suggestion = suggest_from(error.suggestion, error.choices)
            raise self.unreadable(node, without_advice(error), suggestion) from None

    def fluid(self, node: Node, _marker: Reads) -> Fluid | None:
        text = self.leaf_text(node)
        if text == UNKNOWN:
            return None
        try:
            return fluid(text)
        except StockError as error:
            self.problem(node, without_advice(error), suggest_from(error.suggestion, error.choices))
            return None


def keys_of(cls: type[Declared]) -> dict[str, str]:
    """The keys that a class takes in the file, with the field that each fills."""
    own = {"place", "written", "name"} if issubclass(cls, Named) else {"place", "written"}
    fields = {name: info for name, info in cls.model_fields.items() if name not in own}
    return {info.alias or name.replace("_", " "): name for name, info in fields.items()}


def _sample(dimension: Dimension) -> str:
    samples = {Dimension.LENGTH: "`10-1/2 in`", Dimension.PRESSURE: "`600 psi`", Dimension.FORCE: "`75 lbf`"}
    return samples.get(dimension, "`3.5`") + " or `unknown`"


def read_aircraft(cls: type[Any], context: Context) -> Any | None:
    """Fill the model; None when a piece could not be read (the context's problems say which)."""
    try:
        return cls.model_validate(context.tree, context=context)
    except ValidationError as error:
        if not context.problems:
            context.problems.append(_general_problem(error, context))
        return None


def _general_problem(error: ValidationError, context: Context) -> Problem:
    """Put what pydantic says in place of a problem that the reading itself did not see."""
    first = error.errors(include_url=False, include_input=False, include_context=False)[0]
    keys = " ".join(str(part) for part in first["loc"])
    return Problem(context.tree.span, f"the file cannot be read at {keys or 'its start'}: {first['msg']}")
