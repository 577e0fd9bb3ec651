"""The keys of the builder's file as plain data, from the model itself."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import Aircraft
from firmpedal.model.component import BaseComponent
from firmpedal.model.fields import Named
from firmpedal.model.kinds import KINDS
from firmpedal.model.meanings import FILE_MEANINGS, LEFT_OUT, MEANINGS
from firmpedal.project.derive import SECTIONS as COPIED
from firmpedal.project.schema import known_keys

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.model.fields import Declared, Reads
    from firmpedal.project.schema import Key

UNKNOWN, NOTHING = "unknown", "nothing"
EACH = "*"  # stands in a section for a name of the builder's own
FREE = "the name of a state"  # has the meaning of keys that are names of the builder's own

_WORDS = {
    "answer": "yes, no or unknown",
    "body": "a box, a ball, a bar, a disc, or unknown",
    "clamps": "propose, none, or a list of lengths along the line",
    "component": "keys that depend on its kind",
    "connection": "a port, a side of a bulkhead, or the `from` or `to` of a line",
    "direction": "a direction: words such as `aft and down`, [aft, right, up], or unknown",
    "fluid": "a brake fluid by its specification, or unknown",
    "lengths": "a list of lengths",
    "motions": "for each state how far as [aft, right, up], a swing about an axis, or unknown",
    "named_points": "points by name",
    "pairs": "a list of pairs of ports",
    "position": "a point: [aft, right, up], a chain from another place, or unknown",
    "positions": "points one after the other",
    "sheet": "the plane of a panel: {up: 0}, with `within` two corners where it ends, or unknown",
    "shape": "a box, a ball, a side of a plane, a stretch of a line, or unknown",
    "side": "left, right or centre",
    "state": "the position of each state, as keys",
    "stock": "tube, hose or plastic as a phrase",
    "text": "words",
    "thread": "a thread with its gender",
    "vector": "how far aft, right and up: [aft, right, up], or unknown",
    "words": "words, or a list of them",
}
_TARGETS = {"names": "words, or the name of another thing", "parts": "the designation of a fitting"}
COPY_KEYS = {
    "like": "the name of another thing of this section, whose keys it takes over",
    "mirror of": "the name of another thing of this section, of which it is the mirror image; `nothing` "
    "for what is its own although the mirror list has its counterpart",
    "shift": "with `like`: how far from it, as {right: 7}",
    "swap": "with `like`: words to exchange in names, as {left: right}",
}
_SPECIAL = {
    "mirror": "a list of names, or {name: name of its image}",
    "options": "by name, what each changes, laid out as the file is",
}


# Where in the file a table's keys stand, with * for the builder's own names.
SECTIONS = {
    **{
        name: name
        for name in ("aircraft", "units", "datum", "foot", "on the ground", "bench", "buying", "limits")
    },
    **{name: f"{name}.*" for name in ("states", "attitudes", "accepted", *COPIED)},
    "bender": "bench.bender",
    "springback": "bench.bender.springback.*",
    "parts": "bench.bender.parts.*",
    "flaring tool": "bench.flaring tool",
    "tube": "bench.tube.*",
    "packs": "buying.packs.*",
    "pistons": "components.*.pistons",
    "pads": "components.*.pads",
    "leaflet": "components.*.leaflet",
    "disc": "components.*.disc",
    "heat trial": "components.*.heat trial",
    "gives": "components.*.gives",
    "return spring": "components.*.return spring",
    "ports": "components.*.ports.*",
    "brake": "pedals.*.brake",
    "swells": "lines.*.swells",
    "expansion curve": "lines.*.expansion curve.*",
    "stiffness": "lines.*.stiffness",
    "sides": "bulkheads.*.sides.*",
    "passes": "panels.*.passes.*",
}


@dataclass(frozen=True, slots=True)
class Entry:
    """One key of the file.

    `section` is the path to it with `*` for the builder's own names, empty for the file itself;
    `kinds` are the kinds of component that have the key, where not all do; `about` is what the section
    is, in the words of its class, and `field` the name of what the key fills there.
    """

    section: str
    key: str
    words: str
    required: bool
    default: str
    field: str = ""
    kinds: tuple[str, ...] = ()
    about: str = ""


def meaning_of(section: str, key: str) -> str:
    """What a key of a section is for, in a few words; `section` is written as in `Entry`, empty for the file.

    Empty for keys that nobody has to be told about.
    """
    if not section:
        return FILE_MEANINGS.get(key, "")
    table = next((name for name, path in SECTIONS.items() if path == section), "")
    return MEANINGS.get(table, {}).get(key, "")


def is_missed(section: str, key: Key) -> bool:
    """Whether a key that is left out has still to be found out: nothing stands in for it."""
    return key.required or (default_of(key) == UNKNOWN and LEFT_OUT not in meaning_of(section, key.key))


def file_reference() -> tuple[Entry, ...]:
    """List every key of the file, section by section, in the order of the model."""
    special = [Entry("", key, words, required=False, default=NOTHING) for key, words in _SPECIAL.items()]
    return (*_entries(Aircraft, ""), *special)


def _entries(cls: type[Declared], section: str, kind: str = "") -> Iterator[Entry]:
    about = (cls.__doc__ or "").strip().partition("\n")[0]
    keys = known_keys(cls)
    for key in keys.values():
        yield Entry(
            section,
            key.key,
            words_of(key),
            key.required,
            default_of(key),
            key.field,
            (kind,) if kind else (),
            about,
        )
    if cls.free_keys:
        yield Entry(section, EACH, _WORDS[cls.free_keys], required=False, default=NOTHING, about=about)
    if section in (f"{name}.{EACH}" for name in COPIED):
        for word, words in COPY_KEYS.items():
            yield Entry(section, word, words, required=False, default=NOTHING, about=about)
    for key in keys.values():
        yield from _inside(key, f"{section}.{key.key}" if section else key.key)


def _inside(key: Key, section: str) -> Iterator[Entry]:
    if key.inner is None:
        return
    if key.many:
        section += f".{EACH}"
    if key.inner is BaseComponent:
        yield from _components(section)
    else:
        yield from _entries(key.inner, section)


def _components(section: str) -> Iterator[Entry]:
    """The keys of all kinds once, and then those that only some kinds have."""
    yield from _entries(BaseComponent, section)
    common = known_keys(BaseComponent)
    inner = {name for key in common.values() for name in (f"{section}.{key.key}",)}
    for kind, cls in KINDS.items():
        for entry in _entries(cls, section, kind):
            own = entry.section == section and entry.key not in common and entry.key not in COPY_KEYS
            deeper = entry.section != section and not any(entry.section.startswith(name) for name in inner)
            if own or deeper:
                yield entry


def free_words(method: str) -> str:
    """What stands behind a key that is a name of the builder's own."""
    return _WORDS[method]


