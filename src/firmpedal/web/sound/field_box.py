"""One field of the page of fields, with all its cells, on another page: what is asked can be typed there."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from firmpedal.project.names import label_of
from firmpedal.web.form.chosen import Chosen
from firmpedal.web.form.element import Made
from firmpedal.web.form.fields import Around, field_html
from firmpedal.web.form.writing import Writing

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.web.frame import Frame
    from firmpedal.web.sound.news import News

WRITTEN = "{what} is in the file as you wrote it. Undo takes it out."


class FieldBox:
    """The cells of the field at a place, which write into the file as they do on the page of fields.

    Args:
        frame: The page.
        place: The place of the field.
        news: Where the page says what was done.
    """

    def __init__(self, frame: Frame, place: str, news: News) -> None:
        self._frame, self._place, self._news = frame, place, news
        frame.in_place.add(place)
        self._chosen = Chosen(frame.file, frame.watch, "")
        self._chosen.choose(place)
        self._writing = Writing(self._chosen, self.show, frame.history)
        self._made = Made()
        self._made.classes("fp-form")
        self._hear("put", self._writing.put)
        self._hear("mark", self._writing.mark)
        self._hear("way", self._writing.way)
        self._hear("does", self._does)

    def show(self) -> None:
        """Show what the file has there now; where it cannot be read, what was there last."""
        self._writing.forget_settled()
        field = self._chosen.field(self._place)
        if field is None:
            return
        around = Around(
            self._frame.file,
            self._frame.watch.option,
            self._writing.refused,
            self._writing.clashes,
            said=self._frame.words,
            numbered=f"cell-{self._made.id}",
        )
        self._made.put(made=field_html(field, around))

    def _hear(self, event: str, does: Callable[[Any], object]) -> None:
        def told(args: Any) -> None:
            self._news.tell(WRITTEN.format(what=label_of(self._place)))
            does(args)
            self._news.tell("")  # said already where the file was changed

        self._made.hear(event, told)

    def _does(self, told: dict[str, Any]) -> None:
        does = self._writing.by_word().get(str(told["what"]))
        if does is not None:
            does(str(told["place"]))
