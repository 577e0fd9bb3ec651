"""`firmpedal new`: start a file of one's own, from a layout or from an example."""

from __future__ import annotations

import difflib
from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.terminal import UNUSABLE, console
from firmpedal.project.examples import examples
from firmpedal.project.layouts import LayoutError, chosen, layout_text

if TYPE_CHECKING:
    from pathlib import Path


def run(file: Path, like: str | None, layout: dict[str, str | None]) -> int:
    """Write a new file from an example or for a layout; the result is the exit code."""
    given = [f"--{key}" for key, word in layout.items() if word is not None]
    if like is not None and given:
        return _refused(f"An example has its own layout: take either --like or {', '.join(given)}.")
    try:
        text = _example(like) if like is not None else layout_text(chosen(**layout), file.name)
    except LayoutError as refusal:
        return _refused(str(refusal))
    return _written(file, text, measured=like is not None)


def _example(like: str) -> str:
    known = examples()
    if like not in known:
        close = difflib.get_close_matches(like, known, 1)
        hint = f"did you mean {close[0]}?" if close else f"the examples are: {', '.join(known)}"
        raise LayoutError(f"There is no example `{like}`; {hint}")
    return known[like].read_text(encoding="utf-8")


def _refused(words: str) -> int:
    console(error=True).print(Text(words))
    return UNUSABLE


def _written(file: Path, text: str, *, measured: bool) -> int:
    try:
        with file.open("x", encoding="utf-8") as new_file:
            new_file.write(text)
    except FileExistsError:
        return _refused(f"{file} is there already, and nothing was written. Choose another name.")
    except OSError as trouble:
        return _refused(f"{file} cannot be written: {trouble.strerror}")
    out = console()
    if measured:
        out.print(Text(f"Wrote {file}. Put in your own name and measurements, then:"))
    else:
        first = f"Wrote {file}. Every measurement in it is still unknown, and each thread only supposed."
        out.print(Text(f"{first} Print them to take along:"))
        out.print(Text(f"   firmpedal form {file} --out form.pdf"), soft_wrap=True)
        out.print(Text("Write each figure into the file in place of `unknown`, as many as you have, then:"))
    out.print(Text(f"   firmpedal check {file}"), soft_wrap=True)
    return 0
