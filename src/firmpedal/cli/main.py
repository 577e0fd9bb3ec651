"""The words of the command line. Everything heavy is imported by the command that needs it."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated, Any

import typer

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


FileArgument = Annotated[Path, typer.Argument(help="The aircraft's file.", metavar="FILE")]
OptionName = Annotated[
    str | None, typer.Option("--option", help="A named option in the file; without it, the file as written.")
]
AsJson = Annotated[bool, typer.Option("--json", help="Print one JSON object and nothing else.")]


@app.command(short_help="The whole job on an invented aircraft.")
def demo(
    out: Annotated[Path, typer.Option("--out", help="The folder for the file and the packet.")] = Path("out"),
) -> None:
    """Show the whole job on an invented aircraft: what is wrong, what to buy, how to make each line."""
    from firmpedal.cli.demo import run  # noqa: PLC0415

    sys.exit(run(out))


@app.command(name="open", short_help="The app in your browser.")
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


def _choice(name: str, words: str) -> Any:
    """An option of `new`; what it may say is checked there, all of it at once."""
    return typer.Option(f"--{name}", help=words, show_default=False)


@app.command(short_help="Start your own file, from a layout or an example.")
def new(
    file: FileArgument,
    gear: Annotated[str | None, _choice("gear", "tailwheel or nosewheel.")] = None,
    leg: Annotated[str | None, _choice("leg", "leaf, rod, link or bow.")] = None,
    brakes: Annotated[str | None, _choice("brakes", "toe, heel or hand.")] = None,
    seats: Annotated[str | None, _choice("seats", "1 or 2 with brakes.")] = None,
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


@app.command(short_help="A form to print: what is still to be measured.")
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


@app.command(short_help="Is it sound? What is wrong, and what to measure.")
def check(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Say whether the brakes are sound, what is wrong, and what still has to be measured.

    Ends with 0 when sound, 1 when not sound or not shown, 2 when the file cannot be used.
    """
    from firmpedal.cli.check import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))


@app.command(short_help="What to buy, and where each part goes.")
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


@app.command(short_help="How each line is cut and bent.")
def lines(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Show how each line is cut and bent, or what hose to order."""
    from firmpedal.cli.lines import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))


@app.command(short_help="Will it stop and hold? With which foot?")
def stop(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Show what each foot gives, what a stop and a run-up take, and where tyres or nose give way.

    Ranges stay ranges. What is unknown is listed with what to measure; see the section `on the ground`.
    """
    from firmpedal.cli.stop import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))


