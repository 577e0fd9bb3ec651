"""What a line meets at each end: where that is in words, the parts in order, and what was refused."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.fit.chain import chain_at, groups_at
from firmpedal.model.aircraft import find
from firmpedal.model.part import Category
from firmpedal.report.joint_numbers import joint_numbers, number_words
from firmpedal.report.lengths import degrees_of
from firmpedal.report.nuts import torque_at
from firmpedal.report.seals import order_words
from firmpedal.report.sheet import Facts, Group, Heading, Paragraph, Tone

if TYPE_CHECKING:
    from firmpedal.fit.joint import Joint, Refusal
    from firmpedal.lay.line import LaidLine
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.part import Part
    from firmpedal.pipeline import Evaluation

ENDS = (("from", "A"), ("to", "B"))
REFUSALS = 1  # the nearest misses; all are on the screen
NAMES = 2  # designations named for each


def end_words(aircraft: Aircraft, target: str) -> str:
    """A connection in words: `left_cylinder, port outlet`."""
    owner, _, part = target.rpartition(".")
    if find(aircraft.bulkheads, owner):
        return f"{owner}, side {part}"
    if find(aircraft.lines, owner):
        return f"{owner}, {'first' if part == 'from' else 'last'} end"
    return f"{owner}, port {part}" if owner else target


def from_to(evaluation: Evaluation, line: LaidLine) -> str:
    """Where a line begins and ends, in words."""
    declared = find(evaluation.aircraft.lines, line.name)
    if declared is None:
        return ""
    start, finish = (end_words(evaluation.aircraft, target) for target in (declared.start, declared.finish))
    return f"{line.stock.phrase}. From A: {start}. To B: {finish}."


def end_groups(evaluation: Evaluation, line: LaidLine) -> list[Group]:
    """For each end of a line: the parts in the order in which they go together."""
    return [_end_group(evaluation, line, end, letter) for end, letter in ENDS]


def _end_group(evaluation: Evaluation, line: LaidLine, end: str, letter: str) -> Group:
    declared = find(evaluation.aircraft.lines, line.name)
    target = "" if declared is None else (declared.start if end == "from" else declared.finish)
    joint = evaluation.assembly.joint_of(line.name, end)
    number = joint_numbers(evaluation).get(joint.name) if joint else None
    numbered = f" ({number_words(number)})" if number else ""
    heading = Heading(f"End {letter}{numbered}: {end_words(evaluation.aircraft, target)}")
    if joint is None:
        return Group(
            (heading, Paragraph("Nothing was found that joins this end. See the findings.", Tone.WARNING))
        )
    wrong = [Paragraph(f"This does not mate: {wrong.words}.", Tone.WARNING) for wrong in joint.mismatches]
    rows = [("parts", _parts_words(joint, line, end))]
    order = order_words(groups_at(joint, line.name, end))
    rows += [("order", order)] if order else []
    torque = torque_at(evaluation, joint.name, line.name)
    rows += [("torque", f"{torque}. Two wrenches.")] if torque else []
    rows += _refused(joint)
    return Group((heading, *wrong, Facts(tuple(rows))))


def _parts_words(joint: Joint, line: LaidLine, end: str) -> str:
    """The chain from the line to the port, then what else belongs to this joint."""
    parts = chain_at(joint, line.name, end)
    chain = ", ".join(_part_words(part) for part in parts)
    others = [
        part.designation
        for part in joint.parts
        if part.category is Category.JAM_NUT and part not in parts  # in a boss it is in the chain
    ]
    words = chain or "none: it goes straight into the port"
    return f"{words}, held by jam nut {', '.join(others)}" if others and parts else words


def _part_words(part: Part) -> str:
    """A part by what it is, how far it turns the line, and its designation."""
    what = part.name.partition(",")[0]
    turned = f" {degrees_of(part.turn)}" if part.turn else ""
    return f"{what}{turned} {part.designation}"


def _refused(joint: Joint) -> list[tuple[str, str]]:
    shown = [("not taken", _refusal_words(refusal)) for refusal in joint.refused[:REFUSALS]]
    return [(term if number == 0 else "", words) for number, (term, words) in enumerate(shown)]


def _refusal_words(refusal: Refusal) -> str:
    names = ", ".join(refusal.designations[:NAMES])
    more = len(refusal.designations) - NAMES
    return f"{names}{f' and {more} more' if more > 0 else ''}: {refusal.reason}"
