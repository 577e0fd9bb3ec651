"""A mirror image written out as a thing of its own, so that nothing moves and nothing follows any more."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.project.edit import EditError, composed, edited, is_written
from firmpedal.project.edit_keys import with_thing, with_value
from firmpedal.project.edit_lists import with_key
from firmpedal.project.field_places import things_of
from firmpedal.project.locate import locate, walked
from firmpedal.project.mirroring import NOTHING
from firmpedal.project.overlay import POINTS
from firmpedal.project.plain import entry_of, flow
from firmpedal.project.points import MIRROR_OF
from firmpedal.project.read import read_text
from firmpedal.project.reading_again import read_again
from firmpedal.project.said import at_place, said_by, said_of
from firmpedal.project.tree import REMOVED, Branch, Leaf, Node

if TYPE_CHECKING:
    from firmpedal.project.read import Reading
    from firmpedal.project.said import Said

A_POINT = "a named point has one row alone"
BY_LIKE = "it is written like another thing, and no mirror image"
BY_HAND = "write it out by hand, in the text"


def images_to_own(reading: Reading, place: str) -> tuple[str, ...]:
    """The places of the mirror images of a thing that follow it, each of which could be its own."""
    section = place.partition(".")[0]
    copies = [each.place for each in things_of(reading).get(section, ()) if each.copy_of == place]
    return tuple(each for each in copies if follows(reading, each))


def follows(reading: Reading, place: str) -> bool:
    """Whether a thing is a mirror image that changes with what it is the image of."""
    section, _, name = place.partition(".")
    thing = next((each for each in things_of(reading).get(section, ()) if each.name == name), None)
    if thing is None or not thing.copy_of or section == POINTS:
        return False
    said = said_by(reading.text) or {}
    options = () if reading.option is None else (("options", reading.option, section, name),)
    written = [at_place(said, steps) for steps in (*options, (section, name))]
    return not any(isinstance(each, dict) and "like" in each for each in written)


def own_image(reading: Reading, place: str) -> str:
    """The text with a mirror image written out whole, with its figures as they are.

    Its name stays on the mirror list, so that what names it from there still finds it; that it follows
    no more is said by `mirror of: nothing`. In an option that changes what it was the image of it gets
    the change written too, so that nothing moves there either.

    Args:
        reading: The file in one of its options.
        place: The image, such as `components.right_cylinder`.

    Raises:
        EditError: It is no mirror image, or cannot be written out so that everything stays.
    """
    text = reading.text
    if place.startswith(f"{POINTS}."):
        raise EditError(
            A_POINT, f"take it off the mirror list in the text, and add {place.partition('.')[2]}"
        )
    if not follows(reading, place):
        raise EditError(BY_LIKE, "write what differs in its fields")
    ways = (None, *reading.options)
    wanted = {way: read_text(text, reading.file, way).tree for way in ways}
    first = next((way for way in ways if _walked(wanted[way], place) is not None), None)
    after = _begun(text, place, first, _walked(wanted[first], place))
    for way in ways:
        after = _settled(after, place, way, _walked(wanted[way], place), reading.file)
    for way in ways:
        read_again(text, after, way)
        if _all_said(read_text(after, reading.file, way).tree) != _all_said(wanted[way]):
            in_option = "" if way is None else f" in option {way}"
            raise EditError(f"something else would change{in_option}", BY_HAND)
    return after


def _walked(tree: Branch | None, place: str) -> Node | None:
    return walked(tree, place) if tree is not None else None


def _all_said(tree: Branch | None) -> Said:
    return said_of(tree) if tree is not None else ""


def _begun(text: str, place: str, option: str | None, node: Node | None) -> str:
    """Written by itself, and following nothing; what was written of it stays."""
    section, _, name = place.partition(".")
    if is_written(text, f"{place}.{MIRROR_OF}", option):
        return edited(text, f"{place}.{MIRROR_OF}", NOTHING, option)
    if is_written(text, place, option):
        return with_key(text, place, MIRROR_OF, NOTHING, option)
    if not isinstance(node, Branch):
        raise EditError(f"{place} has no keys of its own", BY_HAND)
    rows = entry_of(name, node)
    lines = [f"  {rows[0]}", f"    {MIRROR_OF}: {NOTHING}", *(f"  {row}" for row in rows[1:])]
    return with_thing(text, section, "\n".join(lines), option)


def _settled(text: str, place: str, option: str | None, wanted: Node | None, file: str) -> str:
    """With every key of a thing as it was in one option."""
    now = _walked(read_text(text, file, option).tree, place)
    if now is None or (wanted is not None and said_of(now) == said_of(wanted)):
        return text
    if wanted is None:  # the option takes out what it is the image of
        section, _, name = place.partition(".")
        return with_thing(text, section, f"  {name}: {REMOVED}", option)
    if isinstance(now, Branch) and isinstance(wanted, Branch) and not is_written(text, place, option):
        wanted = _what_differs(now, wanted)
    return _alike(text, place, option, (now, wanted))


def _what_differs(now: Branch, wanted: Branch) -> Branch:
    """The keys in which one thing differs from another; those that it lacks as taken out."""
    lacking = {
        key: Leaf(REMOVED, node.span) for key, node in now.entries.items() if key not in wanted.entries
    }
    kept = {
        key: node
        for key, node in wanted.entries.items()
        if key not in now.entries or said_of(now.entries[key]) != said_of(node)
    }
    return wanted.with_entries({**kept, **lacking})


def _alike(text: str, place: str, option: str | None, both: tuple[Node, Node]) -> str:
    """What differs, key by key, as deep as it is written."""
    now, wanted = both
    if not (isinstance(now, Branch) and isinstance(wanted, Branch)) or not is_written(text, place, option):
        return _with(text, place, option, wanted)
    for key, node in wanted.entries.items():
        before, inner = now.entries.get(key), f"{place}.{key}"
        if before is None or said_of(before) != said_of(node):
            deep = before is not None and is_written(text, inner, option)
            text = (
                _alike(text, inner, option, (before, node)) if deep and before is not None
                else _with(text, inner, option, node)
            )  # fmt: skip
    for key in now.entries:
        if key not in wanted.entries:
            text = _put(text, f"{place}.{key}", option, REMOVED)
    return text


def _with(text: str, place: str, option: str | None, node: Node) -> str:
    """A thing in lines where it is not written yet; a value in its row."""
    section, _, name = place.partition(".")
    if "." in name or is_written(text, place, option):
        return _put(text, place, option, flow(node))
    lines = "\n".join(f"  {row}" for row in entry_of(name, node))
    return with_thing(text, section, lines, option)


def _put(text: str, place: str, option: str | None, words: str) -> str:
    """A value in the option itself, not where it holds for all of them."""
    if is_written(text, place, option):
        return edited(text, place, words, option)
    head, _, key = place.rpartition(".")
    if option is None:
        return with_value(text, place, words)
    if locate(composed(text), ["options", option, *head.split(".")]) is None:
        raise EditError(f"{head} is not written by itself in option {option}", BY_HAND)
    return with_key(text, head, key, words, option)
