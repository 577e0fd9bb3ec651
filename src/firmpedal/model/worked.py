"""What presses the brakes, in words: feet on pedals, or a hand on a lever. The one place for these words.

Everything is written for feet and pedals; for an aircraft whose brakes are worked by hand, what leaves the
program goes through here. Names of the builder's own stay: they are joined by underscores, and no word here
begins or ends at one.
"""

from __future__ import annotations

import re
from functools import lru_cache

from firmpedal.model.aircraft import Brakes

_BEFORE = (
    "[Tt]he|[Aa]|[Ee]ach|[Yy]our|[Ss]ame|[Nn]ext|[Ww]hole|[Hh]arder|[Ll]ighter|[Rr]eal|[Hh]ard|[Nn]ormal|"
    "[Pp]anic|[Ss]teady|own"
)
# In this order. A place of the file, such as `pedals.hand.brake`, and rudder pedals stay what they are.
_BY_HAND: tuple[tuple[str, str], ...] = (
    (r"\b([Pp]edal) or (?:hand )?lever\b", "lever"),
    (r"both pedals are pressed alike", "every lever is pulled alike"),
    (r"\b([Aa])t equal feet\b", r"\1t the same pull"),
    (r"\bWith all pedals let go, in whatever order,", "With every lever let go, in whatever order,"),
    (r"\bFeet off\b", "Hands off"),
    (r"\ba foot's pressure\b", "the pressure of a hand"),
    (r"\bgravity and a foot\b", "gravity and a hand"),
    (r"\bA foot (pushes|is)\b", r"A hand \1"),
    (r"\b[Ff]oot on each pedal\b", "pull on each lever"),
    (rf"\b({_BEFORE}) foot\b", r"\1 pull"),
    (r"^foot$", "pull"),
    (r"\b(force on|travel of) the pad\b", r"\1 the grip"),
    (r"\b([Tt]he) pad (goes|is at its stop|meets)\b", r"\1 grip \2"),
    (r"\beach pad goes\b", "each grip goes"),
    (r"\bwhich feet press\b", "which levers press"),
    (r"\bpad travel\b", "grip travel"),
    (r"\bthe pad's travel\b", "the grip's travel"),
    (r"(?<!rudder )(?<!left )(?<!`)\bpedal(s?)\b(?![`.:]\w)(?! neutral)", r"lever\1"),
    (r"(?<!`)\bPedal(s?)\b", r"Lever\1"),
)
_READY = tuple((re.compile(pattern), words) for pattern, words in _BY_HAND)


def in_words_of(brakes: Brakes, text: str) -> str:
    """Say a text of the program's own for the brakes that an aircraft has."""
    return _by_hand(text) if brakes is Brakes.HAND else text


@lru_cache(maxsize=4096)
def _by_hand(text: str) -> str:
    for pattern, words in _READY:
        text = pattern.sub(words, text)
    return text
