"""Stopping as a whole: what each foot gives, what a stop or a hold needs, and the energy of a stop."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.analysis.stopping.brake import WheelBrake, effective_radius, force, friction, stated_friction
from firmpedal.analysis.stopping.contradictions import Contradiction, contradictions
from firmpedal.analysis.stopping.limits import Limits, limits
from firmpedal.analysis.stopping.needs import TRIAL, Needed, Needs
from firmpedal.analysis.stopping.pushes import Pushing, counted, pressing_on
from firmpedal.analysis.stopping.stance import PLACE, Stance, stance
from firmpedal.formulas.braking import deceleration, stop_distance
from firmpedal.formulas.grip import lesser, rule_energy, stop_energy
from firmpedal.model.aircraft import Gear
from firmpedal.quantity import Answer, Mark, Missing, Value, apply, largest, total, unknown
from firmpedal.units import Dimension

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
    lock: Needed
    nose_over: Needed | None
    wanted_distance: Value
    rule_energy: Value
    motion_energy: Value
    energy: Value  # the greater of the two
    energies: tuple[Value, ...]  # the same for each brake, as far as it or its disc gets it
    contradictions: tuple[Contradiction, ...]


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
    trial = _drag(brakes, [brake.trial.drag for brake in brakes], "trial")
    feet = tuple(
        _at_foot(
            n, forces[n], _drag(brakes, [brake.feet[n].drag for brake in brakes], FEET[n]), ground, allowed
        )
        for n in range(len(FEET))
    )
    work = Needs(tuple(pressing_on(caliper, pushes, reach) for caliper in aircraft.calipers), trial, ground)
    rule, motion = _energies(ground, ground.wheels)
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
        work.stop("locking wheels", allowed.peak),
        work.stop("nosing over", allowed.nose_over) if allowed.nose_over else None,
        _distance(ground.speed, ground.wanted, "distance of the wanted stop", "wanted"),
        rule,
        motion,
        energy,
        tuple(_energy_of(caliper, ground, energy) for caliper in aircraft.calipers),
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
    at["trial"] = [TRIAL] if pressing else []
    made = {
        foot: force(
            caliper,
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
    return WheelBrake(caliper.name, radius, lining, stated, feet, made["trial"])


def _drag(brakes: tuple[WheelBrake, ...], drags: list[Value], foot: str) -> Value:
    label, place = "drag of all braked wheels", f"{PLACE}.braking.{foot}.drag"
    if not brakes:
        return unknown(label, Dimension.FORCE, "components", "the calipers: the file has none")
    return total(label, drags, place)


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


def _energy_of(caliper: Caliper, ground: Stance, of_wheel: Value) -> Value:
    """Of a wheel with more brakes each gets its part; the disc that they grip together gets it all."""
    braked = ground.braked
    if braked.alone(caliper.name):
        return of_wheel
    shared, at_disc = braked.sharing(caliper.name), braked.at_disc(caliper)
    if at_disc is not None:
        what = f"the energy that {caliper.name} and the other caliper on its disc take together"
        asked = (Missing(f"{caliper.place}.leaflet.energy", what),)
        span = (braked.count.low, shared.high)
        shared = replace(shared, span=span, mark=Mark.DERIVED, missing=at_disc.missing or asked)
    label = f"energy of a stop for {caliper.name} or for its disc"
    return largest(label, _energies(ground, shared), f"{caliper.place}.energy of a stop")


def _energies(ground: Stance, wheels: Value) -> tuple[Value, Value]:
    known = {"mass": ground.mass, "speed": ground.speed, "wheels": wheels}
    rule = apply(
        rule_energy, "energy for each wheel by the rule", place=f"{PLACE}.energy by the rule", **known
    )
    motion = apply(stop_energy, "energy for each wheel by motion", place=f"{PLACE}.energy by motion", **known)
    return rule, motion
