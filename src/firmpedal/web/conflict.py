"""Two versions of one file side by side, and which of them goes on."""

from __future__ import annotations

from difflib import SequenceMatcher
from html import escape
from typing import TYPE_CHECKING

from firmpedal.web.elements import box, button, raw, said

if TYPE_CHECKING:
    from firmpedal.web.desk import Conflict, Document

CHANGED = "The file was changed by another program or window while it was being changed here."
GONE = "The file is no longer there as it was."
KEPT = "Nothing was overwritten."
BOTH = "Lines that differ are marked. Whichever you take, undo brings the other back."


def conflict_card(document: Document) -> None:
    """Show both versions of a document, with a button for each."""
    conflict = document.conflict
    if conflict is None:
        return
    with box("section", "fp-card fp-conflict", role="alert", aria_label="Two versions"):
        said("h2", "Two versions of this file")
        words = (GONE if conflict.gone else CHANGED, KEPT, "" if conflict.theirs.problems else BOTH)
        said("p", " ".join(words).strip())
        mine, theirs = marked(conflict)
        with box(classes="fp-versions"):
            with box():
                said("h3", "From here, not saved")
                raw(mine, "pre", tabindex="0", aria_label="The version from here")
                button("Keep the version from here", document.keep_mine)
            with box():
                said("h3", "On the disk")
                raw(theirs, "pre", tabindex="0", aria_label="The version on the disk")
                if not conflict.theirs.problems:
                    button("Take the version on the disk", document.take_theirs)


def marked(conflict: Conflict) -> tuple[str, str]:
    """Both versions as HTML, with the lines marked that the other has not."""
    if conflict.theirs.problems:
        return escape(conflict.mine), escape("; ".join(each.message for each in conflict.theirs.problems))
    mine, theirs = conflict.mine.split("\n"), conflict.theirs.text.split("\n")
    found: tuple[list[str], list[str]] = ([], [])
    for kind, a, b, c, d in SequenceMatcher(None, mine, theirs, autojunk=False).get_opcodes():
        for into, lines in zip(found, (mine[a:b], theirs[c:d]), strict=True):
            whole = escape("\n".join(lines))
            if lines:
                into.append(whole if kind == "equal" else f"<mark>{whole}</mark>")
    return "\n".join(found[0]), "\n".join(found[1])
