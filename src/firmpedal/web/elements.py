"""The few pieces that pages are made of: words in a tag, links, buttons, boxes."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from nicegui import ui

from firmpedal.export.html_words import marked

if TYPE_CHECKING:
    from collections.abc import Callable

    from nicegui.element import Element

WORKING = "Working it out ..."
# Opens whatever is folded on a page, or folds it again; what it says follows what lies open.
OPENING = '<button type="button" class="fp-button fp-open-all">Open all</button>'


def box(tag: str = "div", classes: str = "", **attributes: str) -> Element:
    """An element to put others in; `aria_label` becomes `aria-label`."""
    return _with(ui.element(tag), classes, attributes)


def said(tag: str, words: str, classes: str = "", **attributes: str) -> ui.html:
    """Words in a tag; nothing in them is taken for HTML."""
    return raw(escape(marked(words)), tag, classes, **attributes)


def raw(made: str, tag: str = "div", classes: str = "", **attributes: str) -> ui.html:
    """HTML of our own making, in which whatever builders wrote has been escaped."""
    made_element = ui.html(made, tag=tag, sanitize=False)
    _with(made_element, classes, attributes)
    return made_element


def working() -> ui.html:
    """Where a page says that what it shows is not up to date yet."""
    return said("p", WORKING, "fp-stale-words", role="status")


def link(words: str, to: str, classes: str = "", **attributes: str) -> ui.html:
    return said("a", words, classes, href=to, **attributes)


def button(words: str, press: Callable[[], object], *, main: bool = False, **attributes: str) -> ui.html:
    """A button; one on a page may be the main one."""
    classes = "fp-button fp-button-main" if main else "fp-button"
    made = said("button", words, classes, type="button", **attributes)
    made.on("click", press, args=[])
    return made


def unfolding(words: str, what: str) -> ui.html:
    """A button that on a narrow screen shows and hides the element with the id `what`, which comes after it.

    Wider screens have room for both: there the button is left out.
    """
    return said(
        "button", words, "fp-button fp-more", type="button", aria_expanded="false", aria_controls=what
    )


def put(element: Element, **attributes: str | None) -> None:
    """Set attributes, or take those away that are None."""
    for name, value in attributes.items():
        key = name.replace("_", "-")
        if value is None:
            element.props.pop(key, None)
        else:
            element.props[key] = value
    element.update()


def put_words(element: ui.html, words: str) -> None:
    """Put other words into an element."""
    element.set_content(escape(marked(words)))


def _with(element: Element, classes: str, attributes: dict[str, str]) -> Element:
    if classes:
        element.classes(classes)
    for name, value in attributes.items():
        element.props[name.replace("_", "-")] = value
    return element
