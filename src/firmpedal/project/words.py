"""Texts, choices, answers and names, as builders write them."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, cast

from firmpedal.model.circuit import ClampPlan
from firmpedal.model.component import SideOf
from firmpedal.model.fields import Reads
from firmpedal.project.names import choices_text, known_word, label_of, quoted, suggest
from firmpedal.project.tree import (
    UNKNOWN,
    Absent,
    Branch,
    Items,
    Leaf,
    Node,
    at,
    branch_at,
    children,
    is_empty,
)
from firmpedal.quantity import Answer
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from enum import StrEnum

    from firmpedal.project.context import Context
    from firmpedal.quantity import Value

ANSWERS = {
    "yes": Answer.YES,
    "true": Answer.YES,
    "no": Answer.NO,
    "false": Answer.NO,
    "unknown": Answer.UNKNOWN,
}


def text(context: Context, node: Node) -> str:
    """Read a few words; nothing at all is a slip."""
    if isinstance(node, Leaf) and node.text:
        return node.text
    if isinstance(node, Leaf):
        context.nothing(node, "write it, or take the line out")
    elif not isinstance(node, Absent):
        advice = "put quotes round a text with brackets or `: ` in it"
        context.notes.note(node, f"{label_of(node.path)} should be a few words of text", advice)
    return ""


def words(context: Context, node: Node) -> tuple[str, ...]:
    """Read one text or a list of them."""
    if isinstance(node, Absent):
        return ()
    leaves = node.nodes if isinstance(node, Items) else (node,)
    return tuple(text(context, leaf) for leaf in leaves)


def choice(context: Context, node: Node, marker: Reads) -> StrEnum | None:
    """Read one of a few words; `unknown` is nothing where the key may be left out."""
    choices = cast("type[StrEnum]", marker.choices)
    if marker.optional and isinstance(node, Leaf) and node.text == UNKNOWN:
        return None
    if is_empty(node):
        context.nothing(node, choices_text(list(choices)))
        return next(iter(choices))
    word = text(context, node)
    if known := known_word(word, list(choices)):
        return choices(known)
    if word:
        message = f"{quoted(word)} is not a choice for {label_of(node.path)}"
        context.notes.note(node, message, suggest(word, list(choices)))
    return next(iter(choices))


def side(context: Context, node: Node) -> SideOf:
    return cast("SideOf", choice(context, node, Reads("choice", choices=SideOf)))


def answer(context: Context, node: Node) -> Answer:
    """Read yes, no or unknown."""
    if isinstance(node, Absent):
        return Answer.UNKNOWN
    word = text(context, node)
    if word and word.lower() not in ANSWERS:
        message = f"{label_of(node.path)} should be yes, no or unknown, not {quoted(word)}"
        context.notes.note(node, message, suggest(word, ["yes", "no", "unknown"]))
    return ANSWERS.get(word.lower(), Answer.UNKNOWN)


def connection(context: Context, node: Node) -> str:
    """Read where a line begins or ends."""
    advice = "name a port, a side of a bulkhead or another line's end, such as left_cylinder.outlet"
    if is_empty(node):
        context.nothing(node, advice)
        return ""
    word = text(context, node)
    if word != UNKNOWN:
        return word
    context.notes.note(node, f"{label_of(node.path)} has to lead somewhere", advice)
    return ""


def pairs(context: Context, node: Node) -> tuple[tuple[str, str], ...]:
    """Read which port joins which inside a part: [[left_in, left_out], [right_in, right_out]]."""
    found = []
    for item in context.listed(node, "write them as [[left_in, left_out]]"):
        names = [text(context, leaf) for leaf in children(item)] if isinstance(item, Items) else []
        if len(names) == 2:
            found.append((names[0], names[1]))
        elif not isinstance(item, Absent):
            context.notes.note(item, "a way is two ports", "write it as [left_in, left_out]")
    return tuple(found)


def state(context: Context, node: Node) -> tuple[tuple[str, str], ...]:
    """Read in which state something was measured: {gear: on wheels}."""
    if isinstance(node, Absent):
        return ()
    if not isinstance(node, Branch):
        message = f"{label_of(node.path)} should say the state with its keys"
        context.notes.note(node, message, "write it as `measured in: {gear: on wheels}`")
        return ()
    found = []
    for name, leaf in node.entries.items():
        if known_state(context, node, name):
            setting = text(context, leaf)
            known_setting(context, leaf, name, setting)
            found.append((name, setting))
    return tuple(found)


def known_state(context: Context, node: Branch, name: str) -> bool:
    """Note a state that the file does not have."""
    states = branch_at(context.tree, "states")
    if name in states:
        return True
    if not context.notes.doubtful("states", ""):
        message = f"there is no state {quoted(name)}"
        context.notes.note_at(node.key_span(name), message, name, suggest(name, states), via=node.via)
    return False


def known_setting(context: Context, node: Node, name: str, setting: str) -> None:
    """Note a position that a state does not have."""
    values = at(context.tree, "states", name, "values")
    if values is None and not is_number(setting):
        message = f"{quoted(setting)} is not a number between the two ends of {name}"
        context.notes.note(node, message, "write a number such as 0")
    if isinstance(values, Items) and setting:
        known = [leaf.text for leaf in values.nodes if isinstance(leaf, Leaf)]
        if setting not in known:
            message = f"{quoted(setting)} is not a position of {name}"
            context.notes.note(node, message, suggest(setting, known))


def is_number(text: str) -> bool:
    try:
        return math.isfinite(float(text))
    except ValueError:
        return False


def clamps(context: Context, node: Node) -> ClampPlan | tuple[Value, ...]:
    """Read the word propose or none, or the places of the clamps along the line."""
    if isinstance(node, Leaf):
        return cast("ClampPlan", choice(context, node, Reads("choice", choices=ClampPlan)))
    return lengths(context, node)


def lengths(context: Context, node: Node) -> tuple[Value, ...]:
    """Read a list of lengths, none of them less than nothing."""
    marker = Reads("measure", Dimension.LENGTH, signed=False)
    return tuple(context.measure(item, marker) for item in context.listed(node, "write [4, 12-1/2]"))
