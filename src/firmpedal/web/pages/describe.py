"""Describe: the circuit as a picture, everything in it to be chosen, and the form of what is chosen."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from firmpedal.project.edit import EditError, is_written
from firmpedal.project.field_edits import put_in, with_mark, with_row, without_row, without_thing
from firmpedal.project.field_places import FILE, images_of, thing_at, things_of
from firmpedal.project.field_rows import given_in
from firmpedal.project.fields import form_of
from firmpedal.project.mirror_list import can_be_mirrored, is_mirrored, mirrored, not_mirrored
from firmpedal.project.new_things import NAME, SORTS, with_new
from firmpedal.project.options_edit import written_out
from firmpedal.project.renaming import named_by, renamed
from firmpedal.project.sorts import sort_of
from firmpedal.project.unknowns import next_unknown, unknowns
from firmpedal.web import addresses
from firmpedal.web.answers import reading_of
from firmpedal.web.elements import box, link, said, working
from firmpedal.web.form.accepted import SECTION, accepted_html
from firmpedal.web.form.asked import Asked, add_html, asked_html, in_words_of
from firmpedal.web.form.circuit import circuit_html
from firmpedal.web.form.clash import MINE, THEIRS, Clash, Shown, still_open, where_of
from firmpedal.web.form.element import Made
from firmpedal.web.form.fields import Around
from firmpedal.web.form.sheet import ALONE, FILE_PLACE, chooser_html, form_html
from firmpedal.web.form.ways import ways
from firmpedal.web.wording import in_words

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.project import Reading
    from firmpedal.project.field_places import Thing
    from firmpedal.project.fields import Field, Group
    from firmpedal.web.form.clash import Where
    from firmpedal.web.frame import Frame

LEAD = (
    "Choose a part or a line in the picture and fill in what you have measured. Fractions and units are "
    "taken as you write them: 1 1/2, 38 mm. What you do not know yet stays unknown. Every change is saved "
    "at once."
)
IN_OPTION = (
    f"This is option {{option}}. Choose what differs in the picture, press {ALONE}, and change it there. "
    "What you add belongs to this option alone."
)
EMPTY = "There is no picture yet: the text cannot be read. Its errors are beside it in the text."
NO_CIRCUIT = (
    "Nothing is described yet that a line could come to. Add the first component under Add something."
)
TWO_VERSIONS = "There are two versions of this file. Choose one of them first, above."
STALE = "The picture is out of date. It is being drawn again."


class FormPage:
    """The page of one option of one file; what is chosen stays chosen as long as it is there."""

    def __init__(self, frame: Frame, at: str) -> None:
        self.frame, self.watch, self._chosen = frame, frame.watch, at
        self._asked, self._sought = Asked(), ("", -1)
        self._refused: dict[Where, str] = {}
        # Kept with the file, so that whoever leaves the page finds them again.
        self._clashes = self.watch.document.unsettled.setdefault(self.watch.option, {})
        self._forget_settled()
        self._shown = Shown()
        with frame.main:
            ways(frame.file, self.watch.option, "fields")
            said("p", LEAD, "fp-step-lead")
            if self.watch.option is not None:
                said("p", IN_OPTION.format(option=self.watch.option), "fp-step-lead")
            with box(classes="fp-form-page"):
                with box("section", "fp-form-seen", aria_label="The circuit"):
                    self._stale = working()
                    self._empty = box(classes="fp-empty")
                    with self._empty:
                        self._empty_words = said("p", EMPTY)
                        self._mend = link(
                            "Go to the text", addresses.text(frame.file, self.watch.option), "fp-button"
                        )
                    self._picture = Made()
                self._form = Made()
                self._form.classes("fp-form")
        self._empty.set_visibility(False)
        self._listen()
        at = at or next((place for place, _, _ in self._clashes), "")
        self._choose(at)
        if at:
            self._form.put(at=at)
        self.watch.when_stale(self._changed)
        self.watch.fill(circuit_html, self._drawn)

    def _listen(self) -> None:
        self._picture.hear("pick", lambda place: self._pick(str(place)))
        self._form.hear("pick", lambda place: self._pick(str(place)))
        self._form.hear("put", self._put)
        self._form.hear("mark", self._mark)
        self._form.hear("way", self._way)
        self._form.hear("does", self._does)

    @property
    def _reading(self) -> Reading:
        return reading_of(self.watch.document.text, self.frame.file, self.watch.option)

    def _forget_settled(self) -> None:
        """Let go of what was typed in cells that are gone, or that hold it by now."""
        for where, clash in tuple(self._clashes.items()):
            thing = self._thing(where[0])
            group = form_of(self._reading, thing) if thing else None
            fields = group.all_fields() if group else ()
            if not still_open(clash, next((one for one in fields if one.place == where[0]), None)):
                del self._clashes[where]

    def _changed(self) -> None:
        self._forget_settled()
        self._stale.set_content(STALE)
        self._stale.set_visibility(True)
        self._show()

    def _drawn(self, made: str) -> None:
        self._stale.set_visibility(False)
        self._empty.set_visibility(not made and not self.watch.document.gone)  # that is said above
        readable = self._reading.aircraft is not None
        self._empty_words.set_content(NO_CIRCUIT if readable else EMPTY)
        self._mend.set_visibility(not readable)
        self._picture.put(made=made, chosen=self._chosen)

    def _pick(self, place: str) -> None:
        open_at = next((where for where in self._clashes if self._field(where[0])), None)
        if open_at is not None:  # what was typed there is neither written nor given up yet
            self._show()
            self._form.put(at=f"next 0 {open_at[1]} {open_at[2]} {open_at[0]}")
            return
        self._asked, self._refused = Asked(), {}
        self._choose(place)
        self._form.put(at=f"form {self._chosen}")

    def _choose(self, place: str) -> None:
        thing = self._thing(place)
        self._chosen = (thing.place or FILE_PLACE) if thing else ""
        self._picture.put(chosen=self._chosen)
        self._show()

    def _thing(self, place: str) -> Thing | None:
        if place == FILE_PLACE:
            return next(iter(things_of(self._reading).get(FILE, ())), None)
        return thing_at(self._reading, place) if place else None

    def _group(self) -> tuple[Thing, Group] | None:
        thing = self._thing(self._chosen)
        group = form_of(self._reading, thing) if thing else None
        return None if thing is None or group is None else (thing, group)

    def _show(self) -> None:
        """The list, the form of what is chosen, and what can be added."""
        reading, found = self._reading, self._group()
        if reading.tree is None:
            self._form.put(made="")
            return
        made = chooser_html(things_of(reading), self._chosen, len(unknowns(reading)), self.frame.words)
        asked = asked_html(self._asked, reading.tree, self.watch.option, self.frame.words)
        around = Around(
            self.frame.file, self.watch.option, self._refused, self._clashes, asked, self._asked.at,
            said=self.frame.words,
        )  # fmt: skip
        if found is not None:
            thing, group = found
            own = self._is_written(thing)
            for_all = own and self.watch.option is not None and not self._is_written(thing, only_option=True)
            accepted = reading.aircraft.accepted if reading.aircraft is not None else ()
            form = (
                accepted_html(accepted, around)
                if thing.section == SECTION and accepted
                else form_html(
                    group, thing, around, written=own, for_all=for_all, mirrored=self._is_mirrored(thing)
                )
            )
            made += f'<div data-place="form {self._chosen}" class="fp-form-body">{form}</div>'
        begin = addresses.begin(self.frame.file, self.watch.option)
        below = asked if self._asked.adding in SORTS and asked not in made else ""
        self._form.put(
            made=f'{made}<div class="fp-form-add" id="add">{add_html(below, begin, self.frame.words)}</div>'
        )

    def _is_mirrored(self, thing: Thing) -> bool | None:
        if not can_be_mirrored(thing.place):
            return None
        try:
            return is_mirrored(self.watch.document.text, thing.place, self.watch.option)
        except EditError:
            return None

    def _is_written(self, thing: Thing, *, only_option: bool = False) -> bool:
        if not thing.copy_of and not only_option:
            return True
        text, place = self.watch.document.text, thing.place or "firmpedal"
        try:
            return is_written(text, place, self.watch.option) or (not only_option and is_written(text, place))
        except EditError:
            return False

    def _field(self, place: str) -> Field | None:
        """The field at a place, or round it."""
        found = self._group()
        fields = found[1].all_fields() if found else ()
        return next((field for field in fields if f"{place}.".startswith(f"{field.place}.")), None)

    def _put(self, told: dict[str, Any]) -> None:
        """Something was written in a cell: save it, or say beside it why that cannot be."""
        where, words = (str(told["place"]), int(told["row"]), int(told["number"])), str(told["words"])
        field = self._field(where[0])
        if field is None or where[1] >= len(field.rows) or where[2] >= len(field.rows[where[1]].cells):
            self._show()
            return
        cell = field.rows[where[1]].cells[where[2]]
        self._refused.pop(where, None)
        self._clashes.pop(where, None)
        clash = self._shown.clash(where, cell, words, told.get("began"))
        if clash is None and self.watch.document.conflict is not None:
            clash = Clash(where, words.strip(), cell.words, waits=True)
        if clash is not None:
            self._clashes[where] = clash
            self._show()
            self.frame.history()
            return
        self._try(
            lambda reading: put_in(reading, field, cell, words), f"{field.place}: {words.strip()}", where
        )
        if where not in self._refused:
            self._shown.wrote(where, self._field(where[0]))

    def _settle(self, of: str, *, mine: bool) -> None:
        """Write what was typed after all, now that both values were seen; or leave what stands there."""
        clash = self._clashes.pop(where_of(of), None)
        self.frame.history()
        if clash is None or not mine:
            self._show()
            return
        place, row, number = clash.where
        told = {"place": place, "row": row, "number": number, "words": clash.mine, "began": clash.theirs}
        self._put(told)

    def _mark(self, told: dict[str, Any]) -> None:
        field, mark = self._field(str(told["place"])), str(told["words"])
        if field is not None:
            where = (field.place, -1, 0)
            self._refused.pop(where, None)
            self._try(lambda reading: with_mark(reading, field, mark), f"{field.place}: {mark}", where)

    def _way(self, told: dict[str, Any]) -> None:
        """A point, a shape or a movement is to be given in another way."""
        field, number, way = self._field(str(told["place"])), int(told["row"]), str(told["words"])
        if field is None or number >= len(field.rows):
            self._show()
            return
        where, row = (field.place, number, -1), field.rows[number]
        self._refused.pop(where, None)
        words = f"{field.place}: {way}"
        self._try(lambda reading: given_in(reading, row, way, field.method), words, where)

    def _does(self, told: dict[str, Any]) -> None:
        what, place = str(told["what"]), str(told["place"])
        answers = {str(key): str(words) for key, words in dict(told.get("answers") or {}).items()}
        if what == "pick":
            self._pick(place)
            self._to_field(place)
        elif what == "next":
            self._next()
        elif what in ("more", "out"):
            self._list(what, place)
        elif what in (MINE, THEIRS):
            self._settle(place, mine=what == MINE)
        elif what == "alone":
            words = f"{place} written out for option {self.watch.option}"
            self._try(lambda reading: written_out(reading, place), words, (place, -1, -1))
        elif what in ("mirror", "unmirror"):
            self._mirror(what, place)
        elif what == "removed":
            self._remove(place)
        elif what == "renamed":
            self._rename(place, answers.get(NAME, ""))
        elif what == "added":
            self._add(place, answers)
        else:
            self._ask(what, place)

    def _ask(self, what: str, place: str) -> None:
        """Show the card that asks about something; or none."""
        if what == "remove":
            self._asked = self._about_removing(place)
        elif what == "rename":
            self._asked = Asked(renaming=place)
        else:
            self._asked = Asked(sort_of(place) if what == "add" else None)
        self._show()

    def _about_removing(self, place: str) -> Asked:
        """What goes with a thing, what names it, and why it cannot be taken out, if it cannot."""
        reading = self._reading
        try:
            named = tuple(
                (each.thing, in_words_of(each)) for each in named_by(reading.text, place, reading.option)
            )
        except EditError:
            named = ()
        refused = ""
        try:
            without_thing(reading, place)
        except EditError as refusal:
            refused = (
                f"It cannot be taken out yet: {in_words(str(refusal), '' if named else refusal.suggestion)}"
            )
        return Asked(removing=place, refused=refused, named=named, images=images_of(reading, place))

    def _mirror(self, what: str, place: str) -> None:
        does, words = (mirrored, "mirrored") if what == "mirror" else (not_mirrored, "mirrored no longer")
        self._try(lambda reading: does(reading, place), f"{place} {words}", (place, -1, -1))

    def _to_field(self, place: str) -> None:
        field = self._field(place)
        self._form.put(at=field.place if field and field.place != self._chosen else f"form {self._chosen}")

    def _next(self) -> None:
        """Go to the field of what is next to be measured."""
        self._sought = next_unknown(self._reading, self._chosen, self._sought)
        path, number = self._sought
        self._pick(path)
        field = self._field(path)
        # With its number: another one in the same field is another place to go to.
        row, cell = cell_of(field, path) if field else (0, 0)
        self._form.put(at=f"next {number} {row} {cell} {field.place}" if field else "")

    def _list(self, what: str, place: str) -> None:
        field = self._field(place)
        if field is None:
            return
        self._refused.clear()
        where = (field.place, -1, 0)
        if what == "more":
            self._try(lambda reading: with_row(reading, field), f"one more in {field.place}", where)
        else:
            self._try(lambda reading: without_row(reading, field, place), f"{place} taken out", where)

    def _remove(self, place: str) -> None:
        def done() -> None:
            self._asked = Asked()
            self._choose("" if place == self._chosen else self._chosen)

        words = self._tried(lambda reading: without_thing(reading, place), f"{place} taken out", done)
        if words:
            self._asked = replace(self._about_removing(place), refused=f"Nothing was changed: {words}")
            self._show()

    def _rename(self, place: str, name: str) -> None:
        new = " ".join(name.split())

        def done() -> None:
            self._asked = Asked()
            around = place.rpartition(".")[0]
            self._choose(f"{around}.{new}" if place == self._chosen else self._chosen)

        words = self._tried(lambda reading: renamed(reading, place, new), f"{place} renamed {new}", done)
        if words:
            self._asked = Asked(renaming=place, refused=words, answers=((NAME, name),))
            self._show()

    def _add(self, word: str, answers: dict[str, str]) -> None:
        sort = sort_of(word)
        if sort is None:
            return
        called = " ".join(answers.pop(NAME, "").split())

        def done() -> None:
            self._asked = Asked()
            new = f"{sort.section}.{called}" if called else sort.section
            self._choose(new)
            self._form.put(at=f"form {self._chosen}" if new == self._chosen else new)

        words = self._tried(
            lambda reading: with_new(reading, sort, called, answers), f"{sort.section}.{called} added", done
        )
        if words:
            self._asked = Asked(sort, refused=words, answers=((NAME, called), *answers.items()))
            self._show()

    def _try(self, does: Callable[[Reading], str], words: str, where: Where) -> None:
        refused = self._tried(does, words)
        if refused:
            self._refused[where] = f"Not saved: {refused}"
        self._show()

    def _tried(
        self, does: Callable[[Reading], str], words: str, done: Callable[[], None] | None = None
    ) -> str:
        """Change the file; gives why it was not changed, or nothing."""
        if self.watch.document.conflict is not None:
            return TWO_VERSIONS
        try:
            text = does(self._reading)
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
    within = [(n, 0) for n, row in enumerate(field.rows) if f"{path}.".startswith(f"{row.at or row.place}.")]
    return next(iter((*exact, *reversed(within))), (0, 0))
