"""What one pedal fills and pushes against, as ranges of plain figures, from the aircraft's values."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.analysis.expansion import edges
from firmpedal.analysis.feel.cases import Warmth
from firmpedal.analysis.feel.not_counted import held_back, left_out
from firmpedal.analysis.feel.terms import Link, Terms
from firmpedal.analysis.linkage import pins_of
from firmpedal.analysis.stroke import give, gives, wear_volume
from firmpedal.analysis.swelling import FROST, ROUNDING, frost_wall, line_volume, swell
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Mark, Missing, Value, all_missing, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.analysis.expansion import Edge
    from firmpedal.analysis.feel.cases import Case
    from firmpedal.analysis.stroke import Pressing
    from firmpedal.model.stock import Fluid

Range = tuple[float, float]

UNIT = 1e6  # Pa; what is proportional to pressure is worked out at this one
NOTHING: Range = (0.0, 0.0)
ENDLESS: Range = (math.inf, math.inf)  # the stroke is not known: all but its end is
HELD_SHARE: Range = (0.6, 0.7)  # of its stiffness plastic has left after an hour under load: from memory


@dataclass(frozen=True)
class Filled:
    """Ranges from firm to soft, in SI; `slopes` are volumes per pressure by how warm the lines run.

    `curves` are hoses that take more by a curve of their own, the same however warm. `missing` is without
    what there is no curve at all, `hot_missing` without what there is none hot, `frost_missing` none in
    frost, `worn_missing` none of worn pads. What the file does not give is not counted: `left_out` comes on
    top of the travel, `held_back` takes from the pressure, and so from the travel.
    """

    gap: Range
    slopes: dict[Warmth, Range]
    curves: tuple[tuple[Edge, Edge], ...]
    fluid: Range
    wear: Range
    modulus: Range
    area: Range
    full_stroke: Range
    free_stroke: Range
    spring: Range
    spring_rate: Range
    friction: Range
    ratio: Range
    link: tuple[float, float, float, float] | None
    mark: Mark = Mark.DERIVED
    missing: tuple[Missing, ...] = ()
    hot_missing: tuple[Missing, ...] = ()
    frost_missing: tuple[Missing, ...] = ()
    worn_missing: tuple[Missing, ...] = ()
    left_out: tuple[Missing, ...] = ()
    held_back: tuple[Missing, ...] = ()

    @property
    def not_counted(self) -> tuple[Missing, ...]:
        """All that is not counted because the file does not give it."""
        return (*self.left_out, *self.held_back)

    @property
    def softens(self) -> bool:
        """Whether anything is softer hot than cold."""
        return self.slopes[Warmth.HOT] != self.slopes[Warmth.COLD]

    def lacks(self, case: Case) -> tuple[Missing, ...]:
        """What is missing for one case."""
        by_warmth = {Warmth.COLD: (), Warmth.FROST: self.frost_missing}
        return (
            *self.missing,
            *by_warmth.get(case.warmth, self.hot_missing),
            *(self.worn_missing if case.worn else ()),
        )


def filled(pressing: Pressing) -> Filled:
    """Gather what one pedal fills, when it is pressed by itself."""
    cylinder, fluid = pressing.cylinder, pressing.fluid
    one = exactly("a unit of pressure", Dimension.PRESSURE, UNIT, Mark.DERIVED)
    swells = [
        swell(line, one, "unit", pressing.hot.get(line.name), pressing.fluid) for line in pressing.lines
    ]
    given = [give(each, one, "unit") for each in pressing.calipers if gives(each)]
    volumes = [line_volume(line) for line in pressing.lines]
    wear = [wear_volume(each).volume for each in pressing.calipers]
    wanted = [
        *pressing.gaps,
        *(each.wall for each in swells),
        *volumes,
        cylinder.bore,
        pressing.ratio,
        *((cylinder.stroke,) if _goes_by_stroke(pressing) else ()),
    ]
    asked = () if fluid is not None else (Missing("fluid", "which brake fluid is used"),)
    modulus = fluid.bulk_modulus if fluid is not None else None
    wanted += [modulus] if modulus is not None else []
    hot = [each.hot_wall for each in swells]
    frost = [frost_wall(line, one, "unit") for line in pressing.lines]
    straight = [not line.expansion_curve for line in pressing.lines]
    walls = {
        warmth: [_span(value) if even else NOTHING for value, even in zip(values, straight, strict=True)]
        for warmth, values in (
            (Warmth.COLD, [each.wall for each in swells]),
            (Warmth.HOT, hot),
            (Warmth.FROST, frost),
        )
    }
    rest = cylinder.return_spring.at_rest
    return Filled(
        gap=_sum(pressing.gaps),
        slopes=_slopes(pressing, walls, given),
        curves=tuple(both for line in pressing.lines if line.expansion_curve and (both := edges(line))),
        fluid=_sum(volumes),
        wear=_sum(wear),
        modulus=_span(modulus)[::-1] if modulus is not None else NOTHING,
        area=_area(_span(cylinder.bore)),
        full_stroke=cylinder.stroke.span or ENDLESS,
        free_stroke=_span(cylinder.free_stroke),
        spring=_span(rest)[::-1],
        spring_rate=_rate(pressing)[::-1],
        friction=_span(cylinder.seal_friction)[::-1],
        ratio=_span(pressing.ratio),
        link=_link(pressing),
        mark=max(Mark.DERIVED, *(value.mark for value in (*wanted, *given))),
        missing=(*asked, *all_missing(wanted)),
        hot_missing=all_missing(hot),
        frost_missing=(*_too_cold(fluid), *all_missing(frost)),
        worn_missing=all_missing(wear),
        left_out=tuple(left_out(pressing)),
        held_back=tuple(held_back(pressing)),
    )


def _goes_by_stroke(pressing: Pressing) -> bool:
    """Whether more than the travel's end hangs on the stroke: a lever by its pins, or a spring's rate."""
    return pins_of(pressing.pedal) is not None or pressing.cylinder.return_spring.pressed.known


def _too_cold(fluid: Fluid | None) -> tuple[Missing, ...]:
    """Whether the fluid still flows in frost has to be known."""
    if fluid is None or (fluid.viscosity_at and fluid.viscosity_at[0][0] <= FROST + ROUNDING):
        return ()
    return (Missing("fluid", f"how thick {fluid.name} is at -40 degrees"),)


def _span(value: Value) -> Range:
    return value.span or NOTHING


def _sum(values: Iterable[Value]) -> Range:
    spans = [_span(value) for value in values]
    return sum(low for low, _ in spans), sum(high for _, high in spans)


def _area(bore: Range) -> Range:
    """The larger bore is the firmer: the pressure falls more than the stroke is worth."""
    return math.pi / 4 * bore[1] ** 2, math.pi / 4 * bore[0] ** 2


def _rate(pressing: Pressing) -> Range:
    spring, stroke = pressing.cylinder.return_spring, pressing.cylinder.stroke
    if not (spring.at_rest.known and spring.pressed.known and stroke.known and stroke.low > 0):
        return NOTHING
    return tuple(  # type: ignore[return-value]  # two of two
        (end - rest) / stroke.middle
        for rest, end in zip(_span(spring.at_rest), _span(spring.pressed), strict=True)
    )


def _slopes(pressing: Pressing, walls: dict[Warmth, list[Range]], given: list[Value]) -> dict[Warmth, Range]:
    """Volume per pressure of all walls and of what gives, by warmth.

    Half way to hot is half way to the row of the plastic's table that is taken for hot; between two rows
    the stiffness is taken to fall by equal shares for equal steps.
    """
    caliper = _sum(given)
    plastic = [line.stock.kind is LineKind.PLASTIC for line in pressing.lines]
    cold, hot = walls[Warmth.COLD], walls[Warmth.HOT]
    warm = [(math.sqrt(a * c), math.sqrt(b * d)) for (a, b), (c, d) in zip(cold, hot, strict=True)]
    held = [
        (low / HELD_SHARE[1], high / HELD_SHARE[0]) if soft else (low, high)
        for (low, high), soft in zip(hot, plastic, strict=True)
    ]
    parts = {**walls, Warmth.WARM: warm, Warmth.HELD: held}
    return {
        warmth: tuple((caliper[n] + sum(each[n] for each in found)) / UNIT for n in (0, 1))  # type: ignore[misc]
        for warmth, found in parts.items()
    }


def _link(pressing: Pressing) -> tuple[float, float, float, float] | None:
    """The lever by its pins where the file has them, in the middle of their ranges."""
    pins = pins_of(pressing.pedal)
    if pins is None:
        return None
    pivot, pad, rod, base = (tuple(value.middle for value in point.coordinates) for point in pins)
    one, other = math.dist(pivot, rod), math.dist(pivot, base)
    return math.dist(rod, base), abs(one - other), one + other, math.dist(pivot, pad)


def terms_of(found: Filled, cases: tuple[Case, ...]) -> Terms:
    """Two rows of terms for each case: as firm as it can be, then as soft."""
    rows = [_row(found, case, end) for case in cases for end in (0, 1)]
    columns = {name: np.array([row[name] for row in rows]) for name in rows[0] if name != "slope"}
    pieces = [_pieces(found, case, end) for case in cases for end in (0, 1)]
    slopes = [[row["slope"], *(slope for _, slope in more)] for row, more in zip(rows, pieces, strict=True)]
    knots = [[0.0, *(knot for knot, _ in more)] for more in pieces]
    return Terms(**columns, knots=np.array(knots), slopes=np.array(slopes), link=_links(found, len(rows)))


def _pieces(found: Filled, case: Case, end: int) -> list[tuple[float, float]]:
    """Where hoses with a curve bend, and what their slope grows by there; in frost the firm edge is none."""
    stiff = case.warmth is Warmth.FROST and end == 0
    pieces = [piece for both in found.curves for piece in both[end].pieces]
    return [(knot, 0.0 if stiff else slope) for knot, slope in pieces]


def _row(found: Filled, case: Case, end: int) -> dict[str, float]:
    volume = found.fluid[end] + (found.wear[end] if case.worn else 0.0)
    return {
        "area": found.area[end],
        "full_stroke": found.full_stroke[end],
        "free_stroke": found.free_stroke[end],
        "gap": found.gap[end],
        "slope": found.slopes[case.warmth][end],
        "fluid": volume * (1 - case.air),
        "modulus": math.inf if case.warmth is Warmth.FROST and end == 0 else found.modulus[end],
        "air": volume * case.air,
        "exponent": case.exponent,
        "spring": found.spring[end],
        "spring_rate": found.spring_rate[end],
        "friction": found.friction[end],
        "ratio": found.ratio[end],
    }


def _links(found: Filled, count: int) -> Link | None:
    """The same lever for every row; a range of its ratio at rest is laid on the pad's arm."""
    if found.link is None:
        return None
    length, difference, total, arm = found.link
    middle = sum(found.ratio) / 2
    ends = np.array([found.ratio[n % 2] / middle for n in range(count)])
    same = np.ones(count)
    return Link(length * same, difference * same, total * same, arm * ends)
