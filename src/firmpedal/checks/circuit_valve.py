"""Rules about the parking valve: where it stands, its stop, its reach, and the heat it traps."""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING

from firmpedal.analysis.circuit import Kind
from firmpedal.analysis.shut_in import held_wheels, shut_in
from firmpedal.analysis.trapped import rise_per_degree
from firmpedal.checks.circuit_words import ONE_DEGREE, degrees_words, listed, pedal_words, unclear
from firmpedal.checks.view import Outcome, View, cited, practice
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.model.kinds import ParkingValve
from firmpedal.quantity import Answer, Missing
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from collections.abc import Iterator

    from firmpedal.analysis.circuit import Verdict
    from firmpedal.analysis.shut_in import ShutIn


def _valves(view: View) -> list[ParkingValve]:
    return [part for part in view.aircraft.components if isinstance(part, ParkingValve)]


def parking_valve_not_after_both_seats(view: View) -> Iterator[Outcome]:
    """The parking valve stands between the last cylinder and the wheel.

    Before one of the cylinders it holds nothing of what that one has pressed: the pedal comes back and
    takes the pressure along. Shut by mistake, it parts that cylinder from the reservoir.
    """
    rule = "parking-valve-not-after-both-seats"
    for valve in _valves(view):
        if not valve.ways:
            words = f"which port of {valve.name} joins which when it is open"
            missing = (Missing(f"{valve.place}.ways", words),)
            yield NotShown(rule, valve.place, f"what {valve.name} parts when it is shut", missing)
            continue
        verdicts = _not_parked(view, valve)
        sure = [verdict.fact for verdict in verdicts if verdict.answer is Answer.YES]
        if sure:
            pressing = listed(pedal_words(view, fact.cylinder) for fact in sure)
            wheels = listed(fact.caliper for fact in sure)
            yield Finding(
                rule,
                Level.WARNING,
                valve.place,
                f"shut, {valve.name} does not hold what {pressing} pressed on {wheels}: it stands on the "
                f"reservoir's side of {listed(fact.cylinder for fact in sure)}",
                ("move the valve between the last cylinder and the wheel, after both seats",),
                sources=practice("builder-reports"),
            )
        elif verdicts:
            yield unclear(rule, valve.place, f"whether {valve.name} holds what is pressed", verdicts)


def _not_parked(view: View, valve: ParkingValve) -> list[Verdict]:
    return [
        verdict
        for judged in view.results.plumbing.circuits
        for verdict in judged.of(Kind.NOT_PARKED)
        if verdict.fact.by == valve.name
    ]


def parking_valve_without_stop(view: View) -> Iterator[Outcome]:
    """A parking valve is stopped or locked open in flight, and can be reached by a belted pilot.

    One that has crept shut holds the first touch of a pedal until somebody opens it: a wheel locked at
    touch-down. Out of reach, it stays shut until the aircraft has stopped; with a stop, that only
    strands an aircraft on the ground.
    """
    rule, usual = "parking-valve-without-stop", practice("builder-reports")
    for valve in _valves(view):
        if valve.stopped_open is Answer.NO:
            message = f"nothing stops {valve.name} from creeping shut in flight"
            stop = ("fit a positive stop or a lock in the open position", "take it out and carry chocks")
            yield Finding(rule, Level.WARNING, valve.place, message, stop, sources=usual)
        if valve.reachable_strapped_in is Answer.NO:
            message = f"{valve.name} cannot be reached with the belts on"
            reach = ("move its knob within reach, or lead a cable or rod to it",)
            yield Finding(rule, Level.CAUTION, valve.place, message, reach, sources=usual)
        missing = tuple(_unanswered(valve))
        if missing:
            yield NotShown(rule, valve.place, f"whether {valve.name} is safe in flight", missing)


def _unanswered(valve: ParkingValve) -> Iterator[Missing]:
    if valve.stopped_open is Answer.UNKNOWN:
        words = f"whether a stop or lock holds {valve.name} open in flight"
        yield Missing(f"{valve.place}.stopped open", words)
    if valve.reachable_strapped_in is Answer.UNKNOWN:
        words = f"whether {valve.name} can be reached with the belts on"
        yield Missing(f"{valve.place}.reachable strapped in", words)


def parking_valve_traps_heat(view: View) -> Iterator[Outcome]:
    """Fluid shut in between the valve and the wheel presses harder with every degree that it warms.

    The first figure is for walls that do not give, so it is the most that can be. Tube gives little, hose
    up to its published limit a good deal; the second counts both. A few degrees of sun on the ramp can
    still go over what a panic stop does.
    """
    rule = "parking-valve-traps-heat"
    unit = view.display.unit(Dimension.TEMPERATURE) or "degC"
    for valve in _valves(view):
        held = held_wheels(view.aircraft, view.results.plumbing, view.results.reach, valve.name)
        if not held:
            continue
        rise = rise_per_degree(view.aircraft.fluid, unit, valve.place)
        message = f"{valve.name} shut traps fluid at {listed(held)}"
        if not rise.known:
            yield NotShown(rule, valve.place, f"{message}: how its pressure grows with warmth", rise.missing)
            continue
        yield Finding(
            rule,
            Level.CAUTION,
            valve.place,
            f"{message}: its pressure rises by up to {view.show(rise)} for every {ONE_DEGREE[unit]} that it "
            f"warms, if nothing gives{_with_lines(view, valve, unit)}",
            (
                "never leave it set: chock the wheels, and open it when the aircraft stands in the sun",
                "feel the pedal and look for leaks before taxiing if it was left set",
            ),
            sources=(*practice("builder-reports"), *cited(rise)),
        )


def _room(shut: ShutIn) -> tuple[float, float, float]:
    """By what may be told first: few degrees, few after one seat alone, and where unknown a steep rise."""
    every, alone = (room.low if room.known else inf for room in (shut.degrees, shut.alone))
    return every, alone, -shut.rise.high


def _with_lines(view: View, valve: ParkingValve, unit: str) -> str:
    """What comes of it with the lines that are there, where they give soonest; nothing where unknown."""
    found = [
        each
        for each in shut_in(view.aircraft, view.laid, view.results, valve, unit)
        if each.rise.known and each.first is not None
    ]
    if not found:
        return ""
    soonest = min(found, key=_room)
    first = soonest.first
    words = f"; with what its lines give, {view.show(soonest.rise)} at {soonest.caliper}"
    if first is None or not soonest.degrees.known:
        return words
    return (
        f"{words}: from the hard foot {first.name} ({first.words} {view.show(first.holds)}) is reached after "
        f"{degrees_words(soonest.degrees, unit)}"
    )
