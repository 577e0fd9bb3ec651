"""The master cylinder at the pedal or lever."""

from __future__ import annotations

from typing import Annotated

from firmpedal.model.component import BaseComponent
from firmpedal.model.fields import Length, Name, Reads, Text, YesNo
from firmpedal.quantity import Answer


class MasterCylinder(BaseComponent):
    """A master cylinder; its outlet is the port named so, an inlet takes fluid from above."""

    bore: Length
    stroke: Length
    pedal: Annotated[str, Reads("reference", target="pedals")]
    reservoir: Name = ""
    seals_when_pressed: YesNo = Answer.UNKNOWN
    outlet: Text = "outlet"
    inlet: Text = "inlet"

    @property
    def inner_ways(self) -> tuple[tuple[str, str], ...]:
        names = {port.name for port in self.ports}
        return ((self.inlet, self.outlet),) if {self.inlet, self.outlet} <= names else ()
