"""Words in HTML: everything escaped, long names free to break after their joints, and names for inputs."""

from __future__ import annotations

import re
from collections import Counter
from hashlib import sha256
from html import escape

from firmpedal.units import HELD, held, let_go

LONG = 18  # signs: a longer word may break after any of its joints
LONG_IN_A_CELL = 12  # and a name in a cell between its words
_JOINTS = re.compile(r"(?<=[_./\-])(?=.)")
_BETWEEN_WORDS = re.compile(r"(?<=[^\W\d_][_.])(?=[^\W\d_])")
_AS_WRITTEN = re.compile(r"`([^`\n]*)`")
_APART = "\x1f"
# Signs that no page may hold: controls other than the line's end and the tabulator, and halves of pairs.
_UNUSABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")


def marked(text: str) -> str:
    """Words of the file, which the terminal shows as code, in the quotation marks that readers know."""
    return _AS_WRITTEN.sub("\u201c\\1\u201d", text)


def usable(text: str) -> str:
    """Replace signs that no page may hold, so that a reader sees that something stood there."""
    return _UNUSABLE.sub("\ufffd", text)


def quoted(text: str) -> str:
    """Text inside an attribute."""
    return escape(usable(" ".join(marked(text).split())))


def said(text: str) -> str:
    """Text between tags. A long word may break after its joints, as on paper; a designation stays whole."""
    return " ".join(_word(word, _JOINTS if len(word) > LONG else None) for word in marked(text).split(" "))


def lines(text: str) -> str:
    """The first line of a cell, and under it those that explain it. Cells are narrow: names may break.

    Elsewhere they may not, for whatever reads a page aloud makes two words of them.
    """
    first, *others = map(_narrow, marked(text).split("\n"))
    return f"<span>{first}</span>" + "".join(f'<span class="fp-aside">{other}</span>' for other in others)


def _narrow(line: str) -> str:
    return " ".join(_in_a_cell(word) for word in held(line).split(" "))


def _in_a_cell(word: str) -> str:
    """A figure stays with its unit; what is copied has a plain space."""
    if HELD in word:
        return f'<span class="fp-held">{escape(usable(let_go(word)))}</span>'
    return _word(word, _joints(word))


def _joints(word: str) -> re.Pattern[str] | None:
    if len(word) > LONG:
        return _JOINTS
    return _BETWEEN_WORDS if len(word) > LONG_IN_A_CELL else None


def _word(word: str, joints: re.Pattern[str] | None) -> str:
    pieces = joints.split(word) if joints else [word]
    made = "<wbr/>".join(escape(usable(piece)) for piece in pieces)
    return f'<span class="fp-whole">{made}</span>' if "-" in word and len(word) <= LONG else made


class Keys:
    """Names for what a builder ticks and writes, made of the words beside it.

    The same words get the same name on every page that shows them, and other words another one: a tick
    is never found again beside something that it was not made for. What stands several times is counted.
    """

    def __init__(self, within: str) -> None:
        self._within = within
        self._given: Counter[tuple[str, ...]] = Counter()

    def of(self, *words: str) -> str:
        self._given[words] += 1
        text = _APART.join((self._within, *words, str(self._given[words])))
        return f"fp-{sha256(text.encode('utf-8', 'backslashreplace')).hexdigest()[:16]}"
