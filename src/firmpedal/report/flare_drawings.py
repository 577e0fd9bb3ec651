"""Drawings of a flared joint and of what goes wrong with flares. Lengths in tube diameters, not to scale."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from firmpedal.report.clock import ring
from firmpedal.report.section import (
    FALLING,
    LETTERS,
    OUTLINE,
    RISING,
    THIN,
    Place,
    circle,
    cut,
    mirrored,
    pointed,
    turned,
)
from firmpedal.report.sheet import Drawing, Label, Stroke

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from firmpedal.report.section import Flat
    from firmpedal.report.sheet import Mark

WIDTH = 490.0
HALF_ANGLE = math.radians(37)
OUTER, WALL, LIP = 0.5, 0.14, 0.71  # radius and wall of the tube, radius of a good flare
HEAD, BARREL = 0.8, 0.62  # radii of the sleeve
SLEEVE_END, BEND = -0.14, 0.0  # where the sleeve ends and where the flare begins, along the axis
SLEEVE = ((BEND, OUTER), (SLEEVE_END, 0.605), (SLEEVE_END, HEAD), (0.15, HEAD), (0.33, BARREL),
          (1.05, BARREL), (1.05, OUTER))  # fmt: skip
NUT = ((-1.5, 0.89), (0.1, 0.89), (0.17, 0.82), (0.35, 0.65), (0.95, 0.65), (0.95, 1.0), (0.8, 1.12),
       (-1.35, 1.12), (-1.5, 1.0))  # fmt: skip
BODY = ((-0.08, 0.375), (-0.53, 0.715), (-0.75, 0.715), (-0.75, 0.87), (-1.85, 0.87), (-1.85, 1.12),
        (-2.4, 1.12), (-2.4, 0.28), (-0.08, 0.28))  # fmt: skip
FAULTS = ("too small", "too large", "cracked", "off centre", "burr left", "thin lip")


def wall(lip: float = LIP, *, edge: float = WALL, end: float = 1.8) -> tuple[Flat, ...]:
    """The cut wall of a flared tube above its axis; `edge` is how thick it is left at the lip."""
    rise, along = math.sin(HALF_ANGLE), math.cos(HALF_ANGLE)
    length = (lip - OUTER) / rise
    inner_root = (BEND - WALL * rise, OUTER - WALL * along)
    back = (inner_root[1] - (OUTER - WALL)) / rise
    return (
        (end, OUTER),
        (BEND, OUTER),
        (BEND - length * along, lip),
        (BEND - length * along - edge * rise, lip - edge * along),
        (inner_root[0] + back * along, OUTER - WALL),
        (end, OUTER - WALL),
    )


def joint_drawing(across: str, stands: str) -> Drawing:
    """A joint cut open, and beside it the flare in its sleeve with what is measured on it."""
    tall = 178.0
    marks = [*_joint(Place((128, 92), 50.0)), *_measured(Place((358, 92), 62.0), across, stands)]
    return Drawing((WIDTH, tall), tuple(marks), "Not to scale. The seal is cone on flare, metal on metal.")


def _joint(place: Place) -> list[Mark]:
    marks = [
        *turned(place, BODY, FALLING),
        *turned(place, wall(), RISING),
        *turned(place, SLEEVE, FALLING),
        *turned(place, NUT, RISING),
        place.line((-2.5, 0), (1.95, 0), weight=THIN, dashed=True),
    ]
    words: list[tuple[str, Flat, Flat]] = [
        ("fitting", (-2.0, 1.5), (-2.1, 0.95)),
        ("cone", (-1.0, -1.5), (-0.36, -0.52)),
        ("nut", (-0.45, 1.5), (-0.4, 1.02)),
        ("sleeve", (0.55, -1.5), (0.5, -0.57)),
        ("tube", (1.5, 1.1), (1.5, 0.44)),
    ]
    return [
        *marks,
        *(mark for text, at, to in words for mark in pointed(text, place.point(*at), place.point(*to))),
    ]


def _measured(place: Place, across: str, stands: str) -> list[Mark]:
    """The flare in its sleeve: diameter, angle, and how far it stands out."""
    lip_end = wall()[3][0]
    marks: list[Mark] = [
        *turned(place, wall(), RISING),
        *turned(place, SLEEVE, FALLING),
        place.line((-0.75, 0), (1.9, 0), weight=THIN, dashed=True),
        place.line((wall()[2][0], LIP), (-0.68, LIP), weight=THIN),
        place.line((wall()[2][0], -LIP), (-0.68, -LIP), weight=THIN),
        place.dimension((-0.6, LIP), (-0.6, -LIP)),
        *_stacked(("across", *_broken(across)), place.point(-0.7, 0.0), "end"),
        place.line((lip_end, -0.64), (lip_end, -1.12), weight=THIN),
        place.line((SLEEVE_END, -HEAD), (SLEEVE_END, -1.12), weight=THIN),
        place.dimension((lip_end, -1.05), (SLEEVE_END, -1.05)),
        Label("stands out", place.point(SLEEVE_END + 0.14, -1.0), LETTERS, "start"),
        Label(stands, place.point(SLEEVE_END + 0.14, -1.23), LETTERS, "start", bold=True),
    ]
    return [*marks, *_angle(place)]


def _broken(figure: str) -> tuple[str, ...]:
    """A range on two lines, so that it stands beside its arrow."""
    low, to, high = figure.partition(" to ")
    return (f"{low} to", high) if to else (figure,)


def _stacked(lines: Sequence[str], at: Flat, anchor: str) -> list[Mark]:
    """Lines of words one under the other about a height; the first is plain, the figures bold."""
    step, top = 14.0, at[1] + 7.0 * (len(lines) - 1)
    return [
        Label(words, (at[0], round(top - step * n, 2)), LETTERS, anchor, bold=n > 0)
        for n, words in enumerate(lines)
    ]


def _angle(place: Place) -> list[Mark]:
    """37 degrees, between the axis and the flare drawn on."""
    tip = (BEND + OUTER / math.tan(HALF_ANGLE), 0.0)
    arc = tuple(
        (tip[0] - 0.8 * math.cos(HALF_ANGLE * n / 8), 0.8 * math.sin(HALF_ANGLE * n / 8)) for n in range(9)
    )
    far = (tip[0] - 1.62 * math.cos(HALF_ANGLE), 1.62 * math.sin(HALF_ANGLE))
    return [
        place.line(tip, far, weight=THIN, dashed=True),
        place.line(*arc, weight=0.8),
        Label("37\u00b0", place.point(0.12, 0.2), LETTERS, bold=True),
    ]


def fault_drawing() -> Drawing:
    """Six bad flares, each with the number under which the table speaks of it."""
    columns, tall = 3, 118.0
    cell = WIDTH / columns
    marks: list[Mark] = []
    for number, (name, draw) in enumerate(zip(FAULTS, _DRAWN, strict=True)):
        row, column = divmod(number, columns)
        left, low = column * cell, (1 - row) * tall
        marks += draw((left, low))
        at = (round(left + 6, 2), low + 12)
        marks += [Label(ring(number + 1), at, 15, "start", bold=True)]
        marks += [Label(name, (round(left + 26, 2), low + 12), LETTERS, "start", bold=True)]
    return Drawing((WIDTH, 2 * tall), tuple(marks), "Dashed: where a good flare ends. Drawn worse than life.")


def _section(
    corner: Flat, upper: Sequence[Flat], lower: Sequence[Flat] | None = None
) -> tuple[Place, list[Mark]]:
    """A flare in its sleeve, with the two sides alike or not, and where good ones end."""
    place = Place((round(corner[0] + 62, 2), corner[1] + 70), 46.0)
    marks = [
        *cut(place, upper, RISING),
        *cut(place, mirrored(lower or upper), FALLING),
        *turned(place, SLEEVE, FALLING),
        place.line((-0.62, 0), (1.85, 0), weight=THIN, dashed=True),
    ]
    return place, marks


def _good_ends(place: Place) -> list[Mark]:
    return [place.line((-0.62, side * LIP), (-0.2, side * LIP), weight=0.9, dashed=True) for side in (1, -1)]


def _too_small(corner: Flat) -> list[Mark]:
    place, marks = _section(corner, wall(0.58))
    return [*marks, *_good_ends(place)]


def _too_large(corner: Flat) -> list[Mark]:
    """The lip reaches beyond the sleeve's head into the nut's thread."""
    place, marks = _section(corner, wall(0.9))
    thread = [
        place.line(*((-0.62 + 0.09 * n, side * (0.86 if n % 2 else 0.93)) for n in range(10)), weight=0.9)
        for side in (1, -1)
    ]
    return [*marks, *_good_ends(place), *thread]


def _face(corner: Flat) -> tuple[Flat, float]:
    """Where a flare seen from its open end stands, and how large a tube diameter is there."""
    return (round(corner[0] + 80, 2), corner[1] + 68), 50.0


def _cracked(corner: Flat) -> list[Mark]:
    at, scale = _face(corner)
    cracks = []
    for turn, reach in ((0.5, 0.42), (2.3, 0.5), (4.4, 0.46)):
        bends = ((LIP, 0.0), (0.63, 0.05), (0.56, -0.05), (reach, 0.03))
        points = tuple(_polar(at, radius * scale, turn + aside) for radius, aside in bends)
        cracks.append(Stroke(points, 1.8))
    rings = ((LIP, OUTLINE), (OUTER - WALL, OUTLINE), (0.47, THIN))
    return [*(circle(at, radius * scale, weight) for radius, weight in rings), *cracks]


def _polar(at: Flat, radius: float, turn: float) -> Flat:
    return (round(at[0] + radius * math.cos(turn), 2), round(at[1] + radius * math.sin(turn), 2))


def _off_centre(corner: Flat) -> list[Mark]:
    place, marks = _section(corner, wall(0.82), wall(0.6))
    return [*marks, *_good_ends(place)]


def _burr(corner: Flat) -> list[Mark]:
    """A ragged edge inside, pressed into the face that should seal."""
    good = wall()
    lip, root = good[3], good[4]
    ragged = [lip]
    for n in range(1, 8):
        share = n / 8
        along = lip[0] + (root[0] - lip[0]) * share
        out = lip[1] + (root[1] - lip[1]) * share
        ragged.append((along - (0.06 if n % 2 else 0.0), out - (0.06 if n % 2 else 0.0)))
    shape = (*good[:3], *ragged, *good[4:])
    return [*_section(corner, shape)[1]]


def _thin_lip(corner: Flat) -> list[Mark]:
    place, marks = _section(corner, wall(0.74, edge=0.02))
    return [*marks, *_good_ends(place)]


_DRAWN: tuple[Callable[[Flat], list[Mark]], ...] = (
    _too_small,
    _too_large,
    _cracked,
    _off_centre,
    _burr,
    _thin_lip,
)
