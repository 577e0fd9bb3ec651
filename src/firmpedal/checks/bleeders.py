"""A rule about air that stays inside a caliper."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.bleeding.bleeders import way_out
from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Iterator

RULE = "no-bleeder-on-caliper"


def no_bleeder_on_caliper(view: View) -> Iterator[Outcome]:
    """Every caliper has a bleeder, or a port at its top, where air in its chambers gets out.

    Looked at are the ports that the file names: one that no line leads to and that is not closed is a
    bleeder, and one that faces up is at the top. A caliper of which the file names one port alone is taken to
    have its bleeder elsewhere. Air above all ports stays there and makes the pedal soft.
    """
    for caliper in view.aircraft.calipers:
        out = way_out(view.aircraft, caliper)
        if out.lets_out is Answer.NO:
            yield Finding(
                RULE,
                Level.CAUTION,
                out.place,
                f"{caliper.name} has no bleeder and no port that faces up among its ports: air in its top "
                "stays",
                (
                    "if it has a bleeder, write it among its ports, open, with a few words on why",
                    "turn it so that a port faces up, if its maker allows it",
                    "take it off its bracket to fill it, and hold it so that a port is its highest point",
                ),
                sources=practice("common-practice"),
            )
        elif out.lets_out is Answer.UNKNOWN:
            message = f"whether air gets out of {caliper.name}, which has no bleeder among its ports"
            yield NotShown(RULE, out.place, message, out.missing)
