"""Sheets as they stand on a page of the app: the one place where they become HTML."""

from __future__ import annotations

import re
from functools import lru_cache
from html import escape, unescape
from typing import TYPE_CHECKING

from firmpedal.export.html import parts_of, sheet_html
from firmpedal.export.html_words import quoted, said
from firmpedal.export.place_words import PLACES
from firmpedal.project.names import label_of
from firmpedal.report.looks import LOOK
from firmpedal.report.sheet import Figures
from firmpedal.web import addresses
from firmpedal.web.answers import answer
from firmpedal.web.elements import OPENING

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet
    from firmpedal.web.answers import System

    Sheets = Callable[[Evaluation], tuple[Sheet, ...]]

WHICH = "Which thread is it?"
FEW = 2  # so many sheets lie open, and need no list of what is on the page


@lru_cache(maxsize=64)
def sheets_html(make: Sheets, text: str, file: str, option: str | None, system: System | None) -> str:
    """Write what a text comes to as sheets, one below the other, with a list of them on top of many.

    Args:
        make: Which sheets, from an evaluation.
        text: The builder's text.
        file: The file's name.
        option: One of its options; none for the file as written.
        system: The units for figures; none for the file's own.

    Returns:
        HTML; empty where the text cannot be evaluated or there is no such sheet.
    """
    evaluation = answer(text, file, option, system).evaluation
    if evaluation is None:
        return ""
    return written(make(evaluation), file, option)


def written(sheets: tuple[Sheet, ...], file: str, option: str | None) -> str:
    """Write sheets of one option of a file as HTML.

    Of many, each is folded and the first one lies open; of few, each can be folded part by part, which
    a narrow screen does at first.
    """
    way, many = _to_lines(file, option), len(sheets) > FEW
    parts = _folded if many else _laid_open
    made = _looked_at("".join(parts(number, sheet) for number, sheet in enumerate(sheets, 1)), file, option)
    return (_contents(sheets) if many else _opening(sheets)) + way(made)


def _looked_at(made: str, file: str, option: str | None) -> str:
    """Where a sheet says that somebody has to look at a thread, the way to where it is found out."""
    to = escape(addresses.thread(file, option))
    return made.replace(said(LOOK), f'{said(LOOK)} <a class="fp-field-which" href="{to}">{WHICH}</a>')


def alone(sheet: Sheet) -> str:
    """Write a sheet that belongs to no file."""
    return _opening((sheet,)) + _laid_open(1, sheet)


def _laid_open(number: int, sheet: Sheet) -> str:
    return f'<section id="sheet-{number}">{sheet_html(sheet, parted=True)}</section>'


def _opening(sheets: tuple[Sheet, ...]) -> str:
    """What opens every part, where some part is folded on a narrow screen."""
    folded = any(
        heading is not None and not heading.first for sheet in sheets for heading, _ in parts_of(sheet.blocks)
    )
    return f'<div class="fp-opening fp-opening-parts">{OPENING}</div>' if folded else ""


def _folded(number: int, sheet: Sheet) -> str:
    """A sheet under its title, beside which its state and its first main figure stay when it is folded."""
    first = next((block.items[0] for block in sheet.blocks if isinstance(block, Figures)), None)
    short = [f"{first.label} {first.text}"] if sheet.state and first is not None else []
    short += [sheet.state] if sheet.state else []
    words = "".join(f'<span class="fp-sheet-short">{said(each)}</span>' for each in short)
    return (
        f'<details class="fp-sheet-fold" id="sheet-{number}" data-fold="{quoted(sheet.title)}"'
        f"{'' if number > 1 else ' open'}><summary><h2>{said(sheet.title)}</h2>{words}"
        f'<span class="fp-sheet-short fp-sheet-ticked"></span></summary>'
        f"{sheet_html(sheet, titled=False)}</details>"
    )


def _contents(sheets: tuple[Sheet, ...]) -> str:
    links = (f'<li><a href="#sheet-{n}">{escape(sheet.title)}</a></li>' for n, sheet in enumerate(sheets, 1))
    return f'<nav class="fp-contents" aria-label="On this page"><ul>{"".join(links)}</ul>{OPENING}</nav>'


def _to_lines(file: str, option: str | None) -> Callable[[str], str]:
    """Make each `file line 12, its place` a way to that line of the text, and to the field of that place.

    Words inside tags stay as they are.
    """
    name = "(?:<wbr/>)?".join(re.escape(escape(sign)) for sign in file)
    place = re.compile(
        rf"({name}(?:</span>)?) line (\d+)(?:, ((?:{'|'.join(PLACES)})(?:<wbr/>|[^<>();,])*))?(?![^<>]*>)"
    )

    def linked(found: re.Match[str]) -> str:
        to = escape(addresses.text(file, option, int(found[2])))
        line = f'{found[1]} <a href="{to}">line {found[2]}</a>'
        if found[3] is None:
            return line
        where = unescape(found[3].replace("<wbr/>", ""))
        return f'{line}, <a href="{escape(addresses.field(file, where, option))}">{said(label_of(where))}</a>'

    return lambda made: place.sub(linked, made)
