"""The builder's own text, with what is wrong in it beside it, each at its line."""

from __future__ import annotations

import asyncio
from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.web.elements import box, button, said
from firmpedal.web.form.ways import ways

if TYPE_CHECKING:
    from nicegui import Client
    from nicegui.elements.codemirror import CodeMirror

    from firmpedal.finding import Problem
    from firmpedal.web.answers import Answer
    from firmpedal.web.frame import Frame

TITLE = "The text"
PAUSE = 0.3  # s without a key pressed until what was typed is taken
READS = "The text can be read. Every change is saved a moment after you stop typing."
NAME = "The text of the aircraft"
NONE = "There is no text to show, because the file is gone."
MEND = "To put right, from top to bottom:"


class TextPage:
    """The editor and the list beside it, kept in step with the document."""

    def __init__(self, frame: Frame, client: Client, line: int | None) -> None:
        self.watch, self.frame = frame.watch, frame
        self._base = self.watch.document.seen
        self._later: asyncio.TimerHandle | None = None
        with frame.main:
            ways(frame.file, self.watch.option, "text")
        with frame.main, box(classes="fp-describe"):
            self._list = box("section", "fp-beside", aria_label="What is wrong in the text")
            with box(classes="fp-editor"):
                self._editor: CodeMirror = ui.codemirror(
                    self._base, on_change=self._typed, line_wrapping=False
                )
        self._editor.set_enabled(not self.watch.document.problems)
        self.watch.when_stale(self._follow)
        self.watch.when_answered(self._answered)
        client.on_disconnect(self._take)
        client.on_connect(lambda: self._ready(line))

    def _ready(self, line: int | None) -> None:
        ui.run_javascript(f"fpNameEditor({self._editor.id}, '{NAME}')")
        if line is not None:
            self._go(line)

    def _typed(self) -> None:
        """Wait for a pause, so that half a number is not taken for a whole one."""
        self._forget()
        self._later = asyncio.get_running_loop().call_later(PAUSE, self._take)

    def _take(self) -> None:
        """Hand what was typed to the document."""
        if self._later is None:
            return
        self._forget()
        text, base = self._editor.value or "", self._base
        self._base = text
        self.watch.document.replace_text(text, base)

    def _forget(self) -> None:
        """Give up the pause that is being waited for."""
        if self._later is not None:
            self._later.cancel()
        self._later = None

    def _follow(self) -> None:
        """Show what changed elsewhere, by undo or another window; never over what is being typed."""
        document = self.watch.document
        self._editor.set_enabled(not document.problems)
        if self._later is None and document.conflict is None and self._editor.value != document.seen:
            self._base = document.seen
            self._editor.set_value(document.seen)
            self._forget()

    def _answered(self, answer: Answer) -> None:
        problems = self.watch.document.problems or answer.reading.problems
        self._editor.decorations = [
            {"kind": "line", "line": each.span.line, "class": "fp-bad-line"} for each in problems
        ]
        self._list.clear()
        with self._list:
            if self.watch.document.gone:
                said("p", NONE)
            elif problems:
                said("h2", MEND)
                with box("ol", "fp-problems"):
                    for each in problems:
                        self._problem(each)
            else:
                said("p", READS)

    def _problem(self, problem: Problem) -> None:
        with box("li", "fp-problem"):
            button(f"Line {problem.span.line}", lambda: self._go(problem.span.line))
            with box():
                said("p", problem.message)
                if problem.also is not None:
                    other = problem.also.line
                    words = "It was opened on line" if problem.opened else "The other one is on line"
                    button(f"{words} {other}", lambda: self._go(other))
                if problem.suggestion:
                    said("p", f"Try: {problem.suggestion}", "fp-small")

    def _go(self, line: int) -> None:
        """Bring a line into sight."""
        if 1 <= line <= (self._editor.value or "").count("\n") + 1:
            self._editor.reveal_line(line)
            ui.run_javascript(f"fpGoToLine({self._editor.id}, {line})")