@app.command(short_help="How warm do the brakes get? What stands it?")
def heat(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Show how warm disc, caliper, fluid and the line's end get: one stop, stops in a row, a long taxi.

    Bands are as wide as the figures are known, and a trial with temperature labels narrows them.
    """
    from firmpedal.cli.heat import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))


@app.command(short_help="How far each pedal goes under a foot, and why.")
def pedal(
    file: FileArgument,
    option: OptionName = None,
    force: Annotated[
        str | None,
        typer.Option("--force", help="A force on the pad, such as 120 lbf; without it, a hard foot."),
    ] = None,
    table: Annotated[
        Path | None, typer.Option("--csv", help="Write the curves for a spreadsheet.", metavar="OUT.csv")
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Say how far each pedal goes under a foot, where its travel goes, and what heat, wear and air do.

    Without --option, the options of the file stand beside each other at the end.
    """
    from firmpedal.cli.pedal import Wanted, run  # noqa: PLC0415

    sys.exit(run(file, option, Wanted(as_json, table, force)))


@app.command(short_help="The sum behind any figure.")
def explain(
    file: FileArgument,
    place: Annotated[
        str,
        typer.Argument(
            help="A line, a figure of it, a joint or its number, a part or a rule.", metavar="PLACE"
        ),
    ],
    option: OptionName = None,
) -> None:
    """Show the sum behind a figure: equation, figures put in, result, limit, source.

    For a joint or a part: what goes together there, and what was not taken and why.
    """
    from firmpedal.cli.explain import run  # noqa: PLC0415

    sys.exit(run(file, place, option))


@app.command(short_help="Options side by side, and what to do.")
def compare(
    file: FileArgument,
    options: Annotated[
        list[str] | None,
        typer.Argument(
            help="Options by name, or `as written`; without any, as written and all of them.",
            metavar="OPTION",
        ),
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Set options side by side: who wins on what, what tells them apart, what to measure, what to do."""
    from firmpedal.cli.compare import run  # noqa: PLC0415

    sys.exit(run(file, options or [], as_json=as_json))


@app.command(short_help="The work from one option to another.")
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


@app.command(short_help="Fill and bleed: which way, how hard, where air stays.")
def bleed(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Say how to fill and bleed each wheel: from where, how hard, how much, in which attitude, step by step.

    And where air stays and how much, whether it rises by itself, what gravity and a pumping foot can do;
    what a shut parking valve makes of warmth; how long brakes take to come off in the cold.
    """
    from firmpedal.cli.bleed import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))


@app.command(short_help="What is this port, fitting or tube?")
def identify(
    outside_diameter: Annotated[
        str | None, typer.Option(help="Over the crests of a male thread, with its unit: 0.400in.")
    ] = None,
    inside_diameter: Annotated[
        str | None, typer.Option(help="Inside the crests of a female thread, near its mouth.")
    ] = None,
    threads: Annotated[str | None, typer.Option(help="Threads per inch: 27.")] = None,
    pitch: Annotated[str | None, typer.Option(help="From crest to crest, instead of --threads: 1mm.")] = None,
    taper: Annotated[str, typer.Option(help="Whether the thread tapers: yes, no or unknown.")] = "unknown",
    seat_angle: Annotated[
        str | None, typer.Option(help="From the axis to the side of the seat's cone: 37deg.")
    ] = None,
    tube: Annotated[str | None, typer.Option(help="Outside diameter of the tube: 0.25in.")] = None,
    turns: Annotated[
        str | None, typer.Option(help="Turns by hand, clean and dry, until the thread stops: 1-1/2.")
    ] = None,
    accuracy: Annotated[
        str | None, typer.Option(help="How well lengths were measured; without it 0.003 in, callipers.")
    ] = None,
    angle_accuracy: Annotated[
        str | None, typer.Option(help="How well the angle was measured; without it 2 deg.")
    ] = None,
    counted: Annotated[
        str | None, typer.Option(help="Threads over which the pitch was measured; without it 6.")
    ] = None,
    as_json: AsJson = False,
) -> None:
    """Say what a port, a fitting or a tube can be, and which test tells the candidates apart.

    Ends with 0 when something fits and goes in as far as it should, 1 when not, 2 when a figure
    cannot be read.
    """
    from firmpedal.cli.identify import Asked, run  # noqa: PLC0415

    asked = Asked(
        outside_diameter, inside_diameter, threads, pitch, taper, seat_angle, tube, turns,
        accuracy, angle_accuracy, counted,
    )  # fmt: skip
    sys.exit(run(asked, as_json=as_json))


@app.command(short_help="Your own list of parts against the design.")
def reconcile(
    file: FileArgument,
    parts_list: Annotated[
        Path, typer.Option("--list", help="A parts list or packing list as CSV.", metavar="LIST.csv")
    ],
    option: OptionName = None,
    as_json: AsJson = False,
) -> None:
    """Hold a parts list or a kit's packing list against the design: short, wrong, left over, odd counts.

    Ends with 0 when they agree, 1 when not, 2 when the file or the list cannot be used.
    """
    from firmpedal.cli.reconcile import run  # noqa: PLC0415

    sys.exit(run(file, parts_list, option, as_json=as_json))


@app.command(short_help="Write the printed packet, a PDF.")
def packet(
    file: FileArgument,
    out: Annotated[Path, typer.Option("-o", "--out", help="The PDF to write.", metavar="OUT.pdf")],
    option: OptionName = None,
) -> None:
    """Write the printed packet: verdict, findings, parts, a card for each line, torques, sums, sources."""
    from firmpedal.cli.packet import run  # noqa: PLC0415

    sys.exit(run(file, out, option))


@app.command(short_help="One page for the phone: cards and ticks.")
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


@app.command(short_help="A card for each line, to print for the bench.")
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


@app.command(short_help="Templates at full size: marks, bends, holes.")
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


@app.command(short_help="Which tube to cut from which stick.")
def cutplan(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Plan the cuts: which piece comes from which stick with the least tube bought, and what is left over."""
    from firmpedal.cli.cutplan import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))


@app.command(short_help="The lines for other programs: STEP, DXF, CSV, SVG.")
def export(
    file: FileArgument,
    to: Annotated[str, typer.Option("--to", help="step, dxf, csv or svg.")],
    out: Annotated[Path, typer.Option("-o", "--out", help="The folder to write to.", metavar="FOLDER")],
    option: OptionName = None,
    rotation: Annotated[
        str,
        typer.Option(
            "--rotation", help="csv: what turns by a rotation, the `plane` of bend or the `tube` itself."
        ),
    ] = "plane",
) -> None:
    """Write the lines for other programs.

    STEP is solids for a CAD program, DXF flat drawings with dimensions, CSV bend data and points, SVG every
    drawing there is.
    """
    from firmpedal.cli.export import run  # noqa: PLC0415

    sys.exit(run(file, to, out, option, rotation))


@app.command("import", short_help="Points or bends from a table into your file.")
def import_(
    table: Annotated[Path, typer.Argument(help="Points or bends as CSV.", metavar="TABLE.csv")],
    into: Annotated[Path, typer.Option("--into", help="The aircraft's file.", metavar="FILE")],
    option: OptionName = None,
    line: Annotated[
        str | None,
        typer.Option("--line", help="One line of the file; without it, those that the table names."),
    ] = None,
    rotation: Annotated[
        str | None,
        typer.Option(
            "--rotation", help="What turns by a rotation, if the table does not say: `plane` or `tube`."
        ),
    ] = None,
    dry_run: Annotated[
        bool, typer.Option("--dry-run", help="Show what would change, and write nothing.")
    ] = False,
) -> None:
    """Write the shape of lines from a table into your file, as corner points under `via`.

    The table is one that `export --to csv` writes, or your own. Everything else in the file stays as it
    is. What changes is shown; where an end does not agree with the file nothing is written.
    """
    from firmpedal.cli.import_table import run  # noqa: PLC0415

    sys.exit(run(table, into, line, option, rotation, dry=dry_run))


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
