"""The shape of a bent tube or a plastic line, with every length carrying its story."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import partial
from itertools import pairwise
from typing import TYPE_CHECKING

from firmpedal.formulas.bends import arc_length, flare_allowance, setback
from firmpedal.lay.centreline import Centreline, Impossible, centreline
from firmpedal.lay.spread import spread
from firmpedal.model.circuit import Flare
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Mark, Missing, Step, Value, all_missing, apply, exactly, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.lay.spread import Bounds
    from firmpedal.model.bench import Bench
    from firmpedal.model.circuit import Line
    from firmpedal.model.space import Position
    from firmpedal.model.stock import Tube

SOURCE = "tube-bending-formulas"
FLARE_HALF_ANGLES = {Flare.SINGLE_37: 37, Flare.DOUBLE_37: 37, Flare.SINGLE_45: 45}


@dataclass(frozen=True, slots=True)
class BendValues:
    """One bend: how far it turns, how the plane of bend turns before it, and its radius."""

    corner: int
    angle: Value
    rotation: Value
    radius: Value
    arc: Value
    setback: Value


@dataclass(frozen=True, slots=True)
class TubeShape:
    """A tube between its ends. `centreline` is None and `impossible` says why where it cannot be bent."""

    path_length: Value
    radius: Value
    straights: tuple[Value, ...]
    bends: tuple[BendValues, ...]
    developed_length: Value
    cut_length: Value
    centreline: Centreline | None
    impossible: Impossible | None


def tube_shape(line: Line, stock: Tube, points: tuple[Position, ...], bench: Bench) -> TubeShape:
    """Bend a tube along its corner points with the line's radius, or else the bender's."""
    own = line.bend_radius.known or "bend_radius" in line.written
    radius = line.bend_radius if own else bench.bend_radius
    if stock.kind is LineKind.PLASTIC:  # plastic is laid by hand in easy curves: its path is its length
        radius = exactly("bend radius", Dimension.LENGTH, 0.0, Mark.DERIVED)
    coordinates = [value for point in points for value in point.coordinates]
    inputs = [*coordinates, radius]
    missing = all_missing(inputs)
    if missing:
        return _unknown_shape(line, radius, missing, None)
    middle = _bent(tuple(value.middle for value in inputs))
    if isinstance(middle, Impossible):
        bendable = Missing(line.place, f"a path of {line.name} that can be bent")
        return _unknown_shape(line, radius, (bendable,), middle)
    bounds = spread(partial(_numbers, middle), inputs)
    if bounds is None:
        what = f"the points of {line.name} more closely: inside their range the tube changes its bends"
        return _unknown_shape(line, radius, (Missing(line.place, what),), None)
    mark = max(value.mark for value in inputs)
    return _shape(line, stock, bench, middle, bounds, mark, radius)


def _bent(numbers: tuple[float, ...]) -> Centreline | Impossible:
    *flat, radius = numbers
    points = tuple((flat[n], flat[n + 1], flat[n + 2]) for n in range(0, len(flat), 3))
    return centreline(points, radius)


def _numbers(middle: Centreline, flat: tuple[float, ...]) -> tuple[float, ...] | None:
    line = _bent(flat)
    if isinstance(line, Impossible):
        return None
    segments = [math.dist(one, other) for one, other in pairwise(line.corners)]
    angles = [
        number
        for bend, like in zip(line.bends, middle.bends, strict=False)
        for number in (bend.angle, _near(bend.rotation, like.rotation))
    ]
    return (line.developed_length, line.polyline_length, *line.straights, *segments, *angles)


def _near(rotation: float, like: float) -> float:
    """Count a rotation on from another, so that a half turn this way and that way lie side by side."""
    return like + math.remainder(rotation - like, math.tau)


def _shape(
    line: Line,
    stock: Tube,
    bench: Bench,
    middle: Centreline,
    bounds: tuple[Bounds, ...],
    mark: Mark,
    radius: Value,
) -> TubeShape:
    place, mark = line.place, max(mark, Mark.DERIVED)
    count = len(middle.straights)
    turns = bounds[2 + 2 * count :]
    bends = tuple(
        _bend(number, bend.corner, turns[2 * number : 2 * number + 2], mark, place, radius)
        for number, bend in enumerate(middle.bends)
    )
    straights = tuple(
        _straight(number, bounds[2 + number], bounds[2 + count + number], mark, place, bends)
        for number in range(count)
    )
    pieces = tuple((f"s{n}", value) for n, value in enumerate(straights, 1))
    pieces += tuple((f"a{n}", bend.arc) for n, bend in enumerate(bends, 1))
    step = Step(" + ".join(symbol for symbol, _ in pieces), pieces, "straights and arcs")
    developed = Value(
        f"developed length of {line.name}",
        Dimension.LENGTH,
        bounds[0].span,
        mark,
        f"{place}.developed length",
        SOURCE,
        step,
    )
    along = Step("sum of the distances between the points", bounds[1].inputs)
    whole = bounds[1].span
    path = Value(f"path of {line.name}", Dimension.LENGTH, whole, mark, f"{place}.path", SOURCE, along)
    allowance = flare_allowance_of(line, stock, bench)
    cut = total(f"cut length of {line.name}", (developed, allowance, allowance), f"{place}.cut length")
    return TubeShape(path, radius, straights, bends, developed, cut, middle, None)


def _straight(
    number: int,
    found: Bounds,
    segment: Bounds,
    mark: Mark,
    place: str,
    bends: tuple[BendValues, ...],
) -> Value:
    """One straight: the distance between two corners less the setback of the bend at each."""
    name = f"straight {number + 1}"
    corners = f"distance between corners {number + 1} and {number + 2}"
    apart = Step("|B - A|", segment.inputs) if segment.movers else None
    where = f"{place}.distance {number + 1}"
    whole = Value(corners, Dimension.LENGTH, segment.span, mark, where, step=apart)
    setbacks = [bend.setback for bend in bends[max(number - 1, 0) : number + 1]]
    inputs = (("c", whole), *((f"t{n}", value) for n, value in enumerate(setbacks, 1)))
    equation = " - ".join(symbol for symbol, _ in inputs)
    step = Step(equation, inputs)
    return Value(name, Dimension.LENGTH, found.span, mark, f"{place}.{name}", SOURCE, step)


def _bend(
    number: int, corner: int, found: tuple[Bounds, ...], mark: Mark, place: str, radius: Value
) -> BendValues:
    name, twist = f"bend {number + 1}", f"rotation {number + 1}"
    turn = Step("atan2(|u x v|, u . v)", found[0].inputs, "turn between the straights u and v")
    angle = Value(name, Dimension.ANGLE, found[0].span, mark, f"{place}.{name}", SOURCE, turn)
    note = "turn of the plane of bend, n to m, seen along u"
    planes, span = Step("atan2((n x m) . u, n . m)", found[1].inputs, note), homed(found[1].span)
    rotation = Value(
        f"rotation before {name}", Dimension.ANGLE, span, mark, f"{place}.{twist}", SOURCE, planes
    )
    size = {"centreline_radius": radius, "bend_angle": angle}
    arc = apply(arc_length, f"arc of {name}", place=f"{place}.arc {number + 1}", **size)
    back = apply(setback, f"setback of {name}", place=f"{place}.setback {number + 1}", **size)
    return BendValues(corner, angle, rotation, radius, arc, back)


def homed(span: tuple[float, float]) -> tuple[float, float]:
    """Shift a span of rotation by whole turns until its middle is in (-pi, pi]."""
    middle = (span[0] + span[1]) / 2
    turns = math.ceil(middle / math.tau - 0.5) * math.tau
    return (span[0] - turns, span[1] - turns) if turns else span


def flare_allowance_of(line: Line, stock: Tube, bench: Bench) -> Value:
    """What one flare takes of the tube: the builder's own figure, else from the flare's shape."""
    if bench.flare_allowance.known or stock.kind is LineKind.PLASTIC:
        return bench.flare_allowance
    half_angle = exactly(
        "flare half angle",
        Dimension.ANGLE,
        math.radians(FLARE_HALF_ANGLES[line.flare]),
        Mark.READ,
        source="tm-1-1500-204",
    )
    return apply(
        flare_allowance,
        "flare allowance",
        place=f"{line.place}.flare allowance",
        flare_diameter=stock.flare_diameter,
        outside_diameter=stock.outside_diameter,
        half_angle=half_angle,
    )


def _unknown_shape(
    line: Line, radius: Value, missing: tuple[Missing, ...], impossible: Impossible | None
) -> TubeShape:
    def gap(label: str) -> Value:
        return Value(
            f"{label} of {line.name}", Dimension.LENGTH, None, Mark.MEASURED, line.place, missing=missing
        )

    return TubeShape(
        gap("path"), radius, (), (), gap("developed length"), gap("cut length"), None, impossible
    )
