"""What is chosen on the page of fields: the thing with its form, as the open file has it now."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.place import is_within
from firmpedal.project.edit import EditError, is_written
from firmpedal.project.field_places import FILE, thing_at, things_of
from firmpedal.project.fields import field_round, form_of
from firmpedal.project.mirror_list import can_be_mirrored, is_mirrored
from firmpedal.project.names import other_side
from firmpedal.project.own_image import follows, images_to_own
from firmpedal.web.answers import reading_of
from firmpedal.web.form.sheet import FILE_PLACE
from firmpedal.web.wording import in_words

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.project import Reading
    from firmpedal.project.field_places import Thing
    from firmpedal.project.fields import Field, Group
    from firmpedal.web.watch import Watch

TWO_VERSIONS = "There are two versions of this file. Choose one of them first, above."


class Chosen:
    """A place in one option of one open file; it stays chosen as long as something is there."""

    def __init__(self, file: str, watch: Watch, place: str) -> None:
        self.file, self.watch, self.place = file, watch, place

    @property
    def option(self) -> str | None:
        return self.watch.option

    @property
    def reading(self) -> Reading:
        return reading_of(self.watch.document.text, self.file, self.option)

    def choose(self, place: str) -> None:
        """Choose what stands at a place, or the thing round it; nothing where there is none."""
        thing = self._thing(place)
        self.place = (thing.place or FILE_PLACE) if thing else ""

    def _thing(self, place: str) -> Thing | None:
        if place == FILE_PLACE:
            return next(iter(things_of(self.reading).get(FILE, ())), None)
        return thing_at(self.reading, place) if place else None

    def group(self) -> tuple[Thing, Group] | None:
        """The thing that is chosen, with all that its form has."""
        thing = self._thing(self.place)
        group = form_of(self.reading, thing) if thing else None
        return None if thing is None or group is None else (thing, group)

    def field(self, place: str) -> Field | None:
        """The field of its form at a place, or round it."""
        found = self.group()
        return field_round(place, found[1].all_fields() if found else ())

    def field_at(self, place: str) -> Field | None:
        """The field with just this place, whatever is chosen."""
        thing = self._thing(place)
        group = form_of(self.reading, thing) if thing else None
        fields = group.all_fields() if group else ()
        return next((field for field in fields if field.place == place), None)

    def is_written(self, thing: Thing, *, only_option: bool = False) -> bool:
        """Whether a thing stands in the text itself: in the option that is looked at, or for all of them."""
        if not thing.copy_of and not only_option:
            return True
        text, place = self.watch.document.text, thing.place or "firmpedal"
        try:
            return is_written(text, place, self.option) or (not only_option and is_written(text, place))
        except EditError:
            return False

    def is_mirrored(self, thing: Thing) -> bool | None:
        """Whether a thing has a mirror image; None where it can have none, or both sides are written."""
        if not can_be_mirrored(thing.place):
            return None
        try:
            listed = is_mirrored(self.watch.document.text, thing.place, self.option)
        except EditError:
            return None
        other = f"{thing.section}.{other_side(thing.name)}"
        there = any(each.place == other for each in things_of(self.reading).get(thing.section, ()))
        return None if there and not listed else listed

    def to_own(self, thing: Thing) -> tuple[str, ...]:
        """The mirror images that could be made things of their own: the thing itself, or its images."""
        reading = self.reading
        return (thing.place,) if follows(reading, thing.place) else images_to_own(reading, thing.place)

    def change(
        self, does: Callable[[Reading], str], words: str, done: Callable[[], None] | None = None
    ) -> str:
        """Change the file; gives why it was not changed, or nothing.

        Args:
            does: Makes the new text.
            words: What is done, for whoever undoes it.
            done: Called once it is saved.
        """
        if self.watch.document.conflict is not None:
            return TWO_VERSIONS
        try:
            text = does(self.reading)
        except EditError as refusal:
            return in_words(str(refusal), refusal.suggestion)
        self.watch.document.rewrite(text, words)
        if done is not None:
            done()
        return ""


def cell_of(field: Field, path: str) -> tuple[int, int]:
    """Which row of a field an object path leads to, and which cell in it; the first where there is none."""
    cells = [(n, m, cell) for n, row in enumerate(field.rows) for m, cell in enumerate(row.cells)]
    exact = [(n, m) for n, m, cell in cells if cell.place == path]
    within = [(n, 0) for n, row in enumerate(field.rows) if is_within(path, row.at or row.place)]
    return next(iter((*exact, *reversed(within))), (0, 0))
