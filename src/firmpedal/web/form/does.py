"""A button in HTML of our own making."""

from __future__ import annotations

from html import escape


def does(what: str, place: str, words: str, label: str = "", *, main: bool = False) -> str:
    """A button that does something to what stands at a place."""
    named = f' aria-label="{escape(label)}"' if label else ""
    return (
        f'<button type="button" class="fp-button{" fp-button-main" if main else ""}" data-do="{what}"'
        f' data-of="{escape(place)}"{named}>'
        f"{escape(words)}</button>"
    )
