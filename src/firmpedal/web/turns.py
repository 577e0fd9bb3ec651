"""Changes that take a while are worked out beside the loop that serves the pages, one after the other."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from nicegui import run

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.web.desk import Document

Made = TypeVar("Made")


async def in_turn(document: Document, work: Callable[[str], Made], put: Callable[[Made], None]) -> None:
    """Make something of a document's text, and put it there when all that was begun before is there.

    Where the text was changed by another way meanwhile, it is made again of what is there now.

    Args:
        document: What is changed.
        work: Makes it of a text, beside the loop.
        put: Puts it into the document.

    Raises:
        Exception: Whatever `work` raises; nothing was changed then.
    """
    async with document.turn:
        while True:
            text = document.text
            made = await run.io_bound(work, text)
            if made is None:  # the app is being stopped
                return
            if text == document.text:
                break
        put(made)


async def undo(document: Document) -> None:
    """Take back the last change, also one that is still being worked out."""
    async with document.turn:
        document.undo()


async def redo(document: Document) -> None:
    """Do again what was taken back last."""
    async with document.turn:
        document.redo()
