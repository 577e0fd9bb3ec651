"""Rules about heat and covers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Answer, Mark

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.crossing import Crossing
    from firmpedal.model.circuit import Line

PLASTICS = ("nylon", "plastic", "polyethylene", "polyamide")


def plastic_in_hot_place(view: View) -> Iterator[Outcome]:
    """Plastic stays away from the wheel: not at the caliper, not in a fairing, not near the disc.

    Heat comes through the fitting as much as through the air. Softened plastic slips off its
    fitting under the next hard stop, and fluid on a hot disc burns.
    """
    rule = "plastic-in-hot-place"
    for line in view.laid:
        declared = find(view.aircraft.lines, line.name)
        if declared is None:
            continue
        plastic = line.kind is LineKind.PLASTIC
        lined = any(word in declared.sleeve.lower() for word in PLASTICS)
        if not (plastic or lined):
            continue
        crossings = view.crossings_of(line.name)
        reasons = [*_at_caliper(view, declared, plastic=plastic), *_zones(view, crossings)]
        what = "is plastic" if plastic else f"has a sleeve of {declared.sleeve}"
        if reasons:
            yield Finding(
                rule,
                Level.WARNING,
                line.place,
                f"{line.name} {what} and {', '.join(reasons)}",
                ("end the plastic above the fairing and go on with metal tube or braided hose",),
                sources=practice("common-practice", Mark.MEMORY),
            )
        for crossing in crossings:
            if crossing.missing and (crossing.zone.heat or crossing.zone.covered is Answer.YES):
                message = f"whether {line.name} runs through {crossing.zone.name}"
                yield NotShown(rule, line.place, message, crossing.missing)


def _at_caliper(view: View, line: Line, *, plastic: bool) -> list[str]:
    heads = {end.partition(".")[0] for end in (line.start, line.finish)}
    found = [caliper.name for caliper in view.aircraft.calipers if caliper.name in heads]
    return [f"goes right to {name}" for name in found] if plastic else []


def _zones(view: View, crossings: tuple[Crossing, ...]) -> list[str]:
    return [
        f"runs {view.show(item.length(''))} through {item.zone.name}"
        for item in crossings
        if item.inside and (item.zone.heat is not None or item.zone.covered is Answer.YES)
    ]


def covered_edge_chafes(view: View) -> Iterator[Outcome]:
    """A line that goes in or out of a cover passes its edge, and the edge saws.

    The lower edge of a leg fairing is where most lines wear through; dirt hides the seep.
    """
    for crossing in view.crossings:
        if crossing.zone.covered is not Answer.YES or not crossing.passes:
            continue
        line = find(view.aircraft.lines, crossing.line)
        place = line.place if line else ""
        count = len(crossing.passes)
        times = {1: "once", 2: "twice"}.get(count, f"{count} times")
        yield Finding(
            "covered-edge-chafes",
            Level.CAUTION,
            place,
            f"{crossing.line} passes the edge of {crossing.zone.name} {times}",
            (
                "cut the edge back and pad it",
                "clamp the line beside the edge",
                "look here at every inspection",
            ),
            sources=practice("common-practice", Mark.MEMORY),
        )
