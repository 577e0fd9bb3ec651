"""The corner of a line as it is written, and what to write when it is moved to another place."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING

from ruamel.yaml.nodes import MappingNode, ScalarNode, SequenceNode

from firmpedal.model.display import METRIC_LENGTHS, display_of
from firmpedal.model.space import AXIS_NAMES
from firmpedal.project.apart import goes_under
from firmpedal.project.edit import EditError, found_at, is_written
from firmpedal.project.points import AXES
from firmpedal.units import Dimension, UnitError, from_unit, read, written

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ruamel.yaml.nodes import Node as YamlNode

    from firmpedal.model.aircraft import FileUnits
    from firmpedal.model.space import Point

SIXTEENTH, MILLIMETRE = from_unit(0.0625, "in"), from_unit(1, "mm")
KEPT = 1e-9  # m; figures on the tape's marks are written so that they read back within this
PARTS = 16


class Form(StrEnum):
    """How a corner is written."""

    POINT = "point"
    CHAIN = "chain"
    OTHER = "other"  # by a name, as a mirror image, over several lines: to be moved it becomes a point


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner as it is written, with its words at `place`; moved, it is written under `option`.

    `pieces` are the words of the three coordinates of a point, or the keys and words of a chain.
    """

    place: str
    option: str | None
    form: Form
    words: str
    pieces: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Tape:
    """In which unit a file's points are written, and which marks they are put on."""

    unit: str
    fractions: bool = False
    named: bool = False  # whether the unit is written with each figure, where the file names none

    @property
    def metric(self) -> bool:
        return self.unit in METRIC_LENGTHS

    @property
    def mark(self) -> float:
        """The distance of two marks [m]: 1/16 in, or 1 mm in a metric file."""
        return MILLIMETRE if self.metric else SIXTEENTH

    def snapped(self, length: float) -> float:
        """The nearest mark to a length [m]."""
        return round(length / self.mark) * self.mark

    def write(self, length: float) -> str:
        """Write a length [m] that is on a mark."""
        figure = written(length, self.unit, within=KEPT, fraction=PARTS if self.fractions else None)
        return f"{figure} {self.unit}" if self.named else figure


def corner_at(text: str, place: str, option: str | None) -> Corner:
    """Find how a corner is written, under the option if it is there, else in the aircraft as written.

    Its option is the one in which it is to be changed.

    Raises:
        EditError: It is written nowhere by itself, such as one that comes by a mirror.
    """
    node = found_at(text, place, written_under(text, place, option)).node
    return _read(text, place, goes_under(text, place, option), node)


def written_under(text: str, place: str, option: str | None) -> str | None:
    """Under which option something is written: the one asked for, or none where it holds for all of them."""
    if option is not None and not is_written(text, place, option) and is_written(text, place):
        return None
    return option


def _read(text: str, place: str, option: str | None, node: YamlNode) -> Corner:
    words = _words(text, node)
    keys = _keys(node)
    if _in_a_row(text, node) and isinstance(node, SequenceNode) and len(node.value) == len("xyz"):
        pairs = zip(AXIS_NAMES, node.value, strict=True)
        return Corner(place, option, Form.POINT, words, _pairs(text, pairs))
    if "value" in keys and isinstance(keys["value"], SequenceNode):
        return _read(text, f"{place}.value", option, keys["value"])
    if _in_a_row(text, node) and _is_plain_chain(keys):
        return Corner(place, option, Form.CHAIN, words, _pairs(text, keys.items()))
    return Corner(place, option, Form.OTHER, words)


def _words(text: str, node: YamlNode) -> str:
    return text[node.start_mark.index : node.end_mark.index].strip()


def _pairs(text: str, nodes: Iterable[tuple[str, YamlNode]]) -> tuple[tuple[str, str], ...]:
    return tuple((name, _words(text, node)) for name, node in nodes)


def _keys(node: YamlNode) -> dict[str, YamlNode]:
    return {str(key.value): item for key, item in node.value} if isinstance(node, MappingNode) else {}


