"""Arguments that several commands have."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

FileArgument = Annotated[Path, typer.Argument(help="The aircraft's file.", metavar="FILE")]
OptionName = Annotated[
    str | None, typer.Option("--option", help="A named option in the file; without it, the file as written.")
]
AsJson = Annotated[bool, typer.Option("--json", help="Print one JSON object and nothing else.")]
