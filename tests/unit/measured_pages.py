"""A printed page as its ink, and a rule to lay on it: lengths in millimetres from the lower left corner.

What is measured is the rendered page. Where to look may be a hint from the drawing, as an eye would find
it; what is found there is not.
"""

from __future__ import annotations

import math
import subprocess
from dataclasses import dataclass

import numpy as np

DPI = 600
PER_MILLIMETRE = DPI / 25.4
DARK = 0.5  # of full ink, for the outline of a line
NEAR = 1.0  # how far from a hint a line is looked for


@dataclass(frozen=True)
class Ink:
    """The ink of a page, from 0 to 1, first row on top."""

    dark: np.ndarray

    @property
    def size(self) -> tuple[float, float]:
        tall, wide = self.dark.shape
        return wide / PER_MILLIMETRE, tall / PER_MILLIMETRE

    def level(self, y: float, left: float, right: float) -> list[float]:
        """The middles of the lines that a level scan at a height meets, from left to right."""
        row = self.dark[self._row(y), round(left * PER_MILLIMETRE) : round(right * PER_MILLIMETRE)]
        return [round(left * PER_MILLIMETRE) / PER_MILLIMETRE + place for place in middles(row)]

    def upright(self, x: float, low: float, high: float) -> list[float]:
        """The middles of the lines that an upright scan meets, from below."""
        first, last = self._row(high), self._row(low)
        column = self.dark[first:last, round(x * PER_MILLIMETRE - 0.5)][::-1]
        foot = (self.dark.shape[0] - last) / PER_MILLIMETRE
        return [foot + place for place in middles(column)]

    def level_near(self, hint: tuple[float, float]) -> float:
        """Where the upright line next to a hint stands."""
        found = self.level(hint[1], hint[0] - NEAR, hint[0] + NEAR)
        return min(found, key=lambda x: abs(x - hint[0]))

    def cross(self, hint: tuple[float, float]) -> tuple[float, float]:
        """The middle of the cross next to a hint, from its arms outside the ring."""
        x = self.level_near((hint[0], hint[1] + 2.1))
        heights = self.upright(hint[0] + 2.1, hint[1] - NEAR, hint[1] + NEAR)
        return x, min(heights, key=lambda y: abs(y - hint[1]))

    def round_about(self, middle: tuple[float, float], radius: float, steps: int = 7200) -> np.ndarray:
        """The ink on a circle, clockwise from the top."""
        turns = np.arange(steps) * math.tau / steps
        columns = np.rint((middle[0] + radius * np.sin(turns)) * PER_MILLIMETRE - 0.5).astype(int)
        rows = np.rint(self.dark.shape[0] - (middle[1] + radius * np.cos(turns)) * PER_MILLIMETRE - 0.5)
        return self.dark[rows.astype(int), columns]

    def outside(self, margin: float) -> float:
        """The darkest ink nearer to an edge of the page than a margin."""
        inner = math.floor(margin * PER_MILLIMETRE)
        around = self.dark.copy()
        around[inner:-inner, inner:-inner] = 0
        return float(around.max())

    def _row(self, y: float) -> int:
        return round(self.dark.shape[0] - y * PER_MILLIMETRE - 0.5)


def middles(line: np.ndarray) -> list[float]:
    """The middle of each dark stretch of a scan, weighed by its ink, in millimetres from its start."""
    dark = np.concatenate([[False], line > DARK / 4, [False]])
    starts, stops = (np.flatnonzero(dark[1:] & ~dark[:-1]), np.flatnonzero(~dark[1:] & dark[:-1]))
    found = []
    for start, stop in zip(starts, stops, strict=True):
        ink = line[start:stop]
        if ink.max() > DARK:
            found.append(float((np.arange(start, stop) + 0.5) @ ink / ink.sum()) / PER_MILLIMETRE)
    return found


def rendered(pdf: bytes, folder) -> list[Ink]:
    """Draw the pages of a PDF as a printer of 600 dots to the inch would."""
    file = folder / "pages.pdf"
    file.write_bytes(pdf)
    subprocess.run(["pdftoppm", "-r", str(DPI), "-gray", file, folder / "page"], check=True)  # noqa: S607
    return [_read(path) for path in sorted(folder.glob("page-*.pgm"))]


def _read(path) -> Ink:
    raw = path.read_bytes()
    kind, wide, tall, most = raw.split(maxsplit=4)[:4]
    assert (kind, most) == (b"P5", b"255")
    grey = np.frombuffer(raw[-int(wide) * int(tall) :], np.uint8).reshape(int(tall), int(wide))
    return Ink(1 - grey.astype(np.float32) / 255)
