"""The shape of a line from a table, laid between the ends that the line has in the file."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.decide.end_directions import leaving_of
from firmpedal.lay.between_ends import laid_between, overshoot
from firmpedal.lay.half_bent import BendData
from firmpedal.model.stock import LineKind
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.decide.shape_tables import Shape
    from firmpedal.lay.between_ends import Between
    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.shape import Point
    from firmpedal.model.display import Display
    from firmpedal.pipeline import Evaluation

ENDS_AGREE = from_unit(1 / 32, "in")  # half of a tape's sixteenth
OTHER_WAY = math.radians(20)  # further off it is no bad angle but another tube: our estimate
SAME_LENGTH, SAME_ANGLE = 1e-9, 1e-9
_MEASURE = "put right whichever is wrong, the table or the seat in the file, and see that both use one datum"


class NotImportedError(Exception):
    """A shape that cannot be taken over, and what to do about it."""

    def __init__(self, message: str, suggestion: str) -> None:
        super().__init__(message)
        self.message, self.suggestion = message, suggestion


@dataclass(frozen=True, slots=True)
class Fitted:
    """The corners between a line's ends, and how far the table's ends are from the file's [m].

    For bends: `fit` says how they lie, `from_ports` whether the ports or else the file's corners turned
    them, and `radius` is the bend radius where it is another than the one that holds now.
    """

    corners: tuple[Point, ...]
    ends_off: tuple[float, float]
    fit: Between | None = None
    from_ports: bool = False
    radius: float | None = None


def fitted(evaluation: Evaluation, line: LaidLine, shape: Shape) -> Fitted | None:
    """Lay a shape between a line's ends; None where the line has those bends already.

    Raises:
        NotImportedError: It does not belong there, or nobody can tell how it lies.
    """
    ends = _ends(line)
    if isinstance(shape, BendData):
        return None if _same_bends(line, shape) else _bends(evaluation, line, shape, ends)
    return Fitted(shape[1:-1], _points_off(evaluation.display.decimals, shape, ends))


def _ends(line: LaidLine) -> tuple[Point, Point]:
    for word, end in (("A", line.points[0]), ("B", line.points[-1])):
        if not end.known:
            wanted = "; ".join(dict.fromkeys(each.what for each in end.missing))
            raise NotImportedError(f"where end {word} of {line.name} sits is not known", f"measure {wanted}")
    return line.points[0].point, line.points[-1].point


def _points_off(
    display: Display, points: tuple[Point, ...], ends: tuple[Point, Point]
) -> tuple[float, float]:
    """How far the first and last point are from the line's ends; within half a sixteenth."""
    off = (math.dist(points[0], ends[0]), math.dist(points[-1], ends[1]))
    if max(off) <= ENDS_AGREE:
        return off
    number, word = (0, "first") if off[0] > ENDS_AGREE else (-1, "last")
    far, allowed = (display.number(one, Dimension.LENGTH) for one in (off[number], ENDS_AGREE))
    words = (
        f"the {word} point {display.point(points[number])} is {far} from where the file has that end, "
        f"{display.point(ends[number])}; {allowed} is allowed"
    )
    backwards = max(math.dist(points[0], ends[1]), math.dist(points[-1], ends[0])) <= ENDS_AGREE
    advice = "its points run from the other end: turn the rows round" if backwards else _MEASURE
    raise NotImportedError(words, advice)


def _bends(evaluation: Evaluation, line: LaidLine, data: BendData, ends: tuple[Point, Point]) -> Fitted:
    if line.kind is not LineKind.TUBE or line.tube is None:
        words = f"{line.name} is {line.kind.value}, which is not bent"
        raise NotImportedError(words, "import its points instead")
    radius = _one_radius(evaluation, line, data)
    leaving, from_ports = leaving_of(evaluation, line)
    try:
        fit = laid_between(data, *ends, leaving)
    except ValueError:
        words = "its two ends would be at one place, so nothing says which way it lies"
        raise NotImportedError(words, "import its points instead") from None
    if fit is None:
        _check_overshoot(evaluation.display.decimals, overshoot(data, *ends))  # the surer cause comes first
        words = "how it is turned about the straight line between its ends is not known"
        advice = "measure the first corner, write it into the corners (via) of the line, and import again"
        raise NotImportedError(words, advice)
    _check_overshoot(evaluation.display.decimals, fit.overshoot)
    _check_turn(fit)
    return Fitted(fit.corners[1:-1], (0.0, abs(fit.overshoot)), fit, from_ports, radius)


def _check_overshoot(display: Display, off: float) -> None:
    if abs(off) <= ENDS_AGREE:
        return
    far, allowed = (display.number(one, Dimension.LENGTH) for one in (abs(off), ENDS_AGREE))
    way = "too far apart" if off > 0 else "too near to each other"
    words = f"the ends of the bent tube are {far} {way} for the seats in the file; {allowed} is allowed"
    raise NotImportedError(words, "look for a straight or an angle that is wrong, or a seat in the file")


def _check_turn(fit: Between) -> None:
    """A tube whose rotations have the wrong sign has its ends as far apart, but leaves them otherwise."""
    known = [off for off in fit.off if off is not None]
    if max(known, default=0.0) <= OTHER_WAY:
        return
    angles = " and ".join(f"{math.degrees(off):.0f}" for off in known)
    words = f"its ends would leave their fittings {angles} degrees off the way that the file says"
    advice = "see whether its rotations turn the plane or the tube (--rotation); or import its points"
    raise NotImportedError(words, advice)


def _same_bends(line: LaidLine, data: BendData) -> bool:
    """Whether the tube has these straights and bends as it is."""
    own = line.tube.centreline if line.tube else None
    if own is None or len(own.bends) != len(data.bends):
        return False
    lengths = zip(own.straights, data.straights, strict=True)
    bends = zip(own.bends, data.bends, strict=True)
    return all(abs(one - other) <= SAME_LENGTH for one, other in lengths) and all(
        abs(one.angle - other.angle) <= SAME_ANGLE
        and abs(math.remainder(one.rotation - other.rotation, math.tau)) <= SAME_ANGLE
        and abs(one.radius - other.radius) <= SAME_LENGTH
        for one, other in bends
    )


def _one_radius(evaluation: Evaluation, line: LaidLine, data: BendData) -> float | None:
    """The radius to write; None where the line's or the bench's is the same."""
    radii = sorted(bend.radius for bend in data.bends)
    if not radii:
        return None
    if radii[-1] - radii[0] > SAME_LENGTH:
        show = evaluation.display.decimals.number
        low, high = show(radii[0], Dimension.LENGTH), show(radii[-1], Dimension.LENGTH)
        words = f"its bends have radii from {low} to {high}, and a line has one bend radius"
        raise NotImportedError(words, "make all bends on one former, or import its points")
    own = line.tube.radius if line.tube else None
    same = own is not None and own.known and abs(own.middle - radii[0]) <= SAME_LENGTH
    return None if same else radii[0]
