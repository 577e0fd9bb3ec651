"""Things added, renamed and taken out, each by a card that asks first."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.project.edit import EditError
from firmpedal.project.field_edits import without_thing
from firmpedal.project.field_places import images_of
from firmpedal.project.mirror_list import not_mirrored
from firmpedal.project.new_things import NAME, with_new
from firmpedal.project.renaming import named_by, renamed
from firmpedal.project.sorts import sort_of
from firmpedal.web.form.asked import Asked, in_words_of
from firmpedal.web.wording import in_words

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.web.form.chosen import Chosen


class Asking:
    """One page's card.

    `show` makes the form anew, `choose` chooses a place, and `go` leads the eye to one in the form.
    """

    def __init__(
        self,
        chosen: Chosen,
        show: Callable[[], None],
        choose: Callable[[str], None],
        go: Callable[[str], None],
    ) -> None:
        self._chosen, self._show, self._choose, self._go = chosen, show, choose, go
        self.asked = Asked()

    def forget(self) -> None:
        """Take the card away."""
        self.asked = Asked()

    def ask(self, what: str, place: str) -> None:
        """Show the card that asks about something; or none."""
        if what == "remove":
            self.asked = self._about_removing(place)
        elif what == "unmirror":
            self.asked = self._about_unmirroring(place)
        elif what == "rename":
            self.asked = Asked(renaming=place)
        else:
            self.asked = Asked(sort_of(place) if what == "add" else None)
        self._show()

    def _about_removing(self, place: str) -> Asked:
        """What goes with a thing, what names it, and why it cannot be taken out, if it cannot."""
        reading = self._chosen.reading
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

    def _about_unmirroring(self, place: str) -> Asked:
        """Why the mirror image cannot go yet, if it cannot."""
        try:
            not_mirrored(self._chosen.reading, place)
        except EditError as refusal:
            words = in_words(str(refusal), refusal.suggestion)
            return Asked(unmirroring=place, refused=f"It cannot be taken away yet: {words}")
        return Asked(unmirroring=place)

    def unmirror(self, place: str) -> None:
        """Take the mirror image of a thing away; where that cannot be, the card says why."""
        words = self._chosen.change(
            lambda reading: not_mirrored(reading, place), f"{place} mirrored no longer", self.forget
        )
        if words:
            self.asked = Asked(unmirroring=place, refused=f"Nothing was changed: {words}")
        self._show()

    def remove(self, place: str) -> None:
        """Take a thing out; where that cannot be, the card says why."""

        def done() -> None:
            self.forget()
            self._choose("" if place == self._chosen.place else self._chosen.place)

        words = self._chosen.change(lambda reading: without_thing(reading, place), f"{place} taken out", done)
        if words:
            self.asked = replace(self._about_removing(place), refused=f"Nothing was changed: {words}")
            self._show()

    def rename(self, place: str, name: str) -> None:
        """Give a thing another name; where that cannot be, the card says why."""
        new = " ".join(name.split())

        def done() -> None:
            self.forget()
            around = place.rpartition(".")[0]
            self._choose(f"{around}.{new}" if place == self._chosen.place else self._chosen.place)

        words = self._chosen.change(
            lambda reading: renamed(reading, place, new), f"{place} renamed {new}", done
        )
        if words:
            self.asked = Asked(renaming=place, refused=words, answers=((NAME, name),))
            self._show()

    def add(self, word: str, answers: dict[str, str]) -> None:
        """Add a thing of a sort; where that cannot be, the card says why."""
        sort = sort_of(word)
        if sort is None:
            return
        called = " ".join(answers.pop(NAME, "").split())

        def done() -> None:
            self.forget()
            new = f"{sort.section}.{called}" if called else sort.section
            self._choose(new)
            self._go(f"form {self._chosen.place}" if new == self._chosen.place else new)

        words = self._chosen.change(
            lambda reading: with_new(reading, sort, called, answers), f"{sort.section}.{called} added", done
        )
        if words:
            self.asked = Asked(sort, refused=words, answers=((NAME, called), *answers.items()))
            self._show()
