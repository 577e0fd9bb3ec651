"""The parking valve between the master cylinders and the wheels."""

from __future__ import annotations

from typing import Annotated

from firmpedal.model.component import BaseComponent
from firmpedal.model.fields import Reads, YesNo
from firmpedal.quantity import Answer


class ParkingValve(BaseComponent):
    """A parking valve; `ways` says which port joins which when it is open."""

    ways: Annotated[tuple[tuple[str, str], ...], Reads("pairs")] = ()
    stopped_open: YesNo = Answer.UNKNOWN
    reachable_strapped_in: YesNo = Answer.UNKNOWN

    @property
    def inner_ways(self) -> tuple[tuple[str, str], ...]:
        return self.ways
