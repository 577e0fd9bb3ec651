"""Words that answer: is it sound, does it stop, what gives way, which option, and why."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated

import typer

from firmpedal.cli.words.arguments import AsJson, FileArgument, OptionName


def check(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Say whether the brakes are sound, what is wrong, and what still has to be measured.

    Ends with 0 when sound, 1 when not sound or not shown, 2 when the file cannot be used.
    """
    from firmpedal.cli.check import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))


def stop(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Show what each foot gives, what a stop and a run-up take, and where tyres or nose give way.

    Ranges stay ranges. What is unknown is listed with what to measure; see the section `on the ground`.
    """
    from firmpedal.cli.stop import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))


def heat(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Show how warm disc, caliper, fluid and the line's end get: one stop, stops in a row, a long taxi.

    Bands are as wide as the figures are known, and a trial with temperature labels narrows them.
    """
    from firmpedal.cli.heat import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))


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


def bleed(file: FileArgument, option: OptionName = None, as_json: AsJson = False) -> None:
    """Say how to fill and bleed each wheel: from where, how hard, how much, in which attitude, step by step.

    And where air stays and how much, whether it rises by itself, what gravity and a pumping foot can do;
    what a shut parking valve makes of warmth; how long brakes take to come off in the cold.
    """
    from firmpedal.cli.bleed import run  # noqa: PLC0415

    sys.exit(run(file, option, as_json=as_json))
