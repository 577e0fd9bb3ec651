"""The things of a builder's text by name, and to which of them a place belongs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import Aircraft
from firmpedal.project.measured import original_of
from firmpedal.project.schema import known_keys
from firmpedal.project.tree import branch_at

if TYPE_CHECKING:
    from firmpedal.model.fields import Declared
    from firmpedal.project.read import Reading
    from firmpedal.project.schema import Key

FILE = ""  # the place of what stands in the file by itself, such as its fluid
# The order in which the job goes; what is not named here comes after these, in the order of the model.
FIRST = (
    "aircraft",
    FILE,
    "components",
    "pedals",
    "bulkheads",
    "lines",
    "panels",
    "wheels",
    "keep clear of",
    "zones",
)


@dataclass(frozen=True, slots=True)
class Thing:
    """Something with a form of its own; `copy_of` is the place that is written, where this one is a copy."""

    section: str
    place: str
    name: str
    copy_of: str = ""


def by_name(key: Key) -> bool:
    """Whether a key holds places by name."""
    return key.reads is not None and key.reads.method == "named_points"


def things_of(reading: Reading) -> dict[str, tuple[Thing, ...]]:
    """Everything that has a form, by section, in the order of the job; none where nothing can be laid out."""
    if reading.tree is None:
        return {}
    keys = known_keys(Aircraft)
    found: dict[str, tuple[Thing, ...]] = {FILE: (Thing(FILE, FILE, "fluid and format"),)}
    for key in keys.values():
        if key.inner is not None and key.named:
            named = (f"{key.key}.{name}" for name in branch_at(reading.tree, key.key))
            found[key.key] = tuple(_named(reading, key.key, place) for place in named)
        elif by_name(key) or (key.inner is not None and (not key.many or key.key in reading.tree.entries)):
            found[key.key] = (Thing(key.key, key.key, key.key),)
    order = [*FIRST, *(section for section in found if section not in FIRST)]
    return {section: found[section] for section in order if found.get(section)}


def _named(reading: Reading, section: str, place: str) -> Thing:
    """A thing with a name; one that a mirror or `like` made has the same words as another."""
    name, beside = place.removeprefix(f"{section}."), branch_at(reading.tree, section)
    node = beside[name]
    source = original_of(node, beside.values()) if node.via is not None else None
    return Thing(section, place, name, source.path if source is not None else "")


def copies_of(reading: Reading, place: str) -> tuple[str, ...]:
    """The names of the copies of a thing, which go when it goes."""
    every = (thing for section in things_of(reading).values() for thing in section)
    return tuple(thing.name for thing in every if place and thing.copy_of == place)


def thing_at(reading: Reading, place: str) -> Thing | None:
    """The thing that a place belongs to; none where there is none."""
    things = [thing for section in things_of(reading).values() for thing in section if thing.place]
    fitting = [thing for thing in things if f"{place}.".startswith(f"{thing.place}.")]
    if fitting:
        return max(fitting, key=lambda thing: len(thing.place))
    own = {key.key for key in known_keys(Aircraft).values() if key.inner is None}
    return Thing(FILE, FILE, "fluid and format") if place in own else None


def class_at(place: str) -> type[Declared] | None:
    """The class of a thing of the file, by its object path."""
    key = known_keys(Aircraft).get(place.partition(".")[0])
    return key.inner if key is not None else None
