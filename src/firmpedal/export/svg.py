"""Drawings as SVG: marks of one ink on nothing, one type, y turned to point down as SVG wants it."""

from __future__ import annotations

from typing import TYPE_CHECKING
from xml.sax.saxutils import escape

from firmpedal.report.sheet import Dot, Label, Stroke

if TYPE_CHECKING:
    from firmpedal.report.sheet import Drawing, Mark

BLACK = "black"
TYPE = "DejaVu Sans Mono"
HALF_LETTER = 0.36  # of the size: from the middle of capital letters down to their foot
HEAD = 5.0


def svg(drawing: Drawing) -> str:
    """Write a drawing as one SVG picture for paper, a point to a point."""
    wide, tall = drawing.size
    head = f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:g}pt" height="{tall:g}pt"'
    return f'{head} viewBox="0 0 {wide:g} {tall:g}">{marks(drawing)}</svg>\n'


def marks(drawing: Drawing, ink: str = BLACK) -> str:
    """Write the marks of a drawing, in points from its upper left corner.

    Args:
        drawing: What is drawn.
        ink: What strokes are drawn with. Areas and letters take the `fill` of whatever the marks stand in,
            which is black where nothing is said.
    """
    return "".join(_mark(mark, drawing.size[1], ink) for mark in drawing.marks)


def _mark(mark: Mark, tall: float, ink: str) -> str:
    if isinstance(mark, Stroke):
        return _stroke(mark, tall, ink)
    if isinstance(mark, Dot):
        return f'<circle cx="{mark.at[0]:g}" cy="{tall - mark.at[1]:.2f}" r="{mark.radius:g}"/>'
    return _label(mark, tall)


def _stroke(mark: Stroke, tall: float, ink: str) -> str:
    points = " ".join(f"{x:g},{tall - y:.2f}" for x, y in mark.points)
    dashes = f' stroke-dasharray="{3 * mark.weight:g} {2 * mark.weight:g}"' if mark.dashed else ""
    line = (
        f'<polyline points="{points}" fill="none" stroke="{ink}" stroke-width="{mark.weight:g}"'
        f' stroke-linejoin="round"{dashes}/>'
    )
    return line + (_heads(mark, tall) if mark.arrows else "")


def _heads(mark: Stroke, tall: float) -> str:
    """Arrow heads at both ends of a stroke."""
    found = ""
    for (x, y), (x1, y1) in ((mark.points[0], mark.points[1]), (mark.points[-1], mark.points[-2])):
        length = ((x1 - x) ** 2 + (y1 - y) ** 2) ** 0.5 or 1.0
        u, v = HEAD * (x1 - x) / length, HEAD * (y1 - y) / length
        corners = ((x, y), (x + u - v / 3, y + v + u / 3), (x + u + v / 3, y + v - u / 3))
        found += f'<polygon points="{" ".join(f"{a:.2f},{tall - b:.2f}" for a, b in corners)}"/>'
    return found


def _label(mark: Label, tall: float) -> str:
    x, y = mark.at[0], tall - mark.at[1]
    foot = y + HALF_LETTER * mark.size
    turn = f' transform="rotate({-mark.angle:g} {x:g} {y:.2f})"' if mark.angle else ""
    bold = ' font-weight="bold"' if mark.bold else ""
    return (
        f'<text xml:space="preserve" x="{x:g}" y="{foot:.2f}"'
        f' font-family="{TYPE}, monospace" font-size="{mark.size:g}"{bold}'
        f' text-anchor="{mark.anchor}"{turn}>{escape(mark.text)}</text>'
    )
