"""What the file does not give of a pedal's feel, and which way the travel would go with it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.stroke import gives
from firmpedal.quantity import Missing

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.analysis.stroke import Pressing


def left_out(pressing: Pressing) -> Iterable[Missing]:
    """What the file does not give of what takes travel, in the order in which it is looked up."""
    cylinder = pressing.cylinder
    if not cylinder.free_stroke.known:
        yield Missing(cylinder.free_stroke.place, f"free stroke of {cylinder.name}")
    for caliper in pressing.calipers:
        if not gives(caliper):
            yield Missing(caliper.gives.place, f"what {caliper.name} and its pads give under pressure")


def held_back(pressing: Pressing) -> Iterable[Missing]:
    """What the file does not give of what takes from the foot; a spring at rest is taken as constant."""
    cylinder, spring = pressing.cylinder, pressing.cylinder.return_spring
    if not spring.at_rest.known:
        yield Missing(spring.at_rest.place, f"return spring of {cylinder.name}")
    elif spring.at_rest_alone:
        what = f"by how much the return spring of {cylinder.name} gets stronger as it is pressed"
        yield Missing(spring.pressed.place, what)
    if not cylinder.seal_friction.known:
        yield Missing(cylinder.seal_friction.place, f"seal friction of {cylinder.name}")
