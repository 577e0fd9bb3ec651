"""A straight tube at full size, with all that is marked on it, cut into pieces for the page.

Along the strip stations are lengths from the finished flare at end A, on paper in points.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.report.marks import LETTERS, MILLIMETRE, moved, row, row_width, text
from firmpedal.report.placing import Box
from firmpedal.report.sheet import Mark, Stroke
from firmpedal.report.tiling import FLAP, Joint, Tile, piece

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

AROUND_END = 9 * MILLIMETRE  # paper beyond an end of the tube
CLEAR = 10 * MILLIMETRE  # no joint nearer to a mark, so that its words stand on one piece
LEAST_PIECE = 70 * MILLIMETRE  # the words of the last end need as much
STEP = MILLIMETRE
ASIDE = 3.3 * MILLIMETRE  # from the tube to a cross
SEARCH = 45  # steps back from the farthest place of a joint
BESIDE = 3.0  # from a mark to its words
LINE = 12.5  # from one line of words to the next
HEAD = 12.0  # size of the first line
FROM_TUBE = 5.0
SCALE_TICK, SCALE_WORDS = 6.0, 13.0


@dataclass(frozen=True, slots=True)
class Flag:
    """A mark across the tube with its words, above or below it; the first line is the heading."""

    station: float
    words: tuple[str, ...]
    above: bool = True
    weight: float = 0.9

    @property
    def heads(self) -> bool:
        """Whether its first line stands out."""
        return self.above and self.weight > 0

    @property
    def width(self) -> float:
        sizes = [(HEAD if n == 0 and self.heads else LETTERS) for n in range(len(self.words))]
        return max(row_width(words, size) for size, words in zip(sizes, self.words, strict=True))


@dataclass(frozen=True, slots=True)
class Strip:
    """What stands on a strip: `cut` and `flared` are where the tube begins and ends, before and after."""

    outside_diameter: float
    cut: tuple[float, float]
    flared: tuple[float, float]
    arcs: tuple[tuple[float, float], ...]
    flags: tuple[Flag, ...]
    name: str  # what each piece is called, so that it is found again once it is cut out
    scale: float  # from one numbered tick to the next
    scale_number: int  # by how much their numbers rise

    @property
    def ends(self) -> tuple[float, float]:
        return (min(self.cut[0], self.flared[0]) - AROUND_END, max(self.cut[1], self.flared[1]) + AROUND_END)


@dataclass(frozen=True, slots=True)
class _Placed:
    """A flag with the lane of its words, 0 next to the tube, and the side they stand on."""

    flag: Flag
    lane: int
    left: float

    @property
    def right(self) -> float:
        return self.left + self.flag.width


def pieces(strip: Strip, width: float) -> tuple[tuple[Mark, ...], ...]:
    """The strip in pieces no wider than a page, each with its lower left corner at (0, 0)."""
    cuts = (strip.ends[0], *joints(strip, width), strip.ends[1])
    spans = tuple(pairwise(cuts))
    placed = [
        _named(_placed(strip, span), f"{strip.name}, {number} of {len(spans)}", span)
        for number, span in enumerate(spans, 1)
    ]
    radius = strip.outside_diameter / 2
    foot = -(radius + FROM_TUBE + _lanes(placed, above=False) * LINE)
    drawn = (*_tube(strip), *_scale(strip, foot, cuts[1:-1]))
    found = []
    for number, (span, here) in enumerate(zip(spans, placed, strict=True)):
        top = radius + FROM_TUBE + _lanes([here], above=True) * _lane_height(strip, above=True)
        tile = _tile(span, number, len(spans), (foot - SCALE_TICK - SCALE_WORDS, top), radius)
        found.append(_piece(drawn, strip, here, tile))
    return tuple(found)


def _lanes(placed: Iterable[list[_Placed]], *, above: bool) -> int:
    """How many rows of words stand on one side of the tube; room for one is always kept."""
    return 1 + max((each.lane for one in placed for each in one if each.flag.above is above), default=0)


def joints(strip: Strip, width: float) -> tuple[float, ...]:
    """Where the strip is cut: as far along as the page goes, but clear of marks where that can be."""
    start, stop = strip.ends
    found: list[float] = []
    while stop - start > width - (FLAP if found else 0):
        farthest = min(start + width - FLAP - (FLAP if found else 0), stop - LEAST_PIECE)
        tries = (farthest - n * STEP for n in range(SEARCH))
        start = next((place for place in tries if _clear(strip, place)), farthest)
        found.append(start)
    return tuple(found)


def _clear(strip: Strip, place: float) -> bool:
    return all(abs(flag.station - place) >= CLEAR for flag in strip.flags)


def _tile(
    span: tuple[float, float], number: int, count: int, box: tuple[float, float], radius: float
) -> Tile:
    low, high = box
    core = Box(span[0], low, span[1], high)
    shown = Box(span[0] - (FLAP if number else 0), low, span[1] + (FLAP if number < count - 1 else 0), high)
    aside = radius + ASIDE
    sides = [(number, span[0])] * (number > 0) + [(number + 1, span[1])] * (number < count - 1)
    return Tile(core, shown, tuple(Joint(f"J{name}", ((x, aside), (x, -aside))) for name, x in sides))


def _piece(drawn: tuple[Mark, ...], strip: Strip, placed: list[_Placed], tile: Tile) -> tuple[Mark, ...]:
    radius = strip.outside_diameter / 2
    marks = [*drawn, *(mark for each in placed for mark in _flag(each, radius, strip))]
    return moved(piece(marks, tile), (-tile.shown.left, -tile.shown.low))


def _lane_height(strip: Strip, *, above: bool) -> float:
    return LINE * max((len(flag.words) for flag in strip.flags if flag.above is above), default=1) + 2


def _tube(strip: Strip) -> Iterator[Mark]:
    """Edges, heavier where the tube is bent, centre line, ends, and the two letters."""
    radius, (start, stop) = strip.outside_diameter / 2, strip.cut
    for side in (-radius, radius):
        yield Stroke(((start, side), (stop, side)), 0.6)
        yield from (Stroke(((low, side), (high, side)), 2.0) for low, high in strip.arcs)
    yield Stroke(((start, 0.0), (stop, 0.0)), 0.5, dashed=True)
    yield from (Stroke(((end, -radius), (end, radius)), 0.6) for end in strip.cut)
    yield text("A", (start - 3.5 * MILLIMETRE, 0.0), 16, bold=True)
    yield text("B", (stop + 3.5 * MILLIMETRE, 0.0), 16, bold=True)


def _scale(strip: Strip, foot: float, cuts: tuple[float, ...]) -> Iterator[Mark]:
    """Ticks along the lower edge, numbered from the finished flare at end A."""
    start, stop = strip.flared
    yield Stroke(((start, foot), (stop, foot)), 0.35)
    for n in range(int((stop - start) / strip.scale + 1e-6) + 1):
        at = start + n * strip.scale
        yield Stroke(((at, foot), (at, foot - SCALE_TICK)), 0.35)
        if all(abs(at - cut) > SCALE_WORDS for cut in cuts):
            yield text(str(n * strip.scale_number), (at, foot - SCALE_TICK - SCALE_WORDS / 2), LETTERS)


def _flag(each: _Placed, radius: float, strip: Strip) -> Iterator[Mark]:
    """The line across the tube, led on to its words."""
    flag = each.flag
    pitch = _lane_height(strip, above=True) if flag.above else LINE
    near = radius + FROM_TUBE + each.lane * pitch
    tall = LINE * len(flag.words) if flag.above else LINE
    way = 1 if flag.above else -1
    if flag.weight:
        yield Stroke(((flag.station, -way * radius), (flag.station, way * (near + tall - 1))), flag.weight)
    for number, words in enumerate(flag.words):
        up = len(flag.words) - 1 - number if flag.above else number
        at = (each.left, way * (near + LINE / 2 + up * LINE - (1 if flag.above else 0)))
        head = number == 0 and flag.heads
        yield from row(words, at, HEAD if head else LETTERS, "start", bold=head)


def _placed(strip: Strip, span: tuple[float, float]) -> list[_Placed]:
    """Give the words of each flag of a piece a side and a lane.

    Words stand to the right of their line; near the end of a piece to its left. Each side is filled from
    its own inner end, so that a line never has to pass words that are there already.
    """
    own = sorted(
        (flag for flag in strip.flags if span[0] <= flag.station < span[1]), key=lambda flag: flag.station
    )
    found: list[_Placed] = []
    for above in (True, False):
        side = [flag for flag in own if flag.above is above]
        turned = _turned(side, span[1])
        right, left = side[: len(side) - turned], side[len(side) - turned :]
        for flag in right[::-1]:
            found.append(_laned(flag, flag.station + BESIDE, found))
        for flag in left:
            found.append(_laned(flag, flag.station - BESIDE - flag.width, found))
    return found


def _turned(flags: list[Flag], limit: float) -> int:
    """How many flags, counted from the last, have no room for words on their right."""
    count = 0
    for flag in flags[::-1]:
        if flag.station + BESIDE + flag.width <= limit:
            break
        count, limit = count + 1, flag.station - BESIDE
    return count


def _laned(flag: Flag, left: float, found: list[_Placed]) -> _Placed:
    """Give words the lowest lane in which they meet nothing."""
    lanes = (_Placed(flag, lane, left) for lane in range(len(found) + 1))
    return next(each for each in lanes if not any(_meet(each, other) for other in found))


def _named(found: list[_Placed], name: str, span: tuple[float, float]) -> list[_Placed]:
    """Write the name of a piece where room is left: in the lowest lane, as far to the left as it goes."""
    for lane in range(len(found) + 2):
        place = span[0] + CLEAR
        while place + row_width(name, LETTERS) < span[1]:
            around = _Placed(Flag(place, (f"  {name}  ",), weight=0.0), lane, place - LINE)
            if not any(_meet(around, other) for other in found):
                return [*found, _Placed(Flag(place, (name,), weight=0.0), lane, place)]
            place += STEP
    return found


def _meet(one: _Placed, other: _Placed) -> bool:
    """Whether the words of two flags stand on each other, or one's line runs through the other's words."""
    if one.flag.above is not other.flag.above:
        return False
    if one.lane == other.lane and one.left < other.right + BESIDE and other.left < one.right + BESIDE:
        return True
    upper, lower = (one, other) if one.lane > other.lane else (other, one)
    return (
        upper.lane > lower.lane
        and upper.flag.weight > 0
        and lower.left - 1 < upper.flag.station < lower.right + 1
    )