def _in_a_row(text: str, node: YamlNode) -> bool:
    return bool(getattr(node, "flow_style", False)) and "\n" not in _words(text, node)


def _is_plain_chain(keys: dict[str, YamlNode]) -> bool:
    """Whether a chain goes along each axis once at most, by plain words."""
    ways = [AXES[key][0] for key in keys if key in AXES]
    plain = all(isinstance(item, ScalarNode) for key, item in keys.items() if key in AXES)
    return "from" in keys and len(ways) == len(set(ways)) == len(keys) - 1 and plain


def moved_words(corner: Corner, now: Point, to: Point, tape: Tape) -> str:
    """Write a corner that is moved; what does not change keeps its words.

    The coordinates of a point come to lie on the tape's marks, and so do the distances of a chain. Any
    other form becomes a point.

    Args:
        corner: As it is written.
        now: Where it is [m].
        to: Where it is to be [m].
        tape: How the file's points are written.

    Raises:
        EditError: A coordinate that has to change is a range, or is not known.
    """
    tape = replace(tape, fractions=tape.fractions or "/" in corner.words)
    axes = [axis for axis in range(3) if abs(to[axis] - now[axis]) > KEPT]
    if corner.form is Form.CHAIN:
        return _moved_chain(corner, {axis: to[axis] - now[axis] for axis in axes}, tape)
    if corner.form is Form.OTHER:
        return as_point(to, tape)
    pieces = [words for _, words in corner.pieces]
    for axis in axes:
        pieces[axis] = _in_place_of(pieces[axis], tape.snapped(to[axis]), corner, tape)
    return f"[{', '.join(pieces)}]"


def as_point(point: Point, tape: Tape) -> str:
    """Write a point on the marks that are nearest to it."""
    return f"[{', '.join(tape.write(tape.snapped(one)) for one in point)}]"


def _moved_chain(corner: Corner, by: dict[int, float], tape: Tape) -> str:
    """Change the distances of a chain; a way that turns round takes its other name."""
    pieces = []
    for key, words in corner.pieces:
        if key not in AXES or AXES[key][0] not in by:
            pieces.append((key, words))
            continue
        axis, sign = AXES[key]
        length = sign * _length(words, corner, tape) + by.pop(axis)
        pieces.append(_way(axis, tape.snapped(length), tape))
    pieces += [_way(axis, tape.snapped(length), tape) for axis, length in sorted(by.items())]
    return "{" + ", ".join(f"{key}: {words}" for key, words in pieces) + "}"


def _way(axis: int, length: float, tape: Tape) -> tuple[str, str]:
    sign = -1 if length < 0 else 1
    name = next(key for key, way in AXES.items() if way == (axis, sign))
    return name, tape.write(abs(length))


def _in_place_of(words: str, length: float, corner: Corner, tape: Tape) -> str:
    """Another coordinate in the place of one, which keeps its mark."""
    if not words.startswith("{"):
        _length(words, corner, tape)
        return tape.write(length)
    head, colon, rest = words.partition("value:")
    old, end = rest, ""
    for sign in ",}":
        if sign in old:
            old, end = old[: old.index(sign)], old[old.index(sign) :] + end
    return f"{head}{colon} {_in_place_of(old.strip(), length, corner, tape)}{end}"


def _length(words: str, corner: Corner, tape: Tape) -> float:
    """A length as written; a range or a word would be lost, so it is refused."""
    try:
        found = read(words.strip("\"'"), Dimension.LENGTH, tape.unit)
    except UnitError as error:
        message = f"`{words}` is not one length that could be moved"
        raise EditError(message, f"write another one at {corner.place}") from error
    if found.low != found.high or found.swing or found.about:
        message = f"`{words}` is a range, which would be lost"
        raise EditError(message, f"write another one at {corner.place}")
    return found.span[0]


def tape_of(units: FileUnits) -> Tape:
    """How a file writes points, from its unit of length and its word on fractions."""
    display = display_of(units)
    unit = display.unit(Dimension.LENGTH) or "mm"
    return Tape(unit, display.fraction is not None, named=not units.length)
