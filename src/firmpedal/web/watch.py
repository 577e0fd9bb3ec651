"""Keeps one open page abreast of its document: marks it stale at once, fills it when the answer is there."""

from __future__ import annotations

import asyncio
import contextlib
import logging
from typing import TYPE_CHECKING

from nicegui import background_tasks, run

from firmpedal.web.answers import answer
from firmpedal.web.tidying import TIDIER

if TYPE_CHECKING:
    from collections.abc import Callable

    from nicegui import Client

    from firmpedal.web.answers import Answer, System
    from firmpedal.web.desk import Document

    Key = tuple[str, str, str | None, System | None]

AT_ONCE = 0.15  # s; what takes no longer is in the page when it is sent


class Watch:
    """One page on one option of one document."""

    def __init__(self, document: Document, option: str | None, system: System | None) -> None:
        self.document, self.option, self.system = document, option, system
        self._stale: list[Callable[[], None]] = []
        self._answered: list[Callable[[Answer], None]] = []
        self._panes: list[tuple[Callable[..., str], Callable[[str], None]]] = []
        self._failed: list[Callable[[], None]] = []
        self._wanted, self._settled = asyncio.Event(), asyncio.Event()

    @property
    def key(self) -> Key:
        """What an answer depends on."""
        return self.document.text, self.document.path.name, self.option, self.system

    def when_stale(self, show: Callable[[], None]) -> None:
        """Call somebody as soon as what is shown is out of date."""
        self._stale.append(show)

    def when_answered(self, show: Callable[[Answer], None]) -> None:
        """Call somebody with each new answer."""
        self._answered.append(show)

    def when_failed(self, show: Callable[[], None]) -> None:
        """Call somebody when an answer cannot be made, which is our mistake."""
        self._failed.append(show)

    def fill(self, work: Callable[..., str], show: Callable[[str], None]) -> None:
        """After each new answer make something of its key, apart from the page's own loop, and show it."""
        self._panes.append((work, show))

    def again(self) -> None:
        """The document changed, or how it is looked at."""
        for show in self._stale:
            show()
        self._wanted.set()

    async def start(self, client: Client) -> None:
        """Follow the document as long as the page is open; returns once the page has something to say."""
        end = self.document.listen(self.again)
        self._wanted.set()
        task = background_tasks.create(self._follow(client), name=f"watch {self.document.path.name}")
        client.on_delete(lambda: (end(), task.cancel()))
        with contextlib.suppress(TimeoutError):
            await asyncio.wait_for(self._settled.wait(), AT_ONCE)

    async def _follow(self, client: Client) -> None:
        while True:
            await self._wanted.wait()
            self._wanted.clear()
            try:
                await self._show(client, self.key)
            except Exception:  # the last resort: the page says so and lives on
                logging.getLogger(__name__).exception("a page could not be worked out")
                with client:
                    for show in self._failed:
                        show()
            self._settled.set()

    async def _show(self, client: Client, key: Key) -> None:
        """Show the answer, then pane by pane what is made of it; give up as soon as it is out of date."""
        found = await run.io_bound(answer, *key)
        TIDIER.answered()
        if found is None or key != self.key:
            return
        with client:
            for answered in self._answered:
                answered(found)
        for work, show in self._panes:
            made = await run.io_bound(work, *key)
            if made is None or key != self.key:
                return
            with client:
                show(made)
