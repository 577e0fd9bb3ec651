"""Who names a thing, and another name for it, wherever in the builder's text it is named."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from firmpedal.place import is_within
from firmpedal.project.corners import written_under
from firmpedal.project.edit import EditError
from firmpedal.project.mentions import ANY, ENDS, OWN, PLACES, Mention, mentions
from firmpedal.project.names import other_side
from firmpedal.project.overlay import POINTS
from firmpedal.project.plain import in_quotes, quoted_if_needed
from firmpedal.project.points import MIRROR_OF
from firmpedal.project.reading_again import read_again
from firmpedal.project.said import said_by
from firmpedal.project.splice import spliced
from firmpedal.project.usable_names import usable_name

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.project.read import Reading
    from firmpedal.project.said import Said

MIRROR, ACCEPTED = "mirror", "accepted"


@dataclass(frozen=True, slots=True)
class _Target:
    """What is named: by its section and names, or within things of these names by a name of its own."""

    section: str
    names: frozenset[str]
    ports: frozenset[str] = frozenset()
    parent: str = ""
    places: frozenset[str] = field(default=frozenset())

    def meant(self, mention: Mention) -> str:
        """The words of a mention that are the name; empty where something else is meant."""
        if mention.place.startswith(f"{ACCEPTED}.") and "." in mention.words:
            return self._in_path(mention.words.split("."))
        head, dot, tail = mention.words.partition(".")
        if self.ports:
            named = mention.sections in (PLACES, ENDS) and head in self.names and tail in self.ports
            own = mention.sections[0] in self.places and mention.words in self.ports
            return tail if named else mention.words if own else ""
        if self.parent:
            return mention.words if mention.sections == (self.parent,) and mention.words in self.names else ""
        if self.section not in mention.sections or head not in self.names:
            return ""
        alone = mention.sections == PLACES and self.section in (POINTS, "components")
        return "" if alone and bool(dot) == (self.section == POINTS) else head

    def _in_path(self, steps: list[str]) -> str:
        """A name in the path of what was found and accepted."""
        if steps[0] != self.section or len(steps) < 2 or steps[1] not in self.names:
            return ""
        if not self.ports:
            return "" if self.parent else steps[1]
        return steps[3] if self.ports & {*steps[3:4]} and steps[2] == OWN.get(self.section) else ""


def _target(found: tuple[Mention, ...], place: str) -> _Target:
    """What stands at a place, with the names of the copies that have its parts."""
    steps = place.split(".")
    if len(steps) == 2:
        return _Target(steps[0], frozenset((steps[1], *_images(found, steps[1]))))
    parent = place.rpartition(".")[0]
    if steps[2] != OWN.get(steps[0]):
        return _Target(steps[0], frozenset((steps[-1],)), parent=parent)
    things = frozenset(_alike(found, steps[0], steps[1]))
    places = frozenset(f"{steps[0]}.{name}.{steps[2]}" for name in things)
    return _Target(steps[0], things, frozenset((steps[-1],)), places=places)


def _images(found: tuple[Mention, ...], name: str) -> Iterator[str]:
    """The names of its mirror images, as the mirror lists give them."""
    listed = [each for each in found if each.place.startswith(f"{MIRROR}.")]
    for each, beside in zip(listed, (*listed[1:], None), strict=True):
        if each.words == name and each.key and beside is not None:
            yield beside.words
        elif each.words == name and each.place.rpartition(".")[0] == MIRROR:
            yield other_side(name)


def _alike(found: tuple[Mention, ...], section: str, name: str) -> set[str]:
    """A thing, its mirror images, and what is written like it: they have the same ports."""
    names, more = {name}, [name]
    copies = [each for each in found if each.place.rpartition(".")[2] in ("like", MIRROR_OF)]
    while more:
        one = more.pop()
        new = {
            *_images(found, one),
            *(each.thing.partition(".")[2] for each in copies
              if each.words == one and each.sections == (section,)),
        } - names  # fmt: skip
        names |= new
        more += new
    return names


def named_by(text: str, place: str, option: str | None = None) -> tuple[Mention, ...]:
    """What names a thing, or its mirror image, and would name nothing if it went.

    What stands within it goes with it, and so does its name on the mirror list; what an option changes of
    it does not.

    Args:
        text: The builder's text.
        place: The thing's object path.
        option: The option that is looked at; what it writes by itself is named by it alone.

    Raises:
        EditError: The text cannot be read.
    """
    found, where = mentions(text), written_under(text, place, option)
    target = _target(found, place)
    whole = not target.ports and not target.parent
    own = {f"{target.section}.{name}" for name in target.names} if whole else set()

    def counts(each: Mention) -> bool:
        if where is not None and each.option != where:
            return False
        if each.option != where and each.declares:
            return True
        inside = each.thing in own or is_within(each.place, place)
        return not each.declares and not each.place.startswith(f"{MIRROR}.") and not inside

    return tuple(each for each in found if target.meant(each) and counts(each))


def renamed(reading: Reading, place: str, name: str) -> str:
    """Give a thing another name, and whatever names it, in every option; its mirror image goes along.

    Raises:
        EditError: It cannot be called so, or something would not be readable then.
    """
    text, name = reading.text, usable_name(name)
    found = mentions(text)
    target, old = _target(found, place), place.rpartition(".")[2]
    if name == old:
        return text
    if target.ports:
        names = _with_partner(found, target, old, name)
        target = replace(target, ports=frozenset(names))
    else:
        names = {old: name} if target.parent else _with_images(found, target, old, name)
    _free(found, target, names.values())
    edits = {}
    for each in found:
        meant = target.meant(each)
        if meant and not (each.sections[: len(ANY)] == ANY and _elsewhere(found, target, meant)):
            edits[each.node.start_mark.index] = (each, _words(each, target, meant, names[meant]))
    after = text
    for start, (each, words) in sorted(edits.items(), reverse=True):
        piece = in_quotes(words) if each.node.style in ("'", '"') else quoted_if_needed(words)
        after = spliced(after, start, each.node.end_mark.index, piece)
    _checked(text, after, {(each.words, words) for each, words in edits.values()})
    for option in (None, *reading.options):
        read_again(text, after, option)
    return after


def _words(mention: Mention, target: _Target, old: str, new: str) -> str:
    """What a mention says with another name in it."""
    steps = mention.words.split(".")
    if mention.place.startswith(f"{ACCEPTED}.") and len(steps) > 1:
        number = 3 if target.ports else 1
    else:
        number = len(steps) - 1 if target.ports else 0
    return ".".join([*steps[:number], new, *steps[number + 1 :]]) if steps[number] == old else mention.words


def _with_partner(found: tuple[Mention, ...], target: _Target, old: str, name: str) -> dict[str, str]:
    """The new names of a port and of its partner: of a valve in the middle left_in answers to right_in."""
    declared = {each.words for each in found if each.declares and each.sections[0] in target.places}
    alone = len(target.names) == 1 and other_side(old) in declared - {old}
    partner = alone and other_side(name) != name
    return {old: name} | ({other_side(old): other_side(name)} if partner else {})


def _with_images(found: tuple[Mention, ...], target: _Target, old: str, name: str) -> dict[str, str]:
    """The new names of a thing and of its mirror image."""
    listed = [each for each in found if each.place.startswith(f"{MIRROR}.") and not each.key]
    by_itself = [each for each in listed if each.place.rpartition(".")[0] == MIRROR]
    original = next((each.words for each in by_itself if other_side(each.words) == old != each.words), "")
    if original:
        message = f"{old} is the mirror image of {original}, and is called after it"
        raise EditError(message, f"give {original} another name")
    if not any(each.words == old for each in by_itself):
        return {other: other for other in target.names} | {old: name}
    if _elsewhere(found, target, old):
        raise EditError(f"the mirror list means something else called {old} too", "rename it in the text")
    if other_side(name) == name:
        message = f"{old} has a mirror image, so `left` or `right` has to stay in its name"
        raise EditError(message, f"write such as `left_{name}`")
    return {old: name, other_side(old): other_side(name)}


def _elsewhere(found: tuple[Mention, ...], target: _Target, name: str) -> bool:
    """Whether something of another section has the same name."""
    own = {target.section}
    return any(
        each.declares and each.words == name and len(each.sections) == 1
        and each.sections[0] in ANY and each.sections[0] not in own
        for each in found
    )  # fmt: skip


def _free(found: tuple[Mention, ...], target: _Target, names: Iterable[str]) -> None:
    sections = target.places or {target.parent or target.section}
    taken = {each.words for each in found if each.declares and each.sections[0] in sections}
    for name in names:
        if name in taken - target.names - target.ports:
            raise EditError(f"there is a {name} already", "choose another name")


def _checked(before: str, after: str, changes: set[tuple[str, str]]) -> None:
    """Every word of the text has to be the same, but for the names."""
    one, other = said_by(before), said_by(after)
    if one is not None and other is not None:
        old, new = list(_flat(one)), list(_flat(other))
        if len(old) == len(new) and all(a == b or (a, b) in changes for a, b in zip(old, new, strict=True)):
            return
    raise EditError("the name cannot be changed without touching more", "rename it in the text")


def _flat(said: Said) -> Iterator[str]:
    if isinstance(said, dict):
        for key, item in said.items():
            yield key
            yield from _flat(item)
    elif isinstance(said, list):
        for item in said:
            yield from _flat(item)
    else:
        yield said
