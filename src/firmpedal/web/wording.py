"""What is wrong, and what to do about it, as sentences."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.export.html_words import marked
from firmpedal.model.worked import in_words_of

if TYPE_CHECKING:
    from firmpedal.project import Reading


def worded(reading: Reading, words: str) -> str:
    """Words of a page for the brakes of an aircraft, of feet or of a hand; as they are if it is not known."""
    return words if reading.aircraft is None else in_words_of(reading.aircraft.aircraft.brakes, words)


def in_words(message: str, suggestion: str) -> str:
    """Sentences to stand behind other words, so the first begins as the message does."""
    return marked(" ".join((_ended(message), *((sentence(suggestion),) if suggestion else ()))))


def sentence(words: str) -> str:
    """With a capital, unless it begins with a name, and with an end."""
    begins = words[0].upper() if words.split(" ", maxsplit=1)[0].isalpha() else words[0]
    return _ended(begins + words[1:])


def _ended(words: str) -> str:
    return words if words.endswith((".", "?", "!")) else f"{words}."
