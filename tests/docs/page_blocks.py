"""The fenced blocks of a page, and the builder's file that grows through them.

A yaml block says in its info line what it is:

    yaml file=my.yaml         a piece of that file, kept: it joins what stands there already
    yaml file=my.yaml try     a piece that holds until the next yaml block; it may be wrong on purpose
    yaml file=my.yaml also    another way to write something: never kept, but it must be readable
    yaml file=my.yaml all     the whole file as grown so far

A csv block with `file=` is a table by that name.

A console block holds commands after `$ ` with what they print; `only=TEXT | TEXT` keeps the
paragraphs with these texts.
"""

import re
from dataclasses import dataclass, replace
from pathlib import Path

ROOT = Path(__file__).parents[2]
PAGES = [ROOT / "README.md", *sorted((ROOT / "docs").glob("*.md"))]

FENCE = re.compile(r"^```(?P<info>.*)$")
SECTION = re.compile(r"^(?P<key>[A-Za-z][\w ]*):(?P<rest>.*)$")
ENTRY = re.compile(r"^  (?P<key>[A-Za-z][\w ]*):")


@dataclass(frozen=True)
class Block:
    """A fenced block; `line` is where its content starts in the page, from 0."""

    info: str
    text: str
    line: int

    @property
    def kind(self):
        return self.info.split(" ")[0]

    @property
    def file(self):
        found = re.search(r"\bfile=(\S+)", self.info)
        return found[1] if found else ""

    @property
    def mode(self):
        last = self.info.split()[-1] if self.info else ""
        return last if last in ("try", "also", "all") else "keep"

    @property
    def only(self):
        found = re.search(r"\bonly=(.+)$", self.info)
        return tuple(each.strip() for each in found[1].split(" | ")) if found else ()


def blocks(text):
    """Every fenced block of a page in order."""
    found, start, info = [], None, ""
    lines = text.splitlines()
    for number, line in enumerate(lines):
        fence = FENCE.match(line)
        if fence and start is None:
            start, info = number + 1, fence["info"].strip()
        elif fence:
            found.append(Block(info, "\n".join(lines[start:number]), start))
            start = None
    assert start is None, f"the block that starts at line {start} is never closed"
    return found


def replaced(text, changes):
    """Give a page's text with the contents of some blocks changed."""
    lines = text.splitlines()
    for block, content in sorted(changes, key=lambda change: -change[0].line):
        lines[block.line : block.line + len(block.text.splitlines())] = content.splitlines()
    return "\n".join(lines) + "\n"


@dataclass(frozen=True)
class Section:
    """A top-level key of the file: its own line, and its entries where it has any."""

    head: str
    entries: dict

    @property
    def text(self):
        return "\n".join([self.head, *self.entries.values()])


def sections(text):
    """Take a file's text apart, by top-level keys and by the entries right under them."""
    found, key, entry = {}, None, None
    for line in text.splitlines():
        if not line.strip():
            continue
        if head := SECTION.match(line):
            key, entry = head["key"], None
            assert key not in found, f"`{key}` stands twice in one block"
            found[key] = Section(line, {})
            continue
        assert key is not None, f"this line belongs to no key: {line}"
        if inner := ENTRY.match(line):
            entry = inner["key"]
            found[key].entries[entry] = line
        elif entry is None:
            found[key] = replace(found[key], head=f"{found[key].head}\n{line}")
        else:
            found[key].entries[entry] += f"\n{line}"
    return found


def joined(text, piece):
    """Join a piece to a file: a named entry joins its section or takes the place of its namesake."""
    whole = sections(text)
    for key, section in sections(piece).items():
        old = whole.get(key)
        if old is None or not old.entries or not section.entries:
            whole[key] = section
        else:
            whole[key] = replace(old, entries={**old.entries, **section.entries})
    return "\n\n".join(section.text for section in whole.values()) + "\n"
