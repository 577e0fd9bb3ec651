"""The folder that the app was opened on: its files, and new ones begun in it. Nothing is overwritten."""

from __future__ import annotations

import itertools
import re
from typing import TYPE_CHECKING

from firmpedal.project.examples import examples
from firmpedal.project.names import sign_in_words
from firmpedal.web.desk import Document

if TYPE_CHECKING:
    from pathlib import Path

ENDINGS = (".yaml", ".yml")
_FIRST, _NOT_IN_NAME = re.compile(r"[^\W_]"), re.compile(r"[^\w .-]")
SUCH_AS = "such as Blue Heron"


class NameRefusedError(ValueError):
    """A file cannot be begun under this name; the words say why."""


class Shelf:
    """A folder with the documents that lie open from it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._open: dict[str, Document] = {}

    def names(self) -> list[str]:
        """The files that may be aircraft, by name; what begins with a dot is not looked at."""
        return sorted(
            item.name
            for item in self.folder.iterdir()
            if item.suffix.lower() in ENDINGS and not item.name.startswith(".") and item.is_file()
        )

    def document(self, name: str) -> Document | None:
        """The document of that name in the folder itself, opened once; none where there is no such file."""
        if name in self._open:
            return self._open[name]
        if name not in self.names():
            return None
        return self._open.setdefault(name, Document(self.folder / name))

    def look(self) -> None:
        """See what other programs did to the documents that lie open."""
        for document in tuple(self._open.values()):
            document.look()

    def begin(self, name: str, text: str) -> str:
        """Write a new file; the result is its name.

        Raises:
            NameRefusedError: The name is taken, or cannot be one.
        """
        name = file_name(name)
        try:
            with (self.folder / name).open("x", encoding="utf-8") as file:
                file.write(text)
        except FileExistsError:
            raise NameRefusedError(
                f"{name} is there already, and nothing was written. Choose another name."
            ) from None
        except OSError as trouble:
            raise NameRefusedError(f"{name} cannot be written: {trouble.strerror}") from trouble
        return name

    def begin_example(self, example: str) -> str:
        """Copy an example under a name that is free; the result is that name.

        Raises:
            NameRefusedError: There is no such example, or the folder cannot be written to.
        """
        source = examples().get(example)
        if source is None:
            raise NameRefusedError(f"There is no example {example}.")
        free = next(name for name in _numbered(example) if not (self.folder / name).exists())
        return self.begin(free, source.read_text(encoding="utf-8"))


def file_name(name: str) -> str:
    """The name of a file for what a builder calls it.

    Raises:
        NameRefusedError: It cannot be one.
    """
    name = " ".join(name.split())
    if not name:
        raise NameRefusedError(f"Give it a name of letters and figures, {SUCH_AS}.")
    if wrong := _NOT_IN_NAME.search(name):
        raise NameRefusedError(
            f"A name cannot have {sign_in_words(wrong[0])} in it. "
            f"Give it one of letters and figures, {SUCH_AS}."
        )
    if not _FIRST.match(name):
        raise NameRefusedError(
            f"A name cannot begin with {sign_in_words(name[0])}. "
            f"Give it one of letters and figures, {SUCH_AS}."
        )
    return name if name.lower().endswith(ENDINGS) else name + ENDINGS[0]


def _numbered(name: str) -> itertools.chain[str]:
    later = (f"{name}_{number}{ENDINGS[0]}" for number in itertools.count(2))
    return itertools.chain((f"{name}{ENDINGS[0]}",), later)
