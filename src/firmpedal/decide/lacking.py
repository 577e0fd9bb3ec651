"""What somebody has to measure or look up, each thing once: what is written once for several is one."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.checks.closer import NOT_IN_THE_FILE
from firmpedal.model.aircraft import Aircraft
from firmpedal.place import is_within
from firmpedal.project.locate import walked
from firmpedal.project.measured import written_at
from firmpedal.project.names import label_of
from firmpedal.project.schema import known_keys
from firmpedal.project.tree import Branch
from firmpedal.project.unknowns import unknowns
from firmpedal.quantity import Answer, When

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.pipeline import Evaluation
    from firmpedal.project import Reading
    from firmpedal.quantity import Missing

    Waiting = dict[str, tuple[tuple[str, ...], tuple[str, ...]]]


@dataclass(frozen=True, slots=True)
class Lacking:
    """One thing to measure: in words, the rules that wait for it, where it is missed, from when it is there.

    Several places are those of a value and its copies, or of one thing that is no single value.
    """

    what: str
    rules: tuple[str, ...]
    places: tuple[str, ...]
    when: When = When.NOW


def lacking(evaluation: Evaluation) -> tuple[Lacking, ...]:
    """All of it: what rules wait for, and then what else the file leaves unknown."""
    found = _each_once(evaluation, _waited_for(evaluation))
    places = [place for one in found for place in one.places]
    asked = (*places, *(written_at(evaluation.reading, place) for place in places))
    left = (Lacking(label_of(places[0]), (), places) for places in _left_open(evaluation, asked))
    return (*found, *left)


def _left_open(evaluation: Evaluation, asked: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """What the file itself leaves open beside the places that are asked for already.

    A thread comes with its copies, for they get the same answer; other things may be mirrored there.
    Whether feet add up in a cylinder is no question before it is known that it lets the other seat through.
    """
    early = {
        f"{each.place}.feet add up"
        for each in evaluation.aircraft.cylinders
        if each.seals_when_pressed is not Answer.NO
    }
    for item in unknowns(evaluation.reading):
        copies = item.copies if item.supposed else ()
        places = tuple(path.removesuffix(".value") for path in (item.path, *copies))
        if places[0] not in early and not any(is_within(places[0], place) for place in asked):
            yield places


def lacking_for(evaluation: Evaluation, missing: Iterable[Missing]) -> tuple[Lacking, ...]:
    """What some figures lack, with the rules that wait for it as well."""
    rules, found = waiting(evaluation), dict[str, Lacking]()
    for each in missing:
        waits = rules[each.what][0] if each.what in rules else ()
        before = found.get(each.what, Lacking(each.what, waits, (), each.when))
        found[each.what] = replace(before, places=_with(before.places, each.place), when=each.when)
    return _each_once(evaluation, found.values())


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


def _waited_for(evaluation: Evaluation) -> Iterator[Lacking]:
    """The same, with when each can be measured: the latest that is said of it."""
    order, when = list(When), dict[str, When]()
    for missing in (each for unclear in evaluation.not_shown for each in unclear.missing):
        when[missing.what] = max(missing.when, when.get(missing.what, When.NOW), key=order.index)
    for what, (rules, places) in waiting(evaluation).items():
        yield Lacking(what, rules, places, when[what])


def _each_once(evaluation: Evaluation, things: Iterable[Lacking]) -> tuple[Lacking, ...]:
    """A copy goes with its original: its figure is missed there as well, or for another reason."""
    found: dict[str, Lacking] = {}
    for one in things:
        key = _key_of(evaluation.reading, one.what, one.places)
        before = found.get(key)
        if before is not None:
            rules = tuple(dict.fromkeys((*before.rules, *one.rules)))
            places = tuple(dict.fromkeys((*before.places, *one.places)))
            found[key] = replace(before, rules=rules, places=places)
        else:
            found[key] = one
    return tuple(found.values())


def _key_of(reading: Reading, what: str, places: tuple[str, ...]) -> str:
    """What makes two things one: where a single value is written, so that a copy goes with its original.

    Two that are alike, such as the lines of both sides, are two.
    """
    tree = reading.tree
    if tree is None or len(places) != 1 or places[0].partition(".")[0] not in known_keys(Aircraft):
        return what
    node = walked(tree, places[0])
    whole = isinstance(node, Branch) and "value" not in node.entries
    return what if whole else written_at(reading, places[0])
