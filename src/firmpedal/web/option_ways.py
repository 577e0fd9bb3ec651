"""The ways from a page to the same page of each option, and to where all of them stand side by side."""

from __future__ import annotations

from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.report.advice import option_name
from firmpedal.web import addresses
from firmpedal.web.elements import box, link, said
from firmpedal.web.options import BEGIN

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.web.watch import Watch

OPTIONS = "Option"


class OptionWays:
    """The row of them under the verdict.

    Args:
        watch: The option of the document that is looked at.
        file: The file's name.
        step: The step that the page belongs to.
        page: Gives the address of the page, from the file and an option.
    """

    def __init__(self, watch: Watch, file: str, step: str, page: Callable[[str, str | None], str]) -> None:
        self.watch, self._file, self._step, self._page = watch, file, step, page
        self._listed: tuple[str, ...] | None = None  # the options that are shown
        self._row = box("nav", "fp-options", aria_label="Options of this aircraft")

    @property
    def abreast(self) -> bool:
        """Whether this is the page of all options, on which none of them is the one that is looked at."""
        option = self.watch.option
        return self._page(self._file, option) == addresses.options(self._file, option)

    def show(self, options: tuple[str, ...]) -> None:
        """The ways to each option, and to the page on which one is begun, as long as one may be.

        Nothing is made anew where they are the same: whoever goes through them by keyboard stays where he is.
        """
        if options == self._listed:
            return
        self._listed = options
        self._row.clear()
        self._row.classes(**{"remove" if options else "add": "fp-options-none"})
        with self._row:
            if options:
                said("span", OPTIONS)
                for option in (None, *options):
                    own = option == self.watch.option and not self.abreast
                    shown = {"aria_current": "true"} if own else {}
                    link(option_name(option), self._of_option(option), **shown)
                here = {"aria_current": "page"} if self.abreast else {}
                link("side by side", addresses.options(self._file, self.watch.option), **here)
            if self.watch.document.may_change and not self.abreast:
                link(BEGIN, addresses.begin(self._file, self.watch.option))
        ui.run_javascript("fpShowStep()")

    def _of_option(self, option: str | None) -> str:
        """The same page of an option; from the page of all options, the step that it belongs to."""
        if self.abreast:
            return addresses.step(self._file, self._step, option)
        return self._page(self._file, option)
