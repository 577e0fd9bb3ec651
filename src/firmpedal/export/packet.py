"""The printed packet as a PDF file."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from firmpedal.export.typst import pdf
from firmpedal.report.packet import footer_of

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Sheet

_PAGE = re.compile(rb"/Type\s*/Page\b")


def write(sheets: tuple[Sheet, ...], evaluation: Evaluation, path: Path) -> int:
    """Write sheets as a packet with the evaluation's footer; the result is the number of pages.

    Raises:
        OSError: The file cannot be written.
    """
    made = pdf(sheets, footer_of(evaluation))
    path.write_bytes(made)
    return page_count(made)


def page_count(made: bytes) -> int:
    """Count the pages of a PDF that `pdf` made: its page objects are written in the clear."""
    return len(_PAGE.findall(made))
