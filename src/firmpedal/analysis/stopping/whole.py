"""Stopping as a whole: what each foot gives, what a stop or a hold needs, and the energy of a stop."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.analysis.stopping.apart import Apart, WheelLock, apart, first_lock, wheel_locks
from firmpedal.analysis.stopping.brake import WheelBrake, effective_radius, force, friction, stated_friction
from firmpedal.analysis.stopping.contradictions import Contradiction, contradictions
from firmpedal.analysis.stopping.energy import energies, energy_of, energy_sharing
from firmpedal.analysis.stopping.limits import Limits, limits
from firmpedal.analysis.stopping.needs import TRIAL, TRIAL_FOOT, Needed, Needs, drag_of_all
from firmpedal.analysis.stopping.pushes import Pushing, counted, pressing_on
from firmpedal.analysis.stopping.run_up import RunUp, run_up
from firmpedal.analysis.stopping.stance import PLACE, Stance, stance
from firmpedal.formulas.braking import deceleration, stop_distance
from firmpedal.formulas.grip import lesser
from firmpedal.formulas.levers import line_pressure
from firmpedal.model.aircraft import Gear
from firmpedal.quantity import Answer, Value, apply, largest

if TYPE_CHECKING:
    from firmpedal.analysis.circuit import Reach
    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.kinds import Caliper


@dataclass(frozen=True, slots=True)
class AtFoot:
    """What one foot force, on each pedal, makes of the whole aircraft."""

    foot: str
    force: Value
    drag: Value
    by_brakes: Value
    reached: Value  # the lesser of what the brakes make and what the ground allows
    distance: Value


@dataclass(frozen=True, slots=True)
class Stopping:
    """Everything about stopping, worked out as far as the file goes."""

    asked: bool  # whether the file says anything about braking besides its pistons and its weight
    losses: Answer  # whether return spring and seal friction are counted; unknown: of some cylinders
    stance: Stance
    brakes: tuple[WheelBrake, ...]
    limits: Limits
    feet: tuple[AtFoot, ...]
    begins: Value  # foot at which the pads begin to press
    wanted: Needed
    hold: Needed
    run_up: RunUp  # what the ground and the tail do at full throttle
    lock: Needed  # of the first wheel
    locks: tuple[WheelLock, ...]  # of each wheel, where they are not alike
    apart: Apart | None  # left against right; None where nothing tells them apart
    nose_over: Needed | None  # None for a nosewheel type, and where the tyres surely slide before
    wanted_distance: Value
    rule_energy: Value
    motion_energy: Value
    energy: Value  # the greater of the two
    energies: tuple[Value, ...]  # the same for each brake, as far as it or its disc gets it
    sharings: tuple[Value, ...]  # by how many the energy of a stop is divided for each brake
    contradictions: tuple[Contradiction, ...]

    def sharing_of(self, caliper: str) -> Value:
        """By how many the energy of a stop is divided for one brake."""
        return next(
            shared
            for brake, shared in zip(self.brakes, self.sharings, strict=True)
            if brake.caliper == caliper
        )

    @property
    def first_wheel(self) -> str:
        """Which wheel locks first: one by its side where that is sure, else the wheels."""
        feet = [(each.needed.foot, each.name) for each in self.locks]
        if not feet or not all(foot.known for foot, _ in feet):
            return "the wheels"
        (first, name), *rest = sorted(feet, key=lambda each: each[0].middle)
        return name if all(first.high < foot.low for foot, _ in rest) else "the first wheel"


def stopping(
    aircraft: Aircraft,
    pushes: tuple[Pushing, ...],
    reach: tuple[Reach, ...],
    forces: tuple[Value, ...],
) -> Stopping:
    """Work out stopping of one aircraft, both pedals of a seat pressed alike.

    Args:
        aircraft: The aircraft.
        pushes: Each cylinder, in the order of the aircraft's.
        reach: What each of them presses on, in the same order.
        forces: On each pedal, in the order of the feet.
    """
    ground = stance(aircraft)
    brakes = tuple(_brake(caliper, pushes, reach, ground) for caliper in aircraft.calipers)
    tailwheel = aircraft.aircraft.gear is Gear.TAILWHEEL
    allowed = limits(ground, tailwheel=tailwheel)
    feet = tuple(
        _at_foot(
            n, forces[n], drag_of_all([brake.feet[n].drag for brake in brakes], FEET[n]), ground, allowed
        )
        for n in range(len(FEET))
    )
    pressing = tuple(pressing_on(caliper, pushes, reach) for caliper in aircraft.calipers)
    work = Needs(brakes, pressing, ground)
    locks = wheel_locks(aircraft.calipers, brakes, pressing, ground, allowed.peak)
    plain = all(each.pressing.push.plain for each in pushes)
    rule, motion = energies(ground, ground.wheels)
    sharings = {each.name: energy_sharing(each, brakes, ground.braked) for each in aircraft.calipers}
    energy = largest("energy of a stop for each wheel", (rule, motion), f"{PLACE}.energy")
    return Stopping(
        is_asked(aircraft),
        counted(pushes),
        ground,
        brakes,
        allowed,
        feet,
        work.begins(),
        work.stop("wanted stop", ground.wanted),
        work.hold("run-up", ground.thrust),
        run_up(ground, tailwheel=tailwheel),
        first_lock(work.stop("locking wheels", allowed.peak), locks),
        locks,
        apart(aircraft.calipers, brakes, plain=plain),
        work.stop("nosing over", allowed.nose_over) if allowed.nose_over and allowed.can_tip else None,
        _distance(ground.speed, ground.wanted, "distance of the wanted stop", "wanted"),
        rule,
        motion,
        energy,
        tuple(energy_of(caliper, ground, sharings, energy) for caliper in aircraft.calipers),
        tuple(sharings.values()),
        contradictions(aircraft, ground, brakes),
    )


def is_asked(aircraft: Aircraft) -> bool:
    """Whether the file says anything about braking besides its pistons and its weight."""
    keys = {"effective_radius", "lining_friction"}
    brakes = any(
        keys & caliper.written or caliper.pads.written or caliper.leaflet.written
        for caliper in aircraft.calipers
    )
    return brakes or bool(aircraft.on_the_ground.written)


def _brake(
    caliper: Caliper, pushes: tuple[Pushing, ...], reach: tuple[Reach, ...], ground: Stance
) -> WheelBrake:
    radius = effective_radius(caliper)
    stated = stated_friction(caliper, radius)
    lining = friction(caliper, stated)
    pressing = pressing_on(caliper, pushes, reach)
    at = {foot: [each.budgets[n].pressure for each in pressing] for n, foot in enumerate(FEET)}
    at["trial"] = [TRIAL] * len(pressing)
    at["trial foot"] = [_at_trial_foot(each) for each in pressing]
    made = {
        foot: force(
            caliper,
            pressing,
            pressures,
            radius,
            lining,
            ground.tyre_radius,
            foot,
            alone=ground.braked.alone(caliper.name),
        )
        for foot, pressures in at.items()
    }
    feet = tuple(made[foot] for foot in FEET)
    return WheelBrake(caliper.name, radius, lining, stated, feet, made["trial"], made["trial foot"])


def _at_trial_foot(each: Pushing) -> Value:
    cylinder = each.pressing.cylinder
    return apply(
        line_pressure,
        f"pressure of {cylinder.name} at a foot to reckon with",
        place=f"{cylinder.place}.pressure.trial",
        foot_force=TRIAL_FOOT,
        lever_ratio=each.pressing.ratio,
        bore=cylinder.bore,
    )


def _at_foot(number: int, force: Value, drag: Value, ground: Stance, allowed: Limits) -> AtFoot:
    foot = FEET[number]
    place = f"{PLACE}.braking.{foot}"
    brakes = apply(
        deceleration,
        f"deceleration by the brakes at the {foot} foot",
        place=f"{place}.by brakes",
        drag=drag,
        mass=ground.mass,
    )
    reached = apply(
        lesser,
        f"deceleration at the {foot} foot",
        place=f"{place}.deceleration",
        one=brakes,
        other=allowed.usable,
    )
    return AtFoot(
        foot,
        force,
        drag,
        brakes,
        reached,
        _distance(ground.speed, reached, f"distance of a stop at the {foot} foot", f"braking.{foot}"),
    )


def _distance(speed: Value, braking: Value, label: str, place: str) -> Value:
    return apply(stop_distance, label, place=f"{PLACE}.{place}.distance", speed=speed, braking=braking)
