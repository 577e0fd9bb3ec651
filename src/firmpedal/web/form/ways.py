"""The three ways to describe an aircraft: by its fields, in space, in its text."""

from __future__ import annotations

from firmpedal.web import addresses
from firmpedal.web.elements import box, link


def ways(file: str, option: str | None, here: str) -> None:
    """Links between the pages under Describe; `here` is one of fields, space, text."""
    with box("nav", "fp-ways", aria_label="Ways to describe it"):
        for name, title, to in (
            ("fields", "Picture and fields", addresses.step(file, "describe", option)),
            ("space", "The lines in space", addresses.space(file, option)),
            ("text", "The text", addresses.text(file, option)),
        ):
            link(title, to, **({"aria_current": "true"} if name == here else {}))
