"""What to look at where old and new meet: taper threads, elbows that must turn, and mixed metals."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.decide.pieces import find_line, line_name, lines_at
from firmpedal.model.part import Category, Clocking, Form
from firmpedal.model.stock import Hose, LineKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.decide.pieces import Piece
    from firmpedal.decide.work import Work
    from firmpedal.fit.joint import EndRef, Joint
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

TUBE_GROUPS = ("aluminium", "steel", "copper", "titanium")  # what plastic touches does not corrode


@dataclass(frozen=True, slots=True)
class Gauge:
    """A port whose taper thread held one fitting and gets another: its thread may be stretched.

    `by_hand` is how many turns a fitting goes into a good thread by hand, None where no source says.
    """

    place: str
    port: str
    thread: str
    old: Piece
    new: Piece
    by_hand: Value | None


@dataclass(frozen=True, slots=True)
class MixedMetal:
    """A piece that stays and gets a partner of another metal."""

    kept: Piece
    metal: str
    partner: str
    partner_metal: str


@dataclass(frozen=True, slots=True)
class Turned:
    """An elbow that stays in its taper thread while the line it points at changes."""

    kept: Piece
    lines: tuple[str, ...]


def gauges(work: Work) -> tuple[Gauge, ...]:
    """Every port that had a taper fitting screwed in and gets one again, in the order of the file."""
    old = {piece.place: piece for piece in work.off if _screwed_in(work.before, piece)}
    new = {piece.place: piece for piece in work.on if _screwed_in(work.after, piece)}
    found = []
    for component in work.after.aircraft.components:
        for port in component.ports if component.name in work.same.components else ():
            if port.place in old and port.place in new and port.thread.interface.form is Form.PIPE:
                thread = catalogue().thread(port.thread.interface.size)
                turns = thread.value("hand_turns") if thread else None
                name = f"{component.name}.{port.name}"
                pair = (old[port.place], new[port.place])
                found.append(Gauge(port.place, name, port.thread.interface.size, *pair, turns))
    return tuple(found)


def _screwed_in(evaluation: Evaluation, piece: Piece) -> bool:
    """Whether a piece sits in the port itself by a taper thread."""
    return any(
        f"part {piece.number}" in (mating.one.owner, mating.other.owner)
        and any(end.owner.startswith("port ") for end in (mating.one, mating.other))
        and mating.one.interface.form is Form.PIPE
        for joint in evaluation.assembly.joints
        if joint.place == piece.place and piece.part
        for mating in joint.matings
    )


def turned(work: Work) -> tuple[Turned, ...]:
    """Elbows kept in a taper thread although another line comes to them."""
    found = []
    for pair in work.kept:
        part = pair.after.part
        if part is None or not part.turn or not _held_by_taper(part.ends):
            continue
        joint = _joint(work.after, pair.after.place)
        new = tuple(name for name in lines_at(joint) if name not in work.same.new_lines)
        if new:
            found.append(Turned(pair.after, new))
    return tuple(found)


def _held_by_taper(ends: tuple[object, ...]) -> bool:
    return any(getattr(end, "clocking", None) is Clocking.MAKE_UP for end in ends)


def mixed_metals(work: Work) -> tuple[MixedMetal, ...]:
    """Pieces that stay and whose new partner is of another metal."""
    kept = {(pair.after.place, pair.after.number): pair.after for pair in work.kept if pair.after.part}
    found: dict[tuple[str, str, str], MixedMetal] = {}
    for joint in work.after.assembly.joints:
        for mating in joint.matings:
            for one, other in ((mating.one, mating.other), (mating.other, mating.one)):
                piece = kept.get((joint.place, _number(one)))
                if piece is not None and (joint.place, _number(other)) not in kept:
                    for mixed in _mixed(work, joint, piece, other):
                        found[piece.place, piece.designation, mixed.partner] = mixed
    return tuple(found.values())


def _mixed(work: Work, joint: Joint, piece: Piece, other: EndRef) -> Iterator[MixedMetal]:
    partner, metal = _partner(work, joint, other)
    if metal and metal != piece.material:
        yield MixedMetal(piece, piece.material, partner, metal)


def _partner(work: Work, joint: Joint, end: EndRef) -> tuple[str, str]:
    """What an end belongs to and its metal; no metal for what stays, or where it is not known."""
    number = _number(end)
    if number >= 0:
        part = joint.parts[number]
        washer = part.category is Category.WASHER  # it is soft, and new each time
        return part.designation, "" if washer else part.material
    if end.owner.startswith("line "):
        name = line_name(end.owner)
        line = find_line(work.after, name)
        if name not in work.same.new_lines and line and line.kind is LineKind.TUBE:
            group = "" if isinstance(line.stock, Hose) else line.stock.material.group
            return name, group if group in TUBE_GROUPS else ""
    return "", ""


def _number(end: EndRef) -> int:
    word, _, number = end.owner.partition(" ")
    return int(number) if word == "part" else -1


def _joint(evaluation: Evaluation, place: str) -> Joint:
    return next(joint for joint in evaluation.assembly.joints if joint.place == place)


def is_plug(piece: Piece) -> bool:
    """Whether a piece closes a port or a fitting."""
    return piece.category is Category.CAP
