"""Rules about heat and covers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Outcome, View, practice, whether_covered
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.crossing import Crossing
    from firmpedal.model.circuit import Line
    from firmpedal.quantity import Missing

PLASTICS = ("nylon", "plastic", "poly", "vinyl", "pvc")
SHORT_NAMES = {"pe", "pa", "pp"}


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
        lined = _plastic(declared.sleeve.lower())
        if not (plastic or lined):
            continue
        crossings = view.crossings_of(line.name)
        reasons = [*_at_caliper(view, declared), *_zones(view, crossings)]
        what = "is plastic" if plastic else f"has a sleeve of {declared.sleeve}"
        if reasons:
            yield Finding(
                rule,
                Level.WARNING,
                line.place,
                f"{line.name} {what} and {', '.join(reasons)}",
                ("end the plastic above the fairing and go on with metal tube or braided hose",),
                sources=practice("common-practice"),
            )
            continue
        for crossing in crossings:
            if missing := _doubts(crossing):
                message = f"whether {line.name} runs through {crossing.zone.name}"
                yield NotShown(rule, line.place, message, missing)


def _plastic(sleeve: str) -> bool:
    return any(word in sleeve for word in PLASTICS) or bool(SHORT_NAMES.intersection(sleeve.split()))


def _at_caliper(view: View, line: Line) -> list[str]:
    heads = {end.partition(".")[0] for end in (line.start, line.finish)}
    return [f"goes right to {caliper.name}" for caliper in view.aircraft.calipers if caliper.name in heads]


def _doubts(crossing: Crossing) -> tuple[Missing, ...]:
    """What to know before it can be said that a line keeps out of heat and covers."""
    zone = crossing.zone
    if zone.heat is None and zone.covered is Answer.NO:
        return ()
    if crossing.unsure_inside:
        return crossing.unsure_inside
    return whether_covered(zone) if crossing.inside and zone.heat is None else ()


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
    rule = "covered-edge-chafes"
    for crossing in view.crossings:
        zone, line = crossing.zone, find(view.aircraft.lines, crossing.line)
        if zone.covered is Answer.NO or line is None:
            continue
        doubts = crossing.unsure_passes or (whether_covered(zone) if crossing.passes else ())
        if doubts:
            message = f"whether {crossing.line} passes the edge of {zone.name}"
            yield NotShown(rule, line.place, message, doubts)
        elif crossing.passes:
            count = len(crossing.passes)
            times = {1: "once", 2: "twice"}.get(count, f"{count} times")
            yield Finding(
                rule,
                Level.CAUTION,
                line.place,
                f"{crossing.line} passes the edge of {zone.name} {times}",
                (
                    "cut the edge back and pad it",
                    "clamp the line beside the edge",
                    "look here at every inspection",
                ),
                sources=practice("common-practice"),
            )
