"""`firmpedal new`: start a file of one's own from an example."""

from __future__ import annotations

import difflib
from pathlib import Path

from rich.text import Text

import firmpedal
from firmpedal.cli.terminal import UNUSABLE, console


def examples() -> dict[str, Path]:
    """The examples by name, from the installed package or else from a clone."""
    package = Path(firmpedal.__file__).parent
    folders = (package / "examples", package.parents[1] / "examples")
    folder = next((item for item in folders if item.is_dir()), folders[0])
    return {path.stem: path for path in sorted(folder.glob("*.yaml"))}


def run(file: Path, like: str) -> int:
    """Copy an example to a new file; the result is the exit code."""
    error = console(error=True)
    known = examples()
    if like not in known:
        close = difflib.get_close_matches(like, known, 1)
        hint = f"did you mean {close[0]}?" if close else f"the examples are: {', '.join(known)}"
        error.print(Text(f"There is no example `{like}`; {hint}"))
        return UNUSABLE
    text = known[like].read_text(encoding="utf-8")
    try:
        with file.open("x", encoding="utf-8") as new_file:
            new_file.write(text)
    except FileExistsError:
        error.print(Text(f"{file} is there already, and nothing was written. Choose another name."))
        return UNUSABLE
    except OSError as trouble:
        error.print(Text(f"{file} cannot be written: {trouble.strerror}"))
        return UNUSABLE
    out = console()
    out.print(Text(f"Wrote {file}. Put in your own name and measurements, then:"))
    out.print(Text(f"   firmpedal check {file}"))
    return 0
