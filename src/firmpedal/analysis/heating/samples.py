"""Sets of figures drawn from ranges: every corner that can matter, and many sets inside."""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.analysis.heating.network import Array, Lumps

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

INSIDE = 512  # sets of figures inside the ranges
WAYS, HALVINGS = 1024, 14  # ways between corners on which a trial is met, and how closely it is
SEED = 20
WATER = 4.18e6  # J/m^3 K, a litre of water takes 4.18 kJ for each degree
ALUMINIUM = 900.0  # J/kg K
DISC, CALIPER, FLUID, LINE = range(4)

# More heat, and less of it carried away, make every lump warmer at every time: these go to one end together.
HOTTER = ("energy", "taxi_power", "taxi_time")
COOLER = ("caliper_area", "line_to_air", "moving", "standing", "between", "disc_radius", "stop_time")
# These can work either way: every corner of them is tried.
EITHER = (
    ("share",),
    ("disc_mass", "disc_heat"),
    ("caliper_mass", "caliper_heat"),
    ("fluid_heat", "fluid_depth"),
    ("line_mass",),
    ("disc_to_caliper",),
    ("caliper_to_fluid",),
    ("caliper_to_line", "fluid_to_line"),
)

Figures = dict[str, Array]


def drawn(spans: Mapping[str, tuple[float, float]], shares: Array) -> Figures:
    """Sets of figures: each name with one number for each set, at its share of the way through its range."""
    return {name: low + (high - low) * shares[:, n] for n, (name, (low, high)) in enumerate(spans.items())}


def every_share(names: tuple[str, ...]) -> Array:
    """How far through its range each figure stands in every set, corners first (sets, names)."""
    corners = list(product((0.0, 1.0), repeat=len(EITHER)))
    rows: list[dict[str, float]] = []
    for hot in (0.0, 1.0):
        for corner in corners:
            row = dict.fromkeys(HOTTER, hot) | dict.fromkeys(COOLER, 1.0 - hot)
            row |= {name: end for names, end in zip(EITHER, corner, strict=True) for name in names}
            rows.append(row)
    ends = np.array([[row[name] for name in names] for row in rows])
    return np.concatenate((ends, _inside(len(names))))


def moved_onto(shares: Array, shown: Array, wanted: float, show: Callable[[Array], Array]) -> Array:
    """Sets that show just a wanted figure: on ways from one corner that shows less to one that shows more.

    A way changes one figure after the other, in any order, so that all but one stand at an end of their
    range: there what else they lead to is at its most or its least.

    Args:
        shares: Sets of shares (sets, names).
        shown: What each of them shows.
        wanted: What is to be shown.
        show: What sets show, in the same unit.
    """
    ends = ((shares == 0) | (shares == 1)).all(axis=1)
    less, more = shares[ends & (shown < wanted)], shares[ends & (shown > wanted)]
    if not len(less) or not len(more):
        return shares[:0]
    draw = np.random.default_rng(SEED)
    start, goal = (each[draw.integers(len(each), size=WAYS)] for each in (less, more))
    turn = np.argsort(draw.random(start.shape), axis=1)
    near, far = np.zeros(WAYS), np.ones(WAYS)

    def along(place: Array) -> Array:
        way: Array = start + np.clip(place[:, None] * start.shape[1] - turn, 0, 1) * (goal - start)
        return way

    for _ in range(HALVINGS):
        middle = (near + far) / 2
        over = show(along(middle)) > wanted
        near, far = np.where(over, near, middle), np.where(over, middle, far)
    return along(near)


def _inside(count: int) -> Array:
    """Sets spread evenly: along each figure every band of it comes once (a Latin hypercube)."""
    draw = np.random.default_rng(SEED)
    columns = [(draw.permutation(INSIDE) + draw.random(INSIDE)) / INSIDE for _ in range(count)]
    return np.stack(columns, axis=1)


def lumps_of(figures: Figures, pistons: float, film: str) -> Lumps:
    """The network of every set.

    Args:
        figures: Sets of figures by name.
        pistons: Area of all pistons that fluid stands behind [m^2].
        film: Which heat transfer to the air: `moving` or `standing`.
    """
    sets = len(figures["energy"])
    capacities = np.stack(
        (
            figures["disc_mass"] * figures["disc_heat"],
            figures["caliper_mass"] * figures["caliper_heat"],
            pistons * figures["fluid_depth"] * figures["fluid_heat"] * WATER,
            figures["line_mass"] * ALUMINIUM,
        ),
        axis=1,
    )
    links = np.zeros((sets, 4, 4))
    for one, other, name in (
        (DISC, CALIPER, "disc_to_caliper"),
        (CALIPER, FLUID, "caliper_to_fluid"),
        (CALIPER, LINE, "caliper_to_line"),
        (FLUID, LINE, "fluid_to_line"),
    ):
        links[:, one, other] = links[:, other, one] = figures[name]
    to_air = np.zeros((sets, 4))
    to_air[:, DISC] = figures[film] * 2 * np.pi * figures["disc_radius"] ** 2
    to_air[:, CALIPER] = figures[film] * figures["caliper_area"]
    to_air[:, LINE] = figures["line_to_air"]
    return Lumps(capacities, links, to_air)


def heat_into(figures: Figures, power: Array) -> Array:
    """The heat of a brake shared out: into the disc, and the rest through the pads into the caliper."""
    into = np.zeros((len(power), 4))
    into[:, DISC] = power * figures["share"]
    into[:, CALIPER] = power * (1 - figures["share"])
    return into
