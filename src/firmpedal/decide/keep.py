"""Which pieces stay untouched on the way from one evaluation to another."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.pieces import find_line, joint_pieces, line_pieces, lines_at
from firmpedal.fit.mating import NUTS_AND_SLEEVES
from firmpedal.model.part import Form

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.decide.pieces import Piece
    from firmpedal.decide.same import Sameness
    from firmpedal.fit.joint import Joint
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

Pair = tuple["Piece", "Piece"]


def kept_pairs(before: Evaluation, after: Evaluation, same: Sameness) -> tuple[Pair, ...]:
    """Every piece that stays where it is, as it was before and as it is after."""
    return tuple(dict.fromkeys((*_kept_at_joints(before, after, same), *_kept_on_lines(before, after, same))))


def _kept_on_lines(before: Evaluation, after: Evaluation, same: Sameness) -> Iterator[Pair]:
    """The unchanged lines, and of their clamps those that stay in their places."""
    for old, new in same.lines:
        one, other = find_line(before, old), find_line(after, new)
        if one is None or other is None:
            continue
        first, second = line_pieces(before, one), line_pieces(after, other)
        yield first[0], second[0]
        places = {
            _station(clamp): piece for clamp, piece in zip(one.supports.stations, first[1:], strict=True)
        }
        for clamp, piece in zip(other.supports.stations, second[1:], strict=True):
            held = places.get(_station(clamp))
            if held is not None and held.sort == piece.sort:  # over another sleeve it is another clamp
                yield places.pop(_station(clamp)), piece


def _station(clamp: Value) -> float:
    return round(clamp.middle, 4)


def _kept_at_joints(before: Evaluation, after: Evaluation, same: Sameness) -> Iterator[Pair]:
    old_joints = {joint.place: joint for joint in before.assembly.joints}
    for joint in after.assembly.joints:
        old = old_joints.get(joint.place)
        if old is not None:
            yield from _kept_bodies(old, joint, same)
    yield from _kept_nuts(before, after, same)


def _kept_bodies(old: Joint, new: Joint, same: Sameness) -> Iterator[Pair]:
    """Fittings, plugs and jam nuts that need not be undone."""
    ones, others = (
        [piece for piece in joint_pieces(joint) if piece.category not in NUTS_AND_SLEEVES]
        for joint in (old, new)
    )
    section, _, name = new.place.partition(".")
    if section == "components":
        yield from _from_the_port(ones, others) if name.split(".")[0] in same.components else ()
    elif section == "bulkheads":
        body, other = _body(ones), _body(others)
        if name in same.bulkheads and body and other and body.designation == other.designation:
            yield from _alike(ones, others)
    elif set(lines_at(new)) <= same.new_lines and set(lines_at(old)) <= same.old_lines:
        yield from _alike(ones, others)


def _from_the_port(ones: list[Piece], others: list[Piece]) -> Iterator[Pair]:
    """What sits in a port stays as far out as nothing differs: beyond that it all comes off."""
    if _banjo(ones) != _banjo(others):
        return
    for one, other in zip(ones, others, strict=False):
        if one.designation != other.designation:
            return
        yield one, other


def _banjo(pieces: list[Piece]) -> list[str]:
    """A banjo, its bolt and its washers: one bolt holds them all, so they come off together or not at all."""
    forms = [{end.interface.form for end in piece.part.ends} if piece.part else set() for piece in pieces]
    if not any(Form.BANJO in each for each in forms):
        return []
    stack = {Form.BANJO, Form.WASHER_FACE}
    return [piece.designation for piece, each in zip(pieces, forms, strict=True) if stack & each]


def _body(pieces: list[Piece]) -> Piece | None:
    """What is held in the panel, or else the first fitting."""
    held = (piece for piece in pieces if piece.part and piece.part.needs_panel)
    return next(held, next(iter(pieces), None))


def _alike(ones: list[Piece], others: list[Piece]) -> Iterator[Pair]:
    waiting = list(ones)
    for other in others:
        one = next((piece for piece in waiting if piece.designation == other.designation), None)
        if one is not None:
            waiting.remove(one)
            yield one, other


def _kept_nuts(before: Evaluation, after: Evaluation, same: Sameness) -> Iterator[Pair]:
    """Nuts and sleeves stay on a tube that stays, whatever it is screwed to."""
    for old, new in same.lines:
        for end in ("from", "to"):
            joints = before.assembly.joint_of(old, end), after.assembly.joint_of(new, end)
            if joints[0] is not None and joints[1] is not None:
                yield from _alike(_nuts_on(joints[0], old), _nuts_on(joints[1], new))


def _nuts_on(joint: Joint, line: str) -> list[Piece]:
    return [
        piece for piece in joint_pieces(joint) if piece.category in NUTS_AND_SLEEVES and piece.line == line
    ]
