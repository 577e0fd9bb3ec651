"""What the figures of stopping leave out, and what becomes of return springs and seals."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.quantity import Answer
from firmpedal.report.sheet import Bullets, Group, Heading, Paragraph

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

LEFT_OUT = (
    "Seal friction of the calipers, wet or oily linings, fading when hot: a real foot needs more.",
    "Air drag and rolling drag: a real stop is shorter.",
    "Lift, which takes weight off the wheels just after landing: a real stop is longer.",
    "Two seats that press at once: one seat presses, whichever makes the less or the more of it.",
    "What else tells the wheels apart, such as tyres and paving: all pedals of the seat are pressed alike.",
)
LOSSES = {
    Answer.YES: (
        "Return spring and seal friction of the cylinders are taken off the pressures here. The strength of "
        "the lines goes by the whole foot, which is the safe side."
    ),
    Answer.UNKNOWN: (
        "Return spring and seal friction of a cylinder are taken off the pressures here only as far as the "
        "file gives them: a real foot needs more. The strength of the lines goes by the whole foot."
    ),
    Answer.NO: (
        "Return spring and seal friction of the cylinders, which the file does not give: a real foot needs "
        "more."
    ),
}
AT_REST = (
    "The return spring of {names} is given at rest alone. Pressed it pushes back no less, so that the "
    "pressures here are the most, and a real foot needs as much or more."
)


def left_out(evaluation: Evaluation) -> list[Block]:
    """What is not counted, and what becomes of return spring and seals."""
    losses, heading = evaluation.results.stopping.losses, Heading("What is left out")
    if losses is Answer.NO:
        return [Group((heading, Bullets((LOSSES[losses], *LEFT_OUT))))]
    springs = [each.name for each in evaluation.aircraft.cylinders if each.return_spring.at_rest_alone]
    words = f"{LOSSES[losses]} {AT_REST.format(names=listed(springs))}" if springs else LOSSES[losses]
    return [Paragraph(words), Group((heading, Bullets(LEFT_OUT)))]
