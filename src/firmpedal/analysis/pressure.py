"""Pressure in every line at the normal, the hard and the panic foot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.linkage import greatest_ratio, pedal_ratio
from firmpedal.analysis.together import added_shares, pressed_together
from firmpedal.formulas.levers import line_pressure
from firmpedal.model.aircraft import Brakes, find
from firmpedal.quantity import Answer, Mark, Value, apply, exactly, largest, unknown
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from firmpedal.analysis.circuit import Feeds, Reach
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.circuit import Line
    from firmpedal.model.kinds import MasterCylinder

FEET = ("normal", "hard", "panic")

FORCE_WORDS = {
    "normal": "the usual force on the pedal or lever",
    "hard": "the force on the pedal or lever in a hard stop",
    "panic": "the greatest force on the pedal or lever, in a panic",
}

# Usual forces in pounds where the file gives none. The panic foot on toe pedals is the pilot limit
# force on a rudder pedal of 14 CFR 23.397(b): the rule has none for toe brakes, so it is an estimate.
# The others are common practice, no source.
USUAL: dict[Brakes, dict[str, tuple[float, str, Mark]]] = {
    Brakes.TOE: {
        "normal": (75, "common-practice", Mark.MEMORY),
        "hard": (150, "common-practice", Mark.MEMORY),
        "panic": (200, "14cfr23-397", Mark.ESTIMATE),
    },
    Brakes.HEEL: {
        "normal": (60, "common-practice", Mark.MEMORY),
        "hard": (120, "common-practice", Mark.MEMORY),
    },
    Brakes.HAND: {},
}


@dataclass(frozen=True, slots=True)
class CylinderPressure:
    """What one cylinder makes of each foot force, in the order normal, hard, panic.

    `ratio` and `pressures` are those at rest; `most` is the greatest ratio on the way that the pedal can go,
    and `greatest` what it makes of each foot: whatever has to hold the pressure has to hold that.
    """

    cylinder: str
    ratio: Value
    pressures: tuple[Value, ...]
    most: Value
    greatest: tuple[Value, ...]


@dataclass(frozen=True, slots=True)
class LinePressure:
    """The greatest pressure in a line at each foot force, on whatever pedals it is pressed with.

    `alone` is the greatest that one pedal makes; `adding` are the cylinders whose feet may add up there.
    """

    line: str
    pressures: tuple[Value, ...]
    alone: tuple[Value, ...]
    adding: tuple[str, ...] = ()

    def at(self, foot: str, *, alone: bool = False) -> Value:
        """The greatest at a foot force; with `alone` the greatest of one pedal."""
        return (self.alone if alone else self.pressures)[FEET.index(foot)]


def foot_forces(aircraft: Aircraft) -> tuple[Value, ...]:
    """The declared forces, else the usual ones for the kind of brakes, else unknown."""
    forces = []
    for foot in FEET:
        declared: Value = getattr(aircraft.foot, foot)
        usual = USUAL[aircraft.aircraft.brakes].get(foot)
        if not declared.known and usual and foot not in aircraft.foot.written:
            number, source, mark = usual
            forces.append(
                exactly(
                    f"{foot} foot",
                    Dimension.FORCE,
                    from_unit(number, "lbf"),
                    mark,
                    source=source,
                    place="foot",
                )
            )
        elif declared.known:
            forces.append(declared.named(f"{foot} foot"))
        else:
            forces.append(unknown(f"{foot} foot", Dimension.FORCE, f"foot.{foot}", FORCE_WORDS[foot]))
    normal, hard, panic = forces
    if "panic" not in aircraft.foot.written and hard.at_most(panic) is Answer.NO:
        panic = unknown("panic foot", Dimension.FORCE, "foot.panic", FORCE_WORDS["panic"])  # over the usual
    return normal, hard, panic


def cylinder_pressures(aircraft: Aircraft) -> tuple[CylinderPressure, ...]:
    """Work out the pressure that each cylinder makes at each foot force."""
    forces = foot_forces(aircraft)
    return tuple(_cylinder_pressure(aircraft, cylinder, forces) for cylinder in aircraft.cylinders)


def _cylinder_pressure(
    aircraft: Aircraft, cylinder: MasterCylinder, forces: tuple[Value, ...]
) -> CylinderPressure:
    pedal = find(aircraft.pedals, cylinder.pedal)
    ratio = pedal_ratio(pedal) if pedal else unknown("pedal ratio", Dimension.NUMBER, cylinder.place)
    most = greatest_ratio(pedal, cylinder, ratio)
    pressures = _at_feet(cylinder, forces, ratio, "")
    if most is ratio:
        return CylinderPressure(cylinder.name, ratio, pressures, ratio, pressures)
    greatest = _at_feet(cylinder, forces, most, ", where the ratio is greatest")
    return CylinderPressure(cylinder.name, ratio, pressures, most, greatest)


def _at_feet(
    cylinder: MasterCylinder, forces: tuple[Value, ...], ratio: Value, where: str
) -> tuple[Value, ...]:
    return tuple(
        apply(
            line_pressure,
            f"pressure at the {foot} foot{where}",
            place=f"{cylinder.place}.pressure.{foot}{where}",
            foot_force=force,
            lever_ratio=ratio,
            bore=cylinder.bore,
        )
        for foot, force in zip(FEET, forces, strict=True)
    )


def line_pressures(
    aircraft: Aircraft, cylinders: tuple[CylinderPressure, ...], reach: tuple[Reach, ...], feeds: Feeds
) -> tuple[LinePressure, ...]:
    """Give each line the greatest pressure that the cylinders which press on it can make together.

    Every pedal is pressed with the same foot. The order does not matter: the greatest pressure stands where
    the cylinder farther from the wheel is pressed first.
    """
    found, shares = [], added_shares(aircraft)
    for line in aircraft.lines:
        pressing = [made for made, way in zip(cylinders, reach, strict=True) if line.name in way.lines]
        if pressing:
            names = {made.cylinder for made in pressing}
            adding = tuple(
                each.cylinder
                for each in pressing
                if feeds[each.cylinder] & names or any(each.cylinder in feeds[name] for name in names)
            )
            pressures = tuple(_greatest(line, n, pressing, feeds, shares) for n in range(len(FEET)))
            alone = tuple(_of_one(line, n, pressing) for n in range(len(FEET))) if adding else pressures
            found.append(LinePressure(line.name, pressures, alone, adding))
    return tuple(found)


def _of_one(line: Line, number: int, pressing: list[CylinderPressure]) -> Value:
    foot = FEET[number]
    values = [made.greatest[number] for made in pressing]
    label = f"pressure in {line.name} at the {foot} foot, one pedal pressed"
    return largest(label, values, f"{line.place}.pressure.{foot}, one pedal")


def _greatest(
    line: Line,
    number: int,
    pressing: list[CylinderPressure],
    feeds: Feeds,
    shares: dict[str, Value],
) -> Value:
    foot = FEET[number]
    own = {made.cylinder: made.greatest[number] for made in pressing}
    label = f"pressure in {line.name} at the {foot} foot"
    return pressed_together(own, feeds, shares, label, f"{line.place}.pressure.{foot}")
