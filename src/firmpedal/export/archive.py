"""All files of one format in one archive, for whoever takes them away at once. Same files, same bytes."""

from __future__ import annotations

import io
import zipfile
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING

from firmpedal.export.formats import FORMATS

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation

LEFT_OUT = "left_out.txt"  # stays with the files, for whoever gets them has not seen our pages
TURNS = "plane"  # what a rotation turns in tables of bends, as the command line has it unless told otherwise


@dataclass(frozen=True, slots=True)
class Archive:
    """The archive, the names of what is in it, and in words what is not."""

    data: bytes
    names: tuple[str, ...]
    left_out: tuple[str, ...]


def archive(evaluation: Evaluation, to: str) -> Archive | None:
    """Write the lines of an evaluation in a format, packed; None where there is nothing to write.

    Args:
        evaluation: What was worked out.
        to: One of `FORMATS`.

    Raises:
        MissingCadError: The format needs a library that is not installed.
        OSError: There is no room to write in.
    """
    with TemporaryDirectory() as folder:
        made = FORMATS[to](evaluation, Path(folder), TURNS)
        files = {path.name: path.read_bytes() for path in sorted(made.paths)}
    if not files:
        return None
    names = tuple(files)
    if made.left_out:
        files[LEFT_OUT] = "".join(f"{words}\n" for words in made.left_out).encode()
    return Archive(_packed(files), names, made.left_out)


def _packed(files: dict[str, bytes]) -> bytes:
    """Pack files under the earliest time that an archive can hold, not the time of packing."""
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w") as packing:
        for name, data in files.items():
            entry = zipfile.ZipInfo(name)
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.external_attr = 0o644 << 16
            packing.writestr(entry, data)
    return held.getvalue()
