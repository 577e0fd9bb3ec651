"""Pages at full size: marking strips, bend templates with clock faces, and holes in panels."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.report.fullsize_bends import bend_figures
from firmpedal.report.fullsize_strip import MARKING_WORDS, strip_of, strip_words
from firmpedal.report.line_holes import line_hole_marks
from firmpedal.report.marks import MILLIMETRE, bounds, moved
from firmpedal.report.panel_holes import hole_marks, panel_holes
from firmpedal.report.paper import proof
from firmpedal.report.remarks import wanted_for
from firmpedal.report.sheet import Drawing, Mark
from firmpedal.report.strip import pieces
from firmpedal.report.tiling import FLAP, inked, piece, tiles, words_inside

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.fullsize_bends import BendFigure
    from firmpedal.report.paper import Paper

GAP = 2.5 * MILLIMETRE  # between what stands above another on a page
BETWEEN = 8 * MILLIMETRE  # between a template and its clock face
BEND_WORDS = (
    "Lay the bent tube on its bend: it should lie between the lines along both legs. Thin lines across: "
    "where the bend begins and ends. Heavy line with a dot: your mark. Clock face: cut out its frame and the "
    "small circle, slit it along the thin dashed line, and slip it on the tube, print towards the end that "
    "it names. The leg before the bend that is made goes at 12; the next bend goes where the hand points."
)
PIECES_WORDS = "A template in pieces is put together at J1 and so on, cross on cross."
HOLE_WORDS = (
    "First hold the fitting itself to the circle: its thread must go in without force, and the nut must "
    "cover the edge. Then lay the page on the panel, cross on the middle of the hole, and punch through. "
    "Deburr the hole. Where a line passes without a fitting, the hole goes by the grommet in your hand: hold "
    "it to the circle."
)


@dataclass(frozen=True, slots=True)
class FullsizePage:
    """One page: its title, what to do with it, and a drawing that covers the whole sheet of paper."""

    title: str
    words: str
    drawing: Drawing


@dataclass(frozen=True, slots=True)
class _Block:
    """Marks that stay together on a page, and what they are called in its title."""

    marks: tuple[Mark, ...]
    name: str = ""
    cut: bool = False  # one piece of several


def fullsize_pages(
    evaluation: Evaluation, paper: Paper, line_name: str | None = None
) -> tuple[FullsizePage, ...]:
    """All pages, or those of one line.

    Args:
        evaluation: What is drawn.
        paper: The paper, on its side.
        line_name: A bent tube; without it all of them, and the holes.
    """
    found: list[FullsizePage] = []
    for line in drawable(evaluation):
        if line_name in (None, line.name):
            found += _strip_pages(evaluation, line, paper)
            found += _bend_pages(evaluation, line, paper)
    return (*found, *(_hole_pages(evaluation, paper) if line_name is None else ()))


def drawable(evaluation: Evaluation) -> tuple[LaidLine, ...]:
    """The tubes whose shape is known."""
    return tuple(line for line in evaluation.laid if line.work is not None)


def not_drawn(evaluation: Evaluation) -> tuple[str, ...]:
    """The tubes that cannot be drawn, each with the reason."""
    found = []
    for line in evaluation.laid:
        if line.tube is None or line.work is not None:
            continue
        wanted = "; ".join(wanted_for(line.tube.developed_length))
        why = line.tube.impossible.words if line.tube.impossible else f"measure {wanted}"
        found.append(f"{line.name}: {why}")
    return tuple(found)


def _strip_pages(evaluation: Evaluation, line: LaidLine, paper: Paper) -> Iterator[FullsizePage]:
    strip = strip_of(evaluation, line)
    wide = paper.room.right - paper.room.left
    blocks = [_Block(marks, str(number)) for number, marks in enumerate(pieces(strip, wide), 1)]
    words = f"{strip_words(evaluation, line, len(blocks))} {MARKING_WORDS}"
    for page in _filled(blocks, paper):
        first, last = page[0].name, page[-1].name
        part = f"pieces {first} to {last}" if first != last else f"piece {first}"
        whole = len(page) == len(blocks)
        title = f"{line.name}: marking strip{'' if whole else f', {part} of {len(blocks)}'}"
        yield _page(title, words, _stacked(page, paper), paper)


def _bend_pages(evaluation: Evaluation, line: LaidLine, paper: Paper) -> Iterator[FullsizePage]:
    blocks = [block for figure in bend_figures(evaluation, line) for block in _blocks(figure, paper)]
    for page in _filled(blocks, paper):
        names = dict.fromkeys(block.name for block in page)
        title = f"{line.name}: bend{'s' if len(names) > 1 else ''} {', '.join(names)}"
        words = f"{PIECES_WORDS} {BEND_WORDS}" if any(block.cut for block in page) else BEND_WORDS
        yield _page(title, words, _stacked(page, paper), paper)


def _blocks(figure: BendFigure, paper: Paper) -> list[_Block]:
    """Template and clock face side by side; a template that is too large by itself, in pieces if need be."""
    box, room = bounds(figure.template), paper.room
    if figure.face is None:
        return _fitted(figure, paper)
    face = bounds(figure.face)
    wide = box.right - box.left + BETWEEN + face.right - face.left
    if wide > room.right - room.left or box.high - box.low > room.high - room.low:
        return [*_fitted(figure, paper), _Block(figure.face, figure.name)]
    beside = moved(figure.face, (box.left + room.right - room.left - face.right, box.high - face.high))
    return [_Block((*figure.template, *beside), figure.name)]


def _fitted(figure: BendFigure, paper: Paper) -> list[_Block]:
    """A template as it is where it fits the page, else cut into pieces."""
    box, room = bounds(figure.template), paper.room
    size = (room.right - room.left, room.high - room.low)
    if box.right - box.left <= size[0] and box.high - box.low <= size[1]:
        return [_Block(figure.template, figure.name)]
    cut = inked(tiles(box.grown(MILLIMETRE), size, FLAP), figure.template)
    placed = words_inside(figure.template, cut)
    return [_Block(piece(placed, tile), figure.name, cut=True) for tile in cut]


def _hole_pages(evaluation: Evaluation, paper: Paper) -> Iterator[FullsizePage]:
    half = (paper.room.right - paper.room.left) / 2
    drawn = [hole_marks(evaluation, hole) for hole in panel_holes(evaluation)]
    drawn += line_hole_marks(evaluation)
    pairs = (drawn[n : n + 2] for n in range(0, len(drawn), 2))
    rows = [
        _Block(tuple(mark for n, marks in enumerate(pair) for mark in moved(marks, (n * half, 0.0))))
        for pair in pairs
    ]
    for page in _filled(rows, paper, 2 * GAP):
        yield _page("Holes in panels", HOLE_WORDS, _stacked(page, paper, 2 * GAP), paper)


def _filled(blocks: list[_Block], paper: Paper, gap: float = GAP) -> Iterator[list[_Block]]:
    """Blocks page by page, as many as fit above each other."""
    page: list[_Block] = []
    tall = 0.0
    for block in blocks:
        box = bounds(block.marks)
        need = box.high - box.low
        if page and tall + gap + need > paper.room.high - paper.room.low:
            yield page
            page, tall = [], 0.0
        tall += need + (gap if page else 0.0)
        page.append(block)
    if page:
        yield page


def _stacked(blocks: Iterable[_Block], paper: Paper, gap: float = GAP) -> tuple[Mark, ...]:
    """Blocks above each other from the top of the page's room, all at its left edge."""
    found: list[Mark] = []
    top = paper.room.high
    for block in blocks:
        box = bounds(block.marks)
        found += moved(block.marks, (paper.room.left - box.left, top - box.high))
        top -= box.high - box.low + gap
    return tuple(found)


def _page(title: str, words: str, marks: tuple[Mark, ...], paper: Paper) -> FullsizePage:
    return FullsizePage(title, words, Drawing(paper.size, (*proof(paper), *marks)))
