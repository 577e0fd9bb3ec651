"""Rules about brakes that are too sharp, or sharper on one side than on the other."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, cited, judge, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.component import SideOf
from firmpedal.quantity import Answer, Mark, Value, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.stopping import Apart

LEAST_SHARE = 0.8  # of what the stronger side holds: common practice, no source
STANCE = {"wheelbase", "cg_height"}  # without them nobody has asked how the weight goes forward


def wheels_lock_early(view: View) -> Iterator[Outcome]:
    """The normal foot does not lock a wheel on dry pavement.

    A wheel that slides stops the aircraft no shorter, steers nothing and wears its tyre flat. Held against
    the foot of a usual stop is the foot that locks the first wheel, with the grip that dry pavement has at
    its best; on a wet or loose ground it locks sooner. A CAUTION where the normal foot locks it for sure; a
    NOTE where it may. That a panic foot locks them is usual, and no finding.
    """
    stop, ground = view.results.stopping, view.aircraft.on_the_ground
    if not ground.written >= STANCE:
        return
    foot, normal = stop.lock.foot, stop.feet[0].force
    if not (foot.known and normal.known):
        missing = tuple(dict.fromkeys((*foot.missing, *normal.missing)))
        yield NotShown("wheels-lock-early", ground.place, "which foot locks the wheels", missing)
    elif foot.high < normal.low:
        yield _locks(view, foot, normal, Level.CAUTION)
    elif foot.low <= normal.high:
        yield _locks(view, foot, normal, Level.NOTE)


def _locks(view: View, foot: Value, normal: Value, level: Level) -> Finding:
    which = view.results.stopping.first_wheel
    may = "" if level is Level.CAUTION else "may already "
    does = f"{may}lock{'s' if not may and which != 'the wheels' else ''}"
    return Finding(
        "wheels-lock-early",
        level,
        view.aircraft.on_the_ground.place,
        f"from {view.show(foot)} on each pedal {which} {does} on dry pavement; the normal foot is "
        f"{view.show(normal)}",
        (
            "a larger master cylinder or a lower pedal ratio makes the brakes less sharp",
            "until then: press gently, and say so on the placard and in the checkout",
        ),
        foot,
        normal,
        "at least",
        cited(foot, normal) or practice("common-practice"),
    )


def brakes_pull_to_one_side(view: View) -> Iterator[Outcome]:
    """At equal feet the brakes of the left hold nearly as much as those of the right.

    What differs swings the aircraft to the stronger side, and the pilot has to press unevenly to run
    straight, most of all in a hard stop. The weaker side should hold at least 80 % of what the other does:
    a yardstick of practice without a source; a road vehicle, from memory, fails its inspection under 70 %.
    Lining, radius or pressure that stand alike on both sides, range for range, are taken to be the same.
    """
    apart = view.results.stopping.apart
    if apart is None or not view.results.stopping.asked:
        return
    usual = exactly(
        "least share of practice", Dimension.NUMBER, LEAST_SHARE, Mark.MEMORY, source="common-practice"
    )
    yield from judge(
        Limit(apart.share, usual, "at least"),
        rule="brakes-pull-to-one-side",
        level=Level.CAUTION,
        place=_place(view),
        message=_swerves(apart),
        tries=(
            "make both sides alike: cylinder bore, pedal arms, pistons, linings and radius",
            "put a slip right; else try it at a slow taxi first, with room on both sides",
        ),
    )


def _swerves(apart: Apart) -> str:
    """Which way it swings, and by how much; the share is surely under its limit where this is said."""
    stronger = apart.stronger or SideOf.LEFT
    weaker = SideOf.RIGHT if stronger is SideOf.LEFT else SideOf.LEFT
    low, high = (f"{100 * (1 / share - 1):.0f}" for share in (apart.share.high, apart.share.low))
    more = low if low == high else f"{low} to {high}"
    held = f"at equal feet the {stronger} brakes hold {more} % more than the {weaker}"
    return f"{held}: it swings to the {stronger}"


def _place(view: View) -> str:
    """The first part that is not alike on both sides: a cylinder, else a caliper."""
    stop = view.results.stopping
    pressures = {brake.by_foot.pressure.span for brake in stop.brakes}
    if len(pressures) > 1 and view.aircraft.cylinders:
        return view.aircraft.cylinders[0].place
    return view.aircraft.calipers[0].place


def stops_well(view: View) -> bool:
    """Whether the hard foot surely makes the wanted stop, by figures that do not contradict each other."""
    stop = view.results.stopping
    enough = stop.asked and stop.wanted.foot.at_most(stop.feet[1].force) is Answer.YES
    return enough and not stop.contradictions


def locks_early(view: View) -> bool:
    """Whether the normal foot locks a wheel, or may."""
    stop = view.results.stopping
    foot, normal = stop.lock.foot, stop.feet[0].force
    return foot.known and normal.known and foot.low <= normal.high
