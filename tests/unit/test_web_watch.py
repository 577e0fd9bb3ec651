"""A page follows its document: stale at once, then answered, and never with an answer that is out of date."""

from __future__ import annotations

import asyncio
import contextlib
import threading

import pytest
from nicegui import core

from firmpedal.web import watch as module
from firmpedal.web.desk import Document
from firmpedal.web.watch import Watch
from texts import example

pytestmark = pytest.mark.asyncio


class Page(contextlib.nullcontext):
    """Stands for the browser's window: what is to be done when it is closed."""

    def __init__(self):
        super().__init__()
        self.closing = []

    def on_delete(self, does):
        self.closing.append(does)

    def close(self):
        for does in self.closing:
            does()


@pytest.fixture
def document(tmp_path):
    path = tmp_path / "mine.yaml"
    path.write_text(example("brindlewick"), encoding="utf-8")
    return Document(path)


@pytest.fixture
def shown(document):
    """A page on the document, and what it shows in the order in which it shows it."""
    watch, log = Watch(document, "rigid", None), []
    watch.when_stale(lambda: log.append("stale"))
    watch.when_answered(lambda found: log.append(found.evaluation.aircraft.foot.panic.middle))
    watch.when_failed(lambda: log.append("failed"))
    return watch, log


async def opened(watch, monkeypatch):
    """Open the page within a loop that the pages' library takes for its own."""
    monkeypatch.setattr(core, "loop", asyncio.get_running_loop())
    page = Page()
    await watch.start(page)
    return page


async def until(log, length):
    for _ in range(400):
        if len(log) >= length:
            return
        await asyncio.sleep(0.05)
    raise AssertionError(f"no more than {log}")


def pounds(force):
    return pytest.approx(force * 4.4482216152605)  # N in a pound of force, exact by definition


async def test_it_is_stale_at_once_and_then_answered(document, shown, monkeypatch):
    watch, log = shown
    page = await opened(watch, monkeypatch)
    await until(log, 1)
    document.change("foot.panic", "210")
    assert log == [pounds(200), "stale"]  # before anything has been worked out
    await until(log, 3)
    assert log[2] == pounds(210)
    page.close()
    document.change("foot.panic", "220")
    await asyncio.sleep(0.2)
    assert len(log) == 3


async def test_an_answer_that_comes_too_late_is_not_shown(document, shown, monkeypatch):
    watch, log = shown
    asked, free, real = [], threading.Event(), module.answer

    def slow(*key):
        asked.append(key)
        if len(asked) == 1:
            free.wait(20)
        return real(*key)

    monkeypatch.setattr(module, "answer", slow)
    page = await opened(watch, monkeypatch)
    document.change("foot.panic", "210")
    free.set()
    await until(log, 2)
    assert log == ["stale", pounds(210)]
    assert len(asked) == 2
    page.close()


async def test_our_own_mistake_is_said_and_the_page_lives_on(document, shown, monkeypatch, caplog):
    watch, log = shown

    def broken(*_key):
        raise ZeroDivisionError

    with monkeypatch.context() as patched:
        patched.setattr(module, "answer", broken)
        page = await opened(watch, monkeypatch)
        await until(log, 1)
    assert log == ["failed"]
    assert "ZeroDivisionError" in caplog.text
    document.change("foot.panic", "210")
    await until(log, 3)
    assert log[1:] == ["stale", pounds(210)]
    page.close()
