"""An option that the file does not have: a link kept from before it was renamed or taken out leads to it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.advice import option_name
from firmpedal.web import addresses
from firmpedal.web.answers import reading_of
from firmpedal.web.elements import box, link, said

if TYPE_CHECKING:
    from collections.abc import Callable

    from nicegui.element import Element

    from firmpedal.web.watch import Watch

WORD = "NO SUCH OPTION"
NONE_SUCH = "This file has no option “{option}”."
HOW_SO = "It was renamed or taken out since, or the link is of another file. What the file has:"


class GoneOption:
    """Word that there is no such option as is looked at, and the ways to those that there are.

    Args:
        watch: What is looked at.
        file: The file's name.
        address: Gives the address of the page for an option.
    """

    def __init__(self, watch: Watch, file: str, address: Callable[[str, str | None], str]) -> None:
        self._watch, self._file, self._address = watch, file, address
        self._shown: tuple[str, ...] | None = None
        self.words = NONE_SUCH.format(option=watch.option)
        self._box = box("div", "fp-alerts")

    @property
    def gone(self) -> bool:
        """Whether the file, as far as it can be read, has no option of that name."""
        reading = reading_of(self._watch.document.text, self._file, None)
        return self._watch.option not in (None, *reading.options) and reading.tree is not None

    def show(self, main: Element) -> None:
        """Show it where there is none, in the place of what the page has to say.

        Where the text is written, that stays: the option may be on the way to another name there.
        """
        gone, option = self.gone, self._watch.option
        in_text = self._address(self._file, option) == addresses.text(self._file, option)
        main.set_visibility(not gone or in_text)
        options = reading_of(self._watch.document.text, self._file, None).options if gone else None
        if options == self._shown:  # whoever stands on one of the ways stays there
            return
        self._shown = options
        self._box.clear()
        if options is None:
            return
        with self._box, box("section", "fp-card fp-conflict", role="alert", aria_label="The option"):
            said("h2", self.words)
            said("p", HOW_SO)
            with box(classes="fp-actions"):
                for each in (None, *options):
                    link(option_name(each), self._address(self._file, each), "fp-button")
