"""Lines, and the bulkheads, brackets and panels they pass."""

from __future__ import annotations

import math
from dataclasses import replace
from enum import StrEnum
from functools import lru_cache
from typing import Annotated

from pydantic import Field

from firmpedal.model.fields import (
    Declared,
    Designation,
    Facing,
    Members,
    Name,
    Named,
    OptionalAngle,
    OptionalNumber,
    OptionalTemperature,
    OptionalVolume,
    OptionalVolumePerLength,
    OptionalWhere,
    Reads,
    SomePressure,
    SomeSize,
    Text,
    Where,
    YesNo,
)
from firmpedal.model.shapes import Sheet, UnknownShape
from firmpedal.model.space import Direction, Position
from firmpedal.model.stock import Hose, LineKind, Tube
from firmpedal.model.thread import Thread
from firmpedal.quantity import Answer, Missing, Value, When

_ASKED = {
    "outside diameter": "the outside diameter of {name}, of the bare hose",
    "rated pressure": "the rated pressure of {name}, cold, from its maker",
}
_ALONG = 1e-6  # of a unit vector: what is left of rounding where two directions are one


class ClampPlan(StrEnum):
    """What the builder says about clamps besides giving places."""

    PROPOSE = "propose"
    NONE = "none"


class Support(StrEnum):
    """What holds a line between its ends."""

    CUSHIONED_CLAMPS = "cushioned clamps"
    TIE_WRAPS = "tie wraps"
    GLASSED_IN = "glassed in"
    NOTHING = "nothing"


class Flare(StrEnum):
    """The flare a tube gets; only the first belongs in aircraft."""

    SINGLE_37 = "37"
    DOUBLE_37 = "double 37"
    SINGLE_45 = "45"


class Swells(Declared):
    """What a hose takes in all as it swells, and the pressure under which that was measured."""

    volume: OptionalVolume
    under: SomePressure


class Expansion(Declared):
    """One point of a hose's curve: what a length of it takes under a pressure."""

    under: SomePressure
    per_length: OptionalVolumePerLength


class Stiffness(Declared):
    """Modulus of elasticity of a plastic line's wall, as its maker gives it or as measured."""

    cool: SomePressure
    hot: SomePressure


class Line(Named):
    """One length of tube, hose or plastic from one connection to another."""

    start: Annotated[str, Reads("connection")] = Field(alias="from")
    finish: Annotated[str, Reads("connection")] = Field(alias="to")
    made_of: Annotated[Tube | Hose, Reads("stock")]
    outside_diameter: SomeSize
    rated_pressure: SomePressure
    via: Annotated[tuple[Position, ...], Reads("positions")] = ()
    bend_radius: SomeSize
    clamp_spacing: SomeSize
    clamps: Annotated[ClampPlan | tuple[Value, ...], Reads("clamps")] = ClampPlan.PROPOSE
    support: Annotated[Support, Reads("choice", choices=Support)] = Support.CUSHIONED_CLAMPS
    flare: Annotated[Flare, Reads("choice", choices=Flare)] = Flare.SINGLE_37
    fittings: Text = ""
    from_fitting: Annotated[tuple[str, ...], Reads("words")] = ()
    to_fitting: Annotated[tuple[str, ...], Reads("words")] = ()
    from_end: OptionalAngle
    to_end: OptionalAngle
    slack: OptionalNumber
    most_slack: OptionalNumber
    swells: Swells
    expansion_curve: Annotated[tuple[Expansion, ...], Members] = ()
    stiffness: Stiffness
    tightest_bend: SomeSize
    sleeve: Text = ""
    sleeved_diameter: SomeSize
    along: Name = ""
    temperature: OptionalTemperature

    @property
    def stock(self) -> Tube | Hose:
        """What it is made of, with what this one was measured or sold with in the place of the usual.

        What is left open of it says at which key of the line it can be written.
        """
        return _stock_of(self)


@lru_cache(maxsize=1024)  # whatever is worked out about a line asks for it
def _stock_of(line: Line) -> Tube | Hose:
    made_of = line.made_of
    if isinstance(made_of, Hose):
        outside = _own(line, "outside diameter", line.outside_diameter, made_of.outside_diameter)
        return replace(made_of, outside_diameter=outside)
    if made_of.kind is not LineKind.PLASTIC:
        return made_of
    return replace(
        made_of, rated_pressure=_own(line, "rated pressure", line.rated_pressure, made_of.rated_pressure)
    )


