"""The builder's file on the disk: read with what a text does not tell, written whole or not at all."""

from __future__ import annotations

import contextlib
import hashlib
import os
import re
import tempfile
from collections import Counter
from dataclasses import dataclass
from difflib import SequenceMatcher
from pathlib import Path
from typing import TYPE_CHECKING

from firmpedal.project.file import decoded, load_bytes

if TYPE_CHECKING:
    from firmpedal.finding import Problem

_BOM = b"\xef\xbb\xbf"
_END = re.compile(r"\r\n|\r|\n")


@dataclass(frozen=True)
class OnDisk:
    """A file as it was read.

    `text` has plain newlines; `ends` keeps how each line ended, so that untouched lines stay untouched.
    `fingerprint` is of the bytes, empty where there is no file that can be read; `gone` says that there is
    none at all.
    """

    text: str
    ends: tuple[str, ...]
    bom: bool
    fingerprint: str
    problems: tuple[Problem, ...]
    gone: bool = False

    def same_as(self, other: OnDisk) -> bool:
        """Whether the file is as it was: the same bytes, or out of reach for the same reason."""
        return (self.fingerprint, self.gone) == (other.fingerprint, other.gone)


class ChangedMeanwhileError(Exception):
    """The file is not the one that was read; `theirs` is what is there now. Nothing was written."""

    def __init__(self, theirs: OnDisk) -> None:
        super().__init__("the file was changed by another program")
        self.theirs = theirs


def read(path: Path) -> OnDisk:
    """Read a file; its problems say why there is no text that could be changed."""
    data, problems = load_bytes(path)
    if problems:
        gone = not path.exists()
        return OnDisk("", (), bom=False, fingerprint="", problems=tuple(problems), gone=gone)
    text, problems = decoded(data, path.name)
    return OnDisk(
        _END.sub("\n", text),
        tuple(_END.findall(text)),
        data.startswith(_BOM),
        _print_of(data),
        tuple(problems),
    )


def as_read(path: Path, text: str) -> OnDisk:
    """Read a file again from which a text was taken before, newlines and all.

    Raises:
        ChangedMeanwhileError: The file says something else by now.
    """
    now = read(path)
    if now.problems or _joined(now.text, now.ends) != text:
        raise ChangedMeanwhileError(now)
    return now


def save(path: Path, text: str, known: OnDisk) -> OnDisk:
    """Write a text in the place of what was read, all of it or nothing, with its rights and newlines.

    Lines that were there before end as they did, whatever newlines the text has; others as most of them.

    Another program can still write between the last look and the exchange of the files; that is a few
    microseconds, and there is no way to close them that every program would respect.

    Raises:
        ChangedMeanwhileError: The file is no longer what was read.
        OSError: The file cannot be written.
    """
    path, text = path.resolve(), _END.sub("\n", text)  # a link stays a link
    ends = _ends(known, text)
    data = (_BOM if known.bom else b"") + _joined(text, ends).encode("utf-8")
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", suffix=".part", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as part:
            part.write(data)
            part.flush()
            os.fsync(part.fileno())
        _same_rights(path, Path(name))
        _same_as(read(path), known)
        Path(name).replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            Path(name).unlink()
        raise
    _settle(path.parent)
    return OnDisk(text, ends, known.bom, _print_of(data), ())


def _same_as(now: OnDisk, known: OnDisk) -> None:
    if not now.same_as(known):
        raise ChangedMeanwhileError(now)


def _print_of(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def _same_rights(path: Path, part: Path) -> None:
    """Give the new file the rights of the old one; a file that is made anew gets the usual ones."""
    if path.exists():
        part.chmod(path.stat().st_mode & 0o7777)
    else:
        mask = os.umask(0)
        os.umask(mask)
        part.chmod(0o666 & ~mask)


def _settle(folder: Path) -> None:
    """Make the new name last, where folders can be told so."""
    if hasattr(os, "O_DIRECTORY"):
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _ends(known: OnDisk, text: str) -> tuple[str, ...]:
    """How each line of a text ends: as before where the line was there before, else as most of them do."""
    usual = Counter(known.ends).most_common(1)[0][0] if known.ends else "\n"
    lines, before = text.split("\n"), known.text.split("\n")
    ends = [usual] * (len(lines) - 1)
    if len(set(known.ends)) > 1:
        for old, new, size in SequenceMatcher(None, before, lines, autojunk=False).get_matching_blocks():
            for step in range(size):
                if old + step < len(known.ends) and new + step < len(ends):
                    ends[new + step] = known.ends[old + step]
    return tuple(ends)


def _joined(text: str, ends: tuple[str, ...]) -> str:
    lines = text.split("\n")
    return "".join(line + end for line, end in zip(lines, (*ends, ""), strict=True))
