"""Writing a changed text back to the builder's file, and to no other file than the one that was read."""

from __future__ import annotations

import codecs
import os
import shutil
import tempfile
from pathlib import Path


class ChangedMeanwhileError(Exception):
    """The file is no longer the one that was read; it was left alone."""


def save(path: Path, before: str, after: str) -> None:
    """Put a text in the place of another one, whole or not at all; its rights and its first mark stay.

    Args:
        path: The file; where it is a link, what it leads to is written.
        before: The text that was read from it.
        after: The text to be there.

    Raises:
        ChangedMeanwhileError: The file says something else by now.
        OSError: It cannot be read or written.
    """
    file = path.resolve()
    data = file.read_bytes()
    mark = codecs.BOM_UTF8 if data.startswith(codecs.BOM_UTF8) else b""
    if data != mark + before.encode():
        raise ChangedMeanwhileError(str(path))
    handle, name = tempfile.mkstemp(prefix=f".{file.name}.", dir=file.parent)
    new = Path(name)
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(mark + after.encode())
        shutil.copymode(file, new)
        new.replace(file)
    except BaseException:
        new.unlink(missing_ok=True)
        raise
