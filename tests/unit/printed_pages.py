"""Where text stands on the pages of a PDF, worked out from its content, not from what wrote it."""

from __future__ import annotations

import io
from dataclasses import dataclass

from pypdf import PdfReader
from pypdf.generic import ContentStream

Matrix = tuple[float, float, float, float, float, float]
UNMOVED: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


@dataclass(frozen=True)
class Run:
    """A run of glyphs on one line, in points from the lower left corner of the page."""

    left: float
    right: float
    foot: float
    size: float
    drawn: bool  # inside a picture

    def covers(self, other: Run) -> bool:
        """Whether two runs stand on each other; touching does not count."""
        apart = self.right <= other.left + 1.5 or other.right <= self.left + 1.5
        low, high = (self, other) if self.foot <= other.foot else (other, self)
        return not apart and low.foot + 0.6 * low.size > high.foot


def reader(pdf: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(pdf))


def runs(page) -> list[Run]:
    """Every run of text on a page, those inside pictures included."""
    work = _Reading(page.pdf)
    work.read(page.get_contents(), page["/Resources"], UNMOVED)
    return work.found


def times(one: Matrix, other: Matrix) -> Matrix:
    a, b, c, d, e, f = one
    g, h, i, j, k, m = other
    return (a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + m)


class _Reading:
    """Follows a page's operations, as far as they say where text stands."""

    def __init__(self, pdf, *, drawn: bool = False) -> None:
        self.pdf, self.drawn = pdf, drawn
        self.found: list[Run] = []

    def read(self, stream, resources, at: Matrix) -> None:
        self.resources, self.kept = resources, []
        self.state, self.text, self.font, self.size = at, UNMOVED, None, 0.0
        for operands, operator in ContentStream(stream, self.pdf).operations:
            step = getattr(self, f"_{operator.decode()}", None)
            if step is not None:
                step(*operands)

    def _q(self) -> None:
        self.kept.append((self.state, self.font, self.size))

    def _Q(self) -> None:  # noqa: N802  the operator's own name
        self.state, self.font, self.size = self.kept.pop()

    def _cm(self, *numbers) -> None:
        self.state = times(tuple(map(float, numbers)), self.state)

    def _BT(self) -> None:  # noqa: N802
        self.text = UNMOVED

    def _Tf(self, name, size) -> None:  # noqa: N802
        self.font, self.size = self.resources["/Font"][name].get_object(), float(size)

    def _Tm(self, *numbers) -> None:  # noqa: N802
        self.text = tuple(map(float, numbers))

    def _Td(self, across, upward) -> None:  # noqa: N802
        self.text = times((1, 0, 0, 1, float(across), float(upward)), self.text)

    def _Tj(self, piece) -> None:  # noqa: N802
        self._TJ([piece])

    def _TJ(self, pieces) -> None:  # noqa: N802
        width = _width(self.font, pieces, self.size)
        self.found.append(_run(times(self.text, self.state), width, self.size, drawn=self.drawn))
        self._Td(width, 0)

    def _Do(self, name) -> None:  # noqa: N802
        inner = self.resources["/XObject"][name].get_object()
        if inner["/Subtype"] == "/Form":
            work = _Reading(self.pdf, drawn=True)
            moved = times(tuple(map(float, inner.get("/Matrix", UNMOVED))), self.state)
            work.read(inner, inner.get("/Resources", self.resources), moved)
            self.found += work.found


def _run(place: Matrix, width: float, size: float, *, drawn: bool) -> Run:
    scale = abs(place[3]) or abs(place[1])
    return Run(place[4], place[4] + width * place[0], place[5], size * scale, drawn)


def _width(font, pieces, size: float) -> float:
    """The width of shown glyphs: two-byte codes with the widths of the font's own table."""
    inner = font["/DescendantFonts"][0].get_object()
    table, default = _widths(inner.get("/W", [])), float(inner.get("/DW", 1000))
    total = 0.0
    for piece in pieces:
        if isinstance(piece, int | float):
            total -= float(piece)
            continue
        raw = piece if isinstance(piece, bytes) else piece.original_bytes
        codes = [int.from_bytes(raw[n : n + 2], "big") for n in range(0, len(raw), 2)]
        total += sum(table.get(code, default) for code in codes)
    return total / 1000 * size


def _widths(entries) -> dict[int, float]:
    found: dict[int, float] = {}
    items = [item.get_object() if hasattr(item, "get_object") else item for item in entries]
    while items:
        first, second, *items = items
        if isinstance(second, list):
            found |= {int(first) + n: float(width) for n, width in enumerate(second)}
        else:
            third, *items = items
            found |= dict.fromkeys(range(int(first), int(second) + 1), float(third))
    return found
