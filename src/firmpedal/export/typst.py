"""Sheets set in type as a PDF. The same sheets always give the same bytes: no date, no system fonts."""

from __future__ import annotations

import json
from importlib import resources
from typing import TYPE_CHECKING, Any, Literal

import typst

from firmpedal.export.html_words import marked
from firmpedal.export.place_words import named
from firmpedal.export.plain import plain
from firmpedal.export.svg import svg
from firmpedal.report.sheet import Drawing, Group, Table
from firmpedal.units import held

if TYPE_CHECKING:
    from firmpedal.report.packet import Footer
    from firmpedal.report.sheet import Block, Sheet

TEMPLATE = "template.typ"


def pdf(sheets: tuple[Sheet, ...], footer: Footer) -> bytes:
    """Set sheets in type."""
    (made,) = _set(sheets, footer, "pdf")
    return made


def pictures(sheets: tuple[Sheet, ...], footer: Footer) -> tuple[bytes, ...]:
    """The same pages as `pdf` gives, each as an SVG picture by itself."""
    return _set(sheets, footer, "svg")


def _set(sheets: tuple[Sheet, ...], footer: Footer, form: Literal["pdf", "svg"]) -> tuple[bytes, ...]:
    data = {"title": footer.aircraft, "footer": footer.words, "sheets": [_sheet(sheet) for sheet in sheets]}
    template = (resources.files("firmpedal.export") / TEMPLATE).read_bytes()
    made = typst.compile(
        template,
        format=form,
        sys_inputs={"packet": json.dumps(_marked(data), ensure_ascii=False)},
        ignore_system_fonts=True,
    )
    return tuple(map(bytes, made)) if isinstance(made, list) else (bytes(made),)


def _marked(data: Any) -> Any:
    """The same with words of the file in quotation marks, and places by their names."""
    if isinstance(data, dict):
        return {key: _marked(inner) for key, inner in data.items()}
    if isinstance(data, list | tuple):
        return [_marked(inner) for inner in data]
    return named(marked(data)) if isinstance(data, str) else data


def _sheet(sheet: Sheet) -> dict[str, Any]:
    return {**plain(sheet), "blocks": [_block(block) for block in sheet.blocks]}


def _block(block: Block) -> dict[str, Any]:
    if isinstance(block, Drawing):
        return {
            "kind": "drawing",
            "svg": svg(block),
            "width": block.size[0],
            "height": block.size[1],
            "caption": block.caption,
        }
    if isinstance(block, Group):
        return {"kind": "group", "blocks": [_block(inner) for inner in block.blocks]}
    found: dict[str, Any] = plain(block)
    if isinstance(block, Table):
        found["rows"] = [[held(cell) for cell in row] for row in block.rows]
    return found
