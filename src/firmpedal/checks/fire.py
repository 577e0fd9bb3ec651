"""Rules about the engine's side of the firewall."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.inside import joints_inside
from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.model.stock import Hose, LineKind
from firmpedal.quantity import Answer, Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.crossing import Crossing
    from firmpedal.model.circuit import Line
    from firmpedal.model.surroundings import Zone

STEEL = "steel-forward-of-firewall"
SLEEVE = "fire-sleeve-missing"


def steel_forward_of_firewall(view: View) -> Iterator[Outcome]:
    """In a fire zone lines and fittings are steel, or hose in a fire sleeve; so is what passes the firewall.

    Aluminium and plastic melt in an engine fire, and then the brake fluid feeds it.
    """
    for item in joints_inside(view, _may_burn):
        soft = dict.fromkeys(
            part.designation for part in item.joint.parts if part.material.startswith("aluminium")
        )
        if not soft:
            continue
        joint, zone = item.joint, item.zone
        if missing := (*item.unsure, *_whether_fire(zone)):
            yield NotShown(STEEL, joint.place, f"whether {joint.name} lies in a fire zone", missing)
            continue
        yield Finding(
            STEEL,
            Level.WARNING,
            joint.place,
            f"{joint.name} lies in {zone.name}, a fire zone, and has aluminium in it: {', '.join(soft)}",
            ("set fittings to steel there: the same parts without the D",),
            sources=practice("common-practice"),
        )
    yield from _soft_lines(view)


def _soft_lines(view: View) -> Iterator[Outcome]:
    for crossing, line in _in_fire(view):
        if not (what := _soft(line)):
            continue
        if missing := _doubts(crossing):
            message = f"whether {line.name} runs through a fire zone"
            yield NotShown(STEEL, line.place, message, missing)
        elif crossing.inside:
            yield Finding(
                STEEL,
                Level.WARNING,
                line.place,
                f"{line.name} is {what} and runs {_through(view, crossing)}",
                ("stainless steel tube there, or hose in a fire sleeve",),
                sources=practice("faa-h-8083-30"),
            )


def _in_fire(view: View) -> Iterator[tuple[Crossing, Line]]:
    """Each line with each zone that fire may reach."""
    for crossing in view.crossings:
        line = find(view.aircraft.lines, crossing.line)
        if line is not None and _may_burn(crossing.zone):
            yield crossing, line


def _through(view: View, crossing: Crossing) -> str:
    return f"{view.show(crossing.length(''))} through {crossing.zone.name}, a fire zone"


def _soft(line: Line) -> str:
    """What a line is made of, where fire goes through it."""
    stock = line.made_of
    if isinstance(stock, Hose):
        return ""
    if stock.kind is LineKind.PLASTIC:
        return "plastic"
    return stock.material.group if stock.material.group == "aluminium" else ""


def fire_sleeve_missing(view: View) -> Iterator[Outcome]:
    """Hose in a fire zone lies in a fire sleeve.

    Without one it burns through, and its fluid feeds the fire.
    """
    for crossing, line in _in_fire(view):
        if not isinstance(line.made_of, Hose) or "fire" in line.sleeve.lower():
            continue
        if missing := _doubts(crossing):
            yield NotShown(SLEEVE, line.place, f"whether {line.name} needs a fire sleeve", missing)
        elif crossing.inside:
            yield Finding(
                SLEEVE,
                Level.WARNING,
                line.place,
                f"{line.name} runs {_through(view, crossing)}, without a fire sleeve",
                ("put a fire sleeve over it up to both end fittings, and set sleeve to fire",),
                sources=practice("common-practice"),
            )


def _may_burn(zone: Zone) -> bool:
    return zone.fire is not Answer.NO


def _whether_fire(zone: Zone) -> tuple[Missing, ...]:
    asked = Missing(f"{zone.place}.fire", f"whether {zone.name} is a fire zone")
    return (asked,) if zone.fire is Answer.UNKNOWN else ()


def _doubts(crossing: Crossing) -> tuple[Missing, ...]:
    """What to know before it can be said whether a line burns; none where it surely keeps out."""
    if crossing.unsure_inside:
        return (*crossing.unsure_inside, *_whether_fire(crossing.zone))
    return _whether_fire(crossing.zone) if crossing.inside else ()
