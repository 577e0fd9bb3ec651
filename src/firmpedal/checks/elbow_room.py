"""What room an elbow needs in its port: beside its neighbours, and among what lies about."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from firmpedal.checks.view import Limit, Outcome, View, cited
from firmpedal.finding import Finding, Level, NotShown
from firmpedal.lay import near
from firmpedal.lay.spread import spread
from firmpedal.lay.turning import cross, lies_in, swept, swept_beside
from firmpedal.model.display import listed
from firmpedal.quantity import Answer, Mark, Missing, Step, Value, When, all_missing, total, unknown
from firmpedal.units import Dimension, from_unit

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from firmpedal.lay.around import Thing
    from firmpedal.lay.port_fittings import PortFitting

RULE = "elbows-cannot-turn"
# No outlet of a brake fitting is longer: our estimate. It only decides whether an unknown one is asked for.
LONGEST = from_unit(3, "in")
ELSEWHERE = "a straight fitting here, and the bend in the hose's own end"


def around(view: View, component: str, elbow: PortFitting, about: tuple[Thing, ...]) -> Iterator[Outcome]:
    """Hold an elbow against everything that lies about: where it points in the end, and on the way there."""
    legs = elbow.legs
    if not legs:
        yield from _unknown_leg(elbow, about)
        return
    ends = [(thing, _ends_in(elbow, thing)) for thing in about]
    if inside := [thing.name for thing, answer in ends if answer is Answer.YES]:
        yield _no_room_there(elbow, inside)
        return
    ways = [(thing, swept(legs, thing.solid, thing.off), answer) for thing, answer in ends]
    if met := [thing.name for thing, way, _ in ways if way is Answer.YES]:
        yield _bench_first(view, component, elbow, met)
    unsure = [thing for thing, way, end in ways if Answer.UNKNOWN in ({end} if met else {way, end})]
    if unsure:
        names = listed([thing.name for thing in unsure])
        message = f"whether the elbow at {elbow.name} can be turned in beside {names}, or only on the bench"
        yield NotShown(RULE, elbow.port.place, message, _to_measure(elbow, unsure))


def _ends_in(elbow: PortFitting, thing: Thing) -> Answer:
    """Whether the leg lies in a thing in the end; a panel that its line passes may have a hole there."""
    if elbow.arm is None:
        return Answer.NO
    answer = lies_in(elbow.legs, thing.solid, thing.off)
    # the hole of its line may take the outlet in, or it may not: only a look tells
    return Answer.UNKNOWN if answer is Answer.YES and elbow.line in thing.through else answer


def _no_room_there(elbow: PortFitting, names: list[str]) -> Finding:
    return Finding(
        RULE,
        Level.CAUTION,
        elbow.port.place,
        f"where the elbow at {elbow.name} points in the end, its outlet lies in {listed(names)}",
        ("point it another way", ELSEWHERE),
        sources=cited(*elbow.figures),
    )


def _bench_first(view: View, component: str, elbow: PortFitting, names: list[str]) -> Finding:
    radius = view.show(sweep_of(elbow))
    return Finding(
        RULE,
        Level.NOTE,
        elbow.port.place,
        f"the elbow at {elbow.name} sweeps {radius} round its port as it is screwed in, and meets "
        f"{listed(names)}: it cannot be turned in with {component} in its place",
        (f"screw it in on the bench, before {component} is mounted", ELSEWHERE),
        sources=cited(*elbow.figures),
    )


def _unknown_leg(elbow: PortFitting, about: Iterable[Thing]) -> Iterator[Outcome]:
    """Ask for what is not known of an elbow where something is so near that it matters."""
    if not elbow.place.known:
        return  # asked for already, with the line that goes there
    place = np.array([elbow.place.point])
    close = [one.name for one in about if near.distance(place, one.solid)[0] <= LONGEST + one.off]
    if close:
        message = f"whether the elbow at {elbow.name} can be turned in beside {listed(close)}"
        unknowns = [_leg(elbow)] if elbow.length is None or not elbow.length.known else []
        unknowns += [_body(elbow)] if elbow.width is None or not elbow.width.known else []
        others = all_missing(value for value in elbow.figures if value not in (elbow.length, elbow.width))
        yield NotShown(RULE, elbow.port.place, message, (*unknowns, *others))


def final(place: str, one: PortFitting, other: PortFitting) -> Iterator[Outcome]:
    """Hold two fittings of one component against each other, each where it points in the end."""
    pair = (one, other)
    if not any(each.turned_in for each in pair) or any(each.part.turn and not each.arm for each in pair):
        return
    if not one.legs or not other.legs:
        return
    answer, names = cross(one.legs, other.legs), f"{one.port.name} and {other.port.name}"
    if answer is Answer.YES:
        yield Finding(
            RULE,
            Level.CAUTION,
            place,
            f"where the fittings at {names} point in the end, they lie in each other",
            ("point one of them another way", ELSEWHERE),
            sources=cited(*one.figures, *other.figures),
            about=(one.port.place, other.port.place),
        )
    elif answer is Answer.UNKNOWN:
        message = f"whether the fittings at {names} clear each other where they point in the end"
        missing = dict.fromkeys(item for each in pair for item in _to_measure(each))
        yield NotShown(RULE, place, message, tuple(missing))


def turns_in_beside(last: PortFitting, first: PortFitting) -> Answer:
    """Say whether a fitting can be screwed in while another of the component is where it shall be."""
    if not last.turned_in:
        return Answer.YES
    if first.turned_in and last.same_way(first):
        room = needed_beside(last, first)
        kept = Limit(set_apart(last, first), room, "at least").kept
        if kept is not Answer.YES:
            return kept
    if not last.legs or not first.legs:
        return Answer.UNKNOWN
    met = swept_beside(last.legs, first.legs)
    return {Answer.YES: Answer.NO, Answer.NO: Answer.YES}.get(met, Answer.UNKNOWN)


def _to_measure(elbow: PortFitting, things: Iterable[Thing] = ()) -> tuple[Missing, ...]:
    """What leaves the answer open: every figure that is a range, by what a builder can measure."""
    port, found = elbow.port, []
    if elbow.length is not None and not elbow.length.exact:
        found.append(_leg(elbow))
    if elbow.part.turn and elbow.along is not None and not elbow.along.exact:
        found.append(_middle(elbow))
    if elbow.arm is None and not port.at.known and elbow.part.turn:
        found.append(Missing(f"{port.place}.arm", f"which way the elbow at {elbow.name} points"))
    if not all(value.exact for value in elbow.place.coordinates):
        found.append(Missing(port.place, f"where {elbow.name} is, more closely"))
    found += [Missing(thing.place, f"where {thing.name} is, more closely") for thing in things if thing.off]
    return tuple(found) or _in_hand((elbow,)) or (_leg(elbow),)


def side_by_side(pair: tuple[PortFitting, ...]) -> tuple[Missing, ...]:
    """What tells whether one of two elbows can be turned in beside the other."""
    places = [each.port for each in pair if not all(value.exact for value in each.place.coordinates)]
    where = (Missing(port.place, f"where {port.name} is, more closely") for port in places)
    return _in_hand(pair) or tuple(where) or tuple(map(_leg, pair))


def _in_hand(pair: tuple[PortFitting, ...]) -> tuple[Missing, ...]:
    """What is a range of some fittings themselves: their legs, and once these are known their bodies."""
    legs = [_leg(each) for each in pair if each.length is not None and not each.length.exact]
    bodies = [_body(each) for each in pair if each.width is not None and not each.width.exact]
    return tuple(legs or bodies)


def _leg(elbow: PortFitting) -> Missing:
    part = elbow.part.designation
    what = f"the outlet leg of {part} at {elbow.name}, in hand"
    straight = f"how far {part} stands out of {elbow.name} when it is tight"
    if not elbow.part.turn:
        return Missing(f"{elbow.port.place}.stands off", straight, Dimension.LENGTH, When.IN_HAND)
    return Missing(f"{elbow.port.place}.outlet leg", what, Dimension.LENGTH, When.IN_HAND)


def _body(elbow: PortFitting) -> Missing:
    what = f"how wide the body of {elbow.part.designation} at {elbow.name} is, in hand"
    return Missing(f"{elbow.port.place}.body width", what, Dimension.LENGTH, When.IN_HAND)


def _middle(elbow: PortFitting) -> Missing:
    """How far its middle stands off the port; where that is measured, from where it was measured."""
    port = elbow.port
    if port.stands_off.known:
        return Missing(f"{port.place}.at", f"where the face of the thread at {elbow.name} is: its middle")
    what = f"how far the middle of {elbow.part.designation} stands off {elbow.name} when it is tight"
    return Missing(f"{port.place}.stands off", what, Dimension.LENGTH, When.IN_HAND)


def needed_beside(last: PortFitting, first: PortFitting) -> Value:
    """What lies between two axes for one elbow to be turned in beside the body of another."""
    label = f"room to turn in {last.part.designation} beside {first.part.designation}"
    return total(label, (sweep_of(last), _half_width(first)), last.port.place)


def sweep_of(elbow: PortFitting) -> Value:
    """The radius of the circle that an elbow's outlet draws round the port's axis."""
    leg, part, place = elbow.length, elbow.part, elbow.port.place
    label = f"circle that {part.designation} sweeps"
    if leg is None or leg.span is None or part.turn is None:
        return replace(unknown(label, Dimension.LENGTH, place), missing=(_leg(elbow),))
    share = math.sin(part.turn)
    step = Step("L sin(turn)", (("L", leg),))
    span = (leg.low * share, leg.high * share)
    return Value(label, Dimension.LENGTH, span, max(Mark.DERIVED, leg.mark), place, leg.source, step)


def _half_width(elbow: PortFitting) -> Value:
    width, place, label = elbow.width, elbow.port.place, f"half the body of {elbow.part.designation}"
    if width is None or width.span is None:
        return replace(unknown(label, Dimension.LENGTH, place), missing=(_body(elbow),))
    step = Step("w / 2", (("w", width),))
    span = (width.low / 2, width.high / 2)
    return Value(label, Dimension.LENGTH, span, max(Mark.DERIVED, width.mark), place, width.source, step)


def set_apart(one: PortFitting, other: PortFitting) -> Value:
    """The distance of two parallel axes, square to them."""
    label = f"distance of {one.port.name} and {other.port.name}"
    inputs = [*one.place.coordinates, one.aside, *other.place.coordinates, other.aside]
    place, mark = one.place.place, max([Mark.DERIVED, *(value.mark for value in inputs)])
    if not all(value.known for value in inputs):
        missing = all_missing(inputs)
        return Value(label, Dimension.LENGTH, None, mark, place, missing=missing)

    def distance(flat: tuple[float, ...]) -> tuple[float, ...]:
        a, b = _on_axis(one, flat[:4]), _on_axis(other, flat[4:])
        between = [q - p for p, q in zip(a, b, strict=True)]
        along = sum(p * q for p, q in zip(between, one.axis, strict=True))
        return (math.sqrt(max(sum(p * p for p in between) - along**2, 0.0)),)

    (bounds,) = spread(distance, inputs) or ()
    either_way = sum(elbow.aside.high for elbow in (one, other) if elbow.arm is None)
    span = (max(bounds.low - either_way, 0.0), bounds.high + either_way)
    step = Step("distance square to the ports", tuple((value.label, value) for value in inputs))
    return Value(label, Dimension.LENGTH, span, mark, place, step=step)


def _on_axis(elbow: PortFitting, flat: tuple[float, ...]) -> list[float]:
    arm = elbow.arm or (0.0, 0.0, 0.0)
    return [one - flat[3] * along for one, along in zip(flat[:3], arm, strict=True)]
