"""Which fields of the file a question is answered in, where its answer is more than one figure in a box."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.project.field_places import thing_at
from firmpedal.project.fields import field_round, form_of
from firmpedal.project.measured import written_at

if TYPE_CHECKING:
    from collections.abc import Hashable, Iterable

    from firmpedal.pipeline import Evaluation
    from firmpedal.project import Reading
    from firmpedal.project.fields import Field
    from firmpedal.report.to_measure import ToMeasure


@dataclass(frozen=True)
class Asked:
    """A question as it stands on a page: `fields` are the places of those that its answer is typed in.

    None where it has a box of its own, or no field has all that it asks for.
    """

    told: ToMeasure
    evaluation: Evaluation
    fields: tuple[str, ...] = ()

    @property
    def about(self) -> Hashable:
        """What makes it the same question still: its fields, however much of them is filled by now."""
        one = self.told
        own = (one.what, one.rules, one.at, one.others, one.unit, one.how, one.when, one.offers)
        return self.fields or own


def in_fields(evaluation: Evaluation, questions: Iterable[ToMeasure]) -> tuple[Asked, ...]:
    """Each question with its fields; those that are answered in the same fields are one.

    So the pieces of a point stay one question while they are typed one after the other.
    """
    fields = _Fields(evaluation.reading)
    found: dict[Hashable, Asked] = {}
    for one in questions:
        asked = Asked(one, evaluation, fields.of(one))
        before = found.get((asked.about, one.when))
        found[asked.about, one.when] = asked if before is None else _together(before, asked)
    return tuple(found.values())


def _together(first: Asked, second: Asked) -> Asked:
    told, also = first.told, second.told
    both = replace(
        told,
        rules=_each_once(told.rules, also.rules),
        places=_each_once(told.places, also.places),
        others=_each_once(told.others, also.others),
    )
    return replace(first, told=both)


def _each_once(first: tuple[str, ...], second: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*first, *second)))


class _Fields:
    """The fields of one reading, each thing's laid out once."""

    def __init__(self, reading: Reading) -> None:
        self._reading = reading
        self._of_things: dict[str, tuple[Field, ...]] = {}

    def of(self, one: ToMeasure) -> tuple[str, ...]:
        """The places of the fields that a question is answered in, each once."""
        places = dict.fromkeys(written_at(self._reading, place) for place in one.places)
        found = [self._round(place) for place in places]
        if any(each is None or each == one.at for each in found):
            return ()
        return tuple(dict.fromkeys(each for each in found if each is not None))

    def _round(self, place: str) -> str | None:
        """The place of the field that has a place in it; None where none has."""
        thing = thing_at(self._reading, place)
        if thing is None:
            return None
        if thing.place not in self._of_things:
            group = form_of(self._reading, thing)
            self._of_things[thing.place] = tuple(group.all_fields()) if group is not None else ()
        found = field_round(place, self._of_things[thing.place])
        return found.place if found is not None else None
