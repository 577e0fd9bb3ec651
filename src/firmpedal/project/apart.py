"""What is written out for one option alone: whatever is changed within it stays in that option.

A thing that an option writes, be it one key of it, is the option's own. The rest of it may still come from
the aircraft as written; what is changed of that is written into the option, and never where it comes from.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.aircraft import Aircraft
from firmpedal.project.edit import is_written
from firmpedal.project.locate import walked
from firmpedal.project.overlay import POINTS, whole_at
from firmpedal.project.read import read_text
from firmpedal.project.schema import known_keys

if TYPE_CHECKING:
    from firmpedal.project.tree import Node


def thing_of(place: str) -> str:
    """The thing that a place belongs to: one with a name, or a section that has keys itself.

    A key of the file by itself, such as its fluid, is a thing of its own.
    """
    section, *rest = place.split(".")
    key = known_keys(Aircraft).get(section)
    named = section == POINTS or (key is not None and key.named)
    return ".".join((section, *rest[:1])) if named else section


def is_own(text: str, place: str, option: str | None) -> bool:
    """Whether the thing that a place belongs to is written out in the option that is looked at.

    Raises:
        EditError: The text cannot be read.
    """
    return option is not None and is_written(text, thing_of(place), option)


def is_lent(text: str, place: str, option: str | None) -> bool:
    """Whether something comes from the aircraft as written, in a thing that the option has for itself.

    Raises:
        EditError: The text cannot be read.
    """
    return is_own(text, place, option) and not is_written(text, place, option) and is_written(text, place)


def goes_under(text: str, place: str, option: str | None) -> str | None:
    """Under which option something is to be written; none where it holds for all of them.

    Raises:
        EditError: The text cannot be read.
    """
    if option is None or is_own(text, place, option) or is_written(text, place, option):
        return option
    return None if is_written(text, place) else option


def lent_whole(text: str, place: str, option: str | None) -> tuple[str, Node] | None:
    """The value in which a place stands, where the option takes it as a whole from the aircraft as written.

    An option replaces such a value in one: a change within it has to take the rest of it along.

    Returns:
        The value's place and what is written there; none where nothing has to be taken along.

    Raises:
        EditError: The text cannot be read.
    """
    if not is_own(text, place, option):
        return None
    tree = read_text(text, "text", option).tree
    whole = whole_at(tree, place) if tree is not None else ""
    if tree is None or not whole or not is_lent(text, whole, option):
        return None
    node = walked(tree, whole)
    return None if node is None or node.via is not None else (whole, node)
