"""The fields of a thing in a builder's text: every key that it may have, and what stands there now."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from firmpedal.model.aircraft import Aircraft
from firmpedal.model.circuit import Passage
from firmpedal.place import is_within
from firmpedal.project.apart import is_lent
from firmpedal.project.bare_units import with_units
from firmpedal.project.chains import comes_to, ways_for
from firmpedal.project.field_cells import COORDINATES, FROM, Cell, Cutting, Kind, Row, rows_of
from firmpedal.project.field_choices import choices_for
from firmpedal.project.field_places import FILE, Thing, by_name, class_at
from firmpedal.project.field_rows import measured_rows, motion_rows, shape_rows
from firmpedal.project.locate import walked
from firmpedal.project.overlay import POINTS
from firmpedal.project.reference import (
    COPY_KEYS,
    EACH,
    FREE,
    default_of,
    free_words,
    is_missed,
    meaning_of,
    words_of,
)
from firmpedal.project.schema import keys_at
from firmpedal.project.sorts import sort_within
from firmpedal.project.supposed import GUESSED
from firmpedal.project.tree import UNKNOWN, Branch, Items, Node, at, branch_at, word_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.finding import Problem
    from firmpedal.model.fields import Declared
    from firmpedal.project.read import Reading
    from firmpedal.project.schema import Key
    from firmpedal.project.sorts import Sort
    from firmpedal.units import Dimension

LISTS = ("positions", "lengths", "clamps")
OF_THREE = ("position", "vector", "positions")
CHAINED = ("position", "positions")
SHAPES = ("shape", "body", "sheet")
MARKED = ("measure", "position", "vector", "direction", "thread")

__all__ = ["Cell", "Field", "Group", "Row", "field_round", "form_of"]


@dataclass(frozen=True, slots=True)
class Field:
    """One key of a thing as a form shows it.

    `hint` says what may stand there, `meaning` what it is for, `otherwise` what holds where it is left out.
    `rows` hold what is written; `many` says that rows can be added and taken out. `mark` is how far the
    builder trusts it, empty where no mark can stand; `copied` that it comes from another place of the file;
    `missed` that it still has to be found out where it is left out; `lent` that it comes from the aircraft as
    written, in a thing that the option that is looked at has for itself.
    """

    place: str
    key: str
    meaning: str
    hint: str
    otherwise: str
    needed: bool
    written: bool
    rows: tuple[Row, ...]
    method: str = "text"
    many: bool = False
    choices: tuple[str, ...] = ()
    mark: str = ""
    copied: bool = False
    missed: bool = False
    lent: bool = False
    line: int | None = None
    problems: tuple[Problem, ...] = ()

    @property
    def supposed(self) -> bool:
        """Whether it is a thread that nobody has looked at yet."""
        return self.method == "thread" and self.mark in GUESSED

    @property
    def to_measure(self) -> bool:
        """Whether it has still to be found out: unknown, or only supposed."""
        return self.unknown or self.supposed

    @property
    def unknown(self) -> bool:
        """Whether somebody still has to measure it, or a part of it."""
        return self.written and any(
            row.unknown or any(UNKNOWN in cell.words.split() for cell in row.cells) for row in self.rows
        )


@dataclass(frozen=True, slots=True)
class Group:
    """A thing, or a thing within a thing: its fields, and what stands in it with keys of its own.

    `adds` are the sorts of things that can be added within it; `member` says that it is one of several, of
    which each can be taken out, and `named` that it has a name of its own. `note` is what else is to be said.
    """

    place: str
    title: str
    about: str
    fields: tuple[Field, ...]
    groups: tuple[Group, ...] = ()
    adds: tuple[Sort, ...] = ()
    member: bool = False
    named: bool = False
    note: str = ""
    problems: tuple[Problem, ...] = field(default=())

    def all_fields(self) -> Iterator[Field]:
        """Its own fields, then those of what stands in it."""
        yield from self.fields
        for group in self.groups:
            yield from group.all_fields()


def field_round(place: str, fields: Iterable[Field]) -> Field | None:
    """The field that has a place in it, or is that place; None where none has."""
    return next((field for field in fields if is_within(place, field.place)), None)


def form_of(reading: Reading, thing: Thing) -> Group | None:
    """The form of a thing; None where the text cannot be laid out."""
    if reading.tree is None:
        return None
    return _Forms(reading, reading.tree).form(thing)


def _carried(key: Key, node: Node | None, place: str) -> str:
    """What a port moves with, which is said of the whole component."""
    if key.key not in ("ports", "sides"):
        return ""
    carrier, whole = word_of(at(node, "moves with")), place.rpartition(".")[2]
    if not carrier:
        return f"It stands still, as all of {whole} does, which names nothing it moves with."
    return f"It moves with {carrier}, as all of {whole} does."


class _Forms:
    def __init__(self, reading: Reading, tree: Branch) -> None:
        self.reading, self.tree = reading, tree

    def form(self, thing: Thing) -> Group:
        if thing.place == FILE:
            keys = [key for key in keys_at(Aircraft).values() if key.inner is None and not by_name(key)]
            own = tuple(self._field(key, "", "", self.tree) for key in keys)
            return Group("", thing.name, "what holds for the whole file", own)
        if thing.section == POINTS:
            return self._point(thing)
        cls = class_at(thing.place)
        if cls is None:
            return Group(thing.place, thing.name, "", ())
        key = keys_at(Aircraft)[thing.section]
        if key.many and not key.named:
            about = (cls.__doc__ or "").strip().partition("\n")[0]
            listed = tuple(self._inner(key, cls, "", "", self.tree))
            return Group(thing.place, thing.name, about, (), listed, (sort_within(key.key),))
        pattern = thing.section if thing.place == thing.section else f"{thing.section}.{EACH}"
        return self._group(cls, thing.place, pattern, thing.name)

    def _point(self, thing: Thing) -> Group:
        """A named place from which chains can start."""
        field = self._free_field(thing.place, "place", "from which chains can start", "position")
        return Group(thing.place, thing.name, "a place with a name, to measure others from", (field,))

    def _group(self, cls: type[Declared], place: str, pattern: str, title: str) -> Group:
        node = walked(self.tree, place)
        keys = keys_at(cls, node)
        fields = [self._field(key, place, pattern, node) for key in keys.values() if key.inner is None]
        if cls.free_keys:
            fields += self._free(cls, node, place, pattern)
        if isinstance(node, Branch):
            fields += [
                self._free_field(f"{place}.{key}", key, words)
                for key, words in COPY_KEYS.items()
                if key in node.entries
            ]
        groups = [
            group for key in keys.values() if key.inner is not None
            for group in self._inner(key, key.inner, place, pattern, node)
        ]  # fmt: skip
        about = (cls.__doc__ or "").strip().partition("\n")[0]
        adds = tuple(sort_within(f"{place}.{key.key}") for key in keys.values() if key.inner and key.many)
        return Group(
            place, title, about, tuple(fields), tuple(groups), adds,
            problems=self._problems_at(place, exactly=True),
        )  # fmt: skip

    def _inner(
        self, key: Key, cls: type[Declared], place: str, pattern: str, node: Node | None
    ) -> Iterator[Group]:
        inner, within = (f"{each}.{key.key}" if each else key.key for each in (place, pattern))
        if not key.many:
            yield self._group(cls, inner, within, key.key)
            return
        found = at(node, key.key)
        if isinstance(found, Branch):
            titles = {name: f"{key.key}: {name}" for name in found.entries}
        elif isinstance(found, Items):
            titles = {str(number): f"{key.key} {number}" for number in range(1, len(found.nodes) + 1)}
        else:
            return
        for name, title in titles.items():
            group = self._group(cls, f"{inner}.{name}", f"{within}.{EACH}", title)
            named = key.named and cls is not Passage
            yield replace(group, member=True, named=named, note=_carried(key, node, place))

    def _free(self, cls: type[Declared], node: Node | None, place: str, pattern: str) -> Iterator[Field]:
        """Keys that are names of the builder's own: for what moves, the states."""
        known = (*keys_at(cls), *COPY_KEYS)
        names = dict.fromkeys(branch_at(self.tree, "states"))
        if isinstance(node, Branch):
            names |= dict.fromkeys(key for key in node.entries if key not in known)
        for name in names:
            yield self._free_field(f"{place}.{name}", name, meaning_of(pattern, FREE), cls.free_keys)

    def _free_field(self, place: str, key: str, meaning: str, method: str = "text") -> Field:
        node = walked(self.tree, place)
        return self._made(
            place, key, node, meaning, free_words(method), "nothing", needed=False,
            method=method, choices=(),
        )  # fmt: skip

    def _field(self, key: Key, place: str, pattern: str, node: Node | None) -> Field:
        own = f"{place}.{key.key}" if place else key.key
        method = key.reads.method if key.reads else "text"
        return self._made(
            own, key.key, at(node, key.key), meaning_of(pattern, key.key), words_of(key), default_of(key),
            needed=key.required, method=method, choices=choices_for(self.tree, key, own),
            dimension=key.reads.dimension if key.reads else None, missed=is_missed(pattern, key),
        )  # fmt: skip

    def _made(
        self, place: str, key: str, node: Node | None, meaning: str, hint: str, otherwise: str, *,
        needed: bool, method: str, choices: tuple[str, ...], dimension: Dimension | None = None,
        missed: bool = False,
    ) -> Field:  # fmt: skip
        marked = isinstance(node, Branch) and "value" in node.entries and method in MARKED
        via = getattr(node, "via", None)
        mark = (word_of(at(node, "mark")) or "measured") if marked else "measured"
        span = self.reading.spans.get(place)
        return Field(
            place, key, meaning, hint, otherwise, needed, node is not None,
            with_units(self._rows(node, place, method, choices), self.tree, method, dimension),
            method=method,
            many=method in LISTS,
            choices=choices,
            mark=mark if method in MARKED and node is not None else "",
            copied=via is not None,
            missed=missed,
            lent=node is not None and via is None and self._lent(place),
            line=span.line if span else None,
            problems=self._problems_at(place),
        )  # fmt: skip

    def _lent(self, place: str) -> bool:
        return self.reading.option is not None and is_lent(self.reading.text, place, self.reading.option)

    def _rows(self, node: Node | None, place: str, method: str, choices: tuple[str, ...]) -> tuple[Row, ...]:
        """What is written, cut into rows; what is a copy is one piece."""
        via = getattr(node, "via", None)
        rows: tuple[Row, ...] = ()
        if via is None and method in SHAPES:
            rows = shape_rows(self.tree, node, place, method)
        elif via is None and method == "motions":
            rows = motion_rows(self.tree, node, place, place.rpartition(".")[2])
        elif via is None and method == "state":
            rows = measured_rows(self.tree, node, place)
        marked = isinstance(node, Branch) and "value" in node.entries and method in MARKED
        how = Cutting(
            points=method in OF_THREE, chains=method in CHAINED, many=method in LISTS,
            several=method == "words", copied=via is not None, choices=choices,
        )  # fmt: skip
        within = f"{place}.value" if marked and via is None else place
        found = rows or rows_of(at(node, "value") if marked else node, within, how)
        return tuple(self._given(row) for row in found)

    def _given(self, row: Row) -> Row:
        """A point with the ways in which it can be given, and where it comes to."""
        if row.kind is not Kind.POINT:
            return row
        return replace(
            row,
            way=FROM + row.way if row.way else COORDINATES,
            ways=ways_for(self.reading, row.at, row.way),
            comes_to=comes_to(self.reading, row.at) if row.way else "",
        )

    def _problems_at(self, place: str, *, exactly: bool = False) -> tuple[Problem, ...]:
        """What cannot be read at a place, or within it; of most files everything can."""
        if not self.reading.problems:
            return ()
        places = [place] if exactly else [each for each in self.reading.spans if is_within(each, place)]
        spans = {self.reading.spans[each] for each in places if each in self.reading.spans}
        return tuple(each for each in self.reading.problems if each.span in spans)
