"""Putting a name on the mirror list of a builder's text, and taking it off again."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ruamel.yaml.nodes import MappingNode

from firmpedal.project.corners import written_under
from firmpedal.project.derive import SECTIONS
from firmpedal.project.edit import EditError, found_at, is_written
from firmpedal.project.edit_keys import off_the_mirror, with_item, with_value
from firmpedal.project.edit_lists import with_key
from firmpedal.project.mentions import mentions
from firmpedal.project.names import other_side
from firmpedal.project.overlay import POINTS
from firmpedal.project.plain import quoted_if_needed
from firmpedal.project.reading_again import read_again

if TYPE_CHECKING:
    from firmpedal.project.read import Reading

LIST = "mirror"


def can_be_mirrored(place: str) -> bool:
    """Whether a thing is of a section whose things can have a mirror image, and its name has a side."""
    section, _, name = place.partition(".")
    return section in (*SECTIONS, POINTS) and "." not in name and other_side(name) != name


def is_mirrored(text: str, place: str, option: str | None = None) -> bool:
    """Whether the name of a thing is on the mirror list, or on that of the option that is looked at.

    Raises:
        EditError: The text cannot be read.
    """
    name = place.rpartition(".")[2]
    listed = (each for each in mentions(text) if each.place.startswith(f"{LIST}."))
    return any(each.words == name and each.option in (None, option) for each in listed)


def mirrored(reading: Reading, place: str) -> str:
    """Let a thing stand a second time on the other side, seen in a mirror.

    Raises:
        EditError: Its name has neither left nor right in it, or what comes out could not be read.
    """
    text, name = reading.text, quoted_if_needed(place.rpartition(".")[2])
    if other_side(name) == name:
        raise EditError(f"{name} has neither left nor right in its name", "give it such a name first")
    where = written_under(text, place, reading.option)
    if is_written(text, LIST, where):
        node = found_at(text, LIST, where).node
        if isinstance(node, MappingNode):
            after = with_key(text, LIST, name, other_side(name), where)
        else:
            after = with_item(text, LIST, name, where)
    else:
        row = f"[{name}]"
        after = with_value(text, LIST, row) if where is None else with_key(text, "", LIST, row, where)
    return _read(reading, after)


def not_mirrored(reading: Reading, place: str) -> str:
    """Let a thing stand there once only.

    Raises:
        EditError: Something still names its mirror image.
    """
    after = off_the_mirror(reading.text, place.rpartition(".")[2], reading.option)
    return _read(reading, after)


def _read(reading: Reading, after: str) -> str:
    for option in (None, *reading.options):
        read_again(reading.text, after, option)
    return after
