"""What is done in a form, as another text; whatever could then not be read is refused in its own words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.circuit import ClampPlan
from firmpedal.project.edit import EditError
from firmpedal.project.edit_keys import with_item, with_value, without_key
from firmpedal.project.field_cells import chain_key, other_way
from firmpedal.project.line_kinds import settled
from firmpedal.project.locate import walked
from firmpedal.project.names import known_word
from firmpedal.project.plain import quoted_if_needed
from firmpedal.project.read import read_text
from firmpedal.project.reading_again import read_again
from firmpedal.project.tree import UNKNOWN

if TYPE_CHECKING:
    from firmpedal.project.fields import Cell, Field
    from firmpedal.project.read import Reading

MEASURED = "measured"


def put_in(reading: Reading, field: Field, cell: Cell, words: str) -> str:
    """Put words in a cell of a field; nothing at all says that it is not known, or leaves the key out.

    What still has to be found out and is emptied says that it is unknown: so its line is not forgotten. A
    key goes where it need not be known, or where something stands in for it: the usual figure, that of what
    this is a copy of, or of the aircraft as written. Of two ways along one axis the one that is written
    takes the place of the other, if that is unknown. With the kind of a line goes what no other can have.

    Raises:
        EditError: What comes out could not be read, or both ways would be given; nothing is changed.
    """
    text, option = reading.text, reading.option
    piece = cell.written(known_word(words.strip(), cell.choices) or words)
    if not piece and cell.words == UNKNOWN and _only(field, cell) and (field.missed or field.needed):
        return text
    taken_away = not (cell.words and _goes_by_tape(field, cell))  # a way left out would be nothing at all
    if not piece and cell.own_key and taken_away and not _only(field, cell):
        return readable(reading, without_key(text, cell.place, option) if cell.words else text)
    if not piece and _only(field, cell):
        after = _emptied(reading, field, cell)
    elif not piece:
        after = with_value(text, cell.place, UNKNOWN, option)
    else:
        after = with_value(_without_other_way(reading, field, cell), cell.place, piece, option)
        after = settled(text, after, cell.place)
    return readable(reading, after)


def _emptied(reading: Reading, field: Field, cell: Cell) -> str:
    """The text without the one thing that stood in a field."""
    text, option = reading.text, reading.option
    if not field.written or field.copied:
        return text
    if not field.missed or (cell.choices and not field.needed):  # among choices there is one for not known
        return without_key(text, field.place, option)
    try:
        without = without_key(text, field.place, option)
    except EditError:  # not by itself; its value alone can be
        without = ""
    tree = read_text(without, reading.file, option).tree if without else None
    if tree is not None and walked(tree, field.place) is not None:
        return without
    return with_value(text, cell.place, UNKNOWN, option)


def _goes_by_tape(field: Field, cell: Cell) -> bool:
    """Whether a cell is one of the ways from another place."""
    return any(row.start and cell in row.cells for row in field.rows)


def _without_other_way(reading: Reading, field: Field, cell: Cell) -> str:
    """The text without the way opposite to that of a cell of a chain, which is the same one backwards."""
    row = next((row for row in field.rows if row.start and cell in row.cells), None)
    other = other_way(row, cell) if row is not None else None
    if row is None or other is None or not other.words:
        return reading.text
    if other.words != UNKNOWN:
        message = f"{other.label} and {cell.label} are the same direction: give one"
        raise EditError(message, f"empty {other.label} first, or write the figure there")
    return without_key(reading.text, chain_key(row, other), reading.option)


def _only(field: Field, cell: Cell) -> bool:
    """Whether a cell is all that there is of its field."""
    return [each for row in field.rows for each in row.cells] == [cell]


def with_mark(reading: Reading, field: Field, mark: str) -> str:
    """Say how far a figure can be trusted, in the way of the file; a reason that is given stays.

    Raises:
        EditError: It cannot be written there.
    """
    text, option, place = reading.text, reading.option, field.place
    words = _whole(field)
    if f"{place}.mark" not in reading.spans:
        after = (
            text if mark == MEASURED else with_value(text, place, f"{{value: {words}, mark: {mark}}}", option)
        )
    elif mark == MEASURED and f"{place}.because" not in reading.spans:
        after = with_value(text, place, words, option)
    else:
        after = with_value(text, f"{place}.mark", mark, option)
    return readable(reading, after)


def _whole(field: Field) -> str:
    """A value in one piece: a figure, or a point from its three cells."""
    cells, start = field.rows[0].cells, field.rows[0].start
    words = [f"{{value: {cell.words}, mark: {cell.mark}}}" if cell.mark else cell.words for cell in cells]
    if start:
        pieces = [f"{cell.label}: {each}" for cell, each in zip(cells, words, strict=True) if cell.words]
        return "{" + ", ".join([f"from: {quoted_if_needed(start)}", *pieces]) + "}"
    return words[0] if len(words) == 1 else f"[{', '.join(words)}]"


def with_row(reading: Reading, field: Field) -> str:
    """Add one to a list, its measurement still to take.

    Raises:
        EditError: The list cannot be changed by itself.
    """
    text, option = reading.text, reading.option
    listed = [row for row in field.rows if row.place != field.place]
    if not listed or field.copied:
        old = [row.cells[0].words for row in listed]
        return readable(reading, with_value(text, field.place, f"[{', '.join([*old, UNKNOWN])}]", option))
    return readable(reading, with_item(text, field.place, UNKNOWN, option))


def without_row(reading: Reading, field: Field, place: str) -> str:
    """Take one out of a list; without any clamp left, clamps are proposed again.

    Raises:
        EditError: The list cannot be changed by itself.
    """
    if len(field.rows) == 1 and field.choices:
        return readable(reading, with_value(reading.text, field.place, ClampPlan.PROPOSE, reading.option))
    return readable(reading, without_key(reading.text, place, reading.option))


def without_thing(reading: Reading, place: str) -> str:
    """Take a thing out of the file, from the mirror list too.

    Raises:
        EditError: Something else in the file, as written or in one of its options, still needs it.
    """
    after = without_key(reading.text, place, reading.option)
    for option in (None, *reading.options):
        read_again(reading.text, after, option)
    return after


def readable(before: Reading, text: str) -> str:
    """A text that has no problems which the one before it had not.

    Raises:
        EditError: It has; the first of them is said.
    """
    read_again(before.text, text, before.option)
    return text
