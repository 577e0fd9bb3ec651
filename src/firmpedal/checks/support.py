"""Rules about what holds a line."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.closer import NOT_IN_THE_FILE, vague
from firmpedal.checks.view import Limit, Outcome, View, judge, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.aircraft import find
from firmpedal.model.circuit import Support
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Answer, Missing

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.quantity import Value


ONE_MORE = (
    "whether {line} needs a clamp more: it is unsupported for {gap}, and supports may be {spacing} apart. "
    "One more settles it, and so does a measurement from seat to seat"
)


def clamp_spacing(view: View) -> Iterator[Outcome]:
    """No length between two supports is longer than the table allows.

    The fittings at the ends of a line count as supports. The table is for metal tube by size, and
    for hose 24 in.
    """
    rule = "clamp-spacing"
    for line in view.laid:
        supports, place = line.supports, f"{line.place}.clamps"
        for clamp in supports.beyond:
            message = f"{line.name} has a clamp at {view.show(clamp)}, where there is no line"
            tries = ("measure the clamps from the line's first end, along the line",)
            yield Finding(rule, Level.CAUTION, place, message, tries, sources=practice("common-practice"))
        spacing = supports.spacing.named(f"support spacing of {line.stock.phrase}")
        gap, limit = view.show(supports.longest_gap), Limit(supports.longest_gap, spacing, "at most")
        if limit.kept is Answer.UNKNOWN and _by_fittings_alone(supports.longest_gap) and spacing.known:
            # nobody measures fittings more closely for that: one clamp settles it
            words = ONE_MORE.format(line=line.name, gap=gap, spacing=view.show(spacing))
            asked = f"{supports.longest_gap.label} against {spacing.label}"
            yield NotShown(rule, place, asked, (Missing(place, words),))
            continue
        message = f"{line.name} is unsupported for {gap}; supports may be {view.show(spacing)} apart"
        yield from judge(
            limit,
            rule=rule,
            level=Level.CAUTION,
            place=place,
            message=message,
            tries=("set clamps to propose, and take the places that it gives",),
        )


def _by_fittings_alone(gap: Value) -> bool:
    """Whether a length is a range, and nothing that makes it one is the builder's to measure or write."""
    found = [figure for figure, _ in vague(gap)]
    return bool(found) and all(each.place in NOT_IN_THE_FILE and not each.missing for each in found)


def only_tie_wraps(view: View) -> Iterator[Outcome]:
    """A tie wrap or tape is never all that holds a line.

    It slides, cuts and lets the line find its own way to the disc or an edge.
    """
    for line in view.laid:
        declared = find(view.aircraft.lines, line.name)
        if declared is None:
            continue
        loose = declared.support is Support.NOTHING and line.kind is not LineKind.HOSE
        if loose or declared.support is Support.TIE_WRAPS:
            held = "nothing" if loose else "nothing but tie wraps"
            yield Finding(
                "only-tie-wraps",
                Level.CAUTION,
                f"{line.place}.support",
                f"{line.name} is held by {held}",
                ("cushioned clamps at the places the spacing table asks for",),
                sources=practice("common-practice"),
            )
