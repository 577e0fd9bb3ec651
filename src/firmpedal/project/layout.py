"""From text to YAML's nodes; its complaints become sentences a builder can act on."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import TYPE_CHECKING

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError, YAMLError
from ruamel.yaml.reader import Reader, ReaderError

from firmpedal.finding import Problem, Span
from firmpedal.project.file import LARGEST_FILE, NAME_IT, place, too_large
from firmpedal.project.names import BEGIN_ANEW, quoted
from firmpedal.project.out_of_line import out_of_line
from firmpedal.project.pieces import composed
from firmpedal.project.yaml_meanings import BRACKETS, MEANINGS, OUT_OF_LINE

if TYPE_CHECKING:
    from ruamel.yaml.nodes import Node as YamlNode

DEEPEST = 40
LOOK_BACK = 20  # lines above the one YAML stumbles on, in which a key without its colon is looked for

_INDENTED_TAB = re.compile(r"^( *\t[ \t]*)(?=[^\s#])", re.MULTILINE)
_BLANKS = str.maketrans("\t\N{NO-BREAK SPACE}", "  ")  # one for one, so that columns stay
_SQUEEZED = re.compile(r"^[ ]*(?:- )?(?P<key>[A-Za-z][\w ]{0,40}):(?P<rest>[^\s:#][^#]{0,40}?)\s*(?:#.*)?$")
_BARE = re.compile(r"^(?P<in> *)(?P<key>[A-Za-z][\w ]{0,40}?)\s*(?:#.*)?$")
_UNDER = re.compile(r"^(?P<in> *)(?:- |[A-Za-z][\w ]{0,40}:(?: |$))")
_NO_LINE = re.compile(r"^\s*(?:#.*)?$")


def compose(text: str, file: str, *, by_line: bool = False) -> tuple[YamlNode | None, list[Problem]]:
    """Give YAML's nodes of a text, with the problems that keep it from being laid out.

    Args:
        text: The builder's text.
        file: Its name.
        by_line: Nobody asks how many letters come before a place; see `pieces.composed`.
    """
    start = Span(file, 1, 1)
    if len(text) > LARGEST_FILE:
        return None, [Problem(start, too_large(len(text)), suggestion=NAME_IT)]
    problems = _unseen(text, file) or _tabs(text, file)
    if problems:
        return None, problems
    plain = text.translate(_BLANKS)
    try:
        root = composed(plain, DEEPEST, _read_whole, by_line=by_line) or _read_whole(plain, DEEPEST)
    except MarkedYAMLError as error:
        return None, [_explained(error, text, file)]
    except RecursionError:
        return None, [Problem(start, "lists or keys are nested too deeply", suggestion=BRACKETS)]
    except (YAMLError, ValueError) as error:
        said = (str(error).splitlines() or [""])[0]
        return None, [Problem(start, "the text cannot be read", suggestion=f"YAML says: {said}")]
    return root, [] if root is not None else [
        Problem(start, "nothing is written in this file", suggestion=BEGIN_ANEW)
    ]


def _read_whole(text: str, levels: int) -> YamlNode | None:
    yaml = YAML(typ="safe", pure=True)
    yaml.max_depth = levels
    yaml.composer.warn_double_anchors = False
    root: YamlNode | None = yaml.compose(text)
    return root


def _unseen(text: str, file: str) -> list[Problem]:
    """Look for characters that no text has, which YAML would refuse without saying where."""
    found = Reader.NON_PRINTABLE.search(text)
    if not found:
        return []
    message = "a character here cannot be seen and does not belong in a text"
    return [Problem(place(text[: found.start()], file), message, suggestion="delete it and write on")]


def _tabs(text: str, file: str) -> list[Problem]:
    message = "this line begins with a tab, and tabs are of different width everywhere"
    return [
        Problem(place(text[: found.start() + found[0].index("\t")], file), message, suggestion="use spaces")
        for found in list(_INDENTED_TAB.finditer(text))[:10]
    ]


def _explained(error: MarkedYAMLError, text: str, file: str) -> Problem:
    if isinstance(error, ReaderError):
        return Problem(Span(file, 1, 1), "the text cannot be read")
    said = f"{error.context or ''}; {error.problem or ''}"
    meaning, advice = next(
        ((meaning, advice) for words, meaning, advice in MEANINGS if words in said),
        ("the text is not laid out as it should be", f"YAML says: {error.problem or error.context}"),
    )
    found = _squeezed(text, error, file) or _no_colon(text, error, file) or _crooked(said, text, error, file)
    if found is not None:
        return found
    opened = "never closed" in meaning and error.context_mark is not None
    mark = error.context_mark if opened else error.problem_mark or error.context_mark
    if mark is None:
        return Problem(Span(file, 1, 1), meaning, suggestion=advice)
    span = Span(file, mark.line + 1, mark.column + 1)
    also = None if "closes nothing" in meaning else _opened(error, span, file)
    rows = text.splitlines()
    row = rows[mark.line] if mark.line < len(rows) else ""
    return Problem(
        span, meaning, row[mark.column : mark.column + 1].strip(), advice, also, "not closed" in meaning
    )


def _crooked(said: str, text: str, error: MarkedYAMLError, file: str) -> Problem | None:
    """Look whether a line begins where none can, if YAML stumbles over one that should have been a key."""
    mark = error.problem_mark
    if mark is None or not any(words in said for words in OUT_OF_LINE):
        return None
    return out_of_line(_plain(text), mark.line + 1, file)


def _plain(text: str) -> str:
    """A text with blanks and newlines of one kind; every letter keeps its line and column."""
    return text.translate(_BLANKS).replace("\r\n", "\n").replace("\r", "\n")


def _squeezed(text: str, error: MarkedYAMLError, file: str) -> Problem | None:
    """Look for `bore:5/8` on the line that YAML stumbles over, or on those before it that it ran together."""
    mark = error.problem_mark or error.context_mark
    if mark is None:
        return None
    rows = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    for number in range(min(mark.line, len(rows) - 1), max(-1, mark.line - 3), -1):
        if found := _SQUEEZED.match(rows[number]):
            span = Span(file, number + 1, found.start("key") + 1)
            message = f"a space is missing after the `:` of {quoted(found['key'] + ':' + found['rest'])}"
            return Problem(span, message, found["key"], f"write `{found['key']}: {found['rest']}`")
    return None


def _no_colon(text: str, error: MarkedYAMLError, file: str) -> Problem | None:
    """Look for a key that lost its `:`, over the line that YAML stumbles on: keys stand deeper under it."""
    mark = error.problem_mark or error.context_mark
    if mark is None:
        return None
    rows = _plain(text).split("\n")
    lines = [n for n, row in enumerate(rows) if not _NO_LINE.match(row)]
    pairs = [(over, below) for over, below in pairwise(lines) if mark.line - LOOK_BACK <= over <= mark.line]
    for over, below in reversed(pairs):
        bare, under = _BARE.match(rows[over]), _UNDER.match(rows[below])
        if bare and under and len(under["in"]) > len(bare["in"]):
            key = bare["key"]
            message = f"{quoted(key)} has no `:` after it, and what stands under it belongs to it"
            return Problem(Span(file, over + 1, bare.start("key") + 1), message, key, f"write `{key}:`")
    return None


def _opened(error: MarkedYAMLError, span: Span, file: str) -> Span | None:
    """The place where the list or the keys began that do not end as they should."""
    mark = error.context_mark
    if mark is None or "another document" in (error.problem or ""):
        return None
    also = Span(file, mark.line + 1, mark.column + 1)
    return also if also != span else None
