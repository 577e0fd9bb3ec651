"""From a path to text, refusing what cannot be a builder's file before looking into it."""

from __future__ import annotations

import codecs
import difflib
import stat
from typing import TYPE_CHECKING

from firmpedal.finding import Problem, Span
from firmpedal.project.names import BEGIN_ANEW

if TYPE_CHECKING:
    from pathlib import Path

LARGEST_FILE = 250_000  # bytes; the largest sensible aircraft is ten times smaller

NAME_IT = "name the builder's file, a plain text such as a.yaml"

_SAVE = "save it again as plain text in UTF-8"
_BINARY = bytes(set(range(32)) - {9, 10, 12, 13})


def load_file(path: Path) -> tuple[str, list[Problem]]:
    """Read a file's text; the problem says why there is none."""
    data, problems = load_bytes(path)
    return ("", problems) if problems else decoded(data, str(path))


def load_bytes(path: Path) -> tuple[bytes, list[Problem]]:
    """Read a file as it is; the problem says why there is nothing."""
    start = Span(str(path), 1, 1)
    try:
        data, refusal = _read(path)
    except FileNotFoundError:
        return b"", [Problem(start, "there is no such file", suggestion=_similar_file(path))]
    except PermissionError:
        message, advice = "this file may not be read", "give yourself the right to read it"
        return b"", [Problem(start, message, suggestion=advice)]
    except OSError as error:
        return b"", [
            Problem(start, f"this file cannot be read: {error.strerror or error}", suggestion=NAME_IT)
        ]
    except ValueError:  # a path with a null character in it
        return b"", [Problem(start, "this is not the name of a file", suggestion=NAME_IT)]
    return data, [Problem(start, refusal, suggestion=NAME_IT)] if refusal else []


def _read(path: Path) -> tuple[bytes, str]:
    """Give the bytes, or why they are not read: a pipe would never end, a film would fill the memory."""
    found = path.stat()
    if stat.S_ISDIR(found.st_mode):
        return b"", "this is a folder, not a file"
    if not stat.S_ISREG(found.st_mode):
        return b"", "this is not an ordinary file"
    if found.st_size > LARGEST_FILE:
        return b"", too_large(found.st_size)
    with path.open("rb") as file:
        data = file.read(LARGEST_FILE + 1)
    return (data, "") if len(data) <= LARGEST_FILE else (b"", too_large(len(data)))


def too_large(size: int) -> str:
    return f"this file has {size:,} bytes; a builder's file has a few thousand"


def decoded(data: bytes, file: str) -> tuple[str, list[Problem]]:
    """Give the text; where a letter is not UTF-8 the rest is given all the same, so that it can be shown."""
    start = Span(file, 1, 1)
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return "", [Problem(start, "this file is written in UTF-16", suggestion=_SAVE)]
    strange = len(data) - len(data.translate(None, _BINARY))
    if strange and (b"\0" in data or strange * 50 > len(data)):
        return "", [Problem(start, "this is not a text file", suggestion=BEGIN_ANEW)]
    try:
        return data.decode("utf-8-sig"), []
    except UnicodeDecodeError as error:
        text, before = data.decode("utf-8-sig", "replace"), data[: error.start].decode("utf-8", "replace")
    message = "a letter here is not written in UTF-8"
    return text, [Problem(place(before, start.file), message, suggestion=_SAVE)]


def place(before: str, file: str) -> Span:
    """The place in a file that comes after a text."""
    lines = before.replace("\r\n", "\n").replace("\r", "\n")
    return Span(file, lines.count("\n") + 1, len(lines.rpartition("\n")[2]) + 1)


def _similar_file(path: Path) -> str:
    try:
        names = [item.name for item in path.parent.glob("*.y*ml")] if path.parent.is_dir() else []
    except OSError:
        names = []
    close = difflib.get_close_matches(path.name, names, 1)
    return f"did you mean {close[0]}?" if close else BEGIN_ANEW
