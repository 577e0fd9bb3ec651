"""A point that hangs on a place with a name, and one in coordinates: each written as the other."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.model.space import AXIS_NAMES
from firmpedal.project.context import Context
from firmpedal.project.corners import PARTS, tape_of
from firmpedal.project.edit import EditError
from firmpedal.project.edit_keys import with_value
from firmpedal.project.field_cells import COORDINATES, FROM, chain_start
from firmpedal.project.field_edits import readable
from firmpedal.project.locate import walked
from firmpedal.project.notes import Notes
from firmpedal.project.plain import flow, quoted_if_needed
from firmpedal.project.points import AXES
from firmpedal.project.position import place_names
from firmpedal.project.read import read_text
from firmpedal.project.tree import UNKNOWN, Branch, Leaf, Node, at, branch_at, word_of
from firmpedal.quantity import Mark
from firmpedal.units import show_span

if TYPE_CHECKING:
    from firmpedal.model.aircraft import FileUnits
    from firmpedal.model.space import Position
    from firmpedal.project.corners import Tape
    from firmpedal.project.read import Reading
    from firmpedal.quantity import Value

SUMMED = Mark.DERIVED  # what a sum of figures from the tape is; up to here no word is needed beside them
KEPT = 1e-9  # m; a point that is written in the other way is where it was within this


def ways_for(reading: Reading, place: str, start: str) -> tuple[str, ...]:
    """The ways in which a point can be given: in coordinates, or from each place that has a name.

    Args:
        reading: The text.
        place: The point's object path.
        start: The place that it hangs on now; empty where it is given in coordinates.
    """
    if reading.aircraft is None or reading.tree is None:
        return ()
    tree, own = reading.tree, _own_name(place)
    images = {name for name in place_names(tree) if own and _is_image(_node(tree, own), _node(tree, name))}
    names = (
        name for name in place_names(tree)
        if name != own and name not in images and not _hangs(tree, name, own)
    )  # fmt: skip
    found = (COORDINATES, *(FROM + name for name in names))
    return found if not start or FROM + start in found else (*found, FROM + start)


def _own_name(place: str) -> str:
    """The name by which others hang on a point, where it has one."""
    steps = place.split(".")
    if steps[0] in ("points", "bulkheads") and steps[2:3] in ([], ["at"], ["value"]):
        return steps[1]
    if steps[0] in ("components", "bulkheads") and steps[2:3] in (["ports"], ["sides"]):
        return f"{steps[1]}.{steps[3]}"
    return ""


def _is_image(own: Node | None, other: Node | None) -> bool:
    """Whether a place has its words from another one, and so cannot be what that hangs on."""
    return own is not None and other is not None and other.via is not None and other.span == own.span


def _hangs(tree: Branch, name: str, own: str) -> bool:
    """Whether a place hangs on another one, over however many."""
    seen: set[str] = set()
    while own and name and name not in seen:
        seen.add(name)
        node = _node(tree, name)
        name = chain_start(at(node, "value") or node) or word_of(node)
        if name == own:
            return True
    return False


def _node(tree: Branch, name: str) -> Node | None:
    """What is written where a place with a name is."""
    head, _, tail = name.partition(".")
    if not tail:
        return at(tree, "points", head) or at(tree, "bulkheads", head, "at")
    port = at(tree, "components", head, "ports", tail)
    return at(port, "seat") or at(port, "at") or at(tree, "bulkheads", head, "sides", tail, "seat")


def comes_to(reading: Reading, place: str) -> str:
    """Where a point is, in words; empty where the file cannot be used."""
    if reading.aircraft is None or reading.tree is None:
        return ""
    tape = tape_of(reading.aircraft.units)
    found = _position(reading.tree, walked(reading.tree, place))
    pairs = zip(AXIS_NAMES, found.coordinates, strict=True)
    return ", ".join(f"{name} {_shown(value, tape)}" for name, value in pairs)


def _shown(value: Value, tape: Tape) -> str:
    if value.span is None:
        return "not known yet"
    return show_span(value.span, tape.unit, fraction=PARTS if tape.fractions else None)


def _tape(units: FileUnits, words: str) -> Tape:
    """How figures are written: in fractions where the point has some already."""
    tape = tape_of(units)
    return replace(tape, fractions=tape.fractions or "/" in words)


def _position(tree: Branch, node: Node | None) -> Position:
    if node is None:
        raise EditError("no point is written there", "write it in the text")
    return Context(tree, Notes()).position(node)


def with_way(reading: Reading, place: str, way: str) -> str:
    """Give a point in another way; where it is stays as it was.

    Args:
        reading: The text, with the option that is looked at.
        place: The point's object path, within its mark.
        way: One of `ways_for`.

    Raises:
        EditError: It cannot be worked out, or not be written without touching more.
    """
    if reading.aircraft is None or reading.tree is None:
        raise EditError("a text that cannot be read cannot be changed", "mend it in the text first")
    node, start = walked(reading.tree, place), way.removeprefix(FROM) if way.startswith(FROM) else ""
    if node is None or word_of(node) == UNKNOWN:
        words = _braces(start, [(name, UNKNOWN) for name in AXIS_NAMES]) if start else UNKNOWN
        return readable(reading, with_value(reading.text, place, words, reading.option))
    turning = _Turning(reading.tree, node, _tape(reading.aircraft.units, flow(node)))
    if start and turning.hangs_in_the_air:
        return readable(reading, with_value(reading.text, f"{place}.from", start, reading.option))
    words = turning.as_chain(start) if start else turning.as_coordinates(whole=not place.endswith(".value"))
    after = readable(reading, with_value(reading.text, place, words, reading.option))
    _same(turning.now, read_text(after, reading.file, reading.option), place)
    return after


def _same(now: Position, reading: Reading, place: str) -> None:
    """The point has to be where it was, and to be trusted no more than before."""
    then = _position(reading.tree, walked(reading.tree, place)) if reading.tree is not None else now
    for old, new in zip(now.coordinates, then.coordinates, strict=True):
        ends = () if old.span is None or new.span is None else zip(old.span, new.span, strict=True)
        moved = any(abs(one - other) > KEPT for one, other in ends)
        if old.known is not new.known or moved or new.mark < old.mark > SUMMED:
            raise EditError("the point would not stay where it is", "write it in the text")


class _Turning:
    """A point on its way from one way of being written to another."""

    def __init__(self, tree: Branch, node: Node, tape: Tape) -> None:
        self.tree, self.node, self.tape = tree, node, tape
        self.start, self.now = chain_start(node), _position(tree, node)

    @property
    def hangs_in_the_air(self) -> bool:
        """Whether it hangs on a place that is not known yet, so that it has no coordinates itself."""
        return bool(self.start) and any(not value.known for value in self._at(self.start).coordinates)

    def _at(self, name: str) -> Position:
        return _position(self.tree, Leaf(name, self.node.span, f"{self.node.path}.from {name}"))

    def as_coordinates(self, *, whole: bool) -> str:
        """The point in coordinates, with how far they can be trusted."""
        if self.hangs_in_the_air and not self._all_to_measure():
            message = f"{self.start} is not measured yet, so there are no coordinates to be worked out"
            raise EditError(message, f"measure {self.start} first")
        values = self.now.coordinates
        words = [self._figure(value.span) for value in values]
        if all(word == UNKNOWN for word in words):
            return UNKNOWN
        marks = {value.mark for value in values if value.known}
        mark = next(iter(marks))
        if whole and len(marks) == 1 and mark > SUMMED and UNKNOWN not in words:
            return f"{{value: [{', '.join(words)}], mark: {mark.word}}}"
        return f"[{', '.join(_marked(word, each.mark) for word, each in zip(words, values, strict=True))}]"

    def _all_to_measure(self) -> bool:
        """Whether each way from the place that it hangs on is still to be measured."""
        open_ways = {AXES[key][0] for key in branch_at(self.node) if key in AXES and self._is_open(key)}
        return open_ways == set(range(len(AXIS_NAMES)))

    def _is_open(self, key: str) -> bool:
        return word_of(at(self.node, key)) == UNKNOWN

    def as_chain(self, start: str) -> str:
        """The point by the ways from a place."""
        pieces = []
        both = zip(self.now.coordinates, self._at(start).coordinates, strict=True)
        for axis, (to, begin) in enumerate(both):
            if to.span is None:
                pieces.append((AXIS_NAMES[axis], UNKNOWN))
            elif begin.span is None:
                raise EditError(f"{start} is not measured yet", "choose another place to measure from")
            elif not begin.exact:
                message = f"{start} is known no closer than a range, so the point would become one"
                raise EditError(message, "choose another place to measure from")
            else:
                mark = to.mark if begin.mark < to.mark else Mark.MEASURED
                pieces += self._way(axis, (to.low - begin.low, to.high - begin.low), mark)
        return _braces(start, pieces)

    def _way(self, axis: int, span: tuple[float, float], mark: Mark) -> list[tuple[str, str]]:
        """How far to go along an axis, forward as well as aft; nothing where there is no way to go."""
        low, high = span
        if max(abs(low), abs(high)) <= KEPT and mark <= SUMMED:
            return []
        back = high <= KEPT and low < -KEPT
        name = next(key for key, way in AXES.items() if way == (axis, -1 if back else 1))
        return [(name, _marked(self._figure((-high, -low) if back else span), mark))]

    def _figure(self, span: tuple[float, float] | None) -> str:
        if span is None:
            return UNKNOWN
        bare = replace(self.tape, named=False)
        low, high = (bare.write(end) for end in span)
        words = low if low == high else f"{low} to {high}"
        return f"{words} {self.tape.unit}" if self.tape.named else words


def _marked(words: str, mark: Mark) -> str:
    known = words != UNKNOWN and mark > SUMMED
    return f"{{value: {words}, mark: {mark.word}}}" if known else words


def _braces(start: str, pieces: list[tuple[str, str]]) -> str:
    inner = ", ".join(f"{key}: {words}" for key, words in (("from", quoted_if_needed(start)), *pieces))
    return "{" + inner + "}"
