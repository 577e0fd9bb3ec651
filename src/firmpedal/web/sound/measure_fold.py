"""All that is to be measured of one thing, folded under its name."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.web.elements import box, put, put_words, said
from firmpedal.web.sound.kept import Kept

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.report.measure_groups import MeasureGroup
    from firmpedal.web.sound.in_fields import Asked
    from firmpedal.web.sound.measure_row import MeasureRow


class MeasureFold:
    """A thing as it stands in the list: its name and what is missing; unfolded, a row for each figure.

    Args:
        group: What is to be measured of it when it is made.
        name: What the fold is called among those of the page.
        row: Makes the row of a figure.
    """

    def __init__(self, group: MeasureGroup, name: str, row: Callable[[Asked], MeasureRow]) -> None:
        self.element = box("li", "fp-measure-thing")
        with self.element, box("details", "fp-fold", data_fold=name) as self._fold:
            with box("summary"):
                said("span", group.name)
                self._short = said("span", "", "fp-measure-short")
            self._rows = Kept(box("ul", "fp-measures"), row)

    def show(self, told: tuple[MeasureGroup, tuple[Asked, ...]]) -> None:
        """Show what is missing of it now."""
        group, rows = told
        put_words(self._short, group.words)
        self._rows.show([(each.about, each) for each in rows])

    def open(self) -> None:
        """Lay it open, once; whoever folds it again finds it so."""
        if "open" not in self._fold.props:
            put(self._fold, open="")
