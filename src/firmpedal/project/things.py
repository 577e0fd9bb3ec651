"""Things with keys: known keys by name, names of the builder's own, and what is missing."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from firmpedal.model.component import BaseComponent
from firmpedal.model.fields import Named
from firmpedal.model.kinds import KINDS
from firmpedal.model.space import NamedPoint
from firmpedal.project.names import RESERVED, choices_text, label_of, near_miss, quoted, suggest
from firmpedal.project.schema import keys_asked_for, known_keys
from firmpedal.project.spelling import spelled, unknown_key
from firmpedal.project.tree import UNKNOWN, Absent, Branch, Items, Leaf, Node, at, is_empty, word_of

if TYPE_CHECKING:
    from firmpedal.model.fields import Declared
    from firmpedal.project.context import Context
    from firmpedal.project.schema import Key

CAN_BE_UNKNOWN = ("measure", "position", "direction", "shape", "answer")
_CONNECTION = "such as `{key}: left_cylinder.outlet`"


def prepare(context: Context, cls: type[Declared], node: Any) -> Any:
    """Turn a piece of the file into the fields of a class."""
    if not isinstance(node, Branch | Leaf | Items | Absent):
        return node  # fields already, from code
    branch = _with_keys(context, cls, node)
    filled: dict[str, Any] = {}
    if isinstance(branch, Branch):
        known = known_keys(cls)
        if not cls.free_keys:
            branch = spelled(branch, known, context.notes)
        filled = {
            known[key].field: _behind(context, known[key], item)
            for key, item in branch.entries.items()
            if key in known
        }
        free = {key: item for key, item in branch.entries.items() if key not in known}
        if free:
            filled[cls.free_keys] = Branch(free, branch.keys, branch.span, branch.path, branch.via)
    stand_ins = {
        key.field: _left_out(context, key, branch) for key in keys_asked_for(cls) if key.field not in filled
    }
    own: dict[str, Any] = {"written": frozenset(filled), "place": node.path}
    if issubclass(cls, Named):
        own["name"] = node.path.rsplit(".", 1)[-1]
    return filled | {field: item for field, item in stand_ins.items() if item is not None} | own


def _with_keys(context: Context, cls: type[Declared], node: Node) -> Branch | Absent:
    """A piece that should have keys; a thing of which nothing is known says so with one word."""
    if isinstance(node, Branch | Absent):
        return node
    if is_empty(node):
        keys = ", ".join(known_keys(cls))
        context.nothing(node, f"write under it {keys}; or take the line out" if keys else "take the line out")
    elif issubclass(cls, Named) or word_of(node) != UNKNOWN:
        example = next(
            (key.key for key in known_keys(cls).values() if key.required), next(iter(known_keys(cls)), "key")
        )
        advice = f"write its keys under it, such as `{example}: ...`"
        context.notes.note(node, f"{label_of(node.path)} should be a list of keys and values", advice)
    context.notes.doubt(node.path)
    return Absent(node.span, node.path, node.via)


def _behind(context: Context, key: Key, node: Node) -> Any:
    return _members(context, key, node) if key.many else node


def _members(context: Context, key: Key, node: Node) -> list[Node]:
    """The things of a section one by one."""
    if is_empty(node):
        context.nothing(node, f"write under it what the {key.key} are called, or take the line out")
        context.notes.doubt(node.path)
        return []
    if key.named and isinstance(node, Branch):
        look_at_names(context, node)
        return list(node.entries.values())
    if not key.named and isinstance(node, Items):
        return list(node.nodes)
    context.notes.doubt(node.path)
    if not isinstance(node, Absent):
        label = label_of(node.path) or key.key
        if key.named:
            context.notes.note(
                node, f"{label}: each should have a name", f"write `{key.key}: {{a_name: ...}}`"
            )
        else:
            inner = ", ".join(f"{name}: ..." for name in (known_keys(key.inner) if key.inner else ()))
            context.notes.note(node, f"{label} should be a list", f"begin each with `- `: `- {{{inner}}}`")
    return []


def named_points(context: Context, node: Node) -> tuple[NamedPoint, ...]:
    """Read the named places from which chains can start, whether or not anything hangs on them."""
    if isinstance(node, Branch):
        look_at_names(context, node)
        return tuple(NamedPoint(name, context.position(point)) for name, point in node.entries.items())
    advice = "write `points: {a_name: [7.0, -9.0, -3.2]}`"
    if is_empty(node):
        context.nothing(node, advice)
    else:
        context.notes.note(node, "the points should have names", advice)
    context.notes.doubt(node.path)
    return ()


def look_at_names(context: Context, section: Branch) -> None:
    """Note names that could not be used: without a letter, with a dot, or with a meaning of their own."""
    for name in section.entries:
        advice = ""
        if not name:
            message, advice = "a name is missing here", "write it before the `:`"
        elif "." in name:
            message = f"{quoted(name)} has a dot in it, which stands between a thing and its port"
            advice = f"write `{name.replace('.', '_')}`"
        elif name.lower() in RESERVED:
            message, advice = f"{quoted(name)} cannot be a name: it has a meaning here", "choose another"
        if advice:
            context.notes.note_at(section.key_span(name), message, name, advice, via=section.via)
            context.notes.doubt(section.path)


def _left_out(context: Context, key: Key, branch: Branch | Absent) -> Any:
    """What stands for a key that the builder left out; a key that must be there is asked for."""
    if key.required and isinstance(branch, Branch):
        where = label_of(branch.path) or "the file"
        span = branch.name_span or branch.span
        context.notes.note_at(span, f"{where} has no `{key.key}`", "", _how_to_add(key), via=branch.via)
        if key.many:
            context.notes.doubt(f"{branch.path}.{key.key}")
    if not key.info.is_required():
        return None
    if key.many:
        return []
    path = f"{branch.path}.{key.key}" if branch.path else key.key
    return Absent(branch.span, path, branch.via)


def _how_to_add(key: Key) -> str:
    """Say how a missing key is written."""
    method = key.reads.method if key.reads else ""
    if method in CAN_BE_UNKNOWN:
        return f"add a line `{key.key}: ...`, or `{key.key}: unknown`"
    if method == "connection":
        return f"add a line {_CONNECTION.format(key=key.key)}"
    if key.reads is not None and key.reads.choices is not None:
        return f"add a line `{key.key}: ...`; {choices_text(list(key.reads.choices))}"
    if key.inner is not None and not key.many:
        inner = ", ".join(f"{each.key}: ..." for each in known_keys(key.inner).values() if each.required)
        return f"add a line `{key.key}: {{{inner}}}`"
    return f"add a line `{key.key}: ...`"


def component(context: Context, node: Node) -> BaseComponent:
    """Read a component by its kind; of an unknown kind at least the ports are read."""
    node = _with_kind(context, node)
    kind = at(node, "kind")
    if word_of(kind) in KINDS:
        return KINDS[word_of(kind)].model_validate(node, context=context)
    if not isinstance(node, Branch):
        return BaseComponent.model_validate(node, context=context)
    if kind is None:
        message, advice = (
            f"{label_of(node.path)} has no `kind`",
            f"add a line `kind: ...`; {choices_text(KINDS)}",
        )
        context.notes.note_at(node.name_span or node.span, message, "", advice, via=node.via)
    elif not word_of(kind):
        context.notes.note(kind, f"{label_of(kind.path)} should be a word", choices_text(KINDS))
    else:
        message = f"{quoted(word_of(kind))} is not a kind of component"
        context.notes.note(kind, message, suggest(word_of(kind), KINDS))
    entries = {key: node.entries[key] for key in known_keys(BaseComponent) if key in node.entries}
    bare = replace(node, entries=entries)
    return BaseComponent.model_validate(bare.with_entry("kind", Leaf("?", node.span)), context=context)


def _with_kind(context: Context, node: Node) -> Node:
    """Read a misspelled `kind` all the same."""
    if not isinstance(node, Branch) or "kind" in node.entries:
        return node
    close = near_miss("kind", [key for key, item in node.entries.items() if word_of(item) in KINDS])
    if not close:
        return node
    unknown_key(node, close, ["kind"], context.notes)
    return node.without(close).with_entry("kind", node.entries[close], node.key_span(close))
