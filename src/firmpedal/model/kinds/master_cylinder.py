"""The master cylinder at the pedal or lever."""

from __future__ import annotations

from typing import Annotated

from firmpedal.model.component import BaseComponent
from firmpedal.model.fields import (
    Declared,
    Name,
    OptionalForce,
    OptionalLength,
    OptionalVolume,
    OptionalWhere,
    Reads,
    Size,
    SomeVolume,
    Text,
    YesNo,
)
from firmpedal.quantity import Answer

BUILT_IN = "built in"


class ReturnSpring(Declared):
    """The force of the spring that brings pedal and cylinder back, along the cylinder."""

    at_rest: OptionalForce
    pressed: OptionalForce

    @property
    def at_rest_alone(self) -> bool:
        """Whether what it does as it is pressed is not known."""
        return self.at_rest.known and not self.pressed.known


class MasterCylinder(BaseComponent):
    """A master cylinder; its outlet is the port named so, an inlet takes fluid from above.

    At rest its relief port joins outlet and reservoir, if `opens_at_rest`; `free_stroke` is what it moves
    until that port is shut. Pressed it shuts off what comes from above, if `seals_when_pressed`; what
    another seat presses in at its inlet adds to its own foot, if `feet_add_up`. Capacity, air space and cap
    are those of a reservoir that is built in.
    """

    bore: Size
    stroke: Size
    free_stroke: OptionalLength
    return_spring: ReturnSpring
    seal_friction: OptionalForce
    pedal: Annotated[str, Reads("reference", target="pedals")]
    reservoir: Name = ""
    capacity: SomeVolume
    air_space: OptionalVolume
    fill_cap: OptionalWhere
    opens_at_rest: YesNo = Answer.YES
    seals_when_pressed: YesNo = Answer.UNKNOWN
    feet_add_up: YesNo = Answer.UNKNOWN
    outlet: Text = "outlet"
    inlet: Text = "inlet"

    @property
    def has_reservoir(self) -> bool:
        """Whether its reservoir is built in."""
        return self.reservoir == BUILT_IN

    @property
    def inner_ways(self) -> tuple[tuple[str, str], ...]:
        names = {port.name for port in self.ports}
        return ((self.inlet, self.outlet),) if {self.inlet, self.outlet} <= names else ()
