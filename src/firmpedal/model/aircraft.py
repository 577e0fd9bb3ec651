"""The aircraft as declared: the whole file in one frozen object."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, TypeVar

from pydantic import Field

from firmpedal.model.bench import Bench
from firmpedal.model.buying import Buying
from firmpedal.model.circuit import Bulkhead, Line, Panel, Port
from firmpedal.model.fields import (
    Declared,
    Members,
    Named,
    OptionalLength,
    Reads,
    SomeForce,
    SomeMass,
    SomeNumber,
    Text,
    YesNo,
)
from firmpedal.model.ground import OnTheGround
from firmpedal.model.kinds import Caliper, Component, MasterCylinder
from firmpedal.model.space import NamedPoint
from firmpedal.model.stock import Fluid
from firmpedal.model.surroundings import Attitude, KeepClear, Moving, Pedal, State, Wheel, Zone
from firmpedal.quantity import Answer


class Gear(StrEnum):
    TAILWHEEL = "tailwheel"
    NOSEWHEEL = "nosewheel"


class Brakes(StrEnum):
    """How the brakes are worked, which sets the usual foot forces."""

    TOE = "toe"
    HEEL = "heel"
    HAND = "hand"


class Header(Declared):
    """What the aircraft is, and the builder's revision and date of the file."""

    name: Text
    gear: Annotated[Gear, Reads("choice", choices=Gear)]
    brakes: Annotated[Brakes, Reads("choice", choices=Brakes)]
    landing_weight: SomeMass
    structure: Text = ""
    revision: Text = ""
    date: Text = ""
    type_certificate: YesNo = Answer.UNKNOWN


class FileUnits(Declared):
    """The builder's units: taken for bare numbers, and used for every answer."""

    length: Text = ""
    angle: Text = ""
    pressure: Text = ""
    force: Text = ""
    volume: Text = ""
    temperature: Text = ""
    mass: Text = ""
    torque: Text = ""
    speed: Text = ""
    energy: Text = ""
    acceleration: Text = ""
    time: Text = ""
    fractions: Text = ""


class Datum(Declared):
    """Where the builder's zeros are, in words."""

    x_zero: Text = ""
    y_zero: Text = ""
    z_zero: Text = ""


class Foot(Declared):
    """Foot or hand force on the pad; what is left out takes the usual figure where one is known."""

    normal: SomeForce
    hard: SomeForce
    panic: SomeForce


class Limits(Declared):
    """Margins and limits the builder overrules, each with a reason kept in the file's comments."""

    burst_factor: SomeNumber
    yield_factor: SomeNumber
    end_play: OptionalLength


class Acceptance(Declared):
    """A finding the builder accepts, with the reason that is printed beside it."""

    rule: Text
    at: Text
    reason: Text


class Aircraft(Declared):
    """Everything the builder declared, with one option applied."""

    version: Text = Field(alias="firmpedal")
    aircraft: Header
    units: FileUnits
    datum: Datum
    fluid: Annotated[Fluid | None, Reads("fluid")] = None
    fluid_before: Annotated[Fluid | None, Reads("fluid")] = None
    foot: Foot
    on_the_ground: OnTheGround
    points: Annotated[tuple[NamedPoint, ...], Reads("named_points")] = ()
    states: Annotated[tuple[State, ...], Members] = ()
    attitudes: Annotated[tuple[Attitude, ...], Members] = ()
    moving: Annotated[tuple[Moving, ...], Members] = ()
    zones: Annotated[tuple[Zone, ...], Members] = ()
    components: Annotated[tuple[Annotated[Component, Reads("component")], ...], Members] = ()
    pedals: Annotated[tuple[Pedal, ...], Members] = ()
    bulkheads: Annotated[tuple[Bulkhead, ...], Members] = ()
    panels: Annotated[tuple[Panel, ...], Members] = ()
    wheels: Annotated[tuple[Wheel, ...], Members] = ()
    keep_clear_of: Annotated[tuple[KeepClear, ...], Members] = ()
    bench: Bench
    buying: Buying
    limits: Limits
    lines: Annotated[tuple[Line, ...], Members] = ()
    accepted: Annotated[tuple[Acceptance, ...], Members] = ()

    @property
    def cylinders(self) -> tuple[MasterCylinder, ...]:
        return tuple(part for part in self.components if isinstance(part, MasterCylinder))

    @property
    def calipers(self) -> tuple[Caliper, ...]:
        return tuple(part for part in self.components if isinstance(part, Caliper))

    @property
    def supposed_ports(self) -> dict[str, Port]:
        """The ports whose thread nobody has looked at yet, by component and name as lines call them."""
        return {
            f"{part.name}.{port.name}": port
            for part in self.components
            for port in part.ports
            if port.thread.supposed
        }


Thing = TypeVar("Thing", bound=Named)


def find(things: tuple[Thing, ...], name: str) -> Thing | None:
    """Find a named thing, or nothing."""
    return next((thing for thing in things if thing.name == name), None)
