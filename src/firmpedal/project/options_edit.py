"""Options begun and renamed in a builder's text, and things written out for one option alone."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ruamel.yaml.nodes import MappingNode, ScalarNode

from firmpedal.project.edit import EditError, composed, is_written
from firmpedal.project.edit_keys import with_thing
from firmpedal.project.locate import locate, walked
from firmpedal.project.plain import entry_of
from firmpedal.project.read import read_text
from firmpedal.project.reading_again import read_again
from firmpedal.project.splice import spliced
from firmpedal.project.usable_names import usable_name

if TYPE_CHECKING:
    from firmpedal.project.read import Reading

OPTIONS = "options"
TAKEN = "there is an option of that name already"


def option_begun(reading: Reading, name: str) -> str:
    """The text with another option that changes nothing yet.

    Raises:
        EditError: It cannot be called so, or the options are not laid out in lines.
    """
    name = usable_name(name)
    if name in reading.options:
        raise EditError(TAKEN, "choose another name")
    after = with_thing(reading.text, OPTIONS, f"  {name}: {{}}\n")
    read_again(reading.text, after, name)
    return after


def option_renamed(reading: Reading, old: str, name: str) -> str:
    """The text with an option called otherwise; what it says stays.

    Raises:
        EditError: There is no such option, or it cannot be called so.
    """
    text, name = reading.text, usable_name(name)
    if name == old:
        return text
    if name in reading.options:
        raise EditError(TAKEN, "choose another name")
    found = locate(composed(text), [OPTIONS])
    pairs = found.node.value if found is not None and isinstance(found.node, MappingNode) else []
    key = next((key for key, _ in pairs if isinstance(key, ScalarNode) and str(key.value) == old), None)
    if key is None:
        raise EditError(f"there is no option {old}", "look at the text")
    after = spliced(text, key.start_mark.index, key.end_mark.index, name)
    read_again(text, after, name)
    return after


def written_out(reading: Reading, place: str) -> str:
    """The text with a thing of the aircraft as written copied into the option that is looked at.

    From then on what is changed of it there holds for that option alone.

    Args:
        reading: The file in one of its options.
        place: The thing, such as `lines.left_leg`.

    Raises:
        EditError: No option is looked at, or the thing is not written by itself.
    """
    text, option = reading.text, reading.option
    if option is None:
        raise EditError("this is the aircraft as written", "choose an option first")
    if is_written(text, place, option):
        return text
    tree = read_text(text, reading.file).tree
    node = None if tree is None else walked(tree, place)
    if node is None or node.via is not None:
        raise EditError(f"{place} is not written by itself", "write out what it is a copy of")
    section, _, name = place.rpartition(".")
    lines = "\n".join(f"  {line}" for line in entry_of(name, node))
    after = with_thing(text, section, lines, option)
    read_again(text, after, option)
    return after
