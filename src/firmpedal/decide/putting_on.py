"""Putting on: plugs, components, holes, bulkheads and fittings, then the lines."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from firmpedal.decide.bench_order import goes_before, in_order
from firmpedal.decide.pieces import lines_at
from firmpedal.decide.ports import is_plug
from firmpedal.decide.step import Action, Phase, Step, component_of, counted, new_lines, passes, waits
from firmpedal.model.stock import LineKind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.decide.pieces import Piece
    from firmpedal.decide.work import Work
    from firmpedal.fit.joint import Joint


def closing(work: Work) -> Iterator[Step]:
    """Ports that were joined and are plugged now, and those that nothing closes."""
    for piece in work.on:
        if is_plug(piece):
            yield Step(Phase.CLOSE, Action.PLUG, piece.owner, (piece.designation,))
    joined = {joint.place for joint in work.before.assembly.joints if lines_at(joint)}
    for joint in work.after.assembly.joints:
        open_ports = [end for end in joint.open_ends if end.owner.startswith("port ")]
        if open_ports and joint.place in joined:
            yield Step(Phase.CLOSE, Action.LEFT_OPEN, joint.name)
    told = {joint.place for joint in work.after.assembly.joints}
    for component in work.after.aircraft.components:
        for port in component.ports:
            if port.place in joined - told and component.name in work.same.components:
                yield Step(Phase.CLOSE, Action.LEFT_OPEN, f"{component.name}.{port.name}", about=(port.open,))


def on_new_components(work: Work, phase: Phase) -> Iterator[Step]:
    """What goes into components that come new: ahead, unless a piece has to come off the old one first."""
    waiting = {pair.after for pair in work.reuse}
    for joint, later in _joints(work):
        at = component_of(joint)
        parts = [piece for piece in work.on if piece.place == joint.place and not piece.line]
        ahead = not waiting.intersection(parts)
        if parts and at and at not in work.same.components and ahead == (phase is Phase.READY):
            yield Step(phase, Action.FIT_ON_BENCH, joint.name, counted(parts), beforehand=ahead, about=later)


def _joints(work: Work) -> Iterator[tuple[Joint, tuple[str, ...]]]:
    """Every joint in the order in which it can be made, with the joints that have to wait for it."""
    for at, group in groupby(work.after.assembly.joints, key=component_of):
        joints = list(group)
        before = goes_before(work.after, at) if at and len(joints) > 1 else {}
        touched = {piece.owner for piece in work.on}
        for joint in in_order(joints, before):
            yield joint, tuple(name for name in before.get(joint.name, ()) if name in touched)


def fixed(work: Work) -> Iterator[Step]:
    """Components, then holes, then what sits in panels and brackets, then what sits in ports."""
    yield from on_new_components(work, Phase.FIXED)
    for component in work.after.aircraft.components:
        if component.name not in work.same.components:
            yield Step(Phase.FIXED, Action.FIT_COMPONENT, component.name)
    old_passes = passes(work, old=True)
    for line, panels in passes(work, old=False).items():
        new = [panel for panel in panels if panel not in old_passes.get(line, ())]
        for panel in new:
            yield Step(Phase.FIXED, Action.MAKE_HOLE, line, about=(panel,))
    for joint, later in _joints(work):
        parts = [
            piece for piece in work.on if piece.place == joint.place and not piece.line and not is_plug(piece)
        ]
        at = component_of(joint)
        if parts and joint.place.startswith("bulkheads."):
            about = counted(_held_before(work, joint))
            yield Step(Phase.FIXED, Action.FIT_BULKHEAD, joint.name, counted(parts), about=about)
        elif parts and (not at or at in work.same.components):
            yield Step(Phase.FIXED, Action.FIT_PARTS, joint.name, counted(parts), about=later)


def _held_before(work: Work, joint: Joint) -> list[Piece]:
    """What sat in the hole of a bulkhead that stays where it is, if that was another fitting."""
    name = joint.place.removeprefix("bulkheads.")
    held = [
        piece for piece in work.off if piece.place == joint.place and piece.part and piece.part.needs_panel
    ]
    return held[:1] if name in work.same.bulkheads else []


def fitting_lines(work: Work) -> Iterator[Step]:
    """Tubes before hoses: a tube fixes places, a hose gives way. Then what was only undone."""
    for kind in (LineKind.TUBE, LineKind.PLASTIC, LineKind.HOSE):
        for name in new_lines(work, kind):
            clamps = [piece for piece in work.on if piece.line == name and piece.category == "clamp"]
            later = waits(work, name)
            action, about = (Action.THREAD_IN, (later.words,)) if later else (Action.FIT_LINE, ())
            yield Step(Phase.LINES, action, name, counted(clamps), about=about)
    off, on = {piece.place for piece in work.off}, {piece.place for piece in work.on}
    for old, new in work.same.lines:
        ends = [work.after.assembly.joint_of(new, end) for end in ("from", "to")]
        undone = tuple(joint.name for joint in ends if joint and joint.place in off | on)
        if undone:
            yield Step(Phase.LINES, Action.JOIN_AGAIN, new, about=undone)
        clamps = [
            piece for piece in (*work.off, *work.on) if piece.line in (old, new) and piece.category == "clamp"
        ]
        if clamps:
            yield Step(Phase.LINES, Action.MOVE_CLAMPS, new)
