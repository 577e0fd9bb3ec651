"""One field of a form as HTML: its name, what is written, what it is for, and what is wrong with it."""

from __future__ import annotations

from dataclasses import dataclass, field
from html import escape
from typing import TYPE_CHECKING

from firmpedal.place import is_within
from firmpedal.project.field_cells import Kind
from firmpedal.project.supposed import is_thread
from firmpedal.project.tree import UNKNOWN
from firmpedal.quantity import Mark
from firmpedal.report.measuring_words import how_at
from firmpedal.web import addresses
from firmpedal.web.form.clash import clash_html
from firmpedal.web.form.does import does
from firmpedal.web.wording import in_words

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from firmpedal.project.fields import Cell, Field, Row
    from firmpedal.web.form.clash import Clash, Where

MARKS = {
    "measured": "measured",
    "memory": "from memory",
    "estimate": "an estimate",
    "assumed": "assumed",
    "read": "read in a source",
    "derived": "derived",
}
HOW = {Kind.POINT: "given", Kind.SHAPE: "its shape", Kind.MOTION: "how", Kind.VALUE: ""}
BY_TAPE = "by tape, so far"
ONE_OF_LIST = {"via": "corner"}
IN_PLAIN_WORDS = {"firmpedal": "format of the file"}
TO_MEASURE, COPIED = "to measure", "copied"
WHICH_THREAD = "Which thread is it?"
LENT = "From the aircraft as written; what you type here holds for this option alone."
NO_OTHERWISE = ("", "nothing", UNKNOWN)


@dataclass
class Around:
    """What a field has to know of the page: the file, its option, what was refused, and what clashes.

    `odd` holds by their places the words on figures out of the usual, `told` by that of the field what else
    was done as it was written.

    `asked` is the card of what is being asked, which stands in the thing at `asked_at`. `said` says our own
    words for the brakes that the aircraft has. `numbered` begins the names of elements, where a page has
    several such forms.
    """

    file: str
    option: str | None
    refused: dict[Where, str] = field(default_factory=dict)
    clashes: dict[Where, Clash] = field(default_factory=dict)
    odd: dict[str, str] = field(default_factory=dict)
    asked: str = ""
    asked_at: str = ""
    said: Callable[[str], str] = str
    numbered: str = "cell"
    told: dict[str, str] = field(default_factory=dict)
    count: int = 0

    def number(self) -> str:
        """A name for an element of the page that no other has."""
        self.count += 1
        return f"{self.numbered}-{self.count}"


def field_html(one: Field, around: Around) -> str:
    """Write a field."""
    wrong = list(_wrong(one, around))
    clashes = "".join(clash_html(each) for each in around.clashes.values() if each.where[0] == one.place)
    classes = (
        "fp-field"
        + (" fp-field-unknown" if one.to_measure else "")
        + (" fp-field-bad" if wrong or clashes else "")
    )
    alerts = "".join(f'<p class="fp-field-wrong" role="alert">{escape(words)}</p>' for words in wrong)
    told = around.number()
    rows = "".join(_row(one, number, around, told) for number in range(len(one.rows)))
    tags = "".join(
        f'<span class="fp-field-tag">{word}</span>'
        for word, shown in ((TO_MEASURE, one.to_measure), (COPIED, one.copied)) if shown
    )  # fmt: skip
    name = escape(IN_PLAIN_WORDS.get(one.key, one.key))
    return (
        f'<div class="{classes}" data-place="{escape(one.place)}" role="group" aria-label="{name}">'
        f'<p class="fp-field-name">{name}{tags}</p>'
        f"{rows}{_more(one)}"
        f'<p class="fp-small fp-field-help" id="{told}">{around.said(_help(one))}</p>'
        f"{_lent(one)}{_told(one, around)}{_which(one, around)}{_line(one, around)}{_odd(one, around)}"
        f"{clashes}{alerts}</div>"
    )


def _lent(one: Field) -> str:
    return f'<p class="fp-field-note">{LENT}</p>' if one.lent else ""


