"""What a builder ticks and fills in, as HTML: real checkboxes and labelled inputs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.export.html_words import quoted, said

if TYPE_CHECKING:
    from firmpedal.export.html_words import Keys
    from firmpedal.report.sheet import Blank, Blanks, Bullets, Fields

DONE = "done"  # of a box that has no words of its own
_INPUT = '<input class="fp-pen" type="text" autocomplete="off"'


def bullets(block: Bullets, keys: Keys) -> str:
    """A list; with boxes, each item is the label of a checkbox."""
    if block.boxes:
        items = "".join(f"<li>{tick(keys.of(item), said(item))}</li>" for item in block.items)
        return f'<ul class="fp-ticks">{items}</ul>'
    items = "".join(f"<li>{said(item)}</li>" for item in block.items)
    return f'<ul class="fp-list">{items}</ul>'


def fields(block: Fields, keys: Keys) -> str:
    """Lines to write on, side by side where there is room."""
    made = "".join(_field(keys.of(label), said(label)) for label in block.labels)
    return f'<div class="fp-fields">{made}</div>'


def blanks(block: Blanks, keys: Keys) -> str:
    """Things to find out, each with a box to tick and its figures."""
    rows = "".join(_blank(row, block.title, keys) for row in block.rows)
    return f'<fieldset class="fp-blanks"><legend>{said(block.title)}</legend>{rows}</fieldset>'


def _blank(row: Blank, title: str, keys: Keys) -> str:
    how = f'<p class="fp-small">{said(row.how)}</p>' if row.how else ""
    boxes = "".join(_field(keys.of(title, row.what, words), said(words or row.what)) for words in row.boxes)
    return (
        f'<div class="fp-blank" role="group" aria-label="{quoted(row.what)}">'
        f"{tick(keys.of(title, row.what), said(row.what))}{how}"
        f'<div class="fp-fields">{boxes}</div></div>'
    )


def tick(name: str, words: str, whole: str = "") -> str:
    """A box to tick with its words, which are HTML; `whole` says what it means where they do not."""
    label = f' aria-label="{quoted(whole)}"' if whole else ""
    return (
        f'<label class="fp-tick"><input type="checkbox" name="{name}"{label}/>'
        f'<span class="fp-tick-words">{words}</span></label>'
    )


def pen(name: str, whole: str) -> str:
    """A place to write in that has no words of its own beside it."""
    return f'{_INPUT} name="{name}" aria-label="{quoted(whole)}"/>'


def _field(name: str, words: str) -> str:
    return (
        f'<label class="fp-field"><span class="fp-field-words">{words}</span>{_INPUT} name="{name}"/></label>'
    )
