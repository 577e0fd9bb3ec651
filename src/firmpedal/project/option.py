"""Named options: what an option writes, laid over the aircraft."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.model.aircraft import Aircraft
from firmpedal.project.mirroring import with_more_images
from firmpedal.project.names import quoted, suggest
from firmpedal.project.overlay import overlay
from firmpedal.project.tree import Branch, at, branch_at, is_empty

if TYPE_CHECKING:
    from firmpedal.project.notes import Notes


def option_names(tree: Branch) -> tuple[str, ...]:
    return tuple(branch_at(tree, "options"))


def with_option(tree: Branch, option: str | None, notes: Notes) -> Branch | None:
    """Lay one named option over the aircraft as written; None when there is no such option."""
    base = tree.without("options")
    _look_at_options(tree, notes)
    if option is None:
        return base
    over = at(tree, "options", option)
    options = tree.entries.get("options")
    if over is None and options is not None and not isinstance(options, Branch) and not is_empty(options):
        return base
    if over is None:
        names = option_names(tree)
        advice = suggest(option, names) if names else "this file has no options"
        notes.note_at(tree.key_span("options"), f"there is no option {quoted(option)}", suggestion=advice)
        return None
    if not isinstance(over, Branch):
        return base
    merged = overlay(base, over.without("mirror"), Aircraft)
    mirror = over.entries.get("mirror")
    if mirror is not None and isinstance(merged, Branch):
        both = with_more_images(base.entries.get("mirror"), mirror, notes)
        merged = merged.with_entry("mirror", both, over.key_span("mirror"))
    return merged if isinstance(merged, Branch) else base


def _look_at_options(tree: Branch, notes: Notes) -> None:
    """Note options that are no lists of keys, whichever option is read."""
    options = tree.entries.get("options")
    if options is None or is_empty(options):
        return
    if not isinstance(options, Branch):
        advice = "write `options:` and under it the name of an option with what it changes"
        notes.note(options, "the options should have names", advice)
        return
    for name, node in options.entries.items():
        if not isinstance(node, Branch) and not is_empty(node):
            advice = "write under it what it changes, as it stands in the file: `lines: ...`"
            notes.note(node, f"option {quoted(name)} should be a list of keys", advice)
