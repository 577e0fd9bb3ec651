"""What is taken on the paper already, and whether a label has room somewhere."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise, product
from typing import TYPE_CHECKING

from firmpedal.report.placing import Box
from firmpedal.report.sheet import Stroke
from firmpedal.report.symbols.shape import box_round

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from firmpedal.report.placing import Segment
    from firmpedal.report.sheet import Mark

WORDS = (4.0, 2.0)  # white around a label: as much as there is room for
CLOSE = (1.2,)  # around the ring of a number


@dataclass(frozen=True, slots=True)
class Candidate:
    """A place for a label, with the thin line to its point where it is far from it."""

    box: Box
    leader: Segment | None = None


@dataclass
class Room:
    """A diagram in the making."""

    bounds: Box
    boxes: list[Box] = field(default_factory=list)
    segments: list[tuple[Box, Segment]] = field(default_factory=list)

    def draw(self, marks: Iterable[Mark]) -> None:
        """Keep labels away from marks."""
        for mark in marks:
            if isinstance(mark, Stroke):
                self.segments += [(_round(pair, mark.weight / 2), pair) for pair in pairwise(mark.points)]
            else:
                self.boxes.append(box_round(mark))

    def choose(self, candidates: Sequence[Candidate], margins: Sequence[float]) -> tuple[Candidate, bool]:
        """The first of some places that is free, and whether there is one.

        Close by comes before far away, and then more white before less.
        """
        for led, margin in product((False, True), margins):
            for candidate in candidates:
                if (candidate.leader is not None) is led and self.free(candidate, margin):
                    self.take(candidate)
                    return candidate, True
        self.take(candidates[0])
        return candidates[0], False

    def take(self, candidate: Candidate) -> None:
        self.boxes.append(candidate.box)
        if candidate.leader is not None:
            self.segments.append((_round(candidate.leader, 0.3), candidate.leader))

    def free(self, candidate: Candidate, margin: float) -> bool:
        """Whether a place is inside the paper, with white around it, and its leader crosses nothing."""
        if not candidate.box.inside(self.bounds):
            return False
        box = candidate.box.grown(margin)
        if any(box.meets(other) for other in self.boxes):
            return False
        if any(box.meets(near) and box.grown(0.9).cuts(piece) for near, piece in self.segments):
            return False
        leader = candidate.leader
        return leader is None or not self._crossed(leader)

    def _crossed(self, leader: Segment) -> bool:
        """Whether a leader runs into anything but what it starts at."""
        near = _round(leader, 0.5)
        start = Box(*leader[0], *leader[0]).grown(1.5)
        return any(other.cuts(leader) for other in self.boxes if other.meets(near)) or any(
            near.meets(around) and _cross(piece, leader) and not start.cuts(piece)
            for around, piece in self.segments
        )


def _round(piece: Segment, half: float) -> Box:
    (x, y), (u, v) = piece
    return Box(min(x, u), min(y, v), max(x, u), max(y, v)).grown(half)


def _cross(one: Segment, other: Segment) -> bool:
    (a, b), (c, d) = one, other
    return _turn(a, b, c) * _turn(a, b, d) <= 0 and _turn(c, d, a) * _turn(c, d, b) <= 0


def _turn(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
