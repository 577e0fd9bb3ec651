"""Rules about stopping and holding; they speak only where the file says something about braking."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.checks.view import Limit, Outcome, View, cited, judge, practice
from firmpedal.finding import Finding, Level
from firmpedal.quantity import Answer

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.stopping import Needed

STRONGER = (
    "a higher pedal ratio or a smaller master cylinder, if the stroke allows it",
    "calipers with more piston area, or a larger disc",
)


def brake_figures_contradict(view: View) -> Iterator[Outcome]:
    """Figures that are given for braking agree with each other.

    The torque in a leaflet comes from its pressure, the pistons of one side of the disc, both faces of the
    disc, the lining's friction and the effective radius. Counting the pistons of both sides gives twice
    what is there. And the weights on the wheels put the centre of gravity at one place only.
    """
    for found in view.results.stopping.contradictions:
        figures = f"{found.found.label} {view.show(found.found)}, {found.expected.label} "
        why = f": {found.reason}" if found.reason else ""
        yield Finding(
            "brake-figures-contradict",
            Level.CAUTION,
            found.place,
            f"{found.words} ({figures}{view.show(found.expected)}){why}",
            ("look at both figures again, and at their units", "measure the one that is easier to measure"),
            found.found,
            found.expected,
            found.relation,
            cited(found.found, found.expected) or practice("common-practice"),
        )


def stop_too_weak(view: View) -> Iterator[Outcome]:
    """The hard foot makes the wanted stop.

    Left out, 10 ft/s^2 is wanted: the mean deceleration that a rule for large aeroplanes asks of the design
    landing stop, a yardstick for others. Return spring and seal friction count where the file gives them;
    fading is left out, so a real foot needs more.
    """
    stop = view.results.stopping
    if not stop.asked:
        return
    wanted = stop.stance.wanted
    message = (
        f"a stop at {view.show(wanted)} needs {_on_each(view, stop.wanted)}, and the hard foot is "
        f"{view.show(stop.feet[1].force)}"
    )
    yield from _held(view, stop.wanted, "stop-too-weak", message)


def run_up_not_held(view: View) -> Iterator[Outcome]:
    """The hard foot holds the aircraft at full throttle, standing.

    The older regulation for small aeroplanes asks for brakes that stop the wheels rolling on a paved runway
    with take-off power; the tyres may slide. Tyres that slide before the brakes give way are said on the
    sheet.
    """
    stop = view.results.stopping
    if "static_thrust" not in view.aircraft.on_the_ground.written:
        return
    message = (
        f"holding the static thrust of {view.show(stop.stance.thrust)} needs {_on_each(view, stop.hold)}, "
        f"and the hard foot is {view.show(stop.feet[1].force)}"
    )
    yield from _held(view, stop.hold, "run-up-not-held", message)


def _held(view: View, needed: Needed, rule: str, message: str) -> Iterator[Outcome]:
    """A CAUTION where the hard foot is too weak, a WARNING where the panic foot is too."""
    _, hard, panic = (at.force for at in view.results.stopping.feet)
    hopeless = needed.foot.at_most(panic) is Answer.NO
    yield from judge(
        Limit(needed.foot, hard, "at most"),
        rule=rule,
        level=Level.WARNING if hopeless else Level.CAUTION,
        place="on the ground",
        message=message,
        tries=STRONGER,
    )


def _on_each(view: View, needed: Needed) -> str:
    pressure = f" ({view.show(needed.pressure)})" if needed.pressure.known else ""
    return f"{view.show(needed.foot)} on each pedal{pressure}"


def stop_energy_above_rating(view: View) -> Iterator[Outcome]:
    """No brake gets more energy in one stop than its leaflet says it takes.

    Taken is the greater of two figures: the formula of the older regulation for small aeroplanes, and the
    energy of motion; either is shared out over the brakes as they brake at equal feet, and a disc that
    several calipers grip gets what they all put in. Air drag takes some of it away, and is not counted.
    """
    stop = view.results.stopping
    for caliper, energy in zip(view.aircraft.calipers, stop.energies, strict=True):
        if "energy" not in caliper.leaflet.written:
            continue
        rating = caliper.leaflet.energy.named(f"energy that {caliper.name} takes in one stop")
        message = f"one stop puts {view.show(energy)} into {caliper.name}, and it takes {view.show(rating)}"
        yield from judge(
            Limit(energy, rating, "at most"),
            rule="stop-energy-above-rating",
            level=Level.WARNING,
            place=caliper.leaflet.energy.place,
            message=message,
            tries=(
                "a brake with a higher rating",
                "a lower speed before braking begins",
            ),
        )
