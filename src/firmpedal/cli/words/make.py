"""Words for shop and bench: what to buy, how each line is made, the work in order, the papers."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated

import typer

from firmpedal.cli.words.arguments import AsJson, FileArgument, OptionName


def parts(
    file: FileArgument,
    option: OptionName = None,
    table: Annotated[
        Path | None, typer.Option("--csv", help="Write the list for a spreadsheet.", metavar="OUT.csv")
    ] = None,
    prices: Annotated[
        Path | None, typer.Option("--prices", help="Your own price book as CSV.", metavar="PRICES.csv")
    ] = None,
    as_json: AsJson = False,
) -> None:
    """List what to buy, spares included, each with where it goes; then what is used up, and the tools."""
    from firmpedal.cli.parts import Wanted, run  # noqa: PLC0415

    sys.exit(run(file, option, Wanted(as_json, table, prices)))


def lines(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Show how each line is cut and bent, or what hose to order."""
    from firmpedal.cli.lines import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))


def retrofit(
    file: FileArgument,
    to: Annotated[str, typer.Option("--to", help="The option to go to, or `as written`.")],
    start: Annotated[
        str | None, typer.Option("--from", help="The option to start from; without it, the file as written.")
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Plan the way from one option to another: what stays, what comes off, what to buy, the work in order."""
    from firmpedal.cli.retrofit import run  # noqa: PLC0415

    sys.exit(run(file, start, to, as_json=as_json))


def packet(
    file: FileArgument,
    out: Annotated[Path, typer.Option("-o", "--out", help="The PDF to write.", metavar="OUT.pdf")],
    option: OptionName = None,
) -> None:
    """Write the printed packet: verdict, findings, parts, a card for each line, torques, sums, sources."""
    from firmpedal.cli.packet import run  # noqa: PLC0415

    sys.exit(run(file, out, option))


def hangar(
    file: FileArgument,
    out: Annotated[Path, typer.Option("-o", "--out", help="The page to write.", metavar="OUT.html")],
    option: OptionName = None,
) -> None:
    """Write one page for the phone: a card for each line, flares, torques, joints to tick. Works offline.

    It is a copy: it does not follow changes of the file.
    """
    from firmpedal.cli.hangar import run  # noqa: PLC0415

    sys.exit(run(file, out, option))


def cards(
    file: FileArgument,
    out: Annotated[Path, typer.Option("-o", "--out", help="The PDF to write.", metavar="OUT.pdf")],
    option: OptionName = None,
    line: Annotated[
        list[str] | None, typer.Option("--line", help="This line; may be given again. Without it, all.")
    ] = None,
    only_lines: Annotated[
        bool, typer.Option("--only-lines", help="Leave out the pages on torque and flares.")
    ] = False,
) -> None:
    """Write the cards of the lines, and for tube the pages on torque and flares.

    They are those of the packet. To read the lines on the screen: firmpedal lines.
    """
    from firmpedal.cli.cards import run  # noqa: PLC0415

    sys.exit(run(file, out, option, line or [], only_lines=only_lines))


def fullsize(
    file: FileArgument,
    out: Annotated[Path, typer.Option("-o", "--out", help="The PDF to write.", metavar="OUT.pdf")],
    option: OptionName = None,
    paper: Annotated[str, typer.Option("--paper", help="A4 or letter.")] = "A4",
    line: Annotated[
        str | None, typer.Option("--line", help="One tube only; without it all of them, and the holes.")
    ] = None,
) -> None:
    """Write templates to print at full size: a strip to mark each tube on, its bends, holes in panels."""
    from firmpedal.cli.fullsize import run  # noqa: PLC0415

    sys.exit(run(file, out, option, paper, line))


def cutplan(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Plan the cuts: which piece comes from which stick with the least tube bought, and what is left over."""
    from firmpedal.cli.cutplan import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))
