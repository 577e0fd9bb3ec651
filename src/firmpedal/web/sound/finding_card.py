"""One finding: the answer, its places, and folded under it the reasons and the way to accept it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.rules import asked_by
from firmpedal.export.html import html
from firmpedal.finding import Level
from firmpedal.project.acceptances import holds_everywhere
from firmpedal.project.edit import EditError
from firmpedal.project.names import label_of
from firmpedal.web import addresses
from firmpedal.web.elements import box, button, link, raw, said
from firmpedal.web.options import BEGIN
from firmpedal.web.sound.forms import Pen, form, refusal_words
from firmpedal.web.sound.ways import ways

if TYPE_CHECKING:
    from collections.abc import Awaitable, Callable

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.found import Found
    from firmpedal.web.sound.forms import Given

    Accept = Callable[[Found, tuple[str, ...], str], Awaitable[None]]
    TakeBack = Callable[[Found], Awaitable[None]]

STAYS = {
    Level.WARNING: "It stays in the list with your reason beside it, and a WARNING stays a WARNING.",
    Level.CAUTION: "It stays in the list with your reason beside it.",
    Level.NOTE: "It stays in the list with your reason beside it.",
}
ALONE = "It is written for option {option} alone."
FOR_ALL = "It stands in the aircraft as written: taken back, it is taken back in every option."
ALONG = "The same rule finds more there, and that is accepted along with it:"
# What is best weighed as another way to build the aircraft, beside the first.
ASKS_FOR_ANOTHER = ("plastic-in-hot-place",)
NOWHERE = "Choose at least one place."


class FindingCard:
    """A finding as it stands on the page.

    Args:
        told: What there is to say when it is made.
        file: The file's name.
        accept: Accepts it at some places with a reason; none where nothing may be changed.
        take_back: Takes its entries off the list.
        unfolded: Whether it lies open at first; else only what was found is seen of it.
    """

    def __init__(
        self, told: Found, file: str, accept: Accept | None, take_back: TakeBack | None, *, unfolded: bool
    ) -> None:
        self._file, self._accept, self._take_back = file, accept, take_back
        self._told = told
        self._shown: object = None
        self.element = box("li")
        opened = {"open": ""} if unfolded else {}
        with (
            self.element,
            box("article", "fp-finding"),
            box("details", "fp-finding-fold", data_fold=_short(told), **opened),
        ):
            self._headline = raw("", "summary")
            self._answer = raw("", classes="fp-finding-answer")
            self._ways = box(classes="fp-finding-ways")
            with box("details", "fp-fold"):
                said("summary", "Why, and the sum" if told.sums else "Why")
                self._reasons = raw("", classes="fp-fold-in")
            self._change = box(classes="fp-finding-change")

    def show(self, told: tuple[Found, Evaluation]) -> None:
        """Show it as it is now; what is being typed stays as long as the form says the same."""
        self._told, evaluation = told
        found = self._told
        self._headline.set_content(html(found.answer[:1]))
        self._answer.set_content(html(found.answer[1:]))
        self._reasons.set_content(reasons_html(found))
        self._ways.clear()
        with self._ways:
            for place in found.places:
                ways(evaluation, self._file, place, open_to=self._accept is not None)
            if self._accept is not None and found.rule in ASKS_FOR_ANOTHER:
                link(BEGIN, addresses.begin(self._file, evaluation.reading.option), "fp-button")
        if self._accept is None:
            return
        option, text = evaluation.reading.option, evaluation.reading.text
        everywhere = bool(found.entries) and holds_everywhere(text, option)
        form_of = (found.entries, found.along, everywhere)
        if form_of == self._shown:
            return
        self._shown = form_of
        self._change.clear()
        with self._change:
            if found.entries:
                self._back(everywhere=everywhere)
            elif not found.gone:
                self._form(option)

    def _back(self, *, everywhere: bool) -> None:
        words = "Take the entry out" if self._told.gone else "Take the acceptance back"
        self._refused = said("p", "", "fp-fault", role="alert")
        self._refused.set_visibility(False)
        if everywhere:
            said("p", FOR_ALL, "fp-small")
        button(words, self._taken_back, aria_label=f"{words}: {_called(self._told)}")

    async def _taken_back(self) -> None:
        if self._take_back is None:
            return
        try:
            await self._take_back(self._told)
        except EditError as refusal:
            self._refused.set_content(refusal_words(refusal))
            self._refused.set_visibility(True)

    def _form(self, option: str | None) -> None:
        found = self._told
        with box("details", "fp-fold"):
            said("summary", "Accept it")
            with form(self._sent):
                alone = f" {ALONE.format(option=option)}" if option is not None else ""
                said("p", STAYS[found.level] + alone)
                if found.along:
                    said("p", ALONG)
                    with box("ul", "fp-list"):
                        for words in found.along:
                            said("li", words)
                if len(found.places) > 1:
                    self._choice(found.places)
                self._pen = Pen("Accept it, because", "reason")
                said("button", "Accept", "fp-button", type="submit")

    def _choice(self, places: tuple[str, ...]) -> None:
        with box("fieldset", "fp-choice-of-places"):
            said("legend", "At")
            for place in places:
                with box("label", "fp-tick"):
                    box("input", type="checkbox", name="place", value=place, checked="")
                    said("span", label_of(place))

    async def _sent(self, given: Given) -> None:
        if self._accept is None:
            return
        known = self._told.places
        chosen = tuple(each for each in known if len(known) == 1 or each in given.get("place", []))
        if not chosen:
            self._pen.refuse(NOWHERE)
            return
        try:
            await self._accept(self._told, chosen, " ".join(given.get("reason", [])))
        except EditError as refusal:
            self._pen.refuse(refusal_words(refusal))
        else:
            self._pen.refuse("")


def reasons_html(found: Found) -> str:
    """The reason and the sources, and under them each sum inside the one that it goes into."""
    made, depth = html(found.reasons), 0
    for deep, each in found.sums:
        made += '<div class="fp-deeper">' * (deep - depth) + "</div>" * (depth - deep) + html((each,))
        depth = deep
    return made + "</div>" * depth


def _called(found: Found) -> str:
    """What tells its buttons from those of others, for those who do not see where they stand."""
    return f"{asked_by(found.entries[0].rule)} {', '.join(map(label_of, found.places))}".strip()


def _short(found: Found) -> str:
    return f"{found.rule}, {', '.join(map(label_of, found.places))}"
