"""A new thing as text: everything in it that can be measured is still unknown."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.kinds import KINDS
from firmpedal.project.acceptances import LIST as ACCEPTED
from firmpedal.project.acceptances import accepting
from firmpedal.project.edit import EditError
from firmpedal.project.edit_keys import with_item, with_thing, with_value
from firmpedal.project.field_choices import choices_for, other_positions
from firmpedal.project.field_edits import readable
from firmpedal.project.field_places import walk_to
from firmpedal.project.layouts import parts
from firmpedal.project.layouts.writing import filled
from firmpedal.project.overlay import POINTS
from firmpedal.project.plain import quoted_if_needed
from firmpedal.project.reference import EACH, meaning_of, words_of
from firmpedal.project.schema import known_keys
from firmpedal.project.sorts import SORTS, Sort
from firmpedal.project.things import CAN_BE_UNKNOWN
from firmpedal.project.tree import UNKNOWN, Branch, branch_at
from firmpedal.project.usable_names import usable_name

if TYPE_CHECKING:
    from firmpedal.model.fields import Declared
    from firmpedal.project.read import Reading
    from firmpedal.project.schema import Key

__all__ = ["NAME", "SORTS", "Question", "Sort", "called_by", "questions", "with_new"]

NAME = "a name"
ALSO_UNKNOWN = (*CAN_BE_UNKNOWN, "body", "sheet")
SIDES = {"first": "ahead", "second": "behind"}
# What is written as still unknown besides what must be there: the first that somebody will measure.
TO_MEASURE = {
    "attitudes": ("nose up",),
    "ports": ("faces", "at"),
    "passes": ("grommet", "hole"),
}
POSITIONS, MOVED_BY, CARRIED = "values", "moved by", "with"
RANGE = {"from": "-1", "to": "1", "measured at": "0"}


@dataclass(frozen=True, slots=True)
class Question:
    """What has to be known of a new thing before it can be written: nothing that could be measured later.

    What is not `needed` may be left empty.
    """

    key: str
    meaning: str
    hint: str
    choices: tuple[str, ...]
    needed: bool = True


def called_by(tree: Branch, sort: Sort) -> tuple[str, ...] | None:
    """The names that a new thing can have, where it is called by something else; none where it has no name.

    Returns:
        Nothing where it gets a name of its own.
    """
    key = _key(tree, sort)
    if key is not None and not key.named and sort.section != POINTS:
        return ()
    if sort.section.endswith(".passes"):
        there = branch_at(tree, *sort.section.split("."))
        return tuple(name for name in branch_at(tree, "lines") if name not in there)
    return None


def questions(tree: Branch, sort: Sort) -> tuple[Question, ...]:
    """What to ask for a new thing, besides its name."""
    if sort.section == "states":
        return (
            Question(
                POSITIONS,
                "its positions, such as up, down; none for what goes from one end (-1) to the other (1)",
                "", (), needed=False,
            ),
            Question("opposite when mirrored", meaning_of(f"states.{EACH}", "opposite when mirrored"), "",
                     ("no", "yes"), needed=False),
        )  # fmt: skip
    if sort.section == "moving":
        states, things = (tuple(branch_at(tree, section)) for section in ("states", "moving"))
        return (
            Question(MOVED_BY, "the state that moves it", "", states, needed=False),
            Question(CARRIED, "the moving thing that carries it", "", things, needed=False),
        )
    pattern = _pattern(tree, sort)
    return tuple(
        Question(key.key, meaning_of(pattern, key.key), words_of(key), choices_for(tree, key, sort.section))
        for key in _asked(tree, sort)
    )


def _asked(tree: Branch, sort: Sort) -> list[Key]:
    """The keys that must be there and cannot be unknown, and the side, which nobody has to measure."""
    return [
        key
        for key in _keys(tree, sort).values()
        if key.reads is not None and not (sort.kind and key.key == "kind")
        and (key.reads.method == "side" or (key.required and key.reads.method not in ALSO_UNKNOWN))
    ]  # fmt: skip


def _keys(tree: Branch, sort: Sort) -> dict[str, Key]:
    """The keys that one of its sort can have; none for a point, which is a value."""
    cls: type[Declared] | None = KINDS[sort.kind] if sort.kind else None
    if cls is None:
        key = _key(tree, sort)
        cls = key.inner if key is not None else None
    return {} if cls is None else known_keys(cls)


def _key(tree: Branch, sort: Sort) -> Key | None:
    found = walk_to(tree, sort.section)
    if found is None:
        raise EditError(f"there is no section {sort.section}")
    return found[0]


def _pattern(tree: Branch, sort: Sort) -> str:
    found = walk_to(tree, sort.section)
    return f"{found[1]}.{EACH}" if found is not None else ""


def with_new(reading: Reading, sort: Sort, name: str, answers: dict[str, str]) -> str:
    """Put a new thing into a text.

    Args:
        reading: The text, with the option that is looked at.
        sort: What it is, one of `SORTS`, which goes to the option that is looked at alone; or of what can
            be added within a thing, which goes to where that is written.
        name: What it is to be called; nothing for one of a list.
        answers: The answers to the questions of its sort, by key.

    Raises:
        EditError: It cannot be called so, an answer is missing, or it could not be read then.
    """
    tree = reading.tree
    if tree is None:
        raise EditError("a text that cannot be read cannot be changed", "mend it in the text first")
    nameless = called_by(tree, sort) == ()
    name = "" if nameless else usable_name(name)
    if name and name in branch_at(tree, *sort.section.split(".")):
        raise EditError(f"there is a {name} already", "choose another name")
    given = {one.key: " ".join(answers.get(one.key, "").split()) for one in questions(tree, sort)}
    for one in questions(tree, sort):
        if one.needed and not given[one.key]:
            raise EditError(f"{name or sort.name} needs its `{one.key}`", "choose or write one")
    return readable(reading, _written(reading, tree, sort, name, given))


def _written(reading: Reading, tree: Branch, sort: Sort, name: str, given: dict[str, str]) -> str:
    """A thing with a block of its own where the layouts have one; else a line."""
    text, option, section = reading.text, reading.option, sort.section
    if name and sort in SORTS and section in BLOCKS:
        plain = {key: quoted_if_needed(words) for key, words in given.items()}
        return with_thing(text, section, BLOCKS[section](tree, sort, name, plain), option)
    if section == ACCEPTED:
        return accepting(text, given["rule"], (given["at"],), given["reason"], option)
    piece = _piece(tree, sort, given)
    if not name:
        return with_item(text, section, piece, option)
    if sort in SORTS:
        return with_thing(text, section, f"  {quoted_if_needed(name)}: {piece}\n", option)
    return with_value(text, f"{section}.{name}", piece, option)


def _piece(tree: Branch, sort: Sort, given: dict[str, str]) -> str:
    """What stands behind the name of a thing that takes one line."""
    if sort.section == POINTS:
        return UNKNOWN
    if sort.section == "states":
        return _in_braces(_state(given))
    if sort.section == "moving":
        return _in_braces(_moving(tree, given))
    words = {
        key: _list(word) if _many(tree, sort, key) else quoted_if_needed(word) for key, word in given.items()
    }
    extra = TO_MEASURE.get(sort.section.rpartition(".")[2], ())
    return _in_braces({
        key.key: words.get(key.key) or UNKNOWN
        for key in _keys(tree, sort).values()
        if key.key in words or key.required or key.key in extra
    })  # fmt: skip


def _list(words: str) -> str:
    """Words with commas between them as a list, and one alone as well."""
    return words if words.startswith("[") else f"[{', '.join(each.strip() for each in words.split(','))}]"


def _many(tree: Branch, sort: Sort, key: str) -> bool:
    reads = _keys(tree, sort)[key].reads
    return reads is not None and reads.method == "lengths"


def _in_braces(words: dict[str, str]) -> str:
    return "{" + ", ".join(f"{key}: {word}" for key, word in words.items()) + "}"


def _state(given: dict[str, str]) -> dict[str, str]:
    """A state by its positions, of which the first is how it stood; or a range round the middle."""
    positions = [each.strip() for each in given[POSITIONS].strip("[]").split(",") if each.strip()]
    opposite = {"opposite when mirrored": "yes"} if given["opposite when mirrored"] == "yes" else {}
    if not positions:
        return RANGE | opposite
    if len(positions) == 1:
        raise EditError("a state needs at least two positions", "write them as in `up, down`")
    words = [quoted_if_needed(each) for each in positions]
    return {POSITIONS: f"[{', '.join(words)}]", "measured at": words[0]} | opposite


def _moving(tree: Branch, given: dict[str, str]) -> dict[str, str]:
    """A moving thing; how far each state moves it is still to be measured."""
    state, carrier = given[MOVED_BY], given[CARRIED]
    if not state and not carrier:
        raise EditError(
            "nothing moves it yet", "choose the state that moves it, or what carries it; add the state first"
        )
    found = {CARRIED: quoted_if_needed(carrier)} if carrier else {}
    if state:
        found[quoted_if_needed(state)] = motion_to_measure(tree, state)
    return found


def motion_to_measure(tree: Branch, state: str) -> str:
    """What stands at a state that moves a thing nobody knows how far: one unknown for each other position."""
    positions = other_positions(tree, state)
    return _in_braces({quoted_if_needed(each): UNKNOWN for each in positions}) if positions else UNKNOWN


def _block(tree: Branch, sort: Sort, name: str, answers: dict[str, str]) -> str:
    rows = [
        f"    {key.key}: {answers.get(key.key) or UNKNOWN}"
        for key in _keys(tree, sort).values()
        if key.key in answers or key.required or (key.reads and key.reads.method in ("position", "sheet"))
    ]
    return "\n".join([f"  {name}:", *rows]) + "\n"


def _bulkhead(_tree: Branch, _sort: Sort, name: str, _answers: dict[str, str]) -> str:
    text = filled(parts.FITTING, name=name, form="straight", moves="", **SIDES)
    return text.replace("# <words>", "")


def _pedal(_tree: Branch, _sort: Sort, name: str, answers: dict[str, str]) -> str:
    return filled(parts.PEDAL, name=name, side=answers["side"], seat="", moves="")


def _component(_tree: Branch, sort: Sort, name: str, answers: dict[str, str]) -> str:
    """A component, from the pieces that first files are made of; it sits on nothing that moves as yet."""
    if sort.kind == "reservoir":
        text = filled(parts.RESERVOIR, ports=filled(parts.PORT, name="outlet"))
    elif sort.kind == "parking valve":
        ports = "".join(filled(parts.PORT, name=each) for each in ("in", "out"))
        text = filled(parts.VALVE, ways="[[in, out]]", ports=ports)
    elif sort.kind == "caliper":
        text = parts.CALIPER
    else:
        words = {"name": name, "moves": "", "inlet": "", "supply": parts.BUILT_IN}
        text = filled(parts.CYLINDER, **words, side=answers["side"], pedal=answers["pedal"])
    rows = [row for row in text.splitlines()[1:] if not row.startswith(("    moves with:", "    side:"))]
    return "\n".join([f"  {name}:", f"    side: {answers['side']}", *rows]) + "\n"


BLOCKS = {
    "bulkheads": _bulkhead,
    "components": _component,
    "pedals": _pedal,
    **dict.fromkeys(("lines", "panels", "wheels", "keep clear of", "zones"), _block),
}
