"""Changing a list of a builder's text item by item, and writing a key that was not there.

What stays keeps its own words, remarks and line ends; an item that goes takes the remark on its line along.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from ruamel.yaml.nodes import CollectionNode, MappingNode, SequenceNode

from firmpedal.project.edit import EditError, composed, edited, found_at
from firmpedal.project.locate import Located, locate
from firmpedal.project.plain import WIDEST
from firmpedal.project.said import Said, at_place, said_by, with_another
from firmpedal.project.splice import line_end, line_start, new_line, spliced

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ruamel.yaml.nodes import Node as YamlNode


@dataclass(frozen=True, slots=True)
class Item:
    """One item of the list that is wanted: one that is there, by its number from 1, or new words, or both."""

    old: int | None
    text: str | None = None


def with_items(text: str, path: str, wanted: Sequence[Item], option: str | None = None) -> str:
    """Make a list of a text hold these items, touching no others.

    Args:
        text: The builder's text.
        path: The list's object path, such as `lines.left_leg.via`.
        wanted: Its items in their new order: kept, put in the place of an old one, or new.
        option: The option in which the list is written; none for the aircraft as written.

    Raises:
        EditError: The list is not written by itself, or cannot be changed without touching more.
    """
    found = found_at(text, path, option)
    if not isinstance(found.node, SequenceNode):
        return edited(text, path, _flow([item.text or "" for item in wanted]), option)
    if not found.node.value:
        after = _filled(text, found.node, [item.text or "" for item in wanted])
    elif not wanted:
        after = _emptied(text, found)
    else:
        after = _reworded(text, found.node, wanted)
        if [each.old for each in wanted] != list(range(1, len(found.node.value) + 1)):
            after = _arranged(after, found_at(after, path, option), wanted, path)
    before = said_by(text)
    old = at_place(before, found.steps) if before is not None else None
    items = [_said(item, old if isinstance(old, list) else []) for item in wanted]
    return _checked(text, after, found.steps, items, path)


def with_key(text: str, path: str, key: str, value: str | Sequence[str], option: str | None = None) -> str:
    """Write a key under a thing of a text that does not have it, a list item by item.

    An empty path is the whole file, or the whole option.

    Raises:
        EditError: The thing is not written by itself, or has no keys of its own.
    """
    found = found_at(text, path, option) if path else _whole(text, option)
    node = found.node
    if not isinstance(node, MappingNode) or not node.value:
        raise EditError(f"{path or key} has no keys of its own", "write it out by hand")
    after = (_key_in_braces if node.flow_style else _key_on_its_line)(text, node, key, value)
    said: Said = [_alone(item) for item in value] if not isinstance(value, str) else _alone(value)
    return _checked(text, after, (*found.steps, key), said, f"{path}.{key}" if path else key)


def _whole(text: str, option: str | None) -> Located:
    """Everything that is written, or all that one option writes."""
    found = locate(composed(text), [] if option is None else ["options", option])
    if found is None or found.shared:
        raise EditError(f"option {option} is not written by itself", "write it out by hand")
    return found


def _checked(text: str, after: str, steps: tuple[str, ...], wanted: Said, path: str) -> str:
    """What comes out must say the same but for this value."""
    before = said_by(text)
    if before is None or said_by(after) != with_another(before, steps, wanted):
        raise EditError(f"{path} cannot be changed without touching more", "write it out by hand")
    return after


def _said(item: Item, old: list[Said]) -> Said:
    if item.text is not None:
        return _alone(item.text)
    return old[item.old - 1] if item.old is not None and item.old <= len(old) else ""


def _alone(text: str) -> Said:
    said = said_by(f"x: {text}")
    return said["x"] if isinstance(said, dict) and len(said) == 1 and "x" in said else ""


def _flow(items: Sequence[str]) -> str:
    return f"[{', '.join(items)}]"


def _reworded(text: str, node: SequenceNode, wanted: Sequence[Item]) -> str:
    """Other words in the place of items that are there."""
    words = {item.old: item.text for item in wanted if item.old is not None and item.text is not None}
    for number, each in reversed(list(enumerate(node.value, 1))):
        if number in words:
            text = spliced(text, each.start_mark.index, real_end(each), words[number])
    return text


def _arranged(text: str, found: Located, wanted: Sequence[Item], path: str) -> str:
    """Items put in between, left out or in another order."""
    node = found.node
    if not isinstance(node, SequenceNode) or any((each.old or 0) > len(node.value) for each in wanted):
        raise EditError(f"{path} cannot be changed without touching more", "write it out by hand")
    return _in_brackets(text, node, wanted) if node.flow_style else _under_dashes(text, found, wanted)


def _under_dashes(text: str, found: Located, wanted: Sequence[Item]) -> str:
    """Items on lines of their own; remarks above an item go with it."""
    node, first = found.node, line_end(text, found.key_end - 1)
    ends = [line_end(text, real_end(each)) for each in node.value]
    dash = text[line_start(text, node.start_mark.index) : node.start_mark.index] + "- "
    chunks = [text[start:stop] for start, stop in pairwise((first, *ends))]
    lines = [
        f"{dash}{each.text}{new_line(text)}" if each.old is None else chunks[each.old - 1] for each in wanted
    ]
    whole = "".join(line if line.endswith(("\n", "\r")) else line + new_line(text) for line in lines)
    ended = text[: ends[-1]].endswith(("\n", "\r"))
    return text[:first] + (whole if ended else whole.rstrip("\r\n")) + text[ends[-1] :]


def _filled(text: str, node: SequenceNode, words: list[str]) -> str:
    """Items between brackets that held none, each on a line of its own where the row would be too long."""
    start, finish = node.start_mark.index, real_end(node)
    column = start + 1 - line_start(text, start)
    row = _flow(words)
    if column + len(row) > WIDEST:
        between = f",{new_line(text)}{' ' * column}"
        row = f"[{between.join(words)}]"
    return spliced(text, start, finish, row)


def _in_brackets(text: str, node: SequenceNode, wanted: Sequence[Item]) -> str:
    """Items between brackets; what stands between two of them stays beside the first."""
    spans = [(each.start_mark.index, real_end(each)) for each in node.value]
    gaps = [text[one[1] : other[0]] for one, other in pairwise(spans)]
    first, column = spans[0][0], spans[0][0] - line_start(text, spans[0][0])
    between = f",{new_line(text)}{' ' * column}"
    words = [item.text or "" if item.old is None else text[slice(*spans[item.old - 1])] for item in wanted]
    wide = column + sum(len(each) + 2 for each in words) >= WIDEST
    usual = between if wide or any("\n" in gap or "\r" in gap for gap in gaps) else ", "
    made = words[0]
    for before, word in zip(wanted, words[1:], strict=False):
        own = before.old is not None and before.old <= len(gaps)
        made += (gaps[before.old - 1] if own and before.old is not None else usual) + word
    return spliced(text, first, spans[-1][1], made)


def _emptied(text: str, found: Located) -> str:
    node = found.node
    if isinstance(node, SequenceNode) and node.flow_style:
        return spliced(text, node.start_mark.index, node.end_mark.index, "[]")
    colon = text.index(":", found.key_end - 1) + 1
    first, last = line_end(text, colon), line_end(text, real_end(node))
    return spliced(text[:first] + text[last:], colon, colon, " []")


def _key_on_its_line(text: str, node: MappingNode, key: str, value: str | Sequence[str]) -> str:
    key_at = node.value[0][0].start_mark.index
    indent, ending = " " * (key_at - line_start(text, key_at)), new_line(text)
    at = line_end(text, real_end(node))
    lines = [f"{indent}{key}: {value}"]
    if not isinstance(value, str):
        lines = [f"{indent}{key}:", *(f"{indent}  - {item}" for item in value)]
    ended = text[:at].endswith(("\n", "\r"))
    whole = ending.join(lines)
    return text[:at] + (whole + ending if ended else ending + whole) + text[at:]


def _key_in_braces(text: str, node: MappingNode, key: str, value: str | Sequence[str]) -> str:
    at, key_at = real_end(node.value[-1][1]), node.value[0][0].start_mark.index
    column, ending = key_at - line_start(text, key_at), new_line(text)
    written = f"{key}: {value if isinstance(value, str) else _flow(value)}"
    if at - line_start(text, at) + len(written) + 2 <= WIDEST:
        return spliced(text, at, at, f", {written}")
    if not isinstance(value, str) and column + len(written) > WIDEST:
        between = f",{ending}{' ' * (column + len(key) + 3)}"
        written = f"{key}: [{between.join(value)}]"
    return spliced(text, at, at, f",{ending}{' ' * column}{written}")


def real_end(node: YamlNode) -> int:
    """Where a value really ends: the end of a list on lines of its own is that of its last item."""
    if isinstance(node, CollectionNode) and not node.flow_style and node.value:
        last = node.value[-1]
        return real_end(last[1] if isinstance(last, tuple) else last)
    return int(node.end_mark.index)
