"""HTML of our own making as an element of a page, that says what is pressed, chosen and written in it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from nicegui.element import Element

if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any


class Made(Element, component="made_box.js"):
    """Shows what is made anew after each change; whoever writes in it is not disturbed by that.

    It tells `pick` with a place, `put` with what was written in a cell, `mark`, and `does` with what a
    button is for.
    """

    def put(self, **what: str) -> None:
        """Show something else: `made`, as HTML; `chosen`, a place; `at`, the place of a field to go to."""
        for name, value in what.items():
            self._props[name] = value
        self.update()

    def hear(self, event: str, does: Callable[[Any], object]) -> None:
        self.on(event, lambda told: does(told.args))
