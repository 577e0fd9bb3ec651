"""A file that cannot be read, or is gone: what happened to it, and what to do."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.web.elements import box, button, said
from firmpedal.web.wording import in_words, sentence

if TYPE_CHECKING:
    from firmpedal.web.desk import Document

GONE = "This file is gone"
AWAY = (
    "{file} is not in its folder any more: it was deleted, moved or renamed outside Firmpedal. Put it back "
    "there under this name, and this page goes on by itself."
)
OR_AGAIN = "Or write it again from here, as it was when it was read last."
AGAIN = "Write the file again"
UNREADABLE = "This file cannot be read"
LEFT_ALONE = (
    "Firmpedal leaves the file alone. Mend it in the program that wrote it; as soon as it can be read, this "
    "page goes on by itself."
)


def unreadable_card(document: Document) -> None:
    """Say what is wrong with the file itself; nothing where it can be read as a text."""
    if not document.problems:
        return
    with box("section", "fp-card fp-conflict", role="alert", aria_label="The file"):
        if not document.gone:
            said("h2", UNREADABLE)
            for each in document.problems:
                said("p", sentence(in_words(each.message, each.suggestion)))
            said("p", LEFT_ALONE)
            return
        said("h2", GONE)
        said("p", AWAY.format(file=document.path.name))
        if document.can_restore and document.may_change:
            said("p", OR_AGAIN)
            with box(classes="fp-actions"):
                button(AGAIN, document.restore)
