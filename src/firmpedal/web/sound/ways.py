"""The ways from a place in the builder's file: to its fields, to its line in the text, and into space."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.project.names import label_of
from firmpedal.web import addresses
from firmpedal.web.elements import box, link, said

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation


def ways(evaluation: Evaluation, file: str, place: str, *, open_to: bool) -> None:
    """Put the name of a place and the ways from it on the page.

    Args:
        evaluation: What the place is of.
        file: The file's name.
        place: An object path; what leads nowhere in the file has no way.
        open_to: Whether the text and the picture may be looked at from here; a phone may not.
    """
    section, option = place.partition(".")[0], evaluation.reading.option
    if section not in evaluation.reading.spans:
        return
    name, line = label_of(place), evaluation.span_of(place).line
    with box("p", "fp-places"):
        said("span", name)
        if not open_to:
            said("span", f"line {line} of the text")
            return
        link("its fields", addresses.field(file, place, option), aria_label=f"{name}: its fields")
        to = addresses.text(file, option, line)
        link(f"line {line} of the text", to, aria_label=f"{name}: line {line} of the text")
        if section in addresses.IN_SPACE and "." in place:
            to = addresses.space(file, option, place)
            link("in space", to, aria_label=f"{name}: in space")
