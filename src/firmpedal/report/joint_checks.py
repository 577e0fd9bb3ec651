"""Every joint by its number, to tick off when it has its torque and again when it stayed dry."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.model.part import Form
from firmpedal.report.joint_numbers import joint_numbers
from firmpedal.report.nuts import tightened, torque_used
from firmpedal.report.sheet import BOX, Bullets, Facts, Fields, Group, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from firmpedal.fit.joint import Joint
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

TITLE = "Joints, one by one"
LEAD = "The numbers are those on the circuit and on the cards: along the fluid, left before right."
COLUMNS = ("no.", "joint, and its parts in order", "torque", "torqued", "dry")
WIDTHS = (0.07, 0.43, 0.29, 0.12, 0.09)
HOW = (
    "Torqued: tick when every nut of the joint has had its torque and its paint mark.",
    "Dry: with the system under pressure, press a clean dry tissue on every joint. Look again after a night.",
    "A joint that is not dry: let the pressure off first. Never loosen or tighten a joint under pressure.",
)
NO_SOURCE = "by its maker"
BY_TURNS = "pipe thread by turns"
BY_SHEET = "compression nut by its maker's sheet"
SQUEEZED = (
    "Compression nuts: no torque and no turns are published here. Go by the sheet of the fitting's maker, "
    "count the turns after hand tight, and paint a mark across nut and body."
)
HOW_LONG = (
    "Hold it as long as the kit maker or whoever signs asks for: no time is published here.",
    "The gauge must not fall while it is held.",
    "Press no further than the least of what lines, cylinders, calipers and valves are rated or proved for.",
    "Let the pedals go: each braked wheel must turn freely by hand at once. One that drags is not flown.",
)
OPEN = "It has to be closed first."


@worked
def joint_checks_sheet(evaluation: Evaluation) -> Sheet | None:
    """The check sheet of all joints; None where there is none."""
    numbers = joint_numbers(evaluation)
    joints = {joint.name: joint for joint in evaluation.assembly.joints}
    rows = tuple(_row(evaluation, number, joints[name]) for name, number in numbers.items())
    if not rows:
        return None
    blocks = (
        Paragraph(LEAD, Tone.SMALL),
        Table(COLUMNS, rows, widths=WIDTHS),
        Bullets((*HOW, *_squeezed(evaluation))),
        *_how_hard(evaluation),
        Fields(("pressure held, and for how long", "wheels turn freely again", "checked by, date")),
    )
    return Sheet(TITLE, blocks)


def _squeezed(evaluation: Evaluation) -> tuple[str, ...]:
    """What is said of compression nuts, where there are any."""
    return (SQUEEZED,) if any(_is_squeezed(joint) for joint in evaluation.assembly.joints) else ()


def _is_squeezed(joint: Joint) -> bool:
    return any(mating.one.interface.form is Form.COMPRESSION for mating in joint.matings)


def _how_hard(evaluation: Evaluation) -> tuple[Block, ...]:
    """What the hardest foot makes in each line, how far to press, and the look at the wheels after."""
    lines: dict[str, list[str]] = {}
    for pressure in evaluation.results.pressures:
        lines.setdefault(evaluation.display.value(pressure.at("panic")), []).append(pressure.line)
    if not lines:
        return ()
    found = tuple((listed(names), f"{figure} at the panic foot") for figure, names in lines.items())
    return (Group((Heading("Under pressure", first=True), Facts(found), Bullets(HOW_LONG))),)


def _row(evaluation: Evaluation, number: int, joint: Joint) -> tuple[str, ...]:
    """A joint with its boxes; one with an open end cannot be dry: none, and what comes first."""
    chain = joint.mismatches[0].words if joint.mismatches else _chain(joint)
    words, boxes = f"{joint.name}\n{chain}", (BOX, BOX)
    if joint.open_ends:
        words, boxes = f"{words}\n{OPEN}", ("", "")
    return (str(number), words, "\n".join(_torques(evaluation, joint)), *boxes)


def _chain(joint: Joint) -> str:
    """The parts of a joint in order, with how many of each."""
    if not joint.parts:
        return "nothing is joined here" if joint.open_ends else "no part goes between"
    names = [part.designation for part in joint.parts]
    return " + ".join(
        f"{names.count(name)} x {name}" if names.count(name) > 1 else name for name in dict.fromkeys(names)
    )


def _torques(evaluation: Evaluation, joint: Joint) -> list[str]:
    """The torques of a joint, each figure once, then the nuts that get them; a pipe thread goes by turns."""
    found: dict[str, list[str]] = {}
    for nut in tightened(evaluation):
        if nut.joint == joint.name:
            row = torque_used(nut)
            figure = evaluation.display.value(row.torque) if row else NO_SOURCE
            found.setdefault(figure, []).append(nut.nut)
    pipe = [BY_TURNS] if any(Form.PIPE is mating.one.interface.form for mating in joint.matings) else []
    pipe += [BY_SHEET] if _is_squeezed(joint) else []
    nuts = [" and ".join(dict.fromkeys(each)) for each in found.values()]
    if len(found) == 1:
        return [*found, "; ".join((*nuts, *pipe))]
    words = [f"{figure}: {each}" for figure, each in zip(found, nuts, strict=True)] + pipe
    return words or ([NO_SOURCE] if joint.matings else [])
