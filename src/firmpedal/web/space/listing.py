"""The list beside the picture: everything in it, to be chosen without looking at it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.place import is_within
from firmpedal.web.elements import box, button, put, said
from firmpedal.web.space.scene import SORTS

if TYPE_CHECKING:
    from collections.abc import Callable

    from nicegui import ui
    from nicegui.element import Element

    from firmpedal.web.space.scene import Scene, Way

NOT_PLACED = "Not in the picture, for nobody has said where it is yet:"


class Listing:
    """Buttons for lines, and under the line that is chosen for its parts; then for bodies by their sort.

    What stays keeps its button, so that whoever goes by keys keeps their place.
    """

    def __init__(self, choose: Callable[[str], None]) -> None:
        self._choose = choose
        self._box = box("section", "fp-space-list", aria_label="Everything in the picture")
        self._made: tuple[str, ...] = ()
        self._buttons: dict[str, ui.html] = {}
        self._inner: dict[str, tuple[Element, tuple[str, ...]]] = {}

    def show(self, scene: Scene, chosen: str, lacking: tuple[str, ...]) -> None:
        """Show what there is, and what of it is chosen."""
        tops = (
            *(way.key for way in scene.ways),
            *(thing.key for thing in scene.things if thing.solids),
            *lacking,
        )
        if tops != self._made:
            self._made = tops
            self._build(scene, lacking)
        for way in scene.ways:
            self._parts(way, open_=is_within(chosen, way.key))
        for key, each in self._buttons.items():
            put(each, aria_pressed=str(key == chosen).lower())

    def _build(self, scene: Scene, lacking: tuple[str, ...]) -> None:
        self._box.clear()
        self._buttons, self._inner = {}, {}
        with self._box:
            said("h2", "Lines")
            with box("ul"):
                for way in scene.ways:
                    with box("li"):
                        self._button(way.key, way.name, way.kind)
                        self._inner[way.key] = (box("ul"), ())
            for sort, title in SORTS.items():
                found = [thing for thing in scene.things if thing.sort == sort and thing.solids]
                if found:
                    said("h2", title)
                    with box("ul"):
                        for thing in found:
                            with box("li"):
                                self._button(thing.key, thing.name)
            if lacking:
                said("p", NOT_PLACED)
                with box("ul", "fp-list"):
                    for name in lacking:
                        said("li", name)

    def _button(self, key: str, name: str, kind: str = "") -> None:
        words = f"{name}, {kind}" if kind else name
        self._buttons[key] = button(words, lambda: self._choose(key), aria_pressed="false")

    def _parts(self, way: Way, *, open_: bool) -> None:
        """The corners, clamps and ends of a line, where it is open."""
        wanted = tuple(_parts_of(way)) if open_ else ()
        inner, shown = self._inner[way.key]
        if tuple(key for key, _ in wanted) == shown:
            return
        for key in shown:
            self._buttons.pop(key, None)
        inner.clear()
        with inner:
            for key, name in wanted:
                with box("li"):
                    self._button(key, name)
        self._inner[way.key] = (inner, tuple(key for key, _ in wanted))


def _parts_of(way: Way) -> list[tuple[str, str]]:
    corners = [(each.key, f"corner {n}") for n, each in enumerate(way.corners, 1)]
    clamps = [(each.key, f"clamp {n}") for n, each in enumerate(way.clamps, 1)]
    return [(f"{way.key}.from", "first end"), *corners, *clamps, (f"{way.key}.to", "last end")]