def _own(line: Line, key: str, declared: Value, usual: Value) -> Value:
    """A figure as declared; else as usual, with the question that would narrow it."""
    if declared.known:
        return declared
    asked = Missing(f"{line.place}.{key}", _ASKED[key].format(name=line.name), usual.dimension, When.IN_HAND)
    return usual if usual.exact else replace(usual, missing=(asked,))


class PanelMaterial(StrEnum):
    """What a panel or bracket is made of, as far as it decides what it can carry."""

    ALUMINIUM = "aluminium"
    STEEL = "steel"
    STAINLESS_STEEL = "stainless steel"
    TITANIUM = "titanium"
    PLYWOOD = "plywood"
    SOLID_LAMINATE = "solid laminate"
    SANDWICH = "sandwich"
    FABRIC = "fabric"
    PLASTIC = "plastic"


Material = Annotated[PanelMaterial | None, Reads("choice", choices=PanelMaterial, optional=True)]


class BodyForm(StrEnum):
    """The body of the fitting in a bulkhead or bracket, by how it turns the line."""

    STRAIGHT = "straight"
    ELBOW_45 = "45 degrees"
    ELBOW_90 = "90 degrees"


class Side(Named):
    """One side of a bulkhead or bracket: where the line's end sits."""

    seat: Where
    seat_measured_with: Designation = ""


class Bulkhead(Named):
    """A place where two lines meet: through a panel, on a bracket, or a free union."""

    at: OptionalWhere
    normal: Facing
    thickness: SomeSize
    material: Material = None
    solid_insert: YesNo = Answer.NO
    form: Annotated[BodyForm, Reads("choice", choices=BodyForm)] = BodyForm.STRAIGHT
    through_panel: YesNo = Answer.YES
    fitting: Text = ""
    fittings: Text = ""
    moves_with: Annotated[str, Reads("reference", target="moving")] = ""
    measured_in: Annotated[tuple[tuple[str, str], ...], Reads("state")] = ()
    sides: Annotated[tuple[Side, ...], Members]


class Passage(Named):
    """A line that passes a panel, and how its hole is kept from cutting it."""

    grommet: YesNo = Answer.UNKNOWN
    hole: SomeSize
    tried: YesNo = Answer.UNKNOWN


class Panel(Named):
    """A floor or wall that lines pass without a fitting."""

    where: Annotated[Sheet | UnknownShape, Reads("sheet", optional=True)]
    thickness: SomeSize
    material: Material = None
    passes: Annotated[tuple[Passage, ...], Members] = ()


class Port(Named):
    """A port of a component: its thread, which way it faces, and where the line's end sits."""

    thread: Annotated[Thread, Reads("thread")]
    faces: Facing
    at: OptionalWhere
    seat: OptionalWhere
    seat_measured_with: Designation = ""
    arm: Facing
    outlet_leg: SomeSize
    stands_off: SomeSize
    body_width: SomeSize
    closed: YesNo = Answer.NO
    open: Text = ""

    @property
    def arm_angle(self) -> float | None:
        """Between the way the port faces and the way its elbow points [rad]; None while one is unknown."""
        if self.faces.vector is None or self.arm.vector is None:
            return None
        along = sum(a * b for a, b in zip(self.faces.vector, self.arm.vector, strict=True))
        return math.acos(max(-1.0, min(1.0, along)))

    @property
    def arm_aside(self) -> Direction:
        """The side to which its elbow leads off the port's axis; unknown where it points along that."""
        if self.faces.vector is None or self.arm.vector is None:
            return self.arm
        along = sum(a * b for a, b in zip(self.faces.vector, self.arm.vector, strict=True))
        x, y, z = (a - along * b for a, b in zip(self.arm.vector, self.faces.vector, strict=True))
        size = math.hypot(x, y, z)
        aside = None if size < _ALONG else (x / size, y / size, z / size)
        return replace(self.arm, vector=aside)
