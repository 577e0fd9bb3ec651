"""The keys of the builder's file, from the program's own list of them."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import TYPE_CHECKING

from generator.region import PageError, table

from firmpedal.model.kinds import KINDS
from firmpedal.model.meanings import MEANINGS
from firmpedal.project.reference import COPY_KEYS, EACH, FREE, SECTIONS, Entry, file_reference
from firmpedal.units import Dimension, units_of

if TYPE_CHECKING:
    from collections.abc import Iterator

_SOURCE = Path(__file__).parents[2] / "src" / "firmpedal"

_BY_NAME_ONLY = ("units", "foot")  # asked for by the names of units and of feet


def page(argument: str) -> str:
    """The table of one section, or of the keys that nothing uses."""
    if argument == "unused":
        return _unused()
    if argument not in SECTIONS:
        raise PageError(f"file: there is no section `{argument}`; choose one of {', '.join(SECTIONS)}")
    head = (f"key of `{argument}`", "what stands there", "meaning", "if left out")
    return table(head, [_row(argument, key, entries) for key, entries in _keys(argument).items()])


def units(_argument: str) -> str:
    """Every unit that can be written, by what it measures."""
    named = [(each.value, [name for name in units_of(each) if name != "-"]) for each in Dimension]
    rows: list[tuple[str, ...]] = [(what, ", ".join(f"`{name}`" for name in names)) for what, names in named]
    return table(("measures", "units"), rows)


def _keys(section: str) -> dict[str, list[Entry]]:
    """The keys of a section; one that several kinds of component have stands once."""
    found: dict[str, list[Entry]] = {}
    for entry in file_reference():
        if entry.section == SECTIONS[section] and entry.key not in COPY_KEYS:
            found.setdefault(entry.key, []).append(entry)
    return found


def _row(section: str, key: str, entries: list[Entry]) -> tuple[str, ...]:
    first = entries[0]
    name = FREE if key == EACH else key
    shown = name if key == EACH else f"`{key}`"
    kinds = [kind for entry in entries for kind in entry.kinds]
    only = f" ({', '.join(kinds)})" if kinds and len(kinds) < len(KINDS) else ""
    left_out = "must be there" if first.required else first.default
    words = first.words.replace(": [aft, right, up], a chain from another place", "")  # said once above
    return shown + only, words, _meaning(section, name), left_out


def _meaning(section: str, key: str) -> str:
    words = MEANINGS.get(section, {}).get(key)
    if words is None:
        raise PageError(
            f"file: `{key}` of {section} has no meaning: give it one in src/firmpedal/model/meanings.py"
        )
    return words


def _unused() -> str:
    """The keys whose fields no code ever asks for: read, kept, and nothing comes of them."""
    rows = [(f"`{section}`", ", ".join(keys)) for section in SECTIONS if (keys := list(_unasked(section)))]
    return table(("section", "keys"), list(rows))


def _unasked(section: str) -> Iterator[str]:
    asked = _names_asked_for()
    for key, entries in _keys(section).items():
        if section not in _BY_NAME_ONLY and key != EACH and entries[0].field not in asked:
            yield f"`{key}`"


def _names_asked_for() -> set[str]:
    """Every name behind a dot in the program, and every word that its reader looks up in the file."""
    names: set[str] = set()
    for path in sorted(_SOURCE.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Attribute):
                names.add(node.attr)
            elif (
                isinstance(node, ast.Constant)
                and isinstance(node.value, str)
                and path.parent.name == "project"
            ):
                names.add(node.value.replace(" ", "_"))
    return names
