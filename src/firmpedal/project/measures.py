"""Numbers with their units, marks and reasons."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, cast

from firmpedal import units
from firmpedal.model.aircraft import FileUnits
from firmpedal.project.names import label_of, parted, quoted, suggest
from firmpedal.project.schema import known_keys
from firmpedal.project.spelling import unknown_key
from firmpedal.project.tree import UNKNOWN, Branch, Items, Leaf, Node, at, is_empty, with_path
from firmpedal.project.words import text
from firmpedal.quantity import Mark, Missing, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.fields import Reads
    from firmpedal.project.context import Context

MARKS = {mark.word: mark for mark in Mark}
MARKED = ("value", "mark", "because")

_SAMPLES = {
    Dimension.LENGTH: "`10-1/2 in`",
    Dimension.ANGLE: "`17 deg`",
    Dimension.PRESSURE: "`600 psi`",
    Dimension.FORCE: "`75 lbf`",
    Dimension.TEMPERATURE: "`68 degF`",
    Dimension.MASS: "`1500 lb`",
    Dimension.VOLUME: "`3 cu in`",
}


def measure(context: Context, node: Node, marker: Reads, label: str = "") -> Value:
    """Read `3/4`, `10-1/2 in`, `unknown`, or `{value: 3/4, mark: assumed, because: ...}`."""
    dimension = cast("Dimension", marker.dimension)
    label = label or label_of(node.path)
    if isinstance(node, Branch) and "value" in node.entries:
        value = measure(context, with_path(node.entries["value"], node.path), marker, label)
        return value.named(value.label, node.path, marked(context, node, value.mark))
    if isinstance(node, Leaf) and node.text not in ("", UNKNOWN):
        return _number(context, node, marker, label)
    if is_empty(node):
        context.nothing(node, f"write a number such as {sample(dimension)}")
    elif isinstance(node, Branch | Items):
        context.notes.note(node, f"{label} should be one number", f"write it as {sample(dimension)}")
    return unmeasured(node, label, dimension)


def unmeasured(node: Node, label: str, dimension: Dimension) -> Value:
    """A value that somebody still has to measure."""
    return _unmeasured(node.path, label, dimension)


@lru_cache(maxsize=8192)
def _unmeasured(path: str, label: str, dimension: Dimension) -> Value:
    missing = (Missing(path, label, dimension),)
    return Value(label, dimension, None, Mark.MEASURED, path, missing=missing)


def _number(context: Context, node: Leaf, marker: Reads, label: str) -> Value:
    dimension = cast("Dimension", marker.dimension)
    try:
        value = _written(node.text, dimension, context.default_unit(dimension), label, node.path)
    except units.UnitError as error:
        if context.default_unit(dimension) is None and _only_lacks_unit(node.text, dimension):
            context.without_unit.setdefault(dimension, []).append((node, label))
        else:
            message, advice = parted(str(error), error.suggestion)
            context.notes.note(node, f"{label}: {message}", advice or f"write it as {sample(dimension)}")
        return unmeasured(node, label, dimension)
    wrong = _refused(value, marker)
    if not wrong:
        return value
    context.notes.note(node, *wrong)
    return unmeasured(node, label, dimension)  # nothing is worked out with a figure that cannot be


def _refused(value: Value, marker: Reads) -> tuple[str, str] | None:
    """What is wrong with a number that can be read, and what to do about it."""
    if value.low < 0 and not marker.signed:
        return f"{value.label} cannot be less than nothing", "write it without the minus sign"
    if value.low <= 0 and marker.positive:
        again = "write how many there are" if marker.whole else "write what you measured"
        return f"{value.label} cannot be nothing", f"{again}, or `unknown`"
    if marker.whole and any(bound != round(bound) for bound in (value.low, value.high)):
        return f"{value.label} is counted: 1, 2, ...", "write a whole number, or `unknown`"
    return None


@lru_cache(maxsize=8192)  # the same value again is found at once by whoever remembers what came of it
def _written(text: str, dimension: Dimension, unit: str | None, label: str, path: str) -> Value:
    read = units.read(text, dimension, unit)
    return Value(label, dimension, read.span, Mark.ESTIMATE if read.about else Mark.MEASURED, path)


def _only_lacks_unit(text: str, dimension: Dimension) -> bool:
    try:
        units.read(text, dimension, units.units_of(dimension)[0])
    except units.UnitError:
        return False
    return True


def note_missing_units(context: Context) -> None:
    """Note once for each quantity that its numbers have no unit, however many there are."""
    for dimension, found in context.without_unit.items():
        spans = list(dict.fromkeys(node.span for node, _ in found))
        first, label = min(found, key=lambda pair: (pair[0].span.line, pair[0].span.column))
        more = f", and {len(spans) - 1} more like it" if len(spans) > 1 else ""
        message = f"{label} has no unit{more}"
        unit, kind = units.units_of(dimension)[0], dimension.value
        advice = f"write the unit after each number, as in `1 {unit}`"
        if kind in known_keys(FileUnits):
            advice += f", or once for the whole file: `{unit}` as the unit of {kind}, under `units`"
        context.notes.note(first, message, advice)


def marked(context: Context, node: Branch, mark: Mark) -> Mark:
    """Give the mark of {value: ..., mark: ..., because: ...}: the number's own or the builder's, if worse."""
    for key in node.entries:
        if key not in MARKED:
            unknown_key(node, key, MARKED, context.notes)
    reason, word = at(node, "because"), at(node, "mark")
    if reason is not None:
        text(context, reason)
    return mark if word is None else max(mark, declared_mark(context, word))


def declared_mark(context: Context, node: Node) -> Mark:
    """Read how far the builder trusts a number: measured, memory, estimate, assumed."""
    word = text(context, node)
    if word and word not in MARKS:
        message = f"{quoted(word)} is not a mark, which says how far a number can be trusted"
        context.notes.note(node, message, suggest(word, MARKS))
    return MARKS.get(word, Mark.MEASURED)


def sample(dimension: Dimension) -> str:
    return _SAMPLES.get(dimension, "`3.5`") + ", or `unknown`"
