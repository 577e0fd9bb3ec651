"""What is wrong, and what to do about it, as sentences."""

from __future__ import annotations

from firmpedal.export.html_words import marked


def in_words(message: str, suggestion: str) -> str:
    """Sentences to stand behind other words, so the first begins as the message does."""
    return marked(" ".join((_ended(message), *((sentence(suggestion),) if suggestion else ()))))


def sentence(words: str) -> str:
    """With a capital, unless it begins with a name, and with an end."""
    begins = words[0].upper() if words.split(" ", maxsplit=1)[0].isalpha() else words[0]
    return _ended(begins + words[1:])


def _ended(words: str) -> str:
    return words if words.endswith((".", "?", "!")) else f"{words}."
