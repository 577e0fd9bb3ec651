"""The fluid reservoir where it is a part of its own."""

from __future__ import annotations

from firmpedal.model.component import BaseComponent
from firmpedal.model.fields import OptionalVolume, OptionalWhere


class Reservoir(BaseComponent):
    """A vented reservoir; `fill_cap` is where fluid would spill."""

    capacity: OptionalVolume
    fill_cap: OptionalWhere
