"""`firmpedal export`: the lines for other programs."""

from __future__ import annotations

import difflib
from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.targets import no_folder
from firmpedal.cli.terminal import UNUSABLE, console, evaluated, print_unwritable, print_wrapped

if TYPE_CHECKING:
    from pathlib import Path

SIGNS = ("plane", "tube")


def run(file: Path, to: str, out: Path, option: str | None, rotation: str) -> int:
    """Write the lines of a file in another format; the result is the exit code."""
    from firmpedal.export.formats import FORMATS  # noqa: PLC0415  loads slowly
    from firmpedal.export.step import MissingCadError  # noqa: PLC0415

    error = console(error=True)
    if _refused(to, rotation) or no_folder(out) or (evaluation := evaluated(file, option)) is None:
        return UNUSABLE
    try:
        out.mkdir(exist_ok=True)
        made = FORMATS[to](evaluation, out, rotation)
    except MissingCadError as missing:
        error.print(Text(str(missing)))
        return UNUSABLE
    except OSError as trouble:
        print_unwritable(out, trouble)
        return UNUSABLE
    for path in made.paths:
        console().print(Text(f"Wrote {path}"), soft_wrap=True)
    for words in made.left_out:
        print_wrapped(error, "Left out: ", words)
    if not made.paths:
        error.print(Text("Nothing was written: no line that this format is for is known well enough."))
    return 0 if made.paths else 1


def _refused(to: str, rotation: str) -> bool:
    """Whether a word is none that is known here; says which are."""
    from firmpedal.export.formats import FORMATS, words  # noqa: PLC0415  loads slowly

    error = console(error=True)
    if to not in FORMATS:
        close = difflib.get_close_matches(to, FORMATS, 1)
        hint = f" Did you mean {close[0]}?" if close else ""
        error.print(Text(f"There is no format `{to}`.{hint}"))
        for name in FORMATS:
            error.print(Text(f"   {name:<5} {words(name)}"))
        return True
    if rotation not in SIGNS:
        error.print(Text("--rotation is `plane` (the plane of bend turns) or `tube` (the tube turns)."))
        return True
    return False
