"""Corners put into a line and taken out of it, in the builder's text."""

from __future__ import annotations

from ruamel.yaml.nodes import SequenceNode

from firmpedal.project.apart import goes_under
from firmpedal.project.edit import found_at, is_written
from firmpedal.project.edit_keys import taken_along
from firmpedal.project.edit_lists import Item, with_items, with_key


def with_corner(text: str, line: str, after: int, words: str, option: str | None) -> str:
    """Put another corner into a line.

    Args:
        text: The builder's text.
        line: The line's object path, such as `lines.left_leg`.
        after: How many corners come before it.
        words: The corner as it is to be written.
        option: The option that is looked at; none for the aircraft as written.

    Raises:
        EditError: The line's corners are not written by themselves.
    """
    place = f"{line}.via"
    text = taken_along(text, place, option, whole=True)
    where = goes_under(text, place, option)
    under = goes_under(text, line, option)
    if not is_written(text, place, where) and is_written(text, line, under):
        return with_key(text, line, "via", [words], under)
    items = _items(text, place, where)
    return with_items(text, place, [*items[:after], Item(None, words), *items[after:]], where)


def without_corner(text: str, line: str, number: int, option: str | None) -> str:
    """Take a corner out of a line; `number` counts from 1.

    Raises:
        EditError: The line's corners are not written by themselves.
    """
    place = f"{line}.via"
    text = taken_along(text, place, option, whole=True)
    where = goes_under(text, place, option)
    items = _items(text, place, where)
    return with_items(text, place, [item for item in items if item.old != number], where)


def as_a_point(text: str, line: str, number: int, words: str, option: str | None) -> str:
    """Put a point in the place of a corner that is written in any other way.

    Raises:
        EditError: The line's corners are not written by themselves.
    """
    place = f"{line}.via"
    text = taken_along(text, place, option, whole=True)
    where = goes_under(text, place, option)
    items = _items(text, place, where)
    return with_items(
        text, place, [Item(each.old, words) if each.old == number else each for each in items], where
    )


def _items(text: str, place: str, option: str | None) -> list[Item]:
    node = found_at(text, place, option).node
    return [Item(n) for n in range(1, len(node.value) + 1)] if isinstance(node, SequenceNode) else []
