"""The fluid reservoir where it is a part of its own."""

from __future__ import annotations

from firmpedal.model.component import BaseComponent
from firmpedal.model.fields import (
    OptionalVolume,
    OptionalWhere,
    SomeVolume,
    YesNo,
)
from firmpedal.quantity import Answer


class Reservoir(BaseComponent):
    """A vented reservoir; `fill_cap` is where fluid would spill.

    `capacity` is what it can give between its full and its low mark, `air_space` what is free above the
    full mark.
    """

    capacity: SomeVolume
    air_space: OptionalVolume
    fill_cap: OptionalWhere
    vented: YesNo = Answer.YES
