"""What was just done on a page, said with the change that it made."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.web.elements import put_words, said

if TYPE_CHECKING:
    from firmpedal.web.watch import Watch


class News:
    """A line that says what was done here; with the next change it is gone or says another thing."""

    def __init__(self, watch: Watch) -> None:
        self._words = ""
        self.element = said("p", "", "fp-done", role="status")
        self.element.set_visibility(False)
        watch.when_stale(self._show)

    def tell(self, words: str) -> None:
        """Keep words for the change that is about to be made."""
        self._words = words

    def _show(self) -> None:
        put_words(self.element, self._words)
        self.element.set_visibility(bool(self._words))
        self._words = ""
