"""Every place of a builder's text where a name of the builder's own stands: as a key, or as what is named.

They are found in the text as it is written, in all its options, so that a name can be changed everywhere
and nothing is taken out that something else still names.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ruamel.yaml.nodes import MappingNode, ScalarNode, SequenceNode

from firmpedal.model.aircraft import Acceptance, Aircraft
from firmpedal.model.circuit import Passage
from firmpedal.model.component import BaseComponent
from firmpedal.model.kinds import KINDS
from firmpedal.project.derive import SECTIONS as COPIED
from firmpedal.project.edit import composed
from firmpedal.project.overlay import POINTS
from firmpedal.project.points import MIRROR_OF
from firmpedal.project.schema import known_keys

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from ruamel.yaml.nodes import Node as YamlNode

    from firmpedal.model.fields import Declared
    from firmpedal.project.schema import Key

ANY = (*COPIED, POINTS)  # what is named by its name alone, wherever it is
PLACES, ENDS = (POINTS, "bulkheads", "components"), ("components", "bulkheads", "lines")
WITH_PORTS = ("outlet", "inlet", "ways")
OWN = {"components": "ports", "bulkheads": "sides"}


@dataclass(frozen=True, slots=True)
class Mention:
    """A name that stands somewhere in the text.

    `sections` are those in which the named thing may be; `within` says that only what stands within a
    thing is meant, such as its port. `place` is where it stands, under `option`; `key` says that it is the
    key there, and `declares` that the thing itself is written there.
    """

    node: ScalarNode
    words: str
    sections: tuple[str, ...]
    place: str
    option: str | None
    key: bool = False
    declares: bool = False

    @property
    def thing(self) -> str:
        """The place of the thing that it stands in."""
        return ".".join(self.place.split(".")[:2])


def mentions(text: str) -> tuple[Mention, ...]:
    """Find every name in a text, in its order.

    Raises:
        EditError: The text cannot be read.
    """
    return tuple(_Finder(None).whole(composed(text)))


class _Finder:
    """Walks through what one option writes, or the aircraft as written."""

    def __init__(self, option: str | None) -> None:
        self.option = option

    def _named(
        self, node: YamlNode | None, sections: tuple[str, ...], place: str, *,
        key: bool = False, declares: bool = False,
    ) -> Iterator[Mention]:  # fmt: skip
        if isinstance(node, ScalarNode):
            words = " ".join(str(node.value).split())
            if words:
                yield Mention(node, words, sections, place, self.option, key, declares)

    def whole(self, root: YamlNode) -> Iterator[Mention]:
        """All that is written: sections, the mirror list, and the options, each as a whole of its own."""
        for name, _, value in _pairs(root):
            if name == "mirror":
                yield from self._mirror(value)
            elif name == POINTS:
                for point, key, item in _pairs(value):
                    yield from self._named(key, (POINTS,), f"{POINTS}.{point}", key=True, declares=True)
                    yield from self._position(item, f"{POINTS}.{point}")
            elif name == "options" and self.option is None:
                for option, _, item in _pairs(value):
                    yield from _Finder(option).whole(item)
            elif name in known_keys(Aircraft):
                yield from self._behind(known_keys(Aircraft)[name], value, name, None)

    def _mirror(self, node: YamlNode) -> Iterator[Mention]:
        items: Iterable[YamlNode] = node.value if isinstance(node, SequenceNode) else ()
        for number, item in enumerate(items, 1):
            yield from self._named(item, ANY, f"mirror.{number}")
            for name, key, image in _pairs(item):
                yield from self._named(key, ANY, f"mirror.{number}.{name}", key=True)
                yield from self._named(image, ANY, f"mirror.{number}.{name}")
        for name, key, image in _pairs(node):
            yield from self._named(key, ANY, f"mirror.{name}", key=True)
            yield from self._named(image, ANY, f"mirror.{name}")

    def _behind(
        self, key: Key, node: YamlNode, place: str, around: type[Declared] | None
    ) -> Iterator[Mention]:
        """What stands behind a key."""
        if key.inner is None:
            yield from self._value(key, node, place, around)
        elif not key.many:
            yield from self._thing(key.inner, node, place)
        elif isinstance(node, SequenceNode):
            for number, item in enumerate(node.value, 1):
                yield from self._thing(key.inner, item, f"{place}.{number}")
        else:
            for name, own, item in _pairs(node):
                is_line = key.inner is Passage
                yield from self._named(
                    own,
                    ("lines",) if is_line else (place,),
                    f"{place}.{name}",
                    key=True,
                    declares=not is_line,
                )
                yield from self._thing(key.inner, item, f"{place}.{name}")

    def _thing(self, cls: type[Declared], node: YamlNode, place: str) -> Iterator[Mention]:
        keys = _keys_of(cls)
        section = place.partition(".")[0]
        for name, own, item in _pairs(node):
            inner = f"{place}.{name}"
            if name in ("like", MIRROR_OF):
                yield from self._named(item, (section,), inner)
            elif name == "swap":
                for _, first, second in _pairs(item):
                    yield from self._named(first, ANY, inner, key=True)
                    yield from self._named(second, ANY, inner)
            elif name in keys:
                yield from self._behind(keys[name], item, inner, cls)
            elif cls.free_keys:
                yield from self._named(own, ("states",), inner, key=True)
                yield from self._motion(item, inner)

    def _motion(self, node: YamlNode, place: str) -> Iterator[Mention]:
        for name, _, item in _pairs(node):
            if name == "about":
                yield from self._position(item, f"{place}.{name}")
            elif isinstance(item, MappingNode):
                yield from self._motion(item, f"{place}.{name}")

    def _value(
        self, key: Key, node: YamlNode, place: str, around: type[Declared] | None
    ) -> Iterator[Mention]:
        """The names in a value: itself, those that its points hang on, states, ports of its own."""
        method = key.reads.method if key.reads is not None else ""
        sections = _sections(key, around)
        if sections:
            yield from self._named(node, sections, place)
        elif method in ("position", "positions"):
            items = node.value if method == "positions" and isinstance(node, SequenceNode) else ()
            for number, item in enumerate(items, 1):
                yield from self._position(item, f"{place}.{number}")
            if method == "position":
                yield from self._position(node, place)
        elif method in ("shape", "body", "sheet"):
            yield from self._shape(node, place)
        elif method == "state":
            for name, own, _ in _pairs(node):
                yield from self._named(own, ("states",), f"{place}.{name}", key=True)
        elif around is not None and issubclass(around, BaseComponent) and key.key in WITH_PORTS:
            ports = (f"{place.rpartition('.')[0]}.ports",)
            for each in _leaves(node):
                yield from self._named(each, ports, place)

    def _shape(self, node: YamlNode, place: str) -> Iterator[Mention]:
        for name, _, item in _pairs(node):
            inner = f"{place}.{name}"
            if name == "line":
                yield from self._named(item, ("lines",), inner)
            elif isinstance(item, SequenceNode) and name in ("box", "bar", "within"):
                for number, each in enumerate(item.value, 1):
                    yield from self._position(each, f"{inner}.{number}")
            elif name in ("ball", "disc"):
                yield from self._position(item, inner)

    def _position(self, node: YamlNode, place: str) -> Iterator[Mention]:
        """A point that hangs on a place with a name."""
        yield from self._named(node, PLACES, place)
        for name, _, item in _pairs(node):
            if name in ("from", "value", MIRROR_OF):
                yield from self._position(item, f"{place}.{name}")


def _sections(key: Key, around: type[Declared] | None) -> tuple[str, ...]:
    """The sections of what a value names as a whole; none where it is no name."""
    reads = key.reads
    if reads is None:
        return ()
    if reads.method == "reference":
        return (reads.target,)
    if reads.target == "names":
        return ANY
    if around is Acceptance and key.key == "at":
        return (*ANY, "states", "attitudes")
    return ENDS if reads.method == "connection" else ()


def _keys_of(cls: type[Declared]) -> dict[str, Key]:
    """The keys of a class; of a component those of every kind, for an option need not repeat which it is."""
    if cls is not BaseComponent:
        return known_keys(cls)
    return {name: key for each in KINDS.values() for name, key in known_keys(each).items()}


def _pairs(node: YamlNode | None) -> Iterator[tuple[str, ScalarNode, YamlNode]]:
    for key, value in node.value if isinstance(node, MappingNode) else ():
        if isinstance(key, ScalarNode):
            yield " ".join(str(key.value).split()), key, value


def _leaves(node: YamlNode) -> Iterator[YamlNode]:
    if isinstance(node, SequenceNode):
        for item in node.value:
            yield from _leaves(item)
    else:
        yield node
