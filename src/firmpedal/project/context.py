"""The reading context: turns pieces of the file into the model's values, collecting every problem."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any, cast

from pydantic import TypeAdapter, ValidationError

from firmpedal import units
from firmpedal.catalog import PartError, StockError, fluid, stock
from firmpedal.finding import Problem
from firmpedal.model.circuit import ClampPlan
from firmpedal.model.component import SideOf
from firmpedal.model.fields import Declared, Named, Reads
from firmpedal.model.kinds import KINDS, Component
from firmpedal.model.space import NamedPoint
from firmpedal.project import shapes
from firmpedal.project.names import UNKNOWN, label_of, renamed, suggest, suggest_from
from firmpedal.project.position import Places
from firmpedal.project.thread import ThreadError, read_thread
from firmpedal.project.tree import Branch, Items, Leaf, Node, Spans, at
from firmpedal.quantity import Answer, Mark, Missing, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from enum import StrEnum

    from firmpedal.model.part import Interface
    from firmpedal.model.space import Direction, Position
    from firmpedal.model.stock import Fluid, Stock
    from firmpedal.model.surroundings import Motion, Shape

DECLARED_MARKS = {mark.word: mark for mark in Mark}


@dataclass
class Context:
    """Reads the pieces of one file."""

    tree: Branch
    spans: Spans
    problems: list[Problem] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.places = Places(self)

    # -- problems ---------------------------------------------------------------------------------

    def problem(self, node: Node, message: str, suggestion: str = "") -> None:
        if not isinstance(node, Items) and node.absent:
            return  # that it is not there was said already
        text = node.text if isinstance(node, Leaf) else ""
        self.problems.append(Problem(node.span, message, text, suggestion))

    # -- things with keys -------------------------------------------------------------------------

    def prepare(self, cls: type[Declared], node: Node | None) -> dict[str, Any]:
        """Turn a branch into the fields of a class: known keys by name, free keys together."""
        if not isinstance(node, Branch):
            if node is not None:
                self.problem(node, f"{label_of(node.path)} should be a list of keys and values")
            node = Branch({}, {}, node.span if node else self.tree.span, node.path if node else "")
        by_key = keys_of(cls)
        filled: dict[str, Any] = {}
        free: dict[str, Node] = {}
        for key, value in node.entries.items():
            if key in by_key and by_key[key] != cls.free_keys:
                filled[by_key[key]] = value
            elif cls.free_keys:
                free[key] = value
            else:
                self._unknown_key(node, key, by_key)
        if cls.free_keys and free:
            filled[cls.free_keys] = Branch(free, node.keys, node.span, node.path)
        return self._completed(cls, node, filled)

    def _unknown_key(self, node: Branch, key: str, by_key: dict[str, str]) -> None:
        message = f"`{key}` is not a key that {label_of(node.path) or 'the file'} can have"
        self.problems.append(Problem(node.keys.get(key, node.span), message, key, suggest(key, by_key)))

    def _completed(self, cls: type[Declared], node: Branch, filled: dict[str, Any]) -> dict[str, Any]:
        """Add place and name, and stand-ins for what the builder left out."""
        filled["written"] = frozenset(filled)
        filled["place"] = node.path
        if issubclass(cls, Named):
            filled["name"] = node.path.rsplit(".", 1)[-1]
        for key, name in keys_of(cls).items():
            if name in filled:
                continue
            info = cls.model_fields[name]
            path = f"{node.path}.{key}" if node.path else key
            marker = next((item for item in info.metadata if isinstance(item, Reads)), None)
            if info.is_required():
                wanted = _wants_something(info.annotation) or (marker is not None and not marker.optional)
                if wanted and not node.absent:
                    self._missing(node, key, marker)
                filled[name] = _stand_in(info.annotation, node, path)
        return filled

    def _missing(self, node: Branch, key: str, marker: Reads | None) -> None:
        message = f"{label_of(node.path) or 'the file'} has no `{key}`"
        measured = marker is not None and marker.dimension is not None
        suggestion = f"add a line `{key}: ...`" + (f", or `{key}: unknown`" if measured else "")
        self.problems.append(Problem(node.span, message, suggestion=suggestion))

    def children(self, node: Node) -> list[Node]:
        if isinstance(node, Branch):
            return list(node.entries.values())
        if isinstance(node, Items):
            return list(node.nodes)
        self.problem(node, f"{label_of(node.path)} should be a list of things with names")
        return []

    def component(self, node: Node, _marker: Reads) -> Component:
        kind = at(node, "kind")
        name = kind.text if isinstance(kind, Leaf) else ""
        if name not in KINDS:
            message = (
                f"`{name}` is not a kind of component" if name else f"{label_of(node.path)} has no `kind`"
            )
            self.problem(kind or node, message, suggest(name, list(KINDS)))
            raise _UnreadableError
        return TypeAdapter(KINDS[name]).validate_python(node, context=self)

    # -- text and choices -------------------------------------------------------------------------

    def text(self, node: Node, _marker: Reads | None = None) -> str:
        if isinstance(node, Leaf):
            return node.text
        self.problem(node, f"{label_of(node.path)} should be a few words of text")
        return ""

    def words(self, node: Node, _marker: Reads) -> tuple[str, ...]:
        leaves = node.nodes if isinstance(node, Items) else (node,)
        return tuple(self.text(leaf) for leaf in leaves)

    def choice(self, node: Node, marker: Reads) -> StrEnum | None:
        choices = cast("type[StrEnum]", marker.choices)
        word = self.text(node)
        if word in list(choices):
            return choices(word)
        self.problem(
            node, f"`{word}` is not a choice for {label_of(node.path)}", suggest(word, list(choices))
        )
        return next(iter(choices))

    def side(self, node: Node, _marker: Reads) -> SideOf:
        side = cast("SideOf", self.choice(node, Reads("choice", choices=SideOf)))
        mirrored = sum(change.mirror for change in node.changes) % 2
        return {SideOf.LEFT: SideOf.RIGHT, SideOf.RIGHT: SideOf.LEFT}.get(side, side) if mirrored else side

    def answer(self, node: Node, _marker: Reads) -> Answer:
        answers = {"yes": Answer.YES, "no": Answer.NO, "unknown": Answer.UNKNOWN, "": Answer.UNKNOWN}
        answers |= {"true": Answer.YES, "false": Answer.NO}
        word = self.text(node).lower()
        if word not in answers:
            self.problem(node, f"{label_of(node.path)} should be yes, no or unknown, not `{word}`")
        return answers.get(word, Answer.UNKNOWN)

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
        """Read `3/4`, `10-1/2 in`, `unknown`, or `{value: 3/4, mark: assumed}`."""
        dimension = cast("Dimension", marker.dimension)
        label = label_of(node.path)
        if isinstance(node, Branch) and "value" in node.entries:
            return self._marked(node, marker)
        if not isinstance(node, Leaf):
            self.problem(node, f"{label} should be one number, such as {_sample(dimension)}")
            return Value(label, dimension, None, Mark.MEASURED, node.path)
        if node.text == UNKNOWN:
            return Value(
                label, dimension, None, Mark.MEASURED, node.path, missing=(Missing(node.path, label),)
            )
        if not node.text:
            self.problem(node, f"nothing is written after {label}", "write a number, or `unknown`")
            return Value(label, dimension, None, Mark.MEASURED, node.path)
        try:
            read = units.read(node.text, dimension, self.default_unit(dimension))
        except units.UnitError as error:
            self.problem(node, f"{label}: {error}", suggest_from(error.suggestion, error.choices))
            return Value(label, dimension, None, Mark.MEASURED, node.path)
        mark = Mark.ESTIMATE if read.about else Mark.MEASURED
        return Value(label, dimension, read.span, mark, node.path)

    def _marked(self, node: Branch, marker: Reads) -> Value:
        inner = node.entries["value"]
        value = self.measure(inner, marker)
        for key in node.entries:
            if key not in ("value", "mark", "because"):
                self._unknown_key(node, key, {"value": "", "mark": "", "because": ""})
        word = at(node, "mark")
        mark = value.mark if word is None else max(value.mark, self.declared_mark(word))
        return replace(value, mark=mark, place=node.path)

    def declared_mark(self, node: Node) -> Mark:
        """Read how far the builder trusts a number: measured, memory, estimate, assumed."""
        word = self.text(node)
        if word not in DECLARED_MARKS:
            self.problem(node, f"`{word}` is not a mark", suggest(word, list(DECLARED_MARKS)))
        return DECLARED_MARKS.get(word, Mark.MEASURED)

    # -- places in space --------------------------------------------------------------------------

    def position(self, node: Node, _marker: Reads | None = None) -> Position:
        return self.places.position(node)

    def positions(self, node: Node, _marker: Reads) -> tuple[Position, ...]:
        if not isinstance(node, Items):
            self.problem(node, f"{label_of(node.path)} should be a list of points")
            return ()
        return tuple(self.places.position(item) for item in node.nodes)

    def named_points(self, node: Node, _marker: Reads) -> tuple[NamedPoint, ...]:
        if not isinstance(node, Branch):
            self.problem(node, "points should be a list of names, each with its place")
            return ()
        return tuple(NamedPoint(name, self.places.position(item)) for name, item in node.entries.items())

    def direction(self, node: Node, _marker: Reads | None = None) -> Direction:
        return self.places.direction(node)

    def motions(self, node: Node, _marker: Reads) -> tuple[Motion, ...]:
        return shapes.motions(self, node)

    def shape(self, node: Node, _marker: Reads) -> tuple[Shape, ...]:
        return shapes.shape(self, node)

    # -- what refers to something else ------------------------------------------------------------

    def reference(self, node: Node, _marker: Reads | None = None) -> str:
        """A name of another thing, renamed as this piece was mirrored or swapped."""
        return renamed(self.text(node), node.changes)

    connection = reference

    def pairs(self, node: Node, _marker: Reads) -> tuple[tuple[str, str], ...]:
        found = []
        for item in self.children(node):
            names = [self.text(leaf) for leaf in self.children(item)] if not isinstance(item, Leaf) else []
            if len(names) == 2:
                found.append((names[0], names[1]))
            else:
                self.problem(item, "a way is two ports: [left_in, left_out]")
        return tuple(found)

    def state(self, node: Node, _marker: Reads) -> tuple[tuple[str, str], ...]:
        if not isinstance(node, Branch):
            self.problem(node, "say the state as keys: `measured in: {gear: on wheels}`")
            return ()
        return tuple((key, self.text(leaf)) for key, leaf in node.entries.items())

    def clamps(self, node: Node, _marker: Reads) -> ClampPlan | tuple[Value, ...]:
        if isinstance(node, Leaf):
            return cast("ClampPlan", self.choice(node, Reads("choice", choices=ClampPlan)))
        marker = Reads("measure", Dimension.LENGTH)
        return tuple(self.measure(item, marker) for item in self.children(node))

    # -- catalogue --------------------------------------------------------------------------------

    def thread(self, node: Node, _marker: Reads) -> Interface:
        try:
            return read_thread(self.text(node))
        except ThreadError as error:
            self.problem(node, str(error), error.suggestion)
            raise _UnreadableError from None

    def stock(self, node: Node, _marker: Reads) -> Stock:
        try:
            return stock(self.text(node), self.default_unit(Dimension.LENGTH))
        except (StockError, PartError) as error:
            self.problem(node, str(error), suggest_from(error.suggestion, error.choices))
            raise _UnreadableError from None

    def fluid(self, node: Node, _marker: Reads) -> Fluid | None:
        if self.text(node) == UNKNOWN:
            return None
        try:
            return fluid(self.text(node))
        except StockError as error:
            self.problem(node, str(error), suggest_from(error.suggestion, error.choices))
            return None


def keys_of(cls: type[Declared]) -> dict[str, str]:
    """The keys that a class takes in the file, with the field that each fills."""
    own = {"place", "written", "name"} if issubclass(cls, Named) else {"place", "written"}
    fields = {name: info for name, info in cls.model_fields.items() if name not in own}
    return {info.alias or name.replace("_", " "): name for name, info in fields.items()}


class _UnreadableError(ValueError):
    """A piece that could not be read; the problem has been noted, so pydantic only has to stop here."""


def _stand_in(annotation: Any, node: Branch, path: str) -> Any:
    """What stands for a field that the builder left out: nothing with keys, or the word unknown."""
    if isinstance(annotation, type) and issubclass(annotation, Declared):
        return Branch({}, {}, node.span, path, absent=True)
    return Leaf(UNKNOWN, node.span, path, absent=True)


def _wants_something(annotation: Any) -> bool:
    """Whether a section has a key that a builder cannot leave out."""
    if not (isinstance(annotation, type) and issubclass(annotation, Declared)):
        return False
    fields = [annotation.model_fields[name] for name in keys_of(annotation).values()]
    markers = [
        item for info in fields if info.is_required() for item in info.metadata if isinstance(item, Reads)
    ]
    return any(not marker.optional for marker in markers)


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
