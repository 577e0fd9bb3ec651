"""What the lines live among: states of movement, ground attitudes, moving things and zones."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated, ClassVar

from pydantic import Field

from firmpedal.model.component import SideOf
from firmpedal.model.fields import (
    Declared,
    Named,
    OptionalAngle,
    OptionalLength,
    OptionalNumber,
    OptionalTemperature,
    OptionalWhere,
    Reads,
    SomeSize,
    Text,
    YesNo,
)
from firmpedal.model.shapes import Body, Shape
from firmpedal.model.space import Direction, Position
from firmpedal.quantity import Answer, Missing, Value


class State(Named):
    """One thing that moves others: a range from one end to the other, or named positions."""

    lowest: OptionalNumber = Field(alias="from")
    highest: OptionalNumber = Field(alias="to")
    values: Annotated[tuple[str, ...], Reads("words")] = ()
    measured_at: Text = ""
    opposite_when_mirrored: YesNo = Answer.NO


class Attitude(Named):
    """How the aircraft stands on the ground."""

    nose_up: OptionalAngle


@dataclass(frozen=True, slots=True)
class Shift:
    """A straight movement by a vector at full travel, or in one named position."""

    variable: str
    setting: str  # "" for a ranged variable (the vector is at +1), else the named position
    by: Position


@dataclass(frozen=True, slots=True)
class Swing:
    """A swing about an axis through a point, by an angle at full travel, or in one named position."""

    variable: str
    setting: str
    about: Position
    axis: Direction
    angle: Value


@dataclass(frozen=True, slots=True)
class UnknownMotion:
    """A movement that the builder knows of but has not measured."""

    variable: str
    setting: str
    missing: tuple[Missing, ...]


Motion = Shift | Swing | UnknownMotion


class Moving(Named):
    """Something that moves, by itself or carried by another moving thing.

    Every other key of its entry in the file is a state that moves it.
    """

    free_keys: ClassVar[str] = "motions"
    carried_by: Annotated[str, Reads("reference", target="moving")] = Field(default="", alias="with")
    motions: Annotated[tuple[Motion, ...], Reads("motions")] = ()


class Heat(StrEnum):
    """Where the heat of a zone comes from."""

    BRAKE = "brake"
    EXHAUST = "exhaust"


class Zone(Named):
    """A part of space, or a stretch of a line, where something matters."""

    where: Annotated[tuple[Shape, ...], Reads("shape")]
    heat: Annotated[Heat | None, Reads("choice", choices=Heat)] = None
    temperature: OptionalTemperature
    fire: YesNo = Answer.NO
    covered: YesNo = Answer.NO
    gap: OptionalLength
    hidden: YesNo = Answer.NO
    access: YesNo = Answer.UNKNOWN


class Brake(Declared):
    """The brake lever of a pedal: by its two arms, or by its pivot points.

    `travel_to_stop` is how far the pad can go, along its arc, until it meets the floor or a stop.
    """

    pad: SomeSize
    arm: SomeSize
    pivot: Annotated[Position | None, Reads("position")] = None
    pad_at: Annotated[Position | None, Reads("position")] = None
    rod_end: Annotated[Position | None, Reads("position")] = None
    cylinder_base: Annotated[Position | None, Reads("position")] = None
    travel_to_stop: SomeSize


class Pedal(Named):
    """A pedal or hand lever that presses a master cylinder."""

    side: Annotated[SideOf, Reads("side")] = SideOf.CENTRE
    seat: Text = ""
    moves_with: Annotated[str, Reads("reference", target="moving")] = ""
    brake: Brake


class Obstacle(StrEnum):
    """What a line has to stay clear of, which sets the usual distance."""

    DISC = "disc"
    TYRE = "tyre"
    LEG = "leg"
    MOVING_PART = "moving part"
    CONTROL = "control"
    EDGE = "edge"
    EXHAUST = "exhaust"
    STRUCTURE = "structure"


class KeepClear(Named):
    """Something that no line may touch, however it moves."""

    kind: Annotated[Obstacle, Reads("choice", choices=Obstacle)]
    where: Annotated[Body, Reads("body")]
    moves_with: Annotated[str, Reads("reference", target="moving")] = ""
    measured_in: Annotated[tuple[tuple[str, str], ...], Reads("state")] = ()
    distance: OptionalLength


class Wheel(Named):
    """A wheel with its brake: what hangs lowest and stands foremost there, apart from lines and tyre."""

    caliper: Annotated[str, Reads("reference", target="components")]
    lowest_structure: OptionalWhere
    foremost_structure: OptionalWhere
