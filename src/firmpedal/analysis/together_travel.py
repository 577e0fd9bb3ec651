"""How far pedals go when two seats press one wheel at once, at most, whoever presses first."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from firmpedal.analysis.linkage import pad_travel
from firmpedal.analysis.together import added_shares
from firmpedal.formulas.levers import pressure_pushed_behind, rise_over_inlet, stroke_drawn_on
from firmpedal.quantity import Value, apply

if TYPE_CHECKING:
    from firmpedal.analysis.results import Results
    from firmpedal.analysis.stroke import Pressing, StrokeBudget
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.quantity import Missing

BOTH = "with both seats pressing"


class Travel(StrEnum):
    """What the other seat does to the travel of a pedal."""

    NO_FURTHER = "no further than alone"
    PUSHED_ON = "pushed on by what stands behind its piston"
    DRAWN_ON = "drawn on by the other seat's piston"
    NOT_RECKONED = "not reckoned"


@dataclass(frozen=True, slots=True)
class PressedTogether:
    """One cylinder with the others that press on a wheel of its.

    `strokes` and `pads` are the most that it uses, cold and hot, in whichever order they are pressed; `alone`
    the same with the other seat at rest. `asked` is what the maker has to say first, `why` says why it is not
    reckoned.
    """

    cylinder: str
    others: tuple[str, ...]
    travel: Travel
    alone: tuple[Value, Value]
    strokes: tuple[Value, Value]
    pads: tuple[Value, Value]
    asked: tuple[Missing, ...] = ()
    why: str = ""


def pressed_together_all(aircraft: Aircraft, results: Results, foot: str) -> tuple[PressedTogether, ...]:
    """Every cylinder that has a wheel in common with one of another pedal, all pressed with one foot.

    Args:
        aircraft: The aircraft.
        results: What was worked out of each pedal by itself.
        foot: The name of the foot on every pedal.
    """
    budgets = {each.cylinder: each for each in results.budgets if each.foot == foot}
    presses = {each.cylinder.name: each for each in results.presses if each.cylinder.name in budgets}
    found = []
    for name, pressing in presses.items():
        others = tuple(other for other in presses if _shares_a_wheel(pressing, presses[other]))
        if others:
            found.append(_of(name, others, aircraft, results, presses, budgets))
    return tuple(found)


def _shares_a_wheel(one: Pressing, other: Pressing) -> bool:
    """Whether two cylinders of two pedals press one caliper."""
    if one.cylinder.pedal == other.cylinder.pedal:
        return False
    return bool({each.name for each in one.calipers} & {each.name for each in other.calipers})


def _of(
    name: str,
    others: tuple[str, ...],
    aircraft: Aircraft,
    results: Results,
    presses: dict[str, Pressing],
    budgets: dict[str, StrokeBudget],
) -> PressedTogether:
    """One of two in series goes on with the other; two that only share a line push each other back."""
    budget, feeds, shares = budgets[name], results.plumbing.feeds, added_shares(aircraft)
    alone, pads = (budget.cold, budget.hot), budget.pads
    if len(others) > 1:
        why = f"{len(others) + 1} pedals press one wheel, and who is pressed after whom tells them apart"
        return PressedTogether(name, others, Travel.NOT_RECKONED, alone, alone, pads, why=why)
    (other,) = others
    if other in feeds[name] and shares[name].high > 0:
        strokes = _pushed_on(presses[name], budget, budgets[other].pressure, shares[name])
        return _made(presses[name], other, Travel.PUSHED_ON, alone, strokes, shares[name].missing)
    if name in feeds[other] and shares[other].high > 0:
        strokes = _drawn_on(presses[name], presses[other], budget, budgets[other].pressure, shares[other])
        return _made(presses[name], other, Travel.DRAWN_ON, alone, strokes, shares[other].missing)
    return PressedTogether(name, others, Travel.NO_FURTHER, alone, alone, pads)


def _pushed_on(nearer: Pressing, budget: StrokeBudget, inlet: Value, share: Value) -> tuple[Value, Value]:
    """Pressed first, the nearer cylinder alone fills the wheel to what its foot and its back make."""
    pressure = apply(
        pressure_pushed_behind,
        f"what the piston of {nearer.cylinder.name} presses {BOTH}",
        place=f"{nearer.cylinder.place}.both seats.pressure",
        own=budget.pressure.named(f"what its own foot makes of {nearer.cylinder.name}"),
        inlet=inlet.named(f"pressure at the inlet of {nearer.cylinder.name}"),
        added=share,
    )
    return nearer.strokes_at(pressure, f"{budget.foot}, {BOTH}")


def _drawn_on(
    farther: Pressing, nearer: Pressing, budget: StrokeBudget, own: Value, share: Value
) -> tuple[Value, Value]:
    """Pressed first, the farther cylinder fills all; the nearer one, going on, fills up behind from it."""
    place = f"{farther.cylinder.place}.both seats"
    rise = apply(
        rise_over_inlet,
        f"rise that {nearer.cylinder.name} makes on top",
        place=f"{place}.rise",
        own=own.named(f"what its own foot makes of {nearer.cylinder.name}"),
        inlet=budget.pressure.named(f"pressure at the inlet of {nearer.cylinder.name}"),
        added=share,
    )
    volumes = nearer.pushed_on(rise, f"{budget.foot}, {BOTH}")
    cold, hot = (
        apply(
            stroke_drawn_on,
            f"{stroke.label}, {BOTH}",
            place=f"{place}.{warm}",
            stroke=stroke.named(f"{stroke.label}, alone"),
            volume=volume,
            added=share,
            bore=farther.cylinder.bore,
        )
        for stroke, volume, warm in zip((budget.cold, budget.hot), volumes, ("cold", "hot"), strict=True)
    )
    return cold, hot


def _made(
    pressing: Pressing,
    other: str,
    travel: Travel,
    alone: tuple[Value, Value],
    strokes: tuple[Value, Value],
    asked: tuple[Missing, ...],
) -> PressedTogether:
    cold, hot = (
        pad_travel(
            pressing.pedal,
            pressing.ratio,
            stroke,
            f"travel of the pad {BOTH}",
            f"{pressing.cylinder.place}.both seats.pad.{warm}",
        )
        for stroke, warm in zip(strokes, ("cold", "hot"), strict=True)
    )
    return PressedTogether(pressing.cylinder.name, (other,), travel, alone, strokes, (cold, hot), asked)
