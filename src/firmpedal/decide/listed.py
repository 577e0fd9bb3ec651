"""From the rows of a list to counted things, with a question for every row that says too little."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.decide.goods import Goods, Kind, Named, by_name, length_of, named, nearest
from firmpedal.decide.listing import Cell, Entry, Meaning

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

_COUNT = re.compile(
    r"(?P<number>\d{1,6}(?:[.,]\d{1,3})?)\s*(?:x|\u00d7)?\s*(?P<word>[^\W\d]*)\.?", re.IGNORECASE
)
COUNTED = frozenset(
    ("", "x", "ea", "each", "off", "pc", "pcs", "piece", "pieces", "no", "nos", "stk", "stück", "st",
     "length", "lengths", "stick", "sticks", "hose", "hoses")
)  # fmt: skip
_LENGTH_IN_WORDS = re.compile(
    r"""(?:\d+[-\s])?\d+/\d+\s*(?:in|"|')|\d*\.?\d+\s*(?:in|mm|cm|ft|m|"|')(?!\w)""", re.IGNORECASE
)
_METALS = ("aluminium", "aluminum", "alloy", "stainless", "steel", "brass")


@dataclass(frozen=True, slots=True)
class Question:
    """Something only the builder can answer, at a place in the list."""

    line: int
    column: int
    message: str
    suggestion: str = ""


@dataclass(frozen=True, slots=True)
class Listed:
    """One row of the list that could be counted; `lengths` holds each piece of tube or hose."""

    goods: Goods
    quantity: int
    line: int
    lengths: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Listing:
    """A list as it was understood: rows counted, questions on the others, remarks."""

    rows: tuple[Listed, ...]
    questions: tuple[Question, ...]
    notes: tuple[str, ...]


def understood(entries: Iterable[Entry], wanted: Sequence[Goods], length_unit: str | None) -> Listing:
    """Take every row for what it says; nothing is guessed, nothing is dropped without a word."""
    listed: list[Listed] = []
    questions: list[Question] = []
    notes: list[str] = []
    for entry in entries:
        outcome = _row(entry, wanted, length_unit)
        if isinstance(outcome, Listed):
            listed.append(outcome)
            questions += _metal_doubts(entry, outcome)
        elif isinstance(outcome, Question):
            questions.append(outcome)
        elif outcome:
            notes.append(outcome)
    return Listing(tuple(listed), tuple(questions), (*notes, *_repeated(listed)))


def _row(entry: Entry, wanted: Sequence[Goods], unit: str | None) -> Listed | Question | str:
    amount = entry.cell(Meaning.QUANTITY)
    if not entry.texts:
        return _ask(amount, "there is no part in this row") if amount else ""
    found = next((one for cell in entry.texts if (one := named(cell.text, wanted, unit)) is not None), None)
    if found is None and amount is None:
        return f"line {entry.line}: `{entry.texts[0].text}` was taken for a heading"
    if found is None:
        return _unknown(entry.texts[0], wanted)
    if amount is None:
        return _ask(entry.texts[0], f"{found.goods.name} has no quantity: how many are there?")
    return _counted(entry, amount, found, unit)


def _ask(cell: Cell | None, message: str, suggestion: str = "") -> Question:
    line, column = (cell.line, cell.column) if cell else (1, 1)
    return Question(line, column, message, suggestion)


def _unknown(cell: Cell, wanted: Sequence[Goods]) -> Question:
    could_be = by_name(cell.text, wanted)
    if len(could_be) > 1:
        message = f"`{cell.text}` was not counted, because it can be {_or(could_be)}: which is it?"
        return _ask(cell, message, could_be[0].name)
    near = nearest(cell.text, wanted)
    meant = f"did you mean {near}?" if near else "what is it?"
    return _ask(cell, f"`{cell.text}` is not known here and was not counted: {meant}", near)


def _counted(entry: Entry, amount: Cell, found: Named, unit: str | None) -> Listed | Question:
    goods, length = found.goods, found.length or _length(entry, unit)
    if goods.kind is Kind.TUBE and not _COUNT.fullmatch(amount.text):
        whole = length_of(amount.text)
        if whole is not None:  # so many feet of tube: one piece
            return Listed(goods, 1, entry.line, (whole,))
    count = _number(amount.text)
    if count is None and goods.kind is Kind.TUBE and (whole := length_of(amount.text)) is not None:
        return Listed(goods, 1, entry.line, (whole,))
    if count is None:
        message = f"`{amount.text}` is not a count of {goods.name}, which was left out: how many are there?"
        return _ask(amount, message, "write a whole number, as in 4")
    if goods.kind is not Kind.PIECE and length is None and count:
        message = f"{goods.name} has no length, so it was not counted: how long is each?"
        return _ask(amount, message, f"add a column `length`, or write {goods.name} 36 in")
    return Listed(goods, count, entry.line, (length,) * count if length is not None else ())


def _number(text: str) -> int | None:
    """A whole number, with or without a word such as `ea`; a pair or a dozen is not one."""
    found = _COUNT.fullmatch(text)
    if found is None or found["word"].casefold() not in COUNTED:
        return None
    number = float(found["number"].replace(",", "."))
    return int(number) if number == int(number) else None


def _length(entry: Entry, unit: str | None) -> tuple[float, float] | None:
    """The length in a column of its own, with its unit or the file's, else in the words beside it."""
    own = entry.cell(Meaning.LENGTH)
    if own is not None:
        return length_of(own.text, unit)
    words = [cell.text for cell in entry.texts[1:]]
    lengths = [found for text in words for found in _LENGTH_IN_WORDS.findall(text)]
    return length_of(lengths[0]) if len(lengths) == 1 else None


def _metal_doubts(entry: Entry, listed: Listed) -> list[Question]:
    """Ask where the words name another metal than the designation does."""
    part = listed.goods.part
    texts = [cell for cell in (entry.cell(Meaning.MATERIAL), entry.cell(Meaning.WORDS)) if cell is not None]
    if part is None:
        return []
    for cell in texts:
        said = [metal for metal in _METALS if re.search(rf"\b{metal}\b", cell.text.casefold())]
        metals = {"aluminium" if each in ("aluminum", "alloy") else each for each in said}
        if metals and part.material not in metals:
            message = (
                f"{part.designation} is {part.material} and the list says {' and '.join(said)}: which is it?"
            )
            return [_ask(cell, message)]
    return []


def _repeated(listed: Sequence[Listed]) -> tuple[str, ...]:
    """Say what stands on several rows and was added up; hoses of another length are another thing."""
    rows: dict[tuple[str, frozenset[tuple[float, float]]], list[Listed]] = {}
    for each in listed:
        rows.setdefault((each.goods.key, frozenset(each.lengths)), []).append(each)
    return tuple(
        f"{own[0].goods.name} stands on lines {_and([each.line for each in own])}: "
        f"added up to {sum(each.quantity for each in own)}"
        for own in rows.values()
        if len(own) > 1
    )


def _or(goods: Sequence[Goods]) -> str:
    *first, last = (each.name for each in goods)
    return f"{', '.join(first)} or {last}"


def _and(numbers: Sequence[int]) -> str:
    *first, last = map(str, numbers)
    return f"{', '.join(first)} and {last}" if first else last
