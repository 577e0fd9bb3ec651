"""What pumping the pedal does with air at a high point: whether a stroke reaches it, how many it takes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.formulas.bubbles import share_of_volume
from firmpedal.formulas.compliance import piston_volume
from firmpedal.model.aircraft import find
from firmpedal.quantity import Answer, Mark, Step, Value, apply, exactly, total
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.bleeding.rises import Setting
    from firmpedal.analysis.heights import Trap
    from firmpedal.analysis.heights_ways import Way
    from firmpedal.model.kinds import MasterCylinder

ONE = exactly("pistons of a cylinder", Dimension.NUMBER, 1.0, Mark.READ)


@dataclass(frozen=True, slots=True)
class Pumping:
    """One high point and the cylinder above it: a stroke's volume against the lines' between the two.

    `reaches` says whether a stroke let go draws the air up into the cylinder. `down` is what has to go out at
    the wheel before air from the high point does.
    """

    near: str
    caliper: str
    cylinder: str
    stroke: Value
    between: Value
    reaches: Answer
    down: Value
    strokes: Value


def pumpings(setting: Setting, way: Way) -> tuple[Pumping, ...]:
    """Each high point on a way with the next cylinder above it; none where there is no cylinder above."""
    return tuple(
        found
        for trap in setting.heights.traps
        if way.caliper in trap.calipers and trap.top == way.top and trap.spot in way.spots
        for found in _pumping(setting, way, trap)
    )


def stroke_volume(cylinder: MasterCylinder) -> Value:
    """What one cylinder pushes out from rest to the end of its stroke."""
    return apply(
        piston_volume,
        f"fluid in front of the piston of {cylinder.name}",
        place=f"{cylinder.place}.stroke volume",
        bore=cylinder.bore,
        count=ONE,
        travel=cylinder.stroke,
    )


def _pumping(setting: Setting, way: Way, trap: Trap) -> Iterator[Pumping]:
    peak = way.spots.index(trap.spot)
    above = way.spots[peak:]
    names = [each.name for each in setting.aircraft.cylinders]
    own = trap.spot.near.rpartition(".")[0]
    heads = (spot.near.rpartition(".")[0] for spot in above)
    name = next((head for head in heads if head in names and head != own), "")
    name = name or (way.top if way.top in names and way.top != own else "")
    cylinder = find(setting.aircraft.cylinders, name)
    if cylinder is None:
        return
    stop = next((n for n, spot in enumerate(above) if spot.near.rpartition(".")[0] == name), len(above))
    up = dict.fromkeys(spot.line for spot in above[:stop])
    below = dict.fromkeys(spot.line for spot in way.spots[: peak + 1])
    place = f"{trap.spot.place}.pumping {trap.spot.near}"
    between = _parts(setting, way, trap, up, f"fluid from {trap.spot.near} up to {name}", f"{place}.up")
    down = _parts(
        setting, way, trap, below, f"fluid from {trap.spot.near} down to the wheel", f"{place}.down"
    )
    stroke = stroke_volume(cylinder)
    yield Pumping(
        trap.spot.near,
        way.caliper,
        name,
        stroke,
        between,
        between.at_most(stroke),
        down,
        _strokes(down, stroke, place),
    )


def _parts(setting: Setting, way: Way, trap: Trap, lines: dict[str, None], label: str, place: str) -> Value:
    """Whole lines on one side of a high point; the line that it lies in by its share on that side."""
    spot, upward = trap.spot, place.endswith(".up")
    found: list[Value] = []
    for line in lines:
        own = [each for each in way.spots if each.line == line]
        if line == spot.line and spot.share is not None and own[0].share is not None:
            far = own[-1] if upward else own[0]
            part = abs((far.share or 0.0) - spot.share)
            share = Value(
                f"share of {line} on that side",
                Dimension.NUMBER,
                (part, part),
                Mark.DERIVED,
                step=Step("its length on that side against the whole", ()),
            )
            found.append(
                apply(
                    share_of_volume,
                    f"part of {line}",
                    place=f"{place}.{line}",
                    volume=setting.volumes[line],
                    share=share,
                )
            )
        else:
            found.append(setting.volumes[line])
    return total(label, found, place)


def _strokes(down: Value, stroke: Value, place: str) -> Value:
    """How many full strokes it takes at least, with the bleeder shut at each return."""
    label = "full strokes until it is out at the wheel"
    missing = (*down.missing, *stroke.missing)
    step = Step("V / V_s", (("V", down), ("V_s", stroke)))
    if not down.known or not stroke.known or stroke.low <= 0:
        return Value(label, Dimension.NUMBER, None, Mark.MEASURED, place, step=step, missing=missing)
    span = (down.low / stroke.high, down.high / stroke.low)
    return Value(label, Dimension.NUMBER, span, max(down.mark, stroke.mark), place, step=step)
