"""The circuit as a picture in which everything can be chosen, by mouse and by keys."""

from __future__ import annotations

from functools import lru_cache
from html import escape
from typing import TYPE_CHECKING

from firmpedal.export.html_drawings import drawing
from firmpedal.report.schematic.picture import circuit_picture
from firmpedal.web.answers import answer

if TYPE_CHECKING:
    from firmpedal.report.placing import Box
    from firmpedal.report.schematic.areas import Area
    from firmpedal.web.answers import System

AROUND = 3.0  # points round a box: the finger is not as fine as the pen
BROAD = 18.0  # points: as broad is a line to be hit


@lru_cache(maxsize=32)
def circuit_html(text: str, file: str, option: str | None, system: System | None) -> str:
    """Draw the circuit of a text; empty where it cannot be worked out, or has nothing to be drawn."""
    evaluation = answer(text, file, option, system).evaluation
    found = circuit_picture(evaluation) if evaluation is not None else None
    if found is None:
        return ""
    block, areas = found
    tall = block.size[1]
    lines = (_pressed(area, tall) for area in areas if area.ways)  # under the symbols, where both are
    return drawing(block, "".join([*lines, *(_pressed(area, tall) for area in areas if not area.ways)]))


def _pressed(area: Area, tall: float) -> str:
    name = escape(f"{area.place.partition('.')[2]}, {area.what}")
    ways = (
        f'<polyline fill="none" stroke-width="{BROAD:g}" points="'
        + " ".join(f"{x:g},{tall - y:.2f}" for x, y in way) + '"/>'
        for way in area.ways
    )  # fmt: skip
    boxes = "".join(_box(box, tall) for box in area.boxes)
    return (
        f'<g class="fp-area" data-at="{escape(area.place)}" role="button" tabindex="0" aria-pressed="false"'
        f' aria-label="{name}"><title>{name}</title>{"".join(ways)}{boxes}</g>'
    )


def _box(box: Box, tall: float) -> str:
    left, top = box.left - AROUND, tall - box.high - AROUND
    wide, high = box.right - box.left + 2 * AROUND, box.high - box.low + 2 * AROUND
    return f'<rect x="{left:.2f}" y="{top:.2f}" width="{wide:.2f}" height="{high:.2f}" rx="3"/>'
