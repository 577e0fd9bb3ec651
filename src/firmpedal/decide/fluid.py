"""How much fluid to buy: what lines, reservoirs and cylinders hold, as much again, and what pads take."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.bleeding import stroke_volume
from firmpedal.model.display import listed
from firmpedal.model.kinds import MasterCylinder, Reservoir
from firmpedal.quantity import Value, total

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation

BEHIND = "what stands behind the caliper's pistons with new pads"


@dataclass(frozen=True, slots=True)
class FluidPlan:
    """Fluid in groups, each with its sum; `on_top` says in words what nobody can add up from the file.

    `held` is bought twice, because bleeding and spilling take as much again, which is our estimate; what
    the pads take as they wear, in `pads`, is bought once.
    """

    held: tuple[Value, ...]
    pads: Value | None
    on_top: tuple[str, ...]

    @property
    def amount(self) -> Value:
        """All that is to buy; unknown while a line's or a reservoir's content is."""
        once = total("fluid that lines, reservoirs and cylinders hold", self.held)
        parts = (once, once) if self.pads is None else (once, once, self.pads)
        return total("fluid to buy", parts)


def fluid_plan(evaluation: Evaluation) -> FluidPlan | None:
    """Add up what the file gives; None where there is nothing to fill.

    Lines and reservoirs of their own have to be known. A cylinder holds its bore over its stroke, and pads
    take piston area over wear; where such a figure is missing it is said and not added.
    """
    components = evaluation.aircraft.components
    cylinders = [part for part in components if isinstance(part, MasterCylinder)]
    tanks = [part.capacity for part in components if isinstance(part, Reservoir)]
    groups = {"lines": list(evaluation.results.volumes), "reservoirs": tanks}
    if not any(groups.values()):
        return None
    built_in = [part for part in cylinders if part.has_reservoir]
    groups["reservoirs"] += [part.capacity for part in built_in if part.capacity.known]
    swept = {part.name: stroke_volume(part) for part in cylinders}
    groups["cylinders"] = [volume for volume in swept.values() if volume.known]
    wear = {each.caliper: each.volume for each in evaluation.results.wear}
    worn = [volume for volume in wear.values() if volume.known]
    on_top = [BEHIND] if evaluation.aircraft.calipers else []
    on_top += _named("the reservoir of", [part.name for part in built_in if not part.capacity.known])
    on_top += _named("the cylinder of", [name for name, volume in swept.items() if not volume.known])
    on_top += _named("the pad wear of", [name for name, volume in wear.items() if not volume.known])
    return FluidPlan(
        tuple(total(name, volumes) for name, volumes in groups.items() if volumes),
        total("pads from new to worn", worn) if worn else None,
        tuple(on_top),
    )


def _named(words: str, names: list[str]) -> list[str]:
    return [f"{words} {listed(names)}"] if names else []
