"""Every flared nut of the aircraft, and what the sources say about its torque."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.model.part import Category, Form, Gender
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.catalog import TorqueRow
    from firmpedal.fit.joint import EndRef, Joint, Mating
    from firmpedal.pipeline import Evaluation

NUT, HOSE_END = "coupling nut", "hose end"
STEELS = ("steel", "stainless")
ALUMINIUM_FIGURE = ("aluminium", "copper", "")


@dataclass(frozen=True, slots=True)
class Tightened:
    """A nut that gets a torque: which joint, what is tightened, and by which rows of the table.

    `metal` is that whose figure holds, empty where no source has one for the pair. `tube` is the metal of
    the tube; `fitting` the softer of what the nut and what it goes onto are made of, empty if not known.
    """

    joint: str
    line: str
    nut: str
    kind: str  # coupling nut, hose end
    dash: str
    metal: str
    tube: str = ""
    fitting: str = ""


def tightened(evaluation: Evaluation) -> tuple[Tightened, ...]:
    """Every flared nut of the aircraft, joint by joint."""
    return tuple(
        found
        for joint in evaluation.assembly.joints
        for mating in joint.matings
        if (found := _tightened(evaluation, joint, mating)) is not None
    )


def _tightened(evaluation: Evaluation, joint: Joint, mating: Mating) -> Tightened | None:
    if mating.one.interface.form is not Form.FLARE_37:
        return None
    female, male = (
        (mating.one, mating.other)
        if mating.one.interface.gender is Gender.FEMALE
        else (mating.other, mating.one)
    )
    body = _part_material(joint, male)
    dash = female.interface.size
    if female.owner.startswith("line "):
        line = _line_name(female.owner)
        return Tightened(joint.name, line, HOSE_END, HOSE_END, dash, metal_of(body), "", body)
    part = joint.parts[int(female.owner.removeprefix("part "))]
    if part.category is not Category.COUPLING_NUT:
        return None
    line = _line_of(joint, female)
    stock = next((laid.stock for laid in evaluation.laid if laid.name == line), None)
    group = getattr(getattr(stock, "material", None), "group", "")
    governs, fitting = metal_of(group, body, part.material), _softer(body, part.material)
    return Tightened(joint.name, line, part.designation, NUT, dash, governs, group, fitting)


def _part_material(joint: Joint, end: EndRef) -> str:
    return joint.parts[int(end.owner.removeprefix("part "))].material if end.owner.startswith("part ") else ""


def _line_of(joint: Joint, nut: EndRef) -> str:
    """The line whose tube a coupling nut holds: through its sleeve to the flare."""
    owners, line = {nut.owner}, ""
    for _ in range(2):
        for mating in joint.matings:
            if mating.one.interface.form is Form.FLARE_37:
                continue
            pair = {mating.one.owner, mating.other.owner}
            if pair & owners:
                line = next((owner for owner in pair if owner.startswith("line ")), line)
                owners |= pair
    return _line_name(line)


def _line_name(owner: str) -> str:
    """The name in an owner such as `line left_leg from`."""
    return owner.removeprefix("line ").rpartition(" ")[0]


def metal_of(*groups: str) -> str:
    """Whose figure holds for metals that meet; empty where no source has one for them.

    Aluminium anywhere, or copper, takes the aluminium figure; so does what nobody knows the metal of,
    because that figure is the lower one. The steel figure is for steel throughout.
    """
    if any(group in ALUMINIUM_FIGURE for group in groups):
        return "aluminium"
    return "steel" if all(group in STEELS for group in groups) else ""


def _softer(body: str, nut: str) -> str:
    return next((metal for metal in (body, nut) if metal in ALUMINIUM_FIGURE), body)


def torque_rows(nut: Tightened) -> tuple[TorqueRow, ...]:
    """What the sources say for a nut, the row in use first."""
    rows = [
        row
        for row in catalogue().torques
        if (row.dash, row.joint) == (nut.dash, nut.kind)
        and row.tube in (nut.metal, "any")
        and row.torque.dimension is Dimension.TORQUE
    ]
    return tuple(sorted(rows, key=lambda row: not row.preferred))


def torque_used(nut: Tightened) -> TorqueRow | None:
    return next((row for row in torque_rows(nut) if row.preferred), None)


def torque_at(evaluation: Evaluation, joint: str, line: str) -> str:
    """The torque of one line's nut at one joint in words, empty where no source gives one."""
    for nut in tightened(evaluation):
        row = torque_used(nut)
        if (nut.joint, nut.line) == (joint, line) and row is not None:
            return f"{evaluation.display.value(row.torque)} ({row.condition.partition(';')[0]})"
    return ""
