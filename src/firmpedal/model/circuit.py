"""Lines, and the bulkheads, brackets and panels they pass."""

from __future__ import annotations

from enum import StrEnum
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
    OptionalLength,
    OptionalNumber,
    OptionalPressure,
    OptionalTemperature,
    OptionalVolume,
    OptionalVolumePerLength,
    OptionalWhere,
    Reads,
    Text,
    Where,
    YesNo,
)
from firmpedal.model.part import Interface
from firmpedal.model.shapes import Sheet, UnknownShape
from firmpedal.model.space import Position
from firmpedal.model.stock import Hose, Tube
from firmpedal.quantity import Answer, Value


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
    under: OptionalPressure


class Expansion(Declared):
    """One point of a hose's curve: what a length of it takes under a pressure."""

    under: OptionalPressure
    per_length: OptionalVolumePerLength


class Stiffness(Declared):
    """Modulus of elasticity of a plastic line's wall, as its maker gives it or as measured."""

    cool: OptionalPressure
    hot: OptionalPressure


class Line(Named):
    """One length of tube, hose or plastic from one connection to another."""

    start: Annotated[str, Reads("connection")] = Field(alias="from")
    finish: Annotated[str, Reads("connection")] = Field(alias="to")
    made_of: Annotated[Tube | Hose, Reads("stock")]
    via: Annotated[tuple[Position, ...], Reads("positions")] = ()
    bend_radius: OptionalLength
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
    tightest_bend: OptionalLength
    sleeve: Text = ""
    sleeved_diameter: OptionalLength
    along: Name = ""
    temperature: OptionalTemperature


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
    thickness: OptionalLength
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
    hole: OptionalLength
    tried: YesNo = Answer.UNKNOWN


class Panel(Named):
    """A floor or wall that lines pass without a fitting."""

    where: Annotated[Sheet | UnknownShape, Reads("sheet", optional=True)]
    thickness: OptionalLength
    material: Material = None
    passes: Annotated[tuple[Passage, ...], Members] = ()


class Port(Named):
    """A port of a component: its thread, which way it faces, and where the line's end sits."""

    thread: Annotated[Interface, Reads("thread")]
    faces: Facing
    at: OptionalWhere
    seat: OptionalWhere
    seat_measured_with: Designation = ""
    arm: Facing
    closed: YesNo = Answer.NO
    open: Text = ""
