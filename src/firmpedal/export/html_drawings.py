"""Drawings on screens: in the colour of the text, with the blank paper at their sides taken off."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.export.html_words import quoted, said, usable
from firmpedal.export.svg import marks
from firmpedal.report.marks import LETTERS
from firmpedal.report.placing import LETTER_WIDTH
from firmpedal.report.sheet import Dot, Label, Stroke

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.report.sheet import Drawing, Mark

INK = "currentColor"
AROUND = 8.0  # points left blank beside the outermost marks: room for weights and for a wider type
SIDES = {"start": (0.0, 1.0), "middle": (0.5, 0.5), "end": (1.0, 0.0)}  # of a label's width, from its point


def drawing(block: Drawing, over: str = "") -> str:
    """A drawing whose smallest letters are as large as the text; where it is too wide its box scrolls.

    Args:
        block: What is drawn.
        over: What lies over it to be pressed, as SVG in points from its upper left corner.
    """
    left, right = _across(block)
    tall = block.size[1]
    words = "; ".join(" ".join(mark.text.split()) for mark in block.marks if isinstance(mark, Label))
    named = quoted(". ".join(part for part in ("Drawing", block.caption, words) if part))
    picture = (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="{"group" if over else "img"}" aria-label="{named}"'
        f' fill="{INK}" overflow="visible"'
        f' width="{(right - left) / LETTERS:.3f}em" height="{tall / LETTERS:.3f}em"'
        f' viewBox="{left:g} 0 {right - left:g} {tall:g}">{usable(marks(block, INK))}{over}</svg>'
    )
    caption = f"<figcaption>{said(block.caption)}</figcaption>" if block.caption else ""
    return (
        '<figure class="fp-drawing"><div class="fp-drawing-box" role="group" tabindex="0"'
        f' aria-label="Drawing, scrolls where it is wider than the screen">{picture}</div>{caption}</figure>'
    )


def _across(block: Drawing) -> tuple[float, float]:
    """From where to where a drawing has marks, within its own width."""
    found = [x for mark in block.marks for x in _sides(mark)]
    if not found:
        return 0.0, block.size[0]
    return round(max(0.0, min(found) - AROUND), 1), round(min(block.size[0], max(found) + AROUND), 1)


def _sides(mark: Mark) -> Iterator[float]:
    if isinstance(mark, Stroke):
        yield from (x for x, _ in mark.points)
    elif isinstance(mark, Dot):
        yield from (mark.at[0] - mark.radius, mark.at[0] + mark.radius)
    else:
        wide = LETTER_WIDTH * mark.size * len(mark.text)
        before, after = (wide, wide) if mark.angle else (wide * share for share in SIDES[mark.anchor])
        yield from (mark.at[0] - before, mark.at[0] + after)
