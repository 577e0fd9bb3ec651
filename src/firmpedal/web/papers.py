"""Whatever can be taken away from the app: papers to print, lists, the page for the hangar, files for others.

This module loads slowly, for it can print: it is loaded when the first of them is wanted.
"""

from __future__ import annotations

import gzip
from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING

from firmpedal.export import fullsize
from firmpedal.export.archive import archive
from firmpedal.export.formats import FORMATS
from firmpedal.export.hangar import page as hangar_page
from firmpedal.export.packet import page_count
from firmpedal.export.text import parts_text
from firmpedal.export.typst import pdf, pictures
from firmpedal.model.display import count_of
from firmpedal.pipeline import usable_options
from firmpedal.report.buying_data import order_csv
from firmpedal.report.cards import bench_sheets
from firmpedal.report.cover import verdict_line
from firmpedal.report.fullsize import fullsize_pages
from firmpedal.report.hangar import hangar_sheets
from firmpedal.report.measuring import form_sheets
from firmpedal.report.packet import footer_of, packet_sheets
from firmpedal.report.paper import PAPERS

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.pipeline import Evaluation

    Tell = Callable[[str], None]
    Maker = Callable[[Evaluation, Tell], "Made | None"]

SMALL = 5  # how hard pictures are pressed together: beyond it takes long and gains little


@dataclass(frozen=True, slots=True)
class Made:
    """What was made: its bytes, pictures of its pages as compressed SVG, and what there is to say of it."""

    data: bytes
    said: str = ""
    pictures: tuple[bytes, ...] = ()
    left_out: tuple[str, ...] = ()


def form(evaluation: Evaluation, _tell: Tell) -> Made:
    """What is still to be measured."""
    return Made(pdf(form_sheets(evaluation), footer_of(evaluation)))


def packet(evaluation: Evaluation, tell: Tell) -> Made:
    """All of it, with pictures of the pages."""
    tell("Working out the options ...")
    options = usable_options(evaluation.reading)
    tell("Writing the sheets ...")
    sheets, footer = packet_sheets(evaluation, options), footer_of(evaluation)
    tell("Setting the pages ...")
    made = pdf(sheets, footer)
    count = page_count(made)
    tell(f"Drawing {count} pages to look at ...")
    seen = tuple(gzip.compress(each, SMALL, mtime=0) for each in pictures(sheets, footer))
    return Made(made, f"{count} pages", seen)


def cards(evaluation: Evaluation, _tell: Tell) -> Made | None:
    """A card for each line, with torques and how to flare; nothing where there is no line."""
    sheets = bench_sheets(evaluation) if evaluation.laid else ()
    return Made(pdf(sheets, footer_of(evaluation))) if sheets else None


def full_size(paper: str, evaluation: Evaluation, _tell: Tell) -> Made | None:
    """Templates at full size; nothing where there is nothing to draw."""
    pages = fullsize_pages(evaluation, PAPERS[paper])
    return Made(fullsize.pdf(pages, footer_of(evaluation), PAPERS[paper])) if pages else None


def parts_csv(evaluation: Evaluation, _tell: Tell) -> Made:
    """What to order, for a spreadsheet."""
    return Made(order_csv(evaluation).encode())


def parts_txt(evaluation: Evaluation, _tell: Tell) -> Made:
    """What to order, for a letter or a forum."""
    return Made(parts_text(evaluation).encode())


def hangar(evaluation: Evaluation, _tell: Tell) -> Made:
    """One page to take along, which asks nobody for anything."""
    sheets = hangar_sheets(evaluation, usable_options(evaluation.reading))
    return Made(hangar_page(sheets, footer_of(evaluation), verdict_line(evaluation)).encode())


def packed(to: str, evaluation: Evaluation, tell: Tell) -> Made | None:
    """The lines in a format for other programs."""
    tell("Writing the files ...")
    found = archive(evaluation, to)
    if found is None:
        return None
    count = len(found.names)
    return Made(found.data, count_of(count, "file"), left_out=found.left_out)


MAKERS: dict[str, Maker] = {
    "form.pdf": form,
    "packet.pdf": packet,
    "cards.pdf": cards,
    **{f"fullsize-{name}.pdf": partial(full_size, name) for name in PAPERS},
    "parts.csv": parts_csv,
    "parts.txt": parts_txt,
    "hangar.html": hangar,
    **{f"{name}.zip": partial(packed, name) for name in FORMATS},
}
