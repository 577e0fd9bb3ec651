"""What a builder takes along to the aircraft: the cautions first, then the work, a card at a time."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.bleeding import bleeding_sheet
from firmpedal.report.cards import card_sheets
from firmpedal.report.cover import BEFORE, CAUTIONS, certificate, verdict_line, why_line
from firmpedal.report.flare_card import flare_card
from firmpedal.report.joint_checks import TITLE as JOINTS
from firmpedal.report.joint_checks import joint_checks_sheet
from firmpedal.report.packet import footer_of, work_sheets
from firmpedal.report.putting_together import putting_together_sheet
from firmpedal.report.schematic.sheet import circuit_sheet
from firmpedal.report.sheet import Bullets, Paragraph, Sheet, Tone
from firmpedal.report.torque import torque_sheet
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block


NAME_IT = "Write a {lacking} under Describe, aircraft, to tell two copies apart."


def hangar_sheets(evaluation: Evaluation, options: tuple[Evaluation, ...] = ()) -> tuple[Sheet, ...]:
    """The sheets in the order of the work.

    Args:
        evaluation: What is built.
        options: The file as written and its options, evaluated; from them comes the way from old to new.
    """
    sheets = (
        before_sheet(evaluation),
        *work_sheets(evaluation, options),
        circuit_sheet(evaluation),
        flare_card(evaluation),
        *card_sheets(evaluation),
        putting_together_sheet(evaluation),
        torque_sheet(evaluation, ticked=f"on the card \u201c{JOINTS}\u201d"),
        bleeding_sheet(evaluation),
        joint_checks_sheet(evaluation),
    )
    return tuple(sheet for sheet in sheets if sheet is not None)


@worked
def before_sheet(evaluation: Evaluation) -> Sheet:
    """What is read before anything is touched: whose word counts, the verdict, what this page is."""
    blocks: tuple[Block, ...] = (
        *certificate(evaluation),
        Bullets(CAUTIONS),
        Paragraph(verdict_line(evaluation), Tone.VERDICT),
        Paragraph(why_line(evaluation)),
        Paragraph(copy_words(evaluation), Tone.CAUTION),
    )
    return Sheet(BEFORE, blocks)


def copy_words(evaluation: Evaluation) -> str:
    """Of which state of the file this is a copy."""
    footer = footer_of(evaluation)
    words = [f"revision {footer.revision}"] if footer.revision else ["a file that names no revision"]
    words.append(footer.date or "without a date")
    lacking = [key for key, said in (("revision", footer.revision), ("date", footer.date)) if not said]
    told = f" {NAME_IT.format(lacking=' and a '.join(lacking))}" if lacking else ""
    return (
        f"This is a copy of {', '.join(words)}. It does not follow changes of the file: after a change, make "
        f"a new one and throw this one away.{told}"
    )
