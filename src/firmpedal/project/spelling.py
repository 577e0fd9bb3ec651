"""The file's sections by name: a slip of the pen is said once, and the section is read all the same."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.aircraft import Aircraft
from firmpedal.project.names import label_of, near_miss, quoted, suggest
from firmpedal.project.schema import known_keys
from firmpedal.project.tree import Branch, Node

if TYPE_CHECKING:
    from collections.abc import Iterable

    from firmpedal.project.notes import Notes

# Sections that are worked out before the model is filled.
EXTRA = ("mirror", "options")


def sections() -> tuple[str, ...]:
    return (*known_keys(Aircraft), *EXTRA)


def with_known_sections(tree: Branch, notes: Notes) -> Branch:
    """Read misspelled sections by their right names, in the file and in each of its options."""
    tree = spelled(tree, sections(), notes)
    options = tree.entries.get("options")
    if not isinstance(options, Branch):
        return tree
    known = tuple(name for name in sections() if name != "options")
    entries: dict[str, Node] = {}
    for name, node in options.entries.items():
        if isinstance(node, Branch) and "options" in node.entries:
            message = f"option {quoted(name)} cannot hold options itself"
            notes.note_at(
                node.key_span("options"), message, "options", "write them under the file's own `options`"
            )
            node = node.without("options")  # noqa: PLW2901  # read on without it
        entries[name] = spelled(node, known, notes, name) if isinstance(node, Branch) else node
    return tree.with_entry("options", options.with_entries(entries))


def spelled(branch: Branch, known: Iterable[str], notes: Notes, where: str = "") -> Branch:
    """Say of each unknown key what it may mean; read it so if that stands nowhere else."""
    known = tuple(known)
    if all(map(known.__contains__, branch.entries)):
        return branch
    entries: dict[str, Node] = {}
    keys = dict(branch.keys)
    for key, node in branch.entries.items():
        if key in known:
            entries[key] = node
            continue
        unknown_key(branch, key, known, notes, where)
        meant = near_miss(key, known)
        if meant and meant not in branch.entries and meant not in entries:
            entries[meant], keys[meant] = node, branch.key_span(key)
        elif isinstance(node, Branch):
            notes.doubt(branch.path)
    return branch.with_entries(entries, keys)


def unknown_key(branch: Branch, key: str, known: Iterable[str], notes: Notes, where: str = "") -> None:
    where = where or label_of(branch.path) or "the file"
    message = f"{quoted(key)} is not a key that {where} can have"
    notes.note_at(branch.key_span(key), message, key, suggest(key, known), via=branch.via)
