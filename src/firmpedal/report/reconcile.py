"""A list held against the design, as a sheet: the answer, what does not agree, the questions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.decide.fault import Fault
from firmpedal.decide.listed import understood
from firmpedal.decide.reconcile import Needed, reconcile
from firmpedal.model.display import count_of
from firmpedal.report.parts import goods_of_item, parts_list
from firmpedal.report.sheet import Bullets, Heading, Paragraph, Sheet, Table, Tone
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.decide.fault import Discrepancy
    from firmpedal.decide.listed import Question
    from firmpedal.decide.listing import Entry
    from firmpedal.decide.reconcile import Reconciliation
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value
    from firmpedal.report.parts import Item
    from firmpedal.report.sheet import Block

ASKS = {
    Fault.SHORT: "Is it on another list or in a drawer? Otherwise order it.",
    Fault.WRONG_SIZE: "Is it in the bag like that, or a slip of the pen? Another size does not mate.",
    Fault.WRONG_MATERIAL: "Is it in the bag like that, or was a letter left off?",
    Fault.WRONG_BOTH: "Is it in the bag like that, or a slip of the pen?",
    Fault.WRONG_LENGTH: "Measure it from seat to seat: a short hose pulls, a long one chafes.",
    Fault.NOT_SHOWN: "The file does not know yet how long it has to be: measure the line first.",
    Fault.LEFT_OVER: "Spares, or for something that the file does not have?",
    Fault.ODD: "They go together one to one: which of the two is miscounted?",
}


def needed_items(evaluation: Evaluation) -> tuple[Needed, ...]:
    """What the parts list holds, by the names under which things are compared."""
    unit = evaluation.display.unit(Dimension.LENGTH)
    return tuple(_needed(item, unit) for item in parts_list(evaluation))


def _needed(item: Item, unit: str | None) -> Needed:
    return Needed(goods_of_item(item, unit), item.quantity, item.where, item.lengths, item.spare)


def reconciled(evaluation: Evaluation, entries: Iterable[Entry]) -> Reconciliation:
    """Hold the rows of a list against an evaluation."""
    needed = needed_items(evaluation)
    goods = tuple({each.goods.key: each.goods for each in needed}.values())
    unit = evaluation.display.unit(Dimension.LENGTH)
    loss = evaluation.aircraft.bench.cutter_loss
    return reconcile(needed, understood(entries, goods, unit), loss.high if loss.known else 0.0)


def reconcile_sheet(found: Reconciliation, display: Display, name: str, open_ends: int = 0) -> Sheet:
    """What agrees and what does not, the answer first; `open_ends` of the design mate with nothing.

    `name` is the list's file; a list without one has its lines numbered.
    """
    blocks: list[Block] = [Paragraph(headline(found), Tone.LEAD)]
    if open_ends:
        words = f"The design itself does not close: {open_ends} ends mate with nothing."
        blocks.append(Paragraph(f"{words} Settle what was found about the design first.", Tone.WARNING))
    if found.faults:
        blocks.append(_fault_table(found, display))
        asked = dict.fromkeys(fault.fault for fault in found.faults)
        blocks.append(Bullets(tuple(f"{fault.value}: {ASKS[fault]}" for fault in asked)))
    questions = found.listing.questions
    if questions:
        blocks.append(Heading("Questions about the list"))
        told = (
            f"{_where(name, each)}: {each.message}{_try(each.suggestion, each.message)}" for each in questions
        )
        blocks.append(Bullets(tuple(told)))
    if found.listing.notes:
        blocks += [Heading("How it was read"), Bullets(found.listing.notes)]
    return Sheet("The list against the design", (*blocks, Heading("All of it"), _all_rows(found, display)))


def _where(name: str, question: Question) -> str:
    return f"{name}:{question.line}:{question.column}" if name else f"line {question.line}"


def _try(suggestion: str, message: str) -> str:
    return f" Try: {suggestion}." if suggestion and suggestion not in message else ""


def headline(found: Reconciliation) -> str:
    """The answer in a line."""
    numbers = {fault: found.count(fault) for fault in Fault}
    numbers[Fault.ODD] = sum(each.fault is Fault.ODD for each in found.faults)
    counts = [f"{number} {_noun(fault, number)}" for fault, number in numbers.items() if number]
    questions = len(found.listing.questions)
    if questions:
        counts.append(count_of(questions, "question"))
    if not counts:
        return "Your list agrees with the design."
    words = ", ".join(counts)
    if found.unclear:
        return f"Your list cannot be judged yet: {words}."
    if not found.covers:
        return f"Your list does not cover the design: {words}."
    return f"Your list covers the design, but does not agree with it: {words}."


def _noun(fault: Fault, count: int) -> str:
    return f"{fault.value}s" if fault is Fault.ODD and count > 1 else fault.value


def _fault_table(found: Reconciliation, display: Display) -> Table:
    rows = tuple(
        (str(each.quantity), each.fault.value, each.name, fault_words(each, display), ", ".join(each.where))
        for each in found.faults
    )
    return Table(("qty", "what is wrong", "on the list", "needed", "where"), rows, frozenset({0}))


def fault_words(fault: Discrepancy, display: Display) -> str:
    """What is needed instead, in words and lengths."""
    words = [fault.needed, fault.detail]
    if fault.found is not None:
        words.append(f"listed {display.value(fault.found)}")
    if fault.asked is not None:
        words.append(f"needed {display.value(fault.asked)}")
    return ", ".join(word for word in words if word)


def _all_rows(found: Reconciliation, display: Display) -> Table:
    rows = tuple(
        (
            row.name,
            _amount(row.needed, row.needed_length, display),
            _amount(row.listed, row.listed_length, display),
            "" if row.agrees else "*",
        )
        for row in found.rows
    )
    return Table(("part", "needed", "listed", "differs"), rows, frozenset({1, 2}))


def _amount(count: int, length: Value | None, display: Display) -> str:
    return str(count) if length is None else display.value(length)
