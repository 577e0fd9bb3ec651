"""Pages of figures that belong to a step: sheets of their own, with a way to each from the step."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from firmpedal.web import addresses
from firmpedal.web.elements import box, link
from firmpedal.web.pages import heat, pedal, stopping

if TYPE_CHECKING:
    from firmpedal.web.frame import Frame
    from firmpedal.web.pages.report import Report


class Figures(NamedTuple):
    """One page: its title, the step that it belongs to, and what it shows."""

    title: str
    step: str
    page: Report


# By the name in the address, in the order in which they are shown.
FIGURES: dict[str, Figures] = {
    "pedal": Figures(pedal.TITLE, "sound", pedal.PAGE),
    "stopping": Figures(stopping.TITLE, "sound", stopping.PAGE),
    "heat": Figures(heat.TITLE, "sound", heat.PAGE),
}


def ways_to_figures(frame: Frame, step: str) -> None:
    """Where the pages of a step's figures are."""
    found = [(name, each.title) for name, each in FIGURES.items() if each.step == step]
    with box(classes="fp-actions"):
        for name, title in found:
            link(frame.words(title), addresses.step(frame.file, name, frame.watch.option), "fp-button")
