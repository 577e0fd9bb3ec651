"""Describe: the circuit as a picture, everything in it to be chosen, and the form of what is chosen."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.project.field_places import things_of
from firmpedal.project.new_things import NAME, SORTS
from firmpedal.project.unknowns import next_unknown, unknowns
from firmpedal.web import addresses
from firmpedal.web.answers import odd_in
from firmpedal.web.elements import box, link, said, working
from firmpedal.web.form.accepted import SECTION, accepted_html
from firmpedal.web.form.asked import add_html, asked_html
from firmpedal.web.form.asking import Asking
from firmpedal.web.form.chosen import Chosen, cell_of
from firmpedal.web.form.circuit import circuit_html
from firmpedal.web.form.element import Made
from firmpedal.web.form.fields import Around
from firmpedal.web.form.sheet import ALONE, chooser_html, form_html, waiting_html
from firmpedal.web.form.ways import ways
from firmpedal.web.form.writing import Writing

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.project.field_places import Thing
    from firmpedal.project.fields import Group
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
STALE = "The picture is out of date. It is being drawn again."


class FormPage:
    """The page of one option of one file; what is chosen stays chosen as long as it is there."""

    def __init__(self, frame: Frame, at: str) -> None:
        self.frame, self.watch = frame, frame.watch
        self._chosen, self._sought = Chosen(frame.file, frame.watch, at), ("", -1)
        self._writing = Writing(self._chosen, self._show, frame.history)
        self._asking = Asking(self._chosen, self._show, self._choose, self._go)
        with frame.main:
            ways(frame.file, self.watch.option, "fields")
            said("p", LEAD, "fp-step-lead")
            if self.watch.option is not None:
                said("p", IN_OPTION.format(option=self.watch.option), "fp-step-lead")
            with box(classes="fp-form-page"):
                with box("section", "fp-form-beside", aria_label="The circuit"), box(classes="fp-form-seen"):
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
        at = at or self._writing.unsettled_at()
        self._choose(at)
        if at:
            self._go(at)
        self.watch.when_stale(self._changed)
        self.watch.fill(circuit_html, self._drawn)

    def _listen(self) -> None:
        self._picture.hear("pick", lambda place: self._pick(str(place)))
        self._form.hear("pick", lambda place: self._pick(str(place)))
        self._form.hear("put", self._writing.put)
        self._form.hear("mark", self._writing.mark)
        self._form.hear("way", self._writing.way)
        self._form.hear("does", self._does)

    def _changed(self) -> None:
        self._writing.forget_settled()
        self._stale.set_content(STALE)
        self._stale.set_visibility(True)
        self._show()

    def _drawn(self, made: str) -> None:
        self._stale.set_visibility(False)
        self._empty.set_visibility(not made and not self.watch.document.gone)  # that is said above
        readable = self._chosen.reading.aircraft is not None
        self._empty_words.set_content(NO_CIRCUIT if readable else EMPTY)
        self._mend.set_visibility(not readable)
        self._picture.put(made=made, chosen=self._chosen.place)

    def _pick(self, place: str) -> None:
        clash = self._writing.open_clash()
        if clash is not None:
            self._show()
            self._go(f"next 0 {clash[1]} {clash[2]} {clash[0]}")
            return
        self._asking.forget()
        self._writing.forget()
        self._choose(place)
        self._go(f"form {self._chosen.place}")

    def _choose(self, place: str) -> None:
        self._chosen.choose(place)
        self._picture.put(chosen=self._chosen.place)
        self._show()

    def _go(self, at: str) -> None:
        """Lead the eye to a place in the form."""
        self._form.put(at=at)

    def _show(self) -> None:
        """The list, the form of what is chosen, and what can be added."""
        reading, found, asked = self._chosen.reading, self._chosen.group(), self._asking.asked
        if reading.tree is None:
            self._form.put(made="")
            return
        made = chooser_html(things_of(reading), self._chosen.place, len(unknowns(reading)), self.frame.words)
        made += waiting_html([each for each in self._writing.clashes if self._chosen.field(each[0]) is None])
        card = asked_html(asked, reading.tree, self.watch.option, self.frame.words)
        if found is not None:
            form = self._form_of(*found, card)
            made += f'<div data-place="form {self._chosen.place}" class="fp-form-body">{form}</div>'
        begin = addresses.begin(self.frame.file, self.watch.option)
        below = card if asked.adding in SORTS and card not in made else ""
        self._form.put(
            made=f'{made}<div class="fp-form-add" id="add">{add_html(below, begin, self.frame.words)}</div>'
        )

    def _form_of(self, thing: Thing, group: Group, card: str) -> str:
        """The form of a thing, or the list of what is accepted."""
        around = Around(
            self.frame.file,
            self.watch.option,
            self._writing.refused,
            self._writing.clashes,
            odd_in(*self.watch.key, thing.place),
            card,
            self._asking.asked.at,
            said=self.frame.words,
            told=self._writing.also,
        )
        aircraft, chosen = self._chosen.reading.aircraft, self._chosen
        accepted = aircraft.accepted if aircraft is not None else ()
        if thing.section == SECTION and accepted:
            return accepted_html(accepted, around)
        own = chosen.is_written(thing)
        for_all = own and self.watch.option is not None and not chosen.is_written(thing, only_option=True)
        return form_html(
            group,
            thing,
            around,
            written=own,
            for_all=for_all,
            mirrored=chosen.is_mirrored(thing),
            to_own=chosen.to_own(thing),
        )

    def _does(self, told: dict[str, Any]) -> None:
        """A button of the form was pressed."""
        what, place = str(told["what"]), str(told["place"])
        answers = {str(key): str(words) for key, words in dict(told.get("answers") or {}).items()}
        by_word: dict[str, Callable[[str], None]] = {
            "pick": self._pick_field,
            "next": lambda _: self._next(),
            **self._writing.by_word(),
            "alone": self._writing.alone,
            "mirror": self._writing.mirror,
            "own": self._writing.own,
            "unmirrored": self._asking.unmirror,
            "removed": self._asking.remove,
            "renamed": lambda at: self._asking.rename(at, answers.get(NAME, "")),
            "added": lambda word: self._asking.add(word, answers),
        }
        if what in by_word:
            by_word[what](place)
        else:
            self._asking.ask(what, place)

    def _pick_field(self, place: str) -> None:
        """Choose what a place belongs to, and go to its field."""
        self._pick(place)
        field = self._chosen.field(place)
        own = field is not None and field.place != self._chosen.place
        self._go(field.place if field is not None and own else f"form {self._chosen.place}")

    def _next(self) -> None:
        """Go to the field of what is next to be measured."""
        self._sought = next_unknown(self._chosen.reading, self._chosen.place, self._sought)
        path, number = self._sought
        self._pick(path)
        field = self._chosen.field(path)
        # With its number: another one in the same field is another place to go to.
        row, cell = cell_of(field, path) if field else (0, 0)
        self._go(f"next {number} {row} {cell} {field.place}" if field else "")
