"""Words for what comes from elsewhere or goes there: fittings in hand, lists, tables, drawings."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated

import typer

from firmpedal.cli.words.arguments import AsJson, FileArgument, OptionName


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
    from firmpedal.cli.identify import run  # noqa: PLC0415
    from firmpedal.decide.identify_reading import Asked  # noqa: PLC0415

    asked = Asked(
        outside_diameter, inside_diameter, threads, pitch, taper, seat_angle, tube, turns,
        accuracy, angle_accuracy, counted,
    )  # fmt: skip
    sys.exit(run(asked, as_json=as_json))


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
