"""What there is to choose from at a key, where it is one of a few words or a name in the file."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.circuit import ClampPlan
from firmpedal.model.component import SideOf
from firmpedal.model.kinds import KINDS
from firmpedal.project.tree import UNKNOWN, Branch, Items, branch_at, children, word_of
from firmpedal.project.tree import at as behind

if TYPE_CHECKING:
    from firmpedal.project.schema import Key

# By the way in which a key is read, where that alone decides.
WORDS = {
    "answer": ("yes", "no", UNKNOWN),
    "clamps": tuple(ClampPlan),
    "side": tuple(side.value for side in SideOf),
}
SECTIONS_WITH_PLACES = (("components", "ports"), ("bulkheads", "sides"))
MEASURED_AT = "measured at"


def positions_of(tree: Branch, *state: str) -> tuple[str, ...]:
    """The named positions of a state; none of one that has a range."""
    values = behind(tree, "states", *state, "values")
    return tuple(word_of(each) for each in children(values)) if isinstance(values, Items) else ()


def other_positions(tree: Branch, state: str) -> tuple[str, ...]:
    """The positions of a state besides the one in which things were measured."""
    every = positions_of(tree, state)
    stood = word_of(behind(tree, "states", state, MEASURED_AT)) or next(iter(every), "")
    return tuple(each for each in every if each != stood)


def choices_for(tree: Branch, key: Key, place: str) -> tuple[str, ...]:
    """The words that a key can have; none where anything may be written."""
    reads = key.reads
    if reads is None:
        return ()
    if reads.choices is not None:
        words = tuple(choice.value for choice in reads.choices)
        return (*words, UNKNOWN) if reads.optional else words
    if reads.method == "reference":
        return tuple(branch_at(tree, reads.target))
    if reads.method == "connection":
        return connections(tree, place)
    if key.key == MEASURED_AT:
        return positions_of(tree, *place.split(".")[1:2])
    return tuple(KINDS) if key.key == "kind" else WORDS.get(reads.method, ())


def connections(tree: Branch, place: str = "") -> tuple[str, ...]:
    """Every port, side of a bulkhead and end of a line that a line can come to; not those of its own."""
    own = place.split(".")[1] if place.count(".") else ""
    found = [
        f"{thing}.{inner}"
        for section, within in SECTIONS_WITH_PLACES
        for thing in branch_at(tree, section)
        for inner in branch_at(tree, section, thing, within)
    ]
    now = word_of(behind(tree, *place.split("."))) if place else ""
    ends = [f"{line}.{end}" for line in branch_at(tree, "lines") if line != own for end in ("from", "to")]
    return (*found, *(end for end in ends if end == now))
