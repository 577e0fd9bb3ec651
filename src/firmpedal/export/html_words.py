"""Words in HTML: everything escaped, long names free to break after their joints, and names for inputs."""

from __future__ import annotations

import re
from collections import Counter
from hashlib import sha256
from html import escape

LONG = 18  # signs: a longer word may break after any of its joints
_JOINTS = re.compile(r"(?<=[_./\-])(?=.)")
_BETWEEN_WORDS = re.compile(r"(?<=[^\W\d_][_.])(?=[^\W\d_])")
_APART = "\x1f"
# Signs that no page may hold: controls other than the line's end and the tabulator, and halves of pairs.
_UNUSABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")


def usable(text: str) -> str:
    """Replace signs that no page may hold, so that a reader sees that something stood there."""
    return _UNUSABLE.sub("\ufffd", text)


def quoted(text: str) -> str:
    """Text inside an attribute."""
    return escape(usable(" ".join(text.split())))


def said(text: str) -> str:
    """Text between tags. Names may break between their words; fractions and designations stay whole."""
    return " ".join(_word(word) for word in text.split(" "))


def _word(word: str) -> str:
    joints = _JOINTS if len(word) > LONG else _BETWEEN_WORDS
    made = "<wbr/>".join(escape(usable(piece)) for piece in joints.split(word))
    return f'<span class="fp-whole">{made}</span>' if "-" in word and len(word) <= LONG else made


def lines(text: str) -> str:
    """The first line of a cell, and under it those that explain it."""
    first, *others = text.split("\n")
    return said(first) + "".join(f'<span class="fp-aside">{said(other)}</span>' for other in others)


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
