"""Rules about joints: every end mates with exactly one other end, or somebody hears of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Outcome, View, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.fit.joint import MismatchKind
from firmpedal.quantity import Answer, Mark, Missing, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.fit.closing import Violation
    from firmpedal.fit.joint import Joint
    from firmpedal.model.part import Part

CORNERS_OVER_FLATS = 2 / 3**0.5  # of a hexagon

TRIES = {
    MismatchKind.FLARE_ANGLE: "cut the flare off and make a 37-degree one with an aircraft flaring tool",
    MismatchKind.METRIC_AND_PIPE: "measure the port's diameter and pitch, then take the adapter for it",
    MismatchKind.METRIC_TUBE: "take inch tube to the dash number of the nut, or metric fittings throughout",
    MismatchKind.DASH_SIZE: "take the fitting in the line's dash size, or a reducer between the two",
    MismatchKind.PIPE_DASH: "count a pipe fitting's dash in eighths of an inch: -1 is 1/8 pipe",
}


def _mismatches(view: View, kind: MismatchKind, rule: str, source: str) -> Iterator[Outcome]:
    for joint in view.assembly.joints:
        for mismatch in joint.mismatches:
            if mismatch.kind is kind:
                message = f"{joint.name}: {mismatch.words}"
                yield Finding(
                    rule, Level.WARNING, joint.place, message, (TRIES[kind],), sources=practice(source)
                )


def flare_angle_mixed(view: View) -> Iterator[Outcome]:
    """A 45-degree flare never goes on a 37-degree fitting.

    The cone and the flare touch on a line instead of a face: it leaks, or the flare is cut through.
    """
    yield from _mismatches(view, MismatchKind.FLARE_ANGLE, "flare-angle-mixed", "faa-h-8083-30")


def metric_and_pipe_thread(view: View) -> Iterator[Outcome]:
    """A metric parallel thread and a taper pipe thread do not go together.

    M10 x 1 and 1/8 NPT start by hand and then wedge: the joint leaks or the casting cracks.
    """
    yield from _mismatches(view, MismatchKind.METRIC_AND_PIPE, "metric-and-pipe-thread", "asme-b1-20-1")


def metric_tube_in_inch_nut(view: View) -> Iterator[Outcome]:
    """A 6 mm tube does not belong in a nut for 1/4 in tube.

    It is 0.35 mm thinner: the sleeve does not grip and the flare is too small to hold.
    """
    yield from _mismatches(view, MismatchKind.METRIC_TUBE, "metric-tube-in-inch-nut", "tm-1-1500-204")


def dash_sizes_differ(view: View) -> Iterator[Outcome]:
    """A -3 end and a -4 end need a reducer between them.

    The dash number is the tube's outside diameter in sixteenths of an inch; threads of two sizes do
    not fit each other.
    """
    yield from _mismatches(view, MismatchKind.DASH_SIZE, "dash-sizes-differ", "tm-1-1500-204")


def pipe_dash_read_as_tube_dash(view: View) -> Iterator[Outcome]:
    """The dash of an all-pipe fitting counts eighths of an inch, not sixteenths.

    A pipe fitting -4 is for 1/2 in pipe; a 1/8 in pipe port wants -1.
    """
    kind = MismatchKind.PIPE_DASH
    yield from _mismatches(view, kind, "pipe-dash-read-as-tube-dash", "tm-1-1500-204")


def part_missing_between(view: View) -> Iterator[Outcome]:
    """Two ends that cannot mate need a part between them, which is named.

    Hose ends and tube ends are both female: where two lines meet, a union is always needed.
    """
    named = tuple(TRIES)
    for joint in view.assembly.joints:
        for mismatch in joint.mismatches:
            if mismatch.kind in named:
                continue
            needed = ", ".join(mismatch.needed)
            first = f"put in: {needed}" if needed else "declare what is there, or choose parts that mate"
            tries: tuple[str, ...] = (first,)
            if mismatch.kind is MismatchKind.BOTH_FEMALE:
                tries = (
                    *tries,
                    "add a bulkhead, bracket or free union to the file and lead both lines to it",
                )
            message = f"{joint.name}: {mismatch.words}"
            yield Finding(
                "part-missing-between",
                Level.WARNING,
                joint.place,
                message,
                tries,
                sources=practice("common-practice"),
            )


def joint_does_not_close(view: View) -> Iterator[Outcome]:
    """Every end of every part mates with exactly one other end, is capped or plugged, or is named open.

    Checked on the finished assembly, whatever chose the parts. An open port loses the fluid.
    """
    told = {
        ref for joint in view.assembly.joints for item in joint.mismatches for ref in (item.one, item.other)
    }
    for violation in view.violations:
        if violation.end in told:
            continue
        yield Finding(
            "joint-does-not-close",
            Level.WARNING,
            _place_of(violation),
            f"{violation.end.owner}: its {violation.end.interface} {violation.words}",
            ("lead a line to it, close it with `closed: yes`, or name it `open: reason`",),
            sources=practice("firmpedal-derivation", Mark.DERIVED),
        )


def _place_of(violation: Violation) -> str:
    """Where the builder would look for an end: the joint, or the port or line that is named."""
    kind, _, name = violation.end.owner.partition(" ")
    if kind == "line":
        line, _, end = name.rpartition(" ")
        return f"lines.{line}.{end}"
    if kind == "port":
        component, _, port = name.partition(".")
        return f"components.{component}.ports.{port}"
    return violation.place


def joint_in_covered_length(view: View) -> Iterator[Outcome]:
    """No joint sits where its widest part does not fit, such as in the gap of a leg fairing.

    The widest part is the nut or hexagon across its corners; the gap is what the zone declares.
    """
    for crossing in view.crossings:
        if crossing.zone.covered is not Answer.YES:
            continue
        for end in crossing.ends_inside:
            joint = view.assembly.joint_of(crossing.line, end)
            if joint is not None and joint.parts:
                yield from _fits_in_gap(view, joint, crossing.zone.name, crossing.zone.gap)


def _fits_in_gap(view: View, joint: Joint, zone: str, gap: Value) -> Iterator[Outcome]:
    widest = widest_part(joint)
    answer = widest.at_most(gap)
    rule = "joint-in-covered-length"
    if answer is Answer.NO:
        message = (
            f"{joint.name} lies inside {zone}: its widest part is {view.show(widest)} across corners, "
            f"the gap is {view.show(gap)}"
        )
        tries = (f"move the joint out of {zone}, above or below it", "carry the line through in one piece")
        yield Finding(rule, Level.WARNING, joint.place, message, tries, widest, gap, "at most")
    elif answer is Answer.UNKNOWN:
        missing = (*gap.missing, *widest.missing) or (
            Missing(joint.place, f"the widest part of {joint.name}"),
        )
        yield NotShown(rule, joint.place, f"whether {joint.name} fits inside {zone}", missing)


def widest_part(joint: Joint) -> Value:
    """The greatest width across corners of the parts of a joint; unknown if one part's is."""
    widths = [_across_corners(part) for part in joint.parts]
    known = [width for width in widths if width is not None and width.span is not None]
    label = f"widest part of {joint.name}"
    if not known:
        missing = (Missing(joint.place, f"the width across corners of the fittings at {joint.name}"),)
        return Value(label, Dimension.LENGTH, None, Mark.MEASURED, joint.place, missing=missing)
    widest = max(known, key=lambda width: width.high)
    return widest.named(label, joint.place)


def _across_corners(part: Part) -> Value | None:
    corners, flats = part.dimension("across_corners_min"), part.dimension("hex_across_flats")
    if part.turn:  # an elbow stands out by its arm
        return part.outlet_leg
    if corners is not None:
        return corners
    if flats is None or flats.span is None:
        return None
    low, high = (bound * CORNERS_OVER_FLATS for bound in flats.span)
    return Value("width across corners", Dimension.LENGTH, (low, high), flats.mark, flats.place, flats.source)
