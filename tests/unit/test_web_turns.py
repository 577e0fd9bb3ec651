"""What takes a while is worked out beside the loop, in order, and never of a text that is there no more."""

from __future__ import annotations

import asyncio
import threading
import time

import pytest

from firmpedal.web.desk import Document
from firmpedal.web.turns import in_turn, redo, undo

pytestmark = pytest.mark.asyncio
TEXT = "firmpedal: 1\n"


@pytest.fixture
def document(tmp_path):
    path = tmp_path / "mine.yaml"
    path.write_text(TEXT, encoding="utf-8")
    return Document(path)


def adding(document, word, seconds=0.0, asked=None):
    """Puts a line under the text, slowly."""

    def work(text):
        if asked is not None:
            asked.append(text)
        time.sleep(seconds)
        return f"{text}# {word}\n"

    return in_turn(document, work, lambda text: document.rewrite(text, word))


async def begun(*coroutines):
    """Begin them one after the other, as events of a page come in, and wait for all."""
    tasks = []
    for each in coroutines:
        tasks.append(asyncio.create_task(each))
        await asyncio.sleep(0)
    await asyncio.gather(*tasks)


async def test_a_slow_change_comes_before_a_quick_one_that_was_begun_after_it(document):
    await begun(adding(document, "one", 0.1), adding(document, "two"), adding(document, "three", 0.05))
    assert document.text == f"{TEXT}# one\n# two\n# three\n"
    assert document.path.read_text(encoding="utf-8") == document.text


async def test_undo_takes_back_what_was_still_being_worked_out_and_nothing_older(document):
    await begun(adding(document, "one"))
    await begun(adding(document, "two", 0.1), undo(document))
    assert document.text == f"{TEXT}# one\n"
    assert (document.undoes, document.redoes) == ("one", "two")
    await begun(redo(document), undo(document), undo(document))
    assert document.text == TEXT


async def test_where_the_text_changes_meanwhile_it_is_made_of_the_new_one(document):
    asked, running = [], threading.Event()

    def work(text):
        asked.append(text)
        running.set()
        time.sleep(0.05)
        return f"{text}# one\n"

    task = asyncio.create_task(in_turn(document, work, lambda text: document.rewrite(text, "one")))
    await asyncio.to_thread(running.wait, 20)
    document.rewrite(f"{TEXT}# typed\n", "typed")  # by a page that does not wait for its turn
    await task
    assert asked == [TEXT, f"{TEXT}# typed\n"]
    assert document.text == f"{TEXT}# typed\n# one\n"


async def test_a_refusal_reaches_who_asked_changes_nothing_and_lets_the_next_one_in(document):
    def refused(_text):
        raise ValueError("not there")

    with pytest.raises(ValueError, match="not there"):
        await in_turn(document, refused, lambda text: document.rewrite(text, "never"))
    assert (document.text, document.undoes) == (TEXT, "")
    await adding(document, "one")
    assert document.text == f"{TEXT}# one\n"


async def test_the_loop_goes_on_while_something_is_worked_out(document):
    beats = 0

    async def beating():
        nonlocal beats
        while True:
            await asyncio.sleep(0.005)
            beats += 1

    heart = asyncio.create_task(beating())
    await adding(document, "one", 0.3)
    heart.cancel()
    assert beats >= 5
