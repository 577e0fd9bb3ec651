"""What a command may write over: never what it reads, nor anything that is not of its own kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.cli.terminal import console

if TYPE_CHECKING:
    from pathlib import Path

AIRCRAFT_ENDINGS = (".yaml", ".yml")


def refused(out: Path, ending: str, *read: Path) -> bool:
    """Whether nothing may be written there; says why.

    Args:
        out: The file to write.
        ending: How a file of its kind ends: `.pdf`.
        read: The files of the builder that the command reads.
    """
    words = _trouble(out, ending, read)
    if words:
        other = out.with_suffix(ending).name
        _say(
            f"{out} {words}. Nothing was written.",
            f"a name of its own{'' if other == out.name else f', such as {other}'}",
        )
    return bool(words) or no_folder(out)


def no_folder(out: Path) -> bool:
    """Whether the folder that a file or folder is to go into is not there; says so."""
    folder = out.parent
    if folder.is_dir():
        return False
    words = "is no folder" if folder.exists() else "is not there"
    _say(
        f"{out} cannot be written: the folder {folder} {words}.",
        "make the folder first, or look how its name is spelled",
    )
    return True


def _trouble(out: Path, ending: str, read: tuple[Path, ...]) -> str:
    if any(_same(out, each) for each in read):
        return "is what this command reads, and would be lost"
    if out.suffix.lower() in AIRCRAFT_ENDINGS:
        return f"ends like an aircraft's file, and a {ending} file is to be written"
    if out.is_file() and out.suffix.lower() != ending:
        return f"is there already and does not end in {ending}, so it may be something else of yours"
    return ""


def _same(one: Path, other: Path) -> bool:
    """Whether two names are of one file, whatever link or way round through folders leads to it."""
    try:
        return one.samefile(other)
    except OSError:  # one of them is not there
        return False


def _say(words: str, advice: str) -> None:
    error = console(error=True)
    error.print(Text(words), soft_wrap=True)
    error.print(Text(f"   try: {advice}"), soft_wrap=True)
