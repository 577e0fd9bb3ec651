"""The keys of the builder's file, from the model itself."""

from __future__ import annotations

import ast
import typing
from pathlib import Path
from typing import TYPE_CHECKING, Any

from generator.meanings import MEANINGS
from generator.region import PageError, table

from firmpedal.model import aircraft, circuit, surroundings
from firmpedal.model.fields import Declared, Reads
from firmpedal.model.kinds import KINDS, caliper
from firmpedal.project.context import keys_of
from firmpedal.quantity import Answer
from firmpedal.units import Dimension, units_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from pydantic.fields import FieldInfo

_SOURCE = Path(__file__).parents[2] / "src" / "firmpedal"

# What stands in a section, in each entry of it, or in a group of keys within an entry.
SECTIONS: dict[str, tuple[type[Declared], ...]] = {
    "aircraft": (aircraft.Header,),
    "units": (aircraft.FileUnits,),
    "datum": (aircraft.Datum,),
    "foot": (aircraft.Foot,),
    "states": (surroundings.State,),
    "attitudes": (surroundings.Attitude,),
    "moving": (surroundings.Moving,),
    "zones": (surroundings.Zone,),
    "components": tuple(KINDS.values()),
    "pistons": (caliper.Pistons,),
    "ports": (circuit.Port,),
    "pedals": (surroundings.Pedal,),
    "brake": (surroundings.Brake,),
    "bulkheads": (circuit.Bulkhead,),
    "sides": (circuit.Side,),
    "panels": (circuit.Panel,),
    "wheels": (surroundings.Wheel,),
    "keep clear of": (surroundings.KeepClear,),
    "passes": (circuit.Passage,),
    "lines": (circuit.Line,),
    "bench": (aircraft.Bench,),
    "limits": (aircraft.Limits,),
    "accepted": (aircraft.Acceptance,),
}

_BY_METHOD = {
    "text": "words",
    "answer": "`yes`, `no` or `unknown`",
    "position": "a point",
    "positions": "a list of points",
    "direction": "a direction",
    "words": "a word or a list",
    "connection": "a port, a side of a bulkhead, or a line's `from` or `to`",
    "stock": "tube, hose or plastic, as a phrase",
    "fluid": "a fluid by its specification",
    "thread": "a thread",
    "body": "`box`, `ball`, `bar` or `disc`",
    "sheet": "`aft`, `right` or `up`, and `within`",
    "shape": "`box`, `ball`, `aft above` and the like, or `line`",
    "motions": "for each state a vector, a swing, or `unknown`",
    "clamps": "`propose`, `none`, or a list of lengths",
    "state": "the position of each state, as keys",
    "pairs": "a list of pairs of ports",
    "side": "`left`, `right` or `centre`",
}


def page(argument: str) -> str:
    """The table of one section, or of the keys that nothing uses."""
    if argument == "unused":
        return _unused()
    if argument not in SECTIONS:
        raise PageError(f"file: there is no section `{argument}`; choose one of {', '.join(SECTIONS)}")
    head = (f"key of `{argument}`", "what stands there", "meaning", "if left out")
    return table(head, list(dict.fromkeys(row for cls in SECTIONS[argument] for row in _rows(argument, cls))))


def units(_argument: str) -> str:
    """Every unit that can be written, by what it measures."""
    named = [(each.value, [name for name in units_of(each) if name != "-"]) for each in Dimension]
    rows: list[tuple[str, ...]] = [(what, ", ".join(f"`{name}`" for name in names)) for what, names in named]
    return table(("measures", "units"), rows)


def _rows(section: str, cls: type[Declared]) -> Iterator[tuple[str, ...]]:
    for key, name in keys_of(cls).items():
        info = cls.model_fields[name]
        word = "the name of a state" if name == cls.free_keys else key
        shown = word if name == cls.free_keys else f"`{key}`"
        yield shown + _kinds_with(section, name), _what(info), _meaning(section, word), _left_out(info)


