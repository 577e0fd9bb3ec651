"""Pages at full size as a PDF: a point of a drawing is a point on paper. Same pages, same bytes."""

from __future__ import annotations

import json
from importlib import resources
from typing import TYPE_CHECKING

import typst

from firmpedal.export.svg import svg
from firmpedal.report.packet import footer_of
from firmpedal.report.paper import INCH, proof_words

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.fullsize import FullsizePage
    from firmpedal.report.packet import Footer
    from firmpedal.report.paper import Paper

TEMPLATE = "fullsize.typ"
BESIDE_RULER = 4.6 * INCH  # from the left edge of the area to the words beside the ruler


def write(pages: tuple[FullsizePage, ...], evaluation: Evaluation, paper: Paper, path: Path) -> None:
    """Write pages with the evaluation's footer.

    Raises:
        OSError: The file cannot be written.
    """
    path.write_bytes(pdf(pages, footer_of(evaluation), paper))


def pdf(pages: tuple[FullsizePage, ...], footer: Footer, paper: Paper) -> bytes:
    """Set pages in type."""
    data = {
        "title": footer.aircraft,
        "footer": footer.words,
        "proof": proof_words(paper),
        "width": paper.size[0],
        "height": paper.size[1],
        "left": paper.area.left,
        "wide": paper.area.right - paper.area.left,
        "aside": paper.area.left + BESIDE_RULER,
        "pages": [{"title": page.title, "words": page.words, "svg": svg(page.drawing)} for page in pages],
    }
    made = typst.compile(
        (resources.files("firmpedal.export") / TEMPLATE).read_bytes(),
        format="pdf",
        sys_inputs={"pages": json.dumps(data, ensure_ascii=False)},
        ignore_system_fonts=True,
    )
    return bytes(made)
