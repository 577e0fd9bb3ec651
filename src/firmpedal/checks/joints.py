"""Rules about joints: every end mates with exactly one other end, or somebody hears of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.supposed import supposed_threads
from firmpedal.checks.view import Limit, Outcome, View, judge, practice, whether_covered
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.fit.joint import MismatchKind
from firmpedal.fit.kinds import described
from firmpedal.model.aircraft import find
from firmpedal.model.part import Category, Form
from firmpedal.quantity import Answer, Mark, Missing, Value, largest, unknown
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.fit.closing import Violation
    from firmpedal.fit.joint import Joint, Mismatch
    from firmpedal.model.part import Part
    from firmpedal.model.surroundings import Zone

TRIES = {
    MismatchKind.FLARE_ANGLE: "cut the flare off and make a 37-degree one with an aircraft flaring tool",
    MismatchKind.METRIC_AND_PIPE: "measure the port's diameter and pitch, then take the adapter for it",
    MismatchKind.METRIC_TUBE: "take inch tube to the dash number of the nut, or metric fittings throughout",
    MismatchKind.DASH_SIZE: "take the fitting in the line's dash size, or a reducer between the two",
    MismatchKind.POINTS: "declare an elbow that turns so far, or look again which way it points",
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


def elbow_points_elsewhere(view: View) -> Iterator[Outcome]:
    """An elbow brings the line out by its own angle off the way its port faces, and by no other.

    Turned in its port it points to any side, but always so far off: 45 degrees, or 90. Where the file says
    which way it points, the angle between the two has to be that of the fitting.
    """
    yield from _mismatches(view, MismatchKind.POINTS, "elbow-points-elsewhere", "common-practice")


def part_missing_between(view: View) -> Iterator[Outcome]:
    """Two ends that cannot mate need a part between them, which is named.

    Hose ends and tube ends are both female: where two lines meet, a union is always needed.
    """
    named = tuple(TRIES)
    for joint in view.assembly.joints:
        for mismatch in joint.mismatches:
            if mismatch.kind in named:
                continue
            tries = _what_to_put_between(mismatch)
            message = f"{joint.name}: {mismatch.words}"
            yield Finding(
                "part-missing-between",
                Level.WARNING,
                joint.place,
                message,
                tries,
                sources=practice("common-practice"),
            )


def _what_to_put_between(mismatch: Mismatch) -> tuple[str, ...]:
    if mismatch.needed:
        tries = [f"put in: {', '.join(mismatch.needed)}"]
    elif Form.PLAIN_TUBE in (mismatch.one.interface.form, mismatch.other.interface.form):
        tries = [
            "no fitting for plastic is known here: through a panel lead it in one piece, with a grommet",
            "end the plastic at a port with pipe thread, or declare the fitting that is there",
        ]
    else:
        tries = ["declare what is there, or choose parts that mate"]
    if mismatch.kind is MismatchKind.BOTH_FEMALE:
        tries.append("add a bulkhead, bracket or free union to the file and lead both lines to it")
    return tuple(tries)


def fitting_angle_not_known(view: View) -> Iterator[Outcome]:
    """Which way a port faces has to be known before its fitting can be straight or bent.

    Without it the fitting that the seat was measured with is taken; without that, nothing is known.
    """
    comes = {target: line for line in view.aircraft.lines for target in (line.start, line.finish)}
    for component in view.aircraft.components:
        for port in component.ports:
            name = f"{component.name}.{port.name}"
            line = comes.get(name)
            if line is None or port.faces.known or port.seat_measured_with:
                continue
            if not (line.from_fitting if line.start == name else line.to_fitting):
                missing = Missing(f"{port.place}.faces", f"which way {name} faces")
                message = f"whether the fitting in {name} is straight or bent"
                yield NotShown("fitting-angle-not-known", port.place, message, (missing,))


def joint_does_not_close(view: View) -> Iterator[Outcome]:
    """Every end of every part mates with exactly one other end, is capped or plugged, or is named open.

    Checked on the finished assembly, whatever chose the parts. An open port loses the fluid. At a thread that
    is only supposed it is not shown until somebody has looked.
    """
    yield from supposed_threads(view)
    told = {
        ref for joint in view.assembly.joints for item in joint.mismatches for ref in (item.one, item.other)
    }
    for violation in view.violations:
        if violation.end in told:
            continue
        if missing := _perhaps_closed(view, violation):
            message = f"whether {violation.end.owner} is closed"
            yield NotShown("joint-does-not-close", _place_of(violation), message, missing)
            continue
        yield Finding(
            "joint-does-not-close",
            Level.WARNING,
            _place_of(violation),
            f"{_owner(view, violation)}: {described(violation.end.interface)} {violation.words}",
            (
                "lead a line to it",
                "set closed to yes there, if it gets a plug or cap",
                "say under open why nothing comes to it",
            ),
            sources=practice("firmpedal-derivation", Mark.DERIVED),
        )


def _owner(view: View, violation: Violation) -> str:
    """What the end is of, by its name: a part by its designation and where it stands."""
    kind, _, number = violation.end.owner.partition(" ")
    joint = next((each for each in view.assembly.joints if each.place == violation.place), None)
    if kind != "part" or joint is None:
        return violation.end.owner
    return f"{joint.parts[int(number)].designation} at {joint.name}"


def _perhaps_closed(view: View, violation: Violation) -> tuple[Missing, ...]:
    """What to find out about a port of which the file says that nobody knows whether it is closed."""
    name = violation.end.owner.removeprefix("port ")
    head, _, tail = name.partition(".")
    component = find(view.aircraft.components, head)
    port = find(component.ports, tail) if component else None
    reached = any(name in (line.start, line.finish) for line in view.aircraft.lines)
    if port is None or port.closed is not Answer.UNKNOWN or reached:
        return ()
    return (Missing(f"{port.place}.closed", f"whether {name} is closed by a plug"),)


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
    rule = "joint-in-covered-length"
    asked: set[tuple[str, str]] = set()
    for crossing in view.crossings:
        zone, line = crossing.zone, find(view.aircraft.lines, crossing.line)
        if zone.covered is Answer.NO or line is None:
            continue
        if crossing.unsure_ends:
            message = f"whether an end of {crossing.line} lies inside {zone.name}"
            yield NotShown(rule, line.place, message, crossing.unsure_ends)
        for end in () if crossing.unsure_ends else crossing.ends_inside:
            joint = view.assembly.joint_of(crossing.line, end)
            if joint is not None and joint.parts and (joint.place, zone.name) not in asked:
                asked.add((joint.place, zone.name))  # where two lines meet, both come by here
                yield from _fits_in_gap(view, joint, zone)


def _fits_in_gap(view: View, joint: Joint, zone: Zone) -> Iterator[Outcome]:
    limit = Limit(widest_part(joint), zone.gap.named(f"gap of {zone.name}"), "at most")
    rule, covered = "joint-in-covered-length", whether_covered(zone)
    if covered and limit.kept is not Answer.YES:
        yield NotShown(rule, joint.place, f"whether {joint.name} lies under a cover", covered)
        return
    message = (
        f"{joint.name} lies inside {zone.name}: its widest part is {view.show(limit.measured)} across "
        f"corners, the gap is {view.show(zone.gap)}"
    )
    yield from judge(
        limit,
        rule=rule,
        level=Level.WARNING,
        place=joint.place,
        message=message,
        tries=(
            f"move the joint out of {zone.name}, above or below it",
            "carry the line through in one piece",
        ),
    )


def widest_part(joint: Joint) -> Value:
    """The greatest width of the parts of a joint; unknown if one part's is. Sleeves sit inside their nuts."""
    widths = [_width(part, joint) for part in joint.parts if part.category is not Category.SLEEVE]
    return largest(f"widest part of {joint.name}", widths, joint.place)


def _width(part: Part, joint: Joint) -> Value:
    """Across a hexagon's corners, or a washer's rim; what turns or branches stands out by its arm."""
    if not part.turn and (corners := part.corners) is not None:
        return corners
    round_part = None if part.turn else part.width
    label = f"width of {part.designation}"
    return part.outlet_leg or round_part or unknown(label, Dimension.LENGTH, joint.place)
