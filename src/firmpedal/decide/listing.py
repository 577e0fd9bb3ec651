"""Reading somebody's list: any separator, any usual titles, every cell with its place."""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum

SEPARATORS = (",", ";", "\t", "|")
COMMENTS = ("#", "//", "--")
LARGEST = 2_000_000  # characters; a parts list is a few pages
SAMPLE = 50  # rows to judge a separator by
# A comma that can only be the decimal one: as thousands it would have to be followed by three figures.
DECIMAL_COMMA = re.compile(r"[-+]?(?:0,\d+|\d+,(?:\d{1,2}|\d{4,}))")


class Meaning(StrEnum):
    """What a column holds."""

    QUANTITY = "quantity"
    PART = "part"
    WORDS = "description"
    MATERIAL = "material"
    LENGTH = "length"


TITLES: dict[Meaning, tuple[str, ...]] = {  # the surest first
    Meaning.QUANTITY: ("quantity", "qty", "qnty", "count", "menge", "anzahl", "stück", "stueck", "pcs",
                       "pieces", "number off", "no off", "how many", "amount", "ordered",
                       "ea", "each", "no", "nr"),
    Meaning.PART: ("designation", "part number", "part no", "partno", "part nr", "partnumber", "p/n", "pn",
                   "part", "parts", "bezeichnung", "teilenummer", "artikelnummer", "artikel", "teil", "item",
                   "article", "stock number", "number", "name", "what"),
    Meaning.WORDS: ("description", "beschreibung", "desc", "details", "text"),
    Meaning.MATERIAL: ("material", "werkstoff", "metal"),
    Meaning.LENGTH: ("length", "länge", "laenge", "length each", "long"),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Cell:
    """What stands in one cell, and where it starts; both count from 1."""

    text: str
    line: int
    column: int


Row = tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """One row of a list, by meaning; a cell that the row lacks is None."""

    line: int
    cells: tuple[tuple[Meaning, Cell], ...]
    others: tuple[Cell, ...] = ()

    def cell(self, meaning: Meaning) -> Cell | None:
        return next((cell for found, cell in self.cells if found is meaning and cell.text), None)

    @property
    def texts(self) -> tuple[Cell, ...]:
        """The cells that can name the part, the surest first."""
        named = (self.cell(Meaning.PART), self.cell(Meaning.WORDS), *self.others)
        return tuple(cell for cell in named if cell is not None and cell.text)


class ListError(Exception):
    """A list that cannot be used: where, why, and what to try."""

    def __init__(self, message: str, suggestion: str, line: int = 1, column: int = 1) -> None:
        super().__init__(message)
        self.message, self.suggestion, self.line, self.column = message, suggestion, line, column


def decoded(data: bytes) -> str:
    """Turn a file's bytes into text, whatever program wrote it.

    Raises:
        ListError: It is not text.
    """
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return data.decode("utf-16", errors="replace")
    if b"\0" in data:
        raise ListError("this is not a text", "save the list as CSV, not as a workbook")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace")


def entries(text: str) -> tuple[Entry, ...]:
    """Read the rows of a list by the meaning of their columns.

    Raises:
        ListError: There is nothing in it, or no column says what and how many.
    """
    if len(text) > LARGEST:
        raise ListError("this is too long for a parts list", "keep the rows that belong to the brakes")
    filled = [row for row in rows(text, separator(text)) if any(cell.text for cell in row)]
    kept = [row for row in filled if not _first(row).startswith(COMMENTS)]
    if not kept:
        raise ListError("there are no rows in this list", "write one part to a row, as in `4, AN818-4D`")
    at, meanings = _header(kept)
    if at is None:
        return tuple(_untitled(row) for row in kept)
    return tuple(_entry(row, meanings) for row in kept[at + 1 :])


def _first(row: Row) -> str:
    return next(cell.text for cell in row if cell.text)


def _entry(row: Row, meanings: dict[int, Meaning]) -> Entry:
    named = tuple((meanings[n], cell) for n, cell in enumerate(row) if n in meanings)
    return Entry(row[0].line, named, tuple(cell for n, cell in enumerate(row) if n not in meanings))


QUANTITY = re.compile(r"\d{1,6}(?:[.,]\d+)?\s*(?:x|ea|each|off|pcs?|pieces?|st(?:k|ück)?)?\.?", re.IGNORECASE)


OF_TUBE = re.compile(
    r"""\d{1,4}(?:[.,]\d+)?\s*(?:ft|feet|foot|in|inch|inches|m|mm|cm|'|")\.?""", re.IGNORECASE
)


def _untitled(row: Row) -> Entry:
    """Without titles the first plain count is the quantity, else a length of tube; the rest is text."""
    count = next((cell for kind in (QUANTITY, OF_TUBE) for cell in row if kind.fullmatch(cell.text)), None)
    others = tuple(cell for cell in row if cell is not count)
    return Entry(row[0].line, ((Meaning.QUANTITY, count),) if count else (), others)


def _header(kept: list[Row]) -> tuple[int | None, dict[int, Meaning]]:
    """Find the row of titles; above it there may be a heading or an address.

    Raises:
        ListError: There are titles, and none of them says how many or what.
    """
    for number, row in enumerate(kept[:SAMPLE]):
        meanings = _meanings(row)
        found = set(meanings.values())
        if Meaning.QUANTITY in found and found & {Meaning.PART, Meaning.WORDS}:
            return number, meanings
    for row in kept[:1]:
        found = set(_meanings(row).values())
        if found & {Meaning.PART, Meaning.WORDS} and not any(QUANTITY.fullmatch(cell.text) for cell in row):
            where = row[0]
            raise ListError(
                "no column says how many", "give one column the title `qty`", where.line, where.column
            )
        if Meaning.QUANTITY in found:
            where = row[0]
            raise ListError(
                "no column says which part", "give one column the title `part`", where.line, where.column
            )
    if not any(QUANTITY.fullmatch(cell.text) for row in kept for cell in row):
        where = kept[0][0]
        raise ListError(
            "no column says how many", "give the columns titles, as in `qty, part`", where.line, where.column
        )
    return None, {}


def _meanings(row: Row) -> dict[int, Meaning]:
    """Take for each meaning the column with its surest title."""
    folded = {n: _title(cell.text) for n, cell in enumerate(row)}
    found: dict[int, Meaning] = {}
    for meaning, titles in TITLES.items():
        surest = next((title for title in titles if title in folded.values()), None)
        column = next((n for n, title in folded.items() if title == surest and n not in found), None)
        if surest is not None and column is not None:
            found[column] = meaning
    return found


def _title(text: str) -> str:
    words = re.sub(r"[._:#*()\-]+", " ", text.casefold()).split()
    return " ".join(words)


def separator(text: str) -> str:
    """The separator that cuts most rows into the same number of cells, two or more."""

    def regular(sign: str) -> tuple[int, int]:
        counts = [sum(1 for cell in row if cell.text) for row in rows(text, sign)[:SAMPLE]]
        several = [count for count in counts if count > 1]
        return len(several), -len(set(several))

    return max(SEPARATORS, key=regular)


def rows(text: str, sign: str) -> list[Row]:
    """Cut a text into rows of cells; quotes hold separators and line ends."""
    found: list[Row] = []
    cells: list[Cell] = []
    line, column, at = 1, 1, 0
    while at < len(text):
        content, end = _content(text, at, sign)
        blanks = len(content) - len(content.lstrip(" "))
        cells.append(Cell(" ".join(content.split()), line, column + blanks))
        inside = text[at:end].count("\n")
        line += inside
        column = end - text.rfind("\n", at, end) if inside else column + end - at
        ended = end >= len(text) or text[end] in "\r\n"
        if ended:
            found.append(tuple(cells))
            cells = []
            end += 2 if text[end : end + 2] == "\r\n" else 1
            line, column = line + 1, 1
        else:
            end, column = end + 1, column + 1
        at = end
    if cells:
        found.append(tuple(cells))
    return found


_QUOTED = re.compile(r'[ ]*"((?:[^"]|"")*)"[ ]*(?=[,;\t|\r\n]|$)')


def _content(text: str, at: int, sign: str) -> tuple[str, int]:
    """One cell's content and where it ends."""
    quoted = _QUOTED.match(text, at)
    if quoted and (quoted.end() >= len(text) or text[quoted.end()] in sign + "\r\n"):
        return quoted[1].replace('""', '"'), quoted.end()
    ends = [end for end in (text.find(mark, at) for mark in (sign, "\r", "\n")) if end >= 0]
    end = min(ends, default=len(text))
    return text[at:end], end
