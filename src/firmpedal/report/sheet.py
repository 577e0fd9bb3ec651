"""What a sheet is made of, whoever prints it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

BOX = "\u2610"  # a cell to tick with a pen


class Tone(StrEnum):
    """How a paragraph is meant, so that every printer can set it apart in its own way."""

    PLAIN = "plain"
    VERDICT = "verdict"  # the one line on the whole aircraft
    LEAD = "lead"  # the answer, first and large
    WARNING = "WARNING"
    CAUTION = "CAUTION"
    NOTE = "NOTE"
    SMALL = "small"


@dataclass(frozen=True, slots=True)
class Heading:
    """What the blocks after it are about, as far as the next one.

    `first` says that they are wanted before the rest: where a screen has little room, they lie open and
    what stands under other headings is folded.
    """

    text: str
    first: bool = False


@dataclass(frozen=True, slots=True)
class Paragraph:
    text: str
    tone: Tone = Tone.PLAIN


@dataclass(frozen=True, slots=True)
class Bullets:
    items: tuple[str, ...]
    boxes: bool = False  # boxes to tick with a pen


@dataclass(frozen=True, slots=True)
class Table:
    """Rows of text under column titles; `right` names the columns whose figures align right.

    Where a cell holds several lines, the first is what counts and the others explain it.
    """

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    right: frozenset[int] = frozenset()
    title: str = ""
    widths: tuple[float, ...] = ()  # shares of the page's width; empty: as the text needs
    large: frozenset[int] = frozenset()  # columns to be read from a step away
    pen: frozenset[int] = frozenset()  # columns whose empty cells are there to be written in
    about: int | None = None  # the column that names what a row is about; none: the first that holds words


@dataclass(frozen=True, slots=True)
class Figure:
    """One main figure: what it is, the figure, and a word on it."""

    label: str
    text: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Figures:
    """The figures that count, side by side and large."""

    items: tuple[Figure, ...]


@dataclass(frozen=True, slots=True)
class Facts:
    """Short terms, each with what there is to say about it."""

    rows: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Fields:
    """Lines to write on with a pen, each with what belongs there."""

    labels: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Blank:
    """One thing to find out: what, how, and a box for each figure with what belongs into it."""

    what: str
    how: str
    boxes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Blanks:
    """Rows to fill in with a pen, under the name of what they belong to."""

    title: str
    rows: tuple[Blank, ...]


@dataclass(frozen=True, slots=True)
class Contents:
    """The titles of all sheets with their pages."""


@dataclass(frozen=True, slots=True)
class Group:
    """Blocks that stay together on one page."""

    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Sum:
    """One calculation as printed: equation, figures put in, result, limit, source."""

    label: str
    equation: str
    figures: str
    result: str
    where: tuple[str, ...] = ()
    source: str = ""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line in a drawing, in the drawing's own units; `weight` in points."""

    points: tuple[tuple[float, float], ...]
    weight: float = 1.0
    dashed: bool = False
    arrows: bool = False  # arrow heads at both ends: a dimension


@dataclass(frozen=True, slots=True)
class Dot:
    at: tuple[float, float]
    radius: float


@dataclass(frozen=True, slots=True)
class Label:
    """Text in a drawing; `anchor` says which part of the text stands at the point."""

    text: str
    at: tuple[float, float]
    size: float = 9.0
    anchor: str = "middle"
    angle: float = 0.0
    bold: bool = False


Mark = Stroke | Dot | Label


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing of marks in points, y up, from (0, 0) to `size`."""

    size: tuple[float, float]
    marks: tuple[Mark, ...]
    caption: str = ""


Block = (
    Heading
    | Paragraph
    | Bullets
    | Table
    | Figures
    | Facts
    | Fields
    | Blanks
    | Contents
    | Sum
    | Drawing
    | Group
)


@dataclass(frozen=True, slots=True)
class Sheet:
    """A titled page or screenful; `new_page` starts it on a page of its own.

    `state` says in a few words how the thing that it is about stands; a screen shows it while the sheet is
    folded.
    """

    title: str
    blocks: tuple[Block, ...]
    new_page: bool = True
    subtitle: str = ""
    state: str = ""
