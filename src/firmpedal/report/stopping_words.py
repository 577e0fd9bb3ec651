"""Figures of braking as people say them: decelerations with their share of g, distances in feet or metres."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.display import listed
from firmpedal.quantity import Mark
from firmpedal.units import Dimension, show_span

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.analysis.stopping import Stopping
    from firmpedal.model.display import Display
    from firmpedal.quantity import Missing, Value

GRAVITY = 9.80665
INCHES = ("in", "ft")


def far(distance: Value, display: Display) -> str:
    """A distance on the ground, in feet or metres."""
    if distance.span is None:
        return "unknown"
    unit = "ft" if display.unit(Dimension.LENGTH) in INCHES else "m"
    return show_span(distance.span, unit, decimals=0)


def slowing(deceleration: Value, display: Display) -> str:
    """A deceleration with its share of g, in a sentence."""
    share = share_of_g(deceleration)
    return f"{display.value(deceleration)} ({share})" if share else "unknown"


def slowing_cell(deceleration: Value, display: Display) -> str:
    """A deceleration over its share of g, in a table."""
    return "\n".join(words for words in (display.value(deceleration), share_of_g(deceleration)) if words)


def share_of_g(deceleration: Value) -> str:
    """A deceleration as a share of g; empty where it is unknown."""
    if deceleration.span is None:
        return ""
    low, high = (f"{bound / GRAVITY:.2f}" for bound in deceleration.span)
    return f"{low if low == high else f'{low} to {high}'} g"


def of_one_wheel(stop: Stopping) -> tuple[str, ...]:
    """Which calipers brake one wheel, and which may; nothing where each has a wheel of its own."""
    braked = stop.stance.braked
    sure = [group for group in braked.most if len(group) > 1]
    told = tuple(
        f"{listed(group)} brake one wheel: their torques add up, and they share its energy." for group in sure
    )
    unsure = [group for group in braked.fewest if len(group) > 1 and group not in sure]
    return told + tuple(
        f"Whether {listed(group)} brake one wheel is not known: energy and heat are reckoned both ways."
        for group in unsure
    )


def alike(values: Iterable[Value], display: Display) -> str:
    """Figures of several wheels: once where they are shown alike."""
    return " or ".join(dict.fromkeys(display.value(value) for value in values)) or "unknown"


def wanted(values: Iterable[Value]) -> tuple[Missing, ...]:
    """What has to be measured before these are known, each thing once."""
    found = {missing.what: missing for value in values for missing in value.missing}
    return tuple(found.values())


def usual_words(values: Iterable[Value], display: Display) -> tuple[str, ...]:
    """The figures that nobody gave: what people in the trade reckon with."""
    taken = [value for value in values if value.mark is Mark.MEMORY and value.source == "common-practice"]
    return tuple(
        dict.fromkeys(f"{_of_all(value.label)}: {display.value(value)}" for value in taken if value.known)
    )


def _of_all(label: str) -> str:
    """A figure that is taken alike for every brake, without the name of one."""
    return label.partition(" of ")[0]
