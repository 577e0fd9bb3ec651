"""The picture as an element of a page: what it shows, and what is done in it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import nicegui
from nicegui.element import Element

if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

# The drawing library as it comes with the one that shows the pages: nothing is asked of anybody else.
DRAWS = Path(nicegui.__file__).parent / "elements" / "scene" / "dist"
LABEL = (
    "The lines in space. Everything in it is in the list beside it, with its figures. Arrow keys turn the "
    "view, or move the corner that is chosen; plus and minus come nearer and go farther."
)


class Picture(Element, component="picture_box.js", esm={"nicegui-scene": str(DRAWS)}):
    """Shows a scene in a pose; says what was pressed, dragged and stepped."""

    def __init__(self) -> None:
        super().__init__()
        self._props["label"] = LABEL

    def put(self, **what: Any) -> None:
        """Show something else: `scene`, `pose`, `chosen`, `handles`, `mark`, `unit`, `single`, `at`."""
        for name, value in what.items():
            self._props[name] = value
        self.update()

    def hear(self, event: str, does: Callable[[dict[str, Any]], object]) -> None:
        """Call somebody with what was done: `pick`, `moved`, `step`, `without`."""
        self.on(event, lambda told: does(told.args if isinstance(told.args, dict) else {}))