def _told(one: Field, around: Around) -> str:
    words = around.told.get(one.place)
    return f'<p class="fp-field-note" role="status">{escape(words)}</p>' if words else ""


def _odd(one: Field, around: Around) -> str:
    """Figures of it that are out of the usual: saved all the same, and told where they were typed."""
    found = (words for place, words in around.odd.items() if is_within(place, one.place))
    note = (
        '<p class="fp-told fp-note" role="status"><strong class="fp-word">NOTE</strong> <span>{}</span></p>'
    )
    return "".join(note.format(escape(words)) for words in dict.fromkeys(found))


def _wrong(one: Field, around: Around) -> Iterator[str]:
    """What was refused just now, then what cannot be read in the file."""
    yield from (words for (place, _, _), words in around.refused.items() if place == one.place)
    for problem in one.problems:
        yield in_words(problem.message, problem.suggestion)


def _which(one: Field, around: Around) -> str:
    """From the thread of a port, the way to where it is found out."""
    if not is_thread(one.place):
        return ""
    to = escape(addresses.thread(around.file, around.option, one.place))
    return f'<a class="fp-small fp-field-which" href="{to}">{WHICH_THREAD}</a>'


def _line(one: Field, around: Around) -> str:
    if one.line is None:
        return ""
    to = escape(addresses.text(around.file, around.option, one.line))
    return f'<a class="fp-small fp-field-line" href="{to}">line {one.line}</a>'


def _help(one: Field) -> str:
    """What it is for; of what is still to be measured, how; else what may stand there."""
    how = how_at(one.place.split(".")[:-1], one.key) if one.to_measure else ""
    pieces = [_sentence(one.meaning)]
    if how:
        pieces.append(f"How: {how.replace('`', '')}.")
    elif not any(row.ways or any(cell.choices or cell.label for cell in row.cells) for row in one.rows):
        pieces.append(_sentence(one.hint))
    if not one.written and one.otherwise not in NO_OTHERWISE:
        pieces.append(f"Left out: {one.otherwise}.")
    return escape(" ".join(piece for piece in pieces if piece))


def _sentence(words: str) -> str:
    words = words.replace("`", "").strip()
    return f"{words[0].upper()}{words[1:]}." if words else ""


def _row(one: Field, number: int, around: Around, told: str) -> str:
    """The cells of a value; before them how it is given, where there are several ways."""
    row = one.rows[number]
    cells = "".join(_cell(one, (one.place, number, n), around, told) for n in range(len(row.cells)))
    out = ""
    if one.many and row.place != one.place:
        out = does("out", row.place, "Take out", f"Take out {one.key} {number + 1}")
    mark = _mark(one, row) if number == 0 else ""
    way = _way(one, number, told)
    if not way:
        label = f'<p class="fp-field-label">{escape(row.label)}</p>' if row.label else ""
        return f'{label}<div class="fp-field-row fp-field-row-{len(row.cells)}">{cells}{mark}{out}</div>'
    figures = f'<div class="fp-field-row fp-field-row-{len(row.cells)}">{cells}</div>' if cells else ""
    to = f'<p class="fp-small fp-field-to">Comes to {escape(row.comes_to)}.</p>' if row.comes_to else ""
    return f'<div class="fp-field-ways"><div class="fp-field-row">{way}{mark}{out}</div>{figures}{to}</div>'


def _way(one: Field, number: int, told: str) -> str:
    """How a point is given, what shape something has, how it moves: another way can be chosen."""
    row = one.rows[number]
    if not row.ways or one.copied:
        return ""
    which = _number_of(one, row.place)
    label = row.label or (f"{ONE_OF_LIST.get(one.key, one.key)} {which}" if which else "")
    words = ", ".join(word for word in (label, HOW[row.kind]) if word)
    name = " ".join(word for word in (one.key, which, row.label, HOW[row.kind]) if word)
    options = _options(("", *row.ways) if not row.way else row.ways, row.way)
    if row.kind is Kind.POINT:
        tape = _options(row.ways[1:], row.way)
        options = f'{_options(row.ways[:1], row.way)}<optgroup label="{BY_TAPE}">{tape}</optgroup>'
    return (
        f'<label class="fp-field-cell fp-field-way"><span class="fp-small" aria-hidden="true">{escape(words)}'
        f'</span><select data-way="{escape(one.place)}" data-row="{number}" data-was="{escape(row.way)}"'
        f' aria-label="{escape(name)}" aria-describedby="{told}">{options}</select></label>'
    )


