"""A new thing as text: everything in it that can be measured is still unknown."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.model.kinds import KINDS
from firmpedal.project.edit import EditError
from firmpedal.project.edit_keys import with_thing
from firmpedal.project.field_choices import choices_for
from firmpedal.project.field_edits import readable
from firmpedal.project.field_places import class_at
from firmpedal.project.layouts import parts
from firmpedal.project.layouts.writing import filled
from firmpedal.project.names import RESERVED
from firmpedal.project.plain import quoted_if_needed
from firmpedal.project.reference import EACH, meaning_of, words_of
from firmpedal.project.schema import known_keys
from firmpedal.project.things import CAN_BE_UNKNOWN
from firmpedal.project.tree import UNKNOWN, Branch

if TYPE_CHECKING:
    from firmpedal.model.fields import Declared
    from firmpedal.project.read import Reading
    from firmpedal.project.schema import Key

ALSO_UNKNOWN = (*CAN_BE_UNKNOWN, "body", "sheet")
SIDES = {"first": "ahead", "second": "behind"}


@dataclass(frozen=True, slots=True)
class Sort:
    """A sort of thing that can be added: the section it goes to, and for a component its kind."""

    section: str
    name: str
    kind: str = ""


SORTS = (
    Sort("lines", "line"),
    Sort("bulkheads", "bulkhead"),
    *(Sort("components", kind, kind) for kind in KINDS),
    Sort("pedals", "pedal"),
    Sort("panels", "panel"),
    Sort("wheels", "wheel"),
    Sort("keep clear of", "thing to keep clear of"),
    Sort("zones", "zone"),
)


@dataclass(frozen=True, slots=True)
class Question:
    """What has to be known of a new thing before it can be written: nothing that could be measured later."""

    key: str
    meaning: str
    hint: str
    choices: tuple[str, ...]


def questions(tree: Branch, sort: Sort) -> tuple[Question, ...]:
    """What to ask for a new thing, besides its name."""
    pattern = f"{sort.section}.{EACH}"
    return tuple(
        Question(key.key, meaning_of(pattern, key.key), words_of(key), choices_for(tree, key, sort.section))
        for key in _asked(sort)
    )


def _asked(sort: Sort) -> list[Key]:
    """The keys that must be there and cannot be unknown, and the side, which nobody has to measure."""
    return [
        key
        for key in known_keys(_class(sort)).values()
        if key.reads is not None and not (sort.kind and key.key == "kind")
        and (key.reads.method == "side" or (key.required and key.reads.method not in ALSO_UNKNOWN))
    ]  # fmt: skip


def _class(sort: Sort) -> type[Declared]:
    if sort.kind:
        return KINDS[sort.kind]
    cls = class_at(sort.section)
    if cls is None:
        raise EditError(f"there is no section {sort.section}")
    return cls


def with_new(reading: Reading, sort: Sort, name: str, answers: dict[str, str]) -> str:
    """Put a new thing into a text.

    Args:
        reading: The text, with the option that is looked at.
        sort: What it is, one of `SORTS`.
        name: What it is to be called.
        answers: The answers to the questions of its sort, by key.

    Raises:
        EditError: It cannot be called so, an answer is missing, or it could not be read then.
    """
    name = " ".join(name.split())
    if not name or "." in name or name.lower() in RESERVED or quoted_if_needed(name) != name:
        raise EditError("it needs a name of its own", "write one in letters, such as `left_leg`")
    given = {key.key: answers.get(key.key, "").strip() for key in _asked(sort)}
    for key, words in given.items():
        if not words:
            raise EditError(f"{name} needs its `{key}`", "choose or write one")
    lines = _lines(sort, name, {key: quoted_if_needed(words) for key, words in given.items()})
    return readable(reading, with_thing(reading.text, sort.section, lines, reading.option))


def _lines(sort: Sort, name: str, answers: dict[str, str]) -> str:
    if sort.kind:
        return _component(sort.kind, name, answers)
    if sort.section == "bulkheads":
        text = filled(parts.FITTING, name=name, form="straight", moves="", **SIDES)
        return text.replace("# <words>", "")
    if sort.section == "pedals":
        return filled(parts.PEDAL, name=name, side=answers["side"], seat="", moves="")
    rows = [
        f"    {key.key}: {answers.get(key.key) or UNKNOWN}"
        for key in known_keys(_class(sort)).values()
        if key.key in answers or key.required or (key.reads and key.reads.method in ("position", "sheet"))
    ]
    return "\n".join([f"  {name}:", *rows]) + "\n"


def _component(kind: str, name: str, answers: dict[str, str]) -> str:
    """A component, from the pieces that first files are made of; it sits on nothing that moves as yet."""
    if kind == "reservoir":
        text = filled(parts.RESERVOIR, ports=filled(parts.PORT, name="outlet"))
    elif kind == "parking valve":
        ports = "".join(filled(parts.PORT, name=each) for each in ("in", "out"))
        text = filled(parts.VALVE, ways="[[in, out]]", ports=ports)
    elif kind == "caliper":
        text = parts.CALIPER
    else:
        words = {"name": name, "moves": "", "inlet": "", "supply": parts.BUILT_IN}
        text = filled(parts.CYLINDER, **words, side=answers["side"], pedal=answers["pedal"])
    rows = [row for row in text.splitlines()[1:] if not row.startswith(("    moves with:", "    side:"))]
    return "\n".join([f"  {name}:", f"    side: {answers['side']}", *rows]) + "\n"
