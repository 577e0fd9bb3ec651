"""The papers that can be printed from the app, each as a PDF."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.export import fullsize
from firmpedal.export.typst import pdf
from firmpedal.pipeline import usable_options
from firmpedal.report.fullsize import fullsize_pages
from firmpedal.report.measuring import form_sheets
from firmpedal.report.packet import footer_of, packet_sheets
from firmpedal.report.paper import PAPERS

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.pipeline import Evaluation


def form(evaluation: Evaluation) -> bytes:
    """What is still to be measured."""
    return pdf(form_sheets(evaluation), footer_of(evaluation))


def packet(evaluation: Evaluation) -> bytes:
    """All of it."""
    return pdf(packet_sheets(evaluation, usable_options(evaluation.reading)), footer_of(evaluation))


def _full_size(paper: str) -> Callable[[Evaluation], bytes]:
    def made(evaluation: Evaluation) -> bytes:
        """Templates at full size; nothing where there is nothing to draw."""
        pages = fullsize_pages(evaluation, PAPERS[paper])
        return fullsize.pdf(pages, footer_of(evaluation), PAPERS[paper]) if pages else b""

    return made


MADE: dict[str, Callable[[Evaluation], bytes]] = {
    "form.pdf": form,
    "packet.pdf": packet,
    **{f"fullsize-{name}.pdf": _full_size(name) for name in PAPERS},
}
