"""Rules about brakes that are too sharp, or sharper on one side than on the other."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, cited, judge, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.component import SideOf
from firmpedal.quantity import Answer, Mark, Value, all_missing, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.stopping import Apart

LEAST_SHARE = 0.8  # of what the stronger side holds: common practice, no source
LESS_SHARP = "a larger master cylinder or a lower pedal ratio makes the brakes less sharp"
NOSE = {"mains_to_cg", "weight_on_nose_or_tail", "cg_height"}  # with one of them the tail was thought of
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
    which, normal, foot = stop.first_wheel, stop.feet[0].force, stop.lock.foot
    at, locks = f"from {view.show(foot)} on each pedal {which}", "lock" if which == "the wheels" else "locks"
    yield from _held_against(
        view,
        _Sharp(
            "wheels-lock-early",
            foot,
            "which foot locks the wheels",
            f"{at} {locks} on dry pavement",
            f"{at} may already lock on dry pavement",
            (LESS_SHARP, "until then: press gently, and say so on the placard and in the checkout"),
        ),
        surely=normal,
        perhaps=normal,
    )


def noses_over(view: View) -> Iterator[Outcome]:
    """The foot does not put a tailwheel type on its nose.

    All of them can, in the end; what counts is how far it is from the foot of a usual stop. A CAUTION if
    the hard foot lifts the tail for sure; a NOTE if the panic foot may. The elevator held back helps as long
    as there is air over it, and is not counted.
    """
    stop, ground = view.results.stopping, view.aircraft.on_the_ground
    if stop.nose_over is None or not NOSE & ground.written:
        return
    foot = stop.nose_over.foot
    lifts = f"{view.show(foot)} on each pedal lifts the tail, on dry pavement"
    _, hard, panic = (at.force for at in stop.feet)
    gently = "say so on the placard and in the checkout: brake late and gently, stick back"
    sharp = _Sharp(
        "noses-over",
        foot,
        "which foot puts it on its nose",
        lifts,
        lifts,
        (gently, LESS_SHARP),
    )
    yield from _held_against(view, sharp, surely=hard, perhaps=panic)


@dataclass(frozen=True, slots=True)
class _Sharp:
    """What a foot does that it should not, in words for when it surely does and for when it may."""

    rule: str
    foot: Value
    asked: str
    does: str
    may_do: str
    tries: tuple[str, ...]


def _held_against(view: View, sharp: _Sharp, *, surely: Value, perhaps: Value) -> Iterator[Outcome]:
    """A CAUTION where one foot is surely beyond that which does it, a NOTE where another may be."""
    foot, place = sharp.foot, view.aircraft.on_the_ground.place
    if not (foot.known and surely.known and perhaps.known):
        yield NotShown(sharp.rule, place, sharp.asked, all_missing((foot, surely, perhaps)))
        return
    if foot.high < surely.low:
        level, does, against = Level.CAUTION, sharp.does, surely
    elif foot.low <= perhaps.high:
        level, does, against = Level.NOTE, sharp.may_do, perhaps
    else:
        return
    message = f"{does}; the {against.label} is {view.show(against)}"
    sources = cited(foot, against) or practice("common-practice")
    yield Finding(sharp.rule, level, place, message, sharp.tries, foot, against, "at least", sources)


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
