"""Writing what stands at an object path of a builder's text, whether or not something did; and taking it out.

Nothing else of the text changes: remarks, order and line ends stay.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ruamel.yaml.nodes import MappingNode, SequenceNode

from firmpedal.project.apart import goes_under, is_lent, lent_whole
from firmpedal.project.edit import EditError, composed, edited, found_at, is_written
from firmpedal.project.edit_blocks import with_lines
from firmpedal.project.edit_lists import (
    Item,
    real_end,
    with_items,
    with_key,
)
from firmpedal.project.locate import locate
from firmpedal.project.plain import flow, in_quotes, quoted_if_needed
from firmpedal.project.said import Said, said_by, with_another, without_place
from firmpedal.project.splice import line_end, line_start, spliced
from firmpedal.project.tree import REMOVED, Items

if TYPE_CHECKING:
    from ruamel.yaml.nodes import Node as YamlNode


def with_value(text: str, place: str, words: str, option: str | None = None) -> str:
    """Put words at a place: instead of those that are there, or as a key that was not.

    Args:
        text: The builder's text.
        place: The object path, such as `bench.bender.grip`.
        words: What is to stand there, in one line.
        option: The option that is looked at; what holds for all of them is changed for all of them.

    Raises:
        EditError: It cannot be written there without touching more.
    """
    text = taken_along(text, place, option)
    where = goes_under(text, place, option)
    if is_written(text, place, where):
        return edited(text, place, words, where)
    return _with_new(text, place, _piece(words), option)


def taken_along(text: str, place: str, option: str | None, *, whole: bool = False) -> str:
    """The text in which a value round a place is written out in the option that has the thing for itself.

    The option replaces such a value as a whole, so a change of a part of it would lose the rest.

    Args:
        text: The builder's text.
        place: What is to be changed.
        option: The option that is looked at.
        whole: Whether the value is to be taken along too where the place is all of it.

    Raises:
        EditError: It cannot be written there without touching more.
    """
    lent = lent_whole(text, place, option)
    if lent is None or (lent[0] == place and not whole):
        return text
    value, node = lent
    items = [flow(each) for each in node.nodes] if isinstance(node, Items) else None
    return _with_new(text, value, flow(node), option, items)


def _with_new(text: str, place: str, piece: str, option: str | None, items: list[str] | None = None) -> str:
    """Write a key that was not there, with whatever it has to stand under; a list by its items too."""
    head, _, key = place.rpartition(".")
    name = quoted_if_needed(key)
    if not head:
        return _with_section(text, name, piece)
    where = goes_under(text, head, option)
    if not is_written(text, head, where):
        return _with_new(text, head, f"{{{name}: {piece}}}", option)
    if isinstance(found_at(text, head, where).node, MappingNode):
        return with_key(text, head, name, items or piece, where)
    return edited(text, head, f"{{{name}: {piece}}}", where)


def _piece(words: str) -> str:
    """Words as they can stand behind a key: as they are, or in quotes where YAML would take them for more."""
    words = words.strip()
    if not words or len(words.splitlines()) != 1:
        raise EditError("write it in one line", "write `unknown` if it is not known")
    said = said_by(f"x: {words}")
    plain = isinstance(said, dict) and (said.get("x") == words or words[0] in "[{")
    return words if plain else in_quotes(words)


def _with_section(text: str, name: str, piece: str) -> str:
    """A section at the end of the file."""
    after = with_lines(text, (), [f"{name}: {piece}"])
    return _checked(after, with_another(_said(text), (name,), _said(f"x: {piece}", "x")), name)


def with_thing(text: str, section: str, lines: str, option: str | None = None) -> str:
    """Put a thing with a name at the end of a section, which is begun if it is not there.

    Args:
        text: The builder's text.
        section: Such as `lines`; empty for what stands in the file, or in the option, by itself.
        lines: The thing as text: its name two blanks in, its keys under it.
        option: The option to which the thing belongs alone; none for the aircraft as written.

    Raises:
        EditError: The section has one of that name, or cannot be laid out in lines.
    """
    said = _said(lines)
    name = next(iter(said)) if isinstance(said, dict) and said else ""
    if is_written(text, f"{section}.{name}".lstrip("."), option):
        raise EditError(f"there is a {name} already", "choose another name")
    steps = (*(() if option is None else ("options", option)), *((section,) if section else ()))
    after = with_lines(text, steps, [each.rstrip()[2:] for each in lines.splitlines()])
    return _checked(after, _with_more(_said(text), steps, name, _said(lines, name)), section)


def _with_more(said: Said, steps: tuple[str, ...], name: str, thing: Said) -> Said:
    """The same with a thing under the steps, which are begun where they lead to nothing."""
    if not steps:
        return {**(said if isinstance(said, dict) else {}), name: thing}
    keys = said if isinstance(said, dict) else {}
    return {**keys, steps[0]: _with_more(keys.get(steps[0], {}), steps[1:], name, thing)}


def with_item(text: str, place: str, words: str, option: str | None = None) -> str:
    """Put words at the end of a list, which is begun if it is not there.

    Args:
        text: The builder's text.
        place: The list's object path, such as `bench.bender.springback`.
        words: The item, in one line.
        option: The option that is looked at.

    Raises:
        EditError: The list cannot be changed by itself.
    """
    text = taken_along(text, place, option, whole=True)
    where = goes_under(text, place, option)
    if not is_written(text, place, where):
        return with_value(text, place, f"[{words}]", option)
    node = found_at(text, place, where).node
    old = node.value if isinstance(node, SequenceNode) else []
    items = [*(Item(n) for n in range(1, len(old) + 1)), Item(None, words)]
    return with_items(text, place, items, where)


def without_key(text: str, place: str, option: str | None = None) -> str:
    """Take a key out with all that stands behind it, and its name from the mirror list.

    What an option's own thing has from the aircraft as written stays there, and is left out in the option.

    Raises:
        EditError: It is not written by itself, or cannot be taken out without touching more.
    """
    text = taken_along(text, place, option)
    if is_lent(text, place, option):
        return with_value(text, place, REMOVED, option)
    where = goes_under(text, place, option)
    found = found_at(text, place, where)
    head = found.steps[:-1]
    around = locate(composed(text), list(head))
    node = composed(text) if around is None else around.node
    if isinstance(node, SequenceNode):
        return _without_item(text, place, node, where)
    if not isinstance(node, MappingNode):
        raise EditError(f"{place} has no key of its own", "take it out by hand, in the text")
    if len(node.value) == 1 and len(head) > (2 if where else 0):
        after = without_key(text, place.rpartition(".")[0], option)
    else:
        number = next(n for n, (key, _) in enumerate(node.value) if _name(key) == found.steps[-1])
        after = (_out_of_braces if node.flow_style else _off_its_lines)(text, node, number, place)
        after = _checked(after, without_place(_said(text), found.steps), place)
    gone = place.count(".") == 1 and (where is None or not is_written(text, place))
    return off_the_mirror(after, found.steps[-1], where) if gone else after


def _without_item(text: str, place: str, node: SequenceNode, option: str | None) -> str:
    head, _, number = place.rpartition(".")
    kept = [Item(n) for n in range(1, len(node.value) + 1) if n != int(number)]
    return with_items(text, head, kept, option)


def _off_its_lines(text: str, node: MappingNode, number: int, place: str) -> str:
    key, value = node.value[number]
    start = line_start(text, key.start_mark.index)
    if text[start : key.start_mark.index].strip():
        raise EditError(f"{place} shares its line with more", "take it out by hand, in the text")
    return text[:start] + text[line_end(text, max(real_end(value), key.end_mark.index)) :]


def _out_of_braces(text: str, node: MappingNode, number: int, _place: str) -> str:
    if number:
        return spliced(text, real_end(node.value[number - 1][1]), real_end(node.value[number][1]), "")
    start = node.value[0][0].start_mark.index
    if len(node.value) == 1:
        return spliced(text, start, real_end(node.value[0][1]), "")
    return spliced(text, start, node.value[1][0].start_mark.index, "")


def off_the_mirror(text: str, name: str, option: str | None) -> str:
    """What is no longer there has no mirror image."""
    for where in dict.fromkeys((option, None)):
        if not is_written(text, "mirror", where):
            continue
        node = found_at(text, "mirror", where).node
        items = list(node.value) if isinstance(node, SequenceNode) else []
        kept = [Item(n) for n, item in enumerate(items, 1) if _name(item) != name]
        if len(kept) < len(items):
            return with_items(text, "mirror", kept, where)
    return text


def _name(node: YamlNode) -> str:
    return " ".join(str(node.value).split())


def _said(text: str, key: str = "") -> Said:
    said = said_by(text)
    if said is None:
        raise EditError("a text that cannot be read cannot be changed", "mend it in the text first")
    return said.get(key, "") if key and isinstance(said, dict) else said


def _checked(after: str, wanted: Said, place: str) -> str:
    """What comes out must say what was wanted, and nothing else."""
    if said_by(after) != wanted:
        raise EditError(f"{place} cannot be changed without touching more", "write it by hand, in the text")
    return after
