"""The sources the project cites, read from references.bib beside the package.

The file is a small part of BibTeX: entries `@type{key, ...}` whose closing brace stands first on
its line, fields `name = {text},` without inner braces, and lines that begin with %.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from importlib import resources
from types import MappingProxyType
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

_ENTRY = re.compile(
    r"^@(?P<kind>\w+)\{(?P<key>[a-z0-9][a-z0-9-]*),\n(?P<body>.*?)^\}", re.DOTALL | re.MULTILINE
)
_FIELD = re.compile(r"^\s*(?P<name>[a-z]+)\s*=\s*\{(?P<text>[^{}]*)\},?[ \t]*$\n?", re.MULTILINE)
_COMMENT = re.compile(r"^%.*$", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Reference:
    """One source: what it is, and how we know it."""

    key: str
    title: str
    note: str
    fields: Mapping[str, str]


def entry(key: str) -> Reference:
    """Give the source with this key.

    Raises:
        LookupError: references.bib has no such key.
    """
    found = every_entry().get(key)
    if found is None:
        raise LookupError(f"references.bib has no entry {key}")
    return found


@cache
def every_entry() -> Mapping[str, Reference]:
    """Give all sources by key, in the order of the file."""
    return parse((resources.files("firmpedal") / "references.bib").read_text(encoding="utf-8"))


def parse(text: str) -> Mapping[str, Reference]:
    """Read the text of a bibliography.

    Raises:
        ValueError: A part of the text is neither an entry nor a comment, or a key comes twice.
    """
    text = _COMMENT.sub("", text)
    rest = _ENTRY.sub("", text).strip()
    if rest:
        raise ValueError(f"not an entry: {rest.splitlines()[0]}")
    references: dict[str, Reference] = {}
    for found in _ENTRY.finditer(text):
        if found["key"] in references:
            raise ValueError(f"two entries are called {found['key']}")
        references[found["key"]] = _reference(found["kind"], found["key"], found["body"])
    return MappingProxyType(references)


def _reference(kind: str, key: str, body: str) -> Reference:
    rest = _FIELD.sub("", body).strip()
    if rest:
        raise ValueError(f"{key}: not a field: {rest.splitlines()[0]}")
    fields = {field["name"]: " ".join(field["text"].split()) for field in _FIELD.finditer(body)}
    if not fields.get("title"):
        raise ValueError(f"{key}: no title")
    return Reference(key, fields["title"], fields.get("note", ""), MappingProxyType({"type": kind, **fields}))
