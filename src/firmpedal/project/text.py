"""From the bytes of a file to a tree; whatever is wrong becomes a problem with its place."""

from __future__ import annotations

import difflib
import re
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError, YAMLError
from ruamel.yaml.nodes import MappingNode, ScalarNode, SequenceNode
from ruamel.yaml.reader import ReaderError

from firmpedal.finding import Problem, Span
from firmpedal.project.tree import Branch, Items, Leaf, Node

if TYPE_CHECKING:
    from pathlib import Path

    from ruamel.yaml.nodes import Node as YamlNode

LARGEST_FILE = 400_000  # bytes; the largest sensible aircraft is twenty times smaller
MOST_PIECES = 100_000
DEEPEST = 40
MOST_OPEN = 1000  # brackets and dashes before the parser is asked; it is slow to say that it gives up
PLAIN_TAGS = ("str", "int", "float", "bool", "null", "timestamp", "merge", "value", "seq", "map", "set")


def load_file(path: Path) -> tuple[str, list[Problem]]:
    """Read a file's text, refusing what cannot be a builder's file before looking into it."""
    start = Span(str(path), 1, 1)
    try:
        size = path.stat().st_size
        if size > LARGEST_FILE:
            return "", [Problem(start, f"this file has {size:,} bytes; a builder's file has a few thousand")]
        if not path.is_file():
            what = "a folder" if path.is_dir() else "not a file"
            return "", [Problem(start, f"this cannot be read: it is {what}")]
        data = path.read_bytes()
    except FileNotFoundError:
        return "", [Problem(start, "there is no such file", suggestion=_similar_file(path))]
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) else str(error)
        return "", [Problem(start, f"this file cannot be read: {reason}")]
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = "\0"
    if "\0" in text:
        return "", [Problem(start, "this is not a text file")]
    return text, []


def _similar_file(path: Path) -> str:
    names = [item.name for item in path.parent.glob("*.y*ml")] if path.parent.is_dir() else []
    close = difflib.get_close_matches(path.name, names, 1)
    return f"did you mean {close[0]}?" if close else ""


def load_text(text: str, file: str) -> tuple[Branch | None, list[Problem]]:
    """Parse a text into a tree."""
    tabs = [
        n for n, line in enumerate(text.splitlines(), 1) if "\t" in line[: len(line) - len(line.lstrip())]
    ]
    if tabs:
        message = "a tab stands at the start of this line; YAML wants spaces"
        return None, [Problem(Span(file, n, 1), message) for n in tabs[:10]]
    root = _composed(text, file)
    if isinstance(root, Problem):
        return None, [root]
    if root is None:
        return None, [
            Problem(Span(file, 1, 1), "this file is empty", suggestion="start one with: firmpedal new")
        ]
    return _Grower(file).grow_root(root)


def _composed(text: str, file: str) -> YamlNode | Problem | None:
    """Parse a text into YAML's own nodes; None where there is nothing but comments."""
    start = Span(file, 1, 1)
    if _opens_too_much(text):
        return Problem(start, _TOO_DEEP)
    try:
        node: YamlNode | None = YAML(typ="safe", pure=True).compose(text)
    except MarkedYAMLError as error:
        return _layout_problem(error, file)
    except ReaderError as error:
        line = text.count("\n", 0, error.position) + 1
        column = error.position - text.rfind("\n", 0, error.position)
        return Problem(Span(file, line, column), "a character stands here that is not text")
    except RecursionError:
        return Problem(start, _TOO_DEEP)
    except (YAMLError, ValueError, AttributeError, IndexError) as error:
        # The parser stumbles with other errors over some texts that are not YAML either.
        return Problem(start, f"the text cannot be read: {(str(error).splitlines() or [''])[0]}")
    return node


_TOO_DEEP = "lists or keys are nested too deeply"


def _opens_too_much(text: str) -> bool:
    depth = 0
    for found in re.finditer(r"[\[\]{}]|(?:[-?] ){40}", text):
        depth += -1 if found[0] in "]}" else len(found[0])
        if depth > MOST_OPEN:
            return True
    return False


def _layout_problem(error: MarkedYAMLError, file: str) -> Problem:
    mark = error.problem_mark or error.context_mark
    span = Span(file, mark.line + 1, mark.column + 1) if mark else Span(file, 1, 1)
    message = str(error.problem or error.context)
    if "another document" in message:
        return Problem(span, "a second document starts here; a file holds one aircraft", "---")
    if r"'\t'" in message:
        return Problem(span, "a tab stands here; YAML wants spaces")
    return Problem(span, f"the text is not laid out as it should be: {message}")


@dataclass
class _Grower:
    """Turns YAML's nodes into ours, counting so that aliases of aliases cannot run away."""

    file: str
    problems: list[Problem] = field(default_factory=list)
    pieces: int = 0

    def grow_root(self, root: YamlNode) -> tuple[Branch | None, list[Problem]]:
        if not isinstance(root, MappingNode):
            return None, [Problem(self._span(root), "the file should be a list of keys such as `aircraft:`")]
        try:
            tree = self._grow(root, 0)
        except _TooMuchError as error:
            return None, [Problem(Span(self.file, 1, 1), str(error))]
        return (tree if isinstance(tree, Branch) else None), self.problems

    def _span(self, node: YamlNode) -> Span:
        return Span(self.file, node.start_mark.line + 1, node.start_mark.column + 1)

    def _grow(self, node: YamlNode, depth: int) -> Node:
        self.pieces += 1
        if self.pieces > MOST_PIECES:
            raise _TooMuchError(
                "the file unfolds to too many pieces; look at its anchors (&) and aliases (*)"
            )
        if depth > DEEPEST:
            raise _TooMuchError(_TOO_DEEP)
        tag = str(node.tag or "").removeprefix("tag:yaml.org,2002:")
        if tag not in PLAIN_TAGS:
            self.problems.append(Problem(self._span(node), f"a tag (`!`) says nothing here: {tag[:60]}"))
        if isinstance(node, ScalarNode):
            return Leaf(str(node.value).strip(), self._span(node))
        if isinstance(node, SequenceNode):
            return Items(tuple(self._grow(item, depth + 1) for item in node.value), self._span(node))
        if isinstance(node, MappingNode):
            return self._grow_branch(node, depth)
        raise TypeError(node)  # YAML has no other kind

    def _grow_branch(self, node: MappingNode, depth: int) -> Branch:
        entries: dict[str, Node] = {}
        keys: dict[str, Span] = {}
        for key, value in node.value:
            span = self._span(key)
            if not isinstance(key, ScalarNode):
                self.problems.append(Problem(span, "a key should be one word or a few, not a list"))
            elif key.value == "<<":
                message = "a merge key (`<<`) is not read here"
                self.problems.append(Problem(span, message, "<<", "write `like: another_thing`"))
            elif key.value in entries:
                message = f"`{key.value}` stands here a second time"
                self.problems.append(Problem(span, message, key.value, also=keys[key.value]))
            else:
                keys[key.value] = span
                entries[key.value] = self._grow_value(value, span, depth + 1)
        return Branch(entries, keys, self._span(node))

    def _grow_value(self, value: YamlNode, key: Span, depth: int) -> Node:
        """Grow what stands behind a key; where nothing does, the key is the place to look at."""
        grown = self._grow(value, depth)
        return replace(grown, span=key) if isinstance(grown, Leaf) and not grown.text else grown


class _TooMuchError(Exception):
    """The file unfolds to more than a builder's file can hold."""
