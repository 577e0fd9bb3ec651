"""The command line: which words there are, in the order in which help lists them.

Each is declared in `words/`; everything heavy is imported by the file of its own that it calls.
"""

from __future__ import annotations

import sys
from typing import Annotated

import typer

from firmpedal.cli.words import answer, begin, exchange, make

COMMANDS = (
    ("demo", begin.demo, "The whole job on an invented aircraft."),
    ("open", begin.open_, "The app in your browser."),
    ("new", begin.new, "Start your own file, from a layout or an example."),
    ("form", begin.form, "A form to print: what is still to be measured."),
    ("check", answer.check, "Is it sound? What is wrong, and what to measure."),
    ("parts", make.parts, "What to buy, and where each part goes."),
    ("lines", make.lines, "How each line is cut and bent."),
    ("stop", answer.stop, "Will it stop and hold? With which foot?"),
    ("heat", answer.heat, "How warm do the brakes get? What stands it?"),
    ("pedal", answer.pedal, "How far each pedal goes under a foot, and why."),
    ("explain", answer.explain, "The sum behind any figure."),
    ("compare", answer.compare, "Options side by side, and what to do."),
    ("retrofit", make.retrofit, "The work from one option to another."),
    ("bleed", answer.bleed, "Fill and bleed: which way, how hard, where air stays."),
    ("identify", exchange.identify, "What is this port, fitting or tube?"),
    ("reconcile", exchange.reconcile, "Your own list of parts against the design."),
    ("packet", make.packet, "Write the printed packet, a PDF."),
    ("hangar", make.hangar, "One page for the phone: cards and ticks."),
    ("cards", make.cards, "A card for each line, to print for the bench."),
    ("fullsize", make.fullsize, "Templates at full size: marks, bends, holes."),
    ("cutplan", make.cutplan, "Which tube to cut from which stick."),
    ("export", exchange.export, "The lines for other programs: STEP, DXF, CSV, SVG."),
    ("import", exchange.import_, "Points or bends from a table into your file."),
)

app = typer.Typer(
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="From one plain file: are the brakes sound, what to buy, and how to make each line.",
    epilog="Start with `firmpedal demo`, then `firmpedal new my_aircraft.yaml --like brindlewick`.",
)


def _print_version(asked: bool) -> None:
    from importlib.metadata import version  # noqa: PLC0415

    if asked:
        typer.echo(f"firmpedal {version('firmpedal')}")
        raise typer.Exit


@app.callback()
def _whole(
    version: Annotated[
        bool,
        typer.Option("--version", help="Say which version this is.", callback=_print_version, is_eager=True),
    ] = False,
) -> None:
    pass


for _name, _command, _short in COMMANDS:
    app.command(_name, short_help=_short)(_command)


def main() -> None:
    """Run the command line; whatever goes wrong inside is said in a sentence, not as a traceback."""
    try:
        app()
    except BrokenPipeError:
        sys.exit(0)
    except Exception as error:  # noqa: BLE001  the last resort: a builder never sees a traceback
        sys.stderr.write(f"firmpedal: something went wrong inside ({type(error).__name__}: {error}).\n")
        sys.stderr.write("This is our mistake, not yours. Please send us your file.\n")
        sys.exit(3)
