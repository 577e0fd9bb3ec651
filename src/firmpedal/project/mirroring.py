"""The mirror list: which name is the mirror image of which, and an entry for each image."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.hashing import Same
from firmpedal.project.names import other_side, quoted, suggest
from firmpedal.project.overlay import POINTS
from firmpedal.project.points import MIRROR_OF
from firmpedal.project.tree import Branch, Items, Leaf, Node, at, branch_at, is_empty, is_removed, word_of

if TYPE_CHECKING:
    from firmpedal.finding import Span
    from firmpedal.project.notes import Notes

NOTHING = "nothing"  # of which a thing is the mirror image that is its own, whatever the list says
LONGEST_CHAIN = 20  # of things that are like each other

_LIST = "write `mirror: [left_leg, left_axle]`"
_PAIRS = "write the list as keys: `mirror: {this_name: name_of_its_image}`"


@dataclass
class Mirror:
    """Which name is the mirror image of which, both ways."""

    images: dict[str, str] = field(default_factory=dict)

    def rename(self, name: str) -> str:
        """Give the name on the other side; what has no image there keeps its name."""
        if name in self.images:
            return self.images[name]
        head, dot, tail = name.partition(".")
        return self.images.get(head, head) + dot + tail

    def add(self, name: str, other: str) -> None:
        self.images[name] = other
        self.images[other] = name


@dataclass(frozen=True)
class _Wanted:
    name: str
    other: str
    span: Span


def mirrored_tree(tree: Branch, sections: tuple[str, ...], notes: Notes) -> tuple[Branch, Mirror]:
    """Write a `mirror of` entry for each name on the mirror list; what stands there is an exception."""
    mirror = Mirror()
    for section in sections:
        for name, entry in branch_at(tree, section).items():
            if (source := word_of(at(entry, MIRROR_OF))) and source != NOTHING:
                mirror.add(source, name)
    wanted = _checked(_wanted(tree.entries.get("mirror"), notes), notes)
    for one in wanted:
        mirror.add(one.name, one.other)
    _pair_ports(tree, mirror)
    for one in wanted:
        tree = _with_images(tree, one, sections, notes)
    return tree, mirror


def with_more_images(first: Node | None, second: Node, notes: Notes) -> Branch:
    """An option's mirror list adds to the aircraft's own; the two may be written in either form."""
    pairs = Branch({}, {}, second.span)
    for one in (*_wanted(first, notes), *_wanted(second, notes)):
        pairs = pairs.with_entry(one.name, Leaf(one.other, one.span), one.span)
    return pairs


def _wanted(node: Node | None, notes: Notes) -> list[_Wanted]:
    """Read the list in each of its forms: names, or names with the names of their images."""
    if isinstance(node, Branch):
        pairs = [(name, word_of(item), node.key_span(name), item) for name, item in node.entries.items()]
    else:
        leaves = node.nodes if isinstance(node, Items) else () if node is None else (node,)
        pairs = [(word_of(leaf), other_side(word_of(leaf)), leaf.span, leaf) for leaf in leaves]
    found = []
    for name, other, span, item in pairs:
        if name and other:
            found.append(_Wanted(name, other, span))
        elif is_empty(item):
            notes.note(item, "nothing is written after mirror", f"{_LIST}, or take the line out")
        else:
            notes.note(item, "a name should stand here", _LIST)
    return found


def _checked(wanted: list[_Wanted], notes: Notes) -> list[_Wanted]:
    """Note names without a side, and pairs of which both are to be images of each other."""
    kept: dict[str, _Wanted] = {}
    for one in wanted:
        if one.name in kept:
            continue
        if one.name == one.other:
            notes.note_at(one.span, f"{quoted(one.name)} has neither left nor right in it", one.name, _PAIRS)
        elif one.other in kept:
            message = f"{quoted(one.name)} is the mirror image of {quoted(one.other)} already"
            notes.note_at(one.span, message, one.name, "take one of the two out", kept[one.other].span)
        else:
            kept[one.name] = one
    return list(kept.values())


def _pair_ports(tree: Branch, mirror: Mirror) -> None:
    """A thing in the middle, such as a valve, keeps its name; of its ports left_in answers to right_in."""
    for section, inner in (("components", "ports"), ("bulkheads", "sides")):
        for name in branch_at(tree, section):
            ports = _inner_names(tree, section, name, inner)
            for port in ports if name not in mirror.images else ():
                if other_side(port) != port and other_side(port) in ports:
                    mirror.add(f"{name}.{port}", f"{name}.{other_side(port)}")


def _inner_names(tree: Branch, section: str, name: str, inner: str) -> set[str]:
    """The ports of a component, its own and those of what it is like."""
    names: set[str] = set()
    seen: list[str] = []
    while name and name not in seen and len(seen) < LONGEST_CHAIN:
        seen.append(name)
        names |= set(branch_at(tree, section, name, inner))
        name = word_of(at(tree, section, name, "like"))
    return names


def _with_images(tree: Branch, one: _Wanted, sections: tuple[str, ...], notes: Notes) -> Branch:
    found = [section for section in sections if one.name in branch_at(tree, section)]
    for section in found:
        node = tree.entries[section]
        if isinstance(node, Branch) and not is_removed(node.entries[one.name]):
            tree = tree.with_entry(section, _with_image(node, one, section))
    nodes = [tree.entries[section] for section in sections if section in tree.entries]
    unread = any(not isinstance(node, Branch) and not is_empty(node) for node in nodes)
    if not found and not unread and not notes.doubtful(""):
        names = [name for section in sections for name in branch_at(tree, section)]
        message = f"nothing is called {quoted(one.name)}"
        notes.note_at(one.span, message, one.name, suggest(one.name, names))
    return tree


def _with_image(section: Branch, one: _Wanted, name: str) -> Branch:
    own = section.entries.get(one.other)
    if own is None:
        span = section.keys.get(one.other, one.span)
        return section.with_entry(one.other, _image(one, span), span)
    if is_removed(own) and isinstance(own, Leaf):
        return section.with_entry(one.other, replace(own, replaced=True))
    if not isinstance(own, Branch) or name == POINTS or "like" in own.entries:
        return section  # written out as something of its own
    return section.with_entry(one.other, _with_exceptions(one, Same(own)))


@lru_cache(maxsize=512)  # the same image again stays the same thing, for those who remember what it came to
def _image(one: _Wanted, span: Span) -> Branch:
    return Branch({MIRROR_OF: Leaf(one.name, one.span)}, {MIRROR_OF: one.span}, span, via=one.span)


@lru_cache(maxsize=512)
def _with_exceptions(one: _Wanted, own: Same[Branch]) -> Branch:
    entries, keys = own.thing.entries, own.thing.keys
    source = Leaf(one.name, one.span)
    return replace(own.thing, entries={MIRROR_OF: source, **entries}, keys={MIRROR_OF: one.span, **keys})


def opposite_states(tree: Branch) -> frozenset[str]:
    """The states in which a mirrored thing moves the other way, as the other rudder pedal does."""
    states = branch_at(tree, "states")
    return frozenset(
        name
        for name, state in states.items()
        if word_of(at(state, "opposite when mirrored")).lower() in ("yes", "true")
    )