def _kinds_with(section: str, name: str) -> str:
    """Which kinds of component have a key, where not all do."""
    if section != "components":
        return ""
    kinds = [kind for kind, cls in KINDS.items() if name in cls.model_fields]
    return "" if len(kinds) == len(KINDS) else f" ({', '.join(kinds)})"


def _meaning(section: str, key: str) -> str:
    words = MEANINGS.get(section, {}).get(key)
    if words is None:
        raise PageError(
            f"file: `{key}` of {section} has no meaning: give it one in docs/generator/meanings.py"
        )
    return words


def _marker(info: FieldInfo) -> Reads | None:
    """The mark that says how a field is read, also where it hides inside `X | None`."""
    found = [each for each in info.metadata if isinstance(each, Reads)]
    found += [each for inner in _annotations(info.annotation) for each in inner if isinstance(each, Reads)]
    return found[0] if found else None


def _annotations(annotation: Any) -> Iterator[tuple[Any, ...]]:
    yield getattr(annotation, "__metadata__", ())
    for inner in typing.get_args(annotation):
        yield from _annotations(inner)


def _what(info: FieldInfo) -> str:
    marker = _marker(info)
    if _holds_keys(info.annotation) or marker is None or marker.method == "component":
        return "keys of its own"
    if marker.method == "measure" and marker.dimension is not None:
        return _article(marker.dimension.value)
    if marker.method == "choice" and marker.choices is not None:
        return _either([f"`{choice}`" for choice in marker.choices])
    if marker.method == "reference":
        return f"a name under `{marker.target}`"
    return _BY_METHOD[marker.method]


def _holds_keys(annotation: Any) -> bool:
    """Say whether a field holds something with keys, or a list of such."""
    each = (annotation, *typing.get_args(annotation))
    return any(isinstance(one, type) and issubclass(one, Declared) for one in each)


def _article(word: str) -> str:
    return f"{'an' if word[0] in 'aeiou' else 'a'} {word}"


def _either(words: list[str]) -> str:
    return " or ".join(filter(None, [", ".join(words[:-1]), words[-1]]))


def _left_out(info: FieldInfo) -> str:
    marker = _marker(info)
    if info.is_required():
        needed = _needs_keys(info.annotation) if marker is None else not marker.optional
        return "must be there" if needed else "unknown"
    default = info.default
    if isinstance(default, Answer):
        return default.value
    return f"`{default}`" if isinstance(default, str) and default else "nothing"


def _needs_keys(annotation: Any) -> bool:
    """Say whether something with keys cannot be left out: a list of it, or keys that must be there."""
    if isinstance(annotation, type) and issubclass(annotation, Declared):
        return any(_left_out(each) == "must be there" for each in _own_fields(annotation))
    return _holds_keys(annotation)


def _own_fields(cls: type[Declared]) -> list[FieldInfo]:
    return [cls.model_fields[name] for name in keys_of(cls).values()]


def _unused() -> str:
    """The keys whose fields no code ever asks for: read, kept, and nothing comes of them."""
    asked = _names_asked_for()
    skip = (aircraft.FileUnits, aircraft.Foot)  # asked for by the names of units and of feet
    found: dict[str, list[str]] = {}
    for section, classes in SECTIONS.items():
        for cls in classes:
            for key, name in keys_of(cls).items():
                if cls not in skip and name not in asked and name != cls.free_keys:
                    found.setdefault(section, []).append(f"`{key}`")
    rows: list[tuple[str, ...]] = [
        (f"`{section}`", ", ".join(dict.fromkeys(keys))) for section, keys in found.items()
    ]
    return table(("section", "keys"), rows)


def _names_asked_for() -> set[str]:
    """Every name behind a dot in the program, and every word that its reader looks up in the file."""
    names: set[str] = set()
    for path in sorted(_SOURCE.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Attribute):
                names.add(node.attr)
            elif (
                isinstance(node, ast.Constant)
                and isinstance(node.value, str)
                and path.parent.name == "project"
            ):
                names.add(node.value.replace(" ", "_"))
    return names
