"""What is still to be measured, by the thing that it is taken of: one walk to each takes all its figures."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.project.field_places import thing_at
from firmpedal.project.names import label_of

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.to_measure import ToMeasure


@dataclass(frozen=True, slots=True)
class MeasureGroup:
    """One thing, with all that is to be measured of it."""

    name: str
    rows: tuple[ToMeasure, ...]

    @property
    def words(self) -> str:
        """How many figures are missing, and which, for whoever sees no more of it."""
        labels = dict.fromkeys(label_of(each.at or each.places[0]) for each in self.rows)
        figures = [label.removeprefix(f"{self.name} ") for label in labels if label != self.name]
        return f"{len(self.rows)} to measure{': ' if figures else ''}{', '.join(figures)}"


def measure_groups(evaluation: Evaluation, rows: Iterable[ToMeasure]) -> tuple[MeasureGroup, ...]:
    """Rows by the thing of the file that they belong to, in the order in which it is named first."""
    found: dict[str, list[ToMeasure]] = {}
    for each in rows:
        place = each.at or each.places[0]
        thing = thing_at(evaluation.reading, place)
        found.setdefault(thing.name if thing and thing.place else label_of(place), []).append(each)
    return tuple(MeasureGroup(name, tuple(inner)) for name, inner in found.items())
