"""Bands of temperature of one brake, over every set of figures in their ranges, narrowed by a trial."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.analysis.heating.samples import CALIPER, FLUID, LINE, drawn, every_share, moved_onto
from firmpedal.analysis.heating.situations import IN_A_ROW, SITUATIONS, course, films, peaks

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from firmpedal.analysis.heating.figures import Spans
    from firmpedal.analysis.heating.network import Array
    from firmpedal.analysis.heating.whole import BrakeHeat

    Ends = tuple[Array, Array, Array]

Bands = tuple[tuple[tuple[float, float], ...], ...]

LEAST_RISE = 1e-9  # K; from no speed nothing warms
CLOCK = ("stop_time", "between", "taxi_time")  # one for all sets where a picture has one time along it
UNFOUND = 0.15  # of a narrowed band's width, on each side: brute force finds ends half as far out


@dataclass(frozen=True, slots=True)
class Trial:
    """A trial as plain numbers: the spans of its own figures, its stops, and how much warmer the port was."""

    spans: Spans
    stops: int
    rise: tuple[float, float]


@lru_cache(maxsize=64)
def bands(spans: Spans, pistons: float, stops: int, trial: Trial | None) -> tuple[Bands, bool | None]:
    """The lowest and highest peak of every lump above the air, in every situation.

    Args:
        spans: Ranges of all figures by name [SI].
        pistons: Area that fluid stands behind [m^2].
        stops: In a row.
        trial: Keeps the sets of figures that agree with it; if none can, all are kept.

    Returns:
        For each situation and each lump its band [K], and whether the trial agrees with any set.
    """
    known, names = dict(spans), tuple(name for name, _ in spans)

    def ends(shares: Array) -> Ends:
        figures = drawn(known, shares)
        cooling = films(figures, pistons)
        highest = np.stack([peaks(name, figures, cooling, stops) for name in SITUATIONS], axis=1)
        return highest.min(axis=0), highest.max(axis=0), np.ptp(highest, axis=0)

    (low, high), agrees = _agreeing(names, pistons, trial, ends)
    pairs = np.stack((low, high), axis=-1).tolist()
    return tuple(tuple((least, most) for least, most in band) for band in pairs), agrees


def _agreeing(
    names: tuple[str, ...], pistons: float, trial: Trial | None, ends: Callable[[Array], Ends]
) -> tuple[tuple[Array, Array], bool | None]:
    """The least and the most of the sets that agree with a trial, with room for what was not found.

    Args:
        names: Of all figures.
        pistons: Area that fluid stands behind [m^2].
        trial: The trial; none for all sets.
        ends: The least and the most that sets lead to, and how far their peaks are apart.
    """
    shares, agrees = _kept(names, pistons, trial)
    low, high, apart = ends(shares)
    if agrees:
        least, most, _ = ends(every_share(names))
        room = UNFOUND * apart
        low, high = np.maximum(least, low - room), np.minimum(most, high + room)
    return (low, high), agrees


@lru_cache(maxsize=16)
def _kept(names: tuple[str, ...], pistons: float, trial: Trial | None) -> tuple[Array, bool | None]:
    """The sets of figures that agree with a trial, as shares of their ranges; all, if none can."""
    everything = every_share(names)
    if trial is None:
        return everything, None
    spans, count = dict(trial.spans), trial.stops

    def shown(shares: Array) -> Array:
        tried = drawn(spans, shares)
        found: Array = peaks(IN_A_ROW, tried, films(tried, pistons), count)[:, CALIPER]
        return found

    seen, (low, high) = shown(everything), trial.rise
    if seen.min() > high or seen.max() < low:
        return everything, False
    agreeing = everything[(seen >= low) & (seen <= high)]
    edges = [moved_onto(everything, seen, label, shown) for label in (low, high)]
    return np.concatenate((agreeing, *edges)), True


@lru_cache(maxsize=64)
def following(trial: Trial, pistons: float) -> tuple[tuple[float, float], tuple[float, float]]:
    """How much of the caliper's greatest rise fluid and end of the line take, least and most of all sets."""
    known, names = dict(trial.spans), tuple(name for name, _ in trial.spans)
    figures = drawn(known, every_share(names))
    rises = peaks(IN_A_ROW, figures, films(figures, pistons), trial.stops)
    shares = rises[:, (FLUID, LINE)] / np.maximum(rises[:, [CALIPER]], LEAST_RISE)
    shares = np.minimum(shares, 1.0)  # what the caliper warms is not warmer; a look between may say so
    least, most = shares.min(axis=0), shares.max(axis=0)
    fluid, line = zip(least.tolist(), most.tolist(), strict=True)
    return fluid, line


def _one_clock(spans: Spans) -> dict[str, tuple[float, float]]:
    """The same ranges, but of what takes time its middle alone."""
    known = dict(spans)
    return known | {name: (sum(known[name]) / 2,) * 2 for name in CLOCK}


def courses(
    brake: BrakeHeat, name: str, looks: int = 60
) -> tuple[Array, Mapping[int, tuple[Array, Array]]] | None:
    """Bands of temperature over time in one situation, for a picture; None before it is known.

    What takes time takes the middle of its range, so that all sets have one clock.

    Returns:
        Times [s], and for each lump its lowest and highest temperature above the air at each time [K].
    """
    if brake.pistons is None or brake.stops is None or not brake.peaks[0].disc.known:
        return None
    spans, trial = _one_clock(brake.figures.spans), brake.trial
    names, pistons, stops = tuple(spans), brake.pistons, brake.stops
    if trial is not None:  # the sets that agree with it do so by this clock
        trial = replace(trial, spans=tuple(_one_clock(trial.spans).items()))

    def seen(shares: Array) -> tuple[Array, Array]:
        figures = drawn(spans, shares)
        return course(name, figures, films(figures, pistons), stops, looks)

    def ends(shares: Array) -> Ends:
        found = seen(shares)[1]
        return found.min(axis=0), found.max(axis=0), np.ptp(found.max(axis=1), axis=0)

    (low, high), _ = _agreeing(names, pistons, trial, ends)
    clock, _ = seen(every_share(names)[:1])
    return clock[0], {n: (low[:, n], high[:, n]) for n in range(4)}