def words_of(key: Key) -> str:
    """What stands behind a key, in words."""
    if key.key == "kind" and (key.reads is None or key.reads.choices is None):
        return "one of: " + ", ".join(KINDS)
    if key.reads is None:
        if not key.many:
            return "keys of its own"
        named = key.inner is not None and issubclass(key.inner, Named)
        return (
            "things by name, each with keys of its own" if named else "a list, each item with keys of its own"
        )
    return _read_words(key.reads)


def _read_words(reads: Reads) -> str:
    if reads.dimension is not None:
        word = reads.dimension.value
        return f"{'an' if word[0] in 'aeiou' else 'a'} {word}, or unknown"
    if reads.choices is not None:
        return "one of: " + ", ".join(choice.value for choice in reads.choices)
    if reads.method == "reference":
        return f"a name among the {reads.target}"
    return _TARGETS.get(reads.target) or _WORDS[reads.method]


def default_of(key: Key) -> str:
    """What holds where a key is left out."""
    if key.required:
        return ""
    if key.info.is_required():
        return UNKNOWN if key.reads is not None else NOTHING
    default = key.info.default
    if key.reads is not None and key.reads.method == "fluid":
        return UNKNOWN
    if isinstance(default, Enum):
        return str(default.value)
    return default if isinstance(default, str) and default else NOTHING
