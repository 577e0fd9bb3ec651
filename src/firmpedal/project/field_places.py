"""The things of a builder's text by name, and to which of them a place belongs."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.hashing import Same
from firmpedal.model.aircraft import Aircraft
from firmpedal.place import is_within
from firmpedal.project.locate import walked
from firmpedal.project.measured import original_of
from firmpedal.project.overlay import POINTS
from firmpedal.project.points import MIRROR_OF
from firmpedal.project.reference import EACH
from firmpedal.project.schema import keys_at, known_keys
from firmpedal.project.tree import at, branch_at, word_of

if TYPE_CHECKING:
    from firmpedal.model.fields import Declared
    from firmpedal.project.read import Reading
    from firmpedal.project.schema import Key
    from firmpedal.project.tree import Branch

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
    "points",
    "moving",
    "states",
    "attitudes",
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


def walk_to(tree: Branch, path: str) -> tuple[Key, str] | None:
    """The key that an object path ends in, and its path with `*` for the builder's own names.

    None where it ends in a name, or inside a value.
    """
    cls: type[Declared] = Aircraft
    pattern, here, steps = "", "", path.split(".")
    while steps:
        step = steps.pop(0)
        key = keys_at(cls, walked(tree, here)).get(step)
        here, pattern = (f"{each}.{step}" if each else step for each in (here, pattern))
        if key is None or not steps:
            return None if key is None else (key, pattern)
        if key.inner is None:
            return None
        if key.many:
            here, pattern = f"{here}.{steps.pop(0)}", f"{pattern}.{EACH}"
        cls = key.inner
    return None


def things_of(reading: Reading) -> dict[str, tuple[Thing, ...]]:
    """Everything that has a form, by section, in the order of the job; none where nothing can be laid out."""
    return {} if reading.tree is None else _things_in(Same(reading.tree))


@lru_cache(maxsize=8)  # every field of a page asks which thing it belongs to
def _things_in(of: Same[Branch]) -> dict[str, tuple[Thing, ...]]:
    keys, tree = known_keys(Aircraft), of.thing
    found: dict[str, tuple[Thing, ...]] = {FILE: (Thing(FILE, FILE, "fluid and format"),)}
    for key in keys.values():
        if (key.inner is not None and key.named) or by_name(key):
            named = (f"{key.key}.{name}" for name in branch_at(tree, key.key))
            found[key.key] = tuple(_named(tree, key.key, place) for place in named)
        elif key.inner is not None and (not key.many or key.key in tree.entries):
            found[key.key] = (Thing(key.key, key.key, key.key),)
    order = [*FIRST, *(section for section in found if section not in FIRST)]
    return {section: found[section] for section in order if found.get(section)}


def _named(tree: Branch, section: str, place: str) -> Thing:
    """A thing with a name; one that a mirror or `like` made has the same words as another."""
    name, beside = place.removeprefix(f"{section}."), branch_at(tree, section)
    node = beside[name]
    image_of = word_of(at(node, MIRROR_OF))
    if section == POINTS and node.via is not None and image_of:
        return Thing(section, place, name, f"{POINTS}.{image_of}")
    source = original_of(tree, node)
    return Thing(section, place, name, source.path if source is not None else "")


def images_of(reading: Reading, place: str) -> tuple[str, ...]:
    """The names of the mirror images of a thing that are not written themselves, and go when it goes."""
    steps = place.split(".")
    if reading.tree is None or len(steps) != 2:
        return ()
    beside, every = branch_at(reading.tree, steps[0]), things_of(reading).get(steps[0], ())
    copies = [thing.name for thing in every if thing.copy_of == place]
    return tuple(name for name in copies if beside[name].via is not None)


def thing_at(reading: Reading, place: str) -> Thing | None:
    """The thing that a place belongs to; none where there is none."""
    things = [thing for section in things_of(reading).values() for thing in section if thing.place]
    fitting = [thing for thing in things if is_within(place, thing.place)]
    if fitting:
        return max(fitting, key=lambda thing: len(thing.place))
    own = {key.key for key in known_keys(Aircraft).values() if key.inner is None}
    return Thing(FILE, FILE, "fluid and format") if place in own else None


def class_at(place: str) -> type[Declared] | None:
    """The class of a thing of the file, by its object path."""
    key = known_keys(Aircraft).get(place.partition(".")[0])
    return key.inner if key is not None else None
