"""The sorts of things that can be added to a file, and where each is put."""

from __future__ import annotations

from dataclasses import dataclass

from firmpedal.model.kinds import KINDS


@dataclass(frozen=True, slots=True)
class Sort:
    """A sort of thing that can be added: the section it goes to, and for a component its kind.

    The section of what stands within another thing is its whole path: `components.left_caliper.ports`.
    """

    section: str
    name: str
    kind: str = ""


SORTS = (
    Sort("lines", "line"),
    Sort("bulkheads", "bulkhead"),
    *(Sort("components", kind, kind) for kind in KINDS),
    Sort("pedals", "pedal"),
    Sort("panels", "panel"),
    Sort("wheels", "wheel"),
    Sort("keep clear of", "thing to keep clear of"),
    Sort("zones", "zone"),
    Sort("points", "named point"),
    Sort("states", "state"),
    Sort("moving", "moving thing"),
    Sort("attitudes", "attitude"),
)
# What one of the things within another one is called.
ONE_OF = {
    "ports": "port",
    "sides": "side",
    "passes": "line that passes",
    "tube": "tube",
    "parts": "part of the bender",
    "packs": "pack",
    "springback": "trial bend",
    "expansion curve": "point of the curve",
    "accepted": "accepted finding",
}


def sort_within(section: str) -> Sort:
    """The sort of what stands within a thing at a place such as `components.left_caliper.ports`."""
    return Sort(section, ONE_OF[section.rpartition(".")[2]])


def word_for(sort: Sort) -> str:
    """One word for a sort, from which `sort_of` knows it again."""
    return sort.section if "." in sort.section else sort.name


def sort_of(word: str) -> Sort | None:
    """The sort that a word stands for; none where there is none such."""
    if "." in word:
        return sort_within(word) if word.rpartition(".")[2] in ONE_OF else None
    return next((sort for sort in SORTS if sort.name == word), None)
