"""Random damage to a text, as a slip of the hand or a malicious one would do it."""

from __future__ import annotations

import re

from hypothesis import strategies as st

ODD = [
    "unknown", "-", "- ", "{}", "[]", "1e999", "-1e999", "~", "!!python/object:os.system x", "9" * 400,
    "0", "-1", "1/0", "0/0", "1e-300", ".nan", "null", "yes", "no", "removed", "", "''", '"', "'", "#", ":",
    ": ", "|", ">", "&a x", "*a", "<<", "?", "%", "@", "`", "\t", "\u00a0", "\u2028", "\ufeff", "\U0001f6e9",
    "[[", "]]", "{a: b}", "[1, 2, 3]", "[[1, 2, 3], [1, 2, 3]]", "{value: 3}", "{value: {value: 3}}",
    "{from: left_cylinder.outlet, aft: 1}", "left_line", "left_line.from", "left_floor", "{like: left_line}",
    "like: left_line", "mirror of: left_line", "+/- 17", "about 5", "3 to 4 in", "4 to 3 in", "600 psi",
    "5 degF", "1' 3-1/2\"", "left", "right", "forward and aft", "up", "tube 5052-O 1/4 x .035",
    "hose -4 PTFE braided", "M10 x 1 female", "-4 flare 37 male", "1/8 NPT male", "compression 6 mm female",
    "45 degrees", "propose", "none", "[]: x", "..", ".", "a.b", "---", "...",
]  # fmt: skip

FIGURES = [
    "unknown", "0", "-0", "-1", "1e-9", "0.001", "1/64", "1", "3 to 4", "-4 to 4", "+/- 17", "about 5",
    "1000", "-1000", "100000", "{value: 3, mark: assumed}", "{value: unknown, mark: memory}", "90", "360",
]  # fmt: skip

_FIGURE = re.compile(r"(?<=[:\[,] )-?\d+(?:\.\d+|-\d+/\d+|/\d+)?(?=[\s,\]}])|(?<=\[)-?\d+(?:\.\d+)?(?=,)")
_WORD = re.compile(r"[^\s,\[\]{}:#]+|[,\[\]{}:]")


def _lines(draw, text):
    lines = text.splitlines()
    at = draw(st.integers(0, len(lines) - 1))
    kind = draw(st.sampled_from(["delete", "double", "swap", "move", "indent"]))
    if kind == "delete":
        del lines[at : at + draw(st.integers(1, 4))]
    elif kind == "double":
        lines.insert(draw(st.integers(0, len(lines))), lines[at])
    elif kind == "swap":
        other = draw(st.integers(0, len(lines) - 1))
        lines[at], lines[other] = lines[other], lines[at]
    elif kind == "move":
        lines.insert(draw(st.integers(0, len(lines) - 1)), lines.pop(at))
    else:
        lines[at] = " " * draw(st.integers(0, 8)) + lines[at].lstrip()
    return "\n".join(lines) + "\n"


def _words(draw, text):
    """Replace one word by an odd one, or by another word of the same text."""
    found = list(_WORD.finditer(text))
    old = draw(st.sampled_from(found))
    new = draw(st.sampled_from(ODD) | st.sampled_from([word[0] for word in found]))
    return text[: old.start()] + new + text[old.end() :]


def _letters(draw, text):
    at = draw(st.integers(0, len(text)))
    return text[:at] + draw(st.text(max_size=3)) + text[at + draw(st.integers(0, 3)) :]


@st.composite
def damaged(draw, text):
    """A text with one to four pieces of damage, most of them to single words."""
    for _ in range(draw(st.integers(1, 4))):
        if not text.strip():
            break
        text = draw(st.sampled_from([_words, _words, _words, _lines, _letters]))(draw, text)
    return text


@st.composite
def other_figures(draw, text):
    """A text in which one to five figures are others, most of them still figures that can be read."""
    for _ in range(draw(st.integers(1, 5))):
        old = draw(st.sampled_from(list(_FIGURE.finditer(text))))
        text = text[: old.start()] + draw(st.sampled_from(FIGURES)) + text[old.end() :]
    return text
