"""What takes long, on a page: begun, followed in words, stopped, and what came of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.web import addresses
from firmpedal.web.elements import box, button, link, put, put_words, raw, said
from firmpedal.web.takeaway import FOR_OTHERS
from firmpedal.web.worker import Wish
from firmpedal.web.works import WORKS, State

if TYPE_CHECKING:
    from firmpedal.web.frame import Frame
    from firmpedal.web.works import Work

LOOK_EVERY = 0.25  # s; how soon the page says what the work said
CHANGED = "The file has changed since this was made. Make it again."
OLDER = "The file has changed meanwhile: this is made of what it said before."
PAGES = "The pages as they will be printed"


class Panel:
    """One piece of long work on a page of the computer, in step with it in every window.

    Args:
        frame: Whose page it is; the panel goes where the page is being built.
        name: What is made: `packet.pdf`.
        thing: What it is called after `Make` and `Open`: `the packet`.
    """

    def __init__(self, frame: Frame, name: str, thing: str) -> None:
        self.frame, self.name = frame, name
        self._shown: tuple[object, ...] = ()
        self._pressed = False
        address = addresses.export if name.endswith(FOR_OTHERS) else addresses.paper
        self._address = address(frame.file, name, frame.watch.option)
        with box(classes="fp-work"):
            with box(classes="fp-actions"):
                self._make = button(f"Make {thing}", self._begin)
                self._stop = button("Stop", self._end, aria_label=f"Stop making {thing}")
                self._open = link(f"{'Save' if name.endswith(FOR_OTHERS) else 'Open'} {thing}", self._address)
                self._open.classes("fp-button fp-button-main")
            with box(classes="fp-work-told"):
                self._words = said("p", "", role="status")
                self._clock = said("span", "", "fp-small", aria_hidden="true")
            self._pages = box("ol", "fp-pages", aria_label=PAGES)
        self._look()
        ui.timer(LOOK_EVERY, self._look)

    def _begin(self) -> None:
        """Begin it; a second press finds it begun."""
        watch = self.frame.watch
        if watch.document.may_change:
            WORKS.begin(Wish(self.name, watch.document.text, self.frame.file, watch.option))
            self._pressed = True
            self._look()

    def _end(self) -> None:
        work = self._found()
        if work is not None:
            work.stop()
            ui.run_javascript(f"fpHandOn({self._make.id})")

    def _found(self) -> Work | None:
        return WORKS.find(self.frame.file, self.frame.watch.option, self.name)

    def _look(self) -> None:
        """Show how far it is, where that is something else than what is shown."""
        work = self._found()
        fresh = work is not None and work.wish.text == self.frame.watch.document.text
        put_words(self._clock, f"{work.seconds} s" if work is not None and work.running else "")
        shows = (work.number, work.state, work.words, fresh) if work is not None else (None,)
        if shows == self._shown:
            return
        self._shown = shows
        running, done = (
            work is not None and work.running,
            fresh and work is not None and work.made is not None,
        )
        put(self._make, aria_disabled=str(running).lower())
        self._make.set_visibility(not done)
        self._stop.set_visibility(running)
        self._open.set_visibility(done)
        put_words(self._words, words_of(work, fresh=fresh))
        self._show_pages(work if done else None)
        if done and self._pressed:  # the keyboard stood on a button that is gone now
            self._pressed = False
            ui.run_javascript(f"fpHandOn({self._open.id})")

    def _show_pages(self, work: Work | None) -> None:
        self._pages.clear()
        count = len(work.made.pictures) if work is not None and work.made is not None else 0
        self._pages.set_visibility(count > 0)
        if work is None:
            return
        with self._pages:
            for number in range(1, count + 1):
                picture = addresses.picture(
                    self.frame.file, self.name, number, self.frame.watch.option, work.number
                )
                with box("li"), box("a", href=f"{self._address}#page={number}", target="_blank"):
                    raw("", "img", src=picture, alt=f"Page {number} of {count}", loading="lazy")


def words_of(work: Work | None, *, fresh: bool) -> str:
    """How far a piece of work is, in words; `fresh` says whether the file still says what it was made of."""
    if work is None or (not fresh and work.state in (State.STOPPED, State.REFUSED)):
        return ""
    if work.state is State.DONE:
        left_out = work.made.left_out if work.made is not None else ()
        return (
            " ".join((f"Ready: {work.words}.", *(f"Left out: {each}." for each in left_out)))
            if fresh
            else CHANGED
        )
    return work.words if fresh else f"{work.words} {OLDER}"
