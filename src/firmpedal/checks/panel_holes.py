"""The rule about holes in panels that lines pass without a fitting."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.lay.panels import lies_on, passing
from firmpedal.lay.through_hole import hole_for_line
from firmpedal.model.aircraft import find
from firmpedal.model.shapes import Sheet
from firmpedal.quantity import Answer, Mark, Missing
from firmpedal.units import from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.lay.panels import Passing
    from firmpedal.lay.shape import Point
    from firmpedal.model.circuit import Panel, Passage

RULE = "panel-hole-without-grommet"
# A bulkhead fitting reaches no further through its panel than this; nearer to its end a line goes
# through the fitting's own hole.
REACH = from_unit(2, "in")


def panel_hole_without_grommet(view: View) -> Iterator[Outcome]:
    """Where a line passes a panel, there is a hole with a grommet, wide enough, or a bulkhead fitting.

    The edge of a bare hole saws through tube and hose. A line that ends at a bulkhead fitting in the panel
    passes nothing there.
    """
    for panel in view.aircraft.panels:
        if not isinstance(panel.where, Sheet) and not panel.passes:
            continue
        for line in view.laid:
            passage = find(panel.passes, line.name)
            cut = passing(line.run, panel)
            if passage is not None:
                yield from _as_declared(view, line, panel, passage, cut)
            elif isinstance(panel.where, Sheet):
                yield from _not_declared(view, line, panel, cut)


def _not_declared(view: View, line: LaidLine, panel: Panel, cut: Passing) -> Iterator[Outcome]:
    points = _without_fittings(view, line, panel, cut)
    if cut.unsure:
        yield NotShown(RULE, line.place, f"whether {line.name} passes {panel.name}", cut.unsure)
    elif points:
        where = " and ".join(view.display.spot(point) for point in points)
        yield Finding(
            RULE,
            Level.CAUTION,
            line.place,
            f"{line.name} passes {panel.name} near {where}, and nothing is said of a hole: "
            "a hole with a grommet, or a bulkhead fitting, is owed",
            (
                f"add it to the lines that pass {panel.name}, with grommet set to yes",
                "end the line there at a bulkhead fitting",
            ),
            sources=practice("navedtra-14018"),
        )


def _as_declared(
    view: View, line: LaidLine, panel: Panel, passage: Passage, cut: Passing
) -> Iterator[Outcome]:
    if not cut.points and not cut.unsure:
        yield Finding(
            RULE,
            Level.NOTE,
            passage.place,
            f"{line.name} does not pass {panel.name} as it runs now",
            ("look at its points", "take it out of the lines that pass"),
            sources=practice("firmpedal-derivation", Mark.DERIVED),
        )
        return
    where = f" near {view.display.spot(cut.points[0][1])}" if cut.points else ""
    if passage.grommet is Answer.UNKNOWN:
        what = f"whether the hole for {line.name} in {panel.name} has a grommet"
        missing = (Missing(f"{passage.place}.grommet", what),)
        yield NotShown(RULE, passage.place, f"{line.name} in {panel.name}{where}", missing)
    elif passage.grommet is Answer.NO:
        yield Finding(
            RULE,
            Level.CAUTION,
            passage.place,
            f"{line.name} passes {panel.name}{where} in a hole without a grommet: its edge saws at the line",
            ("put in a grommet, and clamp the line close to it", "a bulkhead fitting"),
            sources=practice("navedtra-14018"),
        )
    if "hole" in passage.written:
        yield from _wide_enough(view, line, passage, cut)


def _wide_enough(view: View, line: LaidLine, passage: Passage, cut: Passing) -> Iterator[Outcome]:
    hole = passage.hole.named(f"hole for {line.name} in {cut.panel.name}")
    needed = hole_for_line(line, cut, passage.place)
    limit = Limit(hole, needed, "at least")
    outcomes = judge(
        limit,
        rule=RULE,
        level=Level.CAUTION,
        place=passage.place,
        message=f"the hole for {line.name} in {cut.panel.name} is {view.show(hole)}, and the line needs "
        f"{view.show(needed)} there",
        tries=("a wider hole, with a grommet that fits it",),
    )
    plain = practice("firmpedal-derivation", Mark.DERIVED)
    for outcome in outcomes:
        yield replace(outcome, sources=outcome.sources or plain) if isinstance(outcome, Finding) else outcome


def _without_fittings(view: View, line: LaidLine, panel: Panel, cut: Passing) -> list[Point]:
    """The places where a line passes a panel, but for the hole of a fitting that it ends at."""
    fitted = [end for end in ("from", "to") if _ends_in_panel(view, line.name, end, panel)]
    found = []
    for station, point in cut.points:
        off = {"from": station, "to": (cut.length or 0.0) - station}
        if all(off[end] > REACH for end in fitted):
            found.append(point)
    return found


def _ends_in_panel(view: View, name: str, end: str, panel: Panel) -> bool:
    """Whether an end of a line is held by a bulkhead fitting that sits in this panel."""
    line = find(view.aircraft.lines, name)
    target = "" if line is None else (line.start if end == "from" else line.finish)
    bulkhead = find(view.aircraft.bulkheads, target.rpartition(".")[0])
    return (
        bulkhead is not None
        and isinstance(panel.where, Sheet)
        and bulkhead.through_panel is not Answer.NO
        and lies_on(bulkhead.at, panel.where)
    )
