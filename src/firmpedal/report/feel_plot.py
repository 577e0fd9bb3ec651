"""Force against travel as a picture."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.analysis.feel.cases import MUCH, Case, Warmth
from firmpedal.report.feel_pedals import COLD, HOT
from firmpedal.report.feel_words import case_words
from firmpedal.report.plot import Axis, Band, Curve, Limit, plot
from firmpedal.units import Dimension, to_unit

if TYPE_CHECKING:
    from firmpedal.analysis.feel.terms import Array
    from firmpedal.model.display import Display
    from firmpedal.report.feel_pedals import Felt
    from firmpedal.report.sheet import Drawing

WIDE = 0.06  # of the travel: a range wider than this is drawn as a band, a narrower one as its soft edge
ROOM = 1.06  # the axis of travel beyond what is shown
DRAWN = (COLD, HOT, Case(Warmth.HELD), Case(air=MUCH), Case(Warmth.HOT, air=MUCH))
Edge = tuple["Array", "Array"]
ACROSS = 40  # places along the travel at which a band is drawn


@dataclass(frozen=True, slots=True)
class Named:
    """The pedals of one option."""

    option: str
    felt: Felt


def feel_plot(felt: Felt, display: Display) -> Drawing:
    """The curves of pedals that feel alike, with the ends of their travel."""
    shown = [case for case in DRAWN if case in felt.feel.cases]
    if felt.softest == HOT:  # five curves are a tangle: what heat adds is more than what air adds to it
        shown.remove(Case(Warmth.HOT, air=MUCH))
    caption = f"Force against travel of {' and '.join(felt.names)}"
    return _plotted([(case_words(felt, case), felt, case) for case in shown], display, caption)


def options_plot(options: tuple[Named, ...], display: Display) -> Drawing:
    """The softest case of each option, without its band."""
    shown = [(each.option, each.felt, each.felt.softest) for each in options]
    return _plotted(shown, display, "Force against travel, each option at its softest", bands=False)


def _plotted(
    shown: list[tuple[str, Felt, Case]], display: Display, caption: str, *, bands: bool = True
) -> Drawing:
    units = (_unit(display, Dimension.LENGTH), _unit(display, Dimension.FORCE))
    limits = list(dict.fromkeys(each for _, felt, _ in shown for each in _limits(felt, units[0])))
    most = max(to_unit(felt.feel.forces[-1].high, units[1]) for _, felt, _ in shown)
    far = max(to_unit(float(_edge(felt, case, 1)[0][-1]), units[0]) for _, felt, case in shown)
    end = min(far, max((each.at for each in limits), default=far))
    along, up = (
        Axis(f"pad travel, {units[0]}", 0.0, end * ROOM),
        Axis(f"force on the pad, {units[1]}", 0.0, most),
    )
    curves = [
        _drawn(words, _edges(felt, case, units), case, along.high, bands=bands) for words, felt, case in shown
    ]
    return plot(along, up, curves, limits, caption)


def _unit(display: Display, dimension: Dimension) -> str:
    return display.unit(dimension) or ""


def _limits(felt: Felt, length: str) -> list[Limit]:
    found = []
    full = felt.feel.full_travel
    if full.known:
        found.append(Limit("cylinder at its end", to_unit(full.low, length), upright=True))
    pedal = felt.feel.pressing.pedal
    stop = pedal.brake.travel_to_stop if pedal is not None else None
    if stop is not None and stop.known:
        found.append(Limit("pad at its stop", to_unit(stop.low, length), upright=True))
    return found


def _edge(felt: Felt, case: Case, end: int) -> Edge:
    """Travel and force of one edge of a case: from rest with the spring alone, then as the pads press."""
    row = 2 * felt.feel.cases.index(case) + end
    line = felt.feel.curves
    travel = np.concatenate(([0.0], line.travel[row]))
    force = np.concatenate((line.force[row, :1], line.force[row]))
    kept = np.isfinite(travel) & np.isfinite(force)
    return travel[kept], force[kept]


def _edges(felt: Felt, case: Case, units: tuple[str, str]) -> tuple[Edge, Edge]:
    """Both edges of a case, firm and soft, in the units that are shown."""
    found = []
    for end in (0, 1):
        parts = zip(_edge(felt, case, end), units, strict=True)
        travel, force = (np.array([to_unit(float(each), unit) for each in part]) for part, unit in parts)
        found.append((travel, force))
    return found[0], found[1]


def _drawn(words: str, edges: tuple[Edge, Edge], case: Case, furthest: float, *, bands: bool) -> Curve | Band:
    (firm, _), (soft, force) = edges
    wide, air = soft[-1] - firm[-1] > WIDE * soft[-1], bool(case.air)
    if air or not wide or not bands:
        name = f"{words}, at its softest" if wide and bands else words
        points = tuple(zip(soft.tolist(), force.tolist(), strict=True))
        return Curve(name, points, dashed=air, bold=not air and case.warmth is not Warmth.HELD)
    return Band(words, _heights(edges[1], furthest), _heights(edges[0], furthest))


def _heights(edge: Edge, furthest: float) -> tuple[tuple[float, float], ...]:
    """An edge of a band at even places along the travel; past its end it goes on up as steeply."""
    travel, force = edge
    places = np.linspace(0.0, furthest, ACROSS + 1)
    steep = (force[-1] - force[-2]) / max(travel[-1] - travel[-2], 1e-12)
    heights = np.interp(places, travel, force) + np.maximum(places - travel[-1], 0.0) * steep
    return tuple(zip(places.tolist(), heights.tolist(), strict=True))
