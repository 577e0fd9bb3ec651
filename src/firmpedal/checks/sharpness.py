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

    from firmpedal.analysis.stopping import Apart, RunUp

LEAST_SHARE = 0.8  # of what the stronger side holds: common practice, no source
LESS_SHARP = "a larger master cylinder or a lower pedal ratio makes the brakes less sharp"
NOSE = {"mains_to_cg", "weight_on_nose_or_tail", "cg_height"}  # with one of them the tail was thought of
RUN_UP = {"static_thrust", "thrust_line_height"}  # without them nobody has asked what the pull does
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
        _Foot(normal, Level.CAUTION, Level.NOTE),
    )


def noses_over(view: View) -> Iterator[Outcome]:
    """The foot does not put a tailwheel type on its nose.

    Going over hurts people and is done in a moment; all of them can, in the end, so what counts is how far it
    is from the foot of a usual stop. A WARNING where the normal foot lifts the tail for sure. A CAUTION where
    the normal foot may, or the hard or panic foot does for sure: the pilot has a say in those. A NOTE where
    they may. The elevator held back helps as long as there is air over it, and is not counted. Where the
    tyres slide before the tail is up there is nothing to find.
    """
    stop, ground = view.results.stopping, view.aircraft.on_the_ground
    if stop.nose_over is None or not NOSE & ground.written:
        return
    foot = stop.nose_over.foot
    lifts = f"{view.show(foot)} on each pedal lifts the tail, on dry pavement"
    normal, hard, panic = (at.force for at in stop.feet)
    gently = "say so on the placard and in the checkout: brake late and gently, stick back"
    sharp = _Sharp(
        "noses-over",
        foot,
        "which foot puts it on its nose",
        lifts,
        lifts,
        (gently, LESS_SHARP),
    )
    yield from _held_against(
        view,
        sharp,
        _Foot(normal, Level.WARNING, Level.CAUTION),
        _Foot(hard, Level.CAUTION, Level.NOTE),
        _Foot(panic, Level.CAUTION, Level.NOTE),
    )


def run_up_noses_over(view: View) -> Iterator[Outcome]:
    """Full throttle with the wheels held does not lift the tail of a tailwheel type.

    The pull acts high above the wheels, and the weight behind them holds the tail down. A CAUTION where full
    throttle lifts it for sure with the elevator left alone, which costs a propeller; a NOTE where it may.
    Elevator held back in the slipstream holds it, as much as that does; tyres that slide before let it go.
    """
    stop, ground = view.results.stopping, view.aircraft.on_the_ground
    if stop.run_up.lifts is None or not ground.written >= RUN_UP or _slides_before(stop.run_up):
        return
    lifts = f"a pull of {view.show(stop.run_up.lifts)} lifts the tail in a run-up, the wheels held"
    sharp = _Sharp(
        "run-up-noses-over",
        stop.run_up.lifts,
        "which pull puts it on its nose in a run-up",
        lifts,
        lifts,
        (
            "run up with the stick hard back, only as far as the plugs need it",
            "have somebody hold or tie the tail down",
        ),
    )
    yield from _held_against(view, sharp, _Foot(stop.run_up.pull, Level.CAUTION, Level.NOTE))


def _slides_before(run_up: RunUp) -> bool:
    """Whether the tyres surely slide before the tail is up."""
    return run_up.lifts is not None and run_up.lifts.at_most(run_up.holds) is Answer.NO


@dataclass(frozen=True, slots=True)
class _Foot:
    """A foot or pull with how bad it is if it surely does what it should not, and if it may."""

    force: Value
    surely: Level
    perhaps: Level


@dataclass(frozen=True, slots=True)
class _Sharp:
    """What a foot does that it should not, in words for when it surely does and for when it may."""

    rule: str
    foot: Value
    asked: str
    does: str
    may_do: str
    tries: tuple[str, ...]


def _held_against(view: View, sharp: _Sharp, *feet: _Foot) -> Iterator[Outcome]:
    """The worst of what some feet do: each surely where it is beyond that which does it, or perhaps."""
    foot, place = sharp.foot, view.aircraft.on_the_ground.place
    forces = [each.force for each in feet]
    if not (foot.known and all(force.known for force in forces)):
        yield NotShown(sharp.rule, place, sharp.asked, all_missing((foot, *forces)))
        return
    found = [(each.surely, sharp.does, each.force) for each in feet if foot.high < each.force.low]
    found += [(each.perhaps, sharp.may_do, each.force) for each in feet if foot.low <= each.force.high]
    if not found:
        return
    level, does, against = min(found, key=lambda each: list(Level).index(each[0]))
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