def _options(ways: tuple[str, ...], now: str) -> str:
    return "".join(f"<option{' selected' if way == now else ''}>{escape(way)}</option>" for way in ways)


def _cell(one: Field, where: Where, around: Around, told: str) -> str:
    """A cell, known by where it stands: what is written there may be laid out anew before the next comes."""
    place, row, number = where
    cell, bad = one.rows[row].cells[number], where in around.refused or where in around.clashes
    waits = around.clashes.get(where)
    shown = waits.mine if waits is not None and waits.refused else cell.words  # as it was typed
    label = one.rows[row].label
    name = " ".join(word for word in (one.key, _number_of(one, cell.place), label, cell.label) if word)
    name += f", {cell.unit}" if cell.unit else ""
    shared = (
        f'data-cell="{escape(place)}" data-row="{row}" data-number="{number}" aria-label="{escape(name)}"'
        f' aria-describedby="{told}"{" data-refused aria-invalid=true" if bad else ""}'
    )
    seen = f"{cell.label} ({cell.unit})" if cell.unit else cell.label
    label = f'<span class="fp-small" aria-hidden="true">{escape(seen)}</span>' if cell.label else ""
    if cell.choices:
        return f'<label class="fp-field-cell">{label}{_select(one, cell, shown, shared)}</label>'
    was = f' data-was="{escape(cell.words)}"' if shown != cell.words else ""
    box = f'<input type="text" autocomplete="off" spellcheck="false" {shared}{was} value="{escape(shown)}">'
    if cell.unit and not cell.label:
        unit = f'<span class="fp-unit" aria-hidden="true">{escape(cell.unit)}</span>'
        box = f'<span class="fp-field-box">{box}{unit}</span>'
    return f'<label class="fp-field-cell">{label}{box}</label>'


def _number_of(one: Field, place: str) -> str:
    """Which one of a list it is, for those who do not see the rows."""
    rest = place.removeprefix(one.place).strip(".").split(".")
    return rest[0] if one.many and rest[0].isdecimal() else ""


def _select(one: Field, cell: Cell, shown: str, shared: str) -> str:
    words = list(cell.choices)
    words += [each for each in dict.fromkeys((cell.words, shown)) if each and each not in words]
    empty = "" if one.needed and cell.words else f'<option value="">{_left_out(one)}</option>'
    options = "".join(
        f'<option value="{escape(word)}"{" selected" if word == shown else ""}>{escape(word)}</option>'
        for word in words
    )
    return f'<select {shared} data-was="{escape(cell.words)}">{empty}{options}</select>'


def _left_out(one: Field) -> str:
    return f"left out: {escape(one.otherwise)}" if one.otherwise not in NO_OTHERWISE else "not said"


def _mark(one: Field, row: Row) -> str:
    """How far a figure can be trusted; nothing where there is none, or it is known to be unknown."""
    if not one.mark or one.unknown or one.copied or not any(cell.words for cell in row.cells):
        return ""
    options = "".join(
        f'<option value="{word}"{" selected" if word == one.mark else ""}>{words}</option>'
        for word, words in ((mark.word, MARKS[mark.word]) for mark in Mark)
    )
    return (
        f'<label class="fp-field-mark"><select data-mark="{escape(one.place)}" data-was="{one.mark}"'
        f' aria-label="{escape(one.key)}: how sure">{options}</select></label>'
    )


def _more(one: Field) -> str:
    if not one.many or one.copied:
        return ""
    what = ONE_OF_LIST.get(one.key, one.key.removesuffix("s"))
    return f'<div class="fp-field-row">{does("more", one.place, f"Add a {what}")}</div>'
