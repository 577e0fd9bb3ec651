"""Changing one value of a builder's text at its own place, and not a letter besides."""

from __future__ import annotations

from functools import lru_cache

from ruamel.yaml.nodes import MappingNode, ScalarNode

from firmpedal.project.layout import compose
from firmpedal.project.locate import Located, locate, no_place
from firmpedal.project.plain import in_quotes
from firmpedal.project.said import Said, said_by, with_another
from firmpedal.project.splice import spliced


class EditError(ValueError):
    """A value that cannot be changed where it was asked for; `suggestion` says what to do instead."""

    def __init__(self, message: str, suggestion: str = "") -> None:
        super().__init__(message)
        self.suggestion = suggestion


def edited(text: str, path: str, new_text: str, option: str | None = None) -> str:
    """Put another value in the place of one that is written in a text.

    Args:
        text: The builder's text.
        path: The object path, such as `lines.left_leg.via.2`.
        new_text: What is to stand there, in one line: `3/4`, `[7, -9, 0]`, `unknown`.
        option: The option in which the value is written; none for the aircraft as written.

    Raises:
        EditError: Nothing is written there by itself, or it cannot be replaced without touching more.
    """
    new_text = new_text.strip()
    if not new_text or len(new_text.splitlines()) != 1:
        raise EditError(f"write the new value of {path} in one line", "write `unknown` if it is not known")
    found = found_at(text, path, option)
    return _replaced(text, found, new_text, path)


@lru_cache(maxsize=8)  # every field of a form asks where its words stand; nobody changes the nodes
def composed(text: str) -> MappingNode:
    """Lay out a text.

    Raises:
        EditError: It cannot be read.
    """
    root, problems = compose(text, "text")
    if root is None or not isinstance(root, MappingNode):
        said = problems[0].message if problems else "it has no keys"
        raise EditError(f"a text that cannot be read cannot be changed: {said}")
    return root


def is_written(text: str, path: str, option: str | None = None) -> bool:
    """Whether a text has something at an object path itself, not by a copy or from another option."""
    return locate(composed(text), _steps(path, option)) is not None


def _steps(path: str, option: str | None) -> list[str]:
    return [*(("options", option) if option is not None else ()), *path.split(".")]


def found_at(text: str, path: str, option: str | None) -> Located:
    """Find what is written at an object path of a text.

    Raises:
        EditError: Nothing is, or it is shared with another place, or the text cannot be read.
    """
    root = composed(text)
    found = locate(root, _steps(path, option))
    if found is None:
        raise EditError(*no_place(text, root, path, option))
    if found.shared:
        message = f"{path} is shared with another place by an anchor (&), an alias (*) or `<<`"
        raise EditError(message, "write it out by hand")
    return found


def _replaced(text: str, found: Located, new_text: str, path: str) -> str:
    """Try the new value as it is, then in quotes; what comes out must say the same but for this value."""
    node = found.node
    start, finish = node.start_mark.index, node.end_mark.index
    if isinstance(node, ScalarNode) and not node.value and node.style is None:
        start = finish = text.index(":", found.key_end - 1) + 1
    if "\n" in text[start:finish] or (isinstance(node, ScalarNode) and node.style in ("|", ">")):
        raise EditError(f"{path} takes more than one line", "change one value inside it")
    if isinstance(node, MappingNode) and not node.flow_style:
        raise EditError(f"{path} has keys of its own", "change one of them")
    before = said_by(text)
    gap = " " if start == finish else ""
    for piece in (new_text, in_quotes(new_text)):
        wanted = _value_of(piece, new_text)
        after = spliced(text, start, finish, gap + piece)
        if wanted is None or before is None:
            continue
        if said_by(after) == with_another(before, found.steps, wanted):
            return after
    raise EditError(f"`{new_text}` cannot stand as a value at {path}")


def _value_of(piece: str, text: str) -> Said | None:
    """What a piece says by itself: a list or keys in brackets, a text in quotes, or the words as they are."""
    root, _ = compose(f"x: {piece}", "value")
    if not isinstance(root, MappingNode) or len(root.value) != 1:
        return None
    node = root.value[0][1]
    read = said_by(f"x: {piece}")
    if not isinstance(read, dict):
        return None
    if isinstance(node, ScalarNode) and node.style is None and read["x"] != text:
        return None  # a remark at its end, or words that YAML would swallow
    return read["x"]
