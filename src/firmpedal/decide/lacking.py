"""What somebody has to measure or look up, each thing once: what is written once for several is one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.closer import NOT_IN_THE_FILE
from firmpedal.model.aircraft import Aircraft
from firmpedal.project.locate import walked
from firmpedal.project.measured import written_at
from firmpedal.project.names import label_of
from firmpedal.project.schema import known_keys
from firmpedal.project.tree import Branch
from firmpedal.project.unknowns import unknowns
from firmpedal.quantity import Answer, When

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.project import Reading
    from firmpedal.project.unknowns import Item

    Waiting = dict[str, tuple[tuple[str, ...], tuple[str, ...]]]


def waiting(evaluation: Evaluation) -> Waiting:
    """Each thing that rules wait for, with the rules and the places it belongs to."""
    found: Waiting = {}
    for unclear in evaluation.not_shown:
        for missing in unclear.missing:
            rules, places = found.get(missing.what, ((), ()))
            place = unclear.place if missing.place in NOT_IN_THE_FILE else missing.place
            found[missing.what] = (_with(rules, unclear.rule), _with(places, place))
    return found


def _with(items: tuple[str, ...], item: str) -> tuple[str, ...]:
    return items if item in items else (*items, item)


def when_of(evaluation: Evaluation) -> dict[str, When]:
    """From when on each thing that rules wait for can be measured: the latest that is said of it."""
    order, found = list(When), dict[str, When]()
    for missing in (each for unclear in evaluation.not_shown for each in unclear.missing):
        found[missing.what] = max(missing.when, found.get(missing.what, When.NOW), key=order.index)
    return found


def key_of(reading: Reading, what: str, places: tuple[str, ...]) -> str:
    """What makes two things one: where a single value is written, so that a copy goes with its original.

    Two that are alike, such as the lines of both sides, are two.
    """
    tree = reading.tree
    if tree is None or len(places) != 1 or places[0].partition(".")[0] not in known_keys(Aircraft):
        return what
    node = walked(tree, places[0])
    whole = isinstance(node, Branch) and "value" not in node.entries
    return what if whole else written_at(reading, places[0])


def left_open(evaluation: Evaluation, asked: tuple[str, ...]) -> tuple[Item, ...]:
    """What the file itself leaves unknown beside the places that are asked for already.

    Whether feet add up in a cylinder is no question before it is known that it lets the other seat through.
    """
    early = {
        f"{each.place}.feet add up"
        for each in evaluation.aircraft.cylinders
        if each.seals_when_pressed is not Answer.NO
    }
    items = (item for item in unknowns(evaluation.reading) if place_of(item) not in early)
    return tuple(item for item in items if not any(_within(item.path, place) for place in asked))


def _within(path: str, place: str) -> bool:
    return bool(place) and f"{path}.".startswith(f"{place}.")


def place_of(item: Item) -> str:
    """Where something that the file leaves unknown stands, as a place of its own."""
    return item.path.removesuffix(".value")


def lacking(evaluation: Evaluation) -> tuple[str, ...]:
    """All of it in words, counted as everywhere."""
    found: dict[str, str] = {}
    asked: list[str] = []
    for what, (_, places) in waiting(evaluation).items():
        found.setdefault(key_of(evaluation.reading, what, places), what)
        asked += [*places, *(written_at(evaluation.reading, place) for place in places)]
    open_besides = left_open(evaluation, tuple(asked))
    return (*found.values(), *(label_of(place_of(item)) for item in open_besides))
