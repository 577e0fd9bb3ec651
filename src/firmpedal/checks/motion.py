"""Rules about ends that move."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, judge, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Answer, Mark, Missing, Value, When, exactly
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.lay.line import LaidLine
    from firmpedal.model.kinds import Caliper

# What a clamped tube can follow without harm: our estimate, a field to overrule.
USUAL_PLAY = from_unit(1 / 32, "in")


def rigid_line_between_moving_ends(view: View) -> Iterator[Outcome]:
    """A rigid line never joins two ends that move against each other.

    Pedals swing, calipers float, legs spring: aluminium cracks at the flare. A hose takes the
    movement, or a formed loop made for it.
    """
    rule = "rigid-line-between-moving-ends"
    for line in view.laid:
        if line.kind is not LineKind.TUBE:
            continue
        floating = _floating_caliper(view, line)
        if floating is not None and floating.floats is Answer.YES:
            message = f"{line.name} is rigid and goes into {floating.name}, which floats"
            tries = ("end the tube at a bracket and go on with a hose",)
            yield Finding(rule, Level.WARNING, line.place, message, tries, sources=practice("mil-h-8891a"))
            continue
        if floating is not None and floating.floats is Answer.UNKNOWN:
            missing = (Missing(f"{floating.place}.floats", f"whether {floating.name} floats"),)
            yield NotShown(rule, line.place, f"whether {line.name} may be rigid", missing)
        play = line.travel.play.named(f"movement of the ends of {line.name} against each other")
        message = f"the ends of {line.name} move {view.show(play)} against each other, and it is rigid"
        yield from judge(
            Limit(play, _allowed(view), "at most"),
            rule=rule,
            level=Level.WARNING,
            place=line.place,
            message=message,
            tries=("take a hose for this length", "fix both ends to the same thing"),
        )


def _allowed(view: View) -> Value:
    if view.aircraft.limits.end_play.known:
        return view.aircraft.limits.end_play
    label = "movement that a rigid line can follow"
    return exactly(label, Dimension.LENGTH, USUAL_PLAY, Mark.ESTIMATE, source="firmpedal-estimate")


def _floating_caliper(view: View, line: LaidLine) -> Caliper | None:
    declared = find(view.aircraft.lines, line.name)
    ends = (declared.start, declared.finish) if declared else ()
    heads = [end.partition(".")[0] for end in ends]
    calipers = [caliper for caliper in view.aircraft.calipers if caliper.name in heads]
    return next((caliper for caliper in calipers if caliper.floats is not Answer.NO), None)


def hose_bend_radius(view: View) -> Iterator[Outcome]:
    """A hose never bends tighter than its least radius, in any state of movement.

    The shape of a hose between its ends is not worked out: its declared path says nothing about how
    tight it bends. So it is measured as it hangs, with everything moved through all it can do, and
    written as the line's `tightest bend`; until then this is not shown.
    """
    for line in view.laid:
        if line.kind is not LineKind.HOSE:
            continue
        place = f"{line.place}.tightest bend"
        least = line.stock.least_bend_radius.named(f"least bend radius of {line.stock.phrase}")
        declared = find(view.aircraft.lines, line.name)
        if declared is None or not declared.tightest_bend.known:
            what = (
                f"the tightest bend of {line.name} when fitted, in every position (least: {view.show(least)})"
            )
            missing = (Missing(place, what, Dimension.LENGTH, When.FITTED),)
            message = f"the bend radius of {line.name} is not checked"
            yield NotShown("hose-bend-radius", line.place, message, missing)
            continue
        found = declared.tightest_bend.named(f"tightest bend of {line.name}", place)
        message = f"{line.name} is bent to {view.show(found)}; the least for this hose is {view.show(least)}"
        yield from judge(
            Limit(found, least, "at least"),
            rule="hose-bend-radius",
            level=Level.CAUTION,
            place=place,
            message=message,
            tries=(
                "a longer hose, or one whose own ends are bent, so that it hangs in a wider bow",
                "move a clamp or turn a fitting, then measure again in every position",
            ),
        )
