"""A figure that somebody measured, written where the file leaves it unknown or leaves it out."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.hashing import Same
from firmpedal.model.aircraft import Aircraft
from firmpedal.project.apart import is_own
from firmpedal.project.edit import EditError, is_written
from firmpedal.project.edit_keys import with_value
from firmpedal.project.line_kinds import settled
from firmpedal.project.locate import walked
from firmpedal.project.names import quoted
from firmpedal.project.read import read_text
from firmpedal.project.reading_again import read_again
from firmpedal.project.schema import known_keys
from firmpedal.project.supposed import supposed_thread
from firmpedal.project.tree import UNKNOWN, Branch, Node, children, word_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.finding import Span
    from firmpedal.project.read import Reading


def measured(text: str, place: str, words: str, option: str | None = None) -> tuple[str, str | None]:
    """Write a measurement as builders write it: `3/4`, `10-1/2 in`, `yes`.

    What belongs to a thing that is written out for the option alone is written there, and so is what stands
    there by itself; everything else in the aircraft as written.

    Args:
        text: The builder's text.
        place: Where the value belongs, such as `components.left_caliper.rated pressure`.
        words: What is to stand there.
        option: The option that is looked at.

    Returns:
        The new text, and the option that it was written in; none for the aircraft as written.

    Raises:
        EditError: It cannot be read as a value of that place, or not be written there by itself.
    """
    words = " ".join(words.split())
    if not words:
        raise EditError("nothing is written there yet", "write the figure as you measured it")
    before = read_text(text, "text", option).tree
    node = walked(before, place) if before is not None else None
    if node is not None and not still_open(node):
        now = word_of(node) or word_of(walked(node, "value")) or "something"
        raise EditError(
            f"{quoted(now)} stands there by now, from another window or program; yours was not written",
            "look at it in its fields, and change it there if yours holds",
        )
    wheres = _wheres(text, place, option)
    for where in wheres:
        after = settled(text, with_value(text, place, words, where), place)
        reading = read_again(text, after, option)
        if reading.tree is not None and word_of(walked(reading.tree, place)) == words:
            return after, where
    if wheres:
        raise EditError(f"{quoted(words)} cannot stand there as one value", "write the figure alone")
    raise EditError(f"{place} is not written by itself", "write it out by hand")


def still_open(node: Node) -> bool:
    """Whether what is written there leaves a value unknown, or a thread supposed."""
    return UNKNOWN in (word_of(node), word_of(walked(node, "value"))) or bool(supposed_thread(node))


def _wheres(text: str, place: str, option: str | None) -> tuple[str | None, ...]:
    """Where to try, best first: where the value stands; else where the thing stands that it belongs to.

    In what an option has written out for itself it is always that option, as in its fields.
    """
    if is_own(text, place, option):
        return (option,)
    both = (option, None) if option is not None else (None,)
    found = tuple(each for each in both if is_written(text, place, each))
    section = known_keys(Aircraft).get(place.partition(".")[0])
    around, thing = place, 0 if section is None or not section.many else 1  # so many dots has a thing's place
    while not found and around.count(".") > thing:
        around = around.rpartition(".")[0]
        found = tuple(each for each in reversed(both) if is_written(text, around, each))
    begun = section is not None and not section.many  # a section of keys can be begun by one of them
    return found or ((None,) if begun else ())


def written_at(reading: Reading, place: str) -> str:
    """The place where a value that a copy lacks has to be written: the same key of the original.

    A copy is a mirror image, or what is written `like` another thing; its original stands at the same
    place of the text.
    """
    if reading.tree is None or not place:
        return place
    head, key, node = place, "", walked(reading.tree, place)
    while node is None and head:
        head, _, step = head.rpartition(".")
        key = f".{step}{key}"
        node = walked(reading.tree, head) if head else None
    return place if node is None else f"{_original(reading.tree, node, head)}{key}"


def _original(tree: Node, node: Node, place: str) -> str:
    found = original_of(tree, node)
    return found.path if found is not None else place


def original_of(tree: Node, node: Node) -> Node | None:
    """What a copy has its words from: the piece that is written by itself at the same place of the text.

    None for what is no copy.
    """
    return _originals(Same(tree)).get(_key(node)) if node.via is not None else None


def _key(node: Node) -> tuple[Span, bool]:
    """What a copy and its original have in common; a thing begins where the first of its keys does."""
    return node.span, isinstance(node, Branch)


@lru_cache(maxsize=8)
def _originals(tree: Same[Node]) -> dict[tuple[Span, bool], Node]:
    """Every piece of a tree that is written by itself, the first of those at one place."""
    return {_key(each): each for each in reversed([*_every(tree.thing)]) if each.via is None}


def _every(node: Node) -> Iterator[Node]:
    yield node
    for child in children(node):
        yield from _every(child)
