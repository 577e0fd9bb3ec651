"""Words to begin with: a look, a file of your own, the app, what to measure."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated, Any

import typer

from firmpedal.cli.words.arguments import FileArgument, OptionName


def _choice(name: str, words: str) -> Any:
    """An option of `new`; what it may say is checked there, all of it at once."""
    return typer.Option(f"--{name}", help=words, show_default=False)


def demo(
    out: Annotated[Path, typer.Option("--out", help="The folder for the file and the packet.")] = Path("out"),
) -> None:
    """Show the whole job on an invented aircraft: what is wrong, what to buy, how to make each line."""
    from firmpedal.cli.demo import run  # noqa: PLC0415

    sys.exit(run(out))


def open_(
    place: Annotated[
        Path, typer.Argument(help="A folder, or an aircraft's file in it.", metavar="[FILE or FOLDER]")
    ] = Path(),
    port: Annotated[
        int | None,
        typer.Option("--port", help="Where it listens; without it, a free port.", min=1, max=65535),
    ] = None,
    no_browser: Annotated[
        bool, typer.Option("--no-browser", help="Print the address and open no browser.")
    ] = False,
    lan: Annotated[
        bool, typer.Option("--lan", help="Let a phone of the local network in, with a code, to read.")
    ] = False,
) -> None:
    """Open the app in your browser: the whole job page by page, on this machine alone.

    Every change is saved to your file at once, and can be undone. Stop it with Ctrl+C.
    """
    from firmpedal.cli.open import run  # noqa: PLC0415

    sys.exit(run(place, port, browser=not no_browser, lan=lan))


def new(
    file: FileArgument,
    gear: Annotated[str | None, _choice("gear", "tailwheel or nosewheel.")] = None,
    leg: Annotated[str | None, _choice("leg", "leaf, rod, link or bow.")] = None,
    brakes: Annotated[str | None, _choice("brakes", "toe, heel or hand.")] = None,
    seats: Annotated[str | None, _choice("seats", "1, off-centre, tandem or side-by-side.")] = None,
    valve: Annotated[str | None, _choice("valve", "yes or no: a parking valve.")] = None,
    length: Annotated[str | None, _choice("length", "in or mm; left out, in.")] = None,
    like: Annotated[str | None, _choice("like", "Or the example to copy, such as brindlewick.")] = None,
) -> None:
    """Start a file of your own: every measurement of your layout, still unknown. Nothing is overwritten.

    Give all of gear, leg, brakes, seats and valve; what is missing is explained. Or copy an example.
    """
    from firmpedal.cli.new import run  # noqa: PLC0415

    layout = {"gear": gear, "leg": leg, "brakes": brakes, "seats": seats, "valve": valve, "length": length}
    sys.exit(run(file, like, layout))


def form(
    file: FileArgument,
    out: Annotated[
        Path | None,
        typer.Option("-o", "--out", help="The PDF to write; without it, print here.", metavar="OUT.pdf"),
    ] = None,
    option: OptionName = None,
) -> None:
    """List every measurement still to take, in the order of a walk round the aircraft, each with a box."""
    from firmpedal.cli.form import run  # noqa: PLC0415

    sys.exit(run(file, out, option))
