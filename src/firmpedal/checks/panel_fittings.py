"""Rules about fittings in panels: what the thread spans, and what carries a fitting at all."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.circuit import PanelMaterial
from firmpedal.quantity import Answer, Missing, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.fit.joint import Joint
    from firmpedal.model.circuit import Bulkhead
    from firmpedal.model.part import Part

THICKER = "panel-thicker-than-thread"
CARRY = "panel-cannot-carry-fitting"
MAY_BE_THICK = (
    PanelMaterial.PLYWOOD,
    PanelMaterial.SOLID_LAMINATE,
    PanelMaterial.SANDWICH,
    PanelMaterial.PLASTIC,
)
BRACKET = "carry the fitting on an aluminium bracket on the frame, beside or over the hole"


def panel_thicker_than_thread(view: View) -> Iterator[Outcome]:
    """A panel is thin enough for the thread of the bulkhead fitting and its nut.

    No sheet gave what the thread spans: it is an estimate with a wide range. Inside the range, measure the
    fitting in your hand.
    """
    for bulkhead in view.aircraft.bulkheads:
        joint = _joint_of(view, bulkhead)
        if joint is None or bulkhead.through_panel is Answer.NO or not _thickness_counts(bulkhead):
            continue
        for part in _in_panel(joint):
            yield from _spanned(view, bulkhead, part)


def _spanned(view: View, bulkhead: Bulkhead, part: Part) -> Iterator[Outcome]:
    what = f"the grip of {part.designation}: the thickest panel that its thread spans with nut and washers"
    grip = part.dimension("panel_grip")
    label = f"grip of {part.designation}"
    allowed = unknown(label, Dimension.LENGTH, bulkhead.place, what) if grip is None else grip.named(label)
    limit = Limit(bulkhead.thickness.named(f"thickness at {bulkhead.name}"), allowed, "at most")
    message = (
        f"the panel at {bulkhead.name} is {view.show(limit.measured)} thick, and the thread of "
        f"{part.designation} spans {view.show(allowed)}"
    )
    outcomes = judge(
        limit,
        rule=THICKER,
        level=Level.CAUTION,
        place=bulkhead.place,
        message=message,
        tries=(BRACKET, "take the panel down to its skin round the fitting, with a doubler"),
    )
    for outcome in outcomes:
        if isinstance(outcome, NotShown) and not (limit.measured.missing or allowed.missing):
            asked = f"{what}; the panel is {view.show(limit.measured)}"
            missing = (Missing(bulkhead.place, asked, Dimension.LENGTH),)
            yield NotShown(THICKER, outcome.place, outcome.message, missing)
        else:
            yield outcome


def _thickness_counts(bulkhead: Bulkhead) -> bool:
    """A sheet of metal or fabric whose thickness nobody gave is thin; the rest is asked for."""
    declared = bulkhead.thickness.known or "thickness" in bulkhead.written
    return declared or bulkhead.material in MAY_BE_THICK


def panel_cannot_carry_fitting(view: View) -> Iterator[Outcome]:
    """A fitting sits in something that holds it: not in fabric, in foam that crushes, or in a window.

    The nut is tightened against the panel and the line pulls at it. A loose fitting frets its hole oval and
    works the tube until it cracks.
    """
    for bulkhead in view.aircraft.bulkheads:
        joint = _joint_of(view, bulkhead)
        if joint is None or bulkhead.through_panel is Answer.NO or not joint.parts:
            continue
        missing = _unsure(bulkhead)
        if missing:
            yield NotShown(CARRY, bulkhead.place, f"whether the panel at {bulkhead.name} carries it", missing)
        elif bulkhead.material in _WHY and not _has_insert(bulkhead):
            yield _too_weak(bulkhead, bulkhead.material)


_WHY = {
    PanelMaterial.FABRIC: "fabric carries no fitting",
    PanelMaterial.SANDWICH: "the foam of a sandwich crushes under the nut",
    PanelMaterial.PLASTIC: "plastic creeps under the nut and cracks from the hole",
}


def _too_weak(bulkhead: Bulkhead, material: PanelMaterial) -> Finding:
    tries = [BRACKET]
    if material is PanelMaterial.SANDWICH:
        tries.append("let in solid material in place of the foam, and set solid insert to yes")
    return Finding(
        CARRY,
        Level.WARNING if material is PanelMaterial.FABRIC else Level.CAUTION,
        bulkhead.place,
        f"{bulkhead.name} sits in {material.value}: {_WHY[material]}",
        tuple(tries),
        sources=practice("common-practice"),
    )


def _has_insert(bulkhead: Bulkhead) -> bool:
    return bulkhead.material is PanelMaterial.SANDWICH and bulkhead.solid_insert is Answer.YES


def _unsure(bulkhead: Bulkhead) -> tuple[Missing, ...]:
    place, found = bulkhead.place, []
    if bulkhead.material is None:
        found.append(Missing(f"{place}.material", f"the material that {bulkhead.name} sits in"))
    elif bulkhead.material not in _WHY:
        return ()
    elif bulkhead.material is PanelMaterial.SANDWICH and bulkhead.solid_insert is Answer.UNKNOWN:
        found.append(Missing(f"{place}.solid_insert", f"whether there is solid material at {bulkhead.name}"))
    if bulkhead.through_panel is Answer.UNKNOWN:
        found.append(Missing(f"{place}.through_panel", f"whether {bulkhead.name} goes through a panel"))
    return tuple(found)


def _joint_of(view: View, bulkhead: Bulkhead) -> Joint | None:
    return next((joint for joint in view.assembly.joints if joint.place == bulkhead.place), None)


def _in_panel(joint: Joint) -> list[Part]:
    return [part for part in joint.parts if part.needs_panel]
